"""Placing: which distances of a question are the near place, the far place and the gap between."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.records import record, replace
from assistant.solving.last_question import last_question
from assistant.solving.lights import NOT_SUBJECT, PLACES


@record
class Scene:
    """Distances from the light in metres. `of`: "background" when the far place is a backdrop."""

    near: float | None = None
    far: float | None = None
    gap: float | None = None
    of: str = ""
    rows: bool = False
    moved: bool = False
    others: tuple[tuple[str, float], ...] = ()
    others_asked: tuple[tuple[str, float], ...] = ()
    used: tuple[Fact, ...] = ()
    near_fact: Fact | None = None
    far_fact: Fact | None = None

    @property
    def depth(self) -> float | None:
        """From the near place to the far one."""
        if self.gap is not None:
            return self.gap
        return abs(self.far - self.near) if self.near is not None and self.far is not None else None

    @property
    def front(self) -> str:
        """What the near place is."""
        return "front" if self.rows else "subject"

    def asked(self, query: Query) -> str | None:
        """Whose stops they are."""
        if self.of:
            return self.of
        return "back row" if self.rows and not patterns.search(r"how much (?:brighter|hotter)|front(?: row)?(?: is)? (?:brighter|hotter)", query.text, re.I) else ("front row" if self.rows else None)

    def read_near(self, known: Fact, text: str) -> bool:
        """Whether a reading was taken at the near place: the place named nearest to it, in the same breath."""
        if self.near_fact is None or self.far_fact is None:
            return True
        said = [f for f in (self.near_fact, self.far_fact) if f.origin == "said"]
        if known.origin == "kept" and len(said) == 1:
            return said[0] is self.far_fact  # "and those at 6 m?": it was read where they stood before
        again = next((f for f in self.used if f.quantity == "distance" and f not in said and f.origin == "said" and f.sentence == known.sentence), None)
        if again is not None and len(said) == 2 and _apart(known, again, text) < 100:
            return again.value == self.near_fact.value  # "from 2 m to 4 m. At 2 m I had f/11": the place is said once more with its reading
        if self.moved and not _WAS_ASKED.search(text):  # "from 2 m to 2.8 m, I had f/8": where it came from
            return self.far_fact.cue != "from" if _moving(self.near_fact, self.far_fact) else True
        before = text[: known.start]
        if _NEAR_ONE.search(before) or _FAR_ONE.search(before):
            return (_NEAR_ONE.search(before) is not None) == (self.near_fact.value <= self.far_fact.value)
        after = text[known.end :]
        if _FOR_NEAR.match(after) or _FOR_FAR.match(after):
            return (_FOR_NEAR.match(after) is not None) == (self.near_fact.value <= self.far_fact.value)
        first, second = sorted((self.near_fact, self.far_fact), key=lambda f: f.start)
        if first.end <= known.start and known.end <= second.start and _A_PLACE.search(text[known.end : second.start]) and not _A_PLACE.search(text[first.end : known.start]):
            return first is self.near_fact  # "front lot at 3 m and lit at f/11 the uncles at the back are 4.5 m": the next place is named after it
        return _apart(known, self.near_fact, text) <= _apart(known, self.far_fact, text)


_ROW_ASKED = Pattern(r"\bhow (?:many stops|much|far|dark|bright)\b(?P<before>[^?]{0,40}?)\b(?:is|are|does|do|will|would|on|at|for) (?:the |my |our )?(?P<row>front|first|middle|second|third|fourth|back|last|rear)\b(?P<after>[^?]{0,40})", re.I)
_AGAINST = Pattern(r"\b(?:under|below|over|above|than|behind|against)(?: the| my| our)? (?P<row>front|first|middle|second|third|fourth|back|last|rear)\b", re.I)
_ENDS = {"front": "near", "first": "near", "back": "far", "last": "far", "rear": "far"}


def between_rows(scene: Scene, text: str) -> tuple[str, float, float] | None:
    """"how many stops is the middle under the front": the row asked about, where it stands and what it is held against (else the front); None unless a row between the ends is one of the two."""
    inner = dict((*scene.others, *scene.others_asked))
    names = _rows_named(text)
    if not names or not inner or scene.near is None or scene.far is None:
        return None
    if len(inner) == 1 and "middle row" in inner:  # three in all
        inner |= {"second row": inner["middle row"], "third row": scene.far}
    places = [scene.near if _ENDS.get(n) == "near" else scene.far if _ENDS.get(n) == "far" else inner.get(f"{n} row") for n in names]
    one, other = places
    if one is None or other is None or names[0] in _ENDS and names[1] in _ENDS:
        return None
    return {"near": "front row", "far": "back row"}.get(_ENDS.get(names[0], ""), f"{names[0]} row"), one, other


_WHICH_ROW = r"(?:the )?(?P<{0}>front|first|middle|second|third|fourth|back|last|rear)\b(?: (?:row|rank|tier|one|line))?"
_BETWEEN = Pattern(rf"\bbetween {_WHICH_ROW.format('one')} and {_WHICH_ROW.format('row')}", re.I)


def _rows_named(text: str) -> list[str]:
    """The row that is asked about, and the one that it is held against."""
    asked, between = _ROW_ASKED.search(text), _BETWEEN.search(text)
    if between is not None:
        return [between["row"].lower(), between["one"].lower()]
    if asked is None:
        return []
    return [asked["row"].lower(), held_against(asked["before"] + " ") or held_against(asked["after"]) or "front"]


def held_against(text: str) -> str:
    """The row that another is held against: "darker than the middle row"; nothing where the words name none."""
    against = _AGAINST.search(text)
    return against["row"].lower() if against is not None else ""


def row_asked(text: str) -> tuple[int, int] | None:
    """Where the row stands whose light is asked about: "by how many stops is the middle row darker"."""
    asked = None if _BETWEEN.search(text) else _ROW_ASKED.search(text)
    return asked.span("row") if asked is not None else None


def names_no_place(scene: Scene, text: str) -> bool:
    """Whether a row between the ends is asked about, and it is not known where it stands."""
    inner = bool(scene.others or scene.others_asked)
    return inner and any(name not in _ENDS for name in _rows_named(text)) and between_rows(scene, text) is None


_A_PLACE = Pattern(r"\b(?:front|back|rear|first|last|second|third|near(?:er|est)?|far(?:ther|thest)?|furthest|behind)\b", re.I)
_WAS_ASKED = Pattern(r"\bwhat (?:was|did)\b|\bbefore\b|\bnow (?:reads?|gives?|it's|it is|at|on|i get|i have)\b|\b(?:reads?|gives?|get|have|had) (?:me )?f?/?\d[\d.]* (?:there|now)\b|\bwhere (?:it|i|he|she)\b", re.I)
_NEAR_ONE = Pattern(r"\b(?:near(?:er|est)?|close(?:r|st)?|front|first)\b(?: (?:one|person|row|face|man|woman|girl|boy|singer|subject|sitter|child|kid|side|rower))?\W*(?:is|(?:is |was )?set(?: to| for| at)?|reads?|at|gets?|meters?|metered|of|shows?|says?|=|:|with|gives?)*\W*$", re.I)
_FAR_ONE = Pattern(r"\b(?:far(?:ther|thest)?|furth(?:er|est)|back|rear|second|other|last)\b(?: (?:one|person|row|face|man|woman|girl|boy|singer|subject|sitter|child|kid|side|rower))?\W*(?:is|(?:is |was )?set(?: to| for| at)?|reads?|at|gets?|meters?|metered|of|shows?|says?|=|:|with|gives?)*\W*$", re.I)


_FOR_NEAR = Pattern(r"^\s*(?:is |was |being )?(?:right |good |correct |fine )?(?:for|at|on|off) (?:the |those at the )?(?:near(?:er|est)?|close(?:r|st)?|front|first)\b", re.I)
_FOR_FAR = Pattern(r"^\s*(?:is |was |being )?(?:right |good |correct |fine )?(?:for|at|on|off) (?:the |those at the )?(?:far(?:ther|thest)?|furth(?:er|est)|back|rear|last)\b", re.I)


def _apart(known: Fact, place: Fact, text: str) -> int:
    between = text[min(known.end, place.end) : max(known.start, place.start)]
    breaks = len(patterns.findall(r"[,;]|\b(?:if|and(?! (?:\w+ly )?(?:lit|exposed|right|correct|spot on|good|perfect|fine|reads?|meters?|metered|gets?|at|comes?)\b)|but|when|while|then|so)\b", between))
    return len(between) + 100 * breaks + (0 if place.sentence == known.sentence else 1000)


def scene_of(query: Query) -> Scene | None:
    """The places of a question; None when it holds no distance of that kind."""
    lengths = [f for f in query.facts if f.quantity == "distance" and f.of not in NOT_SUBJECT and not f.bad] or _of_the_one_moved(query)
    once = [f for n, f in enumerate(lengths) if not any(f.value == g.value and f.of == g.of for g in lengths[:n])]
    lengths = once if len(lengths) > 2 or patterns.search(r"exposed for|set for|right for", query.text, re.I) else lengths  # "from 5 ft to 10. It was f/16 at 5 ft"
    gaps = [f for f in query.facts if f.quantity == "gap"]
    ranges = [f for f in query.facts if f.quantity == "length_range"]
    moves = [f for f in query.facts if f.quantity == "move"]
    if not lengths and not gaps and not ranges:
        return Scene(rows=_rows(query, set()))
    by_place = {f.of: f for f in lengths if f.of in ("front", "back", "middle", "backdrop")}
    loose = [f for f in lengths if f.of not in by_place]
    rows = _rows(query, set(by_place))
    if gaps:
        return _with_the_sum(_with_gap(query, by_place, loose, gaps[-1], rows), query)
    if ranges and not loose and not by_place:
        one = ranges[-1]
        return Scene(one.value, one.other, rows=rows, used=(one,))
    if moves and len(loose) == 1 and not by_place:
        there = loose[0].value + moves[-1].value
        return Scene(loose[0].value, there, moved=True, used=(loose[0], moves[-1])) if there > 0 else None
    found = _moved_from_both(_by_places(by_place, loose, rows), moves, query.text)
    twice = tuple(f for f in query.facts if f.quantity == "distance" and found and f not in found.used and any(f.value == g.value and f.of == g.of for g in found.used))
    return replace(found, used=found.used + twice) if found and twice else found


def _of_the_one_moved(query: Query) -> list[Fact]:
    """"the rim light is at 2 m, where for a stop more from it", "rim light, 1/8 power at 3 feet; it has to go at 6": a light that does not light the subject's front is moved like any other."""
    placed, steps = query.all("distance"), query.all("stops")
    lamps = {f.of for f in placed}
    if len(lamps) != 1 or not lamps <= NOT_SUBJECT or any(f.of not in ("", *lamps) for f in query.facts) or query.has("guide_number") or query.has("aperture"):
        return []
    pushed = len(placed) == len(steps) == 1 and query.asks_for("distance")
    put_elsewhere = len(placed) == 2 and not steps and "background" not in lamps and query.asks_for("power", "stops", "factor")
    return placed if pushed or put_elsewhere else []


_OF_BOTH = Pattern(r"\b(?:than|between|under|below|over|above|behind|against|compared (?:with|to))\b|\b(?:difference|spread|fall[- ]?off|apart|from front to back|front to back)\b", re.I)


_BOTH_ENDS = Pattern(r"\b(?:front|first|near\w*|closest)\b[^?]*\b(?:back|last|rear|far\w*|furthest)\b|\b(?:back|last|rear|far\w*|furthest)\b[^?]*\b(?:front|first|near\w*|closest)\b", re.I)


def _moved_from_both(found: Scene | None, moves: list[Fact], text: str) -> Scene | None:
    """"front 2 m, back 4 m, I then go 3 m further back: how far under the front is the back now": both are as much farther."""
    if found is None or len(moves) != 1 or found.near is None or found.far is None or found.moved and not _BOTH_ENDS.search(text[moves[0].end :]) or not _OF_BOTH.search(text[moves[0].end :]):
        return found
    near, far = found.near + moves[0].value, found.far + moves[0].value
    return replace(found, near=near, far=far, used=(*found.used, moves[0]), moved=False) if near > 0 < far else found


def _rows(query: Query, places: set[str]) -> bool:
    return bool(query.cues & {"front", "back", "rows"} or places & {"front", "back"} or patterns.search(r"\brows?\b|\bgroup\b|choir|deep", query.text, re.I))


_IN_ALL = Pattern(r"(?<!stop )(?<!stops )(?<!stop from )(?<!stops from )\bfront to (?:the )?back\b|\bin all\b|\baltogether\b|\boverall\b|\bin total\b|(?<!stop from )(?<!stops from )\b(?:first|front) (?:row )?to (?:the )?(?:last|back|third|fourth)\b", re.I)

_STANDS = r"(?:'s|,| is| are| being| stands?| standing| sits?| sitting| a| an| about| some| roughly| only| just| another| all of| fully)*"
_LAST_ONE = r"\b(?:back|last|rear(?:most)?|hindmost|furthest|farthest|third|fourth|fifth)(?: (?:row|rank|tier|line|lot|ones?|people))?"
_FIRST_ONE = r"\b(?:front|first|nearest|foremost)(?: (?:row|rank|tier|line|lot|ones?|people))?"
_LAST_BEHIND: tuple[tuple[Pattern, Pattern], ...] = (
    (Pattern(rf"{_LAST_ONE}{_STANDS}\s*$", re.I), Pattern(rf"\s*(?:back |further |farther |away )?(?:behind|from|off|beyond)(?: (?:the |our |my )?{_FIRST_ONE}| it\b(?! \w+ing)|(?=\W*(?:$|[.,;?])))", re.I)),
    (Pattern(rf"{_FIRST_ONE}{_STANDS}\s*$", re.I), Pattern(rf"\s*(?:in front|ahead|before|nearer|closer)(?: (?:of|than|to))? (?:the |our |my )?{_LAST_ONE}", re.I)),
)
"""Round a gap that reaches from end to end, however many rows there are: "the back row stands 1.5 m behind the front one"."""


_DEEP_AFTER = Pattern(r"\W*(?:deep|(?:in|of) depth|long|(?:from )?end to end|from (?:one )?end to (?:the )?other)\b", re.I)
_DEPTH_BEFORE = Pattern(r"\bdepth(?: is| of|:|,| being)*(?: about| only| some)* $|\b(?:take up|takes up|taking up|fill|fills|occupy|occupies|cover|covers)(?: about| only| some| all of)* $", re.I)
"""Round how deep they all stand together: "three rows take up 1.5 m in depth"."""


_ORDINALS = ("second", "third", "fourth", "fifth")
_ORDER = ("front row", "second row", "third row", "fourth row", "fifth row")


def _with_the_sum(found: Scene, query: Query) -> Scene:
    """"2 m from her and the wall 3 m behind, so 5 m from the key": what the two come to, told besides, is used with them."""
    told = tuple(f for f in query.all("distance") if found.far is not None and f not in found.used and abs(f.value - found.far) < 0.01 * found.far)
    return replace(found, used=found.used + told) if told else found


def _with_gap(query: Query, by_place: dict[str, Fact], loose: list[Fact], gap: Fact, rows: bool) -> Scene:
    near = by_place.get("front") or (loose[0] if loose else None)
    backdrop = gap.of == "backdrop" or bool(patterns.search(r"backdrop|background|\bwall\b", query.text, re.I) and not patterns.search(r"\brows?\b|deep", query.text, re.I))
    count = query.last("rows")
    numbered = max((_ORDINALS.index(m.group(1).lower()) + 2 for m in patterns.finditer(r"\b(third|fourth|fifth)\b(?! of a|[- ](?:of )?(?:a[- ])?stop)", query.text, re.I)), default=0) if count is None and gap.of != "backdrop" else 0
    spoken = patterns.search(r"\brows?\b.*\b(?P<n>three|four|five|six|[3-9]) of them\b", query.text, re.I)
    many = count.value if count else float({"three": 3, "four": 4, "five": 5, "six": 6}.get(spoken.group("n").lower()) or spoken.group("n")) if spoken else float(numbered or 1)
    beside = query.text[max(0, gap.start - 40) : gap.start], query.text[gap.end : gap.end + 40]
    whole = gap.cue == "in_all" or _IN_ALL.search(query.text[max(0, gap.start - 24) : gap.end + 28]) is not None or any(last.search(beside[0]) and behind.match(beside[1]) for last, behind in _LAST_BEHIND) or (_DEEP_AFTER.match(beside[1]) or _DEPTH_BEFORE.search(beside[0])) is not None and "each" not in beside[0].lower() + beside[1].lower()[:12]  # "1.2 m from front to back"
    depth = gap.value * (many - 1 if many > 2 and not whole else 1)
    used = tuple(f for f in (near, gap, count) if f)
    far = by_place.get("backdrop") if backdrop else by_place.get("back")
    if near is None and far is not None and far.value > depth:
        return Scene(far.value - depth, far.value, depth, "background" if backdrop else "", rows and not backdrop, used=(*used, far))
    move = query.last("move")
    if near is not None and move is not None and near.value + move.value > 0 and not backdrop:
        there = near.value + move.value  # "front row at ten feet, rows five feet apart, I move it back another ten"
        return Scene(there, there + depth, depth, "", rows, used=(*used, move), near_fact=near)
    middle = by_place.get("middle")
    if near is None and middle is not None and not backdrop and middle.value > depth / 2:
        return Scene(middle.value - depth / 2, middle.value + depth / 2, depth, "", rows, used=(*used, middle))
    distance = near.value if near else None
    if near is not None and rows and not backdrop and many > 2 and not whole:
        between = tuple((_ORDER[n], near.value + gap.value * n) for n in range(1, int(many) - 1) if n < len(_ORDER))
        between += (("middle row", near.value + depth / 2),) if many % 2 else ()
        between += ((_ORDER[int(many) - 1], near.value + depth),) if many <= len(_ORDER) else ()
        return Scene(near.value, near.value + depth, depth, "", rows, used=used, near_fact=near, others_asked=between)
    if near is not None and rows and not backdrop and many == 3 and whole:
        middle_row = near.value + depth / 2
        return Scene(near.value, near.value + depth, depth, "", rows, used=used, near_fact=near, others_asked=(("middle row", middle_row), ("second row", middle_row), ("third row", near.value + depth)))
    return Scene(distance, distance + depth if distance is not None else None, depth, "background" if backdrop else "", rows and not backdrop, used=used, near_fact=near)


def _by_places(by_place: dict[str, Fact], loose: list[Fact], rows: bool) -> Scene | None:
    front, back, backdrop, middle = (by_place.get(n) for n in ("front", "back", "backdrop", "middle"))
    near = front or (loose[0] if loose else middle)
    far = back or (backdrop if backdrop is not near else None) or (middle if middle is not near else None)
    if front is None and back is not None and near in loose and near is not None and near.value > back.value:
        near, far = back, near  # "4.5 m back row, 3 m front row": the places are named after their figures
    if far is None and near in loose and len(loose) > 1:
        far = loose[-1]
        return Scene(near.value, far.value, rows=rows and not _moving(near, far), moved=_moving(near, far), used=(near, far), near_fact=near, far_fact=far)
    if far is None and near is not None and near not in loose and loose:
        near, far = sorted((near, loose[0]), key=lambda f: f.value)
    if near is None and far is None:
        return None
    if near is None and far is not None:
        near, far = far, None
    assert near is not None
    others = (("middle row", middle.value),) if middle and middle not in (near, far) else ()
    return Scene(near.value, far.value if far else None, of="background" if far is backdrop and far else "", rows=rows and far is not backdrop,
                 others=others, used=tuple(f for f in (near, far, middle if others else None) if f), near_fact=near, far_fact=far)


def _moving(near: Fact, far: Fact) -> bool:
    """"from 2 m to 3 m"; "f/16 from 2 m, what from 4 m" are two places, and nothing moves."""
    return (near.cue == "from" or far.cue == "to") and not near.cue == far.cue == "from"


def meant(query: Query, ask: Ask, scene: Scene) -> str:
    """What is asked; "what now", of a light that moved and whose power alone was told, is a power."""
    if ask.quantity == "aperture" and scene.moved and query.has("power") and not query.has("aperture") and patterns.search(r"same exposure|keep|same (?:f|stop|aperture|reading|brightness)|unchanged|what now", query.text, re.I):
        return "power"
    return "stops" if _means_stops(query, ask, scene) else ask.quantity


def _means_stops(query: Query, ask: Ask, scene: Scene) -> bool:
    """"How far under does it go", "what's the fall-off": stops, in words that name another quantity or none."""
    if scene.near and scene.far and ask.quantity in ("near_limit", "far_limit") and patterns.search(r"\bstops\b|darker", query.text, re.I):
        return True
    if scene.near and scene.far and patterns.search(r"fall[- ]?off|what(?:'s| is) lost|\bloss\b|what do(?:es)? [^?]{0,24}\b(?:lose|gain|drop)|what (?:do|have|did|would|will) (?:i|we) (?:gain|lose|lost)|how (?:much )?(?:dark|dim)|how much (?:less )?light", query.text, re.I) and not query.has("aperture"):
        return not query.has("stops", "gap") and not query.has("stops")
    if ask.quantity in ("distance", "factor", "power") and scene.far is None and times_as_far(query) is not None and patterns.search(r"\blight\b|\bstops\b", query.text, re.I) and patterns.search(r"fraction|share|proportion|per ?cent|how much of|what part|factor", query.text, re.I):
        return True
    return ask.quantity == "distance" and bool(patterns.search(r"how far (?:down|under|below|over|above)\b|how far (?:does|do|will|would|is|are) [^?]{0,28}\b(?:under|below|beneath|behind) (?:him|her|them|it|the (?!light|flash|lamp|key)\w+|my \w+)\W*(?:$|if\b|when\b|in stops)|how (?:many stops|dark|bright)", query.text, re.I)) and not query.has("stops", "relation")


SO_FAR = Pattern(r"\b(?:twice|double|half|three times|four times|\d(?:\.\d+)? times) (?:as (?:far|close|near|distant)|(?:the|its|the key's) distance|further|farther)\b", re.I)
"""Said of a place by how many times as far it is as another."""


def times_as_far(query: Query) -> float | None:
    """"double the distance", "half as far": how many times the distance, when no distances were said."""
    if query.has("guide_number") or query.has("distance"):
        return None
    said = patterns.search(r"\b(?P<n>doubl|twice|halv|half|tripl|thrice|three times|quadrupl|four times)\w*\b(?:(?!\bpower\b)[^.?;]){0,24}\b(?:distance|as far|as close|as near|away)", query.text, re.I) or patterns.search(r"\bdistance (?:is |was |were |being |gets |has been )?(?P<n>doubl|halv|tripl|quadrupl)ed\b", query.text, re.I)
    times = query.last("times")
    if said and (times is None or times.origin != "said" or query.text[times.start : times.end] == times.said):  # "and four times?" in place of the words of the question
        nearer = patterns.search(r"\bas (?:close|near)\b", said.group(), re.I) is not None
        many = {"doubl": 2.0, "twice": 2.0, "halv": 0.5, "half": 0.5, "tripl": 3.0, "thrice": 3.0, "three times": 3.0, "quadrupl": 4.0, "four times": 4.0}[said.group("n").lower()]
        return 1 / many if nearer else many
    if times and times.cue == "further" and times.value > 0:
        return times.value
    return times.value if times and times.value > 0 and patterns.search(r"(?:times|\dx|\d ×|\bx\d[\d.]*) ?(?:(?:the |its |that |his |her |my )?(?:former |old |first |original |previous |present )?distance|as far|as distant|further|farther|away|the way)", query.text, re.I) else None


_IF_MOVED = Pattern(r"\b(?:if|when|once|after|now|then)\b[^.?!]{0,40}\b(?:doubl|halv|tripl|quadrupl|twice|three times|half|four times)", re.I)


def taken_further(query: Query, scene: Scene) -> Scene:
    """"the wall a metre behind her; when I double the light's distance to her": both places from where the light then is, for what lies between stays."""
    if scene.gap is None or not scene.near or scene.rows or not _IF_MOVED.search(query.text):
        return scene
    times = times_as_far(query.with_facts(f for f in query.facts if f.quantity != "distance"))
    return scene if times is None else replace(scene, near=scene.near * times, far=scene.near * times + scene.gap)


def two_lights(query: Query) -> bool:
    """Whether more than one named light has quantities of its own."""
    named = {f.of for f in query.facts if f.quantity in ("distance", "guide_number", "power") and f.of not in PLACES and f.of not in ("", "background")}
    return len(named) > 1


_WHAT_MOVES = Pattern(r"how far (?:back|closer|nearer|in|out)\W*\?|how much|how many (?:feet|metres|meters|cm|inches|more)|how far (?:back |in |out |away )?(?:do|must|should|would|to|can|does|will|may|might|could)\b.{0,24}\b(?:move|go|pull|shift|slide|bring|drag|push|step|back|walk|stray|wander|drift|lean|roam|retreat|edge|creep)\b|by how (?:much|far)", re.I)
_NEW_PLACE = Pattern(r"\bfrom (?:him|her|them)\b|from the (?:front|near|first|subject|sitter|closest)|\b(?:be|sit|stand|placed?|put|end up)\b.{0,30}\?|\bnew distance\b|\bwhat distance\b|\bwhere\b", re.I)
_TO_WHERE = Pattern(r"\bto (?:how many|what|which)\b", re.I)


def asks_move(query: Query, ask: Ask) -> bool:
    """"how many feet do I move it": the way that it goes, and not where it then stands."""
    if _TO_WHERE.search(query.text):
        return False
    moved = ask.of == "move" or patterns.search(r"how (?:much|far) (?:further|farther|closer|nearer)|how (?:much|many)\b(?! (?:feet|metres|meters|foot|inches) (?:away )?from (?:him|her|them|the (?:subject|sitter|model|face|bride|groom|child))\b)", query.text, re.I)
    asked = last_question(query.text)
    return bool(moved) or bool(_WHAT_MOVES.search(query.text)) and not _NEW_PLACE.search(query.text if asked is None else query.text[asked[0] : asked[1] + 1])

"""What a change from one figure to another is said to do: "going from 1/60 to 1/250 darkens the room by two stops and leaves the flash alone".

Flash and ambient light are reckoned each by itself, and every clause that says something of one of them is held
against it: how many stops, what share, more or less, as much as the other, or nothing at all.
"""

from __future__ import annotations

import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.places import ROOMS
from assistant.query import Fact, Query
from assistant.records import record, replace
from assistant.scales import speak_stops
from assistant.solving import how_much, marks
from assistant.solving.before_after import difference
from assistant.solving.claim_bounds import STRICT
from assistant.solving.claim_denial import called_wrong
from assistant.solving.claim_rules import keeps_together
from assistant.solving.claim_words import SETTING_STAYS, plain
from assistant.solving.how_much import Said
from assistant.solving.shares import shares
from assistant.solving.solution import Solution

_CAMERA, _LAMP = frozenset({"shutter", "aperture", "film_speed"}), frozenset({"distance", "power", "energy"})
_CHANGED = _CAMERA | _LAMP | {"exposure_value"}
_SO_MANY = ("stops", "relation", "loss", "filter_loss", "signed", "power_down")
_TOLD = frozenset({"aperture", "film_speed", "distance", "guide_number", "duration", "t05", "t01", "sync", "format", "modifier", "remark", "place", "power", "focal_length", "rows", "count", "times", "number", "share"})
"""What may be told beside the change, and stays."""
_TO = Pattern(r"(?: ?s(?:ec\w*)?)?[ ,]*(?:(?:down|up|out|back|over|in|away|all the way|on)[ ,]+)*(?:to|->|→) *(?:about |an? )?(?:iso |f ?/ ?)?")
_INSTEAD = Pattern(r"(?: ?s(?:ec\w*)?)? *(?:instead of|rather than|in place of) *(?:about |an? )?")
_IS_READ = Pattern(r"\b(?:get|gets|got|gives?|gave|reads?|meters?)(?: me| only| about)* $|\b(?:reading|meter)\b[^.;?!]{0,24}\bfrom $")
FLASH = Pattern(r"\b(?:flash(?!es)(?:'s)?|strobe|speedlight|key|fill)\b")
AMBIENT = Pattern(rf"\b(?:ambient|daylight|available|existing|sky|skies|sun(?:light|shine|set)?|windows?|back(?:ground|drop)|surroundings|scene|lamps|(?:{ROOMS}))\b")
_BEHIND = Pattern(r"\b(?:back(?:ground|drop)|wall|scene|camera)\b")
_PARTS = Pattern(r"(?:[;:?!]|[.,](?!\d)|\b(?:and|but|while|whereas|yet|though)\b)")
_STAYS = Pattern(r"\b(?:leav\w+|keeps?|kept|stay\w*|remain\w*|does nothing|do nothing|nothing to|has nothing)\b[^.;?!]{0,40}\b(?:alone|as (?:it|they) (?:was|were|is|are)|unchanged|untouched|the same|where (?:it|they) (?:was|were|is|are)|in peace)\b|\b(?:unchanged|untouched|unaffected|(?:no|any) (?:effect|difference|change)|the same as before|does nothing|do nothing|nothing to do with|nothing(?: at all)? (?:off|from|for|on|to|of))\b|\b(?:stays?|remains?)\b(?: (?:put|the same))?\s*$|\b(?:is|are) the same\b")
_ALTERS = Pattern(r"\b(?:chang(?:es?|ing) (?!from)|affects?|alters?|touch(?:es)?|matters?)\b")
_MORE = Pattern(r"\b(?:bright\w*|lift\w*|rais\w*|gain\w*|lighten\w*|lighter|com(?:es?|ing) up|more|increas\w*|adds?|boost\w*|stronger)\b")
_LESS = Pattern(r"\b(?:dark\w*|dim(?:s|mer|ming)?\b|cuts?|costs?|los(?:es?|t|ing)|drops?|reduc\w*|less|weaken\w*|weaker|lower\w*|tak(?:es?|ing) (?:off|away|from|light|some)|falls?|fell|sinks?|rob\w*)\b")
_AS_MUCH = Pattern(r"\b(?:as (?:much|hard|strongly|badly|many stops)|by the same|equally|alike|the same amount|just like|to the same)\b")
_THAN = Pattern(r"\b(?P<way>more|less)\b[^.;?!]{0,30}\bthan\b")
_NO = Pattern(r"\b(?:not|no|never|without|neither|nor|hardly)\b|n't\b")
_OTHER_MATTER = Pattern(r"\b(?:bulbs?|hss|high[- ]speed sync|ttl|depth|dof|hyperfocal|sharp\w*|in focus|(?:deeper|shallower) (?:focus|zone)|zone of focus|far|farther|further|grain\w*|contrast\w*|soft\w*|reach\w*|range|guide numbers?|recycl\w*|batter\w+|fall-?off|even\w*|ratio|balance|blur\w*|freez\w*|energy|enough|compensat\w*|cancel\w*|makes? up|make good|takes? (?:about |more than |less than |at least |at most )*(?:twice|double|half|\w+ times)|needs?|requires?|wants?|calls? for|asks? for|rat(?:e|ed|es|ing)|push\w*|pull\w*|motion|ghost\w*|nd|filter|open(?:s|ing)? up|stop(?:s|ping)? down|clos(?:e|es|ing) down|turn(?:s|ing)? (?:\w+ )?(?:up|down)|rows)\b")
_ROWS = Pattern(r"\bfront\b.*\bback row|\bback row.*\bfront\b")
_FASTEST = 1 / 300
"""Seconds; a shorter time is within sync with a leaf shutter only."""
_BRIEF = 0.001
"""Seconds that an electronic flash lasts at most where nothing is told."""


@record
class Effect:
    """What a change does, in stops: to the flash (None where it is cut short by so much as nobody can tell), to the ambient light, and to what is named neither."""

    flash: float | None
    ambient: float | None
    light: float | None


def claim_of_change(query: Query) -> Solution | None:
    """The verdict on all that a change is said to do; None where a clause of it cannot be judged."""
    said = plain(query.text)
    pairs = _pairs(query, said)
    if not query.claim or not pairs or _OTHER_MATTER.search(said):
        return None
    effect = _effect(query, said, pairs)
    clauses = _clauses(query, said, pairs)
    if effect is None or not clauses:
        return None
    sizes = how_much.every(query)
    judged = []
    for number, (start, end) in enumerate(clauses):
        apart = _NOT_THAT.search(said[start:end]) if not _says_something(said[start:end], query, start, end) else None
        told = clauses[number - 1] if apart else (start, end)
        judged.append(_judge(said, told[0], told[1], effect, [s for s in sizes if told[0] <= s.start < told[1]], said[start:end] if apart else ""))
        if apart and apart["not"] and judged[-1] is not None:
            judged[-1] = not judged[-1]
    if None in judged or not _all_taken(query, said, pairs, clauses):
        return None
    holds = all(judged) is not called_wrong(said)
    answers = tuple(marks.stops(v, of) for v, of in ((effect.ambient, "ambient"), (effect.flash, "flash")) if v is not None and len({f.quantity for p in pairs for f in p} & _CAMERA)) or ((marks.stops(effect.light),) if effect.light is not None else ())
    return Solution(answers=(Quantity("claim", holds), *answers), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. {_told(pairs, effect)}")


def _told(pairs: list[tuple[Fact, Fact]], effect: Effect) -> str:
    def of(stops: float) -> str:
        return "nothing" if abs(stops) < 0.005 else f"{speak_stops(abs(stops))} {'more' if stops > 0 else 'less'}"

    kinds = {f.quantity for pair in pairs for f in pair}
    if not kinds & _CAMERA:
        return f"It comes to {of(effect.light)} of the light." if effect.light is not None else ""
    flash = "the flash is still burning when the shutter closes and loses part of its light" if effect.flash is None else f"of the flash {of(effect.flash)}"
    return f"Of the ambient light it makes {of(effect.ambient or 0.0)}, {flash}."


# --- what changes -----------------------------------------------------------------------------------


def _pairs(query: Query, said: str) -> list[tuple[Fact, Fact]]:
    """The values from and to, each of one quantity, in the order of the change; none where a quantity that changes is told once more."""
    facts = sorted((f for f in query.facts if f.quantity in _CHANGED and f.origin == "said" and not f.bad), key=lambda f: f.start)
    found = []
    for one, other in zip(facts, facts[1:], strict=False):
        between = said[one.end : other.start]
        if one.quantity == other.quantity and one.value > 0 and other.value > 0 and (one.value != other.value):
            if _TO.fullmatch(between):
                found.append((one, other))
            elif _INSTEAD.fullmatch(between):
                found.append((other, one))
    found += _crossed(facts, said) + _by_so_many(query, said)
    found += [(replace(f, quantity=_RANGES[f.quantity]), replace(f, quantity=_RANGES[f.quantity], value=f.other)) for f in query.facts if f.quantity in _RANGES and f.origin == "said" and "to" in f.said.lower().split() and min(f.value, f.other) > 0 and f.value != f.other]
    kinds = [pair[0].quantity for pair in found]
    if len(kinds) != len(set(kinds)) or any(sum(f.quantity == kind for f in facts) not in (0, 2) for kind in kinds):
        return []
    return found


_RANGES = {"length_range": "distance", "aperture_range": "aperture"}
_AND = Pattern(r"[ ,]*(?:and|at|with|,)[ ,]*(?:at )?")


_OF_THE_LENS = Pattern(r"\b(?:(?P<less>clos(?:e|es|ed|ing)|stop(?:s|ped|ping)?)|open(?:s|ed|ing)?) (?:the |my |his |her )?(?:aperture|lens|iris|diaphragm|ring)(?: (?:up|down))?(?: by)?(?: (?:exactly|just|only|another))* $")
"""Before the stops by which the lens is opened or closed."""


def _by_so_many(query: Query, said: str) -> list[tuple[Fact, Fact]]:
    """"closing the aperture by two stops": from any mark to the one that is so far from it."""
    found = []
    for fact in query.facts:
        done = _OF_THE_LENS.search(said[: fact.start]) if fact.quantity in _SO_MANY and fact.origin == "said" and fact.value > 0 else None
        if done is not None:
            found.append((replace(fact, quantity="aperture", value=1.0), replace(fact, quantity="aperture", value=2 ** (fact.value / 2 * (1 if done["less"] else -1)))))
    return found


def _crossed(facts: list[Fact], said: str) -> list[tuple[Fact, Fact]]:
    """"from 1/60 and f/8 to 1/30 and f/11": two settings changed in one breath."""
    for a, b, c, d in zip(facts, facts[1:], facts[2:], facts[3:], strict=False):
        if (a.quantity, b.quantity) == (c.quantity, d.quantity) and a.quantity != b.quantity and _TO.fullmatch(said[b.end : c.start]) and _AND.fullmatch(said[a.end : b.start]) and _AND.fullmatch(said[c.end : d.start]):
            return [(a, c), (b, d)]
    return []


def _effect(query: Query, said: str, pairs: list[tuple[Fact, Fact]]) -> Effect | None:
    kinds = {pair[0].quantity for pair in pairs}
    if _ROWS.search(said):
        return None
    told = _TOLD if len({f.value for f in query.all("shutter")}) > 1 else _TOLD | {"shutter"}  # one time that stays
    others = {f.quantity for f in query.facts} - kinds - told - {*_SO_MANY, "factor", *_RANGES}
    if others or "distance" in kinds and (keeps_together(query.text) or _BEHIND.search(said)):
        return None
    if any(a.quantity == "aperture" and _IS_READ.search(said[: min(a.start, b.start)]) for a, b in pairs):
        return _of_reading(pairs) if kinds == {"aperture"} else None
    if "exposure_value" in kinds:
        change = sum(b.value - a.value for a, b in pairs if a.quantity == "exposure_value")
        return Effect(None, change, change) if kinds == {"exposure_value"} and not FLASH.search(said) else None
    by = {a.quantity: difference(a.quantity, a.value, b.value) for a, b in pairs}
    ambient = sum(stops for kind, stops in by.items() if kind in _CAMERA)
    flash: float | None = sum(stops for kind, stops in by.items() if kind != "shutter")
    if "shutter" in kinds and not _in_sync(query, min(f.value for pair in pairs for f in pair if f.quantity == "shutter")):
        if not any(f.quantity in ("duration", "t05", "t01") for f in query.facts):
            return None if FLASH.search(said) else Effect(None, ambient, ambient)
        flash = None
    if _DARK.search(said) and FLASH.search(said) and not AMBIENT.search(_DARK.sub(" ", said)):
        return Effect(flash, ambient, flash)
    light = flash if not kinds & {"shutter"} and (kinds <= _LAMP or flash == ambient) else ambient if kinds <= _CAMERA and not FLASH.search(said) else None
    return Effect(flash, ambient, light)


def _of_reading(pairs: list[tuple[Fact, Fact]]) -> Effect:
    """What a reading that changed says of the light: a meter gives the larger number where there is more."""
    change = sum(difference("aperture", b.value, a.value) for a, b in pairs)
    return Effect(change, change, change)


def _in_sync(query: Query, shortest: float) -> bool:
    """Whether the shutter is all open for all of the flash at the shortest time."""
    lasts = max((f.value for f in query.facts if f.quantity in ("t01", "duration", "t05")), default=_BRIEF)
    if lasts > shortest:
        return False
    sync = query.last("sync")
    return "leaf" in query.cues or shortest >= (sync.value * 0.9 if sync is not None else _FASTEST)


# --- what is said of it -------------------------------------------------------------------------------


def _clauses(query: Query, said: str, pairs: list[tuple[Fact, Fact]]) -> list[tuple[int, int]]:
    """The clauses that say what follows, without those that tell a figure or nothing of light; a part named alone goes with the clause after it."""
    spans = [(min(p[0].start, p[1].start), max(p[0].end, p[1].end)) for p in pairs]
    spans = [(min(a for a, b in spans if a < end and start < b), max(b for a, b in spans if a < end and start < b)) for start, end in spans]
    changed = {(f.start, f.quantity) for p in pairs for f in p}
    fixed = [f for f in query.facts if f.quantity in _TOLD and (f.start, f.quantity) not in changed and f.quantity not in ("remark", "place", "times", "number", "share", "count", "power", "modifier", "rows")]
    figures = [f.start for f in fixed]
    stays = [f.end for f in fixed if any(end <= f.start and _STAYS_AT.fullmatch(said, end, f.start) for _, end in spans)]
    cuts = [0, *(edge for span in spans for edge in span), *stays, *(m.start() for m in _PARTS.finditer(said)), len(said)]
    edges = sorted(set(cuts))
    found: list[tuple[int, int]] = []
    for start, end in zip(edges, edges[1:], strict=False):
        words = said[start:end]
        if any(a <= start < b for a, b in spans) or any(start <= at < end for at in figures) or any(end == a for a, _ in spans) and words.rstrip().endswith("from"):
            continue
        says = _says_something(words, query, start, end)
        if found and not says and _NOT_THAT.search(words):
            found.append((start, end))
            continue
        if not FLASH.search(words) and (_LEFT_ALONE.fullmatch(words) or SETTING_STAYS.search(words) or _IN_THE_DARK.fullmatch(words)):
            continue
        if found and found[-1][1] <= spans[0][0] and _SENTENCE_ENDS.search(said, found[-1][1], spans[0][0] + 1) and not _says_something(_DARK.sub(" ", said[found[-1][0] : found[-1][1]]), query, *found[-1]):
            found.pop()  # where it is, told by itself: "window light and flash mixed."
        if says and found and not _says_something(said[found[-1][0] : found[-1][1]], query, *found[-1]):
            found[-1] = (found[-1][0], end)
        elif says or (FLASH.search(words) or AMBIENT.search(words)) and _NAMED.search(words):
            found.append((start, end))
    return found if all(_says_something(said[a:b], query, a, b) or _NOT_THAT.search(said[a:b]) for a, b in found) else []


_STAYS_AT = Pattern(r"[ ,]*(?:at|with|on|and)(?: (?:an?|the|my))?(?: (?:fixed|steady|constant|shutter|shutter (?:at|of)|same))* ")
"""Between a change and a setting that stays: "from f/4 to f/8 at 1/60 takes …"."""
_LEFT_ALONE = Pattern(r"\W*(?:(?:with|and) )?(?:the |my )?(?:aperture|lens|f-?stop|shutter|power|film speed|iso|distance)(?: (?:left|being|kept))? (?:untouched|unchanged|alone|fixed|constant|the same)\W*")
_DARK = Pattern(r"\b(?:in (?:an? |the )?(?:[a-z]+[- ])?(?:dark|black)(?:ened|ed[- ]out)?(?: [a-z]+)?|pitch[- ](?:dark|black)(?: [a-z]+)?|(?:blacked|backed)[- ]out(?: [a-z]+)?|unlit [a-z]+)\b")
"""There is no light there but the flash."""
_IN_THE_DARK = Pattern(r"\W*(?:in|inside|at|all in) (?:an?|the|my|this|that) (?:[\w-]+[- ]){0,3}(?:dark|dark(?:ened|room)|blacked[- ]out|backed[- ]out|unlit)(?:[ -][\w-]+){0,2}\W*")
"""Where it is done, with no light there but the flash."""
_SENTENCE_ENDS = Pattern(r"[;?!]|[.](?!\d)")
_NOT_THAT = Pattern(r"^\W*(?:(?:and|but|yet|though)\W+)?(?:(?P<not>not|never)|too|also|as well as)\b(?: (?:in|on|of|off|from))? (?:the |my )?[a-z]+(?: (?:light|exposure|part))?\W*$|^\W*and (?:(?:of|on|off|from|in) )?(?:the |my )?[a-z]+(?: (?:light|exposure|part))? (?:by (?:exactly |just )?(?:the same|as much)(?: (?:stops?|amount))?|too|as well|likewise|alike|just as much)\W*$")
"""What goes with, or without, what was said of another: "darkens the room, but not the flash"."""


_NAMED = Pattern(r"\b(?:the|my|both)\b")


def _says_something(words: str, query: Query, start: int, end: int) -> bool:
    return any(p.search(words) for p in (_STAYS, _ALTERS, _MORE, _LESS)) or any(start <= s.start < end for s in how_much.every(query))


def _judge(said: str, start: int, end: int, effect: Effect, sizes: list[Said], of: str = "") -> bool | None:
    """Whether one clause holds, of what it names or of what is named in `of`."""
    words = said[start:end]
    only = _ONLY.search(words)
    told = of or (words[only.end() :] if only and _IS_LIGHT.match(words, only.end()) else words)
    flash, ambient = FLASH.search(told), AMBIENT.search(told)
    denied = len(_NO.findall(words)) % 2 == 1
    if flash and ambient and (_AS_MUCH.search(words) or _THAN.search(words)):
        return _of_both(words, effect, flash.start() < ambient.start(), denied)
    rights = [effect.flash] * bool(flash) + [effect.ambient] * bool(ambient) or [effect.light]
    sized = [s for s in sizes if s.kind in ("stops", "share")]
    if len(sized) > 1:
        return None
    if sized:
        if None in rights:
            return None
        return all([how_much.holds(sized[0], right or 0.0, said) for right in rights])
    judged = [_unsized(words, right, denied, flash is not None) for right in rights]
    return None if None in judged else all(judged) and not (_ONLY.search(words) and _other_too(effect, flash is not None, ambient is not None))


_ONLY = Pattern(r"\b(?:only|nothing but)\b(?! (?:a|an|one|two|three|half|by)\b)")


_IS_LIGHT = Pattern(rf" (?:of |on |in |for )?(?:the |my )?(?:\w+ )?(?:{FLASH.pattern}|{AMBIENT.pattern})")
"""After an "only", what is meant by it, whatever else was named before."""


def _other_too(effect: Effect, flash: bool, ambient: bool) -> bool:
    """Whether what is not named changes too: "darkens only the flash"."""
    other = effect.ambient if flash and not ambient else effect.flash if ambient and not flash else 0.0
    return other is None or abs(other) > STRICT


def _unsized(words: str, right: float | None, denied: bool, of_flash: bool) -> bool | None:
    """What is said with no figure: that it stays, that it changes, or which way."""
    if right is None and not of_flash:
        return None
    value = -1.0 if right is None else right  # a flash that is cut short loses light
    stays = abs(value) <= STRICT
    if _STAYS.search(words):
        idle = re.compile(r"\b(?:no|any) (?:effect|difference|change)\b|\bnothing\b").sub(" ", words)
        return stays is not (len(_NO.findall(idle)) % 2 == 1)
    less, more = _LESS.search(words) is not None, _MORE.search(words) is not None
    if less is not more:
        return ((value < -STRICT) if less else (value > STRICT)) is not denied
    if _ALTERS.search(words) and not (less or more):
        return stays is denied
    return None


def _of_both(words: str, effect: Effect, flash_first: bool, denied: bool) -> bool | None:
    """Whether the one changes as much as the other, or more, or less, and the way that is said."""
    if effect.flash is None or effect.ambient is None:
        return None
    one, other = (effect.flash, effect.ambient) if flash_first else (effect.ambient, effect.flash)
    than = _THAN.search(words)
    if than is None:
        holds = abs(one - other) <= STRICT
    else:
        holds = abs(one) - abs(other) > STRICT if than["way"] == "more" else abs(other) - abs(one) > STRICT
    bare = words if than is None else words[: than.start()]
    less, more = _LESS.search(bare) is not None, _MORE.search(bare) is not None
    largest = max((one, other), key=abs)
    if less is not more and abs(largest) > STRICT and (largest < 0) is not less:
        holds = False
    return holds is not denied


def _all_taken(query: Query, said: str, pairs: list[tuple[Fact, Fact]], clauses: list[tuple[int, int]]) -> bool:
    """Whether every number of stops and every share stands in a clause that was judged: else something more was said."""
    changed = {f.start for pair in pairs for f in pair}
    stops = [f for f in query.facts if f.quantity in (*_SO_MANY, "factor") and f.start not in changed]
    sizes = how_much.every(query)
    if any(not any(s.start <= f.start < s.end or s.figure[0] <= f.start < s.figure[1] for s in sizes) for f in stops):
        return False
    inside = [f.start for f in stops]
    fixed = [f for f in query.facts if f.quantity in (*_CHANGED, "guide_number", "duration", "t05", "t01", "sync", "focal_length", *_RANGES)]
    inside += [s.start for s in shares(said) if not any(f.start < s.end and s.start < f.end for f in fixed if f.quantity != "power" or "power" in f.said.lower() or any(f in p for p in pairs))]
    return all(any(a <= at < b for a, b in clauses) for at in inside)

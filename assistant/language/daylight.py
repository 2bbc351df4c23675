"""Daylight: which settings are a reading of the light that is there, and which are worked at.

"Daylight metered f/8 at 1/500, now 1/200": two settings, the first a reading. Apertures,
shutter times and film speeds of a reading belong to "ambient"; those worked at belong to
nobody. "Two stops under" becomes a relation of the fill or of the ambient light.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language import fading
from assistant.language.ambient_words import AMBIENT, LIGHT_ALONE, OF_FLASH, metered_thing, signed_fill, sky_in_stops
from assistant.language.metered_at import conditions
from assistant.language.number_words import STOPS_SPOKEN
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import record, replace

SKIES = frozenset({"sunny", "hazy", "overcast", "heavy_overcast", "shade", "snow"})
_LONGEST_CLAUSE = 300  # letters looked through; nobody says more of one figure without a mark
METERED = Pattern(r"\b(?<!nothing )(?<!nothing's )(?<!nothing is )(?<!not )(?<!never )(?<!no )(?<!without a )(?<!no meter )(?<!sunny 16 )(?<!sunny sixteen )(?:meter(?:s|ed|ing)?|reads?|reading|readings|says|incident|spot|correct exposure|normal exposure|(?<!flash )exposure is)\b", re.I)
IS_AMBIENT = Pattern(rf"\b(?:{AMBIENT})\b", re.I)
_WORKED = Pattern(r"\b(?:i'm|i am|im|i'll|i will|i've|shooting|shoot|set to|set at|set for|working|work|using|want|hold|holding|now|keep|keeping|going to|go to|open(?:ed)? (?:up )?to|stop(?:ped)? down to|"
                     r"my flash|the flash|flash (?:is|gives|reads|exposure)|flash at|flash alone|instead|camera (?:is|at|set)|need|lens (?:is )?at|if i)\b", re.I)
_SPEAKS = Pattern(rf"^\W*(?:and |but |so |then )?(?:the |my |our )?(?:\w+ )?(?:{AMBIENT})(?: light| outside| behind \w+(?: \w+)?| on \w+(?: \w+)?| alone| by itself|,)*\s+(?:is|alone|reads?|meter(?:s|ed)?|gives|puts|wants|needs|would be|by itself|comes|(?=1/\d|f\s?/?\d))\b(?!.*\b(?:i'm|i am|want)\b.*\b(?:at|on)\b\W*\w*$)", re.I)
_END = Pattern(r"[.!?;](?=\s|$)")
_LESS = r"too (?:dark|dim)|under(?:exposed?|neath)?|below|darker|dimmer|down|less|lower|under the|weaker"
_MORE = r"too (?:bright|hot|light)|over(?:exposed?)?|above|brighter|hotter|more|higher"
_AFTER = Pattern(rf"^[\s,]*(?:of )?(?:light )?(?:too )?(?P<way>{_LESS}|{_MORE})\b\s*(?:than|as|from|on)?\s*(?:the |my |what the |that |her |its |normal )*(?P<than>[a-z]+(?: [a-z]+)?)?", re.I)
_BEFORE = Pattern(r"\b(?P<way>too (?:bright|hot|light|dark|dim)|gain(?:s|ed)?|lift(?:ed)?|minus|under|underexposed?|underexpos(?:e|ing)|darken(?:ed)?|drop(?:s|ped)?|down|kill(?:ed)?|lower(?:ed)?|over|overexposed?|brighten|knock(?:ed)?(?: \w+)? (?:back|down)|below)\b[\w\s]{0,25}$", re.I)
_FLASH_ITSELF = Pattern(r"\b(?:flash|strobe|speedlight|flashgun|key|fill)(?: alone| by itself| on its own)?(?: \w+| (?:from|on|at) (?:the |her |his )?\w+(?: side)?)? (?:reads?|meter(?:s|ed)?|is|gives?|gave|puts|says)\b|\b(?:bare|flash) (?:head |bulb )?reading\b", re.I)
_THAN_FLASH = Pattern(r"\b(?:flash|key|main|strobe|subject|exposure|sitter|face|faces|her|him|them|bride|couple|model)\b", re.I)


_HOW_FAR_AT = Pattern(r"\bhow (?:far|much|many stops)\b[^.?!]*\b(?:be|come|comes|go|goes|fall|falls|end up|look|sit|read|lie)\b[^.?!]*$", re.I)
"""What stands after it is worked at: "how far under will the ambient be at"."""


_OF_THE_FLASH = Pattern(r"\b(?:flash|strobe|gun)(?: alone| only| by itself)?(?: at| on (?:her|him|them))?\s*$", re.I)
"""Right before an aperture: "flash f/8 and the room one stop under"."""
_NEEDED = Pattern(r"(?:\b\w+ (?:is|was|would be) (?:right|correct|normal|properly exposed)(?: at| with| on)\s+(?=\S)|\b(?:it|that|this|what was right|exposure) (?:was|is)(?: right| good| fine| correct)?(?: at)?\s+(?=1/\d+ ?s?\w* (?:at|and|with|@) ?f)|\b(?:needs|wants|takes|requires|calls for|asks for|would (?:need|want|take|require|call for|ask for))(?: about| just| roughly)?\s+(?=\S+(?: \S+){0,6}$))", re.I)
"""Right before a time and an aperture: "the tower needs 30 seconds at f/8" is what its own light wants."""
_CAME_OUT = Pattern(rf"[\s,]*(?:the |my )?(?:{AMBIENT}) (?:is|was|are|comes?|came|lies|looks?|goes|falls|sits)(?: out| up)?(?: about| at| only| still)? [\w\s/.]{{1,20}}(?:under|over|below|above|down|darker|brighter|too)\b", re.I)
"""After a setting: "at f/8 and 1/60 the room is two stops under" tells what it was shot at, and no reading."""


_CAME_OUT_AT = Pattern(rf"\b(?:{AMBIENT})\b[^.?!,]{{0,30}}(?:\bstops? (?:too \w+|under|over|down|below|above|darker|brighter)(?: \w+)?|\b(?:too \w+|under|over|down) by [\w ]{{1,18}}\bstops?) at\b", re.I)
"""The same before it: "the background is two stops too bright at 1/30, f/8"."""


_FOR_THE_BLUR = Pattern(r"\s*(?:wanted |wished |please |would be nice |is what i want )?(?:for|to (?:get|have|blur|soften|throw|melt|keep)|so) (?:me |that )?(?:a |an |the |my |that )?(?:\w+[ -]){0,3}?(?:background|backdrop|bg|wall|view|scene)\b", re.I)
"""After an aperture: "f/4 for a soft background" is what it is wanted for, and no reading of anything."""


_WANTED_HERE = Pattern(r"\b(?:want(?:ed)?|like|wish(?:ed)?|prefer|need|rather|would love|open(?:ed)? (?:up )?to)\b", re.I)


@record
class Setting:
    """An aperture and a shutter time that were said together."""

    facts: tuple[Fact, ...]
    context: str
    after: str

    @property
    def full(self) -> bool:
        return {f.quantity for f in self.facts} == {"aperture", "shutter"}

    def _between(self) -> str:
        """What stands between the two."""
        one, two = self.facts[0], self.facts[-1]
        size = len(self.context)
        return self.context[max(0, size - (two.end - one.end)) : size - (two.end - two.start)]

    @property
    def metered(self) -> bool:
        """Whether a meter is spoken of, and no setting after it."""
        return bool(METERED.search(self.context)) and not _last_word(self.context, _WORKED, METERED)

    @property
    def read(self) -> bool:
        """Whether it is told as a reading of the light."""
        if _last_word(self.context, _FLASH_ITSELF, IS_AMBIENT) or _HOW_FAR_AT.search(self.context):
            return False
        if len(self.facts) == 1 and _OF_THE_FLASH.search(self.context[: -len(self.facts[0].said)]):
            return False
        if _FOR_THE_BLUR.match(self.after) and (_WANTED_HERE.search(self.context) or _WANTED_HERE.search(self.after)):
            return False
        if _CAME_OUT.match(self.after) or _CAME_OUT_AT.search(self.context[: -len(self.facts[-1].said)] or self.context):
            return False
        if self.full and _ROOM_WANTS.search(self._between()):
            return True
        if _SPEAKS.match(self.context) or self.full and _NEEDED.search(self.context) and not OF_FLASH.search(self.context):
            return True
        if any(f.of == "ambient" for f in self.facts) and not _last_word(self.context, _WORKED, IS_AMBIENT):
            return True
        said = self.context + " " + self.after
        if _last_word(self.context, _WORKED, METERED):
            return False
        return bool(METERED.search(self.context)) or (bool(IS_AMBIENT.search(said)) and not _WORKED.search(self.context))


def _last_word(text: str, one: Pattern, other: Pattern) -> bool:
    """Whether the last word of one kind stands after the last of the other."""
    ones = [m.end() for m in one.finditer(text)]
    others = [m.end() for m in other.finditer(text)] if ones else []
    return bool(ones) and (not others or ones[-1] > others[-1])


_IN_SUN = Pattern(r"(?:^\W*|[,;.]\s*|\b(?:in|full|under|for) (?:the )?)suns?(?:light)?(?=\s*(?:[,;.?]|$|iso|asa|f\W?\d|\d|on\b|with\b|and\b|at\b))|\bf\W?\d[\d.]* suns?(?:light)?(?=\s*(?:[,;.?]|$|iso|asa))", re.I)


_SUN_READ = Pattern(r"\bsun(?:light)?(?: is| at| on her| outside)?\W{1,2}(?:f\W?\d[\d.]*(?: at| and|,| @)? ?1/\d|1/\d+(?: at| and|,| @)? ?f\W?\d)", re.I)


_HELD_AGAINST = Pattern(r"\b(?:correctly|properly|rightly|well) exposed\b|\b(?:correct|proper|right) exposure\b|\b(?:is|would|will) (?:that|this|it) (?:be )?(?:about )?(?:right|correct)\b|\b(?:get|got) it right\b", re.I)
"""Settings put up for a yes or a no: they are what is tried, and no reading."""
_SUN = Pattern(r"\bsun(?:light)?\b", re.I)


def in_plain_sun(text: str) -> bool:
    """"sun, ISO 400, f/16": the sky is told by its one word, and nothing in it is a reading (contract 14)."""
    tried = _SUN.search(text) is not None and _HELD_AGAINST.search(text) is not None
    rest = _HELD_AGAINST.sub(" ", text) if tried else text
    return bool(tried or _IN_SUN.search(text)) and not METERED.search(rest) and (tried or not _SUN_READ.search(text)) and not patterns.search(r"\b(?:set|rise|(?<!stops )(?<!stop )(?<!stopped )(?<!stopping )(?<!closes )down|low|under|behind|back(?:light|lit)?|shade|cloud\w*|haz[ey]\w*|overcast|flash|fill|snow|sand|beach|EV)\b", text, re.I)


def settle(facts: list[Fact], text: str, cues: frozenset[str]) -> list[Fact]:
    """The facts with readings of the ambient light told apart from the settings worked at."""
    if not _is_about_light({f.quantity for f in facts}, cues, text):
        return facts
    out = _readings(_unsaid_stops(_of_the_sun(facts, text), text), text, cues)
    out = conditions(_before_its_name(out, text), text)
    return fading.settle(_relations(signed_fill(sky_in_stops(out, text), text), text), text)


_LIT_BY_ITSELF = Pattern(rf"\b{LIGHT_ALONE}", re.I)


_OF_THE_LIGHT = SKIES | {"ambient"}


def _is_about_light(kinds: set[str], cues: frozenset[str], text: str) -> bool:
    if "exposure_value" in kinds or "shutter" in kinds or not cues.isdisjoint(_OF_THE_LIGHT) or "backdrop" in cues and "name_shutter" in cues:
        return True
    if "stops" in kinds and IS_AMBIENT.search(text) and _A_FLASH_TOO.search(text):
        return True
    return "aperture" in kinds and _LIT_BY_ITSELF.search(text) is not None


_THE_SUN_IS = Pattern(rf"\b(?:{AMBIENT})(?: light| outside| alone| by itself)? (?:is|reads?|meters?|gives?|says)(?: at| about| just)? $", re.I)


_ITS_OWN_NAME = Pattern(rf"\s+(?:{AMBIENT})\b(?! (?:light|flash|head|lamp|gun)\b)", re.I)
_AN_ARTICLE = Pattern(r"\b(?:the|an|a|my|that|this)\s+$", re.I)


def _before_its_name(facts: list[Fact], text: str) -> list[Fact]:
    """"its light alone has to read f/8, a stop below the f/11 sky": the reading right before its name is the sky's, and the other is not."""
    named = [f for f in facts if f.quantity == "aperture" and _ITS_OWN_NAME.match(text, f.end) and _AN_ARTICLE.search(text[max(0, f.start - 8) : f.start])]
    if len(named) != 1:
        return facts
    others = [f for f in facts if f.quantity == "aperture" and f is not named[0]]
    return [replace(f, of="ambient") if f is named[0] else replace(f, of="fill") if f in others and f.of == "ambient" and len(others) == 1 and OF_FLASH.search(text[: f.start]) else f for f in facts]


def _of_the_sun(facts: list[Fact], text: str) -> list[Fact]:
    """"what should the fill read if the sun is f/11": the reading is not that of the light that was named first."""
    return [replace(f, of="ambient") if f.quantity == "aperture" and f.of == "fill" and _THE_SUN_IS.search(text[: f.start]) else f for f in facts]


_A_FLASH_TOO = Pattern(r"\b(?:flash|strobe|key)\b", re.I)


_UNSAID = Pattern(r"(?<![/\d.])\b(?P<many>one and a half|a half|half|one|two|three|four|five|\d(?:\.\d+)?) (?:under|over|below|above)\b(?!\s*(?:a |the )?(?:\d|two|three|four|eight|sixteen|thirty|sixty|hundred))", re.I)


_ROOM_DOWN = Pattern(rf"\b(?:{AMBIENT})(?: light)?(?: to (?:be|go|sit|lie))? (?P<many>one and a half|one|two|three|four|five|\d(?:\.\d+)?) (?:down|darker|lower)\b(?! to\b)", re.I)


def _unsaid_stops(facts: list[Fact], text: str) -> list[Fact]:
    """"I want it one over": stops, though the word was left out."""
    out = facts
    for match in [*_UNSAID.finditer(text), *_ROOM_DOWN.finditer(text)]:
        start, end = match.start("many"), match.end("many")
        here = [f for f in out if f.start < end and f.end > start]
        if any(f.quantity not in ("number", "share") and not (f.quantity == "power" and f.value == 0.5) for f in here):
            continue
        many = match["many"].lower()
        out = [f for f in out if f not in here]
        out.append(Fact("stops", STOPS_SPOKEN[many] if many in STOPS_SPOKEN else float(many), start=start, end=end, said=text[start:end]))
    return sorted(out, key=lambda f: f.start)


# --- settings ----------------------------------------------------------------------------------


_ROOM_WANTS = Pattern(rf"^\W*(?:(?:the |my )?(?:\w+ )?(?:{AMBIENT})(?: \w+)?|the (?:(?!flash|strobe|film|lens|camera|shutter|gun|head|pack|batter|exposure|light\b|meter)[a-z']+ ){{0,2}}(?!flash|strobe|film|lens|camera|shutter|gun|head|pack|batter|exposure|light\b|meter)[a-z]+) (?:(?:would|will|'d|does|alone) )?(?:wants?|needs?|takes?|asks? for|calls? for|meters?|reads?|is)(?: about| just| for)*\s*$", re.I)
"""Between an aperture and a time: "at f/32 the room would want eight seconds"."""


def settings_of(facts: Sequence[Fact], text: str) -> list[Setting]:
    """Apertures and shutter times in pairs, in the order said."""
    parts = [f for f in facts if f.quantity in ("aperture", "shutter") and f.of in ("", "ambient") and f.end > f.start]
    groups: list[list[Fact]] = []
    for fact in sorted(parts, key=lambda f: f.start):
        last = groups[-1] if groups else []
        gap = text[last[-1].end : fact.start] if last else ""
        if last and fact.quantity not in {f.quantity for f in last} and not _END.search(gap) and _ROOM_WANTS.search(gap):
            last.append(fact)
        elif last and fact.quantity not in {f.quantity for f in last} and len(gap) < 40 and not _END.search(gap) and not METERED.search(gap) and not patterns.search(rf",[^,]*\b(?:{AMBIENT}|flash)\b", gap, re.I) and not patterns.search(r"\b(?:but|want|now|what)\b", gap, re.I):
            last.append(fact)
        else:
            groups.append([fact])
    return [_setting(groups, n, text) for n in range(len(groups))]


def _setting(groups: list[list[Fact]], at: int, text: str) -> Setting:
    group = groups[at]
    begin = groups[at - 1][-1].end if at else 0
    before = text[begin : group[-1].end]
    stops = [m.end() for m in _END.finditer(before[: max(0, group[0].start - begin)])]
    context = before[stops[-1] :] if stops else before
    limit = groups[at + 1][0].start if at + 1 < len(groups) else len(text)
    after = text[group[-1].end : limit]
    end = patterns.search(r"[,.!?;](?=\s|$)|\b(?:and|but|what|how)\b", after)
    return Setting(tuple(group), context, after[: end.start()] if end else after[:40])


def _readings(facts: list[Fact], text: str, cues: frozenset[str]) -> list[Fact]:
    found = settings_of(facts, text)
    measured = any(f.quantity == "exposure_value" for f in facts)
    chosen = None if measured else _reading(found, bool(cues & SKIES))
    if chosen is None:
        return [replace(f, of="") if f.quantity in ("aperture", "shutter") and f.of == "ambient" and found else f for f in facts]
    return [_owned(f, chosen, found) for f in facts]


def _owned(fact: Fact, chosen: Setting, found: Sequence[Setting]) -> Fact:
    if fact in chosen.facts:
        return replace(fact, of="ambient")
    if any(fact in s.facts for s in found) and fact.of == "ambient":
        return replace(fact, of="")
    return fact


_CHANGED_FROM = Pattern(r"\b(?:went|go|goes|going|gone|chang\w+|mov\w+|switch\w+|swapp?\w*|turn\w*) from (?:about )?(?:f ?/? ?\d|1/\d|\d)", re.I)


def _reading(found: Sequence[Setting], known: bool) -> Setting | None:
    """The setting that is a reading: one told so, else the first of two. `known`: a sky was named."""
    if len(found) == 2 and all(s.full for s in found) and _CHANGED_FROM.search(found[0].context):
        return found[0]  # "I went from 1/60 at f/4 to 1/250 at f/8": what there was before
    told = [s for s in found if s.read and (not known or METERED.search(s.context))]
    if any(s.full for s in found):  # "what shutter at f/8 keeps the ambient the same": a setting asked about, no reading
        told = [s for s in told if s.full or not patterns.search(r"\b(?:what|which)\b", s.context, re.I)]
    full = [s for s in told if s.full]
    if full:
        return next((s for s in full if s.metered), full[0])
    complete = [s for s in found if s.full]
    if complete and len(found) > 1 and len(told) < 1:
        return complete[0] if complete[0] is found[0] else None
    return told[0] if told and (not known or told[0].metered) else None


# --- so many stops under -----------------------------------------------------------------------


def _relations(facts: list[Fact], text: str) -> list[Fact]:
    return [_relation(f, facts, text) if f.quantity in ("stops", "relation", "loss", "power_down", "ev_stops") and f.end > f.start and not (f.quantity == "loss" and f.unit) else f for f in facts]


def _relation(fact: Fact, facts: Sequence[Fact], text: str) -> Fact:
    after, before = _AFTER.match(text[fact.end : fact.end + 60]), _BEFORE.search(text[max(0, fact.start - 45) : fact.start])
    way = (after or before)
    if way is None and fact.quantity != "relation":
        return fact
    if way is not None and way["way"].lower() in ("down", "less", "more", "lower", "drop", "drops", "dropped") and fact.quantity == "power_down" and not IS_AMBIENT.search(clause_before(fact, text)):
        return fact
    cue = fact.cue if way is None else ("more" if patterns.match(rf"(?:{_MORE}|brighten|gain|lift|too (?:bright|hot|light))", way["way"], re.I) else "less")
    than = (after["than"] or "") if after else ""
    clause = _LIGHT_OF_IT.sub("ambient", _LEVEL_WITH.sub(" ", _OPEN_FLASH.sub(" ", clause_before(fact, text))))
    of = ("fill" if after is not None and (_is_more_flash(fact, facts, text) or _AS_FILL.match(text, fact.end)) else "") or ("ambient" if metered_thing(fact, facts, text) else "") or _whose(clause, than, fact) or _whose_of_all(text[: fact.start], clause, than, fact) or ("fill" if _FLASH_ASKED.search(text[fact.end : fact.end + 60]) else "")
    if not of:
        return replace(fact, cue=cue) if fact.quantity == "stops" else fact
    return replace(fact, quantity="relation", value=abs(fact.value), of=of, to="ambient" if of == "fill" else "", cue=cue, unit="")


_LIGHT_OF_IT = Pattern(rf"\b(?:{AMBIENT}|stage|house) lights?(?:ing)?\b", re.I)
"""No lamp of ours, though it is called a light."""
_OPEN_FLASH = Pattern(r"\bopen[- ]flash(?:ing)?\b", re.I)
"""How it is worked, and no light that lies under another."""
_AS_FILL = Pattern(r"[^.?!,;]{0,24}\b(?:as|for) (?:a |the |my |her )?fill\b", re.I)
_MORE_FLASH = Pattern(r"\s*(?:of )?(?:more|less) (?:of )?(?:the |my )?(?:flash|fill|strobe)\b(?P<than> than (?:that|it|this)\b)?(?! than)", re.I)
"""Said after so many stops: "two stops more flash", against the daylight."""


def _is_more_flash(fact: Fact, facts: Sequence[Fact], text: str) -> bool:
    """"ambient f/8, I want two stops more flash than that": against the reading told, where it is the only one and of the daylight."""
    found = _MORE_FLASH.match(text, fact.end)
    read = [f for f in facts if f.quantity == "aperture" and f.end <= fact.start]
    return found is not None and (found["than"] is None or bool(read) and all(f.of == "ambient" for f in read))


_FLASH_ASKED = Pattern(r"\bwhat (?:must|should|does|would|will|has) (?:the |my )?(?:flash|fill|strobe)(?: alone)? (?:need to |have to |to |then )?(?:read|give|be|meter)\b|\b(?:flash|fill|strobe) (?:then |alone )?(?:should |must |would )?(?:read|meter)s?\W*\?", re.I)
"""After so many stops of nobody: it is the flash that lies there."""
def _whose_of_all(before: str, clause: str, than: str, fact: Fact) -> str:
    """"Twilight sky is 1/15 at f/5.6. I want it a stop over": what the talk before was of."""
    if fact.to not in ("", "aperture", "ambient") or OF_FLASH.search(clause) or _THAN_FLASH.search(than) or not patterns.search(r"\b(?:it|that|this|want)\b", clause, re.I):
        return ""
    return "ambient" if _last_word(_LIGHT_OF_IT.sub("ambient", _LEVEL_WITH.sub(" ", before)), IS_AMBIENT, OF_FLASH) else ""


_LEVEL_WITH = Pattern(rf"\b(?:on|from|hits?|at|to) (?:the |that )?same [^.?!,;]{{1,40}}? as (?:the |my )?(?:flash|strobe|key|main)(?: does| do| falls?)?\b|\b(?:level with|equal to|equals?|match(?:es|ing)?|same as|(?:as )?(?:bright|strong) as|on a par with|balances?) (?:the |my )?(?:{AMBIENT})\b", re.I)
"""What something is as bright as is not what is spoken of."""


def clause_before(fact: Fact, text: str) -> str:
    """What was said before it in the same sentence."""
    head = text[max(0, fact.start - _LONGEST_CLAUSE) : fact.start]
    ends = [m.end() for m in _END.finditer(head)]
    return head[ends[-1] :] if ends else head


_ITS_OWN = Pattern(r"\b(?:want|make|keep|leave|get|have|like|need)\w*\b[^.,;]{0,12}\b(?:the|my|that) (?:\w+ )?(?:" + AMBIENT + r"|(?:stage|house|room|street|window) ?lights?|lighting)\s*(?:to (?:be|come out|look|go|fall|record|print|stay) |be |about )?$", re.I)


_ROOM_LIGHTS = Pattern(r"\b(?:stage|house|room|street|window|available|existing) ?light(?:s|ing)?\b", re.I)


_FILL = Pattern(r"\bfill\b", re.I)
_AMBIENT_TOLD = Pattern(rf"\b(?:{AMBIENT})(?: light)?(?:,| is| reads?| meters?| at|:)* f? ?/? ?\d[\d.]*(?:(?: at|,| and)? 1/\d+)?[\s,;]*(?:and |by |an? |at )*$", re.I)
_A_FLASH = Pattern(r"(?:flash|strobe|gun|speedlight|flashgun)\b", re.I)


def _whose(clause: str, than: str, fact: Fact) -> str:
    """"fill", "ambient", or nothing when it is neither."""
    if patterns.match(r"\s*(?:that|it)\b", than, re.I) and IS_AMBIENT.search(last := patterns.split(r"\band\b|,|;", clause)[-1]):
        return "fill" if _last_word(last, _FILL, IS_AMBIENT) else "ambient"  # "the flash reads f/8 and the room's light is two stops below that"
    if _ITS_OWN.search(clause) and IS_AMBIENT.search(last := patterns.split(r"\band\b|,|;", clause)[-1]) and not OF_FLASH.search(_ROOM_LIGHTS.sub("ambient", last)):
        return "ambient"  # "want the sky a stop darker than the meter says"
    if patterns.search(r"\b(?:meter(?:ed|s)?|reading|normal)\b", than or fact.said, re.I) and not OF_FLASH.search(clause):
        return "ambient"  # "sky two stops under what the meter says"
    if IS_AMBIENT.search(than) or fact.to == "ambient":
        return "fill"
    if _A_FLASH.match(than) and IS_AMBIENT.search(clause) and _last_word(clause, _FILL, IS_AMBIENT):
        return "fill"  # "daylight f/16, fill two stops under that flash GN 33": the fill is the flash, and lies under the daylight
    if not than and _FILL.search(clause) and _AMBIENT_TOLD.search(clause):
        return "fill"  # "fill 5 ft away, ambient f/8, one stop under": the daylight is told as what it lies under
    if than and _THAN_FLASH.search(than):
        return "ambient" if IS_AMBIENT.search(clause) else ""
    if _last_word(clause, OF_FLASH, IS_AMBIENT):
        return "fill" if patterns.search(r"\b(?:fill|flash|touch)\b", clause, re.I) else ""
    return "ambient" if IS_AMBIENT.search(clause) or fact.of == "ambient" else ""

"""Light that goes or comes with the hour: "the sky has lost three stops since", "it drops a stop every ten minutes".

Such stops are of the light and of nothing that is set; what is told of the clock is no time of exposure.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.language.ambient_words import AMBIENT
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

FADED, GROWN = "fading", "brightening"
_WENT = Pattern(
    r"\b(?P<who>[a-z]+|\d+)(?:'s|'ll)?(?: (?:is|was|has|have|had|will|then|since|already|now|also|steadily|slowly|quickly|soon|would|still|got|gets))*"
    r" (?:(?P<down>los(?:t|es?|ing)|drop(?:s|ped|ping)?|fall(?:s|en|ing)?|fell|fad(?:e|es|ed|ing)|s[ua]nk|sinks?|sinking|dim(?:s|med|ming)?|(?:gone|goes|going|went|go) down|darken(?:s|ed|ing)?|weaken(?:s|ed|ing)?|darker|dimmer)"
    r"|gain(?:s|ed|ing)?|ris(?:es?|en|ing)|rose|(?:come|comes|coming|came|gone|goes|going|went) up|brighten(?:s|ed|ing)?|grown?|grows|lift(?:s|ed|ing)?|brighter)"
    r"(?: (?:by|about|another|some|nearly|almost|roughly|exactly|just|only|since|a good|at|at least))* $", re.I)
_DARKER_NOW = Pattern(r"\s*(?:(?P<down>darker|dimmer|weaker|lower|down|less)|brighter|stronger|up|more) (?:now|by now|already|today|since|than (?:it was|then|before))\b", re.I)
_SKY = frozenset({"sky", "light", "daylight", "dusk", "dawn", "sun", "sunset", "twilight", "evening", "scene", "ambient", "outside", "it", "that", "which", "and", "day", "landscape", "view", "city", "afterglow"})
_IT_IS = Pattern(rf"\b(?:it|that|(?:{AMBIENT})|light|dawn|evening|afterglow)(?:'s| is| has become| got| was| gets)(?: about| nearly| already| some)* $", re.I)
_POINTS_BACK = frozenset({"it", "that", "which", "and"})
_A_LIGHT = Pattern(rf"\b(?:{AMBIENT}|light|dawn|evening|afterglow)\b", re.I)
_PLACED = Pattern(r"\s*(?:under|below|over|above|beneath|down (?:on|from)|short)\b", re.I)
_RATE_AFTER = Pattern(r"\s*(?:of light )?(?:for )?(?:every|each|per|a|in|within)\s*(?:the )?$", re.I)
_RATE_BEFORE = Pattern(r"\b(?:every|each|per)\s*$", re.I)
_BY_THE_CLOCK = Pattern(r"\s*(?:later|afterwards|after that|earlier|ago|before|on(?! (?:this|that|the|my|our|an?|its|some|slow|fast|iso|film|\d|\w+ film)\b)|from now|after(?: sunset| sundown)?|since|have (?:gone|passed))\b", re.I)
_CLOCK_BEFORE = Pattern(r"\b(?:in|in the (?:last|past)|over the (?:last|past)|after|within|another|for the next|wait(?:ed)?)\s*(?:about |another |the next )?$", re.I)
_CLOCKS = frozenset({"shutter", "time", "duration", "interval", "recycle"})
_STOPS = frozenset({"stops", "loss", "relation", "signed", "power_down"})
_OF_OURS = frozenset({"guide_number", "distance", "power", "modifier", "nd", "filter_loss"})
_MINUTE = 60.0
KINDS = _STOPS | _CLOCKS


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with stops that the light itself has lost or won told as such, and the hours and minutes of the clock as remarks."""
    kinds = {f.quantity for f in facts}
    read = "exposure_value" in kinds or "aperture" in kinds and "shutter" in kinds
    if not read or kinds & _OF_OURS or not _A_LIGHT.search(text):
        return facts
    clocks = [f for f in facts if f.quantity in _CLOCKS and f.value >= _MINUTE]
    gone = [(f, way) for f in facts if f.quantity in _STOPS and (way := _way(f, text))]
    if len(gone) != 1:
        return [replace(f, quantity="remark", of="") if f in clocks and _BY_THE_CLOCK.match(text, f.end) else f for f in facts]
    stops, way = gone[0]
    rates = [f for f in clocks if f.start >= stops.end and _RATE_AFTER.fullmatch(text[stops.end : f.start]) or _RATE_BEFORE.search(text[: f.start])]
    waits = [f for f in clocks if f not in rates and (_BY_THE_CLOCK.match(text, f.end) or _CLOCK_BEFORE.search(text[: f.start]))]
    if not rates:
        return _told(facts, stops, way * abs(stops.value), waits)
    if len(rates) != 1 or len(waits) != 1:
        return [replace(f, quantity="stops", of="", cue="", to="") if f is stops else f for f in facts]  # how long it went on is not told
    return _told(facts, stops, way * abs(stops.value) * waits[0].value / rates[0].value, (*rates, *waits))


def _way(fact: Fact, text: str) -> int:
    """1 where the light went down by so much, -1 where it came up, 0 where it is of something else."""
    went = _WENT.search(text[max(0, fact.start - 90) : fact.start])
    now = (_IT_IS.search(text[: fact.start]) and _DARKER_NOW.match(text, fact.end) or _darker_there(fact, text)) if went is None else None
    if now is not None:
        return 1 if now["down"] else -1
    if went is None or not (went["who"].lower() in _SKY or went["who"].isdigit()) or _PLACED.match(text, fact.end):
        return 0
    if (went["who"].lower() in _POINTS_BACK or went["who"].isdigit()) and not _A_LIGHT.search(text[: fact.start]):
        return 0
    return 1 if went["down"] else -1


_THERE = Pattern(r"\b(?:in|under|inside|beneath|beyond|round|across|by)(?: the| my| that| these| those)? (?!background|backdrop|flash|key|fill)[a-z]+(?: [a-z]+){0,2}?,? ?(?:(?:it(?:'s| is)|the light is|the light's|that is|that's) )?(?:about |some |just |only )?$", re.I)
_SO_DARK = Pattern(r"\s*(?:(?P<down>darker|dimmer|weaker|less light|lower)|brighter|stronger|more light)\b", re.I)
_WISH = Pattern(r"\b(?:want\w*|like|wish|make|making|put\w*|leave\w*|keep\w*|let|bring\w*|should|must|to be|get|please|need\w*|come out|render\w*|record\w*|hold\w*|drop\w*|flash|fill|key|strobe)\b", re.I)
_ENDS = Pattern(r"[.?!;](?=\s|$)")


def _darker_there(fact: Fact, text: str) -> re.Match[str] | None:
    """"under the trees it is three stops darker": another place's light, and nothing that is wanted so."""
    start = max((m.end() for m in _ENDS.finditer(text[: fact.start])), default=0)
    end = min((fact.end + m.start() for m in _ENDS.finditer(text[fact.end :])), default=len(text))
    if not _THERE.search(text[start : fact.start]) or _WISH.search(text[start:end]):
        return None
    return _SO_DARK.match(text, fact.end)


def _told(facts: Sequence[Fact], stops: Fact, value: float, clocks: Sequence[Fact]) -> list[Fact]:
    lost = replace(stops, quantity="filter_loss", value=value, unit=FADED if value > 0 else GROWN, of="", cue="", to="")
    out = [lost if f is stops else replace(f, quantity="remark", of="") if f in clocks else f for f in facts]
    if any(f.of == "ambient" for f in out) or any(f.quantity == "exposure_value" for f in out):
        return out
    read = [next((f for f in out if f.quantity == kind), None) for kind in ("aperture", "shutter")]  # what was told first was right for the light as it was
    return [replace(f, of="ambient") if f in read else f for f in out]

"""Which of two set-ups gives more light, and by how much: each one's ledger by itself.

"Which is brighter, a GN 40 flash through an umbrella that loses 2 stops at 1.5 m, or a GN 28
flash bare at 2.5 m?" What is said before or after both holds for both.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import light_of_two, marks, set_ups
from assistant.solving.claim_words import plain
from assistant.solving.how_much import LESS, MORE
from assistant.solving.light_of_two import OF_LIGHT, TAKEN, gained
from assistant.solving.set_ups import SetUps
from assistant.solving.solution import Solution

_WHICH = Pattern(r"(?:\b(?:which|what)\b[^.?!]{0,40}?|^\W*(?=[a-z ]{4,40}: ))\b(?P<more>brighter|brightest|stronger|hotter|denser|(?:more|most) (?:of (?:the|that|this) )?(?:[\w']+ )?(?:light|exposure|flash|daylight|ambient|room|window|background)|heavier|over)\b|(?:\bwhich\b[^.?!]{0,40}?|^\W*(?=[a-z ]{4,40}: ))\b(?P<less>darker|dimmer|weaker|thinner|less (?:of (?:the|that|this) )?(?:[\w']+ )?(?:light|exposure|flash|daylight|ambient|room|window|background))\b", re.I)
_OR = Pattern(r"[,;]? (?:or|versus|vs\.?|against) ", re.I)
_ON_FILM = Pattern(r"\b(?:negatives?|negs?|slides?|films?|frames?|exposures?|density|denser|thinner|exposed)\b", re.I)
_LETS_IN = Pattern(r"\b(?:lets?|letting|let) (?:\w+ )?(?:in|through|past)\b|\b(?:admits?|pass(?:es)?|gathers?|collects?) (?:the )?(?:more|most|less|least)\b"
                 r"|\b(?:gives?|makes?|leaves?|renders?) (?:me |us )?(?:the |an? )?(?:\w+ )?(?:brighter|darker|lighter|dimmer) (?:background|room|sky|ambient|window|hall|lamps?)\b", re.I)
"""Of settings of the camera: the f-number is what the lens is set to, and the time counts."""
_BY_THE_WAY = frozenset({"modifier", "camera_filter", "remark", "format", "place"})
ROLES = frozenset({"key", "fill", "rim", "hair", "kicker", "accent", "background"})
"""Lights that are known by what they do."""
_LEAST, _IN_ALL = 1, 3
"""Figures on each side and on both: of fewer, other topics know more."""
_SHOWN, _ALIKE = 60, 0.005


def solve(query: Query) -> Solution | None:
    """The brighter of two set-ups, each told with all that bears on it; None where a figure has no side."""
    if len(query.asks) != 1 or query.asks[0].quantity not in ("stops", "factor") or query.claim:
        return None
    which = _WHICH.search(query.text)
    facts = [f for f in query.facts if f.quantity not in _BY_THE_WAY and not _counts_them(f, query.text)]
    if which is None:
        return _how_much(query, facts)
    if any(f.origin != "said" or f.quantity not in (*OF_LIGHT, *TAKEN, "exposure_value") for f in facts):
        return None
    parted = _parted(facts, query.text, which.start())
    if parted is None:
        return _of_two_told(query, facts, which)
    shared, one, other, at = parted
    settings = _LETS_IN.search(query.text) is not None
    if query.has("aperture") and not (settings or _ON_FILM.search(query.text)) or query.has("shutter") and not (settings and query.has("aperture")):
        return None  # a reading, or a setting: it is not said
    apart = gained(shared, one, other)
    if apart is None:
        return None
    more = which["more"] is not None
    wins = (apart > 0) is more
    named = _named(query.text, which.end(), at, one) if wins else _named(query.text, at, len(query.text), other)
    return _said(query, more, apart, named)


_TWO_OF_THEM = Pattern(r"\W*(?:\w+ )?(?:umbrellas|brollies|soft ?boxes|boxes|domes|dishes|diffusers|gels|silks|scrims|grids|flashes|heads|lights|lamps|guns|units|monolights|cloths|reflectors|kinds|sorts|of them)\b", re.I)


def _counts_them(fact: Fact, text: str) -> bool:
    """"found two umbrellas": how many are held against each other, and nothing that lies on one side."""
    return fact.quantity in ("number", "count") and fact.value == 2.0 and fact.origin == "said" and (_TWO_OF_THEM.match(text, fact.end) is not None or _TWO_OF_THEM.match(text[fact.start + 3 :]) is not None)


def _said(query: Query, more: bool, apart: float, named: str) -> Solution:
    """The winner by its name, and by how much."""
    size, named, alike = speak_stops(abs(apart)), _LEFT_OVER.sub("", named), abs(apart) < _ALIKE
    lead = "They are equally bright." if alike else f"{'More' if more else 'Less'} light: {'the ' if named in ROLES else ''}{named}, by {size} ({abs(apart):.2f})."
    stops = marks.stops(0.0 if alike else abs(apart) if more else -abs(apart), None if alike else named)
    factor = marks.factor(abs(apart))
    answers = (factor, stops) if query.asks[0].quantity == "factor" else (stops, factor)
    return Solution(answers=answers, used=query.facts, topic="one_or_other", lead=lead)


_LEFT_OVER = Pattern(r"[ ,;]+(?:and|or|but|while|whereas)$", re.I)


def _of_two_told(query: Query, facts: list[Fact], which: re.Match[str]) -> Solution | None:
    """"the umbrella loses two stops but stands 3 feet away, the softbox one but 7 feet: which …?", or with "bare" for one that nothing need be told of."""
    held = set_ups.told(facts, query.text, which.start(), which.end()) or _across_or(facts, query.text, which)
    apart = light_of_two.apart(query, held, plain(query.text)) if held is not None else None
    if held is None or apart is None:
        return None
    wins = (apart > 0) is (which["more"] is not None)
    return _said(query, which["more"] is not None, apart, _name(query, held, 0 if wins else 1))


_BY_HOW_MUCH = Pattern(rf"\bhow (?:many stops|much)\b[^.?!]{{0,90}}?\b(?:(?P<more>{MORE})|(?P<less>{LESS}))\b", re.I)
_OTHER_MATTER = Pattern(r"\b(?:depth|field|hyperfocal|focus\w*|sharp\w*|grain\w*|contrast|longer|further|farther|power do|power must|power should|need|must|should|open|close|together|both at once|combined|sensitiv\w*|draw|bellows)\b", re.I)


_IS = Pattern(r"\s*(?:is|are|was|were|will|would|does|do)\b(?P<whom>[^.?!,]*?)(?:\bthan\b|[.?!,]|$)", re.I)


def _how_much(query: Query, facts: list[Fact]) -> Solution | None:
    """"by how many stops is a GN 40 flash at 3 m brighter than a GN 28 flash at 2.5 m?": the one that is spoken of, against the other."""
    asked = _BY_HOW_MUCH.search(query.text)
    if asked is None or _OTHER_MATTER.search(query.text) or query.has("aperture") or query.has("exposure_value") or not (query.has("guide_number") or query.has("loss") or query.has("energy")) or any(f.origin != "said" for f in facts):
        return None
    at = asked.span("more" if asked["more"] else "less")
    across = set_ups.across(facts, query.text, *at)
    for held in (across, set_ups.told(facts, query.text, *at)):
        apart = light_of_two.apart(query, held, plain(query.text)) if held is not None else None
        if held is None or apart is None:
            continue
        named = held.named
        turned = _IS.match(query.text, at[1])
        if turned is not None and held is not across:
            named = set_ups.named_in(turned["whom"].lower(), held.words)  # "how many stops brighter is the left one"
        if named < 0:
            apart = abs(apart) if asked["more"] else -abs(apart)  # neither is known by its name: the question says which way
        elif named == 1:
            apart = -apart
        stops, factor = marks.stops(apart), marks.factor(apart)
        lead = "They are equally bright." if abs(apart) < 0.005 else f"{speak_stops(abs(apart)).capitalize()} {'more' if apart > 0 else 'less'} light ({apart:+.2f})."
        return Solution(answers=(factor, stops) if query.asks[0].quantity == "factor" else (stops, factor), used=query.facts, topic="one_or_other", lead=lead)
    return None


def _across_or(facts: list[Fact], text: str, which: re.Match[str]) -> SetUps | None:
    """The set-ups on both sides of the only "or" after the question."""
    found = list(_OR.finditer(text, which.start()))
    if len(found) != 1:
        return None
    sides = set_ups.parted(facts, text.lower(), found[0].start(), which.start(), len(text))
    return SetUps(*sides, (text[which.end() : found[0].start()].lower(), text[found[0].end() :].lower()), -1) if sides is not None else None


_LEADS_IN = Pattern(r"^.*\b(?:between|light|brighter|darker|her|him|it|them|face|subject|stops|much|either)[,:]? (?=(?:the|an?|my) )|^\W*(?:and |or |but |so )?", re.I)
_ENDS = Pattern(r",? (?:which|that|loses?|losing|costs?|costing|takes?|eats?|at|from|stands?|standing|is|has|could|must|but|,)\b|[,;:.]", re.I)


def _name(query: Query, held: SetUps, side: int) -> str:
    """What one of them is called: the light that its figures are of, what hangs in it, else its first words."""
    lights = [{f.of for f in own if f.of in ROLES or f.of in ("a", "b")} for own in (held.one, held.other)]
    if len(lights[0]) == len(lights[1]) == 1 and lights[0] != lights[1]:
        name = min(lights[side])
        return name if name in ROLES else name.upper()
    worn = [f.said for f in query.facts if f.quantity == "modifier" and f.said.lower() in held.words[side].lower() and f.said.lower() not in held.words[1 - side].lower()]
    words = _LEADS_IN.sub("", held.words[side].strip(), 1)
    ends = _ENDS.search(words, 3)
    return worn[0].strip() if worn else words[: min(ends.start() if ends else _SHOWN, _SHOWN)].strip(" ,.;:?")


def _parted(facts: Sequence[Fact], text: str, which: int) -> tuple[list[Fact], list[Fact], list[Fact], int] | None:
    """What holds for both, the facts of the one and of the other, and where the other begins."""
    shared = [f for f in facts if f.start < which]
    rest = [f for f in facts if f.start >= which]
    for found in _OR.finditer(text, which):
        one, other = ([f for f in rest if f.end <= found.start()], [f for f in rest if f.start >= found.end()])
        if len(one) + len(other) != len(rest) or min(len(one), len(other)) < _LEAST or len(rest) < _IN_ALL:
            continue
        if any(len([f for f in side if f.quantity == q]) > 1 for side in (one, other, shared) for q in OF_LIGHT):
            return None
        return shared, one, other, found.end()
    return None


def _named(text: str, start: int, end: int, side: Sequence[Fact]) -> str:
    """A set-up in the person's own words, from the last mark before its first figure to its last one."""
    first, last = min(f.start for f in side), max(f.end for f in side)
    begins = start + max((m.end() for m in re.finditer(r"[:?] |, (?=an? |the |my )|\bby how (?:many stops|much),? ", text[start:first])), default=0)
    words = text[begins : min(last, end)].strip(" ,.;:?")
    return words if len(words) <= _SHOWN else text[first:last][:_SHOWN].strip(" ,.;:?")

"""One flash with two guide numbers: "45 m bare and 28 m with its grid", "zoomed in 54 metres, pulled back it drops to 28".

The second is told as a mere length; where two states of one flash are named and stops are asked, both are guide numbers.
"""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace
from assistant.units import LENGTH

_GUIDE = Pattern(r"\b(?:guide|gn|leitzahl)\b|\brated\b")
_ASKS_STOPS = Pattern(r"\b(?:how many|how much|what|which)\b[^.?!]*\b(?<!f-)(?<!f )(?:stops?|factor)\b|\bin stops\b|\bhow much (?:light|power|brighter|weaker|stronger)\b|\b(?:what|how much) (?:does|did|will|would) (?:the|my|this|that|its|his|her) (?:[\w-]+ )?[\w-]+ (?:eat|cost|take|lose|swallow|steal|drink|soak up|rob)\b")
_OF_A_HEAD = Pattern(r"\bzoom\w*|\bwide(?:st|[- ]angle)?\b|\btele\w*|\bpull\w* back|\brack\w*|\bspread\w*|\bnarrow\w*|\btight\w*|\bsettings?\b|\blong (?:end|setting|position)\b|\bhss\b|\bhigh[- ]speed|\bfp\b|\bsync\b")
_OF_THE_SYNC = Pattern(r"\bhss\b|\bhigh[- ]speed|\bfp\b")
"""Where the guide number goes with the time."""
_OF_A_THING = Pattern(r"\b(?:bare|naked|without|nothing on|by itself|on its own|uncovered)\b")
_ON_IT = Pattern(r"\b(?:with|through|behind|inside|in|under|once|when)\b(?: \w+){1,4}|\bfitted\b|\bon it\b")
_OF_A_PLACE = Pattern(r"\s*(?:away|from (?!one|wide|tele)|off\b|back\b|apart|to the (?:subject|sitter|face|wall|floor)|high(?![- ]?speed)|tall|above|deep|behind|in front|further|closer|nearer|across|wide\b(?! (?:open|end|setting)))")
_LENGTHS = ("distance", "path", "gap", "max_distance", "min_distance", "move", "camera_distance", "number", "aperture")
_ELSE = frozenset({"aperture", "shutter", "zoom_row", "path", "ceiling_height", "loss", "stops", "relation", "velocity"})
KINDS = frozenset({"guide_number", "distance"})


_ANOTHER = Pattern(r"\b(?:guide(?: number)?|gn|guides) (?:of |is |number )?(?:about )?\d[\d.]* ?(?:feet|foot|ft|metres?|meters?|m)?,? and (?:another|a second|the other|one|its mate)(?: flash| one| gun| head| of them)? (?:of|with|at|rated|is|has)(?: (?:a )?(?:guide(?: number)?|gn)(?: of)?)?(?: an?)? $")
"""Before the second of two flashes told by their guide numbers: "one flash of guide number 80 feet and another of 110 feet"."""


def another_flash(facts: list[Fact], text: str) -> list[Fact]:
    """The second length as the guide number of the second flash, where another place is told for both."""
    places = [f for f in facts if f.quantity == "distance" and not f.bad]
    in_order = _told_in_order(facts, places)
    if in_order is not None:
        return [_guide_of(f) if f is in_order else f for f in facts]
    mine = [f for f in places if _ANOTHER.search(text.lower()[: f.start])]
    if len(mine) != 1 or len(places) < 2 or sum(f.quantity == "guide_number" for f in facts) != 1 or mine[0].unit not in LENGTH:
        return facts
    return [_guide(f, f.unit) or f if f is mine[0] else f for f in facts]


def _told_in_order(facts: list[Fact], places: list[Fact]) -> Fact | None:
    """"light A guide number 36 metres and 4 m off, light B 28 metres and 2.5 m": the length that stands where the other light's guide number stood."""
    guides = [f for f in facts if f.quantity == "guide_number" and f.of]
    if len(guides) != 1 or len(places) != 3:
        return None
    first, second = ([f for f in places if (f.of == guides[0].of) is its_own] for its_own in (True, False))
    if len(first) != 1 or len(second) != 2 or not second[0].of or second[0].of != second[1].of:
        return None
    guide, place = second if guides[0].start < first[0].start else reversed(second)
    return guide if guide.unit in ("m", "ft") and guide.value / LENGTH[guide.unit] > 2 * place.value / LENGTH.get(place.unit, 1.0) else None


def _guide_of(fact: Fact) -> Fact:
    return replace(_guide(fact, fact.unit), of=fact.of)


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with the second length of such a pair as the guide number that it is.

    >>> told = [Fact("guide_number", 45.0, "m", start=7, end=11), Fact("distance", 28.0, "m", start=21, end=25)]
    >>> [f.value for f in settle(told, "GN was 45 m bare and 28 m with the grid on. What is that in stops?") if f.quantity == "guide_number"]
    [45.0, 28.0]
    """
    said = text.lower()
    lengths = [f for f in facts if f.quantity == "guide_number" or (f.quantity in _LENGTHS or _is_no_film(f, said)) and not f.bad and f.value > 0]
    if len(lengths) != 2 or any(f.quantity in _ELSE and not (f.quantity == "shutter" and _OF_THE_SYNC.search(said)) for f in facts if f not in lengths):
        return facts
    if not _GUIDE.search(said) or not _ASKS_STOPS.search(said) or not (_OF_A_HEAD.search(said) or _OF_A_THING.search(said) and _ON_IT.search(said)):
        return facts
    guides = [f for f in lengths if f.quantity == "guide_number"]
    if len(guides) == 2 or any(_OF_A_PLACE.match(said, f.end) for f in lengths if f.quantity != "guide_number") or any(f.quantity == "aperture" and "f" in f.said.lower() for f in lengths):
        return facts
    unit = next((f.unit for f in lengths if f.unit in ("m", "ft")), "")
    made = {f.start: _guide(f, unit) for f in lengths}
    return [made[f.start] if f in lengths else f for f in facts] if all(made.values()) else facts


_IS_THEN = Pattern(r"\b(?:with|through|behind|inside|in|under|once|when) (?:the|my|its|that|this|a|an|her|his)\b[^.?!\d]{2,32}?(?:\bit(?:'s| is| was| becomes?| gives?| has| drops?| falls?| comes?)|\b(?:is|was|only|drops?|falls?|down|just|comes?|becomes?|gives?))(?: (?:only|just|down|to|about|more like|a|out|at))*,? $")


def _is_no_film(fact: Fact, said: str) -> bool:
    """"and with the dome on it's 32": a bare figure that films are sold in too."""
    return fact.quantity == "film_speed" and fact.said.strip().isdigit() and _IS_THEN.search(said[: fact.start]) is not None


def _guide(fact: Fact, unit: str) -> Fact:
    value = fact.value if fact.quantity in ("guide_number", "number", "aperture", "film_speed") else fact.value / LENGTH[fact.unit]
    return replace(fact, quantity="guide_number", value=value, unit=fact.unit if fact.unit in ("m", "ft") else unit, of="", cue="", to="")



_WHAT_IS_IT = Pattern(r"\b(?:guide number|guide no|gn)\b[^?]*[.;,] (?:and |so |then )?what(?:'s| is| was| will| would| does)? (?:it|that)(?: be| become)?(?! (?:read|meter|say|at \d|at f))\b")
_LOSS_ASKED = Pattern(r"\bwhat(?:'s| is| was) the (?:loss|difference|cost)\b[^?]*\bin stops\b")
_THING_EATS = Pattern(r"\b(?:what|how much) (?:does|did|will|would) (?:the|my|this|that|its|his|her) (?:[\w-]+ )?[\w-]+ (?:eat|cost|take|lose|swallow|steal|drink|soak up|rob)\b")
_OWN = frozenset({"guide_number", "loss", "modifier", "camera_filter", "remark", "zoom", "shutter", "sync", "film_speed", "power"})


def asked(asks: list[Ask], facts: list[Fact], text: str) -> list[Ask]:
    """"the guide number is 40 m. What is it in high-speed sync?": the number itself, where no distance is told; "what's the loss in stops?" of two."""
    guides = sum(f.quantity == "guide_number" for f in facts)
    if guides == 2 and (not asks or [a.quantity for a in asks] == ["guide_number"]) and (_LOSS_ASKED.search(text.lower()) or _THING_EATS.search(text.lower())):
        return [Ask("stops")]
    if guides != 1 or [a.quantity for a in asks] not in ([], ["aperture"]) or {f.quantity for f in facts} - _OWN or not any(f.quantity == "loss" for f in facts):
        return asks
    return [Ask("guide_number")] if _WHAT_IS_IT.search(text.lower()) else asks

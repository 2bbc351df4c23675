"""Whose value is asked, and what is named only to say that it is not known.

"two stops under the key is what the background reads, key f/11. what's the background?" asks for the background's
reading: the key's is told. "what does half power give, guide number unknown" does not ask for the guide number.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.language import sharp_asks
from assistant.language.hints import implied_asks
from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace

_UNKNOWN_AFTER = Pattern(r"(?:guide ?(?:number|no\.?)|gn|power|aperture|distance|f-?stop|film speed|iso)?,? ?(?:is |being |'s )?(?:not known|unknown|isn't known|lost|forgotten|anybody's guess|i don't know|i don't have|no idea)\b")
_UNKNOWN_BEFORE = Pattern(r"\b(?:don'?t know|do not know|not knowing|without (?:knowing|a|the|any)|no idea (?:of|about|what)|forgot(?:ten)?|lost|don'?t have|haven'?t got|no)(?: (?:the|my|its|a|any|what|of))* ?$")
_OF_LENSES = {"hyperfocal": Pattern(r"hyper[- ]?focal"), "depth_of_field": Pattern(r"depth[- ]of[- ]field|dof\b")}
_TO_ONE = Pattern(r"\b(?:what|how much|how many|something|which|x|how) (?:is it )?(?:to|:) ?(?:one|1)\b|\bkey[ -]to[ -]fill\b|\bas a ratio\b")
"""Two lights so far apart, and "something to one": their ratio."""
_KEY_TO_FILL = Pattern(r"\b(?:what|how much|which)(?:'s|s| is| are| does| will| would)? (?:the |my )?(?:key|main)(?: light)?[ -]to[ -](?:the )?fill\b(?! (?:alone|read))")
"""The two held against each other, where what is told of each is no ratio yet."""
_WHATS_THE = Pattern(r"\bwhat(?:'s|s| is| does| will| would| should| must)? (?:the |my )?(?P<light>back(?:ground|drop)|fill|hair(?: ?light)?|rim(?: ?light)?|kicker|key|main)(?: light| then| now)*(?: (?:be|read|meter|get|show|reading|at))?\W*$")
_NAMED = {"background": "backdrop", "backdrop": "backdrop", "main": "key", "kicker": "rim"}


def settle(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """The asks without those that are named as not known, and of the light whose value is open."""
    said = text.lower().replace("’", "'")
    open_ones = [a for a in asks if not _is_unknown(a, said)]
    if len(open_ones) < len(asks) and not open_ones:
        open_ones = implied_asks(text, facts)
    return _of_the_open_one(_in_stops(open_ones, said), facts, said)


_IN_STOPS = Pattern(r"\b(?:difference|drop|fall-?off|loss|change|gap|spread) in stops\b")
_FALLS = Pattern(r"\bhow far (?:does|do|will|would|did|has|should|can) (?:the |my |her |this )?(?:background|backdrop|room|ambient|sky|window|scene|hall|wall|light|exposure)s? (?:light )?(?:drop|fall|sink|darken|go down|come down|change|shift)")
"""A fall that is told in stops, though it is asked as a length is."""


_OPEN_HOW_MANY = Pattern(r"\b(?:open(?:ed)?|clos(?:e|ed)|stop(?:ped)?) (?:up|down)?(?: by)? ?how many\b(?! (?:pops?|flash\w*|bursts?|frames?|times))|\bhow many (?:do i |should i |must i |to )?(?:open|close) (?:up|down)?\b")


def _in_stops(asks: list[Ask], said: str) -> list[Ask]:
    """"what's the difference in stops at the far one", "how far does the background drop": stops, and no f-number or length."""
    if len(asks) == 1 and asks[0].quantity == "count" and _OPEN_HOW_MANY.search(said):
        return [replace(asks[0], quantity="stops", unit="")]
    if len(asks) != 1 or asks[0].quantity not in ("aperture", "distance") or not (_IN_STOPS.search(said) or _FALLS.search(said)):
        return asks
    return [replace(asks[0], quantity="stops", unit="")]


def _is_unknown(ask: Ask, said: str) -> bool:
    if ask.quantity in _OF_LENSES and ask.start >= 0:
        named = _OF_LENSES[ask.quantity].match(said, ask.start)
        return named is not None and sharp_asks.is_refused(said, ask.start, named.end())
    if ask.quantity not in ("guide_number", "distance", "film_speed") or ask.start < 0:
        return False
    return _UNKNOWN_AFTER.match(said, ask.start) is not None or ask.start > 0 and _UNKNOWN_BEFORE.search(said[max(0, ask.start - 40) : ask.start]) is not None


def _of_the_open_one(asks: list[Ask], facts: Sequence[Fact], said: str) -> list[Ask]:
    """One light so far under another whose reading is told: the first one's reading is what can be asked."""
    if len(asks) < 2 and all(a.quantity == "aperture" for a in asks) and _KEY_TO_FILL.search(said) and {"key", "fill"} <= {f.of for f in facts if f.quantity in ("distance", "power", "aperture")}:
        return [Ask("ratio")]
    apart = [f for f in facts if f.quantity == "relation" and f.of and f.to and f.of != f.to]
    if len(apart) == len(facts) == 1 and {apart[0].of, apart[0].to} == {"key", "fill"} and all(a.quantity == "aperture" for a in asks) and _TO_ONE.search(said):
        return [Ask("ratio")]
    if len(apart) != 1 or {f.quantity for f in facts} != {"aperture", "relation"} or {f.of for f in facts if f.quantity == "aperture"} != {apart[0].to}:
        return asks
    named = _WHATS_THE.search(said)
    light = named["light"].split(" ")[0].removesuffix("light") if named is not None else ""
    if not asks and _NAMED.get(light, light) == apart[0].of:
        return [Ask("aperture", apart[0].of)]
    return [replace(a, of=apart[0].of) if a.quantity == "aperture" and a.of == apart[0].to else a for a in asks]

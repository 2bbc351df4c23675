"""Which figure of a text is the one that is put up for a yes or a no: concluded ones first, then the last said."""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.claim_bounds import is_bounded
from assistant.solving.claim_steps import is_figure
from assistant.solving.claim_words import plain

UNBOUNDED = ("aperture", "shutter")  # "smaller than f/8" may be the figure or the hole
CLAIMABLE = ("aperture", "distance", "power", "film_speed", "guide_number", "count", "ratio", "stops", "shutter", "energy")
_FILLERS = r"\W{0,3}(?:(?:it|i|me|you|we|the|my|flash|light|aperture|distance|power|stop|f-stop|film|about|around|roughly|an|a|that|is|of|to|can|be|should|must|away|set|use|want|go|stand|put|right|ok|only|just|up|down)\W+)*$"
_ADJACENT = Pattern(r"(?:\b(?:so|therefore|thus|hence|gives?|gave|gets?|got|makes?|means|needs?|becomes?|works? out|worked out|figured(?: out)?|reckon(?:ed)?|calculated|made it|make it|arrived at|settled on|leaves|comes? to|enough for|manage|cover)\b|=|->|→|(?<!iso)(?<!\d):)" + _FILLERS)
_SAYS_STOPS = Pattern(r"\b(?:is|are|be|gets?|reads?|loses?|costs?|drops?|falls?|so|makes?)\W+(?:(?:it|the|fill|key|about|only|just|light|by|then|will)\W+)*$")
_TURN = Pattern(r"(?<!^)\b(?:so (?!far|that|called|much|many)|therefore|thus|hence)\b")
_SETS = Pattern(r"\b(?:set|use|dial(?: in)?|turn(?: it)?(?: down)? to|drop(?: it)? to|choose|go to)" + _FILLERS)
_TAKES = Pattern(r"\b(?:takes?|costs?|wants?|requires?) (?:only |just |about )?$")
_REACHES = Pattern(r"\b(?:reach(?:es)?|get (?:me )?(?:out )?to|make it to|carry(?: to)?|go as far as)" + _FILLERS)
_CLAUSE = Pattern(r"\b(?:so|therefore|thus|hence)\b[^,.;]*$")
_CONCLUDES = Pattern(r"(?:\b(?:so|therefore|thus|hence|gives?|gets?|got|makes?|means|need|needs|use|set|becomes?|is|works out|i'm at|leaves|come to|comes to|be|will|would|does|do)|=|->|→|:)\W{0,3}(?:(?:it|i|me|you|the|flash|light|aperture|distance|power|about|around|roughly|an|a|that|is|of|at|for|to|can|be|should|away|need|set|use|want|go|stand|put|with|right|ok)\W+)*$")


_FASTER = Pattern(r"\bstops? (?:faster|slower|more sensitive|less sensitive) than\b")


def candidates(query: Query) -> list[Fact]:
    """Facts that may be what is claimed: concluded ones first, then the last said, apertures before the rest."""
    said = plain(query.text)
    order = {"aperture": 3, "guide_number": 1, "distance": 2, "film_speed": 1, "power": 1, "ratio": 4, "count": 0, "stops": 1, "shutter": 2, "energy": 1}
    facts = [f for f in query.facts if f.quantity in CLAIMABLE and f.origin == "said" and not f.bad]
    facts += [replace(f, quantity="distance") for f in query.facts if f.quantity in ("max_distance", "min_distance") and f.origin == "said"]
    facts += [replace(f, quantity="stops", value=abs(f.value), cue="") for f in query.facts if f.quantity in ("power_down", "relation", "loss") and f.origin == "said" and _SAYS_STOPS.search(said[: f.start])]
    if not query.has("guide_number") and len(query.all("count")) < 2:
        facts = [f for f in facts if f.quantity != "count"]
    turn = _TURN.search(said)
    facts = [f for f in facts if turn is None or f.start > turn.start()]
    last = max((f.start for f in facts), default=0)

    def rank(f: Fact) -> tuple[int, int, int]:
        before = said[: f.start]
        near = (f.start == last and (f.quantity == "aperture" or _SETS.search(before) is not None or f.quantity == "energy" and _TAKES.search(before) is not None)) or f.cue in ("claimed", "result") or _ADJACENT.search(before) is not None
        level = 5 if f.quantity not in UNBOUNDED and is_bounded(before) else 4 if _REACHES.search(before) else 3 if near else 2 if _CLAUSE.search(before) else 1 if _CONCLUDES.search(before) and f.start == last else 0
        return level, order[f.quantity] if level < 3 else 0, f.start

    if _FASTER.search(said) and sum(f.quantity == "film_speed" for f in facts) == 2 and any(f.quantity == "stops" for f in facts):
        facts = [f for f in facts if f.quantity == "stops"]  # "a 400 film is two stops faster than a 50"
    given = query.first("guide_number")
    held = given is not None and not is_figure(given, said) and not is_bounded(said[: given.start]) and not (turn is not None and given.start > turn.start() and query.has("aperture", "distance"))
    return [f for f in sorted(facts, key=rank, reverse=True) if not (held and f is given)]

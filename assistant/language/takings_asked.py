"""What a thing in the light takes is asked, by whatever verb, with the stops left unsaid: "what does the scrim lose?", "how many is the gel?"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace

_WORN = frozenset({"modifier", "camera_filter"})
KINDS = _WORN | {"path", "aperture"}
"""Nothing is asked here without a fact of one of these."""
_WHAT_IT_TAKES = Pattern(
    r"\b(?:what|how much)(?:'s| is| was| are)?\b(?: (?:does|do|did|must|will|would|had|has))? (?:the|my|that|it|this|one|each|a)\b[^.?!;,]{0,36}\b(?:cost|lose|lost|losing|take|taken|taking|eat|eaten|eating|swallow(?:ed|ing)?|steal|absorb(?:ed|ing)?|rob|drink|good for|worth|hold(?:ing)? back|keep(?:ing)? back)"
    r"(?: me| us| by itself| on (?:its|their) own| alone| itself| for itself| then| of (?:that|those))*\W*$|\bhow (?:many|much) (?:is|are|was|goes to|does) (?:the|my|that) (?:\w+ )?\w+(?:'s share)?(?: by itself| alone| on its own| itself)?\W*$", re.I)
"""What a thing takes is asked, at the end: "what does the scrim lose?", "how many is the gel?"."""

_IS_IT_BARE = Pattern(r"\b(?:how much|what) (?:is|was|would|will|does) (?:it|that|she|he|the reading|the meter)(?: be| read| give)? (?:bare|without(?: (?:them|it|any|the \w+))?|with none|with nothing on)\W*$", re.I)
_A_SURFACE = Pattern(r"\b(?:ceiling|wall|paint|plaster|roof|bounce|surface|board|card)\b[^?.!]*\W*$", re.I)


_WHICH_LEAVES = Pattern(r"\b(?:which|what)\b[^.?!]{0,30}\b(?:leav(?:es?|ing)|lets?|pass(?:es)?|keeps?|gets?|throws?|spares?)\b[^.?!]{0,20}\b(?:more|most|less|least)(?: of (?:my|the|its))? (?:light|flash)\b", re.I)


_ASKED_BESIDE = Pattern(r"\b(?:aperture|f[- ]?(?:stop|number|no)|stop|what|which|how|opening|lens)\b", re.I)


def asked(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """"what does it cost?", with a thing told that stands in the light and no light to reckon from: stops."""
    asks = [a for a in asks if not any(f.start < a.start < f.end and f.quantity in ("loss", "filter_loss") and not _ASKED_BESIDE.search(text[: f.start] + text[f.end :]) for f in facts)]  # "a grid that loses another stop"
    others = [a.quantity for a in asks]
    if not asks and len({f.unit for f in facts if f.quantity in ("loss", "filter_loss")}) > 1 and _WHICH_LEAVES.search(text):
        return [Ask("stops")]
    if others in ([], ["stops"]) and len([f for f in facts if f.quantity == "aperture"]) == 1 and _IS_IT_BARE.search(text):
        return [Ask("aperture")]
    if others not in ([], ["aperture"], ["count"]) or not (any(f.quantity in _WORN and f.unit != "BARE" for f in facts) or any(f.quantity == "path" for f in facts) and _A_SURFACE.search(text)) or not _WHAT_IT_TAKES.search(text):
        return asks
    return [Ask("stops")]


_FACTOR_IN_STOPS = Pattern(r"\bfactor\b[^.;?!\d]{0,12}\b(?:in|as|into) stops\b", re.IGNORECASE)


def in_stops(asks: list[Ask], text: str) -> list[Ask]:
    """The asks, a factor that is wanted in stops as stops: "what is that factor in stops?"."""
    if not any(a.quantity == "factor" for a in asks) or not _FACTOR_IN_STOPS.search(text):
        return asks
    return [replace(a, quantity="stops", unit="stops") if a.quantity == "factor" else a for a in asks]

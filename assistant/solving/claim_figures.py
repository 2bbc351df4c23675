"""Whether a claim hangs on figures of a case: then no general belief or rule may say yes to it.

"Bright sun, ISO 400, sync 1/60: can I expose the daylight right?" is for the figures to decide, however
well a belief about sync fits its words.
"""

from __future__ import annotations

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving.claim_words import plain, terms

_SETTINGS = frozenset({"film_speed", "shutter", "sync", "aperture", "distance", "exposure_value", "guide_number", "nd", "focal_length", "energy", "t_number"})
_SYNC = Pattern(r"\b(?:syncs?|sync speed)\b[^,.;?]{0,20}$")


_RATED = Pattern(r"\b(?:push|pull|rat)(?:ed|ing|es|s|e)?\b")


def hangs_on_figures(query: Query) -> bool:
    """Whether settings of two kinds or more are told with their figures, or a film speed that is pushed, pulled or rated.

    What is part of a change that is said ("f/8 to f/4") is no figure of a case, and a sync speed counts only beside
    another setting: it is mostly told to say that the shutter is within it.
    """
    said = plain(query.text)
    changes = [(t.start, t.end) for t in terms(query.text)]
    told = [f for f in query.facts if f.origin == "said" and f.quantity in _SETTINGS and patterns.search(r"\d", f.said) and not any(a <= f.start < b for a, b in changes)]
    kinds = {f.quantity for f in told if f.quantity == "sync" or not _SYNC.search(said[: f.start])} | {"sync" for f in told if _SYNC.search(said[: f.start])}
    speeds = query.all("film_speed")
    compared = len(speeds) == 2 and all("rated" in f.said.lower() for f in speeds)  # "film rated 1600" against "film rated 400"
    if sum(f.quantity == "zoom_row" for f in query.facts) > 1:
        return True
    return len(kinds) > 1 or ("film_speed" in kinds and not compared and _RATED.search(said) is not None)

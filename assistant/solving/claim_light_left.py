"""How much of the light is said to come through something, or to be held back by it: "a four-stop ND lets through an eighth", "swallows all but a quarter"."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import how_much, marks
from assistant.solving.claim_denial import put_up
from assistant.solving.claim_words import plain
from assistant.solving.ledger import stops_of
from assistant.solving.solution import Solution

_LOSSES = frozenset({"loss", "filter_loss", "nd", "factor", "stops", "power_down"})
_BY_THE_WAY = frozenset({"modifier", "camera_filter", "remark", "number", "share", "power", "times"})
_THROUGH = Pattern(r"\b(?:let(?:s|ting)?|pass\w*|transmit\w*|leav\w+|left|admit\w*|through|gets?|reach\w*|arriv\w*|come|comes|hold\w*|held|swallow\w*|eats?|takes?|absorb\w*|stops|block\w*|robs?|steals?|los\w+|costs?|keeps?|cuts?|reduc\w*|halv\w*|dim\w*|remain\w*)\b")
_TAKES = Pattern(r"\b(?:los(?:e|es|ing|t)|costs?|costing|eats?|takes?|taking|swallow\w*|absorb\w*|of)\b(?: (?:me|us|about|only|just|a|an|full))* *$")
_OTHER_MATTER = Pattern(r"\b(?:power|energy|watt\w*|enough|far|further|reach(?:es)?|range|guide|gn|distance|stops? (?:more|less) power|f-?number|aperture|open(?:s|ing)? up|exposure time|twice as long|seconds?|layers?|sheets?|panes?|gels of|two of|three of|both of|second one|another|doubled|folded)\b")
_THAT_IS = Pattern(r"\b(?:takes?|costs?|los\w+|eats?|swallow\w*|robs?)\b(?:[^.?!]|\.(?=\d)){0,30}[,;:.] (?:and |so )?(?:that|which)(?:'s| is| makes| means)(?: (?:about|only|just|more than|less than|over|under|nearly|at least|at most|no more than|no less than))* $")
"""So much of the light, said of the stops that are taken."""
_IF = Pattern(r"\b(?:if|when|where)\b[^,;.?]*$")
_TOGETHER = Pattern(r"\b(?:together|both|combined|stacked|in all|between them|behind|on top|plus)\b")


def claim_of_light_left(query: Query) -> Solution | None:
    """Whether that share of the light is left, or gone, after the stops that are told; None where anything else bears on it."""
    said = plain(query.text)
    since = put_up(said)
    sizes = [how_much.as_lost(s) if not s.lost and _THAT_IS.search(said[: s.start]) else s for s in how_much.every(query) if s.kind == "share" and s.start >= since]
    if any(f.quantity == "number" and f.value >= 2 and not f.bad and not any(s.start <= f.start < s.end for s in sizes) for f in query.facts):
        return None  # "three half-stop nets": how many there are counts
    if not query.claim or not sizes or _OTHER_MATTER.search(said) or not _THROUGH.search(said):
        return None
    lost = [f for f in how_much.without(query, sizes) if f.quantity not in _BY_THE_WAY]
    if not lost or not {f.quantity for f in lost} <= _LOSSES or any(f.bad or f.origin != "said" for f in lost) or len(lost) > 1 and not _TOGETHER.search(said):
        return None
    if any(f.quantity in ("stops", "power_down") and not _TAKES.search(said[: f.start]) for f in lost) or any(size.value >= 0 or _IF.search(said[: size.start]) for size in sizes):
        return None
    stops = sum(_taken(f) for f in lost)
    if stops <= 0:
        return None
    holds = how_much.verdict(sizes, [-stops] * len(sizes), said)
    left = f"1/{2.0**stops:.3g}" if stops >= 1 else f"{100 * 2.0**-stops:.0f} percent"
    return Solution(answers=(Quantity("claim", holds), marks.stops(-stops), marks.factor(stops)), used=query.facts, topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. {speak_stops(stops).capitalize()} lost {'leaves' if stops <= 1 else 'leave'} {left} of the light.")


def _taken(fact: Fact) -> float:
    """The stops that a loss, a filter or its factor takes."""
    return -stops_of("factor", fact.value) if fact.quantity == "factor" else abs(fact.value)

"""Claims of several alike in the light: "three nets, each passing half the light: three stops", "two sheets at a stop each leave a quarter"."""

from __future__ import annotations

import math
import re

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import record
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_denial import turned
from assistant.solving.claim_words import number, plain, terms
from assistant.solving.solution import Solution

_N = r"two|three|four|five|six|\d"
_MANY = Pattern(
    rf"\b(?P<n>{_N}) (?:(?:[\w./]+[- ]stop|thin|thick|identical|equal|such|of|the|my|those|these|same|white|of them) )*"
    r"(?!flash(?:es)?\b|heads?\b|pops?\b|lights?\b|guns?\b|strobes?\b|units?\b|lamps?\b|frames?\b|stops?\b|times\b|thirds?\b|quarters?\b)[a-z]+(?:s|silk|diffusion|net|cloth|paper|gel|scrim)\b|(?<!\d)\b(?P<again>twice|thrice)\b(?! (?:as|the|that|a|its)\b)"
)
_OF_THEM = Pattern(rf"\b(?P<n>{_N}) (?:of (?:them|these|those|it)|together|in a (?:pile|stack|row)|one over the other|on top of each other|deep)\b|\b(?:use|hang|stack|put(?: up| on| in)?|fit|tape|add|with|through|behind|take|need|drape|lay|fold it to) (?P<bare>{_N})(?=\s*(?:[,.;:?!]|$|over|in front|on|in the|before|across|up|do|does|will|would|is|are|have|has|then)\b|\s*[,.;:?!]|\s*$)")
"""So many, the thing itself being named before."""
_EACH = Pattern(r"\b(?:each|every|apiece|either of them|twice|thrice|per (?:sheet|layer|thickness)|(?:one|an?|a single) (?:sheet|layer|thickness|fold|ply|piece|pane|net|tissue|cloth|handkerchief|hankie|gel|scrim|screen|diffuser|sock|cap|panel|filter|curtain|veil))\b")
_ALIKE = Pattern(r"\b(?:the same|identical|equal|matching) (?=[\w./-]*(?:stop|third|half|quarter))|\b(?:two|three|four|five|\d) (?=(?:one|two|half|third|quarter|\d[\d./]*)(?:[- ]of[- ]an?)?[- ]stop )")
"""So many of one size, which need not be said of each: "two layers of the same one-stop cloth", "three half-stop nets"."""
_SHARE = Pattern(r"\b(?:(?:an?|one) )?(?P<share>half|third|quarter|eighth|sixteenth)\b(?! (?:an? )?stops?\b)(?: of)?(?: (?:the|its|my|all the))?(?: (?:flash|light))?|\b1/(?P<part>2|3|4|8|16|32|64)(?: of (?:the )?light)?\b|\b(?P<verb>halves?|quarters)(?= (?:the|my|its|what) (?:flash|light|comes)\b)")
_SHARES = {"half": 0.5, "third": 1 / 3, "quarter": 0.25, "eighth": 0.125, "sixteenth": 0.0625}
_SWALLOWED = Pattern(r"\b(?:eat\w*|swallow\w*|steal\w*|soak\w*|tak(?:es?|ing)|absorb\w*|los\w+|cost\w*|stop(?:s|ping) out|gone)\b")
_OTHER = Pattern(r"\b(?:push|pull|film|iso|faster|power|gn|guide|feet|foot|metres?|meters?|f ?/|1/\d{3,})\b")
_PART_OF_STOP = Pattern(r"\b(?:(?P<thirds>(?:two|2) thirds?|2/3)|(?P<most>three quarters?|3/4)|(?:an? |one )?(?:quarter|1/4))(?: of)?(?: an?)? stop\b")
_CLOSE = 0.1
_WORDS = {2.0: "Two", 3.0: "Three", 4.0: "Four", 5.0: "Five", 6.0: "Six"}


@record
class _Measure:
    """So much light in stops lost, and where it is said."""

    start: int
    end: int
    lost: float
    left: bool = False  # a share of the light that comes through


def claim_of_layers(query: Query) -> Solution | None:
    """What so many alike take together, or one alone, against the stops or the share that is said."""
    said = plain(query.text)
    each = _EACH.search(said)
    many = _MANY.search(said) or (_OF_THEM.search(said) if each is not None else None)
    if _OTHER.search(said) or many is None and not _is_loss_and_share(query, said):
        return None
    each = each or (_ALIKE.search(said) if many is not None else None)
    if each is None and many is not None:
        return None
    n, before = _so_many(many)
    measures = _measures(said)
    if len(measures) != 2 or n < 1:
        return None
    at = each.start() if each is not None else 0
    if many is None:
        one, total = sorted(measures, key=lambda m: m.left)
    else:  # "half the light through, twice": it is of what was just said
        one, total = measures if before else sorted(measures, key=lambda m: min(abs(m.start - (each.end() if each else 0)), abs(at - m.end)))
    right = n * one.lost
    over = (total.lost - right) if total.left else (right - total.lost)
    holds = within(bound_of(said[: total.start])[0], over, _CLOSE) is not turned(said, [(total.start, total.end)])
    alone = f"{speak_stops(right)} lost" if n == 1 else f"{_WORDS.get(n, f'{n:g}')} times {speak_stops(one.lost)} are {speak_stops(right)}"
    return Solution(answers=(Quantity("claim", holds), marks.stops(-right)), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. {alone[:1].upper()}{alone[1:]}: 1/{2**right:.3g} of the light is left.")


_COMES_THROUGH = Pattern(r"\b(?:through|left|pass\w*|gets?|reach\w*|remain\w*|arriv\w*|transmit\w*|let\w*|leav\w*)\b")


def _is_loss_and_share(query: Query, said: str) -> bool:
    """"the diffuser swallows a stop and a half: does less than half the light come through?": one loss, and the share it leaves."""
    told = [f for f in query.facts if f.quantity in ("loss", "filter_loss")]
    rest = {f.quantity for f in query.facts if f.origin == "said"} - {"loss", "filter_loss", "modifier", "camera_filter", "power", "share", "relation"}
    if not told or rest or "light" not in said or _COMES_THROUGH.search(said) is None:
        return False
    shares = [m for m in _measures(said) if m.left]
    return len(shares) == 1 and len([f for f in told if not shares[0].start <= f.start < shares[0].end]) == 1


def _so_many(many: re.Match[str] | None) -> tuple[float, bool]:
    """How many there are, and whether they are told after what one takes ("twice")."""
    if many is None:
        return 1.0, False
    told = many.groupdict()
    if told.get("again"):
        return {"twice": 2.0, "thrice": 3.0}[many["again"]], True
    return number(told.get("n") or told.get("bare") or "1"), False


def _measures(said: str) -> list[_Measure]:
    parts = [_Measure(m.start(), m.end(), 2 / 3 if m["thirds"] else 0.75 if m["most"] else 0.25) for m in _PART_OF_STOP.finditer(said)]
    stops = parts + [_Measure(t.start, t.end, abs(t.doublings)) for t in terms(said) if t.quantity in ("stops", "filter") and not any(p.start < t.end and t.start < p.end for p in parts)]
    shares = [_share(said, m) for m in _SHARE.finditer(said) if not any(s.start < m.end() and m.start() < s.end for s in stops)]
    return sorted((*stops, *shares), key=lambda m: m.start)


def _share(said: str, found: re.Match[str]) -> _Measure:
    part = _SHARES[found["share"]] if found["share"] else 1 / float(found["part"]) if found["part"] else 0.25 if found["verb"] == "quarters" else 0.5
    near = said[max(0, found.start() - 14) : found.start()] + " | " + said[found.end() : found.end() + 12]
    taken = _SWALLOWED.search(near) is not None
    return _Measure(found.start(), found.end(), -math.log2(1 - part if taken else part), not taken)

"""The answer just given, put back as a claim: "seven stops under." "so it's more than five stops under, is that right?"."""

from __future__ import annotations

from assistant.answer import Answer, Quantity
from assistant.patterns import Pattern
from assistant.records import replace
from assistant.replying import speak
from assistant.scales import speak_stops
from assistant.solving import how_much
from assistant.solving.claim_words import plain
from assistant.solving.solution import Solution
from assistant.turn import Turn

_SUMS_UP = Pattern(
    r"^\W*(?:(?:and|so|then|ok|okay|but|hmm|well|right),? )*(?:(?:is|are) (?:that|it|they|this|these|those)\b|(?:that|it|they|this|which|these|those)(?:'s|'re| is| are| comes? to| makes?| means?| works? out)\b"
    r"|(?:well |just |a bit )?(?:more than|less than|over|under|at least|at most|about|nearly)\b)")
_ANOTHER_CASE = Pattern(r"\b(?:if|when|what|which|how|why|where|instead|another|further|again|now|make|set|open|close|turn|move|with|without|on|at(?! (?:least|most)))\b")
_OF_STOPS = frozenset({"stops", "relation", "loss", "filter_loss", "power_down", "signed"})
_LONGEST = 80


def sums_up(turn: Turn) -> Answer | None:
    """Whether the stops put up are those of the last answer; None where anything else is said."""
    query, last = turn.query, turn.conversation.last_solution
    if last is None or last.status != "answered" or not last.answers or last.answers[0].quantity != "stops" or not query.facts or len(query.text) > _LONGEST:
        return None
    said, value = plain(query.text), last.answers[0].value
    put_up = (query.claim or "?" in said) and _SUMS_UP.match(said) is not None and _ANOTHER_CASE.search(said) is None
    if not put_up or not isinstance(value, float) or {f.quantity for f in query.facts} - _OF_STOPS or any(a.quantity != "stops" for a in query.asks) or set(query.mentioned) - {last.answers[0].of}:
        return None
    sizes = how_much.claimed(query)
    if not sizes or any(s.kind != "stops" for s in sizes):
        return None
    holds = how_much.verdict(sizes, [value] * len(sizes), said)
    way = "" if not value else " more" if value > 0 else " less"
    found = Solution(answers=(Quantity("claim", holds), last.answers[0]), topic="claims", lead=f"{'Yes' if holds else 'No'}. It is {speak_stops(abs(value))}{way} ({value:+.2f}).")
    return speak(turn, replace(query, facts=()), found)

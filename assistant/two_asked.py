"""Two things asked in one sentence, each answered by itself where the whole was answered for one of them only.

"How many at 1/8, and how many stops does each lose?": a reading that looks for what is asked
may find one thing and be content. So each half is put by itself, with what was told for
both, and what the whole answer lacks is taken from there, in the order asked.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.answer import Answer
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import record, replace

_BEGINS = Pattern(r"\b(?:(?:at|by|to|through|for) )?(?:how (?:many|much|far|long|short|near|close|fast|strong|bright|dark|wide|high)|what|which)\b", re.I)
_AND_ASKS = Pattern(r"[,;?]?\s+and (?:so |then |also |now )?(?=(?:(?:at|to|through|for) )?(?:how (?:many|much|far|long|short|near|close|fast|strong|bright|dark|wide|high)|what|which)\b(?! (?:at|on|with|for|from|when|if|in|about|through)\b))", re.I)
"""Before the second question; "which is brighter, and by how much?" is one, and "and how many at ISO 200?" asks the same again."""
_NEW_SENTENCE = Pattern(r"[.?!;:]\s", re.I)
_CONDITION = Pattern(r"\b(?:at|on|with|without|from|through|if|when|behind|under|after)\b.*", re.I)
_LONGEST = 600
"""Letters of a text in which two questions are looked for."""
_STANDS = ("answered", "out_of_reach")


@record
class Halves:
    """The two questions, each with what was told for both."""

    first: str
    second: str
    plain_second: str
    second_words: str


def halves(text: str) -> Halves | None:
    """The halves of "…, how many X, and what Y?"; None for any other text.

    >>> halves("180 pops. How many at half power, and how many stops are lost?").second
    '180 pops. at half power, how many stops are lost?'
    """
    if not _AND_ASKS.may_match(text) or len(text) > _LONGEST or text.rstrip()[-1:] != "?":
        return None
    joint = next(iter(reversed(list(_AND_ASKS.finditer(text)))), None)
    if joint is None or "?" in text[joint.end() :].rstrip()[:-1]:
        return None
    begun = max((m.end() for m in _NEW_SENTENCE.finditer(text, 0, joint.start())), default=0)
    asks = _BEGINS.search(text, begun, joint.start())
    if asks is None:
        return None
    told, first, second = text[: asks.start()], text[asks.start() : joint.start()], text[joint.end() :]
    condition = _CONDITION.search(first, asks.end() - asks.start())
    given = f"{condition[0]}, " if condition else ""
    return Halves(f"{told}{first}?", f"{told}{given}{second}", f"{told}{second}", second)


def both(whole: Answer, parts: Halves, asked: Callable[[str], Query], answer: Callable[[str], Answer]) -> Answer:
    """The whole answer with what it lacks of either half; `answer` answers a text by itself, leaving the conversation as it was."""
    given = {q.quantity for q in whole.answers} if whole.status in _STANDS else set()
    wants = [{a.quantity for a in asked(text).asks} for text in (parts.first, parts.second)]
    if wants[0] & wants[1] and whole.status in _STANDS and len(whole.answers) == 1 and not whole.table:
        return _one_only(whole, parts)  # "how many stops is the push, and how many stops under is it undeveloped"
    if not wants[1] or wants[0] & wants[1] or wants[1] <= given and (not wants[0] or wants[0] & {q.quantity for q in whole.answers[:1]}):
        return whole
    first = answer(parts.first)
    second = next((a for a in map(answer, (parts.second, parts.plain_second)) if _is_of(a, wants[1])), None)
    if second is None or first.status not in _STANDS or not first.answers or first.answers[0].quantity == second.answers[0].quantity:
        return whole if whole.status not in _STANDS or wants[1] <= given else _one_only(whole, parts)
    return _joined(whole, first, second)


def _one_only(whole: Answer, parts: Halves) -> Answer:
    """One of the two was not understood: said so, with what is known of the other."""
    left = parts.second_words.rstrip(" ?")
    return Answer(heard=whole.heard, status="not_understood", reply=f"You asked two things, and I understood one of them: {whole.reply} I could not place “{left}”; please ask that by itself.", unplaced=(left,))


def _is_of(found: Answer, wanted: set[str]) -> bool:
    return found.status in _STANDS and bool(found.answers) and found.answers[0].quantity in wanted


def _joined(whole: Answer, first: Answer, second: Answer) -> Answer:
    more = tuple(q for q in second.answers if q.quantity not in {a.quantity for a in first.answers[:1]})
    status = "out_of_reach" if "out_of_reach" in (first.status, second.status) else "answered"
    return replace(
        first, heard=whole.heard, status=status, reply=f"{first.reply} {second.reply}", answers=tuple(dict.fromkeys((*first.answers[:1], *more[:1], *first.answers[1:], *more[1:]))),
        assumed=tuple(dict.fromkeys((*first.assumed, *second.assumed))), alternatives=first.alternatives + second.alternatives,
        unplaced=tuple(w for w in first.unplaced if w in second.unplaced), cautions=tuple(dict.fromkeys((*first.cautions, *second.cautions))), working=first.working + second.working,
    )

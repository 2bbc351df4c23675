"""The laws that every answer keeps, whatever was said."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator

from assistant.answer import Answer
from assistant.answering import as_read
from assistant.assistant import Assistant
from assistant.language.hearing import hear
from assistant.language.pieces import Number
from assistant.language.reading import read
from assistant.solving.solver import unused

LIMIT_S = 0.050
"""Seconds for each 1,000 letters begun."""
STATUSES = frozenset({"answered", "needs", "out_of_reach", "noted", "not_understood", "rejected"})
KEYS = frozenset({"heard", "status", "answers", "assumed", "missing", "unplaced", "alternatives", "cautions", "working", "reply"})


def broken_laws(assistant: Assistant, text: str, answer: Answer) -> list[str]:
    """What is wrong with this answer to this text; empty when nothing is."""
    return [*_fit_to_be_shown(answer), *_sound_object(text, answer), *_no_number_left_out(assistant, text, answer)]


def _fit_to_be_shown(answer: Answer) -> Iterator[str]:
    wrong = sorted({f"U+{ord(c):04X}" for c in answer.reply if not c.isprintable() and c != "\n"})
    if wrong:
        yield f"control characters in the reply: {wrong}"
    if not answer.reply.strip():
        yield "an empty reply"


def _sound_object(text: str, answer: Answer) -> Iterator[str]:
    """Strict JSON on one line, with the keys of the contract."""
    written = answer.as_json()
    if "\n" in written or not written.isascii():
        yield "the object is not one plain line"
    try:
        found = json.loads(written, parse_constant=_not_json)
    except ValueError as fault:
        yield f"no JSON: {fault}"
        return
    if not KEYS <= set(found) <= KEYS | {"table"}:
        yield f"keys: {sorted(found)}"
    if found["status"] not in STATUSES:
        yield f"status {found['status']}"
    if found["heard"].encode("utf-16", "surrogatepass") != text.encode("utf-16", "surrogatepass"):  # JSON joins the halves of a letter
        yield "heard is not what was said"
    if found["status"] in ("not_understood", "needs") and found["answers"]:
        yield f"answers with status {found['status']}"
    if found["status"] == "needs" and not found["missing"]:
        yield "needs, and does not say what"


def _not_json(name: str) -> None:
    raise ValueError(f"{name} is no JSON")


def _no_number_left_out(assistant: Assistant, text: str, answer: Answer) -> Iterator[str]:
    """Each written number of an answered question was used, or the reply or `unplaced` says that it was not."""
    query, solution = assistant.conversation.last_query, assistant.conversation.last_solution
    if answer.status != "answered" or not answer.answers or query is None or solution is None or solution.answers != answer.answers:
        return
    text = _with_its_places(as_read(text), query.text)
    if solution.topic == "claims" or re.search(r"\b(?:no|not|sorry|rather|oops|wait|actually|mean|make (?:it|that)|scratch that|scrap that|strike that|forget that|cancel that|correction)\b", text.lower()):  # a claim is answered by where it first goes wrong; what is put right is gone
        return
    read_as = read(text, assistant.tables, assistant.conversation.kit.names)
    went_into_others = [f for f in read_as.facts if f not in query.facts or f.quantity in ("place", "rows")]
    accounted = (*solution.used, *unused(query, solution), *went_into_others)  # of the unused the reply says that they were not needed
    told = _figures(answer.reply) | {figure for words in answer.unplaced for figure in _figures(words)}
    values = {f"{abs(value):.3g}" for f in solution.used for value in (f.value, f.other, f.at_iso, f.at_power) if value is not None}
    for token in hear(text, assistant.tables.lexicon).tokens:
        said = text[token.start : token.end]
        if isinstance(token.value, Number) and said[:1].isdecimal() and not _told(said, told) and f"{abs(token.value.value):.3g}" not in values \
                and not any(f.start <= token.start < f.end for f in accounted):
            yield f"the number {said!r} was left out of: {answer.reply[:300]}"


def _with_its_places(said: str, read_as: str) -> str:
    """The text in which the facts of an answer have their places: where a mistyped word was put right, those after it have moved. One that lost a figure by it is not taken."""
    return read_as if re.findall(r"\d+", read_as) == re.findall(r"\d+", said) else said


def _figures(text: str) -> set[str]:
    return {figure.strip(".,").replace(",", "") for figure in re.findall(r"\d[\d.,]*", text)}


def _told(said: str, told: set[str]) -> bool:
    figures = _figures(said)
    return bool(figures) and figures <= told

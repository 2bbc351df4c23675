"""A value changed in a half-sentence must give what the whole question said anew with it gives."""

from __future__ import annotations

import math
import re
import sys
from pathlib import Path

from assistant.answer import Answer
from assistant.query import Fact

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "language"))
from corpus import cases, fresh  # noqa: E402

_FIGURE = re.compile(r"\d+(?:\.\d+)?(?:/\d+)?")
_MARKS = (1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45)
_DOUBLED = frozenset({"film_speed", "shutter"})
_A_STOP_ON = frozenset({"stops", "loss", "relation", "filter_loss"})
_HALF_AS_MUCH_AGAIN = frozenset({"distance", "guide_number", "energy", "focus_distance", "path"})
_EVERY = 4
"""One question of so many is tried: they are alike, and all of them take a quarter of a minute."""
_MAY_DIFFER = 0.03
"""The share of half-sentences that may be read as another value than the one meant here: "60 m?" after "a 40 m flash at 5 m" may be either's."""


def another(fact: Fact) -> str | None:
    """The words of a fact with another value in them; None where it has no one figure to change."""
    figures = _FIGURE.findall(fact.said)
    if len(figures) != 1 or "/" in figures[0] and fact.quantity != "power":
        return None
    if fact.quantity == "power":
        return fact.said.replace("1/", "1/1", 1) if re.search(r"1/[56]\b", fact.said) else None
    old = float(figures[0])
    if fact.quantity == "aperture":
        marks = [mark for mark in _MARKS if mark > old * 1.2]
        new = marks[0] if marks and fact.said.strip().lower().startswith("f") else None
    else:
        new = old * 2 if fact.quantity in _DOUBLED else old + 1 if fact.quantity in _A_STOP_ON else math.ceil(old * 1.5) if fact.quantity in _HALF_AS_MUCH_AGAIN else None
    return None if new is None else _FIGURE.sub(f"{new:g}", fact.said.strip(), count=1)


def first(found: Answer) -> tuple[str, object] | None:
    return (found.answers[0].quantity, found.answers[0].value) if found.status in ("answered", "out_of_reach") and found.answers else None


def test_a_value_told_anew_means_the_question_said_anew() -> None:
    """Over the questions of the corpus: same answer, or asked back; another one in three of a hundred at most."""
    ready, same, other = fresh(), 0, []
    questions = [c.phrase for c in cases() if c.kind == "answers" and c.expect.startswith("answered ") and "claim" not in c.expect]
    for text in questions[::_EVERY]:
        ready.new_conversation(keep_kit=False)
        was = first(ready.answer(text))
        told = ready.conversation.last_query
        for fact in told.facts if told is not None and was is not None else ():
            new = another(fact) if sum(f.quantity == fact.quantity for f in told.facts) == 1 and text.count(fact.said.strip()) == 1 else None
            if new is None:
                continue
            ready.new_conversation(keep_kit=False)
            anew = first(ready.answer(text.replace(fact.said.strip(), new)))
            if anew is None or anew == was or anew[0] != was[0]:
                continue
            ready.new_conversation(keep_kit=False)
            ready.answer(text)
            half = first(ready.answer(f"and {new}?"))
            if half is None:
                continue
            if half[0] == anew[0] and isinstance(half[1], (int, float)) and math.isclose(half[1], float(str(anew[1])), rel_tol=0.01):
                same += 1
            else:
                other.append((text, new, anew, half))
    assert same > 300
    assert len(other) <= _MAY_DIFFER * (same + len(other)), other

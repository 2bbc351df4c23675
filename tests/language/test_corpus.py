"""Every phrase of the corpus is read as the corpus says."""

from __future__ import annotations

import pytest
from corpus import Case, answer, answer_fits, cases, facts_fit, failure, fresh, query, show_answer, show_asks, show_facts


def _param(case: Case) -> object:
    marks = [pytest.mark.xfail(strict=True, reason=case.reason)] if case.kind == "not_yet" or case.reason else []
    return pytest.param(case, id=f"{case.file}: {case.phrase}"[:140], marks=marks)


def of_kinds(*kinds: str) -> list[object]:
    """Test cases of these kinds, each named by its phrase."""
    return [_param(case) for case in cases() if case.kind in kinds]


def is_whole(case: Case) -> bool:
    """Whether an entry speaks of a whole question's answer."""
    return case.expect.split(" ")[0] in ("answered", "needs", "out_of_reach", "noted", "not_understood", "rejected")


def check_reading(case: Case) -> None:
    """The facts, and what is asked where the entry says."""
    found = query(case.phrase)
    assert facts_fit(found.facts, case.expect), failure(case, case.expect or "no facts", show_facts(found), case.phrase)
    if case.asks:
        assert show_asks(found) == case.asks, failure(case, "asks " + case.asks, "asks " + show_asks(found), case.phrase)


def check_answer(case: Case) -> None:
    """The status and the first answer."""
    found = answer(case.phrase)
    assert answer_fits(found, case.expect), failure(case, case.expect, show_answer(found) + " — " + found.reply, case.phrase)


@pytest.mark.parametrize("case", of_kinds("means"))
def test_a_phrase_means_its_entry(case: Case) -> None:
    """One phrase, one meaning: all of its facts and no other."""
    check_reading(case)


@pytest.mark.parametrize("case", of_kinds("never"))
def test_a_phrase_is_never_read_so(case: Case) -> None:
    """A phrase that looks like a quantity and is none."""
    found = query(case.phrase)
    read_so = [f.quantity for f in found.facts if f.quantity == case.expect and not f.bad]
    assert not read_so, failure(case, f"no {case.expect}", show_facts(found), case.phrase)


@pytest.mark.parametrize("case", of_kinds("answers"))
def test_a_question_gets_its_answer(case: Case) -> None:
    """The status and the first quantity of the answer."""
    check_answer(case)


@pytest.mark.parametrize("case", of_kinds("not_yet"))
def test_a_phrase_not_yet_read(case: Case) -> None:
    """Known to fail; the day it passes the entry moves up."""
    check_answer(case) if is_whole(case) else check_reading(case)


@pytest.mark.parametrize("case", of_kinds("talks"))
def test_a_conversation_goes_as_written(case: Case) -> None:
    """Each turn in order, in one conversation with an empty kit."""
    talk = fresh()
    for say, expect in case.turns:
        found = talk.answer(say)
        assert answer_fits(found, expect), failure(case, expect, show_answer(found) + " — " + found.reply, say)

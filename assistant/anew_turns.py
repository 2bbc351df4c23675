"""A question asked once more in its own words, with what this turn tells put into them.

Most half-sentences are joined with the scene and solved. Where that leads to another kind of answer than
before, or to none, the question that stands is said again with the new value where the old one stood.
"""

from __future__ import annotations

from assistant.answer import Answer
from assistant.memory.conversation import Judged
from assistant.memory.judged_again import Anew, bears, said_anew, told_when
from assistant.memory.layers import ON_TOP
from assistant.memory.said_again import of_lens_or_draw
from assistant.query import TAKES_LIGHT, Fact, Query
from assistant.records import replace
from assistant.replying import remember, speak
from assistant.solving.doubtful import doubtful
from assistant.solving.doubtful_idle import is_no_place
from assistant.solving.left_out import stray_numbers
from assistant.solving.limits import check
from assistant.solving.solution import Solution
from assistant.solving.solver import impossible, solve, unbearable
from assistant.solving.sureness import sentence
from assistant.turn import Turn


def strays(turn: Turn, solution: Solution | None) -> bool:
    """Whether this is another kind of answer than the one before, though nothing else was asked."""
    last = turn.conversation.last_solution
    if last is None or not last.answers:
        return False
    return solution is None or not solution.answers or solution.topic != last.topic or (solution.answers[0].quantity, solution.answers[0].of) != (last.answers[0].quantity, last.answers[0].of)


def asked_anew(turn: Turn, query: Query) -> Answer | None:
    """The answer to the question that stands with the new values in it; None where it is not the same kind of answer, or does not go by them."""
    talk = turn.conversation
    last, before = talk.last_query, talk.last_solution
    if last is None or before is None or not before.answers or before.topic == "claims" or talk.missing or query.claim or not _asks_the_same(query, last) or not _stands(turn, last) or any(of_lens_or_draw(f, last) and f.quantity not in query.cues for f in query.facts):
        return None
    anew = said_anew(query, Judged(_as_said(last), last.asks, claim=False), talk)
    if anew is None or impossible(anew.query) or ON_TOP.search(query.text) and any(f.quantity in TAKES_LIGHT for f in anew.new):
        return None  # "and with a 0.3 stacked on it?": beside the one that was told, and not in its place
    solution = solve(anew.query)
    if solution is None or solution.status not in ("answered", "out_of_reach") or not solution.answers or strays(turn, solution) or not _bears(anew, solution, before) or any(is_no_place(f, solution, last, before) for f in anew.new):
        return None
    if unbearable(anew.query, solution) or stray_numbers(anew.query, anew.query, solution) or doubtful(anew.query, anew.query, solution):
        return None
    if {f.quantity for f in anew.new} == {"film_speed"} and solution.answers[0].value == before.answers[0].value:
        return None  # another film, and yet the rating of the one before
    solution = check(anew.query, solution)
    solution = solution.noting(sentence(anew.query, solution))
    remember(turn, anew.query, solution, text=anew.query.text)
    new = anew.new
    talk.last_query = replace(anew.query, facts=tuple(told_when(f, new) for f in anew.query.facts))
    return speak(turn, replace(anew.query, unplaced=()), replace(solution, used=tuple(told_when(f, new) for f in solution.used)))


OPENLY = frozenset({"what", "how_much", "how_many", "how_far", "how_long", "which"})


def _asks_the_same(query: Query, last: Query) -> bool:
    """Whether nothing of its own is asked: a quantity that is told, or the one that was asked before."""
    told = {f.quantity for f in query.facts} if not query.cues & OPENLY else set()
    return not query.asks or bool(last.asks) and (f"name_{last.asks[0].quantity}" in query.cues or all(a.quantity == last.asks[0].quantity or a.quantity in told for a in query.asks))


def _stands(turn: Turn, last: Query) -> bool:
    """Whether the question answered last is the one that stands, with all that was told since."""
    known = {(f.quantity, f.value, f.of) for f in last.facts}
    return all((f.quantity, f.value, f.of) in known for f in turn.conversation.scene.facts)


def _as_said(last: Query) -> Query:
    """The facts that stand in the words of the question, as said there; those from elsewhere as kept."""
    def here(fact: Fact) -> bool:
        return fact.start < fact.end and last.text[fact.start : fact.end].strip() == fact.said.strip()

    return last.with_facts(f if f.origin == "kit" else replace(f, origin="said" if here(f) else "kept") for f in last.facts)


def _bears(anew: Anew, solution: Solution, before: Solution) -> bool:
    """Whether the answer goes by what is new: a light that was moved since it was read reads otherwise."""
    if before.topic == "losses" and any(f.quantity == "distance" for f in anew.new) and solution.answers[0].value == before.answers[0].value:
        return False
    return bears(anew, solution) and (bool(anew.new) or solution.answers[0].value != before.answers[0].value)

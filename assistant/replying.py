"""An answer given: what of it the conversation remembers, and its sentences."""

from __future__ import annotations

from assistant.answer import Answer
from assistant.language import speaking
from assistant.memory.conversation import TOPIC_CUES, Scene
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.safety_turns import cautions_of
from assistant.solving.choices import options
from assistant.solving.conventions import is_key_to_fill
from assistant.solving.flash import asked_unit
from assistant.solving.left_out import left_out
from assistant.solving.lights import guide_unit
from assistant.solving.solution import Solution
from assistant.solving.solver import unused
from assistant.told_turns import leftover
from assistant.turn import Turn
from assistant.units import LENGTH


def remember(turn: Turn, whole: Query, solution: Solution, text: str | None = None) -> None:
    """Keep the scene as this answer leaves it, a later turn changes it, or asks of it; `text` is the question where its words were changed."""
    talk = turn.conversation
    talk.judged = None
    talk.missing = solution.missing if solution.status == "needs" else ()
    answered = tuple([Fact(q.quantity, float(q.value), q.unit, "", at_iso=q.at_iso, at_power=q.at_power, origin="kept") for q in solution.answers[:1]
                      if q.quantity in ("aperture", "power", "film_speed", "guide_number") and isinstance(q.value, (int, float))])
    asks, told = _as_asked(whole, solution)
    facts = tuple([f if f.unit or f.quantity != "guide_number" else _with_unit(f, whole) for f in told if f.origin != "kit"])
    cues = whole.cues & TOPIC_CUES | ({"key_to_fill"} if (whole.asks_for("ratio") or whole.has("ratio")) and is_key_to_fill(whole) else frozenset())
    talk.keep(Scene(facts, asks, cues, whole.units, answered or talk.scene.answered, text=text if text is not None else whole.text if turn.query.asks or not talk.scene.asks else talk.scene.text, mentioned=whole.mentioned))
    talk.last_working = solution.working
    if solution.answers and solution.status in ("answered", "out_of_reach"):
        talk.last_query, talk.last_solution = whole, solution


def _as_asked(whole: Query, solution: Solution) -> tuple[tuple[Ask, ...], tuple[Fact, ...]]:
    """What is asked and told; of a choice, "so is it f/4 or f/5.6?", the quantity that was chosen, and not the two that were offered."""
    if whole.asks or solution.status != "answered" or solution.topic in ("which_of_two", "claims") or " or " not in whole.text.lower():
        return whole.asks, whole.facts
    quantity, offered = options(whole)
    if not offered or solution.answers[0].quantity != quantity:
        return whole.asks, whole.facts
    starts = {f.start for f in offered}
    return (Ask(quantity),), tuple(f for f in whole.facts if f.start not in starts or f.origin != "said")


def _with_unit(fact: Fact, whole: Query) -> Fact:
    """A guide number keeps the unit it was taken to be in: "in metres" later converts the answer only. Where no length is known yet, the first one says it."""
    if not any(f.unit in LENGTH and f.unit != "mm" or f.quantity == "preferred_unit" for f in whole.facts) and not asked_unit(whole):
        return fact
    return replace(fact, unit=guide_unit(whole, fact, asked_unit(whole))[0], cue="unit_taken")


def speak(turn: Turn, query: Query, solution: Solution) -> Answer:
    """The solution in words, with what was taken, what was left over and the cautions."""
    cautions, idle = cautions_of(turn, query, solution), unused(query, solution)
    parts = [speaking.lead(solution), speaking.beside(solution)]
    if solution.status in ("answered", "out_of_reach"):
        parts.append(speaking.understood(_told_of(solution, turn.anew)))
    parts += [speaking.assumed(solution.assumed, solution.answers), *dict.fromkeys(solution.notes)]
    if solution.status in ("answered", "out_of_reach"):
        parts.append(speaking.unused(idle))
    counted = {f.said for f in solution.used if f.quantity == "number" and f.value == int(f.value)} if solution.topic in ("time", "bracket") else set()
    missed = tuple(dict.fromkeys((*(w for w in query.unplaced if w not in counted), *left_out(turn.query, query, solution, idle, " ".join(parts)))))
    parts += [leftover(missed), _read_as(query)]
    parts += [cautions[0].text] if cautions else []
    return Answer(
        heard=query.text, status=solution.status, reply=" ".join(filter(None, parts)), answers=solution.answers, assumed=solution.assumed,
        missing=solution.missing, unplaced=missed, alternatives=solution.alternatives, cautions=cautions,
        working=solution.working or _ledger(solution), table=solution.table,
    )


def _told_of(solution: Solution, anew: tuple[int, int] | None) -> tuple[Fact, ...]:
    """The facts behind the answer, without the old value of what is answered anew; where only one value is new, the rest still stands."""
    if anew is not None:
        return tuple([f if f.origin != "said" or f.start < anew[1] and f.end > anew[0] else replace(f, origin="kept") for f in solution.used])
    if solution.topic != "flash" or not solution.answers:
        return solution.used
    return tuple([f for f in solution.used if not (f.origin == "kept" and f.quantity == solution.answers[0].quantity)])


def _ledger(solution: Solution) -> tuple[str, ...]:
    return tuple([f"{entry.label or entry.quantity.replace('_', ' ')} {entry.value:.4g}: {entry.stops:+.2f} stops" for entry in solution.lines])


def _read_as(query: Query) -> str:
    if not query.read_as:
        return ""
    return " ".join(f"I read “{speaking.printable(said)}” as {read}." for said, read in query.read_as[:3])

"""Turns about safety: a question asked outright, a hazard only stated, a caution beside an answer."""

from __future__ import annotations

from assistant.answer import Answer, Told
from assistant.query import Query
from assistant.records import replace
from assistant.safety.may_concern import may_concern_safety
from assistant.solving.solution import Solution
from assistant.turn import Turn

TYPE_CHECKING = False
if TYPE_CHECKING:
    from assistant.safety.questions import SafetyAnswer

CLOSE_M = 1.0
"""Metres beyond which no caution goes by the distance alone."""


def safety_question(turn: Turn) -> Answer | None:
    """A question about harm, from the prepared answers; not one for an exposure."""
    figures = [f for f in turn.query.facts if f.quantity not in ("number", "count", "voltage", "energy", "years", "modifier", "camera_filter")]
    worked = turn.query.claim and sum(f.quantity == "energy" for f in turn.query.facts) > 1 and "safe" not in turn.query.text.lower()
    if (turn.query.asks and figures) or worked or not may_concern_safety(turn.query.text):
        return None
    from assistant.safety.questions import answer_safety
    from assistant.solving.which_of_two import more_of

    chosen = len({f.quantity for f in figures}) == 1 and " or " in turn.query.text.lower()
    if len(figures) > 1 and (chosen or more_of(turn.query) is not None):
        return None  # "baby on the rug: is the light more even at 2 m or at 4 m?"
    return _told(turn, answer_safety(turn.query.text))


def hazard_stated(turn: Turn) -> Answer | None:
    """A hazard that was only stated: what to mind, where nothing else could be made of the words."""
    if not may_concern_safety(turn.query.text):
        return None
    from assistant.safety.questions import answer_hazard

    return _told(turn, answer_hazard(turn.query.text))


def warned(turn: Turn, found: Answer) -> Answer:
    """Something noted, with the caution that it calls for."""
    if found.reply.strip() in ("Noted:", "Noted."):
        found = hazard_stated(turn) or found
    told = () if found.cautions else _fresh(turn, None)
    return replace(found, cautions=told, reply=" ".join((found.reply, told[0].text))) if told else found


def cautions_of(turn: Turn, query: Query, solution: Solution) -> tuple[Told, ...]:
    """Cautions that fit this scene, most serious first, each once a conversation."""
    if solution.status not in ("answered", "noted", "out_of_reach"):
        return ()
    return _fresh(turn, min([f.value for f in query.facts if f.quantity == "distance" and not f.of], default=None))


def _told(turn: Turn, found: SafetyAnswer | None) -> Answer | None:
    from assistant.safety.cautions import caution

    if found is None:
        return None
    told = tuple(Told(t, c.text, c.source) for t in found.topics for c in [caution(t)] if c)
    return Answer(heard=turn.query.text, status="answered", reply=found.reply, cautions=told)


def _fresh(turn: Turn, nearest: float | None) -> tuple[Told, ...]:
    if not may_concern_safety(turn.query.text) and (nearest is None or nearest > CLOSE_M):
        return ()
    from assistant.safety.cautions import find_cautions

    found = find_cautions(turn.query.text, distance_m=nearest)
    fresh = [c for c in found if c.topic not in turn.conversation.cautioned]
    turn.conversation.cautioned.update(c.topic for c in fresh)
    return tuple(Told(c.topic, c.text, c.source) for c in fresh)

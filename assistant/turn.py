"""One turn: what was said, and the conversation it was said in."""

from __future__ import annotations

from collections.abc import Callable

from assistant.answer import Answer
from assistant.memory.conversation import Conversation
from assistant.query import Query
from assistant.records import record


@record
class Turn:
    """A query and the conversation it was said in."""

    query: Query
    conversation: Conversation
    anew: tuple[int, int] | None = None
    """Where the new value stands, in a question that is said once more with it."""


Handler = Callable[[Turn], "Answer | None"]
"""One kind of turn: its answer, or None where the turn is of another kind."""

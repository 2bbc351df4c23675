"""What a rule of the follow-ups is: the query and the scene in, both out, changed or as they were."""

from __future__ import annotations

from collections.abc import Callable

from assistant.memory.conversation import Conversation, Scene
from assistant.query import Query

Pair = tuple[Query, Scene]
Rule = Callable[[Query, Scene, Conversation], Pair]

"""The way of a question, top to bottom: read, remember, solve, limit, caution, speak."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from assistant.answer import Answer
from assistant.language.reading import read
from assistant.language.tables import Tables, load_tables
from assistant.memory.conversation import Conversation
from assistant.turns import Turn, take_turn


@dataclass(slots=True)
class Assistant:
    """One person's assistant: the grammar's tables and the running conversation."""

    tables: Tables
    conversation: Conversation

    @classmethod
    def create(cls, cache: Path | None = None) -> "Assistant":
        """A fresh one; `cache` is where the grammar's tables are kept."""
        return cls(load_tables(cache), Conversation())

    def answer(self, text: str) -> Answer:
        """The answer to one question or remark. Never raises for anything typed."""
        query = read(text, self.tables, self.conversation.kit.names)
        return take_turn(Turn(query, self.conversation))

    def new_conversation(self, *, keep_kit: bool = True) -> None:
        """Forget the conversation, and the kit too when asked."""
        kit = self.conversation.kit
        self.conversation = Conversation(kit=kit) if keep_kit else Conversation()

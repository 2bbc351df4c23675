"""The assistant of one person: the grammar's tables, the running conversation, and what keeps the kit.

The chat shows its prompt before anything is asked, so what an answer needs is read with the first question, or by `prepare` while the person types.
"""

from __future__ import annotations

import os

from assistant.memory.conversation import Conversation
from assistant.memory.keeping import Keeper
from assistant.records import changing, field

TYPE_CHECKING = False
if TYPE_CHECKING:
    from assistant.answer import Answer
    from assistant.language.tables import Tables


@changing
class Assistant:
    """One person's assistant; `cache` is where the grammar's tables are kept (None: nowhere)."""

    known_tables: Tables | None = None
    conversation: Conversation = field(default_factory=Conversation)
    keeper: Keeper = field(default_factory=lambda: Keeper(None))
    cache: str | os.PathLike[str] | None = None

    @classmethod
    def create(cls, cache: str | os.PathLike[str] | None = None, home: str | os.PathLike[str] | None = None) -> Assistant:
        """A fresh one; `home` is where the kit and the log are kept (None: nowhere)."""
        keeper = Keeper(home)
        return cls(None, Conversation(kit=keeper.load_kit()), keeper, cache)

    @property
    def tables(self) -> Tables:
        """The grammar's tables, read when they are first asked for."""
        if self.known_tables is None:
            from assistant.language.tables import load_tables

            self.known_tables = load_tables(self.cache)
        return self.known_tables

    def prepare(self) -> None:
        """Read now what the first answer would have to wait for."""
        import assistant.answering  # noqa: F401

        self.tables  # noqa: B018

    def answer(self, text: str) -> Answer:
        """The answer to one question or remark; what it told of the gear or a frame is kept before this returns."""
        from assistant.answering import answered

        return answered(self.tables, self.conversation, self.keeper, text)

    def troubles(self) -> tuple[str, ...]:
        """What went wrong with keeping since the last call, one sentence each."""
        return self.keeper.troubles()

    def new_conversation(self, *, keep_kit: bool = True) -> None:
        """Forget the conversation, and the kit and the log too when asked."""
        talk = self.conversation
        self.conversation = Conversation(kit=talk.kit, log=talk.log) if keep_kit else Conversation()

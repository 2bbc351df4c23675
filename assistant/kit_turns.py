"""Being written."""
from assistant.turn import Turn
from assistant.answer import Answer


def about_what_is_kept(turn: Turn) -> Answer | None:
    return None

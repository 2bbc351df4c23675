"""What only a later turn needs: how its words change the scene or put the kit right.

The first question of a conversation has nothing to change, and does not wait for the modules that could change it.
"""

from __future__ import annotations

from assistant.memory.conversation import Conversation, Scene
from assistant.query import Fact, Query


def follow_up(query: Query, talk: Conversation) -> tuple[Query, Scene]:
    """The query and the scene with the changes that the query's words ask for."""
    if not (talk.scene.facts or talk.scene.asks or talk.kit.facts):
        return query, talk.scene
    from assistant.memory import followups

    return followups.follow_up(query, talk)


def half_said(query: Query, scene: Scene) -> bool:
    """Whether a sentence with nothing in it to place still changes what stands."""
    from assistant.memory import followups

    return followups.half_said(query, scene)


def of_another_row(query: Query, scene: Scene) -> bool:
    """Whether "and the front row?" asks the question that stands of another row, both of which it told."""
    from assistant.memory import followups

    return followups.of_another_row(query, scene)


def of_what_stands(query: Query, scene: Scene) -> bool:
    """Whether pops of another power are asked of, after some that a reading was taken with, or "how many" of what was counted before."""
    from assistant.memory import anew, same_kind, split_again, worn

    return bool(anew.another_power(query, scene)) or same_kind.as_many(query, scene) or bool(split_again.beside_one(query, scene)) or worn.with_what_is_on(query, scene)


def kit_put_right(query: Query, talk: Conversation) -> Fact | None:
    """The value of the kit that "sorry, 115, not 105" puts right."""
    if not talk.kit.facts or query.asks:
        return None
    from assistant.memory import corrections

    return corrections.correction(query, talk) or corrections.last_put_right(query, talk)

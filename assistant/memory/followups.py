"""Follow-ups: half-sentences that change the scene that stands.

"half that" · "a stop more light" · "not 105, 115" · "lose the fill" · "another at the same spot".
Each rule looks at the query and the scene and gives both back, changed. The rules run in
order; a rule that does not fit gives back what it got.
"""

from __future__ import annotations

from assistant.memory.anew import (
    after_measured,
    draw_again,
    leg_again,
    length_again,
    loss_anew,
    loss_more,
    loss_now,
    pair_again,
    pops_of_another_power,
    rated_again,
    so_many,
    stops_again,
    strength_again,
    the_loss_anew,
    the_same_ones_loss,
    the_stops_anew,
    zoom_again,
)
from assistant.memory.bare import (
    bare_numbers,
    density_again,
    film_pushes,
    made_right,
    only_so_many,
    ratio_convention,
    relation_again,
    role_value,
    row_again,
    row_numbers,
    side_again,
    steps_again,
    wide_open,
)
from assistant.memory.conversation import Conversation
from assistant.memory.corrections import corrected, units
from assistant.memory.film_again import guide_for_another, over_anew, scale_again
from assistant.memory.layers import layered
from assistant.memory.lens_again import image_again, limit_again
from assistant.memory.lights_changed import (
    all_of_them,
    another,
    drops,
    just_one,
    keeps_answer,
    measured_loss,
    one_fails,
    one_pop,
    other_light,
    put_back,
    rows_again,
    swaps,
    turned_round,
)
from assistant.memory.reached import only_so_far
from assistant.memory.rules import Pair, Rule
from assistant.memory.steps import another_length, half_that, more_or_less
from assistant.query import Query


def follow_up(query: Query, talk: Conversation) -> Pair:
    """The query and the scene with the changes that the query's words ask for."""
    pair = (query, talk.scene)
    if not talk.scene.facts and not talk.scene.asks and not talk.kit.facts:
        return pair
    for rule in RULES:
        pair = rule(pair[0], pair[1], talk)
    return pair


RULES: tuple[Rule, ...] = (
    layered, only_so_far, pair_again, after_measured, so_many, pops_of_another_power, stops_again, zoom_again, loss_now, the_loss_anew, the_stops_anew, the_same_ones_loss, loss_anew, strength_again, draw_again, leg_again, rated_again, corrected, units, ratio_convention, swaps, drops, loss_more, measured_loss, another_length, half_that, relation_again, over_anew, more_or_less,
    another, keeps_answer, one_pop, turned_round, rows_again, one_fails, put_back, just_one, all_of_them, other_light, role_value, film_pushes, wide_open, only_so_many, density_again, steps_again, side_again, limit_again, image_again, made_right, row_again, row_numbers, scale_again, guide_for_another, bare_numbers, length_again,
)

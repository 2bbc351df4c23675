"""Follow-ups: half-sentences that change the scene that stands.

"half that" · "a stop more light" · "not 105, 115" · "lose the fill" · "another at the same spot".
Each rule looks at the query and the scene and gives both back, changed. The rules run in
order; a rule that does not fit gives back what it got.
"""

from __future__ import annotations

from assistant.memory.anew import (
    after_measured,
    draw_again,
    in_its_place,
    leg_again,
    length_again,
    loss_anew,
    loss_now,
    pair_again,
    pops_of_another_power,
    rated_again,
    says_stops_again,
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
    row_number,
    row_numbers,
    side_again,
    steps_again,
    wide_open,
)
from assistant.memory.bare_again import (
    end_again,
    factor_again,
    number_again,
    other_way,
    range_again,
    rate_again,
    reading_kept,
    says_other_way,
    says_stops_alone,
    stops_alone,
    thirds_again,
    time_alone,
    time_put_back,
)
from assistant.memory.by_name import of_the_named
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.corrections import corrected, units
from assistant.memory.film_again import frames_again, guide_for_another, over_anew, pops_on_another_film, pushed_or_pulled, says_so_many_each, scale_again
from assistant.memory.from_what_was_found import from_what_was_found
from assistant.memory.groups_again import both_of_them_again, depth_again, one_of_two_again
from assistant.memory.hung_since import moved_with_it, taken_off_again
from assistant.memory.layers import layered, stacked
from assistant.memory.leeway_again import leeway_again
from assistant.memory.lens_again import image_again, limit_again, other_limit, sharp_again
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
from assistant.memory.losses_added import loss_more
from assistant.memory.move_again import move_again, says_another_move
from assistant.memory.off_and_on import off_and_on, says_off_and_on
from assistant.memory.off_the_wall import off_the_wall
from assistant.memory.places_anew import place_anew
from assistant.memory.pops_again import pops_told, reach_told
from assistant.memory.reached import only_so_far, sync_only
from assistant.memory.reference_again import asked_first, reading_by_power, reference_again
from assistant.memory.rules import Pair, Rule
from assistant.memory.same_kind import kind_again, level_again, many_again, metered_again, reading_again, row_by_place, says_level, sky_again
from assistant.memory.short_steps import step_as_before, step_told, to_so_many
from assistant.memory.split_again import split_again
from assistant.memory.steps import another_length, half_that, halves, more_or_less
from assistant.memory.taken_away import taken_away, taken_away_beside, takes_away
from assistant.memory.things_placed import thing_placed, way_end_again
from assistant.memory.what_moved import still_so, what_moved
from assistant.memory.where_it_comes_to import where_it_comes_to
from assistant.memory.worn import glass_anew, passes_anew
from assistant.memory.zoom_anew import zoom_anew
from assistant.query import Query


def follow_up(query: Query, talk: Conversation) -> Pair:
    """The query and the scene with the changes that the query's words ask for."""
    pair = (query, talk.scene)
    if not talk.scene.facts and not talk.scene.asks and not talk.kit.facts:
        return pair
    for rule in RULES:
        pair = rule(pair[0], pair[1], talk)
    return pair


def half_said(query: Query, scene: Scene) -> bool:
    """Whether a sentence with nothing in it to place still changes what stands: "half that", "the far one?", "level with it", "and the back row?"."""
    return halves(query) or says_so_many_each(query, scene) or says_other_way(query) or takes_away(query, scene) is not None or says_off_and_on(query, scene) is not None or says_stops_alone(query, scene) is not None or says_another_move(query, scene) is not None or bool(other_limit(query, scene)) or says_stops_again(query, scene) is not None or says_level(query, scene) is not None or of_another_row(query, scene)


def of_another_row(query: Query, scene: Scene) -> bool:
    """"and the back row?": the question that stands, of another row."""
    if not query.cues & {"front", "back", "middle"} or not scene.text:
        return False
    from assistant.solving.set_for_row import asks_another

    by_guide = bool(scene.asks) and scene.asks[0].quantity == "aperture" and any(f.quantity == "guide_number" for f in scene.facts) and {f.of for f in scene.facts if f.quantity == "distance"} >= {"front", "back"}
    return asks_another(query.text, scene.text, told=by_guide)


RULES: tuple[Rule, ...] = (
    where_it_comes_to, pops_told, reach_told, moved_with_it, taken_off_again, many_again, from_what_was_found, still_so, what_moved, thing_placed, place_anew, glass_anew, of_the_named, split_again, in_its_place, off_and_on, taken_away, taken_away_beside, depth_again, both_of_them_again, one_of_two_again,
    frames_again, number_again, factor_again, end_again, way_end_again, stops_alone, thirds_again, time_alone, time_put_back, range_again, other_way, rate_again,
    reading_kept, move_again, reference_again, reading_by_power, layered, stacked, only_so_far, sync_only, steps_again, pair_again,
    after_measured, leeway_again, so_many, pops_of_another_power, pops_on_another_film, stops_again, zoom_anew, zoom_again, loss_now,
    the_loss_anew, the_stops_anew, the_same_ones_loss, loss_anew, passes_anew, strength_again, draw_again, leg_again,
    off_the_wall, rated_again, corrected, units, ratio_convention, swaps, drops, loss_more, measured_loss,
    step_told, step_as_before, another_length, to_so_many, half_that, relation_again, over_anew, more_or_less, another, keeps_answer, one_pop, turned_round,
    rows_again, one_fails, put_back, just_one, all_of_them, other_light, role_value, film_pushes, wide_open,
    only_so_many, density_again, side_again, limit_again, sharp_again, image_again, made_right, row_again, row_number,
    row_numbers, scale_again, pushed_or_pulled, sky_again, level_again, kind_again, metered_again, reading_again, row_by_place,
    guide_for_another, bare_numbers, length_again, asked_first,
)

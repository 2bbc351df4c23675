"""Claims of one kind, each judged with all of its own figures: tried before any general rule or belief."""

from __future__ import annotations

from collections.abc import Callable

from assistant.query import Query
from assistant.solving import claim_added, claim_stacked, claim_time
from assistant.solving.claim_backdrop import claim_of_backdrop_by_place, claim_of_black
from assistant.solving.claim_below_full import claim_of_below_full
from assistant.solving.claim_both_lights import claim_of_both
from assistant.solving.claim_charge import claim_of_charge, claim_of_full_in_time
from assistant.solving.claim_close_up import (
    claim_of_bellows,
    claim_of_draw_against,
    claim_of_draw_in_stops,
    claim_of_effective,
    claim_of_scale,
    claim_of_what_the_film_gets,
)
from assistant.solving.claim_coverage import claim_of_coverage
from assistant.solving.claim_daylight import claim_of_daylight, claim_of_nd, claim_of_room
from assistant.solving.claim_depth_by_stop import claim_of_depth_by_stop
from assistant.solving.claim_distances import claim_of_evenness, claim_of_places_within, claim_of_share_by_distance
from assistant.solving.claim_energy import claim_of_energies, claim_of_parts_in_all, claim_of_pops_in_all, claim_of_recycling, claim_of_split
from assistant.solving.claim_equal import claim_of_equals, claim_of_filters, claim_of_power_in_stops, claim_of_readings
from assistant.solving.claim_evened_out import evened_out
from assistant.solving.claim_guide_by_stops import claim_of_guide_by_stops, claim_of_guide_left
from assistant.solving.claim_hyperfocal import (
    claim_of_hyperfocal_at,
    claim_of_hyperfocal_moved,
    claim_of_hyperfocal_way,
    claim_of_infinity_held,
    claim_of_sharp_from_half,
    claim_of_sharp_so_near,
    claim_of_the_half,
)
from assistant.solving.claim_latitude import claim_of_latitude
from assistant.solving.claim_layers import claim_of_layers
from assistant.solving.claim_lengthened import claim_of_lengthening
from assistant.solving.claim_levels import claim_of_levels
from assistant.solving.claim_light_left import claim_of_light_left
from assistant.solving.claim_light_let_in import claim_of_light_let_in
from assistant.solving.claim_light_there import claim_of_light_there
from assistant.solving.claim_losses import claim_of_power_for_loss, claim_of_share
from assistant.solving.claim_losses_in_row import claim_of_losses_in_row
from assistant.solving.claim_made_up import claim_of_made_up
from assistant.solving.claim_many_through import claim_of_many_through
from assistant.solving.claim_nd_opened import claim_of_nd_opened
from assistant.solving.claim_of_change import claim_of_change
from assistant.solving.claim_of_deeds import claim_of_deeds
from assistant.solving.claim_of_films import claim_of_films
from assistant.solving.claim_over_under import claim_of_over_under
from assistant.solving.claim_pop_light import claim_of_pop_light
from assistant.solving.claim_pops import claim_of_enough_pops, claim_of_pops, claim_of_pops_in_stops
from assistant.solving.claim_ratios import claim_of_ratio_by_place
from assistant.solving.claim_rows import claim_of_rows
from assistant.solving.claim_speeds import claim_of_speeds
from assistant.solving.claim_sync import claim_of_sync
from assistant.solving.claim_time_of_flash import claim_of_flash_by_time, claim_of_flash_in_time
from assistant.solving.claim_two_depths import claim_of_two_depths
from assistant.solving.claim_two_lights import claim_of_two_lights
from assistant.solving.claim_values import claim_of_value
from assistant.solving.claim_wide_in_sun import claim_of_wide_in_sun
from assistant.solving.film import claimed_error, claimed_rating
from assistant.solving.reach import claim_of_reach, claim_of_reach_at
from assistant.solving.solution import Solution

Judge = Callable[[Query], "Solution | None"]

BY_WORDS: tuple[Judge, ...] = (
    claim_of_pop_light, claim_of_many_through, claim_of_films, claim_of_depth_by_stop, claim_of_two_depths, claim_of_backdrop_by_place, claim_of_two_lights, evened_out, claim_of_below_full, claim_of_deeds, claim_of_change,
    claim_of_light_left, claim_of_over_under, claim_of_rows, claim_of_levels, claim_of_draw_against, claim_of_draw_in_stops,
    claim_of_nd_opened, claim_of_power_for_loss, claim_of_scale, claim_of_what_the_film_gets, claim_of_effective, claim_of_layers,
    claim_of_both, claim_of_latitude, claim_of_sharp_so_near, claim_of_sharp_from_half, claim_of_the_half, claim_of_infinity_held, claim_of_hyperfocal_at, claim_of_hyperfocal_moved,
    claim_of_hyperfocal_way, claim_of_coverage, claim_of_flash_in_time, claim_of_flash_by_time, claim_of_light_let_in, claim_of_light_there,
    claim_of_evenness, claim_of_lengthening, claim_of_losses_in_row,
)
"""Read from the words of the claim itself, before any fact of it is taken for a setting."""

BY_FACTS: tuple[Judge, ...] = (
    claim_of_guide_by_stops, claim_of_guide_left, claim_of_reach, claim_of_reach_at, claim_of_charge, claim_of_full_in_time, claim_of_enough_pops, claim_of_pops_in_all,
    claim_of_parts_in_all, claim_time.claim_of_enough_energy, claim_time.claim_of_room_by_time, claim_time.claim_of_images,
    claim_time.claim_of_pulse, claim_time.claim_of_equal_energy, claim_time.claim_of_pops_summed, claim_time.claim_of_power_and_loss,
    claim_of_share_by_distance, claim_of_places_within, claim_of_made_up, claim_of_black, claim_of_bellows, claim_of_daylight, claim_of_nd, claim_of_wide_in_sun, claimed_rating,
    claim_of_pops, claim_of_pops_in_stops, claim_of_sync, claim_of_equals, claim_of_power_in_stops, claim_of_readings,
    claim_added.claim_of_losses_summed, claim_of_filters, claimed_error, claim_of_share, claim_of_room, claim_of_speeds,
    claim_added.claim_of_sum, claim_added.claim_of_added_part, claim_added.claim_of_sum_over, claim_added.claim_of_pops_read,
    claim_added.claim_of_loss_read, claim_added.claim_of_light_left, claim_added.claim_of_factor, claim_added.claim_of_exposures,
    claim_stacked.claim_of_factors_stacked, claim_stacked.claim_of_stops_as_factor, claim_stacked.claim_of_density, claim_stacked.claim_of_density_as_factor,
    claim_stacked.claim_of_share_left, claim_stacked.claim_of_passing, claim_stacked.claim_of_marks, claim_of_energies, claim_of_split,
    claim_of_recycling, claim_of_ratio_by_place, claim_of_value,
)
"""Read from what was told, once the words of a rule are left out."""


MINDS_A_DENIAL: frozenset[Judge] = frozenset((
    claim_of_wide_in_sun, claim_of_guide_by_stops, claim_of_guide_left, claim_of_charge, claim_of_full_in_time, claim_time.claim_of_enough_energy, claim_time.claim_of_room_by_time, claim_time.claim_of_images, claim_time.claim_of_pulse,
    claim_time.claim_of_equal_energy, claim_time.claim_of_pops_summed, claim_time.claim_of_power_and_loss, claim_of_share_by_distance, claim_stacked.claim_of_stops_as_factor,
))
"""Of BY_FACTS, those that look themselves whether a figure is denied or the claim called wrong: turned once more, their verdict would be the wrong way round."""


def of_facts(query: Query) -> tuple[Solution | None, bool]:
    """The verdict of the first of BY_FACTS that knows the claim, and whether a denial is minded in it."""
    for judge in BY_FACTS:
        found = judge(query)
        if found is not None:
            return found, judge in MINDS_A_DENIAL
    return None, False


def first_of(judges: tuple[Judge, ...], query: Query) -> Solution | None:
    """The verdict of the first that knows the claim."""
    for judge in judges:
        found = judge(query)
        if found is not None:
            return found
    return None

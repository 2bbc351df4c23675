"""Numbers that cannot be are refused, by name."""

import math
from collections.abc import Callable

import pytest

from assistant.physics import ambient, duration, film, flash, optics

_WRONG = [0, -1, math.nan, math.inf]


@pytest.mark.parametrize("wrong", _WRONG)
def test_impossible_numbers_are_refused_by_name(wrong: float) -> None:
    """Zero, negative, endless and not-a-number raise, and the message says which."""
    with pytest.raises(ValueError, match="distance must be above zero"):
        flash.aperture(30, wrong)
    with pytest.raises(ValueError, match="guide number must be above zero"):
        flash.distance(wrong, 8)
    with pytest.raises(ValueError, match="film speed must be above zero"):
        ambient.exposure_value(8, 0.01, wrong)
    with pytest.raises(ValueError, match="focal length must be above zero"):
        optics.hyperfocal(wrong, 8, 0.03e-3)
    with pytest.raises(ValueError, match="duration must be above zero"):
        duration.motion(1, wrong)
    with pytest.raises(ValueError, match="shutter must be above zero"):
        film.reciprocity_time(wrong, 1.3)


_IMPOSSIBLE: dict[str, Callable[[], object]] = {
    "no lights": lambda: flash.sum_of_light([]),
    "enough light already": lambda: flash.light_still_wanted(8, 8),
    "no zoom table": lambda: flash.interpolate_zoom_guide_number(50, []),
    "no reciprocity table": lambda: film.corrected_from_table(5, []),
    "film from the future": lambda: film.expired_stops(-1),
    "no frames": lambda: film.bracket_offsets(0, 1),
    "negative magnification": lambda: optics.bellows_factor_from_magnification(-1),
    "lens inside its focal length": lambda: optics.focus_from_extension(0.04, 0.05),
    "far limit before the focus": lambda: optics.aperture_for_far_limit(0.05, 3, 2, 3e-5),
    "limits the wrong way round": lambda: optics.focus_for_limits(3, 2),
    "lens that makes light": lambda: optics.t_stop(2, 1.1),
    "ratio below one": lambda: flash.stops_from_key_plus_fill(1),
}


@pytest.mark.parametrize("case", _IMPOSSIBLE)
def test_impossible_cases_are_refused(case: str) -> None:
    """Each raises ValueError rather than answering."""
    with pytest.raises(ValueError):
        _IMPOSSIBLE[case]()

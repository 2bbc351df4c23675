"""Physics and scales against figures published by others, case by case from published/*.toml."""

import math
import tomllib
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from assistant import scales, units
from assistant.physics import ambient, duration, film, flash, optics

_MODULES: dict[str, Any] = {
    "ambient": ambient,
    "duration": duration,
    "film": film,
    "flash": flash,
    "optics": optics,
    "scales": scales,
    "units": units,
}

# Chains of two or three formulas, for figures that no single one answers.
_COMBINED: dict[str, Callable[..., float]] = {
    "whole_stop_mark": lambda n: scales.nearest_aperture(n, "whole").value,
    "whole_shutter_mark": lambda t: scales.nearest_shutter(t, "whole").value,
    "power_mark": lambda p: scales.nearest_power(p, "whole").value,
    "aperture_at_power": lambda full, power: ambient.aperture_after(full, math.log2(power)),
    "aperture_moved": lambda n, d_from, d_to: ambient.aperture_after(
        n, flash.falloff_stops(d_from, d_to)
    ),
    "light_moved": lambda d_from, d_to: ambient.factor_from_stops(
        flash.falloff_stops(d_from, d_to)
    ),
    "ratio_of_distances": lambda main, fill: flash.key_plus_fill_ratio(
        flash.falloff_stops(fill, main)
    ),
    "ratio_of_readings": lambda main, fill: flash.key_plus_fill_ratio(
        scales.aperture_difference_stops(main, fill)
    ),
    "key_to_fill_of_readings": lambda main, fill: flash.key_to_fill_ratio(
        scales.aperture_difference_stops(main, fill)
    ),
    "sunny_shutter": lambda film_speed: ambient.shutter(
        ambient.exposure_value(16, 1 / 100), 16, film_speed
    ),
    "equivalent_shutter": lambda n, t, new_n: ambient.shutter(ambient.exposure_value(n, t), new_n),
    "reflectance_percent": lambda reflected, incident: (
        100 * ambient.calibrated_reflectance(reflected, incident)
    ),
    "aperture_behind_filter": lambda n, factor: ambient.aperture_after(
        n, -ambient.stops_from_factor(factor)
    ),
    "time_at_extension": lambda t, extension, focal_length: (
        t * optics.bellows_factor(extension, focal_length)
    ),
    "magnification_percent": lambda focal_length, focus: (
        100 * optics.magnification(focal_length, focus)
    ),
    "extension_at_focus": lambda focal_length, focus: optics.extension(
        focal_length, optics.magnification(focal_length, focus)
    ),
    "light_left_after_t01": lambda t05: duration.light_left(duration.t01_from_t05(t05), t05),
    "guide_number_by_trade_rule": lambda beam_candlepower_seconds: flash.guide_number_from_beam(
        beam_candlepower_seconds, flash.TRADE_CALIBRATION
    ),
}

# Half a step in stops, and how many stops the doubling of the number is.
_STEPS = {
    "third": (1 / 6, 2),
    "third of light": (1 / 6, 1),
    "whole": (1 / 2, 2),
    "whole of light": (1 / 2, 1),
}


@dataclass(frozen=True, slots=True)
class Check:
    """What a formula should make of one published figure."""

    id: str
    formula: str
    given: dict[str, Any]
    expected: float
    tolerance: str | float
    source: str
    status: str
    unit: str = "m"


def _read() -> list[Check]:
    cases = [
        case
        for path in sorted(Path(__file__).with_name("published").glob("*.toml"))
        for case in tomllib.loads(path.read_text(encoding="utf-8"))["case"]
    ]
    return [
        Check(**row, source=f"{case['source']}, {case['where']}", status=case["status"])
        for case in cases
        for row in case["checks"]
    ]


CHECKS = _read()


def _function(formula: str) -> Callable[..., float]:
    module, name = formula.split(".")
    found: Callable[..., float] = (
        _COMBINED[name] if module == "combined" else getattr(_MODULES[module], name)
    )
    return found


def _argument(value: Any) -> Any:
    """A [number, unit] pair in metres; anything else as it stands."""
    if isinstance(value, list) and len(value) == 2 and isinstance(value[1], str):
        return units.to_metres(value[0], value[1])
    return value


def _difference(check: Check, actual: float) -> tuple[float, float]:
    """How far off the answer is, and how far it may be, in the same measure."""
    if check.tolerance in _STEPS:
        allowed, stops_in_a_doubling = _STEPS[str(check.tolerance)]
        return abs(stops_in_a_doubling * math.log2(actual / check.expected)), allowed
    allowed = 1e-9 * abs(check.expected) if check.tolerance == "exact" else float(check.tolerance)
    return abs(actual - check.expected), allowed


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.id)
def test_published_figure(check: Check) -> None:
    """The formula gives the figure that the source prints."""
    given = {name: _argument(value) for name, value in check.given.items()}
    actual = _function(check.formula)(**given) / units.metres_in(check.unit)
    off, allowed = _difference(check, actual)
    assert off <= allowed + 1e-9, f"{actual} against {check.expected}: {check.source}"


def test_every_status_is_known() -> None:
    """Each figure was either read in its source or is owned to be from memory."""
    assert {check.status for check in CHECKS} == {"read", "memory"}


def test_ids_are_unique() -> None:
    """A failing row is found by its name."""
    assert [name for name, times in Counter(c.id for c in CHECKS).items() if times > 1] == []


def test_every_combined_formula_is_used() -> None:
    """No chain is kept that no figure needs."""
    used = {check.formula.split(".")[1] for check in CHECKS if check.formula.startswith("combined")}
    assert used == set(_COMBINED)

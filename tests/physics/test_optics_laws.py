"""Laws of lenses, for every sensible number, and the depth-of-field convention kept."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from assistant.physics import optics

APERTURES = st.floats(0.7, 300)


def near(value: float) -> object:
    return pytest.approx(value, rel=1e-9, abs=1e-9)


LENSES = st.floats(0.02, 0.4)
CIRCLES = st.sampled_from(sorted(optics.CIRCLE_OF_CONFUSION.values()))
FOCUSES = st.floats(1, 100)
TAKING_APERTURES = st.floats(1, 64)

# Whole thin-lens form, circle 0.030 mm; worked by hand, no published source.
THIN_LENS = [
    (optics.near_limit(0.085, 4, 3, 0.03e-3), 2.861461688757459),
    (optics.depth_of_field(0.050, 8, 3, 0.03e-3), 1.8473626202351263),
    (optics.depth_of_field(0.050, 8, 2.5, 0.03e-3), 1.2448647213128967),
    (optics.depth_of_field(0.135, 5.6, 5, 0.03e-3), 0.4493646548879209),
    (optics.near_limit(0.100, 11, 4, 0.03e-3), 3.5439000620182517),
    (optics.far_limit(0.100, 11, 4, 0.03e-3), 4.590841271663032),
    (optics.aperture_for_near_limit(0.050, 3, 2.4, 0.03e-3), 7.06214689265537),
    (optics.field_angle(0.028, 0.036), 65.4704525442152),
]


@pytest.mark.parametrize("actual, expected", THIN_LENS)
def test_depth_of_field_keeps_the_whole_thin_lens_form(actual: float, expected: float) -> None:
    """No focal length is dropped on the way."""
    assert actual == near(expected)


@given(LENSES, TAKING_APERTURES, CIRCLES)
def test_focused_at_the_hyperfocal_distance_it_is_sharp_from_half_to_infinity(
    f: float, n: float, circle: float
) -> None:
    """The definition of hyperfocal, both ways."""
    h = optics.hyperfocal(f, n, circle)
    assert optics.near_limit(f, n, h, circle) == near(h / 2)
    assert optics.far_limit(f, n, h * 1.0001, circle) == math.inf
    assert optics.far_limit(f, n, h * 0.9, circle) < math.inf


@given(LENSES, TAKING_APERTURES, FOCUSES, CIRCLES)
def test_the_aperture_for_a_limit_reaches_that_limit(
    f: float, n: float, focus: float, circle: float
) -> None:
    """Limits and apertures undo each other; the limits enclose the focus."""
    nearest = optics.near_limit(f, n, focus, circle)
    farthest = optics.far_limit(f, n, focus, circle)
    assume(nearest < focus * 0.9999)
    assert nearest < focus < farthest
    found = optics.aperture_for_near_limit(f, focus, nearest, circle)
    assert found == pytest.approx(n, rel=1e-6)
    if farthest < 1e6:
        found = optics.aperture_for_far_limit(f, focus, farthest, circle)
        assert found == pytest.approx(n, rel=1e-6)
        assert optics.focus_for_limits(nearest, farthest) == pytest.approx(focus, rel=1e-6)
        assert optics.other_limit(focus, farthest) == pytest.approx(nearest, rel=1e-6)
        found = optics.aperture_for_limits(f, nearest, farthest, circle)
        assert found == pytest.approx(n, rel=1e-5)


@given(LENSES, st.floats(0.01, 4))
def test_close_up_factors_agree_however_the_draw_is_given(f: float, m: float) -> None:
    """Extension, magnification and focus distance tell the same bellows factor."""
    v = optics.extension(f, m)
    factor = optics.bellows_factor_from_magnification(m)
    focus = optics.focus_from_extension(v, f)
    assert optics.bellows_factor(v, f) == near(factor)
    assert optics.magnification_from_extension(v, f) == near(m)
    assert optics.magnification(f, focus) == pytest.approx(m, rel=1e-6)
    assert optics.bellows_factor_from_focus(f, focus) == pytest.approx(factor, rel=1e-6)
    assert optics.effective_aperture(8, m) == near(8 * math.sqrt(factor))


@given(TAKING_APERTURES, st.floats(0.05, 1))
def test_a_t_stop_loses_the_light_the_glass_keeps(n: float, transmittance: float) -> None:
    """The T-number lies as many stops below as the transmittance says."""
    lost = 2 * math.log2(optics.t_stop(n, transmittance) / n)
    assert lost == near(-math.log2(transmittance))


def test_circles_of_confusion_follow_the_format() -> None:
    """Larger film takes a larger blur, and each has a frame (common practice, no source)."""
    assert optics.CIRCLE_OF_CONFUSION.keys() == optics.FRAME.keys()
    by_size = sorted(optics.FRAME, key=lambda name: math.hypot(*optics.FRAME[name]))
    circles = [optics.CIRCLE_OF_CONFUSION[name] for name in by_size]
    assert circles == sorted(circles)


def test_a_lens_at_one_focal_length_is_focused_at_infinity() -> None:
    """And sharp, at infinity focus, from the hyperfocal distance less one focal length."""
    assert optics.focus_from_extension(0.05, 0.05) == math.inf
    h = optics.hyperfocal(0.05, 8, 3e-5)
    assert optics.near_limit(0.05, 8, math.inf, 3e-5) == near(h - 0.05)
    assert optics.focus_for_limits(2, math.inf) == 4


@given(st.floats(0.05, 0.3), st.floats(2, 32), st.floats(0.2, 2))
def test_the_depth_close_up_is_that_of_the_whole_form_whatever_the_lens(f: float, n: float, scale: float) -> None:
    """Near and far limit at the distance of that scale, and back to the f-number."""
    circle, focus = 0.03e-3, f * (1 + 1 / scale)
    depth = optics.depth_at_magnification(n, scale, circle)
    assume(n * circle / f < 0.05 * scale)
    assert depth == pytest.approx(optics.depth_of_field(f, n, focus, circle), rel=0.01)
    assert optics.aperture_for_depth(depth, scale, circle) == near(n)


@given(LENSES, TAKING_APERTURES)
def test_the_f_number_is_the_focal_length_over_the_opening(f: float, n: float) -> None:
    """ISO 517's definition, both ways."""
    assert optics.f_number(f, f / n) == near(n)

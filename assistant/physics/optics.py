"""Lenses: bellows, magnification, depth of field, angle of view, T-stops.

Lengths are metres throughout. Depth of field keeps the whole thin-lens form with the
subject distance measured from the lens (formulas H s/(H+s) and H s/(H-s) are its
approximation far from the lens):

    h = f**2/(N c)    near = s h/(h + s - f)    far = s h/(h - (s - f))    hyperfocal = h + f
"""

import math

from assistant.bounds import OutOfRange
from assistant.physics.ranges import require_positive

# Common practice, no source: about 1/1440 of the frame's diagonal, as makers' scales take it.
CIRCLE_OF_CONFUSION: dict[str, float] = {
    "half frame": 0.020e-3,
    "35 mm": 0.030e-3,
    "6x4.5": 0.045e-3,
    "6x6": 0.050e-3,
    "6x7": 0.060e-3,
    "6x9": 0.065e-3,
    "4x5": 0.100e-3,
    "5x7": 0.150e-3,
    "8x10": 0.200e-3,
    "quarter plate": 0.095e-3,
    "half plate": 0.140e-3,
    "whole plate": 0.190e-3,
}
"""Metres of blur accepted as sharp, by film format; the plates by the same part of their diagonal."""

# Image area in metres, long side first (nominal; roll film is 56 mm high; plates are 3 1/4 by 4 1/4, 4 3/4 by 6 1/2 and 6 1/2 by 8 1/2 inches).
FRAME: dict[str, tuple[float, float]] = {
    "half frame": (0.024, 0.018),
    "35 mm": (0.036, 0.024),
    "6x4.5": (0.056, 0.0415),
    "6x6": (0.056, 0.056),
    "6x7": (0.070, 0.056),
    "6x9": (0.084, 0.056),
    "4x5": (0.120, 0.095),
    "5x7": (0.170, 0.120),
    "8x10": (0.245, 0.195),
    "quarter plate": (0.108, 0.083),
    "half plate": (0.165, 0.121),
    "whole plate": (0.216, 0.165),
}
"""Image width and height in metres, by film format (common practice)."""


# Close up


def bellows_factor(extension: float, focal_length: float) -> float:
    """Exposure factor of a lens `extension` metres from the film (thin lens): (v/f)**2.

    >>> bellows_factor(0.6, 0.3)
    4.0
    """
    require_positive(extension=extension, focal_length=focal_length)
    return (extension / focal_length) ** 2


def bellows_factor_from_magnification(magnification: float) -> float:
    """Exposure factor at a magnification, pupils of equal size: (1 + m)**2.

    >>> bellows_factor_from_magnification(0.5)
    2.25
    """
    if not (magnification >= 0 and math.isfinite(magnification)):
        raise OutOfRange(f"magnification cannot be {magnification}")
    return (1 + magnification) ** 2


def magnification(focal_length: float, focus: float) -> float:
    """Magnification of a subject `focus` metres from the lens (beyond one focal length).

    >>> magnification(0.25, 0.5)
    1.0
    """
    require_positive(focal_length=focal_length, focus_beyond_focal_length=focus - focal_length)
    return focal_length / (focus - focal_length)


def bellows_factor_from_focus(focal_length: float, focus: float) -> float:
    """Exposure factor of a subject `focus` metres from the lens.

    >>> bellows_factor_from_focus(0.25, 0.5)
    4.0
    """
    return bellows_factor_from_magnification(magnification(focal_length, focus))


def extension(focal_length: float, magnification: float) -> float:
    """Metres from lens to film at a magnification: f (1 + m).

    >>> extension(0.1, 1)
    0.2
    """
    require_positive(focal_length=focal_length)
    return focal_length * (1 + magnification)


def magnification_from_extension(extension: float, focal_length: float) -> float:
    """Magnification of a lens drawn out to `extension` metres: v/f - 1.

    >>> magnification_from_extension(0.2, 0.1)
    1.0
    """
    require_positive(extension=extension, focal_length=focal_length)
    return extension / focal_length - 1


def focus_from_extension(extension: float, focal_length: float) -> float:
    """Metres from lens to subject in focus; "infinity" at one focal length (1/f = 1/u + 1/v).

    >>> focus_from_extension(0.5, 0.25)
    0.5
    """
    require_positive(extension=extension, focal_length=focal_length)
    draw = extension - focal_length
    if draw < 0:
        raise OutOfRange("the lens is nearer the film than its focal length")
    return math.inf if draw == 0 else extension * focal_length / draw


def effective_aperture(aperture: float, magnification: float) -> float:
    """f-number the film sees at a magnification: N (1 + m).

    >>> effective_aperture(8, 1)
    16.0
    """
    require_positive(aperture=aperture)
    return aperture * math.sqrt(bellows_factor_from_magnification(magnification))


# Depth of field


def _infinity_focus(focal_length: float, aperture: float, circle: float) -> float:
    """h = f**2/(N c): hyperfocal distance less one focal length."""
    require_positive(focal_length=focal_length, aperture=aperture, circle_of_confusion=circle)
    return focal_length**2 / (aperture * circle)


def hyperfocal(focal_length: float, aperture: float, circle: float) -> float:
    """Nearest focus (metres) that keeps infinity sharp: f**2/(N c) + f.

    >>> round(hyperfocal(0.05, 8, 0.00003), 3)
    10.467
    """
    return _infinity_focus(focal_length, aperture, circle) + focal_length


def near_limit(focal_length: float, aperture: float, focus: float, circle: float) -> float:
    """Nearest metre that is sharp with the lens focused at `focus`.

    >>> round(near_limit(0.085, 4, 3, 0.00003), 3)
    2.861
    """
    h = _infinity_focus(focal_length, aperture, circle)
    if math.isinf(focus):
        return h
    require_positive(focus_beyond_focal_length=focus - focal_length)
    return focus * h / (h + focus - focal_length)


def far_limit(focal_length: float, aperture: float, focus: float, circle: float) -> float:
    """Farthest metre that is sharp; infinity from the hyperfocal distance on.

    >>> far_limit(0.05, 8, 11, 0.00003)
    inf
    """
    h = _infinity_focus(focal_length, aperture, circle)
    require_positive(focus_beyond_focal_length=min(focus, 1e9) - focal_length)
    rest = h - (focus - focal_length)
    return focus * h / rest if rest > 0 else math.inf


def depth_of_field(focal_length: float, aperture: float, focus: float, circle: float) -> float:
    """Metres between near and far limit; may be infinite.

    >>> round(depth_of_field(0.05, 8, 3, 0.00003), 3)
    1.847
    """
    setting = (focal_length, aperture, focus, circle)
    return far_limit(*setting) - near_limit(*setting)


def depth_at_magnification(aperture: float, magnification: float, circle: float) -> float:
    """Metres of depth close up, near and far side together: 2 N c (1 + m)/m**2.

    The whole form less (N c/f)**2 beside m**2, which is nothing from a tenth of life size up; so no lens need
    be known. Source: the thin-lens form above with s = f (1 + 1/m); memory.

    >>> round(depth_at_magnification(16, 1, 0.00003), 6)
    0.00192
    """
    require_positive(aperture=aperture, magnification=magnification, circle_of_confusion=circle)
    return 2 * aperture * circle * (1 + magnification) / magnification**2


def aperture_for_depth(depth: float, magnification: float, circle: float) -> float:
    """f-number that gives so many metres of depth close up: D m**2/(2 c (1 + m)).

    Source: the form of `depth_at_magnification` solved for N; memory, as that is.

    >>> round(aperture_for_depth(0.00192, 1, 0.00003), 6)
    16.0
    """
    require_positive(depth=depth, magnification=magnification, circle_of_confusion=circle)
    return depth * magnification**2 / (2 * circle * (1 + magnification))


def aperture_for_depth_at(focal_length: float, focus: float, depth: float, circle: float) -> float:
    """Widest f-number whose near and far limit lie `depth` metres apart, focused at `focus`: the limits above solved for h.

    >>> round(aperture_for_depth_at(0.05, 3, depth_of_field(0.05, 8, 3, 0.00003), 0.00003), 6)
    8.0
    """
    require_positive(focal_length=focal_length, depth=depth, circle_of_confusion=circle, focus_beyond_focal_length=focus - focal_length)
    h = (focus - focal_length) * (focus + math.hypot(focus, depth)) / depth
    return focal_length**2 / (circle * h)


def aperture_for_hyperfocal(focal_length: float, hyperfocal_distance: float, circle: float) -> float:
    """N = f**2/(c (H - f)): the f-number whose hyperfocal distance is H; lengths in metres, H beyond one focal length.

    >>> round(aperture_for_hyperfocal(0.05, hyperfocal(0.05, 8, 0.00003), 0.00003), 6)
    8.0
    """
    require_positive(focal_length=focal_length, circle=circle, distance_beyond_the_lens=hyperfocal_distance - focal_length)
    return focal_length**2 / (circle * (hyperfocal_distance - focal_length))


def aperture_for_near_limit(focal_length: float, focus: float, near: float, circle: float) -> float:
    """Widest f-number that keeps `near` sharp with the lens focused at `focus`.

    >>> round(aperture_for_near_limit(0.05, 3, 2.4, 0.00003), 2)
    7.06
    """
    require_positive(
        near=near, circle_of_confusion=circle, near_side=focus - near, beyond=focus - focal_length
    )
    return focal_length**2 * (focus - near) / (circle * near * (focus - focal_length))


def aperture_for_far_limit(focal_length: float, focus: float, far: float, circle: float) -> float:
    """Widest f-number that keeps `far` (may be infinity) sharp with the lens focused at `focus`.

    >>> round(aperture_for_far_limit(0.05, 3, 4, 0.00003), 2)
    7.06
    """
    require_positive(focus=focus, circle_of_confusion=circle, beyond=focus - focal_length)
    if not far > focus:
        raise OutOfRange("the far limit must lie beyond the focus")
    share = 1.0 if math.isinf(far) else (far - focus) / far
    return focal_length**2 * share / (circle * (focus - focal_length))


def focus_for_limits(near: float, far: float) -> float:
    """Focus that makes near and far equally sharp: 2 near far/(near + far); far may be infinity.

    >>> focus_for_limits(2, 6), focus_for_limits(2, math.inf)
    (3.0, 4)
    """
    require_positive(near=near)
    if not far >= near:
        raise OutOfRange("the far limit must not be nearer than the near one")
    return 2 * near if math.isinf(far) else 2 * near * far / (near + far)


def other_limit(focus: float, limit: float) -> float:
    """The far limit where the near one is told, or the near one of a far one: 1/near + 1/far = 2/focus, as `focus_for_limits`; infinity from half the focus inward.

    >>> other_limit(3, 2), other_limit(3, 6), other_limit(4, 2)
    (6.0, 2.0, inf)
    """
    require_positive(focus=focus, limit=limit)
    rest = 2 * limit - focus
    return focus * limit / rest if rest > _NOTHING_LEFT * focus else math.inf


_NOTHING_LEFT = 1e-9
"""Part of the focus that is none."""


def aperture_for_limits(focal_length: float, near: float, far: float, circle: float) -> float:
    """Widest f-number that holds both limits, focused between them as `focus_for_limits` says.

    >>> round(aperture_for_limits(0.05, 2.4, 4, 0.00003), 2)
    7.06
    """
    return aperture_for_near_limit(focal_length, focus_for_limits(near, far), near, circle)


# Angle of view and transmission


def field_angle(focal_length: float, side: float) -> float:
    """Degrees covered across a frame side (or diagonal), focused far: 2 atan(side/2f).

    >>> round(field_angle(0.018, 0.036), 6)
    90.0
    """
    require_positive(focal_length=focal_length, side=side)
    return math.degrees(2 * math.atan(side / (2 * focal_length)))


def f_number(focal_length: float, diameter: float) -> float:
    """f-number of an opening of that diameter in metres, seen through the front glass: f/d (ISO 517, memory).

    >>> f_number(0.1, 0.025)
    4.0
    """
    require_positive(focal_length=focal_length, diameter=diameter)
    return focal_length / diameter


def t_stop(aperture: float, transmittance: float) -> float:
    """T-number of a lens that passes `transmittance` (0 to 1) of the light: N/sqrt(tau).

    >>> t_stop(2, 0.25)
    4.0
    """
    require_positive(aperture=aperture, transmittance=transmittance)
    if transmittance > 1:
        raise OutOfRange(f"a lens cannot pass {transmittance} of the light")
    return aperture / math.sqrt(transmittance)

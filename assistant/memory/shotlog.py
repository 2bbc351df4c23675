"""The shot log: which frame was shot with what, and what a developed roll teaches about a flash.

Words belong to whoever tells and lists the frames; here are the frames and the arithmetic alone.
"""

from __future__ import annotations

from assistant.physics.flash import guide_number
from assistant.query import Fact
from assistant.records import record, replace
from assistant.units import LENGTH

FIRST_ROLL = "1"
LOGGED = ("aperture", "shutter", "distance", "guide_number", "power", "film_speed", "rated", "loss", "modifier", "count", "focal_length", "exposure_value")
"""The quantities that a frame keeps, in the order they are told."""


@record
class Shot:
    """One frame of one roll. `id` is its number in the store, 0 before it is kept."""

    frame: int
    roll: str = FIRST_ROLL
    note: str = ""
    facts: tuple[Fact, ...] = ()
    id: int = 0

    def first(self, quantity: str) -> Fact | None:
        """The first fact of a quantity."""
        return next((f for f in self.facts if f.quantity == quantity), None)

    def same_frame(self, other: Shot) -> bool:
        """Whether both are of one frame."""
        return (self.frame, self.roll) == (other.frame, other.roll)


@record
class ShotLog:
    """The frames in the order they were told; the last one's roll is the roll in the camera."""

    shots: tuple[Shot, ...] = ()
    begun: str = ""

    @property
    def roll(self) -> str:
        """The roll in the camera."""
        return self.begun or (self.shots[-1].roll if self.shots else FIRST_ROLL)

    def on_roll(self, roll: str = "") -> tuple[Shot, ...]:
        """The frames of a roll, by number; of the one in the camera when none is named."""
        wanted = roll or self.roll
        return tuple(sorted((s for s in self.shots if s.roll == wanted), key=lambda s: s.frame))

    def frame(self, number: int) -> Shot | None:
        """The frame of that number: on the roll in the camera, else on the latest roll that has one."""
        here = [s for s in self.shots if s.frame == number]
        return next((s for s in here if s.roll == self.roll), here[-1] if here else None)

    def next_frame(self) -> int:
        """The number after the highest on this roll."""
        return max((s.frame for s in self.on_roll()), default=0) + 1

    def with_shot(self, shot: Shot) -> ShotLog:
        """The log with this frame; one told earlier under its number is replaced."""
        earlier = next((s for s in self.shots if s.same_frame(shot)), None)
        kept = tuple(s for s in self.shots if s is not earlier)
        return replace(self, shots=(*kept, replace(shot, id=earlier.id if earlier else shot.id)), begun="" if shot.roll == self.begun else self.begun)

    def without(self, shot: Shot) -> ShotLog:
        """The log without this frame."""
        return replace(self, shots=tuple(s for s in self.shots if not s.same_frame(shot)))

    def with_new_roll(self) -> ShotLog:
        """The log with a new roll in the camera."""
        numbers = [int(s.roll) for s in self.shots if s.roll.isdecimal()]
        return replace(self, begun=str(max(numbers, default=0) + 1)) if self.shots else self


def personal_guide_number(shot: Shot, error_stops: float, unit: str) -> float | None:
    """The guide number at ISO 100 and full power that the developed frame shows; None when it lacks aperture or distance.

    `error_stops`: how the frame came out, plus is over: GN = f × d × √(100/ISO) / √power × 2^(error/2).
    `unit` is the unit of length of the result. Light lost in a modifier is in the result.

    >>> at = (Fact("aperture", 8.0), Fact("distance", 3.048, "ft"))
    >>> round(personal_guide_number(Shot(12, facts=at), -2.0, "ft"), 3)
    40.0
    """
    aperture, distance = shot.first("aperture"), shot.first("distance")
    if aperture is None or distance is None:
        return None
    film, power = shot.first("rated") or shot.first("film_speed"), shot.first("power")
    speed, share = film.value if film else 100.0, power.value if power else 1.0
    right = aperture.value * 2 ** (error_stops / 2)  # the aperture at which the frame would have come out right
    return guide_number(right, distance.value, film_speed=speed, power=share) / LENGTH[unit]

"""The sentences of a verdict: what is right, the first wrong step, what it costs."""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.query import Fact
from assistant.scales import speak_power, speak_stops
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_steps import Step
from assistant.units import LENGTH, speak_length

_TAKEN = ("film_speed", "power", "count", "energy")
"""What a set-up needs rather than gives."""


def right_sentence(right: Quantity, holds: bool) -> str:
    """What the settings give, or what they take, in one sentence."""
    said = _spoken(right)
    if not holds:
        return f"The right figure is {said}."
    return f"It takes {said}." if right.quantity in _TAKEN else f"The settings give {said}."


def _spoken(q: Quantity) -> str:
    value = float(q.value)
    if q.quantity == "aperture":
        exact = f"f/{value:.3g}"
        return exact if q.set in (exact, None) else f"{exact} (set {q.set})"
    if q.quantity == "distance":
        return speak_length(value * LENGTH.get(q.unit, 1.0), q.unit)
    if q.quantity == "power":
        return f"{speak_power(value)} power" if value <= 1 else f"{value:.3g} times full power"
    if q.quantity == "film_speed":
        return f"ISO {value:.4g}"
    if q.quantity == "guide_number":
        at = f" at ISO {q.at_iso:g}" if q.at_iso else ""
        return f"guide number {value:.3g} in {'feet' if q.unit == 'ft' else 'metres'}{at}"
    if q.quantity == "ratio":
        return f"{value:.3g}:1"
    return speak_stops(value) if q.quantity == "stops" else f"{value:.4g} {q.unit}".strip()


_STEP = {"film_speed": "the film speed", "power": "the power", "count": "adding the flashes", "loss": "the light that is lost", "distance": "the distance", "guide_number": "the guide number", "aperture": "the aperture"}


def step_sentence(step: Step) -> str:
    """The first step that is off: which, what it should be, and the slip where it shows."""
    figure = {"aperture": f"f/{step.given:.3g}", "guide_number": f"{step.given:.3g}", "distance": f"{step.given:.3g}"}[step.quantity]
    should = {"aperture": f"f/{step.right:.3g}", "guide_number": f"{step.right:.3g}", "distance": f"{step.right:.3g}"}[step.quantity]
    slip = f": {step.slip}" if step.slip else ""
    return f"The first step that is off is {_STEP.get(step.about, step.about)}, at {figure}, which should be {should}{slip}."


def cost_of(fact: Fact, off: float, wrong: Step | None) -> list[str]:
    """What the mistake costs in stops."""
    if abs(off) <= TOLERANCE:
        return [f"The step is {speak_stops(abs(wrong.off))} out, even if the end comes near."] if wrong is not None else []
    if fact.quantity == "aperture":
        return [f"f/{fact.value:.3g} would be {speak_stops(abs(off))} {'under' if off > 0 else 'over'}."]
    if fact.quantity in ("distance",):
        return [f"At that distance the picture would be {speak_stops(abs(off))} {'under' if off > 0 else 'over'}."]
    if fact.quantity in ("power", "film_speed"):
        return [f"That would be {speak_stops(abs(off))} {'over' if off > 0 else 'under'}."]
    return [f"The figure is {speak_stops(abs(off))} out."]


_WHY = (
    ("count", "Light adds: twice the flashes is one stop, and one stop is 1.4 times in f-number and guide number."),
    ("power", "Half the power is one stop, and one stop is 1.4 times in f-number, distance and guide number."),
    ("film_speed", "Twice the film speed is one stop, and one stop is 1.4 times in f-number, distance and guide number."),
    ("distance", "Distance and f-number go together: twice as far is two stops less, half the f-number."),
)


def why_of(used: tuple[Fact, ...]) -> str:
    """The rule behind the right figure, by what changed; the guide number rule where nothing did."""
    many = {q for q, _ in _WHY if len([f for f in used if f.quantity == q]) > 1}
    plain = {f.quantity for f in used}
    if "guide_number" in plain and {"distance"} <= plain and not many:
        return "The f-number is the guide number divided by the distance from flash to subject, after film speed, power and losses."
    return next((words for quantity, words in _WHY if quantity in many), "")

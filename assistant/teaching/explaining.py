"""The sum behind an answer: in the learner's units, one line a fact, in plain words or in stops."""

from __future__ import annotations

import math
from collections.abc import Callable

from assistant.answer import Quantity
from assistant.query import Fact, Query
from assistant.scales import speak_power, speak_stops
from assistant.solving.ledger import Line
from assistant.solving.lights import guide_unit, preferred_unit
from assistant.solving.slips import Change, slip_of
from assistant.solving.solution import Solution
from assistant.units import LENGTH, speak_length

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Literal

    Manner = Literal["plain", "stops", "new"]

_INTRO = "A stop is a doubling or a halving of the light; a guide number is f-number times distance, for one film speed and power."


def sum_of(query: Query, solution: Solution, manner: Manner = "plain") -> tuple[str, ...]:
    """The lines of the sum behind a flash answer; none where the answer has no ledger of one light."""
    values = {entry.quantity: entry.value for entry in solution.lines if entry.quantity != "loss"}
    if not {"guide_number", "distance", "aperture"} <= set(values):
        return solution.working
    unit = _unit(query)
    if manner == "stops":
        return _in_stops(solution.lines, unit)
    unknown = next((q.quantity for q in solution.answers if q.quantity in values), "aperture")
    lines = _in_figures(values, _loss(solution.lines), unknown, unit)
    return (_INTRO, *lines) if manner == "new" else lines


def _unit(query: Query) -> str:
    fact = query.first("guide_number")
    unit = guide_unit(query, fact)[0] if fact else preferred_unit(query)
    return "m" if unit in ("m", "cm") else "ft"


def _loss(lines: tuple[Line, ...]) -> float:
    return sum(entry.value for entry in lines if entry.quantity == "loss")


def _figure(value: float) -> str:
    return f"{value:.3g}"


def changes_of(solution: Solution) -> tuple[Change, ...]:
    """What changes the light of an answer beside guide number and distance, in stops."""
    out = []
    for entry in solution.lines:
        if entry.quantity in ("film_speed", "power", "count", "loss") and abs(entry.stops) > 0.01:
            out.append(Change(entry.quantity, entry.stops))
    return tuple(out)


def _adjustments(values: dict[str, float], loss: float, unknown: str) -> list[tuple[str, float]]:
    """Each setting that is not the plain one, in words, and its stops."""
    out: list[tuple[str, float]] = []
    if "film_speed" in values and unknown != "film_speed":
        out.append((f"ISO {values['film_speed']:.4g}", math.log2(values["film_speed"] / 100)))
    if "power" in values and unknown != "power":
        out.append((f"{speak_power(values['power'])} power", math.log2(values["power"])))
    if values.get("count", 1.0) != 1.0 and unknown != "count":
        out.append((f"{values['count']:g} flashes", math.log2(values["count"])))
    if abs(loss) > 0.01:
        out.append((f"{speak_stops(loss)} lost on the way", -loss))
    return [(words, stops) for words, stops in out if abs(stops) > 0.01]


def _in_figures(values: dict[str, float], loss: float, unknown: str, unit: str) -> tuple[str, ...]:
    length = LENGTH[unit]
    running = values["guide_number"] / length
    name = "feet" if unit == "ft" else "metres"
    lines = [] if unknown == "guide_number" else [f"Start from guide number {_figure(running)} in {name}, at ISO 100 and full power."]
    scale = 1.0
    for words, stops in _adjustments(values, loss, unknown):
        scale *= 2 ** (stops / 2)
        way = "more" if stops > 0 else "less"
        lines.append(f"{words[:1].upper()}{words[1:]}: {speak_stops(stops)} {way}, so the guide number is multiplied by {_figure(2 ** (stops / 2))}"
                     + (f", which makes {_figure(running * scale)}." if unknown != "guide_number" else "."))
    lines += _END[unknown if unknown in _END else "aperture"](values, running, scale, unit)
    return tuple(lines)


def _end_aperture(values: dict[str, float], running: float, scale: float, unit: str) -> list[str]:
    d = values["distance"] / LENGTH[unit]
    return [f"Divide by the distance: {_figure(running * scale)} / {_figure(d)} = f/{_figure(values['aperture'])}."]


def _end_distance(values: dict[str, float], running: float, scale: float, unit: str) -> list[str]:
    d = values["distance"] / LENGTH[unit]
    return [f"Divide by the f-number: {_figure(running * scale)} / {_figure(values['aperture'])} = {_figure(d)} {unit}."]


def _end_guide(values: dict[str, float], running: float, scale: float, unit: str) -> list[str]:
    d = values["distance"] / LENGTH[unit]
    ending = f", and divided by {_figure(scale)} for the settings that is {_figure(running)}." if abs(scale - 1) > 0.01 else "."
    return [f"Multiply distance and f-number: {_figure(d)} x {_figure(values['aperture'])} = {_figure(d * values['aperture'])}{ending}"]


def _end_setting(quantity: str) -> End:
    def end(values: dict[str, float], running: float, scale: float, unit: str) -> list[str]:
        d = values["distance"] / LENGTH[unit]
        have = running * scale / d
        stops = 2 * math.log2(values["aperture"] / have)
        plain = {"power": "full power", "film_speed": "ISO 100", "count": "one flash"}[quantity]
        way = "more" if stops > 0 else "less"
        result = {"power": f"{speak_power(values['power'])} power" if values.get("power", 1) <= 1 else "more than full power", "film_speed": f"ISO {values.get('film_speed', 100):.4g}",
                  "count": f"{values.get('count', 1):.3g} flashes"}[quantity]
        same = abs(stops) < 0.02
        need = "just what is wanted" if same else f"and f/{_figure(values['aperture'])} needs {speak_stops(stops)} {way}, so {result}"
        return [f"At {speak_length(values['distance'], unit)} {plain} gives {_figure(running * scale)} / {_figure(d)} = f/{_figure(have)}, {need}."]

    return end


End = Callable[[dict[str, float], float, float, str], list[str]]

_END: dict[str, End] = {"aperture": _end_aperture, "distance": _end_distance, "guide_number": _end_guide,
                           "power": _end_setting("power"), "film_speed": _end_setting("film_speed"), "count": _end_setting("count")}


def _in_stops(lines: tuple[Line, ...], unit: str) -> tuple[str, ...]:
    """The balance itself: every line in stops, and that they add up to nothing."""
    said = []
    total = 0.0
    for entry in lines:
        value, stops = entry.value, entry.stops
        if entry.quantity in ("guide_number", "distance"):
            value = value / LENGTH[unit]
            stops += (2 if entry.quantity == "distance" else -2) * math.log2(LENGTH[unit])
        total += stops
        if abs(stops) > 0.004:
            said.append(f"{_LINE.get(entry.quantity, entry.quantity.replace('_', ' '))} {_figure(value)}: {stops:+.2f}")
    said[0] = said[0][:1].upper() + said[0][1:]
    return ("; ".join(said) + f"; together {abs(total):.2f}, so the exposure is right.",)


_LINE = {"guide_number": "guide number", "film_speed": "ISO", "aperture": "f-number", "loss": "stops lost", "count": "flashes"}


# --- why not another figure --------------------------------------------------------------------


def why_not(query: Query, solution: Solution, answer: Quantity, other: Fact) -> str:
    """Why the answer is not the figure somebody expected: how far apart, and the slip where it shows."""
    value = float(answer.value)
    if other.quantity == "distance":
        value *= LENGTH.get(answer.unit, 1.0)
    stops = {"aperture": 2.0, "distance": 2.0, "guide_number": 2.0}.get(other.quantity, 1.0) * math.log2(other.value / value)
    if abs(stops) < 0.34:
        return "That is the same within a third of a stop, which is close enough."
    distance = next((entry.value / LENGTH[_unit(query)] for entry in solution.lines if entry.quantity == "distance"), math.nan)
    _, slip = slip_of(value, other.value, changes_of(solution), distance) if other.quantity in ("aperture", "distance", "guide_number") else ("", "")
    way = "under" if (stops > 0) == (other.quantity in ("aperture", "distance")) else "over"
    shown = f"f/{_figure(other.value)}" if other.quantity == "aperture" else other.said
    tail = f" That figure comes out when {slip}." if slip else ""
    return f"{shown[:1].upper() if not shown.startswith('f/') else 'f'}{shown[1:]} would be {speak_stops(stops)} {way}.{tail}"


# --- how sure ------------------------------------------------------------------------------------


def how_sure(query: Query, solution: Solution) -> str:
    """What the answer can be trusted to, by what went into it."""
    parts = ["The sum itself is exact; the figures that go into it are not."]
    assumed = {a.quantity for a in solution.assumed}
    if "stops" in assumed:
        parts.append("The loss in front of the light is a typical one and can be a stop out either way: test your own.")
    if query.cues & {"bounce", "ceiling"}:
        parts.append("Bounce is uncertain by about a stop either way, so bracket.")
    if query.has("guide_number"):
        parts.append("A maker's guide number is often up to a stop too high, above all outdoors; one you have tested yourself holds within a third of a stop.")
    if any(f.estimate for f in query.facts):
        parts.append("Half a pace of error near the light matters most: measure the distance with a tape.")
    if "film_speed" in assumed:
        parts.append("I took ISO 100, since none was said; another speed changes the answer.")
    parts.append("On negative film a stop over does no harm; on slide film bracket half a stop either side.")
    return " ".join(parts)

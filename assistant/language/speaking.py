"""Speaking: a solution becomes sentences. The first is the answer and can be heard alone."""

from __future__ import annotations

import math
from collections.abc import Callable

from assistant import patterns, scales
from assistant.answer import Assumed, Quantity
from assistant.language.calling import LIGHTS, called
from assistant.language.calling import printable as printable
from assistant.query import BY_RULE, Fact
from assistant.solving.solution import Solution
from assistant.units import LENGTH, speak_length

SIXTH = 1 / 6


def number(value: float, digits: int = 3) -> str:
    """A number to so many figures, without a trailing point: 14.1, 22, 0.25."""
    if not math.isfinite(value):
        return "infinity"
    if value and abs(value) >= 10**digits:
        return f"{value:,.0f}"
    return f"{value:.{digits}g}"


def length(value: float, unit: str) -> str:
    """A length given in its own unit, as people say it."""
    if not math.isfinite(value):
        return "infinity"
    return speak_length(value * LENGTH[unit], unit) if unit in LENGTH else f"{number(value)} {unit}"


def _off(quantity: Quantity) -> str:
    """How far the mark is from the exact value, when it matters."""
    error = quantity.error_stops or 0.0
    if abs(error) < SIXTH - 0.005:
        return ""
    way = "more" if error > 0 else "less"
    return f" ({scales.speak_stops(abs(error))} {way} light than exact)"


def _f(value: float) -> str:
    return f"f/{number(value)}"


def _aperture(q: Quantity) -> str:
    value = float(q.value)
    mark = q.set or _f(value)
    try:
        marked = float(mark[2:])
        spoken = scales.speak_aperture(marked)
    except ValueError:
        spoken = mark
    also = f" ({mark})" if spoken != mark else ""
    exact = "" if abs(value - float(mark[2:] if mark.startswith("f/") else value)) < 0.005 * value else f", exactly {_f(value)}"
    return f"{spoken}{also}{exact}{_off(q)}"


def _power(q: Quantity) -> str:
    value = float(q.value)
    if value > 1.0005:
        return f"{number(value)} times full power"
    mark = scales.nearest_power(value).text
    spoken = scales.speak_power(value)
    exact = "" if abs(q.error_stops or 0) < 0.01 else f", exactly {_fraction(value)}"
    return f"{spoken} power{exact}{_off(q)}" if mark else spoken


def _fraction(value: float) -> str:
    return f"1/{number(1 / value)} of full" if value < 1 else "full"


def _stops(q: Quantity) -> str:
    value = float(q.value)
    spoken = scales.speak_stops(abs(value))
    exact = f" ({value:+.2f})" if abs(value) > 1e-9 else ""
    return f"{spoken}{exact}"


def _shutter(q: Quantity) -> str:
    value = float(q.value)
    exact = f"1/{number(1 / value)} s" if value < 0.4 else f"{number(value)} s"
    mark = q.set or exact
    mark = mark if mark.endswith("s") or mark.endswith("min") else f"{mark} s"
    return f"{mark}{'' if abs(q.error_stops or 0) < 0.05 else ', exactly ' + exact}{_off(q)}"


def _guide(q: Quantity) -> str:
    value, unit = float(q.value), q.unit
    other = "m" if unit == "ft" else "ft"
    at = f" at ISO {q.at_iso:g}" if q.at_iso else ""
    at += f" at {scales.speak_power(q.at_power)} power" if q.at_power and q.at_power <= 1 else ""
    if unit not in LENGTH:
        return f"guide number {number(value)}{at}"
    converted = value * LENGTH[unit] / LENGTH[other]
    return f"guide number {number(value)} in {_unit_words(unit)}{at} ({number(converted)} in {_unit_words(other)})"


def _unit_words(unit: str) -> str:
    return {"ft": "feet", "m": "metres", "cm": "centimetres", "in": "inches", "yd": "yards"}.get(unit, unit)


def _duration(q: Quantity) -> str:
    value = float(q.value)
    return f"1/{number(1 / value)} s ({number(value * 1000)} ms)" if value < 0.2 else f"{number(value)} s"


SAY: dict[str, Callable[[Quantity], str]] = {
    "aperture": _aperture, "power": _power, "stops": _stops, "shutter": _shutter, "guide_number": _guide, "duration": _duration,
    "distance": lambda q: length(float(q.value), q.unit) + ("" if q.unit not in ("ft",) or _plain_feet(q) else f" ({number(float(q.value))} ft)"),
    "film_speed": lambda q: f"ISO {q.set and patterns.sub(r'[^0-9.]', '', q.set) or number(float(q.value))}" + ("" if abs(q.error_stops or 0) < 0.02 else f", exactly {number(float(q.value))}") + _off(q),
    "ratio": lambda q: f"{number(float(q.value))}:1",
    "count": lambda q: f"{float(q.value):g} {q.unit if float(q.value) != 1 else q.unit.rstrip('es') if q.unit == 'flashes' else q.unit.rstrip('s')}",
    "factor": lambda q: f"a factor of {number(float(q.value))}",
    "exposure_value": lambda q: f"EV {number(float(q.value))}",
    "energy": lambda q: f"{number(float(q.value), 4)} watt-seconds",
    "coverage": lambda q: f"{number(float(q.value))} degrees",
    "magnification": lambda q: f"{number(float(q.value))} times life size",
}


def _plain_feet(q: Quantity) -> bool:
    return "in" not in length(float(q.value), "ft")


def say(quantity: Quantity) -> str:
    """One quantity in words."""
    speak = SAY.get(quantity.quantity)
    if speak:
        return speak(quantity)
    value = quantity.value
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    return length(value, quantity.unit) if quantity.unit in LENGTH else f"{number(value)} {quantity.unit}".strip()


LEADS = {
    "aperture": "Set {0}.", "distance": "Put the flash {0} from the subject.", "power": "Set {0}.", "film_speed": "{0}.",
    "guide_number": "{0}.", "count": "{0}.", "stops": "{0}.", "shutter": "Set {0}.", "ratio": "{0}.",
    "near_limit": "Sharp from {0}.", "far_limit": "Sharp as far as {0}.", "depth_of_field": "Depth of field: {0}.", "hyperfocal": "Hyperfocal distance: {0}.",
}


def lead(solution: Solution) -> str:
    """The first sentence: the answer alone."""
    if solution.lead and not solution.answers:
        return solution.lead
    if not solution.answers:
        return ""
    first = solution.answers[0]
    if first.quantity == "claim" and solution.lead:
        return solution.lead
    body = say(first)
    if solution.lead:
        return solution.lead if solution.lead.endswith(".") else f"{solution.lead}: {body}."
    if solution.status == "out_of_reach":
        return f"It would take {body}."
    if first.quantity == "aperture" and first.of:
        return f"{_capital(called(first.of))} reads {body}."
    if first.of in LIGHTS and first.quantity == "distance":
        return f"Put {called(first.of)} {body} from the {'background' if first.of == 'background' else 'subject'}."
    if first.of in LIGHTS and first.quantity == "power":
        return f"Set {called(first.of)} to {body}."
    whose = f"{first.of}: " if first.of and len(solution.answers) > 1 and first.of not in ("move",) else ""
    sentence = LEADS.get(first.quantity, "{0}.").format(body)
    return _capital(f"{whose}{sentence}")


def _capital(text: str) -> str:
    return text if text.startswith("f/") else text[:1].upper() + text[1:]


def beside(solution: Solution) -> str:
    """Further answers in one sentence."""
    rest = solution.answers[1:]
    if not rest or solution.topic == "claims" or solution.lead.endswith("."):
        return ""
    return "Beside it: " + "; ".join(f"{_whose(q.of)}{_name(q)}{say(q)}" for q in rest) + "."


def _whose(of: str | None) -> str:
    """A light's name before its figure; letters in capitals."""
    return "" if not of else f"{called(of)} "


def _name(q: Quantity) -> str:
    return "" if q.quantity in ("aperture", "power", "stops", "ratio", "guide_number", "count", "factor") else q.quantity.replace("_", " ") + " "


def assumed(items: tuple[Assumed, ...], answers: tuple[Quantity, ...] = ()) -> str:
    """What was taken without being said, each once; same reasons are said once."""
    if not items:
        return ""
    unsaid = [a for a in items if a.why == "none was given"]
    rest = [a for a in items if a.why != "none was given"]
    words = [" and ".join(_assumed_one(a).removesuffix(" (none was given)") for a in unsaid) + ", since none was said"] if unsaid else []
    words += [_assumed_one(a, answers) for a in rest]
    return "Taken: " + "; ".join(dict.fromkeys(words)) + "." if words else ""


_FEET_IN_A_METRE = 1 / LENGTH["ft"]
_OTHER_UNIT = {"aperture": 1.0, "distance": 1.0, "power": -2.0, "film_speed": -2.0, "count": -2.0}
"""How the answer goes with the guide number's unit, as a power of feet to the metre."""


def in_other_unit(a: Assumed, answers: tuple[Quantity, ...]) -> str:
    """What the answer would be, were the guide number in the other unit (contract 1)."""
    first = answers[0] if answers else None
    other = "metres" if a.unit == "ft" else "feet"
    if first is None or first.quantity not in _OTHER_UNIT or not isinstance(first.value, (int, float)):
        return ""
    factor = _FEET_IN_A_METRE ** (_OTHER_UNIT[first.quantity] * (1 if a.unit == "ft" else -1))
    value = float(first.value) * factor
    shown = {"aperture": _f(value), "power": f"1/{number(1 / value)} of full" if value < 1 else f"{number(value)} times full power",
             "film_speed": f"ISO {number(value)}", "count": f"{math.ceil(value - 1e-9)}"}.get(first.quantity) or length(value, first.unit)
    return f"; in {other} it would be {shown}"


def _assumed_one(a: Assumed, answers: tuple[Quantity, ...] = ()) -> str:
    if a.quantity == "film_speed":
        return f"ISO {number(float(a.value))} ({a.why})"
    if a.quantity == "exposure_value":
        return f"EV {number(float(a.value))} ({a.why})"
    if a.quantity == "power":
        return f"{scales.speak_power(float(a.value))} power ({a.why})"
    if a.quantity == "guide_number":
        return f"the guide number to be in {_unit_words(a.unit)}{in_other_unit(a, answers)}"
    if a.quantity == "stops":
        return f"{scales.speak_stops(abs(float(a.value)))} lost, {a.why}"
    if a.quantity == "format":
        return f"{a.value} film ({a.why})"
    return f"{a.quantity.replace('_', ' ')} {a.value} {a.unit} ({a.why})"


def fact(f: Fact) -> str:
    """A fact as it was understood, in a few words."""
    whose = f"{called(f.of)} " if f.of and f.of not in ("both", "camera", "film") else ""
    whose += "at " if whose and f.quantity == "distance" else ""
    say_it = _FACT.get(f.quantity)
    return whose + (say_it(f) if say_it else f"{f.quantity.replace('_', ' ')} {number(f.value)}")


def _far(f: Fact) -> str:
    return speak_length(f.value, f.unit if f.unit in LENGTH else "m") if math.isfinite(f.value) else "infinity"


_FACT: dict[str, Callable[[Fact], str]] = {
    "sharp_limit": lambda f: f"{_far(f)} to be sharp", "format": lambda f: f"{f.unit} film",
    "circle": lambda f: f"a circle of confusion of {number(f.value * 1000)} mm", "object_size": lambda f: f"a thing of {_far(f)}", "image_size": lambda f: f"an image of {number(f.value * 1000)} mm", "frame_side": lambda f: f"a frame side of {number(f.value * 1000)} mm", "extension": lambda f: f"{number(f.value * 1000)} mm of extension",
    "depth_wanted": lambda f: f"{_far(f)} of depth", "pupil": lambda f: f"a hole of {number(f.value * 1000)} mm",
    "magnification": lambda f: f"{number(f.value)} times life size", "degrees": lambda f: f"{number(f.value)} degrees",
    "velocity": lambda f: f"{number(f.value / LENGTH['ft'])} ft a second" if f.unit == "ft" else f"{number(f.value)} m a second",
    "blur": lambda f: f"{speak_length(f.value, f.unit)} of movement" if f.unit in LENGTH else "a movement",
    "duration": lambda f: f"a flash of {_seconds(f.value)}", "t05": lambda f: f"t0.5 of {_seconds(f.value)}", "t01": lambda f: f"t0.1 of {_seconds(f.value)}",
    "recycle": lambda f: f"{_seconds(f.value)} to recycle", "interval": lambda f: f"{_seconds(f.value)} between pops", "open_each": lambda f: f"{_seconds(f.value)} open at each pop",
    "frequency": lambda f: f"{number(f.value)} flashes a second", "charge": lambda f: f"{number(f.value * 100)} % charge", "charge_share": lambda f: f"{number(f.value * 100)} % of the charge in the tube",
    "capacitance": lambda f: f"{number(f.value * 1e6, 4)} microfarads", "voltage": lambda f: f"{number(f.value, 4)} V", "charge_rate": lambda f: f"{number(f.value)} J a second", "supply": lambda f: f"{number(f.value)} Wh",
    "path": lambda f: f"{speak_length(f.value, f.unit)} of path" if f.unit in LENGTH else "a path",
    "zoom_row": lambda f: f"guide number {number(f.value)} at {number(f.other)} mm",
    "shutter_row": lambda f: f"guide number {number(f.value)} at {_seconds(f.other)}",
    "zoom": lambda f: f"zoom at {number(f.value)} mm",
    "ceiling_height": lambda f: f"a ceiling at {speak_length(f.value, f.unit)}" if f.unit in LENGTH else "a ceiling",
    "ceiling_above": lambda f: f"a ceiling {speak_length(f.value, f.unit)} above" if f.unit in LENGTH else "a ceiling",
    "flash_height": lambda f: f"the flash {speak_length(f.value, f.unit)} up" if f.unit in LENGTH else "",
    "face_height": lambda f: f"the face {speak_length(f.value, f.unit)} up" if f.unit in LENGTH else "",
    "size": lambda f: f"{speak_length(f.value, f.unit)} across" if f.unit in LENGTH else "",
    "nd": lambda f: f"ND of {scales.speak_stops(f.value)}",
    "t_number": lambda f: f"T{number(f.value)}",
    "filter_loss": lambda f: f"a {f.unit or 'filter'} of {scales.speak_stops(abs(f.value))}",
    "factor": lambda f: f"factor {number(f.value)}",
    "smallest_aperture": lambda f: f"the lens stopping at f/{number(f.value)}",
    "widest_aperture": lambda f: f"the lens opening to f/{number(f.value)}",
    "aperture": lambda f: _f(f.value),
    "distance": lambda f: speak_length(f.value, f.unit) if f.unit in LENGTH else f"{speak_length(f.value, 'ft')} (an estimate)",
    "power": lambda f: f"{scales.speak_power(f.value)} power" if 0 < f.value <= 1 else f"{number(f.value)} power",
    "power_down": lambda f: f"{scales.speak_stops(f.value)} down from full",
    "film_speed": lambda f: (f"{number(scales.din_from_iso(f.value))} DIN or " if f.unit == "DIN" else f"{f.unit} {number(f.other)} or " if f.unit == "GOST" else "") + f"ISO {number(f.value, 4)}",
    "guide_number": lambda f: f"guide number {number(f.value)}" + (f" {f.unit}" if f.unit else ""),
    "shutter": lambda f: f"a shutter of {_seconds(f.value)}",
    "sync": lambda f: f"sync {_seconds(f.value)}",
    "only_powers": lambda f: "only " + " and ".join(scales.speak_power(float(p)) for p in f.said.split(",")) + " power",
    "rolls": lambda f: f"{f.value:g} roll{'' if f.value == 1 else 's'}",
    "count": lambda f: f"{f.value:g} {f.unit if f.value != 1 else 'flash' if f.unit == 'flashes' else f.unit.removesuffix('s')}",
    "times": lambda f: f"{f.value:g} times",
    "offset": lambda f: f"{scales.speak_stops(abs(f.value))} {'more' if f.value > 0 else 'less'} light, as asked",
    "modifier": lambda f: "", "bare": lambda f: "bare",
    "camera_distance": lambda f: "the camera's distance of " + (speak_length(f.value, f.unit) if f.unit in LENGTH else f"{speak_length(f.value, 'ft')} (an estimate)"),
    "max_distance": lambda f: f"at most {speak_length(f.value, f.unit)}" if f.unit in LENGTH else "a limit of distance",
    "min_distance": lambda f: f"no nearer than {speak_length(f.value, f.unit)}" if f.unit in LENGTH else "a nearest distance",
    "max_count": lambda f: f"at most {number(f.value)} {f.unit or 'of them'}",
    "max_film_speed": lambda f: f"ISO {number(f.value, 4)} at most",
    "move": lambda f: f"a move of {speak_length(abs(f.value), f.unit)}" if f.unit in LENGTH else "a move",
    "time": lambda f: f"{_seconds(f.value)}",
    "min_power": lambda f: f"lowest power 1/{number(1 / f.value)}" if f.value else "",
    "stops": lambda f: scales.speak_stops(abs(f.value)) + {"less": " less", "more": " more"}.get(f.cue, ""),
    "loss": lambda f: f"{scales.speak_stops(f.value)} lost" if f.value > 0 else "nothing lost",
    "exposure_value": lambda f: f"EV {number(f.value)}",
    "energy": lambda f: f"{number(f.value, 4)} Ws" + (f" at {scales.speak_power(f.at_power)} power" if f.at_power else ""),
    "focal_length": lambda f: f"{f.value * 1000:g} mm lens",
    "focus_distance": lambda f: f"focus at {speak_length(f.value, f.unit) if f.unit in LENGTH else number(f.value)}",
    "push": lambda f: f"{scales.speak_stops(abs(f.value))} {'under' if f.value > 0 else 'over'}" if f.cue == "habit" else f"{'pushed' if f.value > 0 else 'pulled'} {scales.speak_stops(abs(f.value))}",
    "aperture_range": lambda f: f"f/{number(f.value)} to f/{number(f.other)}",
    "number_range": lambda f: f"{number(f.value)} to {number(f.other)}",
    "relation": lambda f: f"{scales.speak_stops(abs(f.value))} {'under' if f.cue == 'less' else 'over'} {f.to or 'it'}",
    "ratio": lambda f: f"{number(f.value)}:1",
    "gap": lambda f: f"{speak_length(f.value, f.unit)} between" if f.unit in LENGTH else "",
    "exponent": lambda f: f"an exponent of {f.value:g}",
    "length_range": lambda f: f"{speak_length(f.value, f.unit)} to {speak_length(f.other, f.unit)}" if f.unit in LENGTH else "",
    "signed": lambda f: f"{f.value:+g} stops",
    "years": lambda f: f"for every {f.value:g} years" if f.cue == BY_RULE else f"{f.value:g} years old",
    "rows": lambda f: f"{f.value:g} {(f.unit or 'rows').removesuffix('s' if f.value == 1 else ' ')}",
    "sheet_row": lambda f: f"{_seconds(f.value)} to {_seconds(f.other)} by the sheet",
    "sheet_span": lambda f: f"from {_seconds(f.value)} to {_seconds(f.other)}",
    "rated": lambda f: f"rated at ISO {number(f.value, 4)}",
}


def _seconds(value: float) -> str:
    return f"1/{number(1 / value)} s" if 0 < value < 0.4 else f"{number(value)} s"


WHY_UNUSED = {
    "shutter": "within sync it does not change the flash exposure",
    "camera_distance": "the flash exposure goes by the distance from the flash, not from the camera",
    "time": "a time does not change the flash exposure",
    "sync": "it only bounds the shutter",
    "focal_length": "the lens does not change the flash exposure",
    "exposure_value": "the ambient light was not asked for",
    "guide_number": "only the distances count here",
}


def unused(facts: list[Fact]) -> str:
    """Facts understood but without bearing on the answer."""
    parts = []
    for f in facts:
        why = WHY_UNUSED.get(f.quantity)
        parts.append(fact(f) + (f" ({why})" if why else ""))
    return f"Not needed: {'; '.join(dict.fromkeys(parts))}." if parts else ""


_UNTOLD = frozenset({"modifier", "camera_filter", "number", "format", "last_move", "remark"})


_NO_LIGHT = ("", "both", "camera", "film")


def _listed(facts: list[Fact]) -> str:
    """Facts in one breath, those of one light together: "key guide number 100 ft, 2 m"."""
    words: list[str] = []
    owner = ""
    for f in (*[f for f in facts if f.of not in _NO_LIGHT], *[f for f in facts if f.of in _NO_LIGHT]):
        said = fact(f)
        if f.of and f.of == owner:
            said = said.removeprefix(f"{called(f.of)} ")
        owner = f.of
        if said and said not in words:
            words.append(said)
    return ", ".join(words)


def understood(facts: tuple[Fact, ...]) -> str:
    """What the answer was worked out from; in a follow-up, what changed and what stayed."""
    told = [f for f in facts if f.quantity not in _UNTOLD and not (f.quantity == "count" and f.value == 1)]
    new = [f for f in told if f.origin == "said"]
    kept = [f for f in told if f.origin in ("kept", "kit")] if len(new) < len(told) else []
    if new and kept:
        return f"With {_listed(new)}; still {_listed(kept)}."
    words = _listed(told)
    return ("Still " if kept and not new and all(f.origin == "kept" for f in kept) else "From ") + words + "." if words else ""

"""Practice: questions in five grades drawn with a given source of chance, and the answers judged in stops."""

from __future__ import annotations

import math
import random

from assistant.physics import flash
from assistant.query import Fact
from assistant.records import changing, record, replace
from assistant.scales import exact_aperture, nearest_aperture, nearest_power, speak_power, speak_stops
from assistant.solving.slips import Change, slip_of
from assistant.units import LENGTH

GRADES = ("aperture", "film speed", "power", "several flashes", "distance", "power wanted")
"""What each grade adds, from the plain division on."""
TOPICS: dict[str, tuple[int, ...]] = {"film speed": (1,), "power": (2, 5), "several": (3,), "distance": (4,), "guide": (0, 1, 2), "": (0, 1, 2, 3, 4, 5)}
NEAR = 0.34
"""Stops within which an answer is right."""


@record
class Exercise:
    """One question: what is asked, the exact answer (metres for a distance), and what a slip could be made with."""

    text: str
    quantity: str
    value: float
    unit: str
    changes: tuple[Change, ...]
    distance: float
    grade: int


@changing
class Practice:
    """A practice under way: the open question, the grade, and the score."""

    chance: random.Random
    unit: str
    exercise: Exercise
    grade: int = 0
    right: int = 0
    asked: int = 1


def exercise(chance: random.Random, unit: str, grade: int) -> Exercise:
    """A question of a grade (0 to 5) in feet or metres; the same chance gives the same question."""
    metres = unit == "m"
    guide = float(chance.choice((20, 24, 28, 32, 36, 40, 45, 56) if metres else (56, 80, 100, 110, 120, 140, 160)))
    far = float(chance.choice((2, 2.5, 3, 4, 5) if metres else (5, 7, 8, 10, 12, 14)))
    iso = float(chance.choice((200, 400, 800))) if grade in (1, 4) or (grade > 2 and chance.random() < 0.5) else 100.0
    power = chance.choice((0.5, 0.25, 0.125)) if grade in (2,) or (grade == 3 and chance.random() < 0.5) else 1.0
    many = chance.choice((2, 3, 4)) if grade == 3 else 1
    ready = _Setting(guide, far, iso, power, many, unit)
    return _asks(ready, grade, chance)


@record
class _Setting:
    guide: float
    far: float
    iso: float
    power: float
    many: int
    unit: str

    @property
    def aperture(self) -> float:
        return flash.aperture(self.guide, self.far, film_speed=self.iso, power=self.power, count=self.many)

    def said(self, leave: str = "") -> str:
        feet = "feet" if self.unit == "ft" else "metres"
        many = {2: "two equal flashes of ", 3: "three equal flashes of ", 4: "four equal flashes of "}.get(self.many, "")
        parts = [f"{many}guide number {self.guide:g} in {feet}", f"ISO {self.iso:g}"]
        parts += [] if leave == "power" else [f"{speak_power(self.power)} power"]
        parts += [] if leave == "distance" else [f"{self.far:g} {feet}"]
        return ", ".join(parts)

    def changes(self) -> tuple[Change, ...]:
        found = (Change("film_speed", math.log2(self.iso / 100)), Change("power", math.log2(self.power)), Change("count", math.log2(self.many)))
        return tuple(c for c in found if c.stops)


def _asks(setting: _Setting, grade: int, chance: random.Random) -> Exercise:
    if grade == 4:
        wanted = chance.choice((4, 5.6, 8, 11))
        far = flash.aperture(setting.guide, 1.0, film_speed=setting.iso, power=setting.power, count=setting.many) / exact_aperture(wanted)
        return Exercise(f"{_capital(setting.said('distance'))}, f/{wanted:g}: how far from the subject?", "distance", far * LENGTH[setting.unit], setting.unit, setting.changes(), math.nan, grade)
    if grade == 5:
        down = chance.choice((0.5, 0.25, 0.125))
        mark = nearest_aperture(replace(setting, power=down).aperture)
        need = (exact_aperture(mark.value) / setting.aperture) ** 2
        return Exercise(f"{_capital(setting.said('power'))}, {mark.text}: what power?", "power", min(need, 1.0), "of full", setting.changes(), math.nan, grade)
    return Exercise(f"{_capital(setting.said())}: what aperture?", "aperture", setting.aperture, "f-number", setting.changes(), setting.far, grade)


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


# --- judging ------------------------------------------------------------------------------------------


def begin(chance: random.Random, unit: str) -> Practice:
    """A new practice in feet ("ft") or metres ("m"), at the first grade."""
    return Practice(chance, unit, exercise(chance, unit, 0))


def given(one: Exercise, facts: tuple[Fact, ...]) -> float | None:
    """The value of the answer among the facts of a turn, None where there is none."""
    exact = next((f.value for f in facts if f.quantity == one.quantity and f.value > 0), None)
    if exact is not None:
        return exact
    loose = next((f for f in facts if f.quantity in ("number", "power", "distance", "aperture", "guide_number", "times", "stops") and f.value > 0), None)
    if loose is None or loose.quantity not in ("number",):
        return None
    value = loose.other if one.quantity == "aperture" and not math.isnan(loose.other) else loose.value
    return value * LENGTH[one.unit] if one.quantity == "distance" else value


def judge(one: Exercise, value: float) -> tuple[bool, str]:
    """Whether an answer is right within a third of a stop, and the sentence that says so."""
    weight = 1.0 if one.quantity == "power" else 2.0
    off = weight * math.log2(value / one.value)
    answer = spoken(one)
    if abs(off) <= NEAR:
        return True, f"Right: {answer}." if abs(off) < 0.1 else f"Right, close enough: exactly it is {answer}."
    _, slip = slip_of(one.value, value, one.changes, one.distance) if one.quantity != "power" else ("", "")
    way = _way(one.quantity, off)
    tail = f" It looks as if {slip}." if slip else ""
    return False, f"Not quite: it is {answer}; yours would be {speak_stops(abs(off))} {way}.{tail}"


def _way(quantity: str, off: float) -> str:
    brighter = off > 0 if quantity == "power" else off < 0
    return "over" if brighter else "under"


def spoken(one: Exercise) -> str:
    """The right answer in words, with its nearest mark."""
    if one.quantity == "aperture":
        mark = nearest_aperture(one.value).text
        exact = f"f/{one.value:.3g}"
        return exact if exact == mark else f"{exact} (set {mark})"
    if one.quantity == "power":
        return f"{nearest_power(one.value).text} power"
    return f"{one.value / LENGTH[one.unit]:.3g} {'feet' if one.unit == 'ft' else 'metres'}"


def following(practice: Practice, was_right: bool) -> Exercise:
    """The next question: a grade up after a right answer, the same grade after a wrong one."""
    practice.right += was_right
    practice.grade = min(practice.grade + was_right, len(GRADES) - 1)
    practice.asked += 1
    practice.exercise = exercise(practice.chance, practice.unit, practice.grade)
    return practice.exercise


def sheet(chance: random.Random, unit: str, count: int, topic: str = "") -> tuple[Exercise, ...]:
    """So many different questions on a topic of TOPICS, easiest grade first."""
    grades = TOPICS.get(topic, TOPICS[""])
    found: list[Exercise] = []
    for _ in range(count * 20):
        if len(found) == count:
            break
        one = exercise(chance, unit, grades[len(found) * len(grades) // count])
        if all(one.text != other.text for other in found):
            found.append(one)
    return tuple(found)

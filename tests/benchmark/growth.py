"""How the time grows: with the words of a question, with the lights, with the turns of a conversation."""

from __future__ import annotations

import gc
import time
from collections.abc import Callable
from itertools import islice, product

from assistant.assistant import Assistant
from tests.benchmark.figure import Figure, exponent, median, milliseconds
from tests.benchmark.warm import alone, fastest

WORDS = (10, 30, 100, 300, 1000)
LIGHTS = (1, 2, 5, 10, 20, 50, 100, 200)
ENOUGH = "guide number 110 feet, 7 feet, ISO 200, what aperture?"
TALK = "the eight came in early and the boathouse doors were open so we hung our coats on the oars and waited for the light to go down over the wet floor and "
FIGURES = "then the big head at 9 feet and f/8 with ISO 400 at half power, the little one at 2 m and f/5.6, "


def of_words(count: int, filling: str) -> str:
    """A question of so many words, what is asked at its end."""
    asked = ENOUGH.split()
    fill = filling.split()
    return " ".join([fill[n % len(fill)] for n in range(count - len(asked))] + asked)


def _exponents(sizes: tuple[int, ...], kinds: dict[str, Callable[[int], Callable[[], object]]], quick: bool) -> tuple[str, float, str]:
    """The kind that grows most: its name, its exponent, its first and last time."""
    worst = ("", -9.0, "")
    for name, prepared in kinds.items():
        times = [fastest(3 if quick else 7, prepared(size)) for size in sizes]
        found = exponent(sizes, times)
        if found > worst[1]:
            worst = (name, found, f"{milliseconds(times[0])} to {milliseconds(times[-1])}")
    return worst


def with_words(*, quick: bool) -> list[Figure]:
    """Rambling questions and crammed ones; the one that grows faster."""
    assistant = Assistant.create()
    kinds = {"talk": lambda n: alone(assistant, of_words(n, TALK)), "figures": lambda n: alone(assistant, of_words(n, FIGURES))}
    name, found, span = _exponents(WORDS, kinds, quick)
    return [Figure("growth with the length of the question, 10 to 1,000 words", f"{span} ({name})", "exponent of the length", found, 1.1, "")]


def names(count: int) -> list[str]:
    """So many names for lights, none of which means anything else."""
    return ["Q" + a + b + "ax" for a, b in islice(product("aeiou", "bcdfghjklmnpqrstvwxyzaeiouabcdfghjklmnpqrs"), count)]


def kitted(count: int) -> Callable[[], object]:
    """One question about the last of so many lights that were told before."""
    assistant = Assistant.create()
    for name in names(count):
        assistant.answer(f"my flash is guide number 110 feet, call it {name}")
    text = f"what aperture with {names(count)[-1]} at 7 feet, ISO 200"
    return lambda: assistant.answer(text)


def named(count: int) -> Callable[[], object]:
    """One question in which so many lights are told, each with its distance."""
    text = ", ".join(f"light {n + 1} at {7 + n % 9} feet" for n in range(count)) + ", guide number 110 feet, ISO 200, what aperture?"
    return alone(Assistant.create(), text)


def with_lights(*, quick: bool) -> list[Figure]:
    """Lights kept in the kit and lights told in the question; the one that grows faster."""
    name, found, span = _exponents(LIGHTS, {"in the kit": kitted, "in the question": named}, quick)
    return [Figure("growth with the number of lights, 1 to 200", f"{span} ({name})", "exponent of the number", found, 1.1, "")]


ROUND = ("guide number 110 feet, 7 feet, ISO 200, what aperture?", "and at quarter power?", "make it 9 feet", "what's that in metres?", "no, 8 feet",
         "key at 6 feet, fill at 8 feet, what's the ratio?", "log that", "go back to the first one", "and at ISO 400?", "start over")
TURNS = 10_000


def _round(assistant: Assistant) -> float:
    begun = time.perf_counter()
    for text in ROUND:
        assistant.answer(text)
    return (time.perf_counter() - begun) / len(ROUND)


def _held() -> float:
    """Memory held by this process now, in MB."""
    gc.collect()
    with open("/proc/self/status", encoding="ascii") as status:
        return next(int(line.split()[1]) for line in status if line.startswith("VmRSS")) / 1024


def with_turns(*, quick: bool) -> list[Figure]:
    """The turns about the 10th of some conversations against those about the 10,000th of one, and the memory between."""
    talk, rounds = Assistant.create(), (TURNS // 10 if quick else TURNS) // len(ROUND)
    for _ in range(rounds // 10):
        _round(talk)
    before = _held()
    for _ in range(rounds - rounds // 10):
        _round(talk)
    after = _held()
    early, late = [], []
    for _ in range(20):  # by turns, so that a busy moment slows both
        fresh = Assistant.create()
        _round(fresh)
        early.append(_round(fresh))
        late.append(_round(talk))
    first, last = median(early), median(late)
    return [
        Figure(f"turn {rounds * len(ROUND):,} of one conversation", milliseconds(last), f"the 10th turn {milliseconds(first)}", last / first, 1.2),
        Figure(f"memory held after turn {rounds * len(ROUND):,}", f"{after:.1f} MB", f"after turn {rounds:,} {before:.1f} MB", after / before, 1.1),
    ]

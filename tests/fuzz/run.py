"""A run of the fuzz: inputs one after another, in conversations of a few turns, each held against the laws."""

from __future__ import annotations

import signal
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from random import Random

from assistant.answer import Answer
from assistant.assistant import Assistant
from tests.fuzz.inputs import strange
from tests.fuzz.laws import LIMIT_S, broken_laws

HANG_S = 30
"""Seconds after which an input is given up: some law is broken then, whatever else the machine does."""
TURNS = 6
"""Inputs that follow one another in a conversation."""


@dataclass(slots=True)
class Tally:
    """What a run came to."""

    inputs: int = 0
    letters: int = 0
    slowest: float = 0.0
    statuses: Counter[str] = field(default_factory=Counter)
    broken: list[tuple[str, str]] = field(default_factory=list)

    def __add__(self, other: Tally) -> Tally:
        """Two runs as one."""
        return Tally(self.inputs + other.inputs, self.letters + other.letters, max(self.slowest, other.slowest), self.statuses + other.statuses, self.broken + other.broken)


def run(inputs: int, seed: int, tell: Callable[[str, str], None] = lambda law, text: None) -> Tally:
    """So many inputs from this seed; `tell` hears of each broken law as it happens."""
    chance, tally, assistant = Random(seed), Tally(), Assistant.create()
    for number in range(inputs):
        if number % TURNS == 0:
            assistant.new_conversation(keep_kit=False)
        text = strange(chance)
        tally.inputs += 1
        tally.letters += len(text)
        for law in held_against(assistant, text, tally):
            tally.broken.append((law, text))
            tell(law, text)
    return tally


@contextmanager
def no_longer_than(seconds: int) -> Iterator[None]:
    """TimeoutError when what is done inside takes longer, where the system can interrupt it."""
    if not hasattr(signal, "alarm"):
        yield
        return

    def hung(number: int, frame: object) -> None:
        raise TimeoutError(f"no answer after {seconds} s")

    before = signal.signal(signal.SIGALRM, hung)
    signal.alarm(seconds)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


def held_against(assistant: Assistant, text: str, tally: Tally) -> list[str]:
    """The laws that the answer to this text breaks."""
    begun = time.perf_counter()
    try:
        with no_longer_than(HANG_S):
            answer = assistant.answer(text)
    except Exception as fault:  # any at all is what is looked for
        assistant.new_conversation(keep_kit=False)
        return [f"exception {type(fault).__name__}: {fault}"]
    pace = (time.perf_counter() - begun) / _thousands(text)
    tally.statuses[answer.status] += 1
    slow = []
    if pace > LIMIT_S:
        pace = min(pace, _again(text))  # without what else the machine was doing
        slow = [f"slow: {pace * 1000:.0f} ms for each 1,000 letters"] if pace > LIMIT_S else []
    tally.slowest = max(tally.slowest, pace)
    return slow + broken_laws(assistant, text, answer)


def _thousands(text: str) -> int:
    return max(1, -(-len(text) // 1000))


def _again(text: str) -> float:
    """The pace of the same text by itself, the best of two, in the time that this process was given: another's share of the core is no fault of the text."""
    paces = []
    for _ in range(2):
        fresh = Assistant.create()
        fresh.answer("hello")
        begun = time.process_time()
        fresh.answer(text)
        paces.append((time.process_time() - begun) / _thousands(text))
    return min(paces)


def answered(text: str) -> tuple[Answer, list[str]]:
    """One text by itself: its answer and the laws it breaks."""
    assistant, tally = Assistant.create(), Tally()
    laws = held_against(assistant, text, tally)
    return assistant.answer(text), laws

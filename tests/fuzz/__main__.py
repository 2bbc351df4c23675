"""The command: so many inputs from a seed; broken laws are printed with the input that broke them."""

from __future__ import annotations

import argparse
import sys
import time
from concurrent.futures import ProcessPoolExecutor

from tests.fuzz.run import Tally, run

INPUTS = 200_000
PART = 5_000


def main(arguments: list[str]) -> int:
    """0 when no law was broken."""
    reader = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    reader.add_argument("inputs", type=int, nargs="?", default=INPUTS)
    reader.add_argument("--seed", type=int, default=1)
    given = reader.parse_args(arguments)
    begun = time.perf_counter()
    tally = Tally()
    with ProcessPoolExecutor() as workers:
        for part in workers.map(_part, _parts(given.inputs, given.seed)):
            tally = tally + part
            print(f"{tally.inputs:,}", file=sys.stderr, flush=True)
    for law, text in tally.broken:
        _told(law, text)
    print(summary(tally, given.seed, time.perf_counter() - begun))
    return 1 if tally.broken else 0


def _parts(inputs: int, seed: int) -> list[tuple[int, int]]:
    """Runs of at most PART inputs, each from a seed of its own."""
    return [(min(PART, inputs - start), seed * 1_000 + number) for number, start in enumerate(range(0, inputs, PART))]


def _part(part: tuple[int, int]) -> Tally:
    return run(*part)


def summary(tally: Tally, seed: int, seconds: float) -> str:
    """What was done and found, in a few lines."""
    kinds = ", ".join(f"{status} {count:,}" for status, count in sorted(tally.statuses.items()))
    return "\n".join((
        f"{tally.inputs:,} inputs (seed {seed}), {tally.letters:,} letters, {seconds:.0f} s.",
        f"Answers: {kinds}.",
        f"Slowest: {tally.slowest * 1000:.1f} ms for each 1,000 letters begun.",
        f"Laws broken: {len(tally.broken)}.",
    ))


def _told(law: str, text: str) -> None:
    print(f"{law}\n    {text[:400]!r}{' …' if len(text) > 400 else ''} ({len(text)} letters)", flush=True)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

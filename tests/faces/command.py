"""The command as a program of its own, with a home that the test owns."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
QUESTION = "guide number 110 feet, 7 feet, ISO 200, what aperture"


def surroundings(home: Path, **more: str) -> dict[str, str]:
    """The environment of the command."""
    kept = {k: v for k, v in os.environ.items() if k not in ("LC_ALL", "LANG", "PYTHONIOENCODING", "NO_COLOR", "PYTHONUTF8")}
    return {**kept, "PYTHONPATH": str(ROOT), "STOPWISE_HOME": str(home), "LC_ALL": "C.UTF-8", **more}


def run(home: Path, *arguments: str | bytes, stdin: bytes = b"", **more: str) -> subprocess.CompletedProcess[bytes]:
    """Run the command to its end; a traceback anywhere fails the test."""
    done = subprocess.run([sys.executable, "-m", "assistant", *arguments], input=stdin, capture_output=True, env=surroundings(home, **more), timeout=60)
    assert b"Traceback" not in done.stderr + done.stdout, done.stderr.decode("utf-8", "replace")
    return done


def text(done: subprocess.CompletedProcess[bytes]) -> str:
    """What was written on standard output."""
    return done.stdout.decode("utf-8", "replace")


def objects(done: subprocess.CompletedProcess[bytes]) -> list[dict[str, Any]]:
    """Standard output as JSON, one object a line and nothing else."""
    return [json.loads(line) for line in done.stdout.decode("ascii").splitlines()]

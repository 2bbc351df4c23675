"""The built package: a wheel and a source archive that answer a question where they are installed."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import sysconfig
import tarfile
import venv
import zipfile
from pathlib import Path

import pytest

REPO = Path(__file__).resolve().parents[2]
QUESTION = "guide number 110 feet, 7 feet, ISO 200, what aperture"


def _run(*words: object, **more: object) -> subprocess.CompletedProcess[str]:
    done = subprocess.run([str(w) for w in words], capture_output=True, text=True, stdin=subprocess.DEVNULL, **more)  # type: ignore[call-overload]
    assert done.returncode == 0, done.stdout[-2000:] + done.stderr[-4000:]
    return done  # type: ignore[no-any-return]


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a wheel made from the source archive, and the archive."""
    folder = tmp_path_factory.mktemp("built")
    _run(sys.executable, "-m", "build", "--no-isolation", "--outdir", folder, REPO)
    return folder


@pytest.fixture(scope="module")
def installed(built: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A fresh environment with the wheel; only the libraries are lent from this one."""
    folder = tmp_path_factory.mktemp("fresh")
    venv.create(folder, with_pip=False, symlinks=os.name != "nt")
    python = folder / ("Scripts" if os.name == "nt" else "bin") / "python"
    wheel = next(built.glob("*.whl"))
    _run(sys.executable, "-m", "pip", "--python", python, "install", "--no-deps", "--no-index", "--quiet", wheel)
    site = Path(_run(python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))").stdout.strip())
    (site / "lent.pth").write_text(sysconfig.get_path("purelib") + "\n")  # its own .pth files are not followed: no editable install leaks in
    return python


@pytest.mark.slow
def test_the_archives_hold_what_they_must(built: Path) -> None:
    """The grammar travels inside the package; the tests and transcripts in the source archive."""
    inside = zipfile.ZipFile(next(built.glob("*.whl"))).namelist()
    assert "assistant/grammar/phrases.lark" in inside and "assistant/grammar/words.toml" in inside
    assert {name.split("/")[0] for name in inside} <= {"assistant", "stopwise-0.1.0.dist-info"}
    source = tarfile.open(next(built.glob("*.tar.gz"))).getnames()
    assert any(name.endswith("grammar/phrases.lark") for name in source)
    assert any("/tests/" in name for name in source) and any("/transcripts_demo/" in name for name in source)


@pytest.mark.slow
def test_an_installed_wheel_answers(installed: Path, tmp_path: Path) -> None:
    """The command, from a folder that is not the repository, builds its own tables."""
    command = installed.parent / ("stopwise.exe" if os.name == "nt" else "stopwise")
    surroundings = {"STOPWISE_HOME": str(tmp_path / "home"), "PATH": os.environ.get("PATH", "")}
    for _ in range(2):  # cold, then warm
        done = _run(command, "--json", QUESTION, cwd=tmp_path, env=surroundings)
    found = json.loads(done.stdout)
    assert found["status"] == "answered"
    assert found["answers"][0]["value"] == pytest.approx(110 / 7 * 2**0.5)
    where = _run(installed, "-c", "import assistant; print(assistant.__file__)", cwd=tmp_path, env=surroundings).stdout
    assert str(REPO) not in where

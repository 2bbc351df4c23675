"""A home for each test, and the grammar's tables made once for all."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.assistant import Assistant
from assistant.language.tables import Tables, load_tables
from assistant.memory.conversation import Conversation
from assistant.memory.keeping import Keeper


@pytest.fixture(scope="session")
def tables(tmp_path_factory: pytest.TempPathFactory) -> Tables:
    return load_tables(tmp_path_factory.mktemp("tables"))


@pytest.fixture
def home(tmp_path: Path, tables_made_once: Path) -> Path:
    """A home with the grammar's tables in its cache, and nothing kept."""
    import shutil

    folder = tmp_path / "home"
    folder.mkdir(mode=0o700)
    shutil.copytree(tables_made_once, folder / "cache")
    return folder


@pytest.fixture(scope="session")
def tables_made_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("cache")
    load_tables(folder)
    return folder


@pytest.fixture
def assistant(tables: Tables, tmp_path: Path) -> Assistant:
    """An assistant that keeps things in a folder of the test's own."""
    return Assistant(tables, Conversation(), Keeper(tmp_path / "kept"))

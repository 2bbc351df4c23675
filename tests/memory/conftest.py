"""A store with something in it, for the tests that do it harm."""

from __future__ import annotations

from pathlib import Path

import pytest
from harm import HEAD

from assistant.memory.store import FILE_NAME, Store


@pytest.fixture
def filled(tmp_path: Path) -> Path:
    """The file of a store that holds the big head and three hundred frames."""
    with Store.open(tmp_path) as kept:
        assert kept.put(HEAD) is None
        kept._connection.execute("BEGIN")
        for number in range(1, 301):
            row = (number, "t", "roll", f"crew {number} " * 20, "{}")
            kept._connection.execute("INSERT INTO log VALUES (?, ?, ?, ?, ?)", row)
        kept._connection.execute("COMMIT")
    return tmp_path / FILE_NAME

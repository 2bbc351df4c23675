"""What all tests share: the marks they may carry, and no touching of the person's own folders."""

from __future__ import annotations

import pytest


def pytest_configure(config: pytest.Config) -> None:
    """Marks."""
    config.addinivalue_line("markers", "slow: builds or installs something; leave out with -m 'not slow'")


@pytest.fixture(autouse=True, scope="session")
def _own_home(tmp_path_factory: pytest.TempPathFactory) -> object:
    """Whatever a test starts keeps its things in a folder of its own."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("STOPWISE_HOME", str(tmp_path_factory.mktemp("home")))
        yield

"""What all tests share: the marks they may carry, and no touching of the person's own folders."""

from __future__ import annotations

import os

import pytest
from hypothesis import settings

# The same examples each time, so that a red check means a change; STOPWISE_SEARCH=1 looks for new ones.
settings.register_profile("steady", derandomize=True, deadline=None)
settings.register_profile("search", deadline=None, print_blob=True)
settings.load_profile("search" if os.environ.get("STOPWISE_SEARCH") else "steady")


def pytest_configure(config: pytest.Config) -> None:
    """Marks."""
    config.addinivalue_line("markers", "slow: builds or installs something; leave out with -m 'not slow'")


@pytest.fixture(autouse=True, scope="session")
def _own_home(tmp_path_factory: pytest.TempPathFactory) -> object:
    """Whatever a test starts keeps its things in a folder of its own."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("STOPWISE_HOME", str(tmp_path_factory.mktemp("home")))
        yield

"""Where things are kept: the person's own folder for the kit and the log, and the folder for what can be made anew.

Apart from the store, so that a question that needs nothing kept does not wait for a database.
"""

from __future__ import annotations

import os
import sys

TYPE_CHECKING = False
if TYPE_CHECKING:
    from pathlib import Path

FILE_NAME = "stopwise.db"

# Platform: the environment's say, else the place under the person's home, then our own folder.
# Sources: XDG Base Directory Specification 0.8; the vendors' file-system guides (all from memory).
_DATA_PLACES = {
    "win32": ("LOCALAPPDATA", "AppData/Local", "stopwise"),
    "darwin": ("", "Library/Application Support", "stopwise"),
    "linux": ("XDG_DATA_HOME", ".local/share", "stopwise"),
}
_CACHE_PLACES = {
    "win32": ("LOCALAPPDATA", "AppData/Local", "stopwise/cache"),
    "darwin": ("", "Library/Caches", "stopwise"),
    "linux": ("XDG_CACHE_HOME", ".cache", "stopwise"),
}


def home_folder() -> Path:
    """The folder for the kit and the log: STOPWISE_HOME, else the platform's per-user data folder."""
    from pathlib import Path

    return Path(home_place())


def cache_folder() -> Path:
    """The folder for what can be made anew: STOPWISE_HOME/cache, else the platform's cache folder."""
    from pathlib import Path

    return Path(cache_place())


def home_place() -> str:
    """The folder for the kit and the log, as the platform writes it: a question does without the path library."""
    own = os.environ.get("STOPWISE_HOME", "")
    return os.path.expanduser(own) if own else _place(_DATA_PLACES)


def cache_place() -> str:
    """The folder for what can be made anew, as the platform writes it."""
    own = os.environ.get("STOPWISE_HOME", "")
    return os.path.join(home_place(), "cache") if own else _place(_CACHE_PLACES)


def _place(places: dict[str, tuple[str, str, str]]) -> str:
    variable, under_home, folder = places.get(sys.platform, places["linux"])
    said = os.environ.get(variable, "") if variable else ""
    if os.path.isabs(said):  # the specification: a relative path is invalid and to be ignored
        return os.path.join(said, folder)
    person = os.path.expanduser("~")
    if person == "~":  # nobody's home is known: a place that cannot be made, so memory only
        return os.path.join(os.devnull, folder)
    return os.path.join(person, under_home, folder)

"""Where things are kept: the person's own folder for the kit and the log, and the folder for what can be made anew.

Apart from the store, so that a question that needs nothing kept does not wait for a database.
"""

from __future__ import annotations

import os
import sys
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
    own = os.environ.get("STOPWISE_HOME", "")
    return Path(os.path.expanduser(own)) if own else _place(_DATA_PLACES)


def cache_folder() -> Path:
    """The folder for what can be made anew: STOPWISE_HOME/cache, else the platform's cache folder."""
    own = os.environ.get("STOPWISE_HOME", "")
    return home_folder() / "cache" if own else _place(_CACHE_PLACES)


def _place(places: dict[str, tuple[str, str, str]]) -> Path:
    variable, under_home, folder = places.get(sys.platform, places["linux"])
    said = os.environ.get(variable, "") if variable else ""
    if os.path.isabs(said):  # the specification: a relative path is invalid and to be ignored
        return Path(said) / folder
    try:
        return Path.home() / under_home / folder
    except RuntimeError:  # nobody's home is known: a place that cannot be made, so memory only
        return Path(os.devnull) / folder

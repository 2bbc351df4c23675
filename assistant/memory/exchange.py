"""The kit as one TOML file that a person can read, edit and hand to somebody else.

A value goes out as plain TOML; the few JSON values TOML has no words for (null inside a list, say)
go out as their JSON text instead. What comes in is read block by block: one bad block costs itself.
Source of the format: TOML 1.0.0 (https://toml.io/en/v1.0.0, from memory).
"""

from __future__ import annotations

import json
import math
import os
import re
from collections.abc import Iterable
from datetime import date, datetime, time
from pathlib import Path

from assistant.memory.store import KitFact, is_json
from assistant.records import record

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

LARGEST_BYTES = 4 * 1024 * 1024

HEAD = """\
# The kit of stopwise: what is known of the gear. Import it to read it back.
#
# One block for each thing known. Its heading names the owner (a light, a lens, a film), a dot, and
# the quantity; a name with spaces or marks stands in quotes:
#
#   ["the big head".guide_number]
#   value = { number = 110, unit = "ft" }      the value: a number, true or false, words, a list, a group
#   said = "the big head is 110 in feet"       the words it came from; may be left out
#   when = "2026-11-24T22:51:00"               when it was said; may be left out
#
# To change something, change its value. To forget something, delete its block before importing.
# A line that begins with # is for people only.
"""

_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_ESCAPES = {'"': '\\"', "\\": "\\\\", "\b": "\\b", "\t": "\\t", "\n": "\\n", "\f": "\\f", "\r": "\\r"}


@record
class KitRead:
    """What came out of a file: the facts, and a sentence for each thing that could not be read."""

    facts: tuple[KitFact, ...]
    troubles: tuple[str, ...]


def kit_as_toml(facts: Iterable[KitFact]) -> str:
    """Write the kit as TOML, its format explained at the top.

    >>> fact = KitFact("the big head", "guide_number", "110", "it is 110", "2026-11-24")
    >>> print(kit_as_toml([fact]).removeprefix(HEAD), end="")
    <BLANKLINE>
    ["the big head".guide_number]
    value = 110
    said = "it is 110"
    when = "2026-11-24"
    """
    return HEAD + "".join(_block(fact) for fact in facts)


def kit_from_toml(text: str) -> KitRead:
    """Read a kit written by `kit_as_toml` or by hand. Never raises; see `troubles`.

    >>> kit_from_toml("[film.film_speed]\\nvalue = 400").facts
    (KitFact(owner='film', quantity='film_speed', value='400', said='', when=''),)
    >>> kit_from_toml("[film.film_speed]\\nspeed = 400").troubles
    ('film, film_speed: there is no value.',)
    """
    import tomllib

    try:
        owners = tomllib.loads(text)
    except (ValueError, RecursionError) as error:
        return KitRead((), (f"This is not a kit I can read: {error}.",))
    facts: list[KitFact] = []
    troubles: list[str] = []
    for owner, quantity, block in _blocks(owners):
        fact = _fact(owner, quantity, block)
        if isinstance(fact, KitFact):
            facts.append(fact)
        else:
            troubles.append(f"{owner}, {quantity}: {fact}." if quantity else f"{owner}: {fact}.")
    return KitRead(tuple(facts), tuple(troubles))


def export_kit(facts: Iterable[KitFact], path: Path) -> str | None:
    """Write the kit to a new file, readable by its owner only; None once written, else the reason.

    A file that is there already is never overwritten.
    """
    text = kit_as_toml(facts).encode("utf-8", "replace")
    try:
        handle = os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY | getattr(os, "O_BINARY", 0), 0o600)
    except FileExistsError:
        return f"Nothing was written: {path} is there already; give another name."
    except (OSError, ValueError) as error:
        return f"Nothing was written: {path} cannot be made ({getattr(error, 'strerror', error)})."
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
    except OSError as error:
        path.unlink(missing_ok=True)  # half a kit would look like a whole one
        return f"Nothing was written: {path} could not be filled ({error.strerror})."
    return None


def import_kit(path: Path) -> KitRead:
    """Read a kit from a file. Never raises; see `troubles`."""
    try:
        if not path.is_file():
            return KitRead((), (f"There is no file {path}.",))
        if path.stat().st_size > LARGEST_BYTES:
            return KitRead((), (f"{path} is too large to be a kit.",))
        return kit_from_toml(path.read_text(encoding="utf-8-sig"))
    except UnicodeDecodeError:
        return KitRead((), (f"{path} is not a text file.",))
    except (OSError, ValueError) as error:
        return KitRead((), (f"{path} cannot be read ({getattr(error, 'strerror', error)}).",))


def _block(fact: KitFact) -> str:
    value = json.loads(fact.value)
    line = f"value = {_written(value)}" if _has_words(value) else f"json = {_quoted(fact.value)}"
    return (
        f"\n[{_key(fact.owner)}.{_key(fact.quantity)}]\n{line}\n"
        f"said = {_quoted(fact.said)}\nwhen = {_quoted(fact.when)}\n"
    )


def _has_words(value: object) -> bool:
    """Whether TOML can say this JSON value: no null, nothing endless, 64-bit whole numbers, real text."""
    match value:
        case bool():
            return True
        case int():
            return -(2**63) <= value < 2**63
        case float():
            return math.isfinite(value)
        case str():
            return not any("\ud800" <= letter <= "\udfff" for letter in value)
        case list():
            return all(map(_has_words, value))
        case dict():
            return all(map(_has_words, value)) and all(map(_has_words, value.values()))
    return False


def _written(value: Any) -> str:
    match value:
        case bool():
            return "true" if value else "false"
        case str():
            return _quoted(value)
        case list():
            return "[" + ", ".join(map(_written, value)) + "]"
        case dict():
            inside = ", ".join(f"{_key(name)} = {_written(part)}" for name, part in value.items())
            return f"{{ {inside} }}" if inside else "{}"
    return repr(value)


def _key(name: str) -> str:
    return name if _BARE_KEY.fullmatch(name) else _quoted(name)


def _quoted(text: str) -> str:
    return '"' + "".join(map(_letter, text)) + '"'


def _letter(letter: str) -> str:
    if letter in _ESCAPES:
        return _ESCAPES[letter]
    if "\ud800" <= letter <= "\udfff":
        return "\ufffd"
    # Also the controls above ASCII: allowed raw, but an editor may drop or reorder them.
    return f"\\u{ord(letter):04X}" if ord(letter) < 0x20 or 0x7F <= ord(letter) < 0xA0 else letter


def _blocks(owners: dict[str, Any]) -> Iterable[tuple[str, str, object]]:
    for owner, quantities in owners.items():
        if not isinstance(quantities, dict):
            yield owner, "", None
            continue
        for quantity, block in quantities.items():
            yield owner, quantity, block


def _fact(owner: str, quantity: str, block: object) -> KitFact | str:
    """The fact in one block, or what is wrong with it."""
    if not isinstance(block, dict):
        return "this needs a heading of two names, and a value under it"
    try:
        value = block["json"] if "json" in block else json.dumps(block["value"], ensure_ascii=False, allow_nan=False)
    except KeyError:
        return "there is no value"
    except (TypeError, ValueError, RecursionError):
        value = ""
    if not is_json(value):
        return "the value is not one that can be kept"
    said, when = block.get("said", ""), block.get("when", "")
    if isinstance(when, (date, datetime, time)):
        when = when.isoformat()
    if not isinstance(said, str) or not isinstance(when, str):
        return "the words and the time must stand in quotes"
    return KitFact(owner, quantity, value, said, when)

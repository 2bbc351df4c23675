"""Turns about what is kept, and not about light: the gear listed, exported, imported, forgotten; a change taken back."""

from __future__ import annotations

import re
from pathlib import Path

from assistant import patterns, scales
from assistant.answer import Answer
from assistant.language import speaking
from assistant.language.calling import called
from assistant.log_turns import LOG_TURNS
from assistant.memory.kit import FLASH, Kit
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.turn import Handler, Turn

# What people call a part of the gear: the quantities that are known of it. "flash": those of every light.
PARTS: dict[str, frozenset[str]] = {
    "lens": frozenset({"widest_aperture", "smallest_aperture", "aperture_range", "focal_length"}),
    "film": frozenset({"film_speed", "rated", "push", "stock"}),
    "camera": frozenset({"sync", "format"}),
    "sync speed": frozenset({"sync"}),
    "room": frozenset({"max_distance", "min_distance"}),
    "flash": FLASH,
}
_ALL = frozenset({"kit", "whole kit", "entire kit", "gear", "all my gear", "all of my gear", "everything you know", "everything about my gear", "everything about my kit"})

_POLITE = r"^\W*(?:(?:please|ok|okay|now|so|right|can you|could you|will you|would you)[, ]+)*"
_GEAR = r"(?:kit|gear|equipment|flashes|lights|lens(?:es)?)"
_LIST_GEAR = Pattern(
    _POLITE + rf"(?:what(?:'s|s| is| was)? (?:in |about )?(?:my|the|our) (?:kit|gear|equipment)|what (?:do you know|do you have|have you got|did i tell you|have i told you)\b.* {_GEAR}"
    rf"|(?:what|which) {_GEAR} (?:do (?:i|we|you) have|have (?:i|we|you)(?: got)?|do you know|is (?:saved|kept|known)|am i using)|(?:list|show|tell|read|recap|describe)\b.* (?:kit|gear|equipment))"
    r"(?: (?:so far|now|today|again|please|of|about|saved|kept|got|to me|back|yet))*\W*$", re.I)
_ONE_OWNER = Pattern(_POLITE + r"what (?:do you (?:know|have) (?:about|of|on|for)|have you got (?:on|for)) (?P<whose>.+?)\W*$", re.I)
_FORGET = Pattern(_POLITE + r"(?:forget|remove|delete|drop|scrap|get rid of)\s+(?:about\s+)?(?P<what>.+?)(?: from (?:the|my) kit)?\W*$", re.I)
_UNDO = Pattern(_POLITE + r"(?:undo|revert|take)(?: (?:that|it|this|the last (?:one|change|thing)))?(?: back)?(?: please)?\W*$", re.I)
_EXPORT = Pattern(_POLITE + r"(?:export|save|write|back up)\s+(?:(?:my|the|our)\s+)?(?:kit|gear)\s+(?:out\s+)?(?:to|as|into|in)\s+(?:(?:a|the) file\s+)?(?P<file>.+)$", re.I | re.S)
_IMPORT = Pattern(_POLITE + r"(?:import|load|read|restore)\s+(?:(?:my|the|a|our)\s+)?(?:kit|gear)\s+(?:in\s+)?(?:from|out of)\s+(?:(?:a|the) file\s+)?(?P<file>.+)$", re.I | re.S)
_ARTICLE = Pattern(r"^(?:(?:the|my|our|that|this|a)\s+)+", re.I)


def about_what_is_kept(turn: Turn) -> Answer | None:
    """The answer of the first turn of this family that fits."""
    for handler in KEPT_TURNS:
        found = handler(turn)
        if found is not None:
            return found
    return None


# --- listed -----------------------------------------------------------------------------------------


def kit_in_words(kit: Kit) -> str:
    """Everything known of the gear, a sentence a light and one for the rest; "" for an empty kit.

    >>> kit_in_words(Kit().with_facts([Fact("guide_number", 110.0, "ft", "Duke"), Fact("film_speed", 400.0)]))
    'Duke: guide number 110 ft. Camera, film and room: ISO 400.'
    """
    lights = dict.fromkeys((*kit.names, *(f.of for f in kit.facts if f.of or f.quantity in FLASH)))
    sentences = [f"{_opening(called(name)) or 'Flash'}: {_facts_of(kit, name) or 'only its name'}." for name in lights]
    rest = ", ".join(_in_words(f) for f in kit.facts if not f.of and f.quantity not in FLASH)
    return " ".join([*sentences, f"Camera, film and room: {rest}."] if rest else sentences)


def _opening(words: str) -> str:
    return words[:1].upper() + words[1:]


def _facts_of(kit: Kit, name: str) -> str:
    return ", ".join(_in_words(f) for f in kit.facts if f.of == name and (name or f.quantity in FLASH))


def _in_words(fact: Fact) -> str:
    if fact.quantity == "only_powers":
        powers = [float(p) for p in fact.said.split(",") if patterns.fullmatch(r"\d*\.?\d+(?:e-?\d+)?", p)]
        return "powers " + ", ".join(scales.speak_power(p) for p in powers if 0 < p <= 1)
    return speaking.printable(speaking.fact(replace(fact, of="")))


def _list_gear(turn: Turn) -> Answer | None:
    if turn.query.facts or turn.query.asks or not _LIST_GEAR.search(turn.query.text):
        return None
    return _answered(turn, kit_in_words(turn.conversation.kit) or _EMPTY)


_EMPTY = "I know nothing of your gear yet. Tell me, for example: “my flash is guide number 110 feet”."


def _list_one(turn: Turn) -> Answer | None:
    match = _ONE_OWNER.search(turn.query.text)
    name = _known_name(match["whose"], turn) if match else None
    if not name:
        return None
    return _answered(turn, f"{_opening(called(name))}: {_facts_of(turn.conversation.kit, name) or 'only its name'}.")


def _list_all(turn: Turn) -> Answer | None:
    """The scene and the gear in one breath."""
    if "what_so_far" not in turn.query.cues or turn.query.facts or turn.query.asks:
        return None
    scene = speaking.understood(tuple(f for f in turn.conversation.scene.facts if f.origin != "kit")).removeprefix("From ")
    kit = kit_in_words(turn.conversation.kit)
    return _answered(turn, " ".join([f"This scene: {scene}" if scene else "No scene yet.", kit or _EMPTY]))


# --- forgotten and taken back -------------------------------------------------------------------------


def _known_name(said: str, turn: Turn) -> str | None:
    """The light of that name, with or without "the" or "my", or of what that way of speaking means."""
    kit = turn.conversation.kit
    wanted = _ARTICLE.sub("", said.strip()).lower()
    names = [n for n in dict.fromkeys((*kit.names, *(f.of for f in kit.facts))) if n]
    meant = [n for n in names if n in turn.query.mentioned] if len(turn.query.mentioned) == 1 and len(said.split()) < 5 else []
    return next((n for n in (*names, *meant) if _ARTICLE.sub("", n).lower() == wanted or n in meant), None)


def _forget(turn: Turn) -> Answer | None:
    match = _FORGET.search(turn.query.text)
    if match is None:
        return None
    talk = turn.conversation
    what = _ARTICLE.sub("", match["what"]).lower()
    if what in _ALL:
        talk.kit = Kit()
        return _noted(turn, "Your gear is forgotten. Say “undo” to have it back.")
    name = _known_name(match["what"], turn)
    in_scene = {f.of for f in talk.scene.facts if f.origin != "kit"}
    others = in_scene - {name, "", "both", "camera", "film", "ambient"}
    if name and not (talk.scene.asks and name in in_scene and others):
        talk.scene = replace(talk.scene, facts=tuple(f for f in talk.scene.facts if f.of != name), mentioned=tuple(m for m in talk.scene.mentioned if m != name))
        talk.kit = talk.kit.without(name)
        return _noted(turn, f"Forgotten: {called(name)}. Say “undo” to have it back.")
    return _forget_part(turn, what) or _nothing_to_forget(turn, match["what"])


def _nothing_to_forget(turn: Turn, what: str) -> Answer | None:
    """A thing that neither the gear nor the scene knows; with a scene the turn may be about that."""
    talk, query = turn.conversation, turn.query
    if talk.scene.facts or query.facts or query.asks or len(what.split()) > 4 or "start_over" in query.cues:
        return None
    return _refused(turn, f"I know of no “{speaking.printable(what)}” to forget. {kit_in_words(talk.kit) or _EMPTY}")


def _forget_part(turn: Turn, what: str) -> Answer | None:
    """"Forget the lens": only what the kit holds and the scene does not speak of."""
    talk = turn.conversation
    quantities = PARTS.get(what.removesuffix("es") if what == "flashes" else what, frozenset())
    gone = [f for f in talk.kit.facts if f.quantity in quantities]
    if not gone or any(f.quantity in quantities for f in talk.scene.facts if f.origin != "kit"):
        return None
    talk.kit = replace(talk.kit, facts=tuple(f for f in talk.kit.facts if f not in gone), names=() if quantities is FLASH else talk.kit.names)
    return _noted(turn, "Forgotten: " + ", ".join(_in_words(f) for f in gone) + ".")


def _undo(turn: Turn) -> Answer | None:
    """The last change of the gear or the log taken back; other turns go back in the scene."""
    talk = turn.conversation
    if not talk.before or not _UNDO.search(turn.query.text):
        return None
    kit, log = talk.before.pop()
    same_kit = talk.kit == kit
    talk.kit, talk.log = kit, log
    listed = "" if same_kit else " " + (kit_in_words(kit) or _EMPTY)
    return _noted(turn, "Taken back." + (listed or " The log is as it was."))


# --- exported and imported ----------------------------------------------------------------------------


def _file(said: str) -> Path:
    """The path in these words: in quotes, or up to a closing full stop."""
    text = said.strip()
    if len(text) > 1 and text[0] in "\"'“‘" and text[-1] in "\"'”’":
        return Path(text[1:-1])
    return _at_home(text.removesuffix(".").removesuffix("?").removesuffix("!"))


def _at_home(text: str) -> Path:
    try:
        return Path(text).expanduser()
    except RuntimeError:  # nobody's home is known
        return Path(text)


def _export(turn: Turn) -> Answer | None:
    match = _EXPORT.search(turn.query.text)
    if match is None:
        return None
    from assistant.memory.exchange import export_kit
    from assistant.memory.keeping import rows_now

    path = _file(match["file"])
    trouble = export_kit(rows_now(turn.conversation.kit), path)
    if trouble:
        return _refused(turn, trouble)
    return _noted(turn, f"Your kit is written to {path}; any text editor opens it.")


def _import(turn: Turn) -> Answer | None:
    match = _IMPORT.search(turn.query.text)
    if match is None:
        return None
    from assistant.memory.exchange import import_kit
    from assistant.memory.keeping import kit_of

    path = _file(match["file"])
    found = import_kit(path)
    kit = kit_of(found.facts)
    troubles = [*found.troubles, *_left_out(len(found.facts), kit)]
    if not (kit.facts or kit.names):
        return _refused(turn, " ".join(troubles) or f"There is no gear in {path}.")
    talk = turn.conversation
    talk.kit = replace(talk.kit.with_facts(kit.facts), names=tuple(dict.fromkeys((*talk.kit.names, *kit.names))))
    return _noted(turn, " ".join([f"Read from {path}. {kit_in_words(kit)}", *troubles]))


def _left_out(rows: int, kit: Kit) -> list[str]:
    """A sentence when some rows made no fact. A light known only by its name is a row as well."""
    lost = rows - len(kit.facts) - len(kit.names)
    return [f"{lost} of its values could not be used and are left out."] if lost > 0 else []


# --- answers ------------------------------------------------------------------------------------------


def _answered(turn: Turn, reply: str) -> Answer:
    return Answer(heard=turn.query.text, status="answered", reply=reply)


def _noted(turn: Turn, reply: str) -> Answer:
    return Answer(heard=turn.query.text, status="noted", reply=speaking.printable(reply))


def _refused(turn: Turn, reply: str) -> Answer:
    return Answer(heard=turn.query.text, status="rejected", reply=speaking.printable(reply))


KEPT_TURNS: tuple[Handler, ...] = (_undo, _export, _import, *LOG_TURNS, _list_gear, _list_one, _list_all, _forget)

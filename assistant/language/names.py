"""Names people give their lights: "call it Duke", "Pip is GN 24 m"."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.language.tokens import Token

_STOPS = {"COMMA", "END", "Q", "COLON", "LINK", "GUIDE", "NUM", "AND", "AT", "WITH", "ISO", "F", "APERTURE", "FILM_SPEED", "POWER", "SHUTTER"}
_PLAIN = {"it", "that", "this", "one", "a", "an"}
NEVER = frozenset({"units", "set", "test", "scene", "same", "used", "here", "day", "night", "wrap"})


def names_told(tokens: Sequence[Token], text: str) -> list[str]:
    """The names that this text gives to lights, as written."""
    found: list[str] = []
    guided = "GUIDE" in [t.type for t in tokens]
    for place, token in enumerate(tokens):
        if token.type == "CUE" and token.value == "call_it":
            said = text[token.start : token.end].lower()
            if said in ("called", "is called") and place + 1 < len(tokens) and text[tokens[place + 1].start : tokens[place + 1].end].lower() in ("for", "on", "upon"):
                continue  # "what aperture is called for"
            if said in ("call the", "call my") and not any(t.type in ("COUNTED", "GUIDE", "GUIDE_AFTER", "NAMED") for t in tokens):
                continue
            name = _name_after(tokens, place + 1, text)
        elif guided and token.type == "WORD":
            name = _name_before_guide(tokens, place, text)
        else:
            continue
        if name and name.lower() not in NEVER and name.lower() not in (f.lower() for f in found):
            found.append(name)
    return found


def _name_after(tokens: Sequence[Token], place: int, text: str) -> str:
    words: list[Token] = []
    proper = _proper(tokens, place, text)
    if proper:
        return proper
    if any(t.type in ("STOP", "STEPS") for t in tokens[place : place + 6]):
        return ""
    for token in tokens[place : place + 5]:
        said = text[token.start : token.end]
        if token.type in _STOPS or (token.type == "CUE" and token.value in ("now", "ambient")):
            break
        if not words and (said.lower() in _PLAIN or said.lower() in ("the", "my")):
            continue
        if words and token.type != "WORD" and not said[:1].isupper():
            break
        words.append(token)
    capitals = [w for w in words if w.type == "WORD" and text[w.start : w.start + 1].isupper()]
    if capitals and len(words) > len(capitals):
        words = capitals[-1:] if not text[words[0].start : words[0].start + 1].isupper() else words
    return text[words[0].start : words[-1].end] if words else ""


def _proper(tokens: Sequence[Token], place: int, text: str) -> str:
    """A name written with a capital before the clause ends: "call my bracket flash Bertha"."""
    window: list[Token] = []
    for token in tokens[place : place + 6]:
        if token.type in ("COMMA", "END", "Q", "COLON", "GUIDE", "NUM", "SIZE"):
            break
        window.append(token)
    capitals = [t for t in window if t.type == "WORD" and text[t.start : t.start + 1].isupper()]
    if not capitals:
        return ""
    first = capitals[0]
    run = [t for t in window if t.start >= first.start and text[t.start : t.start + 1].isupper()]
    return text[first.start : run[-1].end]


def _name_before_guide(tokens: Sequence[Token], place: int, text: str) -> str:
    """"Red is GN 100 feet", "Duke: guide number 48 m", "Pip, GN 24 m" at the start of a clause."""
    token = tokens[place]
    said = text[token.start : token.end]
    after = [t for t in tokens[place + 1 : place + 5] if t.type != "GLUE"]
    while after and (after[0].type in ("LINK", "COLON", "A") or (after[0].type == "CUE" and after[0].value in ("my_kit",))):
        after = after[1:]
    before = text[tokens[place - 1].start : tokens[place - 1].end].lower() if place else ""
    told = place > 0 and (tokens[place - 1].type == "LINK" or before.endswith((" is", "'s")))
    if told and after and after[0].type == "COMMA":
        after = after[1:]
    opens = place == 0 or tokens[place - 1].type in ("COMMA", "END", "COLON", "AND", "GLUE") or told
    the = place > 0 and text[tokens[place - 1].start : tokens[place - 1].end].lower() == "the"
    owned = the and any(t.type == "CUE" and t.value == "my_kit" for t in tokens[:place])
    return said if after and after[0].type == "GUIDE" and opens and (said[:1].isupper() or owned) else ""


def index_of(names: Iterable[str]) -> dict[str, list[tuple[list[str], str]]]:
    """First word -> the words after it and the name, for hearing."""
    index: dict[str, list[tuple[list[str], str]]] = {}
    for name in names:
        first, *rest = name.lower().replace("-", " ").split() or [""]
        if first:
            index.setdefault(first, []).append((rest, name))
    for entries in index.values():
        entries.sort(key=lambda e: -len(e[0]))
    return index

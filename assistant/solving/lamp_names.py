"""Which lamp a figure is of, by what the lamp is called or lights: "the hair light", "the light for the wall", "it", "the shelf lamp".

What a lamp lights names it as well: the wall is the background lamp's, the face the key's.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import record

_LAMP = r"(?:lights?|lamp|head|flash|strobe|gun|spot|unit)"
_THE = r"(?:(?:the|my|our|her|his|their|its|a|an|what|that|this)\b(?:'s)? )*"
_CALLED: dict[str, str] = {
    # each word that a lamp goes by, with its name
    **dict.fromkeys(("key", "main"), "key"),
    **dict.fromkeys(("fill",), "fill"),
    **dict.fromkeys(("hair",), "hair"),
    **dict.fromkeys(("rim", "edge"), "rim"),
    **dict.fromkeys(("kicker",), "kicker"),
    **dict.fromkeys(("accent",), "accent"),
    **dict.fromkeys(("background", "backdrop", "bg", "wall", "paper", "cloth", "backcloth", "curtain", "cyc", "cyclorama", "canvas", "muslin", "seamless"), "background"),
}
_LIT = frozenset({"hair", "background", "backdrop", "bg", "wall", "paper", "cloth", "backcloth", "curtain", "cyc", "cyclorama", "canvas", "muslin", "seamless"})
"""Those that are no lamps themselves but what one falls on, where no lamp is said right after them."""
_SITTER = r"face|faces|sitter|subject|model|skin"
_NO_NAME = frozenset("a an the my our her his their its that this these those one other second first third same only each both every no any another two three four single new old and or of on with from for by at to if is are was be so key's main's what which whose where how "
                     "more less much than as fresh little big small large weak weaker strong stronger bright brighter warm cool hard soft flat ambient room window day sun sky available spare identical like moved turned guide fast studio off use my".split())
_MENTION = Pattern(
    rf"\b{_LAMP} (?:that is |that's |meant )?(?:for|on|over|onto|lighting) {_THE}(?P<lights>[a-z]+)\b|\b(?P<word>{'|'.join(_CALLED)})(?P<lamp>[ -]?{_LAMP})?\b|\b(?<!['’])(?P<other>[a-z]+) (?:lamp|light|head|strobe|flash)\b(?! (?:meter|number|fall))|\b(?P<sitter>{_SITTER})\b", re.I)
_PLACE_BEFORE = Pattern(rf"\b(?:from|on|onto|at|to|off|in|behind|of|reaches) {_THE}(?:[a-z]+'s )?$", re.I)
_REFERENCE_BEFORE = Pattern(rf"\b(?:over|under|above|below|than|with|as|match(?:es|ing)?|equals?|to equal|beneath|against|level to|to match|of|down from|up from) {_THE}(?:[a-z]+ (?:gets? from|reads? (?:off|from)) {_THE})?$", re.I)
_TOLD_OF_IT = Pattern(rf"(?:'s)?,? ?(?:\(|(?:(?:which|that|and that|whose|reading|at|of|on|is|reads?|gives?|metered|being|just|now|only|does)\b ?)*){_THE}$", re.I)
"""Between a lamp that is compared with and a figure that is its own: "under the key's f/8", "over the key, which reads f/8"."""
_ITS_OWN = Pattern(rf",? ?(?:which|whose power|that)(?: is| stands| hangs|'s)?(?: at| on| now| itself| just)* {_THE}$", re.I)
_SENTENCE = Pattern(r"[.;?!](?=\s|$)")
_GOES_ON = Pattern(r"\W*(?:and |but |now |so |then |if |at present |right now |currently )*(?:i (?:turn|move|put|set|bring|take|push|pull|back|raise|hang) )?(?:it|its|it's|there|that one|this one)\b", re.I)
_ELSEWHERE = Pattern(rf"\s*(?:away |back )?(?P<way>from|off|behind|in front of|before|above) {_THE}(?:[a-z]+'s )?(?P<what>[a-z]+)", re.I)
BOTH = "both"
"""Whose a figure is that is told of two lamps at once."""
_BOTH_ARE = Pattern(rf",? (?:and|plus|with|\+|&) {_THE}", re.I)
_BOTH = Pattern(r"\b(?:both|each)\b[^,.;]*$", re.I)


@record
class Mention:
    """Where a lamp is named: `start` and `end` in the text, its name, and whether it is itself spoken of ("subject"), a place ("place") or what is compared with ("reference")."""

    name: str
    start: int
    end: int
    part: str


def mentions(text: str) -> list[Mention]:
    """The lamps that a text names, in order.

    >>> [(m.name, m.part) for m in mentions("The light for the wall is f/4, one stop under the key.")]
    [('background', 'subject'), ('key', 'reference')]
    """
    others = {m["other"].lower() for m in _MENTION.finditer(text) if m["other"]} - _NO_NAME - set(_CALLED)
    found = [m for m in (_mention(match, text) for match in _MENTION.finditer(text)) if m is not None]
    found += [Mention(word, m.start(), m.end(), _part(text, m.start(), "lit")) for word in sorted(others) for m in re.finditer(rf"\b{re.escape(word)}\b", text.lower()) if not any(f.start <= m.start() < f.end for f in found)]
    keyed = any(m.name == "key" for m in found)
    named = [Mention("key", m.start, m.end, m.part) if m.name == "subject" and keyed else m for m in found]
    return sorted(named, key=lambda m: m.start)


def _mention(match: re.Match[str], text: str) -> Mention | None:
    if match["lights"]:
        word = match["lights"].lower()
        name = "key" if re.fullmatch(_SITTER, word) else _CALLED.get(word, word)
        return None if word in _NO_NAME else Mention(name, match.start(), match.end(), _part(text, match.start(), "lamp"))
    if match["sitter"]:
        return Mention("subject", match.start(), match.end(), _part(text, match.start(), "lit"))
    if match["other"]:
        word = match["other"].lower()
        return None if word in _NO_NAME else Mention(word, match.start(), match.end(), _part(text, match.start(), "lamp"))
    word = match["word"].lower()
    return Mention(_CALLED[word], match.start(), match.end(), _part(text, match.start(), "lamp" if match["lamp"] or word not in _LIT else "lit"))


def _part(text: str, start: int, kind: str) -> str:
    before = text[max(0, start - 40) : start]
    if _REFERENCE_BEFORE.search(before) and not before.lower().endswith(" a key of "):
        return "reference"
    return "place" if kind == "lit" and _PLACE_BEFORE.search(before) else "subject"


def sentences(text: str) -> list[tuple[int, int]]:
    """Where each sentence of a text begins and ends."""
    ends = [m.end() for m in _SENTENCE.finditer(text)]
    edges = [0, *ends, len(text)]
    return [(a, b) for a, b in zip(edges, edges[1:]) if text[a:b].strip()]


def owner(fact: Fact, text: str, named: list[Mention]) -> str:
    """The name of the lamp that a figure is told of; empty where the words do not say.

    >>> text = "Hair light f/16 against a key of f/8. It is 1 m off."
    >>> [owner(Fact("aperture", 0, start=text.index(said)), text, mentions(text)) for said in ("f/16", "f/8", "1 m")]
    ['hair', 'key', 'hair']
    """
    parts = sentences(text)
    which = next((n for n, (a, b) in enumerate(parts) if a <= fact.start < b), None)
    if which is None:
        return ""
    begins, ends = parts[which]
    mine = [m for m in named if begins <= m.start < ends]
    before = [m for m in mine if m.end <= fact.start + 1]
    its_own = _TOLD_OF_IT if fact.quantity == "aperture" else _ITS_OWN  # "two stops over the key at 1 m": the other stands there
    if before and before[-1].part == "reference" and its_own.fullmatch(text, before[-1].end, fact.start):
        return before[-1].name
    subjects = [m for m in before if m.part == "subject"]
    if len(subjects) > 1 and (_BOTH_ARE.fullmatch(text, subjects[-2].end, subjects[-1].start) or _BOTH.search(text, subjects[-1].end, fact.start)):
        return BOTH
    if subjects:
        return subjects[-1].name
    if _GOES_ON.match(text, begins):
        return spoken_of(text, parts[:which], named) or spoken_of(text, parts[which + 1 :][::-1], named)
    after = [m for m in mine if m.start > fact.start]
    return before[-1].name if before and before[-1].part == "place" else after[0].name if after else ""


def spoken_of(text: str, parts: list[tuple[int, int]], named: list[Mention]) -> str:
    """The lamp that the last of some sentences with a lamp in it is about."""
    for begins, ends in reversed(parts):
        inside = [m for m in named if begins <= m.start < ends and m.part == "subject"]
        if inside:
            return inside[0].name
    return ""


def stands_elsewhere(fact: Fact, text: str, of: str) -> bool:
    """Whether a length is not that of the lamp to what it lights: "the key 3 m from the wall", "the wall 2 m behind her"."""
    said = _ELSEWHERE.match(text, fact.end)
    if said is None:
        return False
    way, what = said["way"].lower(), said["what"].lower()
    return way in ("behind", "in front of", "before") or what in ("camera", "lens", "floor", "ground", "ceiling") or _CALLED.get(what, of) != of

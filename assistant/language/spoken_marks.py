"""F-numbers said without their f, where the words around them leave no choice: "key eight, fill five-six", "the director wants 5.6"."""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_SPOKEN = {"one four": "1.4", "one point four": "1.4", "two eight": "2.8", "two point eight": "2.8", "four": "4", "five six": "5.6", "five point six": "5.6", "eight": "8", "eleven": "11", "sixteen": "16", "twenty two": "22", "thirty two": "32"}
_WORDS = "|".join(words.replace(" ", "[ -]") for words in sorted(_SPOKEN, key=len, reverse=True))
_MARK = rf"(?:(?:f/? ?)?(?:1\.4|2\.8|4|5\.6|8|11|16|22|32)(?![\d/]|\.\d)|{_WORDS})"
_ENDS = r"(?=\s*(?:$|[,;:?!)]|[-–—]+\s|\.(?!\d)|\b(?:so|what|how|whats|what's|where|lighting|ratio|key to fill|give|gives)\b))"
_IS = r"(?: light)?(?:'s| is| at| on| reads| meters| gives|:|,)*"
_TWO_LIGHTS = Pattern(
    rf"\b(?P<first>key|main|fill)(?P<is>{_IS}) (?P<one>{_MARK})(?P<between>(?:,|;| -)? ?(?:and |to |against |over )?(?:the |my |a )?)\b(?P<second>key|main|fill)(?P<too>{_IS}) (?P<two>{_MARK}){_ENDS}", re.I)
_APART = Pattern(r"\bratio\b|\b(?:how many|what) stops\b|\bhow far apart\b|\bstops apart\b", re.I)


def _of_two_lights(said: str) -> str:
    """"key eight, fill five-six, lighting ratio?": what each of them reads, where it is asked how they differ."""
    if not _APART.search(said):
        return said
    return _TWO_LIGHTS.sub(lambda m: f"{m['first']}{m['is']} {_with_f(m['one'])}{m['between']}{m['second']}{m['too']} {_with_f(m['two'])}" if _are_marks(m) else m[0], said)


def _are_marks(found: re.Match[str]) -> bool:
    """Two lights, and one of the two figures in words: both in figures are read as they stand, and "key at four" may be so far off."""
    first, second = (found[side].lower().replace("main", "key") for side in ("first", "second"))
    return first != second and any(found[side][0].isalpha() and found[side][0] not in "fF" or found[side][:2].lower() in ("fo", "fi") for side in ("one", "two")) \
        and (" at" not in found["is"] + found["too"] or any(_with_f(found[side])[2:] in ("1.4", "2.8", "5.6", "11", "22") for side in ("one", "two")))


def _with_f(mark: str) -> str:
    """The mark as it is engraved.

    >>> _with_f("five-six"), _with_f("f8"), _with_f("11")
    ('f/5.6', 'f/8', 'f/11')
    """
    plain = mark.lower().replace("-", " ")
    return f"f/{_SPOKEN.get(plain) or plain.lstrip('f/ ')}"


_WHO = r"(?:i|we|he|she|they|(?:the |my |our |an? |his |her )?(?:art |picture )?(?:director|client|boss|dp|d\.p\.|gaffer|photographer|editor|customer|bride|chief|producer|stylist|cameraman|cinematographer|agency|magazine|operator|assistant|teacher|tutor|customer))"
_WISHED = Pattern(
    rf"(?P<before>^|[.,;:!?–—-] ?|\b(?:and|but|now|then) )(?P<who>{_WHO})(?P<wish>(?:'d|'s| would| is| am|'m| are|'re| now)*(?: now| then)? (?:wants?|wanted|likes?|needs?|needed|after|asks for|asked for|insists on|prefers?))(?: now)? (?P<mark>{_MARK})(?: now| instead)?{_ENDS}", re.I)
_A_MARK_TOLD = Pattern(r"\bf ?/ ?\d|\b(?:reads?|meters|metered|reading|gives?|gave)\b[^.?!;]{0,24}?(?<![\d.])(?:1\.4|2\.8|5\.6)(?![\d.])", re.I)
_ASKED_FOR_IT = Pattern(r"\bhow far\b|\bwhere\b|\bhow (?:much|many) (?:pops|flashes|bursts|stops|closer|nearer|further|farther|back|more|feet|metres|meters)\b|\bhow many\W*$|\b(?:what|which) (?:power|distance|fraction|setting on the (?:flash|pack|head))\b", re.I)
"""What is asked where the f-number is known."""
_MARK_ASKED = Pattern(r"\b(?:what|which|whats) (?:aperture|f-?stop|stop|f-?number|f|mark)\b|\bhow many (?:frames|shots|rolls|lights|heads|prints|images|sheets|sets)\b", re.I)


def _wished_for(said: str) -> str:
    """"reads f/8 at 2 metres, the director wants 5.6, where does the light go": the f-number that is wanted, after one that was read."""
    found = _WISHED.search(said)
    if found is None or not _A_MARK_TOLD.search(said) or not _ASKED_FOR_IT.search(said) or _MARK_ASKED.search(said):
        return said
    return f"{said[: found.start()]}{found['before']}I want {_with_f(found['mark'])}{said[found.end() :]}"


def with_their_f(said: str) -> str:
    """The text with the f put in.

    >>> with_their_f("key eight, fill five-six, lighting ratio?")
    'key f/8, fill f/5.6, lighting ratio?'
    >>> with_their_f("reads f/8 at 2 metres. the director wants 5.6. where does the light go?")
    'reads f/8 at 2 metres. I want f/5.6. where does the light go?'
    """
    if " fill" in said or "fill " in said or "Fill" in said:
        said = _of_two_lights(said)
    return _wished_for(said)

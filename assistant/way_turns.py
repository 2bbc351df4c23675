"""Which way a setting goes: "I want the background darker and the flash left alone: faster or slower shutter?"."""

from __future__ import annotations

import re

from assistant.answer import Answer
from assistant.language.ambient_words import AMBIENT
from assistant.patterns import Pattern
from assistant.turn import Turn

_OR = r"(?: (?:shutter|aperture|time|speed|exposure|lens|opening|it))*,? or (?:to |with |on )?(?:an? |the )?"
_TIME = Pattern(rf"\b(?:(?:faster|quicker|shorter){_OR}(?:slower|longer)|(?:slower|longer){_OR}(?:faster|quicker|shorter))\b")
_OF_A_TIME = Pattern(r"\b(?:shutter|exposure|time|speed)s?\b")
_HOLE = Pattern(rf"\b(?:(?:wider|larger|bigger|open(?:ing)? up){_OR}(?:smaller|narrower|(?:stop|clos)\w* down)|(?:smaller|narrower|(?:stop|clos)\w* down){_OR}(?:wider|larger|bigger|open(?:ing)? up))\b")
_OF_A_HOLE = Pattern(r"\b(?:aperture|lens|opening|iris|stop|open|close)\w*\b")
_FLASH = r"(?:flash|strobe|speedlight|flashlit|flash-lit)"
_DARKER, _BRIGHTER = r"(?:darker|dimmer|down|less bright|moodier|duller)", r"(?:brighter|lighter|up|less dark)"
_STAYS = r"(?:left|leaving|leave|alone|same|unchanged|unaltered|as (?:it )?is|as it was|untouched|unaffected|stays?|staying|kept|keep|keeping|without (?:changing|touching|affecting|altering))"
_FLASH_STAYS = Pattern(rf"\b{_FLASH}\b[^.?!;]{{0,32}}\b{_STAYS}\b|\b{_STAYS}\b[^.?!;,]{{0,24}}\b{_FLASH}\b")
_OTHER_STAYS = Pattern(rf"\b(?:{AMBIENT})\b[^.?!;,]{{0,20}}\b{_STAYS}\b|\b{_STAYS}\b[^.?!;,]{{0,16}}\b(?:{AMBIENT})\b", re.I)
_CHANGES = Pattern(
    rf"\b(?:(?:the|a|my|that|this|her|his) (?P<thing>(?:[a-z-]+ ){{1,4}}?)|(?P<thing3>{AMBIENT}|{_FLASH}) )(?:(?:to |should |must )?(?:be|go|look|come|get|gets|come out) )?(?:a (?:bit|little|touch) |much |rather )?(?:(?P<dark>{_DARKER})|(?P<bright>{_BRIGHTER}))\b"
    rf"|\b(?:(?P<dark2>darken|dim|darker|dimmer)|(?P<bright2>brighten|lighten|brighter|lighter))(?: up| down)? (?:the |my |a )?(?P<thing2>[a-z-]+)\b"
)
_OF_FLASH = Pattern(rf"\b{_FLASH}\b")
_TOLD = frozenset({"shutter", "aperture", "sync", "film_speed", "remark", "place"})
_LONGEST = 400


def which_way(turn: Turn) -> Answer | None:
    """The one of two ways that does what is wanted, where a time or an opening is put as a choice of ways."""
    said = " ".join(turn.query.text.lower().replace("’", "'").split())
    if " or " not in said or len(said) > _LONGEST or any(f.quantity not in _TOLD for f in turn.query.facts):
        return None
    of_time, of_hole = _TIME.search(said) and _OF_A_TIME.search(said), _HOLE.search(said) and _OF_A_HOLE.search(said)
    wish = _CHANGES.search(_HOLE.sub(" ", _TIME.sub(" ", said))) if bool(of_time) != bool(of_hole) else None
    if wish is None:
        return None
    thing, darker = wish["thing"] or wish["thing2"] or wish["thing3"], bool(wish["dark"] or wish["dark2"])
    reply = _time(said, thing, darker) if of_time else _hole(said, thing, darker)
    return Answer(heard=turn.query.text, status="answered", reply=reply) if reply else None


def _time(said: str, thing: str, darker: bool) -> str:
    lit_by_flash = _OF_FLASH.search(thing) is not None
    if lit_by_flash and _OTHER_STAYS.search(said) is None:
        return "Neither: the flash is over while the shutter is open, so the time leaves what it lights as it is. Turn its power, move it, or change the aperture."
    if lit_by_flash or not (_FLASH_STAYS.search(said) or _is_ambient(thing)):
        return ""
    by_length = "shorter" in said or "longer" in said
    way = ("Shorter" if darker else "Longer") if by_length else "Faster" if darker else "Slower"
    return f"{way}: the shutter time changes the ambient light alone, the flash is over while the shutter is open. {'Not beyond sync speed.' if darker else 'Each doubling of the time is a stop more of it.'}"


def _hole(said: str, thing: str, darker: bool) -> str:
    if _FLASH_STAYS.search(said) or _OTHER_STAYS.search(said) or not (_OF_FLASH.search(thing) or _is_ambient(thing)):
        return ""  # the aperture changes both
    return f"{'Smaller' if darker else 'Wider'}: a {'smaller' if darker else 'wider'} aperture makes flash and ambient light alike {'darker' if darker else 'brighter'}."


_IN_AMBIENT = Pattern(rf"\b(?:{AMBIENT})\b", re.I)


def _is_ambient(thing: str) -> bool:
    return _IN_AMBIENT.search(thing) is not None

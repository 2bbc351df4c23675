"""A second length without its unit, told like the first: "the key is 4 feet from her and the wall another six behind her", "hair on half at four feet, key on full at eight".

The unit of the length before it is written out, so that whoever reads the figure need not guess; no figure is given one where it may be an f-number or a count.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_NUMBER = r"(?:\d{1,3}(?:\.\d{1,2})?|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty)"
_UNIT = r"(?:feet|foot|ft|metres?|meters?|m|yards?)"
_TOLD = Pattern(rf"\b{_NUMBER} ?(?P<unit>{_UNIT})\b", re.I)
_BEHIND = Pattern(
    rf"(?<!there )(?<!there)\b(?:is|are|'s|hangs|stands|sits|was|and|wall|paper|backdrop|background|curtain|drapes?|cloth|screen|seamless|sheet) (?:(?:about|another|a further|some|just|only) )*(?P<n>{_NUMBER})(?= (?:(?:further|farther) )?(?:behind|beyond|in back of) (?:her|him|them|it|that|the|my|his|us|me)\b(?! (?:camera|lens|film)))"
    rf"|\b(?:another|a further) (?P<more>{_NUMBER})(?= (?:(?:further|farther) )?(?:behind|beyond|back|further|farther)\b)", re.I)
"""So far behind somebody: a length, whatever else is counted."""
_LIGHT = r"(?:the |my )?(?:key|main|fill|hair|rim|kicker|back|background|backdrop)(?: ?light| head| flash)?"
_POWER = r"(?:(?:on|at) )?(?:full|half|quarter|(?:an? )?eighth|1/\d{1,3})(?: power)?"
_EACH_AT = Pattern(
    rf"\b{_LIGHT}(?:'s| is| stands)?,? {_POWER},? (?:and )?(?:at |from )?{_NUMBER} ?(?P<unit>{_UNIT})\b,?(?: and| but| while)? {_LIGHT}(?:'s| is| stands)?,? {_POWER},? (?:and )?(?:at|from) (?P<n>{_NUMBER})(?=\s*(?:[.,;:?!](?!\d)|$))", re.I)
"""Two lights, each with its power and its place."""
_POWER_AT = Pattern(rf"\b(?:what|which|how much) power (?:will |would |do i need |is right |is it |now )?(?:at|from) (?P<n>{_NUMBER})(?! ?(?:%|per ?cent|stops?|{_UNIT}|iso|cm|inch|asa))(?=\s*(?:[,.;:?!](?!\d)|$)|\s+[a-z])"
    rf"|\b(?:what|which) (?:aperture|f[- ]?stop|f[- ]?number|stop) (?:will i need |would i need |do i need |do i set |do i use |is right |is it |now )?(?:at|from) (?P<place>(?!2[5-9]|[3-9]\d|\d{{3}}|(?:1\.4|2\.8|5\.6)\b){_NUMBER})(?=\s*(?:[,;:?!]|\.(?!\d)|$))", re.I)
"""A place whose power or aperture is asked, "what power at 12?", "what f-stop at nine?", after another one was told; a figure from 25 up may be a film."""
_WHO = r"(?:row|line|rank|tier|one|kid|child|boy|girl|man|woman|person|end|edge|side|group|bride|groom|singer|player|dancer|model|sitter|subject|chair|bench|first|second|third|last|front|back|middle|nearest|farthest|furthest|nearer|farther|further|other|her|him|wall|backdrop|background|far|near)"
_LIKEWISE = Pattern(
    rf"\b{_NUMBER} ?(?P<unit>{_UNIT})\b(?: (?:away|out|off|back))?(?: from (?:(?:the|my) )?(?:\w+ )?\w+)?(?:,| and|, and| but|, but|;| while)+ (?=[a-z' -]{{0,40}}\b{_WHO}\b)[a-z' -]{{3,48}}?\b(?:is|are|'s|at|stands?|stood|sits?|was|were|another)(?: (?:at|about|only))* (?P<n>{_NUMBER})(?=\s*(?:[.,;:?!](?!\d)|$))", re.I)
"""Of two who stand in one light, each with a place: "row one is ten feet from the flash and row three is fifteen"."""
_TO_EACH = Pattern(rf"\b{_NUMBER} ?(?P<unit>{_UNIT})\b to the (?:front|near\w*|first|closest)\b(?: \w+)?,?(?: and| but)? (?P<n>{_NUMBER})(?= to the (?:back|rear|far\w*|last|furthest)\b)", re.I)
"""Both ways from one light: "10 feet to the front and 15 to the back"."""
_AND_A_HALF = Pattern(rf"\b(?P<n>{_NUMBER}) (?P<unit>feet|foot|metres?|meters?|yards?|paces?) and a half(?=\s*(?:[.,;:?!)]|$)| (?:from|away|off|back|out|in front|to|up|down|behind|above|below|between|apart|is|was|with|and|long|of (?:room|path|way)|further|closer|nearer)\b)", re.I)
"""Of the unit, and neither of a power nor of a stop: "two metres and a half from the scrim"."""
_ROW_AFTER_ROW = Pattern(
    rf"\b{_NUMBER} ?(?P<unit>{_UNIT})\b(?: (?:away|out|off|back))?(?: from (?:(?:the|my) )?(?:\w+ )?\w+)?(?:,| and|, and) (?:the )?(?:second|third|middle|next|back|last|far|farthest|furthest|rear|other)(?: (?:one|row))?(?: (?:is|at|stands|sits))* (?P<n>{_NUMBER}(?: and a half)?)(?=\s*(?:[.,;:?!](?!\d)|$|and\b(?! (?:a |one |two |three )?(?:half|third|quarter)s?\b)))", re.I)
"""Row after row, each without its verb: "the first row is 12 feet from the flash, the middle one 15 and the last one 19"."""
_CAMERA = r"(?:the |my )?camera"
_STANDING = rf"(?:{_LIGHT}|{_CAMERA}|(?:the |my )?(?:flash|lamp|softbox|umbrella))"
_BY_WHAT = r"(?:,? (?:up |right |just )?(?:beside|by|next to|near|over|above|on|behind) (?:the |my )?(?:camera|lens|axis|tripod|subject|sitter|window|side|left|right|door),?)?"
_STANDS_TOO = Pattern(
    rf"\b{_STANDING}(?:'s| is| stands| sits)?(?: at| about| only)* (?:one|{_NUMBER}) ?(?P<unit>{_UNIT})\b(?: (?:away|out|off|back))?(?: from (?:(?:the|my|her|his) )?(?:\w+ )?\w+)?(?:,| and|, and| but|, but|;| while)+ "
    rf"(?:{_STANDING}{_BY_WHAT}(?:'s| is| stands| sits)? (?:at|from)|{_CAMERA}(?:'s| is| stands| sits)?)(?: about| only)* (?P<n>{_NUMBER})(?=\s*(?:[.,;:?!](?!\d)|$))", re.I)
"""Two things that stand somewhere, the second said as short: "key at two metres from her, fill beside the camera at four", "the flash two metres from him and the camera three"."""
_STANDS_IN_SHORT = Pattern(
    rf"\b{_LIGHT}(?:'s| is| stands| sits) (?:about |only )?(?:one|{_NUMBER}) ?(?P<unit>{_UNIT})\b(?: (?:away|out|off|back))?(?: from (?:(?:the|my|her|his) )?(?:\w+ )?\w+)?(?:,| and|, and| but|, but|;| while)+ {_LIGHT} (?:about |only )?(?!(?:1\.4|2\.8|5\.6)\b)(?P<n>{_NUMBER})(?=\s*(?:[.,;:?!](?!\d)|$))", re.I)
"""Two lights, the second with its figure alone: "key is 8 feet off, hair light 5"."""
_LEG_AFTER_LEG = Pattern(
    rf"\b(?:ceiling|wall|roof|card|board|reflector)\b[^.;?!]{{0,24}}?(?:one|{_NUMBER}) ?(?P<unit>{_UNIT})\b,?(?: and| then|, then)? (?:from (?:there|it)|then|and)(?: back)?(?: (?:down|on|out|over|across|up))? to (?:the |my )?[a-z]+(?:'s| is| are)?(?: (?:another|about|a further|some))* (?P<n>{_NUMBER}(?: and a half)?)(?=\s*(?:[.,;:?!](?!\d)|$)|,? and\b)", re.I)
"""The way of a bounce in its two legs: "up to the ceiling is 3 metres, from there down to the guests another two and a half"."""
_READ = Pattern(r"\bf ?/? ?\d|\b(?:reads?|meters?|metered|gives?|says|shows?)\b", re.I)
"""Where readings are told, a bare figure of a light may be one."""
_UNMARKED = Pattern(r"[.?!;](?!\d)")


def with_units(text: str) -> str:
    """The text with the unit of the length before at each such figure.

    >>> with_units("The lamp is 4 feet from her and the wall is six behind her.")
    'The lamp is 4 feet from her and the wall is six feet behind her.'
    """
    text = _AND_A_HALF.sub(r"\g<n> and a half \g<unit>", text)
    for told_before in (_LEG_AFTER_LEG, _EACH_AT, _ROW_AFTER_ROW, _ROW_AFTER_ROW, _TO_EACH, _LIKEWISE, _STANDS_TOO):  # a third row after the second
        found = told_before.search(text)
        text = text if found is None else _put(text, found.end("n"), found["unit"])
    if (found := _STANDS_IN_SHORT.search(text)) is not None and not _READ.search(text):
        text = _put(text, found.end("n"), found["unit"])
    asked = _POWER_AT.search(text)
    before = list(_TOLD.finditer(text, 0, asked.start())) if asked is not None else []
    if asked is not None and before:
        return _put(text, asked.end("n") if asked["n"] else asked.end("place"), before[-1]["unit"])
    found = _BEHIND.search(text)
    told = [m for m in _TOLD.finditer(text, 0, found.start())] if found is not None else []
    if found is None or not told or _UNMARKED.search(text, told[-1].end(), found.start()):
        return text
    return _put(text, found.end("n") if found["n"] else found.end("more"), told[-1]["unit"])


def _put(text: str, end: int, unit: str) -> str:
    """The text with the unit after the figure that ends there."""
    return f"{text[:end]} {unit}{text[end:]}"

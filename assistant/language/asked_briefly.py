"""Questions of a hurried hand, in which the word that asks is left out: "frames i need?", "pops to get f/16", "2.8 or 5.6, more depth?".

They are put in full, before the question is looked for in the text: what is asked stands there by its
name, and only the "how many", the "how much" or the "which" lacks. A text that holds one of these
already is left as it is, since the name may then be only told.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_ASKS = Pattern(r"\b(?:what|which|how|where|when|whats|hows)\b", re.I)
_BEGINS = r"(?P<before>^\W*|(?<=[a-z0-9)])[.,;:!?]\s+|\b(?:so|then|now),? )"
_THINGS = r"(?P<things>(?:sets of [\w-]+(?: [\w-]+)?|(?:full |more |extra )?(?:frames|shots|exposures|sheets|pops|bursts|rolls|sets|brackets))(?: of (?:film|flash))?)"
_OF_STOPS = r"(?P<stops>stops(?: of (?:light|flash|exposure))?)"
_STANDS = r"(?=\s*(?:[?,;:.]|$|(?:for|to|at|from|on|if|with|when|in|out of)\b))"
_NEEDED = Pattern(rf"{_BEGINS}{_THINGS} (?:(?:do |will |would )?(?:i|we|she|he|they) (?P<verb>need|want|get|have|must fire|have to fire)s?|needed|required|wanted){_STANDS}", re.I)
_LOST = Pattern(rf"{_BEGINS}{_OF_STOPS} (?:(?:do |will |would )?(?:i|we) (?P<verb>lose|gain|need)|(?P<told>lost|gained|needed)){_STANDS}", re.I)
_WANTED_FOR = Pattern(rf"{_BEGINS}{_THINGS} (?=(?:to (?:get|reach|make|match|fill|cover|equal|come|bring)|for (?:f\W?\d|the same|that f|this f))\b)", re.I)
"""At the head of a clause: "pops to get f/16"; a figure before them would be their number."""
_SMEAR = Pattern(r"(?P<before>^\W*|(?<=[a-z0-9)])[.,;:!?]\s+)(?:the |any )?(?P<what>smear|blur|movement|streak|trail)(?: (?:length|then|is|on (?:the )?(?:neg|film)))?(?=\s*\?)", re.I)
_MOVES = Pattern(r"\d ?(?:m|cm|mm|ft|feet|foot|met(?:re|er)s?|km|miles?) ?(?:/|per\b|an?\b)|\bmph\b|\bkm/?h\b", re.I)
_ONE = r"(?:f/? ?)?\d[\d./]*(?: ?(?:mm|cm|m|ft|feet|metres?|meters?|s|sec|iso|th))?"
_TWO = rf"(?:at |with |on )?(?:iso )?{_ONE} or (?:at |with |on )?(?:iso )?{_ONE}(?: lens)?"
_MORE = r"(?:more|most|less|least|greater|greatest|deeper|deepest|shallower|brighter|brightest|darker|darkest|softer|softest|harder|finer|wider)"
_OF_WHAT = r"(?:depth|dof|grain|light|exposure|reach|in focus|sharp|background|backdrop|room|ambient|sky|falloff|fall-off|shadows?|field)"
_TWO_FIRST = Pattern(rf"^\W*(?P<two>{_TWO})(?:[,:;?!]| -)? (?:for (?:the )?)?(?=(?:the )?{_MORE}\b[^.?!]{{0,40}}\?)", re.I)
_TWO_LAST = Pattern(rf"^\W*(?:(?:so|and|for|the) )*(?P<more>{_MORE}(?: \w+){{0,4}})(?:[,:;?!]| -)? (?P<two>{_TWO})(?P<rest>[^.?!]{{0,30}}\?.*)$", re.I)
_NAMED_WHAT = Pattern(rf"\b{_OF_WHAT}\b", re.I)


_WELL = Pattern(r"^\W*(?:(?:ok|okay|fine|all right|alright|good)(?: still)?(?: or not\W{1,3}|\s?\? )|(?:still )?(?:safe|saved?|salvageable|usable|printable|within (?:it|latitude|limits))(?: or not)?(?:[?,:;]| -) )\s*(?=\S+ \S+ \S)", re.I)
"""Before what happened to a film, and how much it takes."""
_TAKES = Pattern(r"\b(?:films?|negs?|negatives?|slides?|chromes?|stock|rolls?)\b[^?]{0,40}\b(?:takes?|holds?|forgives?|stands?|allows?|survives?|tolerates?|copes?|good for|latitude|leeway)\b", re.I)


_FACTOR_AT = Pattern(r"\bfactor (?:at|for) (?=(?:\d+(?:\.\d+)?|\.\d+) ?x? (?:mag|magnification)\b)", re.I)
"""Asked at a scale, and no factor of that value: "exposure factor at 0.6 magnification"."""
_SCALE_NAMED = Pattern(r"(?<![\d./:])(?P<scale>\d+(?:\.\d+)?|\.\d+) (?:mag|magnification)\b(?! of)", re.I)
"""A scale of reproduction before its name: "at 0.75 magnification"."""
_MAG_ASKED = Pattern(r"(?:(?<=what )|(?<=what's the )|(?<=what is the )|(?<=, )|(?<=^))mag\b(?=(?: is| then| now)?\s*(?:\?|$))", re.I)
"""Asked for, it is no magazine."""


def in_full(said: str) -> str:
    """The text with the question word that was left out.

    >>> in_full("frames i need? bracket one under to one over")
    'how many frames do i need? bracket one under to one over'
    >>> in_full("2.8 or 5.6, more depth?")
    '2.8 or 5.6, which gives more depth?'
    """
    if "mag" in said:
        said = _MAG_ASKED.sub("magnification", _SCALE_NAMED.sub(r"\g<scale>x magnification", _FACTOR_AT.sub("factor, at ", said)))
    if _ASKS.search(said):
        return said
    said = _NEEDED.sub(lambda m: f"{m['before']}how many {m['things']} do i {(m['verb'] or 'need').lower()}", said, 1)
    said = _LOST.sub(lambda m: f"{m['before']}how many {m['stops']} do i {(m['verb'] or _DONE[m['told'].lower()]).lower()}", said, 1)
    said = _WANTED_FOR.sub(r"\g<before>how many \g<things> ", said, 1)
    if _SMEAR.may_match(said) and _MOVES.search(said):
        said = _SMEAR.sub(r"\g<before>how much \g<what>", said, 1)
    if _WELL.may_match(said) and "?" not in said[8:] and _TAKES.search(said) and (first := _WELL.match(said)) is not None:
        return f"{said[first.end() :].rstrip(' .')}. is it ok?"
    if " or " in said and "?" in said:
        said = _which(said)
    return said


_DONE = {"lost": "lose", "gained": "gain", "needed": "need"}


def _which(said: str) -> str:
    """"more depth, 2.8 or 5.6?": which of the two."""
    if _NAMED_WHAT.search(said) is None:
        return said
    first = _TWO_FIRST.match(said)
    if first is not None:
        return f"{first['two']}, which gives {said[first.end() :]}"
    return _TWO_LAST.sub(r"which gives \g<more>, \g<two>\g<rest>", said)

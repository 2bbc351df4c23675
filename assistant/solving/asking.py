"""Whether the words of a turn ask, and whether words alone can answer what they ask."""

from __future__ import annotations

import re

from assistant.answer import Answer
from assistant.patterns import Pattern
from assistant.query import Query

_QUESTION = Pattern(r"\?|^\W*where (?:can|do|does|should|must|is|are|would|will|to)\b|^\W*(?:f ?/? ?|iso |1/)?\d[\d./]*(?: ?(?:m|ft|feet|mm|film))? or (?:f ?/? ?|iso |1/)?\d|\b(?:what|whats|what's|which|how)\b|\bwhere\W*$")
_LEFT_OPEN = Pattern(
    r"\b(?:so|then|and|now) (?:i|we|you)(?:'ll| should| must| can)? (?:then )?(?:set|use|open (?:up )?to|dial(?: in)?|shoot at|put|need|get|have)(?: the (?:lens|ring|flash|power|aperture))?(?: (?:to|on|at))?\W*$"
    r"|\b(?:becomes|goes at|stands at|sits at|comes to|works out (?:at|to)|that makes|which makes|that gives|which gives|equals)\W*$|\w(?:\.\.\.|…)\s*$"
    r"|(?:^|[.;:!?]\s+)(?:(?:please|now|then|and|so) )?(?:estimate|count|find|calculate|compute|work out|determine|convert|name|figure out|turn (?:it|that) into)\b(?! (?:it |that )?as\b)"
    r"|\b(?:asking|asks|asked) (?:me |us )?(?:for|about)\b|\bwants? to know\b|\b(?:tell|give|show) me\b"
    r"|\b(?:max|maximum|greatest|longest|working|min|minimum|least|total|combined) (?:flash )?(?:distance|range|reach|aperture|power|f-?stop|loss|factor|guide number)\W*$|\bdistance (?:from|to|off) (?:the |my |his |her )?\w+\W*$|\b(?:please|pls|plz)\W*$|\b(?:i|we) (?:need|want|get)\W*(?:$|[,;:])|\byes or no\b|\by ?/ ?n\b|\b(?:confirm|agree|true|verify)[^.?]{0,12} or (?:refute|deny|disagree|false|not)\b"
    r"|\bgoes (?:where|at|to what)\W*$|\b(?:is|at|to|on|needs|wants|gives) (?:what|where|which)\W*$|\b(?:per|for each|for every) (?:flash|pop|burst|shot|frame)\W*$|^\W*(?:is|are|does|would|can|could|should|did) (?!(?:not|you|u|only|just|full|on|at|in|using|with|set|up|down|now|back)\b)|^\W*(?:will|am) (?:the|my|this|that|it|i|we|they)\b|[,;:.!] (?:so |and |then |but )?(?:is|are|does|will|would|can|could|should|did|am) (?:the|my|this|that|it|i|we|a|an|f|one|all|both)\b|\b(?:against|versus|vs\.?|compared (?:with|to)) f ?/? ?\d"
)
"""A sentence that is left open for the answer, or asks without a question word: "flash meter says f/11 so i set"."""
ORDER = Pattern(
    r"(?:^|[.;:!?,]\s+|\b(?:please|kindly|now|then|just) )(?:state|quote|name|report|determine|estimate|count|deduce|derive|restate|re-?express|rework|recalculate|recompute|re-?reckon|predict|specify|reckon|find|(?:give|supply)(?= (?:the|an?|its) (?:aperture|f-?stop|f-?number|ring|distance|power|shutter|ratio|loss|number|exposure|setting|answer|result|total)))\b"
    r"(?! (?:that|if|whether|up|back|or take|me|us|on|in)\b)[^.?!]*[.?!]*\s*$",
    re.I,
)
"""At the end of a text, an order to say something that was not told."""
_HEADED = Pattern(
    r"(?:^\W*|[.;!?] )(?:(?:and|so|ok|quick|quik|now|then|my|the|total|combined|new|working) )*(?:aperture|f|f-?stop|f-?number|stop|guide number|gn|power|distance|shutter(?: speed)?|pops?|flashes|bursts|factor|loss|stops|film speed|iso|ratio|extension|magnification|near limit|far limit|hyperfocal|sets|frames|rolls|gain|wait)"
    r" (?:(?:pls|plz|please)\b|at (?:twice|half the|double|three times|four times|that|this|the same)\b|(?:to (?!the (?:right|left|side|top)\b|f ?/? ?\d)|for|with|without|needed|wanted|gained|lost) )(?![^,.;?!]{0,60}(?: is| was| are| were| reads| gives| gave| costs|=|:) )")
"""A quantity that stands at the head with what it is wanted for: "pops to get back to bare", "f with the polariser on"."""
_AGREED = Pattern(r"\b(?:ok|okay|alright|all right|got (?:it|that)|right|yes|understood)\W*$")


def asks_something(query: Query) -> bool:
    """Whether the words ask: such a turn is never only noted."""
    said = query.text.lower()
    return bool(query.asks) or _LEFT_OPEN.search(said) is not None or ORDER.search(said) is not None or _HEADED.search(said) is not None or (query.claim or _QUESTION.search(said) is not None) and _AGREED.search(said) is None


_OF_EXPOSURE = frozenset({"aperture", "distance", "guide_number", "power", "shutter", "film_speed", "stops", "focal_length", "velocity", "relation", "loss", "energy", "times", "blur"})
_WHY = Pattern(r"\b(?:why|how come|came|come out|happened|went wrong|what went|black|explain|mean)\b")


def tells_no_figure(query: Query, found: Answer) -> bool:
    """Whether a question with figures of an exposure in it, or a claim with one, is met with words alone: those of a glossary, or of a fault nobody asked of."""
    if found.status != "answered" or found.answers or found.table or _WHY.search(query.text.lower()):
        return False
    figures = sum(f.quantity in _OF_EXPOSURE and f.origin == "said" for f in query.facts)
    return figures >= (1 if query.claim else 2)

"""One flash and the other, put so that both are named alike and both have a guide number.

"One gun is guide 30 metres …, the other guide 20": the one and the other. "One flash has a guide number of 24 and
the other 32": the other's bare figure is one too. "In the first a flash of … ; in the second one of …": one and the other.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_A_FLASH = r"(?:flash(?:gun)?|gun|strobe|speedlight|head|lamp|unit|monolight)"
_ONE_FLASH = Pattern(rf"\bone {_A_FLASH}(?=(?:'s| is| has|,? with| of| at| stands at) (?:(?:a|an|at|guide|gn|number|of|rated|the) ){{0,4}}\d)", re.I)
_THE_OTHER = Pattern(rf"\b(?:the|my|our) other(?: {_A_FLASH}| one)?\b", re.I)
_GUIDE = r"\b(?:guide(?: (?:number|no\.?))?|gn)s?\b"
_OTHER_BARE = Pattern(
    rf"(?P<one>\bone\b[^.;?!]{{0,40}}?{_GUIDE}(?: (?:is|of|number|a|at))* ?\d+(?:\.\d+)?(?P<unit> ?(?:metres|meters|feet|foot|ft|m)\b)?)(?P<to>(?:(?! at \d)[^.;?!\d]){{0,40}}?\bother(?: {_A_FLASH}| one)?(?:'s)?(?: (?:of|has|is|with|one|a|an))*) (?P<figure>\d+(?:\.\d+)?)"
    r"(?=\s*(?:$|[,;?!)]|\.(?!\d)|(?:both|and|in metres|in feet)\b))", re.I)
"""The other's guide number as a bare figure, which no word makes a place or a film."""
_IN_THE_FIRST = Pattern(rf"\bin (?:the )?(?:first|one)(?: (?:set-?up|arrangement|case|scheme|version|plan|one))?,? (?:we (?:have|put|use) )?(?:an?|one|the) {_A_FLASH}(?P<has> (?:of|with|has|at)\b)", re.I)
_IN_THE_SECOND = Pattern(rf"\bin the (?:second|other)(?: (?:set-?up|arrangement|case|scheme|version|plan|one))?,? (?:we (?:have|put|use) )?(?:an?|one|another)(?: {_A_FLASH})?(?P<has> (?:of|with|has|at)\b)", re.I)
_TWIN = Pattern(rf"(?<!two )(?<!three )(?<!of )(?<!identical )(?<!\d )\btwin (?={_A_FLASH}(?:e?s)\b)", re.I)
_COMPARED = Pattern(r"\W*(?:(?:we are|we're|i am|i'm|let us|let's|please|now) ){0,2}(?:compar(?:e|ing)|weigh(?:ing)?|judg(?:e|ing)) (?:two|these|the two|both) (?:set-?ups|arrangements|cases|schemes|plans|versions|flashes|guns)\s*[.:,;]\s*", re.I)
"""What only says that two are compared."""


def alike_named(text: str) -> str:
    """The text with two flashes as the one and the other, each with its guide number.

    >>> alike_named("One gun is guide 30 metres at 3 m, the other guide 20 metres at 2 m.")
    'one is guide 30 metres at 3 m, the other guide 20 metres at 2 m.'
    >>> alike_named("One has guide number 24 m and the other 32, both at 4 m.")
    'One has guide number 24 m and the other guide number 32 m, both at 4 m.'
    """
    said = _TWIN.sub("two ", text)
    first, second = _IN_THE_FIRST.search(said), _IN_THE_SECOND.search(said)
    if first is not None and second is not None and first.end() < second.start():
        said = f"{_COMPARED.sub('', said[: first.start()])}one{first['has']}{said[first.end() : second.start()]}the other{second['has']}{said[second.end() :]}"
    if _THE_OTHER.search(said) is None:
        return said
    said = _ONE_FLASH.sub("one", said, count=1)
    return _OTHER_BARE.sub(lambda found: f"{found['one']}{found['to']} guide number {found['figure']}{found['unit'] or ''}", said, count=1)

"""What is told by the way in words that also name a figure or a thing of the trade, said so that they do not.

"The meter's dead" gives no reading, "half way through the party" is no power, and the canvas of a painting is what is lit, not what hangs behind it.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_DEAD = r"(?:dead|flat|broken|bust(?:ed)?|kaput|useless|no use|at home|in the other bag|on the blink|drowned|smashed|stolen|lost|gone)"
_NO_METER = Pattern(rf"\b(?:(?:the|my|our) )?(?:light |hand |spot )?meter(?:'s battery|'s cell| battery)?(?:'s| is| was| has|,)? ?(?:gone |stone |quite |left )?{_DEAD}\b(?! (?:on|right|accurate|level|straight)\b)", re.I)
_THROUGH = Pattern(r"\b(?:about |around |roughly )?half[- ]?way (?P<where>through|into) (?=(?:the|a|an|my|our|her|his|their)\b)", re.I)
_PAINTED = Pattern(r"\b(?:painting|paintings|painter|varnish\w*|oils|oil portrait|old master|gallery|easel)\b", re.I)
_CANVAS = Pattern(r"\bcanvas\b(?! (?:backdrop|background|backcloth|behind))", re.I)

_NO_BULB = Pattern(r"[,;.( ]+(?:(?:it|that|this|mine)(?:'s| is) |with )?(?:(?:an? )?(?:ordinary |normal |plain |regular |modern )?electronic (?:flash|one|gun),? )?(?:(?:and|so|but) )?(?:it's |it is |i'm )?(?:not|no|without|never) (?:(?:an? |any |using |on )*)(?:flash ?)?bulbs?\b(?! (?:mode|setting|exposure|time))\)?(?: (?:involved|here|used))?(?=\W*(?:$|[,;.?!]))", re.I)
"""Said to keep bulbs out of it."""
_STOPS = r"(?:\d[\d./]*|one|two|three|four|five|six|half a|a)(?: and a (?:half|third|quarter))? stops?"
_IN_ALL = Pattern(rf"^(?P<before>(?:(?!\bstops?\b)[^?])*?\b(?P<many>{_STOPS}))(?: (?:lost|gone|stolen|eaten|taken|robbed|off|down))? (?:in all|in total|altogether|all told|between them|combined|all in)[.!]*\s*$", re.I)
"""The one amount told is the sum: nothing is to be added up."""
_IF_IN_ALL = Pattern(rf"^(?P<before>\W*(?:and |so |but |ok |okay )*(?:what )?if\b(?:(?!\bstops?\b)[^?])*?\b(?:is|are|be|comes to|costs?|loses?|takes?) (?P<many>{_STOPS}))(?: (?:lost|gone))? (?:in all|in total|altogether|all told)(?=\W*$)", re.I)
"""The same in a case that is put: "and if I put the baffle in, so the loss is two stops altogether?"."""
_ASKS = Pattern(r"\b(?:what|how|which|where)\b|\?", re.I)


def without_asides(said: str) -> str:
    """The text with these put so that nothing in them is taken for a figure, a light or a wall.

    >>> without_asides("grid and cloth, four stops stolen in all"), without_asides("1 stop and 2 stops in all")
    ('grid and cloth, four stops lost', '1 stop and 2 stops in all')
    """
    low = said.lower()
    if "bulb" in low and len(denied := _NO_BULB.sub("", said)) < len(said) and "bulb" not in denied.lower():
        said = denied
    if "stop" in low and (told := _IN_ALL.match(said)) is not None and not _ASKS.search(said):
        said = f"{told['before']} lost"
    if " if " in low:
        said = _IF_IN_ALL.sub(r"and if the loss is \g<many>", said)
    if "meter" in low:
        said = _NO_METER.sub("no meter", said)
    if "half" in low and "way" in low:
        said = _THROUGH.sub("during ", said)
    if "canvas" in low and _PAINTED.search(said):
        said = _CANVAS.sub("painting", said)
    return said

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


def without_asides(said: str) -> str:
    """The text with these put so that nothing in them is taken for a figure, a light or a wall."""
    low = said.lower()
    if "meter" in low:
        said = _NO_METER.sub("no meter", said)
    if "half" in low and "way" in low:
        said = _THROUGH.sub("during ", said)
    if "canvas" in low and _PAINTED.search(said):
        said = _CANVAS.sub("painting", said)
    return said

"""Marks that were not said: where the question of a text without any marks begins, and that it is one.

"… frame 56 mm across does the flash cover the width" is told first and asked then, and read as
"… frame 56 mm across. does the flash cover the width?". Only the last question of a text is given its marks;
a text that has one mark of its own is left as it is.
"""

from __future__ import annotations

from assistant.patterns import Pattern

_MARK = Pattern(r"[!;:,]|\.(?!\d)|\s[-\u2013\u2014]+\s")
_BEFORE = 3
"""Words that must stand before a question for it to be a second sentence."""

_THING = r"(?:it|they|he|she|we|i|this|that|these|those|there|everything|everybody|everyone|all|both|one|people|(?:the|my|our|his|her|their|an?|one) [a-z'-]+|f/?\d[\d.]*|light|flash|daylight)"
_SEEN = r"(?:sharp|in focus|inside|within|enough|shorter|longer|brighter|darker|the same|lit|safe)"
_ASKS = Pattern(
    rf"\b(?:(?:does|do|did|will|would|can|could|won't|doesn't) {_THING}"
    r"|(?:is|are) (?:everything|everybody|everyone|all of|people|there|both|(?:that|this|it) (?:right|so|true|correct|enough|ok|okay|sharp|fine))"
    rf"|(?:is|are|was) (?:the|my|our|f/?\d[\d.]*|\d+(?:\.\d+)? ?(?:m|ft|feet|metres|meters)) ?(?:[a-z0-9/.'-]+ ){{0,6}}?{_SEEN}"
    r"|has (?:the|my) (?:flash|head|gun|light) (?:got|enough))\b"
)
"""A verb before its subject."""
_JOINED = Pattern(r"\b(?:if|whether|that|than|as|and|or|but|so|then|when|while)$")
"""Right before a verb: the clause goes on, or is another's."""
_OPEN = Pattern(r"\b(?:what|whats|what's|which(?! (?:is|was|are|were|has|had)\b)|how|where|wheres|where's|whose|why|who|tell|show|(?:give|read) me)\b")
_VERDICT = Pattern(r" (?:right|correct|yes or no|true or false|right or wrong|confirm or (?:deny|refute))$")
_NO_VERDICT = Pattern(r"\b(?:it|that|them|her|him|is|are|was|were|be|been|the|on|my|to|get|got|come|came|comes|all|exposed|put|look|looks|looked|sounds?|turn|from|than|as|of|over|under|below|above|its|his|their|about|spot|just|not|true)$")
_OPENING = Pattern(r"^(?:true or not|true or false|right or wrong|fact or fiction)(?= )")
_ASKS_FROM_THE_START = Pattern(r"\W*(?:(?:so|and|but|or|then|ok|well|now),? )*(?:is|are|am|was|were|does|do|did|will|would|can|could|should|shall|must|may|might|has|have|isn't|aren't|doesn't|don't|won't|can't|wouldn't|what|what's|whats|which|how|where|why|who|whose|when|if|to|for|at|with)\b")
"""A text with a question mark that is one question from its first word."""
_NAMES = (
    r"(?:(?:so |now |then )?(?:aperture|f-?stop|f number|f-?number|stop|shutter|shutter speed|power|pops|ring|lens ring|ratio|key to fill ratio)(?: now| then| needed| required| setting)?"
    r"|(?:so |now )?(?:the )?(?:fill|key|ring|lens|power|aperture|flash) setting|(?:flashes|pops) (?:required|needed)|stops (?:gained|lost)(?: in the glass)?|lens|set"
    r"|(?:the )?(?:ring|lens|camera|aperture) (?:goes|turns|opens|closes|is set|set|sits)(?: up| down)? (?:to|at|on|where))"
)
_LAST = Pattern(rf" {_NAMES}$")
_NO_NAME_AFTER = Pattern(
    r"\b(?:the|a|an|my|this|that|its|it's|his|her|our|same|full|half|quarter|third|eighth|sixteenth|\d*th|one|two|three|four|five|six|seven|eight|each|every|any|which|what|how many|how much|new|right|best|widest|smallest|maximum|max|by|at|in|of|to|with|for|and|or|on|per|no|f|guide|whole|more|less|extra|another|some|enough|sync|leaf|focal|is|are|was|be|set|keep|kept|change|flash|of light|i|we|you|do|it|them|did|have|1/\d+)$")


def marked(text: str) -> str:
    """The text with a stop before its last question and a question mark after it, where it has no marks at all."""
    if text.count(" ") < _BEFORE + 2 or "?" in text[:-1] or _MARK.search(text):
        return text
    said = text.rstrip("? \n")
    lower = said.lower()
    opening = _OPENING.match(lower)
    if opening:
        return f"{said[: opening.end()]}:{said[opening.end() :]}"
    if text.endswith("?") and _ASKS_FROM_THE_START.match(lower):
        return text
    if _OPEN.search(lower):
        place = _asked(lower)
        return text if place is None else f"{said[:place].rstrip()}. {said[place:]}?"
    verdict = _VERDICT.search(lower)
    if verdict and not _NO_VERDICT.search(lower[: verdict.start()]):
        return f"{said[: verdict.start()]},{said[verdict.start() :]}?"
    place = _named(lower)
    place = _yes_no(lower) if place is None else place
    return text if place is None else f"{said[:place].rstrip()}. {said[place:]}?"


_QUESTION = Pattern(r"\b(?:so |and |now |then )?(?:what(?:'s)?|whats|which|how|where) (?:'s |is |are |does |do |will |would |should |must |can |may )?(?:the |my |a |i |it |we )?[a-z]+")
_TAKES_IT = Pattern(r"\b(?:to|at|on|for|of|by|in|with|know|see|say|says|is|was|work out|tell|me|from|than|and|or|about|exactly|just)$")


def _asked(lower: str) -> int | None:
    """Where the one question word of a text begins its clause."""
    places = list(_QUESTION.finditer(lower))
    if len(places) != 1 or len(list(_OPEN.finditer(lower))) != 1:
        return None
    before = lower[: places[0].start()].rstrip()
    return places[0].start() if before.count(" ") >= _BEFORE - 1 and not _TAKES_IT.search(before) else None


def _named(lower: str) -> int | None:
    """Where what is wanted is only named, as the last words: "… takes 1.3 stops lens"."""
    found = _LAST.search(lower)
    return None if found is None or _NO_NAME_AFTER.search(lower[: found.start()]) else found.start() + 1


def _yes_no(lower: str) -> int | None:
    """Where a question for a yes or a no begins, with no question word before or in it."""
    for found in _ASKS.finditer(lower):
        before = lower[: found.start()].rstrip()
        if before.count(" ") >= _BEFORE - 1 and not _JOINED.search(before):
            return found.start()
    return None

"""What somebody wants to know, told by another or as a wish, put as that person would ask it.

"She'd like to know whether f/8 is right": is it true that it is? "He needs a shutter time for the
room": what shutter time?
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_WHO = r"(?:i|we|he|she|they|(?:the|my|our|his|her) (?!meter|light|flash|film|lens|camera|room)[a-z]+(?: [a-z]+)?|somebody|someone|everybody|everyone)"
_TO_KNOW = (
    r"(?:(?:'d| would| will|'ll)? (?:wants?|wanted|likes?|loves?|needs?|needed)(?: (?:me|us|you))? to (?:know|find out|check|be told|hear|be sure|ask|learn|work out|see)(?: (?:from )?(?:me|us|you))?"
    r"|(?:'s| is|'re| are|'m| am| was| were|'ve been|'s been)? ?(?:just )?(?:asks?|asked|asking|wonders?|wondered|wondering|curious|not sure|unsure|keen to know)(?: (?:me|us|you))?)"
)
_WHETHER = Pattern(rf"(?P<before>^\W*|[.!?;:,] )(?:(?:and|so|but|now),? )?{_WHO}{_TO_KNOW} (?:if|whether)(?: or not)? (?P<what>(?:[^.?!;]|\.(?=\d)){{12,}})(?P<after>[.?!;]|$)", re.I)
_ASKS_ELSE = Pattern(r"\b(?:what|which|how|where|when|why)\b", re.I)
_QUANTITY = (
    r"(?:aperture|f-?stop|f-?number|lens setting|shutter (?:speed|time)|exposure time|guide number|power(?: setting)?|distance|film speed|exposure index|lighting ratio|depth of field|hyperfocal distance|magnification|near limit|far limit|exposure factor|bellows factor)"
)
_WISH = Pattern(rf"(?P<before>^\W*|[.!;:,] |\band )(?:{_WHO}(?:'d| would)? )?(?:wants?|likes?|needs?|(?:(?:'s|is|'m|am|'re|are) )?(?:after|looking for)) (?P<which>an?|the|my|our|his|her|their) (?P<what>(?:right |correct |new |best |proper )?{_QUANTITY})(?= for (?!f\b|f/)|[,:;] )(?![^.;!?]*\b(?:or|of|is|=) f?/?\d)", re.I)
_ASKED_LAST = Pattern(
    rf"(?P<before>^\W*|[.;:,!?–-] )(?:(?:so|and|then|now|hence|thus|therefore),? ){{0,2}}(?P<what>(?:the|my|our|its|his|her|their) {_QUANTITY}(?:,? (?:(?:at|for|in|on|to|with|through|from|of) [^?;,.]{{1,24}}|then),?){{0,3}}),? (?:is|would be|will be|should be|must be|comes to|comes out at|works out at|works out as|turns out to be)(?: then)?(?: what)?\s*(?:\?|[.…]{{2,3}})\s*$", re.I)
_NAMED_LAST = Pattern(rf"(?P<before>[.;:!,–-] )(?:(?:so|and|then|now),? ){{0,2}}(?P<what>(?:the )?{_QUANTITY} (?:with|through|behind|in|under|without|off|inside) (?:the|my|it|that|this|all|both|her|his|our)\b[^?.;:\d]{{0,40}}\?)\s*$", re.I)
"""A setting named at the end, and what it is to be with: "…, aperture with the sheet?"."""
_RATIO_FIRST = Pattern(r"^\W*(?:(?:so|and|then|now),? )?(?:the )?(?P<what>(?:key[- ]to[- ]fill|lighting|light) ratio),? (?=(?:if|with|when|where|supposing|given)\b(?![^.;]*\b(?:what|which|how|where|is it|wanted)\b))", re.I)
"""Asked first, before what it is to be worked out from: "key to fill ratio if the key's on half"."""
_THEN = Pattern(r",? then\b,?", re.I)


def in_ones_own_words(text: str) -> str:
    """The text with what is relayed put as a question.

    >>> in_ones_own_words("She wants to know whether f/8 is right for guide number 80 feet at 10 feet.")
    'Is it true that f/8 is right for guide number 80 feet at 10 feet?'
    >>> in_ones_own_words("He needs a shutter time for the hall: EV 6, f/8.")
    'what shutter time for the hall: EV 6, f/8.'
    >>> in_ones_own_words("Guide number 80 feet, f/8. The distance, then, is?")
    'Guide number 80 feet, f/8. what is The distance?'
    """
    if _ASKED_LAST.may_match(text):
        text = _ASKED_LAST.sub(lambda found: f"{found['before'].replace(',', '.')}what is {_THEN.sub('', found['what'])}?", text)
    text = _NAMED_LAST.sub(lambda found: f"{found['before']}what {found['what']}", text)
    text = _RATIO_FIRST.sub(lambda found: f"what is the {found['what']} ", text)
    asked = _WHETHER.search(text) if "?" not in text else None
    if asked is not None and not _ASKS_ELSE.search(asked["what"]):
        text = f"{text[: asked.start()]}{asked['before']}Is it true that {asked['what']}?{text[asked.end() :]}"
    if "?" in text:
        return text
    return _WISH.sub(lambda found: f"{found['before']}what {found['what']}", text, count=1)

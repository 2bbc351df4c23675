"""Who says it is no part of what is said: "an old hand at the camera club says that …, is he right?".

The words about a speaker are left out, so that no "camera" or "film" of a club is taken for one of the
question. What a meter or a dial says is a figure, and a saying that is denied is none; both stay.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern

_PERSON = (
    r"(?:(?:an?|the|my|our|his|her|your|some|this|that|one|another|every) (?!(?:\w+ ){0,3}?(?:meters?|dials?|handmeters?|table|chart|display|sheet|card|leaflet|manual|scale|reading)\b)"
    r"(?:(?!\b(?:not|never|nor|doubts?|denies|denied|and|f|if|what|which way|how|when|where)\b|n't\b)[^\d.?!;:\n]){2,90}?|some(?:body|one)(?: [^\d.?!;:,]{2,60}?)?|every(?:body|one)(?: [^\d.?!;:,]{2,40}?)?|people(?: [^\d.?!;:,]{2,40}?)?|they|he|she)"
)
_SAYS = (
    r"(?:says|said|saying|claims?|claimed|swears?|swore|insists?|insisted|maintains?|maintained|reckons?|reckoned|tells|told|argues?|argued|assures?|assured|thinks?|thought|believes?|believed|states|stated|asserts?|asserted|contends?|contended"
    r"|warns?|warned|informs?|informed|announces?|announced|remarks?|remarked|observes|observed|pronounces?|pronounced|confides|confided|preaches|preached|lectures|lectured|taught|teach(?:es)?|writes|wrote|declares?|declared|mentions|mentioned|explains|explained|(?:is|are|was|were) (?:quite |dead |absolutely )?(?:sure|certain|convinced|adamant|positive))"
)
_TO_WHOM = r"(?: (?:me|us|him|her|them|you|everybody|everyone|anybody|people|the (?:class|group|club|room|others)|all of us|anyone who listens|at (?:the|a|our|my) (?:[a-z]+ ){0,2}[a-z]+)){0,2}(?: (?:once|yesterday|today|last (?:week|night|month)|again|flatly|firmly))?"
_WHERE = (
    r"(?:(?:(?:down |back |over |up )?(?:at|in|from) (?:the |our |my |a |this |last night's |yesterday's )?(?:[a-z]+ ){0,2}?(?:club|society|class|college|school|course|workshop|shop|pub|bar|lab|dark ?room|fair|meeting|group|library|village hall|wedding|party|office|canteen|market)"
    r"|on (?:mon|tues|wednes|thurs|fri|satur|sun)day(?: (?:night|morning|evening|afternoon))?|last (?:night|week|month|year|summer|winter|spring|autumn|\w+day)|yesterday|the other (?:day|night|week)|this (?:morning|week)|today|years ago|once),? ){0,3}"
)
"""Where and when somebody said it."""
_SAYS_THAT = Pattern(rf"(?:^\W*|(?<=[.!?] ))(?:and |but |so |well,? |now )?{_WHERE}{_PERSON},? (?:(?:once|often|still|always|just|also|who|keeps?|kept|used to|will|would|firmly|flatly) ){{0,2}}{_SAYS}{_TO_WHOM},? that (?=\S+ \S)", re.I)
_SAYS_IT = Pattern(
    rf"(?:^\W*|(?<=[.!?] ))(?:and |but |so |well,? |now )?{_WHERE}{_PERSON},? (?:(?:once|often|still|always|just|also|keeps?|kept|used to|will|would|firmly|flatly) ){{0,2}}{_SAYS}{_TO_WHOM},?:? (?!that\b|so\b|it\b|this\b|what\b|how\b|about\b|to\b)"
    r"(?=[^?]{12,}?[.,;:!-] *(?:(?:is|was|are|were) (?:he|she|they|that|this|it) (?:right|true|correct|wrong|so)|true|right|correct|agreed|true or (?:false|not)|yes or no|right or wrong)\b)", re.I)
_ACCORDING = Pattern(r"(?:^\W*|(?<=[.!?] ))according to [^\d.?!;:,]{2,70}, (?=\S+ \S)", re.I)
_AS_ONE_SAYS = Pattern(rf", as {_PERSON},? (?:(?:once|often|always|also) )?{_SAYS}{_TO_WHOM}, ", re.I)
_SAYS_AFTER = Pattern(r"(?:, (?:(?:or )?so )?|(?: or)? so | (?=\w+ (?:an?|the|my|our|one) (?:(?!(?:is|are|was|gets?|loses?|takes?|needs?|comes?|reads?|costs?|gives?|makes?|goes|falls|drops|stays|has|had)\b)[a-z-]+ ?){1,4}[.?!]))(?:says|said|claims?|reckons?|swears?|insists?|maintains?) (?:an?|the|my|our|one|some|someone|somebody)\b (?:(?!\bmeter\b)[^\d.?!;:]){2,70}(?=[.?!]\s*(?:is|was|true|right|correct)\b)", re.I)
_IS_RIGHT_THAT = Pattern(rf"(?P<before>^\W*|(?<=[.!?] ))(?P<is>is|was) {_PERSON} (?:right|correct)(?: (?:to (?:say|claim|think|believe|insist|maintain|hold|tell me)|in (?:saying|claiming|thinking|believing|maintaining)|when (?:he|she) (?:says|claims|insists|maintains)))?,? that (?=\S+ \S)", re.I)


_TENS = r"(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?:-[a-z]+)?"
_AGED = Pattern(rf"(?<!film)(?<!roll)(?<!stock)(?<!box), aged (?:about |only |just )?(?:\d{{1,2}}|six|seven|eight|nine|ten|eleven|twelve|(?:thir|four|fif|six|seven|eigh|nine)teen|{_TENS})(?=, )", re.I)
"""How old somebody is, told by the way: "my niece, aged twelve, says that …"."""


def without_speaker(text: str) -> str:
    """The text without the words of who says what is put up.

    >>> without_speaker("A man at the film club says that two flashes are a stop more. Is he right?")
    'two flashes are a stop more. Is he right?'
    """
    text = _AGED.sub("", text)
    for pattern in (_SAYS_THAT, _SAYS_IT, _ACCORDING, _SAYS_AFTER):
        text = pattern.sub("", text)
    text = _AS_ONE_SAYS.sub(" ", text)
    return _IS_RIGHT_THAT.sub(lambda found: f"{found['before']}Is it true that ", text)

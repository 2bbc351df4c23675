"""Small talk: whole sentences about the people and not about the light, before a question, within it or after it.

A sentence is left out when it says what somebody asked, wondered, feels or is about to do, and no word of it
means anything to the trade. "It's overcast." and "The walls are white." are no small talk.
"""

from __future__ import annotations

import re

from assistant.language.hearing import hear
from assistant.language.lexicon import Lexicon
from assistant.patterns import Pattern

_PEOPLE = r"(?:(?:my|our|the|a|an|some|his|her|this) (?:[a-z-]+ ){1,3}|(?:everybody|everyone|somebody|someone|people|he|she|they|i|we|you) )"
_FEELING = r"(?:cold|tired|hungry|waiting|late|bored|restless|new to (?:this|all this|flash|it)|a beginner|stuck|lost|confused|curious|puzzled|baffled|stumped|no good at (?:this|sums|maths|numbers)|in a (?:hurry|rush)|running late|sorry)"
_SMALL_TALK = Pattern(
    r"\W*(?:"
    rf"{_PEOPLE}(?:just |only |also )?(?:asked|asks|told|wants? to know|wondered|wonders|swears?|needs? to know|keeps? asking) ?(?:me|us)?(?: (?:about )?(?:this|that|it|so))?(?: (?:yesterday|today|last night|last week|the other day|this morning|again|earlier))?"
    rf"|{_PEOPLE}(?:is|are|am|was|were) (?:getting |very |rather |a bit |all |really |so )?{_FEELING}(?: today| tonight| already| now| here)?"
    rf"|(?:i|we)(?:'ve| have|'m| am| was|'re| are| were) (?:been |just been |just )?(?:wondering|thinking|thinking about this|{_FEELING})(?: about (?:this|that|it))?(?: (?:for (?:a while|ages|days)|lately|all day|today))?"
    r"|(?:i|we|they|he|she)(?:'ve| have|'d| had)? (?:did|done|do|went|been|visited|tried|saw|seen|climbed|drove|walked|sailed|camped|stayed|ate|talked|argued|rehearsed|came|met)(?: [a-z-]+){1,5}"
    r"|(?:the|my|our|his|her) (?:boat|bus|train|taxi|plane|client|bride|crew|couple|model|baby|family|tide|band|tea|show|ferry|guests|kids|children|others) (?:leaves?|goes|go|starts?|arrives?|comes?|(?:is|are) (?:waiting|here|coming|leaving|going|ready|cold|hungry|tired))(?: (?:soon|now|in a minute|shortly|any minute|at noon|tomorrow|tonight|already))?"
    r"|(?:sorry|apologies)(?: (?:to bother you|if (?:this|that) is (?:a )?(?:silly|daft|stupid|basic|obvious)(?: question)?))?"
    r"|bear with me|long story(?: short)?|i (?:hope|trust) you can help(?: me)?|i need (?:some|a bit of|your) help(?: here| with this)?|(?:this|it) has been bugging (?:me|us)(?: all (?:day|week))?"
    r"|i (?:never|don't|can't) (?:know|get|understand|see|remember)(?: (?:this|that|it|these|these things|with these things|how (?:this|that|it) works))?"
    r")\W*",
    re.I,
)
_TOO_DEEP = Pattern(r"^\W*(?:(?:hm+|ok|no|well|but|still|now),? )*(?:that(?:'s| is)|it(?:'s| is)|i(?:'ve| have)? (?:got|get))? ?(?:far |way |still |a bit |much )?too (?:much|little|deep|shallow)(?: (?:depth(?: of field)?|dof|of it|in focus|sharp))?[.,;!:-]{1,3} (?=(?:and |so |then |now )?(?:what|how)(?: about| if)? (?:at|on|with|for)\b)", re.I)
"""Why something else is tried: "too much depth. what at quarter power?"."""
_SENTENCE = Pattern(r".+?[.?!]+[\"'”’)]*(?:\s+|$)|.+$", re.S)
_SO_OFTEN = Pattern(r" (?:once|twice|three times|again)(?=(?: (?:already|now|before|this (?:year|week|month)|last (?:year|week|month)))?[.!]*$)", re.I)
"""How often somebody was somewhere."""
_MEANS_NOTHING = frozenset({"WORD", "GLUE", "LINK", "END", "COMMA", "DASH", "NOT", "A", "AND", "IN", "AT", "FOR", "TO", "OF"})
_OF_PEOPLE = frozenset({"subject", "my_kit", "keep", "rows"})
"""Cues that such a sentence may hold: the crew, what one has, what leaves."""


def without_small_talk(text: str, lexicon: Lexicon) -> str:
    """The text without the sentences that are small talk; all of it where nothing else would be left."""
    if _TOO_DEEP.may_match(text):
        text = _TOO_DEEP.sub("", text)
    if not _SMALL_TALK.may_match(text):
        return text
    parts = [found[0] for found in _SENTENCE.finditer(text)]
    if len(parts) < 2 or "".join(parts) != text:
        return text
    kept = [part for part in parts if not _is_small_talk(part, lexicon)]
    return "".join(kept).rstrip() if kept and len(kept) < len(parts) else text


def _is_small_talk(sentence: str, lexicon: Lexicon) -> bool:
    said = _SO_OFTEN.sub("", sentence.replace("’", "'").strip())
    return "?" not in said and len(said) <= 90 and _SMALL_TALK.fullmatch(said) is not None and all(
        token.type in _MEANS_NOTHING or token.type == "CUE" and token.value in _OF_PEOPLE for token in hear(said, lexicon).tokens
    )

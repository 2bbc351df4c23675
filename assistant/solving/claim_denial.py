"""Whether a claim denies what it names: a "not" inside it, but not the one of a tag or of an opening "isn't".

"isn't X more than Y" and "X is more than Y, isn't it?" put up that it is; "X is not more than Y, right?" that it is not.
"""

from __future__ import annotations

from assistant.patterns import Pattern

_NEGATION = Pattern(r"\b(?:not|no|never|nothing|cannot|without|neither|hardly|scarcely)\b|\b(?:doesnt|dont|isnt|wont|cant|irrelevant)\b|n't\b|\b(?:independent|regardless) of\b|\bunaffected by\b|\bfree (?:of|from)\b|\bignores?\b|\btoo (?:short|brief|quick|fast|weak|small|far) (?:for|to)\b|\b(?:a|just a|an old) (?:myth|fallacy|tale)\b|\bwrong (?:to (?:say|think|believe)|that)\b|\b(?:untrue|false) that\b")
_HELPS = r"(?:is|are|do|does|did|will|would|can|could|should|has|have|was|am|ai|dose|dos|dosen)"
_TAG = Pattern(
    rf",? ?\b(?:{_HELPS}n'?t|{_HELPS}|won't|wont|can't|innit|isint|dosen't)(?: (?:it|they|that|he|she|i|you|we|this|one|there|so))?(?: not)?(?: (?:so|right|true|correct|the case))?\s*[?.!]*\s*$"
    rf"|,? ?\b(?:right or not|or not|yes or no|true or false|right or wrong|no|or am i wrong|not so)\s*[?.!]*\s*$"
    rf"|^\W*(?:(?:but|and|so|hang on|wait|well|surely|um|er|hey|hi|ok)[, ]+)*(?:{_HELPS}n'?t|won't|can't|shouldn't)\b"
)
_OPENS = Pattern(r"\bno (?:matter|doubt|question|problem|sweat)\b|\bnot only\b|\bno \w+ (?:lens|camera|room)\b")
"""A "no" that denies nothing."""


def untagged(said: str) -> str:
    """The claim without its tag and without an opening "isn't".

    >>> untagged("slide is fussier, isn't it?"), untagged("isn't slide fussier than print?")
    ('slide is fussier', ' slide fussier than print?')
    """
    return _TAG.sub("", said)


def denied(said: str) -> bool:
    """Whether what is named is denied: an odd number of negations, tags left out.

    >>> denied("slide is not fussier, is it?"), denied("isn't slide fussier?"), denied("is it a myth that slide is fussier?")
    (True, False, True)
    """
    return len(_NEGATION.findall(_OPENS.sub(" ", untagged(said)))) % 2 == 1

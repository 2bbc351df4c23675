"""Whether a claim denies what it names: a "not" inside it, but not the one of a tag or of an opening "isn't".

"isn't X more than Y" and "X is more than Y, isn't it?" put up that it is; "X is not more than Y, right?" that it is not.
A claim that is called wrong ("is it a myth that", "am I wrong to think", "is f/8 wrong") is denied too.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from assistant.patterns import Pattern

_NEGATION = Pattern(r"\b(?:not|no|never|nothing|cannot|without|neither|hardly|scarcely)\b|\b(?:doesnt|dont|isnt|wont|cant|irrelevant)\b|n't\b|\b(?:independent|regardless) of\b|\bunaffected by\b|\bfree (?:of|from)\b|\bignores?\b|\btoo (?:short|brief|quick|fast|weak|small|far) (?:for|to)\b|\b(?:a|just a|an old) (?:myth|fallacy|tale)\b|\bwrong (?:to (?:say|think|believe)|that)\b|\b(?:untrue|false) that\b")
_HELPS = r"(?:is|are|do|does|did|will|would|can|could|should|has|have|was|am|ai|dose|dos|dosen)"
_TAG = Pattern(
    rf",? ?\b(?:{_HELPS}n'?t|{_HELPS}|won't|wont|can't|innit|isint|dosen't)(?: (?:it|they|that|he|she|i|you|we|this|one|there|so))?(?: not)?(?: (?:so|right|true|correct|the case))?\s*[?.!]*\s*$"
    rf"|,? ?\b(?:right or not|or not|yes or no|true or false|right or wrong|no|or am i wrong|not so)\s*[?.!]*\s*$"
    rf"|^\W*(?:(?:but|and|so|hang on|wait|well|surely|um|er|hey|hi|ok)[, ]+)*(?:{_HELPS}n'?t|won't|can't|shouldn't)\b"
    rf"|^\W*{_HELPS} (?:it|that|this) not (?:true|so|the case|right|correct)\b"
)
_LONGEST_TAG = 60
"""Letters of the longest tag, and more than enough."""
_OPENS = Pattern(r"\b(?:enough|so as|in order) not to\b|\bno (?:matter|doubt|question|problem|sweat)\b|\bnot only\b|\bno \w+ (?:lens|camera|room)\b")
"""A "no" that denies nothing."""


_OWN_QUESTION = Pattern(rf"(?:^|[.;:!?]\s+)(?:(?:and|so|but|then|now|well)[, ]+)*(?P<own>(?:{_HELPS}|may|might|must)\b(?! (?:that|this|it) (?:so|right|true|correct|the case|hold|wrong)\b| i (?:right|wrong|correct|mistaken|thinking)\b| (?:he|she|they|we) (?:right|wrong|correct)\b| i (?:got|understood|counted|reckoned|worked|done|figured)\b)(?:[^.?!]|\.(?=\d))+\?)\s*$")
"""A last sentence that asks by itself, and does not ask back at what was said before it."""


def put_up(said: str) -> int:
    """Where what is put up begins: a "not" before it is of the case that is told.

    >>> put_up("the lens won't close past f/22. can i shoot that?"), put_up("the lens doesn't close past f/22. is that right?")
    (32, 0)
    """
    found = _OWN_QUESTION.search(said)
    return found.start("own") if found is not None and found["own"].count(" ") > 2 else 0


@lru_cache(maxsize=8)  # one judge after another asks it of one claim
def untagged(said: str) -> str:
    """The claim without its tag and without an opening "isn't".

    >>> untagged("slide is fussier, isn't it?"), untagged("isn't slide fussier than print?")
    ('slide is fussier', ' slide fussier than print?')
    """
    opening = _TAG.match(said)
    begin = opening.end() if opening is not None else 0
    body = len(said.rstrip().rstrip("?.!").rstrip())
    tag = _TAG.search(said, max(begin, body - _LONGEST_TAG))  # a tag stands at the end
    return said[begin : tag.start()] + said[tag.end() :] if tag is not None else said[begin:]


def denied(said: str) -> bool:
    """Whether what is named is denied: an odd number of negations, tags left out.

    >>> denied("slide is not fussier, is it?"), denied("isn't slide fussier?"), denied("is it a myth that slide is fussier?")
    (True, False, True)
    """
    return len(_NEGATION.findall(_OPENS.sub(" ", untagged(said[put_up(said) :])))) % 2 == 1


_VERBS = r"(?:is|are|was|were|do|does|did|will|would|can|could|should|must|need|has|have)"
_CALLED_WRONG = Pattern(
    r"\b(?:a|just a|an old) (?:myth|fallacy|tale)\b|\b(?:untrue|false|nonsense|rubbish) (?:that|to say)\b|\b(?:am i|are we|is he|is she|are they|would i be|is it|that's|it's|it is|was i) (?:wrong|mistaken)\b"
    r"|(?:^\W*|[.;:,]\s+)(?:is|are|was|would|were)\b(?:[^,.;:?!]|\.\d){1,24}? (?:be )?(?:wrong|incorrect|mistaken)\b"
)
"""The claim as a whole said to be wrong."""
_NOT_TRUE = Pattern(r"\b(?:is not|isn't|are not|aren't) (?:true|so|correct|right)\s*[.?!]*\s*$")
_NOT_SO = Pattern(rf"\b(?:{_VERBS}|wo|ca) ?n(?:'t|ot)\b(?! (?:only|just|sure|certain|counting|including|know|remember|mind|matter|understand|think|believe|i|we|you|it|that|this|they|he|she)\b)|(?:\b(?:{_VERBS} not|never)|'(?:s|re) not)\b(?! (?:only|just|sure|certain|counting|including|know|remember|mind|matter|understand|think|believe)\b)|\bnot(?= (?:more|less|fewer|over|under|enough)\b)|(?P<bare>(?:(?<=[,;:] )|(?<=\d )|^(?:so |and |then )?)not (?=f ?/? ?\d|iso \d|1/\d|\d|half\b|(?:an? )?quarter\b|full\b))")
"""A verb denied, or a figure by itself (", not f/5 then?"); what is turned round into a question ("can't I", "is it not") is not."""
_ASIDE = Pattern(r"\b(?:if|when|unless|because|since|as|although|though|while|who|which|what|where|why|how|provided)\b(?: [\w'-]+){0,3}\s*$")
"""What leads a clause that is not the claim."""
_CLAUSE_END = Pattern(r"[;:?!]|[.,](?!\d)|\bbut\b|\bthough\b")
_INSTEAD = Pattern(r"\b(?:but|instead|rather|it's|it is)\b")


def denials(said: str) -> list[tuple[int, int]]:
    """Where the clauses run that a "not" denies, from the "not" to their ends; of the same text, tags left out."""
    if not _NOT_SO.may_match(said):
        return []
    bare = _TAG.sub(lambda m: " " * len(m.group()), said)
    found = []
    for no in _NOT_SO.finditer(bare, put_up(said)):
        ends = _CLAUSE_END.search(bare, no.end())
        before = [m.end() for m in _CLAUSE_END.finditer(bare, 0, no.start())]
        led_by = bare[before[-1] if before else 0 : no.start()]
        if _ASIDE.search(led_by) is None and (led_by.strip() or not before or no["bare"]):  # ", wouldn't f/8 be right": a question turned round
            found.append((no.start(), ends.start() if ends else len(bare)))
    return found


_ASKED_OUTRIGHT = Pattern(r"[.;!?,]\s+(?:so |but |and )?(?P<own>(?:is|are|was|were|does|do)\b(?! (?:he|she|they|i|we|you|my|our|his|her) )(?:[^.?!]|\.(?=\d))*?\b(?:right|true|correct|so|hold|holds|wrong|mistaken)(?: (?:or not|then|after all))?\s*\?*)\s*$")
"""What was put up is asked after itself, whatever was thought of it before: "…, I say it's wrong. Is one stop right?"."""


def _asked(said: str) -> str:
    """The part in which a claim is called wrong, if it is: its own last question where it has one."""
    outright = _ASKED_OUTRIGHT.search(said)
    return outright["own"] if outright is not None else said


def called_wrong(said: str) -> bool:
    """Whether the claim as a whole is called wrong.

    >>> called_wrong("is it a myth that slide is fussier?"), called_wrong("am i wrong to set f/8?"), called_wrong("f/8, right or wrong?")
    (True, True, False)
    >>> called_wrong("slide is fussier. i say that's wrong. is it true?"), called_wrong("slide is fussier. i say that's wrong. am i right?")
    (False, True)
    """
    bare = _TAG.sub(" ", _asked(said))
    return _CALLED_WRONG.search(bare) is not None or _NOT_TRUE.search(bare) is not None


_JUDGED = Pattern(r"\b(?:right|correct|true|enough|reach|sharp|cover|ok|okay)\b|\b(?:over|under)-?expos")


def turned(said: str, figures: Sequence[tuple[int, int]]) -> bool:
    """Whether a claim of a figure is put the other way round: called wrong, or the figure (or "right", "enough") denied.

    >>> turned("gn 80 at 10 ft isn't f/8, is it?", [(19, 22)]), turned("isn't gn 80 at 10 ft f/8?", [(21, 24)])
    (True, False)
    """
    clauses = [(a, b) for a, b in denials(said) if _INSTEAD.search(said, b) is None and (any(a <= start < b for start, _ in figures) or _JUDGED.search(said[a:b]))]
    return (len(clauses) % 2 == 1) is not (_CALLED_WRONG.search(_TAG.sub(" ", _asked(said))) is not None)

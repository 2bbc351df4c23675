"""Finding the right explanation: a term by its longest name, a why by the words it needs."""

from __future__ import annotations

from functools import lru_cache

from assistant import patterns
from assistant.patterns import Pattern, Rows
from assistant.teaching.glossary_entry import Term, Why
from assistant.teaching.glossary_methods import METHODS
from assistant.teaching.glossary_pairs import PAIRS
from assistant.teaching.glossary_terms import TERMS
from assistant.teaching.glossary_why import WHYS as REASONS

__all__ = ["PAIRS", "TERMS", "WHYS", "Term", "Why", "explain", "lookup", "named"]

WHYS: tuple[Why, ...] = (*REASONS, *METHODS)

_SPELLING = {"color": "colour", "colors": "colour", "gray": "grey", "center": "centre", "modeling": "modelling", "polarizer": "polariser",
             "polarizing": "polarising", "synch": "sync", "aperature": "aperture", "apeture": "aperture", "appature": "aperture", "umbrela": "umbrella",
             "thru": "through", "percent": "%", "per": "per", "sixteen": "16", "bouncing": "bounce", "bounced": "bounce"}
_WORD = Pattern(r"[a-z0-9½%]+(?:\.\d+)?|\.\d+")

_ADVERB = r"(?:even|actually|exactly|really|on earth|the heck|the hell|in the world)"
_DEFINE = Pattern(
    rf"\b(?:what(?:'s| is| are|s| was| does| do you mean by)?(?: {_ADVERB})? (?:is|are|a|an|the|does|do|did)\b|what(?:'s| is| are|s| was| does| do you mean by| on earth is| exactly is| the (?:heck|hell) is)|define|definition|meaning of|mean(?:s|t)?|explain|describe"
    r"|tell me (?:about|what|more about)|teach me|remind me what|never heard of|what do (?:they|you|people) (?:call|mean)|understand|understood|how (?:do|does|would|should|can|could) (?:i|you|one|we)\b|how (?:do|does) .{0,40}\bwork|eli5"
    r"|how much is (?:a|one)\b|stands? for|(?:don't|do not|dont|never|didn't) (?:really |quite )?(?:get|got|know)\b|no (?:idea|clue)|why|when|confused (?:about|by)|keeps? (?:on )?(?:saying|hearing|reading|seeing|telling|talking|mentioning|going on)|(?:good|used) for|(?:why|when) (?:would|should|do|does|is|are|must|might) (?:i|you|we|one|people|it|they|anyone)\b|who knows what|new to me|in (?:plain|simple|easy) (?:words|english|terms|language))\b"
)
_COMPARE = Pattern(r"\b(?:differ\w*|vs|versus|or|same (?:as|thing)|compared?|distinction|confus\w*|mix(?:ed)? up|each (?:do|control)|which (?:one|is|do))\b|\bboth\b")
_REASON = Pattern(
    r"\b(?:why|how come|how long (?:is|does|are|do)|how (?:can|could|do|does|would|should|is|come)|what happens|when (?:should|do|would|to|is)|explain|reason|understand|relation\w*|connection)\b|\bwhat's the (?:best |easiest |simplest |quickest )?(?:way|point|reason|effect)\b|\bwhat (?:does|do|will|would) .{2,60}\bdo (?:to|for|on|with)\b|\bwhat (?:does|do) .{2,40}\bdo\W*$|\bwhat (?:freezes|stops|makes|causes|decides|controls|sets|governs)\b|\bwhere does\b.{0,30}\bcome from\b|\bhow to\b|\bwhat effect\b|\bthe effect of\b"
    # a yes-or-no question only where it asks whether something bears on the exposure
    r"|\b(?:does|do|will|would|is|are)\b.{0,60}\b(?:matters?|affect\w*|make (?:a|any) difference|change (?:anything|.{0,20}exposure|the flash)|need to (?:change|allow|open))\b"
)
_WORTH_IN = Pattern(r"\bwhat (?:is|are|was|would) (?:that|this|it)\b[^.?!]{0,24}\b(?:in|as) (?:stops|a factor|a power|a share|an? (?:aperture|exposure)|feet|metres|seconds|percent|density|f-?stops?)\b")
"""What was just answered, in another measure: no word is asked for."""
_WHY_ONLY = Pattern(r"\b(?:why|how come|explain|reason|what's the point)\b")
_MEANING = Pattern(r"^what(?:s|'s)? (?:does |do |is )?.{1,40} mean\b")
_HOW_TO = Pattern(r"^\W*how (?:do|does|can|could|would|should) (?:i|you|one|we) (?:find|work|measure|test|tell|know|discover|figure)\b|\bhow long (?:is|does|are|do) (?:a |the |an )?(?:\w+ )?flash(?:es)?(?: last)?\W*$")
_STOPS_WANTED = Pattern(r"\b(?:one|two|three|four|half a|\d+(?:\.\d+)?) stops? (?:under|over|darker|brighter|less|more|down|up|below|above|hotter)\b|\btrue or false\b|\bis that (?:right|so|true)\b")
_QUANTITY = (
    r"(?:aperture|f-?stop|f-?number|stop|setting|power|shutter(?: speed)?|iso|ratio|guide number|gn|distance|exposure|ev|energy|depth of field|duration|magnification)"
)
_SET_NUMBER = Pattern(
    # "what aperture", "what is the aperture", but not "what is aperture" nor "what's a stop"
    rf"\b(?:what|which)(?:(?:'s|s| is| are) (?:the|my|our|her|his|its))?(?: (?!is\b|are\b|means?\b|a\b|an\b|does\b|do\b|the\b|effect)\w+)?? {_QUANTITY}\b(?! (?:means?|affects?|do to|does to))"
    r"|\bwhat (?:do|should|would|must|shall) i (?:set|use|shoot|be)\b|\bhow (?:far|close|many|much|high|long)\b(?! .{0,30}\b(?:why|explain)\b)(?! is (?:a|one) (?:f-?)?stop\b(?! (?:at|of|from|in)\b))"
)
_SWITCH = Pattern(r"\bwhat(?:'s|s| is| are)? (?:the |a )?(?:bulb|b|t|m|x|fp|hss) (?:setting|sync|contact|mode|mark)s?\b")
_MEASURE = Pattern(r"\d+(?:\.\d+)? ?(?:m|ft|feet|foot|metres?|meters?|cm|inch\w*|')\b|\b(?:gn|guide number) ?\d|\bf ?/ ?\d|\biso ?\d|\b1/\d+")
_GLUE = frozenset(
    ["what", "whats", "is", "are", "was", "a", "an", "the", "of", "in", "on", "for", "to", "do", "does", "did", "you", "your", "i", "me", "my", "we", "us", "it", "its", "that", "this", "these", "those", "mean", "means", "meant", "meaning", "by", "explain", "describe", "tell", "about", "please", "can", "could", "would", "define", "definition", "term", "word", "thing", "like", "m", "im", "new", "all", "five", "year", "old", "simply", "plain", "english", "quick", "question", "and", "so", "ok", "hi", "hello", "exactly", "anyway", "photography", "photographer", "with", "flash", "light", "lighting", "camera", "film", "when", "people", "they", "say", "talk", "talking", "how", "work", "works", "work", "teach", "understand", "never", "heard", "just", "s", "re", "again", "simple", "words", "beginner", "someone", "newbie", "dumb", "sorry", "basics", "use", "used", "using", "know", "want", "need", "called", "here", "whole", "idea", "behind", "concept", "rule", "law", "really", "actually", "even", "from", "anybody", "any", "there", "be", "get", "dont", "don", "cant", "eli5", "5", "pl", "pls", "plz", "remind", "earth", "heck", "hell", "short", "bit", "let", "have", "has", "in", "terms", "lens", "um", "er", "uh", "keep", "saying", "hearing", "hear", "everybody", "everyone", "teacher", "book", "stand", "get", "much", "point", "good", "purpose", "deal", "sure", "not", "me", "someone", "club", "mention", "mentions", "always", "ve", "held", "confused", "ever", "bother", "matter", "why", "should", "shall", "one", "thing", "stuff", "bout", "more", "then", "oh", "well", "my", "our", "tutor", "friend", "instructor", "wondering", "if", "home", "reading", "read", "clue", "no", "idea", "had", "all", "got", "was", "learn", "learning"]
)


def _plain(text: str) -> str:
    said = " ".join(text.replace("\u2019", "'").lower().split())
    said = patterns.sub(r"\bdif+e?r?[ae]?n[cs]e?s?e?\b", "difference", said)
    said = patterns.sub(r"\b(?:the |letter )*b\b(?= (?:on|mark|mean|stand|setting|mode|do|for)\w*\b|\W*$)", "bulb", said) if patterns.search(r"\b(?:dial|shutter|setting|mean\w*|mode|camera)\b", said) else said
    said = patterns.sub(r"\b(?:the |letter )*t\b(?= (?:on|mark|mean|stand|mode|do)\w*\b)", "t setting", said) if patterns.search(r"\b(?:dial|shutter)\b", said) else said
    return patterns.sub(r"\b(ca|do|wo|does|is|are|did|should|would|could|was|have|has)nt\b", r"\1n't", said)


def _singular(word: str) -> str:
    return word[:-1] if len(word) > 2 and word.endswith("s") and not word.endswith(("ss", "us", "is")) else word


def _words(text: str) -> tuple[str, ...]:
    """Canonical words: lower case, one spelling, singular, hyphens and slashes dropped."""
    flat = _plain(text).replace("'s", "").replace("'", "").replace("-", " ").replace("/", " ").replace("t.", "t 0.")
    found = (_SPELLING.get(word, word) for word in _WORD.findall(flat.replace("t0.", "t 0.")))
    return tuple(_singular(_SPELLING.get(_singular(word), word)) for word in found)


@lru_cache(maxsize=1)
def _index() -> dict[tuple[str, ...], Term]:
    index: dict[tuple[str, ...], Term] = {}
    for term in TERMS:
        for name in term.names:
            index.setdefault(_words(name), term)
    return index


@lru_cache(maxsize=1)
def _longest_name() -> int:
    return max(len(name) for name in _index())


def _longest(words: tuple[str, ...]) -> tuple[Term, int, int] | None:
    """The term with the longest name in the words, with where it starts and its length."""
    for size in range(min(_longest_name(), len(words)), 0, -1):
        for start in range(len(words) - size + 1):
            term = _index().get(words[start : start + size])
            if term is not None:
                return term, start, size
    return None


def lookup(text: str) -> Term | None:
    """The term named in the text; the longest name wins, then the first. None when no name is there.

    >>> lookup("guide numbers").names[0]
    'guide number'
    >>> lookup("a boat") is None
    True
    """
    found = _longest(_words(text))
    return found[0] if found else None


def named(name: str) -> Term:
    """The explanation or term of that exact name, for a caller that knows which rule applies. Raises KeyError.

    >>> named("half power").text[:16]
    'The guide number'
    """
    for term in (*(one.term for one in WHYS + PAIRS), *TERMS):
        if name in term.names:
            return term
    raise KeyError(name)


_STOPPING = Pattern(r"\b(?:i|you|we|to|it|can|not|please) stop\b(?! (?:is|mean\w*|down))|\bstop (?:it|him|her|them|the|my|this|that)\b")
"""To stop something is no stop of light."""
_CLAUSE = Pattern(r"[.;:,!?]\s*|\s[-–]\s|\b(?:because|since|as i|as we|but|and i|and we|so i|i keep|people keep|they keep|i just|i've just|for when)\b")
_POINTS_BACK = Pattern(r"\b(?:what(?:'s| is|s)?|explain|mean\w*|define|tell me)(?: (?:even|actually|exactly|really))? ?(?:is |does |do |was )?(?:that|it|this|those|they|he|she)\b|\bwhat(?:'s| is|s| does) (?:that|it|this)\b")


def _defined(said: str) -> Term | None:
    """The term a definition question asks for, in the clause that asks; else the one that it points back to."""
    whole = _named_alone(said) if _DEFINE.search(said) else None
    if whole is not None or patterns.search(r"\d", said):
        return whole
    clauses = [c.strip() for c in _CLAUSE.split(said) if c and c.strip()]
    asking = [c for c in clauses if _DEFINE.search(c)]
    found = next((t for t in map(_named_alone, asking) if t is not None), None)
    if found is None and any(_POINTS_BACK.search(c) and _longest(_words(c)) is None for c in asking):
        return lookup(" ".join(c for c in clauses if c not in asking) or "")
    return found


def _named_alone(said: str) -> Term | None:
    """The term named where little else is said."""
    if _STOPPING.search(said):
        return None
    words = _words(patterns.sub(r"\b(nd|ev|gn|iso)(\d)", r"\1 \2", said))
    # Only glue words around the name: otherwise the question is about something else.
    core = tuple(word for word in words if word not in _GLUE_SINGULAR)
    found = _longest(words)
    if found is None:
        return None
    term, start, size = found
    named = frozenset(words[start : start + size])
    own = frozenset(word for name in term.names for word in _words(name))
    left = [word for word in core if word not in named and word not in own and not (patterns.fullmatch(r"[\d.]+", word) and _MEANING.match(said))]
    return term if len(left) <= (1 if size > 1 else 0) else None


_GLUE_SINGULAR = frozenset(_singular(word) for word in _GLUE)


_REASONS = (*PAIRS, *WHYS)
_HEARS = Rows(tuple(map(Pattern, one.hears)) for one in _REASONS)


def _reasoned(said: str) -> Term | None:
    """The explanation with the most needed words, all of them present; comparisons first."""
    compare, reason = _COMPARE.search(said) is not None, _REASON.search(said) is not None
    blunt = _WHY_ONLY.search(said) is not None
    if not (compare or blunt or reason):
        return None
    fits = []
    for place in _HEARS.found_in(said):
        pair = place < len(PAIRS)
        if (compare or blunt) if pair else reason:
            fits.append((pair and "differ" in said, len(_HEARS[place]), -place))
    return _REASONS[-max(fits)[2]].term if fits else None


def _asks_number(said: str) -> bool:
    """Whether an exposure number is wanted, so that teaching would be the wrong answer."""
    if _WHY_ONLY.search(said) or _MEANING.search(said) or _SWITCH.search(said) or (_HOW_TO.search(said) and not patterns.search(r"\d", said)):
        return False
    return any(pattern.search(said) for pattern in (_SET_NUMBER, _MEASURE, _STOPS_WANTED, _WORTH_IN))


_SIZE_OF_STOP = Pattern(r"\b(?:how (?:big|large|much)\b[^?.\d]{0,24}\b(?:is|does|are)|what(?:'s|s| is| does)) (?:a|one|1) (?:full |whole |single )?stop\b(?: (?:worth|equal to|make|actually|really|exactly|in practice|of light|mean|amount to|then|anyway|please))*\W*$")
"""How big a stop is, and not where or of what it is."""


def explain(text: str) -> Term | None:
    """The best explanation for a what, why, how or which-is-which question; None when nothing fits well.

    >>> explain("what's a stop?").names[0]
    'stop'
    >>> explain("Why do I lose light with a softbox?").names[0]
    'softbox loss'
    >>> explain("guide number 110, 10 feet, what aperture?") is None
    True
    """
    said = _plain(text)
    if _SIZE_OF_STOP.search(said):
        return named("stop")
    if _asks_number(said):
        return None
    wants_reason = patterns.search(r"\b(?:why|how(?! much)|point|freezes|come from|do on|do to|do for|when|relation\w*|happens|differ\w*|vs|versus|matter|affect|effect)\b", said)
    if wants_reason:
        return _reasoned(said) or _defined(said)
    return _defined(said) or _reasoned(said) or _misspelt(said)


def _misspelt(said: str) -> Term | None:
    """The term a short definition question asks for with one word mistyped ("what is recipocity failure")."""
    if not _DEFINE.search(said) or patterns.search(r"\d", said) or len(said.split()) > 8:
        return None
    from difflib import get_close_matches

    known = sorted({word for name in _index() for word in name if len(word) > 4})
    words = [word if len(word) < 5 or word in _GLUE_SINGULAR or word in known else next(iter(get_close_matches(word, known, 1, 0.84)), word) for word in _words(said)]
    return _named_alone(" ".join(words)) if tuple(words) != _words(said) else None

"""Whether a text may speak of a hazard at all: most do not, and need not wait for the safety tables."""

from __future__ import annotations

from assistant.safety.stems import RULES

MOST_KEPT = 8000
"""Words whose rules are kept: people say the same words again."""


def _by_stem(*, several: bool) -> dict[str, tuple[int, ...]]:
    """The letters of each rule's first set, those of several words or those of one, and whose they are."""
    found: dict[str, tuple[int, ...]] = {}
    for number, rule in enumerate(RULES):
        for stem in rule[0]:
            if (" " in stem) is several:
                found[stem] = (*found.get(stem, ()), number)
    return found


_IN_ONE_WORD = _by_stem(several=False)
_IN_SEVERAL = _by_stem(several=True)
_idle_words: set[str] = set()
"""Words that no rule is heard by: most."""
_of_word: dict[str, tuple[frozenset[int], tuple[str, ...]]] = {}


def may_concern_safety(text: str) -> bool:
    """Whether the safety tables could hear anything in this text; True when in doubt.

    >>> may_concern_safety("guide number 110 feet, 7 feet, ISO 200"), may_concern_safety("it's raining")
    (False, True)
    """
    if not text.isascii():
        return True
    words = text.lower().split()
    telling = set(words) - _idle_words
    if not telling:
        return False
    rules: set[int] = set()
    said = " ".join(words)
    for word in telling:
        whole, begun = _of_word.get(word) or _learnt(word)
        rules |= whole
        for stem in begun:
            if stem in said:
                rules.update(_IN_SEVERAL[stem])
    for rule in rules:
        if _holds(RULES[rule], said):
            return True
    return False


def _holds(rule: tuple[tuple[str, ...], ...], said: str) -> bool:
    """Whether of each set of a rule but the first, by which it was found, some letters stand in the text."""
    for group in rule[1:]:
        for stem in group:
            if stem in said:
                break
        else:
            return False
    return True


def _learnt(word: str) -> tuple[frozenset[int], tuple[str, ...]]:
    """The rules that this word may be heard by, and the letters of several words that may begin with it."""
    if len(_of_word) >= MOST_KEPT:
        _of_word.clear()
        _idle_words.clear()
    whole = frozenset(rule for stem, rules in _IN_ONE_WORD.items() if stem in word for rule in rules)
    found = _of_word[word] = whole, tuple(stem for stem in _IN_SEVERAL if _may_begin(word, *stem.split(" ")[:2]))
    if found == (frozenset(), ()):
        _idle_words.add(word)
    return found


def _may_begin(word: str, first: str, second: str) -> bool:
    """Whether such letters, "different kinds" or " the head", may begin in or before this word."""
    return word.endswith(first) if first else word.startswith(second)

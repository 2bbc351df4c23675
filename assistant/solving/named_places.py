"""Stops between two of several places that are called by their names, by how far the light is from each.

"flute 2.1 m from the flash, oboe 2.7 m, horn 3.3 m: how far under the flute is the horn?" · "the sitter stays at 5 ft, the screen
goes from 10 ft to 14: how much darker does the screen get?" Which two are meant goes by what the question calls them; what else
is placed stands there by the way. Inverse square law; plus is more light on the one that is asked of.
"""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Ask, Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.last_question import last_question
from assistant.solving.placing import Scene
from assistant.solving.set_ups import called
from assistant.solving.solution import Solution
from assistant.solving.whose_figure import words_of_each
from assistant.units import speak_length

Named = dict[str, tuple[Fact, ...]]
"""Each name, with the figures that are of what it calls: two, where it was moved from the one to the other."""
_HELD_AGAINST = Pattern(r"\b(?:than|under|over|above|below|against|compared (?:to|with)) (?P<whom>(?:(?:that|those|what|of|on|at|reaches|falls) )*(?:the|my|our|his|her|that)\b[^.?!,;]*?)(?= (?:is|are|does|do|will|would|gets?|in stops)\b|\W*(?:[.?!,;]|$))", re.I)
_ASKED = Pattern(r"\b(?:how|what)\b.*\b(?:brighter|darker|hotter|dimmer|weaker|stronger|less|more|under|over|below|above|lose|loses|lost)\b", re.I)
_MAKES_UP = Pattern(r"\b(?:add|open|close|give|power|need|needs|turn|set|which|who|exposure)\b", re.I)
"""Where not what one of them lacks is asked, but what makes up for it, or which of them it is."""
_IN_CASE = Pattern(r",? \b(?:if|when|with|while|given)\b", re.I)
_LIKE = Pattern(r"\b(?:same|identical|alike|equal|matching|twins?)\b", re.I)
_TOLD = frozenset({"distance", "count", "remark", "place", "number"})
_WAYS = frozenset({"back", "in", "out", "up", "away", "off", "closer", "nearer", "further", "farther", "forward", "forwards", "backwards"})
"""Said of how it moves, and the name of nobody: "from 6 feet back to 10"."""
_MERELY_LAMPS = frozenset({"", "a", "b", "middle"})


def solve(query: Query, ask: Ask, scene: Scene) -> Solution | None:
    """How much more or less light the one gets that the question names; None where the names do not say which two are meant."""
    told = sorted(query.all("distance"), key=lambda f: f.start)
    asked = last_question(query.text)
    if len(told) < 2 or asked is None or any(f.of not in _MERELY_LAMPS or f.bad or query.text[f.start : f.end].strip() != f.said.strip() for f in told) or {f.quantity for f in query.facts} - _TOLD:
        return None
    if any(f.value > 1 for f in query.all("count")) and not _LIKE.search(query.text):
        return None  # two lamps that may differ
    ends = min([asked[1], *(f.start for f in told if f.start > asked[0])])
    question = _IN_CASE.split(query.text[asked[0] : ends].lower())[0]
    if not _ASKED.search(question) or _MAKES_UP.search(question):
        return None
    pair = _meant(question, _named(query.text, told))
    if pair is None:
        return None
    was, now = pair
    value = falloff_stops(was.value, now.value)
    aside = tuple(f for f in told if f not in pair)
    notes = tuple(f"{speak_length(f.value, f.unit)} does not bear on it." for f in aside)
    lead = f"{speak_stops(abs(value)).capitalize()} {'more' if value > 0 else 'less'} light ({value:+.2f})."
    return Solution(answers=(marks.stops(value),), used=(*pair, *query.all("count"), *aside), lead=lead, topic="falloff", notes=notes, working=(f"2 × log2({speak_length(was.value, was.unit)} / {speak_length(now.value, now.unit)}) = {value:+.2f} stops",))


def _named(text: str, told: list[Fact]) -> Named:
    """The words that call one of the places and no other; a place that something was moved to goes by the words of the one that it came from."""
    words = [frozenset(called(w)) for w in words_of_each(text, told)]
    groups: list[tuple[frozenset[str], tuple[Fact, ...]]] = []
    for fact, its in zip(told, words):
        if fact.cue == "to" and its <= _WAYS and groups and groups[-1][1][-1].cue == "from":
            groups[-1] = groups[-1][0], (*groups[-1][1], fact)
        else:
            groups.append((its, (fact,)))
    return {word: figures for its, figures in groups for word in its if sum(word in other for other, _ in groups) == 1}


def _meant(question: str, named: Named) -> tuple[Fact, Fact] | None:
    """What the one that is asked of is held against, and it itself."""
    than = _HELD_AGAINST.search(question)
    against = _of(than["whom"], named) if than is not None else set()
    asked = _of(question if than is None else question[: than.start()] + question[than.end() :], named) - against
    if len(asked) != 1 or len(against) > 1 or than is not None and not against:
        return None
    mine = next(iter(asked))
    if len(mine) == 2:
        return None if against else (mine[0], mine[1])  # from the one to the other
    others = against or set(named.values()) - asked
    other = next(iter(others)) if len(others) == 1 else ()
    return (other[0], mine[0]) if len(other) == 1 else None


def _of(words: str, named: Named) -> set[tuple[Fact, ...]]:
    return {named[word] for word in called(words, True) if word in named}

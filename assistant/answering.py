"""The way of a question, top to bottom: read, remember, solve, limit, caution, speak, keep."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.answer import Answer
from assistant.bounds import OutOfRange
from assistant.language.asked_by_order import with_its_mark
from assistant.language.hearing import MAX_NUMBERS, MAX_WORDS
from assistant.language.lone_stop import with_article
from assistant.language.plain_words import plainly
from assistant.language.reading import read
from assistant.language.unmarked import marked
from assistant.memory.conversation import Scene
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.records import replace
from assistant.solving.asking import asks_something
from assistant.turn import Turn
from assistant.turns import take_turn
from assistant.two_asked import both, halves

TYPE_CHECKING = False
if TYPE_CHECKING:
    from assistant.language.tables import Tables
    from assistant.memory.conversation import Conversation
    from assistant.memory.keeping import Keeper

_LOG_WORDS = Pattern(r"\b(?:log|logged|frames?|rolls?|shoot|shot)\b", re.IGNORECASE)
"""Without one of these a turn does not need the shot log read."""

_WHY = Pattern(r"\b(?:why|how come)\b", re.IGNORECASE)

LONGEST_LETTERS = 6_000
"""Of a longer text only the beginning is read, and the reply says so: nobody asks a question that long, but a file may be piped in."""
MOST_FIGURES = 40
_SHORT = 50
"""Letters of a half-sentence that only names something."""
_ENDLESS = Pattern(r"\d{41,}")
_CUT = f"Only the first {LONGEST_LETTERS:,} letters were read."
_FEWER = f"Only the first {MAX_WORDS:,} words and marks were read, and of numbers the first {MAX_NUMBERS}."
_TOO_FAR = "too great or too near to nothing"


def in_plain_words(tables: Tables, text: str) -> str:
    """The text as it is read: in its usual wording."""
    return marked(plainly(with_its_mark(with_article(patterns.at_hand(as_read(text)))), tables.lexicon))


def answered(tables: Tables, talk: Conversation, keeper: Keeper, text: str) -> Answer:
    """The answer to one question or remark; what it told of the gear or a frame is kept before this returns."""
    said = in_plain_words(tables, text)
    parts = halves(said)
    before = replace(talk, cautioned=set(talk.cautioned)) if parts is not None else talk
    found = _in_reach(tables, talk, keeper, said)
    if parts is not None:
        found = both(found, parts, lambda half: read(patterns.at_hand(half), tables, talk.kit.names), lambda half: _by_itself(tables, before, half))
    if found.heard != text:  # read in part, or in the words of the question that stands
        found = replace(found, heard=text)
    if len(text) > LONGEST_LETTERS:
        found = replace(found, reply=f"{found.reply} {_CUT}")
    return found if found.reply.isprintable() else replace(found, reply=_shown(found.reply))


def _by_itself(tables: Tables, talk: Conversation, text: str) -> Answer:
    """The answer to one half of a question, which the conversation and the kit do not remember."""
    from assistant.memory.keeping import Keeper

    return _in_reach(tables, replace(talk, past=list(talk.past), before=list(talk.before)), Keeper(None), text)


def _in_reach(tables: Tables, talk: Conversation, keeper: Keeper, text: str) -> Answer:
    """The answer; numbers that no formula takes are rejected."""
    try:
        return _taken(tables, talk, keeper, text)
    except OutOfRange as fault:
        return _beyond(text, str(fault))
    except ArithmeticError:
        return _beyond(text, _TOO_FAR)
    except ValueError as fault:
        if str(fault) != "math domain error":  # what the mathematics library says of a logarithm of nothing
            raise
        return _beyond(text, _TOO_FAR)


def _taken(tables: Tables, talk: Conversation, keeper: Keeper, text: str) -> Answer:
    text = patterns.at_hand(_in_full(talk, _without_excuses(tables, talk, text)))
    if talk.log is None and _LOG_WORDS.search(text):
        talk.log = keeper.load_log()
    kit, log, scene, steps = talk.kit, talk.log, talk.scene, len(talk.before)
    text = _without_reasons(tables, talk, text)
    query, why = _as_query(tables, talk, text)
    if not query.asks and talk.scene.asks and "where" in text.lower():
        from assistant.memory.where_it_reads import where_it_reads

        query = where_it_reads(query, talk.scene)
    found = _said_once_more(tables, talk, query) or take_turn(Turn(query, talk))
    if why and found.status == "answered":
        from assistant.teaching.reason_too import reason

        found = replace(found, reply=f"{found.reply} {reason(why, text)}".strip())
    asks = asks_something(query)
    talk.unanswered = found.status in ("not_understood", "rejected") and (talk.unanswered or asks)
    talk.rejected = query if found.status == "rejected" and asks else None
    changed = (talk.kit, talk.log) != (kit, log)
    if changed:
        _keep(talk, keeper, kit, log)
    if changed and len(talk.before) >= steps:
        talk.before.append((kit, log))
        del talk.before[:-50]
    elif talk.scene is not scene:
        talk.before.clear()
    return replace(found, reply=f"{found.reply} {_FEWER}") if query.cut else found


def _said_once_more(tables: Tables, talk: Conversation, query: Query) -> Answer | None:
    """The answer to the question that stands with one value in the place of another; None where the half-sentence is of another kind, or the answer would be."""
    if talk.rejected is not None:
        return _put_right(tables, talk, query)
    if talk.last_solution is None and talk.judged is None:
        return None
    from assistant.memory.said_again import means_the_same, said_again, standing

    told, stood = said_again(query, talk), standing(talk)
    if told is None or stood is None:
        return None
    old, text, anew = told
    whole = read(patterns.at_hand(text), tables, talk.kit.names)
    found = None
    if means_the_same(stood, whole, old, anew):
        trial = replace(talk, scene=Scene(), past=[*talk.past, talk.scene][-50:], before=list(talk.before), cautioned=set(talk.cautioned), judged=None)
        found = take_turn(Turn(whole, trial, anew))
    if found is not None and found.status == "not_understood" and not found.unplaced and talk.last_solution is not None and talk.last_solution.answers[0].quantity not in ("count", "claim"):
        patterns.at_hand(query.text)
        return replace(found, heard=query.text)  # what the question said anew would not be answered, the half-sentence is not
    if found is None or not _of_the_same_kind(found, talk, text[: anew[0]] + text[anew[1] :]):
        patterns.at_hand(query.text)
        return None
    for name in _CHANGED:
        setattr(talk, name, getattr(trial, name))
    return found


def _of_the_same_kind(found: Answer, talk: Conversation, before: str) -> bool:
    """Whether this is another answer to what was asked before: of a claim a verdict, else another value of the same thing; what found no place in the words `before` did not then either."""
    if any(words not in before for words in found.unplaced) or found.status not in ("answered", "out_of_reach") or not found.answers:
        return False
    first, last = found.answers[0], talk.last_solution
    if talk.judged is not None:
        return first.quantity == "claim"
    return last is not None and (first.quantity, first.of) == (last.answers[0].quantity, last.answers[0].of) and (first.quantity == "claim" or first.value != last.answers[0].value)


def _put_right(tables: Tables, talk: Conversation, query: Query) -> Answer | None:
    """The answer to a question that was rejected, with the one value that cannot be put right; None where the half-sentence puts none right."""
    from assistant.memory.said_again import with_the_right_value

    text = with_the_right_value(query, talk.rejected) if talk.rejected is not None else None
    if text is None:
        return None
    found = take_turn(Turn(read(patterns.at_hand(text), tables, talk.kit.names), talk))
    if found.status in ("answered", "out_of_reach", "needs"):
        return found
    patterns.at_hand(query.text)
    return None


_CHANGED = ("kit", "scene", "past", "first", "missing", "cautioned", "claimed", "judged", "last_working", "last_query", "last_solution", "changed")


def _without_excuses(tables: Tables, talk: Conversation, text: str) -> str:
    """A later turn without what only says how a value came to be wrong."""
    if talk.last_solution is None and talk.rejected is None and talk.judged is None and not talk.missing:
        return text
    from assistant.memory.excuses import without_excuses

    return without_excuses(text, tables.lexicon)


def _without_reasons(tables: Tables, talk: Conversation, text: str) -> str:
    """A later turn without what only says why a value is told anew."""
    if talk.last_solution is None and talk.judged is None:
        return text
    from assistant.memory.reasons import without_reasons

    return patterns.at_hand(without_reasons(text, talk, lambda part: read(patterns.at_hand(part), tables, talk.kit.names)))


def _in_full(talk: Conversation, text: str) -> str:
    """The question that a half-sentence about a bracket, another row or another level asks again, in its own words."""
    if len(text) < 2 * _SHORT and (talk.judged is not None or talk.past and " stops " in text):
        from assistant.memory.against_before import against_before
        from assistant.memory.so_many_times import so_many_times

        whole = so_many_times(text, talk) or against_before(text, talk)
        if whole is not None:
            return whole
    if talk.judged is not None and "hyperfocal" in text.lower():
        from assistant.memory.lens_again import at_its_hyperfocal

        return at_its_hyperfocal(text, talk)
    if talk.judged is not None and len(text) < 2 * _SHORT:
        from assistant.memory.claimed_otherwise import claimed_otherwise

        return claimed_otherwise(text, talk) or text
    if talk.last_solution is not None and talk.last_solution.topic == "falloff" and len(text) < _SHORT:
        from assistant.memory.in_another_row import in_another_row

        return in_another_row(text, talk) or text
    if talk.last_solution is not None and talk.last_solution.topic == "lamps" and len(text) < _SHORT:
        from assistant.memory.at_another_level import at_another_level

        return at_another_level(text, talk) or text
    if talk.last_solution is not None and talk.last_solution.topic == "time" and len(text) < 2 * _SHORT:
        from assistant.memory.pops_again import so_many_of_them
        from assistant.memory.pops_from_further import from_further

        return from_further(text, talk) or so_many_of_them(text, talk)
    if talk.last_solution is None or talk.last_solution.topic != "bracket":
        return text
    from assistant.memory.steps_of_a_bracket import in_other_steps

    return in_other_steps(text, talk) or text


def _as_query(tables: Tables, talk: Conversation, text: str) -> tuple[Query, str]:
    """The query of a text, and the reason that it asks beside a figure ("…, and why is that?")."""
    names = talk.kit.names
    if _WHY.search(text):
        from assistant.teaching.reason_too import parted, worth_a_figure

        asked, why = parted(text)
        query = read(asked, tables, names) if why else None
        if query is not None and worth_a_figure(query):
            return query, why
    return read(text, tables, names), ""


def _keep(talk: Conversation, keeper: Keeper, kit: object, log: object) -> None:
    """Keep what a turn changed of the kit and of the log."""
    from assistant.memory.shotlog import ShotLog

    if talk.kit != kit:
        keeper.save_kit(talk.kit)
    if talk.log is not None and talk.log != log:
        talk.log = keeper.save_log(log if isinstance(log, ShotLog) else ShotLog(), talk.log)


def as_read(text: str) -> str:
    """What is read of a text: its beginning, and of an endless number the first figures, which are beyond any scale already.

    >>> as_read("f/" + "9" * 100) == "f/" + "9" * MOST_FIGURES
    True
    """
    said = text[:LONGEST_LETTERS]
    if max(map(len, said.split()), default=0) <= MOST_FIGURES:
        return said
    return _ENDLESS.sub(lambda match: match[0][:MOST_FIGURES], said)


def _beyond(text: str, why: str) -> Answer:
    return Answer(heard=text, status="rejected", reply=f"These numbers do not go together, or one of them is beyond all scales ({why}).")


def _shown(reply: str) -> str:
    """A reply without control characters, wherever it quotes them; line ends stay."""
    return "".join(c if c.isprintable() or c == "\n" else " " for c in reply)

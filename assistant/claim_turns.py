"""Turns about a claim: what it still lacked supplied, and a value of it told anew."""

from __future__ import annotations

from assistant.anew_turns import OPENLY
from assistant.answer import Answer
from assistant.memory.claim_put_anew import put_anew
from assistant.memory.conversation import Judged, supply_missing
from assistant.memory.judged_again import Anew, bears, said_anew, told_when
from assistant.memory.meaning import supplied
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.replying import remember, speak
from assistant.solving.claim_account import left_uncounted
from assistant.solving.claims import solve as judge
from assistant.solving.claims import tidied
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.solving.solver import beside_the_claim
from assistant.told_turns import about_gear, told_of_gear
from assistant.turn import Turn


def keep_claim(turn: Turn, whole: Query, found: Solution) -> None:
    """What a later turn may ask about of a claim, what it may supply, and what it may tell anew."""
    beside, talk = _found_beside(found), turn.conversation
    asked = tuple(a for a in beside if a.quantity not in ("factor", "stops"))
    if asked or found.status == "needs":
        remember(turn, replace(_without_claimed(whole, asked, found), asks=asked or whole.asks), found)
        talk.claimed = whole if found.status == "needs" else None
    talk.judged = Judged(whole, beside) if _is_verdict(found) else None


def right_figure(turn: Turn, quantity: str) -> Answer | None:
    """The figure that the verdict gave beside its no: "what would it be then?"."""
    judged = turn.conversation.judged
    if judged is None or not judged.claim:
        return None
    verdict = judge(judged.query)
    if verdict is None or len(verdict.answers) < 2 or verdict.answers[0].value is not False or verdict.answers[1].quantity != quantity:
        return None
    return speak(turn, judged.query, replace(verdict, answers=verdict.answers[1:], lead="", notes=()))


def _is_verdict(found: Solution) -> bool:
    return found.status == "answered" and bool(found.answers) and found.answers[0].quantity == "claim"


def _found_beside(found: Solution) -> tuple[Ask, ...]:
    return tuple(Ask(q.quantity, q.of or "") for q in found.answers[1:2])


def _without_claimed(whole: Query, asked: tuple[Ask, ...], found: Solution) -> Query:
    """What was claimed is what a follow-up asks for, so it is no fact of the scene."""
    if asked and asked[0].quantity == "count" and found.used and found.used[-1].quantity == "count":
        return replace(whole, facts=tuple(f for f in whole.facts if f is not found.used[-1]))
    same = [f for f in whole.facts if asked and f.quantity == asked[0].quantity]
    return replace(whole, facts=tuple(f for f in whole.facts if f not in same)) if len(same) == 1 and asked[0].quantity in ("aperture", "power", "film_speed") else whole


def claim_supplied(turn: Turn) -> Answer | None:
    """What a claim still lacked, supplied: the claim of the turn before judged with it."""
    query, talk = turn.query, turn.conversation
    if talk.claimed is None or not talk.missing or query.asks or not query.facts:
        return None
    query = supply_missing(query, talk.missing, preferred_unit(talk.claimed))
    whole = supplied(talk.claimed, query)
    found = judge(whole)
    if found is None or found.status == "needs" and not {f.quantity for f in query.facts} & set(talk.missing):
        return None
    if about_gear(turn.query):
        talk.kit = told_of_gear(turn.query, talk.kit)
    keep_claim(turn, whole, found)
    afresh = replace(found, used=tuple(replace(f, origin="said") for f in found.used))
    return speak(turn, replace(whole, text=query.text, unplaced=query.unplaced, facts=tuple(replace(f, origin="said") for f in whole.facts)), afresh)


def claim_again(turn: Turn) -> Answer | None:
    """The claim that stands, judged with what this turn tells anew."""
    query, talk = turn.query, turn.conversation
    if talk.judged is None or _asks_openly(query):
        return None
    query = replace(query, asks=())
    put = put_anew(query, talk.judged)
    anew = said_anew(query, talk.judged, talk) if not put.is_one else Anew(put.query, put.new) if put.query is not None else None
    found = None if anew is None else judge(_with_kit(turn, anew.query))
    if anew is None or found is None or not _is_verdict(found) or not bears(anew, found):
        return None
    whole = _with_kit(turn, anew.query)
    rest = tidied(whole, found)
    if beside_the_claim(rest, found) or left_uncounted(whole, found):
        return None
    keep_claim(turn, whole, found)
    told = replace(found, used=tuple(told_when(f, anew.new) for f in found.used))
    if talk.last_query is not None and talk.last_solution is found:
        talk.last_query = replace(talk.last_query, facts=tuple(told_when(f, anew.new) for f in talk.last_query.facts))
    return speak(turn, replace(rest, text=query.text, unplaced=query.unplaced if any(f.quantity == "number" for f in anew.new) else ()), told)


def _asks_openly(query: Query) -> bool:
    """Whether something is asked that is not told as well: "at half life size 1.2 stops?" puts the stops up."""
    told = {f.quantity for f in query.facts if f.origin == "said"} if not query.cues & OPENLY else set()
    return any(a.quantity not in told for a in query.asks)


def put_up_again(turn: Turn) -> Answer | None:
    """A half-sentence that is a claim itself, "so three lose two stops?": judged with the one that stands, or not at all where it cannot be put into its words."""
    query, talk = turn.query, turn.conversation
    put = put_anew(query, talk.judged) if talk.judged is not None else None
    if put is None or not put.is_one:
        return None
    return claim_again(replace(turn, query=replace(query, asks=()))) or not_placed(turn)


def not_placed(turn: Turn) -> Answer:
    """A half-sentence of the claim before that cannot be judged."""
    return Answer(heard=turn.query.text, status="not_understood", reply="I am not sure which part of what was said before that is meant for. Say it once more as a whole sentence.", unplaced=tuple(dict.fromkeys(turn.query.unplaced)))


def _with_kit(turn: Turn, query: Query) -> Query:
    own = tuple(f for f in query.facts if f.origin != "kit")
    named = {o for o in (*query.owners(), *query.mentioned) if o}
    return replace(query, facts=(*turn.conversation.kit.for_scene(replace(query, facts=own), named), *own))

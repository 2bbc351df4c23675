"""A turn of the conversation: what kind of remark it is, what it changes, how it is answered."""

from __future__ import annotations

import re

from assistant.answer import Answer
from assistant.language import speaking
from assistant.language.daylight import SKIES
from assistant.memory.carried import carried, on_the_film_there_is, with_what_was_found
from assistant.memory.conversation import LIMITS, TOPIC_CUES, Conversation, Scene
from assistant.memory.later import follow_up, half_said, kit_put_right, of_another_row, of_what_stands
from assistant.memory.meaning import implied_ask, inferred_ask, meant
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.replying import remember, speak
from assistant.safety_turns import hazard_stated, safety_question, warned
from assistant.solving.asking import asks_something, tells_no_figure
from assistant.solving.claim_account import left_uncounted
from assistant.solving.doubtful import doubtful
from assistant.solving.doubtful_idle import is_no_place
from assistant.solving.left_out import measured_figures, only_numbers, stray_numbers
from assistant.solving.limits import GEAR, check
from assistant.solving.solution import Solution
from assistant.solving.solver import beside_the_claim, impossible, solve, unbearable, unused
from assistant.solving.sureness import sentence
from assistant.teach_turns import about_last_answer, explains, explains_first, practises, put_right, says_why
from assistant.told_turns import another_case, asks_in_known_words, asks_of_places, mostly_unknown, noted, offers, one_is_chosen, tells_kit, told_scene
from assistant.turn import Handler, Turn
from assistant.way_turns import which_way
from assistant.which_turns import which_can

KEPT_WORDS = Pattern(r"\b(?:kit|gear|equipment|frames?|log|logged|roll|shoot|so far|forget|undo|take that back|remove|know about|do (?:i|we) have)\b", re.IGNORECASE)
"""Without one of these a turn is not about the kit or the log themselves."""


def take_turn(turn: Turn) -> Answer:
    """The answer of the first kind of turn that fits."""
    kept = (turn.conversation.kit, turn.conversation.log)
    for handler in HANDLERS:
        found = handler(turn)
        if found is not None:
            misses = _left_unanswered(turn, kept) or asks_something(turn.query) if found.status == "noted" else tells_no_figure(turn.query, found)
            return _not_understood(turn) if misses else warned(turn, found) if found.status == "noted" else found
    return _not_understood(turn)


def _left_unanswered(turn: Turn, kept: tuple[object, object]) -> bool:
    """Whether what was only noted was to complete a question that was not understood: it still is not, and that is said again."""
    talk = turn.conversation
    return talk.unanswered and (talk.kit, talk.log) == kept and any(f.quantity != "remark" for f in turn.query.facts)


# --- kinds of turn ------------------------------------------------------------------------------


def _about_what_is_kept(turn: Turn) -> Answer | None:
    """The kit and the log themselves: listed, exported, forgotten, taken back."""
    if not KEPT_WORDS.search(turn.query.text):
        return None
    from assistant.kit_turns import about_what_is_kept

    return about_what_is_kept(turn)


def _start_over(turn: Turn) -> Answer | None:
    said = turn.query
    if "start_over" not in said.cues or len(said.unknown) > 2 or ("scrap that" in said.text.lower() and (said.facts or said.asks)):
        return None
    if not said.facts and len(said.unknown) > 0 and "scene" not in said.text.lower() and len(said.text.split()) > 5:
        return None
    turn.conversation.start_over()
    if turn.query.facts or turn.query.asks:
        return None
    return noted(turn.query, "The scene is cleared; I still know your gear.")


_BACK_TO = Pattern(r"\bback (?:to|at|on|up to|out to|in to)(?: (?:the|my|about|a|an|iso|f/?))* ?$", re.IGNORECASE)


def _go_back(turn: Turn) -> Answer | None:
    query, talk = turn.query, turn.conversation
    if "go_back" not in query.cues or not (talk.past or talk.first):
        return None
    text = query.text.lower()
    if any(_BACK_TO.search(text[: f.start]) for f in query.facts):
        return None  # "go back to 3 m": a step back, or one value as it was
    to_first = not talk.past or any(word in text for word in ("first", "start", "original"))
    scene = talk.first if to_first and talk.first else talk.past[-1]
    talk.keep(scene)
    if query.facts or query.asks:
        return None
    return _answered_from(turn, replace(query, facts=(), asks=()))


_AGAIN = Pattern(
    r"^\W*(?:(?:sorry|please|pardon|can you|could you|will you)[, ]+)*(?:(?:say|tell me|read|give me|repeat)(?: me)?(?: (?:that|it|this|the answer|the last one))?(?: (?:once more|one more time|again|back|out loud))+|repeat(?: (?:that|it|the answer))?"
    r"|come again|pardon(?: me)?|what (?:was that|did you say)|once more|one more time)(?: please)?\W*$", re.I)


def _once_more(turn: Turn) -> Answer | None:
    """"say that again": the answer that was given last."""
    query, talk = turn.query, turn.conversation
    if not talk.scene.asks or query.facts or not _AGAIN.match(query.text):
        return None
    return _answered_from(turn, replace(query, asks=talk.scene.asks, cues=frozenset(), unknown=(), mentioned=()))


def _impossible(turn: Turn) -> Answer | None:
    wrong = impossible(turn.query)
    return speak(turn, turn.query, wrong) if wrong else None


FOLLOWING = frozenset({"forget", "put_on", "bare", "keep", "add_light", "another_length", "both", "one_light", "down", "up", "loss", "box_speed", "now", "slide", "negative", "what_if", "not", "correction", "bounce", "what", "diagonal", "horizontal", "vertical"}) | SKIES


def _corrects_kit(turn: Turn) -> Answer | None:
    """"sorry, 115, not 105": a value of the kit put right."""
    query, talk = turn.query, turn.conversation
    right = kit_put_right(query, talk)
    if right is None:
        return None
    talk.kit = talk.kit.with_facts([right])
    if talk.scene.asks:
        return _answered_from(turn, replace(query, facts=(), unplaced=(), cues=frozenset()))
    return noted(replace(query, unplaced=()), "Put right: " + speaking.fact(right) + ".")


def _ask_something(turn: Turn) -> Answer | None:
    query, talk = turn.query, turn.conversation
    if not (query.facts or query.asks or query.mentioned or query.units or query.cues & FOLLOWING or half_said(query, talk.scene)):
        return None
    if not query.asks and not talk.scene.asks and not implied_ask(query) and not inferred_ask(query) and not offers(query):
        return told_scene(turn)
    if not query.asks and not query.mentioned and len(query.unknown) > 1 and all(f.quantity == "number" for f in query.facts):
        return _answered_from(turn, query) if not query.facts and half_said(query, talk.scene) else None
    if mostly_unknown(query) and not (asks_of_places(query) or one_is_chosen(query) or asks_in_known_words(query) or half_said(query, talk.scene)) and (not query.asks or not any(f.quantity not in ("number", "count", "distance") and (f.quantity != "film_speed" or f.unit in ("DIN", "GOST")) for f in query.facts)):
        return None
    return _answered_from(turn, query)


# --- answering ------------------------------------------------------------------------------------


def _answered_from(turn: Turn, query: Query) -> Answer | None:
    talk = turn.conversation
    query, premise = put_right(query)
    bare = query
    query = on_the_film_there_is(carried(query, talk.scene.facts, talk.scene.asks), talk.kit.facts, talk.scene.facts)
    alone = _alone(query, talk)
    if alone is None:
        query, scene = follow_up(query, talk)
        if _changes_nothing(query, turn.query, scene, talk):
            return None
        whole = meant(query, talk, scene)
    else:
        whole = alone
    wrong = impossible(whole)
    if wrong:
        return speak(turn, whole, wrong)
    solution = solve(whole)
    anew = _once_more_anew(turn, bare, solution) if alone is None or _names_what_was_asked(bare, talk.scene) else None
    if anew is not None:
        return anew
    if solution is None:
        return None
    if solution.status == "needs" and (talk.scene.answered or talk.judged):
        again = with_what_was_found(whole, talk, solution.missing)
        retried = solve(again) if again is not whole else None
        if retried is not None and retried.status != "needs":
            solution, whole = retried, again
    if solution.status == "needs" and _about_something_else(query, talk):
        return None
    loose = unbearable(whole, solution) or stray_numbers(query, whole, solution) or measured_figures(turn.query, whole, solution, unused(whole, solution))
    if solution.status == "answered" and not solution.answers and not solution.lead:
        return None
    if alone is None and not loose and not turn.query.asks and talk.scene.asks:
        loose = _dangling(query, whole, solution) or only_numbers(query, whole)
    if loose:
        return (_once_more_anew(turn, bare, None) if alone is None else None) or _left_over(turn, whole, loose)
    if doubtful(turn.query, whole, solution) or (alone is None and _as_before(turn.query, whole, solution, talk)):
        return (_once_more_anew(turn, bare, None) if alone is None else None) or _unsure(turn, whole)
    solution = check(_with_the_gear(whole, talk), solution)
    solution = solution.noting(sentence(whole, solution))
    solution = solution.noting(premise) if solution.status in ("answered", "out_of_reach") else solution
    remember(turn, whole, solution)
    return speak(turn, whole, solution)


def _with_the_gear(query: Query, talk: Conversation) -> Query:
    """A question beside all that is known of the gear and the room, which those that are answered by themselves, or speak of another energy, have not."""
    if not talk.kit.facts:
        return query
    named = {o for o in (*query.owners(), *(a.of for a in query.asks), *query.mentioned) if o}
    known = talk.kit.for_scene(replace(query, facts=tuple(f for f in query.facts if f.quantity != "energy")), named)
    return replace(query, facts=(*(f for f in known if f.quantity in GEAR and f not in query.facts), *query.facts))


def _names_what_was_asked(query: Query, scene: Scene) -> bool:
    """"with a two-stop ND instead, what power would it be?", after a power was asked: it is named, whatever else the words ask for."""
    return bool(scene.asks) and not query.asks_for(scene.asks[0].quantity) and f"name_{scene.asks[0].quantity}" in query.cues


def _once_more_anew(turn: Turn, query: Query, solution: Solution | None) -> Answer | None:
    """The question that stands, said again with the new value in it, where this is no answer of its kind."""
    if turn.conversation.last_solution is None or not turn.conversation.scene.asks:
        return None
    from assistant.anew_turns import asked_anew, strays

    return asked_anew(turn, query) if strays(turn, solution) else None


def _changes_nothing(query: Query, said: Query, scene: Scene, talk: Conversation) -> bool:
    """Words after an answer that neither change the scene nor ask: to say the answer once more would be to pretend."""
    if query.asks or query.units or said.asks or query.mentioned or [f for f in (*query.facts, *said.facts) if f.quantity != "remark"]:
        return False
    of_both = "both" in said.cues and len({f.of for f in scene.facts if f.of}) < 2  # both of what
    return scene == talk.scene and bool(talk.scene.asks) and (len(said.text.split()) > 2 or bool(said.unknown) or of_both) and not (query.cues - ({"both"} if of_both else set())) & TOPIC_CUES - scene.cues and "go_back" not in query.cues and not of_another_row(query, talk.scene)


def _about_something_else(query: Query, talk: Conversation) -> bool:
    """A question with words of another trade and nothing of ours but a length or a number."""
    return len(query.unknown) > 1 and not talk.scene.facts and all(f.quantity in ("number", "distance", "count", "length_range", "gap") for f in query.facts) and not query.cues & {"name_aperture", "name_power", "front", "middle", "back", "rows", "bounce"} and not asks_of_places(query)


def _dangling(query: Query, whole: Query, solution: Solution) -> list[Fact]:
    """What a half-sentence told, where the answer that stands has no use for any of it."""
    if solution.status not in ("answered", "out_of_reach") or solution.topic in ("claims", "table"):
        return []
    told = [f for f in query.facts if f.quantity != "number" and f.quantity not in LIMITS]
    mine = {(f.quantity, f.value, f.of, f.said) for f in told}
    idle = [f for f in unused(whole, solution) if (f.quantity, f.value, f.of, f.said) in mine]
    alone = len(idle) == len(told) and any(f.quantity not in speaking.WHY_UNUSED for f in idle)
    return idle if alone or solution.topic not in _OF_FLASH else []


_OF_FLASH = ("flash", "change")
"""Topics in which a shutter or a lens that is told changes nothing, and is said to."""


_TAKES_OFF = Pattern(r"\b(?:off|without|remov\w*|los(?:e|ing)|drop\w*|bare|no)\b", re.IGNORECASE)


def _as_before(said: Query, whole: Query, solution: Solution, talk: Conversation) -> bool:
    """The same answer once more, after a half-sentence that told something it has no use for."""
    if talk.last_solution is None or solution.answers[:1] != talk.last_solution.answers[:1] or not said.facts:
        return False
    if _TAKES_OFF.search(said.text) and all(f.quantity == "modifier" for f in said.facts) and not any(f.quantity in ("loss", "filter_loss") and f.unit in {m.unit for m in said.facts} for f in talk.scene.facts):
        return False  # "without the umbrella", which was not counted
    told = [f for f in whole.facts if f.origin == "said"]
    bears = any(f.quantity != "modifier" and (f.quantity in LIMITS or f in solution.used) and not is_no_place(f, solution, talk.last_query, talk.last_solution) for f in told)
    return not bears or _another_film(told, talk)


def _another_film(told: list[Fact], talk: Conversation) -> bool:
    """Whether all that is told is a film speed, and not the one that was counted with before."""
    new = [f for f in told if f.quantity != "number"]
    before = [f.value for f in talk.last_query.facts if f.quantity == "film_speed"] if talk.last_query else []
    return len(new) == 1 and new[0].quantity == "film_speed" and new[0].value not in (before or [100.0])


def _unsure(turn: Turn, query: Query) -> Answer:
    """An answer that looks like that of another question is not given."""
    told = speaking.understood(tuple(f for f in turn.query.facts if f.quantity != "number" and not f.bad))
    reply = "I am not sure that I took that as you meant it, so I give no answer." + (f" I did understand: {told.removeprefix('From ')}" if told else "")
    return Answer(heard=query.text, status="not_understood", reply=reply + " Say it once more in other words, with what each figure is of.", unplaced=query.unplaced)


def _left_over(turn: Turn, query: Query, loose: list[Fact]) -> Answer:
    """A figure that would change the answer found no place in it: better no answer than a wrong one."""
    words = tuple(speaking.printable(f.said.strip()) for f in loose)
    apart = frozenset(loose)
    rest = speaking.understood(tuple(f for f in query.facts if f not in apart and f.origin == "said" and not f.bad))
    reply = f"I could not see what {' and '.join(f'“{w}”' for w in words)} belongs to, so I give no answer. " + (f"I did understand: {rest.removeprefix('From ')} " if rest else "")
    return Answer(heard=query.text, status="not_understood", reply=reply + "Say it once more with what it is of, for example “6 feet from the flash” or “one stop under the key”.", unplaced=words)


def _alone(query: Query, talk: Conversation) -> Query | None:
    """The query by itself, when it needs nothing of the scene: a new question."""
    if not query.asks or not query.facts or not (talk.scene.facts or talk.kit.facts) or of_what_stands(query, talk.scene):
        return None
    if not query.mentioned and ("name_sync" not in query.cues or query.has("sync")) and not talk.kit.bounds_the_time(query):  # the sync speed is told by the kit
        bare = solve(query)
        if bare is not None and bare.status == "answered" and bare.topic not in ("flash", "claims") and not bare.assumed:
            return query
    if not talk.scene.facts or talk.missing:
        return None
    named = {o for o in (*query.owners(), *(a.of for a in query.asks), *query.mentioned) if o}
    whole = replace(query, facts=(*talk.kit.for_scene(query, named), *query.facts))
    known = {f.of for f in talk.scene.facts if f.of}
    if known & set(query.mentioned):
        return None
    solution = solve(whole)
    if solution is None or solution.status == "needs" or solution.topic == "flash":
        return None
    return whole


# --- words without a number wanted -----------------------------------------------------------------


def _checks_claim(turn: Turn) -> Answer | None:
    """Something put up for a yes or a no: by itself, else with what the conversation knows."""
    query, talk = turn.query, turn.conversation
    if not query.claim or offers(query):
        return None
    if talk.judged is None and another_case(query, talk.scene):
        return _answered_from(turn, replace(query, claim=False))
    from assistant.claim_turns import claim_again, keep_claim
    from assistant.solving.claim_evened_out import weighed_by_nobody
    from assistant.solving.claims import solve as judge
    from assistant.solving.claims import tidied
    from assistant.solving.set_ups import held_against

    named = {o for o in (*query.owners(), *query.mentioned) if o}
    whole = replace(query, facts=(*talk.kit.for_scene(query, named), *query.facts))
    found = judge(whole)
    if talk.judged is not None and (found is None or found.status == "needs"):
        again = claim_again(turn)
        if again is not None:
            return again
    if talk.last_solution is not None and (found is None or found.status == "needs"):
        from assistant.against_turns import would_do

        against = would_do(turn)
        if against is not None:
            return against
    if talk.scene.facts and query.facts and (found is None or found.status == "needs"):
        followed, scene = follow_up(query, talk)
        whole = replace(meant(followed, talk, scene), claim=True)
        found = judge(whole) or found
    if found is None and not query.asks and (held_against(whole) or weighed_by_nobody(whole)):
        return _unsure(turn, whole)
    if found is None:
        return None if query.asks or query.facts else explains(turn) or _not_understood(turn)
    rest = tidied(whole, found)
    if beside_the_claim(rest, found) or left_uncounted(whole, found):
        return query.asks and _answered_from(turn, replace(query, claim=False)) or _unsure(turn, whole)
    keep_claim(turn, whole, found)
    return speak(turn, rest, found)


_ASKS_OPENLY = Pattern(r"\b(?:what|which|whats|what's|how (?:much|many|far|long|close|near))\b(?! (?:if|about)\b)", re.IGNORECASE)
_WHAT_THEN = Pattern(
    r"^\W*(?:(?:and|so|then|ok|okay|well|but|no|yes|right)\b\W*)*(?:what|which)(?:'?s| is| would| do| does| will| should| can| could| must)?(?: (?:i|it|that|we|you|the|then|have|be))*"
    r"(?: (?:get|give|set|use|need|right|correct|proper|be|it|figure|number|value|one|setting|then|instead|come to|read))*(?: (?:then|instead|now|please))*\W*$", re.IGNORECASE)
"""Asked for the right figure, after a claim that was judged: "what would I get then?"."""


def _used_instead(turn: Turn) -> Answer | None:
    """What was used instead of what was found, and how far out that is."""
    if turn.conversation.last_solution is None or not turn.query.asks_for("stops") or turn.query.claim:
        return None
    from assistant.against_turns import used_instead

    return used_instead(turn)


def _sums_up(turn: Turn) -> Answer | None:
    """The last answer put back as a claim."""
    last = turn.conversation.last_solution
    if last is None or not last.answers or last.answers[0].quantity != "stops" or not turn.query.facts:
        return None
    from assistant.summed_up_turns import sums_up

    return sums_up(turn)


def _of_the_claim_before(turn: Turn) -> Answer | None:
    """What a claim still lacked, a value of it told anew, or what is right instead."""
    query, talk = turn.query, turn.conversation
    if talk.judged is None and (query.claim or talk.claimed is None):
        return None
    from assistant.claim_turns import claim_again, claim_supplied, put_up_again, right_figure

    if query.claim:
        return put_up_again(turn)
    if _ASKS_OPENLY.search(query.text):
        wanted = talk.scene.asks if talk.judged is not None and not query.asks and (query.facts or _WHAT_THEN.match(query.text)) else ()
        right = right_figure(turn, wanted[0].quantity) if wanted and not query.facts else None
        found = _answered_from(turn, replace(query, asks=wanted)) if wanted and (right is None or talk.scene.facts) else None
        return found if right is None or found is not None and found.answers[:1] == right.answers[:1] else right
    return claim_supplied(turn) or claim_again(turn)


def _not_understood(turn: Turn) -> Answer:
    hazard = hazard_stated(turn)
    if hazard is not None:
        return hazard
    query = turn.query
    words = tuple(dict.fromkeys((*query.unplaced, *query.unknown)))[:12]
    shown = ", ".join(f"“{speaking.printable(w)}”" for w in words[:6])
    facts = speaking.understood(tuple(f for f in query.facts if f.quantity != "number" and not f.bad))
    reply = (f"I did not understand {shown}." if shown else "I did not understand that.") + (f" I did understand: {facts.removeprefix('From ')}" if facts else "")
    reply += " Try, for example: “guide number 110 feet, 7 feet, ISO 200, what aperture?”"
    return Answer(heard=query.text, status="not_understood", reply=reply, unplaced=words)


HANDLERS: tuple[Handler, ...] = (_about_what_is_kept, _start_over, _go_back, _once_more, which_can, which_way, _impossible, practises, says_why, about_last_answer, safety_question, explains_first, _corrects_kit, _sums_up, _of_the_claim_before, tells_kit, _checks_claim, _used_instead, _ask_something, explains)

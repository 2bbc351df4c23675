"""Turns that teach: an explanation, the sum behind the last answer, practice questions."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.answer import Answer, Quantity
from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.solving.lights import preferred_unit
from assistant.solving.solution import Solution
from assistant.turn import Turn
from assistant.units import length_in

TYPE_CHECKING = False
if TYPE_CHECKING:
    from assistant.teaching.explaining import Manner
    from assistant.teaching.practice import Exercise, Practice

_SHOW = Pattern(
    r"\b(?:show|see|give|walk|take|talk|run)\b.{0,14}\b(?:sum|sums|working|workings|math|maths|steps|arithmetic|ledger|calculation|through (?:it|that|the sum))\b|\bhow (?:did|do|does|would) (?:you|that|it|this)\b.{0,10}\b(?:get|got|work|arrive|come|reach|figure|calculate)\b"
    r"|^\W*(?:(?:but|ok|okay|so|and|hm+|oh|ah|right|well|er+m?|um+|then)\b[\s,.!?]*)*why(?:'s| is)?(?: (?:that|it|this|so|though|then|on earth))*\W*$|^\W*how come\W*$|\bwhere (?:does|did) (?:that|it|the \S+|f\S*)\b.{0,14}\bcome from\b|\bexplain (?:that|it|this|your answer|the answer|how you got)\b|\bprove it\b|^\W*(?:the )?(?:sum|working|maths?|workings)\W*(?:please)?\W*$"
    r"|^\W*why (?:is it |is that |do i (?:need|set) |would it be )?(?:f ?/?)?\d+(?:\.\d+)?\W*$"
)
_WHY_NOT = Pattern(r"\b(?:why|how come)\b.{0,24}(?:\bnot\b|n't\b)|\band not\b|\bi (?:thought|expected|make it|made it|got|get|had|would have said|would've said)\b|\bshouldn't (?:it|that) be\b|\brather than\b|\binstead of\b")
_STOPS = Pattern(r"\b(?:just|only|in) (?:the )?stops\b|\bstops only\b|\bas stops\b")
_NEW = Pattern(r"\blike i(?:'m| am) (?:five|5|new|a beginner|a child|ten)\b|\beli5\b|\bsimpl(?:er|y)\b|\bplain(?:er)? (?:words|english)\b|\bfor a beginner\b|\bi(?:'m| am) (?:new|a beginner)\b|\bslow(?:er|ly)\b")
_SURE = Pattern(r"^\W*(?:and )?is (?:that|it|this) (?:really )?(?:right|correct)\W*$|\bhow (?:sure|certain|confident|accurate|reliable|exact|far off|precise|safe is that)\b|\bare you (?:sure|certain)\b|\bcan i (?:trust|rely)\b|\bmargin of error\b|\bhow (?:much )?(?:could|might|can) (?:it|that|this) be (?:off|out|wrong)\b")
_SHEET = Pattern(r"\b(?P<n>\d{1,2}|three|four|five|six|eight|ten|twelve|twenty)\b(?: \w+){0,2}? (?:questions|exercises|problems|sums)\b|\bworksheet\b|\banswer (?:sheet|key)\b")
_QUIZ = Pattern(r"\b(?:quiz|test) me\b|\b(?:give|ask|set) me (?:a |some |another )?(?:practice|question|quiz|exercise|problem|test question)\w*|\bpractice (?:question|problem|with me)\w*|\blet(?:'s| us|s) practi[cs]e\b|\bi want to practi[cs]e\b|\bask me (?:something|a question|questions)\b|^\W*(?:practi[cs]e|quiz)\b")
_STOP = Pattern(r"^\W*(?:ok(?:ay)?,? |right,? |please )?(?:stop|enough|quit|end|finish|that's (?:all|enough|it)|no more|i'm done|done|exit quiz|stop (?:the )?(?:quiz|practice|asking)|enough (?:now|for today|questions))\b(?! down| of )")
_PASS = Pattern(r"\b(?:skip|pass|next(?: one| question)?|don't know|dont know|no idea|give up|tell me the answer|what is it|what's the answer)\b")
_NUMBERS = {"three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "ten": 10, "twelve": 12, "twenty": 20}
_MAX_SHEET = 20
_LONGEST = 3000
"""Characters beyond which a turn is no remark to a teacher."""


def _said(turn: Turn) -> str:
    return " ".join(turn.query.text.lower().replace("’", "'").split())


def _reply(turn: Turn, reply: str, status: str = "answered", answers: tuple[Quantity, ...] = (), working: tuple[str, ...] = (), table: tuple[tuple[str, ...], ...] = ()) -> Answer:
    return Answer(heard=turn.query.text, status=status, reply=reply, answers=answers, working=working, table=table)


# --- about the last answer -----------------------------------------------------------------------


_IN_STOPS = Pattern(r"^\W*(?:(?:so|and|ok|okay|now|please|what|whats|what's|is|that|it|that's|thats|how many|how much|say it|give me that|i mean|same|the same) )*(?:in|as) (?:f-?)?stops(?: (?:of (?:light|exposure)|more|extra|then|please|(?:do )?(?:i|you|we)(?: must| have to| need to| should)?|to|open(?:ing)?(?: (?:it|the lens))? up|open|add|give|compensate|make up|needed|for the (?:bellows|filter|extension|draw)))*\W*$")
"""A factor that was answered, wanted in stops."""
_AS_FACTOR = Pattern(r"^\W*(?:(?:so|and|ok|okay|now|please|what|whats|what's|which|is|that|it|this|would|be|does|make|come|to|that's|thats|say it|give me that|i mean|same|the same) )*(?:(?:in|as|an?|the|terms of|expressed) )*(?:filter|exposure|light|multiplying)? ?(?:factor|multiplier)(?: (?:then|please|is that|would that be))*\W*$")
"""Stops that were answered, wanted as a factor."""
_TIMES_THE_LIGHT = Pattern(
    r"^\W*(?:(?:so|and|ok|okay|now|please|right|but|then|(?:put |said )?as an?|in) |(?:factor|multiplier|multiple|times)\W+)*(?:(?:that's|that is|it's) )?(?:by )?(?:how many times|what multiple of)(?: (?:more|less|the|as much|as strong|that much|brighter|darker))*(?: (?:light|power|exposure|energy|output))?"
    r"(?: (?:is|was|that|it|this|then|would|do|will|must|should|does|i|we|need|have|to|give|use|take|cost|get|through|lose|lost|mean|make|made|up|good|for|the|loss|compensate|back|equal|out))*\W*$")
"""The same, by how much light it is: "how many times more light would I need to make that good?"."""


def about_last_answer(turn: Turn) -> Answer | None:
    """Why, show the sum, how sure: the ledger of the answer just given."""
    talk = turn.conversation
    query, solution = talk.last_query, talk.last_solution
    if query is None or solution is None:
        return None
    said = _said(turn)
    if len(said) > _LONGEST or _asks_anew(turn.query) or turn.query.has("guide_number") or turn.query.has("distance") and not _WHY_NOT.search(said):
        return None
    from assistant.teaching.explaining import how_sure, sum_of, why_not

    if _SURE.search(said):
        return _reply(turn, how_sure(query, solution))
    value = next((q for q in solution.answers if q.quantity != "claim"), solution.answers[0])
    otherwise = next((q for q in solution.answers if q.quantity == "stops"), None) if value.quantity in ("factor", "ratio") and _IN_STOPS.match(said) else None
    if otherwise is None and value.quantity in ("stops", "nd") and isinstance(value.value, float) and (_AS_FACTOR.match(said) or not turn.query.facts and _TIMES_THE_LIGHT.match(said)):
        otherwise = Quantity("factor", 2.0 ** abs(value.value), "x")
    if otherwise is not None:
        from assistant.language.speaking import say

        return _reply(turn, f"{say(otherwise)}.".capitalize(), answers=(otherwise,))
    expected = _expected(turn.query, value) if _WHY_NOT.search(said) and not turn.query.asks else None
    manner: Manner = "stops" if _STOPS.search(said) else "new" if _NEW.search(said) else "plain"
    if expected is None and not _SHOW.search(said) and not (manner != "plain" and not turn.query.facts and len(said.split()) <= 9 and not patterns.search(r"\bwhat(?:'s| is| are)\b", said)):
        return None
    lines = sum_of(query, solution, manner)
    if not lines and manner == "stops":
        return None
    contrast = why_not(query, solution, value, expected) if expected is not None else ""
    sentences = [contrast, *(lines or (_fallback(solution),))]
    return _reply(turn, " ".join(s for s in sentences if s), answers=(value,), working=lines)


def says_why(turn: Turn) -> Answer | None:
    """The reason of the verdict just given: "ok so why not?"."""
    said = turn.query
    if turn.conversation.judged is None or said.facts or "why" not in said.cues and "how come" not in said.text.lower():
        return None
    from assistant.why_turns import bare_why, why_so

    return why_so(turn) or (about_last_answer(Turn(replace(said, text="why"), turn.conversation)) if bare_why(said.text) else None)


def _asks_anew(query: Query) -> bool:
    """"meter set for ISO 50 shows EV 10. What's the EV at ISO 100? and show me the sum": figures of its own, and something asked of them."""
    return bool(query.asks) and len({f.quantity for f in query.facts if f.quantity not in ("number", "remark", "modifier")}) > 1


def _fallback(solution: Solution) -> str:
    """The answer once more with what it came from: it was one step, and has no sum."""
    from assistant.language.speaking import lead, understood

    return " ".join(s for s in (lead(solution), understood(solution.used)) if s)


_SMALLEST = 128.0
"""Beyond this f-number a bare figure is none: "and if I had loaded 800?"."""


def _expected(query: Query, answer: Quantity) -> Fact | None:
    """The figure that was expected instead: of the answer's own quantity, or a bare number."""
    own = next((f for f in query.facts if f.quantity == answer.quantity and f.value > 0 and not f.bad), None)
    if own is not None or not isinstance(answer.value, (int, float)):
        return own
    loose = next((f for f in query.facts if f.quantity == "number" and f.value > 0 and not f.bad), None)
    mark = loose is not None and answer.quantity == "aperture" and loose.value <= _SMALLEST
    return replace(loose, quantity=answer.quantity) if loose is not None and (mark or answer.quantity == "guide_number") else None


# --- practice -------------------------------------------------------------------------------------


def practises(turn: Turn) -> Answer | None:
    """Quiz questions, their answers, and sheets of questions with answers."""
    said, talk = _said(turn), turn.conversation
    if len(said) > _LONGEST:
        return None
    if talk.practice is not None:
        found = _during(turn, said, talk.practice)
        if found is not None:
            return found
    sheet_wanted = _SHEET.search(said)
    if sheet_wanted and patterns.search(r"\bquestions|exercises|problems|sums|worksheet|quiz|practi[cs]e\b", said) and not patterns.search(r"\b(?:gn|guide numbers?) ?(?:of |is )?\d", said):
        return _sheet(turn, said, sheet_wanted)
    if not _QUIZ.search(said) or turn.query.has("guide_number"):
        return None
    from assistant.teaching.practice import begin

    talk.practised += 1
    from random import Random

    talk.practice = begin(Random(talk.practised), _unit(turn, said))
    return _reply(turn, f"{talk.practice.exercise.text} (Say “stop” when you have had enough.)")


def _unit(turn: Turn, said: str) -> str:
    if patterns.search(r"\b(?:metres?|meters?|metric)\b", said):
        return "m"
    known = (*turn.conversation.kit.facts, *turn.conversation.scene.facts)
    return "m" if preferred_unit(replace(turn.query, facts=tuple(known))) in ("m", "cm") else "ft"


def _during(turn: Turn, said: str, practice: Practice) -> Answer | None:
    from assistant.teaching.practice import following, given, judge, spoken

    talk = turn.conversation
    if _STOP.search(said):
        talk.practice = None
        done = practice.asked - 1
        return _reply(turn, f"Stopped. {practice.right} of {done} right." if done else "Stopped.", "noted")
    if _PASS.search(said):
        answer = spoken(practice.exercise)
        return _reply(turn, f"It is {answer}. Next: {following(practice, False).text}", answers=())
    one = practice.exercise
    value = given(one, turn.query.facts)
    if value is None or turn.query.has("guide_number") or (turn.query.asks and len(turn.query.facts) > 1):
        return None
    right, sentence = judge(one, value)
    return _reply(turn, f"{sentence} Next: {following(practice, right).text}", answers=(Quantity("claim", right), _exact(one)))


def _exact(one: Exercise) -> Quantity:
    if one.quantity == "aperture":
        return marks.aperture(one.value)
    return marks.power(one.value) if one.quantity == "power" else Quantity("distance", length_in(one.value, one.unit), one.unit)


_TOPIC_WORDS = (("film speed", r"\b(?:iso|asa|film speed)\b"), ("power", r"\bpower\b"), ("several", r"\b(?:two|several|more) (?:flashes|lights)\b|\bcombin\w+\b|\badding lights\b"),
                ("distance", r"\b(?:distance|inverse square|reach|far)\b"), ("guide", r"\b(?:guide numbers?|gn|apertures?)\b"))


def _sheet(turn: Turn, said: str, found: re.Match[str]) -> Answer:
    from assistant.teaching.practice import TOPICS, sheet, spoken

    word = found.groupdict().get("n") or "ten"
    count = max(1, min(_MAX_SHEET, _NUMBERS[word] if word in _NUMBERS else int(word)))
    topic = next((name for name, words in _TOPIC_WORDS if patterns.search(words, said) and name in TOPICS), "")
    turn.conversation.practised += 1
    from random import Random

    chosen = sheet(Random(turn.conversation.practised), _unit(turn, said), count, topic)
    asked = " ".join(f"{n}) {one.text}" for n, one in enumerate(chosen, 1))
    key = "; ".join(f"{n}) {spoken(one)}" for n, one in enumerate(chosen, 1))
    rows = (("question", "answer"), *((one.text, spoken(one)) for one in chosen))
    return _reply(turn, f"{asked} Answers: {key}.", table=rows)


# --- explanations ------------------------------------------------------------------------------------

_FIGURES = frozenset({"guide_number", "distance", "film_speed", "aperture", "exposure_value", "focal_length", "energy", "velocity", "duration", "time", "recycle", "extension"})
_ASKS = Phrasings(
    r"^\W*(?:the )?difference between\b|"r"^\W*(?:(?:so|and|but|ok|please|hi|hello|um|well)[, ]+)*(?:why|what(?:'s| is| are| does| do| means?)|explain|define|describe|how (?:do|does|can|should|is|to|come)|could you|can you|tell me|teach me|when|where)\b|\b(?:why|explain|what(?:'s| is) (?:a|an|the)|what does .{1,40} mean|what(?:'s| is) the difference|how (?:do|can) i (?:find|test|measure)|what(?:'s|s| is| are)? (?:even|actually|exactly|really|on earth)|whats|how much is (?:a|one) stop|stands? for|keeps? (?:on )?(?:saying|hearing|reading|seeing|telling|talking|mentioning)|tell me (?:about|what|more)|remind me|what happens|what (?:freezes|causes|decides|governs)|no (?:idea|clue)|understand|(?:don't|dont|do not|never) (?:really |quite )?(?:get|got)|confused (?:about|by)|meaning of|what (?:is|does) (?:it|that|this)|is there a difference|(?:the )?same (?:as|thing))\b|\bwhat did i do wrong|\bwent wrong\b|\bor over\b|\bor under\b|\bover or\b|\bunder or\b")
_FAILED = Pattern(r"\b(?:frames?|negs?|negatives?|slides?|pictures?|photos?|shots?|prints?|images?|roll|(?:half|part|third|side|strip|band) (?:was |is |got )?exposed)\b")
_EITHER = Pattern(r"\b(?:over|under|too (?:much|little))[- ]?(?:expos\w*)? or (?:over|under|too (?:much|little))")
_OPEN = Pattern(r"\b(?:why|how come|explain|what is|what's|whats|what does|what do|differ\w*)\b|" + _EITHER.pattern)
"""Not put up for a yes or a no, whatever else it looks like."""
_AUDIENCE = Pattern(r"[,.]?\s*\b(?:for|to) (?:my|our|the|a|some|an) (?:\w+ )?(?:class|students?|club|pupils?|beginners?|group|daughter|son|friend|apprentice|kids?)\b|[,.:]?\s*\b(?:when (?:it's|its|they're|it is) at home|to an? \w+[- ]year[- ]old|like i(?:'m| am) (?:five|5|new to (?:all )?this|new|a beginner|ten|a child)|eli5|in plain (?:english|words)|in simple (?:words|terms)|please)\b[,.:]?", re.IGNORECASE)
_REQUEST = Pattern(r"^\W*(?:could|can|would|will) you (?:please )?(?=explain|tell|describe|define|teach)", re.IGNORECASE)


def _for_anybody(text: str) -> str:
    """The question without for whom it is asked ("for my class", "like I'm five")."""
    return patterns.sub(_AUDIENCE.pattern, " ", text, flags=re.IGNORECASE) if _AUDIENCE.search(text) else text


_OF_THE_ANSWER = Pattern(r"\bwhat (?:is|would|does) (?:that|it|this)(?: be| come to| make)? (?:as|in) ", re.IGNORECASE)
"""After an answer: the same once more in another measure, and no word to be explained."""


def explains_first(turn: Turn) -> Answer | None:
    """A question for an explanation and no figure to work with: taught before anything is solved."""
    said = _said(turn)
    if len(said) > _LONGEST:
        return None
    told = _told_failure(turn, said)
    if told is not None:
        return told
    if turn.query.claim and not _OPEN.search(said) or not _ASKS.found_in(said) or turn.conversation.scene.asks and _OF_THE_ANSWER.search(said):
        return None
    return None if _has_figures(turn, said) else explains(turn)


def _told_failure(turn: Turn, said: str) -> Answer | None:
    """Pictures that failed, only described."""
    query = turn.query
    if query.asks or query.claim or query.names or turn.conversation.scene.asks or not _FAILED.search(said) or _has_figures(turn, said):
        return None
    from assistant.teaching.diagnosis import diagnose
    from assistant.teaching.remedies import remedy

    cure = remedy(query.text)
    if cure:
        return _reply(turn, f"{cure.text} ({cure.source})")
    found = diagnose(query.text)
    return _reply(turn, found.reply) if found else None


_HOW_MANY_STOPS = Pattern(r"\bin (?:f-?)?stops\b|\bhow many stops\b", re.IGNORECASE)
_SMALL = Pattern(r"\b(?:one|two|three)\b", re.IGNORECASE)
_SPELT = Pattern(r"\b(?:three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred)\b", re.IGNORECASE)


def _has_figures(turn: Turn, said: str) -> bool:
    plain = _for_anybody(said)
    kinds = {f.quantity for f in turn.query.facts if f.origin == "said" and patterns.search(r"\d", f.said)} & _FIGURES
    why = patterns.search(r"\b(?:why|how come|explain|come from)\b", said) is not None
    if turn.query.asks_for("stops") and any(f.quantity in ("power", "times") for f in turn.query.facts) and not why and _HOW_MANY_STOPS.search(said):
        return True  # "if I double the distance and quarter the power, what happens in stops?"
    if turn.query.asks_for("film_speed") and any(f.quantity == "film_speed" and f.unit for f in turn.query.facts):
        return True  # "the box says twenty-seven din: what is that in iso?"
    if turn.query.asks_for("ratio") and any(f.quantity in ("relation", "aperture", "power") for f in turn.query.facts):
        return True
    if any(a.of == "effective" for a in turn.query.asks) and turn.query.has("aperture") and (turn.query.has("magnification") or turn.query.has("extension")):
        return True
    if turn.query.asks and any(f.quantity == "magnification" and ("focal" in f.said or not why and turn.query.asks_for("factor", "stops", "aperture")) for f in turn.query.facts):
        return True  # "drawn out to twice its focal length: what is the factor?"
    if turn.query.asks_for("factor") and not why and any(f.quantity in ("loss", "filter_loss", "nd", "stops") and f.value and f.origin == "said" for f in turn.query.facts):
        return True  # "it needs two and a third stops more: what is that as a filter factor?"
    if turn.query.asks_for("factor") and not why and any(f.quantity == "magnification" and f.origin == "said" for f in turn.query.facts):
        return True  # "half life size on bellows: the factor, what is it?"
    if turn.query.asks and sum(f.quantity in ("loss", "filter_loss", "nd") for f in turn.query.facts) >= 2:
        return True  # "the silk takes a stop, the gel half a stop: what's the whole loss?"
    if turn.query.asks_for("stops") and sum(f.quantity == "aperture" for f in turn.query.facts) >= 2:
        return True  # "bare: twenty-two. through the brolly: eleven. what does it cost?"
    if turn.query.asks and not why and {"velocity", "blur"} <= {f.quantity for f in turn.query.facts if f.origin == "said"}:
        return True  # "two metres a second, one millimetre of smear: what's the longest flash duration?"
    spelt = {f.quantity for f in turn.query.facts if f.origin == "said" and _SPELT.search(f.said)} & _FIGURES
    if (len(spelt | kinds) >= 2 or sum(f.quantity == "distance" for f in turn.query.facts if f.origin == "said") >= 2) and (spelt or _SMALL.search(said)) and turn.query.asks:
        return True  # "six-inch lens, nine inches of draw: what is the factor?"
    if spelt and not why and turn.query.asks and len({f.value for f in turn.query.facts if f.quantity == "power" and f.origin == "said"}) >= 2:
        return True  # "six seconds at full: what is it at a quarter?"
    return bool(kinds) and not (why and len(kinds) <= 1 and "guide_number" not in kinds) and bool(patterns.search(r"\d", plain))


def explains(turn: Turn) -> Answer | None:
    """What went wrong, or what a term or a rule means."""
    from assistant.teaching.diagnosis import diagnose
    from assistant.teaching.glossary import explain
    from assistant.teaching.remedies import remedy

    text = turn.query.text
    cure = remedy(text) if not turn.query.claim or _OPEN.search(_said(turn)) else None
    if cure:
        return _reply(turn, f"{cure.text} ({cure.source})")
    reported = not turn.query.claim or patterns.search(r"\b(?:why|wrong|came|come out|happened)\b", _said(turn)) or _EITHER.search(_said(turn))
    found = diagnose(text) if reported else None
    if found:
        return _reply(turn, found.reply)
    plain = patterns.sub(_REQUEST.pattern, "", _for_anybody(text), flags=re.IGNORECASE).strip(" ,.")
    term = explain(text) or explain(plain)
    return _reply(turn, f"{term.text} ({term.source})") if term else None


# --- a false premise ----------------------------------------------------------------------------------

_RULE = Pattern(r"halv|doubl|quadrupl|tripl|quarters|divid|multipl|cuts|drop|reduces|cost|loses|since|because|given that|seeing that|stop", re.IGNORECASE)


def put_right(query: Query) -> tuple[Query, str]:
    """A false rule that was slipped into a question, looked for where the words for one are there."""
    if len(query.text) > _LONGEST or not _RULE.may_match(query.text):
        return query, ""
    from assistant.solving.premises import put_right as judged

    return judged(query)

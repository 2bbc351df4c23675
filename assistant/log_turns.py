"""Turns about the shot log: a frame told, the frames listed, and what a developed roll teaches about the flash."""

from __future__ import annotations

import re

from assistant import patterns, scales
from assistant.answer import Answer, Assumed
from assistant.language import speaking
from assistant.language.calling import called
from assistant.memory.shotlog import LOGGED, Shot, ShotLog, personal_guide_number
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving import marks
from assistant.turn import Handler, Turn

_POLITE = r"^\W*(?:(?:please|ok|okay|now|and|so|right|can you|could you)[, ]+)*"
_TELL = Pattern(_POLITE + r"(?:log\b(?! ?(?:book|cabin))|(?:note|write|record|jot|put)(?: down)?(?= .*\bframe\b)|(?=frame\b))\s*", re.I)
_FRAME = Pattern(r"\bframe\s*(?:number|num|no\.?|nr\.?|#)?\s*(?P<digits>\d{1,4})?", re.I)
_THAT = Pattern(r"\b(?:log|note|write|record|jot)(?: down)? (?:it|that|this|the last one)\b", re.I)
_LIST = Pattern(
    _POLITE + r"(?:what (?:did|have) (?:i|we) (?:shoot|shot|log|logged)\b|(?:show|read|list|give|tell|what's|whats|what is)\b.*\b(?:the|my|shot|this) (?:log|frames|roll)\b"
    r"|(?:what|how|which \w+) (?:did|do|have|had) (?:i|we) (?:have|had|use|used|set|do|did|put|give|gave|got|get|shoot|shot|take|took|expose|exposed)\b[^?]{0,16}\bframe\b|(?:what|which)(?: \w+)? (?:did|does|had) frame\b|what(?:'s| is| was)? (?:on |about |in )?(?:the )?(?:log|roll|frame)\b|list (?:of )?frames\b)", re.I)
_STRIKE = Pattern(_POLITE + r"(?:forget|delete|remove|strike|scrap|drop)(?: out)? (?:the )?(?=frame\b|last frame\b)", re.I)
_NEW_ROLL = Pattern(r"\b(?:new|next|another|fresh|second|third) roll\b|\bchanged? (?:the )?(?:roll|film)\b", re.I)
_WAS_RIGHT = Pattern(r"\b(?:right|spot on|perfect|correct|bang on|fine|good|dead on)\b", re.I)
_CAME_OUT = Pattern(r"\b(?:came|come|comes|turned|looks?|looked|was|is|were|developed|printed)\b|\b(?:under|over|thin|dense)\b", re.I)
_HOW = Pattern(_POLITE + r"how (?:do|can|would|should) (?:i|we) (?:log|note|record|keep)\b.*\b(?:frames?|shots?|log|exposures?)\b", re.I)
HOW_TO_LOG = (
    "Say “log f/8 at 10 feet, frame 12”, or “log that” after an answer. “What did I shoot” reads the log back."
    " Once the film is developed, say “frame 12 came out a stop under” and hear what your flash really gives."
)
_EMPTY = "The log is empty. Tell it a frame, for example: “log f/8 at 10 feet, frame 12”."


def _log(turn: Turn) -> ShotLog:
    return turn.conversation.log or ShotLog()


def frame_number(query: Query) -> int | None:
    """The number said after "frame", in figures or in words."""
    match = _FRAME.search(query.text)
    if match is None:
        return None
    if match["digits"]:
        return int(match["digits"])
    near = (f for f in query.facts if f.quantity in ("number", "number_range", "place") and 0 <= f.start - match.end() <= 2)
    return next((int(f.value) for f in near if 0 <= f.value < 10_000), None)


# --- told ---------------------------------------------------------------------------------------------


def _tell_frame(turn: Turn) -> Answer | None:
    query = turn.query
    begins = _TELL.search(query.text)
    number = frame_number(query)
    facts = _told(query)
    if not begins or query.asks or query.text.rstrip().endswith("?") or any(f.bad for f in query.facts):
        return None
    said_that = bool(_THAT.search(query.text))
    if not facts and number is None and not said_that:
        return None
    note = _note(query, begins.end())
    if not said_that and not facts and not note:
        return None
    log = _log(turn)
    shot = Shot(log.next_frame() if number is None else number, log.roll, note, _with_what_is_known(turn, facts, said_that))
    if said_that and not (shot.first("aperture") or shot.first("distance")):
        return Answer(heard=query.text, status="needs", reply="There is nothing to log yet: which aperture, and at what distance?", missing=("aperture", "distance"))
    earlier = next((s for s in log.shots if s.same_frame(shot)), None)
    if earlier and not facts:  # words about a frame told before: they are added to it
        shot = replace(shot, facts=earlier.facts)
    turn.conversation.log = log.with_shot(shot)
    return _noted(turn, f"Logged {in_words(shot)}." + (f" Before it was {in_words(earlier)}." if earlier else ""))


def _how_to(turn: Turn) -> Answer | None:
    return _answered(turn, HOW_TO_LOG) if _HOW.search(turn.query.text) else None


def _told(query: Query) -> tuple[Fact, ...]:
    """The facts that a frame keeps, those of the first light where several are told."""
    return tuple(f for f in query.facts if f.quantity in LOGGED and not f.bad)


def _note(query: Query, start: int) -> str:
    """The person's own words about the frame: all but the verb and the frame's number."""
    number = next((f for f in query.facts if f.quantity in ("number", "place") and f.start >= start and not any(c.isdigit() for c in f.said)), None)
    in_words = number.said if number and patterns.search(rf"\bframe\W+(?:number\s+)?{re.escape(number.said)}\b", query.text) else ""
    rest = _FRAME.sub("", query.text[start:]).replace(in_words, "", 1)
    rest = patterns.sub(r"^(?:that|this|it|as)\b|\bas\s*$", "", rest.strip(" \t\r\n:;,.-–—")).strip(" \t\r\n:;,.-–—")
    return speaking.printable(rest)[:500]


def _with_what_is_known(turn: Turn, facts: tuple[Fact, ...], said_that: bool) -> tuple[Fact, ...]:
    """The frame's facts with the scene's, when "log that" was said, and those of the gear."""
    talk = turn.conversation
    found = {(f.quantity, f.of): f for f in facts}
    scene = (*talk.scene.facts, *talk.scene.answered) if said_that else ()
    owners = {f.of for f in (*facts, *scene) if f.of}
    kit = talk.kit.for_scene(replace(turn.query, facts=facts), owners) if facts or said_that else []
    for fact in (*scene, *kit):
        if fact.quantity in LOGGED and not any(q == fact.quantity for q, _ in found):
            found[fact.quantity, fact.of] = fact
    ordered = sorted(found.values(), key=lambda f: LOGGED.index(f.quantity))
    return tuple(Fact(f.quantity, f.value, f.unit, f.of, at_iso=f.at_iso, at_power=f.at_power, estimate=f.estimate) for f in ordered)


def in_words(shot: Shot) -> str:
    """One frame as it is read out.

    >>> in_words(Shot(12, facts=(Fact("aperture", 8.0), Fact("distance", 3.048, "ft"))))
    'frame 12: f/8, 10 ft'
    """
    facts = ", ".join(speaking.fact(f) for f in shot.facts if f.quantity != "modifier")
    words = facts or f"“{shot.note}”" if not (facts and _has_own_words(shot)) else f"{facts} — “{shot.note}”"
    return speaking.printable(f"frame {shot.frame}: {words}")


def _has_own_words(shot: Shot) -> bool:
    """Whether the note says more than numbers, marks and small words."""
    own = patterns.findall(r"[^\W\d]{4,}", shot.note)
    return bool({w.lower() for w in own} - {"feet", "foot", "metres", "meters", "metre", "meter", "power", "full", "half", "quarter", "film", "frame", "guide", "number", "with", "from"})


# --- listed, struck out, a new roll -------------------------------------------------------------------


def _list_frames(turn: Turn) -> Answer | None:
    if not _LIST.search(turn.query.text) or turn.query.asks:
        return None
    log, number = _log(turn), frame_number(turn.query)
    if number is None and any(f.quantity != "number" for f in turn.query.facts):
        return None
    if number is not None:
        shot = log.frame(number)
        return _answered(turn, _sentence(in_words(shot)) if shot else f"There is no frame {number} in the log.")
    shots = log.on_roll() or log.shots[-36:]
    return _answered(turn, f"Roll {log.roll}. " + " ".join(_sentence(in_words(s)) for s in shots) if shots else _EMPTY)


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:] + "."


def _strike(turn: Turn) -> Answer | None:
    if not _STRIKE.search(turn.query.text):
        return None
    log, number = _log(turn), frame_number(turn.query)
    last = "last frame" in turn.query.text.lower()
    shot = log.frame(number) if number is not None else (log.shots[-1] if last and log.shots else None)
    if shot is None:
        return Answer(heard=turn.query.text, status="rejected", reply=f"There is no frame {number} in the log." if number is not None else _EMPTY)
    turn.conversation.log = log.without(shot)
    return _noted(turn, f"Struck out: {in_words(shot)}.")


def _new_roll(turn: Turn) -> Answer | None:
    if not _NEW_ROLL.search(turn.query.text) or turn.query.asks:
        return None
    log = _log(turn).with_new_roll()
    if turn.query.facts:  # a film is told as well: that is another kind of turn
        turn.conversation.log = log
        return None
    turn.conversation.log = log
    return _noted(turn, f"Roll {log.roll} is in the camera; its first frame is {log.next_frame()}.")


# --- a developed roll ---------------------------------------------------------------------------------


def _came_out(turn: Turn) -> Answer | None:
    """"Frame 12 came out a stop under": the guide number that this flash really has."""
    query, number = turn.query, frame_number(turn.query)
    error = _error_stops(query)
    if number is None or error is None or query.asks or not _CAME_OUT.search(query.text) or _told(query):
        return None
    shot = _log(turn).frame(number)
    if shot is None or not (shot.first("aperture") and shot.first("distance")):
        lead = f"There is no frame {number} in the log" if shot is None else f"The log has no aperture and distance for frame {number}"
        return Answer(heard=query.text, status="needs", reply=f"{lead}. Which aperture was it, and at what distance?", missing=("aperture", "distance"))
    return _suggest(turn, shot, error)


def _error_stops(query: Query) -> float | None:
    """How the frame came out, plus is over; 0 for right, None when that was not said."""
    stops = next((f for f in query.facts if f.quantity in ("stops", "signed", "relation") and not f.bad), None)
    if stops is None:
        return 0.0 if _WAS_RIGHT.search(query.text) else None
    text = query.text.lower()
    under = stops.cue == "less" or patterns.search(r"\b(?:under|thin|dark)", text) is not None
    over = stops.cue == "more" or patterns.search(r"\b(?:over|dense|bright|hot)", text) is not None
    if under == over:
        return stops.value if stops.value < 0 else None
    return -abs(stops.value) if under else abs(stops.value)


def _suggest(turn: Turn, shot: Shot, error: float) -> Answer:
    distance, known = shot.first("distance"), shot.first("guide_number")
    unit = known.unit if known and known.unit in ("ft", "m") else "m" if distance and distance.unit in ("m", "cm") else "ft"
    value = personal_guide_number(shot, error, unit) or 0.0
    answer = marks.guide_number(value, unit)
    whose = called(known.of) if known and known.of else "my flash"
    keep = f"{round(value)} {'feet' if unit == 'ft' else 'metres'}"
    assumed = tuple(a for a in (Assumed("film_speed", 100.0, "ISO", "none was logged"), Assumed("power", 1.0, "of full", "none was logged"))
                    if shot.first(a.quantity) is None and not (a.quantity == "film_speed" and shot.first("rated")))
    how = f"{scales.speak_stops(abs(error))} {'over' if error > 0 else 'under'}" if error else "right"
    parts = [
        f"Yours behaves like {speaking.say(answer)}.",
        f"{_sentence(in_words(shot))[:-1]}; it came out {how}.",
        speaking.assumed(assumed),
        "That holds with the same modifier on." if shot.first("modifier") else "",
        f"To keep it, say “{whose} is guide number {keep}”.",
    ]
    return Answer(heard=turn.query.text, status="answered", reply=" ".join(p for p in parts if p), answers=(answer,), assumed=assumed)


def _answered(turn: Turn, reply: str) -> Answer:
    return Answer(heard=turn.query.text, status="answered", reply=reply)


def _noted(turn: Turn, reply: str) -> Answer:
    return Answer(heard=turn.query.text, status="noted", reply=reply)


LOG_TURNS: tuple[Handler, ...] = (_how_to, _came_out, _strike, _list_frames, _new_roll, _tell_frame)

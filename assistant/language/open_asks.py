"""What is asked where the words that ask name it by a pronoun, or name something that is only told.

"the shutter was 1/30 then; what must it be now": the shutter. "with the shutter I am on": none is asked.
"between which two apertures am I safe": the ends of a range, and no bracket.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import cache

from assistant.patterns import Pattern
from assistant.phrasings import Phrasings
from assistant.query import Ask, Fact

_SETTING = r"(?:apertures?|f-?stops?|f-?numbers?|openings?|(?:shutter )?speeds?|times|shutters?|settings)"
_END = r"(?:widest|largest|smallest|fastest|slowest|longest|shortest)"
SAFE_SPAN = Phrasings(
    rf"\b(?:between|from) (?:which|what) (?:two |pair of )?{_SETTING}\b|\b(?:range|span) of (?:the |usable |safe )?{_SETTING}\b"
    rf"|\b(?:which|what) (?:apertures|f-?stops|openings|shutter speeds|times|settings)\b[^?]*\b(?:may|can|could|pass|safe|allowed)\b|\b{_END} and (?:the )?{_END} {_SETTING}\b|\b(?:aperture|f-?stop|shutter(?: speed)?) (?:range|span|limits)\b|\b(?:two )?(?:limiting|extreme|outer(?:most)?) {_SETTING}\b|\bhow (?:wide|far open) and how (?:small|far closed)\b", re.I)
"""The two ends of what still passes are asked for."""
_TOLERANCES = frozenset({"stops", "loss", "signed", "relation"})
_NOT_BESIDE = frozenset({"guide_number", "distance", "count", "power", "rated", "push", "nd", "factor", "filter_loss", "exponent", "ratio", "focal_length"})
_OF_TIME = Pattern(r"\b(?:speeds?|times|shutters?|longest|shortest|fastest|slowest)\b", re.I)


_NOTHING = frozenset({""})


def settle(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """The asks as they are meant."""
    kinds = frozenset([f.quantity for f in facts])
    for rule, of in _rules_of(asks[0].quantity if len(asks) == 1 else "" if not asks else None):
        found = rule(asks, facts, text) if not kinds.isdisjoint(of) else None
        if found is not None:
            return found
    return asks


IN_TURN = Pattern(r"\b(?:straight|normal|then|frames?|bracket\w*|in (?:that|this) order|shots)\b", re.I)
"""Frames one after another, and no ends of a range."""


def _safe_span(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"correct is f/8 and the film takes half a stop either way; between which two apertures am I safe"."""
    kinds = [f.quantity for f in facts]
    if _TOLERANCES.isdisjoint(kinds) or not _NOT_BESIDE.isdisjoint(kinds) or not SAFE_SPAN.found_in(text) or IN_TURN.search(text):
        return None
    wanted = "shutter" if _OF_TIME.search(SAFE_SPAN.whole.search(text).group()) else "aperture"  # type: ignore[union-attr]
    return [Ask(wanted)] if kinds.count(wanted) == 1 else None


_IT_MUST_BE = Pattern(r"\bwhat (?:must|should|does|will|would|has|do i (?:make|set|turn)) it (?:now |then |have )?(?:to )?(?:be|become|go to|read|need to be|to)\b", re.I)
_NAMED = Pattern(r"\b(?:(?P<shutter>shutter|(?:exposure )?time)|(?P<aperture>aperture|f-?stop|opening|lens)|(?P<power>power)|(?P<film_speed>film speed))\b", re.I)


def _it(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"the shutter was 1/30 then; what must it be now": what was named last before, where one such value is told."""
    asked = _IT_MUST_BE.search(text) if not asks else None
    if asked is None:
        return None
    named = [m for m in _NAMED.finditer(text[: asked.start()])]
    wanted = named[-1].lastgroup if named else None
    return [Ask(wanted)] if wanted and sum(f.quantity == wanted for f in facts) == 1 else None


_MY_OWN = Pattern(r"\b(?:with|at|for|on|by) (?:the|my|this|that|whatever) (?:shutter(?: speed| time)?|time|speed)(?: that)? (?:i|we)(?:'m|'ve| am| have| use| used| set| chose| will| shoot)?\b|\b(?:with|at|on) (?:my|the) (?:set |chosen |current )?shutter(?: speed| time)?(?: as it is| as set| set)\b", re.I)
_TWO_LIGHTS = Pattern(r"\b(?:together|both|combined|total|sum|the two)\b", re.I)


def _shutter_told(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"with the shutter I am on, the room reads f/4 and the flash f/8, both together": the time is whatever it is."""
    if [a.quantity for a in asks] != ["shutter"] or sum(f.quantity == "aperture" for f in facts) < 2 or not _MY_OWN.search(text) or not _TWO_LIGHTS.search(text):
        return None
    return [Ask("aperture")]


_BOX_ASKED = Pattern(r"\b(?:printed|written|stands|stamped|said|says|is) on (?:the|its) (?:box|carton|tin|cassette)\b|\bwhat (?:does|did) (?:the|its) (?:box|carton) say\b", re.I)
_FASTER_FILM = Pattern(r"\bwith (?:what|which) film\b|\bhow (?:much faster|fast) (?:an? |the )?film\b", re.I)


def _speed(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"what is printed on the box", "how much faster a film do I need": a film speed."""
    asked = _BOX_ASKED.search(text) or _FASTER_FILM.search(text)
    if asked is None or "?" not in text[asked.end() :] or any(a.quantity == "film_speed" for a in asks) or not any(a.quantity in ("speed", "distance") for a in asks) and asks:
        return None
    return [Ask("film_speed")] if sum(f.quantity in ("film_speed", "rated") for f in facts) == 1 else None


METERED_ASKED = Phrasings(r"\b(?:what|which|how long|how many (?:seconds|minutes))\b[^.?!]{0,24}\b(?:was|is|had|did|does|would|must|been)\b[^.?!]{0,16}\bmeter\w*|\bmetered (?:time )?(?:was |is )?what\b|\bmetered time\W*\?|\bwhat (?:do|must|should|shall) (?:i|we) meter(?: for)?\W*$"
                        r"|\b(?:longest|most|shortest|greatest|what|which) (?:(?:metered|uncorrected|indicated) (?:time|exposure|reading)|(?:time|reading)s?(?: that| which)? (?:of |on |from |by )?(?:the|my) (?:hand[- ]?(?:held)? )?meter)\b|\b(?:may|can|could|should|must) (?:the|my) meter (?:say|read|show|ask)\b|\b(?:what|which) (?:was|is|would be) (?:the|its|my) (?:meter(?:'s)? )?reading\b|\bwhat (?:had|did|does|should|must) (?:the|my) meter\b", re.I)
"""The time by the meter is asked for, and the one that was or may be given is told."""
_TIME_ASKED = Pattern(r"\b(?:what|which) (?:shutter )?(?:time(?! of)|exposure time|speed)\b|\bhow long\b|\bhow many seconds\b", re.I)


def _time(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"the altar meters 2 s at f/5.6, exponent 1.35; what time do I use": the time, whatever else is told of the lens."""
    return [Ask("shutter")] if [a.quantity for a in asks] == ["aperture"] and len({f.value for f in facts if f.quantity == "shutter"}) == 1 and _TIME_ASKED.search(text) else None


_HOW_METERS = Pattern(r"\bhow (?:should|must|does|will|would|shall) (?:the |my )?(?:(?P<fill>fill)|(?:\w+ ){0,2}?(?:flash|light|key|head))\b[^?.]{0,16}\b(?:meter|read)\b", re.I)


_WHAT_IT_READS = Pattern(r"\bwhat (?:does|will|would|should|must) the (?P<light>fill|key)(?: light| flash)?(?: alone| itself)? (?:read|meter|give)\b(?=[^?]*\band\b)", re.I)


def _reading(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"how should the fill flash meter by itself for a ratio of 2:1": its reading."""
    if [a.quantity for a in asks] == ["ratio"] and (reads := _WHAT_IT_READS.search(text)) is not None and not any(f.quantity == "aperture" and f.of == reads["light"] for f in facts):
        return [Ask("aperture", reads["light"], "", reads.start()), *asks]
    asked = _HOW_METERS.search(text) if not asks else None
    return [Ask("aperture", "fill" if asked["fill"] else "")] if asked is not None else None


_GIVES_ON = Pattern(r"\bwhat (?:does|will|would) (?:it|the flash|this flash|the same flash) (?:give|read|get|call for|want|need)s?\b", re.I)


def _opening(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"f/8 on 18 DIN, what does it give on 27 DIN": the f-number for the other film, whatever scale it is told on."""
    kinds = [f.quantity for f in facts]
    told = kinds.count("aperture") == 1 and kinds.count("film_speed") == 2 and set(kinds) <= {"aperture", "film_speed", "remark", "place"}
    return [Ask("aperture")] if told and _GIVES_ON.search(text) and [a.quantity for a in asks] in ([], ["film_speed"]) else None


_END_STOP = Pattern(rf"\b{_END} (?:f-?)?stop\b(?! down)", re.I)
_END_TIME = Pattern(r"\b(?:longest|shortest|slowest|fastest) (?:time|exposure|shutter|speed)\b(?! first)", re.I)
_PUSH_ASKED = Pattern(r"\b(?:over or under|under or over)\b[^.?!]{0,20}\bhow (?:far|much)\b|\bhow (?:far|much)\b[^.?!]{0,20}\b(?:over|under)|\bhow (?:far|much|hard)\b(?: \w+){0,4} (?:push|pull)(?:ed|ing)?\b", re.I)


def _end_stop(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"with f/16 correct, what is the widest stop I can use": an opening, and no number of stops."""
    if asks:
        return None
    wanted = "aperture" if _END_STOP.search(text) else "shutter" if _END_TIME.search(text) else ""
    return [Ask(wanted)] if wanted and any(f.quantity == wanted for f in facts) else None


_AND_THE_SUM = Pattern(r"\b(?:what|which (?:aperture|f-?stop|f-?number))\b[^?.!]{0,24}\b(?:they|both|the two|the pair|the lights|all|flash and \w+|\w+ and (?:the )?flash)\b[^?.!]{0,30}\b(?:together|combined|in all|in total|sum|come to|add up to)\b", re.I)


def _and_the_sum(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"how many stops is the fill under the daylight, and what do they give together": the sum is asked for too."""
    sum_asked, count_asked = _AND_THE_SUM.search(text), text.lower().find("how many stops")
    if [a.quantity for a in asks] != ["stops"] or sum_asked is None or count_asked < 0 or sum(f.quantity == "aperture" for f in facts) != 2:
        return None
    return [*asks, Ask("aperture")] if count_asked < sum_asked.start() else [Ask("aperture"), *asks]


_ONE_ALONE = Pattern(r"\bwhat (?:does|do|would|will|must|should) (?:the |my )?\w+(?: \w+)? (?:(?:give|read|be|meter)s? (?:alone|by itself|on its own|by themselves|on their own)|(?:alone|by itself|on its own|only) (?:give|read|be|meter))\b", re.I)


def _alone(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"with the lamp f/11, without it f/5: what does the lamp give alone": its reading."""
    return [Ask("aperture")] if not asks and _ONE_ALONE.search(text) and sum(f.quantity == "aperture" for f in facts) == 2 else None


def _push(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"I expose 400 film at 1600: how far am I pushing it": stops, and no way to go."""
    return [Ask("stops")] if sum(f.quantity in ("film_speed", "rated") for f in facts) == 2 and all(a.quantity in ("distance", "latitude") for a in asks) and _PUSH_ASKED.search(text) else None


_OR = Pattern(r" or (?:at |on |as )?(?:iso |ei )?", re.I)


def _dialled(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """"dial 320 or 640? I want it a touch over": the speed to dial."""
    rated = [f for f in facts if f.quantity == "rated"]
    return [Ask("film_speed")] if len(rated) == 2 and _OR.fullmatch(text, rated[0].end, rated[1].start) else None


_HOW_FAR_OFF = Pattern(r"(?:^\W*how (?:far|much) (?:off|out|wrong)|\bhow (?:far|much) (?:off|out|wrong)(?= (?:am|was|were|are|is|would|will|did)\b))(?: (?:am|was|were|are|is|would|will|did)(?: (?:i|we|it|that|this|he|she|they)\b|(?: the| my| this| that) (?:exposure|frame|shot|setting|picture|neg|slide)\b)(?: (?:be|then|now|get it|have it))*)?(?=\s*(?:$|[.,;:?!–-]|(?:if|when|with|at|on)\b))", re.I)
"""By how much the light was missed: "how far off am I, metered f/8, lens on f/5.6"; "how far off the wall" is a place."""


def _off(asks: list[Ask], facts: Sequence[Fact], text: str) -> list[Ask] | None:
    """Stops, where what is right and what was set are told."""
    kinds = [f.quantity for f in facts]
    told = kinds.count("aperture") >= 2 or kinds.count("shutter") >= 2 and "aperture" not in kinds or {"aperture", "guide_number", "distance"} <= set(kinds)
    return [Ask("stops")] if told and [a.quantity for a in asks] in ([], ["distance"]) and _HOW_FAR_OFF.search(text) else None


_RULES: tuple[tuple[Callable[[list[Ask], Sequence[Fact], str], list[Ask] | None], frozenset[str], frozenset[str] | None], ...] = (
    # the rule, the kinds of facts of which it needs one, and what is asked so far where it is one thing ("": nothing; None: whatever it is)
    (_safe_span, _TOLERANCES, None), (_end_stop, _TOLERANCES, _NOTHING), (_alone, frozenset({"aperture"}), _NOTHING), (_and_the_sum, frozenset({"aperture"}), frozenset({"stops"})), (_push, frozenset({"film_speed", "rated"}), _NOTHING | {"distance", "latitude"}),
    (_it, frozenset({"shutter", "aperture", "power", "film_speed"}), _NOTHING), (_shutter_told, frozenset({"aperture"}), frozenset({"shutter"})), (_speed, frozenset({"film_speed", "rated"}), _NOTHING | {"speed", "distance"}), (_opening, frozenset({"film_speed"}), _NOTHING | {"film_speed"}),
    (_time, frozenset({"exponent", "shutter"}), frozenset({"aperture"})), (_reading, frozenset({"ratio", "relation"}), _NOTHING | {"ratio"}),
    (_dialled, frozenset({"rated"}), _NOTHING), (_off, frozenset({"aperture", "shutter"}), _NOTHING | {"distance"}),
)


@cache
def _rules_of(asked: str | None) -> tuple[tuple[Callable[[list[Ask], Sequence[Fact], str], list[Ask] | None], frozenset[str]], ...]:
    """The rules for one thing asked, for nothing, or (None) for several."""
    return tuple([(rule, of) for rule, of, so_far in _RULES if asked is None or so_far is None or asked in so_far])

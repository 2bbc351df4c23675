"""The light that is there, and the camera settings a question works at.

What is known of the ambient light becomes one exposure value at ISO 100: from a reading
(aperture, time and film speed), from an exposure value, or from the words for a sky.
"""

from __future__ import annotations

import math
import re

from assistant import patterns, scales
from assistant.answer import Assumed
from assistant.patterns import Pattern
from assistant.physics import ambient
from assistant.query import Fact, Query
from assistant.records import record
from assistant.solving import camera

SKY_EV: tuple[tuple[str, float, str], ...] = (
    # The sunny-16 table: bright sun on sand or snow f/22, bright sun f/16, cloudy bright f/11, heavy overcast or
    # open shade f/5.6 (US Navy photography course, NAVEDTRA 14209 ch. 4); overcast f/8 (encyclopaedia tables).
    ("snow", 16.0, "sun on snow or sand"), ("hazy", 14.0, "hazy sun"), ("heavy_overcast", 12.0, "heavy overcast"),
    ("overcast", 13.0, "overcast"), ("shade", 12.0, "open shade"), ("sunny", 15.0, "bright sun"),
)
SUNNY_EV = ambient.SUNNY_EV
SAME_TIME = 1.0
"""Stands for the shutter time of a reading that named none: the same as now."""


@record
class Daylight:
    """The ambient light: its EV at ISO 100; `marks` are the aperture and time it was read at."""

    ev: float
    facts: tuple[Fact, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    aperture: float | None = None
    shutter: float | None = None
    film_speed: float = 100.0
    relative: bool = False


@record
class Working:
    """What the camera is set to: f-number, seconds, ISO; None where it is open."""

    aperture: float | None
    shutter: float | None
    film_speed: float
    loss: float = 0.0
    facts: tuple[Fact, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    from_sync: bool = False


def working(query: Query, asked: str = "") -> Working:
    """The settings worked at; the sync time stands in for a time that was not said."""
    aperture = None if asked == "aperture" else _own(query, "aperture")
    shutter = None if asked == "shutter" else _own(query, "shutter")
    sync = query.last("sync")
    time = shutter or (sync if asked != "shutter" else None)
    speed, assumed, speed_facts = camera.film_speed(query)
    loss, loss_facts, _ = camera.loss_total(query)
    nd_asked = any(a.quantity in ("nd", "factor") for a in query.asks)
    assumed += () if nd_asked else camera.assumed(query)
    facts = tuple(f for f in (aperture, time) if f) + speed_facts + (() if nd_asked else loss_facts)
    return Working(aperture.value if aperture else None, time.value if time else None, speed, 0.0 if nd_asked else loss, facts, assumed,
                   time is not None and time is sync)


def _only_set(query: Query) -> bool:
    """"for the ambient at f/8", then "it's EV 10": an aperture beside an exposure value is a setting and no reading."""
    return query.has("exposure_value") and query.has("aperture") and not query.has("shutter") and query.last("aperture", "") is None


def _own(query: Query, quantity: str) -> Fact | None:
    if quantity == "aperture" and _only_set(query):
        return query.last("aperture", "ambient")
    return query.last(quantity, "") or next((f for f in reversed(query.facts) if f.quantity == quantity and f.of not in ("ambient", "background", "rim", "hair")), None)


def daylight(query: Query, at: Working) -> Daylight | None:
    """The ambient light of a question; None when nothing is known of it.

    A later exposure value or sky replaces nothing that was read with a meter.
    """
    aperture, shutter = query.last("aperture", "ambient"), query.last("shutter", "ambient")
    if (aperture or shutter) and not _only_set(query):
        return _from_reading(aperture, shutter, at)
    said = query.last("exposure_value")
    if said:
        condition = said.at_iso or 100.0
        return Daylight(said.value - math.log2(condition / 100.0), (said,))
    return _from_rule(query, at) or _from_sky(query)


def _from_reading(aperture: Fact | None, shutter: Fact | None, at: Working) -> Daylight | None:
    number = aperture.value if aperture else at.aperture
    time = shutter.value if shutter else at.shutter
    speed = next((f.at_iso for f in (aperture, shutter) if f and f.at_iso), None) or at.film_speed
    if number is None:
        return None
    seconds = time or SAME_TIME
    ev = ambient.exposure_value(number, seconds, speed)
    return Daylight(ev, tuple(f for f in (aperture, shutter) if f), (), number, time, speed, relative=time is None)


def _from_rule(query: Query, at: Working) -> Daylight | None:
    """The rule named outright: f/16 at one over the film speed; a shutter of whole marks has those of EV 15 (1/125 for ISO 100), and by them an aperture is told; at 1/50 or 1/200 it is the rule's own."""
    if not patterns.search(r"sunny.?(?:16|sixteen|f.?/?.?16)|1/iso|one over (?:the )?iso", query.text, re.I) or query.asks_for("exposure_value"):
        return None
    sky = next((sky for sky in SKY_EV if sky[0] in query.cues and sky[0] != "sunny"), None)
    if sky is not None and sky[0] == "snow" and not patterns.search(r"snow|sand", query.text, re.I):
        return None
    by_marks = query.asks_for("aperture") and (at.shutter is None or math.isclose(scales.nearest_shutter(at.shutter, "whole").value, at.shutter, rel_tol=0.02))
    ev = SUNNY_EV if by_marks else ambient.exposure_value(16.0, 1.0 / at.film_speed, at.film_speed)
    if sky is not None:
        ev += sky[1] - SUNNY_EV
        return Daylight(ev, (), (Assumed("exposure_value", ev, "EV", f"{sky[2]}, by the sunny-16 rule; common practice, a meter or a test frame is surer"),))
    return Daylight(ev, (), (Assumed("exposure_value", ev, "EV", "the sunny-16 rule: f/16 at one over the film speed in bright sun; common practice"),))


def _from_sky(query: Query) -> Daylight | None:
    for cue, ev, name in SKY_EV:
        if cue == "snow" and not patterns.search(r"snow|sand", query.text, re.I):
            cue, ev, name = "snow", SUNNY_EV, "bright sun; on snow or sand itself a stop more"
        if cue in query.cues:
            why = f"{name}, by the sunny-16 rule; common practice, a meter or a test frame is surer"
            return Daylight(ev, (), (Assumed("exposure_value", ev, "EV", why),))
    return None


def offset(query: Query, of: str) -> Fact | None:
    """How far over or under the fill or the ambient light is wanted: the latest such fact."""
    placed = (of, "backdrop" if of == "ambient" else of)
    mine = [f for f in query.facts if f.quantity == "relation" and f.of in placed or f.quantity == "stops" and f.cue in ("less", "more") and f.of in ("", of)]
    return mine[-1] if mine else None


def signed(fact: Fact | None) -> float:
    """An offset in stops, minus for darker; nothing where none was said."""
    if fact is None:
        return 0.0
    return abs(fact.value) if fact.cue == "more" else -abs(fact.value)


def wanted(query: Query) -> tuple[float, tuple[Fact, ...], tuple[str, ...]]:
    """Stops by which the ambient light is to come out over (+) or under, by which fact, and what that means."""
    said = offset(query, "ambient")
    if said is None:
        return 0.0, (), ()
    if _told_of_it(query.text, said) or _told_of_the_light(query, said):
        return -signed(said), (said,), ()
    stops = signed(said)
    way = "over" if stops > 0 else "under"
    return stops, (said,), (f"The ambient light then lies {scales.speak_stops(abs(stops))} {way} a normal exposure.",) if stops else ()


_IS_SO = Pattern(r"\b(?P<thing>[a-z]+)(?:'s| is| are| sits| lies| reads| meters) (?:about |only |just )?$", re.I)
_SET_FOR = Pattern(r"\b(?:what|which|set|expose|exposed|aperture|shutter|stop|time)\b[^.?!]{0,24}\b(?:for|suits?|fits?) (?:the |my )?(?P<thing>[a-z]+)\b", re.I)


def _told_of_it(text: str, said: Fact) -> bool:
    """"the altar's two stops under the pews … what do I set for the altar": how dark it is, which the setting makes up for."""
    told, wanted = _IS_SO.search(text[: said.start]), _SET_FOR.search(text[said.end :])
    return told is not None and wanted is not None and told["thing"].lower() == wanted["thing"].lower()


_LIGHT_IS = Pattern(r"\b(?:light|sky|day|daylight|sun|sunlight|sunshine|scene)(?: here| today| now| outside| itself| there)*(?:'s| is| was| has (?:dropped|fallen|gone down|sunk|faded)(?: by)?) (?:about |only |just |some |a good )?$", re.I)
_THAN_THE_RULE = Pattern(r"[^.?!;]{0,20}\b(?:under|below|over|above|than|short of|off|from)(?: what)?(?: the)? (?:sunny.?(?:16|sixteen)|rule)\b", re.I)
_WISH = Pattern(r"\b(?:want|wish|like|make|give|expose|shoot|underexpose|overexpose|set|take|go|aim)\w*\b[^.?!;]*$", re.I)


def _told_of_the_light(query: Query, said: Fact) -> bool:
    """"the light is a stop lower than sunny 16: what shutter?": how dark it is, where nothing was measured and no wish is spoken of."""
    measured = query.has("exposure_value") or any(f.of == "ambient" and f.quantity in ("aperture", "shutter") for f in query.facts)
    if measured or not query.cues & {cue for cue, _, _ in SKY_EV}:
        return False
    return _LIGHT_IS.search(query.text[: said.start]) is not None or _THAN_THE_RULE.match(query.text, said.end) is not None and not _WISH.search(query.text[: said.start])

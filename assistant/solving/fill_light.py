"""Flash beside daylight: what the flash must read, and what two lights add up to on one face."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant import patterns, scales
from assistant.patterns import Pattern
from assistant.physics import ambient
from assistant.physics.flash import light_still_wanted, stops_from_key_plus_fill, stops_from_key_to_fill, sum_of_light
from assistant.places import ROOMS
from assistant.query import Ask, Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops
from assistant.solving import camera, marks
from assistant.solving.conventions import is_key_to_fill
from assistant.solving.daylight import Daylight, Working, daylight, offset, signed, working
from assistant.solving.flash import _assumptions, _facts, ask_for
from assistant.solving.ledger import close, line
from assistant.solving.lights import lights, preferred_unit
from assistant.solving.solution import Solution, needs

_SAME = 0.2
"""Stops within which a camera setting is taken to be the daylight's own exposure."""
_SUM = Pattern(r"\b(?:sum|plus|total|together|add(?:s|ed|ing)? (?:up|them|it|these|both)|both(?: lights| together)?|the two|same (?:face|subject|side|cheek|skin|spot|forehead|part of (?:him|her|it|the face))|overlap\w*|combined|for the pair|added|adds? to|on top)\b", re.I)
_WHAT_FLASH = Pattern(r"what (?:f-?stop |f-?number |aperture |reading )?(?:must|should|does|do i need|has|would) (?:the |my )?(?:flash|fill|strobe)|(?:flash|fill) (?:alone )?(?:need to|have to|must|should) (?:read|give|be|meter)", re.I)
_EACH_RIGHT = Pattern(r"\b(?:each|both|either)\b[^.?]*\b(?:right|correct|enough|proper|full|normal)\b|\balone\b[^?]*\b(?:right|correct)\b[^?]*\balone\b[^?]*\b(?:right|correct|same)\b", re.I)
_ADDS = Pattern(r"\b(?:add(?:s|ed|ing)?|gains?|exceeds?|contributes?|lifts?|raises?|brightens?|push(?:es)?)\b", re.I)
_THAN_ALONE = Pattern(r"\b(?:than|over|above|exceeds?|beyond|(?:compared|against|relative) ?(?:with|to)?) (?:it is |it would be )?(?:(?:with|from|by|to) )?(?:the |my )?(?:(?:flash|strobe|key) (?:alone|only|by itself|on its own|would give)|(?:just|only|plain) (?:the |my )?(?:flash|strobe|key))\b", re.I)


_ALL_LIGHT = Pattern(r"\btogether\b|\bfor the pair\b|\bboth\b|\bthe two\b|\btotal\b|\bsum\b|\badd(?:s|ed)? up\b|\bcombined\b", re.I)


_LEFT_AT = Pattern(r"\b(?:leave|stay|keep|left)\b[^.?]*\b(?:at|on)\b", re.I)


_OVER_IF_SET = Pattern(r"\b(?:is|are|will|would) (?:the |her |his |my |their )?(?:face|skin|cheek|subject|sitter|she|he|it|they|bride|model|frame)(?: be)? (?:then )?over\b|\b(?:over|too (?:bright|hot|much))\b[^.?]*\b(?:if|when|once) (?:i|we|the lens|the camera)\b|\bover (?:am|will|would|are|is|do) (?:i|we|she|he|it|they|her face|his face)\b[^.?]{0,24}\bat f|\b(?:if|when|once) i (?:set|shoot|leave|use|stay)\b[^.?]*\bover\b", re.I)
_OVER = Pattern(r"\bhow (?:far|much|many stops) (?:brighter|hotter|over)\b|\bstops over\b|\boverexpos\w*", re.I)
_A_FLASH = Pattern(r"\b(?:flash\w*|strobe\w*|speedlight|gun|head|key|fill|softbox|umbrella|brolly|monolight)\b", re.I)
_ALIKE = Pattern(r"\b(?:equals?|the same|as (?:bright|strong)(?:ly)? as|identical|match\w*|level)\b", re.I)


_ON_EITHER_SIDE = Pattern(r"\bleft (?:cheek|side|half)\b[^?]*\bright (?:cheek|side|half)\b|\bright (?:cheek|side|half)\b[^?]*\bleft (?:cheek|side|half)\b|\b(?:other|opposite) (?:cheek|side|half)\b", re.I)


def added(query: Query, ask: Ask) -> Solution | None:
    """Flash and ambient light on the same face: the aperture for both, or the stops added."""
    flash, room = _flash_reading(query), query.last("aperture", "ambient")
    if query.has("guide_number") or query.has("distance"):
        return None
    if ask.quantity == "stops" and _ON_EITHER_SIDE.search(query.text):
        return None  # each has a cheek of its own
    whole = _whole(query) if ask.quantity == "aperture" and _all_of_them(query) and not _ONE_ALONE.search(query.text) else None
    if whole is not None:
        return whole
    if ask.quantity == "aperture" and (_ONE_ALONE.search(query.text) or _alike(query) is not None):
        return _alike(query) if not _ONE_ALONE.search(query.text) else None
    if ask.quantity == "aperture" and flash and room and (query.last("shutter", "ambient") is None or len({f.value for f in query.all("shutter")}) == 1 and _ALL_LIGHT.search(query.text)) and not _WHAT_FLASH.search(query.text) and _SUM.search(query.text):
        loss, glass, _ = camera.loss_total(query)
        value = sum_of_light((flash.value, room.value)) * 2.0 ** (-loss / 2)
        return Solution(answers=(marks.aperture(value),), used=(flash, room, *glass, *query.all("shutter")), topic="ambient",
                        notes=("The two fall on the same face, so their light adds; squares of the f-numbers are summed.",))
    if ask.quantity == "stops" and flash and room and len(query.all("shutter")) < 2 and (adds := _WHAT_ADDS.search(query.text)):
        base = flash if adds["who"].lower() not in _OF_FLASH else room
        return Solution(answers=(marks.stops(2 * math.log2(sum_of_light((flash.value, room.value)) / base.value)),), used=(flash, room, *query.all("shutter")), topic="ambient", notes=("The two fall on the same face, so their light adds.",))
    if ask.quantity == "stops" and flash and room and len(query.all("shutter")) < 2 and _THAN_ALONE.search(query.text):
        return Solution(answers=(marks.stops(2 * math.log2(sum_of_light((flash.value, room.value)) / flash.value)),), used=(flash, room), topic="ambient", notes=("The two fall on the same face, so their light adds.",))
    if ask.quantity == "stops" and not (_A_FLASH.search(query.text) or _SUM.search(query.text)):
        return None  # two places, each with a reading of its own
    if ask.quantity == "stops" and flash and room and not query.has("shutter") and _LEFT_AT.search(query.text):
        over = 2 * math.log2(sum_of_light((query.all("aperture", "")[0].value if query.has("aperture") and query.all("aperture", "") else flash.value, room.value)) / flash.value)
        return Solution(answers=(marks.stops(over),), used=(flash, room, *query.all("aperture", "")), topic="ambient", notes=("The two fall on the same face, so their light adds.",))
    if ask.quantity == "stops" and flash and room and not query.has("shutter") and _OVER_IF_SET.search(query.text):
        set_at = query.all("aperture", "")[-1] if len(query.all("aperture")) > 2 else flash
        over = 2 * math.log2(sum_of_light((query.all("aperture", "")[0].value if len(query.all("aperture")) > 2 else flash.value, room.value)) / set_at.value)
        return Solution(answers=(marks.stops(over),), used=(flash, room, *query.all("aperture", "")), topic="ambient", notes=("The two fall on the same face, so their light adds.",))
    under = offset(query, "ambient") or (offset(query, "fill") if "ambient" in query.cues and _ROOM_WEAKER.search(query.text) else None)
    if ask.quantity == "aperture" and room and flash and _WHAT_FLASH.search(query.text) and _SUM.search(query.text) and flash.value > room.value:
        value = light_still_wanted(flash.value, room.value)
        return Solution(answers=(marks.aperture(value, "flash"),), used=(flash, room), topic="ambient", lead="The flash alone should read",
                        notes=("The two fall on the same face, so the squares of the f-numbers add up.",))
    if ask.quantity == "aperture" and flash and not room and under is not None and _SUM.search(query.text) and not query.has("shutter"):
        value = sum_of_light((flash.value, flash.value * 2.0 ** (signed(under) / 2)))
        return Solution(answers=(marks.aperture(value),), used=(flash, under), topic="ambient", notes=("Flash and ambient light on the same face add.",))
    beside = offset(query, "fill")
    if ask.quantity == "aperture" and room and not flash and beside is not None and _FOR_BOTH.search(query.text) and not query.has("power") and len({f.value for f in query.all("shutter")}) < 2:
        value = sum_of_light((room.value, room.value * 2.0 ** (signed(beside) / 2)))
        return Solution(answers=(marks.aperture(value, "both"),), used=(room, beside, *query.all("shutter"), *query.all("film_speed")), topic="ambient", notes=("The two fall on the same face, so their light adds.",))
    if ask.quantity == "stops" and (_EACH_RIGHT.search(query.text) or not query.facts and _ALIKE.search(query.text) and patterns.search(r"\bflash\b", query.text, re.I)) and (_SUM.search(query.text) or _ADDS.search(query.text) or _THAN_ALONE.search(query.text) or patterns.search(r"\bhow (?:far|much) over\b|\bstops over\b", query.text, re.I)):
        return Solution(answers=(marks.stops(1.0),), topic="ambient", notes=("Two equal lights on one face make twice the light of one.",))
    return _lift(query, under or offset(query, "fill")) if ask.quantity == "stops" and not query.has("shutter") else None


_FOR_BOTH = Pattern(r"\b(?:what|which)\b[^.?!]{0,50}\b(?:both together|the two together|the pair|sum of (?:the two|both)|both lights|them together|together)\b", re.I)
_ROOM_WEAKER = Pattern(rf"\b(?:ambient|daylight|sun(?:light)?|sky|window|{ROOMS})(?: light)?\b[^.?!;]{{0,40}}\b(?:weaker|dimmer|less|under|below|darker|down)\b", re.I)
_OF_FLASH = frozenset({"flash", "fill", "strobe", "gun"})
_WHAT_ADDS = Pattern(r"\bhow (?:much|many stops)\b[^?]{0,24}\b(?:does|do|will|would|is) (?:(?:the|my|that|those|this) )?(?:\w+ )?(?P<who>(?!(?:it|that|this|lens|film|filter|i|we|you|he|she|they)\b)[a-z]+?)(?: lights?)? (?:add|adding|contribut\w*|lift|raise|boost|gain|push(?: up)?|brighten|bring|make (?:it|her|him|them|the (?:face|subject|sitter|exposure)))\b", re.I)
_THAN_DAYLIGHT = Pattern(r"\b(?:than|over|above) (?:it is |it would be )?(?:with|from|by|in)? ?(?:just |only )?(?:the )?(?:daylight|ambient|sun|room|window|sky)(?: light)?(?: alone| only| by itself| on its own)?\b", re.I)


_ONE_ALONE = Pattern(r"\b(?:what|so|then|and|how much)\b[^.?,]{0,24}\b(?:flash|strobe|window|room|daylight|ambient)(?: light)? (?:alone|by itself|on its own)\b[^.?\d]{0,16}\??\s*$|(?:^|[.,;]\s*)(?:the )?(?:flash|strobe|window|room|daylight|ambient)(?: light)? (?:alone|by itself|on its own)(?: is| reads| gives)?(?: what)?\s*\?\s*$"
                     r"|\bwhat(?:'s|s)?\b(?:(?!\b(?:if|when|with|where|both|together)\b)[^.?,]){0,24}\b(?:flash|strobe|window|room|daylight|ambient)(?: light)?\b(?: (?:reads?|gives?|is|be|meters?))? (?:alone|by itself|on its own)\b", re.I)
"""One light by itself is asked for: at the end, or before what is told of the two."""


def takes_apart(query: Query) -> bool:
    """Whether two readings are told, and one light by itself is asked for."""
    return len(query.all("aperture")) == 2 and _ONE_ALONE.search(query.text) is not None


def _alike(query: Query) -> Solution | None:
    """"room and flash equal at f/8 on the same cheek, total": twice the light of the one reading."""
    read = query.all("aperture")
    if len(read) != 1 or query.has("shutter") or offset(query, "ambient") is not None or offset(query, "fill") is not None or not (_A_FLASH.search(query.text) and "ambient" in query.cues and _EQUAL_AT.search(query.text) and _SUM.search(query.text)):
        return None
    return Solution(answers=(marks.aperture(sum_of_light((read[0].value, read[0].value))),), used=(read[0],), topic="ambient", notes=("Two equal lights on one face make twice the light of one.",))


_EQUAL_AT = Pattern(r"\bso (?:does|is|do|are) (?:the |my |its |a )?\w+\b|\b(?:equal|the same|alike|matched|both|each)(?: \w+){0,2}? (?:at|f\W?\d|reads?|meters?|gives?)", re.I)


def _all_of_them(query: Query) -> bool:
    """"daylight f/5.6 plus flash f/5.6 plus another flash f/5.6": three lights and more, each with a reading."""
    read = query.all("aperture")
    return len(read) > 2 and any(f.of == "ambient" for f in read) and _SUM.search(query.text) is not None and all(f.of == "ambient" or _FLASH_SAYS.search(query.text[: f.start]) for f in read)


def _whole(query: Query) -> Solution:
    read = query.all("aperture")
    return Solution(answers=(marks.aperture(sum_of_light(tuple(f.value for f in read))),), used=(*read, *query.all("shutter")), topic="ambient", notes=("All fall on the same face, so their light adds; squares of the f-numbers are summed.",))


def _lift(query: Query, apart: Fact | None) -> Solution | None:
    """"the room is two stops under the flash and both hit her, how much brighter": what the second light adds to the first."""
    if apart is None or not (_ADDS.search(query.text) or _THAN_ALONE.search(query.text) or _SUM.search(query.text) and (_OVER.search(query.text) or _THAN_DAYLIGHT.search(query.text))):
        return None
    if len({f.value for f in query.all("aperture")}) > 1 and "lens" in query.text.lower():
        return None  # the lens stands elsewhere than the flash reads: over that, and not over the flash
    on_daylight = _THAN_DAYLIGHT.search(query.text) is not None or apart.of == "fill" and not _THAN_ALONE.search(query.text)
    stops = signed(apart) if (apart.of == "fill") == on_daylight else -signed(apart)
    base = "daylight" if on_daylight else "flash"
    return Solution(answers=(marks.stops(ambient.added_light_stops(-stops)),), used=(apart,), topic="ambient", notes=(f"That is how much brighter the face is than with the {base} alone.",))


def _flash_reading(query: Query) -> Fact | None:
    return query.last("aperture", "") or query.last("aperture", "fill") or query.last("aperture", "key") or query.last("aperture", "b")


_SKYLIGHT = r"(?:sun\w*|daylight|window(?: ?light)?|sky(?:light)?|ambient(?: light)?)"
_DAYLIGHT_KEY = Pattern(rf"\b{_SKYLIGHT}\b[^.?!]{{0,40}}\b(?:key|main)\b|\b(?:key|main)(?: light)?(?: is| comes from|,| being)* (?:the |a |my )?{_SKYLIGHT}\b", re.I)


def _of_ratio(query: Query) -> Fact | None:
    """"the sun is the key at f/16, lighting ratio 3:1": how far under it the fill lies (contract 7)."""
    ratio = query.last("ratio")
    if ratio is None or ratio.bad or ratio.value <= 0 or query.has("relation") or not _DAYLIGHT_KEY.search(query.text):
        return None
    wide = max(ratio.value, 1 / ratio.value)
    over = wide if is_key_to_fill(query) else wide - 1
    return replace(ratio, quantity="relation", value=math.log2(over), of="fill", to="ambient", cue="less") if over >= 1 else None


def fill(query: Query, ask: Ask) -> Solution | None:
    """Power, distance or guide number of a flash so many stops from the ambient light."""
    said, room = offset(query, "fill") or _of_ratio(query), offset(query, "ambient")
    if ask.quantity == "aperture":
        return _fill_reading(query, said)
    if ask.quantity == "stops":
        return _fill_under(query, ask)
    if ask.quantity in ("power", "distance") and said is not None:
        read = _from_its_reading(query, said, ask.quantity)
        if read is not None:
            return read
    if ask.quantity not in ("power", "distance", "guide_number", "film_speed") or (ask.quantity != "guide_number" and not query.has("guide_number")):
        return None
    at = working(query)
    light = daylight(query, at)
    if light is None:
        return None
    if said is not None and at.aperture and light.aperture is None and at.shutter is None and not query.has("exposure_value"):
        light = Daylight(ambient.exposure_value(at.aperture, 1.0, at.film_speed), (), (), at.aperture, None, at.film_speed, relative=True)  # "the sunlit exposure is f/16": its time is whatever suits
    if ask.quantity == "guide_number" and said is None and room is None and light.aperture is None and at.aperture and at.shutter is None and not query.has("exposure_value"):
        return None  # a sky by the way: the flash alone lights the subject at that opening
    if at.loss and _RIGHT_THROUGH.search(query.text):
        light = replace(light, ev=light.ev + at.loss)  # what it was found right at has the filter in it
    light = _as_told(query, light, at) if said is not None else light
    if light.assumed and not query.has("aperture") and _READ_IN_TIME.search(query.text):
        return needs(("aperture",), "I need the aperture that this time of the daylight goes with.", query.facts, "ambient")
    target = _target(query, light, at, said, room)
    if target is None:
        return None
    if isinstance(target, Solution):
        return target
    return _for_target(query, ask, target, light, at, tuple(f for f in (said, room) if f))


_RIGHT_THROUGH = Pattern(r"\b(?:with|through|behind|under)\b[^?!]{0,60}?\b(?:nd\w*|filter|glass|grey|it|polari[sz]er)\b[^?!]{0,60}?\b(?:(?:is|are|comes?|came|was|gets?)(?: out)?(?: just)? (?:right|correct\w*|properly|spot on)|correctly exposed|exposed correctly|exposes (?:right|correctly))\b(?! exposure)(?![^?!]*\bwithout\b)", re.I)
_READ_IN_TIME = Pattern(r"\b(?:shade|sun(?:light|shine)?|daylight|sky|light|overcast)(?: \w+){0,2} (?:calls for|needs|reads?|meters?(?: at)?|asks for|wants|says|gives) (?:an? )?1/\d", re.I)
"""A reading of the light with its aperture left out: "open shade calls for 1/60"."""
_NEAR_THE_SKY = 2.0
"""Stops by which a reading may differ from what a sky usually gives."""


def _as_told(query: Query, light: Daylight, at: Working) -> Daylight:
    """"open shade, f/5.6 at 1/60 … fill two stops under": an aperture and a time that were told go before what such a sky usually gives."""
    number, time = query.last("aperture", ""), query.last("shutter", "")
    if not light.assumed or number is None or time is None or at.loss or at.aperture is None or at.shutter is None or query.has("sync"):
        return light
    ev = ambient.exposure_value(at.aperture, at.shutter, at.film_speed)
    told = Daylight(ev, (number, time), (), at.aperture, at.shutter, at.film_speed)
    return told if abs(ev - light.ev) <= _NEAR_THE_SKY else light


def _from_its_reading(query: Query, said: Fact, asked: str) -> Solution | None:
    """"the sun reads f/11, my flash at full gives f/16, as fill a stop and a half under": no guide number needed."""
    room, flash, powers = query.last("aperture", "ambient"), query.all("aperture", ""), query.all("power")
    away = query.all("distance")
    if room is None or query.has("guide_number"):
        return None
    if asked == "distance":
        return _from_its_place(query, said, room, flash, away)
    flash = flash if len(flash) < 2 else [f for f in flash if f.value != room.value or _FLASH_SAYS.search(query.text[: f.start])]  # the lens set as the daylight reads
    if len(flash) != 1 or len(powers) != 1 or not _FLASH_SAYS.search(query.text[: min(flash[0].start, powers[0].start)]) and not _FLASH_SAYS.search(query.text[: flash[0].start]):
        return None
    target = ambient.aperture_after(room.value, signed(said))
    value = powers[0].value * (target / flash[0].value) ** 2
    beside = tuple(f for f in away if len(away) == 1 or _STAYS.search(query.text))  # it stays where it was read
    found = Solution(answers=(marks.power(value),), used=(room, *query.all("aperture", ""), powers[0], said, *beside, *query.all("shutter"), *query.all("film_speed")), topic="ambient", notes=(f"The flash alone must read f/{target:.3g}.",))
    return _in_reach(found, Ask("power"), value, away[0].value if len(away) == 1 else None, target)


def _from_its_place(query: Query, said: Fact, room: Fact, flash: Sequence[Fact], away: Sequence[Fact]) -> Solution | None:
    """"the sun reads f/16, my flash gives f/16 from two metres, as fill two stops under": the distance where it reads so much."""
    read = [f for f in flash if away and 0 < away[0].start - f.end < 24 and _FLASH_SAYS.search(query.text[: f.start])]
    if len(away) != 1 or len(read) != 1 or len({f.value for f in query.all("power")}) > 1 or any(f.value != room.value for f in flash if f is not read[0]):
        return None
    target = ambient.aperture_after(room.value, signed(said))
    unit = "m" if away[0].unit in ("m", "cm") else "ft"
    used = (room, *flash, *away, said, *query.all("power"), *query.all("shutter"), *query.all("film_speed"))
    return Solution(answers=(marks.distance(away[0].value * read[0].value / target, unit),), used=used, topic="ambient", notes=(f"The flash alone must read f/{target:.3g}.",))


def _fill_under(query: Query, ask: Ask) -> Solution | None:
    """How many stops the flash alone lies under or over the ambient light."""
    at = working(query)
    light = daylight(query, at)
    one = next((lamp for lamp in lights(query) if lamp.guide_number is not None and lamp.distance is not None), None)
    if one is None:
        return _readings_apart(query, ask)
    if light is None or (light.relative and light.aperture is None):
        return None
    time = at.shutter or light.shutter
    natural = ambient.aperture(light.ev - at.loss, time or 1.0, at.film_speed)
    reads = close("aperture", one.lines() + [line("loss", at.loss), line("film_speed", at.film_speed)])
    value = 2 * math.log2(reads / natural)
    used = tuple(dict.fromkeys(light.facts + at.facts + _facts([one])))
    return Solution(answers=(marks.stops(value, "fill"), marks.aperture(reads, "flash")), used=used, assumed=light.assumed + _assumptions(query, [one], at.assumed), topic="ambient",
                    notes=(f"The flash alone reads f/{reads:.3g}, the ambient light f/{natural:.3g}.",))


_UNDER_ROOM = Pattern(r"\b(?:under|over|down|up) by\W*(?:what|how much)?\W*$|\b(?:under|below|over|above|than)\s+(?:the |my )?(?:daylight|ambient|sun|sky|room|window|(?:open )?shade|overcast)\b|\b(?:is|does|lies) (?:the |my )?(?:fill|flash)\b|\bwhich\b[^?]{0,24}\b(?:brighter|stronger|darker|weaker|dimmer)\b", re.I)


_WHICH_ONE = Pattern(r"\bwhich\b[^?]{0,24}\b(?:brighter|stronger|darker|weaker|dimmer)\b", re.I)
_WEAKER = Pattern(r"\b(?:darker|weaker|dimmer)\b", re.I)
_FLASH_SAYS = Pattern(r"\b(?:flash|strobe|fill|light|gun|head|full(?: power)?|it)\b(?:[^.,;?!\d]{0,16}| (?:on|at) full(?: power)? (?:from|at) [\d.]+ ?(?:m|metres?|meters?|ft|feet) (?:reads?|measures?|meters?|gives?|is) )$", re.I)
_STAYS = Pattern(r"\bsame (?:spot|place|distance|position)\b|\b(?:stays|left|leave it) (?:where|there|put)\b", re.I)


_THAN_THE_FLASH = Pattern(r"\b(?:than|over|under|above|below|from|to|against|with|beyond) (?:the |my )?(?:fill|flash|strobe)\b", re.I)


def _readings_apart(query: Query, ask: Ask) -> Solution | None:
    """The flash's own reading against the ambient light's."""
    flash, room = _flash_reading(query), query.last("aperture", "ambient")
    if flash is None or room is None or any(f.of != "ambient" for f in query.all("shutter")) or query.has("shutter") and not _FLASH_SAYS.search(query.text[: flash.start]) or not (_UNDER_ROOM.search(query.text) or ask.of == "fill" and not _THAN_THE_FLASH.search(query.text)):
        return None
    value = aperture_difference_stops(flash.value, room.value)
    if _WHICH_ONE.search(query.text):
        note = "They are alike." if abs(value) < 0.05 else f"The {'ambient light' if (value < 0) == (_WEAKER.search(query.text) is None) else 'flash'} is the {'weaker' if _WEAKER.search(query.text) else 'brighter'}."
        return Solution(answers=(marks.stops(abs(value) * (-1 if _WEAKER.search(query.text) else 1)),), used=(flash, room, *query.all("shutter"), *query.all("film_speed")), topic="ambient", notes=(note,))
    return Solution(answers=(marks.stops(value, "fill"),), used=(flash, room, *query.all("shutter"), *query.all("film_speed")), topic="ambient")


_ON_THE_LENS = Pattern(r"\b(?:what|which|where)\b[^.?!]{0,30}\b(?:on|to|for) (?:the|my) (?:lens|camera|ring|barrel)\b|\b(?:what|where)\b(?! (?:i|we) (?:leave|keep|have|set|put)\b)[^.?!]{0,16}\b(?:set|put|have|leave|turn) (?:the|my) (?:lens|camera|ring)\b|\b(?:what|where) (?:does|should|must) (?:the|my) (?:lens|ring|camera)\b", re.I)
"""It is the camera that is set, not the fill that is read; "that is where I leave the camera" asks nothing."""
_FOR_DAYLIGHT = Pattern(r"\b(?:for|expos\w+|balanced (?:for|to)|suits?) (?:the )?(?:daylight|ambient|sun(?:light)?|sky|room|window)\b[^.?]{0,30}$", re.I)


def _fill_reading(query: Query, said: Fact | None) -> Solution | None:
    """What the fill must read on its own, to be set with a flash's own dial or a meter."""
    if said is None and query.has("ratio"):
        return _fill_of_ratio(query)
    if said is None or not patterns.search(r"fill|flash", query.text, re.I) or query.has("distance"):
        return None
    room = query.last("aperture", "ambient")
    if room is None and len(query.all("aperture")) == 1 and _FOR_DAYLIGHT.search(query.text[: query.all("aperture")[0].start]):
        room = query.all("aperture")[0]
        return Solution(answers=(marks.aperture(ambient.aperture_after(room.value, signed(said)), "fill"),), used=(room, said, *query.all("shutter"), *query.all("film_speed")), topic="ambient", lead="The fill alone should read",
                        notes=(f"The camera stays at f/{room.value:g} for the daylight.",))
    if room is None or query.last("aperture", "") or "ambient" not in said.to or patterns.search(r"what (?:aperture|f.?stop|stop) (?:for|suits) the (?:daylight|ambient|sun)", query.text, re.I):
        return None
    value = ambient.aperture_after(room.value, signed(said))
    if said.cue == "less" and _ON_THE_LENS.search(query.text):
        return Solution(answers=(marks.aperture(room.value), marks.aperture(value, "fill")), used=(room, said), topic="ambient", notes=("The camera is set for the daylight; the fill alone reads less.",))
    return Solution(answers=(marks.aperture(value, "fill"),), used=(room, said), topic="ambient", lead="The fill alone should read",
                    notes=(f"The camera stays at f/{room.value:g} for the daylight.",))


def _fill_of_ratio(query: Query) -> Solution | None:
    """"the sun is the key at f/16, what must the fill read for 3:1": so far under the sun as the ratio says (contract 7)."""
    from assistant.solving.conventions import is_key_to_fill

    room, wide = query.last("aperture", "ambient"), query.all("ratio")[-1].value
    if room is None or len(query.all("aperture")) != 1 or wide <= 1 or any(query.has(q) for q in ("distance", "guide_number", "power", "stops")) or not _WHAT_FLASH.search(query.text):
        return None
    stops = stops_from_key_to_fill(wide) if is_key_to_fill(query) else stops_from_key_plus_fill(wide)
    named = "key to fill, each read alone" if is_key_to_fill(query) else "(key + fill) to fill"
    return Solution(answers=(marks.aperture(ambient.aperture_after(room.value, -stops), "fill"),), used=(room, query.all("ratio")[-1], *query.all("shutter"), *query.all("film_speed")), topic="ambient", lead="The fill alone should read",
                    notes=(f"Counted as {named}.",))


def _target(query: Query, light: Daylight, at: Working, said: Fact | None, room: Fact | None) -> float | Solution | None:
    """The f-number the flash must give by itself."""
    time = at.shutter or light.shutter
    if time is None and not light.relative:
        if said is not None:  # the fill is so much under what the lens is set to, whatever time goes with it
            return needs(("aperture",), "I need the aperture you are at, or the shutter speed that goes with this light.", light.facts + at.facts, "ambient")
        return needs(("shutter",), "I need the shutter speed, or your sync speed.", light.facts + at.facts, "ambient")
    natural = ambient.aperture(light.ev - at.loss, time or 1.0, at.film_speed)
    if light.aperture is None and at.aperture and abs(2 * math.log2(at.aperture / natural)) < _SAME:
        natural = at.aperture
    if said is not None:
        return float(natural * 2.0 ** (signed(said) / 2))
    if room is not None:
        return at.aperture or float(natural * 2.0 ** (-signed(room) / 2))
    if query.cues & {"same_light", "normal"} or patterns.search(r"\b(?:match|balance|equal|same as|level with|as bright as)\b", query.text, re.I):
        return natural
    if patterns.search(r"\bfill", query.text, re.I) and at.aperture is None:
        return needs(("stops",), "I need how many stops under the daylight the fill should lie; one to two is usual.", light.facts + at.facts, "ambient")
    return None


def _for_target(query: Query, ask: Ask, target: float, light: Daylight, at: Working, offsets: tuple[Fact, ...]) -> Solution | None:
    found = [lamp for lamp in lights(query) if lamp.guide_number is not None or lamp.distance is not None] or lights(query)
    one = replace(found[0], reading=None)
    lacking = tuple(q for q, v in (("guide_number", one.guide_number), ("distance", one.distance)) if v is None and q != ask.quantity)
    if lacking:
        return needs(lacking, ask_for(lacking), light.facts + at.facts + offsets, "ambient")
    loss, loss_facts, _ = camera.loss_total(query)
    lines = one.lines(ask.quantity) + [line("loss", loss), line("aperture", target)] + ([] if ask.quantity == "film_speed" else [line("film_speed", at.film_speed)])
    value = close(ask.quantity, lines)
    unit = preferred_unit(query, ask.unit)
    answer = marks.power(value) if ask.quantity == "power" else marks.distance(value, unit) if ask.quantity == "distance" else \
        marks.film_speed(value) if ask.quantity == "film_speed" else marks.guide_number(value / (0.3048 if unit == "ft" else 1.0), "m" if unit in ("m", "cm") else "ft")
    used = tuple(dict.fromkeys(light.facts + at.facts + offsets + _facts([one], loss_facts)))
    assumed = light.assumed + _assumptions(query, [one], at.assumed, ask.quantity)
    notes = (f"The flash alone must read f/{target:.3g}.", _camera_note(light, at, target if room_set(offsets) else None))
    solution = Solution(answers=(answer,), assumed=assumed, used=used, lines=(*lines, line(ask.quantity, value)), topic="ambient").noting(*notes)
    return _in_reach(solution, ask, value, one.distance, target)


def room_set(offsets: tuple[Fact, ...]) -> bool:
    """Whether it is the ambient light that was placed, so that the flash sets the aperture."""
    return bool(offsets) and all(f.of in ("ambient", "backdrop") for f in offsets)


def _camera_note(light: Daylight, at: Working, target: float | None) -> str:
    if light.relative or at.shutter is None:
        return ""
    number = at.aperture or target or ambient.aperture(light.ev - at.loss, at.shutter, at.film_speed)
    return f"Camera at f/{number:.3g} and {marks.shutter(at.shutter).set} s."


def _in_reach(solution: Solution, ask: Ask, value: float, distance: float | None, target: float) -> Solution:
    """More than full power is out of reach; how near the flash would have to be."""
    if ask.quantity != "power" or value <= 1.0005 or distance is None:
        return solution
    unit = next((f.unit for f in solution.used if f.quantity == "distance"), "ft")
    nearer = marks.distance(distance / math.sqrt(value), unit)
    note = f"That is {scales.speak_stops(math.log2(value))} more than full: at full power bring the flash to {float(nearer.value):.3g} {nearer.unit}."
    return replace(solution, status="out_of_reach", alternatives=((marks.power(1.0), nearer),), lead="Out of reach; it would take").noting(note)



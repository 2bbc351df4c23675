"""Film: rating, push and pull, long times, old film, old speed scales, how far off one may be.

Push and pull count from box speed (contract 9 and 19); the trade's rules of thumb are
said to be such.
"""

from __future__ import annotations

import math
import re

from assistant import patterns, scales
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics.film import OLD_SCALES, exposure_index, old_scale_from_iso
from assistant.query import OFFERED, Ask, Fact, Query
from assistant.records import replace
from assistant.scales import speak_stops
from assistant.solving import box_speed, bracket, camera, film_aged, film_compared, marks, misset_meter, one_end, reach, reciprocity, safe_settings
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.film_result import came_out_short, lacks_now
from assistant.solving.reciprocity import done as _done
from assistant.solving.solution import Solution, needs

LATITUDE: tuple[tuple[str, str, tuple[float, float]], ...] = (
    # kind of film, what to say, stops that pass under and over
    # common practice and one test, gathered from forums and handouts; no standard behind them
    (r"slide|chrome|transparen|reversal|trannies", "Slide film: half a stop either way, at most one; err on the dark side, since blown highlights are gone. Bracket in half or third stops.", (0.5, 0.5)),
    (r"black.?and.?white|b ?& ?w|\bbw\b|b/w", "Black-and-white negative: one to two stops over is fine, about one under at most.", (1.0, 2.0)),
    (r"neg|print|colou?r", "Colour negative: two or three stops over is usually fine, one under is usable, two under is thin and grainy. Err on the side of too much.", (1.0, 3.0)),
)
_LATITUDE_ASKED = Pattern(r"latitude|how far off|how (?:much|far) (?:out|wrong|off)|how (?:many stops|much|far)? ?(?:over|under|off|out) (?:can|may|will)|toleran|forgiv|get away with|can i be", re.I)
_OVER = Pattern(r"\b(?:over|overexpos\w*|more (?:light|exposure)|dens\w+|extra|hot|generous\w*|heav\w+|fat\w*|thick\w*|more than (?:the )?box)\b", re.I)
_UNDER = Pattern(r"\b(?:under|underexpos\w*|less (?:light|exposure)|thin\w*|less than (?:the )?box)\b", re.I)


def solve(query: Query) -> Solution | None:
    """A question about film, or None."""
    if query.claim:
        return claim_about_film(query)
    found = safe_settings.solve(query) or one_end.solve(query) or bracket.solve(query)
    if found:
        return found
    for ask in query.asks:
        for row in _ROWS.get(ask.quantity, ()):
            found = row(query, ask)
            if found:
                return found
    return None


def _is_exposure(query: Query) -> bool:
    return query.has("guide_number") or query.has("distance") or query.has("aperture") or query.has("exposure_value")


def claim_about_film(query: Query) -> Solution | None:
    """A rating or a tolerance put up for a yes or a no."""
    return claimed_rating(query) or claimed_error(query) or _claimed_way(query) or _claimed_latitude(query)


def _claimed_latitude(query: Query) -> Solution | None:
    """"two thirds over on slide, will that do?", by the rules of thumb."""
    figures = [f for f in query.facts if f.quantity in ("stops", "signed", "loss", "relation", "push", "number")]
    error = figures[0] if len(figures) == 1 and figures[0].quantity != "number" else None
    film = next(((limits, words) for pattern, words, limits in LATITUDE if patterns.search(pattern, query.text, re.I)), None)
    if error is None or film is None or _is_exposure(query) or error.quantity == "push":
        return None
    over = error.cue == "more" or error.unit == "+" or (error.cue != "less" and error.unit != "-" and bool(_OVER.search(query.text)))
    if not over and not _UNDER.search(query.text) and error.cue != "less":
        return None
    holds = abs(error.value) <= film[0][1 if over else 0] + 0.01
    lead = f"{'Yes' if holds else 'No'}, by the rule of thumb. {film[1]} This is common practice, no standard."
    return _done((Quantity("claim", holds, ""),), error, lead=lead)


def claimed_error(query: Query) -> Solution | None:
    """"400 film shot at 800, does that make it one stop under?": what the rating did against what is said of it."""
    speeds = [f for f in query.facts if f.quantity in ("film_speed", "rated")]
    said = next((f for f in query.facts if f.quantity in ("stops", "relation") and f.cue in ("less", "more")), None)
    if said is None or len(speeds) != 2 or not _RATED_AT.search(query.text) or _is_exposure(query):
        return None
    box, rated = (speeds[0], speeds[1]) if speeds[1].quantity == "rated" else box_and_rated(speeds, query.text)
    off = -scales.film_speed_difference_stops(box.value, rated.value)
    way = 1 if said.cue == "more" else -1
    holds = off * way > 0 and within(bound_of(query.text.lower()[: said.start])[0], abs(off) - abs(said.value), 0.1)
    word = "over" if off > 0 else "under"
    return _done((Quantity("claim", holds, ""), marks.stops(off)), box, rated, said, lead=f"{'Yes' if holds else 'No'}: ISO {box.value:g} film exposed as ISO {rated.value:g} is {speak_stops(abs(off))} {word}exposed.")


_WAY_CLAIMED = Pattern(r"\b(?:(?P<over>over)|under)[\s-]?expos\w*|\b(?:too much|(?P<little>too little|not enough)) (?:light|exposure)\b|\b(?:(?P<dense>dense|hot)|thin)\b", re.I)
_WAY_DENIED = Pattern(r"\b(?:not|no|never|without|isn't|doesn't|won't|didn't)\b[^.?!]{0,16}$", re.I)


def _claimed_way(query: Query) -> Solution | None:
    """"metered my 400 film as though it were 200, does that underexpose it?": which way, and no figure of how far."""
    speeds, ways = [f for f in query.facts if f.quantity in ("film_speed", "rated")], list(_WAY_CLAIMED.finditer(query.text))
    if len(speeds) != 2 or len(ways) != 1 or len({f.quantity for f in query.facts} - {"film_speed", "rated", "place", "remark"}) or not _RATED_AT.search(query.text) or _WAY_DENIED.search(query.text[: ways[0].start()]):
        return None
    box, rated = (speeds[0], speeds[1]) if speeds[1].quantity == "rated" and speeds[0].quantity != "rated" else box_and_rated(speeds, query.text)
    off = -scales.film_speed_difference_stops(box.value, rated.value)
    said = ways[0].group().lower()
    over = bool(ways[0]["over"] or ways[0]["dense"]) or "much" in said
    holds = off > 0.1 if over else off < -0.1
    word = "over" if off > 0 else "under"
    return _done((Quantity("claim", holds, ""), marks.stops(off)), box, rated, lead=f"{'Yes' if holds else 'No'}: ISO {box.value:g} film exposed as ISO {rated.value:g} is {speak_stops(abs(off))} {word}exposed.")


_METERED_AT = Pattern(r"\b(?:meter|rate|expose|shoot|dial)\w*(?: (?:it|this|that|them|the \w+|in))* (?:at|to|as|for|on)? ?$", re.I)


def _rated_bare(query: Query) -> Fact | None:
    """"I meter it at 300": a rating that is no mark of the scale."""
    return next((f for f in query.facts if f.quantity == "number" and f.value >= 6 and _METERED_AT.search(query.text[: f.start])), None)


def claimed_rating(query: Query) -> Solution | None:
    """"pushed one stop I meter it at 200, don't I", "400 to 1600 is a one-stop push": the rating that is claimed against the right one, or the stops."""
    box, push, rated = query.first("film_speed"), query.last("push"), query.last("rated") or _rated_bare(query) or query.last("film_speed")
    pair = query.first("number_range") if box is None else None
    if pair is not None and scales.is_film_speed_mark(pair.value) and scales.is_film_speed_mark(pair.other):
        box, rated = replace(pair, quantity="film_speed", other=math.nan), replace(pair, quantity="rated", value=pair.other, other=math.nan, start=pair.end - 1)
    if box is None or push is None or rated is None or rated is box or _is_exposure(query):
        return None
    right = exposure_index(box.value, -push.value)
    holds = abs(scales.film_speed_difference_stops(right, rated.value)) < 1 / 6
    way = "faster" if push.value > 0 else "slower"
    lead = f"{'Yes' if holds else 'No'}: {'pushed' if push.value > 0 else 'pulled'} {speak_stops(abs(push.value))} is rated {speak_stops(abs(push.value))} {way} than the box, ISO {right:g}."
    if push.start > max(box.start, rated.start) and box.value != rated.value:
        off = scales.film_speed_difference_stops(box.value, rated.value)
        lead = f"{'Yes' if holds else 'No'}: ISO {box.value:g} to ISO {rated.value:g} is a {'push' if off > 0 else 'pull'} of {speak_stops(abs(off))}."
        return _done((Quantity("claim", holds, ""), marks.stops(off)), *((pair, push) if pair else (box, push, rated)), lead=lead)
    return _done((Quantity("claim", holds, ""), marks.film_speed(right)), box, push, rated, lead=lead)


# --- the speed to set -------------------------------------------------------------------------------


_HABIT = Pattern(r"\bbox\b|\bneg(?:ative)?s?\b|\bslides?\b|\bchromes?\b|\bfilm\b|\balways\b", re.I)
_THE_BOX = Pattern(r"(?:the |its )?box(?: speed)?", re.I)


def _film_speed(query: Query, ask: Ask) -> Solution | None:
    """The speed to rate a film at: pushed, pulled, always over, or old."""
    by_reach = reach.film_for(query)
    if by_reach is not None:
        return by_reach
    speeds = query.all("film_speed")
    said = next((f for f in speeds if f.unit or scales.is_film_speed_mark(f.value)), speeds[0] if speeds else None)
    if said is None and query.has("push") and {f.quantity for f in query.facts} <= {"push", "place", "remark"}:
        return needs(("film_speed",), "I need the box speed of the film.", tuple(query.all("push")), "film")
    habit = query.all("stops") + query.all("relation") + query.all("signed")
    if said is None and len(habit) == 1 and not query.has("rated") and _HABIT.search(query.text) and (_OVER.search(query.text) or _UNDER.search(query.text) or habit[0].cue or patterns.search(r"stops? (?:too )?(?:slow|fast)", query.text, re.I)) and {f.quantity for f in query.facts if not _THE_BOX.fullmatch(f.said)} <= {"stops", "relation", "signed", "place", "remark"}:
        return needs(("film_speed",), "I need the box speed of the film.", tuple(habit), "film")
    if said is None and query.has("years") and {f.quantity for f in query.facts} <= {"years", "stops", "loss", "place", "remark"}:
        return needs(("film_speed",), "I need the box speed of the film.", tuple(query.facts), "film")
    if said is not None and len(query.facts) == 1 and query.cues & {"push", "pull"}:
        return needs(("stops",), f"I need by how many stops it is to be {'pulled' if 'pull' in query.cues else 'pushed'}.", (said,), "film")
    if (faster := film_compared.which_faster(query) or film_compared.so_much_faster(query, ask)) is not None:
        return faster
    if (by_time := film_compared.film_for_time(query)) is not None:
        return by_time
    if said is None or _is_exposure(query) or (query.has("shutter") and not query.has("years")):
        return None
    for rule in (film_aged.when_new, box_speed.behind, film_compared.degrees_after, _for_filter, _other_scale, film_aged.rating, _pushed_speed, _always_over):
        found = rule(query, said, ask)
        if found:
            return _of_those_offered(query, found)
    return None


def _of_those_offered(query: Query, found: Solution) -> Solution:
    """"50 or 200 on the meter?": both stand in the reply."""
    offered = tuple(f for f in query.all("remark") if f.cue == OFFERED)
    if len(offered) != 2 or not found.answers:
        return found
    return replace(found, used=(*found.used, *offered), notes=(f"Of ISO {offered[0].value:g} and ISO {offered[1].value:g} that is ISO {min((f.value for f in offered), key=lambda v: abs(math.log2(v / float(found.answers[0].value)))):g}.", *found.notes))


_METER_SET = Pattern(r"\b(?:meter|spot ?meter|dial)\b(?! (?:says|reads|said|read|wants|gives))", re.I)


def _for_filter(query: Query, said: Fact, ask: Ask) -> Solution | None:
    """"a filter of factor 2, film of 125: what speed on the meter": the film is slower by the factor behind it."""
    lost, facts, _ = camera.loss_total(query)
    if not facts or lost <= 0 or len(query.all("film_speed")) != 1 or not _METER_SET.search(query.text) or any(query.has(q) for q in ("guide_number", "aperture", "distance", "push", "stops")):
        return None
    return Solution(answers=(marks.film_speed(said.value / 2.0**lost),), used=(said, *facts), assumed=camera.assumed(query), topic="film", notes=("Then the meter allows for the filter by itself.",))


def _other_scale(query: Query, said: Fact, ask: Ask) -> Solution | None:
    """DIN, and the old GOST scale."""
    text = query.text.lower()
    if patterns.search(r"\bgost\b", text) and said.unit in OLD_SCALES:
        told = tuple(f for f in query.all("remark") if said.cue == "told")
        note = f"{said.unit} {said.other:g}: {_SCALE_NOTES[said.unit]}" if not told else f"{said.unit} {said.other:g}, by {' for '.join(f'{f.value:g}' for f in told)} as you told it."
        return _done((marks.film_speed(said.value),), said, *told, notes=(note,))
    if patterns.match(r"\W*deg", query.text[said.end :], re.I) and said.unit != "DIN" and said.value < 50:
        return _done((marks.film_speed(scales.iso_from_din(said.value)),), said, lead=f"ISO {scales.iso_from_din(said.value):g} ({said.value:g} degrees, the DIN scale).")
    rated = query.last("rated")
    if rated is not None and rated.unit == "DIN":
        return _done((marks.film_speed(rated.value),), rated)
    if said.unit == "DIN":
        return _done((marks.film_speed(said.value),), said) if not query.has("push", "stops") and not query.has("push") else None
    old = next((name for name in OLD_SCALES if name.lower() in text), None)
    if old is not None and not said.unit and len(query.all("film_speed")) == 1 and not query.has("push") and not query.has("stops"):
        there = old_scale_from_iso(old, said.value)
        return _done((Quantity("film_speed", there, old), marks.film_speed(said.value)), said, lead=f"{old} {there:.3g} (ISO {said.value:g}).", notes=(f"{_SCALE_NOTES[old][0].upper()}{_SCALE_NOTES[old][1:]}",))
    if patterns.search(r"\bdin\b|degrees", text) and len(query.all("film_speed")) == 1 and not query.has("push"):
        degrees = scales.din_from_iso(said.value)
        return _done((Quantity("film_speed", degrees, "DIN"), marks.film_speed(said.value)), said, lead=f"{degrees:g} DIN (ISO {said.value:g}/{degrees:g}°).")
    return None


_SCALE_NOTES = {
    "GOST": "the old GOST number is about nine tenths of the ISO number (from memory; a sixth of a stop).",
}


def _pushed_speed(query: Query, said: Fact, ask: Ask) -> Solution | None:
    push = query.last("push")
    if push is None:
        return None
    value = exposure_index(said.value, -push.value)
    way = "faster" if push.value > 0 else "slower"
    notes = (f"{'Pushing' if push.value > 0 else 'Pulling'} counts from box speed: {speak_stops(abs(push.value))} {way}; tell the lab.",)
    return _done((marks.film_speed(value),), said, push, notes=notes)


def _always_over(query: Query, said: Fact, ask: Ask) -> Solution | None:
    """"Always one stop over" halves the rated speed."""
    moved = next((f for f in query.facts if f.quantity in ("stops", "signed", "ev_stops", "loss", "relation")), None)
    if moved is None or query.has("power") and not _ANOTHER_FILM.search(query.text):
        return None
    came_out = came_out_short(query.text, moved)
    if _ANOTHER_FILM.search(query.text) and (lacks := came_out or lacks_now(query.text, moved)):
        value = exposure_index(said.value, -lacks * abs(moved.value))
        return _done((marks.film_speed(value),), said, moved, notes=(f"There is too {'little' if lacks > 0 else 'much'} light: a {'faster' if lacks > 0 else 'slower'} film makes up for it.",))
    if came_out:
        value = exposure_index(said.value, came_out * abs(moved.value))
        return _done((marks.film_speed(value),), said, moved, notes=(f"They came out with too {'little' if came_out > 0 else 'much'} light: a {'slower' if came_out > 0 else 'faster'} rating makes up for it.",))
    over = moved.cue == "more" or moved.unit == "+" or (moved.cue != "less" and moved.unit != "-" and bool(_OVER.search(query.text)) and not _UNDER.search(query.text))
    under = moved.cue == "less" or moved.unit == "-" or (not over and bool(_UNDER.search(query.text)))
    beside = patterns.match(r"\W*(?:too )?(?:(?P<less>less|under|darker)|more|over|extra|brighter)\b", query.text[moved.end :], re.I) if moved.origin == "said" else None
    if beside:
        over, under = not beside.group("less"), bool(beside.group("less"))
    if _LOST_SPEED.search(query.text[: moved.start]) and not _LOST_ELSEWHERE.search(query.text):
        over, under = True, False
    if _ANOTHER_FILM.search(query.text):
        over, under = under, over  # so much more from the film, and none from the light
    speed = patterns.search(r"\b(?:faster|(?P<slow>slower))\b", query.text, re.I) or patterns.match(r"\W*(?:too )?(?:fast|(?P<slow>slow))\b", query.text[moved.end :], re.I)
    if speed:
        over, under = bool(speed["slow"]), not speed["slow"]
        if _BOX_ASKED.search(query.text):
            over, under = under, over  # so much slower than the box: the box itself is the faster
    if not over and not under:
        return None
    value = exposure_index(said.value, abs(moved.value) if over else -abs(moved.value))
    return _done((marks.film_speed(value),), said, moved, notes=(f"A {'slower' if over else 'faster'} rating gives every frame {speak_stops(abs(moved.value))} {'more' if over else 'less'}.",))


_BOX_ASKED = Pattern(r"\bthan (?:the )?box\b[^?]*\b(?:what|which)\b[^?]*\bbox\b", re.I)
_LOST_SPEED = Pattern(r"\b(?:film|roll|stock|emulsion|it|iso \d+|asa \d+|\d+ din)\b[^.?!;]{0,30}\b(?:lost|loses|losing|down|weaker|dropped)(?: (?:by|about|some|nearly|roughly|a good))* $", re.I)
"""Right before the stops of speed that a film has lost with its years."""
_LOST_ELSEWHERE = Pattern(r"\b(?:filter|polari[sz]er|nd|bellows|flash\w*|softbox|umbrella|lens|gel|scrim|silk)\b", re.I)
_ANOTHER_FILM = Pattern(r"\b(?:what|which) film\b(?! speed| rating)|\bfilm instead\b|\bhow fast an? film\b", re.I)


# --- stops --------------------------------------------------------------------------------------------


def _stops(query: Query, ask: Ask) -> Solution | None:
    if query.has("exponent") and not query.has("guide_number") and not query.has("distance") and (added := reciprocity.stops_added(query)) is not None:
        return added
    if (compared := film_compared.which_faster(query) or film_compared.apart(query) or film_compared.stops_of_degrees(query) or film_compared.lost_speed(query)) is not None:
        return compared
    if _is_exposure(query):
        return _stops_rated(query) if _STOPS_OF_PUSH.search(query.text) and not query.has("guide_number") and not query.has("distance") else None
    for rule in (_put_right, _stops_rated, film_aged.stops, _latitude, reciprocity.stops_added, film_compared.given_over_metered):
        found = rule(query)
        if found:
            return found
    return None


_STOPS_OF_PUSH = Pattern(r"\bstops? of (?:a )?(?:push|pull)|\bhow (?:many stops|much)\b[^?.]{0,24}\b(?:push|pull)", re.I)
_ASKS_PUSH = Pattern(r"\bstops? of (?:a )?(?:push|pull)|\b(?:how (?:many stops|much|far)|what|which)\b[^?.]{0,30}\b(?:push|pull)", re.I)
_OF_THE_LAB = Pattern(r"push|pull|process|develop|\blab\b", re.I)
_EXPOSED = Pattern(
    r"\b(?:process|develop|soup|ran|run|put through|dev)\w*(?: (?:it|them|that|the (?:roll|lot|film|whole \w+)|was|were|been|all|as|per|at|in|for|to|the))* (?:normal\w*|straight|usual\w*|standard|plain|box)\b|\b(?:normal\w*|standard|straight|usual|ordinary) (?:process|develop|dev|soup|run)\w*"
    r"|\b(?:under|over)[\s-]?expos|\bhow (?:far|badly|much|many stops)\b[^?.]{0,40}\b(?:under|over|out|off|wrong|thin|dense)\b|\bstops? (?:under|over|out|off)\b|\bexposed? (?:wrong|off|out)\b|\bover or under\b|\bunder or over\b|\b(?:error|mistake|miss)\b[^?.]{0,12}\bstops\b", re.I)
"""Where this is said it is the exposure that is asked of, and a faster rating than the film's is less of it."""
_RATED_AT = Pattern(r"push|pull|\brat(?:e|ed|ing)\b|meter(?:ed|ing)?\b|expos(?:ed?|ing)\b|\bsho(?:t|ot|oting)\b|\bei\b|by mistake|instead of|wrong|left (?:it |the )?(?:\w+ )?(?:on|at|set)|box (?:says|speed)", re.I)
_IS_BOX = Pattern(r"(?<!though )(?<!as if )\b(?:it|that|they|which|this)(?:'s|'re| is| was| were| are) (?:really |actually |only |in fact )?(?:iso )?$|\b(?:loaded|loading|box|film|roll|slide|neg|stock)\W*(?:speed)?(?:\W*(?:says?|is|was|of|:|reads|being))*\W*(?:iso |asa )?$", re.I)
_BOX_AFTER = Pattern(r"^[\s-]*(?:speed )?(?:colou?r |slide |black and white |b/w |print )?(?:film|slide|neg|negative|box|stock|roll|chrome)\b|^\s*in the camera", re.I)
_IS_RATED = Pattern(r"\b(?:meter(?:ed)?|shot|rated|exposed|set)\b[^.,;?\d]{0,24}\b(?:at|for|as|to|on)\W*(?:iso |ei )?$|\b(?:at|to|as|on|rate|rated|rating|ei)\W*(?:of |was |is )?(?:ei |iso |asa )?$|\binstead of\W*(?:iso )?$", re.I)


_FILM_SAID = Pattern(r"\d[\s-]+(?:film|slide|neg\w*|stock|roll|chrome)\b", re.I)
_INSTEAD = Pattern(r"\b(?:instead of|rather than|in place of|not)\s*(?:the |its )?(?:box speed of )?(?:iso )?$", re.I)


def box_and_rated(speeds: list[Fact], text: str) -> tuple[Fact, Fact]:
    """Which of two speeds is the film's own: the one called so, else the one that is not "at" or "to", else the first."""
    one, two = speeds
    def owned(fact: Fact) -> int:
        before, after = text[: fact.start], text[fact.end :]
        return 2 * bool(_IS_BOX.search(before) or _BOX_AFTER.match(after) or _FILM_SAID.search(fact.said)) - bool(_IS_RATED.search(before) or patterns.search(r"\bei\b", fact.said, re.I))
    told = text[: one.start] + one.said[: len(one.said.rstrip("0123456789."))]
    if _INSTEAD.search(text[one.end : two.start]) and _IS_RATED.search(told):
        return two, one  # "rated at 50 instead of 200", "film rated 50 instead of 200"
    return (two, one) if owned(two) > owned(one) else (one, two)


def _stops_rated(query: Query) -> Solution | None:
    """How far a rating is from box speed, as exposure or as push."""
    box, rated = query.first("film_speed"), query.last("rated")
    pair = query.first("number_range")
    if pair and box is None and scales.is_film_speed_mark(pair.value) and scales.is_film_speed_mark(pair.other) and patterns.search("push|pull", query.text, re.I):
        return _done((marks.stops(scales.film_speed_difference_stops(pair.value, pair.other)),), pair, lead="Push" if pair.other > pair.value else "Pull")
    speeds = [f for f in query.facts if f.quantity in ("film_speed", "rated") and (f.origin == "said" or f.origin == "kept" and query.text[f.start : f.end] == f.said)]  # kept with its words
    if len(speeds) == 2 and _RATED_AT.search(query.text):
        box, rated = box_and_rated(speeds, query.text)
    elif len(speeds) == 1 and not pair and (_STOPS_OF_PUSH.search(query.text) or _EXPOSED.search(query.text) and query.cues & {"how_many", "how_far", "how_much"}) and _IS_RATED.search(query.text[: speeds[0].end].rstrip("0123456789.")) and {f.quantity for f in query.facts} <= {"film_speed", "rated", "place", "remark"}:
        return needs(("film_speed",), "I need the box speed of the film.", (speeds[0],), "film")
    if box is None or rated is None:
        return None
    faster = scales.film_speed_difference_stops(box.value, rated.value)
    if _ASKS_PUSH.search(query.text) or _OF_THE_LAB.search(query.text) and not _EXPOSED.search(query.text):
        word = "Push" if faster >= 0 else "Pull"
        return _done((marks.stops(faster),), box, rated, lead=f"{word}")
    word = "Overexposed" if faster < 0 else "Underexposed"
    notes = ("Ask the lab to push it by as much, if the whole roll was shot so.",) if faster > 0 else ()
    return _done((marks.stops(-faster),), box, rated, lead=word, notes=notes)


_TOO_DARK = Pattern(r"\btoo (?:dark|thin)\b|\bunder\w*\b", re.I)
_TOO_LIGHT = Pattern(r"\btoo (?:light|bright|dense|pale)\b|\bover\w*\b", re.I)


def _put_right(query: Query) -> Solution | None:
    """"my slides come out a stop too dark, how many stops do I add": as many, the other way."""
    off = [f for f in query.facts if f.quantity in ("stops", "loss", "relation")]
    if len(off) != 1 or query.has("film_speed") or not patterns.search(r"(?:how (?:many|much)|what do i)[^?]*\b(?:add|open|give|correct|change|close|take)", query.text, re.I):
        return None
    slides = patterns.search(r"slide|chrome|transparen|trann|print|frames?\b|pictures?|shots\b|negs?\b|negative", query.text, re.I)
    dark, light = bool(_TOO_DARK.search(query.text)), bool(_TOO_LIGHT.search(query.text))
    if not slides or dark == light:
        return None
    return _done((marks.stops(abs(off[0].value) if dark else -abs(off[0].value)),), off[0])


def _latitude(query: Query) -> Solution | None:
    """How far off one may be, in words, by the kind of film."""
    if not _LATITUDE_ASKED.search(query.text) or query.has("stops") or query.has("film_speed") and query.has("rated"):
        return None
    said = next((words for pattern, words, _ in LATITUDE if patterns.search(pattern, query.text, re.I)), None)
    if said is None:
        return None
    return Solution(lead=f"{said} This is common practice, no standard; hard flash uses it up sooner than soft light.", topic="film")


def _words_only(query: Query, ask: Ask) -> Solution | None:
    if _is_exposure(query):
        return None
    return _latitude(query) or (_stops_rated(query) if query.has("rated") and patterns.search(r"stops|how far (?:off|out)", query.text, re.I) else None)


def _rating_to_set(query: Query, ask: Ask) -> Solution | None:
    """"160 film rated one stop over, what do I set": the dial of the meter, where nothing is said of a flash."""
    moved = query.has("stops") or query.has("push") or query.has("years")
    return _film_speed(query, ask) if moved and not query.has("shutter") and patterns.search(r"\brat(?:e|ed|ing)\b|box speed|\bEI\b", query.text, re.I) else None


_ROWS = {"aperture": (misset_meter.opened, film_aged.opened, film_aged.opened_for_speed, _rating_to_set, reciprocity.by_aperture), "latitude": (_words_only,), "distance": (_words_only,), "degrees": (_film_speed,), "coverage": (_film_speed,), "film_speed": (_film_speed,), "speed": (_film_speed,), "stops": (_stops,), "factor": (reciprocity.factor,), **dict.fromkeys(("shutter", "duration", "time"), (reciprocity.lengthened, film_compared.time_for_other_film))}

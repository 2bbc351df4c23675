"""A claim judged once more with a value told anew: "and on ISO 200?" after "will I get f/11 out of it?".

The value that is told takes the place of the one of its kind in the claim, in the words as in the
facts, so that it is judged as if it had been put that way. What the claim said nothing of stands beside it.
"""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.language.daylight import SKIES
from assistant.memory.carried import carried
from assistant.memory.conversation import Conversation, Judged, Scene, move_lengths
from assistant.memory.followups import follow_up
from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Fact, Query
from assistant.records import record, replace
from assistant.scales import is_aperture_mark, is_film_speed_mark
from assistant.solving.claim_bounds import is_exact
from assistant.solving.claim_latitude import error_told, says_what_it_takes
from assistant.solving.solution import Solution
from assistant.units import LENGTH


@record
class Anew:
    """The claim with what was told put into it, and which of its facts are new."""

    query: Query
    new: tuple[Fact, ...]


_TOLD_ANEW = frozenset({
    "distance", "max_distance", "min_distance", "length_range", "path", "gap", "aperture", "film_speed", "rated", "push", "power", "power_down", "energy", "guide_number", "loss", "filter_loss", "nd", "factor", "modifier", "camera_filter",
    "count", "stops", "relation", "ratio", "shutter", "exposure_value", "exponent", "focal_length", "focus_distance", "recycle", "zoom", "duration", "t05", "t01", "velocity", "frequency", "interval", "magnification", "extension", "t_number", "degrees", "time",
})
"""What may be told anew of a claim; anything else is no change of it."""
_BY_THE_WAY = frozenset({"remark", "place", "rows", "last_move", "move"})
_KINDS = (frozenset({"distance", "max_distance", "min_distance"}), frozenset({"power", "power_down"}), TAKES_LIGHT)
"""Quantities of which one may be told in the place of another."""


def said_anew(query: Query, judged: Judged, talk: Conversation) -> Anew | None:
    """The claim that stands with what this half-sentence changes; None where it changes nothing of it, or it is not clear what."""
    if says_what_it_takes(query.text) and error_told(judged.query) is not None:
        return _limit_anew(query, judged)
    query = _as_lost(_in_pairs(query, judged), judged)
    scene = _scene_of(judged)
    asked = replace(talk, scene=scene, missing=())
    bare = replace(_put_up_anew(query, judged, talk), asks=(), claim=False)
    said, left = (bare, scene) if _plainly_of(bare, judged) or _another_error(bare, judged) else follow_up(carried(bare, scene.facts, scene.asks), asked)
    moves = [f for f in said.facts if f.quantity == "move"]
    kept = move_lengths(left.facts, moves) if moves else left.facts
    told = [*(f for f in said.facts if f.quantity not in _BY_THE_WAY and f.unit != "BARE"), *(f for f in kept if f not in scene.facts and f.quantity not in _BY_THE_WAY)]
    gone = [f for f in scene.facts if f not in kept]
    again = [f for f in told if f.origin == "kept" and any(_same(f, g) for g in gone)]
    new, gone = [_of_the_claim(f, judged) for f in told if f not in again], [g for g in gone if not any(_same(f, g) for f in again)]
    if not (new or gone) or any(f.bad or f.quantity not in _TOLD_ANEW for f in new) or _either_time(new, judged, query.text):
        return None
    return _put_in(judged, new, gone, (scene.cues - left.cues, said.cues & SKIES), query.text)


_WAYS = Pattern(r"(?: of (?:error|latitude|leeway|exposure))?(?: (?:over|under|more|less)\b| (?:in )?(?:either|each|both) (?:way|side|direction)s?\b)", re.I)


def _limit_anew(query: Query, judged: Judged) -> Anew | None:
    """"and on a negative film that bears a whole stop under?": another limit, with the way that is told of it, and the same error held against it."""
    told = [f for f in query.facts if f.quantity != "remark"]
    limits = [f for f in judged.query.facts if f.quantity in ("stops", "loss", "relation") and f is not error_told(judged.query)]
    if len(told) != 1 or told[0].quantity not in ("stops", "loss", "relation") or len(limits) != 1:
        return None
    said, was = _WAYS.match(query.text, told[0].end), _WAYS.match(judged.query.text, limits[0].end)
    old = replace(limits[0], end=was.end(), said=judged.query.text[limits[0].start : was.end()]) if said and was else limits[0]
    new = replace(old, value=abs(told[0].value), said=query.text[told[0].start : said.end() if said else told[0].end].strip(), origin="said")
    text, facts = reworded(judged.query.text, [old if f is limits[0] else f for f in judged.query.facts], [(old, new)])
    return Anew(replace(judged.query, text=text, facts=tuple(facts), unplaced=()), tuple(f for f in facts if (f.value, f.said) == (new.value, new.said)))


def _plainly_of(query: Query, judged: Judged) -> bool:
    """Whether each value told is of a kind that the question has exactly one of, so that no rule is needed to read it."""
    if judged.claim or not query.facts:
        return False
    old = [f.quantity for f in judged.query.facts]
    return all(f.quantity in _TOLD_ANEW and f.quantity not in ("count", "modifier") and old.count(f.quantity) == 1 for f in query.facts)


def _another_error(query: Query, judged: Judged) -> bool:
    """"a third over?" after "it holds half a stop each way, I was two thirds over"."""
    return len(query.facts) == 1 and query.facts[0].quantity == "stops" and query.facts[0].cue in ("more", "less") and error_told(judged.query) is not None


def _as_lost(query: Query, judged: Judged) -> Query:
    """"and two stops?" of a claim that tells no other stops than what one thing takes: that."""
    kinds = [f.quantity for f in judged.query.facts]
    lost = [q for q in kinds if q in ("loss", "filter_loss", "nd")]
    stops = [f for f in query.facts if f.quantity in ("stops", "number")]
    mine = stops[0] if len(stops) == 1 and not any(f.quantity in _TAKES for f in query.facts) else None
    if mine is not None and len(query.facts) == 1 and mine.quantity == "number" and judged.asked and judged.asked[0].quantity == "stops" and _BARE.match(query.text):
        mine = replace(mine, quantity="stops", said=f"{mine.said} stops")
    if mine is None or mine.quantity != "stops" or mine.cue or len(lost) != 1 or "push" in kinds or any(not _is_said_again(f, judged) for f in judged.query.facts if f.quantity in ("stops", "relation")):
        return query
    unit = next((f.unit for f in judged.query.facts if f.quantity == "filter_loss" and "bellows" in f.unit), "")
    return replace(query, facts=tuple(replace(mine, quantity=lost[0], value=abs(mine.value), unit=unit) if f.start == mine.start else f for f in query.facts))


_TAKES = frozenset({"loss", "filter_loss", "nd"})
_STOPS = _TAKES | {"stops"}


def _is_said_again(fact: Fact, judged: Judged) -> bool:
    """"it costs one stop … was one stop right?": what was put up, in other words once more."""
    return fact.quantity == "stops" and any(f.quantity in _TAKES and f.value == fact.value for f in judged.query.facts)


def _in_pairs(query: Query, judged: Judged) -> Query:
    """"from 8 to 12" of a claim with one pair of values: those two anew, in their order."""
    spans = [f for f in query.facts if f.quantity in ("number_range", "length_range") and not f.bad]
    lengths = [f for f in judged.query.facts if f.quantity == "length_range" and f.origin == "said"]
    if len(spans) == len(query.facts) == len(lengths) == 1 and not judged.query.has("distance"):
        span, was = spans[0], lengths[0]
        return replace(query, facts=(replace(was, value=span.value, other=span.other, unit=span.unit, said=span.said, start=span.start, end=span.end) if span.quantity == "length_range" else _span_of(span, was),))
    kinds = [q for q in dict.fromkeys(f.quantity for f in judged.query.facts) if q in ("count", "film_speed", "aperture") and sum(f.quantity == q for f in judged.query.facts) == 2]
    if len(spans) != 1 or len(kinds) != 1:
        return query
    old = [f for f in judged.query.facts if f.quantity == kinds[0]]
    pair = [replace(o, value=value, said=_in_the_words_of(f"{value:g}", o.said), start=spans[0].start + n, end=spans[0].start + n + 1, origin="said") for n, (o, value) in enumerate(zip(old, (spans[0].value, spans[0].other)))]
    return replace(query, facts=tuple(x for f in query.facts for x in (pair if f is spans[0] else [f])))


def _span_of(span: Fact, old: Fact) -> Fact:
    """"9 to 12" in the unit in which the stretch was told."""
    scale, unit = LENGTH.get(old.unit, 1.0), next(iter(patterns.findall(r" ?[a-z]+\W*$", old.said)), "")
    return replace(old, value=span.value * scale, other=span.other * scale, said=f"{span.said.strip()}{unit}", start=span.start, end=span.end)


_BARE = Pattern(r"^\W*(?:(?:and|or|then|what about|how about|what if|with|but|no|ok|now)\b\W*)*[\w./]+(?: (?:then|instead|of them))?\W*$", re.I)


def _put_up_anew(query: Query, judged: Judged, talk: Conversation) -> Query:
    """"and eight?" after "are four pops enough?": a number by itself is another of what was put up, unless another value was told since."""
    last = [f for f in talk.last_query.facts if f.origin == "said"] if talk.last_query is not None and any(f.origin == "kept" for f in talk.last_query.facts) else []
    claimed = _claimed(judged)
    told = claimed is not None and any(not _alike(f.quantity, claimed.quantity) for f in last)
    if len(query.facts) != 1 or told or not _BARE.match(query.text):
        return query
    return replace(query, facts=(_of_the_claim(query.facts[0], judged),))


_METERED = Pattern(r"\bmeter", re.I)


def _either_time(new: list[Fact], judged: Judged, text: str) -> bool:
    """"and 15 s?" after "metered 4 s, is 6 s right?": the metered time or the one that is put up, and it is not said which."""
    told = {f.of for f in judged.query.facts if f.quantity == "shutter"}
    if not any(f.quantity in ("exponent", "sheet_row") for f in judged.query.facts):
        return False
    return told == {"", "ambient"} and any(f.quantity == "shutter" for f in new) and not _METERED.search(text)


def _same(one: Fact, other: Fact) -> bool:
    return (one.quantity, one.value, one.of) == (other.quantity, other.value, other.of)


def _scene_of(judged: Judged) -> Scene:
    """The claim as a question for what was claimed, for the rules that read half-sentences."""
    query, claimed = judged.query, _claimed(judged)
    facts = tuple(f for f in query.facts if f.origin != "kit" and f is not claimed)
    return Scene(facts, judged.asked, query.cues, query.units, text=query.text, mentioned=query.mentioned)


def _claimed(judged: Judged) -> Fact | None:
    """The value that was put up, as far as what it was held against tells."""
    kind = judged.asked[0].quantity if judged.asked and judged.claim else ""
    same = [f for f in judged.query.facts if _alike(f.quantity, kind) and f.origin == "said"]
    return same[-1] if same else None


def _can_be(quantity: str, value: float) -> bool:
    """Whether a bare number can be a value of this quantity."""
    if quantity in ("aperture", "film_speed"):
        return is_aperture_mark(value) if quantity == "aperture" else is_film_speed_mark(value)
    return quantity != "shutter" and 0 < value <= (1.0 if quantity == "power" else math.inf)


def _of_the_claim(fact: Fact, judged: Judged) -> Fact:
    """"and eight?": a bare number is another of what was claimed, where it can be one."""
    old = _claimed(judged)
    times = [f for f in judged.query.facts if f.quantity == "shutter"]
    if fact.quantity == "power" and len(times) == 1 and not judged.query.has("power") and _FRACTION.fullmatch(fact.said.strip()):
        return replace(times[0], value=fact.value, said=fact.said, unit="s", start=fact.start, end=fact.end, origin="said")
    if fact.quantity != "number" or old is None or not _can_be(old.quantity, fact.value):
        return fact
    scale = LENGTH.get(old.unit, 1.0) if old.quantity in ("distance", "max_distance", "min_distance") else 1.0
    return replace(old, value=fact.value * scale, said=_in_the_words_of(fact.said, old.said), origin="said")


_FRACTION = Pattern(r"1/\d+")
_FIGURE = Pattern(r"\d[\d.,/]*|^[a-z]+\b", re.I)


def _in_the_words_of(said: str, old: str) -> str:
    """A bare figure said as the old one was: "eight" for "four pops" is "eight pops"."""
    found = _FIGURE.search(old)
    return f"{old[: found.start()]}{said}{old[found.end() :]}" if found else said


def _alike(one: str, other: str) -> bool:
    return one == other or any(one in kinds and other in kinds for kinds in _KINDS)


_SMALL = frozenset("a an the and or but if it is was were be been had has have i we he she they that this what about of for with to my then now not no so".split())


def _words_at(text: str, fact: Fact) -> tuple[set[str], str]:
    """The words that matter among the six before a value, and the one right before it."""
    words = patterns.findall(r"[a-z']+", text[max(0, fact.start - 60) : fact.start].lower())[-6:]
    return {w for w in words if w not in _SMALL and w not in ("at", "on", "in")}, words[-1] if words else ""


def _told_alike(fact: Fact, found: list[Fact], text: str, judged: Judged) -> list[Fact]:
    """Of several, the one that was told in the same words: "I shot at f/22", after "I shot at f/5.6 where f/11 was right"."""
    mine, last = _words_at(text, fact)
    said = [(f, *_words_at(judged.query.text, f)) for f in found]
    for alike in ([f for f, words, _ in said if words & mine], [f for f, _, before in said if last and before == last]):
        if len(alike) == 1:
            return alike
    return []


def _place_of(fact: Fact, facts: list[Fact], gone: list[Fact], judged: Judged, text: str) -> list[Fact]:
    """The facts of the claim that a new one may take the place of."""
    same = [f for f in facts if _alike(f.quantity, fact.quantity) and (f.quantity != "count" or f.unit == fact.unit or not fact.unit)]
    same = same or [f for f in facts if fact.quantity == "film_speed" and f.quantity == "rated"]  # a film that was only rated has no other speed
    mine = [f for f in same if f.of == fact.of]
    found = mine if mine or fact.of and any(f.of for f in same) else same
    left = [f for f in found if any(f is g for g in gone)]
    if len(left) == 1:
        return left
    out = error_told(judged.query) if fact.quantity == "stops" and fact.cue in ("more", "less") and len(found) > 1 else None
    if out is not None:
        return [f for f in found if f is out]
    alike = [f for f in found if f.cue == fact.cue] if len(found) > 1 and fact.cue else []
    if len(alike) == 1:
        return alike
    if len(found) == 2 and fact.of in ("front", "back") and not any(f.of for f in found):
        return [min(found, key=lambda f: f.value) if fact.of == "front" else max(found, key=lambda f: f.value)]  # "the far one" of two people
    told = _told_alike(fact, found, text, judged) if len(found) > 1 else []
    claimed = _claimed(judged)
    if told or len(found) > 1 and claimed is not None and claimed in found:
        return told or [f for f in found if f is claimed]
    if len(found) == 2 and (then := changed_to(judged.query, found, text)):
        return then
    return _not_the_right_one(found, judged.query.text) if len(found) == 2 else found


_FROM = Pattern(r"\b(?:from|before|at first|to begin with|start\w*|began|begun|originally|used to)\b", re.I)


def changed_to(query: Query, two: list[Fact], text: str) -> list[Fact]:
    """Of the values from and to of a claim that changes even out, what was changed to: "and if I'd only had 200 film?"."""
    from assistant.solving.before_after import in_order
    from assistant.solving.claim_evened_out import is_said_to_even_out

    if two[0].quantity not in ("film_speed", "power", "distance", "energy", "aperture") or _FROM.search(text) or not is_said_to_even_out(query):
        return []
    return in_order(query, two[0].quantity, two)[1:]


def _not_the_right_one(two: list[Fact], text: str) -> list[Fact]:
    """"the flash is right at 3 m, is somebody at 3.4 m within half a stop?": it is the other place that may be told anew."""
    from assistant.solving.claim_latitude import told_due, told_right

    lower = text.lower()
    other = [f for f in two if not told_right(f, lower) and not (f.quantity == "aperture" and told_due(f, lower))]
    return other if len(other) == 1 and two[0].quantity in ("distance", "aperture") else two


def _put_in(judged: Judged, new: list[Fact], gone: list[Fact], cues: tuple[frozenset[str], frozenset[str]], text: str) -> Anew | None:
    """Each new fact in the place of the old one of its kind; none where two could be meant."""
    facts, beside = list(judged.query.facts), []
    swapped: list[tuple[Fact, Fact]] = []
    for fact in new:
        left = [f for f in facts if not any(f is o for o, _ in swapped)]
        alike = [f for f in left if (f.quantity, f.of, f.unit) == (fact.quantity, fact.of, fact.unit)]
        many = sum((f.quantity, f.of, f.unit) == (fact.quantity, fact.of, fact.unit) for f in new)
        old = alike[:1] if many > 1 and many == len(alike) + sum((o.quantity, o.of, o.unit) == (fact.quantity, fact.of, fact.unit) for o, _ in swapped) else _place_of(fact, left, gone, judged, text)
        if len(old) > 1 or old and _overlaps(old[0], facts):
            return None
        if old:
            swapped.append((old[0], _as_the_old(fact, old[0], text, judged)))
        else:
            beside.append(replace(fact, start=0, end=0, origin="kept"))
    swapped += [(f, replace(n, quantity=f.quantity, unit=f.unit, of=f.of)) for o, n in swapped if o.quantity in _STOPS for f in facts if f is not o and f.quantity in _STOPS and f.value == o.value and (_is_said_again(f, judged) or _is_said_again(o, judged)) and not any(f is x for x, _ in swapped)]
    lost = [f for f in gone if not any(f is o for o, _ in swapped)]
    exact = {(n.quantity, n.value) for _, n in swapped if is_exact(text, n.start, n.end)}
    text, placed = reworded(judged.query.text, [f for f in facts if f not in lost], swapped)
    text, placed = _exactly(text, placed, exact) if exact else (text, placed)
    query = replace(judged.query, text=text, facts=(*beside, *placed), cues=judged.query.cues - cues[0] | cues[1], unplaced=(), claim=judged.claim)
    fresh = {(f.quantity, f.value, f.of) for _, f in swapped}
    return Anew(query, (*beside, *(f for f in placed if (f.quantity, f.value, f.of) in fresh)))


def _exactly(text: str, facts: list[Fact], exact: set[tuple[str, float]]) -> tuple[str, list[Fact]]:
    """The claim with "exactly" after the figure that was told so, "and at half life size one stop exactly?"."""
    word = " exactly"
    for fact in [f for f in facts if f.origin == "said" and (f.quantity, f.value) in exact and not is_exact(text, f.start, f.end)]:
        end = next(f.end for f in facts if f.quantity == fact.quantity and f.value == fact.value and f.origin == "said")
        text = text[:end] + word + text[end:]
        facts = [replace(f, start=f.start + len(word), end=f.end + len(word)) if f.origin == "said" and f.start >= end else f for f in facts]
    return text, facts


def _overlaps(fact: Fact, facts: list[Fact]) -> bool:
    """Whether the words of a fact are another's as well, so that they cannot be changed for one alone."""
    return any(f is not fact and f.origin == fact.origin == "said" and f.start < fact.end and fact.start < f.end for f in facts)


def _after(text: str, fact: Fact) -> str:
    found = patterns.findall(r"[a-z]+", text[fact.end : fact.end + 24].lower())
    return found[0] if found else ""


def _as_the_old(fact: Fact, old: Fact, text: str, judged: Judged) -> Fact:
    """What is told, meant as the old one was: a way that is said in the same word is the same way."""
    same_way = _after(text, fact) == _after(judged.query.text, old) and old.quantity == fact.quantity
    return replace(
        fact, quantity=old.quantity if _is_limit(old) else fact.quantity, of=old.of if fact.of in ("front", "back") else fact.of or old.of, cue=old.cue if same_way and old.cue else fact.cue or old.cue, to=fact.to or old.to, said=_words(fact), origin=old.origin)


def _is_limit(fact: Fact) -> bool:
    return fact.quantity in ("max_distance", "min_distance")


def _words(fact: Fact) -> str:
    """The new value in words that can stand where the old one stood."""
    if fact.quantity in ("distance", "max_distance", "min_distance") and fact.unit in LENGTH and not fact.said[:1].isdigit():
        return f"{fact.value / LENGTH[fact.unit]:.4g} {fact.unit}"  # "half that", "back a metre"
    return fact.said


def reworded(text: str, facts: list[Fact], swapped: list[tuple[Fact, Fact]]) -> tuple[str, list[Fact]]:
    """The text with the new words in it, and every fact where it stands now."""
    out, moved, shift, end = [], [], 0, 0
    for fact in sorted(facts, key=lambda f: f.start):
        new = next((n for o, n in swapped if o is fact), None)
        at = fact.start + shift
        if new is None or fact.origin != "said" or text[fact.start : fact.end].strip() != fact.said.strip():
            moved.append(replace(new or fact, start=at, end=fact.end + shift) if fact.origin == "said" else new or fact)
            continue
        out += [text[end : fact.start], new.said]
        shift += len(new.said) - (fact.end - fact.start)
        end = fact.end
        moved.append(replace(new, start=at, end=at + len(new.said)))
    return "".join((*out, text[end:])), moved


def bears(anew: Anew, found: Solution) -> bool:
    """Whether what was found goes by all that is new, so that it is the answer to no other question."""
    used = {(f.quantity, round(f.value, 6)) for f in found.used}
    lost = {f.unit for f in anew.new if f.quantity in TAKES_LIGHT}
    return all((f.quantity, round(f.value, 6)) in used or f.quantity in ("modifier", "camera_filter") and f.unit in lost for f in anew.new)


def told_when(fact: Fact, new: tuple[Fact, ...]) -> Fact:
    """A fact as it is listed in the reply: told now, or still so; one of the kit stays the kit's."""
    if fact.origin == "kit":
        return fact
    return replace(fact, origin="said" if any(_same(fact, f) for f in new) else "kept")

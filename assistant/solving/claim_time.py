"""Claims about times, pulses, pops and energies with the figures of a case, each held against what those figures give."""

from __future__ import annotations

import math

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.physics import duration
from assistant.physics.flash import times_the_light
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.scales import aperture_difference_stops, speak_stops
from assistant.solving import marks
from assistant.solving.claim_bounds import bound_of, tolerance, within
from assistant.solving.claim_denial import turned
from assistant.solving.claim_rules import TOLERANCE
from assistant.solving.claim_words import plain
from assistant.solving.open_each import route as opened_each
from assistant.solving.solution import Solution
from assistant.solving.strobe_fits import FIT_IN


def _verdict(query: Query, claimed: Fact, off: float, near: float, answer: Quantity, why: str) -> Solution:
    """A verdict on one figure that is `off` below the right one (in stops or doublings), its bound and a "not" minded."""
    said = plain(query.text)
    holds = within(bound_of(said[: claimed.start])[0], off, tolerance(said, claimed.start, claimed.end, near)) is not turned(said, [(claimed.start, claimed.end)])
    return Solution(answers=(Quantity("claim", holds), answer), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. {why}")


def _told(query: Query, *but: str) -> set[str]:
    return {f.quantity for f in query.facts if f.origin == "said"} - {"remark", *but}


def claim_of_room_by_time(query: Query) -> Solution | None:
    """"the hall needs 8 s at this stop; open for 2 s, is it two stops under?": by the times alone."""
    opened = opened_each(query)
    query = opened[0] if opened is not None else query
    times = sorted(query.all("shutter"), key=lambda f: f.start)
    off = [f for f in query.facts if f.quantity in ("relation", "stops") and f.cue in ("less", "more")]
    room = [f for f in times if _NEEDS.search(query.text[: f.start].lower())]
    if len(times) != 2 or len(off) != 1 or len(room) != 1 or _told(query, "shutter", "relation", "stops", "aperture", "count") or len({f.value for f in query.all("aperture")}) > 1:
        return None
    mine = next(f for f in times if f is not room[0])
    right = math.log2(mine.value / room[0].value)
    way = 1 if off[0].cue == "more" else -1
    return _verdict(query, off[0], way * right - abs(off[0].value), TOLERANCE, marks.stops(right), f"{marks.shutter(mine.value).set} s beside {marks.shutter(room[0].value).set} s is {speak_stops(abs(right))} {'over' if right > 0 else 'under'}.")


_NEEDS = Pattern(r"\b(?:needs?|takes?|wants?|requires?|calls? for|asks? for|meters?|metered)(?: about| some| at)* $")


def claim_of_images(query: Query) -> Solution | None:
    """"open for a second at 8 Hz, are there eight images?": flashes a second times the seconds, one more or less at the ends."""
    rate, opened = query.last("frequency"), query.last("shutter") or query.last("time") or query.last("interval")
    counts = [f for f in query.facts if f.quantity in ("count", "number") and f.value >= 1]
    if rate is None or opened is None or len(counts) != 1 or FIT_IN.search(query.text) or _told(query, "frequency", "shutter", "time", "interval", "count", "number"):
        return None
    right = rate.value * opened.value
    whole = max(math.floor(right * (1 + 1e-9)), 0)
    said = plain(query.text)
    bound = bound_of(said[: counts[0].start])[0]
    fits = within(bound, whole - counts[0].value, 0.0) or not bound and abs(counts[0].value - right) <= 1 and right >= 1
    holds = fits is not turned(said, [(counts[0].start, counts[0].end)])
    return Solution(answers=(Quantity("claim", holds), marks.count(whole, "flashes")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. {rate.value:g} a second for {opened.value:.3g} s are {right:.3g}.", notes=("One more if a flash falls just as the shutter opens.",))


_OF_THE_TAIL = Pattern(r"\bt ?0?\.1\b[^.?!]{0,40}\bt ?0?\.5\b[^?!]*\b(?:than|over|under|at (?:least|most))\b")


def claim_of_pulse(query: Query) -> Solution | None:
    """"a t0.5 of 1/900 means a t0.1 of 1/270": 3.32 times as long (contract; an exponential discharge)."""
    half, tail = query.all("t05"), query.all("t01")
    if len(half) == 2 and not tail and _OF_THE_TAIL.search(plain(query.text)):
        half, tail = half[:1], [replace(half[1], quantity="t01")]  # "the t0.1 of a flash with a t0.5 of 1/1000 s is longer than 1/500 s"
    if len(half) != 1 or len(tail) != 1 or _told(query, "t05", "t01") or min(half[0].value, tail[0].value) <= 0:
        return None
    claimed = max(half[0], tail[0], key=lambda f: f.start)
    right = duration.t01_from_t05(half[0].value) if claimed is tail[0] else duration.t05_from_t01(tail[0].value)
    return _verdict(query, claimed, math.log2(right / claimed.value), _NEAR, Quantity("duration", right, "s"), f"t0.1 is 3.3 times t0.5: that gives 1/{1 / right:.0f} s.")


_NEAR = 0.17
"""Doublings: a part in eight, as marks of pulses are rounded."""
_SAME = Pattern(r"\b(?:the same|as much|equal(?:s| to)?|equivalent|no (?:more|less)|identical|like|matches)\b")


def claim_of_equal_energy(query: Query) -> Solution | None:
    """"600 Ws at a quarter is the same as 150 Ws at full": energy times power on each side."""
    energies = sorted(query.all("energy"), key=lambda f: f.start)
    powers = sorted(query.all("power"), key=lambda f: f.start)
    if len(energies) != 2 or not 1 <= len(powers) <= 2 or _told(query, "energy", "power") or not _SAME.search(plain(query.text)):
        return None
    parts = [next((p.value for p in powers if e.start < p.start < (energies[1].start if e is energies[0] else len(query.text))), 1.0) for e in energies]
    one, two = (e.value * part for e, part in zip(energies, parts))
    if min(one, two) <= 0:
        return None
    holds = (abs(math.log2(one / two)) < 0.1) is not turned(plain(query.text), [(energies[1].start, energies[1].end)])
    return Solution(answers=(Quantity("claim", holds), Quantity("energy", one, "J")), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. The first is {one:g} Ws, the second {two:g} Ws.")


_ENOUGH = Pattern(r"\b(?:enough|suffic\w*|will do|would do|reach\w*|get (?:me )?(?:to|there)|manage|(?P<short>too (?:little|weak)|short|fall short))\b")


def claim_of_enough_energy(query: Query) -> Solution | None:
    """"160 Ws gave f/8; I have 640 and want f/22, is it enough?": the energy goes with the square of the f-number."""
    energies, stops = query.all("energy"), query.all("aperture")
    said = plain(query.text)
    enough = _ENOUGH.search(said)
    if len(energies) != 2 or len(stops) != 2 or enough is None or _told(query, "energy", "aperture", "power", "place") or any(f.value != 1 for f in query.all("power")):
        return None
    gave = [(e, s) for e in energies for s in stops if _GAVE.fullmatch(said[min(e.end, s.end) : max(e.start, s.start)])]
    if len(gave) != 1:
        return None
    (known, read), have = gave[0], next(e for e in energies if e is not gave[0][0])
    target = next(s for s in stops if s is not read)
    spare = math.log2(have.value / known.value) + aperture_difference_stops(read.value, target.value)
    holds = (spare >= -0.05) is not (bool(enough["short"]) is not turned(said, [(enough.start(), enough.end())]))
    needed = Quantity("energy", known.value * 2.0 ** -aperture_difference_stops(read.value, target.value), "J")
    return Solution(answers=(Quantity("claim", holds), needed), used=query.facts, topic="claims", lead=f"{'Yes' if holds else 'No'}. f/{target.value:g} takes {float(needed.value):.4g} Ws; {have.value:g} is {speak_stops(abs(spare))} {'more' if spare >= 0 else 'too little'}.")


_GAVE = Pattern(r",? (?:for|at) |,? (?:\w+ ){0,2}?(?:gives?|gave|makes?|made|is|was|reads?|metered|took|takes|needs?|needed|does|did|yields?)(?: (?:me|us|about|right|good|exactly))* ?")


_COME_TO = Pattern(r"\b(?:add up|adds? up|come|comes|make|makes|give|gives|amount|amounts|sum|total|is|are|worth)\b")
_EACH = Pattern(r"(?: of| at| giving| that (?:each )?(?:give|gives|read|reads)| each (?:of|giving|good for|worth)| worth| each)+(?: about)? *$")


def claim_of_pops_summed(query: Query) -> Solution | None:
    """"four pops of f/5.6 add up to f/11": the f-number goes with the root of the pops."""
    pops = [f for f in query.all("count") if f.unit in ("pops", "flashes") and f.value > 1]
    stops = sorted(query.all("aperture"), key=lambda f: f.start)
    if len(pops) != 1 or len(stops) != 2 or _told(query, "count", "aperture") or not pops[0].end <= stops[0].start:
        return None
    said = plain(query.text)
    if not _EACH.fullmatch(said[pops[0].end : stops[0].start]) or not _COME_TO.search(said[stops[0].end : stops[1].start]):
        return None
    right = times_the_light(stops[0].value, pops[0].value)
    return _verdict(query, stops[1], -aperture_difference_stops(stops[1].value, right), TOLERANCE, marks.aperture(right), f"Every doubling is one stop: {pops[0].value:g} of f/{stops[0].value:g} give f/{right:.3g}.")


_LEAVES = Pattern(r"\b(?:leav\w*|left|pass\w*|lets?|gets?|through|reach\w*|comes? out|arriv\w*|remain\w*)\b")


def claim_of_power_and_loss(query: Query) -> Solution | None:
    """"a gel of one stop before a head at half power leaves a quarter of the full light": the power times what comes through."""
    lost = [f for f in query.facts if f.quantity in ("loss", "filter_loss", "nd") and f.value]
    powers = sorted((f for f in query.all("power") if 0 < f.value < 1), key=lambda f: f.start)
    if not lost or len(powers) != 2 or _told(query, "loss", "filter_loss", "nd", "power", "modifier", "camera_filter") or "light" not in query.text.lower() or not _LEAVES.search(query.text.lower()):
        return None
    set_at = next((p for p in powers if "power" in p.said.lower()), None)
    claimed = next((p for p in powers if p is not set_at), None)
    if set_at is None or claimed is None or "power" in claimed.said.lower():
        return None
    stops = math.log2(set_at.value) - sum(f.value for f in lost)
    return _verdict(query, claimed, stops - math.log2(claimed.value), _NEAR, marks.stops(stops), f"Together that is {speak_stops(abs(stops))} less than full, 1/{2**-stops:.3g} of the light.")

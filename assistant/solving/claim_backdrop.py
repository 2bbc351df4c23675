"""Claims of what a backdrop will look like in the light of the subject: "wall 3 m behind her, light 1 m from her, will it go black?"; or with the light nearer than before."""

from __future__ import annotations

import math
import re

from assistant.answer import Assumed, Quantity
from assistant.patterns import Pattern
from assistant.physics.flash import falloff_stops
from assistant.query import Fact, Query
from assistant.scales import speak_stops
from assistant.solving import how_much, marks
from assistant.solving.claim_words import plain
from assistant.solving.how_much import Said
from assistant.solving.placing import scene_of
from assistant.solving.solution import Solution
from assistant.solving.tones import TONES

_GOES = Pattern(r"\b(?:go|goes|going|turns?|looks?|reads?|comes? out|be|is|appear|photograph|render|print|fall)\b[^?.]{0,30}\bblack\b|\b(?:dark|black) enough\b|\bblack\b[^?.]{0,24}\b(?:enough|far enough)\b|\benough\b[^?]{0,30}\bblack\b", re.IGNORECASE)
_BLACK = next((stops, why) for word, stops, why in TONES if "black" in word)
_NEARLY = 1 / 3


def claim_of_black(query: Query) -> Solution | None:
    """Whether a backdrop that only this light reaches falls far enough under the subject to look black."""
    if not query.claim or _GOES.search(query.text) is None or query.has("guide_number") or query.has("stops") or query.has("relation"):
        return None
    scene = scene_of(query)
    if scene is None or scene.near is None or scene.far is None or scene.rows or scene.far <= scene.near:
        return None
    wanted, why = _BLACK
    lost = falloff_stops(scene.near, scene.far)
    holds = lost <= wanted + _NEARLY
    lead = f"{'Yes' if holds else 'No'}. The backdrop gets {speak_stops(-lost)} less than the subject; black takes about {speak_stops(-wanted)}."
    help_ = "" if holds else "Bring the light nearer to the subject, hang the backdrop further behind, or keep the light off it with a flag or a grid."
    return Solution(answers=(Quantity("claim", holds), marks.stops(lost, "background")), used=scene.used, topic="claims", lead=lead, notes=(help_,) if help_ else (),
                    assumed=(Assumed("stops", wanted, "stops", why),))


_BACKDROP = r"(?:walls?|backdrops?|backgrounds?|bg|backcloth|seamless|paper|cyc|curtains?|canvas|cloth|scenery|set)"
_IN_ONE = r"(?:[^.;?!]|\.(?=\d))*?"
_WAY = Pattern(rf"\b{_BACKDROP}\b(?P<between>{_IN_ONE}(?:[.;] it\b{_IN_ONE})?)\b(?:(?P<dark>(?:darker|dimmer|blacker|less light|less lit)\b)|(?P<light>(?:brighter|lighter|more light|better lit)\b))")
_AGAINST_THE_SUBJECT = Pattern(
    r"\b(?:relative(?:ly)? to|compared (?:to|with)|against (?:him|her|them|the \w+)|(?:fall|drop|die|fad|tail)(?:s|es|ing)?[ -]?(?:off|away)\b|fall-?off|(?:go|goes|going|gone|went|come|comes|coming|look|looks|turn|turns|turning|render|renders|photograph|photographs|print|prints|record|records)(?: out| up)? (?:\w+ )?"
    r"(?:darker|dimmer|blacker|brighter|lighter)|(?:keep|hold|keeping|holding|kept|held|reset|set)\b[^.;?!]{0,30}\b(?:exposure|exposed|lens|aperture|right|for (?:him|her|them|the \w+)))\b")
_ANOTHER = Pattern(r"\b(?:subject|sitter|model|face|she|he|they|bride|child|man|woman|boy|girl)(?:'s| is| are| gets?| looks?| goes| comes?| will| turns?)\b")
"""Somebody, and no backdrop, is what is darker or brighter."""
_BEHIND_WHOM = Pattern(r"\b(?:behind|from|off|to|of|beyond|past) (?:(?:the|a|my|our|his|her|their) )?\w+")
_LIGHT_ON_IT = Pattern(r"\b(?:more|less) light\b")
_MOVED_TO = Pattern(r"\W*(?:(?:back|in|out|away|up|down|closer|nearer)\W)*to (?:about )?$")
_FIGURES = frozenset({"gap", "distance", "remark", "place"})


def names_a_backdrop(said: str, end: int) -> bool:
    """Whether what is said to be darker or brighter, in the sentence that reaches to `end`, is what stands behind."""
    found = _WAY.search(said)
    return found is not None and found.start() < end and _ANOTHER.search(_BEHIND_WHOM.sub("", found["between"])) is None


def claim_of_backdrop_by_place(query: Query) -> Solution | None:
    """"a wall 5 ft behind goes darker with the flash at 4 ft than at 10": its light against the subject's, from either place.

    The light on the wall itself goes the other way, so where neither is plainly meant nothing is judged.
    """
    said, gaps, places = plain(query.text), query.all("gap", "backdrop"), query.all("distance")
    way = _WAY.search(said)
    if not query.claim or way is None or not names_a_backdrop(said, way.end()) or len(gaps) != 1 or len(places) != 2 or not {f.quantity for f in query.facts} <= _FIGURES or any(f.bad for f in query.facts):
        return None
    held = _first_and_second(said, way.end(), sorted(places, key=lambda f: f.start))
    against, on_it = _AGAINST_THE_SUBJECT.search(said) is not None, _LIGHT_ON_IT.search(said) is not None
    if held is None or against is on_it:
        return None
    behind = gaps[0].value
    if against:
        here, there = (falloff_stops(f.value, f.value + behind) for f in held)
        right = here - there
    else:
        here, there = (-2 * math.log2(f.value + behind) for f in held)
        right = here - there
    size = Said("way", 0.0, 1 if way["light"] else -1, "", 0.01, way.start("light" if way["light"] else "dark"), way.end())
    holds = how_much.verdict([size], [right], said)
    than = "darker" if right < 0 else "brighter"
    lead = f"{'Yes' if holds else 'No'}. " + (
        f"Against the subject it is {speak_stops(abs(right))} {than} with the light at {held[0].said.strip()} ({here:+.2f} there, {there:+.2f} from the other place)." if against
        else f"It gets {speak_stops(abs(right))} {'less' if right < 0 else 'more'} light from {held[0].said.strip()} ({right:+.2f}); how dark it looks goes by the subject's light, which changes more.")
    return Solution(answers=(Quantity("claim", holds), marks.stops(right, "background")), used=query.facts, topic="claims", lead=lead)


def _first_and_second(said: str, after: int, places: list[Fact]) -> tuple[Fact, Fact] | None:
    """The place that the claim is of, and the one that it is held against."""
    than = said.find(" than ", after - 1)
    one, other = places
    if than >= 0:
        return (one, other) if one.end <= than < other.start else None
    return (other, one) if _MOVED_TO.match(said[one.end : other.start]) is not None else None

"""A claim judged: a worked line, a value asked yes-or-no about, a rule of thumb, a common belief.

The value that is claimed is taken out of the question, the rest is solved as any question is,
and the two are compared in stops. Within a third of a stop counts as right.
"""

from __future__ import annotations

import re

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Ask, Fact, Query
from assistant.records import record, replace
from assistant.scales import speak_power, speak_stops
from assistant.solving import marks
from assistant.solving.claim_account import all_in_terms
from assistant.solving.claim_bounds import bound_of, tolerance, within
from assistant.solving.claim_compare import judge_comparison, judge_degree_steps, judge_degrees, judge_guides
from assistant.solving.claim_daylight import at_its_sync
from assistant.solving.claim_denial import denied, turned
from assistant.solving.claim_distances import bounded, claim_of_distances
from assistant.solving.claim_evened_out import weighed_by_nobody
from assistant.solving.claim_figure_put_up import UNBOUNDED, candidates
from assistant.solving.claim_figures import hangs_on_figures
from assistant.solving.claim_flash_turned import asks_to_turn, of_the_flash_turned
from assistant.solving.claim_folklore import judge_folklore
from assistant.solving.claim_influence import judge_influence
from assistant.solving.claim_kinds import BY_WORDS, first_of, of_facts
from assistant.solving.claim_lens import claim_of_deeper, claim_of_depth, claim_of_hyperfocal
from assistant.solving.claim_losses import judge_loss
from assistant.solving.claim_made_up import worn_beside_powers
from assistant.solving.claim_many_through import are_several_through
from assistant.solving.claim_marks import in_marks
from assistant.solving.claim_nearness import nearness, stops_off
from assistant.solving.claim_ranks import judge_ranks
from assistant.solving.claim_ratios import judge_ratio
from assistant.solving.claim_reading import first_step, readable, without_kept_sync
from assistant.solving.claim_rules import TOLERANCE, Verdict, elsewhere, judge_rule, judge_stated, keeps_together
from assistant.solving.claim_steps import Step, first_wrong, is_figure, steps
from assistant.solving.claim_told import told, turned_round
from assistant.solving.claim_turned_to_keep import turned_to_keep
from assistant.solving.claim_words import WITHOUT, plain
from assistant.solving.film import claim_about_film
from assistant.solving.set_ups import held_against
from assistant.solving.solution import Solution

_AS_MUCH_AGAIN = Pattern(r"\bhalf as \w+ again\b")
"""One and a half times, which no rule here reads."""
_ONE_OF_TWO = Pattern(r"\bwhich (?:\w+ ){0,3}(?:is|was|comes|would be|lies|will be) (?:\w+ ){0,2}(?:nearer|nearest|closer|closest|better|best|right|correct)\b[^?]*\?")
"""One of several is asked for, and no yes or no."""
MOST_TRIED = 6
"""Values of a text that are tried as the one that is claimed, the likeliest first."""

def solve(query: Query) -> Solution | None:
    """The verdict on a claim; None where the question is no claim or nothing can be made of it."""
    if not query.claim or _ONE_OF_TWO.search(query.text.lower()) is not None or _AS_MUCH_AGAIN.search(query.text.lower()) is not None or query.asks_for("sharp") and "hyperfocal" not in query.cues and query.has("sharp_limit", "focal_length", "aperture", "focus_distance") and "depth_of_field" not in query.cues:
        return None
    query = at_its_sync(without_kept_sync(query))
    said = in_marks(query.text, query.facts)
    of_the_kind, kept = turned_to_keep(query)
    if of_the_kind:
        return kept
    first = first_of(BY_WORDS, query) or (_special(readable(query)) if held_against(query) else _of_words(query, said))
    if first is not None or held_against(query) or are_several_through(query) or weighed_by_nobody(query):
        return first
    of_the_lens = claim_of_hyperfocal(query) or claim_of_deeper(query) or claim_of_depth(query)
    if of_the_lens is not None:
        return _as_put(query, of_the_lens)
    reach = query.has("guide_number", "distance", "aperture") and not query.has("focal_length") and not query.has("degrees")
    if any(a.quantity in ("sharp", "freeze", "coverage")[: 2 if reach else 3] for a in query.asks) or query.has("sharp_limit"):
        return None
    plainer = first_step(readable(query))
    if isinstance(plainer, Solution):
        return plainer
    if _CAMERA_MOVES.search(plain(query.text)) and not plainer.has("guide_number"):
        camera = judge_folklore(query.text)
        if camera is not None:
            return told(camera, query)
    special = _special(query)
    if special is not None:
        return special
    rule = judge_guides(said) or (judge_rule(said) if all_in_terms(said) and not worn_beside_powers(query) else None) or judge_comparison(said)
    ratio = judge_ratio(query.text) or judge_loss(query.text) or judge_degrees(query.text)
    if rule and rule.holds and (hangs_on_figures(query) or _BOTH_LIGHTS.search(said.lower())):
        rule = None
    if rule is None and not query.has("guide_number") and keeps_together(query.text):
        return None
    if ratio or (rule and (not (plainer.has("guide_number") or plainer.has("aperture")) or judge_comparison(said) == rule)):
        return told(ratio or rule, query)
    worked = _worked(plainer, judge_stated(query.text))
    if worked is not None and worked.status != "needs":
        return worked
    verdict = rule or judge_folklore(query.text)
    if verdict is not None and verdict.holds and len({f.value for f in query.all("shutter")}) > 1 and _MORE_LIGHT.search(query.text.lower()):
        verdict = None  # a belief about the shutter is no answer to what two times do
    if verdict and not ((verdict.holds or sum(f.quantity == "zoom_row" for f in query.facts) > 1) and hangs_on_figures(query)):
        return told(verdict, query)
    return _as_put(query, claim_of_distances(query) or claim_about_film(query)) or worked


_MORE_LIGHT = Pattern(r"\b(?:more|less|brighter|darker)\b")
_BOTH_LIGHTS = Pattern(r"\b(?:flash|strobe)\b[^.;?!]{0,60}\b(?:and|but|while|not)\b[^.;?!]{0,30}\b(?:ambient|daylight|windows?|room|lamps|sky)\b|\b(?:ambient|daylight|windows?|room|lamps|sky)\b[^.;?!]{0,60}\b(?:and|but|while|not)\b[^.;?!]{0,30}\b(?:flash|strobe)\b")
"""Something is said of each of them: a rule that speaks of light alone cannot say yes to both."""


def _of_words(query: Query, said: str) -> Solution | None:
    """What the words decide before any figure is looked at: what changes what, which is more of two."""
    of_a_case = any(f.quantity in ("guide_number", "zoom_row", "smallest_aperture", "exposure_value") for f in query.facts if f.origin == "said")
    several = sum(f.quantity in TAKES_LIGHT for f in query.facts) > 1 or len(query.all("distance")) > 1 and any(f.quantity == "stops" and f.cue in ("less", "more") for f in query.facts)  # what stands in the light twice is held against itself
    pops_of_powers = len({f.value for f in query.all("power")}) > 1 and query.has("count") and "ambient" not in query.cues  # "two at half power against one at full": a sum
    influence = judge_influence(said) if not (of_a_case or several or pops_of_powers) else None
    if influence is not None and not (influence.holds and hangs_on_figures(query) and _SPOILT.search(said.lower())):
        return told(influence, query)
    degrees = judge_degree_steps(query.text)
    if degrees is not None:
        judged = told(degrees, query)
        return turned_round(judged) if judged is not None and denied(plain(query.text)) else judged
    if "hyperfocal" in query.cues and not (query.has("focal_length") or query.has("aperture")):
        verdict = judge_folklore(query.text)
        if verdict is not None:
            return told(verdict, query)
    ranked = judge_ranks(query.text) if not query.has("guide_number") else None
    return told(ranked, query) if ranked is not None else None


_SPOILT = Pattern(r"\b(?:(?:over|under)-?expos\w*|blow\w*|burn\w*|too (?:bright|dark|hot)|(?:right|correct(?:ly)?|proper(?:ly)?|well|rightly|good) (?:exposed|exposures?)|exposed (?:right|correctly|properly|well))\b")
"""Whether a case comes out right is for its figures, whatever changes what."""


def _special(query: Query) -> Solution | None:
    """The first of the claims of one kind, each of which looks for all of its own figures."""
    found, minded = of_facts(query)
    if minded:
        return found
    if found is None and ({f.of for f in query.all("distance")} in _TWO_PLACES or bounded(query)):
        found = claim_of_distances(query)
    return _as_put(query, found)


def _as_put(query: Query, found: Solution | None) -> Solution | None:
    """The verdict turned round where the last of its figures is denied, or the claim is called wrong."""
    if found is None or not found.answers or found.answers[0].quantity != "claim":
        return found
    last = sorted(found.used, key=lambda f: f.start)[-1:]
    return turned_round(found) if turned(plain(query.text), [(f.start, f.end) for f in last]) else found


_TWO_PLACES = ({"front", "back"}, {"", "backdrop"}, {"key", "backdrop"})
"""Whose the distances are where two things stand in one light."""
_CAMERA_MOVES = Pattern(r"\b(?:stand|go|am|move|step|back|walk)\w*\b.{0,36}\b(?:with|and) (?:my|the) camera\b|\b(?:camera|photographer|tripod)\b.{0,24}\b(?:twice|double|half|times|further|farther|closer|nearer|back|distance)\b|\b(?:mov|step|walk)\w* the camera\b")


def placed(query: Query, judged: Solution) -> tuple[Fact, ...]:
    """Facts of the question that were read otherwise, or are figures of its steps: nothing is left over of them."""
    plainer = readable(query)
    further = first_step(plainer)
    plainer = further if isinstance(further, Query) else plainer
    starts = {f.start for f in judged.used} | {s.start for s in steps(plainer)} | {s.start for s in plainer.facts if s.cue == "result"}
    kept = {(f.start, f.quantity) for f in plainer.facts}
    used = frozenset(judged.used)
    return tuple(f for f in query.facts if f not in used and (f.start in starts or (f.start, f.quantity) not in kept))


def tidied(query: Query, judged: Solution) -> Query:
    """The question without the facts and numbers that the verdict has taken in, so that only the rest is reported."""
    hidden = frozenset(placed(query, judged))
    starts = {f.start for f in (*hidden, *judged.used)}
    left = {f.said for f in query.facts if f.quantity == "number" and f.start not in starts}
    return replace(query, facts=tuple(f for f in query.facts if f not in hidden), unplaced=tuple(u for u in query.unplaced if u in left))


# --- worked lines and values -----------------------------------------------------------------------

@record
class _Claimed:
    fact: Fact
    answer: Solution


def _worked(query: Query, rule: Verdict | None) -> Solution | None:
    """A value that is claimed, against what the rest of the question gives; several pairs one by one."""
    apertures, distances = query.all("aperture", ""), query.all("distance", "")
    if len(query.all("guide_number")) != 1 or len(apertures) < 2 or len(apertures) != len(distances):
        return _worked_one(query, rule)
    judged: list[Solution] = []
    for one, far in zip(apertures, distances):
        others = [f for f in (*apertures, *distances) if f not in (one, far)]
        found = _worked_one(query.with_facts(f for f in query.facts if f not in others), rule)
        if found is None or found.status != "answered":
            return found
        judged.append(found)
    return next((j for j in judged if j.answers[0].value is False), judged[-1])


def _worked_one(query: Query, rule: Verdict | None) -> Solution | None:
    """One value that is claimed."""
    if {f.quantity for f in query.facts} <= {"energy", "number"} or len(query.all("distance")) > 1 and {f.quantity for f in query.facts} <= {"distance", "gap", "rows"}:
        return None  # nothing to find the one of them from
    if {f.quantity for f in query.facts if not f.bad} <= {"aperture", "number", "share", "stops", "relation", "power"} and len(query.all("aperture")) > 1 and not patterns.search(r"\b(?:power|flash|light|output)\b", plain(query.text)):
        return None
    found: _Claimed | None = None
    lacking: Solution | None = None
    for fact in candidates(query)[:MOST_TRIED]:
        answer = _solve_without(query, fact)
        if answer is None or answer.status in ("rejected", "noted") or (answer.status == "answered" and not answer.answers):
            continue
        kinds = {f.quantity for f in answer.used}
        if fact.quantity in ("stops", "power") and kinds <= {"count", "power", "stops", "relation"} and elsewhere(plain(query.text)):
            continue  # found for equal lights from one spot, or for the flash's distance
        if answer.status == "needs":
            lacking = lacking or answer
            continue
        if answer.topic == "conversions" and fact.quantity in ("stops", "factor") and "name_guide_number" in query.cues and not query.has("guide_number"):
            continue  # of the light, and what is put up is of the guide number
        if fact.quantity == "film_speed" and answer.topic == "ambient" and sorted(f.quantity for f in answer.used) == ["aperture", "shutter"]:
            continue  # the settings of the frame itself: they are right for any film, where nothing is told of the light
        if fact.quantity == "aperture" and any(f.quantity in ("stops", "relation") and f.start > fact.start and _OFF_BY.match(plain(query.text), f.end) for f in answer.used):
            continue  # what it is said to be off by is no part of what is right
        found = _Claimed(fact, answer)
        break
    if found is None:
        return lacking if lacking is not None and _wants_number(query) else None
    return _compare(query, found, rule)


_OFF_BY = Pattern(r"\W*(?:over|under|off|out)\b")


def _wants_number(query: Query) -> bool:
    return query.has("guide_number") or query.has("aperture") or query.has("distance")


def _solve_without(query: Query, fact: Fact) -> Solution | None:
    from assistant.solving.solver import solve as solve_any

    rest = [f for f in query.facts if f is not fact and not (f.start == fact.start and f.origin == "said") and f.cue != "result" and f.quantity not in ("number", "times")]
    rest = [f for f in rest if not (f.quantity == fact.quantity and f.origin == "kept" and fact.quantity in ("aperture", "distance"))] if fact.quantity != "film_speed" else rest
    said = plain(query.text)
    first = query.first("guide_number")
    if fact.quantity == "aperture" and any(f.cue == "result" for f in query.facts):  # "f/10 at full, and at quarter power f/5": the last step counts
        powers = [f for f in rest if f.quantity == "power" and not f.of and f.start < fact.start]
        rest = [f for f in rest if f not in powers[:-1]]
    rest = [f for f in rest if f.quantity != "guide_number" or f is first or not is_figure(f, said)]
    guides = [f for f in rest if f.quantity == "guide_number"]
    if len(guides) > 1:
        rest = [f for f in rest if f.quantity != "count" or f.value != len(guides)]
    unit = fact.unit if fact.quantity in ("distance", "guide_number") and fact.unit in ("ft", "m", "cm", "in", "yd") else ""
    of = fact.of if fact.of not in ("camera",) else ""
    if fact.quantity == "count":
        unit = fact.unit
    return solve_any(replace(query, facts=tuple(rest), asks=(Ask(fact.quantity, of, unit),), claim=False))


_ENOUGH = Pattern(r"\b(?:enough|(?<!the )(?<!my )(?<!its )reach(?:es)?|suffic\w*|will (?:it|that|this|my flash|the flash) (?:do|manage|cover|get)|can (?:it|i|my flash|the flash|that|this|we) (?:\w+ ){0,2}?(?:get|do|reach|manage|go|cover|light|shoot|use|stand|work|match|equal|balance)|(?:will|would|do|can) i (?:get|manage)|be able|cope|make it|strong enough|far enough|get to|give me|have the power|plenty|(?:will|would|can|does|do)\b[^?]{0,70}(?<!the )(?<!my )(?<!a )(?<!key )(?<!fill )(?<!main )\b(?:light|illuminate|expose)(?: up)? (?:a|an|the|my|her|him|them|someone|somebody|anyone|people|two|three|four|five|six))\b|\bcovers? (?:up to |out to )?\d")
_LOST = Pattern(r"^(?!.*\b(?:needs?|open\w*|extra|add\w*|more|over)\b).*\b(?:los(?:e|es|t|ing)|costs?|less|darker)\b")
"""A loss is a negative number of stops."""
_TOO = Pattern(r"\btoo (?P<way>bright|hot|strong|much|close|near|powerful|light|dark|dim|weak|little|far|low|high|wide|small)\b|\b(?P<over>over-?expos\w*|blow\w*|burn\w*|wash\w* out|bleach\w*)\b|\b(?P<under>under-?expos\w*|fall short|short of light)\b")
_BRIGHT = ("bright", "hot", "strong", "much", "close", "near", "powerful", "light", "wide")


def _compare(query: Query, found: _Claimed, rule: Verdict | None) -> Solution | None:
    """The verdict on a claimed value: right, near enough, enough, or too much."""
    right = found.answer.answers[0]
    off = stops_off(found.fact, right)
    if off is None:
        return found.answer
    if asks_to_turn(query, found.fact):
        return of_the_flash_turned(query, found.fact, found.answer, _exposure(found.fact, off))
    said = plain(query.text)
    if right.quantity == "stops" and float(right.value) > 0 and _LOST.search(said):
        right = replace(right, value=-float(right.value))
        found = replace(found, answer=replace(found.answer, answers=(right, *found.answer.answers[1:])))
    gap = next((f for f in query.facts if f.quantity in ("stops", "relation", "loss") and f is not found.fact and patterns.match(r"\W*(?:off|out|under|over|short|too)\b|\W*(?:of )?(?:under|over)exp", said[f.end :])), None)
    if gap is not None and gap not in found.answer.used and found.fact.quantity == "aperture" and gap.start > found.fact.start:
        return _difference(found, right, off, gap)
    too = _TOO.search(said)
    if too:
        return _too(found, right, off, too, bool(_WITHOUT.search(said[: too.start()])))
    if (_ENOUGH.search(said) or found.fact.cue == "at_least") and found.fact.quantity in ("aperture", "distance", "count", "power", "film_speed"):
        judged = _enough(query, found, right, off)
    else:
        judged = _right_or_wrong(query, found, right, off, rule)
    return turned_round(judged) if turned(said, [(found.fact.start, found.fact.end)]) else judged


def _for_steps(query: Query, claimed: Fact) -> Query:
    """A setting that is claimed is found from the aperture, which is then no figure of a step."""
    return query.with_facts(f for f in query.facts if f.quantity != "aperture") if claimed.quantity in ("power", "film_speed", "count") else query


def _difference(found: _Claimed, right: Quantity, off: float, gap: Fact) -> Solution:
    """"is that a stop off?": the difference itself is what is claimed."""
    over = _exposure(found.fact, off)
    holds = abs(abs(over) - abs(gap.value)) <= TOLERANCE
    return _verdict(found, holds, right, (f"f/{found.fact.value:.3g} is {speak_stops(abs(over))} {'over' if over > 0 else 'under'} that.",), stops=over, limit=True)


def _exposure(fact: Fact, off: float) -> float:
    """How much brighter than right the picture would be, in stops."""
    return {"aperture": -off, "distance": -off, "guide_number": off}.get(fact.quantity, off)


_WITHOUT = Pattern(rf"{WITHOUT}$|\b(?:without|not|avoid|before it is|no)\b(?: (?:the|my|her|him|it|getting|being|going|be|to|get|go))*\s*$|n't (?:(?:get|getting|being|going|go|be|come|look|out|really) )*$|\b(?:keep|stop|prevent|save)\w*\b[^.?!,;]{{0,30}}\bfrom(?: (?:being|getting|going|coming out))*\s*$|\b(?:prevent|avoid)\w*(?: \w+){{0,3}}\s*$")


def _too(found: _Claimed, right: Quantity, off: float, too: re.Match[str], denied: bool = False) -> Solution:
    over = _exposure(found.fact, off)
    bright = bool(too["over"]) or (too["way"] or "") in _BRIGHT if not too["under"] else False
    holds = over > TOLERANCE if bright else over < -TOLERANCE
    holds = holds is not denied  # "without overexposing the daylight"
    state = "right" if abs(over) <= TOLERANCE else f"{speak_stops(abs(over))} {'over' if over > 0 else 'under'}"
    return _verdict(found, holds, right, (f"The exposure would be {state}.",), stops=over, limit=True)


SHORT_OF = 0.27
"""Stops by which what is asked to be enough may fall short: less than a click of a third (common practice, no source)."""

_CLOSED = Pattern(r"\b(?:small|closed|stopped down|far down|narrow) enough\b|\benough (?:closed|stopped) down\b|\benough to (?:keep|stop|prevent|avoid|save)\b[^.?!]{0,40}\b(?:overexpos\w*|blow\w*|burn\w*|wash\w*|too (?:bright|hot)|bleach\w*)", re.I)
"""What is to be no wider than the light allows."""


def _enough(query: Query, found: _Claimed, right: Quantity, off: float) -> Solution:
    """A limit is kept when the figure is no more than the light allows (no less than it needs)."""
    fact = found.fact
    more_is_better = _CLOSED.search(query.text) is not None and fact.quantity == "aperture" or found.answer.topic == "focus" or fact.quantity == "distance" and found.answer.topic == "falloff" and query.has("gap")  # for depth a lens is closed, for an even light it goes back
    spare = -off if fact.quantity in ("aperture", "distance") and not more_is_better else off
    if fact.quantity == "aperture" and found.answer.topic == "ambient" and "enough" not in query.text.lower():
        return _by_daylight(found, right, off, query.has("sync") and not query.has("shutter"))
    holds = spare >= -SHORT_OF
    note = "" if abs(spare) < 0.05 else f"There {'is' if spare <= 1.05 else 'are'} {speak_stops(spare)} to spare." if holds and spare > 0 else f"It falls {speak_stops(abs(spare))} short" + (", which is close enough." if holds else ".")
    verdict = _verdict(found, holds, right, (note,), stops=spare, limit=True)
    return verdict if holds or fact.quantity != "aperture" or spare >= 0 or found.answer.topic == "ambient" else _with_power(verdict, query, -spare)


def _by_daylight(found: _Claimed, right: Quantity, off: float, at_sync: bool) -> Solution:
    """Daylight is not turned down: wider than right is too bright; narrower is too dark, or takes a longer time where the sync alone is told."""
    holds = off >= -TOLERANCE if at_sync else abs(off) <= TOLERANCE
    state = f"There the time is {speak_stops(off)} longer than sync." if at_sync and off > 0 else f"There the daylight would be {speak_stops(abs(off))} {'over' if off < 0 else 'under'}."
    return _verdict(found, holds, right, (state if abs(off) >= 0.05 else "",), stops=-off, limit=True)


def _with_power(verdict: Solution, query: Query, short: float) -> Solution:
    """What power the aperture would take, where it is more than the flash has."""
    power = query.last("power")
    needed = (power.value if power else 1.0) * 2**short
    if needed <= 1.0:
        return replace(verdict, answers=(*verdict.answers, marks.power(needed)), lead=f"{verdict.lead} It takes {speak_power(needed)} power.")
    return replace(verdict, answers=(*verdict.answers, Quantity("power", needed, "of full")), lead=f"{verdict.lead} It would take {needed:.3g} times full power.")


_BY_THIRDS = 0.2
"""Stops within which a difference of two film speeds must come: they are marked in thirds."""

_READS_BOUNDED = Pattern(r"\b(?:gives?|gave|reads?|gets?|got|makes?)\b[^.;?!]{0,12}\b(?:more|less) than $")
"""Before a reading, of which more and less are plain; "smaller than f/8" may be the figure or the hole."""


def _right_or_wrong(query: Query, found: _Claimed, right: Quantity, off: float, rule: Verdict | None) -> Solution:
    before = plain(query.text)[: found.fact.start]
    bound = bound_of(before)[0] if found.fact.quantity not in UNBOUNDED or _READS_BOUNDED.search(before) else ""
    wrong = None if bound else first_wrong(_for_steps(query, found.fact), found.fact)
    usual = _BY_THIRDS if {f.quantity for f in found.answer.used} == {"film_speed"} else nearness(query.text, found.answer.assumed)
    fits = within(bound, -off, tolerance(plain(query.text), found.fact.start, found.fact.end, usual))
    bad_rule = rule is not None and not rule.holds
    holds = fits and wrong is None and not bad_rule
    if holds:
        note = "" if abs(off) < 0.1 or bound else f"It is {speak_stops(abs(off))} from exact: close enough."
        return _verdict(found, True, right, (note,))
    return _verdict(found, False, right, _faults(query, found, off, wrong, rule))


def _faults(query: Query, found: _Claimed, off: float, wrong: Step | None, rule: Verdict | None) -> tuple[str, ...]:
    """The first wrong step, what it costs, and why."""
    from assistant.solving.claim_speech import cost_of, step_sentence, why_of

    notes: list[str] = []
    if rule is not None and not rule.holds:
        notes += [rule.right, rule.why]
    if wrong is not None and (wrong.slip or len(steps(query)) > 1):
        notes.append(step_sentence(wrong))
    notes += cost_of(found.fact, off, wrong)
    if not (rule is not None and not rule.holds) and not (wrong is not None and wrong.slip):
        notes.append(why_of(found.answer.used))
    camera = query.first("camera_distance")
    if camera and found.fact.quantity == "aperture":
        notes.append("The distance that counts is from the flash to the subject, not from the camera.")
    return tuple(notes)


def _verdict(found: _Claimed, holds: bool, right: Quantity, notes: tuple[str, ...], stops: float | None = None, limit: bool = False) -> Solution:
    from assistant.solving.claim_speech import right_sentence

    used = (*found.answer.used, found.fact)
    answers: tuple[Quantity, ...] = (Quantity("claim", holds), *found.answer.answers[:1])
    if stops is not None and abs(stops) > 1e-6:
        answers += (marks.stops(stops),)
    said = (right_sentence(right, holds or limit), *(n for n in notes if n))
    return replace(found.answer, status="answered", lead=" ".join(("Yes." if holds else "No.", *said)), answers=answers, used=used, topic="claims", alternatives=())

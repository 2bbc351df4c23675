"""Claims of what the hyperfocal distance does: it goes with the square of the focal length and falls with the f-number."""

from __future__ import annotations

import math

from assistant import patterns
from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.query import Ask, Query
from assistant.records import replace
from assistant.scales import is_aperture_mark
from assistant.solving.claim_bounds import bound_of, within
from assistant.solving.claim_denial import called_wrong, denied, turned
from assistant.solving.claim_words import factor_said, plain
from assistant.solving.solution import Solution
from assistant.units import LENGTH, speak_length

_SHORTER = Pattern(r"\b(?:shorter|shortens?|closer|nearer|less|smaller|comes? (?:in|nearer|closer)|moves? (?:in|nearer|closer)|reduc\w*|decreas\w*|shrinks?|drops?|falls?|shortened|as (?:near|close|short))\b")
_LONGER = Pattern(r"\b(?:longer|lengthens?|further|farther|greater|more|bigger|larger|grows?|increas\w*|moves? (?:out|away|back)|goes (?:out|up|away)|rises?)\b")
_SAME = Pattern(r"\b(?:the same|unchanged|stays? put|does not (?:change|move)|doesn't (?:change|move))\b")
_HOLDS = 0.08
"""Doublings by which a factor may be off: "halves" from f/4 to f/8 is exact, from f/5.6 to f/11 nearly so."""


_FROM_SO_FAR = Pattern(r"\b(?:from|begins? at|starts? at|between|at)\b[^.?,;\d]{0,12}\b(?P<share>half(?:way)?|a third|one third|two thirds|a quarter|one quarter|twice|double)\b")


_NEAR_IS = Pattern(r"\bnear(?:est)? (?:limit|point|end)\b[^.?,;\d]{0,60}\b(?P<share>half(?:way)?|a third|one third|two thirds|a quarter|one quarter|twice|double)(?: of)? (?:that|the|it|this)\b")


_FOCUSED_ON_IT = Pattern(r"\bfocus\w* (?:at|on|to) (?:the |my |its )?hyperfocal\b")


def claim_of_the_half(query: Query) -> Solution | None:
    """"focused at the hyperfocal it is sharp from a third of it to infinity": from half of it."""
    said = plain(query.text)
    found = _NEAR_IS.search(said) or (_FROM_SO_FAR.search(said) if "infinity" in said or _FOCUSED_ON_IT.search(said) else None)
    if "hyperfocal" not in query.cues or found is None or query.has("aperture") or query.has("focal_length"):
        return None
    holds = found["share"].startswith("half") is not denied(said)
    lead = f"{'Yes' if holds else 'No'}. Focused at the hyperfocal distance, everything is sharp from half of it to infinity."
    return Solution(answers=(Quantity("claim", holds),), used=tuple(f for f in query.facts if math.isinf(f.value)), topic="claims", lead=lead)


def claim_of_hyperfocal_moved(query: Query) -> Solution | None:
    """"going from f/4 to f/8 halves the hyperfocal": the change there is, against the way or the factor that is said."""
    if "hyperfocal" not in query.cues:
        return None
    said = plain(query.text)
    right = _doublings(query, said)
    if right is None:
        return None
    factor = factor_said(_words_of_change(query, said))
    if factor is not None and _SHORTER.search(said) and factor > 1 and patterns.search(r"\btimes\b|\btwice\b", said):
        factor = 1 / factor
    if factor is not None:
        holds = abs(math.log2(factor) - right) < _HOLDS
    elif _SAME.search(said):
        holds = abs(right) < _HOLDS
    elif (_SHORTER.search(said) is None) == (_LONGER.search(said) is None):
        return None
    else:
        holds = (right < 0) is (_SHORTER.search(said) is not None)
    holds = holds is not denied(said)
    lead = f"{'Yes' if holds else 'No'}. It goes with the square of the focal length and falls with the f-number: here it becomes {2**right:.3g} times what it was."
    return Solution(answers=(Quantity("claim", holds), Quantity("factor", 2**right, "times")), used=query.facts, topic="claims", lead=lead)


_IT_IS = Pattern(r"\bhyper[- ]?focal\b[^.?!]*\b(?:is|are|comes? (?:out )?(?:to|at)|lies|lie|sits|stands|be|was|of|equals?|makes?|gives?)(?: (?:at|about|around|roughly|some|just|only|nearly|almost|over|under|more than|less than|than|more|less))* $|\b(?:is|does|do|will|would|are) [^.?!]*\bhyper[- ]?focal\b[^.?!]*$")
_PUT_AS = Pattern(r"[^.?!,\d]{0,12}\b(?:the|its|my|your) hyper[- ]?focal\b")
"""Right after a length: "is 5.2 m the hyperfocal distance of that lens"."""
_PART = 0.08
"""Doublings by which a distance said in round figures may be off."""


def claim_of_hyperfocal_at(query: Query) -> Solution | None:
    """"the hyperfocal distance of a 50 at f/8 is about 10.5 m": against the one there is for that lens, opening and film."""
    lengths = [f for f in query.facts if f.quantity in ("distance", "focus_distance", "max_distance", "min_distance") and f.origin == "said"]
    said = plain(query.text)
    if "hyperfocal" not in query.cues or len(lengths) != 1 or len(query.all("focal_length")) != 1 or len(query.all("aperture")) != 1 or query.has("sharp_limit"):
        return None
    if _IT_IS.search(said[: lengths[0].start]) is None and _PUT_AS.match(said, lengths[0].end) is None:
        return None
    from assistant.solving.focus import solve as of_sharpness

    claimed = lengths[0]
    found = of_sharpness(replace(query.with_facts(f for f in query.facts if f is not claimed), asks=(Ask("hyperfocal", "", claimed.unit),), claim=False))
    if found is None or found.status != "answered" or not isinstance(found.answers[0].value, float):
        return found
    right = found.answers[0].value * LENGTH[found.answers[0].unit]
    holds = within(bound_of(said[: claimed.start])[0], math.log2(right / claimed.value), _PART) is not turned(said, [(claimed.start, claimed.end)])
    return replace(found, answers=(Quantity("claim", holds), found.answers[0]), used=(*found.used, claimed), topic="claims", notes=(), lead=f"{'Yes' if holds else 'No'}. It is {speak_length(right, claimed.unit)}.")


_SET_TO_IT = Pattern(r"\b(?:focus\w*|pre-?focus\w*|set|parked|left|put|lens|ring|scale)\b[^.?!]{0,40}\b(?:on|at|to|for) (?:exactly |just |right |precisely )?(?:the |its |my )?hyper[- ]?focal\b|\bhyper[- ]?focal (?:focus|focusing|setting)\b")
_SHARP = Pattern(r"\b(?:(?P<not>out of focus|unsharp|soft|blurr?\w*|too (?:close|near))|sharp|in focus|in the zone)\b")
_OUT_THERE = Pattern(r"\b(?:infinity|horizon|∞)")
_STARTS = Pattern(r"\b(?:from|between) (?!(?:there|here|that|half|the half|then|now)\b)")
_STARTS_AT_THE_LENS = Pattern(r"\bfrom (?:right at |right in front of )?(?:the |my |your |our |its )?(?:lens|camera|feet|toes|tripod|glass)\b")


def claim_of_infinity_held(query: Query) -> Solution | None:
    """"focused at the hyperfocal distance, is everything out to infinity sharp?": it is, though not from the lens on."""
    said = plain(query.text)
    words = list(_SHARP.finditer(said))
    if "hyperfocal" not in query.cues or not _OUT_THERE.search(said) or not _SET_TO_IT.search(said) or len(words) != 1 or any(math.isfinite(f.value) for f in query.facts):
        return None
    at_the_lens = _STARTS_AT_THE_LENS.search(said) is not None
    if _STARTS.search(said) and not at_the_lens:
        return None  # where it begins is a question of half the distance
    right = not (at_the_lens or words[0]["not"])
    holds = right is not (denied(said) or called_wrong(said))
    lead = f"{'Yes' if holds else 'No'}. Focused at the hyperfocal distance, everything is sharp from half of it to infinity."
    return Solution(answers=(Quantity("claim", holds),), used=query.facts, topic="claims", lead=lead)


_JUST = 0.99
_WHERE = ("distance", "camera_distance", "sharp_limit", "max_distance")


def claim_of_sharp_so_near(query: Query) -> Solution | None:
    """"set to the hyperfocal distance, he stands 2 m off; is he sharp": from half of that distance on."""
    said = plain(query.text)
    at = [f for f in query.facts if f.quantity in _WHERE and f.origin == "said"]
    asked = list(_SHARP.finditer(said))
    if "hyperfocal" not in query.cues or len(at) != 1 or not asked or len(query.all("focal_length")) != 1 or len(query.all("aperture")) != 1 or not _SET_TO_IT.search(said) or {f.quantity for f in query.facts} - {*_WHERE, "focal_length", "aperture", "format", "remark", "place", "circle"}:
        return None
    from assistant.solving.focus import solve as of_sharpness

    found = of_sharpness(replace(query.with_facts(f for f in query.facts if f is not at[0]), asks=(Ask("hyperfocal", "", at[0].unit),), claim=False))
    if found is None or found.status != "answered" or not isinstance(found.answers[0].value, float):
        return None
    near = found.answers[0].value * LENGTH[found.answers[0].unit] / 2
    holds = ((at[0].value >= near * _JUST) is not (bool(asked[-1]["not"]) is not denied(said))) is not called_wrong(said)
    scale = LENGTH[found.answers[0].unit]
    return replace(found, answers=(Quantity("claim", holds), replace(found.answers[0], quantity="near_limit", value=near / scale)), used=(*found.used, at[0]), topic="claims", notes=(),
                   lead=f"{'Yes' if holds else 'No'}. Set to the hyperfocal distance it is sharp from {speak_length(near, at[0].unit)} to infinity.")


_IS_TOLD = Pattern(r"\bhyper[- ]?focal\b[^.?!;\d]{0,40}$")
_FOCUSED_THERE = Pattern(r"\b(?:focus\w*|pre-?focus\w*|set|park\w*|put)\b[^.?!]{0,24}\b(?:there|on it|to it|at it|(?:on|at|to|for) (?:exactly |just |right |precisely )?(?:that|this|the hyper[- ]?focal|it))\b")
_NEARER = Pattern(r"\b(?:closer|nearer|less|before|short|up to|within|inside)\b")


def claim_of_sharp_from_half(query: Query) -> Solution | None:
    """"the hyperfocal distance is 6 m; if I focus there, is everything from 3 m to infinity sharp?": from half of it on, whatever the lens.

    Focused at the hyperfocal distance H the near limit is H/2 (the thin-lens relations of `physics.optics`).
    """
    said = plain(query.text)
    lengths = [f for f in query.facts if f.quantity in (*_WHERE, "focus_distance", "min_distance") and math.isfinite(f.value) and f.origin == "said"]
    told = [f for f in lengths if _IS_TOLD.search(said[: f.start]) or _PUT_AS.match(said, f.end)]
    asked = list(_SHARP.finditer(said))
    if "hyperfocal" not in query.cues or len(lengths) != 2 or len(told) != 1 or len(asked) != 1 or not _FOCUSED_THERE.search(said) or _NEARER.search(said) or query.has("focal_length") or query.has("aperture"):
        return None
    far, near = told[0], next(f for f in lengths if f is not told[0])
    holds = ((near.value >= far.value / 2 * _JUST) is not (bool(asked[0]["not"]) is not denied(said))) is not called_wrong(said)
    begins = far.value / 2 / LENGTH[far.unit]
    return Solution(answers=(Quantity("claim", holds), Quantity("near_limit", begins, far.unit)), used=(*lengths, *query.all("sharp_limit")), topic="claims",
                    lead=f"{'Yes' if holds else 'No'}. Focused at the hyperfocal distance it is sharp from half of it, {speak_length(far.value / 2, far.unit)}, to infinity.")


_SECOND_MARK = Pattern(r"\bf ?/? ?(?:\d[\d.]*|two|four|eight|eleven|sixteen|five six|two eight)\b[^.?]{0,30}\bto,?(?: say,?| about)? (?P<n>\d[\d.]*|two|four|eight|eleven|sixteen|twenty[- ]two|thirty[- ]two)\b")
_MARKS = {"two": 2.0, "four": 4.0, "eight": 8.0, "eleven": 11.0, "sixteen": 16.0, "twenty-two": 22.0, "twenty two": 22.0, "thirty-two": 32.0, "thirty two": 32.0}
_AGAINST = Pattern(r"\b(?:instead of|rather than|compared (?:with|to)|against|than|(?:(?:of|as) )?(?:that (?:of|with)|that|what it is|what it was|the one|it is|it was) (?:at|for|with))\b")
"""The second is what the first is held against: "f/22 instead of f/11"."""
_TURNS = Pattern(r"\b(?:stop(?:s|ped|ping)?|clos(?:e|es|ed|ing)|open(?:s|ed|ing)?)(?: \w+){0,2} (?:down|up)?\b")
_TIMES = r"doubl\w*|halv\w*|twice|half|three times|tripl\w*|trebl\w*|quadrupl\w*|four times"
_LENS_TIMES = Pattern(rf"\b(?P<before>{_TIMES})(?: as long an?| the| my| of the)* focal length\b|\bfocal length (?:of the lens )?(?:is |becomes |gets |goes )?(?P<after>{_TIMES})\b")
"""The focal length changed by a factor, no lens being named."""
_FOR = Pattern(r"\b(?:for|to|with|by|than|instead of)\b")


def _doublings(query: Query, said: str) -> float | None:
    """Doublings of the hyperfocal distance from the first setting to the second; None where not two are told of one of them, and one of the other."""
    ranges = query.all("aperture_range") or [f for f in query.all("number_range") if is_aperture_mark(f.value) and is_aperture_mark(f.other)]
    told = sorted(query.all("aperture"), key=lambda f: f.start)
    told = told[::-1] if len(told) == 2 and _AGAINST.search(said[told[0].end : told[1].start]) else told
    stops = [v for f in ranges for v in (f.value, f.other)] or [f.value for f in told]
    mounted = sorted(query.all("focal_length"), key=lambda f: f.start)
    lenses = [f.value for f in (mounted[::-1] if len(mounted) == 2 and _AGAINST.search(said[mounted[0].end : mounted[1].start]) else mounted)]
    second = _SECOND_MARK.search(said) if len(stops) == 1 else None
    if second is not None and len(lenses) <= 1:
        stops, lenses = [*stops, _MARKS[second["n"]] if second["n"] in _MARKS else float(second["n"])], []
    turned = [f for f in query.all("stops") if f.cue in ("less", "more")]
    if not stops and not lenses and len(turned) == 1 and _TURNS.search(said):
        return abs(turned[0].value) / 2 * (1 if turned[0].cue == "more" else -1)
    if len(stops) == 2 and len(lenses) <= 1 and stops[0] != stops[1]:
        return round(2 * math.log2(stops[0] / stops[1])) / 2 if min(stops) > 0 else None
    longer = _LENS_TIMES.search(said) if not lenses and not stops else None
    if longer is not None:
        return 2 * math.log2(factor_said(longer["before"] or longer["after"]) or 1.0)
    if len(lenses) == 2 and len(stops) <= 1 and lenses[0] != lenses[1] and min(lenses) > 0 and _FOR.search(said):
        return 2 * math.log2(lenses[1] / lenses[0])
    return None


def _words_of_change(query: Query, said: str) -> str:
    """The text without its settings, which are no factors."""
    said = _LENS_TIMES.sub(lambda found: " " * len(found.group()), said)
    for fact in query.facts:
        if fact.quantity in ("aperture", "aperture_range", "number_range", "focal_length", "distance", "stops"):
            said = said[: fact.start] + " " * (fact.end - fact.start) + said[fact.end :]
    return said


_WAY_SHORTER = Pattern(r"\b(?:stop(?:s|ped|ping)?|clos(?:e|es|ed|ing))(?: it| the (?:lens|aperture))? down\b|\b(?:a |the )?(?:shorter|wider(?:[- ]angle)?) (?:lens|focal length)\b|\bsmaller (?:aperture|opening|stop)\b|\b(?:larger|higher|bigger) f-?numbers?\b")
_WAY_LONGER = Pattern(r"\bopen(?:s|ed|ing)?(?: it| the (?:lens|aperture))? up\b|\b(?:a |the )?longer (?:lens|focal length)\b|\b(?:wider|larger|bigger) (?:aperture|opening|stop)\b|\b(?:smaller|lower) f-?numbers?\b")


def claim_of_hyperfocal_way(query: Query) -> Solution | None:
    """"does stopping down make the hyperfocal distance shorter?": the way it goes, no figures being told."""
    if "hyperfocal" not in query.cues or any(f.origin == "said" and f.quantity not in ("format", "remark") for f in query.facts):
        return None
    said = plain(query.text)
    shorter, longer = _WAY_SHORTER.search(said), _WAY_LONGER.search(said)
    if (shorter is None) is (longer is None) or factor_said(said) is not None:
        return None
    rest = _WAY_LONGER.sub(" ", _WAY_SHORTER.sub(" ", said))
    says_shorter, says_longer = _SHORTER.search(rest) is not None, _LONGER.search(rest) is not None
    if says_shorter is says_longer and not _SAME.search(rest):
        return None
    holds = not _SAME.search(rest) and says_shorter is (shorter is not None)
    holds = holds is not denied(said)
    lead = f"{'Yes' if holds else 'No'}. The hyperfocal distance goes with the square of the focal length and falls with the f-number: stopped down, or with a shorter lens, it is nearer."
    return Solution(answers=(Quantity("claim", holds),), used=query.facts, topic="claims", lead=lead)

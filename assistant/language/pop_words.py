"""Pops counted without their noun, and times for which the lens is open at each of them.

"One pop is f/8. I fire six …": six pops. "From three pops to six": six pops. "I uncover the lens for
half a second at each of them": not the time of the exposure, but of one part of it.
"""

from __future__ import annotations

from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

MOST = 500
"""Pops on one frame that anybody fires: a larger figure is of something else."""
_LET_OFF = Pattern(
    r"\b(?:fir(?:e|es|ed|ing)|(?:let|lets|letting|set|sets|setting|loose|loosed) off|(?:give|gives|gave|giving) (?:it|her|him|them|the \w+)|(?:pop|popp|trigger|discharg|releas)(?:s|es|e|ed|ing)?|puts? in|do|dumps?|(?:series|run|string|burst|round) of)"
    r"(?: (?:it|them|off|only|just|all|a total of|altogether|another|about))* $")
_POPS_SAID = Pattern(r"\b(?:pops?|bursts|flashes)\b")
_CALLS_FOR = Pattern(r"\b(?:needs?|needed|takes?|wants?|wanted|calls? for|asks? for|planned|meant|should (?:be|have been)|managed|got)(?: (?:only|just|about))* $")
_THEN_ENDS = Pattern(
    r"\W*$|\s*[,.;?!]|\s+(?:of (?:them|these|those|the same|such|its kind)|in the dark|in a row|in all|altogether|together|in succession|one after|from (?:the same|there|here|where)|with the|on (?:one|the same|a single)|onto|into|at (?:the same|it|her|him|them|full)|while|and|instead|then|through|during|over the|takes?|lasts?|from first|need)\b")
_ONE_IS = Pattern(r"\b(?:pops?|bursts?|flash|flashes|discharges?)\b")
_UP_TO = Pattern(r"\s*(?:(?:on|onto|in|into|per|for) (?:the|one|each|a|every|that|this) (?:frame|picture|exposure|shot|negative|neg|subject|wall|scene),? )?(?:up |on |over |right |straight )*(?:to|rather than|instead of|against|versus|than|,? then)(?: (?:just|only|about|all|firing))* ")
_ONE_UP_TO = Pattern(r"\b(?:one|an?|1|single) (?:full )?(?:pop|flash|burst)(?: up| on)? to (?:firing )?$")
_NO_NOUN = Pattern(r"\W*$|\s*[,.;?!]|\s+(?:of (?:them|these)|at|from|is|are|gains?|gives?|makes?|means?|adds?|raises?|brings?|costs?|buys?|would|will|should|does|do|doubles|puts?|takes?|opens?|lifts?|must|can|earns?|on|in|with|and|then|the|lets?|leaves?|gets?|you|i|it)\b(?! (?:feet|foot|ft|stops?|metres|m|seconds|s)\b)")


def counted(facts: list[Fact], lower: str) -> list[Fact]:
    """The facts with the numbers that are pops by what is done with them, or by the pops that they are held against."""
    facts = [replace(f, quantity="count", cue="", of="") if f.quantity == "max_count" and _is_no_bound(f, lower) else f for f in facts]
    facts = [replace(f, quantity="count", unit="pops", of="") if f.quantity == "count" and f.unit == "flashes" and f.value > 1 and _FIRES.search(lower[: f.start]) and _ONTO_ONE.match(lower, f.end) else f for f in facts]
    if not [f for f in facts if f.quantity == "number"] or _ONE_IS.search(lower) is None and _EXPOSED.search(lower) is None:
        return facts
    out: list[Fact] = []
    for n, fact in enumerate(facts):
        if fact.quantity == "number" and not fact.bad and 1 <= fact.value <= MOST and fact.value == int(fact.value):
            out.append(_meant(fact, out, facts[n + 1] if n + 1 < len(facts) else None, lower))
        else:
            out.append(fact)
    return out


_I_STAND = Pattern(r"(?:\b(?:i|i'm|i'll|we|we're|we'll)\b|(?:,|\bbut|\band) will be\b)(?: (?:will|can|could|must|have to|be|am|going to|only|get|getting|standing|stand|stood|now|right|about|working|work|walking|firing|fire|pop|it|the flash|from|at|within|staying|stay|back|keep)){0,6} $")
_HOW_MANY = Pattern(r"\bhow many\b(?! (?:stops|metres|meters|feet))")
_ON_FOOT = Pattern(r"\b(?:pops?|bursts?|flashes|paint\w*|open flash)\b")


def stood_from(facts: list[Fact], text: str) -> list[Fact]:
    """"one pop gives f/8 at 3 m; I'll be standing 6 m from the wall": the flash is in the hand of who stands there, so it is the flash's distance. So it is where the pops themselves are claimed: "three at 4 m, and I'll be at 8 m; that's six?"."""
    gaps = [f for f in facts if f.quantity == "gap" and f.of == "backdrop"]
    placed = [f for f in facts if f.quantity == "distance"]
    lower = text.lower()
    own = [f for f in facts if f.quantity == "camera_distance" and f.cue == "self"]
    counts = [f for f in facts if f.quantity == "count" and f.unit in ("pops", "flashes")]
    if len(own) == len(placed) == 1 and not gaps and counts and (_HOW_MANY.search(lower) or len(counts) == 2 and not any(f.quantity == "aperture" for f in facts)):
        return [replace(f, quantity="distance", of=placed[0].of, cue="") if f is own[0] else f for f in facts]
    if len(gaps) != 1 or len(placed) != 1 or placed[0].of or not _ON_FOOT.search(lower) or not _I_STAND.search(lower[: gaps[0].start]):
        return facts
    return [replace(f, quantity="distance", of="", cue="") if f is gaps[0] else f for f in facts]


_BY_POPS = frozenset({"count", "gap", "distance", "remark", "aperture", "power"})


def onto_the_wall(facts: list[Fact], text: str) -> list[Fact]:
    """"one pop does it with the head 4 m from the wall, how many at 8 m from the wall": nobody stands before it, so the wall is what is lit."""
    lengths = [f for f in facts if f.quantity in ("gap", "distance")]
    lit = len(lengths) == 2 and all(f.of == "backdrop" for f in lengths) and {f.quantity for f in facts} <= _BY_POPS
    if not lit or not _HOW_MANY.search(text.lower()) or not any(f.quantity == "count" and f.unit in ("pops", "flashes") for f in facts):
        return facts
    return [replace(f, quantity="distance", of="", cue="") if f in lengths else f for f in facts]


_FIRES = Pattern(r"\b(?:fir(?:e|es|ed|ing)|pop(?:ped|ping)?|put(?:ting)?|set(?:ting)? off|let(?:ting)? off|give|giving|hit(?:ting)?) $")
_ONTO_ONE = Pattern(r" (?:on|onto|into|in) (?:one|the same|a single) (?:frame|picture|exposure|shot|negative|neg|sheet|plate|film)\b")


def _is_no_bound(fact: Fact, lower: str) -> bool:
    """Pops of one picture, in so many seconds, of one charge or fired already: not the most that may be fired."""
    return ON_A_FRAME.match(lower, fact.end) is not None or _WITHIN.match(lower, fact.end) is not None or _OF_A_CHARGE.match(lower, fact.end) is not None or _SPENT.search(lower[: fact.start]) is not None


ON_A_FRAME = Pattern(r",? *(?:on|for|per|to|into|in|at) (?:each|every|an?|one|the same)? ?(?:frame|picture|exposure|shot|photo|negative|neg|plate|sheet|image)\b")
"""Right after a number of pops: those of one picture."""
_WITHIN = Pattern(r" (?:(?:should|must|have to|are to|to|will) )?(?:fall|come|go off|fire|fit|happen)? ?(?:within|in|inside) (?:\S+ )?\S* ?(?:s|seconds?)\b")
_OF_A_CHARGE = Pattern(r" (?:\w+ ){0,3}?(?:out of|from|off|per|on|with|to|of) (?:(?:a|an|one|the|each|every|my|single|full|fresh|last|this|that|new) )*(?:charge|set|batter(?:y|ies)|cells|pack)\b")
"""Right after a number of pops: what a charge was good for, and no bound."""
_SPENT = Pattern(r"\b(?:used(?: up)?|fired(?: off)?|spent|shot(?: off)?|burnt|burned|popped|gone through|got through|went through|taken) (?:about |some |already |exactly |just )?$")
_EXPOSED = Pattern(r"\bexposures\b")
_EQUAL_EXPOSURES = Pattern(r" (?:equal |identical |similar |separate |short |same )+exposures\b")
_TOGETHER_READ = Pattern(r" (?:of (?:them|these) )?(?:together )?(?:read|gave|give|meter|make|metered|add up to|come to|came to|get me|got me|are good for)(?: me| us)? (?:only |just |about )?f\W?\d")
_AT_A_POWER = Pattern(r"(?: of them| more| pops)?,? (?:at|on|with) (?:a |only )?")
_OF_ALL = Pattern(r"\b(?:all|together|the whole|these|those)(?: the)? $")


def _meant(fact: Fact, before: list[Fact], after: Fact | None, lower: str) -> Fact:
    """What a whole number with no noun counts, if anything."""
    pops = [f for f in before if f.quantity == "count" and f.unit in ("pops", "flashes")]
    if _is_fired(fact, lower) or _is_beside(fact, before, lower):
        return replace(fact, quantity="count", unit=_unit(before), of="")
    if _TOGETHER_READ.match(lower, fact.end) and _POPS_SAID.search(lower) is not None:
        return replace(fact, quantity="count", unit="pops", of="")  # "pops needed? eight read f/4"
    if _EQUAL_EXPOSURES.match(lower, fact.end):
        return replace(fact, quantity="count", unit="frames", of="")
    if pops and after is not None and after.quantity == "power" and _AT_A_POWER.fullmatch(lower, fact.end, after.start):
        return replace(fact, quantity="count", unit=_unit(before), of="")  # "two pops at full and four at a quarter"
    if len(pops) > 1 and fact.value == sum(f.value for f in pops) and _OF_ALL.search(lower[: fact.start]):
        return replace(fact, quantity="remark", value=0.0)
    return fact


def _is_fired(fact: Fact, lower: str) -> bool:
    return (_LET_OFF.search(lower[: fact.start]) is not None or _CALLS_FOR.search(lower[: fact.start]) is not None and _POPS_SAID.search(lower) is not None) and _THEN_ENDS.match(lower, fact.end) is not None


def _is_beside(fact: Fact, before: list[Fact], lower: str) -> bool:
    """Whether pops, or one of them, stand right before it, and nothing of another kind after it."""
    last = before[-1] if before else None
    told = last is not None and last.quantity == "count" and last.unit in ("pops", "flashes") and _UP_TO.fullmatch(lower, last.end, fact.start) is not None
    return (told or _ONE_UP_TO.search(lower[: fact.start]) is not None) and _NO_NOUN.match(lower, fact.end) is not None


def _unit(before: list[Fact]) -> str:
    return next((f.unit for f in reversed(before) if f.quantity == "count" and f.unit in ("pops", "flashes")), "pops")


_OPENED = r"(?:open(?:s|ed|ing)?|uncover(?:s|ed|ing)?|uncap(?:s|ped|ping)?|expos(?:e|es|ed|ing)|(?:cap|hat|card|lid|cover|cloth|hand) (?:comes |is |was )?(?:off|away|lifted|removed)|(?:lift|take|pull|remov|whip)(?:e|s|ed|ing)? (?:off )?(?:the |my |a )?(?:lens )?(?:cap|hat|card|lid|cover|cloth)|(?:took|taking) (?:off )?(?:the |my |a )?(?:lens )?(?:cap|hat|card|lid|cover|cloth))"
_EACH_ONE = r"(?:each|every|apiece|per (?:pop|flash|burst|shot)|a (?:pop|flash|burst))"
_WAITS = r"(?:wait\w*|between|recycl\w*|apart|interval|gap|pause)"
_OPEN_BEFORE = Pattern(rf"\b{_OPENED}\b(?:(?!\b{_WAITS}\b)[^.?!;]){{0,70}}$")
_EACH_AFTER = Pattern(rf"(?:(?!\b{_WAITS}\b)[^.?!;,:]){{0,40}}\b{_EACH_ONE}\b(?! second)")
_EACH_BEFORE = Pattern(rf"\b{_EACH_ONE}\b(?! second)(?:(?!\b{_WAITS}\b)[^.?!;]){{0,60}}$")
_OPEN_AFTER = Pattern(rf"(?:(?!\b{_WAITS}\b)[^.?!;]){{0,50}}\b{_OPENED}\b")


def opened_for_each(facts: list[Fact], lower: str) -> list[Fact]:
    """The facts with a time that the lens is open at each of several pops as `open_each`."""
    timed = [f for f in facts if f.quantity in ("shutter", "time", "interval", "duration") and f.of != "ambient" and f.value >= 0.01]
    if not timed or not any(f.quantity == "count" and f.unit in ("pops", "flashes") and f.value > 1 for f in facts):
        return facts
    each = [f for f in timed if _is_open(f, lower) and _is_each(f, lower) and not lower[: f.start].rstrip().endswith(" every")]  # "one every 5 seconds": how often
    if len(each) != 1:
        return facts
    rest = [f for f in facts if f.quantity in ("shutter", "time") and f is not each[0]]
    by_itself = rest[0] if len(rest) == 1 and not rest[0].of and _NEEDS.search(lower[: rest[0].start]) else None
    return [replace(f, quantity="open_each", cue="", of="") if f is each[0] else replace(f, quantity="shutter", of="ambient") if f is by_itself else f for f in facts]


_NEEDS = Pattern(r"\b(?:needs?|takes?|wants?|requires?|calls? for|asks? for|meters?|reads?|right at|correct at)(?: about| some| at)* $")
"""Before the time that the light which is there takes by itself."""


def _is_open(fact: Fact, lower: str) -> bool:
    return _OPEN_BEFORE.search(lower[: fact.start]) is not None or _OPEN_AFTER.match(lower, fact.end) is not None


def _is_each(fact: Fact, lower: str) -> bool:
    return _EACH_AFTER.match(lower, fact.end) is not None or _EACH_BEFORE.search(lower[: fact.start]) is not None

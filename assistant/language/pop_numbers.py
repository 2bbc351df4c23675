"""Numbers that are pops by what stands beside them: "two pops at full power and four at a quarter", "ten pops instead of three", "all six"."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.language.hearing import fold
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace

KINDS = frozenset({"number", "power", "max_count"})
_POP_UNITS = ("pops", "flashes")
_FIRED = Pattern(r"\b(?:pops?|popped|popping|bursts?|flash(?:es)?|fir(?:e|ed|es|ing)|hits?)\b")
_AT_POWER = Pattern(r"(?: (?:more|other|others|of them|of those|each|again|further))*,?(?: (?:fired|given|made|set|done|were|was|are))?(?: only)? (?:at|on|with|of) (?:an? )?$")
_COMPARES = Pattern(r"\b(?:than|instead of|rather than|in place of|against|compared (?:with|to)|versus|vs\.?|over|this time|last time|last night|tonight|yesterday|second time|now|then|to|from|only|just|not)\b")
_ALONE_AFTER = Pattern(r"\s*(?:$|[.,;:?!](?!\d)|(?:this|last|next|of them|today|now|before|on|to|in|for|will|would|and|is|are|does|do|did|was|were|give|gave|make|this time)\b)")
_SHORT_OF = Pattern(r"\b(?:only|just) (?:got|had|fired|gave|given|did|managed)\b")
_EQUAL = Pattern(r"\s*(?:(?:equal|identical|like|even|separate|matching) )+(?:exposures?|pops|flashes|bursts|hits|shots)\b|\s*(?:exposures?)(?: all)? (?:alike|of (?:the )?(?:same|equal) (?:size|length|amount)|the same)\b")
_ALL_OF_THEM = Pattern(r"\b(?:all|the|those|these|my|whole|every one of the)(?: of the| the| of those)? $")
_TOGETHER = Pattern(r"\s*(?:$|[.,;:?!](?!\d)|(?:together|at once|of them|for|on|in|want|need|give|make|add|sum|come|amount|build|work|are|is|as|pops|flashes|on)\b)")
_PART_OF = Pattern(r" ?(?:of )?(?:the |its |my )?")
_OF_THE_CHARGE = Pattern(r"\s*(?:of )?(?:the |its )?(?:voltage|energy|charge|capacity)\b")


def settle(facts: list[Fact], text: str) -> list[Fact]:
    """The facts with those numbers as pops, and those that only say again what was told as remarks."""
    lower = fold(text)
    facts = _full_of_what(facts, lower)
    if not _FIRED.search(lower) and not any(_EQUAL.match(lower, f.end) for f in facts if f.quantity == "number"):
        return facts
    facts = _more_or_fewer(_some_of_them(_per_frame(facts, lower), lower), lower)
    bare = [f for f in facts if f.quantity == "number" and not f.bad and f.value == int(f.value) and 1 <= f.value <= 500]
    if not bare:
        return facts
    powers = [f.start for f in facts if f.quantity == "power"]
    if len(bare) == 1 and _SHORT_OF.search(lower):
        facts = [replace(f, quantity="count", cue="") if f.quantity == "max_count" and f.unit in _POP_UNITS else f for f in facts]
    counted = [f for f in facts if f.quantity == "count" and f.unit in _POP_UNITS]
    mixed = [f for f in bare if any(p >= f.end and _AT_POWER.fullmatch(lower, f.end, p) for p in powers)] if counted else []
    equal = [f for f in bare if _EQUAL.match(lower, f.end)]
    other = _other(facts, bare, counted, lower)
    pops = [*mixed, *equal, *other]
    facts = [replace(f, quantity="count", unit="pops", of="") if f in pops else f for f in facts] if pops else facts
    return _said_again(facts, lower)


_ADDS = Pattern(r"\b(?:add(?:ed|ing)?|bring(?:ing)? in|brought in|put(?:ting)? up|plug(?:ged)? in|join(?:ed)? by)(?: another| a further| yet)? $")
_MORE_OF_THEM = Pattern(r" (?:more|others|extra|further|additional)\b(?! (?:stops?|feet|met))")
_TAKES = Pattern(r"\b(?:take|took|taking|remov(?:e|ed|ing)|unplug(?:ged)?|switch(?:ed)? off|turn(?:ed)? off|lose|lost|drop(?:ped)?)(?: away| out| off| down)? $")
_TAKEN = Pattern(r"(?: of (?:them|the \w+|those))?(?: (?:heads?|lamps?|lights?|flashes|strobes|guns))?(?: away| out| off| down)?\s*(?:$|[.,;:?!](?!\d)|and\b|so\b|what\b|from\b)")


def _more_or_fewer(facts: list[Fact], lower: str) -> list[Fact]:
    """"four flashes give f/8, I add two more", "I take one away": so many of the same kind, beside those that were told."""
    told = [f for f in facts if f.quantity == "count" and f.unit == "flashes" and f.value > 1]
    loose = [f for f in facts if f.quantity == "number" and not f.bad and f.value == int(f.value) > 0] if len(told) == 1 else []
    if len(loose) != 1 or loose[0].start < told[0].end:
        return facts
    more = _ADDS.search(lower[: loose[0].start]) or _MORE_OF_THEM.match(lower, loose[0].end)
    less = not more and _TAKES.search(lower[: loose[0].start]) and _TAKEN.match(lower, loose[0].end)
    if not more and not less:
        return facts
    return [replace(f, quantity="count", unit="flashes", of="", cue="more" if more else "less") if f is loose[0] else f for f in facts]


_OF_ALL_OF_THEM = Pattern(r" of (?:the|my|those|these|all|our|his|her)(?: \w+)? $")
_WENT = Pattern(r"(?: of them)? (?:actually |really |only )?(?:went off|fired|misfired|failed|did(?: not|n't)|worked|lit|flashed|got through|were (?:lost|missed|fired)|was (?:lost|missed))\b")


def _some_of_them(facts: list[Fact], lower: str) -> list[Fact]:
    """"five of the ten pops", "eight were planned, six went off": pops as well, and those told are no bound."""
    whole = [f for f in facts if f.quantity in ("count", "max_count") and f.unit in _POP_UNITS and f.value > 1]
    if not whole:
        return facts
    some = [f for f in facts if f.quantity == "number" and not f.bad and f.value == int(f.value) > 0 and (_WENT.match(lower, f.end) or any(f.end <= w.start and _OF_ALL_OF_THEM.fullmatch(lower, f.end, w.start) for w in whole))]
    bound = [w for w in whole if w.quantity == "max_count" and _OF_ALL_OF_THEM.search(lower[: w.start])]
    return [replace(f, quantity="count", unit=f.unit or "pops", of="", cue="") if f in some or f in bound else f for f in facts] if some or bound else facts


def _other(facts: Sequence[Fact], bare: Sequence[Fact], counted: Sequence[Fact], lower: str) -> list[Fact]:
    """"ten pops instead of three": the one bare number beside one number of pops, where nothing else is told."""
    rest = {f.quantity for f in facts if not (f.quantity == "count" and f.unit == "frames")} - {"count", "number", "remark", "place"}
    if rest or len(bare) != 1 or len(counted) != 1 or not _COMPARES.search(lower) or not _ALONE_AFTER.match(lower, bare[0].end):
        return []
    return [bare[0]]


def _said_again(facts: list[Fact], lower: str) -> list[Fact]:
    """"all six", "fire the three": as many as were told, or all of them together."""
    counts = [f.value for f in facts if f.quantity == "count" and f.unit in _POP_UNITS]
    if not counts:
        return facts
    known = {*counts, sum(v for v in counts if v > 1), sum(counts)}
    again = [f for f in facts if f.quantity == "number" and f.value in known and _ALL_OF_THEM.search(lower[: f.start]) and _TOGETHER.match(lower, f.end)]
    return [replace(f, quantity="remark", unit="", of="", cue="") if f in again else f for f in facts] if again else facts


_EACH_FRAME = Pattern(r"\s*each\b|\s*(?:on|per|to|for|in|into|onto|at) (?:each|every|an?|one)(?: single)? (?:frame|picture|exposure|shot|photo|negative|sheet|plate)\b")


_TO_DO = Pattern(r"\b(?:have|has|need|want|got) to (?:do|shoot|make|take|expose|get|cover|fire) $|\bneed $")

_YET_TO_DO = Pattern(r"\s*(?:left |still )?to (?:do|shoot|make|take|expose|get|cover|fire)\b")


def _per_frame(facts: list[Fact], lower: str) -> list[Fact]:
    """"with two pops on each frame": what goes on a frame is no bound."""
    bound = [f for f in facts if f.quantity == "max_count" and (f.unit in ("", *_POP_UNITS) and _EACH_FRAME.match(lower, f.end) or f.unit == "frames" and (_TO_DO.search(lower[: f.start]) or _YET_TO_DO.match(lower, f.end)))]
    return [replace(f, quantity="count", cue="", unit=f.unit or "pops") if f in bound else f for f in facts] if bound else facts


def _full_of_what(facts: list[Fact], lower: str) -> list[Fact]:
    """"60 percent of its full energy", "80 percent of full voltage": a share of it, and no second power."""
    shares = [f for f in facts if f.quantity in ("power", "charge") and f.value < 1]
    full = [f for f in facts if f.quantity == "power" and f.value == 1.0 and _OF_THE_CHARGE.match(lower, f.end)] if len(shares) == 1 else []
    full = [f for f in full if shares[0].unit == "%" or _PART_OF.fullmatch(lower, shares[0].end, f.start)]
    return [f for f in facts if f not in full] if full else facts

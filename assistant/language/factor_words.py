"""Factors of what stands in the light, wherever in the text they are told: of the glass on the lens, or of what is over the flash.

"yellow x2 on the lens" · "the factor engraved on my red filter is 8" · "I lay over it a gel whose factor is 2.5"
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.physics.ambient import stops_from_density, stops_from_factor
from assistant.query import Fact
from assistant.records import replace

_COLOUR = r"(?:light |dark |deep |pale |medium )?(?:yellow|orange|red|green|blue|amber|yellow-green|violet|magenta)"
_COLOUR_BEFORE = Pattern(rf"\b{_COLOUR}(?: (?:filter|glass|one|is|at|of|with))*[ ,(:=]*$")
_POLARISER_BEFORE = Pattern(r"\b(?:pola|polari[sz]er|polarizing filter|pol|cpl|c-pol)(?: (?:filter|is|at|of|one))*[ ,(:=]*$")
_COLOUR_AFTER = Pattern(rf"[ -]*{_COLOUR}\b")
_FACTOR_OF_IT = Pattern(r"\bfactor\b[^.;?!\d]{0,40}\b(?:is|was|of|reads|says|at|being|a|about|as|to be|gives|shows|given as)[ :=]*$|\bfactor[^.;?!\d]{0,30}[:=] ?$")
_MARKED = Pattern(r"\b(?:filter|polari[sz]er)(?:'s| is| was| has)? ?(?:marked|says|reads|engraved|stamped|labelled|printed)(?: (?:as|with|on it|a|an|it))* *$")
"""Before what a filter has on its rim."""
_ON_LENS = Pattern(r"\blens\b|\bcamera\b")
_FACTOR_JUST = Pattern(r"\bfactor(?: is| of| says| reads)? ?$")
_FACTOR_TIMES = Pattern(r"\bfactor(?: is| of| says| reads|,|:| is a| being| was| a)? ?$")
_DRAW_WANTS = Pattern(r"\b(?:bellows(?: (?:extension|draw))?|extension|draw|rings|tubes|close-?up)(?:(?: (?:itself|alone|then|also|always|another|a further|about|for|calls|asks|me))* (?:wants?|needs?|takes?|costs?|asks? for|calls? for|adds?|demands?))?(?: (?:another|a further|an extra|about|me|for))* *$")
"""Before what the draw asks for in times the light."""
_OF_SOMETHING = Pattern(r" ?(?:the|that|this|as|my|its|what|more|less|longer|further)\b")
"""After a number of times that is of something else than the light: "twice the distance"."""
_FULL_STOP = Pattern(r"full stop\W*$")
"""A mark that was dictated: "factor two point five full stop"."""
_ADDED_GREY = Pattern(r" ?(?:nd\b|neutral|gr[ae]y\b)")


_GREY_GLASS = Pattern(r" ?(?:nd|neutral density|gr[ae]y)\b(?! ?\.?\d)")
"""After its factor: "a 4x ND", but no "2x ND4"."""
_OF_A_FILTER = Pattern(r"\b(?:filter|glass|gel|polari[sz]er)\b")
_NAMED = ("times", "power", "number", "stops", "loss", "filter_loss", "signed")
NO_FACTOR = "a filter lets through no more light than there is, so its factor is 1 or more"
KINDS = frozenset({*_NAMED, "factor"})
"""What is read here begins with a fact of one of these."""


def settle(facts: Sequence[Fact], text: str) -> list[Fact]:
    """The facts with the factors that were told of a colour, of a filter or of a gel."""
    said = text.lower()
    named = [_named(f, said) if f.quantity in _NAMED else f for f in facts]
    if "factor" not in [f.quantity for f in named]:
        return _without_grey_gel(named, said)
    named = _in_a_row(named, said)
    named = [replace(f, bad=NO_FACTOR) if f.quantity == "factor" and f.value < 1 and not f.bad and _OF_A_FILTER.search(said) else f for f in named]
    glass = {f.end for f in named if f.quantity == "factor" and f.of == "camera"}
    named = [replace(f, quantity="camera_filter", unit="filter", of="camera", value=0.0) if f.quantity == "modifier" and f.unit == "gel" and f.start - 1 in glass and "gel" not in f.said.lower() else f for f in named]
    named = _without_grey_gel(named, said)
    return [_of_a_taker(f, named, said) for f in named]


def _without_grey_gel(facts: list[Fact], said: str) -> list[Fact]:
    """"a gel of ND 0.6": one thing, and no gel beside it."""
    greys = [f for f in facts if f.quantity == "nd"]
    return [f for f in facts if not (f.quantity == "modifier" and f.unit == "gel" and any(0 <= d.start - f.end <= 16 and _OF_DENSITY.fullmatch(said[f.end : d.start]) for d in greys))] if greys else facts


_FACTORS = Pattern(r"\bfactors\b[^.;?!\d]{0,24}$")
_JOINED = Pattern(r"(?: ?,)? ?(?:and |& )?(?:of )?")
_ANOTHER_OF = Pattern(r"\b(?:filter|glass|gel|polari[sz]er|nd|one)(?: (?:one|that|which|it|has|is|with|a|of|its|factor|at|takes|needs))* $")


def _in_a_row(facts: Sequence[Fact], said: str) -> list[Fact]:
    """"filters with factors 2, 1.5 and 4", "the polariser has a factor of 3 and my orange filter one of 4": each is a factor."""
    out: list[Fact] = []
    for fact in facts:
        last = next((f for f in reversed(out) if f.quantity == "factor" and not f.bad), None)
        if fact.quantity in ("number", "times") and not fact.bad and 1 <= fact.value <= 64 and last is not None:
            between = said[last.end : fact.start]
            listed = _JOINED.fullmatch(between) and _FACTORS.search(said[max(0, out[0].start - 40) : next(f.start for f in out if f.quantity == "factor") + 8].rstrip("0123456789. "))
            another = _ANOTHER_OF.search(between) if len(between) < 60 and fact.quantity == "number" else _GREY_AFTER.match(said, fact.end) if fact.quantity == "times" else None
            if listed or another:
                fact = replace(fact, quantity="factor", of="camera", cue="")
        out.append(fact)
    return out


_GREY_AFTER = Pattern(r" ?(?:nd\b|neutral|gr[ae]y\b|polari[sz]er)")
_OF_DENSITY = Pattern(r"\W*(?:of|with|at|has|is|it's)?\W*(?:a )?(?:density|nd)?(?: of)?\W*")
"""Between a gel and its density: it is grey, and takes what its density says."""


def _named(fact: Fact, said: str) -> Fact:
    """"red 8x", "x2 yellow", "the factor on the rim is 8"."""
    before, after = said[max(0, fact.start - 60) : fact.start], said[fact.end : fact.end + 24]
    if fact.quantity == "times" and fact.value > 1 and (_COLOUR_BEFORE.search(before) or _POLARISER_BEFORE.search(before) or _COLOUR_AFTER.match(after) or _GREY_GLASS.match(after) or _MARKED.search(before)):
        return replace(fact, quantity="factor", of="camera", cue="")
    if fact.quantity == "times" and fact.value > 1 and not fact.bad and _DRAW_WANTS.search(before) and not _OF_SOMETHING.match(after):
        return replace(fact, quantity="factor", of="camera", cue="")  # "the bellows want another two and a quarter times"
    if fact.quantity == "times" and fact.value > 1 and not fact.bad and _FACTOR_TIMES.search(before) and not _OF_SOMETHING.match(after):
        return replace(fact, quantity="factor", of="camera", cue="")  # "a yellow filter, factor times two"
    if fact.quantity in ("number", "signed") and not fact.bad and _FACTOR_OF_IT.search(before) or fact.quantity == "power" and fact.said[:1].isdigit() and (_FACTOR_JUST.search(before) or _FACTOR_OF_IT.search(before)):
        if fact.quantity == "signed" and fact.unit != "-":
            return fact
        value = -abs(fact.value) if fact.quantity == "signed" else fact.value
        return replace(fact, quantity="factor", value=value, of="", cue="", bad="" if value >= 1 else NO_FACTOR)
    if fact.quantity in ("stops", "loss", "filter_loss") and _FULL_STOP.search(fact.said) and _FACTOR_JUST.search(before):
        return replace(fact, quantity="factor", of="camera", unit="", cue="")
    if fact.quantity == "signed" and fact.unit == "+" and _ADDED_GREY.match(after):
        return replace(fact, quantity="nd", value=stops_from_density(fact.value), unit="density", of="camera", cue="") if fact.value < 4 and "." in fact.said else fact
    return fact


def _of_a_taker(fact: Fact, facts: Sequence[Fact], said: str) -> Fact:
    """"my scrim has a factor of 2": what the scrim loses, told in times and not in stops."""
    if fact.quantity != "factor" or not fact.value > 0:
        return fact
    takers = [f for f in facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"]
    kinds = {f.quantity for f in takers}
    before = [f for f in takers if f.end <= fact.start]
    owner = before[-1] if before else takers[0] if takers and kinds == {"modifier"} else None
    if owner is None or owner.quantity != "modifier" or fact.of == "camera" or _ON_LENS.search(said[owner.end : fact.end + 16]) or kinds != {"modifier"} and fact.start - owner.end > 24:
        return fact
    return replace(fact, quantity="loss", value=stops_from_factor(fact.value), unit=owner.unit, of=owner.of, cue="passed")

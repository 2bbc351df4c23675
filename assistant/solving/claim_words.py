"""The words of a rule of thumb: what is changed by how much, and what is said to follow.

"half power halves the guide number" becomes two terms, power -1 doubling and guide number
-1 doubling. Only how much of what is read here; whether it is true is for claim_rules.
"""

from __future__ import annotations

import math
import re
from functools import lru_cache

from assistant import patterns
from assistant.patterns import Pattern, Patterns
from assistant.places import ROOMS
from assistant.records import record
from assistant.scales import aperture_difference_stops, shutter_difference_stops


@record
class Term:
    """A change of a quantity in doublings (log2 of its factor), plus is more of it.

    part: whose light is meant ("flash", "ambient"), empty where it was not said.
    """

    quantity: str
    doublings: float
    start: int
    end: int
    part: str = ""


NUMBER_WORDS = {"one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0, "seven": 7.0, "eight": 8.0, "nine": 9.0, "ten": 10.0,
                "twelve": 12.0, "sixteen": 16.0, "a": 1.0, "an": 1.0}
_NUM = r"(?:\d{1,12}(?:\.\d{1,12})?|" + "|".join(w for w in NUMBER_WORDS if len(w) > 2) + ")"
_FRACTIONS = {"half": 0.5, "a half": 0.5, "third": 1 / 3, "a third": 1 / 3, "quarter": 0.25, "a quarter": 0.25, "one quarter": 0.25, "an eighth": 0.125, "eighth": 0.125,
              "sixteenth": 0.0625, "a ninth": 1 / 9, "ninth": 1 / 9, "one ninth": 1 / 9, "1/9": 1 / 9, "one eighth": 0.125, "one sixteenth": 0.0625, "one half": 0.5, "one third": 1 / 3, "a sixteenth": 0.0625, "1/2": 0.5, "1/4": 0.25, "1/8": 0.125, "1/16": 0.0625, "1/32": 1 / 32, "½": 0.5, "¼": 0.25}
_VERBS = {"double": 2.0, "doubles": 2.0, "doubled": 2.0, "doubling": 2.0, "twice": 2.0, "halve": 0.5, "halves": 0.5, "halved": 0.5, "halving": 0.5, "quadruple": 4.0, "quadruples": 4.0,
          "quadrupled": 4.0, "quadrupling": 4.0, "triple": 3.0, "triples": 3.0, "tripled": 3.0, "tripling": 3.0, "treble": 3.0, "trebles": 3.0, "quarters": 0.25, "quartering": 0.25,
          "quartered": 0.25, "thrice": 3.0, "twofold": 2.0, "fourfold": 4.0}
_ROOT = r"(?:the )?(?:square root of|root|√) ?(?P<root>" + _NUM + r")(?: times)?"
_FACTOR = Pattern(
    r"(?:" + _ROOT + r"|(?P<times>" + _NUM + r") ?(?:times|x\b|×|-?fold)|(?:x|×) ?(?P<x>\d+(?:\.\d+)?)|(?P<frac>" + "|".join(sorted(map(re.escape, _FRACTIONS), key=len, reverse=True)) + r")(?![\d/])"
    r"|(?P<verb>" + "|".join(sorted(_VERBS, key=len, reverse=True)) + r")|(?P<by>(?:by|a factor of|by a factor of|times|multiplied by) (?:about |roughly |around |nearly |exactly )?(?:(?:square )?root (?:of )?)?(?:" + _NUM + r"))|(?P<pct>\d{1,12}(?:\.\d{1,12})?) ?(?:%|percent\b|per cent\b))(?![a-z])"
)
_NOUNS: tuple[tuple[str, str], ...] = (
    ("guide_number", r"gns?|guide ?numbers?|guide nos?|guides?"),
    ("light", r"lights? (?:output|level|intensity)"),
    ("power", r"(?:flash )?power|output|energy|watt[- ]?seconds|watts|ws|joules"),
    ("film_speed", r"isos?|asa|film speed|(?:its|the|my|the film's) rating|exposure index|speed of the film|sensitivity"),
    ("pops", r"pops|bursts|firings|flashes needed|number of (?:pops|flashes)"),
    ("count", r"flashes|strobes|lights|heads|guns|units|speedlights|number of (?:lights|strobes|flashes)|equal flashes"),
    ("distance", r"(?:flash[- ]to[- ]subject |(?:flash|light|lamp)(?:['’]s)? |working |subject )?distances?|(?:(?:flash|light|lamp)(?:['’]s)? )?(?:range|reach|throw)|far(?: away| back| off)?|as far|close"),
    ("aperture", r"aperture (?:number|value)s?|f[- ]?numbers?|f[- ]?stops?(?= (?:number|value|needed|you))"),
    ("time", r"shutter times?|exposure times?|time the shutter is open|shutter open"),
    ("speed", r"shutter speeds?|shutter"),
    ("light", r"flash(?!(?:['’]s)? (?:power|output|distance|range|reach|throw|gun|unit|to|head|meter|sync|bulb))(?: exposure| part| light)?|ambient(?: light| exposure)?|background light|light(?!(?:['’]s)? (?:power|distance|range|reach|throw))|brightness|exposure|illumination|bright|strong|strength|intensity|intense"),
)
_WHOSE = r"(?!'s [a-z])"
"""After a noun that is spoken of itself: "doubling the flash's distance" is of the distance."""
_NOUN = Pattern("|".join(f"(?P<n{n}>\\b(?:{words})(?![a-z]){_WHOSE})" for n, (_, words) in enumerate(_NOUNS)))
_GAP = frozenset(
    "the your its my our a an of as that is are get gets become becomes go goes will be just only also need needs to must should would in into by has have been was much many from fall falls drop drops "
    "down up rise rises total effective one needed required about each away same original amount available cut cuts reduced multiplied divided raised lowered straight exactly roughly it you i so called which "
    "comes come times turns means number any all overall resulting now reduces raises flash reduce raise ambient room background daylight flashed less more dimmer darker weaker fainter smaller".split()
)
_STOPS = Pattern(r"(?P<n>" + _NUM + r"|a|an|half a|a full|one full|one whole|another|1/3 of a|a third of a|half)(?: and (?P<half>a half|a third|two thirds|half))?[- ](?:full |whole |single |more |f[- ]?)?stops?(?: and (?P<half2>a half|a third|half))?\b")
_COUNT = Pattern(r"\b(?P<n>" + _NUM + r") (?:(?:identical|equal|similar|matching|same|matched|such|like|equally bright|of the same|little|small|big|more) )*(?:flashes|strobes|lights|heads|guns|flashguns|units|speedlights|monolights|lamps|of them)\b")
_ANOTHER = Pattern(r"\b(?:a |add(?:ing)? (?:a |an )?)?(?:second|another|one more|extra)(?: (?:identical|equal|matching|similar|such|same))* (?:flash|strobe|light|head|gun|unit|speedlight|one)\b")
_POPS = Pattern(r"\b(?P<n>" + _NUM + r") (?:(?:full|equal|more|full-power) )*(?:pops|bursts|firings|discharges)\b")
_ORDINALS = {"third": 3.0, "fourth": 4.0, "fifth": 5.0}
_ORDINAL = Pattern(r"\b(?:a|the|adding a) (?P<o>third|fourth|fifth) (?:(?:identical|equal|matching|similar|such|same) )*(?:flash|strobe|light|head|gun|unit|speedlight)\b")
_SHIFT = (
    ("aperture", Pattern(r"f ?/? ?(\d+(?:\.\d+)?) ?(?:to|->|→|down to|up to|-) ?f ?/? ?(\d+(?:\.\d+)?)")),
    ("speed", Pattern(r"(?:1/)(\d+)(?: ?s(?:ec)?)? ?(?:to|->|→|down to|up to) ?(?:1/)?(\d+)")),
    ("film_speed", Pattern(r"(?:iso|asa) ?(\d+) ?(?:film )?(?:to|->|→|up to|down to) ?(?:iso|asa)? ?(\d+)")),
    ("film_speed", Pattern(r"\b(?:push|pull)\w* (?:it |film )?(?:from )?(\d{2,4}) (?:to|up to|down to) (\d{2,4})\b")),
    ("power", Pattern(r"\b(\d{2,4}) ?(?:ws|j|joules|watt[- ]?seconds)?\b ?(?:to|->|up to|down to) ?(\d{2,4}) ?(?:ws|j|joules|watt[- ]?seconds)\b")),
    ("film_speed", Pattern(r"\b(?:from |film )?(\d{2,4})(?: speed| film| iso| asa)? (?:to|up to|down to) (?:an? |the )?(\d{2,4})(?= ?(?:speed|film|iso|asa)\b)")),
    ("film_speed", Pattern(r"\b(?:from |film )?(\d{2,4})(?: speed| iso| asa)? (?:film|stock) (?:to|up to|down to) (?:an? |the )?(\d{2,4})\b(?! ?(?:m|ft|feet|metres|ws|j|joules)\b)")),
    ("film_speed", Pattern(r"(?:iso|asa|film speed) (?:(?:goes|is raised|is changed|rises|changes|moves|going|is put up|goes up|goes down) )?(?:from )?(?:iso |asa )?(\d+) (?:to|up to|down to) (?:iso |asa )?(\d+)")),
    ("distance", Pattern(r"\b(\d+(?:\.\d+)?) ?(?:m|ft|feet|foot|metres?|meters?)? ?(?:to|->|→|out to|back to) ?(\d+(?:\.\d+)?) ?(?:m|ft|feet|foot|metres?|meters?)\b")),
    ("power", Pattern(r"\b(full|half|quarter|1/\d+) (?:power )?to (half|quarter|full|an eighth|eighth|1/\d+)(?: power)?\b")),
)


_VERSUS = r"\b(?:than|as|of|from|with|to|below|under|above|over|against)\b(?: (?:the|that|you|i|get|light|at|it|from|is|does|gives|a|an|what|one|we|there))*[ ]?"
_COMPARED = (
    # "f/5.6 lets in twice as much light as f/8": from the second to the first
    ("aperture", Pattern(r"\bf ?/? ?(\d+(?:\.\d+)?)\b(?=[^.;?]{4,50}?" + _VERSUS + r"f ?/? ?(\d+(?:\.\d+)?))")),
    ("speed", Pattern(r"(?<![\d/])1/(\d+)\b(?! power)(?=[^.;?]{4,60}?" + _VERSUS + r"1/(\d+)\b(?! power))")),
    ("power", Pattern(r"\b(full|half|quarter|1/\d+) power\b(?=[^.;?]{4,40}?" + _VERSUS + r"(full|half|quarter|1/\d+)\b)")),
    ("power", Pattern(r"\b(\d{2,4}) ?(?:ws|j|joules|watt[- ]?seconds)\b(?=[^.;?]{2,40}?\b(?:than|as|of) (?:a )?(\d{2,4}) ?(?:ws|j|joules|watt[- ]?seconds)\b)")),
    ("film_speed", Pattern(r"\b(?:iso|asa|(?:film|stock|roll)(?: rated| of| at)*(?: iso)?) ?(\d+)\b(?=[^.;?]{0,50}?\b(?:than|as|instead of|rather than|compared (?:to|with)|against|vs|over) (?:at |an? |the |my )?(?:iso|asa|(?:film|stock|roll)(?: rated| of| at)*(?: iso)?)? ?(\d+)\b(?! ?(?:m|ft|feet|foot|metres|times|stops?)\b))")),
    ("distance", Pattern(r"\b(\d+(?:\.\d+)?) ?(?:m|ft|feet|metres|meters)\b(?=[^.;?]{6,60}?\b(?:than|as|of)\b(?: (?:the|that|you|i|get|light|at|it|from|is|does|gives|what|one))* ?(\d+(?:\.\d+)?) ?(?:m|ft|feet|metres|meters)\b)")),
)


SETTING_STAYS = Pattern(
    r"(?:\b(?:and|while|but) )?\b(?:(?:the|my|its) )?(?:aperture|f-?stop|f-?number|shutter(?: (?:speed|time))?|film(?: speed)?|iso|power|distance|lens)(?: itself)? "
    r"(?:(?:stays?|remains?|stands?|is|are|(?:is|are) (?:kept|left|held)) (?:put|the same|unchanged|fixed|alone|where it (?:is|was)|as it (?:is|was)|constant)|(?:does not|doesn't) (?:change|move))(?=\W*(?:[,.;?!]|$))"
    r"|(?:\b(?:and|while|but) )?\b(?:i )?(?:touch|chang|alter|mov)\w* nothing else\b|\bnothing else (?:(?:is|gets|being) )?(?:chang\w*|touched|altered|moved|differs)\b|\bwithout (?:touching|changing|altering|moving) anything else\b", re.I)
"""What is left as it is beside a change: "the aperture stays put"."""


def plain(text: str) -> str:
    """Lower case, plain quotes, of the same length."""
    out = text.lower().replace("’", "'").replace("–", "-").replace("—", ",")
    return out if len(out) == len(text) else text.lower()


def number(word: str) -> float:
    """The value of a digit or word."""
    return NUMBER_WORDS[word] if word in NUMBER_WORDS else float(word)


def factor_said(text: str) -> float | None:
    """The first factor of a text ("twice", "four times"), above nothing; None where none is said."""
    found = _FACTOR.search(text)
    value = _factor_value(found) if found else 0.0
    return value if value > 0 else None


def factor_start(text: str) -> int:
    """Where the first factor of a text begins; 0 where none is said."""
    found = _FACTOR.search(text)
    return found.start() if found else 0


def _factor_value(found: re.Match[str]) -> float:
    kinds = found.groupdict()
    if kinds["root"]:
        return math.sqrt(number(kinds["root"]))
    if kinds["times"] or kinds["x"]:
        value = number(kinds["times"] or kinds["x"] or "1")
        return 1 / value if value and patterns.match(r" ?(?:less|dimmer|darker|weaker|fainter|smaller)\b", found.string[found.end() :]) else value
    if kinds["pct"]:
        return float(kinds["pct"]) / 100
    if kinds["frac"]:
        return _FRACTIONS[kinds["frac"]]
    if kinds["verb"]:
        return _VERBS[kinds["verb"]]
    words = (kinds["by"] or "").split()
    value = number(words[-1])
    return math.sqrt(value) if "root" in words else value


def _noun(found: re.Match[str]) -> str:
    return _NOUNS[int((found.lastgroup or "n0")[1:])][0]


_WIDEST_GAP = 90
_OF_A_LAMP = Pattern(r"\b(?:light|lamp|head|strobe|gun|key)'s\b")
"""Whose quantity it is: "the lamp's distance"."""


def _is_gap(between: str) -> bool:
    if len(between) > _WIDEST_GAP:
        return False  # six words at most
    words = patterns.findall(r"[a-z]+|[^a-z\s']", _OF_A_LAMP.sub("", between).replace("'s", ""))
    return len(words) <= 6 and all(word in _GAP for word in words)


@lru_cache(maxsize=8)
def terms(text: str) -> tuple[Term, ...]:
    """Every change said in the text, in order; the same words are never used twice."""
    said = plain(text)
    taken: list[Term] = []
    for find in (_shifts, _comparisons, _counts, _filters, _stops, _pairs):
        for term in find(said):
            if term.doublings is not None and not any(t.start < term.end and term.start < t.end for t in taken):
                taken.append(term)
    return tuple(sorted(taken, key=lambda t: t.start))


_SHIFTS = Patterns(pattern for _, pattern in _SHIFT)
_COMPARISONS = Patterns(pattern for _, pattern in _COMPARED)


def _shifts(said: str) -> list[Term]:
    out = []
    for number in _SHIFTS.to_try(said):
        quantity, pattern = _SHIFT[number]
        for m in pattern.finditer(said):
            value = _shift_value(quantity, m.group(1), m.group(2))
            if value:
                out.append(Term("time" if quantity == "speed" else quantity, value, m.start(), m.end()))
    return out


def _comparisons(said: str) -> list[Term]:
    out = []
    for number in _COMPARISONS.to_try(said):
        quantity, pattern = _COMPARED[number]
        for m in pattern.finditer(said):
            value = _shift_value(quantity, m.group(2), m.group(1))
            if value:
                out.append(Term("time" if quantity == "speed" else quantity, value, m.start(), m.end()))
    return out


def compared_with(said: str) -> list[tuple[int, int]]:
    """Where the second figures of the comparisons stand, which a term's own span leaves out."""
    return [m.span(2) for number in _COMPARISONS.to_try(said) for m in _COMPARED[number][1].finditer(said)]


def _shift_value(quantity: str, one: str, two: str) -> float:
    share = {"full": 1.0, "half": 0.5, "quarter": 0.25, "an eighth": 0.125, "eighth": 0.125}
    def value(word: str) -> float:
        return share[word] if word in share else (1 / float(word[2:]) if word.startswith("1/") else float(word))
    a, b = value(one), value(two)
    if a <= 0 or b <= 0:
        return 0.0
    if quantity == "aperture":
        return -aperture_difference_stops(a, b) / 2
    if quantity == "speed":
        return shutter_difference_stops(1 / a, 1 / b) if a > 1 and b > 1 else 0.0
    return math.log2(b / a)


def _counts(said: str) -> list[Term]:
    out = [Term("count", math.log2(number(m["n"])), m.start(), m.end()) for m in _COUNT.finditer(said) if number(m["n"]) > 1 and not said[m.end() :].startswith((" away", " number"))]
    out += [Term("pops", math.log2(number(m["n"])), m.start(), m.end()) for m in _POPS.finditer(said) if number(m["n"]) > 1]
    out += [Term("count", math.log2(_ORDINALS[m["o"]] / (_ORDINALS[m["o"]] - 1)), m.start(), m.end()) for m in _ORDINAL.finditer(said)]
    return out + [Term("count", 1.0, m.start(), m.end()) for m in _ANOTHER.finditer(said)]


_HALVES = {"a half": 0.5, "half": 0.5, "a third": 1 / 3, "two thirds": 2 / 3}


_ND = Pattern(r"\bnd ?(?:filter )?(?:of )?(?P<nd>\d+(?:\.\d+)?)\b(?! ?stops?)|\b(?P<density>0?\.\d) ?nd\b")
_CLOSE = Pattern(r"\b(?P<m>half |quarter |1/2 |1/4 )?life[- ]?size\b|\b(?:magnification|macro|close[- ]?up)(?: of| at)? 1:1\b|(?:^|\b(?:at|does|do|is|shooting|going to) )1:1\b(?!.{0,40}\b(?:ratio|key|fill|lighting)\b)")
_FILTERED = Pattern(r"^\s*(?:nd|neutral|filter|loss|(?:of )?(?:nd|softbox|umbrella|diffus\w+|loss))\b")


def _filters(said: str) -> list[Term]:
    """An ND by its factor (ND8) or its density (0.9), in stops lost."""
    out = []
    for m in _ND.finditer(said):
        value = float(m["nd"] or m["density"])
        stops = value / math.log10(2) if value < 1 or (value < 5 and value != int(value)) else math.log2(value)
        out.append(Term("filter", round(stops * 3) / 3 if value < 5 and value != int(value) or value < 1 else stops, m.start(), m.end()))
    out += [Term("filter", 2 * math.log2(1 + _FRACTIONS.get((m["m"] or "").strip(), 1.0)), m.start(), m.end()) for m in _CLOSE.finditer(said)]
    return out


def _stops(said: str) -> list[Term]:
    out = []
    for m in _STOPS.finditer(said):
        word = m["n"]
        base = 0.5 if word in ("half", "half a") else 1 / 3 if "third" in word or word.startswith("1/3") else number(word) if word in NUMBER_WORDS or word[0].isdigit() else 1.0
        extra = _HALVES.get(m["half"] or m["half2"] or "", 0.0)
        out.append(Term("filter" if _FILTERED.match(said[m.end() :]) else "stops", base + extra, m.start(), m.end()))
    return out


def _pairs(said: str) -> list[Term]:
    """A factor and the noun it belongs to: the noun after it first, else the noun before it."""
    factors = list(_FACTOR.finditer(said))
    if not factors:
        return []
    nouns = list(_NOUN.finditer(said))
    out: list[Term] = []
    used: set[int] = set()
    late = []
    for factor in factors:
        noun = next((n for n in nouns if n.start() >= factor.end() and n.start() not in used and _is_gap(said[factor.end() : n.start()])), None)
        if noun is None or (factor["by"] and any(n.end() <= factor.start() and _is_gap(said[n.end() : factor.start()]) for n in nouns)):
            late.append(factor)
            continue
        used.add(noun.start())
        out.append(_term(said, factor, noun))
    for factor in late:
        before = [n for n in nouns if n.end() <= factor.start() and n.start() not in used and _is_gap(said[n.end() : factor.start()])]
        if before:
            used.add(before[-1].start())
            out.append(_term(said, factor, before[-1]))
    return out


def _term(said: str, factor: re.Match[str], noun: re.Match[str]) -> Term:
    quantity = _noun(noun)
    if quantity == "light" and noun.group().startswith("flash") and patterns.search(r"\b(?:turn|dial|set|run|power|knock)\w* (?:(?:down|the|my|your) )*$", said[: noun.start()]):
        quantity = "power"
    if quantity == "light" and noun.end() <= factor.start() and not said[noun.end() : factor.start()].strip(" :,") and factor.group().startswith("1/"):
        quantity = "power"  # "flash 1/4, guide number 140 feet": how it is set
    value = _factor_value(factor)
    start, end = min(factor.start(), noun.start()), max(factor.end(), noun.end())
    before = said[max(0, start - 24) : end]
    if factor["by"] and patterns.search(r"\b(?:divid\w*|reduc\w*|cut\w*|drop\w*)\b", before):
        value = 1 / value
    if noun.group().startswith("close") and quantity == "distance":
        value = 1 / value
    doublings = _exact(math.log2(value)) if value > 0 else 0.0
    if quantity == "speed":
        quantity, doublings = "time", -doublings
    return Term(quantity, doublings, start, end, part=part_of(said[start : end + 12]))


def _exact(doublings: float) -> float:
    """1.4 and 0.7 are the root of two and its inverse, said short."""
    halves = round(doublings * 2) / 2
    return halves if abs(doublings - halves) < 0.03 else doublings


_AMBIENT = Pattern(rf"\b(?:ambient|background|daylight|available|sky|windows?|sun(?:light|shine|set)?|scene|{ROOMS})\b")


WITHOUT = r"\b(?:without|avoid\w*) (?:\w+ ){0,3}?"
"""What is to be spared, and whose it is: "without the sunlit sky burning out"."""


def part_of(words: str) -> str:
    """Whose light is meant by the words of a term."""
    if _AMBIENT.search(words):
        return "ambient"
    return "flash" if patterns.search(r"\bflash (?:exposure|part|light|brightness)\b", words) else ""

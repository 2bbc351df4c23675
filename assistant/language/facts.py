"""Facts: what each quantity of a question is a quantity of, by the words that stand near it.

One function for each kind of item; the words near it decide what is meant ("six feet from
the camera", "one stop under the key", "a diffuser that eats two stops"). No exposure is
computed here.
"""
from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence

from assistant import patterns
from assistant.language.length_facts import length_fact
from assistant.language.place import Place, fact_at
from assistant.language.segments import Segment, is_role
from assistant.language.stop_facts import stop_fact
from assistant.patterns import Pattern
from assistant.query import Fact
from assistant.records import replace
from assistant.scales import is_film_speed_mark


def _aperture(place: Place) -> Fact:
    role = place.last_before(lambda i: is_role(i) or i.kind in ("length", "guide_number", "power"))
    owner = ""
    if role and is_role(role):
        between = place.items[place.number_of(role) + 1 : place.at]
        if any(i.kind == "link" or (i.kind == "cue" and i.word in ("meter", "one_light")) or (i.kind == "name" and i.word == "meter") for i in between) \
                or all(i.kind == "mark" and i.word in ("EQ", "COLON") for i in between):
            owner = role.word
    if not owner and _says_ambient(place):
        owner = "ambient"
    cue = _aperture_cue(place)
    if cue in ("widest", "smallest"):
        return fact_at(place, f"{cue}_aperture", of="")
    if not math.isnan(place.item.other) and place.text[place.item.start : place.item.end].lower().startswith("between"):
        if patterns.search(r"\bstops\b|\bdifference\b", place.text.lower()):  # two marks, no place between them
            return fact_at(place, "aperture_range", place.item.value**2 / place.item.other, of="")
        return fact_at(place, "aperture", of=owner, cue=cue, other=math.nan)
    return fact_at(place, "aperture", of=owner, cue=cue)


def _says_ambient(place: Place) -> bool:
    near = place.near("ambient", "sunny", before=4, after=0)
    return near is not None and not place.near("less", "more", before=2, after=0)


_OF_AN_APERTURE = frozenset({"widest", "wide_open", "smallest_stop", "at_least", "at_most", "want"})


def _aperture_cue(place: Place) -> str:
    limit = "" if place.cues.isdisjoint(_OF_AN_APERTURE) else _wanted_or_limit(place)
    return limit or ("meter" if place.near("meter", before=3, after=2) or place.kind_near("name", before=2, after=1) is not None else "")


def _wanted_or_limit(place: Place) -> str:
    if place.near("widest", before=4, after=1) or (place.near("wide_open", before=2, after=2) and "lens" in place.text.lower() and not place.text[: place.item.start].lower().endswith("wide open at ")):
        return "widest"
    if place.near("smallest_stop", before=3, after=1) or (place.near("at_least", before=3, after=1) and "lens" in place.text.lower()) or (place.near("at_most", before=3, after=1) and "lens" in place.text.lower()):
        return "smallest"
    return "want" if place.near("want", before=3, after=0) else ""


def _power(place: Place) -> Fact:
    before = place.text[max(0, place.item.start - 30) : place.item.start].lower()
    if patterns.search(r"\bfull\b.{0,10}\b(?:down )?to\s+(?:a\s+)?$", before) and place.item.unit != "full" and "only" in place.text.lower():
        return fact_at(place, "min_power", of=place.owner)
    if place.near("at_least", before=4, after=2) or patterns.search(r"\bmin(?:imum)?\.? (?:power |of |is )?$", before):
        return fact_at(place, "min_power", of=place.owner)
    return fact_at(place, "power")


def _share(place: Place) -> Fact:
    joined = [place.beside(-2) if place.mark("TO", "OR", "VERSUS", "DASH", "AND", "FROM") else None, place.beside(2) if place.mark("TO", "OR", "VERSUS", "DASH", "AND", "FROM", offset=1) else None]
    if any(i is not None and i.kind == "shutter" for i in joined):
        return _shutter(place)
    if not _FADES.search(place.text) and _PART_OF_AN_HOUR.match(place.text[place.item.end :]):
        return fact_at(place, "remark", of="")
    bottom = float(place.item.unit) if place.item.unit.isdecimal() else 0.0
    if place.text[place.item.start : place.item.end].strip().lower() in ("halves", "quarters", "doubles"):
        return fact_at(place, "remark", of="")  # what something does, no power
    if _TOO_FAR.match(place.text[place.item.end :]) and ("stops" in place.kinds or place.cues & {"front", "back", "rows", "backdrop"}):
        return fact_at(place, "stops", unit="", of="")
    if bottom in (3.0,) and not place.near("at_least"):
        return fact_at(place, "number")
    return _power(place)


_AT_ANOTHER_TIME = Pattern(r"\s*(?:(?:of )?(?:an? |the )?(?:hours?|hrs?|days?|weeks?) )?(?:ago|earlier|later|from now|before (?:that|this|it|sunset|dusk|dark|then)|after (?:that|this|sunset|dusk))\b", re.I)
"""After a time: when it was, and no exposure ("ten minutes ago", "a quarter of an hour later")."""
_FADES = Pattern(r"\b(?:per|every|each|an?) (?:\w+ )?(?:minutes?|mins?|hours?)\b(?! (?:ago|earlier|later|before))|\ba stop (?:an|a) ", re.I)
"""A light that falls by so much in such a time: when it is counts."""
_PART_OF_AN_HOUR = Pattern(r"\s*(?:of )?an? (?:hour|day) (?:ago|earlier|later|from now|before|after)\b", re.I)
_IDLE_TIME = Pattern(r"\b(?:never mind|forget|ignore|skip|leave out|leave aside|put aside|suppose|imagine|pretend|don't worry about)\b[^.?,;\d]{0,30} for\s*$|\b(?:wait|hang on|hold on|half|give me|in)\s*$", re.I)
_HAPPENS_IN = Pattern(
    r"(?:^|[.,;:!?] |\b(?:and|but|as|since|because|so|that) )(?!(?:[^.,;:!?]*\b)?(?:shutter|lens|exposure|flash|film|bulb|dark ?slide)\b)(?:the |my |our |his |her |their |this )?(?:(?:[a-z]+ ){0,2}(?!it's|that's|there's)[a-z]+'s|(?:[a-z']+ ){1,3}"
    r"(?:closes?|closing|shuts?|shutting|opens?|leaves?|leaving|starts?|starting|begins?|ends?|goes|going|departs?|arrives?|comes?|coming|rings?|sets?|rises?|sails?|lands?|finish(?:es)?|locks? up|packs? up|due|back|here|over|gone|on|is))(?: (?:up|off|for us|again|back|on stage|home))? in (?:about |only |just |under |less than |barely |another |the next |some )?$", re.I)
"""Right before a time: when something else is to happen, and no exposure ("the lab closes in ten minutes")."""
_TIMED = Pattern(r"\brecycl\w*|\bhow (?:many|long|often)\b|\bsunny\b|\bstops? (?:every|per|each)\b|\bevery \w+ (?:sec|min)", re.I)
_TOO_FAR = Pattern(r"\s*(?:too (?:much|little|bright|dark|hot)|over|under)\b", re.I)
"""After "half": of a stop, "half a stop too much or half too little"."""


def _shutter(place: Place) -> Fact:
    if place.text[place.item.start : place.item.end].lower() in ("a minute", "a second", "a sec", "a min") and _IDLE_TIME.search(place.before(50)):
        return fact_at(place, "remark", of="")  # "never mind the flash for a minute": no exposure
    if place.item.value >= 30 and not _FADES.search(place.text) and _AT_ANOTHER_TIME.match(place.text[place.item.end :]):
        return fact_at(place, "remark", of="")
    if place.item.value >= 30 and not _FADES.search(place.text) and _HAPPENS_IN.search(place.before(60)) and not _TIMED.search(place.text):
        return fact_at(place, "remark", of="")
    if place.near("at_most", before=4, after=3) and "sync" in place.kinds:
        return fact_at(place, "sync", of="camera")
    for cue, quantity in (("t05", "t05"), ("t01", "t01"), ("duration", "duration"), ("recycle", "recycle")):
        if place.near(cue, before=8 if cue in ("t05", "t01") else 4, after=2) and not (cue != "recycle" and _OF_THE_SHUTTER.search(place.before(50))):
            return fact_at(place, quantity, of="")
    return fact_at(place, "shutter", of="ambient" if _says_ambient(place) else "")


_OF_THE_SHUTTER = Pattern(r"\b(?:shutter|shutter (?:speed|time)|leaf|curtains?|blinds?)(?:'s)? ?(?:(?:is|was|set|stays|stands|left|open|opens|kept|fully|still|only|at|to|on|of|for|in|a|an) ?)*$", re.I)
"""Right before a time: the shutter's, though the flash's is spoken of in the same breath."""


_ONLY_OWN = Pattern(r"\bonly (?:own|have|got|bring|brought)\W*$|\b(?:own|have|got) only\W*$", re.I)


_PAIR_OF_TEST = Pattern(r"\b(?:test(?:ed)?|good|right|correct|known|working|proven|proved|trusted|trusty|usual|exposure|base|starting|reference|calibrated|old|sure)\W*$", re.I)


_IS_A_PAIR = Pattern(r"\bf\W?\d[^?!;]{0,40}\b(?:is|was|makes|for|as|that's) (?:my|our|the|his|her)(?: \w+)? *$|\b(?:at|from) [^?!.;,]{1,24} (?:is|was) (?:my|our|the|his|her)(?: \w+){0,2} *$", re.I)
_PAIR_OF = Pattern(r"\s*(?:of (?!settings|figures|values|numbers|mine)|flash|heads?|lamps?|guns?|lights?|strobes?)", re.I)
"""After an aperture and a distance "is my pair" names the two of them; "a pair of" things counts."""


_THE_COUPLE = Pattern(r"\b(?:on|onto|to|at|for|behind|before|above|over|beside|reach\w*|light\w*|shoot\w*|photograph\w*) (?:the|that|this|my|our|a) (?:\w+ )?$", re.I)
"""Before "pair": the two that are photographed."""
_THEY_ARE = Pattern(r"\b(?:they|both|the two|which|lights?|heads?|lamps?)(?:'re| are| were| being)? (?:identical |perfect |an? )?$", re.I)
_THEN_F = Pattern(r"\s*[:=(-]\s*f\W?\d", re.I)


_SO_MANY_OF = Pattern(r"\b(?:pair|couple|brace) of$", re.I)
_OF_LIGHTS = Pattern(
    r"\s*(?:(?!(?:at|from|and|in|on|with|is|are|stands?)\b)[\w./'’-]+\s+){0,5}?(?:\w*flash\w*|\w*heads?|strobes?|guns?|speed ?lights?|\w*lamps?|\w*lights?|units?|packs?|soft ?box\w*|octa\w*|umbrellas?|brollies|bulbs?|reflectors?|them|those|these|mine|ones|pops?|bursts?|bangs?|goes|hits|"
    r"shots?|frames?|exposures?|\w*nds?\d*|filters?|gels?|layers?|sheets?|tubes?|rings?|stops?|clicks?|(?:key|fill|hair|rim)s?|such|same|matching|matched|identical|guide|gns?)\b", re.I)
"""After "a pair of": what a flash is fired with, or how often. Anything else is what is photographed."""
_EACH_HAS = Pattern(r"\b(?:each|apiece|together|between them|both (?:at|on|of|fire|fired|from))\b", re.I)


def _count(place: Place) -> Fact:
    after = place.beside(1)
    pair = place.text[place.item.start : place.item.end].lower().endswith("pair")
    if pair and (after is not None and after.kind in ("link", "aperture") or _THEN_F.match(place.text[place.item.end :]) or _PAIR_OF_TEST.search(place.text[: place.item.start]) or _IS_A_PAIR.search(place.text[: place.item.start]) and not _PAIR_OF.match(place.text[place.item.end :])):
        return fact_at(place, "remark", of="")  # "tested pair is f/11 at 8 ft": no two flashes
    if _SO_MANY_OF.search(place.text[: place.item.end]) and not _OF_LIGHTS.match(place.text[place.item.end :]) and not _EACH_HAS.search(place.text):
        return fact_at(place, "remark", of="")  # "a pair of dancers"
    if pair and _THE_COUPLE.search(place.text[: place.item.start]) and not _PAIR_OF.match(place.text[place.item.end :]):
        return fact_at(place, "remark", of="")  # "down to the bridal pair"
    if place.text[place.item.start : place.item.end].lower() in ("twins", "both twins", "pair") and _THEY_ARE.search(place.before(24)) and sum(1 for i in place.every if is_role(i)) > 1:
        return fact_at(place, "remark", of="")  # of the two lamps that were told one by one
    if _is_of_two_people(place):
        return fact_at(place, "remark", of="")
    if sum(1 for i in place.items if is_role(i)) > 1:
        return fact_at(place, "count", unit=place.item.word or "pops", of="")
    owned = "how_many" in place.cues and _GIVES.search(place.text[: place.item.start]) is None and _FRAME_GOT.search(place.text[: place.item.start]) is None and (place.near("my_kit", before=4, after=0) is not None or patterns.search(r"\b(?:own|only|just|got|have)\b", place.text[max(0, place.item.start - 24) : place.item.start].lower()) is not None)
    owned = owned or _ONLY_OWN.search(place.text[: place.item.start]) is not None
    if owned or place.near("at_most", before=3, after=2) or "no more" in place.text.lower()[place.item.end : place.item.end + 30]:
        return fact_at(place, "max_count", unit=place.item.word, of="", cue="at_most")
    return fact_at(place, "count", unit=place.item.word or "pops")


_A_LAMP_BEFORE = Pattern(r"\b(?:\w*flash\w*|\w*heads?|strobes?|guns?|speed ?lights?|\w*lamps?|lights?|units?|packs?|monolights?|ones|of them|with|add|fire|fired|use|using|own|buy|bought)\b[^.;?!]{0,12}$", re.I)
_TO_FIRE = Pattern(r"[^.;?!]{0,16}\b(?:fir\w+|each|apiece|guide|gn|powers?|popp?\w*)\b", re.I)


def _is_of_two_people(place: Place) -> bool:
    """"the twins pose at 10 feet", "her twin brothers": nobody said that there are two lights."""
    said = place.text[place.item.start : place.item.end].lower()
    if said not in ("twins", "twin", "the twins") or _OF_LIGHTS.match(place.text[place.item.end :]) or _EACH_HAS.search(place.text):
        return False
    return not (_A_LAMP_BEFORE.search(place.text[: place.item.start]) or _TO_FIRE.match(place.text[place.item.end :]))


_GIVES = Pattern(r"\b(?:gives?|gave|gets?|does|yields?|delivers?|makes?|manages?|good for|lasts?(?: for)?|holds?|fires?|has)\b(?: (?:me|us|my (?:flash|head|gun|strobe|unit)|it|about|around|some|roughly|for|a)){0,3} $", re.I)
"""Right before so many pops: what a set of cells is good for, and no bound on what may be fired."""


_FRAME_GOT = Pattern(r"\b(?:frame|picture|exposure|shot|negative|neg|sheet|plate|one|other|that|which|second|first)(?: has| had|'s|'d)? (?:got|had|has)(?: (?:only|just|about))? $", re.I)
"""Right before so many pops: those of a picture, and no flashes that are owned."""


def _plain(quantity: str, owned: bool = False) -> Callable[[Place], Fact]:
    return lambda place: fact_at(place, quantity, of=place.owner if owned else "")


_NO_SPEED = Pattern(r"\W*(?:years?|yrs?|months?|decades?)\b", re.I)


_ROLLS = Pattern(r"(?:one|two|three|four|five|[1-5])[\s-]+(?:rolls?|films?|cassettes?)", re.I)


_LOADED = Pattern(r"\b(?:loaded with|loaded|is|has|holds|with|on) (?:an? |the |my |some )?$", re.I)
"""Right before a speed: what is in the camera, and no bound."""


def _film_speed(place: Place) -> Fact:
    age = _NO_SPEED.match(place.text[place.item.end :])
    if age and "iso" not in place.text[place.item.start : place.item.end].lower():
        scale = 10.0 if "decade" in age.group().lower() else 1 / 12 if "month" in age.group().lower() else 1.0
        return fact_at(place, "years", place.item.value * scale, unit="years", of="film")
    if patterns.search(r"\brolls? of $", place.text[: place.item.end - len(place.text[place.item.start : place.item.end].split()[-1])].lower()) and place.item.value in (12.0, 24.0, 36.0):
        return fact_at(place, "count", unit="frames", of="")
    if place.item.value <= 5 and _ROLLS.fullmatch(place.text[place.item.start : place.item.end]):
        return fact_at(place, "number" if place.item.value > 1 else "remark", of="")  # "one roll of 36": how many, and no speed
    if place.near("fastest", before=5, after=2) and not _LOADED.search(place.text[: place.item.start]):
        return fact_at(place, "max_film_speed", of="", cue="at_most")
    guide = place.beside(-2)
    said_with = place.mark("AT") and guide is not None and guide.kind == "guide_number"
    if place.near("rate", before=2, after=1) and len([i for i in place.items if i.kind == "film_speed"]) > 1:
        return fact_at(place, "rated", of="film")
    return fact_at(place, "gn_iso" if said_with else "film_speed", of=place.owner if said_with else "")


def _camera_filter(place: Place) -> Fact:
    return fact_at(place, "camera_filter", 0.0, unit=place.item.word, of="camera")


_LIT_CLOTH = Pattern(r"\b(?:at|from|to|off|onto|light(?:s|ing)?|is) (?:the |that |this |my |a )?$", re.I)
_HUNG = Pattern(r"\s*(?:behind|backdrop|background|hung|hangs|hanging|reads|should|comes|goes)\b", re.I)
_BACKGROUND = Pattern(r"\b(?:backdrop|background|behind)\b", re.I)
"""About "cloth": one that is lit, and nothing in the light."""


def _modifier(place: Place) -> Fact:
    if place.text[place.item.start : place.item.end].lower().split()[-1] == "cloth" and _BACKGROUND.search(place.text) and (_LIT_CLOTH.search(place.before(24)) or _HUNG.match(place.text[place.item.end :])):
        return fact_at(place, "remark", 0.0, of="")
    return fact_at(place, "modifier", 0.0, unit=place.item.word)


def _nd(place: Place) -> Fact:
    return fact_at(place, "nd", of="camera")


_HOURS_AGO = Pattern(r"\s*(?:hours?|hrs?|days?|weeks?) (?:ago|earlier|later|before|after|from now)\b", re.I)


def _number(place: Place) -> Fact:
    return fact_at(place, "remark" if _HOURS_AGO.match(place.text[place.item.end :]) else "number")


READERS: dict[str, Callable[[Place], Fact]] = {
    "length": length_fact, "stops": stop_fact, "aperture": _aperture, "power": _power, "share": _share, "shutter": _shutter,
    "count": _count, "film_speed": _film_speed, "camera_filter": _camera_filter, "modifier": _modifier, "nd": _nd, "number": _number,
    "guide_number": _plain("guide_number", True), "guide_number_pair": _plain("guide_number_pair", True), "energy": _plain("energy", True),
    "sync": _plain("sync"), "time": _shutter, "exposure_value": _plain("exposure_value"), "ev_stops": stop_fact, "focal_length": _plain("focal_length"),
    "factor": _plain("factor"), "times": _plain("times"), "magnification": _plain("magnification"), "format": _plain("format"),
    "frequency": _plain("frequency"), "capacitance": _plain("capacitance"), "supply": _plain("supply"),
    "ratio": _plain("ratio"), "velocity": _plain("velocity"), "voltage": _plain("voltage"), "signed": _plain("signed", True),
    "aperture_pair": _plain("aperture_pair"), "power_pair": _plain("power_pair", True), "degrees": _plain("degrees"), "aperture_choice": _plain("aperture_choice"), "aperture_range": _plain("aperture_range"),
    "length_range": _plain("length_range", True), "number_range": _plain("number_range"),
}


def facts_of(segments: Sequence[Segment], owners: dict[int, str], text: str) -> list[Fact]:
    """The facts of a question, in the order said."""
    every = tuple([i for s in segments for i in s.items])
    cues = frozenset([i.word for i in every if i.kind == "cue"])
    kinds = frozenset([i.word if i.kind == "name" else i.kind for i in every])
    found = []
    for segment in segments:
        for at, item in enumerate(segment.items):
            reader = READERS.get(item.kind)
            if reader:
                fact = reader(Place(segment.items, at, item, owners.get(item.start, ""), cues, kinds, segment.sentence, text, every))
                fact = _before_one(fact) if fact.other == 1.0 and fact.quantity in ("aperture_pair", "aperture_range", "aperture_choice") else fact
                found += _both_of(fact) if fact.quantity in ("aperture_pair", "power_pair") else [fact]
    return found


_AND_ONE = Pattern(r"\W+(?:and|or|to|over|than|versus|vs|against|&)\W+one$", re.IGNORECASE)


def _before_one(fact: Fact) -> Fact:
    """"f/22 and one burst", "from f/8 to one of f/16": no lens of f/1 is meant."""
    ends = _AND_ONE.search(fact.said)
    return fact if ends is None else replace(fact, quantity="aperture", other=math.nan, said=fact.said[: ends.start()], end=fact.start + ends.start())


SLOWEST_BARE = 100
"""From here on a bare number after an f-number is a film speed: no lens of the kind stops down so far."""
_NO_F = Pattern(r"(?:\band\b|&)\s*(?P<number>(?!f\W?\d|f\s)\w[\w -]*)$", re.IGNORECASE)


def _both_of(pair: Fact) -> list[Fact]:
    """"f/5.6 and f/4": two apertures; "1/4 and 1/8": two powers; "f/4 and 800": what lens and film are set to."""
    quantity = pair.quantity.removesuffix("_pair")
    speed = _NO_F.search(pair.said) if quantity == "aperture" and pair.other >= SLOWEST_BARE and is_film_speed_mark(pair.other) else None
    if speed is not None:
        said = pair.said[: speed.start()].rstrip()
        return [replace(pair, quantity=quantity, other=math.nan, end=pair.start + len(said), said=said),
                replace(pair, quantity="film_speed", value=pair.other, other=math.nan, of="", cue="", start=pair.end - len(speed["number"]), said=speed["number"])]
    return [replace(pair, quantity=quantity, other=math.nan), replace(pair, quantity=quantity, value=pair.other, other=math.nan, start=pair.end - 1)]

"""What is often said about flash and cannot be worked out: true or not, and why, with its source.

One row a belief. `hears` must all be found; `true` is whether the belief as worded in the row
(said without a "not") holds. A negation in the sentence turns it round.
"""

from __future__ import annotations

from assistant import patterns
from assistant.patterns import Pattern, Rows
from assistant.solving.claim_account import all_in_rows
from assistant.solving.claim_beliefs import MORE_BELIEFS, Belief
from assistant.solving.claim_denial import denied
from assistant.solving.claim_rules import Verdict
from assistant.solving.claim_words import plain

_MATTER = r"\b(?:matter\w*|affect\w*|chang\w*|alter\w*|depend\w*|count\w*|influenc\w*|need\w*|difference|effect|darker|dimmer|brighter|weaker|less|more|open up|closer|lose|loses|drops?|independent|regardless|unaffected|ignores?)\b"
_GN = r"\b(?:gn|guide number)s?\b"

BELIEFS: tuple[Belief, ...] = (
    Belief((r"\b(?:hss|high[- ]speed sync\w*)\b", r"\b(?:los\w*|cost\w*|less|weak\w*|reduc\w*|power|reach|range|dim\w*)\b", r"^(?!.*\b(?:more power|stronger|further|adds?|free|full power)\b)"), True,
           "In high-speed sync the flash is spread over the travel of the shutter, so part of its light is lost, often two stops or more."),
    Belief((r"\b(?:bulb|bulbs|flashbulbs?)\b", r"\bshutter\b", _MATTER), True,
           "A flash bulb burns longer than a short shutter time, so with bulbs a faster shutter cuts off part of the light."),
    Belief((r"\bred[- ]?eyes?\b", r"\b(?:mov\w*|away|further|farther|off|higher|distance|apart|separat\w*)\b", r"\b(?:lens|camera|flash)\b", r"^(?!.*\b(?:closer|worse|more)\b)"), True,
           "Red-eye is light thrown straight back from the eye, so the farther the flash is from the lens the less of it there is."),
    Belief((r"\bred[- ]?eyes?\b", r"\b(?:close|closer|near|next|on[- ]camera|beside)\b", r"\b(?:lens|camera|flash)\b"), True,
           "Red-eye is light thrown straight back from the eye, so it comes with a flash close to the lens."),
    Belief((r"\bred[- ]?eyes?\b", r"\b(?:power\w*|bright\w*|strong\w*|iso|too much)\b"), False,
           "Red-eye comes from a flash close to the lens, not from its power."),
    Belief((_GN, r"\b(?:outdoors?|outside|open air)\b", r"\b(?:hold\w*|appl\w*|same|still|valid|true|works?)\b"), False,
           "Guide numbers count on an average room with light walls; in the open expect to open up a half to one stop, and test your own."),
    Belief((_GN, r"\b(?:outdoors?|outside|open air)\b", r"\b(?:lower|less|optimistic|weaker|drops?|smaller|open up)\b"), True,
           "Guide numbers count on an average room with light walls; in the open expect to open up a half to one stop, and test your own."),
    Belief((_GN, r"\bdistance\b.{0,20}(?:\btimes\b|x|×|\bmultiplied by\b).{0,12}\b(?:f-?(?:number|stop)|aperture)|\b(?:f-?(?:number|stop)|aperture)\b.{0,20}(?:\btimes\b|x|×|\bmultiplied by\b).{0,16}\bdistance"), True,
           "The guide number is the f-number times the distance from flash to subject.", "Navy training course Photography (Basic)"),
    Belief((r"\b(?:light|flash)\b.{0,30}\b(?:fall\w*|drop\w*|weaken\w*|fade\w*|decreas\w*)\b", r"\b(?:square of the distance|inverse square)\b"), True,
           "Light spreads over an area, so it falls with the square of the distance: twice as far leaves a quarter.", "photometry"),
    Belief((r"\b(?:light|flash)\b.{0,30}\b(?:fall\w*|drop\w*|weaken\w*|fade\w*|decreas\w*)\b", r"\b(?:linear\w*|straight line|evenly|in proportion|proportional\w*)\b"), False,
           "Light falls with the square of the distance: twice as far leaves a quarter, two stops less.", "photometry"),
    Belief((r"\b(?:ready|neon|orange|green)[- ]?(?:light|lamp)\b", r"\b(?:full|fully|charged|100|trust|rely|believe)\b"), False,
           "The ready light often comes on before the capacitor is full; wait as long again for full power."),
    Belief((r"\b(?:watt[- ]?seconds?|ws|joules?)\b", r"\b(?:bright\w*|how much light|guide number|exposure|aperture|f-?stop)\b", r"\b(?:tells?|same|means?|equal\w*|enough|determin\w*|know)\b"), False,
           "Watt-seconds are the energy stored, not the light given: reflector and efficiency decide the rest, so two heads of equal energy can differ by stops."),
    Belief((_GN, r"\bmet(?:re|er)s?\b.{0,24}\b(?:times|multipl\w*|x)\b.{0,14}3[.,](?:3|28\d*).{0,16}\b(?:feet|ft)\b|\bfeet\b.{0,24}\bdivid\w*\b.{0,14}3[.,](?:3|28\d*).{0,16}\bmet"), True,
           "A foot is 0.3048 m, so a guide number in metres times 3.28 is the same one in feet.", "international yard and pound agreement, 1959"),
    Belief((_GN, r"\bfeet\b.{0,24}\b(?:times|multipl\w*|x)\b.{0,14}3[.,](?:3|28\d*).{0,16}\bmet|\bmet(?:re|er)s?\b.{0,24}\bdivid\w*\b.{0,14}3[.,](?:3|28\d*).{0,16}\b(?:feet|ft)\b"), False,
           "It is the other way round: a guide number in metres times 3.28 is the same one in feet.", "international yard and pound agreement, 1959"),
    Belief((r"\bthin\b", r"\bneg\w*\b", r"\b(?:under\w*|too little|not enough)\b"), True, "A thin negative has had too little light."),
    Belief((r"\bthin\b", r"\bneg\w*\b", r"\b(?:over\w*|too much)\b"), False, "A thin negative has had too little light; a dense one too much."),
    Belief((r"\bdense\b", r"\bneg\w*\b", r"\b(?:over\w*|too much)\b"), True, "A dense negative has had too much light."),
    Belief((r"\bdense\b", r"\bneg\w*\b", r"\b(?:under\w*|too little|not enough)\b"), False, "A dense negative has had too much light; a thin one too little."),
    Belief((r"\bflash\b", r"\b(?:always|any|every)\b", r"\b(?:freez\w*|stops?)\b.{0,12}\b(?:motion|movement|action|everything|anything)\b"), False,
           "Flash freezes only what it alone lights, and only within its duration: ambient light leaves a ghost, and full power can be slow."),
    Belief((r"\bleaf shutter\w*", r"\b(?:any|all|every)\b", r"\bsync\w*|\bflash\b"), True,
           "A leaf shutter opens fully at every speed, so electronic flash syncs at all of them; only very short times can clip a slow flash."),
    Belief((r"\b(?:slide|transparency|chrome)\b", r"\b(?:forgiving|latitude|tolerant|forgives)\b", r"\bmore\b"), False, "Slide film forgives least: half a stop shows. Negative film takes a stop or two over."),
    Belief((r"\b(?:negative|neg|print)\b", r"\b(?:forgiv\w*|latitude|tolera\w*|over\w*)\b", r"\b(?:better|more|well)\b", r"\bover\w*|\bslide\b"), True, "Negative film takes overexposure better than underexposure, and forgives more than slide film."),
    Belief((r"\b(?:bounc\w*|ceiling)\b", r"\b(?:path|whole way|there and back|up and down|via|total)\b", r"\bdistance|\bcount\w*|\bmeasure\w*"), True, "For bounce the distance is the whole path, flash to ceiling to subject, and the ceiling's own loss comes on top."),
    Belief((r"\bshutter\b.{0,24}\b(?:ambient|background)\b", r"\baperture\b.{0,24}\bflash\b"), True, "Within sync the shutter sets the ambient light alone and the aperture sets the flash; the aperture moves the ambient light too.", turns=False),
    Belief((r"\b(?:bigger|larger|higher)(?: the)? f[- ]?(?:numbers?|stops?)\b", r"\bless\b.{0,24}\blight\b|\bdarker\b|\bsmaller (?:hole|opening|aperture)"), True, "An f-number is the focal length divided by the opening, so a bigger one is a smaller hole and less light."),
    Belief((r"\b(?:bigger|larger|higher)(?: the)? f[- ]?(?:numbers?|stops?)\b", r"\bmore\b.{0,24}\blight\b|\bbrighter\b|\b(?:bigger|larger|wider) (?:hole|opening|aperture)"), False, "An f-number is the focal length divided by the opening, so a bigger one is a smaller hole and less light."),
    Belief((r"\b(?:smaller|lower)(?: the)? f[- ]?(?:numbers?|stops?)\b", r"\bmore\b.{0,24}\blight\b|\bbrighter\b|\b(?:bigger|larger|wider) (?:hole|opening|aperture)"), True, "An f-number is the focal length divided by the opening, so a smaller one is a wider hole and more light."),
    Belief((r"\b(?:smaller|lower)(?: the)? f[- ]?(?:numbers?|stops?)\b", r"\bless\b.{0,24}\blight\b|\bdarker\b|\bsmaller (?:hole|opening|aperture)"), False, "An f-number is the focal length divided by the opening, so a smaller one is a wider hole and more light."),
    Belief((r"\bev ?15\b", r"\bsun\w*", r"^(?!.*\b(?:iso|asa) ?(?!100\b)\d)"), True, "Bright sun is EV 15 at ISO 100 by the sunny-16 rule: f/16 at about 1/100 s."),
    Belief((r"\b(?:watt[- ]?seconds?|ws|joules?)\b", r"\b(?:always|necessarily|must|bound to)\b", r"\b(?:bright\w*|stronger|more light)\b"), False,
           "Watt-seconds are the energy stored, not the light given: reflector and efficiency decide the rest, so twice the energy is one stop more only from the same head."),
    Belief((r"\bt ?0?\.1\b", r"\bt ?0?\.5\b", r"\b(?:shorter|less|smaller|briefer)\b"), False, "t0.1 is the longer of the two: for an exponential discharge it is 3.32 times t0.5.", "ISO 2827; standard photometric relations (derivation)"),
    Belief((r"\bt ?0?\.1\b", r"\bt ?0?\.5\b", r"\b(?:longer|more|larger)\b"), True, "t0.1 is the longer of the two: for an exponential discharge it is 3.32 times t0.5.", "ISO 2827; standard photometric relations (derivation)"),
    Belief((r"\bflash\b", r"\b(?:daylight|sun\w*|outdoors?|outside)\b", r"\b(?:can't|cannot|can not|no use|useless|pointless|never use|not work)\b|\bdoesn't work\b"), False,
           "Flash works in daylight: as fill it lightens the shadows. Set the exposure for the daylight within sync speed, and let the flash come one to two stops weaker.", turns=False),
)

_WITHOUT = Pattern(r"\b(?:than|compared (?:to|with)) (?:the \w+ |one |it is |a \w+ )?without\b[^,.;?]*")
"""What is compared with the same thing left out: it denies nothing."""
_THAN = Pattern(r"\bthan\b")


def _leads(hears: tuple[str, ...], said: str, than: int) -> bool:
    """Whether what a belief is of stands before "than", and nothing else of its kind after it: who is compared with whom matters."""
    before, after = patterns.search(hears[0], said[:than]), patterns.search(hears[0], said[than:])
    alone = before is not None and (after is None or after.group() == before.group())
    return alone and all(patterns.search(words, said[:than]) for words in hears if not words.startswith("^"))


_EVERY = (*BELIEFS, *MORE_BELIEFS)
_HEARS = Rows(tuple(map(Pattern, row.hears)) for row in _EVERY)


def judge_folklore(text: str) -> Verdict | None:
    """The verdict of the row with the most patterns that fits; None where no row does."""
    said = plain(text).strip().replace("dosen't", "doesn't")
    said = _WITHOUT.sub(" ", said)
    than = _THAN.search(said)
    fits = [(len(_EVERY[n].hears), -n) for n in _HEARS.found_in(said) if than is None or _leads(_EVERY[n].hears, said, than.start())]
    if not fits:
        return None
    row = _EVERY[-max(fits)[1]]
    if not all_in_rows(said, row.hears):
        return None
    negated = row.turns and denied(said)
    return Verdict(row.true != negated, 0.0, row.sentence, "")

"""Safety questions that are asked outright, answered from prepared tables and never improvised."""

from __future__ import annotations

from assistant.patterns import Pattern, Rows
from assistant.records import record
from assistant.safety.answers_electric import ELECTRIC
from assistant.safety.answers_people import PEOPLE
from assistant.safety.aspects import Aspect
from assistant.safety.cautions import CAUTIONS, TOPICS, plain, topics_in

ASPECTS: tuple[Aspect, ...] = ELECTRIC + PEOPLE


@record
class SafetyAnswer:
    """A prepared reply (first sentence is the answer), its topics and its sources."""

    reply: str
    topics: tuple[str, ...]
    sources: tuple[str, ...]


# "a safe setting" is about exposure, not about harm.
_DANGER = Pattern(
    r"\b(?:(?:un)?safe(?:ty|ly)?(?! (?:bet|setting|choice|side|margin|exposure|aperture|f-?stop|start\w*|shutter|distance for))"
    r"|danger\w*|hazard\w*|harm\w*|bother\w*|scare\w*|frighten\w*|startl\w*|upset\w*|hurt\w*|injur\w*|risk\w*|kill\w*|electrocut\w*|explod\w*|blind(?:ed|ing|ness)?"
    r"|safest|safer|watch out|look out for|precautions?|beware|shock(?:s|ed)?|fry|fries|ruin|wreck|catch fire|on fire|smok(?:e|ing)|seizures?|epilep\w*|damage\w*|poison\w*|allowed)\b"
)
_QUESTION = Pattern(
    r"\?|^(?:so |ok |hi |hello |please |quick question,? )?(?:is|are|can|could|may|should|will|would|do|does|am|how|what|why|anything|any)\b"
    r"|\b(?:can|could|may|should|is it|am|do|will it) (?:i|we|you|it|ok|okay|safe|all right|alright)\b|\bwhat (?:do|should|must) (?:i|we) do\b|\bwonder\w*\b|\bis (?:there|it|this|that)\b(?! (?:out|a stop|f/))"
)
_PERMISSION = Pattern(
    r"\b(?:can|could|may|should|shall) (?:i|we|you|one|they|it|my|the|old|a|an|two|flash\w*)\b|\bany (?:reason not|harm|objection|danger|trouble)\b|\banything wrong with\b|\b(?:ok|okay|all right|alright|fine|wise|sensible|bad|good idea|worried|worry|mind|legal|allowed|advisable|a problem)\b"
    r"|\b(?:will|would|does|do|is|are|might) .{0,50}\b(?:hot|hurt\w*|protect\w*|trigger\w*|upset\w*|startl\w*|burn\w*|(?<!the )(?<!its )burst\w*(?! (?:short|long|last|gets?|becomes?|grows?|turns?|is|are|takes?|of light|rate|mode))|shatter\w*|need an? )|\bwhat happens if\b|\bwhat weight\b|\bhow heavy\b|\btoo high for\b|\btoo (?:bright|close|strong) (?:for|to)\b.{0,20}\b(?:eyes|baby|newborn)\b|\bdo i need\b|\bhow long\b.{0,40}\b(?:charge|capacitor|discharg\w*)|\bhow (?:do|can|should) (?:i|we) (?:measur\w*|test|check|weigh|tape|protect|keep|stop(?! down)|secure|prevent|avoid|store|dispose|clean|get rid)\b|\bwhat (?:do|should|must|ought) (?:i|we) (?:to )?(?:do|check|look at|look for|test|find out|make sure of)\b|\bwhy not\b(?! (?:f\b|iso|\d))|\bwhy (?:shouldn't|mustn't|can't|should(?: i| we)? not|must(?: i| we)? not) (?:i|we|you)?\b|\bcarry on or\b|\bor (?:pack|stop|carry|put it|bin)\b|\bany (?:tips|advice|rules)\b|\bwhat(?:'s| are| is) the rules?\b|\bwhat to (?:do|mind|avoid)\b|,? how\W*$"
    r"|\banything (?:i|we) (?:should|must|need to) (?:know|mind|watch)\b|\bhow hot\b|\bsafety (?:rules?|tips?|advice|basics)\b|\bhow (?:do|can|should|to) (?:(?:i|we|you) )?(?:safely )?(?:replace|change|swap|remove|get .{0,30}\bout\b|open|repair|fix|discharge)\b"
)
_NUMBER_WANTED = Pattern(
    r"\b(?:what|which|whats|what's|how many|how much|how far|work out|calculate|give me)\b.{0,30}\b(?:aperture|f-?stop|f-?number|f ?stop|stops?|setting|(?<!to )power|distance|iso|shutter|guide number|gn|exposure|lens|pops|flashes|feet|metres|meters|joules|energy|watt[- ]?seconds|ws)\b"
    r"|\b(?:aperture|f-?stop|f-?number|stop|power|distance|shutter(?: speed)?|exposure)\s*\?"
)
_QUANTITY_WANTED = Pattern(r"\bhow (?:many|far|wide|much|high)\b")
_EXPOSURE_TALK = Pattern(r"\bf ?/ ?\d|\bf\d|\b(?:gn|guide (?:number|no))\b|\biso ?\d|\basa ?\d|\baperture\b|\bf-?stop\b|\b1/\d+\b|\bw ?s\b|\bwatt"
    r"|\b(?:open(?:ing)? up|stop(?:ping)? down|close down)(?: (?:the (?:lens|aperture)|an? stop|one stop|two stops|by [^,.?]{1,12}|then|at all|more|too))*\W*(?:$|[.?!,;])")

_RATE = Pattern(r"\b(?:flash\w*|pops|times)\b.{0,12}\b(?:a|per|each|every) second\b")
_FRAGMENT_TOPICS = frozenset({"water", "epilepsy", "infant", "eyes"})
_FRAGMENT_WORDS = Pattern(r"\b(?:flash|strobe|eyes)\b")


def _is_fragment(said: str) -> bool:
    """A bare phrase such as "flash in the rain": a hazard, a flash, no number, four words at most."""
    few = len(said.split()) <= 4 and not any(letter.isdigit() for letter in said)
    return few and _FRAGMENT_WORDS.search(said) is not None and bool(topics_in(said) & _FRAGMENT_TOPICS)


_GEAR = Pattern(
    r"\b(?:flash\w*|strobes?|heads?|packs?|mono\w+|lights?|lamps?|stands?|batter\w+|cells?|lithium|lipos?|leads?|cables?|cords?|mains|gel\w*|bulbs?|umbrella\w*|brolly|soft ?box\w*|octa\w*|boom\w*|sand ?bags?|capacitors?|studio|breaker"
    r"|shoot\w*|photograph\w*|portraits?|gear|kit|speedlights?|generator|genny|hammerhead|tripod)\b"
)
"""Without one of these a hazard in the text (rain on Saturday, a flight) is none of the trade's."""


_HEARS = Rows(tuple(map(Pattern, one.hears)) for one in ASPECTS)


def is_safety_question(text: str) -> bool:
    """Whether the words ask about harm, or for leave to do something, and not for an exposure number.

    >>> is_safety_question("is it safe to flash a cat?")
    True
    >>> is_safety_question("it's raining, GN 80, 10 ft, what aperture?")
    False
    """
    said = plain(text)
    if _is_fragment(said):
        return True
    if _NUMBER_WANTED.search(said) and not _RATE.search(said):
        return False
    if _DANGER.search(said):
        return _QUESTION.search(said) is not None
    about_exposure = _EXPOSURE_TALK.search(said) or _QUANTITY_WANTED.search(said)
    return _PERMISSION.search(said) is not None and not about_exposure


def best_aspect(text: str) -> Aspect | None:
    """The aspect whose words are all there: the most specific, then the first in the tables."""
    said = plain(text)
    asked = is_safety_question(text)
    calm = _NUMBER_WANTED.search(said) is None and _EXPOSURE_TALK.search(said) is None
    if not asked and not calm:
        return None
    fits = [(len(_HEARS[place]), -place) for place in _HEARS.found_in(said) if asked or ASPECTS[place].urgent]
    return ASPECTS[-max(fits)[1]] if fits else None


def answer_safety(text: str) -> SafetyAnswer | None:
    """The prepared answer to a safety question, or None where the text asks no safety question known here.

    >>> answer_safety("Is it safe to flash a newborn?").topics
    ('infant', 'eyes')
    >>> answer_safety("guide number 80, 10 feet, in the rain, what aperture?") is None
    True
    """
    aspect = best_aspect(text)
    if aspect is None:
        return _by_topic(text) if is_safety_question(text) else None
    return _answered(aspect)


def _answered(aspect: Aspect) -> SafetyAnswer:
    return SafetyAnswer(aspect.reply, tuple(sorted(aspect.topics, key=TOPICS.index)), tuple(aspect.source.split("; ")))


def answer_hazard(text: str) -> SafetyAnswer | None:
    """The answer to a hazard that is only stated, with no number wanted; None where none is heard.

    >>> answer_hazard("the breaker keeps tripping when both heads recycle").topics
    ('mains',)
    >>> answer_hazard("will it rain on Saturday?") is None
    True
    """
    said = plain(text)
    topics = topics_in(text)
    if not topics or not _GEAR.search(said) or _NUMBER_WANTED.search(said):
        return None
    fits = [(len(topics.intersection(ASPECTS[place].topics)), len(_HEARS[place]), -place) for place in _HEARS.found_in(said) if not topics.isdisjoint(ASPECTS[place].topics)]
    return _answered(ASPECTS[-max(fits)[2]]) if fits else _by_topic(text)


def _by_topic(text: str) -> SafetyAnswer | None:
    """The cautions of the two most serious hazards heard, where no prepared answer fits."""
    topics = topics_in(text) if _GEAR.search(plain(text)) else frozenset()
    told = [one for one in CAUTIONS if one.topic in topics][:2]
    return SafetyAnswer(" ".join(one.text for one in told), tuple(one.topic for one in told), tuple(one.source for one in told)) if told else None

"""Claims that a change of the camera takes so many stops from flash and daylight alike, or gives them both so many.

"when I close the lens down one stop, the flash and the daylight both drop by a stop" holds; of the shutter time it
does not, since the flash is over while the shutter is open.
"""

from __future__ import annotations

from assistant.answer import Quantity
from assistant.patterns import Pattern
from assistant.places import ROOMS
from assistant.query import Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.claim_rules import WEIGHTS
from assistant.solving.claim_words import Term, plain, terms
from assistant.solving.solution import Solution

_FLASH = r"(?:flash|strobe|speedlight)(?:-lit)?(?: (?:exposure|light|part|side))?"
_AMBIENT = rf"(?:ambient|daylight|available light|existing light|sky|sun(?:light|shine)?|background|window|(?:{ROOMS}))(?: (?:exposure|light|part))?"
_ARTICLE = r"(?:the |my |a )?"
_BOTH = Pattern(
    rf"\b(?:both {_ARTICLE}(?:{_FLASH} and {_ARTICLE}{_AMBIENT}|{_AMBIENT} and {_ARTICLE}{_FLASH})|(?:{_FLASH} and {_ARTICLE}{_AMBIENT}|{_AMBIENT} and {_ARTICLE}{_FLASH})\b[^,.;?]{{0,40}}\b(?:both|alike|each|equally|together)|(?:{_FLASH} and {_ARTICLE}{_AMBIENT}|{_AMBIENT} and {_ARTICLE}{_FLASH}) (?:alike|each|both))\b"
)
_DENIES = Pattern(r"n't\b|\b(?:not|no|never|only|but|alone|unchanged|same|leaves?|without|while|whereas|neither|nor|sync|hss|reciprocity)\b")
_CLOSES = Pattern(r"\b(?:clos|stop)(?:e|es|ing|ed|ping|ped|s)?(?: (?:the|my) (?:lens|aperture|iris))?(?: down)?(?: (?:the|my) (?:lens|aperture|iris))?(?: by)? $")
_OPENS = Pattern(r"\bopen(?:s|ing|ed)?(?: (?:the|my) (?:lens|aperture|iris))?(?: up)?(?: (?:the|my) (?:lens|aperture|iris))?(?: by)? $")
_DOWN = Pattern(r"\b(?:drops?|fall\w*|los\w+|lower\w*|darken\w*|darker|dim\w*|less|down|cuts?|costs?|takes?|reduc\w+|weaken\w*|under)\b")
_UP = Pattern(r"\b(?:gains?|ris(?:es?|ing)|rais\w+|lift\w*|brighten\w*|brighter|more|up|boost\w*|increas\w*|adds?|over)\b")
_SETTINGS = {"aperture": "the aperture", "film_speed": "the film speed", "time": "the shutter time"}
_CLOSE = 0.15


def claim_of_both(query: Query) -> Solution | None:
    """Whether flash and ambient light both change by the stops that are said of both."""
    said = plain(query.text)
    both = _BOTH.search(said)
    if both is None or _DENIES.search(said):
        return None
    found = terms(said)
    if len(found) != 2 or found[1].quantity != "stops":
        return None
    cause, effect = found
    setting, doublings = _of_the_camera(said, cause)
    way = _way(said[cause.end : both.start()] + " " + said[both.start() : effect.end + 24])
    if setting not in _SETTINGS or not way or not doublings:
        return None
    stops = {part: WEIGHTS[part][setting] * doublings for part in ("flash", "ambient")}
    claimed = abs(effect.doublings) * way
    holds = all(abs(value - claimed) <= _CLOSE for value in stops.values())
    lead = f"{'Yes' if holds else 'No'}. {_SETTINGS[setting].capitalize()} changes the ambient light by {_signed(stops['ambient'])} and the flash by {_signed(stops['flash'])}."
    return Solution(answers=(Quantity("claim", holds), marks.stops(stops["ambient"])), used=tuple(f for f in query.facts if f.origin == "said"), topic="claims", lead=lead)


def _of_the_camera(said: str, cause: Term) -> tuple[str, float]:
    """The setting that is changed and how often it doubles: closing down a stop is half a doubling of the f-number."""
    if cause.quantity != "stops":
        return cause.quantity, cause.doublings
    before = said[: cause.start]
    way = 1 if _CLOSES.search(before) else -1 if _OPENS.search(before) else 0
    return "aperture", way * abs(cause.doublings) / 2


def _way(words: str) -> int:
    down, up = _DOWN.search(words) is not None, _UP.search(words) is not None
    return 0 if down == up else 1 if up else -1


def _signed(stops: float) -> str:
    return "nothing" if abs(stops) < _CLOSE else f"{speak_stops(abs(stops))} {'more' if stops > 0 else 'less'}"

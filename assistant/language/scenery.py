"""Sentences that only set the scene: "The dog will not sit still. GN 110, 10 feet, what stop?" is the question after it.

Where the rest of a text tells figures, a sentence with no figure, no word of the trade and no hazard in it
takes no part in the reading: its "not", "keeps" or "still" would be taken for the question's.
"""

from __future__ import annotations

import re

from assistant.language.hearing import hear
from assistant.language.lexicon import Lexicon
from assistant.patterns import Pattern
from assistant.safety.may_concern import may_concern_safety

_SENTENCES = Pattern(r"(?<=[.!?])[\s\"'”’)]+(?=[A-Za-z\"“‘])")
_SAYS_NOTHING = frozenset({"WORD", "GLUE", "LINK", "END", "COMMA", "DASH", "NOT", "A", "AT", "IN", "OF", "TO", "FOR", "FROM", "AND", "glue", "SEC"})
_BY_THE_WAY = frozenset({"subject", "self", "my_kit", "wait", "leaf", "put_on", "down"})
"""Words with a meaning of their own that say nothing beside words that are not known."""
_OF_THE_TALK = Pattern(
    r"\b(?:not|no|never) (?:metres?|feet|that|those|it|the first|through|bounced)\b|\b(?:scrap|forget|ignore|again|same|instead|actually|sorry|mistake|wrong|correction|start over|go back|back to|undo|note|log|remember|remind|ghost\w*|thin|dense|muddy|murky|chalky|blown|burnt|burned|washed|bleached|"
    r"pale|faces?|shadows?|eyes|fog\w*|streak\w*|blank|failed|came|turned|come|look(?:s|ed)?|crackl\w*|smell\w*|spark\w*|leak\w*|hot|burn\w*|true|false|fact|right|said|says|say|told|tells?|claims?|insists?|swears?|reckons?|thinks?|believes?|heard|read|friend|wind\w*|outdoors?|outside|indoors?|inside|underwater|dark|bright|dim|light\w*|neither|nor|nothing|none|anything|everything)\b", re.I)
"""Words by which a sentence speaks of the talk itself, of what pictures look like, of what others say or of the place's light: those are heard."""
_FEWEST, _MOST = 3, 16
"""Words of a sentence that may be left out."""
_FIGURE = Pattern(r"\d+(?:[./]\d+)*|\b(?:half|halve|one|two|three|four|five|six|seven|eight|nine|ten|twelve|double|twice|third|quarter|full|an? stop)\b", re.I)
_QUESTION = Pattern(r"\b(?:what|which|how|where|why|when|who|does|do|did|is it|can i|should|tell me|give me)\b", re.I)

_WHERE = Pattern(
    r"^\W*(?:and |so |but )?(?:(?:I'm|I am|we're|we are|they're|they are|it's|it is|this is)(?: all| both| still| now| just| here| back| going to be| working| shooting| set up){0,3}) (?:in|inside|at) (?:the|a|an|my|our|his|her|some|this) (?:[a-z]+ ){0,2}?(?P<place>halls?|rooms?|(?:ball|living|dining|class|bed|sitting|show|board|drawing)room)\b(?! light)",
    re.I,
)
"""Where one is: a hall in such a sentence is a place, and no light that reads something."""
_OF_ITS_LIGHT = Pattern(r"\b(?:1/(?!(?:16|32|64|128)\b)\d{2,4}|\d+(?:th|ths)|seconds|\d ?(?:s|secs?|second)|shutter|sync\w*|ambient|available|existing|day ?light|sun\w*|sky|windows?|rooms?|halls?|ev|lamps?|candles?|twilight|dusk|lux|exposed?)\b", re.I)
_OF_FLASH = Pattern(r"\b(?:gn|guide|flash\w*|strobes?|guns?|heads?|power|pops?|umbrella|brolly|soft ?box|box|silk|scrim|net|dome|gel|grid|snoot|key|fill|hair light|rim|bounc\w*|ceiling|depth of field|focus\w*|film|nd|filters?|stops?)\b", re.I)


def without_scenery(text: str, lexicon: Lexicon) -> str:
    """The text without the sentences that only set the scene, where two figures or more stand in the rest.

    >>> from assistant.language.tables import load_tables
    >>> without_scenery("The dog will not sit still. GN 110, 10 feet, what stop?", load_tables(None).lexicon)
    'GN 110, 10 feet, what stop?'
    """
    parts = _SENTENCES.split(text) if ". " in text or "! " in text or "? " in text else [text]
    if len(parts) < 2:
        return text
    asked = any("?" in part for part in parts[:-1])  # else the last one may ask without its mark
    kept = [part for n, part in enumerate(parts) if not ((asked or n < len(parts) - 1) and _is_scenery(part, lexicon))]
    if len(kept) == len(parts) and (place := _place(parts)) is not None:
        kept = [part for part in parts if part is not place]
    rest = " ".join(kept)
    return rest if 0 < len(kept) < len(parts) and len(_FIGURE.findall(rest)) > 1 else text


def _place(parts: list[str]) -> str | None:
    """The sentence that says where one is, where the others speak of the flash and not of that place's light."""
    for part in parts:
        said = _WHERE.search(part) if "?" not in part and not any(c.isdigit() for c in part) else None
        if said is not None and len(part.split()) <= _MOST:
            rest = " ".join(p for p in parts if p is not part)
            told = part[: said.start("place")] + part[said.end("place") :]
            if not _OF_ITS_LIGHT.search(told) and not _OF_THE_TALK.search(part) and not _OF_ITS_LIGHT.search(rest) and _OF_FLASH.search(rest):
                return part
    return None


def _is_scenery(sentence: str, lexicon: Lexicon) -> bool:
    """Whether a sentence has words that are not known, and beside them none that mean anything here."""
    words = sentence.split()
    if not _FEWEST <= len(words) <= _MOST or "?" in sentence or any(c.isdigit() for c in sentence) or _OF_THE_TALK.search(sentence) or _QUESTION.search(sentence):
        return False
    tokens = hear(sentence, lexicon).tokens
    plain = all(t.type in _SAYS_NOTHING or t.type == "PAIR" and sentence[t.start : t.end].lower() == "twins" or t.type == "CUE" and t.value in _BY_THE_WAY for t in tokens)
    return plain and any(t.type == "WORD" for t in tokens) and not may_concern_safety(sentence)

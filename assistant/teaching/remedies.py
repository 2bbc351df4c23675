"""What to move or change when something in the picture is wrong: shadows on the wall, glare, shine, a flat face.

One row a trouble; the row with the most patterns that are all heard is taken. Trade practice throughout.
"""

from __future__ import annotations

from functools import lru_cache

from assistant.patterns import Pattern
from assistant.teaching.glossary_entry import COMMON, PHOTOMETRY, Term, Why, why

_GLASSES = r"\b(?:spectacles|eye ?glasses|specs|bifocals|(?:his|her|their|wears?|wearing|the|with|in|my|off|of) glasses|glasses)\b"
_GLARE = r"\b(?:glare\w*|reflect\w*|refl\w*tion\w*|shin(?:e|es|ing|y)|white (?:spots?|blobs?|patch\w*)|hot ?spots?|blobs?|flash(?:es)? (?:in|off|on) (?:the|his|her|their|them)|bounc\w* back|flare\w*)\b"
_WALL = r"\b(?:walls?|backgrounds?|backdrop|behind|paper|cloth)\b"

REMEDIES: tuple[Why, ...] = (
    why("shadow on the wall", (r"\bshadows?\b", _WALL, r"^(?!.*\b(?:fill|lift|no detail|ambient)\b)"),
        "Bring the subject a good step away from the wall, two metres (6 feet) if there is room, and put the flash higher and off to one side, so that the shadow falls low and out of the picture. A larger light, or the flash bounced off the ceiling, makes what is left of it soft; a second light on the wall takes it away.",
        COMMON, "there's a hard shadow on the wall behind everyone"),
    why("glare in glasses", (_GLASSES, _GLARE),
        "Light leaves a mirror at the angle at which it came, so change the angle: raise the light, or move it farther to the side, until the reflection has left the glasses as seen from the lens. Let the sitter tip the chin down a little or lift the arms of the glasses off the ears. A large softbox makes a large reflection, so it must go farther round; a polariser on the lens takes little of it away.",
        COMMON, "glare off his glasses, what do I move?"),
    why("reflection in glass", (r"\b(?:windows?|mirrors?|glass(?! es)|glazed|framed|varnish\w*|oil paintings?|trophy|silver cup)\b", _GLARE, r"^(?!.*\b(?:glasses|spectacles|reflector|umbrella loss)\b)"),
        "The flash comes back from glass at the angle at which it went in. Stand at an angle to the glass, or take the flash off the camera and put it to the side at about 45 degrees, so that its reflection goes past the lens. Bounced light helps, and at a window you can hold the flash and lens right against the pane.",
        COMMON, "I get a white blob of flash in the window"),
    why("shiny skin", (r"\b(?:shin(?:y|ing|e|es)|greasy|sweat\w*|oily|hot ?spots?|gloss\w*)\b", r"\b(?:foreheads?|skin|faces?|nose|bald|heads?|cheeks?)\b"),
        "A hot spot on skin is the flash mirrored in it. Make the light larger and closer, move it to the side or bounce it, so that the reflection spreads and goes past the lens; powder or a tissue does the rest. Less power alone does not change it against the rest of the face.",
        COMMON, "shiny forehead in every flash shot"),
    why("flat face", (r"\bflat\b", r"\b(?:flash\w*|portraits?|faces?|pictures?|shots?|photos?)\b", r"^(?!.*\bflat (?:black|panel|art|on)\b)"),
        "A flash beside the lens lights everything from the front, so no shadow shows the shape of the subject. Move the flash to one side and higher, on a cord or by bounce, and let a weaker fill or a reflector open the shadows.",
        COMMON, "my on-camera flash portraits look flat, what should I do?"),
    why("room light with flash", (r"\bhow\b", r"\b(?:get|keep|include|bring|have|record|show|some of|more of|let)\b", r"\b(?:room(?:'s)? light|ambient|available light|existing light|atmosphere|mood|lamps|light of the room)\b", r"\bflash\b", r"^(?!.*\d)"),
        "Use a slower shutter: each doubling of the time adds a stop of room light and leaves the flash as it was. Set the aperture for the flash first, then slow the shutter until the room is one to two stops under; use a tripod, and mind that moving people may blur. A faster film brings up both.",
        COMMON, "how do I get some of the room light in with flash?"),
    why("fill without a second light", (r"\b(?:fill\w*|lighten|lift|open(?: up)?)\b", r"\bshadows?\b", r"\b(?:without|only one|no second|just one|single|one light|one flash)\b", r"^(?!.*\d)"),
        "Use a reflector: a white card or sheet on the shadow side, as close as the frame allows, gives a fill of one to two stops under the key; silver gives more, and farther away gives less. A pale wall near by does the same.",
        COMMON, "how do I fill the shadows without a second light?"),
    why("slave in the sun", (r"\bslaves?\b", r"\b(?:sun\w*|outdoors?|outside|daylight|bright)\b", r"\b(?:fire|fires|trigger\w*|work\w*|fail\w*|miss\w*|go off)\b"),
        "Bright sun blinds an optical slave: its cell waits for a jump in the light, and against the sun the master's flash is a small one. Shade the cell, turn it toward the master and bring it closer, or use a cord or a radio trigger.",
        COMMON, "my slave doesn't fire in the sun"),
    why("exposure or development", (r"\bexpos\w*", r"\bdevelop\w*", r"\b(?:tell|know|fault|which|whether|blame|cause|distinguish)\b", r"\bhow\b|\bor\b", r"^(?!.*\bpush\w*)"),
        "Look at the edge of the film: the frame numbers were exposed in the factory. Where they are strong and the pictures thin, the exposure was too little; where the numbers are pale as well, the development was. Thin shadows point to exposure, blocked or weak highlights to development.",
        COMMON, "how do I tell if the fault is the exposure or the development?"),
    why("judging negatives", (r"\bhow\b", r"\b(?:tell|know|see|judge|recogni[sz]e)\b", r"\bneg(?:ative)?s?\b", r"\b(?:under|over|right|correct\w*)\b"),
        "Look at the shadows of the negative. Clear film without detail where there should be some means too little light: a thin negative is underexposed. Dark and heavy all over, with detail even in the deepest shadows, means too much: a dense negative is overexposed. Compare the frame numbers to rule out the developing.",
        COMMON, "how do I know from the negatives if I underexposed?"),
    why("bulbs on M", (r"\bbulbs?\b", r"\bm\b", r"\bwhy\b|\bwhich\b|\bwhat\b|\bshould\b|\bhow\b", r"^(?!.*\d ?m\b).*\b(?:x|sync\w*|lever|switch|setting|contact|fired?|bulbs)\b"),
        "Use M for bulbs: it fires the bulb roughly 12 to 26 thousandths of a second before the shutter is fully open, so that the bulb has time to reach its peak. X fires when the shutter is already open, for electronic flash; bulbs on X need a slow speed, 1/30 s or slower.",
        COMMON, "it has an M and an X lever, which one for bulbs and why?"),
    why("electronic flash on X", (r"\b(?:electronic|strobes?|speedlights?|modern flash)\b", r"\bx\b", r"\bm\b", r"\bwhich\b|\bwhat\b|\bshould\b|\buse\b"),
        "Use X for electronic flash: it fires when the shutter is fully open. M fires earlier, for flash bulbs, and an electronic flash on M is over before the shutter opens, so the frame comes out dark or black.",
        COMMON, "which sync setting for electronic flash, M or X?"),
    why("recycling in the cold", (r"\brecycl\w*|\brecharg\w*|\bready\b", r"\b(?:cold|winter|freez\w*|frost|snow)\b", r"\bwhy\b|\bhow\b|\bslow\w*|\blong\b"),
        "Cold cells give less current, so the capacitor takes longer to fill. Keep a spare set warm in an inside pocket and swap, use nickel-metal-hydride or lithium cells, and wait well past the ready light.",
        COMMON, "why does my flash take so long to recycle in winter?"),
    why("two figures for one guide number", (r"\bguide numbers?\b|\bgns?\b", r"\b(?:two|both|second) (?:figures?|numbers?|values?)\b", r"\bwhy\b|\bwhat\b|\bwhich\b"),
        "One is in metres and one in feet: the figure in feet is 3.28 times the other. Use each with distances in its own unit. Where they are not 3.28 apart, they are for two zoom settings or film speeds.",
        PHOTOMETRY, "why does my guide number have two figures?"),
)
_TROUBLED = Pattern(r"\b(?:what (?:aperture|f-?stop|power|shutter)|how (?:many|much|far|close)|which (?:aperture|f-?stop|power))\b|\bdifference between\b")
"""A figure or a difference is wanted, no cure."""


@lru_cache(maxsize=1)
def _compiled() -> tuple[tuple[Why, tuple[Pattern, ...]], ...]:
    return tuple((row, tuple(Pattern(p) for p in row.hears)) for row in REMEDIES)


def remedy(text: str) -> Term | None:
    """What to do about a trouble that is named; None where none is.

    >>> remedy("glare off his spectacles, what do I move?").names[0]
    'glare in glasses'
    >>> remedy("how far is the wall?") is None
    True
    """
    said = " ".join(text.replace("\u2019", "'").lower().split())
    if _TROUBLED.search(said):
        return None
    fits = [(len(heard), -place, row.term) for place, (row, heard) in enumerate(_compiled()) if all(p.search(said) for p in heard)]
    return max(fits, key=lambda fit: fit[:2])[2] if fits else None

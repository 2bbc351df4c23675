"""What to move or change when something in the picture is wrong: shadows on the wall, glare, shine, a flat face.

One row a trouble; the row with the most patterns that are all heard is taken. Trade practice throughout.
"""

from __future__ import annotations

from assistant.patterns import Pattern, Rows
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
    why("judging negatives", (r"\bhow\b", r"\b(?:tell|know|see|judge|recogni[sz]e)\b", r"\bneg(?:ative)?s?\b", r"\b(?:under\w*|over\w*|right|correct\w*)\b"),
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
    why("dark eye sockets", (r"\b(?:eye ?sockets?|raccoon|panda eyes|eyes? (?:are|is|look|in) (?:dark|black|shadow|shade)|dark eyes|(?:shaded|shadowed) eyes)\b",),
        "The light comes from too high, as it does from the noon sun or from a ceiling straight above. Bring in light from lower and in front: a white card behind the flash head that throws a little forward, a reflector under the face, or a fill flash one to two stops under. Bouncing off a wall, or off the ceiling farther in front of the subject, helps too.",
        COMMON, "dark eye sockets when I bounce off the ceiling"),
    why("specks lit by the flash", (r"\b(?:dots|specks?|flakes|orbs?|blobs|spots|discs)\b", r"\b(?:snow\w*|rain\w*|dust\w*|mist|spray|fog|smoke|all over|everywhere)\b", r"\bflash\b|\bwhite\b|\bbright\b", r"^(?!.*\b(?:faces?|foreheads?|skin)\b)"),
        "Flakes, drops or dust close to the lens are far nearer to the flash than the subject is, so they come out bright and blurred. Move the flash off the camera and to the side, so that it does not light the air in front of the lens, or use less flash and more of the light that is there.",
        PHOTOMETRY, "white dots all over a flash picture in snow"),
    why("shadow of the lens", (r"\b(?:curved?|round|half[- ]?(?:moon|circle)|semi-?circ\w+|dome\w*|arc)\b", r"\bshadow\b", r"\b(?:bottom|lower|frame|edge|picture|foreground)\b"),
        "That is the shadow of the lens or its hood, in the way of a flash that sits low on the camera. Take the hood off, use a shorter lens, step back, or raise the flash on a bracket or a cord.",
        COMMON, "a curved shadow at the bottom of the frame"),
    why("crossed shadows", (r"\b(?:two|double|cross\w*|both)\b", r"\bshadows?\b", r"\b(?:nose|face|sides|chin|each side|wall)\b", r"\b(?:cross\w*|sides|double|two shadows|what|how|why|avoid)\b"),
        "Two lights of nearly the same strength from two sides each make a shadow. Let one be the key, and bring the other in beside the camera as a fill, larger, softer and one to two stops weaker, so that it makes no shadow of its own.",
        COMMON, "crossed shadows on both sides of the nose"),
    why("aiming for bounce", (r"\bhow\b|\bwhere\b", r"\b(?:point|aim|tilt|angle|direct|turn)\b", r"\b(?:bounc\w*|ceiling)\b"),
        "Tilt the head so that the beam meets the ceiling about halfway between you and the subject, or a little nearer to you, and no light goes straight forward from it. The distance is the whole path, up and down; then open one and a half to two stops for a white ceiling.",
        COMMON, "how should I point the flash for bounce?"),
    why("shutter for fill flash", (r"\b(?:which|what)\b", r"\bshutter (?:type|kind)\b|\b(?:type|kind|sort) of shutter\b|\bleaf or\b|\bfocal[- ]?plane or\b", r"\b(?:fill|flash|sync)\b"),
        "A leaf shutter: it is fully open at every speed, so flash works at 1/250 or 1/500 s as well, and the daylight can be held down without a small aperture. A focal-plane shutter works with flash only up to its sync speed.",
        COMMON, "which shutter type is best for fill flash?"),
    why("shutter too fast for flash", (r"\bwhat happens?\b|\bwhat if\b", r"\b(?:too fast|too high|faster|above|beyond|over)\b", r"\b(?:shutter|sync)\b", r"\bflash\b|\bsync\b"),
        "With a focal-plane shutter part of the frame stays dark: beyond its sync speed it is never fully open, and the flash lights only the slit that is. Use the sync speed or slower. A leaf shutter has no such limit.",
        COMMON, "what happens if I use too fast a shutter with flash?"),
    why("counting stops", (r"\bhow\b", r"\b(?:count|work out|figure|tell|know|find)\b", r"\bstops\b", r"\bbetween\b.{0,24}\b(?:f ?-? ?numbers?|f-?stops|apertures|marks)\b", r"^(?!.*\d)"),
        "Count the whole marks of the ring: 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32. Each step to the next is one stop, half the light; the two clicks between are thirds. From f/4 to f/8 is two stops.",
        "ISO 517 (series, from memory)", "how do I count stops between f-numbers?"),
)
_TROUBLED = Pattern(r"\b(?:what (?:aperture|f-?stop|power|shutter)|how (?:many|much|far|close)|which (?:aperture|f-?stop|power))\b|\bdifference between\b")
"""A figure or a difference is wanted, no cure."""


_HEARS = Rows(tuple(map(Pattern, row.hears)) for row in REMEDIES)


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
    fits = [(len(_HEARS[place]), -place) for place in _HEARS.found_in(said)]
    return REMEDIES[-max(fits)[1]].term if fits else None

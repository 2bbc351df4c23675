"""What changes what: every cause of the trade against every effect, and whether a claim about them holds.

One table, the influence matrix. A row is a cause, which way it moves some effects (more of the cause
gives more, less, or nothing of the effect), why, and the source. What a sentence says of a cause
and its effects is read by claim_influence_words; a pair that is not in the table depends on the case
and is not judged.
"""

from __future__ import annotations

from functools import cache, lru_cache

from assistant.records import record
from assistant.solving.claim_influence_words import Saying, Told, read
from assistant.solving.claim_rules import Verdict
from assistant.solving.claim_words import plain

COMMON = "common practice, no source"
NAVY = "Photography (Basic), NAVEDTRA 14209"
ARMY = "US Army correspondence subcourse SS0510 (photographic lighting lessons)"
LIGHT = "photometry: inverse square, addition of exposure"

MORE, NONE, LESS = 1, 0, -1


@record
class Influence:
    """Some cells of one cause's row: more of the cause gives more, less or nothing of each of the effects."""

    cause: str
    way: int
    effects: str
    sentence: str
    source: str = COMMON


_LAMP = "duration recycle pops softness falloff ratio"
"""What belongs to the lights alone, and no setting of the camera changes."""

_TIME = "Up to sync speed the shutter time changes the ambient light alone: the flash is over while the shutter is open."
_STOP = "The aperture acts on flash and ambient light alike."
_FILM = "The film speed acts on flash and ambient light alike."
_POWER = "The power acts on the flash alone; the ambient light does not change with it."
_SHORTER = "A shoe-mount flash is cut off earlier at lower power, so it is shorter; some studio heads do the opposite, so look at the maker's table."
_FAR = "Light falls with the square of the distance from flash to subject; the ambient light does not change with it."
_STAND = "The distance that counts is from the flash to the subject; how far the camera stands changes nothing, unless the flash moves with it."
_LENS = "At the same f-number the focal length does not change the flash exposure; only the distance from the flash does."
_ZOOM = "Zooming the flash head long narrows its beam, which puts more light in the middle and raises the guide number."
_WORN = "A modifier spreads the flash and swallows part of it, so less of it reaches the subject; the ambient light does not change with it."
_BOUNCE = "Bounced light goes a longer way and the surface swallows part of it, so less of it reaches the subject; the ambient light does not change with it."
_FILTER = "A filter on the lens acts on flash and ambient light alike."
_SECOND = "Light adds: a second equal flash gives a stop more of flash, and no more of the ambient light."
_BACK = "Each thing is lit by its own distance from the flash: the farther the background, the less flash it gets; the subject's exposure stays."
_TONE = "A guide number gives the light that falls on the subject, so manual flash exposure is the same for a white and a black subject."
_FORMAT = "At the same f-number and film speed the format does not matter: the light on each spot of the film is the same."
_PUSH = "Pushing gives less exposure and more development: contrast and grain go up, and the shadows lose detail. Pulling does the opposite."
_DRAW = "The farther the lens is from the film, the less light reaches it, flash and ambient alike: two stops at life size."
_LONG = "Reciprocity failure comes with exposures of about a second and longer; a flash is far too short for it, so only the ambient part is concerned."
_RIM = "A light from behind adds nothing to the side that the camera sees, so it is left out of the sum for the face."
_REAR = "Rear-curtain sync only moves the flash to the end of the exposure; how much light there is does not change."
_FILL = "The more fill, the lighter the shadows, the smaller the ratio and the flatter the picture."
_KEY = "The stronger or the nearer the key beside the same fill, the larger the ratio and the deeper the shadows."
_SIZE = "Softness goes by how large the light looks from the subject: a bigger or a closer source gives softer shadows."
_LARGE = "It turns a small source into a large one, and a source that looks larger gives softer shadows."
_DEPTH = "A smaller opening, which is a larger f-number, gives more depth of field."
_LIGHTS_OWN = "That belongs to the lights, and the setting of the camera does not change it."
_NOT_DEPTH = "Depth of field goes by aperture, focal length, distance and format, not by the light."

INFLUENCES: tuple[Influence, ...] = (
    # shutter: a longer time, within sync
    Influence("shutter", MORE, "ambient behind balance", _TIME, NAVY),
    Influence("shutter", NONE, "flash guide_number reach", _TIME, NAVY),
    Influence("shutter", NONE, "depth", _NOT_DEPTH, NAVY),
    Influence("shutter", NONE, _LAMP, _LIGHTS_OWN),
    # aperture: opened
    Influence("aperture", MORE, "flash ambient behind reach", _STOP, NAVY),
    Influence("aperture", LESS, "depth", _DEPTH, NAVY),
    Influence("aperture", NONE, "balance", _STOP, NAVY),
    Influence("aperture", NONE, "guide_number", "The guide number is f-number times distance: a change of aperture changes the distance, and not the number.", NAVY),
    Influence("aperture", NONE, _LAMP + " sync", _LIGHTS_OWN),
    # film speed: faster
    Influence("film_speed", MORE, "flash ambient behind reach guide_number", _FILM, "ISO 1230:1992, Photography: determination of flash guide numbers"),
    Influence("film_speed", MORE, "grain", "Faster film has coarser grain."),
    Influence("film_speed", NONE, "balance", _FILM, LIGHT),
    Influence("film_speed", NONE, "depth", _NOT_DEPTH, NAVY),
    Influence("film_speed", NONE, _LAMP + " sync", _LIGHTS_OWN),
    # flash power: more
    Influence("power", MORE, "flash reach guide_number balance", _POWER, NAVY),
    Influence("power", NONE, "ambient behind", _POWER, NAVY),
    Influence("power", NONE, "depth", _NOT_DEPTH, NAVY),
    Influence("power", NONE, "softness falloff", "Power changes how bright the light is, and neither how soft nor how fast it falls off: those go by its size and its distance."),
    Influence("power", MORE, "duration", _SHORTER),
    Influence("power", LESS, "freeze", _SHORTER),
    Influence("power", MORE, "recycle", "What the flash did not use stays in the capacitor, so the less power, the sooner it is ready again."),
    Influence("power", LESS, "pops", "The less power, the less energy each pop takes, so the more pops from one set of batteries."),
    Influence("power", NONE, "sync", "The sync speed belongs to the shutter."),
    # the flash: farther from the subject
    Influence("flash_distance", LESS, "flash", _FAR, NAVY),
    Influence("flash_distance", LESS, "balance", _FAR, NAVY),
    Influence("flash_distance", NONE, "ambient", _FAR, LIGHT),
    Influence("flash_distance", NONE, "guide_number", "The guide number is f-number times distance: farther off the f-number falls, and the guide number stays.", NAVY),
    Influence("flash_distance", NONE, "depth", _NOT_DEPTH, NAVY),
    Influence("flash_distance", NONE, "duration recycle pops sync", "The distance changes how much light arrives, and nothing inside the flash."),
    Influence("flash_distance", LESS, "falloff", "The farther the light, the less the depth of a group matters beside its distance, so the rows come out more even.", LIGHT),
    Influence("flash_distance", LESS, "softness", "From farther away a light looks smaller, so its shadows get harder."),
    # the camera: farther from the subject
    Influence("camera_distance", NONE, "flash ambient behind guide_number balance", _STAND, NAVY),
    Influence("camera_distance", NONE, _LAMP + " sync", _STAND),
    Influence("camera_distance", MORE, "depth", "Focused farther off the same lens and aperture give more depth of field.", NAVY),
    # the lens: longer, at the same f-number
    Influence("focal_length", NONE, "flash ambient behind guide_number balance reach", _LENS, LIGHT),
    Influence("focal_length", NONE, _LAMP + " sync", _LIGHTS_OWN),
    Influence("focal_length", LESS, "depth", "At the same distance and f-number a longer lens gives less depth of field.", NAVY),
    # the zoom of the flash head: longer
    Influence("head_zoom", MORE, "flash reach guide_number balance", _ZOOM),
    Influence("head_zoom", NONE, "ambient", "The zoom of the head acts on the flash alone; the ambient light does not change with it."),
    Influence("head_zoom", NONE, "depth", _NOT_DEPTH, NAVY),
    Influence("head_zoom", NONE, "duration recycle pops sync", "Zooming moves the tube in its reflector; how long the flash burns and what it takes from the batteries stay."),
    # what stands before the flash, and bounce
    Influence("modifier", LESS, "flash reach guide_number", _WORN, ARMY),
    Influence("modifier", NONE, "ambient", _WORN),
    Influence("modifier", NONE, "depth", _NOT_DEPTH, NAVY),
    Influence("modifier", NONE, "duration recycle pops sync", "What stands before the flash changes nothing inside it."),
    Influence("spreader", MORE, "softness", _LARGE),
    Influence("size", MORE, "softness", _SIZE),
    Influence("size", NONE, "ambient", "The size of the light changes nothing of the ambient light."),
    Influence("bounce", LESS, "flash reach guide_number", _BOUNCE, NAVY),
    Influence("bounce", NONE, "ambient", _BOUNCE),
    Influence("bounce", MORE, "softness", _LARGE, NAVY),
    Influence("bounce", NONE, "depth", _NOT_DEPTH, NAVY),
    Influence("bounce", NONE, "duration recycle pops sync", "Where the light goes changes nothing inside the flash."),
    # on the lens
    Influence("filter", LESS, "flash ambient behind reach", _FILTER, "Filter factor"),
    Influence("filter", NONE, "balance", _FILTER, "Filter factor"),
    Influence("filter", NONE, "depth", "At the same f-number a filter changes no depth of field; it may let you open up, and that does."),
    Influence("filter", NONE, _LAMP + " sync", _LIGHTS_OWN),
    Influence("bellows", LESS, "flash ambient behind reach", _DRAW, NAVY),
    Influence("bellows", NONE, "balance", _DRAW, NAVY),
    Influence("bellows", NONE, _LAMP + " sync", _LIGHTS_OWN),
    # lights beside the first
    Influence("second", MORE, "flash reach guide_number balance", _SECOND, LIGHT),
    Influence("second", NONE, "ambient", _SECOND, LIGHT),
    Influence("second", NONE, "depth", _NOT_DEPTH, NAVY),
    Influence("second", NONE, "duration recycle sync", "Each flash burns and charges by itself."),
    Influence("rim", NONE, "flash ambient", _RIM),
    Influence("rim", NONE, "ratio", "The ratio is that of key and fill on the face; a light from behind has no part in it."),
    Influence("fill", MORE, "shadows", _FILL, ARMY),
    Influence("fill", LESS, "ratio contrast", _FILL, ARMY),
    Influence("fill", NONE, "ambient", _POWER),
    Influence("key", MORE, "flash ratio contrast", _KEY, ARMY),
    Influence("key", NONE, "ambient", _POWER),
    # the scene
    Influence("background", NONE, "flash ambient", _BACK, LIGHT),
    Influence("background", LESS, "backdrop", _BACK, LIGHT),
    Influence("tone", NONE, "flash guide_number", _TONE),
    Influence("format", NONE, "flash ambient guide_number reach", _FORMAT, LIGHT),
    Influence("format", NONE, _LAMP, _LIGHTS_OWN),
    # film and time
    Influence("push", MORE, "contrast grain", _PUSH),
    Influence("push", NONE, _LAMP + " sync", "Development changes nothing of the light that was there."),
    Influence("reciprocity", LESS, "ambient behind", _LONG, "Reciprocity (photography)"),
    Influence("reciprocity", NONE, "flash", _LONG, "Reciprocity (photography)"),
    Influence("curtain", NONE, "flash ambient behind guide_number reach duration recycle", _REAR),
)

ONE_OF = {"spreader": "modifier"}
"""A cause that has the cells of another beside its own."""


@cache
def cells(cause: str) -> dict[str, Influence]:
    """A cause's row of the matrix: its influence on each effect that it has a cell for."""
    row = cells(ONE_OF[cause]) if cause in ONE_OF else {}
    return row | {effect: one for one in INFLUENCES if one.cause == cause for effect in one.effects.split()}


@lru_cache(maxsize=2)
def judge_influence(text: str) -> Verdict | None:
    """The verdict on a claim that something changes, or does not change, something else: asked when it is read, and when it is judged.

    None where no cause, more than one, or no effect is named, where a pair depends on the case, and where
    figures are claimed.

    >>> judge_influence("does a slower shutter brighten the flash?").holds
    False
    >>> judge_influence("does a slower shutter brighten the background?").holds
    True
    >>> judge_influence("does a slower shutter suit my boat?") is None
    True
    """
    said = read(plain(text))
    if said is None:
        return None
    row = cells(said.cause)
    judged = [_judge(row, said, told) for told in said.told]
    if not judged or (None in judged and (said.turned or False not in judged)):
        return None  # one part that is wrong makes the whole wrong, whatever the others are
    holds = all(judged) != said.turned
    return Verdict(holds, 0.0, _why(row, said, judged), "")


def _way(row: dict[str, Influence], effect: str) -> int | None:
    """What more of the cause does to an effect; "exposure" is flash and ambient light where they agree, else the flash's."""
    if effect != "exposure":
        return row[effect].way if effect in row else None
    if "flash" not in row:
        return None
    flash = row["flash"].way
    ambient = row["ambient"].way if "ambient" in row else flash
    return flash if flash == ambient or ambient == NONE else None


def _judge(row: dict[str, Influence], said: Saying, told: Told) -> bool | None:
    """Whether one thing that is said of an effect holds; None where the table does not decide, and where it hangs on how much."""
    way = _way(row, told.effect)
    if told.effect == "depth" and told.figured and way and said.way and told.says in ("more", "less") and way * said.way != (MORE if told.says == "more" else LESS):
        return told.denied  # "stopping down halves the depth of field": the wrong way, by however much
    if way is None or told.says == "sized" or (told.figured and (way != NONE or said.way == 0)):
        return None
    if told.says == "change":
        holds = way != NONE
    elif told.says == "same":
        holds = way == NONE
    elif way != NONE and said.way == 0:
        return None
    else:
        holds = way * said.way == (MORE if told.says == "more" else LESS)
    return holds != told.denied


def _why(row: dict[str, Influence], said: Saying, judged: list[bool | None]) -> str:
    """The reason of the first part that does not hold, else of the first."""
    at = judged.index(False) if False in judged else 0
    effect = said.told[at].effect
    return row[effect if effect in row else "flash"].sentence

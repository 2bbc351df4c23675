"""What zooming gains or loses, asked of other settings of the head: "and from 85 to 24, where it's 28 m?", "and back to 35?"."""

from __future__ import annotations

import math

from assistant.memory.anew import instead
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.units import LENGTH

_GUIDES = frozenset({"distance", "guide_number"})


def zoom_anew(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """The settings that are told now in the place of those before, with the guide number of one that is new; what is no row of the table has no place."""
    rows = [f for f in scene.facts if f.quantity == "zoom_row"]
    if len(rows) < 2 or query.asks or not scene.asks or scene.asks[0].quantity != "stops" or not query.facts:
        return query, scene
    settings, guides = _told(query)
    if not 1 <= len(settings) <= 2 or len(guides) > 1:
        return query, scene
    known = {f.other for f in rows}
    fresh = [mm for mm in settings if mm not in known]
    before = [f for f in scene.facts if f.quantity == "zoom"]
    estimated = [mm for mm in fresh if not guides and min(known) < mm < max(known)]
    if len(fresh) != len(guides) + len(estimated) or len(settings) == 1 and not before:
        return replace(query, facts=tuple(replace(f, quantity="number", of="") for f in query.facts)), scene
    ends = settings if len(settings) == 2 else [before[0].value, *settings]
    new = [replace(rows[0], value=guide, other=mm, said=f"{mm:g} mm {guide:g}", origin="said", start=0, end=0) for mm, guide in zip(fresh, guides, strict=False)]
    zooms = [Fact("zoom", mm, "mm", said=f"{mm:g}", cue=cue) for mm, cue in zip(ends, ("from", "to"), strict=True)]
    return instead(replace(query, cues=query.cues - {"path", "down", "up"}), scene, [*rows, *new, *zooms], [*rows, *before])


def _told(query: Query) -> tuple[list[float], list[float]]:
    """The settings in millimetres and the guide numbers that a half-sentence tells, in their order; none where it tells anything else."""
    settings: list[float] = []
    guides: list[float] = []
    for fact in sorted(query.facts, key=lambda f: f.start):
        if fact.quantity == "number_range":
            settings += [fact.value, fact.other]
        elif fact.quantity == "focal_length":
            settings.append(round(fact.value * 1000, 6))
        elif fact.quantity in _GUIDES:
            guides.append(fact.value / (LENGTH.get(fact.unit, 1.0) if fact.quantity == "distance" else 1.0))
        elif fact.quantity == "zoom_row" and not math.isnan(fact.other):
            settings.append(fact.other)
            guides.append(fact.value)
        elif fact.quantity in ("number", "zoom"):
            (guides if settings and fact.quantity == "number" else settings).append(fact.value)
        else:
            return [], []
    return settings, guides

"""The kit: what a person told once and keeps until they change it.

Facts about flashes (by name), the lens, the camera, the film and the room. The kit outlives
the conversation; numbers inside a question do not become kit.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import record, replace
from assistant.solving.new_film import newly_loaded

FLASH = frozenset({"guide_number", "min_power", "power_steps", "energy", "loss", "recycle", "only_powers"})
CAMERA = frozenset({"film_speed", "widest_aperture", "smallest_aperture", "aperture_range", "sync", "max_distance", "min_distance", "focal_length", "max_film_speed", "max_count",
                    "format", "preferred_unit", "rated", "push", "ring", "stock"})
_WITH_FLASH = Pattern(r"(?<!no )(?<!without )(?<!without the )\b(?:flash|strobe|speedlight)\b(?!(?: is| stays)?(?: switched| turned)? off\b)", re.I)


@record
class Kit:
    """Everything known of the gear; `names` are the lights with a name of their own."""

    facts: tuple[Fact, ...] = ()
    names: tuple[str, ...] = ()

    def with_facts(self, facts: Iterable[Fact]) -> Kit:
        """The kit with these facts told; a later value replaces an earlier one."""
        kept = list(self.facts)
        for fact in facts:
            kept = [k for k in kept if (k.quantity, k.of) != (fact.quantity, fact.of)]
            kept.append(replace(fact, origin="kit", start=0, end=0))
        return replace(self, facts=tuple(kept))

    def named(self, name: str, of: str = "") -> Kit:
        """The flash told as `of` is called `name` from now on."""
        facts = tuple(replace(f, of=name) if f.of == of and f.quantity in FLASH else f for f in self.facts)
        return Kit(facts, (*(n for n in self.names if n not in (name, of)), name))

    def without(self, name: str) -> Kit:
        """The kit without one flash."""
        return Kit(tuple(f for f in self.facts if f.of != name), tuple(n for n in self.names if n != name))

    def flashes(self) -> list[str]:
        """The flashes it holds, "" for one without a name."""
        return list(dict.fromkeys([f.of for f in self.facts if f.quantity == "guide_number"])) if self.facts else []

    def bounds_the_time(self, query: Query) -> bool:
        """Whether a time is asked for a shot with flash, and the sync speed is known."""
        return any(f.quantity == "sync" for f in self.facts) and query.asks_for("shutter") and _WITH_FLASH.search(query.text) is not None

    def for_scene(self, query: Query, named: set[str]) -> list[Fact]:
        """The facts that bear on a scene: the camera's, and those of the flashes it names.

        With one flash only, that flash is meant; with several, the scene must name them.
        """
        flashes = self.flashes()
        said = {(f.quantity, f.of) for f in query.facts}
        out: list[Fact] = []
        for fact in self.facts:
            if fact.of in ("", "film", "camera") and (fact.quantity in CAMERA or not flashes):
                mine: Fact | None = fact
            elif fact.of in named:
                mine = fact
            elif len(flashes) == 1 and fact.of == flashes[0] and not named & set(flashes):
                mine = replace(fact, of="")
            else:
                mine = None
            if mine and (mine.quantity, mine.of) not in said and (mine.quantity, "") not in said:
                out.append(mine)
            elif mine and mine.quantity == "film_speed" and newly_loaded(query) is not None:
                out.append(replace(mine, origin="kept"))  # what was read was read on the film there is, for the next questions too
        return out

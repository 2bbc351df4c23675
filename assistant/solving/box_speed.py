"""The box speed behind a rating: the push, the pull or the habit taken back again."""

from __future__ import annotations

import re

from assistant.patterns import Pattern
from assistant.query import Ask, Fact, Query
from assistant.scales import speak_stops
from assistant.solving import marks
from assistant.solving.reciprocity import done
from assistant.solving.solution import Solution, needs

_BOX_ASKED = Pattern(r"\b(?:what|which)\b[^?.]{0,24}\bbox\b|\bbox speed\W*\?|\bon (?:the|its) (?:box|carton|tin|cassette)\W*\?", re.I)
_TRUE_ASKED = Pattern(r"\b(?:what|which)\b[^?.]{0,30}\b(?:true|real|actual) (?:film )?speed\b|\bwhat speed\b[^?.]{0,20}\b(?:really|actually|truly)\b", re.I)
_METERED_AT = Pattern(r"\b(?:meter|rat|expos|shoot|shot|set)\w*\b[^.?!;]{0,20}\b(?:at|to|for|as) (?:iso |asa )?\d", re.I)
_MOVED_TO = Pattern(r"\bpu(?:sh|ll)ed to (?:iso |asa )?\d", re.I)
_OWN_ASKED = Pattern(r"\bwhat(?:'s| is| was) (?:its|the|the film's|that film's)(?: own| normal| usual| nominal)? speed\b(?! (?:to|i|should))|\b(?:what|which) (?:film|stock) (?:is|was) it\b", re.I)
""""Pulled to 100": where it was metered, so that its own speed can be asked."""
_EXTRA = Pattern(r"\b(?:over\w*|extra|more|additional|too dense|generous\w*)\b", re.I)
_SHORT = Pattern(r"\b(?:under\w*|less|short)\b", re.I)
_BOX_TOLD = Pattern(r"\bbox(?: speed)?(?: says| is| reads| of|:)? (?:iso )?\d|\d+ (?:on|by) the box\b", re.I)


_SO_THAT = Pattern(r"\b(?:what|which)\b[^.?!]*\b(?:than|over|under|above|below) (?:the |its |my )?box(?: speed)?\b", re.I)
"""What the rating is to bring about, counted from the box: the box is known."""


def behind(query: Query, said: Fact, ask: Ask) -> Solution | None:
    """"pushed two stops and metered at 1600: what box speed was it": the push or the habit taken back again."""
    moved = [f for f in query.facts if f.quantity in ("push", "stops", "relation", "signed")]
    if len(moved) != 1 or len(query.all("film_speed") + query.all("rated")) != 1 or _SO_THAT.search(query.text) or ask.of != "box" and not _BOX_ASKED.search(query.text) and not (_TRUE_ASKED.search(query.text) and _METERED_AT.search(query.text)) and not (_MOVED_TO.search(query.text) and _OWN_ASKED.search(query.text)) or _BOX_TOLD.search(query.text):
        return None
    if moved[0].quantity == "push":
        faster = moved[0].value
    elif moved[0].cue in ("less", "more") or moved[0].unit in ("+", "-"):
        faster = abs(moved[0].value) * (-1 if moved[0].cue == "more" or moved[0].unit == "+" else 1)
    elif (more := _EXTRA.search(query.text) is not None) is not (_SHORT.search(query.text) is not None):
        faster = abs(moved[0].value) * (-1 if more else 1)
    else:
        return needs(("stops",), "I need to know whether that was more exposure than by the box, or less.", (said, moved[0]), "film")
    return done((marks.film_speed(said.value / 2.0**faster),), said, moved[0], notes=(f"Rated at ISO {said.value:g} it was exposed {speak_stops(abs(faster))} {'less' if faster > 0 else 'more'} than by the box.",))

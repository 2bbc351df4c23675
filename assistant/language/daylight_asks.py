"""What is asked of the light that is there, where the quantity is not named or named by another word."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant import patterns
from assistant.language.ambient_words import AMBIENT, OF_FLASH
from assistant.patterns import Pattern
from assistant.query import Ask, Fact
from assistant.records import replace

_WHAT_AT = Pattern(r"\bin terms of f|\bwhat(?:'s|s| is| would) (?:it|that)(?: be)? (?:at|on|for)\b|\bwhat (?:does|do|would|will) (?:it|that|this|i|the \w+) (?:be|need|want|take|come to|become|get)(?: then)? (?:at|on|for)\b|\bwhat (?:at|on) (?:1/\d|f\W?\d)", re.I)
_EV_AT = Pattern(r"\b(?:ev|e v|exposure value|light value)s? (?:at|for|on)\b(?!.*\d\W+(?:at|for|on)\b)|\b(?:is|equals|makes|gives) what (?:at|on|for)\b", re.I)
_AND_AT = Pattern(r"(?:[.,;?]|\band\b|\bso\b)\s*(?:and )?(?:at|for|now)\s+(?:f\W?\d[\d.]*|1/\d+|\d+ ?s\w*)\W*$|\b(?:if|when) i (?:use|go to|open (?:up )?to|close (?:down )?to|stop down to|set|shoot(?: at)?|am at) (?:f\W?\d[\d.]*|1/\d+)\W*$", re.I)
_ON_ONE_FACE = Pattern(r"\bboth\b|\btogether\b|\bthe two\b|\bcombined\b|\btotal\b|\bsum\b|\badd(?:s|ed)?\b|\bsame (?:face|subject|side|spot)\b|\bon top\b|\bplus\b|\boverlap", re.I)


def implied(text: str, facts: Sequence[Fact]) -> list[Ask]:
    """What is asked of the light that is there without naming it: "what's that at 1/500?"."""
    kinds = [f.quantity for f in facts if f.quantity in ("aperture", "shutter")]
    if len(kinds) == 3 and len(set(kinds)) == 2 and _AND_AT.search(text) and not OF_FLASH.search(text):
        return [Ask("aperture" if kinds.count("shutter") == 2 else "shutter")]
    if patterns.search(r"\b(?:what|which) (?:exposure value|ev|light value)\b|(?:^|[,.;:?!]\s*)(?:the )?(?:exposure value|ev|e v) (?:at|for)\b|\b(?:as|in|into) (?:an )?(?:exposure value|ev|e v)\b", text, re.I) and kinds:
        return [Ask("exposure_value")]
    if not kinds and [f.quantity for f in facts] == ["exposure_value", "film_speed"] and facts[0].at_iso and facts[1].value == 100 and (_EV_AT.search(text) or _WHAT_AT.search(text)):
        return [Ask("exposure_value")]
    if _WHAT_AT.search(text) and len(kinds) == 3 and len(set(kinds)) == 2 and not OF_FLASH.search(text):
        return [Ask("aperture" if kinds.count("shutter") == 2 else "shutter")]
    if patterns.search(r"\bequivalent|\b(?:equals?|is|becomes?|makes?|gives?|means) what\b|what(?:'s| is| would) that|same exposure|what (?:do|should) i (?:set|use|go to)|\bwhat now\b", text, re.I) and len(kinds) == 3 and len(set(kinds)) == 2:
        return [Ask("aperture" if kinds.count("shutter") == 2 else "shutter")]
    if len(kinds) == 1 and patterns.search(r"\bsunny.?(?:16|sixteen)\b", text, re.I) and any(f.quantity == "film_speed" for f in facts):
        return [Ask("shutter" if kinds == ["aperture"] else "aperture")]
    if kinds == ["aperture", "aperture"] and any(f.of == "ambient" for f in facts) and OF_FLASH.search(text) and _ON_ONE_FACE.search(text):
        return [Ask("aperture")]
    if patterns.search(r"what (?:must|should|does|would|will|has) (?:the |my |a )?(?:flash|fill|strobe)(?: flash| light)?(?: alone| by itself| on its own| itself)? (?:need to |have to |to )?(?:read|give|be|meter|show)", text, re.I) and kinds:
        return [Ask("aperture")]
    if len(facts) == 2 and {f.quantity for f in facts} in ({"power", "relation"}, {"power", "stops"}) and _LEVEL_THEN.search(text):
        return [Ask("power")]
    if kinds == ["aperture", "aperture"] and len(facts) == 2 and any(f.of == "ambient" for f in facts) and _UNDER_BY.search(text):
        return [Ask("stops")]
    if _WHAT_TIME.search(text) and any(f.of == "ambient" for f in facts) and any(f.quantity == "aperture" and f.of == "" for f in facts):
        return [Ask("shutter")]
    settings = [f for f in facts if f.quantity in ("aperture", "shutter")]
    if len(settings) == 1 and sum(f.quantity == "exposure_value" for f in facts) == 2 and _WHAT_IS_IT_NOW.search(text):
        return [Ask(settings[0].quantity)]
    if sorted(kinds) == ["aperture", "shutter"] and not any(f.quantity == "film_speed" for f in facts) and _WHICH_FILM.search(text) and _A_SKY.search(text):
        return [Ask("film_speed")]
    return _under_now(text, facts) or _the_open_one(text, facts)


_WHICH_FILM = Pattern(r"\b(?:which|what) (?:film|roll|stock|emulsion)\b(?! (?:size|format|brand|type|is best|suits))", re.I)
_A_SKY = Pattern(r"\b(?:sun|sunny|sunshine|overcast|shade|snow|hazy|cloud\w*)\b", re.I)
_WHAT_IS_IT_NOW = Pattern(r"\bwhat (?:must|should|does|will|would|has) (?:it|that) (?:now )?(?:to )?be(?:come)?\b|\bwhat is it now\b", re.I)
_WHAT_TIME = Pattern(r"\b(?:what|which) (?:exposure )?time\b(?! (?:of|is it|do we))", re.I)


_LEVEL_THEN = Pattern(rf"\b(?:level with|equal to|equals|match(?:es)?|same as|as bright as) (?:the |my )?(?:{AMBIENT}|key|main)\b[^.?!]*[.?!,;]\s*(?:and |so |then |now |what about |for )?[\w ]{{1,20}}\b(?:under|over|below|above|down|less)(?: it| that| the \w+)?\s*\?\W*$", re.I)
"""A power that makes the flash as bright, and at the end so many stops from there: the power is what changes."""
_SLOWEST = Pattern(r"\b(?:slowest|fastest|longest|shortest|quickest|briefest) (?:shutter|time|speed|exposure|(?:that |which )?(?:i|we|you|one) (?:can|may|could|should|might|dare) (?:hold|keep|leave|have|let|open|expose)|(?:it|the shutter|the lens) (?:can|may|could|should))\b", re.I)
_WHICH_SHUTTER = Pattern(r"\b(?:what|which|whats|what's the) shutter(?: speed| time)? (?:at|for|with|on) f?\W?\d", re.I)
_WISH = Pattern(r"\b(?:want|make|need|like|rather have)\b", re.I)


def _under_now(text: str, facts: Sequence[Fact]) -> list[Ask]:
    """"three under at 1/125, what's it at 1/30", "two over, want it one under, I'm at 1/60": no reading, only what came out."""
    kinds = [f.quantity for f in facts if f.quantity in ("aperture", "shutter")]
    out = [f for f in facts if f.quantity in ("relation", "stops") and f.cue in ("less", "more") and f.of in ("", "ambient", "backdrop", "background")]
    if len(out) == 1 and len(kinds) == 2 and len(set(kinds)) == 1 and len(facts) == 3 and _WHAT_AT.search(text):
        return [Ask("stops")]
    if len(out) == 2 and kinds == ["shutter"] and len(facts) == 3 and _WISH.search(text[out[0].end : out[1].start]):
        return [Ask("shutter")]
    return [Ask("shutter")] if (_SLOWEST.search(text) or _WHICH_SHUTTER.search(text)) and "shutter" not in {f.quantity for f in facts if f.of != "ambient"} and any(f.of == "ambient" or f.quantity == "exposure_value" for f in facts) else []


_LENS_TO = Pattern(r"\b(?:what|where|which mark) (?:would|must|should|does|do|will|has|is)(?: i (?:set|turn|put|move|bring|close|open))? (?:the |my )?(?:lens|ring|iris|aperture)(?: then| now)? ?(?:have to|need to|want to|got to)? ?(?:be|go|sit|stand|come)?(?: set| turned| down| up)?(?: on| at| to| for)?\b|\bf\W{0,2}what\b|\bwhat f\b|\b(?:lens|ring|iris|aperture) (?:then |now |has to |should |must )?(?:goes|go|comes?|sits?|stands?|be|is|set|stays?)?(?: down| up)?(?: to| at| on| where| what)*\W*\?|\b(?:open|stop|close)(?: up| down)? to (?:what|where)\b", re.I)
_TIME_SO = Pattern(r"\bhow slow\b|\bhow fast a shutter\b|(?:^|[.,;:?!]\s*|\b(?:so|and|what|the) )(?:shutter(?: speed| time)?|exposure time|time)\s*(?:so (?:that|the)|that (?:puts|gets|leaves|keeps|drops|makes)|to (?:get|put|keep|drop|leave|make|have|bring)|for (?:the|it|that))\b", re.I)


_TIME_LAST = Pattern(r"(?:[.,;:?!]|\b(?:what|which|so|and|then|the|new))\s*(?:exposure|time|shutter|exposure time|seconds)\W*$", re.I)
_UNDER_BY = Pattern(r"\b(?:under|over|down|darker|brighter|off) by(?: what| how much| how many(?: stops)?)?\W*$", re.I)
_WISHED = Pattern(rf"\bi(?:'d| would)? (?:want|like|need|prefer)\b[^.?!]{{0,20}}\b(?:{AMBIENT})\b", re.I)
"""A wish, with the aperture told: the time is what it takes."""


def _the_open_one(text: str, facts: Sequence[Fact]) -> list[Ask]:
    """"it reads 1/125 at f/8, I sync at 1/60, so the lens goes to?": of aperture and time the one that is left open."""
    read = {f.quantity for f in facts if f.of == "ambient" and f.quantity in ("aperture", "shutter")}
    own = {f.quantity for f in facts if f.quantity in ("aperture", "shutter", "sync") and f.of != "ambient"}
    if len(read) < 2 and "exposure_value" not in [f.quantity for f in facts]:
        return []
    if own >= {"aperture", "shutter"} and not any(f.quantity == "film_speed" for f in facts) and patterns.search(r"\b(?:which|what) (?:film|roll|stock)\b", text, re.I):
        return [Ask("film_speed")]
    if read == {"aperture", "shutter"} and own and _UNDER_BY.search(text):
        return [Ask("stops")]
    if "aperture" not in own and own and _LENS_TO.search(text):
        return [Ask("aperture")]
    wished = own == {"aperture"} and any(f.quantity == "relation" and f.of == "ambient" for f in facts) and _WISHED.search(text)
    return [Ask("shutter")] if "shutter" not in own and (_TIME_SO.search(text) or wished or (own == {"aperture"} or any(f.quantity in ("relation", "stops") for f in facts)) and _TIME_LAST.search(text)) else []


_SECONDS = Pattern(r"\bhow many (?:full |whole )?(?:seconds?|secs?|minutes?|mins?)\b", re.I)
_LANDS = Pattern(rf"\bwhere (?:does|do|will|would) (?:the |my )?(?:\w+ )?(?:{AMBIENT})\b[^.?,]{{0,16}}\b(?:land|fall|sit|lie|end up|come out|go)\b", re.I)


def _is_timed(facts: Sequence[Fact]) -> bool:
    """Whether "how many seconds" is an exposure: a time or a light told, and no flash that recycles."""
    kinds = {f.quantity for f in facts}
    return bool(kinds & {"aperture", "film_speed"}) and bool(kinds & {"shutter", "exposure_value"}) and not kinds & {"guide_number", "distance", "recycle", "energy", "interval"}


def _by_another_word(ask: Ask, facts: Sequence[Fact], text: str) -> Ask:
    """""which speed" is a shutter time, and "where does the room land" are stops, beside a reading."""
    if ask.quantity == "speed" and any(f.quantity == "aperture" and f.of == "" for f in facts) and not any(f.quantity == "shutter" and f.of != "ambient" for f in facts):
        return replace(ask, quantity="shutter")
    return replace(ask, quantity="stops", unit="") if ask.quantity == "distance" and _LANDS.search(text) else ask


_HOW_FAR_DOWN = Pattern(rf"\bhow far\b[^?.]{{0,40}}\b(?:below|under|beneath|over|above|short of) (?:the )?(?:normal|correct|proper|right|metered|its reading|reading)\b|\bhow (?:far|much) (?:down|lower|below|under)\b[^.?]*\b(?:{AMBIENT})\b", re.I)


_WOULD_READ = Pattern(r"\bwhat (?:would|does|will|should|must) (?:it|the (?:light|meter|sun|sky|reading|daylight)) (?:then |now |by itself )?(?:read|meter|show|say)\b", re.I)
_BOTH_READ = Pattern(r"\bwhat (?:do|does|will|would|should|must) (?:the (?:two|pair|both)|both|they|it all|the sum)(?: of them)?(?: together| combined| in all)? (?:read|meter|give|make|come to|amount to|show)\b", re.I)


def asked(asks: Sequence[Ask], facts: Sequence[Fact], text: str) -> list[Ask]:
    """"How far down is the room?": stops, where a reading of it is given."""
    if [a.quantity for a in asks] in ([], ["stops"]) and _WOULD_READ.search(text) and any(f.quantity == "aperture" and f.of == "ambient" for f in facts):
        return [Ask("aperture")]
    if [a.quantity for a in asks] == ["shutter"] and _BOTH_READ.search(text) and sorted(f.of for f in facts if f.quantity == "aperture") == ["", "ambient"]:
        return [Ask("aperture", "both")]
    if len(asks) == 1 and asks[0].quantity == "speed" and {f.quantity for f in facts} <= {"shutter", "stops", "relation", "aperture", "nd", "widest_aperture", "smallest_aperture", "remark"} and any(f.quantity == "shutter" for f in facts):
        return [replace(asks[0], quantity="shutter")]  # "I'm on 1/60 and want two stops more. what speed?"
    if len(asks) == 1 and asks[0].quantity == "speed" and {"film_speed", "aperture"} <= {f.quantity for f in facts} <= {"film_speed", "aperture", "sync", "exposure_value", "relation", "stops", "nd"}:
        return [replace(asks[0], quantity="shutter")]  # the film's speed is told
    if asks and asks[0].quantity in ("power", "distance") and patterns.search(r"\bin stops\b", text, re.I):
        return [replace(asks[0], quantity="stops"), *asks[1:]]
    read = [f for f in facts if f.quantity == "exposure_value" or f.of == "ambient" and f.quantity in ("aperture", "shutter")]
    if "count" in [a.quantity for a in asks] and _SECONDS.search(text) and _is_timed(facts):
        asks = [replace(a, quantity="shutter", unit="") if a.quantity == "count" else a for a in asks]
    if read:
        asks = list({a.quantity: a for a in reversed([_by_another_word(a, facts, text) for a in asks])}.values())[::-1]
    down = read and _HOW_FAR_DOWN.search(text)
    return [replace(a, quantity="stops") if a.quantity in ("power", "distance") else a for a in asks] if down else list(asks)

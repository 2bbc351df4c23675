"""Which of the things in the way are on before a change, and which after it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import record
from assistant.solving.taken_off import is_taken_off

BEFORE, AFTER, BOTH = "before", "after", "both"

_REACH = 40
"""Letters between a thing and the figure of what it loses: "my softbox, which eats 1.7 stops"."""
_SWAPS = Pattern(r"\b(?:swap(?:s|p?ed|p?ing)?|exchang\w+|trad(?:e|ed|ing)|replac\w+|chang(?:e|es|ed|ing)|switch(?:ed|es|ing)?|go(?:ing)?|went)\b(?: over)?(?: from)?[^.?!;]{0,24}$", re.I)
"""Right before what goes."""
_FOR = Pattern(r"(?:(?:,? (?:(?:which|that) )?\w+ #,?)|[ ,(]*#[ ,)]*)?\W*(?:for|with|by|to|onto|into)(?: (?:the|my|a|an|that))?(?: [\w-]+)?\W*", re.I)
_IS_SWAPPED = Pattern(r"(?:(?:,? (?:which|that) \w+ #,?)|[ ,(]*#[ ,)]*)?\W*(?:(?:is|was|gets|got|has been|is being|being|comes off and is) (?:swapped|exchanged|replaced|traded|changed|switched)(?: over| out)? (?:for|by|with|to)|gives way to|gave way to|makes (?:way|room) for|comes off (?:for|and)|came off (?:for|and))(?: (?:the|my|a|an|that))?(?: [\w-]+)?\W*", re.I)
"""Between what goes and what takes its place: "the silk was replaced by a net"."""
_RATHER_THAN = Pattern(r"(?:,? (?:which|that) \w+ #,?)?\W*(?:instead of|in place of|rather than)(?: (?:the|my|a|an|that))?(?: \w+)?\W*", re.I)
_PUT_ON = Pattern(r"\b(?:add(?:s|ed|ing)?|put(?:s|ting)?(?: on| up)?|screw(?:s|ed|ing)?(?: on)?|clip(?:s|ped|ping)?(?: on)?|fit(?:s|ted|ting)?|hang(?:s|ing)?|hung|tap(?:e|es|ed|ing)|stick(?:ing)?|stuck|slip(?:ped|ping)?|mount(?:ed|ing)?|plus|now (?:through|with|wears|has)|wears|another|extra|to (?:full|half|a quarter|\S+) power with)\b(?: (?:on|up|in))?[^.?!;]{0,28}$", re.I)
_WITH_IT = Pattern(r"\W*(?:and|plus|with|under|over|behind)(?: also| then)?(?: (?:an?|the|my|its))? ", re.I)
"""Between two things that go on or come off together."""
_TAKEN_OFF = Pattern(r"\b(?:(?:take|takes|taking|took|pull(?:s|ed|ing)?|peel(?:s|ed|ing)?|whip(?:s|ped|ping)?|strip(?:s|ped|ping)?|unscrew(?:s|ed|ing)?)(?: off| away)?|remov(?:e|es|ed|ing)|without|ditch(?:ed|ing)?|los(?:e|ing)|drop(?:ped|ping)?|swap(?:ped|ping)? out)(?: (?:the|my|that|this|its|an?))?(?: [\w-]+)? ?$", re.I)
_OFF = Pattern(r" (?:is |was |comes |came |has |have |had |since |now |come |been |taken |pulled |gets )*(?:off|away|removed|gone|down(?= (?:from|again|now|off)\b|[.,;?!]))\b(?! (?:the|my|it|a|camera|axis|centre)\b)", re.I)
_ON = Pattern(r" (?:is |was |goes |went |gets |got |has |have |been |gone |now |stays |since |slipped |put |clipped |hung |screwed |fitted |mounted |taped |stuck )*(?:on|up|fitted|added|mounted|in front|over it)\b(?! (?:my|a|the (?!lamp|head|flash|light|lens|gun|strobe|bulb))\b)", re.I)
_IT_OFF = Pattern(r"\b(?:tak(?:e|en|ing)|took|pull\w*|peel\w*|whip\w*|strip\w*|unscrew\w*|slip\w*|lift\w*|com(?:e|es|ing)|came|is|was|goes) (?:it |that |this |them )?(?:back )?(?:off|away)\b|\b(?:it|that|which|they) (?:has |have |had |is |was |are |since |now |come |came |comes |been |taken )*(?:off|away|gone|removed)\b|\b(?:remov\w+|ditch\w*|unscrew\w*|dropp\w+) (?:it|that|them)\b", re.I)
_IT_ON = Pattern(r"\b(?:put|hung|hang\w*|clip\w*|screw\w*|slip\w*|fit\w*|tap\w*|mount\w*|stick|stuck) (?:it|that|this|them) (?:back )?(?:on|up|over)\b|\b(?:it|that|they) (?:goes|go|went|is|gets|has gone) (?:back )?on\b", re.I)
"""What is done with a thing that was named before."""


_IN_PLACE_OF = Pattern(r"\b(?:swap(?:s|p?ed|p?ing)?|exchang\w+|trad(?:e|ed|ing)|replac\w+|gives? way to|gave way to|makes? (?:way|room) for|instead of|in place of|rather than)\b", re.I)


def in_place_of_another(query: Query) -> bool:
    """Whether one of two things takes the other's place, so that their losses do not add."""
    return _IN_PLACE_OF.search(query.text) is not None and sum(f.quantity in ("loss", "filter_loss", "nd") for f in query.facts) == 2


@record
class Worn:
    """Something in the way: its loss in stops, when it is on, and the facts that say so."""

    loss: Fact
    when: str
    thing: Fact | None


def worn(query: Query) -> list[Worn] | None:
    """Everything in the way whose loss was told; None where it is not plain when each was on."""
    losses = [f for f in query.facts if f.quantity in ("loss", "filter_loss") or f.quantity == "nd"]
    things = [f for f in query.facts if f.quantity in ("modifier", "camera_filter") and f.unit != "BARE"]
    bare = any(f.unit == "BARE" for f in query.all("camera_filter"))
    found = _each_once([Worn(loss, "", _of_what(loss, things, losses, query.text)) for loss in losses], query.text)
    gone = _swapped(found, things, query.text)
    out: list[Worn] = []
    for one in found:
        if one.loss in gone:
            when = BEFORE if gone[one.loss] else AFTER
        else:
            when = _when(one, things, query, bare)
        if not when and out and out[-1].when == AFTER and _WITH_IT.fullmatch(query.text[out[-1].loss.end : (one.thing or one.loss).start]):
            when = AFTER
        if not when:
            return None
        out.append(Worn(one.loss, when, one.thing))
    return out


_ANOTHER = Pattern(r"\b(?:another|second|both|each|two(?! stops?)|extra|more|again|plus|on top)\b", re.I)


def _each_once(found: Sequence[Worn], text: str) -> list[Worn]:
    """Without what was told before of the same thing and as much: said again, not put on again."""
    out: list[Worn] = []
    for one in found:
        thing = one.thing
        again = thing is not None and any(w.thing is not None and w.thing.unit == thing.unit and w.loss.value == one.loss.value and _ANOTHER.search(text[w.loss.end : one.loss.end]) is None for w in out)
        if not again:
            out.append(one)
    return out


def _of_what(loss: Fact, things: Sequence[Fact], losses: Sequence[Fact], text: str) -> Fact | None:
    """The thing a loss was told of: the one right before it in the same clause, else the one after it."""
    if loss.quantity == "nd":
        return None
    named = next((t for t in things if t.unit == loss.unit and 0 <= t.start - loss.end <= 2), None)
    if named is not None:
        return named  # "a two-stop softbox"
    last = max((f.end for f in losses if f.end <= loss.start), default=0)
    before = [t for t in things if last <= t.start and t.end <= loss.start <= t.end + _REACH and not re.search(r"[.;?!]", text[t.end : loss.start])]
    if before:
        return before[-1]
    return next((t for t in things if t.start >= loss.start and t.unit == loss.unit), None)


def _names(unit: str, things: Sequence[Fact]) -> list[Fact]:
    return [t for t in things if t.unit == unit]


def _swapped(found: Sequence[Worn], things: Sequence[Fact], text: str) -> dict[Fact, bool]:
    """Of two things that change places, each one's loss, and whether it is the one that goes; a grey filter is a thing and its own loss."""
    own = [w.thing.unit for w in found if w.thing is not None]
    alike = frozenset(unit for unit in own if own.count(unit) > 1)  # "a net for a silk": both are scrims

    def key(thing: Fact) -> tuple[str, int]:
        return ("nd", thing.start) if thing.quantity == "nd" else (thing.unit, thing.start if thing.unit in alike else -1)

    owners = {key(w.thing): w.loss for w in found if w.thing is not None} | {key(w.loss): w.loss for w in found if w.loss.quantity == "nd"}
    things = sorted((*things, *(w.loss for w in found if w.loss.quantity == "nd")), key=lambda f: f.start)
    for one, other in zip(things, things[1:], strict=False):
        if key(one) == key(other) or key(one) not in owners and key(other) not in owners:
            continue
        between = text[one.end : other.start]
        for w in found:
            if one.end <= w.loss.start and w.loss.end <= other.start:
                between = between.replace(text[w.loss.start : w.loss.end], "#")
        goes = one if _IS_SWAPPED.fullmatch(between) or _FOR.fullmatch(between) and _SWAPS.search(text[max(0, one.start - 60) : one.start]) else other if _RATHER_THAN.fullmatch(between) else None
        if goes is not None:
            comes = other if goes is one else one
            return {owners[key(t)]: t is goes for t in (goes, comes) if key(t) in owners}
    return {}


def _when(one: Worn, things: Sequence[Fact], query: Query, bare: bool) -> str:
    """When something is on, by what is done with it wherever it is named."""
    text = query.text
    said = _names(one.thing.unit, things) if one.thing is not None else [one.loss]
    named = one.thing is not None or one.loss.quantity != "loss"
    if any(_LEFT_ON.search(text[max(0, f.start - 40) : f.start]) or _STAYS_ON.match(_behind(f, one.loss, text)) for f in said):
        return BOTH
    without = [f for f in said if _known_without(f, text)]
    gone = [f.start for f in said if f not in without and (named and _TAKEN_OFF.search(text[max(0, _begins(f, one.loss) - 40) : _begins(f, one.loss)]) or _OFF.match(_behind(f, one.loss, text)))]
    put = [f.start for f in said if _PUT_ON.search(text[max(0, f.start - 50) : f.start]) or _ON.match(_behind(f, one.loss, text))]
    off, on = bool(gone), bool(put or without)
    if off and put and put[-1] > gone[-1]:
        off = False  # "f/16 with the dome off; what power with the dome on": as it was told last
    if not (off or on) and len([t for t in things if t.unit != (one.thing.unit if one.thing else "")]) == 0 and one.thing is not None:
        behind = text[min(f.end for f in said) :]
        off, on = _IT_OFF.search(behind) is not None, _IT_ON.search(behind) is not None
        off, on = off and not on, on and not off
    if off or bare and _right_with_it(query):
        return BEFORE  # "I lose 3 stops" is no thing taken off
    if bare and not on and (read := query.all("aperture")) and len(read) == 1 and read[0].origin == "said" and is_taken_off(text, read[0]):
        return BEFORE  # "what does the bare head give, if all of it together reads f/5.6"
    if on or bare or query.asks_for("distance") and _MADE_GOOD.search(text):
        return AFTER
    return ""


_WITHOUT = Pattern(r"\bwithout (?:(?:the|my|that|its|an?|any) )?(?:[\w-]+ )?$", re.I)
_ASKED_OR_WANTED = Pattern(r"\b(?:what|which|where|how|want\w*|need\w*|should|must|now|then)\b", re.I)


def _known_without(thing: Fact, text: str) -> bool:
    """"full power without the dome reads f/16.": how it was before the thing went on, where that sentence asks and wants nothing."""
    if not _WITHOUT.search(text[: thing.start]):
        return False
    end = _SENTENCE_ENDS.search(text, thing.end)
    begins = max((m.end() for m in _SENTENCE_ENDS.finditer(text, 0, thing.start)), default=0)
    return _ASKED_OR_WANTED.search(text[begins : end.start() if end else len(text)]) is None


_SENTENCE_ENDS = Pattern(r"[.;?!](?!\d)")


def _begins(thing: Fact, loss: Fact) -> int:
    """Where a thing begins, with what it costs right before it: "the 2 stop softbox"."""
    return loss.start if 0 <= thing.start - loss.end <= 2 else thing.start


def _right_with_it(query: Query) -> bool:
    """"with the softbox on it the key was right from 4 m; how far away once it's bare?": the one value told of what is asked was with it on."""
    told = query.all(query.asks[0].quantity) if len(query.asks) == 1 and query.asks_for("distance", "power", "energy") else []
    return len(told) == 1 and told[0].origin == "said" and is_taken_off(query.text, told[0])


_LEFT_ON = Pattern(r"\b(?:leav(?:e|es|ing)|left|keep(?:s|ing)?|kept)(?: just| only)?(?: (?:the|my|that|its))?(?: [\w-]+)? $", re.I)
_STAYS_ON = Pattern(r" (?:stays?|stayed|remains?|remained|stayed|staying|left|still) (?:on|up|in place|where (?:it|they) (?:is|are))\b|[ ,]*left (?:on|up|in place)\b", re.I)
"""What is on before and after, and changes nothing."""


_MADE_GOOD = Pattern(r"\b(?:giv(?:e|es|ing) (?:me )?back|get (?:\w+ )?back|mak(?:e|es|ing) (?:it |that |them )?good|mak(?:e|es|ing) up for|regain\w*|recover\w*|restor\w*|win back|compensat\w*) ?(?:what|the|it|that|for|all|them|$|[?.,])|\b(?:keep|hold)(?:ing)? (?:the |my |to the )?(?:same )?(?:exposure|aperture|f-?stop|reading)\b", re.I)
"""What is lost is to be made good, so that it hangs in the light now."""


def _behind(thing: Fact, loss: Fact, text: str) -> str:
    """What is said after a thing, and after what it costs: "the gel, which costs a stop, comes off"."""
    own = thing.end <= loss.start <= thing.end + _REACH
    return " " + text[loss.end if own else thing.end :].lstrip(" ,()")

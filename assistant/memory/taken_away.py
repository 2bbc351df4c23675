"""What stands in the light taken away again, by the word it was told with: "a lantern that eats two stops", then "and without the lantern?"."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.memory.conversation import Conversation, Scene
from assistant.memory.rules import Pair
from assistant.patterns import Pattern
from assistant.query import TAKES_LIGHT, Fact, Query
from assistant.records import replace

_THING = r"(?P<{}>[a-z]+(?:-[a-z]+)*)"
_AWAY = r"(?:off|out|away|down|gone|removed)"
_WITHOUT = Pattern(
    rf"\b(?:without|los(?:e|ing)|drop(?:ping)?|remov(?:e|ing)|forget|no|minus|ditch(?:ing)?|skip(?:ping)?|(?:leav|tak|whipp|pull|stripp)(?:e|ing)? {_AWAY}) (?:the |my |that |this |any )?(?:[a-z]+ ){{0,2}}?{_THING.format('one')}(?: then| now| please| at all)*\W*$"
    rf"|\b(?:with|take|taking|pull|pulling|whip|leave|leaving|if i take) (?:the |my |that |this )(?:[a-z]+ ){{0,2}}?{_THING.format('two')} {_AWAY}(?: of it)?\W*$|(?:^|\b(?:the|my|that) )(?:[a-z]+ )?{_THING.format('three')} {_AWAY}\W*$", re.I)
_CLAUSE = Pattern(r"[.;?!:](?!\d)|,(?!\d)(?! (?:that|which))", re.I)


def takes_away(query: Query, scene: Scene) -> Fact | None:
    """The one loss whose thing is taken away here; None where it is none of them, or not clear which."""
    if any(a.quantity != "nd" for a in query.asks) or any(f.quantity not in ("modifier", "camera_filter", "remark") for f in query.facts):
        return None
    losses = [f for f in scene.facts if f.quantity in TAKES_LIGHT]
    if not query.facts and _IT_OFF.match(query.text):
        return losses[0] if len(losses) == 1 else None
    said = _WITHOUT.search(query.text)
    if said is None or _MORE_THAN_THAT.search(query.text[: said.start()]):
        return None
    return of_the_thing((said["one"] or said["two"] or said["three"]).lower(), scene)


def of_the_thing(word: str, scene: Scene) -> Fact | None:
    """The one loss that was told with this word; of one that was told in a half-sentence, whose words are gone, the only one there is."""
    losses = [f for f in scene.facts if f.quantity in TAKES_LIGHT]
    told = [f for f in losses if f.start < f.end and scene.text[f.start : f.end].strip() == f.said.strip()]
    named = [f for f in told if word in _words_before(f, scene, told)] or [f for f in told if word in _words_after(f, scene, told)] or [f for f in told if word in patterns.findall(_WORDS, f.said.lower())]
    if not named and word in _GLASS:
        named = [f for f in losses if f.quantity in ("nd", "filter_loss", "factor")]  # "a polariser that takes a stop and a half", then "without the filter?"
    if not named and not told and len(losses) == 1 and word not in _NO_SUCH_THING:
        return losses[0]
    return named[0] if len(named) == 1 else None


_GLASS = frozenset({"filter", "glass"})
"""What any of them is called that hangs before the lens."""
_NO_SUCH_THING = frozenset("fill key hair rim kicker main background backdrop flash flashes strobe light lights lamp head heads push pull film lens camera tripod row front back middle second third one other bounce ceiling wall sync shutter stops stop".split())
_BESIDE = Pattern(
    rf"^\W*(?:(?:and|or|so|then|now|ok|same|but|what if|what about|how about)\b\W*)*(?:without|with no|no|minus|lose|drop) (?:the |my |that |any )?(?:[a-z]+ )?{_THING.format('first')}(?=\s*(?:,|;|(?:and|but|at|on|from|with) ))"
    rf"|(?:,|\band|\bbut) *(?:without|with no|minus|lose|drop) (?:the |my |that |any )?(?:[a-z]+ )?{_THING.format('last')}\W*$", re.I)


def taken_away_beside(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"without the paper, ISO 200?": what it took is there again, and what else is said is told."""
    said = _BESIDE.search(query.text) if not query.asks else None
    rest = [f for f in query.facts if said is None or f.start >= said.end() or f.end <= said.start()]
    if said is None or not rest or any(f.quantity in TAKES_LIGHT for f in rest):
        return query, scene
    gone = of_the_thing((said["first"] or said["last"]).lower(), scene)
    if gone is None:
        return query, scene
    text = query.text[: said.start()] + " " * (said.end() - said.start()) + query.text[said.end() :]
    return replace(query, text=text, facts=tuple(rest), unknown=(), cues=query.cues - {"box_speed", "forget", "not", gone.unit}), bared(scene, gone)


_IT_OFF = Pattern(r"^\W*(?:(?:and|or|so|then|now|ok|what if i|if i|i)\b\W*)*(?:(?:take|pull|whip|get|leave) (?:it|that|this|that one|the thing) (?:off|out|away)|(?:with )?(?:it|that) (?:off|out|gone)|without (?:it|that)|off (?:with it|again))(?: (?:altogether|again|then|now|entirely|completely|please))*\W*$", re.I)
_MORE_THAN_THAT = Pattern(r"[,;.]\s|\b(?:no|not|without|off|only|just|and then|instead)\b", re.I)
"""Before what is taken away: something else is, or is put on, in the same breath."""
_WORDS = r"[a-z]+(?:-[a-z]+)*"


def _words_before(loss: Fact, scene: Scene, told: list[Fact]) -> list[str]:
    """The words of the clause that a loss is told in, before it: "the inner baffle another half"."""
    begin = max([0, *(m.end() for m in _CLAUSE.finditer(scene.text[: loss.start])), *(f.end for f in told if f.end <= loss.start)])
    return patterns.findall(_WORDS, scene.text[begin : loss.start].lower())


def _words_after(loss: Fact, scene: Scene, told: list[Fact]) -> list[str]:
    """The words after it, as far as no other loss is told: "two stops in the softbox"."""
    after = _CLAUSE.search(scene.text[loss.end :])
    end = min([len(scene.text) if after is None else loss.end + after.start(), *(f.start for f in told if f.start >= loss.end)])
    return patterns.findall(_WORDS, scene.text[loss.end : end].lower())


def taken_away(query: Query, scene: Scene, talk: Conversation) -> Pair:
    """"and without the lantern?": what it took is there again, and everything else stays."""
    gone = takes_away(query, scene)
    if gone is None:
        return query, scene
    return replace(query, text=" " * len(query.text), facts=(nothing_on(query),), asks=(), unknown=(), unplaced=(), cues=query.cues - {"box_speed", gone.unit}), bared(_with_what_took_it(query, scene, gone), gone)


def _with_what_took_it(query: Query, scene: Scene, gone: Fact) -> Scene:
    """The scene without the umbrella whose loss goes, where it was told as a sentence of its own: "with the umbrella on? it costs a stop"."""
    worn = [f for f in scene.facts if f.quantity == "modifier"]
    if gone.quantity != "loss" or gone.unit or len(worn) != 1 or not (_IT_OFF.match(query.text) or worn[0].said.strip().lower() in query.text.lower()):
        return scene
    return replace(scene, facts=tuple(f for f in scene.facts if f is not worn[0]), cues=scene.cues - {worn[0].unit})


def nothing_on(query: Query) -> Fact:
    """What a sentence tells that takes something off and tells no value: it is told, though nothing is on."""
    return Fact("camera_filter", 0.0, "BARE", "camera", end=len(query.text), said=query.text.strip())


def bared(scene: Scene, gone: Fact) -> Scene:
    """The scene without a loss and without the thing that took it."""
    glass = gone.quantity in ("factor", "filter_loss") and not gone.unit  # its name is told apart from what it takes
    kept = tuple(f for f in scene.facts if f is not gone and not (f.quantity in ("modifier", "camera_filter") and f.unit and (f.unit == gone.unit or glass and f.unit == "filter")))
    return replace(scene, facts=kept, cues=scene.cues - {gone.unit})

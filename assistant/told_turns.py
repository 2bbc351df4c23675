"""Turns that tell and ask nothing: the gear, a part of a scene; and whether a remark is one."""

from __future__ import annotations

import re

from assistant.answer import Answer
from assistant.language import speaking
from assistant.memory.conversation import LIMITS, TOPIC_CUES, Scene, merged
from assistant.memory.kit import CAMERA, FLASH, Kit
from assistant.memory.meaning import inferred_ask
from assistant.patterns import Pattern
from assistant.query import Fact, Query
from assistant.records import replace
from assistant.solving.choices import options
from assistant.solving.ranges import wants_table
from assistant.turn import Turn

_ASKS = Pattern(r"(?:^|[.;,!]\s*|\b(?:and|so|but) )(?:can|could|should|will|would|do|does|is|are|am) (?:i|we|it|that|this|you|they|the flash|my flash)\b[^.;]*[?.]?\s*$", re.I)


_STILL = Pattern(r"\b(?:still|same)\b", re.IGNORECASE)
"""Beside what is told anew something stays: it is the case at hand that changes, and not the gear."""


def tells_kit(turn: Turn) -> Answer | None:
    """Something told and nothing asked: noted, in the kit where it is about the gear."""
    query, talk = turn.query, turn.conversation
    if query.asks or query.claim or not (query.facts or query.names or "only_full_half" in query.cues) or offers(query):
        return None
    if (talk.missing and not about_gear(query)) or (mostly_unknown(query) and not query.names):
        return None
    if talk.scene.asks and {f.quantity for f in query.facts} <= {"aperture", "power", "modifier", "loss", "distance", "stops", "nd", "filter_loss", "camera_filter"} and not query.names:
        return None  # "same, but f/8 on the lens"
    if talk.scene.asks and not query.names and ("not" in query.cues or _STILL.search(query.text)) and {f.quantity for f in query.facts} - {"number", "remark"} <= {f.quantity for f in talk.scene.facts}:
        return None  # "iso 100 is loaded, not 200": what was reckoned with is put right
    if not about_gear(query) or inferred_ask(query) or _ASKS.search(query.text):
        return None
    if talk.scene.asks and not query.names and "what_if" in query.cues and "?" in query.text:
        return None  # "what if I loaded ISO 200 instead?": asked again, and not told
    if talk.scene.asks and not ("my_kit" in query.cues or _limits_only(query)) and not query.names:
        return None
    talk.kit = told_of_gear(query, talk.kit)
    if talk.missing and talk.scene.asks:
        return None
    if talk.scene.asks and _limits_only(query):
        return None
    words = speaking.understood(tuple(f for f in query.facts if f.quantity != "number"))
    if "only_full_half" in query.cues:
        words = f"{words.removesuffix('.')}, only full and half power." if words else "only full and half power."
    names = "".join(f" I call it {n}." for n in query.names if "call_it" in query.cues)
    return noted(query, "Noted: " + words.removeprefix("From ") + names if words else "Noted." + names)


def at_their_power(query: Query) -> Query:
    """"recycles in 3 s at half power", told and not asked: the time is of that power, whatever power is asked about later."""
    waits = [f for f in query.facts if f.quantity == "recycle" and f.at_power is None]
    powers = [f for f in query.facts if f.quantity == "power" and not f.bad and 0 < f.value <= 1]
    if query.asks or query.claim or len(waits) != 1 or len(powers) != 1 or waits[0].sentence != powers[0].sentence:
        return query
    return query.with_facts(replace(f, at_power=powers[0].value) if f is waits[0] else f for f in query.facts)


def about_gear(query: Query) -> bool:
    """Whether a remark is about the gear rather than about a scene."""
    kinds = {f.quantity for f in query.facts}
    gear = kinds & (FLASH | CAMERA | {"modifier", "aperture", "power"})
    scene = kinds & {"distance", "camera_distance", "path", "relation", "stops", "move"}
    if ("only_full_half" in query.cues or len([f for f in query.facts if f.quantity in ("power", "min_power")]) > 1) and not scene:
        return True
    return bool(query.names) or (bool(gear) and not scene and (bool(query.cues & {"my_kit", "at_least", "at_most", "room", "film", "lens"}) or bool(kinds & LIMITS) or kinds <= {"guide_number"}))


def _limits_only(query: Query) -> bool:
    return bool(query.facts) and {f.quantity for f in query.facts} <= LIMITS


def told_of_gear(query: Query, kit: Kit) -> Kit:
    """The kit with what this remark tells of it."""
    query = at_their_power(query)
    facts = [f for f in query.facts if f.quantity in FLASH | CAMERA]
    facts += [replace(f, quantity="max_count", cue="at_most") for f in query.facts if f.quantity == "count" and f.unit == "flashes" and not query.names and f.value > 1]
    powers = [f for f in query.facts if f.quantity in ("power", "min_power")]
    if "only_full_half" in query.cues:
        powers = [Fact("power", 1.0), Fact("power", 0.5, said="half")]
    if len(powers) >= 2:
        facts = [f for f in facts if f.quantity != "min_power"]
        least = min(powers, key=lambda f: f.value)
        facts.append(replace(least, quantity="min_power"))
        facts.append(replace(least, quantity="only_powers", said=",".join(f"{p.value:g}" for p in powers)))
    names = [n for n in query.names]
    flashes = kit.flashes()
    owner = names[0] if len(names) == 1 else ""
    if owner and any(f.quantity == "guide_number" for f in facts):
        facts = [replace(f, of=owner) if f.quantity in FLASH and f.of in ("", "big", "small") else f for f in facts]
    elif not owner and len(flashes) == 1 and flashes[0]:
        facts = [replace(f, of=flashes[0]) if f.quantity in FLASH and not f.of else f for f in facts]
    kit = kit.with_facts(facts)
    if owner and not any(f.quantity == "guide_number" and f.of == owner for f in kit.facts):
        last = flashes[-1] if flashes else ""
        return kit.named(owner, last)
    return replace(kit, names=tuple(dict.fromkeys((*kit.names, *names))))


_VERDICT = Pattern(r"\b(?:true or false|right or wrong|yes or no|(?:makes?|made) no (?:odds|difference)|(?:true|correct)\s*\?)")
"""What is put up for a yes or a no, though it says "or"."""


_SO_THEN = Pattern(r"\W*(?:(?:ok|okay|right|well|and|now|hm+|fine|good|great),? )*so (?:then )?(?:what (?:about|if) )?(?:on|with|for|if|from|at) (?:it'?s |it is |i'm |i am |i use |i load |the |an? |about )*\S+(?: ?\S+){0,2}\W*$", re.I)


def another_case(query: Query, scene: Scene) -> bool:
    """"ok so on 50 film?", "so from 12 feet?" after an aperture was asked: another value of what was told, and none put up for a yes or a no."""
    mine = query.facts[0] if len(query.facts) == 1 and not query.asks else None
    if mine is None or mine.bad or not scene.asks or not _SO_THEN.match(query.text):
        return False
    return mine.quantity in ("film_speed", "distance", "power", "aperture", "shutter", "energy") and mine.quantity != scene.asks[0].quantity and any(f.quantity == mine.quantity for f in scene.facts) or mine.quantity in ("film_speed", "power") and mine.quantity != scene.asks[0].quantity


def offers(query: Query) -> bool:
    """Whether it is a choice or a table that is asked for."""
    return (bool(options(query)[1]) or one_is_chosen(query)) and _VERDICT.search(query.text.lower()) is None or wants_table(query)


def one_is_chosen(query: Query) -> bool:
    """Whether one of two is asked for by what there is more of, and it is known which."""
    text = query.text.lower()
    if not ("?" in text or "which" in text) or not (" or " in text or " and " in text or "the other" in text) or len(query.facts) < 1:
        return False
    from assistant.solving.which_of_two import more_of

    return more_of(query) is not None


def mostly_unknown(query: Query) -> bool:
    """Whether most words of a remark mean nothing here."""
    return len(query.unknown) > max(2, query.known_words)


_SENTENCE_ENDS = Pattern(r"[.!?;:]\s+")
_WORDS = Pattern(r"[^\W\d_]+")
_OF_FLASH = frozenset({"film_speed", "power", "guide_number"})


def asks_in_known_words(query: Query) -> bool:
    """Whether an aperture is asked by its name, in a sentence without a word that means nothing here, and something that bears on it is told."""
    if [a.quantity for a in query.asks] != ["aperture"] or "name_aperture" not in query.cues or "?" not in query.text or not any(f.quantity in _OF_FLASH and not f.bad for f in query.facts):
        return False
    begins = max((m.end() for m in _SENTENCE_ENDS.finditer(query.text, 0, query.asks[0].start + 1)), default=0)
    return frozenset(query.unknown).isdisjoint(_WORDS.findall(query.text[begins:]))


def asks_of_places(query: Query) -> bool:
    """Whether it is asked how many stops less, or more, light falls on a place: nobody else asks that, whatever stands there."""
    lit = bool(query.cues & {"less", "more"}) or len(query.all("distance")) > 1 and _A_LIGHT.search(query.text) is not None  # "the flash is 1.5 m from her and 4 m from the curtain; in stops, how does it fall?"
    return query.asks_for("stops") and "name_stops" in query.cues and lit and (query.has("distance") or query.has("gap"))


_A_LIGHT = Pattern(r"\b(?:flash|strobe|light|lamp|key|softbox)\b", re.I)


def told_scene(turn: Turn) -> Answer | None:
    """Part of a scene told before the question: kept and noted."""
    query, talk = turn.query, turn.conversation
    placed = [f for f in query.facts if f.quantity not in ("number", "stops", "signed", "time", "ratio", "number_range", "degrees", "voltage", "velocity")]
    if "?" in query.text or query.cues & {"how_many", "what", "what_if"} or _ASKS.search(query.text):
        return None
    if not placed or not speaking.understood(tuple(placed)) or len(query.unknown) > len(placed) + 1 or query.claim:
        return None
    talk.keep(replace(talk.scene, facts=merged(talk.scene.facts, at_their_power(query).facts), cues=talk.scene.cues | (query.cues & TOPIC_CUES)))
    kept = frozenset(placed)
    left = tuple(dict.fromkeys(f.said.strip() for f in query.facts if f not in kept and f.said.strip() and f.quantity != "number_range"))
    told = "Noted: " + speaking.understood(tuple(placed)).removeprefix("From ")
    return noted(replace(query, unplaced=left), " ".join(s for s in (told, leftover(left)) if s))


def leftover(words: tuple[str, ...]) -> str:
    """The sentence about words that were not used."""
    return "I did not use " + ", ".join(f"“{speaking.printable(w)}”" for w in words) + "." if words else ""


def noted(query: Query, sentence: str) -> Answer:
    """An answer that only notes."""
    return Answer(heard=query.text, status="noted", reply=sentence, unplaced=query.unplaced)

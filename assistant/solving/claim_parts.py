"""Rules without numbers: what makes the flash or the ambient part brighter, darker, or neither.

"a faster shutter darkens the background but not the flash": the setting that is changed, which
way, and what is said to happen to each part; the ledger's weights say what does happen.
"""

from __future__ import annotations

from assistant import patterns
from assistant.patterns import Pattern
from assistant.records import record
from assistant.solving.claim_rules import WEIGHTS, Verdict
from assistant.solving.claim_words import plain, terms

_CAUSES: tuple[tuple[str, float, str], ...] = (
    # quantity, which way it goes (0: any way), the words
    ("reciprocity", 1, r"\breciprocity(?: (?:failure|law failure|effect|departure|loss|correction))?\b"),
    ("bellows", 1, r"\bbellows(?: (?:extension|draw|factor))?\b|\bextension(?: tubes?)?\b|\btubes\b(?! flash)"),
    ("time", -1, r"\b(?:faster|shorter|quicker|higher|fast|short|speeding up|raising|increasing)(?: the| a| your| my)? (?:shutter|exposure time)\w*(?: (?:speed|time)s?)?|\bshorten\w* the (?:shutter|exposure)"),
    ("time", 1, r"\b(?:slower|longer|slow|long|slowing|lengthening|dragging|drag|lowering)(?: down)?(?: the| a| your| my)? (?:shutter|exposure time)\w*(?: (?:speed|time)s?)?"),
    ("time", 0, r"\bshutter(?: speed| time)?s?\b|\b1/\d+"),
    ("film_speed", 1, r"\b(?:higher|faster|raising|raise|increas\w+|more|bumping|turning up)(?: the| a| your| my)? (?:iso|film|asa)\w*(?: speed)?"),
    ("film_speed", -1, r"\b(?:lower|slower|lowering|reducing|dropping)(?: the| a| your| my)? (?:iso|film|asa)\w*(?: speed)?"),
    ("film_speed", 0, r"\b(?:iso|asa|film speed)\b(?! ?\d)"),
    ("aperture", -1, r"\b(?:wider|bigger|larger|widening|opening(?: up)?|open up)(?: the| a| your| my)? (?:aperture|lens|f-?stop)\b|\b(?:smaller|lower) f-?numbers?\b|\bopening up\b"),
    ("aperture", 1, r"\b(?:smaller|narrower|stopping down|closing(?: down)?|closing)(?: the| a| your| my)? (?:aperture|lens|f-?stop)\b|\b(?:bigger|larger|higher) f-?numbers?\b|\b(?:stopping|closing|stop|close) down\b"),
    ("aperture", 0, r"\b(?:aperture|f-?stop)s?\b"),
    ("power", 1, r"\b(?:more|higher|turning up|raising|increasing|full)(?: the| a| your| my)?(?: flash)? (?:power|output)\b"),
    ("power", -1, r"\b(?:less|lower|turning down|reducing|cutting)(?: the| a| your| my)?(?: flash)? (?:power|output)\b"),
    ("power", 0, r"\b(?:flash |the )(?:power|output)\b"),
    ("filter", 1, r"\b(?:nd\s?[\d.]*|neutral density|polari[sz]\w+|cpl|grey filter|gray filter|(?:colou?r(?:ed)? )?filter)\b"),
    ("distance", 1, r"\b(?:flash|light|strobe|head) (?:further|farther)\b|\bmov\w+ the (?:flash|light|strobe|head) (?:further|farther|back|away)\b|\bback(?:ing)? the (?:light|flash) (?:off|up)\b"),
    ("distance", -1, r"\bmov\w+ the (?:flash|light|strobe|head) (?:closer|nearer|in)\b|\b(?:flash|light) (?:closer|nearer)\b"),
    ("distance", 0, r"\b(?:flash[- ]to[- ]subject|flash|light) distance\b"),
)
_FLASH = r"\bflash(?:'s|es)?\b(?! (?:bulb|sync|power|output|distance|to))|\bstrobe\b|\bguide number\b"
_AMBIENT = r"\b(?:ambient|background|room|available|daylight|sky|windows?|existing|sun(?:light)?)\b"
_NONE = Pattern(
    r"(?:n't|\b(?:does|do|wo|ca|is|would|did|are)nt|\bnot|\bnever|\bno|\bwithout|\bneither) (?:\w+ ){0,2}?(?:chang\w*|affect\w*|alter\w*|matter\w*|touch\w*|effect|influenc\w*|control\w*|make\w* (?:a |any )?difference|difference|bear\w*|dim\w*|darken\w*|cut\w*|weaken\w*|reduc\w*|brighten\w*|depend\w*|suffer\w*|concern\w*|appl\w*|act|hit|say|role|correction|compensat\w*)"
    r"|\bleav\w+\b.{0,30}\b(?:alone|unchanged|untouched|as it (?:is|was)|the same)\b|\bleaves? (?:the )?(?:flash|ambient|background)|\bmakes? no difference|\bhas no (?:effect|bearing|influence)|\bno effect\b|\bstays? the same\b|\bunaffected\b|\bunchanged\b|\bbut not (?:the )?|\bnot the\b"
    r"|\bspares?\b|\bindependent of\b|\bignores?\b|\bno matter\b|\bnothing to do with\b|\b(?:does|do|doing|did) nothing (?:to|for|about)\b|\buntouched\b|\birrelevant\b|\b(?:don't|doesn't|does not|do not) (?:care|matter|count)\b"
)
_ANY = Pattern(r"\b(?:chang\w*|affect\w*|alter\w*|matters?|influenc\w*|controls?|effect|make\w* (?:a |any )?difference|depends? on|bears? on|counts?|sets?|acts?|works? on|suffers?|concerns?|appl(?:y|ies)|hits?|touch(?:es)?|correction|compensat\w*)\b")
_UP = Pattern(r"\b(?:bright\w*|lighter|more|stronger|lifts?|raises?|increas\w*|adds?|burns? in|boosts?|lets? in)\b")
_DOWN = Pattern(r"\b(?:dark\w*|dim\w*|weak\w*|less|fainter|reduc\w*|lowers?|cuts?|kills?|drops?|under\w*|loses?|costs?|takes?|eats?|lose)\b")
_BEYOND = Pattern(r"\b(?:beyond|above|past|faster than|over|exceed\w*)\b.{0,12}\b(?:sync|x-sync)|\bhss\b|\bhigh[- ]speed sync|\b(?:flash ?)?bulbs?\b(?! setting)|\bfp (?:sync|flash|mode)")
_WORDS = {"time": "the shutter time", "film_speed": "the film speed", "aperture": "the aperture", "power": "the flash power", "filter": "a filter on the lens", "distance": "the distance of the flash",
          "reciprocity": "reciprocity failure", "bellows": "the extension of the lens"}


@record
class _Effect:
    part: str
    way: int | None  # +1 brighter, -1 darker, 0 nothing, None: some change


def judge_parts(text: str) -> Verdict | None:
    """The verdict on a rule about the flash or the ambient part; None where none is said."""
    said = plain(text)
    cause = _cause(said)
    if cause is None or patterns.search(r"\bcamera\b.{0,20}\bdistance\b|\bwhy\b", said):
        return None
    quantity, sign, words = cause
    rest = said.replace(words, " ", 1)
    effects = _effects(rest, quantity)
    if not effects:
        return None
    weights = {part: WEIGHTS[part][quantity] for part in WEIGHTS}
    beyond = _BEYOND.search(said)
    if quantity == "time" and beyond and not patterns.search(r"\b(?:no|not|without|never|isn't|below|under|within)\W+(?:\w+\W+){0,2}$", said[: beyond.start()]):
        weights["flash"] = 1.0
    holds = all(_holds(e, weights[e.part] * (sign or 1), bool(sign)) for e in effects)
    return Verdict(holds, 0.0, _truth(quantity, weights, effects), "")


def _cause(said: str) -> tuple[str, float, str] | None:
    """The setting that is changed, which way, and the words; numbers said of it count."""
    for quantity, sign, pattern in _CAUSES:
        found = patterns.search(pattern, said)
        if found:
            sized = next((t for t in terms(said) if t.quantity == quantity), None)
            way = sign or (1.0 if sized and sized.doublings > 0 else -1.0 if sized and sized.doublings < 0 else 0.0)
            return quantity, way, said[sized.start : sized.end] if sized and not sign else found.group()
    return None


def _effects(rest: str, quantity: str) -> list[_Effect]:
    out: list[_Effect] = []
    way: int | None = None
    for clause in patterns.split(r",|;|\bbut\b|\bwhile\b|\bwhereas\b|\band\b|\byet\b|(?=\bwithout\b)", rest):
        parts = [p for p, pattern in (("flash", _FLASH), ("ambient", _AMBIENT)) if patterns.search(pattern, clause)]
        found, new = _way("but " + clause.strip() if parts and not _ANY.search(clause) and " not " in f" {clause}" else clause)
        way = new if found else way
        if not parts or not (found or out):
            continue
        only = patterns.search(r"\bonly\b|\bjust\b|\balone\b", clause) is not None and way != 0
        out += [_Effect(p, way) for p in parts]
        if only and len(parts) == 1:
            out.append(_Effect("ambient" if parts[0] == "flash" else "flash", 0))
    return out


def _way(clause: str) -> tuple[bool, int | None]:
    if _NONE.search(clause):
        return True, 0
    up, down = _UP.search(clause), _DOWN.search(clause)
    if up and not down:
        return True, 1
    if down and not up:
        return True, -1
    return (True, None) if _ANY.search(clause) or (up and down) else (False, None)


def _holds(effect: _Effect, weight: float, directed: bool) -> bool:
    if effect.way is None:
        return weight != 0
    if effect.way == 0:
        return weight == 0
    return weight != 0 if not directed else weight * effect.way > 0


def _truth(quantity: str, weights: dict[str, float], effects: list[_Effect]) -> str:
    name = _WORDS[quantity]
    felt = [p for p in ("flash", "ambient") if weights[p] != 0]
    if quantity == "time" and "flash" in felt:
        return "Beyond sync speed, in high-speed sync and with flash bulbs the shutter cuts into the flash as well as the ambient light."
    if quantity == "time":
        return "Up to sync speed the shutter time changes the ambient light alone: the flash is over while the shutter is open."
    if felt == ["ambient"]:
        return f"{name[:1].upper()}{name[1:]} concerns the ambient light alone: a flash is far too short for it."
    if len(felt) == 2:
        return f"{name[:1].upper()}{name[1:]} acts on flash and ambient light alike."
    return f"{name[:1].upper()}{name[1:]} acts on the flash alone; the ambient light does not change with it."

"""Neighbours: what a mark or a number is by what stands beside it.

Hyphens and signs, the size before a unit, the inches of "five foot six", the stops of "1.5 under",
the row of "5, 10 and 20 feet", the guide number that comes before its name.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant import patterns
from assistant.language.tokens import Token
from assistant.patterns import Pattern

_NO_INCHES = {"LEN", "METER", "ISO", "FILM", "STOP", "COUNTED", "PERCENT", "PERCENT_WORD", "SEC", "MM", "JOULE",
              "TIMES", "POWER", "POP", "PAIR", "FOOT_MARK", "SPEED_WORD", "FILM_SPEED", "DIN", "EVW", "FACTOR", "SLASH"}


def settle(tokens: list[Token], text: str) -> list[Token]:
    """Marks that depend on their neighbours: hyphens, signs, sizes, and the inches of "five foot six"."""
    plain, types = tokens, {t.type for t in tokens}
    for turn, of in _TURNS:
        if not types.isdisjoint(of):
            plain = turn(plain, text)
    out: list[Token] = []
    for place, token in enumerate(plain):
        kind = token.type
        if kind == "NUM":
            out += _number(plain, place, text)
            continue
        if kind == "GUIDE" and not _number_follows(plain, place, text):
            token = Token("GUIDE_AFTER", token.value, token.start, token.end, token.read_as)
        elif kind == "FILM" and _begins_a_clause(plain, place, text):
            out.append(Token("COMMA", ",", token.start, token.start))
        out.append(token)
    return out


def _joints(tokens: list[Token], text: str) -> list[Token]:
    return [_own_and(t, n, tokens) if t.type == "AND" else Token("GLUE", "or", t.start, t.end) if t.type == "OR" and _joins_another_kind(n, tokens) else _part_of_a_name(t, text) if t.type == "TIMES" else t for n, t in enumerate(tokens)]


def _others(tokens: list[Token], text: str) -> list[Token]:
    return [Token("GLUE", "the other", t.start, t.end) if t.type == "NAMED" and t.value == "b" and _OTHER_ONE.match(text, t.start) else t for t in tokens]


def _edges(tokens: list[Token], text: str) -> list[Token]:
    return [Token("GLUE", "edge", t.start, t.end) if t.type == "ROLE" and t.value == "rim" and _is_an_edge(t, text) else t for t in tokens]


def _guide_of_one(tokens: list[Token], text: str) -> list[Token]:
    """"the guide number of one pop": of each of them, and no guide number of 1."""
    out = list(tokens)
    for n, (guide, of, one, what) in enumerate(zip(tokens, tokens[1:], tokens[2:], tokens[3:])):
        if guide.type == "GUIDE" and of.type == "OF" and one.type == "NUM" and getattr(one.value, "value", 0.0) == 1.0 and what.type in ("POP", "COUNTED"):
            out[n + 2] = Token("EACH", "each", one.start, one.end)
    return out


def _negatives(tokens: list[Token], text: str) -> list[Token]:
    return [Token("CUE", "negative", t.start, t.end) if t.type == "SIGN_MINUS" and _is_the_film(tokens, n, text) else t for n, t in enumerate(tokens)]


def _heads_that_stand(tokens: list[Token], text: str) -> list[Token]:
    """"a head at ten feet", "the head at half power": a zoom stands at a number of its own row, "the head at 85"."""
    return [Token("GLUE", "head", t.start, t.end) if t.type == "CUE" and t.value == "zoom" and text[t.start : t.end].lower() == "head at" and not _is_a_zoom_row(tokens, n + 1) else t for n, t in enumerate(tokens)]


def _is_a_zoom_row(tokens: list[Token], place: int) -> bool:
    if place >= len(tokens) or tokens[place].type not in ("NUM", "SIZE"):
        return False
    after = tokens[place + 1].type if place + 1 < len(tokens) else ""
    return getattr(tokens[place].value, "value", 0.0) >= 14 and after not in _NO_INCHES | UNITS - {"MM", "ISO"}


_OTHER_ONE = Pattern(r"(?:the )?other (?:photographer|shooter|snapper|guy|chap|fellow|bloke|lad|lady|woman|man|person|assistant|crew|studio|camera|body|day|night|week|film|roll|meter)s?\b", re.I)
"""Somebody or something else, and no second light."""


def _begins_a_clause(tokens: list[Token], place: int, text: str) -> bool:
    """"meter left on 400 film was 100", "at iso 100 film is 400": the film has a speed of its own behind it, and is not that of the number before."""
    if not place or tokens[place - 1].type != "NUM" or place + 2 >= len(tokens):
        return False
    named = text[tokens[place + 1].start : tokens[place + 1].end].lower()
    at = place + 1 + (named in ("is", "'s", "was", "were"))
    at += tokens[at].type == "ISO"
    if at == place + 1 or at >= len(tokens) or tokens[at].type != "NUM" or getattr(tokens[at].value, "value", 0.0) < 6:
        return False
    return at + 1 >= len(tokens) or tokens[at + 1].type not in _NO_INCHES - {"ISO", "FILM"} | {"YEAR"}


_GLASS_BEFORE = Pattern(r"\b(?:filter|glass|polari[sz]er|pola|nd|grad|screw-in)\b[^.?!]{0,60}\bo[nf] (?:its|the|his|her) $", re.I)
_LIGHT_AFTER = Pattern(r" ?-?(?:light|flash|lamp|head|strobe|gun|side)", re.I)


def _is_an_edge(token: Token, text: str) -> bool:
    """"the filter says times three on its rim": where a factor is engraved, and no light."""
    return _GLASS_BEFORE.search(text[max(0, token.start - 90) : token.start]) is not None and not _LIGHT_AFTER.match(text[token.end :])


def _is_the_film(tokens: list[Token], place: int, text: str) -> bool:
    """"ISO 400 negative thirty years past date", "fills a negative 56 mm wide": the film, and no sign."""
    before = tokens[place - 1] if place else None
    if text[tokens[place].start : tokens[place].end].lower() != "negative" or before is None:
        return False
    return before.type in ("NUM", "FILM", "ISO", "SPEED_WORD") or _A_THING.search(text[: tokens[place].start]) is not None


_A_THING = Pattern(r"\b(?:an?|the|my|your|our|whole|full|single|one) $", re.I)


def _number(plain: list[Token], place: int, text: str) -> list[Token]:
    """A number by what follows it: of a length, of stops, of things; with the inches that were left out."""
    token, after = plain[place], plain[place + 1] if place + 1 < len(plain) else None
    last = plain[place - 1] if place else None
    own = last is not None and (last.type == "LEN" and _begins_a_length(plain, place) or last.type == "APERTURE" and _is_of_the_film(plain, place))
    out = [Token("COMMA", ",", token.start, token.start)] if own else []
    if after is not None and _measures(plain, place):
        token = Token("SIZE", token.value, token.start, token.end)
    elif after is not None and after.type == "CUE" and _stops_under(plain, place, text):
        return [*out, Token("STEPS", token.value, token.start, token.end), Token("STOP", "stop", token.end, token.end)]
    elif after is not None and after.type in _MAY_BEGIN and _ends_before(plain, place, text):
        return [*out, token, Token("COMMA", ",", token.end, token.end)]
    elif after is not None and after.type in _OF_A_KIND and not (place and plain[place - 1].type in _NEVER_OF_A_KIND):
        token = Token(_OF_A_KIND[after.type], token.value, token.start, token.end)
    elif _of_a_stop(plain, place, text):
        token = Token("STEPS", token.value, token.start, token.end)
    out.append(token)
    if after is not None and after.type == "ISO" and _before_a_speed(plain, place):
        out.append(Token("COMMA", ",", token.end, token.end))
    if last is None or last.value not in ("ft", "m") and last.type != "METER":
        return out
    if _spoken_inches(plain, place, after):
        out.append(Token("INCH_MARK", "in", token.end, token.end))
    elif _spoken_centimetres(plain, place, after, text):
        out.append(Token("LEN", "cm", token.end, token.end))
    return out


_ONE_LIGHT = Pattern(r"(?:flash|strobe|flash ?gun|gun|head|flash head|lamp|light|speedlight)", re.I)
_NO_LIGHTS_BEYOND = 12
"""Nobody sets up more of them, and says "flash" and not "flashes"."""
_RATED_BEFORE = Pattern(r"\b(?:rat(?:e|ed|ing)|iso|asa|film|box|loaded|dial)\b[^.?!;,\d]{0,24}$", re.I)
_OPENINGS = frozenset({2.0, 2.8, 3.5, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0})


_MAY_BEGIN = frozenset({"POWER", "FACTOR", "COUNTED"})


def _ends_before(tokens: list[Token], place: int, text: str) -> bool:
    """"reads 5.6 flash alone", "loaded 400 flash at 3 m", "stays at 8 power as it was": such a number counts no lights and no powers, and a new clause begins."""
    if place + 1 >= len(tokens) or (place and tokens[place - 1].type in ("POWER", "SIGN", "SIGN_MINUS")):
        return False
    value, after = getattr(tokens[place].value, "value", 0.0), tokens[place + 1]
    if after.type == "POWER":
        return value in _OPENINGS and bool(place) and tokens[place - 1].type in ("AT", "F", "LINK", "APERTURE")
    if after.type == "FACTOR":
        following = [t.type for t in tokens[place + 2 : place + 4]]
        return following[:1] == ["NUM"] or following in (["OF", "NUM"], ["LINK", "NUM"])  # "a polariser on the eighty, factor of three"
    if after.type != "COUNTED":
        return False
    before = [t.type for t in tokens[max(0, place - 2) : place]]
    times = before[-1:] in (["TIMES"], ["FACTOR"]) or before in (["FACTOR", "OF"], ["FACTOR", "LINK"]) or value >= 3 and _RATED_BEFORE.search(text[max(0, tokens[place].start - 40) : tokens[place].start]) is not None
    return 1 < value < 1e5 and (value != int(value) or value > _NO_LIGHTS_BEYOND or times) and _ONE_LIGHT.fullmatch(text[after.start : after.end]) is not None


def _is_of_the_film(tokens: list[Token], place: int) -> bool:
    """"what's the f stop 100 film": the number is the film's."""
    if not place or place + 1 >= len(tokens) or tokens[place - 1].type != "APERTURE":
        return False
    return tokens[place + 1].type in _FILM_WORDS and getattr(tokens[place].value, "value", 0.0) >= 50


_FILM_WORDS = {"FILM", "FILM_SPEED", "SPEED_WORD", "ISO"}
_UNDER = (["under"], ["over"], ["below"], ["above"])
_BARE_HEADS = {"F", "ISO", "APERTURE", "FILM_SPEED", "GUIDE", "SPEED_WORD", "SHUTTER", "POWER", "ND", "FACTOR", "RATIO_WORD"}


def _stops_under(tokens: list[Token], place: int, text: str) -> bool:
    """"1 2/3 under", "one and a half over": stops, where nothing else is counted."""
    if place + 1 >= len(tokens) or (place and tokens[place - 1].type in _BARE_HEADS):
        return False
    value, after = getattr(tokens[place].value, "value", 9.0), tokens[place + 1]
    return after.type == "CUE" and text[after.start : after.end].lower().split()[:1] in _UNDER and 0 < value <= 4 and (value != int(value) or value > 1 or _of_a_light(tokens, place))


_ENDS = {"ROLE", "COMMA", "END", "Q"}


def _of_a_light(tokens: list[Token], place: int) -> bool:
    """"hair one over key", "fill is 1 under.": between a light and what it is held against one is a stop, and nobody."""
    before = [t.type for t in tokens[max(0, place - 2) : place]]
    after = [t.type for t in tokens[place + 2 : place + 4]]
    held = before[-1:] == ["ROLE"] or before[-1:] in (["LINK"], ["AT"], ["COLON"]) and before[:1] == ["ROLE"]
    return held and (not after or after[0] in _ENDS or after == ["GLUE", "ROLE"])


def _before_a_speed(tokens: list[Token], place: int) -> bool:
    """"1/30 at 2.8 iso 400": the ISO is of the number after it, for the one before it is no film speed."""
    if place + 2 >= len(tokens) or tokens[place + 1].type != "ISO" or tokens[place + 2].type != "NUM":
        return False
    return getattr(tokens[place].value, "value", 99.0) < 25


_SUBUNITS = {("ft", "in"), ("m", "cm"), ("m", "mm"), ("yd", "ft"), ("yd", "in")}


def _begins_a_length(tokens: list[Token], place: int) -> bool:
    """"guide number fifty metres five metres": a second length, not the small part of the first as in "5 ft 6 in"."""
    if place < 2 or place + 1 >= len(tokens) or tokens[place + 1].type != "LEN" or tokens[place - 1].type != "LEN":
        return False
    return tokens[place - 2].type in ("NUM", "SIZE") and (tokens[place - 1].value, tokens[place + 1].value) not in _SUBUNITS


_BETWEEN = {"LINK", "OF", "IN", "LEN", "METER", "A", "COLON", "EQ", "ABOUT", "GLUE", "SIGN", "SIGN_MINUS", "AT"}


def _number_follows(tokens: list[Token], place: int, text: str) -> bool:
    """Whether a guide number's value comes after its name: "guide number 80", not "80 foot guide number"."""
    adjectival = place >= 2 and tokens[place - 1].type == "LEN" and tokens[place - 2].type in ("NUM", "SIZE") and text[tokens[place - 1].start : tokens[place - 1].end].lower() in ("foot", "metre", "meter")
    measured = place >= 2 and tokens[place - 1].type in ("LEN", "METER") and tokens[place - 2].type in ("NUM", "SIZE")
    for ahead in tokens[place + 1 : place + 5]:
        if ahead.type in ("NUM", "SIZE", "FRAC", "SPEED"):
            if measured and patterns.search(r"\b(?:becomes?|goes|turns|gets|doubles|drops|falls|rises|changes)\b", text[tokens[place].end : ahead.start].lower()):
                return False  # "a 36 m guide number becomes 144": its value came before
            then = tokens.index(ahead, place) + 1
            if measured and then < len(tokens) and tokens[then].type in _FILM_WORDS:
                return False  # "120 ft guide number 400 film"
            if measured and patterns.search(r"\b(?:on|with|using|for|loaded|in)\b", text[tokens[place].end : ahead.start].lower()):
                return False  # "a 110 foot guide number on 100 film"
            at_place = any(t.type == "AT" for t in tokens[place + 1 : tokens.index(ahead, place)])
            return not at_place and not (adjectival and ahead is tokens[place + 1])
        if ahead.type not in _BETWEEN:
            return False
    return False


def _inch_words(tokens: list[Token], _: str) -> list[Token]:
    """"18 in" where nothing follows that one could be in: inches."""
    out = list(tokens)
    for place, token in enumerate(tokens):
        if token.type != "IN" or not place or tokens[place - 1].type not in ("NUM", "FRAC"):
            continue
        ends = place + 1 == len(tokens) or tokens[place + 1].type in ("COMMA", "END", "Q")
        film = place > 1 and tokens[place - 2].type in ("ISO", "FILM", "WITH") or getattr(tokens[place - 1].value, "value", 0.0) >= 100
        if ends and not film:
            out[place] = Token("LEN", "in", token.start, token.end)
    return out


_OF_ITS_OWN = {"POWER", "POP", "FULL", "LIFE_SIZE", "LEN", "METER", "MM", "SEC", "PERCENT_WORD", "MAG"}


def _part_of_a_name(token: Token, text: str) -> Token:
    """The x of a film's name, "such-x 400", multiplies nothing."""
    named = token.type == "TIMES" and token.end - token.start == 1 and text[max(0, token.start - 1) : token.start] == "-" and text[max(0, token.start - 2) : token.start - 1].isalpha()
    return Token("WORD", "x", token.start, token.end) if named else token


def _own_and(token: Token, place: int, tokens: list[Token]) -> Token:
    """"f/8 and half power" is two things; only "f/8 and a half" is one, so that "and" is none of the aperture's, nor is that of "two stops and a quarter orange"."""
    if token.type == "AND" and place + 2 < len(tokens):
        of_thing = [t for t in tokens[place + 1 : place + 5] if t.type not in ("A", "DASH")]  # "and a half-orange gel"
        if len(of_thing) > 1 and of_thing[0].type == "FRAC" and of_thing[1].type == "MODIFIER":
            return Token("GLUE", "and", token.start, token.end)
    if _joins_another_kind(place, tokens):
        return Token("GLUE", "and", token.start, token.end)
    if token.type != "AND" or place + 2 >= len(tokens) or tokens[place + 1].type != "FRAC" or place < 2 or tokens[place - 2].type != "F":
        return token
    return Token("GLUE", "and", token.start, token.end) if tokens[place + 2].type in _OF_ITS_OWN else token


_UNITS_OF_NO_APERTURE = {"JOULE", "PERCENT", "PERCENT_WORD", "VOLT", "DEGREE", "DEGREE_WORD", "SEC", "MS", "MINUTE", "HERTZ", "WATT_HOUR", "EVW"}


def _joins_another_kind(place: int, tokens: list[Token]) -> bool:
    """"f/8 and 50 percent power", "f/8 and a 600 J head": the number after it has a unit of its own and is no second f-number."""
    if place < 2 or place + 2 >= len(tokens) or tokens[place - 1].type != "NUM" or tokens[place - 2].type not in ("F", "APERTURE"):
        return False
    return tokens[place + 1].type == "NUM" and tokens[place + 2].type in _UNITS_OF_NO_APERTURE


_HEADED = {"F", "ISO", "GUIDE", "APERTURE", "FILM_SPEED", "POWER", "SHUTTER", "ND", "FACTOR", "SIGN", "SIGN_MINUS", "TIMES"}


def _listed(tokens: list[Token], _: str) -> list[Token]:
    """"5, 10 and 20 feet": the bare numbers of a row that ends in a length are no f-numbers."""
    out = list(tokens)
    for place, token in enumerate(tokens):
        if token.type != "LEN" or place < 1 or tokens[place - 1].type != "NUM":
            continue
        at, many = place - 1, 1
        while at >= 2 and tokens[at - 1].type in ("COMMA", "AND", "OR") and tokens[at - 2].type == "NUM":
            at, many = at - 2, many + 1
            if at >= 2 and tokens[at - 1].type == "COMMA" and tokens[at - 2].type in ("AND", "OR"):
                break
        head = at - 1
        while head > 0 and tokens[head].type in ("OF", "LINK", "IN", "LEN", "COLON", "EACH"):
            head -= 1
        if many < 3 or (at and tokens[head].type in _HEADED):
            continue
        for n in range(at, place - 1, 2):
            out[n] = Token("LISTED", tokens[n].value, tokens[n].start, tokens[n].end)
    return out


def _without_hyphens(tokens: list[Token], _: str) -> list[Token]:
    out: list[Token] = []
    for place, token in enumerate(tokens):
        if token.type == "DASH":
            token = _dash(tokens, place) or token
            if token.type == "JOINED":
                continue
        out.append(token)
    return out


_TURNS: tuple[tuple[Callable[[list[Token], str], list[Token]], tuple[str, ...]], ...] = (
    # what is done to the tokens, and the types of which there must be one
    (_joints, ("AND", "OR", "TIMES")),
    (_others, ("NAMED",)),
    (_edges, ("ROLE",)),
    (_negatives, ("SIGN_MINUS",)),
    (_without_hyphens, ("DASH",)),
    (_inch_words, ("IN",)),
    (_listed, ("LEN", "IN")),
    (_guide_of_one, ("GUIDE",)),
    (_heads_that_stand, ("CUE",)),
)


_OF_A_KIND = {"STOP": "STEPS", "COUNTED": "MANY", "YEAR": "MANY", "DIN": "DINS"}
"""A number before "stops" or "flashes" is a number of those: "drop the power two stops"."""


def _of_a_stop(tokens: list[Token], place: int, text: str) -> bool:
    """"0.7 of a stop", "1.0 of a stop", "one and two thirds of a stop": a part of one, and not a number with a stop of its own after it."""
    part = getattr(tokens[place].value, "part", None) is not None or 0 < getattr(tokens[place].value, "value", 9.0) < 1 or "." in text[tokens[place].start : tokens[place].end]
    return part and [t.type for t in tokens[place + 1 : place + 4]] == ["OF", "A", "STOP"]


UNITS = {"LEN", "MM", "FOOT_MARK", "INCH_MARK", "PACE"}
_NEVER_A_LENGTH = {"F", "ISO", "APERTURE", "FILM_SPEED"}
_NEVER_OF_A_KIND = _NEVER_A_LENGTH | {"GUIDE"}


def _measures(tokens: list[Token], place: int) -> bool:
    """Whether a number is the number of a length: "at 9 feet" is not an aperture of 9."""
    unit = tokens[place + 1].type
    if unit == "METER":
        return not (place and tokens[place - 1].type in _NEVER_A_LENGTH)
    return unit in UNITS


def _dash(tokens: list[Token], place: int) -> Token | None:
    token = tokens[place]
    before = tokens[place - 1] if place else None
    after = tokens[place + 1] if place + 1 < len(tokens) else None
    touches_before = before is not None and before.end == token.start
    touches_after = after is not None and after.start == token.end
    numeric = after is not None and after.type in ("NUM", "FRAC", "SPEED", "F")
    if touches_before and touches_after and before is not None:
        if numeric and before.type in ("NUM", "FRAC"):
            return None
        if numeric and (before.type in ("EQ", "COLON") or (before.type == "F" and before.value is None)):
            return Token("SIGN", "-", token.start, token.end)
        return Token("JOINED", "-", token.start, token.end)
    if touches_after and numeric:
        return Token("SIGN", "-", token.start, token.end)
    if numeric and before is not None and before.type in ("EQ", "LINK", "ISO", "GUIDE"):
        return Token("SIGN", "-", token.start, token.end)
    if numeric and before is not None and before.type in ("NUM", "FRAC"):
        return None
    return Token("COMMA", "-", token.start, token.end)


def _spoken_inches(tokens: list[Token], place: int, after: Token | None) -> bool:
    """"five foot six": a number under twelve right after feet, with no unit of its own."""
    if place < 2 or tokens[place - 1].value != "ft" or tokens[place - 2].type not in ("NUM", "SIZE"):
        return False
    value = getattr(tokens[place].value, "value", 99.0)
    unit_follows = after is not None and after.type == "IN" and place + 2 < len(tokens) and tokens[place + 2].type in ("LEN", "METER")
    if unit_follows and value < 12:
        return True
    joined = after is not None and after.type in _NO_INCHES | {"INCH_MARK", "IN"}
    is_inch_unit = after is not None and after.value == "in" and after.type == "LEN"
    return value < 12 and not joined and not is_inch_unit


def _spoken_centimetres(tokens: list[Token], place: int, after: Token | None, text: str) -> bool:
    """"one metre twenty": tens of centimetres said in words right after whole metres, with no unit of their own."""
    if place < 2 or not (tokens[place - 1].value == "m" or tokens[place - 1].type == "METER") or tokens[place - 2].type not in ("NUM", "SIZE", "A") or any(t.type == "GUIDE" for t in tokens[max(0, place - 4) : place - 2]):
        return False
    said = text[tokens[place - 1].start : tokens[place].end].lower()
    number = tokens[place].value
    tens = getattr(number, "value", 0.0)
    whole = getattr(tokens[place - 2].value, "value", 1.0)
    spoken = said.startswith(("metre", "meter")) and getattr(number, "spoken", False) and said[len("metre") :].lstrip("s")[:1] == " "
    return spoken and whole == int(whole) and 10 <= tens <= 95 and tens % 5 == 0 and (after is None or after.type not in _NO_INCHES | {"LEN", "INCH_MARK"})

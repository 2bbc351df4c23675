"""What is asked in a hurry, said in full: "stops lost, 3 ft to 6 ft?", "f with the filter on, it costs a stop, f/11 without".

The name of what is wanted comes first, with no question word, and its conditions after it. The rules that read
a question know it with its question word; here it gets one, where what follows cannot be its value.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.language.bare_marks import with_marks
from assistant.patterns import Pattern

_TOLD = r"(?!\W*(?:is|are|was|were|of|about|only|just|comes?|has|=|:?\s*\d[\d./½⅓⅔]*\s*(?:stops?)?\s*$))"
_STOPS_FIRST = Pattern(rf"^\W*(?:the )?stops (?P<what>lost|gained)\b{_TOLD}", re.I)
_IN_STOPS_FIRST = Pattern(rf"^\W*(?:the )?(?:light )?(?P<what>loss|gain|drop|rise) in stops\b{_TOLD}", re.I)
_GONE_WITH_IT = {"loss": "lost", "drop": "lost", "gain": "gained", "rise": "gained"}
_SETTING = r"(?:f|f-?stop|stop|aperture|new (?:f|f-?stop|stop|aperture))"
_WITH_IT_ON = Pattern(rf"^\W*(?:the )?(?P<what>{_SETTING}|magnification|coverage|power)(?= (?:with|through|behind|once|inside) [^?;.]{{3,60}}?(?:[,?;]|\.(?!\d)))(?! [^,?;]{{0,60}}\b(?:is|was|are|were|reads?|=)\b)", re.I)
"""With nothing said of what it is before the first pause."""
_ASKS = Pattern(r"\b(?:what|which|how|why|when|where|is it|can i|do i|should i|will)\b", re.I)
_AT_FULL = Pattern(r"^\W*(?:the )?(?:guide number|gn) (?P<at>(?:at|on|for) (?:an? |one )?[\w/]{1,12}(?: power)?)[,;?.:–-]{1,3} (?:and )?(?:at )?full(?: power)?(?:'s| is| gives| was|:|,)? (?:gn |guide number )?(?=\d)", re.I)
""""guide number at 1/16? full's 160 feet"."""
_SUM_OF_TWO = Pattern(r"\b(?:combined|total|joint|added(?: up)?|summed) (?:guide number|gn)\b|\b(?:guide number|gn) of (?:the|both|them|these|those) ?(?:pair|two|both|together)\b", re.I)
_A_GUIDE = Pattern(r"(?<![\w./])(?:(?:gn|guide number) )?(?P<many>\d{2,3}(?:\.\d)?)[ -]?(?P<unit>footers?|foot|feet|ft|met(?:re|er)s?|m)\b(?! (?:away|from|off|back|apart|out|to))(?: (?:flash|gun|unit|one|head|strobe|lamp)s?\b)?", re.I)
_A_PLACE = Pattern(r"\b(?:at|from|to|is|are|sits?|stands?) (?:about |only |just )?$", re.I)
"""Before a distance, which is no guide number of a third."""
_FIGURE = Pattern(r"\d", re.I)
_NAMED_FIRST = Pattern(r"^\W*(?:the )?(?:combined|total|joint|added(?: up)?|summed|guide number|gn)\b", re.I)
_POLITE = Pattern(r"(?<=[a-z]) (?:pls|plz|please)(?=[,:;] )", re.I)
_SPEED = r"(?:iso |asa )?(?P<{0}>25|32|50|64|80|100|125|160|200|320|400|500|640|800|1000|1600|3200)(?: film| iso| asa)?"
_TIMES = r"(?:doubles|halves|trebles|triples|quadruples|doubling)"
_SPEED_DOUBLES = Pattern(rf"(?<![\w./])(?<!iso )(?<!asa )(?<!to )(?<!to a )(?<!to an )(?<!to the ){_SPEED.format('one')} (?P<does>{_TIMES}|gives (?:twice|double|half|four times)) (?:the|my|your|its|a flash's) (?:gn|guide number)\b(?: (?P<beside>over|of|on|compared (?:to|with)|versus|against|from) {_SPEED.format('other')}(?! ?(?:ft|feet|m\b|metres))\b)?", re.I)
_GUIDE_AT = Pattern(rf"\b(?:gn|guide number) (?:at|on|for|with) {_SPEED.format('one')} (?P<is>(?:is )?(?:about |roughly )?(?:twice|double|half|\d(?:\.\d+)?(?: times|x)|four times))(?: (?:that|the (?:gn|guide number)|gn|guide number|the one|what it is))? (?:at|on|for|with|of) {_SPEED.format('other')}(?! ?(?:ft|feet|m\b|metres))\b", re.I)
_NO_NAME = Pattern(r"\b(?P<light>light|flash|lamp|head|strobe|gun) a(?= (?:foot|metre|meter|yard) (?:back|in|out|forward|closer|nearer|further|farther)\b)", re.I)
_FROM_ONE_TO = Pattern(r"\bfrom (?:one|a single|1) (?:head|light|lamp|strobe|gun|unit|speedlight) to (?P<many>two|three|four|five|six|eight|[2-9])(?=\W*(?:$|[,;?])| (?:of them|all|in|at|on)\b)", re.I)
_SLIPS = Pattern(r"\bhow (?:fer|farr|fur|furr|fahr)\b(?= (?:back|away|off|out|from|for|to|at|can|do|does|will|is|should|must|in)\b)|\b(?:halff|hlaf|hallf|haff|hafl|haalf)(?=[ -](?:power|pwr|powr|a stop|stop)\b)|\b(?:fulll|ful|fll|fulle)(?=[ -](?:power|pwr|powr)\b)|\b(?:one|two|three|four|for|fore|five|six|eight|sixteen)(?=hundr[ei]d\b)", re.I)
"""Slips in words too short for the lexicon to put right."""
_TIMES_SLIP = Pattern(r"\b(?P<many>\d{1,3}|two|three|four|five|six|seven|eight|nine|ten|twelve|sixteen|twenty) (?:tiems|tmes|tims|timse|itmes|tiimes|timmes|timess|imes|tiem)(?=\W|$)", re.I)
"""How often, mistyped."""
_SO = Pattern(r"\W*(?:so|well|right|now)[, ]+(?=\S+ \S)", re.I)
"""A word to begin with, which may stay where nothing was half said."""
_MEANT = {"how": "how far", "ha": "half", "hl": "half", "fu": "full", "fl": "full"}


def said_in_full(text: str) -> str:
    """The text with its question word, and the figures of guide numbers as such.

    >>> said_in_full("Stops lost, 3 ft to 6 ft?"), said_in_full("stops lost: 2"), said_in_full("gn at 1/8? full's 110 ft")
    ('how many stops lost, 3 ft to 6 ft?', 'stops lost: 2', 'At full power it is 110 ft. what guide number at 1/8?')
    """
    said = _SLIPS.sub(_put_right, text) if _SLIPS.may_match(text) else text
    said = _TIMES_SLIP.sub(r"\g<many> times", said) if _TIMES_SLIP.may_match(said) else said
    begins = _SO.match(said)
    rest = said if begins is None else said[begins.end() :]
    full = rest
    for rule in _RULES:
        full = rule(full)
    return said if full == rest else full


def _put_right(found: re.Match[str]) -> str:
    slip = found[0].lower()
    if slip.startswith("how "):
        return "how far"
    return _MEANT.get(slip[:2] if slip not in ("four", "for", "fore", "five") else "", "") or ("four" if slip in ("for", "fore") else slip) + " "


def _stops(text: str) -> str:
    """"stops lost from 3 ft to 6 ft?", "gain in stops, from one flash to three"."""
    said = _STOPS_FIRST.sub(r"how many stops \g<what>", text)
    return _IN_STOPS_FIRST.sub(lambda found: f"how many stops {_GONE_WITH_IT[found['what'].lower()]}", said)


def _with_it_on(text: str) -> str:
    """"aperture with the box on? it eats 2 stops, …"."""
    found = _WITH_IT_ON.match(text)
    if found is None or _ASKS.search(text) or "?" not in text and "," not in text:
        return text
    wanted = "aperture" if found["what"].lower() in ("f", "new f") else found["what"]
    return f"what {wanted}{text[found.end() :]}" + ("" if "?" in text else "?")


_IF_FIRST = Pattern(r"^\W*(?:the |my |new )*(?P<what>aperture|f-?stop|f-?number|stop|shutter(?: speed| time)?|exposure time|distance|reach|range|power|iso|film speed|guide number|gn|depth of field|ratio)(?= (?:if|when|once|in case|supposing|should) (?:i|we|you|it|he|she|they|one|the|my|a|an|this|that|there|[a-z]+ing|gn|guide|iso|f/?\d)\b)", re.I)
""""aperture if I hit it four times, …": what is wanted, and the case after it."""
_WHERE_IT_GOES = Pattern(r"^\W*(?:the |my )?(?:(?P<dial>(?:(?:asa|iso|ei|film speed|index)(?: dial| setting| wheel| knob)?|(?:meter|speed) (?:dial|setting|wheel))|(?P<light>flash(?:gun)?|strobe|light|lamp|head|gun|speedlight|key(?: light)?|fill(?: light)?))(?: goes| go| sits| stands| set| to be| then| placed)?(?: to| at)? (?:where|how far(?! (?:from|is|does|can|must|do|should|will))|(?<=dial )what|(?<=dial (?:to|at) )what|(?<=(?:asa|iso) (?:to|at) )what))(?=\s*[,;:?–-]| for\b| if\b| to get\b| with\b)", re.I)
""""asa dial where, …", "flash where for f/8, …"."""
_A_FIGURE = Pattern(r"\d|\b(?:one|two|twice|three|four|five|six|seven|eight|nine|ten|half|quarter)\b", re.I)


def _if_first(text: str) -> str:
    found = _IF_FIRST.match(text)
    if found is None or _ASKS.search(text) or "?" in text[:-1].rstrip("? ") or not _A_FIGURE.search(text):
        return text
    return f"what {'aperture' if found['what'].lower() == 'stop' else found['what']}{text[found.end() :]}"


def _where_it_goes(text: str) -> str:
    found = _WHERE_IT_GOES.match(text)
    if found is None or _ASKS.search(text, found.end()) or "?" in text[found.end() + 2 :] or not _A_FIGURE.search(text):
        return text
    return (f"where do I set the {found['dial']}" if found["dial"] else f"how far from the subject must the {found['light']} be") + text[found.end() :]


_DOES_WHAT = Pattern(r"\b(?P<does>(?:open|close|stop)(?: up| down)?|add|allow)(?: the lens| it)?(?: by)? what(?= (?:at|for|with|when|if|on|behind|through|once)\b|\W*$)", re.I)
_WHAT_DO_I = Pattern(r"\bwhat (?P<who>(?:do|must|should|would|shall) (?:i|we)) (?P<does>(?:open|close)(?: up| down)?|stop down|add|allow)(?= (?:at|for|with|when|if|on|behind|through|once)\b|\W*$)", re.I)


def _by_how_much(text: str) -> str:
    """"open up what at half life size?": by how much."""
    said = _DOES_WHAT.sub(r"\g<does> how much", text) if _DOES_WHAT.may_match(text) else text
    return _WHAT_DO_I.sub(r"how much \g<who> \g<does>", said) if _WHAT_DO_I.may_match(said) else said


_VALUE = r"(?:(?:f ?/? ?|iso |asa |1/)?\d[\d.]*(?: ?(?:ft|feet|foot|m|metres?|meters?|mm|film|s|sec))?|(?:full|half|quarter|1/\d+) power)"
_SETTING_OF_TWO = rf"{_VALUE}(?: (?:at|from|and|on) {_VALUE})?"
_MORE = r"(?:more|less|deep(?:er|est)|shallow(?:er|est)|thinner|sharper|softer|harder|harsher|brighter|darker|longer|shorter|blurr(?:ier|y)|further|farther|most|least|even(?:er)?|finer|coarser|faster|slower|wider|narrower)\b"
_TWO_FOR = Pattern(rf"^\W*(?:at |on |from |a |the )?(?P<two>{_SETTING_OF_TWO} or (?:at |on |from |a |the )?{_SETTING_OF_TWO})(?: lens)?,? (?:for|to get|to have|if i want|when i want|if i need)(?: me| us)? (?:an? |the )?(?P<what>(?:\w+ ){{0,2}}{_MORE}[^,?;.]{{0,30}})(?P<rest>[^?]*)\??\W*$", re.I)
_FOR_TWO = Pattern(rf"^\W*(?:an? |the )?(?P<what>{_MORE}[^,?;.\d]{{0,30}}?),? (?:at|with|from|on|by)? ?(?:the |a )?(?P<two>{_SETTING_OF_TWO} or (?:at |on |from |a |the )?{_SETTING_OF_TWO})(?P<rest>[^?]*)\??\W*$", re.I)


_BARE_TWO = Pattern(r"^(?P<one>\d[\d.]?\d?) or (?P<other>\d[\d.]?\d?)$", re.I)
_OF_DEPTH = Pattern(r"\b(?:depth|dof|in focus|focus|blurr\w*|background|sharp)\b", re.I)
_IS_DEEPER = Pattern(rf"^\W*(?:is|would|will) (?:the |my )?(?:depth of (?:field|focus)|dof|depth)(?: be)? (?:(?P<more>deeper|greater|larger|bigger|more)|shallower|smaller|thinner|less) (?:at|with|from|on) (?P<two>{_SETTING_OF_TWO} or (?:at |on |from |a |the )?{_SETTING_OF_TWO})(?P<rest>[^?]*)\??\W*$", re.I)
_DEEPER = Pattern(r"\b(?:(?P<more>deeper)|shallower|thinner) (?:focus|field|zone(?: of focus)?|plane of focus)\b", re.I)


def _which_of_two(text: str) -> str:
    """"f/4 or f/11 for deeper focus, 50mm at 6 ft": which of the two gives it."""
    text = _DEEPER.sub(lambda said: ("more" if said["more"] else "less") + " depth of field", text) if _DEEPER.may_match(text) else text
    asked = _IS_DEEPER.match(text)
    if asked is not None:
        return f"which gives {'more' if asked['more'] else 'less'} depth of field, {asked['two']}{asked['rest'].rstrip()}?"
    found = None if _ASKS.search(text) else _TWO_FOR.match(text) or _FOR_TWO.match(text)
    if found is None or "flash" in found["what"].lower():
        return text
    two = _BARE_TWO.sub(r"f/\g<one> or f/\g<other>", found["two"]) if _OF_DEPTH.search(found["what"]) else found["two"]
    return f"which gives {found['what'].strip()}, {two}{found['rest'].rstrip()}?"


def _of_full_power(text: str) -> str:
    said = _AT_FULL.match(text)
    return text if said is None else f"At full power it is {text[said.end() :].rstrip('?! ')}. what guide number {said['at']}?"


def _two_together(text: str) -> str:
    """"combined guide number, a 100 footer and a 70 footer": two guide numbers, and no place."""
    if not _SUM_OF_TWO.search(text):
        return text
    found = list(_A_GUIDE.finditer(text))
    named = sum("g" in one[0].lower().split(one["many"])[0] for one in found)
    if len(found) < 2 or len(found) > 4 or named not in (0, len(found)) or any(_A_PLACE.search(text[: one.start()]) for one in found) or _FIGURE.search(_A_GUIDE.sub(" ", text)):
        return text
    said = _A_GUIDE.sub(lambda one: f"gn {one['many']} {'m' if one['unit'].lower().startswith('m') else 'ft'}", text)
    said = _POLITE.sub("", said)
    return said if "?" in said or not _NAMED_FIRST.match(said) else f"what is the {said.lstrip()}?"


def _of_two_films(text: str) -> str:
    """"400 film doubles the guide number over 100": film speeds, and no guide number of 100."""
    said = _SPEED_DOUBLES.sub(lambda found: f"ISO {found['one']} {found['does']} the guide number" + (f" over ISO {found['other']}" if found["other"] else ""), text)
    return _GUIDE_AT.sub(r"guide number at ISO \g<one> \g<is> that at ISO \g<other>", said)


def _one_of_them(text: str) -> str:
    """"light a foot back" is no light called A, and "from one head to two" are flashes."""
    said = _NO_NAME.sub(r"\g<light> one", text) if _NO_NAME.may_match(text) else text
    return _FROM_ONE_TO.sub(r"from one flash to \g<many>", said) if _FROM_ONE_TO.may_match(said) else said


_RULES: tuple[Callable[[str], str], ...] = (with_marks, _stops, _with_it_on, _if_first, _by_how_much, _which_of_two, _where_it_goes, _of_full_power, _two_together, _of_two_films, _one_of_them)

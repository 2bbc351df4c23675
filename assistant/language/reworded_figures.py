"""Figures, and what is asked of them, put into their usual wording: "40 000 joules", "EV 10, at ISO 100,", "which gets more and how many stops more?".

Rows of the table of `usual_words`: letters one of which the text must hold, what is said, and its usual wording.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from assistant.language.number_words import SMALL, TENS
from assistant.parts import A_PART, part_said
from assistant.patterns import Pattern

_WHICH_AND_BY = Pattern(
    r"(?P<which>\bwhich (?:one |of (?:them|the two) )?(?:gets?|is|are|receives?|has|takes?|looks?|catches|sees|comes out)[^?.!]{3,40}?),? (?:and|but) how (?P<much>many stops|much) (?:more|brighter|less|darker|stronger|weaker|hotter|dimmer)(?: light)?(?: (?:is|does|do) (?:it|that)(?: (?:get|have|receive))?)?\s*\?", re.I)
"""Which of two, and by how much: "which gets more light and how many stops more?"."""
_BOTH_AT_100 = Pattern(r"(?<=[\dm]),? (?:and )?both(?: of them)?(?: being| are| were)?(?: measured| given| quoted| told| stated| found)? (?:at|for|on) (?:ISO|ASA) 100\b(?! film)(?=\s*[.;,?])", re.I)
"""What guide numbers are for that say nothing of it (contract 2)."""
_HALF_THAT = Pattern(r"\b(?P<half>half) (?:of )?(?:that|this|the) (?:distance|far|way)\b(?! of)", re.I)
"""Half of the distance that was named: no power."""
_THE_TEAM = Pattern(r"\b(?P<game>cricket|football|hockey|first|second|school|village|home|visiting) eleven\b(?! (?:feet|foot|ft|metres?|meters?|m|stops?|people|players|men|women)\b)", re.I)
"""So many play in one; nothing is counted."""
_THE_BRIGHTER_ONE = Pattern(r"(?<=\bstops is )(?P<how>(?:the |my |her |his )(?:\w+ ){1,3}?)the (?P<more>brighter|darker|stronger|weaker|hotter|dimmer) one(?=\s*\?)", re.I)
_LIT_EDGE = Pattern(r"\b(?P<which>near(?:er|est)?|far(?:ther|thest)?|further|furthest) (?:edge|corner)\b", re.I)
_LAMP_ALONE = Pattern(r"\b(?:lamp|light|flash|head|strobe)\b", re.I)
_HOW_FAR = Pattern(r"\d ?(?:m|cm|ft|feet|foot|metres?|meters?|yards?|inches)\b", re.I)
_SHARPNESS = Pattern(r"\b(?:the|an?) (?:edge|corner)\b|\bEV\b|\b(?:focus\w*|sharp\w*|lens|depth|hyperfocal)\b|\d ?mm\b|\bf ?/ ?\d", re.I)


def _as_an_end(found: re.Match[str]) -> str:
    """"the near edge is 1.5 m from the lamp": of a thing that is lit, where nothing of a lens is told, no edge of what is sharp."""
    said = found.string
    return f"{found['which']} end" if _LAMP_ALONE.search(said) and _HOW_FAR.search(said) and not _SHARPNESS.search(said) else found[0]


_EV_AT = Pattern(r"\b(?P<ev>EV -?\d+(?:\.\d+)?), (?:at|for|on) (?P<iso>(?:ISO|ASA) \d+)(?:, |(?=[.;?!]|$))", re.I)
"""The film that an EV is for, set between commas."""
_TAKES_IT_OFF = Pattern(r"(?P<told>\bstops? too (?:bright|hot|much|light|strong)\b[^?]*?)(?P<asked>\b(?:what|which) distance|\bhow far(?: back| away)?) (?:takes?|knocks?|would take|will take|cures?|gets?)(?: (?:that|it|the|this|exactly|just|a|an|half|one|two|third|thirds|of|full|whole|extra|stop|stops))+ off\b", re.I)
"""What is too much is what is to be taken off: it is told once."""
_THOUSANDS = Pattern(r"(?<![\d/.,:'-])(?<!f)\b[1-9]\d{0,2}(?: \d{3})*(?: 0\d\d)(?: \d{3})*(?![\d/.,:'])(?!-\d)", re.I)
"""Thousands set apart by a space: no number begins with nought, so that "40 000" is one."""
_THOUSANDS_OF_ENERGY = Pattern(
    r"(?<![\d/.,:'-])(?<!\bf )(?<!f)(?<!\bf/ )(?<!\biso )(?<!\basa )(?<!\bgn )(?<!\bnumber )(?<!\bof )(?<!\bat )\b[1-9]\d{0,2}(?: \d{3})+(?= ?(?:joules?|j|ws|w/s|watt[- ]?seconds?)\b(?! ?(?:heads?|packs?|units?|flash(?:es)?|monolights?|monoblocs?|lights?|strobes?|guns?|lamps?|each(?! (?:pop|flash|shot|frame)))\b))", re.I)
""""12 500 Ws"; "2 600 Ws heads" are two."""


def _joined(found: re.Match[str]) -> str:
    return found[0].replace(" ", "")


_OF_OVEREXPOSURE = Pattern(r"(?P<so_many>\b(?:gives?|giving|means?|makes?|causes?|amounts? to|comes? to|results? in|leads? to|adds?|is|gets?|leaves?)\b(?: (?:me|us|it|the film|the negs?|about|only|just|exactly))* [^.,;?!]{1,24}? stops?) of (?P<way>over|under)-?exposure\b", re.I)
"""So much light more or less, said by what it does to the film."""
_TIME_HALVED = Pattern(r"\b(?P<each>each|every) time (?:(?:the|my) )?(?:shutter (?:time|speed)|time|exposure time|speed) (?:is |gets )?(?:halved|halves|doubled|doubles)\b", re.I)
"""Where the shutter goes a step shorter, and no half second."""
_LIGHT = r"(?P<light>(?:the|my) (?:key|main|fill|hair|rim|kicker|accent|background|backdrop|back)[- ]?(?:light|head|flash)?|the (?:other|second) (?:light|head|flash|one))"
_HOW_STRONG = Pattern(
    rf"\bhow (?:strong|high|hard) (?P<how>must|should|do i set|does|has) {_LIGHT} (?:be set|be turned|have to be set|need to be set|be dialled|to be set)\b"
    rf"|\bwhat (?:do|should|must|would) i (?:dial|dial in|set|put) (?:in )?on {_LIGHT.replace('<light>', '<dialled>')}(?! to\b)"
    rf"|\bwhat (?:do|should|must|would|does) (?:i (?:put|set|run|dial|turn) )?{_LIGHT.replace('<light>', '<turned>')} (?:(?:have to |need to )?(?:go|run|be set|be put) )?(?:on|to|at)\b(?! (?:be|read|stand|give)\b)", re.I)
_A_POWER = Pattern(r"\bpower\b|\bfull\b|(?<![/\d])1/(?:2|4|8|16|32|64|128)\b", re.I)


def _as_a_power(found: re.Match[str]) -> str:
    """"the key at half power, how strong must the fill be set?", "what does the fill go on?": a power, where one is told."""
    light = found["light"] or found["dialled"] or found["turned"]
    return f"what power {found['how'] or 'does'} {light} {'be set to' if found['how'] else 'need'}" if _A_POWER.search(found.string) else found[0]


_ASKED_AT = Pattern(r"\b(?P<what>factor|aperture|f-?stop|f|stop|f-?number) at (?=[\w ./]{1,24}?(?:\blife[- ]?size|%|\bpercent\b|\btimes (?:full|the|its|as)\b))", re.I)
"""Asked at a scale, a part or a multiple, and no value: "exposure factor at one and a half times life size", "what f at 50%"."""
_INSTEAD = Pattern(r"\b(?:use|using|shoot(?: at)?|work(?: at)?|have|open(?: up)? to|be at|set) f ?/ ?(?P<now>\d[\d.]*) (?:instead of|rather than|in place of|where (?:i|we)(?:'d| would) otherwise (?:be|use|need|have)(?: at)?) (?:the )?(?:f ?/ ?)?(?P<before>\d[\d.]*)\b(?! ?(?:m|ft|feet|metres|s)\b)", re.I)
"""One f-number in place of another: it goes from the one to the other."""
_OR_AT = Pattern(r"(?P<first>\bat (?:iso |f/?)?\d[\d./]* or )at (?=\d)", re.I)
"""Of two to choose from, "at 200 or at 100"."""
_FASTEST_FILM = Pattern(
    r"\b(?:what(?:'s| is)|which is) the (?:fastest|slowest|quickest|highest) (?:film(?: speed)?|iso|speed of film) (?:(?:that )?(?:I|we) (?:can|could|may|might) (?:still |just )?(?:use|expose|shoot|load|put in|get away with)(?: (?:correctly|properly|rightly))?"
    r"|(?:that |which )?(?:won't|will not|wouldn't|would not|doesn't|does not|can't|isn't|is not)(?: be| get)? (?:over|under)-?expos(?:e|ed)(?: (?:the |this |that |in (?:the |this )?)?(?:daylight|ambient|day|sky|scene|light))?)\b", re.I)
_CLOSES_TO = Pattern(r"(?P<lens>\b(?:my|the) lens) (?:closes|stops|goes|shuts)(?: down)? (?:(?:no (?:further|farther|smaller|more) than|only (?:to|as far as)|to) )(?=f ?/ ?\d)", re.I)


def _at_its_end(found: re.Match[str]) -> str:
    """The fastest film is the one for the end that the lens has."""
    return f"{found['lens']} is at " if "what film do I need" in found.string else found[0]


_ON_TO = Pattern(r"(?P<from>\bfrom (?:about |some |only |just )?[\w./½¼ ]{1,24}?) (?:(?:right|all the way|clear|clean|straight|out|through|across|over|on|back|up|away) ?){1,4}(?= to (?:about |some )?(?:\d|infinity|the horizon|an?\b|half|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|forty))", re.I)
_SHARP = Pattern(r"\bsharp\w*\b|\bin focus\b|\bdepth of field\b", re.I)


def _as_a_span(found: re.Match[str]) -> str:
    """"sharp from 2 m right through to 3 m": from the one to the other, where it is of sharpness and nothing moves."""
    return found["from"] if _SHARP.search(found.string) else found[0]


_GUIDE_FALLS = Pattern(
    r"(?P<guide>\b(?:guide(?: number| no\.?)?|gn)(?: (?:of|for|on) (?:my|the|this|that|your) (?:\w+ )?(?:flash|gun|unit|light|lamp|head|strobe))?),? (?:(?:only|then|now|just|is|has|gets|was) )*(?:comes?|goes|drops?|dropped|falls?|fallen|shrinks?|shrunk|sinks?|reduces?|reduced|cut|dwindles?|down)(?: (?:down|away|back))? to (?=(?:about |only |just |roughly )?(?:\d|[a-z]+ ?(?:m|metres?|meters?|ft|feet)\b))(?![^.?!;]{0,24}\bfrom\b)", re.I)
_BOTH_OUTDO = Pattern(r"(?P<both>\b(?:the two|they|both|the pair)(?: of them)?(?: together| combined| added)?) (?:beat|outshine|outdo|surpass|top|out-?weigh)\b", re.I)
"""What two lights are more than one of them."""
_EV_COUNTED = Pattern(r"(?P<ev>\b(?:what|which) (?:EV|exposure value|light value)),? (?:(?:as |when )?(?:counted|reckoned|given|quoted|measured|referred|taken|stated) )?(?:at|for|to|on) (?P<iso>(?:ISO|ASA) ?\d+),? (?=[a-z])", re.I)
"""The film that it is to be counted for, set between commas: "what EV, counted at ISO 100, am I looking at?"."""
_GUIDES = Pattern(r"\b(?:guides?|gns?)\b", re.I)


def _the_guide_left(found: re.Match[str]) -> str:
    """"in high-speed sync the guide number drops to 14 metres": what it is there, where no other is told."""
    return found["guide"] + " is " if len(_GUIDES.findall(found.string)) == 1 else found[0]


_NAMED_FIRST = Pattern(r"^(?P<before>\W*(?:(?:oh|ah|right|yes|sorry|ok|okay|well|of course|hm+|erm?|so|and)\b\W*)*)(?P<what>(?:the|my|its) (?:guide number|gn|distance|aperture|power|film speed|shutter(?: speed)?|focal length|exposure index))[.,:;!]+ (?:it'?s|it is|that'?s|that is) (?:an? )?(?=[\df/])", re.I)
"""What was asked for, named and then told: "oh right, the guide number. It's a 40"."""
_UNIT_AFTER = Pattern(r"^(?P<told>(?![^\0]*\?)[^\0]*\b(?:it'?s|it is|that'?s|number is) (?:an? )?\d{1,3}), (?:in )?(?P<unit>feet|foot|ft|metres?|meters?)\b,?(?=\W*$|,? (?:at|for|on) (?:iso|asa|full)\b)", re.I)
"""The unit of a figure after a comma: "it's a 28, metres, at ISO 100"."""
_CLOSED_TO = Pattern(r"\b(?:clos(?:ed?|ing)|shut)(?: (?:it|the lens|the ring|the iris))?(?: down| up)? to (?=(?:f ?/? ?)?(?:2\.8|4|5\.6|6\.3|7\.1|8|9|10|11|13|14|16|18|20|22|25|29|32|36|45|64)\b(?! ?(?:\d|m\b|mm|ft|feet|foot|met|cm|in\b|yards|people|stops?|sec)))", re.I)
"""Stopped down to: "and closed to 16"."""
_SO_MANY_FULL = Pattern(r"\b(?P<many>\d{1,5}) full(?:[- ]power)? ones\b", re.I)
"""Pops, where a number of full ones is told."""
_FOR_THE_OTHER_GEL = Pattern(r"\b(?P<gel>(?:full|half|quarter|eighth|double) (?:orange|blue|straw|green|cto|ctb)(?: gel)?) (?:in place of|instead of|rather than|in for) (?:the|my|that) (?:full|half|quarter|eighth|double)(?: (?:orange|blue|straw|green|cto|ctb|one))?\b(?! ?(?:a |of |power|stop))", re.I)
"""A gel by its strength in place of one of another strength."""
_AT_ITS_LOWEST = Pattern(r"(?P<light>\b(?:flash|light|lamp|head|strobe|gun|unit|key|fill)),? (?:turned |set |even |when )*(?:down )?(?:at|on|to) (?:its|the) (?:very )?(?:lowest|minimum|least|smallest|weakest)(?: power)?(?: setting)?,? (?=(?:still |only |just )?(?:meters?|reads?|gives?|is f|measures))", re.I)
"""How low a lamp is turned says nothing beside what it reads there."""
_ALL_I_HAVE = Pattern(r"^\W*(?:(?:but|and|well|sorry|ah|hm+|ok) )*(?:i |we |there's |i've |we've )?(?:can |could )?(?:only |just )(?:found|find|have|got|brought|packed|own|hold) (?P<what>(?:an? )?[^,.;?]{1,24}?)(?: (?:in|at|from|on) (?:the|my|his|her|our) [a-z]+)?[,.;]+ (?:and )?(?:does|will|would|is|can) (?:that|it|this)(?: one)? (?:do|work|enough|be enough|do it|do the job|manage)(?: (?:it|too|as well|instead))*\s*\?", re.I)
"""What there is instead, and whether it does: "only found a 0.3 in the bag, does that one do it?"."""
_ITS_OWN_LIGHT = Pattern(r"(?P<whose>\b(?:[a-z]+['’]s|its)) own light (?=(?:by itself |alone )?(?:would |will )?(?:needs?|wants?|takes?|asks?|calls|has)\b)", re.I)
"""The light of a place and what it needs, and no light alone."""
_TUBE_BY_NUMBER = Pattern(r"(?<![\d./])\b(?P<long>\d{1,2})(?= (?:(?:extension )?tube|extension ring)\b)", re.I)
"""How long it is, in millimetres: "the 36 tube"."""
_SURFACE = r"\b(?P<what>ceiling|wall|paint(?:work)?|plaster|roof|surface|reflector|(?:white |bounce |foam )?(?:card|board)|panel|sheet|whitewash|tiles?)"
_GIVES_BACK = Pattern(
    rf"{_SURFACE} (?:itself )?(?:only |just |then |probably )?(?:(?:(?:throws?|gives?|sends?|bounces?|hands?) back|reflects?|returns?)(?: (?:only|just|about|roughly|some))* {A_PART.format('kept')}|(?:swallows|eats|absorbs|soaks up|drinks|keeps|takes|loses|costs)(?: (?:only|just|about|roughly|some))* {A_PART.format('gone')}(?= (?:of (?:it|that|the|what|my)|the (?:light|flash))\b|\W*$|[,.;] ))"
    r"(?: ?(?:of )?(?:the |its |my |that )?(?:light|flash)| of it| of that| of what (?:hits|reaches|falls on) it)?(?: back)?", re.I)
"""What a surface throws back, or keeps, of the light that falls on it."""
_STOPS_ASKED = Pattern(r"\bhow many stops\b|\bin stops\b|\bwhat (?:loss|factor)\b|\bhow much (?:light )?(?:does|do|is|am|have)\b", re.I)


def _as_stops_lost(found: re.Match[str]) -> str:
    """"the paint throws back half the light": it loses one stop, and the flash stands on no half power; as told where the stops of it are what is asked."""
    if _STOPS_ASKED.search(found.string):
        return found[0]
    left = part_said(found["kept"]) if found["kept"] else 1 - part_said(found["gone"])
    return f"{found['what']} loses {-math.log2(left):.4g} stops" if 0 < left < 1 else found[0]


_EACH_ALONE = Pattern(
    r"(?P<one>\b(?:flash|strobe|fill)|\b(?:day|window ?)?light|\bdaylight|\bwindow|\bsky|\bsun|\broom|\bambient)(?: light)? and (?:the |my )?(?P<other>(?:flash|strobe|fill)\b|daylight|window|sky|sun|room|ambient)(?: light)?\b(?P<told>[^.?!;]{0,60}?)\b(?:each|both)(?: one| of them| of the two| light)?"
    r"(?:,? (?:by (?:itself|themselves)|alone|on (?:its|their) own),?)? (?:reads?|gives?|meters?|measures?|comes? out at|is|are)(?: at)? (?P<mark>f ?/? ?\d+(?:\.\d+)?)(?:,? (?:by (?:itself|themselves)|alone|on (?:its|their) own))?", re.I)
"""Two lights of one reading, told at once: "flash and daylight from one side, and each by itself reads f/8"; each may be told anew."""


def _one_after_the_other(found: re.Match[str]) -> str:
    one, other = found["one"].lower(), found["other"].lower()
    if sum(name in ("flash", "strobe", "fill") for name in (one, other)) != 1 or not _ALONE.search(found[0]):
        return found[0]
    return f"{found['one']} and {found['other']}{found['told']}the {one} alone reads {found['mark']}, the {other} alone reads {found['mark']}"


_STOPS = r"(?:(?:about|some|roughly|exactly|just|only) )?(?:\d[\w./ ]{0,8}?|[½⅓⅔]|an?|one|two|three|four|five|half an?|a (?:half|third)(?: of an?)?|two thirds(?: of an?)?|one and a half) (?:full |whole )?(?:f-?)?stops?"
_BY_SO_MANY = Pattern(rf"\b(?P<is>is|are|was|be|being|reads?|meters?|sits?|comes? out|lies) (?P<way>brighter|stronger|hotter|higher|darker|dimmer|weaker|lower|more|less) than (?P<other>(?:(?:the|my|its|a) )?(?:\w+[ -]){{0,2}}?\w+) by (?P<much>{_STOPS})\b", re.I)
"""By how much, after the other of the two: "the flash is brighter than the daylight by a stop"."""
_THAN_WANTED = Pattern(rf"(?P<much>\b{_STOPS}) (?:(?P<more>more|higher|above|over|brighter|hotter|stronger)|less|lower|below|under|darker|dimmer|weaker)(?: light)? (?:than )?(?:(?:what )?(?:i|we) (?:want|need|like|wanted|needed|(?:a|we)re after)|(?:what (?:is|was)|it'?s|is|was)? ?(?:needed|wanted|called for|required)|what (?:it|i) (?:should|ought to) (?:be|have|get)|it (?:should|ought to) be|it needs|right)\b", re.I)
"""Held against what is wanted, it is too much or too little: "half power gives a stop more than I need"."""
_FROM_THE_OTHER = Pattern(r"(?P<stops>\bstops?) (?:(?P<up>up)|down) (?:from|on) (?=(?:the |my )?(?:key|main|fill|hair|rim|kicker|accent|daylight|ambient)\b(?! (?:and|at|on|is|to|it)\b))", re.I)
"""Held against another light, and no power turned down: "the backdrop f/8 is two stops down from the key"."""
_FROM_ONE_FILM_AT = Pattern(
    r"(?P<move>(?:\b(?:going|changing|moving|dropping|switching|swapping|stepping|coming) (?:down |up |over )?)?\bfrom (?:ISO|ASA) ?\d+ to (?:ISO |ASA )?\d+(?: film)?),? (?:at|on|with (?:the |my )?(?:lens|ring|aperture|shutter) (?:at|on)) (?P<mark>f ?/? ?\d+(?:\.\d+)?|1/\d+(?: s(?:ec(?:onds?)?)?)?)(?![^?]*\b(?:was|before|had|used to|originally)\b)(?=[^?]*\b(?:what|which)\b)", re.I)
"""A change of film at a setting that was right before it: "going from ISO 400 to ISO 200 at f/8, what aperture?"."""
_SWAPPED_IN = Pattern(r"\b(?P<swap>swap|chang|switch|trad)(?P<end>ped|ed|ping|ing)? in (?:(?:the|an?|my|some) )?(?P<new>(?:ISO |ASA )?\d{2,4}(?: film)?) for (?:(?:the|an?|my) )?(?P<old>(?:ISO |ASA )?\d{2,4}(?: film)?)\b", re.I)
"""What is swapped in for another is the new one."""
_ALONE = Pattern(r"\beach\b|\balone\b|\bby themselves\b|\bon their own\b", re.I)
_METRES_AND_CM = Pattern(r"\b(?P<metres>\d{1,2}|an?|one|two|three|four|five|six) met(?:er|re)s?,? and (?P<rest>\d{1,2}|ten|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety) ?(?:cm|centimet(?:er|re)s?)\b", re.I)

_SPOKEN = SMALL | TENS | {"a": 1, "an": 1}


def _in_metres(found: re.Match[str]) -> str:
    """"a metre and twenty centimetres": one length."""
    metres, rest = found["metres"].lower(), found["rest"].lower()
    whole, part = (float(_SPOKEN.get(said) or said) for said in (metres, rest))
    return f"{whole + part / 100:g} m"


OF_FIGURES: tuple[tuple[tuple[str, ...], Pattern, str | Callable[[re.Match[str]], str]], ...] = (
    ((" from ", " on "), _FROM_THE_OTHER, lambda found: f"{found['stops']} {'over' if found['up'] else 'under'} "),
    (("rom ISO", "rom iso", "rom ASA", "rom asa"), _FROM_ONE_FILM_AT, r"at \g<mark> \g<move>"), ((" in ",), _SWAPPED_IN, lambda found: f"{found['swap']}{found['end'] or ''} the {found['old']} for the {found['new']}"),
    ((" than ",), _BY_SO_MANY, r"\g<is> \g<much> \g<way> than \g<other>"),
    ((" need", " want", " right", " like", " should", " ought", " after", " called for", " required"), _THAN_WANTED, lambda found: f"{found['much']} {'over' if found['more'] else 'under'}"),
    ((" cm", "centimet"), _METRES_AND_CM, _in_metres), (("each ", "both "), _EACH_ALONE, _one_after_the_other),
    (("how many stops", "how much"), _WHICH_AND_BY, r"\g<which> and by how \g<much>?"), (("oth ",), _BOTH_AT_100, ""), (("yperfocal",), _HALF_THAT, r"\g<half> the hyperfocal distance"), ((" eleven",), _THE_TEAM, r"\g<game> team"), (("er one",), _THE_BRIGHTER_ONE, r"\g<how>\g<more>"),
    (("edge", "corner"), _LIT_EDGE, _as_an_end), (("EV", "ev"), _EV_AT, r"\g<ev> at \g<iso> "), ((" off",), _TAKES_IT_OFF, r"\g<told>\g<asked>"),
    (("back", "reflect", "return", "swallows", "eats", "absorbs", "soaks", "drinks", "keeps", "takes", "loses", "costs"), _GIVES_BACK, _as_stops_lost), ((" beat", " out", " surpass", " top "), _BOTH_OUTDO, r"\g<both> exceed"),
    (("EV", "ev", "value"), _EV_COUNTED, r"\g<ev> at \g<iso> "),
    ((" to ",), _ON_TO, _as_a_span), ((" to ",), _GUIDE_FALLS, _the_guide_left),
    (("est film", "est ISO", "est iso", "est speed"), _FASTEST_FILM, "what film do I need"), ((" lens ",), _CLOSES_TO, _at_its_end), (("ow strong", "ow high", "ow hard", "hat do", "hat should", "hat must", "hat would"), _HOW_STRONG, _as_a_power), (("halv", "doubl"), _TIME_HALVED, r"for \g<each> halving of the shutter time"), (("0",), _THOUSANDS, _joined), ((" J", " j", "Ws", "ws", "w/s", "W/s", "watt"), _THOUSANDS_OF_ENERGY, _joined), (("expos",), _OF_OVEREXPOSURE, lambda found: f"{found['so_many']} {'more' if found['way'].lower() == 'over' else 'less'} exposure"),
    (("life", "%", "percent", " times "), _ASKED_AT, r"\g<what>, at "), ((" or at ",), _OR_AT, r"\g<first>"), (("instead of", "rather than", "in place of", "otherwise"), _INSTEAD, r"go from f/\g<before> to f/\g<now>"),
    (("number", "gn", "GN", "distance", "aperture", "power", "speed", "shutter", "length", "index"), _NAMED_FIRST, r"\g<before>\g<what> is "), ((", in ", ", met", ", f"), _UNIT_AFTER, r"\g<told> \g<unit>"), (("clos", "Clos", "shut"), _CLOSED_TO, "stopped down to "), (("full",), _SO_MANY_FULL, r"\g<many> full power pops"), ((" in place of", " instead of", " rather than", " in for"), _FOR_THE_OTHER_GEL, r"\g<gel> instead"), (("lowest", "minimum", "least", "smallest", "weakest"), _AT_ITS_LOWEST, r"\g<light> "), (("nly ", "ust "), _ALL_I_HAVE, r"and with \g<what>?"), ((" own light",), _ITS_OWN_LIGHT, r"\g<whose> light "), ((" tube", " extension ring"), _TUBE_BY_NUMBER, r"\g<long> mm"),
)

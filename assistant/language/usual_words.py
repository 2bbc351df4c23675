"""One wording for what has several: a table of what is said, and how it is usually said.

"the softbox stays in the car" is a softbox that is off, "back the light up 4 feet" moves it back, and "a strip" that
takes light is a softbox. Each row names letters one of which the text must hold, so that most texts pass by.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.language.reworded_figures import OF_FIGURES
from assistant.patterns import Pattern

_SET_UP_TO = Pattern(r"\bset up(?= to (?:be|give|come|read|light|expose)\b)", re.I)
"""How it is set, and no limit: "set up to be right at three metres"."""
_ROW_OF_THINGS = Pattern(r"\b(?:an?|the|my) (?:row|line) of(?= [a-z]+(?: that is| which is| is)?,? \d+(?:\.\d+)? ?(?:mm|cm|millimet\w+|centimet\w+) (?:long|wide|across|high|tall)\b)", re.I)
"""So small, it is a thing to be taken, and no row of people."""
_STOPS_GONE = Pattern(r"(?<!many )(?<!more )\b(?P<stops>stops?)(?:(?: (?:more|further|extra|of light)){1,2} (?:gone|lost)\b| gone(?=\s*(?:[.;]|$)))", re.I)
"""More of them gone is more lost, and not more light: "that's half a stop more gone"."""
_IN_STOPS_OVER_ONE = Pattern(r"\b(?P<sum>(?:add|come|make|sum)s?(?: up)? to),? in stops(?:,? (?:over|above|against|more than|compared (?:to|with)) (?:just )?(?:an? |the )?(?:single |lone )?(?:one|flash|pop|burst|light|head|firing)(?: alone| by itself| on its own)?)?(?=\W*$)", re.I)
"""What several come to, in stops of one of them."""
_HALF_OF_A_WHILE = Pattern(r"\b(?:first|second|other|last|latter) half of (?=(?:the|my|that|this|a) (?:roll|film|day|session|evening|class|shoot|game|match|wedding|show|play|concert|set|afternoon|morning|night)\b)", re.I)
"""A part of a roll or of a day is no half power."""
_WENT_IN = Pattern(r"\b(?:a |an |the |some )?(?P<speed>\d{2,4})(?: film| roll)? (?=(?:went|has gone|goes|is going|was going|gets|got) (?:in|on|loaded)\b)", re.I)
_ROLL = ("film", "roll", "Film", "Roll")
"""Where films are spoken of, "an 800 went in" is one."""
_TWICE_ON_ONE = Pattern(r"\b(?P<often>twice|three times|four times)(?: over)? (?=(?:on|onto|in) (?:one|the same|a single) (?:frame|negative|sheet|exposure)\b)", re.I)
_OFTEN = {"twice": "with two pops", "three times": "with three pops", "four times": "with four pops"}
_WALL_MOVED = Pattern(r"\b(?:mov|push|drag|shift|roll|tak|bring|pull|slid)\w*(?= the wall to \d| the wall to (?:two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty)\b)(?P<wall> the wall) to", re.I)
"""A wall that is moved is a backdrop, and no leg of a bounce."""
_AM_SET_FOR = Pattern(r"\b(?:i|we)(?:'m| am|'re| are) (?=(?:set|exposing|exposed) for \d)", re.I)
"""What the exposure is set for, and not where one stands."""
_HANDS_FULL = Pattern(r"\bhands?(?: are| is|'re)? full\b", re.I)
"""No full power."""
_MAKES_DOUBLE = Pattern(r"\bmakes? (?P<what>(?:the |my )?(?:guide numbers?|gn|power|light|energy)) (?:double|twice)(?: (?:of )?what (?:it|that) (?:is|was))? (?:at|on|with)(?= (?:iso |asa )?\d)", re.I)
_BARE_BOX = Pattern(
    r"(?<!\bsoft )(?<!\blight )(?:(?<!\bthe )(?<!\bmy )(?<!\ba )(?<!\bthat )(?<!\bthis )\bbox (?=(?:takes|eats|costs|loses|robs|swallows|steals|drinks) )"
    r"|(?<=\ba )box (?=(?:(?:that|which) )?(?:takes|eats|costs|loses|robs|swallows|steals|drinks|(?:i|we)(?: have|'ve)? (?:measured|tested|metered|timed)|(?:measured|tested|metered) at)\b)"
    r"|(?:(?<=\bin a )|(?<=\bin my )|(?<=\binto a )|(?<=\binto my ))box (?=(?:that|which|i|we)\b)|(?<=\bin the )box (?=(?:that|which) (?:takes|eats|costs|loses)\b))", re.I)


def _a_softbox(found: re.Match[str]) -> str:
    """"head in a box that eats a stop": no camera's box, nor the speed on one."""
    return "softbox " if found.string[: found.start()].lower().endswith(("a ", "my ", "the ")) else "the box "


_HANGS = r"(?P<thing>umbrella|brolly|soft ?box|box|silk|gel|grid|scrim|dome|diffuser|filter|polari[sz]er|nd|snoot|octa|beauty dish|cloth|net)"
_ELSEWHERE = r"(?:in (?:the|my|its) (?:car|bag|van|case|boot|kit bag|cupboard)|at home|behind)"
_STAYS_BEHIND = Pattern(rf"\b(?:(?:leave|leaving|left) (?:the|my) {_HANGS} {_ELSEWHERE}|(?:the|my) {_HANGS.replace('thing', 'other')} (?:stays|stayed|is left|was left|left|remains|is) {_ELSEWHERE})\b", re.I)
"""A thing that would hang in the light, and is not there."""
_COMES_OUT = Pattern(rf"\b(?P<the>the|my|that) {_HANGS} (?:(?:now|then|just) )?(?:comes|came|has come|is coming|has been taken|was taken|is taken)(?: (?:back|right))? out(?=\s*(?:[.,;?!]|$|and\b))", re.I)
_TAKEN_OUT = Pattern(rf"\b(?P<take>tak(?:e|es|en|ing)|took) out (?P<the>the|my|that|an?) (?P<what>(?:[\w-]+ )?{_HANGS})\b", re.I)
"""What comes out of the light hangs in it no more."""
_TAKES_ITS_PLACE = Pattern(
    r"(?:\b(?:in (?:its|their) place|instead of (?:it|that|them))(?: (?:goes|comes|hangs|i (?:use|put|hang|fit)))?,? (?=an? )"
    r"|\b(?:(?:i|we) )?(?:(?:now|then) )?(?:swap|change|switch)(?:ped|d|ed|s)?(?: over)?(?: (?:it|that))? (?:for|to) (?=an? )"
    rf"|\b(?:i|we) (?:use|put|hang|fit|have|take|put up|put in) (?=(?P<new>an? [^.,;?!]{{0,50}}?) (?P<instead>instead|in (?:its|their) place)\b))(?=an? (?:(?!\b(?:for|and)\b)[^.,;?!]){{0,30}}?{_HANGS}\b)", re.I)
_A_THING = Pattern(rf"\b{_HANGS}\b", re.I)


def _swapped_for_it(found: re.Match[str]) -> str:
    """"f/8 through a one-stop umbrella; I use a two-stop softbox instead": the umbrella goes, where it alone was named before."""
    before = {thing["thing"].lower() for thing in _A_THING.finditer(found.string, 0, found.start())}
    return f"I swap the {before.pop()} for " if len(before) == 1 and found["thing"].lower() not in before else found[0]


_SHARP_STARTS = Pattern(r"\bwhere (?:does|do|will|would) (?:the |my )?(?:depth of field|sharpness|zone of sharpness|sharp zone|focus) (?:start|begin|(?P<ends>end|stop|run out|finish))\b", re.I)
_FILLS_FROM = Pattern(r"\b(?:i|we)(?:'m| am|'re| are) (?:filling|lighting)(?: (?:it|her|him|them|in))? from (?=\d)", re.I)
"""Where the flash stands, and not the one who speaks."""
_TO_A_ROW = Pattern(r"(?<![\d/.])\b(?P<far>\d+(?:\.\d+)?) to the (?P<row>front|back)(?: (?:row|one))?\b", re.I)
"""The place of a row, told before it and without its unit."""
_NOW_IT_IS = Pattern(r"(?<=[a-z0-9]) now (?=(?:it'?s|it is|they'?re|they are|he'?s|she'?s|i'?m|i am|we'?re|the (?:light|flash|head|lamp) is) (?:at |on |about |only )?\d)", re.I)
"""What is so now begins anew, though no comma says so."""
_THAT_ONE = Pattern(r"(?P<row>\b(?:to|from) the (?:front|back|near|far)) one\b", re.I)
"""To the one in front, and no length of one."""
_ROLE_ASIDE = Pattern(r"\b(?P<role>(?:key|fill|hair|rim|kicker|accent|background|back)(?: ?light)?), (?:from|off|up|to|behind|on|over) [a-z' ]{3,24}, (?=(?:reads?|meters?|gives?|is|at)\b)", re.I)
"""Where a light stands, said between it and its reading."""
_LEAFLET_GIVES = Pattern(r"\b(?P<paper>leaflet|manual|booklet|book|label|sticker|plate) (?P<gives>gives|says|claims|quotes|states|promises) (?=\d+ ?(?:feet|ft|metres|meters|m)\b(?! (?:away|from|to)\b))", re.I)
"""Of a flash a length in print is its guide number."""
_CUT_OF = Pattern(r"\b(?:a )?(?:full|half|quarter) cut (?:of )?(?P<colour>orange|blue|straw|green)\b(?: gel)?", re.I)
"""A gel by its strength, and no power."""
_THROWS_AWAY = Pattern(r"\b(?:throws?|chucks?) away(?= (?:more|less|the (?:most|least)|as much|half|a quarter|\d))", re.I)
_STRIP_BOX = Pattern(r"(?<!test )(?<!film )(?<!contact )(?<!paper )(?<!light )\bstrip(?= (?:(?:is )?down|takes|costs|eats|loses|robs|(?:on|off|up)\b(?! (?:the|a|my)\b)))", re.I)
""""with the strip on", "strip takes a stop": the narrow softbox, and no test strip."""
_SO_MANY_OVER = Pattern(r"(?<![\d/.])(?<!f/)(?<!f)(?<!and )(?<!and a )(?<!and an )\b(?P<many>one|two|three|half|a half|a third|two thirds|one and a half|1|2|3|1\.5) (?=(?:over|under|above|below) (?:the|my|her|his) (?:key|main|fill|ambient|room|background|sky|window)\b)", re.I)
""""one over the key": stops, of the light that is named after it."""
_WHERE_GOES = Pattern(r"\b(?P<where>wh)ere(?:['’]?s| is) (?P<what>(?:the|my|its) (?:lens|lens ring|ring|iris|barrel|power|dial|(?:key|fill|hair|rim|back)(?: light)?|flash|light|lamp)) (?=(?:go|sit|stand|end up|belong|come out|want to (?:be|go)|need to (?:be|go)|have to (?:be|go))\b)", re.I)
"""Spoken short for "where does": "where's the ring go?"."""
_LEG_WANTED = Pattern(
    r"(?P<before>^|[.;:!?]\s+)(?:(?:and|so|the|distance|from|of) )*(?P<light>flash|light|lamp|strobe|key|head)[- ]to[- ](?:the |my )?(?P<whom>front[- ]row|first[- ]row|front|subject|sitter|group)(?: distance)?(?=,? please\b|\s*\?)", re.I)
"""A way that is wanted, only named: "Flash to front row, please, if …"."""
_THINGS_MOVED = r"(?:wall|backdrop|background|curtain|screen|light|lights|flash|lamp|head|stand|boom|softbox|box|umbrella|brolly|chair|stool|sofa|settee|bench|table|bed|cot|pram|sitter|subject|model|bride|groom|couple|group|singer|dancer|drummer|piano|desk|camera|tripod)"
_PULLED_ALONG = Pattern(
    rf"\b(?P<how>pull|pulls|pulled|push|pushes|pushed) (?P<whom>(?:him|her|them|us|me|(?:the|my|his|their|our) (?:\w+ )?{_THINGS_MOVED})(?: and (?:him|her|them|me|(?:the|my|his|their|our) (?:\w+ )?{_THINGS_MOVED}))?)(?= (?:right |all |even |a bit |a little |well |just )?(?:in|back|closer|nearer|away|out|forwards?|over|further|farther|towards?|up)\b(?! (?:a|one|two|three|half|by a|by one) stops?\b))", re.I)
_BACKED_UP = Pattern(rf"\b(?:back|backs|backed|backing) (?P<whom>it|them|(?:the|my) (?:\w+ )?{_THINGS_MOVED})(?: (?:up|off|away|out))*(?= (?:by |another |about )*(?:\d|an? |half|one|two|three|four|five|six|eight|ten)[^,.;?!]{{0,16}}?\b(?:feet|foot|ft|metres?|meters?|m|yards?|paces?|inches|cm)\b)", re.I)
"""What is backed up goes back, and is no back light."""
_HOW_MOVED = {"pull": "move", "pulls": "moves", "pulled": "moved", "push": "move", "pushes": "moves", "pushed": "moved"}
"""Somebody or something is pulled nearer, and no film is."""
_ON_THE_CARTON = Pattern(r"\b(?P<what>rule|guide|table|chart|leaflet|advice|instructions?|little pictures?|wrote|scribbled|noted|marked)(?: (?:it|that's|that is|printed|written|given|shown))* (?:on|inside|in|of) (?:the|its|that) (?:film |yellow |green |cardboard )?box\b", re.I)
"""What comes with a film, whose box is no softbox."""
_LENS_BY_NUMBER = Pattern(r"\b(?P<lens>(?:with|on|using|through) (?:the|my|a|an) (?:20|24|28|35|50|55|58|85|90|100|105|135|150|180|200|210|300))(?=,? (?:is it |would it be |should it be )?f ?/? ?\d[\d.]* or f)", re.I)
""""with the 85, f/2 or f/8": a lens by its number, and no f-number."""
_ANY_NEEDED = Pattern(r"(?P<before>^|[.;,:!?] |\b(?:so|and|then) )any (?P<what>(?:correction|compensation|lengthening|allowance)s?) (?=(?:needed|required|necessary|called for|to make|due)\b[^.?!]*\?)", re.I)
_OF_THOSE = Pattern(r"\b(?P<many>two|three|four|2|3|4) of (?:those|these|them|the same) (?P<what>gels|sheets|layers|silks|scrims|nets|cloths|tissues|filters|diffusers|frosts|nds)\b(?:,? the same ones?,?)?", re.I)
_STOPS_OVER = Pattern(r"\b(?P<how>how many) (?=(?:under|over|below|above|darker|brighter) (?:is|are|was|were|will|would|does|do)\b)", re.I)
"""Stops, though the word was left out: "and how many under is the back row"."""
_GAP_WANTED = Pattern(r"\bwhat gap (?=(?:do|should|must|shall|is|to|will)\b[^?.!;]{0,30}\bbetween\b(?![^?.!;]*\b(?:frames|pops|exposures|shots|flashes|readings)\b))", re.I)
"""A way between two things: it is measured like any other."""
_ROW_NAMES = Pattern(
    r"\b(?!(?:near|far) bank\b)(?P<which>first|second|third|fourth|fifth|last|front|back|rear|middle|next|near|far|nearest|farthest|furthest|closest|foremost|hindmost|each|every|two|three|four|five|six|2|3|4|5|6) (?:(?P<many>(?:line|tier|rank|pew|bank)s|benches)|(?:line|tier|rank|pew|bench|bank))\b"
    r"(?!-| (?:of (?:light|sight|fire)|holidays?|managers?|press\w*|drawings?|dancers?|vaults?|notes?|judges?|clerks?|robber\w*|seats?|tests?)\b)", re.I)
"""Whatever the people of a group stand or sit on in lines: rows."""
_ONE_OF_ROWS = Pattern(r"\b(?P<which>the (?:(?:first|second|third|fourth|last)(?! row)(?: one)?|(?:front|back|middle) one))(?= (?:is|at|stands|sits|\d)|,? (?:\d|\w+ (?:feet|foot|ft|metres?|meters?|m)\b))|(?<=behind )(?P<front>the (?:first|second|third)(?! row)(?: one)?)(?=\s*(?:[.,;:?!]|$|and\b|with\b))", re.I)
_OF_ROWS = Pattern(r"\brows?\b", re.I)
"""Where rows are spoken of, one of them."""
_ROW_OF_WHOM = Pattern(r"\b(?P<row>(?:first|front|last|back|rear|middle|second|third|fourth|nearest|farthest) row) of (?:the|my|our|this|that) (?:\w+ )?\w+(?=,? (?:is|are|was|stands?|sits?|to|and|at|from|there|gets?|must|should|must)\b)", re.I)
"""Of whom a row is made up says nothing of where it stands."""
_SO_FAR_BEHIND = r"(?P<far>(?:\d+(?:\.\d+)?|one|two|three|four|five|six|half a|a)(?: and a half)? ?(?:feet|foot|ft|metres?|meters?|m|cm|centimetres?|inches|in|yards?)\b)"
_TO_THE_NEXT = Pattern(rf"{_SO_FAR_BEHIND} from (?:each|one|every)(?: (?:row|one|line))? to the next(?: (?:row|one))?\b", re.I)
_ROW_TO_ROW = Pattern(
    rf"\b(?:each|every)(?: (?:next|following|further|other|one))?(?: rows?)?(?: (?:is|stands|sits|another|then|a further))* {_SO_FAR_BEHIND} (?:(?:further|farther)(?: (?:back|away|off|on))?(?: (?:from (?:it|the light|the flash)|than the (?:one|row) (?:before|in front)))?|behind(?: the (?:one|row|last)(?: (?:before|in front|ahead)(?: of it)?)?)?)", re.I)
"""From each row to the next: the rows are so far apart."""
_END_TO_END = Pattern(rf"{_SO_FAR_BEHIND} (?:long )?(?:from )?(?:nose to tail|bow to stern|stem to stern|head to (?:tail|toe)|tip to tail|(?:the )?(?:near|front|one) end to (?:the )?(?:far|back|other)(?: end)?)\b", re.I)
"""How deep a thing is that stands in the light."""
_OWN_LAMP = Pattern(r"\b(?:the|my) (?:backdrop|background|wall|paper|cloth|curtain|seamless) (?:has|gets|is lit by|is lit with) (?:its|a|an) (?:own )?(?:separate )?(?:flash|light|lamp|head|gun|strobe),?(?= (?:of |with |a )?(?:guide|gn)\b)", re.I)
_THE_OTHERS_PLACE = Pattern(rf"\b(?:and )?the other(?: flash| one| light| head| lamp)?(?: is| stands|'s)? {_SO_FAR_BEHIND} from (?:the|my) (?:backdrop|background|wall|paper|cloth|curtain)\b", re.I)
"""Of two lamps, the one that lights the wall."""
_ONE_TO_THE_OTHER = Pattern(rf"{_SO_FAR_BEHIND} (?:from|between) (?:the )?one (?:to|and) (?:the )?other\b", re.I)
_MORE_OF_THEM = Pattern(r"\b(?P<many>\d+(?:\.\d+)?|one|two|three|four|five|six|seven|eight|nine|ten|twelve)(?P<part> and a half)? (?:more|further|extra) (?P<unit>feet|foot|ft|metres?|meters?|yards?|paces|inches|cm|centimetres?)\b", re.I)
"""So far again: "four more feet"."""
_HALF_A_GEL = Pattern(r"\b(?P<part>half|a quarter|quarter)(?: of)? an? (?P<colour>orange|blue|straw|green|cto|ctb)\b", re.I)
"""A gel by its strength, and no power."""
_DISH_OF_FOOD = Pattern(r"\b(?P<meter>meter|metered|reading|reads?|measured) (?:at|over|on|by) (?:the|my|that) dish\b", re.I)
"""What is read where the food stands, and not through a dish."""
_PEOPLE_OF_THINGS = Pattern(r"\b(?:net|umbrella|box|grid|cloth|silk|paper|basket|dome|dish|filter|curtain|lamp|gel) (?P<who>menders?|makers?|sellers?|weavers?|workers?|repairers?|cleaners?|dealers?|factory|works|mill)\b", re.I)
"""Somebody by his trade, and nothing that hangs in the light."""
_A_KIND_OF_DIFFUSER = Pattern(r"\b(?:milk (?:jug|bottle|carton)|plastic (?:jug|bottle|box|tub)|tissue|handkerchief|dome|sock|silk|bounce dome) diffuser\b", re.I)
"""One thing by two names."""
_LIE_BETWEEN = Pattern(rf"(?:{_SO_FAR_BEHIND} (?:lie|lies|is|are)|\bthere (?:are|is|'s) {_SO_FAR_BEHIND.replace('far', 'so')}) between (?=(?:the|my|our) )", re.I)
_GIVEN_OVER = Pattern(r"\b(?P<film>(?:my|this|the|a) (?:iso )?\d{2,4}(?: \w+){0,2}?) (?P<more>(?:[a-z]+ ){1,6}?stops?) (?P<way>over|under) (?:what |than )?(?:the|its|that) (?:box|carton|packet|tin)(?: says| speed)?\b", re.I)
"""So much over what the box says."""
_A_RATED = Pattern(r"\bfilm: (?:an? |iso )?(?P<box>\d{2,4}) (?:that |which )?(?:i'm|i am|i|we|we're) rat(?:e|ing)(?: it)? (?:at|as) (?:iso |ei )?(?P<ei>\d{2,4})\b", re.I)
_READ_ALONE = Pattern(r"\b(?P<light>(?:key|fill|hair|rim|main)(?: light)?) (?:measured|metered|read|taken)(?: all)? (?:by itself|alone|on its own|separately)(?:, [^:.;?!\d]{3,80})?: (?=f ?/? ?\d)", re.I)
_UNIT_BETWEEN = Pattern(r"\b(?P<guide>(?:guide(?: number| no\.?)?|gn)(?: of| is|:)? ?\d{1,3}),? ?\(?(?:in )?(?P<unit>feet|foot|ft|metres?|meters?|m)\)?, (?=(?:at|for|on) (?:iso|asa) ?\d)", re.I)
"""The unit of a guide number between commas, before what it is for."""
_FRONT_TO_BACK = Pattern(r"(?P<before>^|[.;:!?]\s+|\b(?:so|and) )(?:from )?front to back,? (?=how (?:deep|thick)\b)|(?P<deep>\bhow (?:deep|thick)),? (?:measured )?(?:from )?front to back,?(?= (?:is|are|will|would|does|do|can)\b)", re.I)
"""Which way it is measured, said between the question and what is asked of: "how deep, front to back, is the sharp zone?"."""
_MARK_AND_TIME = Pattern(r"(?P<mark>\bf ?/? ?\d{1,2}(?:\.\d)?) and (?=1/8\b(?! (?:of |power\b|output\b|stop))|(?:1/[2-8]|an? (?:half|third|quarter|fifth|sixth|eighth)|half|one (?:third|quarter|fifth|sixth|eighth)) ?(?:(?:of )?an? )?(?:seconds?|secs?|s)\b)", re.I)
"""A shutter time beside an f-number, and no part of a stop past it: "f/4 and 1/8 second"."""
_VALUE_MEASURED_AT = Pattern(
    r"(?P<value>\b(?:ev|exposure values?|light values?)(?: (?:of|is|reading|:))? (?:\d{1,2}(?:\.\d)?|[a-z]+(?:teen)?)),? \(?(?:(?:as )?(?:measured|metered|read|taken|reckoned|given|quoted|set)(?: (?:with the meter|on the meter))? )(?:at|for|on) (?:iso |asa )?(?P<film>100|200|400|50|64|(?:an? |one |two |four )hundred)\b\)?(?! ?(?:feet|ft|m\b|met|th|ths|mm|s\b|sec|joule|watt))", re.I)
"""The film that an exposure value is for, put beside it: "exposure value fourteen, measured at one hundred"."""
_ANOTHERS_HAIR = Pattern(r"(?P<way>\b(?:from|to|behind|above|over) )(?P<whose>his|her|their|(?:the |my )?[a-z]+(?P<s>['’]s)) hair\b(?! ?-?lights?\b)", re.I)
"""What a rim light stands near is the sitter, and no hair light."""
_RIM = Pattern(r"\b(?:rim|kicker|back[ -]?light|edge light|accent)\b", re.I)
_HAIR_LIGHT = Pattern(r"\b(?:the|my|a) hair(?:[ -]?(?:light|lamp|flash))?\b|\bhair[ -]?(?:light|lamp|flash)\b", re.I)
_WHOM = {"his": "him", "her": "her", "their": "them"}


def _the_sitter(found: re.Match[str]) -> str:
    """"1.2 m from his hair" of a rim light: from him."""
    if not _RIM.search(found.string) or _HAIR_LIGHT.search(found.string):
        return found[0]
    return found["way"] + _WHOM.get(found["whose"].lower(), found["whose"][: -2 if found["s"] else None])


_THE_SHADE = Pattern(r"\b(?P<the>the|this|that) (?:open |deep |light )?shade\b(?! of\b)", re.I)
_SHADE_READS = Pattern(r"\bshade\b(?: (?:on|over|around|by) (?:him|her|them|it|us|(?:his|her|their|the) \w+))?(?:'s| itself| is| was| reads?| meters?| gives?| says?| at| also| too| as well| about)+ f ?/? ?(?:\d|[a-z]+\b)", re.I)
_FLASH_AND_NO_SUN = Pattern(r"^(?=[^\0]*\b(?:fill|flash|strobe|gun)\b)(?![^\0]*\bsun)", re.I)


def _shade_as_ambient(found: re.Match[str]) -> str:
    """"the open shade on him is f/11" beside a flash: the light that is there, with a reading of its own."""
    return f"{found['the']} ambient" if _SHADE_READS.search(found.string) and _FLASH_AND_NO_SUN.match(found.string) else found[0]


_GIVE_EXTRA = Pattern(r"\b(?:give|allow|use)(?: it| them)? (?P<many>an?|one|two|three|half an?|one and a half|a (?:half|third)|two thirds|\d(?:\.\d)?)(?: of an?)? (?:(?:extra|more|additional) (?P<stop>stops?)|(?P<first>stops?) (?:extra|more))\b(?= (?:at|for|from|when|if|above|beyond|over|after) )", re.I)
"""What a sheet tells to add: "give one extra stop at ten seconds"."""
_IN_THE_DARK = Pattern(r"\bin (?:an?|the) (?:otherwise |completely |totally |pitch[- ])?(?:dark|black|blacked[- ]out|darkened|unlit) (?:room|studio|hall|church|garage|barn|shed)\b", re.I)
"""Where there is no light, and none is read."""
_PARTS_A_SECOND = {"half a": "0.5", "half an": "0.5", "a": "1", "an": "1", "one": "1", "a quarter of a": "0.25", "one and a half": "1.5"}
_A_SECOND = Pattern(r"\b(?P<many>half an?|an?|one|a quarter of a|one and a half) (?P<unit>metres?|meters?|foot|feet|yards?) (?:per|a|every|each) second\b", re.I)
"""How fast something goes, in words."""
_MOVED_FROM_ROW = Pattern(
    rf"(?P<moved>\b(?:mov|pull|push|tak|took|bring|brought|draw|drew|drag|shift|carr|walk|wheel|go|goes|going|went|com|came|roll|slid|inch|edg)\w*\b(?: (?:the|my|that|this))?[^.;?!\d]{{0,30}} from {_SO_FAR_BEHIND} (?:away |off )?(?:(?:out|back) )?to {_SO_FAR_BEHIND.replace('far', 'new')})(?: away)? from (?:the |my |our )?(?:front|first|nearest|near|closest)(?: (?:row|one|people|person|lot))?\b(?! to\b)", re.I)
"""Both places of a light that is moved, from one and the same row: it is the subject."""
_BETWEEN_LINES = Pattern(r"\b(?P<between>between (?:the |my |our |these )?|from )(?:(?P<first>line to line|bench to bench|tier to tier|rank to rank|pew to pew)|(?:lines|tiers|ranks|pews|benches))\b", re.I)
_THE_CLOSEST = Pattern(r"\bwhat(?:['’]?s| is) the (?:(?P<close>closest|nearest)|farthest|furthest)(?: (?:place|point|spot|distance))?(?: that| away| off| back)? (?P<what>(?:the|my|a|that|this) [a-z]+(?: (?:light|lamp|head))?|i|we|it) (?P<can>can|could|may|might|should|must|dare)\b", re.I)
"""How close, said by the closest place: "what's the closest the lamp can be?"."""
_SYNCS_FINE = Pattern(r"(?P<time>\b1/\d{2,3}(?: ?s| sec(?:ond)?)?)(?:,? (?:which|that|and that|and it|it)|,) syncs?(?: (?:fine|well|ok|okay|all right|alright|properly|nicely|happily|safely|with (?:the|my) (?:flash|heads?|strobes?)))*\b", re.I)
"""Of a time that is told: no sync speed is asked."""
_SYNCS_NO_FASTER = Pattern(r"\b(?:(?:(?:wo|ca|does|do)n'?t|(?:will|does|do|can) not|cannot|never) (?:x-)?sync(?: (?:at )?(?:any|anything|a time|the flash|with (?:the )?flash))?|(?:x-)?syncs? (?:at )?(?:no|nothing)) (?:(?:faster|quicker|shorter|higher) than|above|past|beyond) (?=1/\d)", re.I)
_READ_ON = Pattern(
    r"\bwhat (?P<how>should|must|would|will|do|am) (?:(?:i|we) (?:to )?(?:read|see|meter|measure|get)|(?:the|my) meter (?:read|say|show)) (?:on|off|from|at|over) (?P<what>(?:the|my) (?:white |grey |gray |black |studio |paper |back )?(?:backdrop|background|wall|paper|cloth|curtain|screen|seamless|canvas|backcloth)) (?P<so>to have it|to get it|to make it|to put it|for it to be|if it is to be|if it's to be|so (?:that )?it(?:'s| is))\b", re.I)
"""What a thing reads that is to come out so much darker: "what should I read on the wall to have it a stop under?"."""
_HOW_HIGH = Pattern(r"\bhow high(?: up)? (?:above|over) (?P<whom>(?:the |my |her |his |their )?(?:crown(?: of (?:the |her |his )?head)?|head|hair|sitter|subject|model|face|table|cake|plate|dish)|him|her|them|it) (?=(?:should|must|does|do|can|would|will|may|to|has|is|ought)\b)", re.I)
"""A way from a light straight up."""
_POWER_METERS = Pattern(r"\b(?P<power>(?:on|at) (?:1/(?:2|4|8|16|32|64|128)|full|half|(?:an? )?(?:quarter|eighth|sixteenth)))(?: power)? (?:meter|metre|read)s (?=f ?/? ?\d)", re.I)
"""A light on that power reads so much, and no length."""
_EITHER_WAY = Pattern(r"\bin stops,? (?:(?:over|under|above|below|more|less|plus|minus|up|down|brighter|darker) or (?:over|under|above|below|more|less|plus|minus|up|down|brighter|darker)|either way)(?=\s*(?:$|[?,;]))", re.I)
_KILOJOULES = Pattern(r"(?<![\d.,])(?P<many>\d{1,4}(?:\.\d+)?) ?(?:kj|kilojoules?|kws|kw/s|kilowatt[- ]?seconds?)\b", re.I)
_SO_MANY_TUBES = Pattern(r"\b(?:two|three|2|3) extension tubes?,? (?:of )?(?=\d+ ?mm,? (?:and |plus |with an? )?\d+ ?mm\b)", re.I)
"""How many there are is told by their lengths, which add."""
_FROM_MARK_TO_MARK = Pattern(r"\b(?P<from>from f ?/? ?\d[\d.]*) (?:(?:right|all the way|straight) )?(?:down|up|out|back)(?= to f ?/? ?\d)", re.I)
"""From one f-number to another, whichever way that is called."""
_THE_TWO_STOP = Pattern(r"\bthe (?P<many>two)(?=[- ]stop\b)", re.I)
""""the two stop one": a filter by its strength, and not both of them."""
_GREY_SWAPPED = Pattern(
    r"\b(?:swap|change|replace|exchange|switch|trade)(?:ped|d|ed|ing)? (?:out )?(?:the|my|this|that) (?P<what>nd|neutral density|grey filter)(?: filter)? (?:for|to|with|by|against) (?:an? |the )?(?P<new>[\d.]+(?:x|(?:[- ]| and a half )stops?)?|[a-z]+(?: and a half)?[- ]stops?)(?: one| filter| nd)?(?=\W*$|[,;] )", re.I)
"""A grey filter that takes the place of another, named by its strength alone."""
_BOTH_SIDES = Pattern(r",?(?: with)? (?:the )?fill (?:reaching|hitting|lighting|falling on|covering|striking|on) both(?: sides)?(?: of (?:the|his|her|their) face)?(?=\W*$|[,;.?!])", re.I)
_HIGHLIGHT_TO_SHADOW = Pattern(r"\b(?:highlights?|(?:lit|bright|light) side)[- ]to[- ](?:the )?(?:shadows?|dark side)(?: side)?(?: ratio)?\b", re.I)
"""Both lights on one side of a face, the fill on the other: the lighting ratio."""
_HANGS_BEHIND = Pattern(r"\b(?:cloth|velvet|felt|backcloth)\b(?:(?!\b(?:flash|lights?|lamp|head|strobe|gun)\b)[^.,;?!]){0,24} behind (?:the|my|our|a|him|her|them|it|his|their)\b", re.I)
_CLOTH_BEHIND = Pattern(r"(?:\b(?:white|black|gr[ea]y|plain|dark) )?\b(?:cloth|velvet|felt|backcloth)\b", re.I)
"""What hangs behind somebody is a backdrop, and nothing in the light."""
_ONE_BEHIND_ANOTHER = Pattern(rf"\bone(?: (?:is|stands?|standing|sits?|sitting|about|some))* {_SO_FAR_BEHIND} behind the other\b|\b(?P<of>to|on|for|at|of|from) the other\b(?! (?:one|side|end|flash|light|lamp|head|hand|day)\b)", re.I)
_TWO_IN_LINE = Pattern(rf"^(?!.*\b(?:two|both|identical|pair of|the) (?:flashes|lights|lamps|heads|strobes|guns)\b).*\bone(?: (?:is|stands?|standing|sits?|sitting|about|some))* {_SO_FAR_BEHIND} behind the other\b", re.I)
"""Of two people, and no lamps, the one behind and the one in front: as rows are."""
_HEAD_OR_FOOT = Pattern(r"\bthe (?:(?P<head>head)(?= (?:of the (?:table|bed|stairs|queue)|is|at|gets|to)\b|\W)|foot)(?: end)?(?: of (?:the|a|my|our) (?:table|bed|stairs|queue))?\b", re.I)
_HAS_A_HEAD = Pattern(r"\b(?:head|foot) of (?:the|a|my|our) (?:table|bed|stairs|queue)\b", re.I)
_THE_FOOT = Pattern(r"\bthe foot(?= (?:is|was|gets|stands|sits|at|really|now|end)\b)", re.I)


def _ends_of_it(found: re.Match[str]) -> str:
    """"the head of the table is 4 ft from the flash, the foot 9 ft": its two ends, no lamp and no length."""
    if not _HAS_A_HEAD.search(found.string) and (found["head"] or not _THE_FOOT.match(found.string, found.start())):
        return found[0]
    return f"the {'upper' if found['head'] else 'lower'} place"


_DOES_TO_THE_LIGHT = Pattern(r"\bwhat(?:'s| is| are| was) (?P<what>(?:(?:the|my|that|this) [a-z-]+(?: [a-z]+)?|it|that)) doing to (?:the|my) (?:light|flash|exposure)\b", re.I)
"""What something costs: "what is the hankie doing to the light?"."""
_IS_ABLE_TO = Pattern(r"\b(?:is|are|am) (?P<who>(?:the|my|this|that|one|both) [a-z]+(?: [a-z]+)?|it|i|we|he|she|they) able to\b", re.I)
_INTO_UMBRELLA = Pattern(r"\bbounc(?:ed|ing|es?) (?:it )?(?:in|into|off|out of|from)(?= (?:an?|the|my) (?:[a-z]+ ){0,2}(?:umbrella|brolly)\b)", re.I)
"""An umbrella is no ceiling."""
_LAMP_TO_CLOTH = Pattern(r"\bfrom (?:the )?(?:lamp|flash|head|bulb|tube|light) to (?:the )?(?:cloth|umbrella|brolly|fabric|silk) (?:and (?:on |back )?)?to (?:the )?[a-z]+\b", re.I)
"""The whole way of the light by an umbrella, which hangs nothing more in it."""
_ONE_MORE_LOST = Pattern(r"(?P<said>\bstops?\b[^?!]*?\b(?:and|,) (?:the |a |my )[a-z]+(?: [a-z]+)? )(?P<n>one|another one) more(?=\s*[.,;?]|\s*$)", re.I)
_ONLY_LAMP = Pattern(r"\b(?<=the )(?:only|one|single|sole) (?P<lamp>flash|strobe|lamp|gun|head)\b(?: in (?:the|this|that|my|our) (?:room|hall|studio|place|church|barn|house|building|shed)\b)", re.I)
"""There is no other lamp, and nothing is said of the light of the room: "the only flash in the room"."""
_LAMP_ITSELF = r"(?:flash|light|lamp|strobe|head|gun|unit|box|softbox|umbrella|camera|lens|spot|place|point|mark|hook|shadow|row|ceiling)"
_HANGS_THERE = Pattern(rf"(?P<what>\b(?:from|to|off) (?:the|a|my|his|her) (?!{_LAMP_ITSELF}s?\b)(?:[a-z]+ )?(?!{_LAMP_ITSELF}s?\b)[a-z]+) on the (?:(?!{_LAMP_ITSELF}\b)[a-z]+ )?wall\b(?! (?:and|to|behind|is)\b)", re.I)
"""What hangs there is what is photographed, and the wall no background of it: "four metres from the mask on the wall"."""
_THAN_IT_GAVE = Pattern(r"\b(?P<many>stops? (?:more|less)) than (?:it|that|this|what it) (?:gave|gives|had|did|put out)\b", re.I)
"""Held against itself, and no other light."""
_ONE_IN_THE_OTHER = Pattern(r"(?P<one>^\W*(?:(?:and|now|then|what|how|about|if|so|i|we) )*(?:with|add|adding|put|putting|use|using) (?:a|an|the|my) (?:grid|honeycomb|gel|sock|diffuser|silk|cloth|cap)) (?:in|on|over|across|inside|into|to) (?:the|that|my) (?:(?:beauty )?dish|soft ?box|octa|umbrella|brolly|reflector|box)(?=,? (?:that |which |and (?:it|that) )?(?:takes|costs|eats|loses|robs|steals|swallows)\b)", re.I)
"""What takes the stop is the new thing, and not the one it is put in: "with a grid in the dish that takes another stop"."""
_BRACKETED = Pattern(r"\b(?P<how>bracket\w*) (?:every|each) (?P<what>[a-z]+)\b(?P<rest>[^!]{0,160}?\bhow many )(?P=what)(?:s|es)\b", re.I)
"""So many of what is bracketed, whatever it is: "I bracket every boat in three, how many boats do I get?"."""
_BACKCLOTH = Pattern(r"\bback[- ]?cloth(?=s?\b)", re.I)
_SECOND_HAND = Pattern(r"\bsecond-?hand(?=\s[a-z])|(?<=\ba )second hand(?= (?:\w+ )?(?:lens|zoom|flash|gun|meter|camera|strobe|head|pack|kit)\b)", re.I)
"""No time and no second of two: "a second-hand lens"."""
_TOTAL_DISTANCE = Pattern(r"\b(?P<what>(?:what|which)(?:'s| is)?(?: the)?) (?:total|whole|overall|entire) (?=distance\b)", re.I)
"""The distance from the one to the other is all of it."""
_HOW_FAR_IS_THAT = Pattern(r"\bhow far is (?:that|it|this) (?P<way>from (?:the |my )?(?:flash|light|lamp|head|strobe) to (?:the |my )?[a-z]+)", re.I)
_FLASH_ONE = Pattern(r"\b(?P<lamp>flash|light|lamp|head|strobe) one\b(?=[^.?!]* (?P=lamp) two\b|[^?]*[.;,] (?:and )?(?P=lamp) two\b)", re.I)
"""Of two that go by their numbers, the first."""
_EVENLY_BORNE = Pattern(r"\b(?P<many>(?:an?|one|two|three|half a|\d(?:\.\d)?|a third of a|two thirds of a)(?: stops?| stop and a half)) (?:over|under) (?:and|or) (?:up to )?(?P=many) (?:under|over)\b", re.I)
"""What is borne to both sides alike."""
_IF_IT_READS = Pattern(r"^(?P<ask>\W*(?:what|which|how)\b[^?]*?),? (?:if|when|given that|seeing that) (?P<told>(?:it|the meter|mine|the reading) (?:shows?|reads?|says?|gives?|is|was|read|showed) (?:at )?f ?/? ?\d[^?]*)\?\s*$", re.I)
"""What is known, told after what is asked."""
_HAD_BEEN_RIGHT = Pattern(r"\b(?:had been|(?:turned out|proved)(?: to be| to have been)?) (?=(?:the )?(?:right|correct)\b)", re.I)
_LAMP_AND_SOMEBODY = Pattern(r"(?P<lamp>\b(?:the|my|this|that|our) (?:flash|light|strobe|unit|head|lamp)) a (?=(?!has\b|had\b|is\b|was\b|at\b|and\b|gives?\b|stands?\b|reads?\b|on\b|with\b|from\b|alone\b|to\b|by\b|meters\b|or\b|in\b|gets\b|does\b|must\b|should\b|will\b|can\b)[a-z]{3,})")
"""Who stands before a lamp, and no lamp called A: "the farthest from the flash a deckhand can be"."""


_REWORDED: tuple[tuple[tuple[str, ...], Pattern, str | Callable[[re.Match[str]], str]], ...] = (
    # letters one of which the text must hold, what is said, and its usual wording
    ((" wall",), _HANGS_THERE, r"\g<what>"), ((" than ",), _THAN_IT_GAVE, r"\g<many>"), ((" in", " on", " over", " across", " to "), _ONE_IN_THE_OTHER, r"\g<one>"),
    (("bracket",), _BRACKETED, r"\g<how> each scene\g<rest>scenes"), (("cloth",), _BACKCLOTH, "backdrop"), (("hand",), _SECOND_HAND, "used"),
    ((" in the ", " in this ", " in that ", " in my ", " in our "), _ONLY_LAMP, r"\g<lamp>"),
    ((" line", " tier", " rank", " pew", " bench", " bank"), _ROW_NAMES, lambda found: f"{found['which']} row{'s' if found['many'] else ''}"), (("row", "Row"), _ONE_OF_ROWS, lambda found: f"{(found['which'] or found['front']).removesuffix(' one')} row" if _OF_ROWS.search(found.string) else found[0]), ((" row of ",), _ROW_OF_WHOM, r"\g<row>"),
    (("each ", "every ", "Each ", "Every "), _ROW_TO_ROW, r"the rows are \g<far> apart"), (("one to the other", "one and the other"), _ONE_TO_THE_OTHER, r"\g<far> apart"), ((" to the next",), _TO_THE_NEXT, r"\g<far> apart"),
    (("net ", "umbrella ", "box ", "grid ", "cloth ", "silk ", "paper ", "basket ", "dome ", "dish ", "filter ", "curtain ", "lamp ", "gel "), _PEOPLE_OF_THINGS, r"\g<who>"), ((" diffuser",), _A_KIND_OF_DIFFUSER, "diffuser"), ((" between ",), _LIE_BETWEEN, lambda found: f"the rows are {found['far'] or found['so']} apart: "),
    (("ounc",), _INTO_UMBRELLA, "into"), (("rom ",), _LAMP_TO_CLOTH, "in all"), ((" more",), _ONE_MORE_LOST, r"\g<said>one stop"), ((" one",), _FLASH_ONE, r"\g<lamp> A"), ((" over ", " under "), _EVENLY_BORNE, r"\g<many> either way"), ((" if ", " when ", " given that ", " seeing that "), _IF_IT_READS, lambda found: f"{found['told'][:1].upper()}{found['told'][1:].strip()}. {found['ask'].strip()}?"), (("otal ", "hole ", "verall ", "ntire "), _TOTAL_DISTANCE, r"\g<what> "), (("ow far is ",), _HOW_FAR_IS_THAT, r"what distance \g<way> is that"), ((" able to",), _IS_ABLE_TO, r"can \g<who>"), ((" doing to ",), _DOES_TO_THE_LIGHT, r"how many stops does \g<what> cost"), (("had been ", "turned out ", "proved "), _HAD_BEEN_RIGHT, "was "), ((" a ",), _LAMP_AND_SOMEBODY, r"\g<lamp>, a "), ((" over ", " under "), _GIVEN_OVER, r"\g<film> \g<more> \g<way>"), (("ilm:",), _A_RATED, r"ISO \g<box> film rated at \g<ei>"), ((": f",), _READ_ALONE, r"\g<light> alone "),
    (("uide", "gn", "GN"), _UNIT_BETWEEN, r"\g<guide> \g<unit> "),
    (("dark", "black", "unlit"), _IN_THE_DARK, "in the dark"), ((" second",), _A_SECOND, lambda found: f"{_PARTS_A_SECOND[found['many'].lower()]} {found['unit']} per second"), (("kJ", "kj", "ilojoule", "kWs", "kws", "ilowatt", "KJ"), _KILOJOULES, lambda found: f"{float(found['many']) * 1000:.10g} joules"),
    ((" down to f", " up to f", " out to f", " back to f"), _FROM_MARK_TO_MARK, r"\g<from>"),
    (("the two", "The two"), _THE_TWO_STOP, r"a \g<many>"), ((" nd ", " ND ", " neutral density ", " grey filter "), _GREY_SWAPPED, lambda found: f"use {'ND ' if found['new'].replace('.', '').isdigit() else ''}{found['new']}{'' if found['new'].replace('.', '').isdigit() else ' ND'}"),
    ((" both",), _BOTH_SIDES, ""), (("shadow", "dark"), _HIGHLIGHT_TO_SHADOW, "lighting ratio"),
    ((" extension tube",), _SO_MANY_TUBES, "extension tubes of "),
    (("between ", "from line", "from bench", "from tier", "from rank", "from pew"), _BETWEEN_LINES, lambda found: "row to row" if found["first"] else f"{found['between']}rows" if found["between"].lower() != "from " else found[0]),
    (("closest", "nearest", "farthest", "furthest"), _THE_CLOSEST, lambda found: f"how {'close' if found['close'] else 'far'} {found['can']} {found['what']}"),
    (("sync",), _SYNCS_FINE, r"\g<time>"), (("sync",), _SYNCS_NO_FASTER, "syncs at "), (("hat ",), _READ_ON, lambda found: f"what {'should' if found['how'].lower() in ('do', 'am') else found['how']} the background read to be"),
    (("ow high",), _HOW_HIGH, r"how far from \g<whom> "),
    (("eters f", "etres f", "eads f"), _POWER_METERS, r"\g<power> power reads "),
    (("in stops",), _EITHER_WAY, "in stops"), ((" from ",), _MOVED_FROM_ROW, r"\g<moved>"),
    ((" to ",), _END_TO_END, r"\g<far> deep"), ((" own ", "lit by", "lit with"), _OWN_LAMP, "the background light has"), (("the other",), _THE_OTHERS_PLACE, r"the background light is \g<far> away"),
    (("plus ",), Pattern(r"\bplus (?=(?:an? )?(?:half|third|quarter|eighth|sixteenth|1/\d{1,3}) power\b)", re.I), "and "),
    ((" half of ",), _HALF_OF_A_WHILE, "rest of "), (_ROLL, _WENT_IN, r"ISO \g<speed> film "), (("twice", " times"), _TWICE_ON_ONE, lambda found: _OFTEN[found["often"].lower()] + " "),
    ((" over ", " under ", " above ", " below "), _SO_MANY_OVER, lambda found: f"{found['many']} {'stop' if found['many'].lower() in ('one', '1') else 'of a stop' if found['many'].lower() in ('half', 'a half', 'a third', 'two thirds') else 'stops'} "),
    (("strip ", "Strip "), _STRIP_BOX, "strip box"), (("pull", "push", "Pull", "Push"), _PULLED_ALONG, lambda found: f"{_HOW_MOVED[found['how'].lower()]} {found['whom']}"), (("back ", "backs ", "backed ", "backing "), _BACKED_UP, r"move \g<whom> back"), ((" box",), _ON_THE_CARTON, r"\g<what> on the carton"),
    ((" the wall to ",), _WALL_MOVED, r"put\g<wall> at"), ((" for ",), _AM_SET_FOR, ""), (("full",), _HANDS_FULL, "busy"), (("make",), _MAKES_DOUBLE, r"doubles \g<what> compared to"), (("box ",), _BARE_BOX, _a_softbox),
    ((" car", " bag", " van", " case", " boot", " home", "behind", "cupboard"), _STAYS_BEHIND, lambda found: f"the {found['thing'] or found['other']} is off"), ((" start", " begin", " end", " stop", " run out", " finish"), _SHARP_STARTS, lambda found: f"what is the {'far' if found['ends'] else 'near'} limit"), ((" from ",), _FILLS_FROM, "the flash is at "), ((" to the front", " to the back"), _TO_A_ROW, r"\g<row> row at \g<far>"), ((", ",), _ROLE_ASIDE, r"\g<role> "), (("leaflet ", "manual ", "book", "label ", "sticker ", "plate "), _LEAFLET_GIVES, r"\g<paper> \g<gives> guide number "),
    ((" more ", " further ", " extra "), _MORE_OF_THEM, r"another \g<many>\g<part> \g<unit>"), (("half ", "quarter ", "Half ", "Quarter "), _HALF_A_GEL, r"\g<part> \g<colour>"), ((" dish",), _DISH_OF_FOOD, r"\g<meter>"), ((" cut ",), _CUT_OF, r"\g<colour> gel"), ((" away ",), _THROWS_AWAY, "loses"),
    ((" now ",), _NOW_IT_IS, ", now "), ((" to ", "-to-"), _LEG_WANTED, r"\g<before>how far from the \g<whom> must the \g<light> be"),
    (("ny correction", "ny compensation", "ny lengthening", "ny allowance"), _ANY_NEEDED, r"\g<before>is any \g<what> "), ((" or f",), _LENS_BY_NUMBER, r"\g<lens> mm lens"),
    (("ow many ",), _STOPS_OVER, r"\g<how> stops "), (("what gap", "What gap"), _GAP_WANTED, "what distance "), (("front one", "back one", "near one", "far one"), _THAT_ONE, r"\g<row>"), ((" of th",), _OF_THOSE, r"\g<many> \g<what>"), (("here's", "here’s"), _WHERE_GOES, r"\g<where>ere does \g<what> "),
    ((" to back",), _FRONT_TO_BACK, lambda found: found["deep"] or found["before"]),
    ((" and 1/", " and a", " and half", " and one "), _MARK_AND_TIME, r"\g<mark> at "),
    ((" at ", " for ", " on "), _VALUE_MEASURED_AT, r"\g<value> at ISO \g<film>"),
    ((" hair",), _ANOTHERS_HAIR, _the_sitter),
    ((" shade",), _THE_SHADE, _shade_as_ambient),
    ((" behind ",), _CLOTH_BEHIND, lambda found: "backdrop" if _HANGS_BEHIND.search(found.string) else found[0]),
    (("behind the other",), _ONE_BEHIND_ANOTHER, lambda found: found[0] if not _TWO_IN_LINE.search(found.string) else f"the back row {found['far']} behind the front row" if found["far"] else f"{found['of']} the back row"),
    ((" head", " foot"), _HEAD_OR_FOOT, _ends_of_it),
    (("extra", "more", "additional"), _GIVE_EXTRA, lambda found: f"add {'one' if found['many'].lower() in ('a', 'an') else found['many']} {found['stop'] or found['first']}"),
    ((" out",), _COMES_OUT, r"\g<the> \g<thing> is off"), ((" out ",), _TAKEN_OUT, r"\g<take> off \g<the> \g<what>"),
    ((" place", " instead", "swap", "change", "switch", "Swap", "Change", "Switch"), _TAKES_ITS_PLACE, _swapped_for_it),
    (("set up to ",), _SET_UP_TO, "set"), ((" row of ", " line of "), _ROW_OF_THINGS, "a"), (("gone", "lost"), _STOPS_GONE, r"\g<stops> lost"),
    (("in stops",), _IN_STOPS_OVER_ONE, r"\g<sum> in stops"),
    *OF_FIGURES,
)


def in_usual_words(said: str) -> str:
    """The text with each row's wording put in the usual one.

    >>> in_usual_words("if I back the light up 4 feet")
    'if I move the light back 4 feet'
    """
    for signs, pattern, wording in _REWORDED:
        for sign in signs:
            if sign in said:
                said = pattern.sub(wording, said)
                break
    return said

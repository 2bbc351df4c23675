"""Plain words: the small talk around a question left out, and what has several wordings said in one.

The rules that read a question know its usual wording. What is put into that wording here they need not
know twice; what people say before a question to begin, or after it to be polite, they need not look past.
No figure, no unit, no light and no "not" that bears on one is touched.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.language.as_is_usual import as_is_usual
from assistant.language.asked_briefly import in_full
from assistant.language.asked_last import asked_last
from assistant.language.by_the_way import without_asides
from assistant.language.half_said import said_in_full
from assistant.language.hearing import hear
from assistant.language.hours import in_other_words
from assistant.language.in_short import without_short_words
from assistant.language.lexicon import Lexicon
from assistant.language.one_and_other import alike_named
from assistant.language.quoted import without_quotes
from assistant.language.relayed import in_ones_own_words
from assistant.language.reworded_figures import OF_FIGURES
from assistant.language.scenery import without_scenery
from assistant.language.set_ups import without_its_name
from assistant.language.shared_units import with_units
from assistant.language.small_talk import without_small_talk
from assistant.language.speakers import without_speaker
from assistant.language.sun_rule import without_statement
from assistant.language.time_order import in_order_of_time
from assistant.patterns import Pattern

_FOUR_WORDS = r"(?=\S+ +\S+ +\S+ +\S)"
_OPENER = Pattern(
    r"\W*(?:"
    r"(?:ok|okay|right|righto|right then|alright|all right|well|hey|hi|hello|hiya|hi there|hello there|good morning|morning)(?:\s*[,.:!…]{1,8}\s*(?:so\b[\s,]{0,8})?|\s+so\b[\s,]{0,8})"
    r"|(?:um+|uh+|er+m?|hmm+)\b[\s,.…]{0,12}"
    r"|(?:(?:so|now|ok|okay|well|right|and),? )?(?:basically|essentially|anyway|anyhow|right so)\b[\s,:]{1,4}"
    r"|(?:a |an )?(?:quick|silly|dumb|daft|stupid|simple|basic|easy|small|little|random|another) (?:one|question|q)(?: for you)?(?:\s*[,:;.–-]{1,8}\s*|\s+but\s+)"
    r"|(?:(?:can|could|would|will) (?:you|someone|anyone|anybody) )?(?:please |just |kindly )*tell me(?: please)?(?:\s*[,:]\s*|\s+(?=(?:what|which|how|where|when)\b))"
    r"|(?:(?:which|what) way (?:round|around|about) (?:is|was) (?:it|that|this)|(?:what|which) is it|how does (?:it|that|this) go|what(?:'s| is| was) the rule|remind me|refresh my memory)(?: again| now| then)?\s*[,:;.?–-]{1,8}\s*(?=(?:does|do|is|are|will|would|did|can)\b)"
    r"|(?:(?:i|we)(?:'ve| have)? )?(?:got |have |had |just )*(?:an?|one|another|one more|one last)(?: (?:quick|little|silly|stupid|small|basic|simple|dumb|technical|flash))* questions?(?: (?:for you|please|though|then|here))?\s*[.:,;!–-]{1,3}\s*"
    r"|(?:here(?:'s| is) (?:one|another)(?: one)? for (?:the |my |our |your )?[a-z]+(?: class| group)?|(?:(?:my|our|the|this|next|another|a|first|second|third|last) )*(?:(?:quiz|exam|test|homework|class|club|worksheet|lesson|trick|bonus|revision|practice) )*(?:question|claim|problem|exercise|item|statement|query|example|homework check|quiz|homework)(?: (?:number|no\.?))?(?: (?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve))?(?: (?:on|from|for|in|of) (?:my|the|our|your) [a-z]+(?: [a-z]+)?)?)\s*[:.–-]\s+"
    r")" + _FOUR_WORDS,
    re.I,
)
"""What only begins a sentence. "Ok to use it in the rain?" and "well lit" are none of these."""
_BEGINNINGS = frozenset("i we got have had just one here here's my our the this next first second third last quiz exam test homework class club worksheet lesson trick bonus revision practice question claim problem exercise item statement query example so now and basically essentially anyway anyhow a an ok okay right righto alright all well hey hi hello hiya good morning quick silly dumb daft stupid simple basic easy small little random another can could would will please just kindly tell which what how remind refresh".split())
_FIRST_WORD = Pattern(r"\W*([A-Za-z]+)")
_HUMS = ("um", "uh", "er", "hm")
"""What an opener begins with: most texts begin otherwise, and are not held against it."""
_LAST_SENTENCE = Pattern(r"(?<=[.?!])[\s\"'”’)]+(?P<last>[^.?!]{1,90}[.!]*)\s*$")
_ENDED = (". ", "? ", "! ", ".\n", "?\n", "!\n", '?"', "?)")
_SAYS_NOTHING = frozenset({"WORD", "GLUE", "LINK", "END", "COMMA", "DASH", "NOT"})
_OF_ONESELF = Pattern(r"\W*(?:i|we|it|thanks|thank|cheers|ta|please|sorry|hope|that|this|my|he|she|they|you|everyone|everybody|nobody|people|the)\b", re.I)
_FORGOTTEN = Pattern(r"\b(?:can(?:'t|not)|cant|can never|don't|dont|never|won't) (?:really |quite |ever )?(?:remember|recall|keep (?:it|this|that) in my head|work (?:it|this|that) out(?: in my head)?)\b", re.I)
"""To remember is to keep, where it is not denied."""

_WORDINGS = {
    "how many f-stops": "how many stops", "how many f stops": "how many stops", "how many fstops": "how many stops",
    "metered minute": "metered sixty seconds", "half minute": "half a minute", "half-minute": "half a minute", "a half minute": "half a minute", "a half-minute": "half a minute",
    "half an hour": "thirty minutes", "half hour": "thirty minutes", "half-hour": "thirty minutes", "a half hour": "thirty minutes", "a quarter of an hour": "fifteen minutes", "quarter of an hour": "fifteen minutes", "three quarters of an hour": "forty five minutes", "an hour and a half": "ninety minutes",
    "with a stop": "with one stop", "with a full stop": "with one full stop", "with a whole stop": "with one whole stop",
    "half blue": "half blue gel", "quarter blue": "quarter blue gel", "what number of": "how many", "which number of": "how many", "what sort of number of": "how many",
    **{f"studio {thing}": thing for thing in ("head", "heads", "flash", "flashes", "light", "lights", "monolight", "monobloc", "pack", "unit", "units")}, "studio strobe": "flash", "studio strobes": "flashes",
    **{f"tube to {place}": f"flash to {place}" for place in ("ceiling", "the ceiling", "wall", "the wall", "roof", "the roof", "subject", "the subject", "sitter", "the sitter")}, "from the tube to": "from the flash to",
    "handmeter": "meter", "handmeters": "meters", "hand meter": "meter", "hand-held meter": "meter", "hand held meter": "meter", "strobe": "flash", "strobes": "flashes", "speedlight": "flash", "speedlights": "flashes", "flashgun": "flash", **{f"{whose} gun": f"{whose} flash" for whose in ("the", "my", "a", "that", "this", "same", "one", "single", "your", "his", "her")}, "flashguns": "flashes",
    "dont": "don't", "doesnt": "doesn't", "didnt": "didn't", "isnt": "isn't", "arent": "aren't", "wasnt": "wasn't", "werent": "weren't", "wouldnt": "wouldn't", "couldnt": "couldn't",
    "shouldnt": "shouldn't", "hasnt": "hasn't", "havent": "haven't", "hadnt": "hadn't", "thats": "that's", "whats": "what's", "theres": "there's", "hows": "how's", "wheres": "where's", "ive": "I've", "im": "I'm",
    "waht": "what", "hwat": "what", "wat": "what", "waht's": "what's", "whta": "what", "wich": "which", "whcih": "which", "hwich": "which", "hwo": "how", "whre": "where", "cant": "can't",
    **{typed: "aperture" for typed in ("aparture", "aperature", "aperure", "apeture", "appature", "apperture", "aprture")}, **{typed: "shutter" for typed in ("shuter", "shuttr", "shutr")},
    "ap": "aperture", "ss": "shutter speed", "dist": "distance", "subj": "subject", "sbox": "softbox", "amb": "ambient", "y/n": "is that right", "loaded w": "loaded with", "n whats": "and what's", "n what": "and what", "n how": "and how",
    "hes": "he's", "shes": "she's", "theyre": "they're", "weve": "we've", "youre": "you're", "wont": "won't", "whatd": "what'd", "itd": "it'd", "itll": "it'll", "loosing": "losing", "looses": "loses", "infront": "in front",
}
_SAID_OTHERWISE = Pattern(r"\b(?:" + "|".join(sorted(_WORDINGS, key=len, reverse=True)) + r")\b(?!['’]| (?:effect|mode|lights?|gels?)\b)", re.I)
_METERED_SECONDS = Pattern(r"\b(?P<many>\d[\d.]*|two|three|four|five|six|eight|ten|twelve|fifteen|twenty|thirty|forty|sixty) (?:metered|measured|indicated) (?P<unit>seconds|secs|minutes)\b", re.I)
"""What the meter said, put between the figure and its unit."""
_HALF_OF_A_WHILE = Pattern(r"\b(?:first|second|other|last|latter) half of (?=(?:the|my|that|this|a) (?:roll|film|day|session|evening|class|shoot|game|match|wedding|show|play|concert|set|afternoon|morning|night)\b)", re.I)
"""A part of a roll or of a day is no half power."""
_WENT_IN = Pattern(r"\b(?:a |an |the |some )?(?P<speed>\d{2,4})(?: film| roll)? (?=(?:went|has gone|goes|is going|was going|gets|got) (?:in|on|loaded)\b)", re.I)
_ROLL = ("film", "roll", "Film", "Roll")
"""Where films are spoken of, "an 800 went in" is one."""
_TWICE_ON_ONE = Pattern(r"\b(?P<often>twice|three times|four times)(?: over)? (?=(?:on|onto|in) (?:one|the same|a single) (?:frame|negative|sheet|exposure)\b)", re.I)
_OFTEN = {"twice": "with two pops", "three times": "with three pops", "four times": "with four pops"}
_STOPS_OF_ND = Pattern(r"(?:(?<=[.;,!?] )|^)stops of(?= nd\b(?: filter)?(?: to| for| needed|\?))", re.I)
"""Asked by its name: "Stops of ND to shoot at f/4?"."""
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
_ON_THE_CARTON = Pattern(r"\b(?P<what>rule|guide|table|chart|leaflet|advice|instructions?|little pictures?)(?: (?:that's|that is|printed|written|given|shown))* (?:on|inside|in|of) (?:the|its|that) (?:film |yellow |green |cardboard )?box\b", re.I)
"""What comes with a film, whose box is no softbox."""
_LENS_BY_NUMBER = Pattern(r"\b(?P<lens>(?:with|on|using|through) (?:the|my|a|an) (?:20|24|28|35|50|55|58|85|90|100|105|135|150|180|200|210|300))(?=,? (?:is it |would it be |should it be )?f ?/? ?\d[\d.]* or f)", re.I)
""""with the 85, f/2 or f/8": a lens by its number, and no f-number."""
_ANY_NEEDED = Pattern(r"(?P<before>^|[.;,:!?] |\b(?:so|and|then) )any (?P<what>(?:correction|compensation|lengthening|allowance)s?) (?=(?:needed|required|necessary|called for|to make|due)\b[^.?!]*\?)", re.I)
_OF_THOSE = Pattern(r"\b(?P<many>two|three|four|2|3|4) of (?:those|these|them|the same) (?P<what>gels|sheets|layers|silks|scrims|nets|cloths|tissues|filters|diffusers|frosts|nds)\b(?:,? the same ones?,?)?", re.I)
_REWORDED: tuple[tuple[tuple[str, ...], Pattern, str | Callable[[re.Match[str]], str]], ...] = (
    # letters one of which the text must hold, what is said, and its usual wording
    (("plus ",), Pattern(r"\bplus (?=(?:an? )?(?:half|third|quarter|eighth|sixteenth|1/\d{1,3}) power\b)", re.I), "and "),
    ((" half of ",), _HALF_OF_A_WHILE, "rest of "), (_ROLL, _WENT_IN, r"ISO \g<speed> film "), (("twice", " times"), _TWICE_ON_ONE, lambda found: _OFTEN[found["often"].lower()] + " "),
    ((" over ", " under ", " above ", " below "), _SO_MANY_OVER, lambda found: f"{found['many']} {'stop' if found['many'].lower() in ('one', '1') else 'of a stop' if found['many'].lower() in ('half', 'a half', 'a third', 'two thirds') else 'stops'} "),
    (("strip ", "Strip "), _STRIP_BOX, "strip box"), (("pull", "push", "Pull", "Push"), _PULLED_ALONG, lambda found: f"{_HOW_MOVED[found['how'].lower()]} {found['whom']}"), (("back ", "backs ", "backed ", "backing "), _BACKED_UP, r"move \g<whom> back"), ((" box",), _ON_THE_CARTON, r"\g<what> on the carton"),
    ((" the wall to ",), _WALL_MOVED, r"put\g<wall> at"), ((" for ",), _AM_SET_FOR, ""), (("full",), _HANDS_FULL, "busy"), (("make",), _MAKES_DOUBLE, r"doubles \g<what> compared to"), (("box ",), _BARE_BOX, _a_softbox),
    ((" car", " bag", " van", " case", " boot", " home", "behind", "cupboard"), _STAYS_BEHIND, lambda found: f"the {found['thing'] or found['other']} is off"), ((" start", " begin", " end", " stop", " run out", " finish"), _SHARP_STARTS, lambda found: f"what is the {'far' if found['ends'] else 'near'} limit"), ((" from ",), _FILLS_FROM, "the flash is at "), ((" to the front", " to the back"), _TO_A_ROW, r"\g<row> row at \g<far>"), ((", ",), _ROLE_ASIDE, r"\g<role> "), (("leaflet ", "manual ", "book", "label ", "sticker ", "plate "), _LEAFLET_GIVES, r"\g<paper> \g<gives> guide number "),
    ((" cut ",), _CUT_OF, r"\g<colour> gel"), ((" away ",), _THROWS_AWAY, "loses"),
    ((" now ",), _NOW_IT_IS, ", now "), ((" to ", "-to-"), _LEG_WANTED, r"\g<before>how far from the \g<whom> must the \g<light> be"),
    (("ny correction", "ny compensation", "ny lengthening", "ny allowance"), _ANY_NEEDED, r"\g<before>is any \g<what> "), ((" or f",), _LENS_BY_NUMBER, r"\g<lens> mm lens"),
    (("front one", "back one", "near one", "far one"), _THAT_ONE, r"\g<row>"), ((" of th",), _OF_THOSE, r"\g<many> \g<what>"), (("here's", "here’s"), _WHERE_GOES, r"\g<where>ere does \g<what> "),
    *OF_FIGURES,
)
_NO_FLASH = Pattern(r"\b(?P<none>with(?:out| no) (?:any )?(?:flash|light|lamp|strobe)) (?=(?:a|one) [a-z]{3,})", re.I)
""""Without flash a room meters f/4": a room, and no flash called A."""
_AS_COST = Pattern(
    r"\b(?:swallows|eats(?: up)?|drinks|soaks up|steals|gobbles(?: up)?|sucks up|guzzles)(?= (?:(?:me|us|you|up|away|about|around|roughly|some|exactly|only|just|nearly|almost|another|a further|at (?:least|most)|more than|less than|over|under) ){0,2}"
    r"(?:\d[\d./]*|[½⅓⅔]|one|two|three|four|five|a|an|half|a third|two thirds)\b(?:[^.?!,;]{0,28}?\bstops?\b|(?=[.,;])))",
    re.I,
)
"""How a loss is told in a picture, where so many stops follow."""
_NEW_QUESTION = Pattern(r"(?<=[a-z0-9]),\s+(?=(?:(?:can|could|will|would|should) (?:i|we|it) [^,.?]{12,}|(?:so )?(?:the )?new (?:aperture|f-?stop|stop|power|shutter(?: speed)?|distance|setting))\?$)", re.I)
_NOT_IN_FORCE = Pattern(r"n't\b|\bnot\b|\bunchanged\b", re.I)
"""A "not" in what is told, which bears on no question after it."""
_SUPPOSED = Pattern(r"\b(?:if|when|with|suppose|say|unless|while|given)\b[^,]*$", re.I)
_WE_ASK = Pattern(r"(?:(?<=\bdo )|(?<=\bshould )|(?<=\bmust )|(?<=\bcan )|(?<=\bcould )|(?<=\bwould ))we\b|\bwe(?= (?:measured|thought|metered|tested|own|want the)\b)", re.I)
"""Several people ask as one does."""
_LETTERS = Pattern(r"[a-z]+")
_POLITE_END = Pattern(r"(?<!no)(?<!no,)\s+(?:and )?(?:many |much |very many )?(?:thanks|thank you|thankyou|thanx|thx|cheers|ta|much obliged|much appreciated|bless you)(?: (?:so much|a lot|very much|again|in advance|all|mate|pal|folks|everyone|everybody|for (?:the|your) help))*\s*[.!,]*\s*$", re.I)
"""A word of thanks that ends a text; what went before it keeps its own mark."""
_AT_SIGN = Pattern(r"(?<=[\w)\"' ])[ ]?@[ ]?(?=f?/?\d|iso|asa|full|half|quarter)", re.I)
_SPEED_FIRST = Pattern(r"(?<![\d/.,:-])(?<!f)(?<!f/)(?<!minus )\b(?P<speed>(?:\d{2,3}|\d{4}))[ ]?(?:iso|asa)\b(?![ ]?(?:\d|film|and \d|to \d|or \d|box|rated|of\b))", re.I)
"""A film speed with its scale after it; "100 iso 400" might be either's."""
_DISTANCE_OF_LIGHT = Pattern(r"\b(?:what|which) distance(?= (?:under|over|down|short|out|too)\b| (?:do|should|must|would|can) (?:i|we) (?:turn|open|close|stop|dial|knock)\b)", re.I)
"""How far in stops, which is no distance."""
_IS_RUN_ON = Pattern(r"(?P<before>^|[.,;:!?]\s+(?:and |so |but )?)(?P<things>guns|films|frames|flashs|subjects|sitters|guides|keys|fills|apertures|shutters|ceilings|numbers)(?=\s+(?:f/?\d|iso|\d))", re.I)
""""guns 110 feet, films 400": the apostrophe of an "is", left out."""
_BREAKS_OFF = Pattern(
    r"(?:^|[.,;:!-]\s+|\b(?:so|then|now|and)\s+)(?:(?:so|then|now|and|the|my|new|camera|flash|key|fill|hair|rim|meter|light|power|lens) )*"
    r"(?:lens|ring|set|setting|pops|flashes|aperture|f-?stop|power|dial|distance)(?: (?:then|now|goes|is|set|should|must|on|at|to|read|says?|reads))*\s*$"
    r"|\b(?:lens|ring|camera|dial|aperture|meter|power|iris) (?:(?:then|now|on the meter|is|has to be|should be|must be|goes|set) )*(?:to|at|on|says|reads)\s*$"
    r"|\b(?:key|fill|hair|rim|kicker|background|backdrop|main|paper)(?: light)? (?:should|must|has to|will|ought to) (?:then )?(?:read|meter|show)\s*$"
    r"|[.;]\s+(?:and |so |now |but )?(?:at|on) (?:iso |asa )?(?:\d[\d./]*|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|full|half|quarter)(?: ?(?:m|ft|feet|metres|film|power))?(?:, same (?:power|place|spot|flash|aperture|distance))?\s*$"
    r"|,\s+then\s*$|\bto infinity then\s*$",
    re.I,
)
"""A text that breaks off, with no mark after it, where its answer would stand: "scrim in now, it takes a stop. lens"."""
_QUESTION_FIRST = Pattern(r"(?P<question>[^?]{8,200}\?)\s+(?P<told>(?!(?:and|or|but|no|not|sorry|wait|oops|i mean|i meant|actually|make (?:it|that)|scratch|thanks|thank|please|rather|also|then|only|just)\b)[^?]{16,}?)\s*$", re.I)
"""A question, and after it what it is about."""
_OF_A_PLACE = Pattern(r"\b(?P<who>I'm|I am|we're|we are|he's|she's|they're) (?:still |just |all )*(?:down|up|out|over|round|back)(?= (?:at|by|in|on|near|inside) (?:the|a|an|my|our|his|her|this) (?!f\b|f/|light|flash|power|shade)[a-z])", re.I)
""""I'm down at the boathouse": where somebody is, and no light turned down."""
_NAN = Pattern(r"(?<!my )(?<!our )(?<!her )(?<!his )(?<!your )\bnan(?=(?:'s|’s) [a-z]| (?:put|puts|said|says|sat|sits|stood|stands|held|holds|hung|has|had|wants|wanted|made|gave|lent|bought|likes|thinks|reckons|told|asked|took|taped|dropped|draped)\b)", re.I)
"""Somebody's grandmother, and not what is no number."""
_WANTED_ALONE = Pattern(r"\W*(?:so |now |and )?(?:the )?(?P<what>(?:max(?:imum)?|min(?:imum)?|least|lowest|greatest|longest|furthest|farthest|nearest|shortest) (?:flash |working |shooting )?(?:(?:distance|range|reach|throw)(?! ?(?:\d|of \d|is\b|was\b|=|:))|power(?= (?:for|to|at|with|needed|required|if|when)\b)))", re.I)
"""What is wanted, said first and by itself: "max distance f/2.8 GN 28 metres"."""
_TELLS_OF_GEAR = Pattern(r"\b(?:my|our) (?:flash|gun|strobe|kit|camera|heads?|set-?up)\b|\bhow\b|\bwhat\b|\bwhich\b|\bwhere\b", re.I)
_ABOUT_THE_WORD = Pattern(r"\b(?:what(?:'s|s| is| are)|mean(?:s|ing)?(?: of| by)?|called|define|call|name)\b[^.?]{0,14}\bstrob", re.I)
_AND_WHAT = Pattern(r"^\W*(?:and |so |ok |then )*what(?= (?:at|for|with|on|from|if) (?:\S+ ){0,4}\S+ ?$)", re.I)
"""A half-sentence that asks anew what was asked: "and what at five feet?"."""
_SOMEBODY = Pattern(
    r"\b(?P<whose>an?|the|my|our|one) (?:(?:old|older|senior|young|new|fellow|wise|experienced|retired) )*(?:hand|man|woman|lady|gentleman|member|photographer|friend|colleague|tutor|teacher|chap|fellow|bloke|veteran|instructor|lecturer|student|regular|assistant|printer)"
    r" (?:at|from|of|in|down at) (?:the|my|our|a) (?:(?:camera|photo\w*|local|darkroom|evening|night|film|village|art) )*(?:club|class|society|college|school|course|lab|shop|studio|workshop|group|forum)(?= (?:says?|claims?|tells|told|insists?|swears?|reckons?|thinks?|maintains?|believes?|said)\b)", re.I)
"""Who says it, and where he is met, bears on nothing: "an old hand at the camera club says"."""
_OUTDOES = Pattern(r"\b(?:exceed|beat|outshine|outdo|surpass)", re.I)
_A_LIGHT = r"(?:the |my )(?:key|main|fill|hair|rim|kicker|accent|background|backdrop)(?: ?light)?"
_HOW_FAR_OUTDOES = Pattern(rf"\b(?:by )?how (?:many stops|much|far)(?: more)? (?:does|do|will|would|should|must) (?P<one>it|{_A_LIGHT}) (?:exceed|beat|outshine|outdo|surpass) (?P<other>{_A_LIGHT})(?: by)?\b", re.I)
_OUTDOES_BY = Pattern(rf"\b(?P<verb>exceeds?|beats?|outshines?|outdo(?:es)?|surpass(?:es)?) (?P<other>{_A_LIGHT}) by (?P<much>[\w./½⅓⅔ -]{{1,24}}? stops?)\b", re.I)
""""The hair light exceeds the key by one stop": it is one stop over it."""
_SPACES = Pattern(r"[^\S\n]{2,}|\t")
_PAUSE = Pattern(r"(?P<before>\S{1,40}?)[\s,.…-]{0,12}[\s,](?:um+|uh+|er|erm+|hmm+)\b[,.…]*\s+(?=(?P<after>\S+))", re.I)
_PAUSES = (" um", " uh", " er ", " er,", " er.", " erm", " hm", " Um", " Uh", " Er")
_FIGURE = Pattern(r"\d|\b(?:f|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|sixteen|twenty|half|quarter)\b", re.I)
_TAG = Pattern(r"(?<=\w)[,\s]+(?:(?:please|pls|plz|actually|do you (?:think|reckon)|would you say|anyone|anybody|folks|(?<!\d )(?<!\d)again)(?=\s*\?+\s*$)|(?:mate|roughly|(?<!stop )(?<!stops )(?<!stop, )(?<!stops, )exactly|approx\.?|approximately|more or less)(?=\W*$))", re.I)
_A_PART = Pattern(r"(?<=[a-z)]) [-–—] (?=\S)|(?<=\S) [-–—] (?=[A-Z][a-z])|(?<=\S) [-–—] (?=[a-z])|(?<=[a-z])—(?=[a-z])", re.I)
"""A dash between two parts of a sentence; between two figures it is a range or a minus."""
_METRES = Pattern(r"(?:(?<=\d)|(?<=\d )|(?<=\bin )|(?<=, )|(?<=half ))meters\b(?! (?:says?|reads?|it|f|at|the|from)\b)", re.I)


_OR_MORE = Pattern(r"(?<!at least )\b(?P<many>(?:a|an|one|two|three|four|five|six|seven|eight|\d+(?:\.\d+)?)(?: and a half)?) (?:or more (?:full |whole )?(?P<unit>stops)|(?P<one>stops?) or more)\b", re.I)
"""How "at least" is said after its figure; "more" alone would be read as brighter."""


_DOZENS = {"half a": 6, "half-a": 6, "a half": 6, "two": 24, "2": 24, "three": 36, "3": 36, "four": 48, "4": 48, "five": 60, "5": 60}
_DOZEN = Pattern(
    r"\b(?P<many>half[- ]a|a half|an?|one|1|two|2|three|3|four|4|five|5)[- ]dozen(?P<after> (?:of (?:them|these|those)|(?:\w+ |\w+-\w+ ){0,2}(?:pops?|flash(?:es)?|bursts?|hits|firings|frames?|exposures?|shots|brackets|rolls?|sheets?|heads?|lights?|feet|foot|ft|metres?|meters?|seconds?|secs?)\b))", re.I)
"""A count by the dozen, of what is counted here."""
_THAT_FOR = Pattern(
    r"^\W*(?:(?:and|then|now|ok|also|so|please),? )*(?:(?:could|can|may|might|would) (?:i|we|you)(?: please)? (?:have|get|see|do|redo|run|work out|tell me|give me|show me)|(?:i'd|i would|we'd) (?:also )?(?:like|want|need)|(?:give|tell|show) me|do|redo) (?:that|it|the same|this)(?: (?:again|once more|too|as well|one|thing|sum))* (?=(?:for|at|with|on|in|using|from) )", re.I)
"""The question that stands, wanted for another case: "could I have that for a third of a stop?"."""
_SHOULD_I_PREFER = Pattern(r"^\W*(?:(?:and|or|but|so),? )?should (?P<who>i|we|he|she|they) (?P<does>prefer|want|choose|need|decide on|go for|have to|like)\b(?=[^?]{1,40}\?*$)", re.I)
"""A case put without an "if": "and should I prefer f/10?"."""
_AND_WHAT_IS_RIGHT = Pattern(
    r"(?P<judged>\b(?:(?:is|am|are|was) (?:he|she|it|that|this|they|i|we) (?:right|true|correct|wrong|so)|true or (?:not|false)|right or wrong|yes or no)),? and(?: if (?:not|so))?,? (?:what|which|how)\b[^?\d]*\?\s*$", re.I)
"""A verdict is asked, and what is right besides, which the verdict says anyhow."""


_TWO_MARKS = ("??", "?!", "!?", "!!")
_MARKS = Pattern(r"[?!]{2,}")
"""Marks said twice for stress: "what stop??"."""


def plainly(text: str, lexicon: Lexicon) -> str:
    """The text in its usual wording; what is left out holds no figure and no word of the trade."""
    said = _SPACES.sub(" ", text) if "  " in text or "\t" in text else text
    said = _A_PART.sub(_parted, said) if " -" in said or not said.isascii() else said
    said = said if said.isascii() else said.replace("’", "'").replace("‘", "'")
    said = _MARKS.sub(lambda found: "?" if "?" in found[0] else found[0][0], said) if _holds(said, _TWO_MARKS) else said
    said = in_other_words(without_quotes(as_is_usual(said)))
    said = in_ones_own_words(without_its_name(without_speaker(said)))
    said = without_scenery(_without_aside(_without_opener(without_small_talk(_without_thanks(said), lexicon)), lexicon), lexicon)
    said = in_order_of_time(_AS_COST.sub("costs", said_in_full(said)))
    said = _WE_ASK.sub("I", without_statement(said))
    said = _asked_apart(_STOPS_OF_ND.sub("how many stops of", said) if "tops of ND" in said or "tops of nd" in said else said)
    said = _PAUSE.sub(_unpaused, said) if _holds(said, _PAUSES) else said
    said = _METRES.sub("metres", _TAG.sub("", said))
    said = _OR_MORE.sub(lambda found: f"at least {found['many']} {found['unit'] or found['one']}", said) if " or more" in said else said
    said = _DOZEN.sub(lambda found: f"{_DOZENS.get(found['many'].lower(), 12)}{found['after']}", said) if "dozen" in said else said
    said = _AND_WHAT.sub("and", said)
    if len(said) < 120:
        said = _SHOULD_I_PREFER.sub(r"and if \g<who> \g<does>", _THAT_FOR.sub("and ", said))
    if said.isupper():
        said = said.lower()
    said = alike_named(_AND_WHAT_IS_RIGHT.sub(r"\g<judged>?", without_asides(said)))
    said = _in_usual_order(in_full(asked_last(said)))
    if _SAID_OTHERWISE.may_match(said) and _is_said_otherwise(said) and not _ABOUT_THE_WORD.search(said):
        said = _SAID_OTHERWISE.sub(lambda found: _WORDINGS[found[0].lower()], said)
    said = with_units(said)
    for signs, pattern, wording in _REWORDED:
        if _holds(said, signs):
            said = pattern.sub(wording, said)
    said = without_short_words(said)
    return _NO_FLASH.sub(r"\g<none>, ", _METERED_SECONDS.sub(r"\g<many> \g<unit> metered", said))


def _asked_apart(said: str) -> str:
    """"… the camera won't sync above 1/125, can I shoot that …?": the question as a sentence of its own."""
    asked = _NEW_QUESTION.search(said)
    told = said[: asked.start()] if asked is not None else ""
    if asked is None or not _NOT_IN_FORCE.search(told) or _SUPPOSED.search(told):
        return said
    return f"{told}. {said[asked.end() :]}"


def _is_said_otherwise(said: str) -> bool:
    """Whether one of those words stands by itself: "im" is in every "time"."""
    low = said.lower()
    return not said.isascii() or "number of" in low or " blue" in low or "minute" in low and ("half" in low or "metered" in low) or "hour" in low or "hand" in low and "meter" in low or "how many f" in low or "studio " in low or "with a " in low or "tube to " in low or " w " in low or " n " in low or " gun" in low or not _WORDINGS.keys().isdisjoint(_LETTERS.findall(low))


def _holds(text: str, pieces: tuple[str, ...]) -> bool:
    """Whether one of these stands in a text: asked of every text, so in a plain loop."""
    for piece in pieces:
        if piece in text:
            return True
    return False


_LONGEST_THANKS = 80
"""Letters at the end of a text that thanks may take up."""


def _without_thanks(text: str) -> str:
    """"… so I set Thanks!": the end of what is asked stands at the end."""
    found = _POLITE_END.search(text, max(0, len(text) - _LONGEST_THANKS))
    return text if found is None or len(text[: found.start()].split()) < 4 else text[: found.start()]


def _in_usual_order(said: str) -> str:
    """Signs, scales and marks put as they usually stand: "@100" is at 100, "100 iso" is ISO 100, and what breaks off asks."""
    if _OF_A_PLACE.may_match(said):
        said = _OF_A_PLACE.sub(lambda found: found["who"], said)
    asked = _QUESTION_FIRST.fullmatch(said) if "?" in said[:-1] else None
    if asked is not None:
        said = f"{_ended(asked['told'])} {asked['question']}"
    wanted = _WANTED_ALONE.match(said) if "?" not in said[:-1] else None
    if wanted is not None and any(c.isdigit() for c in said):
        said = f"what {said[wanted.start('what') :]}"
    if "@" in said:
        said = _AT_SIGN.sub(" at ", said)
    if _SPEED_FIRST.may_match(said):
        said = _SPEED_FIRST.sub(lambda found: f"ISO {found['speed']}", said)
    if _SOMEBODY.may_match(said):
        said = _SOMEBODY.sub(lambda found: f"{found['whose']} friend", said)
    if _OUTDOES.may_match(said):
        said = _OUTDOES_BY.sub(_is_over, _HOW_FAR_OUTDOES.sub(r"how many stops over \g<other> is \g<one>", said))
    if _NAN.may_match(said):
        said = _NAN.sub("my nan", said)
    if _DISTANCE_OF_LIGHT.may_match(said):
        said = _DISTANCE_OF_LIGHT.sub("how far", said)
    if _IS_RUN_ON.may_match(said):
        said = _IS_RUN_ON.sub(lambda found: f"{found['before']}{found['things'][:-1]}'s", said)
    if said[-1:].isalnum() and not _TELLS_OF_GEAR.search(said) and _BREAKS_OFF.search(said):
        said += "?"
    return said


_MEASURED = Pattern(r"\d ?[a-z]+$", re.I)
_SENTENCE_BEGINS = Pattern(r"(?:[A-Z][a-z]+|I)['’a-z]* ")


def _parted(found: re.Match[str]) -> str:
    """A comma for the dash, a stop where a sentence begins after it; but not between "2 sec - 3 sec"."""
    said = found.string
    if _SENTENCE_BEGINS.match(said, found.end()):
        return ". "
    return found[0] if said[found.end()].isdigit() and _MEASURED.search(said[: found.start()]) else ", "


def _is_over(found: re.Match[str]) -> str:
    return f"{'is' if found['verb'][-1:].lower() == 's' else 'be'} {found['much']} over {found['other']}"


_GOES_ON = Pattern(r"\b(?:to|the|an?|at|of|for|with|from|in|on|by|is|are|was|my|his|her|its|about|and|or|than|f|iso|set|use|put)$", re.I)
"""Before a pause that breaks off no clause."""

def _unpaused(found: re.Match[str]) -> str:
    """"back to, um, the wall"; between two figures the second may put the first right."""
    if _FIGURE.search(found["before"]) and _FIGURE.search(found["after"]):
        return found[0]
    told = found["before"].rstrip(",.")
    joined = "," not in found[0][len(told) :] or _GOES_ON.search(told) is not None
    return f"{told} " if joined else f"{told}, "


def _ended(told: str) -> str:
    return told if told[-1:] in ".!;:" else told + "."


def _without_opener(text: str) -> str:
    """"Ok so, quick question: …"."""
    for _ in range(3):
        first = _FIRST_WORD.match(text)
        found = _OPENER.match(text) if first is not None and (first[1].lower() in _BEGINNINGS or first[1].lower().startswith(_HUMS)) else None
        if found is None:
            break
        text = text[found.end() :]
    return text


def _without_aside(text: str, lexicon: Lexicon) -> str:
    """"… what aperture? Thanks, it is getting late here": after what is asked a few words that tell nothing."""
    for _ in range(2):
        last = _LAST_SENTENCE.search(text) if _holds(text, _ENDED) and not text.rstrip().endswith("?") else None  # what is asked last is no aside
        if last is None or not _OF_ONESELF.match(last["last"]):
            break
        if any(t.type not in _SAYS_NOTHING for t in hear(_FORGOTTEN.sub(" ", last["last"]), lexicon).tokens):
            break
        text = text[: last.start()]
    return text

"""Hints: questions that ask for a quantity without naming it.

"where do I move it for one stop less" · "what do I get at seven feet" · "what do I set the meter to"
Each row: what the words look like, what facts must be there, what is asked.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from assistant.patterns import Pattern
from assistant.query import Ask, Fact

_SPEED_WORDS = r"what (?:do|should|would|must|will|can) (?:i|we|you)\b.*\b(?:rate|meter|expose it|shoot it|dial|set the meter)|\brate it\b|do i (?:rate|meter|shoot)\b|\brating\W*\?|what (?:rating|ei)\b|rated? (?:it )?(?:at )?what|how (?:do|should) i rate|meter (?:it )?(?:at|for) what|(?:meter|camera|dial) (?:set )?(?:to|at|on) what|\b(?:meter|metered|rate|rated|rating|expose|exposed|shot|set)(?: it| them)? (?:at|for|to|as)(?: what)?\W*$"
_BRACKET = r"\bbrackets?\b|\bbracketing\b|\b(?:frames?|exposures?|shots)\b.*\b(?:over|under|either side|each side|each way|apart|steps?)\b|[+]\s?[\d½⅓⅔][^+]*[-−]\s?[\d½⅓⅔]"

_RATING = r"\bwhat (?:am|are|do|should) (?:i|we) (?:be )?meter(?:ing)? (?:at|for|on)\b|\bfilm (?:speed )?dial\b|\bdial (?:say|read|go)\b|\bnew rating\b|\b(?:my|so the) (?:ei|rating)\b|\brate it\b"
_LENS_TO_WHAT = r"\b(?:lens|ring|f-?stop) (?:goes |set |then )?(?:on|at|to) what\b|\b(?:lens|ring)(?: goes| then| now| is| set)* where\W*$|\bf what\b|\b(?:lens|ring)(?: set)? (?:on|to|at)\W*\?|\bwhat (?:must|should|does) the lens (?:open|close|stop down) to\b"
_LENS_SET = (r"\b(?:open (?:it |the lens )?(?:up )?to|close (?:it )?(?:down )?to|stop (?:it )?down to)\b(?!\s*f?[\s/:]*\d)|(?<![\d½] )\bon (?:the|my) (?:lens|ring|barrel)\W*$|\bset (?:on )?(?:the|my) (?:lens|ring|camera)(?!\s*(?:to|at|on)\s*f?\W?\d)|f.?stop on\b|\bwhat (?:goes|do i put|should i put|to put|is set|belongs|must go|should go) on (?:the|my) (?:lens|ring|barrel|camera)\b|\bwhere does the (?:ring|lens) (?:go|point)\b|\bwhat (?:do|should|must) i (?:put|set|leave|have) (?:the|my) (?:lens|ring|aperture) (?:on|at|to)\b|\b(?:what|which) (?:lens )?opening\b|\bwhat (?:should|must|does|will|would) (?:the |my )?(?:lens|ring) (?:be|go|stand|sit|get set)\b|\b(?:i|we) (?:then |now )?(?:set|use|shoot at|dial in|open to)\W*\?\W*$|"
             r"\bwhat (?:now|then)\b|\bwhat (?:do|should|would|must|shall) (?:i|we) (?:\w+ )?(?:set|use|shoot|work|expose)\b|\bnew (?:f.?stop|aperture|setting)|where do i set the (?:lens|ring)|" + _LENS_TO_WHAT)

_NOW_SET = r"\bwith (?:it|that|both|them|the \w+)(?: \w+)? ?(?:on|up|fitted|in place)?\W*(?:i (?:set|use|open to))?\W*\?\W*$|\b(?:ring|set|lens|now|bare|direct|without(?: it)?|f|f/|open to|dial in)\W*\?\W*$|\b(?:ring|lens|dial|barrel) (?:goes?|to|at|on|sits|set|then goes)(?: to| at| on)?\W*(?:where|what|which)?[\W]*\?\W*$|\b(?:bare|without it|now)\W*(?:would be|is|it's|gives|makes|what)?\W*$|\bwhat (?:would|will|should|does|do|is) (?:it|that|i)\b[^.?]*\?\W*$"

_ALLOWED_FOR = r"\baperture\b[^?.]{0,60}\?|\b(?:bellows|draw|extension|that|it|the loss) (?:allowed|accounted|compensated|corrected|reckoned) (?:for|in)\b"

_TOTAL = r"\b(?:total|altogether|in all|all told|combined|both|sum)\b(?: loss| cost| lost)?\W*$"

_FACTOR_OF_ALL = r"\b(?:total|combined|joint) factor\b(?! ?(?:is|of|=|\d))|\bfactor\b[^?.\d]{0,24}\b(?:together|combined|both|altogether|in all|all told|in total|the two|the pair|the lot)\b[^?.\d]{0,12}\W*$"
"""What several filters come to, wanted as a factor."""
_THERE = (r"[.,;:!?-]\s*(?:(?:so|and|now|but|then|only) )*(?:at|on|with|for|what about|how about|what if) (?:at |on |an? )*(?:iso|asa|full|half|quarter|eighth|\d+ ?%|1/\d+|\d+ ?(?:iso|asa)|\d{3,4}\b|25\b|32\b|50\b|64\b)[^.?;]{0,16}\?\W*$"
          r"|\b(?:at|on|for) (?:iso|asa|full|half|quarter|1/)[^?]*[.,;:!?-]\s*(?:(?:so|and|now|but|then) )*(?:full|half|quarter|1/\d+|(?:iso|asa) ?\d+|\d{3,4})(?: power)?\?\W*$")
"""The condition alone: "GN 80 ft at ISO 100. at ISO 400?"."""

_WHERE_IT_STANDS = r"\bwhere(?:'s| is| does| do| should| must| to)?\b[^?]*\b(?:fill|key|hair|rim|second|other)\b(?: light| flash| head| one)?(?: (?:go|stand|sit|be|belong)|\W)"
"""Where a second light is to be put."""

_APART = r"\bstops? (?:apart|between|from|difference|separat\w*)\b|\b(?:apart|distance|far) in stops\b|\b(?:apart|difference|between|gap|from|versus|vs|v|against|to)\b[^.?]*\bstops?\b"
"""Two marks of one scale, with stops named: "stops between ISO 100 and ISO 800"."""

_MARK = r"(?:1/\d+(?: ?s(?:ec)?)?|(?:iso|asa) ?\d+|f ?/? ?\d+(?:\.\d+)?|\d+ ?(?:iso|asa))"
_VERSUS = rf"^\W*{_MARK}\W+(?:against|versus|vs|v)\W+(?:{_MARK}|\d+)\W*$"
"""Two marks and nothing else: "1/30 against 1/250"."""

_SKY = r"\b(?:sun\w*|cloudless|overcast|shade|hazy|snow|beach)\b"
"""A sky named, so that a film and one setting tell the other."""

_ONE_POP = r"\b(?:one|a|single|each|1)(?: single)? (?:pop|flash|burst|hit)\b"
_POPS_TO = r"(?:^\W*|[.;:!?,] +)(?:(?:so|and|then),? )?(?:pops|flashes|bursts|hits) (?:i need |do i need |needed |it takes )?to (?:get|make|match|reach|bring|build|equal|restore|recover)\b"
"""Flashes named first and what they are for: "pops to get back to the bare reading"."""
_SO_I = r"\b(?:so|then|and|now) (?:i|we)(?:'ll| should| must)?(?: then)?"

HINTS: tuple[tuple[Pattern, tuple[str, ...], str], ...] = tuple((Pattern(words, re.I), facts, ask) for words, facts, ask in (
    (r"\bwhere (?:is|are|does|do|will|would) (?:the |my )?(?:ambient|background|backdrop|room|sky|hall|wall|window|church|street|scene|it|that|they)\b[^?.]{0,24}\b(?:now|then|lie|sit|end up|come out|fall)\b", ("relation", "shutter"), "stops"),
    *((r"\b(?:guide (?:number|no)|gn)\b(?! ?(?:is |was |of |= ?)*\d)[^?]*\bwhat(?:'s|s| is| would| will| does)? (?:it|that|this)\b", (told,), "guide_number") for told in ("film_speed", "power")),
    (_LENS_TO_WHAT, ("aperture", "film_speed", "film_speed"), "aperture"),
    (_LENS_SET, ("aperture", "film_speed", "film_speed"), "aperture"),
    (r"\b(?:tonight|now|today|this time)\b|\bopening\b|\bsame (?:place|spot|distance|everything)\b|\bwhere(?:'s| is) the (?:lens|ring)\b", ("aperture", "film_speed", "film_speed"), "aperture"),
    (r"\bsame (?:distance|spot|place|light|flash)\b[^?.]{0,16}\b(?:on|with|for|at) (?:iso )?\d+(?: film)?\W*$", ("aperture", "film_speed", "film_speed"), "aperture"),
    (r"\b(?:becomes|is|gives|makes|drops to|goes to)\W*(?:\.\.+|…)\W*$", ("guide_number", "film_speed"), "guide_number"),
    (r"\b(?:ev|exposure value|light value)\b(?! ?(?:of |is |= ?|was |reads |says )?-?\d+(?:[^/\d]|$))", ("shutter", "aperture"), "exposure_value"),
    (r"recip|exponent|schwarz", ("shutter",), "shutter"),
    (r"\b(?:far(?:thest|est)|furthest|nearest|closest)\b", ("guide_number",), "distance"),
    (r"\S", ("shutter", "exponent"), "shutter"),
    (r"how many (?:whole |full |complete |such )?(?:brackets?|subjects?|set-?ups?|scenes?|sets?|pictures?|places?|views?|sitters?|poses|groups|different|shots|things)", ("count", "count"), "count"),
    (r"\b(?:stops?|light)\W+(?:down|under|lost|less|difference|dimmer|darker|drop|loss)\W*$|(?:loss|drop|fall.?off|difference) in stops|how (?:dark|much (?:darker|dimmer|less))", ("times",), "stops"),
    *((r"\bhow (?:deep|thick) (?:can|may|could|should|might)\b", ("distance", told), "distance") for told in ("stops", "loss", "relation")),
    (r"\bnear(?:est)?\b\W+(?:and|&|to|/)\W+(?:far(?:thest)?|furthest)\b|\bhow near\b.{0,12}\bhow far\b", ("distance", "stops"), "near_limit"),
    (r"\b(?:near(?:est)?|closest)\b\W+(?:and|&|to|/)\W+(?:far(?:thest)?|furthest)\b|\bhow (?:near|close)\b.{0,12}\bhow far\b", ("distance", "aperture", "aperture_range"), "near_limit"),
    (_SPEED_WORDS, ("film_speed",), "film_speed"),
    (r"latitude|how (?:much |far )?(?:off|out|over|under|wrong)|get away with|forgiv", (), "latitude"),
    (r"^(?![^?]*\b(?:were i|if i|if we|load(?:ed|ing)?|instead|in its place|swap(?:ped)?|switch\w*|replac\w+)\b(?![^?]*\b(?:iso|asa|what|which)\b))(?!\W*(?:and|what about|how about|with|on|at)\b[^?]{0,14}\?*\W*$)(?!.*\b(?:what|which)(?: lens)? (?:opening|stop)\b)(?!.*\d ?(?:m|ft|feet|foot|metres?|meters?)\b).*(?:\bdin\b|\bdegrees\b|\bgost\b)", ("film_speed",), "film_speed"),
    (r"(?:film|sheet|stock|becomes?)\b.*(?:what (?:time|exposure)|how long|what for|what (?:about|at))|(?:what (?:time|exposure)|how long).*\b(?:film|stock)", ("shutter",), "shutter"),
    (r"how (?:long|many seconds)|(?:corrected|adjusted|real|actual|true) (?:time|exposure)|what (?:time|exposure)", ("shutter", "exponent"), "shutter"),
    (rf"(?:{_BRACKET}).*\b(?:shutter|times?|seconds|speeds?)\b|\b(?:shutter|times?|speeds?)\b.*\bbracket", ("shutter",), "shutter"),
    (r"bracket.*\bby power|power bracket|by power\b.*bracket", ("power",), "power"),
    (_BRACKET, ("aperture",), "aperture"),
    (r"\b(?:widest|largest|smallest|narrowest|biggest) (?:aperture|opening|f-?stop|stop|hole)(?: (?:of|in) (?:the|that|this|my|it)(?: (?:set|bracket|row|series|five|three|seven|lot))?)?\W*\?", ("count", "stops", "aperture"), "aperture"),
    (_BRACKET, ("shutter",), "shutter"),
    (_BRACKET, ("guide_number",), "aperture"),
    (_BRACKET, ("power",), "power"),
    (r"\b(?:costs?|loss|eats?|takes?|loses?|lost|drinks?|swallows?)\W*\?\W*$|\bwhat do(?:es)? [^.?]{1,30}(?:cost|eat|take|lose|drink|swallow|steal)", ("aperture", "aperture"), "stops"),
    (r"\bwhat (?:should|would|will|must|ought|does|do) (?:the |a |my |that )?[\w ]{1,28}\b(?:read|meter)\b", ("aperture",), "aperture"),
    *((_FACTOR_OF_ALL, pair, "factor") for pair in (("factor", "nd"), ("factor", "factor"), ("factor", "filter_loss"))),
    *((_TOTAL, pair, "stops") for pair in (("loss", "loss"), ("nd", "filter_loss"), ("loss", "filter_loss"), ("nd", "loss"), ("filter_loss", "filter_loss"), ("nd", "nd"), ("factor", "factor"))),
    (r"how much|\b(?:up|down) by\b|happens|\bgain|\bstops?\b|(?<!n't )(?<!not )(?<!want to )\bchange|difference|what does (?:it|that) do", ("shutter", "shutter"), "stops"),
    (r"(?:\btwice|\bdouble|times|\dx)\b[^.?]*\b(?:as far|distance|away)\b.*how (?:dark|much (?:darker|dimmer|less))", (), "stops"),
    (r"\bstops?\b[^.?]{0,24}\b(?:front to back|across|between)\b|\bfront to back\b[^.?]{0,24}\bstops?\b", ("gap",), "stops"),
    (r"\bwant\b[^?.]{0,16}\b(?:still|again|back)\b|\bstill want\b|\bhow do i (?:get|keep|hold)\b[^?]{0,40}\bpower\b", ("power", "aperture", "loss"), "power"),
    *((r"\bwhere (?:would|do|must|should|can|could|will|shall|does|has|have) (?:i |we |you |it |the \w+ |my \w+ )(?:have |need )?(?:to )?(?:put|move|place|stand|set|go|be|bring|take|shift|end up)\b", ("distance", taken), "distance") for taken in ("stops", "loss", "relation")),
    *((r"\boff and\W*\?|\band (?:with|through)(?: it)?\W*\?\W*$", ("aperture", taken), "aperture") for taken in ("loss", "filter_loss", "nd", "factor")),
    *((r"\b(?:range|reach|distance|throw|carry|carried|carries|reached|reaches|lit (?:him|her|them|it)|good (?:to|out to|for))\b[^?]*\bnow\W*\?*\W*$", ("distance", "aperture", taken), "distance") for taken in ("loss", "filter_loss", "stops")),
    *((r"\bwhat (?:was|were|had|did) (?:it|that|the reading|this)(?: been| be| read)? before\b", ("aperture", taken), "aperture") for taken in ("loss", "filter_loss", "nd", "factor")),
    (_NOW_SET, ("aperture", "t_number"), "aperture"),
    (r"\bwhere (?:(?:on|along) (?:the|its|my) (?:[\w-]+ )?(?:ring|barrel|scale) )?(?:do|must|should) i (?:set|put|turn|leave|stand) (?:it|the \w+)\b|\bwhat do i (?:set|turn|put)\b|\b(?:which|what) (?:ring |lens )?(?:setting|mark|position)\b", ("aperture", "t_number"), "aperture"),
    (r"\bnew (?:meter )?(?:reading|f-?stop|aperture|f-?number)\W*$", ("aperture", "loss"), "aperture"),
    (_NOW_SET, ("aperture", "loss"), "aperture"),
    *((r"\bin stops\b[^?.]{0,30}\bwhat\b|\bwhat\b[^?.]{0,40}\bin stops\b|\bhow much (?:have|has|did|do|am) (?:i|we)\b[^?.]{0,12}\b(?:lost|lose|losing)\b", (taken,), "stops") for taken in ("loss", "filter_loss")),
    (_NOW_SET, ("aperture", "filter_loss"), "aperture"),
    (_NOW_SET, ("aperture", "nd"), "aperture"),
    (_NOW_SET, ("aperture", "factor"), "aperture"),
    (_NOW_SET, ("aperture", "extension"), "aperture"),
    (_ALLOWED_FOR, ("aperture", "extension"), "aperture"),
    (_ALLOWED_FOR, ("aperture", "magnification"), "aperture"),
    (_NOW_SET, ("aperture", "magnification"), "aperture"),
    (r"\bwhats? (?:it|that|this|the \w+) costs?\b|\bwhat (?:it|that|this) costs?\b|\bwhats? (?:it|that|the \w+) (?:cost|eat|lose|take)", ("aperture", "aperture"), "stops"),
    (r"\b(?:darker|brighter|under|over|down|up|less|more) by\W*(?:what|how much)?\W*$", ("distance", "distance"), "stops"),
    *((r"\bwhere\b|what distance|how (?:far|close|near)", ("distance", *read), "distance") for read in (("aperture", "aperture"), ("aperture_range",))),
    (r"\b(?:share|part|proportion|fraction|percentage) of (?:the|its|that|my|all)\b[^?.]{0,20}\blight\b|\blight\b[^?.]*\b(?:share|part|proportion|fraction|percentage) of that\b", ("distance", "distance"), "stops"),
    *((r"\bdeepest\b|\b(?:greatest|largest|maximum) depth\b", ("distance", told), "distance") for told in ("stops", "loss", "relation")),
    (r"what do i (?:add|give|take off|open)|how much do i (?:add|give|open)", ("stops",), "stops"),
    (r"what(?:'s|s| is| does| would| will) f\W?\d[\d.]*\b[^?]*\b(?:at|become|on)\b", ("aperture", "power"), "aperture"),
    (r"what(?:'s|s| is| does| would| will) f\W?\d[\d.]*\b[^?]*\b(?:at|become|on)\b", ("aperture", "film_speed", "film_speed"), "aperture"),
    (r"\bwhat (?:would|will|does|must|should|do) the (?:\w+ )?(?:rows?|ranks?|tiers?|lines?|ones?) (?:want|need|get|read|call for|take)\b", ("distance", "distance", "aperture"), "aperture"),
    (r"^(?![^?]*\bf ?/? ?\d)[^?]*\b(?:right|correct|good|spot on|ok|fine|perfect|worked|did it|enough)\b[^?]*(?:\bwhat (?:then |now |power )?(?:at|for|from)\b|[.,;] (?:and |so |now |then )*(?:at|from) [^.,;?]{1,16}\W*$)", ("power", "distance", "distance"), "power"),
    (r"\bwhat (?:does|will|would|do|must|should) [^?.]{1,24}\b(?:gives?|reads?|gets?|makes?|bring)\b|\bwhat (?:do|would|will) i get (?:at|on|from|with)\b", ("aperture", "power", "power"), "aperture"),
    (r"\b(?:loss|drop)\b", ("distance", "gap"), "stops"),
    (r"\bstops? (?:under|over|down|below|above|darker|dimmer|brighter|lost|less|more)\b[^.?]{0,30}\?*\W*$", ("distance", "gap"), "stops"),
    *((r"\bhow (?:hot|bright|dark|dim)(?:'s| is| are| does)?\b", ("distance", other), "stops") for other in ("distance", "gap")),
    (r"\b(?:loss|difference|gain|gained|drop|change|lost|brighter|darker)\W*(?:\?|$)|what(?:'s| is) lost|\bloss at\b", ("distance", "distance"), "stops"),
    (r"\b(?:stops?|third|half) (?:faster|slower) than|(?:faster|slower) than", ("film_speed", "stops"), "film_speed"),
    (r"\b(?:time|exposure time|exposure)(?: please)?\W*$", ("exposure_value", "aperture"), "shutter"),
    (rf"{_SKY}[^?]*\b(?:time|exposure)(?: please)?\W*$", ("film_speed", "aperture"), "shutter"),
    (rf"{_SKY}[^?]*\b(?:lens|ring|opening)(?: please)?\W*$", ("film_speed", "shutter"), "aperture"),
    (r"\b(?:widest|largest|smallest|biggest) (?:stop|aperture|opening|f[- ]?stop|hole)\b(?:[^?.]{0,24}\b(?:can|could|may|use|get|allowed|possible)\b|\W*$)", ("sync", "film_speed"), "aperture"),
    (r"\b(?:time|exposure time)\W*\?\W*$", ("aperture", "shutter", "film_speed"), "shutter"),
    (r"\bplus\b.*\b(?:gives?|makes?|is|comes to)\b\W*(?:what)?\W*$", ("aperture", "aperture"), "aperture"),
    (r"\b(?:without(?: it)?|bare|with it off)\W*\?\W*$", ("power", "loss"), "power"),
    (r"\bwhat (?:would|will|does|must|should) (?:it|that|the (?:\w+ )?(?:light|flash|lamp|head|gun)) (?:then |now )?(?:need|take|want)\b", ("power", "loss"), "power"),
    (r"(?:\bwhere\b|what distance|how (?:far|close|near)).*(?:\b(?:twice|half|double|(?:two|three|four) times)\b|\ba quarter\b).*\b(?:light|bright|dark)|\b(?:twice|half|double|(?:two|three|four) times|a quarter)\b.*\b(?:light|bright|dark)\w*\b.*(?:\bwhere\b|what distance|how (?:far|close|near))", ("distance",), "distance"),
    (r"what(?:'?s| do(?:es)?| will| would|'ll) .{0,24}\b(?:lose|losing|gain|gaining|drop)", ("distance",), "stops"),
    (r"what (?:do|have|did|would|will) (?:i|we) (?:gain|lose|lost|gained)", ("distance",), "stops"),
    (r"\b(?:where(?: is|'s|s)?|what(?: is|'s|s)) (?:the|my) (?:limit|reach|edge)\b", ("guide_number", "aperture"), "distance"),
    (r"\bwas (?:at )?f\W?\d[\d.]*(?: bare)?\b(?!.*\bstop down\b)", ("aperture", "loss"), "aperture"),
    (r"\b(?:so|and|then|now) (?:at|from) \d[^?.]*\?\W*$", ("aperture", "distance", "distance"), "aperture"),
    (r"\bwhat (?:do|does|will|would)\b[^?.]{0,40}\b(?:give|get|make|come to|add up to)\b", ("aperture", "count"), "aperture"),
    (r"\bstops? (?:gained|lost|won)\b|\bstops? (?:do |will |would )?(?:i|we|you)(?:'d|'ll)? (?:gain|lose|win|give up|pick up)\b|\bhow many stops\b", ("zoom_row", "zoom_row"), "stops"),
    (r"\bwhat(?:'?s|s| is) (?:the|my|it|that|this) ?(?:\w+ ){0,2}(?:costing|eating|taking|losing|stealing|swallowing)\b", ("aperture", "aperture"), "stops"),
    (r"\b(?:costing|costs?|eating|eats|taking|takes|losing|loses|robbing|robs|stealing|steals)(?: me| us)?(?: of)? what\b|\bwhat(?:'s| is) (?:the |my |that |this )?[a-z]+(?: [a-z]+)? (?:robbing|stealing|eating|costing)(?: me| us)? of\b", ("aperture", "aperture"), "stops"),
    (r"\bwhat(?:'?s|s| does| will| would| is)? (?:it|that) (?:drop|go|fall|come|sink)(?: down)? to\b", ("aperture", "loss"), "aperture"),
    (r"\bwhich\b[^?]*\b(?:more|deep\w*|less|shallow\w*)\b[^?]*\b(?:in focus|sharp|depth)\b", ("aperture_choice",), "depth_of_field"),
    (r"\b(?:sharp|in focus|depth|dof|deeper|shallow\w*|blur\w*|out of focus|crisp)\b", ("aperture_choice",), "depth_of_field"),
    (r"^\W*(?:the |total |combined )*(?:gn|guide (?:number|no)) (?:of|for|from|with)\b[^?]*\?\W*$", ("guide_number", "count"), "guide_number"),
    *((r"^\W*(?:the |how many )?stops (?:to|i have to|i must|i need to|needed to) (?:add|open|give|allow)\b", (told,), "stops") for told in ("magnification", "extension")),
    (r"\b(?:slowest|what|which)\b[^?.]{0,16}\bfilm\b[^?]*\b(?:do it|will do|do that|do this|manage|need|enough)\b", ("guide_number", "distance", "aperture"), "film_speed"),
    (r"\bslowest\b[^?.]{0,16}\bfilm\b[^?]*\b(?:do it|will do|do that|do this|manage|need|enough)\b", ("guide_number", "distance", "widest_aperture"), "film_speed"),
    (r"\bwhere(?:'s| is|s| does| do| should)?\b[^?]*\b(?:fill|key|hair|rim|second|other)\b", ("ratio", "distance"), "distance"),
    (r"\bwhat (?:does|would|will|did) (?:the |my )?[^?.]{1,24}\bcosts?\b|\bwhat (?:the |my )?\w+ costs\b", ("aperture_range",), "stops"),
    (r"\bwhat (?:would|will|does|should|did) (?:the |my |it )?(?:bare|naked|plain)\b|\bwhat (?:would|will|does) (?:it|that|the \w+) (?:give|read|meter)\b[^?]*\b(?:without|bare)\b", ("aperture", "loss"), "aperture"),
    (r"\b(?:real|true|actual|right|corrected|total) (?:exposure|time)\b|\bhow long\b", ("shutter", "stops"), "shutter"),
    (r"\bbecomes?\b|\bmetered\b", ("shutter", "shutter", "shutter"), "shutter"),
    (r"\bwhat(?:'s|s| is| was| are| does| do| did| would| will| could| must| should)? (?:the |my |that |those )?[a-z]+(?: [a-z]+)? (?:(?:do|give|make|measure|read|meter|show|be)s? )?(?:alone|by (?:it|them)sel(?:f|ves)|on (?:its|their) own)\b|\b(?:alone|by (?:it|them)sel(?:f|ves)|on (?:its|their) own) (?:do|give|make|measure|read|show|worth)s?\b[^?.]{0,12}\?|\bhow (?:bright|strong) (?:is|are|was|would) (?:the |my )?[a-z]+(?: [a-z]+)? (?:be )?(?:alone|by (?:it|them)sel(?:f|ves)|on (?:its|their) own)\b|\b(?:total|together|both|in all|altogether)\b[^?]*\bwhat(?:'s|s| is) (?:the |my |that )?[a-z]+(?: light)?\W*$", ("aperture", "aperture"), "aperture"),
    (r"\b(?:equals?|makes?|gives?|totals?|comes? to|is worth|add(?:s|ed)? up)\W*(?:what|how much)?\W*\?*\W*$", ("aperture", "count"), "aperture"),
    *((r"\breading\W*$|\bwhat reading\b|\b(?:show|say|read|give)s? what\W*$|\b(?:meter|reading)\b[^.?]{0,40}\b(?:says|reads|shows|is|gives)\W*$|\bwhat(?:'?s)? (?:does|must|should|will|would|has|ought|the|my) [^?.]{0,40}\b(?:show|say|read)\b", (told, "aperture"), "aperture") for told in ("relation", "ratio")),
    (r"\b(?:power )?setting\W*\?\W*$", ("ratio", "power"), "power"),
    (r"\bpower(?: now| then)?\W*$", ("distance", "distance", "power"), "power"),
    *((r"\b(?:show|say|read|give|get)s? what\W*$", ("aperture", told), "aperture") for told in ("gap", "distance")),
    *((rf"\bgoes (?:at|to)?\W*(?:where|what)?\W*(?:in )?(?:metres|meters|feet|m|ft)?\W*$|{_WHERE_IT_STANDS}", ("distance", told), "distance") for told in ("relation", "ratio")),
    (r"\b(?:both|the two|the pair|together)(?: (?:on|at once|together|of them))*\W*\?\W*$", ("aperture", "count"), "aperture"),
    (r"\bnew reading\b|\breading (?:now|then|there)\W*$|\bwhat'?s? (?:the |my )?(?:meter |flash ?meter )?reading (?:now|then|there)\b", ("aperture", "distance", "distance"), "aperture"),
    (r"\bwhat (?:do|should|must|would|shall|can) (?:i|we) (?:turn|dial|set|knock|bring|wind|put) (?:it|that|the \w+(?: \w+)?)(?: down| up)? (?:to|at|on)\b", ("aperture", "aperture", "power"), "power"),
    (r"\b(?:light|head|flash|lamp|strobe|one|fill|hair|rim|key|main|kicker|paper|backdrop|background|bg|wall|curtain|sheet|cloth|screen|sky)s? (?:then |now )?(?:(?:should|must|is to|has to|needs to|to) )?(?:reads?|meters?|at|shows?)\W*\?+\W*$", ("relation", "aperture"), "aperture"),
    *((r"\bstops? (?:lost |down |under )?(?:on|at) (?:the |that )?(?:wall|back\w*|paper|rear|last|curtain)\b[^.?]{0,12}\W*$|\b(?:difference|spread|fall-?off)\W*\?*\W*$", ("distance", told), "stops") for told in ("gap", "distance")),
    (r"\bwhere (?:goes|to put|to stand|to place|to set)\b", ("gap", "stops"), "distance"),
    (r"\bwhich click\b", ("guide_number", "distance"), "aperture"),
    (r"\b(?:what|which) fraction\b(?! of (?:the )?(?:light|exposure))", ("guide_number", "distance"), "power"),
    *((r"\bby (?:moving|shifting|sliding|dragging|pulling)\b", (told,), "distance") for told in ("ratio", "stops", "relation")),
    *((r"\bby (?:turning|dialling|dialing|powering|changing)\b.*\b(?:power|down|up|it)\b|\b(?:by|with) (?:the )?power\b", (told,), "power") for told in ("ratio", "stops", "relation")),
    (r"\b(?:move|back|pull|push)\b[^?]*\bwhere\W*$", ("stops",), "distance"),
    (r"\b(?:which|what)\b[^.?!]{0,40}\b(?:more|most|less|least) (?:of (?:the|that) )?(?:[\w']+ )?(?:light|exposure|daylight|ambient)\b", ("shutter", "shutter", "aperture", "aperture"), "stops"),
    (r"how (?:dark|bright|much (?:darker|dimmer|brighter|light))|what(?:'s| is| are)? (?:the )?(?:fall.?off|difference|drop|loss|spread)|fall.?off\b.*\?|(?:difference|spread) in stops", ("distance",), "stops"),
    (r"what do (?:i|we) (?:get|set|use|have)|what does (?:it|that|she|he|the \w+(?: \w+)?) (?:get|read|become)|what (?:would|will) (?:i|it|that|the \w+(?: \w+)?) (?:get|be|read)|what(?:'s| is) (?:it|that|right|good) at|what (?:happens )?at\b", ("aperture", "distance"), "aperture"),
    (r"\bwhere\b|what distance|how (?:far|close|near)|(?:nearest|closest) and (?:furthest|farthest)|(?:near|far|distance)s? limits?|between what", ("distance", "stops"), "distance"),
    (r"\bwhere\b|what distance|how (?:far|close|near)", ("distance", "times"), "distance"),
    (r"\bwhere\b|how (?:far|close|near)|what distance", ("gap", "stops"), "distance"),
    (r"\bwhere (?:was|is|did|had|were|am|are)\b", ("distance", "loss"), "distance"),
    (r"\bwhen (?:is|are|will|does|do) (?:he|she|they|it|the \w+|my \w+)\b[^?]*\b(?:over|under|darker|brighter)\b", ("distance", "stops"), "distance"),
    (r"\bwhere (?:is|are|was|were|does|do|did) (?:the |my )?[a-z]+(?: (?:sit|stand|hang|sitting|standing))?\W*$", ("distance", "relation"), "distance"),
    (r"how (?:dark|bright|far (?:under|over|down))|how (?:will|does|would|do) the \w+(?: \w+)? (?:look|come out|record|turn out)|what (?:will|does|would|happens to) the (?!time\b|shutter\b|exposure\b|aperture\b|speed\b)\w+", ("shutter", "aperture"), "stops"),
    (r"\bt.?stop|\bt.?number|what t\b", ("aperture",), "aperture"),
    (_LENS_SET, ("guide_number",), "aperture"),
    (_LENS_SET, ("aperture",), "aperture"),
    (_LENS_SET, ("exposure_value",), "aperture"),
    (r"\btogether\W*$|what do (?:they|the two|both) (?:total|make|add|come|give)|both added|added together|with both\b|\bcombined\W*$|\btotal\W*$|add up to", ("aperture",), "aperture"),
    (r"what (?:about|will|would|does|do)|how about|\bneeds?\b", ("aperture", "film_speed", "film_speed"), "aperture"),
    (r"\bmov(?:e|ing)\b.*\b(?:half|double|twice|stops?)\b|\b(?:half|double|twice|halve)\b.*\bmov", ("distance",), "distance"),
    (r"fall.?off|how many stops|difference", ("length_range",), "stops"),
    (r"\bstops?\b", ("number_range", "push"), "stops"),
    (r"\b(?:push|pull)\w*\b.*\bstops?\b", ("number_range",), "stops"),
    (r"sheet\b.*\btime", ("shutter",), "shutter"),
    *((_THERE, ("guide_number", condition), "guide_number") for condition in ("film_speed", "power")),
    *((_APART, pair, "stops") for pair in (*((q, q) for q in ("film_speed", "shutter", "aperture", "power", "exposure_value", "guide_number", "energy")), ("aperture_range",))),
    *((_VERSUS, (q, q), "stops") for q in ("shutter", "film_speed", "aperture")),
    (_VERSUS, ("aperture_range",), "stops"),
    (r"\b(?:so |and )?what(?:'s| is|s| would)? (?:it|that)(?: be)? (?:at|on|for)\b", ("guide_number", "power", "power"), "guide_number"),
    (r"\b(?:so |and )?what(?:'s| is|s| would)? (?:it|that)(?: be)? (?:at|on|for)\b", ("guide_number", "film_speed", "film_speed"), "guide_number"),
    (r"\bstops?\b[^.?]{0,14}\bbetween (?:them|the (?:two|rows)|these|front and back|first and last)\b|\bbetween (?:them|the (?:two|rows))\b[^.?]{0,16}\bstops\b", ("distance", "distance"), "stops"),
    (r"\b(?:what|which) (?:time|shutter|exposure)\b|\bhow long\b", ("shutter", "stops"), "shutter"),
    (r"\bnow (?:on |at |with )?(?:iso|asa|\d+ film)\b", ("aperture", "film_speed", "film_speed"), "aperture"),
    (r"\bwhat (?:on|at|for|with) (?:iso|asa|\d)", ("aperture", "film_speed", "film_speed"), "aperture"),
    (r"\bnow\W*$", ("aperture", "film_speed", "film_speed"), "aperture"),
    *((rf"{_SO_I} (?:set|use|open (?:up )?to|dial(?: in)?|shoot at|put)(?: the (?:lens|ring|aperture))?(?: (?:to|on|at))?\W*$", ("aperture", lost), "aperture") for lost in ("factor", "loss", "filter_loss", "nd", "extension", "magnification", "count")),
    *((r"[.;,:!?] *(?:so |and |then )?(?:set|setting|set to)\W*\?\W*$", ("guide_number", path), "aperture") for path in ("distance", "path")),
    (rf"{_SO_I} (?:set|use|open (?:up )?to|shoot at)(?: the (?:lens|ring|aperture))?(?: (?:to|on|at))?\W*$", ("guide_number", "distance"), "aperture"),
    *((r"\b(?:it|that|this|the (?:gn|guide number)|which) (?:becomes|is|goes (?:up |down )?to|turns into|comes to|drops to|falls to|rises to|makes)\W*$", ("guide_number", condition), "guide_number") for condition in ("film_speed", "power")),
    *((r"\bwhere (?:does|will|would) (?:that|this|it) leave (?:me|us|it)\b[^?.]*\bstops\b|\bhow (?:far|many stops) (?:down|under|short)\b", (told,), "stops") for told in ("charge",)),
    (r"\b(?:max|maximum|greatest|longest|furthest|farthest) (?:flash |working )?(?:distance|range|reach)\W*$", ("guide_number", "aperture"), "distance"),
    *((rf"\b(?:asking|asks|asked|wants? to know|looking|need to know)(?: me| us)?(?: for| about)?(?: the| my| what| which)* {said}\b", ("guide_number",), name) for said, name in ((r"(?:aperture|f-?stop|lens setting)", "aperture"), (r"distance", "distance"), (r"power", "power"))),
    (r"\bsame (?:distance|place|spot|set-?up|flash|light|everything)\b[^?.]{0,20}\b(?:on|at|with|for) (?:an? )?(?:iso |asa )?(?:\d+|\w+ hundred)(?: film| iso| asa)?\W*$", ("aperture", "film_speed", "film_speed"), "aperture"),
    (r"\bfill (?:then )?(?:goes|stands|sits|belongs|has to (?:be|stand|go))(?: at| to| where)?\W*$", ("ratio", "distance"), "distance"),
    *((r"\bwhere (?:do(?:es)?|should|must|will|can|is|'s)?\b[^?]{0,12}\bfill\b", (told, "distance"), "distance") for told in ("relation", "stops")),
    (r"how many (?:frames|shots|exposures)", ("stops",), "count"),
    (rf"{_ONE_POP}[^?]*\b(?:\d+|two|three|four|six|eight|sixteen) (?:pops|flashes|bursts|hits)\W*\?\W*$", ("aperture", "count"), "aperture"),
    (rf"{_ONE_POP}[^?]*(?:\b(?:of (?:them|'?em|those|these))|[.,;:!?] *(?:(?:and|so|then|now|what about|how about|with|for) )*[\w-]+)(?: (?:read|give|make|come to|get)s?(?: me)? what)?\W*$", ("aperture", "count", "count"), "aperture"),
    (r"\bsame (?:place|spot|distance|stand)\W*\?\W*$", ("aperture", "count", "count"), "aperture"),
    (r"\b(?:loss|lost|stops|costs?)\W*\?*\W*$", ("extension", "focal_length"), "stops"),
    (r"\b(?:all (?:two|three|four|five|six|\d|of (?:them|these|those))|both|the lot|together)(?: on| firing| at once| together)*\W*\?\W*$", ("count", "aperture"), "aperture"),
    (r"\b(?:lens|ring|aperture|f-?stop|iris|f)(?: now| then| goes to| to| at)?\W*\?\W*$", ("sync", "shutter", "aperture"), "aperture"),
    (r"(?:^|[.;,:] )(?:and |so |what(?:'s| is) the |the )?(?:difference|diff|gap|spread|apart)(?: between them| in stops| please)?\W*$", ("aperture", "aperture"), "stops"),
    (r"\bhow (?:big|great|much|large) (?:is |was )?(?:the|a|that) loss\b", ("aperture_range",), "stops"),
    (r"\bwhat (?:would|will|should|does|must) (?:the|my) (?:time|exposure time|shutter)\b|\bwhat time\b", ("aperture", "aperture", "shutter"), "shutter"),
    (r"\b(?:where am i|i'm at what|i am at what|what am i at|so i'm (?:on|at) what)\b", ("aperture", "loss"), "aperture"),
    *((_RATING, ("film_speed", moved), "film_speed") for moved in ("push", "stops")),
    (r"\bwhat(?:'s| is| does) (?:each|the|one|a|every) (?:flash|pop|burst|firing)\b[^?]*\bus", ("energy", "power"), "energy"),
    (r"\bpops? (?:per|for each|for every|needed|required)\b", ("guide_number", "distance", "aperture"), "count"),
    (r"\bhow (?:deep|thick) (?:can|may|could|should|is)\b", ("distance", "stops"), "distance"),
    (r"\bwhat(?:'ll| will| would| does|'d) it (?:read|say|be|give|show|meter)\b", ("aperture", "loss"), "aperture"),
    (r"\b(?:give me|tell me|work out|need|want|find)\b[^.?]{0,12}\b(?:fall-?off|spread|difference)\b", ("distance", "distance"), "stops"),
    (r"\b(?:diff|difference|drop|falloff|fall-off)\W*$", ("distance", "distance"), "stops"),
    (r"\bas key to fill\b|\bkey to fill\W*$", ("distance", "distance"), "ratio"),
    (r"\bwhat (?:filter )?factor\b", ("nd",), "factor"),
    (r"\b(?:joules|ws|watt[- ]?seconds|energy) (?:per|a|each|for each|for every|in (?:a|each|one)) (?:flash|pop|burst|firing)\b|\b(?:per|each|a single) (?:flash|pop|burst) (?:in )?(?:joules|ws|watt[- ]?seconds)\W*$", ("energy", "power"), "energy"),
    *((r"\b(?:ring|lens|iris|barrel|aperture) (?:then |now |has to |must )?(?:goes?|sits?|stands?|stays?|belongs|be)(?: now| then)? (?:where|at what|to what|on what)\b|\b(?:set|put|turn|leave) (?:the |my )?(?:ring|lens|iris|barrel) (?:where|at what|to what|on what)\b|\bwhere (?:does|do|should|must|will|would) (?:i )?(?:the|my|put the|set the|turn the) (?:ring|lens|iris|barrel)\b", ("aperture", taken), "aperture") for taken in ("times", "factor", "loss", "filter_loss", "nd", "extension", "magnification", "relation")),
    *((r"\b(?:open(?: it| up| the lens)*|compensat\w+|add|give)(?: more)?(?: by| by what| by how much| by how many stops| how much| what)\W*\?\W*$", told, "stops") for told in (("extension", "focal_length"), ("magnification",), ("nd",), ("filter_loss", "filter_loss"), ("loss", "loss"))),
    *((r"\bwhat(?:'s|s| is| was| do i| am i| did i| have i| would i)(?: (?:been|being))? (?:lost|lose|losing|gone|gained|gain|gaining)\b(?! in (?:sharpness|depth|time))", told, "stops") for told in (("distance", "move"), ("distance", "distance"), ("length_range",))),
    *((_POPS_TO, told, "count") for told in (("loss",), ("filter_loss",), ("nd",), ("aperture", "aperture"), ("guide_number", "distance", "aperture"))),
    (r"\bhow many\b(?: pops| flashes| bursts)? (?:to (?:reach|get to|get|make|build up to|bring it to)|for)\W+f", ("aperture", "aperture"), "count"),
))


def _by_kind() -> dict[str, tuple[int, ...]]:
    """The hints by the first of the facts they want: most questions have few kinds of facts."""
    found: dict[str, tuple[int, ...]] = {}
    for number, (_, wanted, _) in enumerate(HINTS):
        first = wanted[0] if wanted else ""
        found[first] = (*found.get(first, ()), number)
    return found


_BY_KIND = _by_kind()


def implied_asks(text: str, facts: Iterable[Fact]) -> list[Ask]:
    """What is asked by a question that named no quantity; empty when nothing is.

    >>> implied_asks("what is the answer", [])
    []
    """
    here: Sequence[str] = [f.quantity for f in facts]
    kinds = {"", *here}
    numbers: list[int] = []
    for kind in kinds:
        numbers += _BY_KIND.get(kind, ())
    for number in sorted(numbers):
        words, wanted, quantity = HINTS[number]
        if kinds.issuperset(wanted) and words.search(text) and all(here.count(w) >= wanted.count(w) for w in wanted):
            return [Ask(quantity)]
    return []

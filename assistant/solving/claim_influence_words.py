"""The words of an influence: what is changed and which way, and what is said to follow for what.

"turning the flash down leaves the room as it was" is the cause `power`, way -1, and one thing told:
`ambient`, same. Whether that is so is for claim_influence.
"""

from __future__ import annotations

from assistant import patterns
from assistant.patterns import Pattern, Patterns
from assistant.places import ROOMS
from assistant.records import record
from assistant.solving.claim_denial import untagged
from assistant.solving.claim_influence_causes import cause_of
from assistant.solving.claim_words import SETTING_STAYS


@record
class Told:
    """What is said of one effect: "more", "less", "change", "same" or "sized" (so much of it, which the table does not know), whether that is denied, whether by how much is said."""

    effect: str
    says: str
    denied: bool
    figured: bool = False


@record
class Saying:
    """A claim of influence: the cause, its way (+1 more of it, -1 less, 0 not said), what is told of its effects, whether the whole is denied."""

    cause: str
    way: int
    told: tuple[Told, ...]
    turned: bool


# --- what is no claim of influence ---------------------------------------------------------------------

_VALUE = Pattern(
    r"(?:^|[,.?!;:]\s*|\b(?:so|and|then|but) )(?:what|whats|what's|which|(?:by|at|to|on) what|how (?:many|much|far|short|fast|slow|high|low|deep|bright|strong|big|close|wide|do|does|should|can|long (?:must|should|do|does|can|is|will))|where|why|when (?:do|does|should))\b(?! (?:my|the|a|he|she|they|i|it|you|we|one) [^,?]*\bis (?:that|it|he|she)\b)|\bhow (?:long|far|much|many)\s*\?"
)
"""A question for a value or for a reason."""
_APART = Pattern(
    r"\bhss\b|\bhigh[- ]?speed sync|\bfp (?:sync|flash|mode)|\b(?:flash ?)?bulbs?\b|\b(?:beyond|above|past|faster than|over|exceed\w*)\b.{0,16}\bsync|\bttl\b|\bauto(?:matic)?\b|\bthyristor\b|\bslaves?\b|\bmeter(?:ed|s|ing)?\b|\bvoltage\b"
    r"|\bt ?0?\.[15]\b|\b(?:goes|go|gets|dials?) (?:only )?down to 1/|\bblack band|\b(?:only|a|black|upper|lower) part of the (?:frame|picture)|\bhits?\b[^.?]{0,20}\bharder\b|\bblur\w*|\bbokeh|\bsharp\w*|\bperspective|\bcompress\w*|\bflares?\b|\bcolou?r (?:temperature|cast|balance)|\b(?:warm|cool|cold|blu|tint|redd|yellow)(?:er|s|ish|ing)\b|\bvignett\w*|\bcover\w*|\bcorners?\b|\bghost\w*|\bred[- ]?eyes?\b|\bnoise\b|\benough\b|\b(?:safe|danger\w*|hurt\w*|eyes)\b|\b(?:fresh|new|old|cold|warm|flat) (?:batter\w+|cells)\b|\b(?:second|another|extra) (?:\w+ ){1,2}(?:behind|across|on the (?:other side|background)|opposite|for the background|from behind)\b"
)
"""Cases in which the table does not hold, or other files speak of them."""
_OR = Pattern(r"\b(?:flash|ambient|background|daylight|room|aperture|shutter)\b[^,.?]{0,12} or [^,.?]{0,12}\b(?:flash|ambient|background|daylight|room|aperture|shutter)\b")
"""A choice between two is no yes or no."""
_BESIDE = Pattern(r"\b(?:behind|beside|next to|in front of|near|around|past|over|across|opposite) (?:the |my |her |his |their |a )(?:sitter|subject|crew|couple|model|face|boat|person|group|rower|room|wall)s?\b")
_STUDIO = Pattern(r"\bstudio (?:head|flash|pack|strobe|unit)s?\b|\bmonolights?\b|\bmonoblocs?\b|\bpacks?\b")
_ON_CAMERA = Pattern(r"\b(?:flash|strobe|light) (?:is |mounted |sits |fixed )*on(?: the| my| top of the)? (?:camera|hot ?shoe)\b|\bon[- ]camera\b|\bhot ?shoe\b|\bpopp?-?up\b|\bcamera and (?:the )?flash\b|\bflash and (?:the )?camera\b|\bwith the flash on it\b")
_NEARER = Pattern(r"\b(?:closer|nearer|further|farther)\b")
_KNOWN_APART = Pattern(r"\b(?:no|not|without|never|isn't|n't) (?:\w+ ){0,3}?(?:hss|high[- ]?speed sync\w*|fp mode|flash ?bulbs?|ttl|auto\w*)(?: involved| at work| in use| on)?\b")
_FASTER_THAN_SYNC = Pattern(r"\b1/(?:[3-9]\d{2}|\d{4,})(?: ?s(?:ec\w*)?)?\b(?!(?: ?s(?:ec\w*)?(?:ond)?)? (?:flash|burst|pulse))")
_AMOUNT = Pattern(r"\d|\b(?:stops?|twice|doubl\w+|half|halv\w+|third|quarter\w*|times|four|three|eight|percent)\b|%")
_SIZE = Pattern(r"\bstops?\b|\b(?:twice|double|half|times|third|quarter|percent)\b|%")
"""How much, which is for the figures to decide: a part of the claim that has it is not passed over."""
_BY_HAND = Pattern(r"\bmanual\w*\b|\bexposure\b|\baperture\b|\bf-?stop\b|\bopen up\b|\bstop down\b|\bguide number|\bgn\b|\bflash\b")
_BRIEF = Pattern(r"\b(?:short|brief|quick) (?:burst|pulse)s? (?:from|of) (?:an? |the )?|\b1/\d+(?:th)?(?: of a)?[ -]?(?:s(?:ec)?(?:onds?)?)?\b|\bten seconds?\b|\blong exposures? with\b")

# --- what frames the claim ------------------------------------------------------------------------------

_FRAME = Pattern(
    r"^.{0,80}?\b(?:says|said|say that|(?:they|people|some|books|you) say|claims?|claimed|reckons?|swears?|insists?|thinks?|believes?|told (?:me|us|the others)|tells (?:me|us)|i(?: have|'ve)? (?:once )?(?:read|heard|learnt|learned)|maintains|wrote|writes)\b(?: me\b| us\b)?[,:]?(?: that\b| somewhere| in a book)*"
    r"|\b(?:true or false|yes or no|right or wrong|fact or fiction|am i right|is (?:he|she|that|it|this) (?:right|so|correct|true|the case|a fact)|(?:is it|it's|it is) (?:true|right|so|correct|the case)(?: that| to say| when i say)?|do i have (?:that|this|it) right|have i got (?:that|this|it) right|(?:do you )?agreed?\b|correct\b|right\?|\btrue\?|yes\?|quick (?:one|question)|student question)(?:[:,]| that\b)?"
)
_SYNC = Pattern(
    r"\b(?:(?:leaf|focal[- ]plane) shutter, )?(?:an? )?(?:electronic |studio )?flash (?:with|has|of) an? (?:really |very |quite )*(?:short|brief|quick) (?:burst|pulse|flash)|"
    r"\b(?:my |the )?(?:camera |body )?(?:syncs?|x-sync|sync speed|flash sync)(?: speed)?(?: is| of| tops out| goes)?(?: (?:up|down))?(?: (?:to|at|is))? 1/\d+(?: or slower)?"
    r"|\b(?:(?:still |both (?:of (?:them|these|those|which) )?|always |well |safely |is |are |both is )*(?:within|inside|below|under|in|at or below|slower than|not above|up to) (?:my |the |flash )?(?:(?:x-)?sync\w*)(?: (?:speed|limit|range|time)s?)?)"
    r"|\b(?:as|so) long as (?:i|we|you)(?:'m| am| stay| are|'re| keep)?|\bprovided (?:that )?(?:i|we|you)(?:'m| am| stay| keep)?|\b(?:i'm|i am|while|staying)(?= *(?:,|$))"
)
_THING = r"(?:f[- ]?stops?|aperture|stops?|f[- ]?numbers?|f|shutter(?: (?:speed|time))?|film(?: speed)?|iso|power|flash(?: power| distance|[- ]to[- ]subject distance)?|lights?|lens|distance|speed|fill|key|subject|exposure time|settings?|guide number|place|spot|position|room|manual|umbrella|soft ?box|stand|strobe|head|everything(?: else)?|all else|the rest|sitter|focus(?:ing)?|focused distance|point of focus|flash to subject distance)"
_LIST = rf"{_THING}(?:(?:,| and|, and|, same| or)+ (?:the |my |same |the same )*{_THING})*"
_FIXED = Pattern(
    r"\b(?:from|at|in) (?:exactly )?(?:the|that|one and the) (?:very )?same (?:place|spot|position|point|stand|camera position|camera distance)\b|"
    rf"\b(?:at|with|for|on|in|using|keeping) (?:exactly )?the (?:very )?same {_LIST}(?: on both(?: lenses)?)?|(?:^|(?<=[.,;?!\d] ))(?:the )?same {_LIST}(?: on both(?: lenses)?)?(?=[,.:;]| (?:does|do|will|is|would|can)\b)|\b(?:and|with) (?:the )?same {_LIST}(?=[,.:;])|(?<=, ){_LIST} left (?:alone|where it (?:is|was))"
    rf"|\b(?:(?:if i |say i |and |while i |when i |but i |i |suppose i )(?:leave|keep|hold)|leaving|keeping|holding)(?: the| my)? {_LIST}(?: (?:where (?:they|it)(?: are| is| was)?|alone|fixed|the same|constant|as (?:they|it)(?: are| is)?|unchanged|at f ?/? ?\d[\d.]*|still|in place))(?= (?:and|but|chang\w+|affects?|alters?|makes?|matters?|means?|needs?|requires?|do|does|will)\b| *[,.;?]| *$)"
    rf"|\b(?:while|and|with|but|if|when|as long as)(?: only)?(?: the| my)? {_LIST} (?:is |are |being )?(?:left alone|kept|held|fixed|unchanged|(?:stays?|remains?|stands?|is kept|kept) (?:where it (?:is|was)|fixed|on (?:its|the|a) \w+|by (?:the|my) \w+|at the \w+|in place)|(?:stays?|remains?|are kept|(?:doesn't|don't|do not|does not) change)(?: (?:the same|put|unchanged|constant|as (?:they are|it is)))?(?= *(?:,|$|\?|\.)))"
    r"|(?:^|(?<=[.,:;?!] ))\W*(?:so )?(?:if|when|while|with) (?:the|my) shutter (?:(?:speed|time) )?(?:(?:stays?|is|remains?|kept|left|stands?|staying) )?(?:\w+ )?(?:at|on) (?:1/\d+|an? \w+|\d+)(?: s\w*)?(?: and|,)(?= )"
    rf"|\b(?:while i|if i|and) (?:keep|hold)(?: the| my| the same)? {_LIST}(?= (?:will|does|do|is|would)\b|[,.;?]|$)"
    r"|\b(?:and |while i )?(?:keep|keeping|at|with|stay at|staying at|using|holding) f ?/? ?\d+(?:\.\d+)?(?! (?:to|and|instead))"
    r"|\bwithout (?:touching|changing|moving) (?:the |my )?(?:flash|lights?|aperture|lens|power|iso|film|anything(?: else)?)(?: on the \w+)?|\b(?:all |everything )?else (?:being )?(?:equal|the same|unchanged|fixed)|\bby itself\b|\ball by itself\b"
    rf"|\b(?:the |my )?(?:flash|light|umbrella|soft ?box|strobe|lamp|key)(?: itself)? (?:stays?|remains?|stands?|is) (?:where (?:it|they) (?:is|are|was)|on (?:its|the|a) (?:own )?\w+|by the \w+|in place)(?= and\b|[,.;?]|$)"
    r"|\b(?:with|using) (?:(?:my|the|a|an|electronic|manual|focal[- ]plane|leaf[- ]shutter|cameras?|and) )*flash(?: on)?,|\bwith (?:the |my )?flash on\b|\bwhen i (?:set|use) (?:manual flash|the flash)(?: by the guide number)?|\bwith manual flash\b|\bby guide number\b|\bfor the same guide number\b|\bthan (?:with )?(?:the |a )?bare (?:head|flash|bulb|light)\b|\b(?:than|as) (?:(?:for|at|on|from|with) )?(?:an? |the )?(?:(?:black|white|dark|pale|light|tanned)(?:[- ](?:one|subject|skin|suit|dress|boat|cat|person))?|\d{2,3}(?: ?mm)?(?: film| format| lens)?|(?:small|large|medium|bigger|smaller)(?:[- ]format| one)|full(?: power)?)\b|\bthat only [^,.?]{0,30} reach(?:es)?\b|\b(?:compared with|than) (?:before|a normal lens|it was)\b"
)
_NEED = r"\b(?:have to|has to|need(?:s|ed)?(?: to)?|must(?: i| you| one)?|should(?: i| you| one)?|wants?(?: to)?|requires?|asks? for|calls? for|ought to|got to|gotta)(?: be| i| use| set)? "
_NEEDS = (
    (Pattern(_NEED + r"(?:(?:then|also|still|always) )?(?:open(?:ed|ing)? (?:up|it up|the lens|wider)(?: the lens)?|(?:a |an )?(?:wider|bigger|larger) (?:aperture|f-?stop|opening)|(?:a )?(?:smaller|lower) f-?number|(?:any )?more (?:flash(?: power| light| exposure)?|light|power|exposure)|(?:more|extra) exposure|(?:mov|put|bring|tak)\w* the (?:flash|light|umbrella|soft ?box) (?:closer|nearer|in)|turn\w* (?:the |my )?flash up|turn\w* up (?:the |my )?flash)\b"), " the exposure gets darker "),
    (Pattern(_NEED + r"(?:(?:then|also|still|always) )?(?:(?:stop|close)d?(?: it| the lens)? down|(?:a |an )?(?:smaller|narrower) (?:aperture|f-?stop|opening)|(?:a )?(?:bigger|larger|higher) f-?number|less (?:flash(?: power| light| exposure)?|light|power|exposure)|(?:mov|put|tak|push)\w* the (?:flash|light|umbrella|soft ?box) (?:further|farther|back|away)(?: (?:off|away|back))?|turn\w* (?:the |my )?flash down|turn\w* down (?:the |my )?flash)\b"), " the exposure gets brighter "),
    (Pattern(_NEED + r"(?:(?:then|also|still|always) )?(?:(?:change|adjust|alter|reset|touch)(?: the| my)? (?:aperture|f-?stop|stop|f-?number|lens|exposure|setting)s?|(?:a |an )?(?:different|other|another) (?:aperture|f-?stop|stop|f-?number|exposure))\b"), " the exposure changes "),
)
_ALIKE = (
    # "dims the flash as much as the daylight", "takes as much of the flash as it does of the lamps": of both it is said
    (Pattern(r"\b(?:just |exactly |quite |every bit )?(?:as (?:much|many stops|strongly|badly|hard)|by (?:just |exactly )?(?:the same(?: amount)?|as (?:much|many stops)))(?: (?:of|from|off|light from|light off))?\b(?P<one>[^,.;?]{0,30}?) as (?:(?:it|they|that) \w+ )?(?:(?:of|from|off|on|to|for) )?(?=(?:the|my|her|his|any|all) |daylight|ambient|sunlight|flash)"), r"\g<one> and "),
    (Pattern(r"\b(?:equally(?! (?:bright|strong|dark))|alike|by (?:exactly |just )?the same (?:amount|degree|number of stops|much)|to the same (?:extent|degree)|in equal measure|by equal amounts)\b"), " "),
)
_ACT = ((Pattern(
    r"(?P<cause>\b(?:nds?|neutral density|gr[ae]y filter|filter|polari[sz]\w+)\b(?:(?! on (?:the )?flash)[^,.;?]){0,30}?) (?:dim|cut|reduce|lower|darken|weaken|take|stop|affect|hit|hold back|dims|cuts|reduces|lowers|darkens|weakens|takes|stops|affects|hits|holds back) "
    r"(?:the |my )?(?:flash(?: light)?|daylight|sun(?:light)?|ambient(?: light)?|sky|room(?: light)?) (?:more|less|harder)(?: strongly| heavily)? than (?:it (?:does|dims|cuts|reduces|holds back) )?(?:the |my )?(?:flash|daylight|sun(?:light)?|ambient|sky|room)\b"), r"\g<cause> changes the balance between flash and ambient light"), (Pattern(r"\bhold(?P<s>s|ing)? (?P<what>(?:the |my |any )?(?:flash(?: light)?|daylight|sunlight|ambient(?: light)?|sky|room light|light)) back\b"), r"dim\g<s> \g<what>"), *_ALIKE, (Pattern(r"\b(?:do|does|did|doing) nothing (?:to|for|about)\b|\bha(?:s|ve) nothing to do with\b|\bno matter\b"), " leaves unchanged "), (Pattern(r"\b(?:nothing|none|nobody|no part) (?:but|except|besides|other than)\b"), " only "), (Pattern(r"\b(?:do|must|should|can|would|could) i (?:then )?(?:open up|open the lens)\b"), " the exposure gets darker "), (Pattern(r"\b(?:do|must|should|can|would|could) i (?:then )?stop down\b"), " the exposure gets brighter "))

# --- effects ---------------------------------------------------------------------------------------------

_PAIRED = Pattern(
    r"\b(?P<balance>(?:balance|ratio|proportion|relation|mix)\b[^,.?]{0,12}\b(?:flash\b[^,.?]{0,8}\b(?:and|to|with)\b[^,.?]{0,8}\b(?:ambient|daylight|room|background)|(?:ambient|daylight|room|background)\b[^,.?]{0,12}\b(?:and|to|with)\b[^,.?]{0,8}\bflash)\b(?: (?:light|exposure))?|flash[- ](?:to[- ])?ambient (?:balance|ratio))"
    r"|\b(?P<ratio>(?:(?:lighting )?(?:ratio|contrast|difference)|contrast) (?:between|of) (?:the )?(?:key|main(?: light)?|two sides|lit side|sides)(?: (?:and|to) (?:the )?(?:fill|shadow side|other))?(?: of the face)?)\b"
    r"|\b(?P<rows>(?:exposure |light )?(?:fall-?off |(?:difference|spread) (?:in (?:stops|exposure|light|brightness) )?)?(?:between|across|from) (?:the )?(?:front|first|near)(?: row| edge| end| side)? (?:and|to) (?:the )?(?:back|last|rear|far)(?: (?:row|edge|end|side)s?)?"
    r"|(?:front[- ]to[- ]back|row[- ]to[- ]row) (?:difference|spread|fall-?off|drop)(?: in (?:stops|exposure|light|brightness))?|(?:difference|spread|fall-?off) (?:in (?:stops|exposure|light|brightness) )?(?:between|across|over|from) (?:the |my )?(?:two |three )?(?:rows|group|set|choir|team|family))\b"
)
_BEHIND = Pattern(r"\b(?:it|(?:the |my )?(?:background|backdrop|wall)s?(?! (?:daylight|ambient)))\b")
_EFFECTS: tuple[tuple[str, Pattern], ...] = (
    ("balance", Pattern(r"\bbalance\b")),
    ("backdrop", Pattern(r"\bbackdrop-light\b")),
    ("guide_number", Pattern(r"\b(?:guide ?numbers?|gns?)\b")),
    ("depth", Pattern(r"\b(?:depth(?: of (?:field|focus|sharpness))?|dof|(?:the|my) field|(?:zone|range|band) of (?:sharpness|focus)|(?:(?<=deeper )|(?<=shallower )|(?<=more in )|(?<=less in )|(?<=more of it in ))focus|zone (?:that is |which is )?in focus|what is in focus)\b")),
    ("ratio", Pattern(r"\b(?:(?:lighting )?ratio|contrast between|difference between (?:the )?(?:key|lit side|main|two sides))\b(?:[^,.?]{0,12}\bkey\b[^,.?]{0,8}\bfill\b)?")),
    ("falloff", Pattern(r"\b(?:fall-?off|falloff|falls? off|drop-?off|light fall)\b(?: across the \w+)?|\b(?:rows?|group|exposure)\b(?=.{0,50}\beven)|\bevens? out\b|\bdifference between (?:the )?(?:front|first)\b|\b(?:evenness|more even(?:ly)?|uneven\w*|even(?:ly)?(?= (?:from|across|over|between|light|lit)))\b")),
    ("recycle", Pattern(r"\b(?:recycl\w*(?: time)?|recharg\w*|ready again|charges? (?:up )?again)\b")),
    ("pops", Pattern(r"\b(?:pops|flashes|shots|firings|bursts)\b(?=.{0,36}\b(?:batter\w+|cells|charge)\b)|\b(?:batter\w+|cells)\b[^.?]{0,10}\blast\b|\b(?:sav|spar|drain|eat|us)\w*(?: up)? (?:the |my |more |less )*(?:batter\w+|cells)\b")),
    ("contrast", Pattern(r"\b(?:contrast\w*|flat(?:ter|tens?))\b")),
    ("grain", Pattern(r"\bgrain\w*\b")),
    ("sync", Pattern(r"\bsync(?:hroni[sz]\w+)?(?: speed)?\b")),
    ("reach", Pattern(r"\b(?:go(?:es)?|gets?|throws?) (?:much )?(?:further|farther)\b|\b(?:reach(?:es)?|range|carr(?:y|ies))\b")),
    ("softness", Pattern(r"\b(?:soft(?:er|ness|ens?|)?|hard(?:er|ness|ens?)?(?:[- ]edged)?|harsh\w*|gentler|crisp\w*)\b(?! ?box)")),
    ("duration", Pattern(r"\b(?:flash(?:'s)? duration|duration|burst|pulse|how long the flash[^,.?]{0,12}\blasts?|length of the (?:flash|burst))\b")),
    ("freeze", Pattern(r"\b(?:freez\w+|stops? (?:motion|movement|action))\b")),
    ("shadows", Pattern(r"\bshadows?\b")),
    ("flash", Pattern(r"\b(?:flash(?:'s|es)?(?:-lit|light)?(?: exposure| part| light| side| picture)?|strobe(?:'s)?|speedlight|lit by the flash)\b")),
    ("ambient", Pattern(rf"\b(?:ambient|(?:background(?:'s)? )?(?:daylight|ambient|room light)|(?:{ROOMS})(?: light| lights)?|available|daylight|day light|sky|windows?|existing|sun(?:light|shine)?|surroundings|window light)\b(?: (?:light|exposure|part|daylight|exposure))*")),
    ("behind", Pattern(r"\bbackgrounds?\b")),
    ("exposure", Pattern(r"\b(?:exposures?|exposed|subject|sitter|face|faces|crew|picture|photo|photograph|light|film|rower|model|person|people|them|her|him|bride|boat|brightness|stop|f-?stop|aperture|(?:over|under)expos\w*)\b")),
)
_NAMES = Patterns(pattern for _, pattern in _EFFECTS)

# --- what is said of them ----------------------------------------------------------------------------------

_SAME = Pattern(
    r"\b(?:the same|same|unchanged|unaffected|untouched|(?<=~ )alone|(?:leav|let|left)\w*\b[^,.?]{0,30}\balone|as (?:it|they) (?:was|were|is|are)|where (?:it|they) (?:was|were|is|are)|(?:as|where) (?:it|they)(?=\W*$)|as printed|stays? put|just as (?:bright|strong|much|dark|weak)|as (?:bright|strong) as (?:before|it was)|as much light as|indifferent|independent|regardless|spares?|ignores?|stays? as|keeps? its|constant|free of|immune|identical|equally|still (?:holds?|appl\w+|counts?|valid|good|true)|holds? (?:good|true|as it)|(?:is|stays|remains) valid)\b|\bleaves? (?:the |my )?(?:flash|ambient|background|daylight)\b(?! (?:brighter|darker|weaker|stronger|lighter|dimmer))"
)
_MORE = r"\b(?:bright(?:er|en\w*)|light(?:er|en\w*)|lift\w*|rais\w+|rise\w*|increas\w*|more|stronger|strengthen\w*|boost\w*|adds?|adding|goes up|go up|come up|grows?|gains?|higher|overexpos\w*|hotter)\b"
_LESS = r"\b(?:dark(?:er|en\w*)|dim(?:s|mer|ming|med)?|weak(?:er|en\w*)|less|fainter|reduc\w*|lower\w*|cuts?|drops?|falls?|loses?|lose|loss|costs?|eats?|swallows?|takes?|starv\w*|underexpos\w*|suffers?|knocks?|tames?|fewer|decreas\w*|go(?:es)? down|come down|absorbs?|robs?|steals?|subdues?|holds? back)\b"
_CHANGE = Pattern(
    r"\b(?:chang\w*|affect\w*|alter\w*|matters?|touch(?:es|ed)?|influenc\w*|effect|impact|bearing|govern\w*|controls?|decides?|say|counts?|acts?|works on|bears on|differ\w*|difference|depends?|moves?|moved|shift\w*|anything to do with|sets?|determines?|appl(?:y|ies)|concerns?|correct\w*|compensat\w*|allowance|adjust\w*|needs?|hits?|fall under|subject to|come into|rol[el]|modif\w+|through|interferes?)\b"
)
_SIZED = (Pattern(_MORE + r"|\b(?:larger|bigger|greater|longer|further|farther|extends?)\b"), Pattern(_LESS + r"|\b(?:smaller|short(?:er|ens?)|shrinks?|narrow\w*|limits?)\b"))
_WAYS: dict[str, tuple[Pattern, Pattern]] = {
    # effect: words for more of it, words for less of it, looked for before the common ones
    "depth": (Pattern(r"\b(?:more|deep(?:er|ens?)?|greater|increas\w*|extend\w*|larger|widen\w*|gains?|longer|adds?|bigger|doubl\w*)\b"), Pattern(r"\b(?:less|shallow\w*|halv\w*|reduc\w*|thin(?:ner|s)?|smaller|narrow\w*|shrink\w*|loses?|lose|decreas\w*|cuts?|costs?|flatten\w*)\b")),
    "falloff": (Pattern(r"\b(?:faster|steeper|quicker|more (?:rapid\w*|fall-?off|uneven)|bigger|larger|greater|increas\w*|grows?|growing|widens?|worse|stronger|uneven\w*|harder|more sudden\w*)\b"), Pattern(r"\b(?:slower|gentler|less|lessens?|smaller|narrow\w*|halves?|halved|reduc\w*|evens?|more even(?:ly)?|evenness|even(?:er|ly)?|slowly|shrink\w*|gradual\w*|softens?|flatten\w*)\b")),
    "recycle": (Pattern(r"\b(?:slow\w*|longer|more time|lengthen\w*|later|increas\w*)\b"), Pattern(r"\b(?:fast\w*|quick\w*|sooner|shorter|shorten\w*|less|speeds?|earlier|reduc\w*|cuts?)\b")),
    "duration": (Pattern(r"\b(?:long(?:er)?|lengthen\w*|slower|increas\w*|extends?|worse)\b"), Pattern(r"\b(?:short(?:er|ens?)?|brief\w*|quick\w*|faster|less|reduc\w*|freez\w+|cuts?|better)\b")),
    "softness": (Pattern(r"\b(?:soft(?:er|ens?)?|gentler)\b"), Pattern(r"\b(?:hard(?:er|ens?)?(?:[- ]edged)?|harsh\w*|crisp\w*)\b")),
    "grain": (Pattern(r"\b(?:more|coars\w+|increas\w*|bigger|larger|rais\w*|worse|grainier|adds?|stronger|go(?:es)? up)\b"), Pattern(r"\b(?:less|fine[rs]?|finer|reduc\w*|smaller|smooth\w*|better|cuts?|lower\w*)\b")),
    "contrast": (Pattern(r"\b(?:more|increas\w*|rais\w*|higher|steep\w*|adds?|boost\w*|bump\w*|harder|stronger|contrastier|grows?|go(?:es)? up)\b"), Pattern(r"\b(?:less|reduc\w*|lower\w*|flat\w*|soft\w*|cuts?|weaker|decreas\w*|go(?:es)? down)\b")),
    "ratio": (Pattern(r"\b(?:more|increas\w*|rais\w*|higher|grows?|larger|bigger|steep\w*|greater|widen\w*|go(?:es)? up)\b"), Pattern(r"\b(?:less|reduc\w*|lower\w*|flat\w*|smaller|cuts?|shrinks?|narrow\w*|decreas\w*|falls?|drops?|go(?:es)? down)\b")),
    "freeze": (Pattern(r"\b(?:better|more|easier|sharper)\b"), Pattern(r"\b(?:worse|less)\b")),
    "guide_number": _SIZED,
    "balance": _SIZED,
    "reach": (Pattern(_SIZED[0].pattern + r"|\b(?:helps?|improv\w*)\b"), _SIZED[1]),
    "pops": (Pattern(_MORE + r"|\b(?:sav\w+|spar\w+|last|longer)\b"), Pattern(_LESS + r"|\b(?:drain\w*|us(?:es?|ing)|sooner)\b")),
    "shadows": (Pattern(r"\b(?:lighter|lighten\w*|bright\w*|opens?|opened|lift\w*|fills?|rais\w*)\b"), Pattern(r"\b(?:deep(?:er|ens?)|dark(?:er|en\w*)|blacker|heavier)\b")),
    "exposure": (Pattern(_MORE), Pattern(_LESS)),
}
_HOW = Pattern(r"\bhow (?:soft|hard|long|far|bright|dark|deep|much|steep\w*|strong\w*|even\w*|sharp|contrasty|grainy|big|large|fast|quick\w*)\b")
_TWO_WAYS = Pattern(r"\b(?:cut|reduc|los|weaken|eat|swallow|lower)\w* (?:\w+ ){0,2}(?:less|fewer)\b|\b(?:brighter|lighter|more|stronger) or (?:darker|less|weaker|dimmer)\b|\b(?:darker|less|weaker) or (?:brighter|more)\b")
_GIVES_LESS = Pattern(r"\b(?:less|fewer)\b")
_SMALL = Pattern(r"\b(?:not|only|just|both|the|my|of|is|are|it|part|in|on|a|too|also|as|well|either|neither|nor|do|does|doesn't|don't|isn't|and|but|while|long|so|that|which|alike|together|equally|light|one|will|won't|would|wouldn't|to|for|never|no|all|its|from)\b|n't")
_LASTS = Pattern(r"\b(?:longer|shorter|briefer|quicker)\b|\b(?:lengthen|shorten)\w* (?:the |my |a |its )?(?:\w+ )?(?:flash|burst|pulse)\b")
_ONLY = Pattern(r"(?<!not )\b(?:only|just(?! as)|solely|nothing but|none but|nothing except|(?<!leave )(?<!left )alone(?= (?:is|gets|changes|feels|that)))\b")
_NEGATION = Pattern(r"n't\b|\b(?:not|no|never|neither|nor|nothing(?! but| except)|without|cannot|hardly|doesnt|dont|isnt|wont|cant)\b|\btoo (?:short|brief|quick|fast) (?:for|to)\b")
_NOT_ONLY = Pattern(r"\bnot (?:only|just)\b|n't (?:only|just)\b|\bno (?:doubt|question)\b|\balso\b")
_CLAUSE = Pattern(r"[,.;:?!]+|\b(?:but|while|whereas|yet|and|then)\b|(?=\bnor\b)|(?=\bnot the\b)|(?=\bwithout\b)|(?= - )")


_BY_THEMSELVES = ("tone", "camera_distance", "format", "rim")
"""Causes of which it is asked whether they matter, and nothing more is said: for the exposure."""


_MOVED = Pattern(r"\b(?:back|mov|pull|push|bring|tak|slid|walk)\w*\b[^.?]{0,16}\b(?:off|away|back|closer|nearer|further|farther)\b")


_WHAT_IT_GIVES = Pattern(r"\bwhat (?:the |my )?(?:flash|strobe|gun) (?:itself |alone )?(?:puts?|gives?|throws?|adds?|lays?|contributes?)(?: (?:on|onto|to|in|into|over))?(?: (?:the|my|her|his) \w+)?")
"""No question for a value: the flash's part of the picture."""
_OF_A_SIZE = Pattern(r"\b(?:bigger|larger|smaller|huge|giant|wider) (?:soft ?box|umbrella|brolly|source|light|octa\w*|diffuser|scrim|reflector)\b")


_OF_A_KIND = Pattern(r"\bthyristor (?:(?:shoe|hot ?shoe|portable|little|small) )*(?:flash(?:es)?|flashgun|gun|strobe)s?\b")
_IT_LASTS = Pattern(r"\b(?:it|them|they)\b(?= (?:(?:to|get|gets|be|is|are|become|becomes|last|lasts|burn|burns|any|much|a bit) )*(?:longer|shorter|briefer)\b)")
"""The flash whose power is turned: "does turning it down to 1/16 make it shorter?"."""


_SO_FAR = Pattern(r"\d ?(?:feet|foot|ft|m|metres?|meters?|cm|in|inch(?:es)?|yards?)\b|\d['\u2032]|\b(?:half|quarter|full|1/\d+) power\b")


def read(said: str) -> Saying | None:
    """The claim of influence in a text in plain lower case; None where it is none, or not clear."""
    bare = _WHAT_IT_GIVES.sub("the flash exposure", _KNOWN_APART.sub(" ", said))
    if _VALUE.search(bare) or _APART.search(_OF_A_KIND.sub("flash", bare)) or _OR.search(bare) or len(said) > 400:
        return None
    turned = len(_MYTH.findall(bare)) % 2 == 1
    bare = _framed(untagged(bare))
    found = cause_of(bare)
    if found is None:
        return None
    cause, rest = found
    if cause.name != "power" and _OF_A_KIND.search(bare):
        return None  # it cuts itself off by the light that comes back: any of these may shorten it
    if cause.name == "flash_distance" and _OF_A_SIZE.search(said):
        return None  # larger and farther off: two causes
    if cause.name in ("spreader", "bounce") and _MOVED.search(said):
        return None  # where it stands is the cause then
    if cause.name == "rim" and _SO_FAR.search(said):
        return None  # moved, or turned up and down: for its own reading
    if cause.name == "shutter" and _FASTER_THAN_SYNC.search(said) or cause.name == "tone" and not _BY_HAND.search(said):
        return None
    rest = _PAIRED.sub(lambda m: " balance " if m["balance"] else " ratio " if m["ratio"] else " falloff ", rest)
    rest = _BEHIND.sub(" backdrop-light ", rest) if cause.name == "background" else rest
    rest = _BESIDE.sub(" ", rest)
    rest = _IT_LASTS.sub("the flash", rest) if cause.name == "power" else rest
    if cause.name in _BY_THEMSELVES and not any(_effects(words) for words in _of_the_cause(rest)):
        rest = rest.replace("~", "~ exposure", 1)
    told = _told(_BRIEF.sub(" ", rest) if cause.name == "reciprocity" else rest)
    if cause.name == "camera_distance" and _ON_CAMERA.search(said) or _STUDIO.search(said) and any(t.effect in ("duration", "freeze") for t in told):
        return None
    return Saying(cause.name, cause.way, told, turned) if told else None


_OPEN_SO_LONG = Pattern(r"\b(?:(?:with|when|while|if|for) )?(?:the |my |a )?shutter (?:(?:is|was|held|stays?|stayed|left|being|kept|stands?) )*open(?: for)?(?: \w+){0,2} (?:s|secs?|seconds?|minutes?)\b(?: (?:with|and) [^:;,.?]{2,24}(?=[:;,.]))?[:;,]?")
"""The scene of a claim about reciprocity: the time is what makes it matter, and no cause of its own."""
_LONG_EXPOSURE = Pattern(r"\b(?:in|for|of|during|with) an? [\w.]{1,8}[- ](?:s|secs?|seconds?|minutes?)[- ]exposure\b(?: with [a-z ]{2,16}(?=[:;,.]))?[:;,]?")
_IS_APPLIED = Pattern(r" (?:(?:must|should|has to|have to|needs? to|ought to|is to|is|also|still|then) )*(?:be )?applied to ")
_MYTH = Pattern(r"\b(?:is|are|am) (?:he|she|they|i) (?:mistaken|wrong)\b|\b(?:he|she|they|i)(?:'s|'re|'m| is| are| am) (?:mistaken|wrong)\b|\b(?:a|just a|an old) (?:myth|fallacy|tale)\b|\bwrong (?:to (?:say|think|believe)|that)\b|\b(?:untrue|false) that\b")


_ROUND_IT = Patterns((_MYTH, _FRAME, _SYNC, _FIXED, SETTING_STAYS))
_PUT_SO = Patterns(pattern for pattern, _ in (*_NEEDS, *_ACT))
_MEANT = tuple(meant for _, meant in (*_NEEDS, *_ACT))


def _framed(said: str) -> str:
    """The claim without who says it, what stays as it is, and the words for what must be done put as what happens."""
    if "recip" in said:
        said = _IS_APPLIED.sub(" applies to ", _LONG_EXPOSURE.sub(" ", _OPEN_SO_LONG.sub(" ", said)))
    for number in _ROUND_IT.to_try(said):
        said = _ROUND_IT[number].sub(" ", said)
    if _PUT_SO.to_try(said):
        for pattern, meant in zip(_PUT_SO, _MEANT):
            said = pattern.sub(meant, said)
    return said


@record
class _Clause:
    """A clause's words, its effects with what is said of each ("" where it has no verb), whether it denies, whether "only" stands in it."""

    words: str
    told: tuple[tuple[str, str], ...]
    denied: bool
    only: bool


def _told(rest: str) -> tuple[Told, ...]:
    """What is said, clause by clause; a clause with no verb of its own goes by the one before it, else by the next."""
    every = list(map(_clause, _of_the_cause(rest)))
    clauses = [c for c in every if c.told]
    if any(_NEARER.search(c.words) and c.told[0][0] != "reach" for c in clauses):
        return ()
    out: list[Told] = [Told("exposure", "sized", False, True) for c in every if not c.told and _SIZE.search(c.words)]
    for n, clause in enumerate(clauses):
        figured = any(_AMOUNT.search(c.words) for c in (clauses if _is_short(clause.words) else [clause]))
        verb = next((says for other in (*reversed(clauses[:n]), *clauses[n + 1 :]) for _, says in other.told if says), "")
        for effect, says in clause.told:
            if says or (verb and _is_short(clause.words)):
                out += _with_other(Told(effect, says or verb, clause.denied, figured), clause.only and len(clause.told) == 1)
            elif _SIZE.search(clause.words):
                out.append(Told(effect, "sized", False, True))
    return tuple(out)


def _of_the_cause(rest: str) -> list[str]:
    """The clauses of the sentence that names the cause, and of those after it."""
    sentences = patterns.split(r"[.;?!]+(?!\d)", _NOT_ONLY.sub(" ", rest))
    first = next((n for n, words in enumerate(sentences) if "~" in words), 0)
    return [words for sentence in sentences[first:] for words in _CLAUSE.split(sentence) if words and words.strip(" ~")]


def _clause(words: str) -> _Clause:
    effects = _effects(words)
    only = _ONLY.search(words) is not None
    return _Clause(words, tuple((e, _says(e, words)) for e in effects), len(_NEGATION.findall(words)) % 2 == 1, only)


def _effects(words: str) -> list[str]:
    """What is spoken of: what is named most closely, else flash and ambient light, else the exposure."""
    rest, found = words, []
    for number in _NAMES.to_try(words):
        effect, pattern = _EFFECTS[number]
        if pattern.search(rest):
            found.append(effect)
            rest = pattern.sub(" ", rest)
    close = [e for e in found if e not in ("flash", "ambient", "behind", "exposure")]
    if close:
        return [e for e in close if not (e == "shadows" and len(close) > 1 or e == "softness" and "falloff" in close)]
    parts = [e for e in found if e != "exposure"] or found
    if parts in (["flash"], ["exposure"]) and _LASTS.search(words):
        return ["duration"]
    return parts


def _says(effect: str, words: str) -> str:
    """"more", "less", "same" or "change" said of an effect; empty where nothing is."""
    if _SAME.search(words):
        return "same"
    if _HOW.search(words) and _CHANGE.search(words):
        return "change"
    up, down = (way.search(words) for way in _WAYS.get(effect, _WAYS["exposure"]))
    if up and down:
        if _TWO_WAYS.search(words):
            return ""
        return "less" if _GIVES_LESS.search(words) or down.start() < up.start() else "more"
    if up or down:
        return "more" if up else "less"
    return "change" if _CHANGE.search(words) else ""


def _is_short(words: str) -> bool:
    """Whether a clause is only what it names: "not the flash", "and the room as well"."""
    for number in _NAMES.to_try(words):
        words = _NAMES[number].sub(" ", words)
    return not _SMALL.sub(" ", words).strip(" ~-")


def _with_other(told: Told, only: bool) -> list[Told]:
    """With "only", what is not named stays as it is."""
    other = {"flash": "ambient", "ambient": "flash", "behind": "flash"}.get(told.effect)
    return [told, Told(other, "same", False, told.figured)] if only and other and not told.denied else [told]

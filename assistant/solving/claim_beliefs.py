"""More of what is said about flash and film: pushing, leaf shutters, red-eye, bounce, close-ups, sunlight, batteries, gels.

One row a belief, in the shape of `claim_folklore`: what must be heard, whether it holds as worded, why, the source.
"""

from __future__ import annotations

from assistant.records import record

COMMON = "common practice, no source"


@record
class Belief:
    """A belief: the patterns that must all be heard, whether it holds, the sentence that says so, the source."""

    hears: tuple[str, ...]
    true: bool
    sentence: str
    source: str = COMMON
    turns: bool = True  # whether a negation in the sentence turns it round


_PUSH = r"\bpush(?:ed|ing|es)?\b"
_MORE = r"\b(?:more|adds?|increas\w*|raises?|rais\w+|boosts?|improv\w*|gains?|gives?|recovers?|brings? (?:back|out|up)|bigger|larger|higher|stronger|worse|coarser|lifts?|up)\b"
_CONTRAST = "Pushing gives less exposure and more development: contrast and grain go up, and the shadows lose detail."
_RED = r"\bred[- ]?eyes?\b"
_RED_WHY = "Red-eye is light thrown straight back from the eye, so the farther the flash is from the lens the less of it there is."
_OFF = r"\b(?:away|further|farther|off|apart|higher|separat\w*)\b"
_NEAR = r"\b(?:closer|nearer|close|near|next|beside)\b"
_WORSE, _BETTER = r"\b(?:worse|more|increas\w*|caus\w*|stronger|likely|adds?)\b", r"\b(?:better|less|reduc\w*|cur\w*|helps?|remov\w*|avoid\w*|goes|prevent\w*|fix\w*|stops?|weaker|unlikely)\b"
_LEAF = "A leaf shutter opens fully at every speed, so electronic flash syncs at all of them; only very short times can clip a slow flash."
_TINT = "Bounced light takes on the colour of what it bounces off, so use a white or neutral surface."
_TINTED = r"\b(?:red|green|blue|yellow|orange|pink|wood\w*|coloured|colored|painted|cream|brick)\b"
_BOUNCED = r"\b(?:bounc\w*|ceiling|wall|reflector)\b"
_SUN = "The sun is so far away that a few steps change nothing: the inverse square law counts the distance from the source, and shows only with lights near by."
_DRAW = r"\b(?:bellows|extension(?: tubes?)?|extended|tubes|close[- ]?ups?|macro|draw)\b"
_DRAW_WHY = "The farther the lens is from the film, the less light reaches it, flash and ambient alike: two stops at life size."
_FALL = r"\b(?:light|flash|it|fall-?off|key|strobe|head)\b"
_FALL_WHY = "Fall-off across the subject is fastest close to the light; with the light farther away the same depth makes a smaller difference."

_THIRDS = "A third in front and two thirds behind holds at one distance only, a third of the hyperfocal: close up the halves are equal, and from the hyperfocal on all behind is sharp."
_FROM_FLASH = "The distance that counts is from the flash to the subject, along the path of the light, and not from the camera."
NAVY = "Photography (Basic), NAVEDTRA 14209"

_BY_THE_CEILING = "Bounced, the distance is that along the path of the light: from the flash to the ceiling and from there to the subject."
MORE_BELIEFS: tuple[Belief, ...] = (
    Belief((_BOUNCED, r"\bdistance\b", r"\b(?:straight(?: line)?|direct(?:ly)?|as the crow flies|shortest)\b", r"^(?!.*\b(?:direct flash|direct light|than direct)\b)"), False, _BY_THE_CEILING),
    Belief((_BOUNCED, r"\bdistance\b", r"\b(?:whole|total|full|entire|both|sum|path|there and)\b", r"\b(?:path|way|legs?|route|journey|ceiling and|wall and)\b", r"\b(?:guide number|gn|counts?|used?|goes? by|divide\w*|sum)\b"), True, _BY_THE_CEILING),
    Belief((r"\bdouble (?:the )?(?:extension|bellows|draw)\b|\b(?:life[- ]size|1:1)\b", r"\b(?:costs?|loses?|takes?|eats?|needs?)\b", r"\b(?:one|a|1|three|3|four|4|half a) stops?\b"), False, "Double extension, life size, costs two stops: four times the exposure."),
    Belief((r"\bdouble (?:the )?(?:extension|bellows|draw)\b|\b(?:life[- ]size|1:1)\b", r"\b(?:costs?|loses?|takes?|eats?|needs?)\b", r"\b(?:two|2) stops?\b"), True, "Double extension, life size, costs two stops: four times the exposure."),
    Belief((_PUSH, r"\bshadows?\b", r"\b(?:detail|sensitiv\w*|speed|information)\b", _MORE), False, _CONTRAST),
    Belief((_PUSH, r"\bshadows?\b", r"\b(?:detail|sensitiv\w*|speed|information)\b", r"\b(?:lose|loses|losing|costs?|less|sacrific\w*)\b"), True, _CONTRAST),
    Belief((r"\bleaf shutters?\b", r"\bsync\w*\b", r"\b(?:any|all|every|whatever)\b"), True, _LEAF),
    Belief((r"\bleaf shutters?\b", r"\bsync\w*\b", r"\bonly\b.{0,16}(?:1/(?:30|60|125)\b|\bone\b|\bslow\w*|\blow\w*)|\blimited\b|\bup to 1/(?:30|60|125)\b"), False, _LEAF),
    Belief((r"\bfocal[- ]?plane\b", r"\bsync\w*\b|\bflash\b", r"\b(?:any|all|every)\b.{0,12}\bspeeds?\b"), False, "A focal-plane shutter is fully open only up to its sync speed, often 1/60 to 1/250 s; a leaf shutter syncs at all speeds."),
    Belief((_RED, r"\bpre-?flash\w*|\blamp\b|\broom lights?\b|\blights? on\b|\bpupils?\b", r"^(?!.*\b(?:dark\w*|dim\w*)\b)", _BETTER), True, "Light before the shot makes the pupils close, so less of the flash comes back from the retina."),
    Belief((_RED, _OFF, r"\b(?:lens|camera|flash)\b", _WORSE), False, _RED_WHY),
    Belief((_RED, _OFF, r"\b(?:lens|camera|flash)\b", _BETTER), True, _RED_WHY),
    Belief((_RED, _NEAR, r"\b(?:lens|camera|flash)\b", _WORSE), True, _RED_WHY),
    Belief((_RED, _NEAR, r"\b(?:lens|camera|flash)\b", _BETTER + r"(?!.{0,8}\bworse)"), False, _RED_WHY),
    Belief((_RED, r"\bbounc\w*\b", _BETTER), True, "Bounced light reaches the eye from far off the lens axis, so there is no red-eye."),
    Belief((_BOUNCED, _TINTED, r"\b(?:neutral|no effect|same colou?r|unaffected|clean|white)\b"), False, _TINT),
    Belief((_BOUNCED, _TINTED, r"\b(?:tint\w*|cast|warm\w*|colou?rs? (?:the|my|it|his|her|skin)|change\w* the colou?r|turn\w*|affect\w* the colou?r|affect\w*)\b"), True, _TINT),
    Belief((r"\b(?:sun\w*|daylight)\b", r"\binverse square\b", r"\b(?:appl\w*|holds?|matter\w*|true|work\w*|count\w*)\b"), False, _SUN),
    Belief((r"\b(?:sun\w*|daylight)\b", r"\b(?:dimmer|darker|weaker|less|falls? off|changes?)\b", r"\b(?:step|walk|mov)\w* (?:back|away|closer)\b"), False, _SUN),
    Belief((_DRAW, r"\b(?:los\w+|costs?|eats?|darken\w*|needs? more|less light|open up)\b", r"^(?!.*\d)"), True, _DRAW_WHY),
    Belief((_DRAW, r"\b(?:correct\w*|compensat\w*|allow\w*|extra exposure|factor)\b", r"\b(?:need\w*|necessary|must|have to|should|requir\w*|appl\w*)\b", r"^(?!.*\d)"), True, _DRAW_WHY),
    Belief((_FALL, r"\bfalls?[- ]?off\b|\bdrops? off\b", r"\b(?:faster|quicker|steeper|more|harder)\b", r"\b(?:further|farther|far away|back|distant)\b"), False, _FALL_WHY),
    Belief((_FALL, r"\bfalls?[- ]?off\b|\bdrops? off\b", r"\b(?:faster|quicker|steeper|more|harder)\b", r"\b(?:closer|nearer|close|near)\b"), True, _FALL_WHY),
    Belief((_FALL, r"\bfalls?[- ]?off\b|\bdrops? off\b", r"\b(?:slower|slowly|less|gentler|gently)\b", r"\b(?:further|farther|far away|back|distant)\b"), True, _FALL_WHY),
    Belief((r"\b(?:cold|freezing|winter)\b", r"\b(?:batter\w+|cells|recycl\w*)\b", r"\b(?:slow\w*|longer|weak\w*|worse|less|drain\w*)\b"), True, "Cold cells give less current, so the flash recycles more slowly: keep spares in a warm pocket."),
    Belief((r"\bhyper ?-?focal\b", r"\bhalf\b", r"\binfinity\b", r"^(?!.*\bnot\b)"), True, "Focused at the hyperfocal distance all is sharp from half of it to infinity."),
    Belief((r"\bdepth of field\b|\bdof\b|\bsharpness\b|\bin focus\b", r"\b(?:third|1/3)\b[^.?]{0,40}\bin front\b", r"\b(?:two|2)[- ]thirds\b[^.?]{0,40}\bbehind\b|\b2/3\b[^.?]{0,40}\bbehind\b|\btwice as (?:much|far) behind\b", r"\b(?:always|every|any|all|whatever|whichever|never|no matter|regardless|at each)\b"), False, _THIRDS, turns=False),
    Belief((r"\bgels?\b", r"\b(?:free|no light|los\w+ nothing|no loss)\b"), False, "A colour gel takes light: a full orange (CTO) about two thirds to one stop, deep colours more.", turns=False),
    Belief((r"\bgels?\b", r"\b(?:los\w+|costs?|eats?|absorbs?|weaken\w*|less)\b", r"\b(?:light|stops?|power|flash)\b", r"^(?!.*\d)"), True, "A colour gel takes light: a full orange (CTO) about two thirds to one stop, deep colours more."),
    Belief((r"\bbulbs?\b", r"\bx[- ]?(?:sync|setting|contact)?\b", r"\b(?:fast|1/\d{3}|any|all)\b.{0,12}\b(?:speeds?|shutter)?"), False, "On X the shutter is already open before a bulb has reached its peak, so bulbs need a slow speed there (1/30 s or slower); for faster speeds use M.", turns=False),
    Belief((r"\belectronic flash|\bstrobe|\bspeedlight", r"\bm[- ](?:sync|setting|contact|lever)\b|\bset to m\b|\bon m\b", r"\b(?:works?|fine|ok|right|use|used|correct)\b"), False, "M fires the flash before the shutter is open, and an electronic flash is over by then: use X.", turns=False),
    Belief((r"\b(?:expired|outdated|old) film\b", r"\b(?:more (?:light|exposure)|slower|loses? speed|overexpos\w*)\b"), True, "Old film loses speed: a stop more for each ten years is a usual starting point for colour negative film kept warm."),
    Belief((r"\b(?:snoot\w*|grids?|honeycomb|barn ?doors?)\b", r"\b(?:soft\w*|gentl\w+)\b(?! ?box)"), False, "A snoot or grid narrows the beam and makes the source no larger, so the light stays hard or gets harder."),
    Belief((r"\b(?:cto|orange gel|warming gel|straw gel)\b", r"\bwarm\w*\b|\borange\b.{0,8}\blight"), True, "An orange gel takes out blue, so the light gets warmer; a full one brings flash to tungsten and costs about a stop."),
    Belief((r"\bctb\b|\bblue gel\b", r"\bwarm\w*\b"), False, "A blue gel takes out orange, so the light gets cooler."),
    Belief((r"\b(?:dark|black|dense)\b", r"\b(?:slides?|transparenc\w+|chromes?)\b", r"\b(?:under\w*|too little|not enough)\b"), True, "A dark slide has had too little light; a pale one too much."),
    Belief((r"\b(?:dark|black|dense)\b", r"\b(?:slides?|transparenc\w+|chromes?)\b", r"\b(?:over\w*|too much)\b"), False, "A dark slide has had too little light; a pale one too much."),
    Belief((r"\b(?:pale|light|washed|thin)\b", r"\b(?:slides?|transparenc\w+|chromes?)\b", r"\b(?:over\w*|too much)\b"), True, "A pale slide has had too much light; a dark one too little."),
    Belief((r"\b(?:pale|light|washed|thin)\b", r"\b(?:slides?|transparenc\w+|chromes?)\b", r"\b(?:under\w*|too little|not enough)\b"), False, "A pale slide has had too much light; a dark one too little."),
    Belief((r"\b(?:hss|high[- ]speed sync\w*)\b", r"\b(?:free|no (?:light )?loss|without (?:any )?(?:light )?loss|no light|nothing|full power|same power)\b"), False,
           "In high-speed sync the flash is spread over the travel of the shutter, so part of its light is lost, often two stops or more.", turns=False),
    Belief((r"\bleaf shutters?\b", r"\bsync\w*\b|\bflash\b", r"\b1/\d{2,3}\b", r"\b(?:can|could|will|does|is it possible|able)\b", r"^(?!.*\b(?:only|limit\w*|no faster|at most)\b)"), True, _LEAF),
    Belief((r"\b(?:cloth|focal[- ]?plane)\b", r"\bsync\w*\b|\bflash\b", r"\b1/(?:500|[1-8]000)\b", r"^(?!.*\b(?:hss|high[- ]speed sync|bulbs?|fp)\b)"), False, "A focal-plane shutter is fully open only up to its sync speed, often 1/60 to 1/250 s; faster, part of the frame stays dark."),
    Belief((r"\b(?:bigger|higher|larger) (?:gn|guide (?:number|no))\b", r"\b(?:means?|is|gives?|has|makes?)\b", r"\b(?:stronger|more (?:light|power|powerful)|brighter|further|farther|reach)\b", r"^(?!.*\d)"), True, "The guide number tells how much light the flash gives, by its square: twice the number is four times the light."),
    Belief((r"\b(?:bigger|higher|larger) (?:gn|guide (?:number|no))\b", r"\b(?:means?|is|gives?|has|makes?)\b", r"\b(?:weaker|less (?:light|power|powerful)|dimmer|shorter)\b", r"^(?!.*\d)"), False, "The guide number tells how much light the flash gives, by its square: twice the number is four times the light."),
    Belief((r"\b(?:ttl|auto[- ]?(?:sensor|flash|thyristor)?|automatic)\b", r"\b(?:black|white|dark|pale|colou?r\w*|tones?)\b", r"\b(?:same|right|correct\w*|independent|unaffected|not fooled)\b"), False, "Flash that measures what comes back is misled by tone: white comes out too dark and black too pale. Manual flash is not.", turns=False),
    Belief((r"\b(?:gns?|guide (?:numbers?|nos?))\b", r"\bdistance\b|\bmeasured?\b|\bcounts?\b", r"\b(?:camera[- ]to[- ]subject|camera to (?:the )?subject|from (?:the )?camera)\b", r"^(?!.*\bflash[- ]to\b)(?!.*\bfrom (?:the )?flash\b)"), False, _FROM_FLASH, NAVY),
    Belief((r"\bbounc\w*\b", r"\b(?:gns?|guide (?:numbers?|nos?))\b|\bdistance\b", r"\b(?:straight|direct|shortest) (?:line|distance|way|path)\b|\bas the crow flies\b", r"^(?!.*\d)"), False, "Bounced light goes the whole way to the ceiling and from there to the subject, and that path is the distance that counts.", NAVY),
    Belief((r"\b(?:gns?|guide (?:numbers?|nos?))\b", r"\bdistance\b|\bmeasured?\b|\bcounts?\b", r"^(?!.*\bbounc)", r"(?<!not )\b(?:flash[- ]to[- ](?:the )?subject|from (?:the )?flash)\b", r"\bnot\b.{0,16}\bcamera\b|^(?!.*\bcamera\b)(?!.*\d)"), True, _FROM_FLASH, NAVY, turns=False),
    Belief((r"\bbounc\w*\b", r"\bdistance\b", r"\b(?:straight|direct(?:ly)?|crow flies|as usual)\b"), False, "For bounce the distance is the whole path, flash to ceiling to subject, and the ceiling's own loss comes on top."),
    Belief((r"\b(?:slides?|transparenc\w+|chromes?)\b", r"\bneg\w*\b|\bprint film\b", r"\blatitude\b|\bforgiv\w*|\btoleran\w*", r"\b(?:the same|equal\w*|alike)\b"), False, "Slide film forgives about half a stop; negative film a stop or two over."),
    Belief((r"\bleaf shutters?\b", r"\b(?:los\w+ sync|stops? sync\w*|no sync|limit\w*|sync limit|out of sync)\b"), False, _LEAF),
    Belief((r"\bt ?0?\.5\b", r"\b(?:whole|total|entire|full|complete)\b", r"\b(?:length|duration|time|flash)\b", r"^(?!.*\bt ?0?\.1\b)(?!.*\bpower\b)"), False, "t0.5 is only the time above half of the peak; the flash goes on for longer, and t0.1 tells better what will freeze.", "ISO 2827"),
    Belief((r"\b(?:studio|packs?|monolights?)\b", r"\bpower\b", r"\b(?:short\w*|quick\w*|freez\w*)\b", r"\b(?:always|all|every|any)\b"), False, "Some studio heads lower the voltage, and get longer as the power falls; others cut off early and get shorter. Look at the maker's table.", turns=False),
)

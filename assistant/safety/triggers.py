"""Words that call for a caution: one row a hazard, with a phrase it hears.

Each pattern begins at a word boundary and is read without regard to case. Context is looked at ahead
or behind without being used up, so that two hazards in one sentence are both heard. Words with an
innocent sense in the trade ("pool of light", "wet plate", "bulb" the shutter setting, "open flash",
"wind on") are kept out by the context asked for.
"""

from __future__ import annotations

from assistant.records import record


@record
class Trigger:
    """What is heard, the topics it calls for, and a phrase that it must hear."""

    topics: tuple[str, ...]
    pattern: str
    example: str


_LAMP = r"(?:bulb|lamp|tube|modell?ing light|tungsten|halogen|hot light)s?\b"
_SHEET = r"(?:gels?|cloth|tissue|paper|sheets?|fabric|silk|muslin|handkerchief|hankie|towel|scarf|tracing paper|baking paper|parchment|diffusion|napkin|filter|bin bag|plastic|curtain|cardboard)"
_UNIT = r"(?:flash(?:gun)?|strobe|speedlight|head|pack|unit|monolight|power supply|flash ?tube|capacitor|light)s?\b"
_NUMBER = r"(?:\d+(?:\.\d+)?|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty)"
_CELL = r"(?:batter\w+|cells?|lipos?|power ?packs?|aas?|nimhs?)\b"
_POSSESSED = r"(?:(?:the|my|our|his|her|their|its|an?|this|that|old|dead|up|little|big|studio|small) )+"

TRIGGERS: tuple[Trigger, ...] = (
    # --- water
    Trigger(("water",), r"rain(?:s|y|ed|ing|drops?|storms?|water)?\b(?! check)(?<!right as rain)", "it's raining on us"),
    Trigger(("water",), r"pour(?:s|ed|ing)?(?= (?:down|outside|out here|with|on us|now|and|rain|,)|[,.;!?]|$)(?<!light pouring)", "it's pouring, f-stop?"),
    Trigger(("water",), r"(?:puddles?|drizzl\w*|downpours?|sleet\w*|snowing|snowfall|thunder\w*|waterlogged|drenched|dripping|poolside|bathtubs?|underwater|condensation|sprinklers?|rainsoaked|soaked)\b", "puddles everywhere"),
    Trigger(("water",), r"wet\b(?!(?:ting)?[ -]?(?:plates?|collodion|prints?|mount\w*|darkroom|side|process\w*|paint|hair|look|agent|scan\w*))", "the floor is wet"),
    Trigger(("water",), r"damp(?:ness)?\b(?! (?:squib|down))|moisture\b|flooded\b(?! (?:with|in|by) (?:\w+ )?(?:light|sun))", "a damp cellar"),
    Trigger(("water",), r"(?<!freezes a )(?<!freeze a )(?<!stop a )(?<!stops a )(?<!freeze the )(?<!freezes the )(?<!catch a )splash(?:es|ed|ing|y)?\b(?! of (?:light|colou?r|fill|flash|white|red|blue|warm\w*))|spray(?:ing)?\b(?![ -]?(?:paint\w*|cans?|on\b|glue|mount))", "splashes from the oars"),
    Trigger(("water",), r"(?:swimming|paddling|plunge|hotel|tidal) pool|hot tub|(?:in|into|by|beside|round|around|near|at) the pool\b(?! of)|pool ?side|pool party|jacuzzi", "by the pool"),
    Trigger(("water",), r"(?:in|into|near|beside|over|under) (?:the )?(?:water|sea|surf|river|lake|stream|shower|bath)\b(?! (?:curtain|drops?|glass))|water(?='?s edge| on the (?:floor|ground|deck))|standing in water|spilt water|knee[- ]deep", "standing in the river"),
    # --- inside a flash
    Trigger(("high_voltage",), r"capacitors?\b", "the capacitor is dead"),
    Trigger(("high_voltage",), rf"(?:open(?:ing|ed)?|crack(?:ing|ed)? open|repair(?:ing|ed)?|fix(?:ing)?|mend(?:ing)?|dismantl\w+|disassembl\w+|strip(?:ping)? down|rewir\w+|unscrew\w*|prise open|pry open) {_POSSESSED}{_UNIT}(?!(?: head)? (?:up )?(?:a|one|two|half|by|to f|wide\w*))", "open up the flash"),
    Trigger(("high_voltage",), rf"(?:tak|took|pull)\w* (?:it |this |{_POSSESSED}(?:\w+ )?)(?:apart|to bits|to pieces)\b|solder\w*|inside {_POSSESSED}{_UNIT}", "take it apart"),
    Trigger(("high_voltage",), r"(?:electric|nasty|bad|big|little|got a|get a|gave me a) shock\b|shocked me|zapp(?:ed|ing)\b|electrocut\w+|cracked (?:flash ?tube|tube|housing|casing|case|head)|(?:chang|replac|swap)\w* (?:the |a |my )?(?:flash ?)?tubes?\b|high[- ]voltage", "it gave me a shock"),
    # --- mains
    Trigger(("mains",), r"plugg?(?:ed|ing|s)? (?:it |them |the \w+ |straight |back )?(?:in|into)\b(?! (?:the |my )?(?:series|parallel|camera|pc|hot|flash|sync|shoe|numbers?|formula))|plug in\b", "plugged into the wall"),
    Trigger(("mains",), r"mains\b|extension (?:lead|cord|cable|reel)s?\b|(?:cable|cord) reel|generators?\b|genny\b|power (?:strip|board|cord|cable|lead)s?\b|(?:wall|power|mains|electric\w*) (?:socket|outlet|plug)s?\b|(?:socket|outlet) in the wall", "on an extension lead"),
    Trigger(("mains", "stand"), r"trip(?:s|ped|ping)? (?:over|on) (?:\w+ )?(?:cables?|leads?|cords?|wires?)\b|tap(?:e|ing) down (?:\w+ )?(?:cables?|leads?|cords?)\b", "people tripping over my cables"),
    Trigger(("mains",), r"(?:cables?|leads?|wires?|cords?)(?= (?:\w+ ){0,4}(?:across|over|along|on) (?:the|a|that) (?:floor|doorway|path|walkway|ground|slipway|deck|aisle))|frayed\b|bare wires?\b|daisy[- ]chain\w*|rcds?\b|gfcis?\b|(?:trip|tripp|blow|blew|pop)\w* (?:the |a )?(?:breaker|fuse|circuit)|(?:breaker|fuse)s?(?= (?:\w+ ){0,2}(?:trip|tripp|blow|blew|blown|pop|go)\w*)", "cables across the floor"),
    # --- fire and heat
    Trigger(("fire", "heat"), rf"{_SHEET}(?= (?:[\w'-]+ ){{0,7}}?(?:on|onto|over|against|touching|round|around|across|in front of|to) (?:(?:the|my|a|that|its|each|bare|hot|naked|modell?ing|flash|tungsten|halogen) )*{_LAMP})", "gel taped straight onto the bare bulb"),
    Trigger(("fire", "heat"), rf"{_LAMP}(?= (?:(?:is|was|got|gets) )?(?:covered|draped|wrapped|taped over)\b)", "the modelling lamp is covered with a towel"),
    Trigger(("fire", "heat"), rf"(?:cover|drap|wrap|tap)\w*(?= (?:up )?(?:the |a |my |that )?(?:bare |hot |modell?ing |tungsten )*{_LAMP}(?: \w+)? (?:with|in)\b)", "cover the modelling lamp with tissue"),
    Trigger(("fire", "heat"), r"(?:smoking|smoulder\w*|scorch\w*|singe(?:d|s|ing)?\b|charred|melt(?:s|ed|ing)?\b(?= |$|[.,?!])|catch(?:es|ing)? (?:on )?fire|caught (?:on )?fire|on fire\b|set (?:fire|alight)|(?:burn(?:ing|t)?|hot plastic|smoke) (?:\w+ )?smell|smell\w* (?:of |something |like )?(?:\w+ )?(?:burn\w*|smoke)|burning (?:gel|paper|cloth|smell|plastic)|flammable)\b", "a smell of burning"),
    Trigger(("fire",), r"(?:petrol|gasoline|fuel|solvents?|thinners|varnish|paint) (?:fumes?|vapou?rs?|cans?|store)\b|(?:gas|fumes|vapou?rs?) leak\w*|leak\w* gas\b|hay ?(?:bales?|loft|barn)\b|sawdust\b|fireworks?\b", "petrol fumes in the boathouse"),
    Trigger(("heat",), r"overheat\w*|too hot to (?:touch|hold|handle)|burn(?:ed|t)? (?:my|his|her|their) (?:fingers?|hands?|skin)|(?:head|flash|lamp|unit|tube)(?:'s| is| gets?| got| was)? (?:\w+ )?(?:red[- ]hot|really hot|very hot|boiling|scalding)\b|thermal (?:cut|protect)\w*|modell?ing lamps?\b(?= (?:\w+ ){0,3}(?:on|hot|burn\w*|inside))", "the head is overheating"),
    Trigger(("fire", "heat"), r"(?:touch\w*|against|resting on|next to|close to) (?:the |a |its )?(?:bare |hot |modell?ing )*(?:bulb|lamp|tube)s?\b", "the lining is touching the bulb"),
    Trigger(("fire",), r"straw\b|dry grass\b", "a barn with straw everywhere"),
    Trigger(("heat", "fire"), r"(?:cover|block|tap)\w* (?:up )?(?:the |its |my )?(?:air )?vents?\b|vents? (?:\w+ ){0,3}(?:cover|block|tap)\w*|fan (?:\w+ ){0,5}(?:stopp\w*|dead|broken|failed|not running)", "cover the vents with foil"),
    # --- battery
    Trigger(("battery",), r"lithium\b|li-ion\b|li ion\b|liion\b|lipos?\b|li-po\b|li po\b", "a lithium pack"),
    Trigger(("battery", "fire"), rf"(?:swollen|puffed|puffy|bulging|bulged|bloated|swelling|ballooned)\b(?= (?:\w+ ){{0,3}}{_CELL})", "a swollen battery"),
    Trigger(("battery", "fire"), rf"{_CELL}(?= (?:[\w']+ ){{0,7}}?(?:swollen|swell\w*|puff\w*|bulg\w*|bloated|balloon\w*|hissing|smok\w*|venting|on fire|boiling))", "the battery has puffed up"),
    Trigger(("battery",), rf"(?:leaking|leaked|leaky|corroded|crusty|punctured)\b(?= (?:\w+ ){{0,2}}{_CELL})|{_CELL}(?= (?:[\w']+ ){{0,5}}?(?:leak\w*|corro\w*|crust\w*|acid|burst|punctur\w*|overnight|unattended|in (?:the )?(?:checked|hold)))", "the cells have leaked"),
    Trigger(("battery",), r"(?:airlines?|aeroplanes?|airplanes?|airports?|hand luggage|carry[- ]on|cabin bag\w*|checked (?:bag|luggage|baggage)\w*)\b|on (?:a|the|my) (?:plane|flight)\b(?! of)", "batteries on the plane"),
    # --- epilepsy
    Trigger(("epilepsy",), r"epilep\w+|seizures?\b|photosensitiv\w+(?! (?:paper|emulsion|film|material|coating|plate|layer))|flicker\w*", "a guest with epilepsy"),
    Trigger(("epilepsy",), r"strobe (?:mode|setting|effects?|function)|strobo\w+|strobing|multi[- ]?(?:flash )?mode|repeat(?:ing)? (?:mode|flash\w*)|disco strobe", "in strobe mode"),
    Trigger(("epilepsy",), rf"{_NUMBER} ?(?:hz|hertz)\b(?! (?:mains|supply))|{_NUMBER} (?:(?:flashes|pops|bursts|times|pulses) )?(?:a|per|each|every) second\b|flashes (?:a|per|every|each) second", "ten flashes a second"),
    # --- stands
    Trigger(("stand",), r"windy\b|gust\w*|breez\w+|blustery\b|gales?\b|squall\w*|wind\b(?=(?:'s| is| was| has|'ll| will| keeps?| just| picks?| got| gets?| might| caught| blow\w*| pick\w*| took| gust\w*))|(?<=the )wind\b(?! (?:on|lever|knob|the))|(?<=strong )wind\b|(?<=in )wind\b|(?<=of )wind\b|blown over\b", "it's getting gusty"),
    Trigger(("stand",), r"boom(?:s|ed)?\b(?! ?box)(?<!sonic boom)|boom[- ](?:arm|stand|pole)s?\b|sand ?bag\w*|tall (?:light )?stands?\b|top[- ]heavy|(?:wobbly|rickety|unsteady|shaky|flimsy) (?:light )?(?:stand|tripod)s?\b", "a head on a boom"),
    Trigger(("stand",), r"stands? (?:\w+ )?(?:blew|tipped|went) over\b|hang\w* (?:\w+ ){0,3}(?:from|over) (?:\w+ ){0,3}(?:tree|branch|people|crowd|guests)\b|(?:head|light|softbox) (?:\w+ )?(?:tipped|blew|fell) over\b", "a stand blew over"),
    Trigger(("stand",), r"overhead\b(?! (?:projector|view|shot|fluorescent|sun|room|strip|ceiling|bulb|lighting|door|cam\w*|power))|(?:hang|hung|hanging|suspend\w*|clamp\w*|rig|rigged) (?:\w+ ){0,4}(?:from|above|over|to) (?:\w+ )?(?:ceiling|rafters?|beams?|truss|rack|head\b|heads\b|crowd|balcony|people|them|us|crew)\w*", "hung from the rafters"),
    Trigger(("stand",), r"stands?\b(?= (?:\w+ ){0,4}(?:fall\w*|fell|tip\w*|toppl\w*|knocked|blow\w*|wobbl\w*|sway\w*))|(?:kids?|children|toddlers?|dogs?|crowds?|guests|dancers?)(?= (?:\w+ ){0,3}(?:running|charging|racing|tearing|playing|jumping|bumping|dancing|around the stand))|run(?:ning)? (?:past|round|around|into) the (?:light ?)?stands?", "kids running around"),
    # --- bulbs
    Trigger(("bulbs",), r"flash[- ]?bulbs?\b|flash[- ]?cubes?\b|(?<!bare )bulb (?:gun|flash|class|holder)\b|(?:blue|clear|press|class [mfs]|m[- ]class|fp|medium[- ]peak|old|expendable|single[- ]use|shot|spent|used) bulbs?\b", "a box of flash bulbs"),
    # --- babies and eyes
    Trigger(("infant",), r"new[- ]?borns?\b|infants?\b|neonat\w+|preemies?\b|maternity ward|crib\b|bab(?:y|ies)\b(?! (?:spot|stand|pin|tripod|legs|plate|blue|oil|pipe|flash|boom|steps?|soft|grand|head|spigot|stud|pink))|\w+[- ](?:days?|weeks?)[- ]old\b(?! (?:film|chem\w*|develop\w*|batter\w*|fix\w*))", "a newborn"),
    Trigger(("eyes",), r"(?:close|near|next|right up|inch|inches|centimetres?|centimeters?|cm|held up) (?:(?:from|to|up|in|against|right) )+(?:(?:the|his|her|their|my|your|our|a|an|somebody's|people's|\w+'s) )*(?:eyes?|faces?|nose)\b|(?:straight|right|directly|point\w*|fir(?:e|es|ed|ing)|flash(?:es|ed|ing)?|pop(?:s|ped|ping)?) (?:(?:it|them|him|her|right|straight|directly|the|flash|light|off) )*(?:in|into|at) (?:(?:the|his|her|their|my|your|our|somebody's|people's|\w+'s) )*eyes?\b", "close to her eyes"),
    Trigger(("eyes",), r"(?:flash|flashing|photograph\w*|shoot\w*|strob\w*) (?:at )?(?:my|our|the|a|his|her|some) (?:\w+ )?(?:dog|cat|horse|owl|bird|rabbit|pet|puppy|kitten|pony|foal|hamster|parrot)s?\b", "going to flash my dog up close"),
    Trigger(("eyes",), r"(?:dog|cat|horse|owl|bird|animal|bat|rabbit|pet|puppy|kitten|pony|foal|fox|deer|parrot|hamster|reptile|fish|lizard|swan|duck)(?:s|'s|s'|ies)? eyes?\b|(?:star|look)(?:e|es|ed|ing)? (?:straight |right |directly )?(?:at|into) the (?:flash|tube|light|lamp|head|strobe|bulb)|blinded\b|blind (?:him|her|them|me|you|someone|somebody|people|my|the (?:dog|cat|crew|cox|rowers?|driver|baby|horse))\b|dazzl\w+|after ?images?|eye (?:damage|injury|strain)|retina\w*", "the dog's eyes"),
    Trigger(("eyes",), r"cataract\w*|glaucoma\b|eye (?:op\b|operation|surgery|disease)\w*", "after her cataract operation"),
    # --- old flash on a new camera
    Trigger(("sync_voltage",), r"(?:trigger|sync|synch|shoe|contact)(?:ing)?[- ](?:circuit )?(?:voltage|volts)\b|(?:volts?|voltage)(?= (?:\w+ ){0,5}(?:hot ?shoe|shoe|sync|contact|trigger|camera))|hot ?shoe(?= (?:\w+ ){0,6}(?:volts?|voltage|\d+ ?v\b))|(?:volt|multi) ?meter(?= (?:\w+ ){0,6}(?:shoe|contact|sync|foot|trigger|flash))", "what's the trigger voltage"),
    Trigger(("sync_voltage",), r"(?:old|vintage|ancient|antique|film[- ]era|decades[- ]old|seventies|1970s|second[- ]hand|grandad's|junk[- ]shop|\d+ ?(?:v|volts?)) (?:\w+ ){0,3}(?:flash(?:gun|es|guns)?|strobes?|packs?|units?|speedlights?)\b(?=.{0,60}\b(?:digital|modern|new|dslr|mirrorless) ?(?:camera|body|slr|dslr|mirrorless)?)", "my old flash on a digital camera"),
    Trigger(("sync_voltage",), r"(?:fry|fried|frying|cook|kill|ruin|damage|wreck|blow up)\w* (?:the|my|a|her|his) (?:\w+ )?(?:camera|dslr|hot ?shoe)\b", "will it fry my camera"),
)

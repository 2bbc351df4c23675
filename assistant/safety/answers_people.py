"""Prepared safety answers about people and places: fire, seizures, stands, bulbs, heat, babies, eyes."""

from __future__ import annotations

from assistant.safety.aspects import COMMON, Aspect

_LAMP = r"\b(?:bulbs?|lamps?|tubes?|modell?ing|tungsten|halogen|hot lights?|head|flash\w*)\b"
_FLASH = r"\b(?:flash\w*|strobes?|speedlights?|head|light|lights)\b"
_WCAG = "WCAG 2.x, success criterion 2.3.1, Three flashes or below threshold"
_EPILEPSY = "Photosensitive epilepsy, Epilepsy Society; Photosensitivity, Epilepsy Ireland"
_SET = "Set safety, Ithaca College"
_FILM = "Film set lighting safety (restating WorkSafeBC, 2001)"
_AOA = "Reply of the American Optometric Association on flash and babies (reprint)"
_INTERVIEW = "Should you use the camera flash for your baby's pictures (interview)"

PEOPLE: tuple[Aspect, ...] = (
    # --- fire
    Aspect(("fire", "heat"), (r"\b(?:smok(?:e|es|ing|ed)\b(?! machine)|smoulder\w*|burning smell|smell\w*.{0,20}(?:burn\w*|smoke)|scorch\w*|sing(?:e|ed|ing)\b|melt\w*|on fire|caught fire|flames?|sparks?)\b", r"\b(?:gels?|lamps?|bulbs?|softbox|flash\w*|head|pack|paper|tissue|cloth|umbrella|unit|tube|filter|strobe|light|diffuser|snoot|smell\w*)\b"),
           "Switch it off and unplug it now, if you can do so safely, and move people away. Let it cool before you touch anything, throw the damaged gel or cloth away, and have the unit checked before you use it again. If anything is alight, get everybody out and call the fire service; never put water on gear that may be live.",
           COMMON, "the gel started smoking", urgent=True),
    Aspect(("fire", "heat"), (r"\b(?:gels?|lining|foil|cloth|tissue|paper|fabric|silk|muslin|handkerchief|hankie|towel|scarf|napkin|plastic|curtain|parchment|cover\w* (?:up )?(?:the |my |a )?(?:bare |hot |modell?ing )*(?:lamp|bulb|tube|light)|drap\w*|wrap\w*)\b", _LAMP, r"\b(?:over|on|onto|against|round|around|across|touch\w*|cover\w*|drap\w*|wrap\w*|tap\w*|front)\b"),
           "Keep it off the lamp and tube: it can scorch or catch fire. Use material made for lamps, leave a hand's width of air, keep the vents free and switch the modelling lamp off. A thin cloth held in front of a small battery flash for a few pops is usual; check it for warmth as you go.",
           COMMON, "is it safe to put tissue paper over the modelling lamp?"),
    Aspect(("fire",), (r"\b(?:petrol|gasoline|gas|fuel|solvents?|thinners|fumes?|vapou?rs?|hay|straw|sawdust|dust|fireworks?|flammable|explosive|aerosol|hair ?spray|varnish)\b", _FLASH),
           "Do not fire a flash where there may be gas, fuel or solvent vapour, or thick dust. A flash and its switch can make a spark. Air the place or move away, and ask whoever is responsible for the site.",
           COMMON, "can I use flash near petrol fumes?"),
    Aspect(("fire",), (r"\b(?:candles?|curtains?|drapes?|decorations?|costume|veil|fire exit|exits?|sprinklers?|extinguisher)\b", r"\b(?:" + r"lamp|lights?|flash\w*|head|softbox|stand|close|block\w*|near)\b", r"\b(?:safe\w*|danger\w*|risk\w*|fire)\b"),
           "Keep heads, lamps and anything that burns well apart, and never block an exit. Switch modelling lamps off when nobody is watching them, and know where the extinguisher for electrical fires is. The venue's fire rules come first.",
           COMMON, "is it safe to have a lamp near the curtains?"),
    # --- seizures
    Aspect(("epilepsy",), (r"\b(?:having|had|started|is in|went into|gone into)\b.{0,20}\b(?:seizure|fit|convuls\w*)|\bcollapsed\b",),
           "Stop the flashing and call the emergency number, above all if it is a first seizure or lasts more than five minutes. Move hard things away, put something soft under the head, time it, do not hold the person down and put nothing in the mouth. Stay with them until help says otherwise.",
           "First aid, common practice, no source", "somebody is having a seizure", urgent=True),
    Aspect(("epilepsy",), (r"\b(?:hz|hertz|strob(?:e mode|ing|o\w*|e at)|strobes?|repeat\w*|multi|flashes|pops|flicker\w*|bursts?|flashing|times)\b", r"\b(?:epilep\w*|seizures?|photosensitiv\w*|fits?|trigger\w* (?:an? )?(?:attack|fit|seizure)|(?:a|per|each|every) second|hz|hertz|strobe mode|strobo\w*)\b"),
           "Repeated flashing can set off a seizure in people with photosensitive epilepsy: between about 3 and 30 times a second is the usual range, with 15 to 25 the worst. Keep to three flashes in any second or fewer, or do the repeats with nobody susceptible in view. Ask and warn everybody first; whether it is safe for one person is for them and their doctor.",
           _WCAG + "; " + _EPILEPSY + "; Photosensitive epilepsy (encyclopaedia copy)", "will strobe at 12 Hz trigger epilepsy?"),
    Aspect(("epilepsy",), (r"\bepilep\w*|\bseizures?\b|\bphotosensitiv\w*(?! (?:paper|film|emulsion))",),
           "Ask the person first: single flashes, seconds apart, are far from the repeated flashing that sets seizures off, but only they and their doctor can say what is safe for them. Tell them before each flash, let them cover an eye or look away, and offer to work by continuous light. Do not use strobe mode or rapid bursts.",
           _EPILEPSY + "; " + COMMON, "my sitter has epilepsy, is flash safe?"),
    # --- stands
    Aspect(("stand",), (r"\b(?:sand ?bags?|weigh\w*|ballast|weights?)\b", r"\b(?:stand|boom|c-stand|stands|light|lights|umbrella|softbox|bags?|enough|safe)\b"),
           "Put at least one bag on every stand, on the leg under the load and clear of the ground: 25 lb (11 kg) is usual for a heavy grip stand and 15 lb (7 kg) for a lighter one. More is needed in wind, up high or on a boom. Where a fall could hurt people, have a trained rigger decide.",
           _SET, "is one sandbag enough for a tall stand to be safe?"),
    Aspect(("stand",), (r"\b(?:wind\b|windy|gust\w*|breez\w*|gale\w*|storm\w*|blow\w* (?:over|down|away))", r"\b(?:stand\w*|umbrella|softbox|brolly|light|octa|boom|flash\w*|reflector)\b"),
           "Do not use a big modifier unless somebody holds it: an umbrella or softbox is a sail. Lower the stand, weight the legs, point the edge into the wind, or use a bare head or a small dish. If it gusts, take it down.",
           _FILM + "; " + COMMON, "is it safe to use an umbrella on a stand in wind?"),
    Aspect(("stand",), (r"\b(?:boom\w*|overhead|above (?:people|heads?|them|her|him|us|the \w+)|(?:from|to) (?:the |a )?(?:ceiling|rafters?|beams?|truss)|hang\w*|hung|suspend\w*)\b", r"\b(?:light|lights|head|flash\w*|strobe|softbox|stand|boom)\b"),
           "Do it only with a counterweight and a separate safety wire on everything overhead. Balance and bag the stand before you swing the arm out, and keep people from under it while you work. Hanging anything from a building is for somebody qualified, with the owner's leave and by the local code.",
           _FILM, "is it safe to hang a head from the rafters?"),
    Aspect(("stand",), (r"\b(?:kids?|children|toddlers?|dogs?|crowds?|guests?|public|pavement|sidewalk|dance floor|dancers?)\b", r"\b(?:stands?|lights?|cables?|tripods?|softbox\w*|heads?)\b"),
           "Do it only if somebody minds the stand: put it against a wall or in a corner, low, weighted, with its lead taped down. Give one person no other job than watching it. In a public place ask what leave the local rules require.",
           _SET + "; " + COMMON, "are light stands safe with kids running around?"),
    Aspect(("stand",), (r"\b(?:secur\w*|stead\w*|stab\w*|anchor\w*|tip\w*|toppl\w*|fall\w*|knock\w*|weight\w*|blow\w*|stop\w*|keep\w*)\b", r"\b(?:(?:light )?stands?|tripods?|boom\w*)\b", r"^(?!.*\b(?:stop (?:down|more|less)|stops?\W*$)).*\b(?:secur\w*|stead\w*|stab\w*|anchor\w*|tip\w*|toppl\w*|fall\w*|knock\w*|blow\w*|upright|weight\w*)\b"),
           "Spread the legs wide, put one of them under the load, and hang or lay a sandbag on that leg, clear of the ground. Keep the stand no taller than you need, run its lead down the leg with slack at the floor, and have somebody hold a big softbox or umbrella; outdoors in wind, take it down.",
           _SET + "; " + COMMON, "how do I stop a softbox on a tall stand from tipping over?"),
    Aspect(("stand",), (r"\b(?:stand|light|boom|softbox|tripod|head)\b.{0,30}\b(?:fell(?! (?:off\b|by\b|(?:from|to) (?:about )?(?:ev|f) ?/? ?\d))|fallen|has tipp\w*|toppl\w*|collaps\w*|wobbl\w*|unstable)",),
           "Keep people away and do not catch a falling head: cut its power first. Then set the stand up again with the legs spread, one leg under the load, and a bag on it. A head that has fallen must be checked before it is used again, and anybody struck on the head should see a doctor.",
           COMMON, "the stand fell over", urgent=True),
    # --- bulbs
    Aspect(("bulbs",), (r"\b(?:flash ?bulbs?|bulbs)\b|\bflash ?cubes?\b", r"\b(?:explod\w*|blow up|burst\w*|shatter\w*|crack\w*|shield\w*|cover\w*|glass|face)\b"),
           "They can burst, so always use a clear shield over the reflector. Do not fire a bulb that is cracked, or whose blue safety spot, where it has one, has turned pink. Keep it a few feet from faces.",
           COMMON, "can old flash bulbs explode?"),
    Aspect(("bulbs",), (r"\b(?:flash ?bulbs?|bulbs)\b|\bflash ?cubes?\b", r"\b(?:crack\w*|broken|chip\w*|split|pink|damaged)\b", r"\b(?:glass|bulbs?|spot|lacquer|cubes?)\b", r"\b(?:bulbs?|cubes?)\b"),
           "Do not fire a cracked bulb, since it can burst; throw it away wrapped. The same goes for one whose blue safety spot has turned pink. Fire the sound ones behind a clear shield, a few feet from faces and from anything that burns.",
           COMMON, "can I fire old flash bulbs with cracked glass?"),
    Aspect(("bulbs", "heat"), (r"\b(?:flash ?bulbs?|bulbs)\b", r"\b(?:hot|burn\w*|cool|touch\w*|eject\w*|remov\w*|fire)\b"),
           "A fired bulb is hot enough to burn: let it cool, or eject it into a tin, before you touch it. Never fire one near paper, cloth, dry grass or vapour.",
           COMMON, "are flash bulbs hot after firing?"),
    Aspect(("bulbs",), (r"\bflash ?bulbs\b|\bflash ?cubes?\b", r"\b(?:static|pocket|accident\w*|radio|stor\w*|carry\w*|transport\w*|by itself|plane|post)\b"),
           "Keep them in their cartons, since a stray current or static can fire a bare bulb in a pocket. Put a bulb in only when you are ready, with the gun's contacts dead and your face turned away. Ask a carrier before you send or fly with them.",
           COMMON, "is it safe to carry flashbulbs in my pocket?"),
    Aspect(("bulbs",), (r"\bflash ?bulbs?\b|\bflash ?cubes?\b",),
           "Use them with care: put a shield over the reflector, fire away from faces and from anything that burns, and let bulbs cool. Put them in with the gun switched off, and throw away cracked ones.",
           COMMON, "are flashbulbs safe to use at a party?"),
    # --- heat
    Aspect(("heat",), (r"\b(?:overheat\w*|too hot|cool(?:ing)? down|thermal|(?<!as )(?<!how )many pops|rapid\w*|in a row|fast|continuous\w*|burst)\b", r"\b(?:flash\w*|head|strobe|speedlight|unit|pops|tube|pack)\b"),
           "It can be overheated: a run of full-power pops can melt the window or crack the tube. Follow the rest times in its manual, or let it rest some minutes after about 20 full pops, and use lower power. If it smells or has discoloured, stop and have it checked.",
           COMMON, "can I damage the flash by firing it too fast?"),
    Aspect(("heat",), (r"\b(?:burn\w*|touch\w*|hot(?! (?:is|are|was|does|will|would) (?:the |my )?(?:front|middle|back|first|second|third|last|near\w*|far\w*|wall|backdrop|background|paper|row|key|fill|rim|hair)\b)|handle)\b", r"\b(?:modell?ing|lamps?|tubes?|bulbs?|head|grid|snoot|barn ?doors?|reflector|dish)\b"),
           "It can burn you: a modelling lamp, its tube and metal fittings stay hot for minutes. Switch off, wait, and use heat-proof gloves. Cool a burn under running water for 20 minutes and see a doctor if it blisters or is large.",
           "First aid and " + COMMON, "can the modelling lamp burn me if I touch it?"),
    Aspect(("heat", "fire"), (r"\b(?:modell?ing lamps?|tungsten|halogen|hot lights?)\b", r"\b(?:softbox|snoot|umbrella|gels?|leave|leaving|left|cover\w*|inside|unattended)\b"),
           "Do it only within the wattage that the modifier's maker allows, with its vents open. Switch the lamp off when you leave it, and never close a snoot or gel over a strong one for long.",
           COMMON, "is it safe to leave the modelling lamp on inside the softbox?"),
    # --- babies
    Aspect(("infant", "eyes"), (r"\b(?:premature|preemie|neonat\w*|incubator|hospital|ward|special care|intensive care)\b", r"\b(?:bab(?:y|ies)|infants?|new[- ]?borns?|preemies?|premature|neonat\w*)\b"),
           "Do nothing without the ward's leave: ask the nurse or doctor in charge first. Their equipment and the baby's eyes both come before a picture. Window light or a higher film speed is the better choice.",
           COMMON + "; ask the medical staff", "can I flash a premature baby in hospital?"),
    Aspect(("infant", "eyes"), (r"\b(?:new[- ]?borns?|bab(?:y|ies)|infants?|toddlers?|(?:days?|weeks?|months?)[- ]old)\b", _FLASH + r"|\b(?:safe\w*|eyes?|blind\w*|hurt\w*|harm\w*)\b"),
           "An ordinary camera flash is not expected to harm a baby's eyes; at most it sees an after-image for a short while. One eye specialist still advises against very large flashes in the first month, while the pupils are slow to close. So bounce or soften it, keep it a few feet off and low in power, put nothing overhead, and ask the baby's doctor if there is any doubt.",
           _AOA + "; " + _INTERVIEW, "is it safe to flash a newborn?"),
    # --- eyes
    Aspect(("eyes",), (r"\b(?:dogs?|cats?|horses?|ponys?|ponies|owls?|birds?|animals?|bats?|rabbits?|pets?|pupp\w*|kittens?|foals?|hamsters?|reptiles?|fish|swans?|deer|livestock|cows?)\b(?:'s|')?", r"\b(?:flash\w*|strobes?|eyes?|blind\w*|hurt\w*|harm\w*|startl\w*|safe\w*)\b"),
           "An ordinary flash from a few feet is not known to harm an animal's eyes, but it can dazzle and frighten it. Never fire close to the face, keep night animals and young in the nest out of it, and mind horses, which may bolt. Ask the keeper or a vet first, and stop if the animal shies.",
           COMMON, "will flash hurt my cat's eyes?"),
    Aspect(("eyes",), (r"\b(?:drivers?|driving|traffic|cyclists?|cox|rowers?|climbers?|athletes?|riders?|gymnasts?|pilots?|performers?|actors?)\b", r"\b(?:flash\w*|strobes?|dazzl\w*|blind\w*)\b", r"\b(?:safe\w*|danger\w*|dazzl\w*|blind\w*|startl\w*|allowed|ok|okay|distract\w*|eyes)\b"),
           "Do not flash at anybody who must see where they are going: a flash can dazzle for some seconds. Place it to the side or behind, agree on the moment, and never point it at traffic. Ask the organiser, who may forbid flash.",
           COMMON, "is it safe to flash at cyclists coming at me?"),
    Aspect(("eyes",), (r"\b(?:star(?:e|es|ed|ing)|look\w* (?:straight |right |directly )?(?:at|into|in)|bare tube|uv|ultra ?violet|without (?:the )?(?:glass|cover|dome))\b", r"\b(?:tube|flash\w*|lamp|modell?ing|strobe|light)\b"),
           "Do not stare into it: looking straight at a tube or modelling lamp close by can leave you dazzled, and an uncoated tube gives off ultraviolet. Keep its glass cover on and look away as it fires. See an eye doctor if your sight is not back to normal within the hour.",
           COMMON + "; optical limits for lamps are in IEC 62471", "is it bad to stare into the flash tube?"),
    Aspect(("eyes",), (r"\b(?:after ?images?|spots?|blurr\w*|can'?t see|dazzled|vision|sight)\b", r"\b(?:flash\w*|strobe|eyes?)\b"),
           "An after-image that fades within minutes is normal after a flash. Pain, a blind patch or blurred sight that stays is not: see an eye doctor the same day. Do not fire again at that person.",
           COMMON, "is it harmful that I see spots after the flash?"),
    Aspect(("eyes",), (r"\b(?:close|near|inch(?:es)?|cm|centimet\w*|macro|ring ?(?:flash|light)?|in (?:the|his|her|their|your|my|someone's|somebody's) (?:face|eyes?))\b", r"\b(?:eyes?|faces?)\b"),
           "Keep it at least a foot (30 cm) from the eyes; closer than that, bounce it, soften it or turn the power right down. One ordinary flash is not expected to do lasting harm, but close up it dazzles. For eye pictures by the dozen, ask an eye doctor what is safe.",
           COMMON, "is it safe to fire the flash close to someone's eyes?"),
    Aspect(("eyes",), (r"\b(?:eyes?|eyesight|blind\w*|retina\w*|vision|sight)\b", r"\b(?:flash\w*|strobes?|light|speedlights?)\b"),
           "At ordinary distances a single photographic flash is not expected to harm healthy eyes, and the after-image fades in minutes. Keep it a foot (30 cm) or more away and let nobody stare into the tube. Anybody with an eye disease or fresh eye surgery should ask their doctor.",
           _AOA + "; " + COMMON, "can flash damage your eyes?"),
    # --- in general
    Aspect(("high_voltage", "mains", "stand", "heat"), (r"\b(?:safety|safely|dangers?|dangerous|hazards?|risks?|safe)\b", r"\b(?:rules?|tips?|advice|basics?|checklist|briefing|dangers|hazards|risks|precautions?|know about|teach|tell my|tell the)\b"),
           "Never open a flash, since its capacitor can hold a deadly charge. Keep mains gear and leads dry, undamaged and out of people's way; weight every stand and put a safety wire on anything overhead; keep cloth and gel off lamps and let heads cool. Do not fire close to eyes, ask about epilepsy before repeated flashes, and follow the local code.",
           COMMON, "are there any dangers with studio flash I should know about?"),
    Aspect(("mains", "water"), (r"\b(?:safest|safe|safely|best)\b", r"\bpower(?:ing)?\b|\brun(?:ning)?\b", r"\b(?:outdoors?|outside|garden|field|lawn|beach|slipway)\b"),
           "Use battery units: outdoors they keep mains power out of the wet altogether. If mains is needed, a qualified electrician should set it up by the local code, with an outlet protected against earth leakage and leads made for outdoors, dry and off the ground.",
           COMMON, "what's the safest way to power heads outdoors?"),
)

"""Prepared safety answers about electricity: water, high voltage, mains, batteries, old sync voltages."""

from __future__ import annotations

from assistant.safety.aspects import COMMON, Aspect

_FLASH = r"\b(?:flash\w*|strobes?|speedlights?|head|pack|unit|monolight|light|lights|gear|kit)\b"
_BATTERY = r"\b(?:batter\w+|cells?|li[- ]?ion|lithium|lipos?|power ?pack|nimhs?|aas?)\b"
_CAMERA = r"\b(?:camera|dslr|slr|mirrorless|body|hot ?shoe)\b"
_FAA = "Pack safe: spare lithium batteries, US Federal Aviation Administration"
_TSA = "Lithium batteries with 100 watt hours or less in a device, US Transportation Security Administration"
_CAPACITOR = "Capacitors: real-world scenarios"
_NIOSH = "Electrical safety, controlling hazards, NIOSH"
_SILICON = "A safe flash trigger for a digital camera, Silicon Chip magazine"

ELECTRIC: tuple[Aspect, ...] = (
    # --- water
    Aspect(("water", "mains", "high_voltage"), (r"^(?!.*\b(?:floor|ground|grass|lawn|deck)\b).*\b(?:drop\w*|fell|fall\w*|got|gets?|soak\w*|dunk\w*|went)\b", r"\b(?:wet|water|rain|pool|river|puddle|lake|sea|soak\w*|dunk\w*)\b", _FLASH),
           "Do not switch it on: if it is off, leave it off, and if it is on mains power, cut the power at the socket or breaker before anybody touches it. Take the batteries out only if you can do so dry, and have it checked by a qualified repairer, since drying the outside does not dry the capacitor side. If anybody got a shock, call for medical help.",
           COMMON, "my flash got wet in the river, can I switch it on?"),
    Aspect(("water", "mains"), (r"\b(?:mains|plug\w*|extension|generator|studio (?:packs?|heads?|lights?|flash\w*|strobes?|monolights?|units?)|wall|socket|cables?)\b", r"\b(?:wet|rain\w*|pour\w*|puddles?|water|damp|pool|river|splash\w*|drizzl\w*|slipway|bath\w*)\b"),
           "Do not use mains-powered flash in rain, on a wet floor or beside water. Use battery units under cover, keep connectors off the ground, and let a qualified electrician set up any supply outdoors, by the local code. An earth-leakage breaker makes a shock less likely to kill; it does not make wet gear safe.",
           "Scope of IEC 60491 (apparatus not normally exposed to splashes); " + _NIOSH, "is it safe to have the pack plugged in on a wet floor?"),
    Aspect(("water", "high_voltage"), (r"\bunder ?water|\bsubmerg\w+|\bdiv(?:e|ing)\b",),
           "Use it under water only in a housing made for it: an ordinary flash must never go under water. Check the seals before every dive, and let whoever trained you or services the housing decide on its depth. If it floods, do not switch it on or open it by the water.",
           COMMON, "can I use my flash underwater?"),
    Aspect(("water", "high_voltage"), (r"\b(?:rain\w*|pour\w*|drizzl\w*|wet|damp|storm\w*|snow\w*|(?<!\ba )(?<!the )splash\w*|spray|water)\b", _FLASH + r"|\bshoot\w*|\bwork\b"),
           "Do not use it unprotected: an ordinary flash is not built for rain or splashes, and it holds a high voltage inside. Use a battery unit with a rain cover or an assistant with an umbrella, keep mains gear indoors, and stop if water gets in. If there is thunder about, take the stand down and go in.",
           "Scope of IEC 60491 (apparatus not normally exposed to splashes); " + COMMON, "can I use the flash in the rain?"),
    Aspect(("water", "high_voltage"), (r"\b(?:near|beside|by|at|over|edge|side|next to|above|around|in|close to)\b.{0,24}\b(?:pools?|lakes?|rivers?|sea|harbour|bath\w*|hot tub|pond|jetty|pontoon)\b", _FLASH),
           "Keep mains gear away from the water altogether; a battery flash may be used if it cannot fall in, stays dry and its stand is weighted or held. Keep cables off wet ground, have nobody in the water touch gear, and let a qualified electrician decide on any mains supply, by the local code.",
           COMMON, "can I use a flash near a swimming pool?"),
    Aspect(("water",), (r"\bcondens\w+|\bfogg?(?:ed|ing) up|\bcold to warm|\bmoisture\b",),
           "Wait until it is dry: leave the flash closed in its bag until it has warmed to the room, then let it stand open before you switch it on. Moisture on high-voltage parts can arc. If you see water inside, have it checked.",
           COMMON, "condensation on the flash, is it ok to use?"),
    # --- inside a flash
    Aspect(("high_voltage",), (r"\b(?:open\w*(?! .{0,25}\b(?:wide|zoom|doors)\b)|repair\w*|fix\w*|mend\w*|dismantl\w*|disassembl\w*|apart|unscrew\w*|(?:cover|lid|cas(?:e|ing)|back|shell) off|replac\w*|swap\w*|chang\w*|solder\w*|diy)\b", r"\b(?:flash(?:gun|es|guns)?|strobe|speedlight|pack|head|capacitors?|monolight|tube|insides?|unit)\b", r"^(?!.*\b(?:backgrounds?|shadows?|glare|reflections?|red[- ]?eyes?|pictures?|photos?|frames?|shots|negs?|negatives?|slides?|corners?|blur\w*|ghost\w*|cast)\b.*\bfix\b)"),
           "Leave it shut, because the capacitor can give a deadly shock, even with the batteries out and long after switching off. A camera-size flash stores tens of joules at around 300 volts, a studio pack far more. Take it to a qualified repairer, and do not try to short the capacitor yourself.",
           _CAPACITOR + " (1000 microfarad at 300 V holds 45 J); " + COMMON, "can I open the flash to fix the capacitor?"),
    Aspect(("high_voltage",), (r"\bcapacitors?\b|\bcharge\b", r"\b(?:how long|hold|holds|still|keep\w*|stay\w*|discharg\w*|dump|empty|after)\b"),
           "It may hold a dangerous charge for hours or longer, so treat every capacitor as charged. Firing the flash or taking the batteries out does not prove it is empty. Only a qualified repairer with the right tools should discharge and test it.",
           COMMON, "how long does the capacitor stay dangerous after switching off?"),
    Aspect(("high_voltage", "mains"), (r"\b(?:got|get|gave|had|gives?|felt|feel)\b.{0,30}\b(?:shock|zap\w*|tingl\w*|jolt)|\bzapp\w+|\bshocked me|\belectrocut\w+",),
           "Stop using it and cut its power at the socket; do not touch it again until a qualified repairer has looked at it. Anybody who had a real shock should be seen by a doctor, even if they feel well. If somebody cannot let go or has collapsed, cut the power first, then call the emergency number.",
           COMMON, "the pack gave me a shock", urgent=True),
    Aspect(("high_voltage",), (r"\b(?:crack\w*|broken|smash\w*|chip\w*|dent\w*|split)\b", r"\b(?:tube|housing|casing|case|head|flash\w*|strobe|body)\b"),
           "Do not fire it: a cracked tube or case can burst or put high voltage within reach. Switch it off, take the batteries out or unplug it, and have it repaired. Do not tape it up and carry on.",
           COMMON, "the flash tube is cracked, is it safe to use?"),
    Aspect(("high_voltage",), (r"\b(?:years?|decades?|attic|loft|drawer|storage|stored|unused|long time)\b", r"\b(?:switch\w*|turn\w*|fire|plug\w*(?! (?:it |that |them )?(?:straight |right )?(?:on|onto|into|in) (?:the |a |my |her |his )?(?:\w+ )?camera)|power\w*|charge|use|try)\b", r"\b(?:flash(?:gun)?|strobe|pack|head|monolight)\b"),
           "Switch it on only with care: an old capacitor can fail when it is first charged after years of rest, sometimes with a bang. Check for cracks, leaks and corroded contacts, switch it on away from your face with nobody near, and leave it to charge some minutes before a first pop. A mains-powered old pack should be checked by a qualified repairer first.",
           COMMON, "is it safe to switch on a flash that was in the attic for years?"),
    # --- mains
    Aspect(("mains", "fire"), (r"\b(?:extension (?:leads?|cords?|cables?|reels?|sockets?|boards?|wires?)|(?:an?|one|same|another|single) extension(?! tube| ring| of)|reel|power strip|power board|daisy\w*|multi ?way|adaptor|adapter)\b",),
           "Use an extension lead only if it is rated for the load, undamaged and fully unwound: a coiled lead can overheat. Do not chain one into another, and add up the watts of everything on it, modelling lamps included. Where you are unsure, follow the local code and ask a qualified electrician.",
           COMMON, "can I run two heads from one extension reel?"),
    Aspect(("mains",), (r"\b(?:generator|genny|inverter)\b",),
           "Use one only if the flash maker allows it: the power of a small generator or inverter can be rough enough to harm a pack. Keep a generator outdoors and well away from doors and windows, because its exhaust kills, and keep it dry and earthed by the local code. A battery unit is usually simpler.",
           COMMON, "is it ok to run the pack from a generator?"),
    Aspect(("mains", "stand"), (r"\b(?:cables?|leads?|cords?|wires?)\b", r"\b(?:floor|trip\w*|walk\w*|door\w*|aisle|path\w*|across|guests?|people)\b"),
           "Do not leave leads loose across a walkway: route leads round the edge, tape or mat down what must cross, and leave slack at the stand. Keep doors and exits clear, with about 2 feet of free way. Never run a lead under a carpet, where it can overheat unseen.",
           "Set safety, Ithaca College; " + COMMON, "is it safe to run cables across the floor?"),
    Aspect(("mains",), (r"\b(?:rcds?|gfcis?|residual current|earth leakage|ground fault|breaker|fuse)\b",),
           "Use one: a residual-current device cuts the power when current leaks to earth. Typical ratings are 30 mA outdoors in one part of the world and 4 to 6 mA in another; the local code says which. If it trips, find the fault, and do not bypass it.",
           _NIOSH + "; Residual current devices, Alard Electrical", "do I need an RCD for studio heads?"),
    Aspect(("mains", "fire"), (r"\b(?:fray\w*|bare wire\w*|damaged (?:cable|lead|cord|plug)|taped up (?:cable|lead)|worn (?:cable|lead|cord)|loose plug|sparks?|sparking|arcing)\b",),
           "Unplug it at the wall and take it out of use. A damaged lead can kill or start a fire, and tape is no repair. Have a qualified person replace it.",
           COMMON, "the mains lead is frayed, can I still use it?"),
    # --- batteries
    Aspect(("battery", "fire"), (_BATTERY, r"\b(?:swollen|swell\w*|puff\w*|bulg\w*|bloated|balloon\w*|pillow|expand\w*|hiss\w*|punctur\w*|crush\w*|dent\w*|drop\w*)\b"),
           "Stop using it now, and do not charge it, press it or pierce it. Switch the unit off; if the battery comes out freely, put it outdoors on something that does not burn, away from people. Take it to a battery recycling point, not the bin, and call the fire service if it hisses, smokes or gets hot.",
           COMMON, "lithium battery puffed up, can I get one more job?", urgent=True),
    Aspect(("battery",), (_BATTERY, r"\b(?:leak\w*|corro\w*|crust\w*|acid|white powder|green|gunk|goo)\b"),
           "Do not use those cells again, and keep the stuff off your skin and out of your eyes. With gloves on, take them to a battery recycling point; wipe alkaline crust from the contacts with a little vinegar or lemon juice on a swab, and dry well. If it got in an eye, rinse with water for a long time and get medical help.",
           COMMON, "the AA cells have leaked in my flash, is it safe?", urgent=True),
    Aspect(("battery",), (_BATTERY + r"|\bflash\w*", r"\b(?:airlines?|aeroplanes?|airplanes?|planes?|flight|flights|fly|flying|airport|luggage|carry[- ]on|checked|cabin|hold bag\w*|suitcase)\b"),
           "Carry them in the cabin: spare lithium batteries go in carry-on bags, not in checked ones, with their contacts covered. Up to 100 watt-hours each they need no approval (watt-hours are volts times amp-hours). Ask your airline before you go, since it may be stricter.",
           _FAA + "; " + _TSA, "can I take flash batteries on the plane?"),
    Aspect(("battery", "fire"), (_BATTERY + r"|\bcharger\b", r"\b(?:charg\w*)\b", r"\b(?:overnight|unattended|leave|leaving|hotel|bed|sleep\w*|hot|warm|car|safe\w*|cold|freez\w*)\b"),
           "Do not leave a battery charging unattended: charge where you can see it, on something that does not burn, with the charger made for that battery. Stop if it gets hot, smells or swells. Do not charge a lithium battery that is freezing cold or damaged.",
           COMMON, "is it ok to leave the lithium battery charging overnight?"),
    Aspect(("battery",), (_BATTERY, r"\b(?:mix\w*|old and new|different (?:makes|brands|types|kinds)|nimh with|together)\b"),
           "Do not mix old with new cells, or different kinds, in one flash. The weakest is driven backwards and can leak or overheat. Keep and charge them as a numbered set.",
           COMMON, "can I mix old and new batteries in the flash?"),
    Aspect(("battery", "heat"), (_BATTERY, r"\b(?:hot|overheat\w*|warm|burning)\b"),
           "Stop and let it cool: a battery that is too hot to hold is being overworked or is failing. Take it out if you can touch it, put it on something that does not burn, and slow the rate of firing afterwards. If it swells, smokes or smells, keep away and call the fire service.",
           COMMON, "the batteries get really hot, is that dangerous?"),
    # --- old flash, modern camera
    Aspect(("sync_voltage",), (r"\b(?:measur\w*|test\w*|check\w*|find out|know)\b", r"\b(?:trigger|sync|shoe|contact)\b.{0,20}\b(?:volt\w*)|\bvolt\w*.{0,40}\b(?:trigger|sync|shoe|contact|flash)"),
           "Put a high-impedance voltmeter, set to a range above 500 volts DC, across the centre contact and the side contact of its foot, with the flash charged and off the camera. Touch no bare metal, and measure more than once: one old pack read 103 volts one day and 224 another. If you are not used to measuring high voltages, have a repairer do it.",
           _SILICON + "; " + COMMON, "how do I measure the trigger voltage of my old flash safely?"),
    Aspect(("sync_voltage",), (r"\b(?:isolat\w*|safe ?sync|adapt[eo]r|radio trigger\w*|optical slave|slave cell)\b", r"\b(?:old|volt\w*|protect\w*|high)\b", r"\b(?:flash\w*|strobes?|pack|camera|voltage)\b"),
           "A radio trigger, slave or isolating adapter keeps the old flash's voltage away from the camera. Check that the trigger or adapter is itself rated for that voltage, since small radio receivers have limits too.",
           COMMON, "will a radio trigger protect the camera from an old flash?"),
    Aspect(("sync_voltage",), (_CAMERA, r"\b(?:\d+ ?v|volts?|voltage|old|vintage|ancient|antique|film[- ]era|1970s|seventies|fry|fries|damage|kill|ruin|wreck|harm|hurt)\b", r"\b(?:flash\w*|strobes?|pack|speedlight|trigger|sync)\b"),
           "Do not put it straight on the camera unless its voltage is known and inside the limit in the camera's manual. Limits quoted are 6, 24 or 250 volts by camera, and old flashes can put hundreds of volts on the contact. Have it measured, or use a radio trigger, an optical slave or an isolating adapter. A fully mechanical film camera is usually not harmed.",
           "ISO 10330 (24 V, quoted from memory); " + _SILICON + "; " + COMMON, "can I use my 250 V old flash on a digital camera?"),
)

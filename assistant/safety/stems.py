"""Letters without which no hazard is heard: a text with none of them need not wait for the safety tables.

Made from the patterns of those tables; a test holds the two together and says how to make it anew.
"""

from __future__ import annotations

RULES: tuple[tuple[tuple[str, ...], ...], ...] = (
    # of each of these sets some letters must stand in a text that the rule hears
    (("rain",),),
    (("pour",),),
    (("bathtub", "condensation", "downpour", "drenched", "dripping", "drizzl", "poolside", "puddle", "rainsoaked", "sleet", "snowfall", "snowing", "soaked", "sprinkler", "thunder", "underwater", "waterlogged",),),
    (("wet",),),
    (("damp", "flooded", "moisture",),),
    (("splash", "spray",), ("lash", "ray",),),
    ((" pool", " the pool", "hot tub", "jacuzzi", "pool", "pool party",),),
    ((" on the deck", " on the floor", " on the ground", "bath", "knee", "lake", "river", "s edge", "sea", "shower", "spilt water", "standing in water", "stream", "surf", "water",),),
    (("capacitor",),),
    (("capacitor", "flash", "head", "light", "monolight", "pack", "power supply", "speedlight", "strobe", "tube", "unit",), ("crack", "disassembl", "dismantl", "fix", "mend", "open", "prise open", "pry open", "repair", "rewir", "strip", "unscrew",),),
    (("apart", "inside ", "solder", "to bits", "to pieces",),),
    ((" shock", "cracked case", "cracked casing", "cracked flash", "cracked head", "cracked housing", "cracked tube", "electrocut", "shocked me", "tube", "voltage", "zapped", "zapping",),),
    (("plug",), ("plug", "plug in",),),
    ((" in the wall", " outlet", " plug", " reel", " socket", "extension cable", "extension cord", "extension lead", "extension reel", "generator", "genny", "mains", "power board", "power cable", "power cord", "power lead", "power strip",),),
    (("cable", "cord", "lead", "wire",), ("tap", "trip",),),
    ((" aisle", " deck", " doorway", " floor", " ground", " path", " slipway", " walkway", "bare wire", "breaker", "circuit", "daisy", "frayed", "fuse", "gfci", "rcd",),),
    (("bulb", "halogen", "hot light", "ing light", "lamp", "tube", "tungsten",), ("baking paper", "bin bag", "cardboard", "cloth", "curtain", "diffusion", "fabric", "filter", "gel", "handkerchief", "hankie", "muslin", "napkin", "paper", "parchment", "plastic", "scarf", "sheet", "silk", "tissue", "towel", "tracing paper",),),
    (("covered", "draped", "taped over", "wrapped",), ("bulb", "halogen", "hot light", "ing light", "lamp", "tube", "tungsten",),),
    (("bulb", "halogen", "hot light", "ing light", "lamp", "tube", "tungsten",), ("cover", "drap", "tap", "wrap",),),
    (("burning cloth", "burning gel", "burning paper", "burning plastic", "burning smell", "catch", "caught ", "charred", "flammable", "melt", "on fire", "scorch", "set alight", "set fire", "singe", "smell", "smoking", "smoulder",),),
    ((" leak", "bale", "barn", "firework", "fuel", "gasoline", "leak", "loft", "paint", "petrol", "sawdust", "solvent", "thinners", "varnish",),),
    ((" finger", " hand", " skin", "boiling", "hot", "ing lamp", "overheat", "really hot", "scalding", "thermal cut", "thermal protect", "too hot to handle", "too hot to hold", "too hot to touch", "very hot",),),
    (("against", "close to", "next to", "resting on", "touch",), ("bulb", "lamp", "tube",),),
    (("dry grass", "straw",),),
    (("fan ", "vent",),),
    (("li ion", "li po", "li-ion", "li-po", "liion", "lipo", "lithium",), ("li",),),
    (("ballooned", "bloated", "bulged", "bulging", "puffed", "puffy", "swelling", "swollen",), ("aa", "batter", "cell", "lipo", "nimh", "pack",),),
    (("balloon", "bloated", "boiling", "bulg", "hissing", "on fire", "puff", "smok", "swell", "swollen", "venting",), ("aa", "batter", "cell", "lipo", "nimh", "pack",),),
    (("acid", "burst", "checked", "corro", "corroded", "crust", "crusty", "hold", "leak", "leaked", "leaking", "leaky", "overnight", "punctur", "punctured", "unattended",),),
    ((" flight", " plane", "aeroplane", "airline", "airplane", "airport", "cabin bag", "carry", "checked bag", "checked baggage", "checked luggage", "hand luggage",),),
    (("epilep", "flicker", "photosensitiv", "seizure",),),
    (("disco strobe", "multi", "repeat", "strobe effect", "strobe function", "strobe mode", "strobe setting", "strobing", "strobo",),),
    ((" second", "flashes a", "flashes each", "flashes every", "flashes per", "hertz", "hz",),),
    (("blown over", "blustery", "breez", "gale", "gust", "squall", "strong ", "wind", "windy",),),
    (("boom", "heavy", "sand", "stand", "tall ", "tripod",),),
    (("blew", "branch", "crowd", "fell", "guests", "people", "stand", "tipped", "tree",),),
    (("clamp", "hang", "hanging", "hung", "overhead", "rig", "rigged", "suspend",),),
    (("around the stand", "bumping", "charging", "dancing", "jumping", "playing", "racing", "running", "stand", "tearing",),),
    ((" bulb", "bulb", "bulb class", "bulb flash", "bulb gun", "bulb holder", "cube",),),
    (("babies", "baby", "born", "crib", "infant", "maternity ward", "neonat", "old", "preemie",),),
    (("eye", "face", "nose",),),
    (("bird", "cat", "dog", "foal", "hamster", "horse", "kitten", "owl", "parrot", "pet", "pony", "puppy", "rabbit",), ("flash", "flashing", "photograph", "shoot", "strob",),),
    ((" eye", " the bulb", " the flash", " the head", " the lamp", " the light", " the strobe", " the tube", "blind her", "blind him", "blind me", "blind my", "blind people", "blind somebody", "blind someone", "blind the ", "blind them", "blind you", "blinded", "dazzl", "eye damage", "eye injury", "eye strain", "image", "retina",),),
    (("cataract", "eye disease", "eye op", "eye operation", "eye surgery", "glaucoma",),),
    (("multi", "shoe", "volt", "voltage", "volts",),),
    (("flash", "pack", "speedlight", "strobe", "unit",), ("digital", "dslr", "mirrorless", "modern", "new",),),
    (("blow up", "cook", "damage", "fried", "fry", "frying", "kill", "ruin", "wreck",), ("camera", "dslr", "shoe",),),
    (("dunk", "lake", "pool", "puddle", "rain", "river", "sea", "soak", "water", "wet",), ("drop", "dunk", "fall", "fell", "get", "got", "soak", "went",),),
    (("bath", "damp", "drizzl", "pool", "pour", "puddle", "rain", "river", "slipway", "splash", "water", "wet",), ("cable", "extension", "generator", "mains", "plug", "socket", "studio flash", "studio head", "studio light", "studio monolight", "studio pack", "studio strobe", "studio unit", "wall",),),
    (("dive", "diving", "submerg", "water",),),
    (("damp", "drizzl", "pour", "rain", "snow", "splash", "spray", "storm", "water", "wet",), ("flash", "gear", "head", "kit", "light", "lights", "monolight", "pack", "shoot", "speedlight", "strobe", "unit", "work",),),
    (("bath", "harbour", "hot tub", "jetty", "lake", "pond", "pontoon", "pool", "river", "sea",), ("flash", "gear", "head", "kit", "light", "lights", "monolight", "pack", "speedlight", "strobe", "unit",),),
    (("cold to warm", "condens", "fog", "moisture",),),
    (("capacitor", "flash", "head", "inside", "monolight", "pack", "speedlight", "strobe", "tube", "unit",), (" off", "apart", "chang", "disassembl", "dismantl", "diy", "fix", "mend", "open", "repair", "replac", "solder", "swap", "unscrew",),),
    (("capacitor", "charge",), ("apacitor", "harge",),),
    (("electrocut", "jolt", "shock", "shocked me", "tingl", "zap", "zapp",),),
    (("broken", "chip", "crack", "dent", "smash", "split",), ("body", "case", "casing", "flash", "head", "housing", "strobe", "tube",),),
    (("attic", "decade", "drawer", "loft", "long time", "storage", "stored", "unused", "year",), ("flash", "head", "monolight", "pack", "strobe",),),
    (("adapter", "adaptor", "daisy", "extension", "multi", "power board", "power strip", "reel",),),
    (("generator", "genny", "inverter",),),
    (("cable", "cord", "lead", "wire",), ("across", "aisle", "door", "floor", "guest", "path", "people", "trip", "walk",),),
    (("breaker", "earth leakage", "fuse", "gfci", "ground fault", "rcd", "residual current",),),
    (("arcing", "bare wire", "damaged cable", "damaged cord", "damaged lead", "damaged plug", "fray", "loose plug", "spark", "sparking", "taped up cable", "taped up lead", "worn cable", "worn cord", "worn lead",),),
    (("balloon", "bloated", "bulg", "crush", "dent", "drop", "expand", "hiss", "pillow", "puff", "punctur", "swell", "swollen",), ("aa", "batter", "cell", "ion", "lipo", "lithium", "nimh", "pack",),),
    (("acid", "corro", "crust", "goo", "green", "gunk", "leak", "white powder",), ("aa", "batter", "cell", "ion", "lipo", "lithium", "nimh", "pack",),),
    (("aeroplane", "airline", "airplane", "airport", "cabin", "carry", "checked", "flight", "flights", "fly", "flying", "hold bag", "luggage", "plane", "suitcase",), ("aa", "batter", "cell", "flash", "ion", "lipo", "lithium", "nimh", "pack",),),
    (("charg",), ("bed", "car", "cold", "freez", "hot", "hotel", "leave", "leaving", "overnight", "safe", "sleep", "unattended", "warm",),),
    (("different brands", "different kinds", "different makes", "different types", "mix", "nimh with", "old and new", "together",), ("aa", "batter", "cell", "ion", "lipo", "lithium", "nimh", "pack",),),
    (("burning", "hot", "overheat", "warm",), ("aa", "batter", "cell", "ion", "lipo", "lithium", "nimh", "pack",),),
    (("volt",), ("check", "find out", "know", "measur", "test",),),
    (("adapt", "isolat", "optical slave", "radio trigger", "safe", "slave cell",), ("camera", "flash", "pack", "strobe", "voltage",),),
    (("flash", "pack", "speedlight", "strobe", "sync", "trigger",), ("body", "camera", "dslr", "mirrorless", "shoe", "slr",),),
    (("burning smell", "caught fire", "flame", "melt", "on fire", "scorch", "singe", "singed", "singing", "smell", "smoke", "smoked", "smokes", "smoking", "smoulder", "spark",), ("bulb", "cloth", "diffuser", "filter", "flash", "gel", "head", "lamp", "light", "pack", "paper", "smell", "snoot", "softbox", "strobe", "tissue", "tube", "umbrella", "unit",),),
    (("cloth", "cover", "curtain", "drap", "fabric", "foil", "gel", "handkerchief", "hankie", "lining", "muslin", "napkin", "paper", "parchment", "plastic", "scarf", "silk", "tissue", "towel", "wrap",), ("bulb", "flash", "halogen", "head", "hot light", "lamp", "model", "tube", "tungsten",),),
    (("aerosol", "dust", "explosive", "firework", "flammable", "fuel", "fume", "gas", "gasoline", "hay", "petrol", "sawdust", "solvent", "spray", "straw", "thinners", "vapo", "varnish",), ("flash", "head", "light", "lights", "speedlight", "strobe",),),
    (("danger", "fire", "risk", "safe",), ("candle", "costume", "curtain", "decoration", "drape", "exit", "extinguisher", "fire exit", "sprinkler", "veil",),),
    (("collapsed", "convuls", "fit", "seizure",),),
    ((" second", "epilep", "fit", "hertz", "hz", "photosensitiv", "seizure", "strobe mode", "strobo", "trigger",), ("burst", "flashes", "flashing", "flicker", "hertz", "hz", "multi", "pops", "repeat", "strobe", "strobe at", "strobe mode", "strobing", "strobo", "times",),),
    (("epilep", "photosensitiv", "seizure",),),
    (("ballast", "sand", "weigh", "weight",), ("bag", "boom", "c-stand", "enough", "light", "lights", "safe", "softbox", "stand", "stands", "umbrella",),),
    (("blow", "breez", "gale", "gust", "storm", "wind", "windy",), ("boom", "brolly", "flash", "light", "octa", "reflector", "softbox", "stand", "umbrella",),),
    (("boom", "flash", "head", "light", "lights", "softbox", "stand", "strobe",), ("above head", "above her", "above him", "above people", "above the ", "above them", "above us", "beam", "boom", "ceiling", "hang", "hung", "overhead", "rafter", "suspend", "truss",),),
    (("children", "crowd", "dance floor", "dancer", "dog", "guest", "kid", "pavement", "public", "sidewalk", "toddler",), ("cable", "head", "light", "softbox", "stand", "tripod",),),
    (("boom", "stand", "tripod",), ("anchor", "blow", "fall", "knock", "secur", "stab", "stead", "tip", "toppl", "upright", "weight",),),
    (("collaps", "fallen", "fell", "has tipp", "toppl", "unstable", "wobbl",), ("boom", "head", "light", "softbox", "stand", "tripod",),),
    (("bulb", "bulbs", "cube",), ("blow up", "burst", "cover", "crack", "explod", "face", "glass", "shatter", "shield",),),
    (("bulb", "cube",), ("bulb", "bulbs", "cube",),),
    (("bulb", "bulbs",), ("burn", "cool", "eject", "fire", "hot", "remov", "touch",),),
    (("bulbs", "cube",), ("accident", "by itself", "carry", "plane", "pocket", "post", "radio", "static", "stor", "transport",),),
    (("bulb", "cube",), ("flash",),),
    (("flash", "head", "pack", "pops", "speedlight", "strobe", "tube", "unit",), ("burst", "continuous", "cool", "fast", "in a row", "many pops", "overheat", "rapid", "thermal", "too hot",),),
    (("burn", "handle", "hot", "touch",), ("barn", "bulb", "dish", "grid", "head", "lamp", "model", "reflector", "snoot", "tube",),),
    (("halogen", "hot light", "ing lamp", "tungsten",), ("cover", "gel", "inside", "leave", "leaving", "left", "snoot", "softbox", "umbrella", "unattended",),),
    (("babies", "baby", "born", "infant", "neonat", "preemie", "premature",), ("hospital", "incubator", "intensive care", "neonat", "preemie", "premature", "special care", "ward",),),
    (("babies", "baby", "born", "infant", "old", "toddler",), ("blind", "eye", "flash", "harm", "head", "hurt", "light", "lights", "safe", "speedlight", "strobe",),),
    (("animal", "bat", "bird", "cat", "cow", "deer", "dog", "fish", "foal", "hamster", "horse", "kitten", "livestock", "owl", "pet", "ponies", "pony", "pupp", "rabbit", "reptile", "swan",), ("blind", "eye", "flash", "harm", "hurt", "safe", "startl", "strobe",),),
    (("actor", "athlete", "climber", "cox", "cyclist", "driver", "driving", "gymnast", "performer", "pilot", "rider", "rower", "traffic",), ("blind", "dazzl", "flash", "strobe",),),
    (("flash", "lamp", "light", "model", "strobe", "tube",), ("bare tube", "look", "stare", "stared", "stares", "staring", "uv", "violet", "without ",),),
    (("blurr", "dazzled", "image", "sight", "spot", "t see", "vision",), ("eye", "flash", "strobe",),),
    (("eye", "face",), ("centimet", "close", "cm", "in her", "in his", "in my", "in somebody's", "in someone's", "in the", "in their", "in your", "inch", "macro", "near", "ring",),),
    (("blind", "eye", "eyesight", "retina", "sight", "vision",), ("flash", "light", "speedlight", "strobe",),),
    (("danger", "dangerous", "hazard", "risk", "safe", "safely", "safety",), ("advice", "basic", "briefing", "checklist", "dangers", "hazards", "know about", "precaution", "risks", "rule", "teach", "tell my", "tell the", "tip",),),
    (("best", "safe", "safely", "safest",), ("beach", "field", "garden", "lawn", "outdoor", "outside", "slipway",),),
)

MOST_KEPT = 3000
"""Words whose rules are kept: people say the same words again."""



def _by_stem(*, several: bool) -> dict[str, tuple[int, ...]]:
    """The letters of each rule's first set, those of several words or those of one, and whose they are."""
    found: dict[str, tuple[int, ...]] = {}
    for number, rule in enumerate(RULES):
        for stem in rule[0]:
            if (" " in stem) is several:
                found[stem] = (*found.get(stem, ()), number)
    return found


_IN_ONE_WORD = _by_stem(several=False)
_IN_SEVERAL = _by_stem(several=True)
_of_word: dict[str, tuple[frozenset[int], tuple[str, ...]]] = {}


def may_concern_safety(text: str) -> bool:
    """Whether the safety tables could hear anything in this text; True when in doubt.

    >>> may_concern_safety("guide number 110 feet, 7 feet, ISO 200"), may_concern_safety("it's raining")
    (False, True)
    """
    if not text.isascii():
        return True
    words = text.lower().split()
    rules: set[int] = set()
    said = " ".join(words)
    for word in words:
        whole, begun = _of_word.get(word) or _learnt(word)
        if whole:
            rules |= whole
        for stem in begun:
            if stem in said:
                rules.update(_IN_SEVERAL[stem])
    return any(all(any(stem in said for stem in group) for group in RULES[rule][1:]) for rule in rules)


def _learnt(word: str) -> tuple[frozenset[int], tuple[str, ...]]:
    """The rules that this word may be heard by, and the letters of several words that may begin with it."""
    if len(_of_word) >= MOST_KEPT:
        _of_word.clear()
    whole = frozenset(rule for stem, rules in _IN_ONE_WORD.items() if stem in word for rule in rules)
    found = _of_word[word] = whole, tuple(stem for stem in _IN_SEVERAL if _may_begin(word, *stem.split(" ")[:2]))
    return found


def _may_begin(word: str, first: str, second: str) -> bool:
    """Whether such letters, "different kinds" or " the head", may begin in or before this word."""
    return word.endswith(first) if first else word.startswith(second)

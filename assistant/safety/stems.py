"""Letters without which no hazard is heard: a text with none of them need not wait for the safety tables.

Made from the patterns of those tables; a test holds the two together and says how to make it anew.
"""

from __future__ import annotations

STEMS = (
    " aisle", " deck", " doorway", " finger", " floor", " ground", " hand", " in the wall", " outlet", " path", " second", " skin",
    " socket", " walkway", "above her", "above him", "above people", "above the ", "above them", "above us", "acid", "actor", "adapt", "aerosol",
    "against", "airport", "animal", "apart", "arcing", "athlete", "attic", "babies", "baby", "bale", "ballast", "balloon",
    "barn", "bat", "beam", "best", "bird", "blew", "bloated", "blow", "blurr", "blustery", "boom", "born",
    "breaker", "breez", "broken", "bulb", "bulg", "bumping", "burn", "burst", "cabin", "cable", "capacitor", "carry",
    "cat", "caught ", "charg", "charred", "checked", "children", "chip", "circuit", "close to", "cloth", "collaps", "condens",
    "convuls", "cook", "cord", "corro", "cover", "cow", "cox", "crack", "crib", "crowd", "crush", "crust",
    "cube", "curtain", "daisy", "damage", "damp", "dancer", "dancing", "danger", "dazzl", "decade", "deer", "dent",
    "different brands", "different kinds", "different makes", "different types", "dive", "diving", "dog", "drap", "drawer", "drenched", "dripping", "driving",
    "drizzl", "drop", "dry grass", "dunk", "dust", "electrocut", "epilep", "expand", "explosive", "extension", "eye", "fabric",
    "face", "fallen", "fan ", "fell", "fire", "fish", "fit", "flame", "flammable", "flash", "flooded", "fly",
    "foal", "fog", "foil", "fray", "fried", "fry", "fuel", "fume", "fuse", "gale", "gas", "gel",
    "generator", "genny", "gfci", "glaucoma", "goo", "green", "ground fault", "guest", "gunk", "gust", "gymnast", "halogen",
    "hamster", "handkerchief", "handle", "hang", "hankie", "harbour", "has tipp", "hay", "hazard", "head", "heavy", "hertz",
    "hiss", "horse", "hot", "hung", "hz", "image", "infant", "inside", "inverter", "isolat", "jacuzzi", "jetty",
    "jolt", "jumping", "kid", "kill", "kitten", "knee", "lake", "lamp", "lead", "leak", "li", "loft",
    "long time", "luggage", "mains", "maternity ward", "melt", "mix", "model", "moisture", "multi", "napkin", "neonat", "next to",
    "nimh with", "nose", "old", "optical slave", "overheat", "overnight", "owl", "pack", "paint", "paper", "parchment", "parrot",
    "pavement", "performer", "pet", "pillow", "pilot", "plane", "plastic", "playing", "plug", "pond", "ponies", "pontoon",
    "pony", "pool", "pops", "pour", "power board", "power strip", "power supply", "preemie", "premature", "puddle", "puff", "punctur",
    "pupp", "rabbit", "racing", "rafter", "rain", "rcd", "reel", "repeat", "reptile", "residual current", "resting on", "retina",
    "rider", "rig", "risk", "river", "rower", "ruin", "running", "s edge", "safe", "sand", "scalding", "scarf",
    "scorch", "sea", "seizure", "shock", "shoe", "shower", "sidewalk", "sight", "silk", "singe", "singing", "slave cell",
    "sleet", "smash", "smell", "smok", "smoulder", "snow", "soak", "spark", "splash", "spot", "spray", "sprinkler",
    "squall", "stand", "storage", "stored", "storm", "straw", "stream", "strobe", "strobing", "strobo", "strong ", "submerg",
    "suitcase", "surf", "suspend", "swan", "swell", "swollen", "sync", "t see", "tall ", "taped over", "tearing", "thermal cut",
    "thermal protect", "thinners", "tingl", "tipped", "tissue", "to bits", "to pieces", "toddler", "together", "toppl", "touch", "towel",
    "traffic", "tripod", "truss", "tube", "tungsten", "unattended", "under", "unit", "unstable", "unused", "vapo", "varnish",
    "vent", "vision", "volt", "warm", "water", "weigh", "wet", "white powder", "wind", "wire", "wobbl", "wrap",
    "wreck", "year", "zap",
)


def may_concern_safety(text: str) -> bool:
    """Whether the safety tables could hear anything in this text; True when in doubt.

    >>> may_concern_safety("guide number 110 feet, 7 feet, ISO 200"), may_concern_safety("it's raining")
    (False, True)
    """
    if not text.isascii():
        return True
    said = " ".join(text.lower().split())
    for stem in STEMS:  # a plain loop: this is asked of every question
        if stem in said:
            return True
    return False

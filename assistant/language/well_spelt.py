"""Words that are typed right, whether or not they mean anything here: none of them is a slip for another."""

from __future__ import annotations

PATTERN_WORDS = (
    "actually already almost always ambient another backdrop background because become becomes before behind between bounce bounced brighter camera ceiling children closed closer combined compare "
    "compensate correct counted couple darker daylight difference different doubled double enough equal equals estimate exactly extra farther faster focused foreground friend friends furthest further halved "
    "height higher highest hundredths increase instead largest layers loaded longer lower lowest matters maximum measured metered meters metres middle minimum moved moving nearer nearest never normally number "
    "opened otherwise outdoors overcast overexposed overexposure parallel people perfect photograph precisely previous pulled pushed quicker rated rather reading reads really reduce required restate right "
    "second sensitive separate separately shadow sharpness sheets shorter shutter single slower smaller smallest sometimes stands stopped straight subject survive thought through together transmits turned turning "
    "twice underexposed underexposure unknown unchanged usually wanted weaker weakest window without wonder wrong yesterday"
).split()
"""Words that rules look for in the text, most of which are not in the lexicon. Two neighbouring letters changed about make hardly ever another word."""

WELL_SPELT = frozenset(
    (
        "beater blaming boxing buster butler casing chancel coasts complete contact dagger decoded doubling dripped dumping easing editing feather feathers forge framers fritter hitter hopping lacked landing leaver licking locket loving "
        "marching massing messing neater palates parson pasting planes planting plushes pooling pulsing punting racking recent sacking saving scaled scanning scatter scored scrape setter shingle shipping shouting singe "
        "sites skinning slapped sliver slopped smacking sparse spring springs sprint starting starving steaks stoke storing stranger synching tapping tasted tester trough trucking turner typing varnish waiter weaver winder winnow winnows wishes"
    ).split()
)
"""Words that are typed right, though one letter makes them a word of the trade: a stranger is not stronger, and a trough leads nothing through."""

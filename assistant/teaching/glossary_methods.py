"""Explanations of how and when a thing is done: bounce, painting with light, converting, choosing a contact."""

from __future__ import annotations

from assistant.teaching.glossary_entry import COMMON, NAVY, PHOTOMETRY, Why, why

METHODS: tuple[Why, ...] = (
    why("bounce method", (r"\b(?:bounc\w*)\b", r"\b(?:ceilings?|walls?|flash\w*|light|picture|photo)\b"),
        "Bouncing turns the ceiling or wall into one large light, so shadows grow soft and the light spreads more evenly over the room, coming from above or from the side. Tilt the head so that the light lands in front of the subject, count the whole path from flash to ceiling to subject as the distance, and open about one and a half to two stops more for a white surface. Coloured paint tints the picture, and a high or dark ceiling gives back too little.",
        NAVY + "; " + COMMON, "how do I bounce flash off a ceiling?"),
    why("painting method", (r"\b(?:paint\w* with (?:the )?(?:light|flash)|light[- ]paint\w*|open flash)\b", r"\b(?:how|explain|method|steps?)\b"),
        "Put the camera on a tripod in the dark, lock the shutter open on B, and fire the flash by hand at each part of the scene from the same distance, out of the camera's sight. Set the aperture for one pop: guide number over distance. Where pops overlap they add, two being one stop more.",
        NAVY + "; " + COMMON, "how do I paint with light in a dark boathouse?"),
    why("convert a guide number", (r"\b(?:gn|guide (?:number|no)s?)\b", r"\bfeet\b|\bft\b|\bfoot\b", r"\bmet(?:re|er)s?\b", r"\b(?:how|convert\w*|change|turn)\b"),
        "Multiply a guide number in metres by 3.28 to have it in feet, or divide one in feet by 3.28 to have it in metres. Then use it with distances in that unit.",
        "international yard and pound agreement, 1959 (a foot is 0.3048 m)", "how do I convert a guide number from feet to metres?"),
    why("when fill flash", (r"^(?!.*\b(?:nd|neutral|leaf|sensor|auto\w*|fool|background|ratio)\b).*\bfill\w*\b", r"\b(?:when|why)\b", r"\b(?:use|used|need|bother|want|for)\b"),
        "Use fill flash where the daylight leaves the face in shadow: high sun, a hat brim, light from behind, or a window at the back. Set the exposure for the daylight and let the flash come one to two stops weaker.",
        COMMON, "when should I use fill flash?"),
    why("flash exposure", (r"\bexposures?\b", r"\bflash\w*\b", r"\bhow (?:does|do)\b.*\bworks?\b"),
        "A flash gives one short burst of light, so the shutter time does not count for it within sync speed. The distance from flash to subject, its power, the film speed and the aperture decide: divide the guide number by the distance and set that f-number.",
        NAVY + "; " + PHOTOMETRY, "how does exposure work with flash?"),
    why("name of the guide number", (r"\b(?:gn|guide (?:number|no)s?)\b", r"\b(?:called|name\w*|have|exist\w*|at all|need)\b", r"\bwhy\b"),
        "It guides you to the aperture: divided by the distance from flash to subject, it gives the f-number. It is one number because distance and f-number change together, twice the distance needing half the f-number.",
        PHOTOMETRY, "why is it called a guide number?"),
    why("flat light", (r"\bflat\b", r"\b(?:flash\w*|shots?|pictures?|photos?|light\w*|portraits?)\b", r"\bwhy\b|\bhow\b|\bavoid\b"),
        "A flash beside the lens lights everything from the front, so no shadow shows the shape of the subject. Move the flash to one side and higher, on a cord or by bounce, and let a weaker fill open the shadows.",
        COMMON, "why do my flash shots look flat?"),
    why("fall-off with distance", (r"\b(?:fall\w*|drop\w*|fad\w*|di(?:e|es|ed|ing)|weak\w*)[ -]?(?:off|away|out|so|quickly|fast|with)", r"\b(?:flash\w*|lights?|strobes?)\b"),
        "A flash is a small source, so its light spreads as it travels: at twice the distance it covers four times the area and each spot gets a quarter, two stops less. Close to the flash that is a matter of inches; farther back the same step matters less, so a light that stands back lights more evenly.",
        PHOTOMETRY, "why does light from a flash fall off so fast?"),
    why("root of two", (r"\b1[.,]4\d*\b|\broot (?:of )?(?:two|2)\b", r"\b(?:why|where|come from|explain|multipl\w*|divid\w*)\b"),
        "1.4 is the square root of two. Light goes with the square of the f-number, of the distance and of the guide number, so one stop, twice or half the light, is 1.4 times in each of them.",
        PHOTOMETRY, "where does 1.4 come from?"),
    why("one light portrait", (r"\bportraits?\b", r"\b(?:one|single|1) (?:flash|light|head|strobe|speedlight)\b", r"\bhow\b"),
        "Put the flash about 45 degrees to one side and above the eyes, as close as the frame allows, and soften it by an umbrella, a softbox or bounce. Set a reflector on the other side for the shadows. Then divide the guide number by the distance from flash to face, take off the loss, and set that f-number.",
        COMMON, "how do I light a portrait with one flash?"),
    why("manual flash method", (r"\b(?:manual|old|simple|plain) flash\w*\b", r"\b(?:easiest|simplest|best|how|way)\b", r"\b(?:expos\w*|set|use|start)\b"),
        "Divide the guide number by the distance from flash to subject: that is the f-number, at the film speed the number is for. Keep the flash at one distance and you need only one f-number. Take off the losses of modifiers, and bracket the first roll.",
        NAVY + "; " + COMMON, "what's the easiest way to expose with a manual flash?"),
    why("how long a flash lasts", (r"\bhow long\b", r"\bflash(?:es)?\b", r"\bhow long (?:is|does|are|do) (?:a |the |an )?(?:\w+ )?flash(?:es)?(?: last)?\W*$"),
        "About 1/200 s to 1/1000 s at full power on a shoe flash, and far less turned down. Makers quote it as t0.5 or t0.1; t0.1 tells better what will freeze.",
        COMMON, "how long does a flash last?"),
)

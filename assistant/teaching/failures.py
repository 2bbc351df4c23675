"""Failures of flash pictures: how they are described, what causes them, what to check next."""

from __future__ import annotations

from assistant.records import record
from assistant.teaching.glossary_entry import COMMON, NAVY, PHOTOMETRY


@record
class Failure:
    """One failure. All of `hears` must be found; `stops` is the usual error, positive = over."""

    name: str
    hears: tuple[str, ...]
    causes: tuple[str, ...]
    check: str
    source: str
    example: str
    stops: float | None = None


_UNDER = r"\b(?:thin\w*|dark\w*|under(?:exposed|exposure| exposed)?|black|blank|weak|muddy|murky|dim|clear|empty|too little light)\b"
_OVER = r"\b(?:over ?expos\w*|too (?:bright|light|pale|white|hot)|burn(?:t|ed)|blown|bleached|chalky|cooked|nuked|washed|dense|white|blocked|paper white)\b"
_ALTERNATE = r"\b(?:every (?:second|other|third|few)|next (?:one|two|three|few|frames?|shots?)|alternate\w*|some (?:of|frames|shots|pictures|are|were|came)|now and then|at random|randomly|one in (?:two|three|four)|patchy|erratic|second (?:frame|shot|one)|in a row|in quick succession|sequence|intermittent\w*)\b"
_SLIDE = r"\b(?:slides?|transparenc\w*|chromes?|trannies|reversal)\b"
_NEGATIVE = r"\b(?:negs?|negatives?)\b"
_ALL = r"\b(?:all|whole|entire|every|everything|each|roll|negs|negatives|slides|pictures|shots|frames|photos|they|portraits)\b"

FAILURES: tuple[Failure, ...] = (
    Failure("fired before recycled", (_ALTERNATE, _UNDER + r"|\b(?:properly exposed|are fine|is fine|is right)\b"),
            ("the flash fired before it had recycled, which costs a stop at half charge", "tired or cold batteries", "a sync lead or slave that misses now and then"),
            "Wait several seconds past the ready light, fit fresh cells, and fire ten times in a row off the camera to see whether it keeps up.",
            PHOTOMETRY + "; " + COMMON, "every second frame is thin", -1.0),
    Failure("fired at the ready light", (r"\b(?:ready|lamp|light comes on|beep\w*|whine|neon|glows?|recycl\w*|wait\w*|straight away|rapid\w*)\b", r"\b(?:soon as|right (?:as|when|after)|moment|don'?t wait|do not wait|didn'?t wait|not wait\w*|without waiting|quick\w*|straight away|instant\w*|immediately|just as|rapid\w*|hardly wait)\b", r"\b(?:uneven\w*|differ\w*|vary|varies|varied|inconsisten\w*|patchy|not the same|unequal|dark\w*|thin\w*|under\w*|weak\w*|dim\w*)\b"),
            ("the flash was not fully charged: the ready light may come on at about three quarters of the charge, 0.4 stop short", "tired or cold batteries, which take longer still"),
            "Wait a few seconds past the ready light, as long again as it took to come on, and every frame gets the same light.",
            COMMON, "my frames are uneven when I shoot right as the ready light comes on", -0.4),
    Failure("some frames not fired", (_ALTERNATE + r"|\bhalf (?:of )?the (?:frames|shots|pictures|roll)\b", r"\b(?:go off|fire|completely|totally|fully|no flash|didn't fire|did not fire|nothing|unlit)\b"),
            ("the flash missed those frames: a loose sync lead, dirty contact or slave that did not see the master", "it had not recycled at all"),
            "Wiggle the lead while firing with the shutter open and an empty camera, clean the contacts, and wait longer between frames.",
            COMMON, "some frames had no flash at all", None),
    Failure("above sync speed", (r"\b(?:half|part|third|strip|band|bar|stripe|bottom|top|side|one (?:side|edge|end))\b", r"\b(?:black|dark|blank|clear|transparent|unexposed|missing|not lit|unlit|nothing|cut off)\b", r"\b(?:frames?|negs?|negatives?|pictures?|shots?|photos?|slides?|images?|film|exposures?|exposed|roll)\b"),
            ("the shutter was faster than the sync speed, so the flash lit only the open part of the frame", "the flash was plugged into the wrong contact (FP or M)", "something stood in front of the flash"),
            "Set the sync speed or slower (1/60 is safe on many older film cameras) and look through the open back while it fires: you should see the whole frame lit.",
            COMMON, "half the frame is black"),
    Failure("flash did not fire", (r"\b(?:all|whole|every|entire|completely|totally|everything|roll|nothing)\b", r"\b(?:black|blank|clear|empty|nothing|no (?:image|picture)|unexposed)\b", r"^(?!.*\b(?:backgrounds?|behind|band|half|corners?|edges?|eyes?|strip|every (?:second|other|third)|alternate|some)\b).*\b(?:frames?|negs?|negatives?|pictures?|shots?|photos?|slides?|images?|film|roll|exposures?)\b"),
            ("the flash did not fire with the shutter: a dead lead, dirty shoe contact, or the switch on M instead of X", "the film did not pass through the camera", "the lens cap, or a far too small aperture"),
            "Open the empty back, look through at the flash on B and at the sync speed, and fire. Clear negatives with no frame numbers mean bad developing, not bad exposure.",
            COMMON, "the whole roll is blank"),
    Failure("slides over", (_SLIDE, r"\b(?:pale|washed|too (?:light|bright|pale)|over ?expos\w*|thin|burn(?:t|ed)|blown|bleached|clear|white)\b"),
            ("too much light: slides come out pale when over", "the guide number was in the other unit or for another film speed", "the flash was nearer than you measured", "power left a stop or more too high"),
            "Close down a stop for the next test. Check feet against metres and the film-speed setting, then bracket by half stops.",
            COMMON, "all my slides are pale"),
    Failure("slides under", (_SLIDE, r"\b(?:dark\w*|under ?expos\w*|black\w*|dense|muddy|murky)\b"),
            ("too little light: slides come out dark when under", "a modifier or bounce loss that was not counted", "the distance measured from the camera and not from the flash", "a guide number that promises more than the flash gives"),
            "Open up a stop for the next test, and test the flash's own guide number with your modifier on it.",
            COMMON, "my slides came out too dark"),
    Failure("negatives thin", (r"\bthin\w*\b|\b(?:no shadow detail|empty shadows)\b|" + _NEGATIVE + r".{0,60}\b(?:pale|light|clear|see[- ]through|transparent|under\w*|weak|faint)\b",),
            ("too little light: a thin negative is an underexposed one", "a guide number that promises more than the flash gives, above all outdoors", "losses of an umbrella, softbox, bounce, filter or bellows that were not counted", "flash not fully recycled", "film underdeveloped, if the frame numbers are pale too"),
            "Open up one stop for the next test. Then look at the edge numbers: pale numbers point to developing, strong ones to exposure.",
            COMMON, "all my negatives are thin"),
    Failure("negatives dense", (r"^(?!.*\bthin\b).*(?:\bdense\b|" + _NEGATIVE + r".{0,60}\b(?:dark|black|over\w*|heavy|thick)\b)", _NEGATIVE + r"|\b(?:film|roll|frames?|shots?|sheets?|exposures?|all)\b"),
            ("too much light: a dense negative is an overexposed one", "the guide number was in the other unit, or the film is faster than you set", "full power where a fraction was meant", "film overdeveloped, if the frame numbers are heavy too"),
            "Close down a stop for the next test. Negatives take two stops over or so, so the pictures may still print well.",
            COMMON, "the negatives are really dense"),
    Failure("fall-off over the rows", (r"\b(?:back|rear|far|last|further|farther|end|behind)\b", r"\b(?:rows?|people|group|team|crew|ones|end|guests|choir|faces|side|boat|bow|stern)\b", r"\b(?:dark\w*|under\w*|thin\w*|dim\w*|lost|weak\w*|falls? off|black)\b"),
            ("the light falls with the square of the distance, so a row at 1.4 times the distance is one stop down, and at twice the distance two stops", "the beam did not cover the far side"),
            "Move the light back and higher, so that front and back are at nearly the same distance, and raise the power. Say the distances to the front and back rows for the number of stops.",
            PHOTOMETRY, "the back row is dark"),
    Failure("front too bright", (r"\b(?:front|foreground|nearest|near(?:er)?|closest)\b", _OVER + r"|\bbright\w*|\bhot\b"),
            ("the near part is closer to the flash, and at 0.7 of the distance it gets one stop more", "the flash points straight at the foreground"),
            "Move the light back or raise it and tilt it up, so that its edge feathers the foreground.",
            PHOTOMETRY, "the front row is too bright", 1.0),
    Failure("white faces", (r"\b(?:faces?|skin|forehead\w*|subjects?|bride\w*|people)\b", _OVER),
            ("too much flash on the near subject: it stood closer than you measured", "an auto-sensor flash that was misled by a dark background", "full power where a fraction was meant", "fill flash as strong as the daylight, which adds a stop"),
            "Measure from the flash to the face, close down or turn the power down a stop, and with an auto-sensor flash use manual.",
            COMMON, "the faces are burnt out white", 1.0),
    Failure("black background", (r"\b(?:backgrounds?|behind (?:them|him|her|us|it)|backdrop|room|wall|scenery)\b", r"\b(?:black(?! (?:velvet|paper|cloth|card|wall|seamless|curtain|drape|muslin))|dark\w*|pitch|lost|cave)\b"),
            ("the background is too far for the flash and the shutter too fast for the room's own light: at twice the distance it gets two stops less",),
            "Use a slower shutter, down to where hand or subject move, which leaves the flash part as it is; or light the background, or bring the subject nearer to it.",
            PHOTOMETRY, "the background is all black", -2.0),
    Failure("ghost beside the flash picture", (r"\b(?:ghost\w*|transparent|doubles?\b(?! page)|double (?:image|outline|edge|exposure)|doubled|two images|halo|trail\w*|smear\w*|streak\w*|blur\w*|second image|see[- ]through)\b",),
            ("the ambient light recorded as well: a blurred picture beside the sharp flash one", "the shutter was too slow for a moving subject or a hand-held camera"),
            "Use a faster shutter within sync speed, a smaller aperture with more flash, or less room light, until the room is three stops or more under.",
            COMMON, "there is a ghost next to the rower"),
    Failure("corners dark", (r"\b(?:corners?|edges?|vignett\w*|sides)\b", r"\b(?:dark\w*|black|vignett\w*|dim\w*|fall\w*|shad\w*)\b"),
            ("the flash beam is narrower than the lens sees", "a lens hood or deep filter in the way", "a flash too close to the lens barrel, which throws a shadow"),
            "Zoom the head wider, use a wide panel, bounce or step back; then take the hood off for a test. A wider beam has a lower guide number.",
            COMMON, "the corners are dark"),
    Failure("only part of the height lit", (r"\b(?:only|just)\b.{0,30}\b(?:top|bottom|upper|lower|middle|centre|center|one side|left|right)\b|\b(?:top|bottom|upper|lower|left|right) (?:half|part)\b", r"\b(?:lit|light|bright|exposed|flash)\b"),
            ("the flash is tilted or does not cover the lens", "at a close distance a flash on the shoe looks over the subject", "the shutter was faster than the sync speed, if the edge is straight"),
            "Tilt the head toward the subject and use the wide panel. A straight sharp edge means sync speed; a soft one means aim or coverage.",
            COMMON, "only the top of the frame is lit"),
    Failure("red eyes", (r"\bred[- ]?eyes?\b|\beyes? (?:\w+ ){0,3}red\b",),
            ("the flash was too near to the lens, so light came straight back from the retina",),
            "Move the flash 12 to 14 inches (30 to 35 cm) from the lens, bounce it, or brighten the room.",
            COMMON, "everybody has red eyes in the pictures"),
    Failure("colour cast", (r"\b(?:orange|yellow\w*|green\w*|blue\w*|pink\w*|magenta|red(?:dish)?|cast|tint\w*|warm|cold)\b", r"\b(?:cast|tint\w*|pictures?|photos?|prints?|slides?|shots?|skin|faces?|background|everything|frames?|too)\b", r"^(?!.*\beyes?\b).*\b(?:orange|yellow\w*|green\w*|blue\w*|pink\w*|magenta|red(?:dish)?|cast|tint\w*|warm|cold)\b"),
            ("light of two colours: household lamps come out orange and some tubes green on daylight film", "bounce off a coloured ceiling or wall", "an old softbox or umbrella that has yellowed", "an uncoated flash tube, which is bluish"),
            "Look where the cast is: all over means the flash, its cloth or the ceiling; only the background means the room light. Gel the flash to match the room, or use a faster shutter to shut the room out.",
            COMMON, "the pictures have an orange cast"),
    Failure("umbrella or box not counted", (r"\b(?:umbrella|brolly|soft ?box\w*|octa\w*|diffus\w*|dome|scrim|grid|snoot|gel)\b", _UNDER),
            ("the loss of the modifier was not counted: two stops is typical for an umbrella or softbox", "the distance was measured from the flash head and not along the light's path"),
            "Open up two stops, or test it: bare and with the modifier, at the same distance, and count the stops between.",
            COMMON, "everything shot with the umbrella is dark", -2.0),
    Failure("bounce not counted", (r"\b(?:bounc\w*|ceiling)\b", _UNDER),
            ("the loss of the bounce was not counted: count the whole path as the distance, and then one and a half to two stops for a white ceiling", "a high, dark or coloured ceiling", "the flash still zoomed long"),
            "Open up two stops for the next test and bracket by a stop. Zoom the head to the middle of its range.",
            NAVY + "; " + COMMON, "all the bounced shots are thin", -2.0),
    Failure("close-ups dark", (r"\b(?:close[- ]?ups?|macros?|bellows|tubes|life[- ]?size)\b", _UNDER),
            ("the bellows or tubes cost light: at life size two stops", "a flash a few centimetres away, where the guide number no longer holds", "the lens barrel shaded the subject"),
            "Open up by extension over focal length, squared: two stops at life size, a little over one at half life size. Then bracket.",
            "Bellows factor question and answer copy", "my close-ups are too dark", -2.0),
    Failure("filter not counted", (r"\b(?:filters?|polari[sz]\w*|nd|neutral density)\b", _UNDER),
            ("the filter was not counted for the flash: it takes the same number of stops from flash as from daylight", "two filter factors were added where they must be multiplied"),
            "Open up by the filter's stops: factor 2 is one, 4 is two, 8 is three.",
            "Photographic Lighting: Essential Skills", "the shots with the polariser are dark"),
    Failure("weaker outdoors", (r"\b(?:outdoors?|outside|at night|big hall|large hall|marquee|field|river ?bank)\b", _UNDER),
            ("no walls and ceiling to send stray light back: out of doors at night a flash gives up to a stop less", "the background is too far to be lit at all"),
            "Open up a stop, and test a guide number of its own for outdoors.",
            NAVY + " (from memory)", "the night shots outside are thin", -1.0),
    Failure("uneven", (r"\b(?:uneven\w*|one side|patch\w*|hot ?spots?|blotch\w*|lopsided|left side|right side)\b", r"\b(?:light\w*|lit|dark\w*|bright\w*|frame|background|pictures?|expos\w*|backdrop)\b"),
            ("one side is nearer to the light, and light falls with the square of the distance", "the beam does not cover the width", "two lights that overlap in the middle"),
            "Move the light back, feather it toward the far side, or use one light each side aimed across. For a backdrop, read or test both edges and the middle.",
            PHOTOMETRY, "the backdrop is lit unevenly"),
    Failure("over", (_ALL, _OVER),
            ("too much light: the guide number was in the other unit or the film is faster than you set", "full power where a fraction was meant", "flash and daylight added up, which is a stop when they are equal"),
            "Close down a stop or halve the power for the next test, and measure from the flash to the subject.",
            COMMON, "all the pictures are burnt out"),
    Failure("under", (_ALL, r"\b(?:dark\w*|under(?:exposed|exposure| exposed)|muddy|murky|dim)\b"),
            ("too little light: a guide number that promises more than the flash gives", "losses of a modifier, bounce, filter or bellows that were not counted", "the distance measured from the camera and not from the flash", "flash not fully recycled"),
            "Open up a stop for the next test, and find the flash's own guide number: distance times the f-number that looks best.",
            COMMON, "all my pictures are too dark"),
)

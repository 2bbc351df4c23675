"""The scales of the trade on which things are compared, one row a pair: which has more, and why."""

from __future__ import annotations

from collections.abc import Callable

from assistant import patterns
from assistant.records import record

COMMON = "common practice, no source"


@record
class Rank:
    """A quality, the words for more (`up`) and less (`down`) of it, what has more and what less, why, the source.

    `mark` gives a side's place by the number said of it, instead of `high` and `low`; `about` must be found in the whole.
    """

    up: str
    down: str
    high: str
    low: str
    sentence: str
    about: str = ""
    source: str = COMMON
    mark: Callable[[str], float | None] | None = None


# --- marks -----------------------------------------------------------------------------------------

_SHARES = {"full": 1.0, "max": 1.0, "half": 0.5, "quarter": 0.25, "eighth": 0.125, "sixteenth": 0.0625, "higher": 0.9, "high": 0.9, "lower": 0.4, "low": 0.4, "reduced": 0.4, "minimum": 0.01}


def _last(pattern: str, words: str) -> str | None:
    """The only such mark of the words; None where there is none, or more than one."""
    found = patterns.findall(pattern, words)
    return found[0] if len(found) == 1 else None


def power_mark(words: str) -> float | None:
    """The fraction of full power said.

    >>> power_mark("at 1/16 power"), power_mark("at full"), power_mark("two heads")
    (0.0625, 1.0, None)
    """
    found = _last(r"\b(full|max|half|quarter|eighth|sixteenth|higher|high(?!-?speed| speed)|lower|low|reduced|minimum|1/(?:2|3|4|5|6|8|10|16|32|64|128|256))\b(?! ?s(?:ec\w*)?\b)", words)
    if found is None:
        return None
    return _SHARES[found] if found in _SHARES else 1 / max(float(found[2:]), 1.0)


def speed_mark(words: str) -> float | None:
    """The film speed said, or fast and slow."""
    found = _last(r"\b(?:iso|asa|film|tri)?[- ]?(\d{2,4})\b|\b(?:fast|high[- ](?:speed|iso)|slow|low[- ](?:speed|iso))\b", words)
    if found:
        return float(found)
    fast, slow = patterns.search(r"\b(?:fast|high[- ](?:speed|iso))", words), patterns.search(r"\b(?:slow|low[- ](?:speed|iso))", words)
    return None if (fast is None) == (slow is None) else 10000.0 if fast else 1.0


def ratio_mark(words: str) -> float | None:
    """The larger side of a ratio to one."""
    found = _last(r"\b(\d+(?:\.\d+)?) ?(?::|to) ?(?:1|one)\b", words)
    return float(found) if found else None


def aperture_mark(words: str) -> float | None:
    """The f-number said."""
    found = _last(r"\bf ?/? ?(\d+(?:\.\d+)?)\b", words)
    return float(found) if found else None


def _minus(mark: Callable[[str], float | None]) -> Callable[[str], float | None]:
    """The same scale the other way round."""

    def turned(words: str) -> float | None:
        found = mark(words)
        return None if found is None else -found

    return turned


def zoom_mark(words: str) -> float | None:
    """The zoom setting in mm."""
    found = _last(r"\b(\d{2,3}) ?(?:mm)?\b", words)
    return float(found) if found else None


_WORDS = {"one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0, "eight": 8.0, "ten": 10.0, "half a": 0.5, "a": 1.0}


def place_mark(words: str) -> float | None:
    """How far off a light stands, in metres, where it is said to be "at" or "from" there.

    >>> place_mark("a softbox at five metres"), place_mark("a box of one metre")
    (5.0, None)
    """
    place = rf"\b(?:at|from) (?P<far>\d{{1,6}}(?:\.\d{{1,6}})?|{'|'.join(_WORDS)}) ?(?P<unit>m|met(?:re|er)s?|ft|feet|foot)\b"
    found = patterns.search(place, words)
    if found is None or patterns.search(place, words[found.end() :]):
        return None
    value = _WORDS[found["far"]] if found["far"] in _WORDS else float(found["far"])
    return value * (1.0 if found["unit"].startswith("m") else 0.3048)


# --- rows --------------------------------------------------------------------------------------------

_NEG = r"\b(?:neg|negs|negatives?|print film|colou?r print|c-?41)\b"
_SLIDE = r"\b(?:slides?|transparenc\w+|chromes?|reversal|trannies|e-?6)\b"
_FORGIVES = r"\b(?:forgiv\w*|latitude|tolera\w*|lenient|room for error|margin|handles?|copes?|takes?|puts? up with|survives?|withstands?|stands?|accepts?|kinder|easier)\b"
_FUSSY = r"\b(?:fuss\w*|critical|demanding|unforgiving|intolerant|touch(?:y|ier)|narrower|strict\w*|exact\w*|careful\w*|precis\w+|serious|visible|trick\w*)\b"
_BETTER = r"|\b(?:rather|happier|safer|better|prefers?)\b"
_HURTS = r"\b(?:hurts?|harm\w*|suffers?|damag\w*|ruin\w*|unforgiving|hates?|risk\w*|danger\w*|worse)\b"
_LATITUDE = "Slide film forgives about half a stop, and sooner under than over; negative film a stop or two over, and less under."
_OVER, _UNDER = r"\bover(?:[- ]?expos\w*)?\b|\btoo much\b", r"\bunder(?:[- ]?expos\w*)?\b|\btoo little\b"
_SOFTER, _HARDER = r"\b(?:soft(?:er|ness)?|gentler|smoother|more flattering|flattering|more gradual)\b", r"\b(?:hard(?:er|ness)?|harsh\w*|crisp\w*|sharper|sharp[- ]edged|contrasty|unflattering)\b"
_APPARENT = "Softness goes by how large the light looks from the subject: bigger and closer is softer, smaller and farther is harder."
_SPREAD = r"\b(?:soft ?box\w*|umbrell?as?|brolly|octa\w*|bounc\w+|diffus\w+|scrim|ceiling|shoot[- ]through|beauty dish|overcast|cloud\w*|open shade|window light)\b"
_BARE = r"\b(?:bare|direct|straight|naked|undiffused|unmodified|on[- ]camera|pop-?up|snoot\w*|spot\w*)\b"
_LIGHT = r"\b(?:more|less|as much|much|stronger) (?:of the |of your |flash )?(?:light|power|output|exposure|range|reach)\b|\b(?:bright\w*|efficien\w+|stronger|powerful|higher)\b"
_LOSS = r"\b(?:los\w+|costs?|eats?|absorbs?|wastes?|swallows?|weak\w*|dimmer|dark\w*|lower)\b"
_QUICK, _SLOW = r"\b(?:faster|quick\w*|sooner|shorter|speedier|speeds?|fast)\b", r"\b(?:slow\w*|longer|more time|later)\b"
_SHOE = r"^(?!.*\b(?:studio|monolights?|monobloc\w*|packs?|mains|voltage|iso|sync)\b).*\b(?:flash\w*|strobes?|speedlights??|pulse|duration|pop|burst|freez\w+)\b"
_DURATION = "A portable flash is cut off earlier at lower power, so it is shorter and freezes better than at full; some studio heads do the opposite, so look at the maker's table."

RANKS: tuple[Rank, ...] = (
    Rank(_FORGIVES + _BETTER, _FUSSY, _NEG, _SLIDE, _LATITUDE),
    Rank(_FORGIVES + _BETTER, _HURTS, _OVER, _UNDER, _LATITUDE, rf"^(?!.*{_SLIDE}).*{_NEG}"),
    Rank(_FORGIVES + _BETTER, _HURTS, _UNDER, _OVER, _LATITUDE, rf"^(?!.*{_NEG}).*{_SLIDE}"),
    Rank(r"\b(?:slow\w*|longer|more time)\b", r"\b(?:faster|quick\w*|shorter|sooner|less time)\b", "", "", "What the flash did not use stays in the capacitor, so the less power, the sooner it is ready again.", r"\brecycl\w*|\brecharg\w*|\bcharg\w*", mark=power_mark),
    Rank(r"\b(?:fast\w*|steep\w*|quick\w*|rapid\w*|stronger)\b", r"\b(?:slow\w*|gentl\w*|gradual\w*|even(?:ly)?)\b", r"\b(?:clos\w+|near\w*)\b", r"\b(?:far(?:ther)?|further|away|distant|back)\b", "Fall-off across the subject is fastest close to the light; with the light farther away the same depth makes a smaller difference.", r"\bfall(?:s|ing)?[- ]?off\b|\bdrops? off\b", "photometry"),
    Rank(r"\b(?:long(?:er)?|slow\w*)\b", r"\b(?:short\w*|brief\w*|quick\w*|faster|freez\w*|stops? (?:motion|movement|action)|sharper)\b", "", "", _DURATION, _SHOE, mark=power_mark),
    Rank(_QUICK + r"|\b(?:higher|better|any|all)\b", _SLOW + r"|\blower\b", r"\b(?:leaf|lens shutter|between[- ]the[- ]lens)\b", r"\b(?:focal[- ]?plane|curtain|cloth)\b",
         "A leaf shutter opens fully at every speed and syncs at all of them; a focal-plane shutter only up to its sync speed, often 1/60 to 1/250 s.", r"\b(?:sync\w*|flash|fill)\b"),
    Rank(_SOFTER, _HARDER, "", "", _APPARENT, mark=_minus(place_mark)),
    Rank(_SOFTER, _HARDER, r"\b(?:clos\w+|near\w*|big(?:ger)?|large\w*|wide\w*|huge)\b", r"\b(?:far(?:ther)?|further|away|distant|small(?:er)?|tiny|back|little)\b", _APPARENT),
    Rank(_SOFTER, _HARDER, r"\b(?:white|translucent|shoot[- ]through)\b", r"\bsilver\w*\b", "A silver lining mirrors the light and is a little harder; white cloth scatters it and is softer."),
    Rank(_SOFTER, _HARDER, _SPREAD, _BARE + r"|\bsun(?:light|shine)?\b", "An umbrella, a softbox or a bounce turns a small source into a large one, and a source that looks larger gives softer shadows.", r"^(?!.*\b(?:film|grain|contrast paper)\b)"),
    Rank(_LIGHT, _LOSS, r"\bsilver\w*\b", r"\b(?:white|translucent|shoot[- ]through)\b", "A silver lining throws more of the light forward than a white one or a shoot-through, often by half a stop to a stop, and is a little harder.", r"\b(?:umbrella|brolly|reflector|lining|soft ?box|ceiling|card|board|silver)\w*"),
    Rank(_LIGHT, _LOSS, _BARE, _SPREAD, "A modifier or a bounce spreads the light and swallows part of it: about two stops less than the bare flash aimed straight is typical."),
    Rank(r"\b(?:longer|larger|bigger|greater|more)\b", r"\b(?:short\w*|small\w*|brief\w*|quick\w*)\b", r"\bt ?0?\.1\b", r"\bt ?0?\.5\b", "t0.1 is the longer of the two: for an exponential discharge it is 3.32 times t0.5.", "", "ISO 2827; standard photometric relations (derivation)"),
    Rank(r"\b(?:contrast\w*|dramatic|mood(?:y|ier)|hard(?:er)?|harsh\w*|deeper|darker shadows|stronger|steeper)\b", r"\b(?:flat(?:ter)?|soft(?:er)?|gentler|even(?:er)?|lighter shadows|brighter shadows)\b", "", "", "The larger the lighting ratio, the darker the shadows beside the lit side, and the more contrast.", "", "Photography (Basic), NAVEDTRA 14209", ratio_mark),
    Rank(r"\b(?:bigger|larger|higher|greater|more)\b", r"\b(?:smaller|lower|fewer)\b", r"\b(?:feet|foot|ft)\b", r"\bmet(?:re|er)s?\b", "The same guide number is 3.28 times as large in feet as in metres.", r"\b(?:guide (?:number|no)s?|gns?)\b", "international yard and pound agreement, 1959"),
    Rank(r"\b(?:blu\w+|cool\w*|cold\w*)\b", r"\b(?:orange|warm\w*|yellow\w*|redd\w*)\b", r"\b(?:flash|strobe|daylight|sun(?:light|shine)?|sky|shade|overcast|electronic)\b", r"\b(?:tungsten|household|incandescent|candle\w*|halogen|lamps?|light ?bulbs?|photofloods?|room light)\b",
         "Flash is about as blue as daylight, near 5,500 K; household and tungsten lamps are far more orange, near 2,800 to 3,200 K."),
    Rank(r"\bgrain\w*\b", r"\b(?:fine[rs]?\b.{0,6}grain\w*|finer|smooth\w*)\b", "", "", "Faster film has coarser grain.", r"\bgrain\w*|\bfine\w*|\bsmooth\w*", mark=speed_mark),
    Rank(r"\b(?:exposure|light|slower)\b", r"\bfaster\b", r"\b(?:expired|old|outdated)\b", r"\b(?:fresh|new)\b", "Old film loses speed, so it needs more exposure than fresh film: a stop for each ten years is a usual starting point for colour negative film kept warm.", r"\bfilm\b"),
    Rank(_QUICK, _SLOW, r"\b(?:fresh|new|warm|nimh|nickel|lithium|rechargeables?|full)\b", r"\b(?:old|tired|flat|cold|used|alkalines?|weak|spent|half[- ]dead)\b", "Fresh, warm cells give current faster, and nickel-metal-hydride cells faster than alkaline ones, so the flash recycles sooner.", r"\b(?:recycl\w*|charg\w*|batter\w+|cells)\b"),
    Rank(r"\b(?:worse|stronger|likely|common|frequent|bad)\b|(?<=more )red[- ]?eyes?|(?<=less )red[- ]?eyes?", r"\b(?:weaker|rarer|better|milder)\b", r"\b(?:dark\w*|dim\w*|night)\b", r"\b(?:bright\w*|lit|daylight|sun\w*)\b", "In a dim room the pupils open wide, so more light comes back from the retina; a brighter room makes red-eye less.", r"\bred[- ]?eyes?\b"),
    Rank(r"\b(?:worse|stronger|likely|common|frequent|bad)\b|(?<=more )red[- ]?eyes?|(?<=less )red[- ]?eyes?", r"\b(?:weaker|rarer|better|milder)\b", r"\b(?:on[- ](?:the |my )?camera|close\w*|near\w*|beside|pop-?up|direct)\b", r"\b(?:off|away|bounc\w+|apart|far(?:ther)?|further|separate)\b",
         "Red-eye is light thrown straight back from the eye, so it is worst with the flash close to the lens and goes when the flash is moved off.", r"\bred[- ]?eyes?\b"),
    Rank(_LIGHT + r"|\b(?:freez\w*|stops? (?:motion|movement|action)|further|farther)\b", _LOSS, r"\b(?:normal|ordinary|regular|standard|x[- ]?sync|usual|single)\b", r"\b(?:hss|high[- ]?speed sync\w*|fp (?:flash|sync|mode))", "In high-speed sync the flash is spread over the travel of the shutter: it loses two stops or more, and no longer freezes by itself."),
    Rank(r"\b(?:reach\w*|range|further|farther|goes|carr\w+)\b", r"\bshorter\b", "", "", "The faster the film, the farther the flash reaches: 1.4 times as far for each stop.", r"\b(?:iso|asa|film)\b", "photometry", speed_mark),
    Rank(r"\b(?:reach\w*|range|further|farther|goes|carr\w+)\b", r"\bshorter\b", "", "", "The distance is the guide number divided by the f-number, so the smaller the f-number, the farther the flash reaches.", r"^(?!.*\b(?:iso|asa)\b).*\bflash|\blight", "Photography (Basic), NAVEDTRA 14209", _minus(aperture_mark)),
    Rank(r"\b(?:reach\w*|higher|bigger|larger|greater|further|stronger|brighter)\b", r"\b(?:lower|smaller|weaker|shorter|dimmer)\b", "", "", "Zooming the flash head long narrows its beam, which puts more light in the middle and raises the guide number.", r"\bzoom\w*\b", mark=zoom_mark),
    Rank(r"\b(?:blu\w+|cool\w*|cold\w*)\b", r"\b(?:warm\w*|yellow\w*|orange)\b", r"\b(?:silver|white)\b", r"\bgold\w*\b", "A gold reflector or lining warms the light; silver and white leave its colour as it was."),
    Rank(r"\blonger\b|\bslow\w*", r"\b(?:short\w*|brief\w*|quick\w*|faster|freez\w*)\b", r"\b(?:flash ?)?bulbs?\b", r"\b(?:electronic|strobes?|speedlights?)\b", "A flash bulb burns for about 1/50 to 1/100 s, far longer than an electronic flash."),
    Rank(r"\b(?:bigger|deeper|larger|greater|more|wider)\b|\bdepth\b", r"\b(?:shallow\w*|small\w*|thin\w*|narrow\w*)\b", "", "", "A larger f-number is a smaller opening and gives more depth of field.", r"\b(?:depth(?: of field)?|dof|in focus)\b", "Photography (Basic), NAVEDTRA 14209", aperture_mark),
    Rank(r"\b(?:bright\w*|higher|stronger|further|farther|larger|bigger|more light)\b", r"\b(?:dark(?:er|ens?)|weak\w*|lower|dim(?:mer)?|smaller|less light)\b", r"\b(?:small|white|pale|light[- ]walled|indoors?|low ceiling)\b", r"\b(?:outdoors?|outside|open air|black|dark|hall|gym|big|large|field)\b",
         "Walls and ceiling send stray light back: in a small pale room a flash gives half a stop to a stop more than outdoors or in a large dark hall.", r"\b(?:flash\w*|guide numbers?|gn)\b.*\b(?:rooms?|walls?|halls?|outdoors?|outside|indoors?)\b|\b(?:rooms?|walls?|halls?|outdoors?|outside|indoors?)\b.*\b(?:flash\w*|guide numbers?|gn)\b"),
    Rank(r"\b(?:strong\w*|bright\w*|higher|powerful|more (?:light|power)|hotter)\b", r"\b(?:weak\w*|dim\w*|dark\w*|lower|less (?:light|power)|under)\b", r"\b(?:key|main)\b", r"\bfill\b", "The key makes the shadows, and the fill is the weaker light that opens them, as a rule by one to three stops."),
    Rank(r"\b(?:bright\w*|more light|hotter|over\w*)\b", r"\b(?:dark\w*|dim\w*|less light|under\w*)\b", r"\b(?:front|near\w*|clos\w+)\b", r"\b(?:back|rear|far(?:ther|thest)?|further|behind)\b", "Light falls with the square of the distance, so whoever is nearer to the flash gets more of it.", r"\b(?:rows?|subject|person|people|face|one|those|group)\b.*\b(?:flash|light\w*)\b|\b(?:flash|light\w*)\b.*\b(?:rows?|subject|person|people|face|one|those|group)\b", "photometry"),
    Rank(r"\b(?:spill\w*|scatter\w*|wider|spreads?|all over)\b", r"\b(?:control\w*|contain\w*|narrow\w*|tight\w*)\b", r"\b(?:umbrella|brolly)\w*", r"\b(?:soft ?box|strip ?box|grid)\w*", "An umbrella throws light all round the room; a softbox keeps it in a beam with a clean edge."),
)

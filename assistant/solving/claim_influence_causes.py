"""The words for what is changed: shutter, aperture, film, flash, camera, lens, and which way.

Every cause has patterns for more of it (+1), less of it (-1) and any way (0). Where two values are
said, "from f/8 to f/4", "1/15 instead of 1/60", the values tell the way.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from assistant.patterns import Pattern, Patterns
from assistant.records import record


@record
class Cause:
    """What is changed, which way (+1 more of it, -1 less, 0 not said), and where the words stand."""

    name: str
    way: int
    start: int
    end: int


_DET = r"(?:(?:the|my|your|a|an|this|that|its|one|his|her|main|ordinary|normal|portable|electronic|shoe|shoe-mount|manual|camera|little|big|off-camera) )*"
_LAMP = r"(?:flash(?:gun|es)?(?: (?:head|unit|gun))?|little one|big one|lights?(?: ?stand)?|strobe|speedlight|lamp|stand|umbrella|soft ?box|octa\w*|unit|gun|head|brolly|source|reflector|diffuser)"
_MOVES = r"(?:mov|push|back|pull|tak|put|shift|step|slid|carr|bring|plac|walk|set|drag|roll|send|wheel|edg|inch|creep|shov)\w*"
_AWAY = r"(?:(?:much |a bit |a little |two (?:paces|steps|metres|meters|feet) |a \w+ )?(?:further|farther)(?: (?:away|off|back|out))?|back(?:wards?)?|away|off|out)\b(?: (?:from|to) (?:the |her |him |them |my )?(?:\w+))?"
_CLOSER = r"(?:(?:much |a bit |a little |in )?(?:closer|nearer)(?: in\b)?|in close|up close|close|in|forwards?)\b(?: to (?:the |my |her |him |them )?(?:\w+))?"
_PUT = r"(?:cut|reduc|lower|turn|dial|crank|power|set|knock|drop|run|bring)\w*"
_POWER = r"(?:full|max\w*|half|(?:a )?quarter|(?:an )?eighth|(?:a )?sixteenth|1/(?:2|4|8|16|32|64|128))"
_OF = r"(?: (?:of|on|from) (?:the |my )?(?:flash|strobe|light|head)\b)?"
_STEP = r"(?: (?:by )?(?:a|one|two|three|1|2|3|half a|a full|several|a couple of) (?:full )?stops?| to f ?/? ?\d+(?:\.\d+)?(?! instead))?"
_F = r"f ?/? ?(\d+(?:\.\d+)?)"
_TO = r" ?(?:to|->|→|down to|up to|-) ?"
_S = r"(?: ?s(?:ec(?:ond)?s?)?)?"

_PAIRS: tuple[tuple[str, int, Pattern], ...] = (
    # cause, which way a larger second figure goes, both figures in order
    ("aperture", -1, Pattern(rf"(?:\b(?:going|changing|moving|stopping down|opening(?: up)?|closing(?: down)?|switching|if i (?:go|change|open|close|stop down))? ?(?:the lens |up |down )*(?:from )?){_F}{_TO}{_F}")),
    ("shutter", -1, Pattern(rf"(?:\b(?:going|changing|change|slowing|dropping|moving|switching|slow|drop|go|lengthening|shortening) )?(?:down |up )?(?:(?:the|my|a) )?(?:shutter(?: speed| time)? )?(?:goes |is |set )?(?:from )?1/(\d+){_S}{_TO}1/(\d+){_S}\b(?! power)")),
    ("film_speed", 1, Pattern(r"(?:\b(?:a change|swap\w*|going|changing|switching|moving|raising|putting up|dropping|lowering|go|change|switch|drop|raise)\b )?(?:the )?(?:film )?(?:speed )?(?:from )?(?:an? )?(?:iso|asa) ?(?:from )?(\d{2,4}) ?(?:film )?(?:to|->|→|up to|down to|for) ?(?:an? )?(?:iso |asa )?(\d{2,4})(?: film)?\b")),
    ("film_speed", 1, Pattern(r"(?:\b(?:going|changing|switching|moving|go|change|switch)\b )?from (?:an? )?(\d{2,4})(?: film)? (?:to|for) (?:an? )?(\d{2,4})[- ](?:speed )?film\b")),
    ("focal_length", 1, Pattern(r"\b(?:(?:switch|chang|swap|go|mov|zoom|replac)\w* )?(?:the lens |my lens |lenses )?(?:from )?(?:the |a |an |my )?(\d{2,3}) ?(?:mm)?(?: lens)? (?:to|for|by|with) (?:the |a |an |my )?(\d{2,3}) ?mm(?: lens| one)?\b")),
    ("flash_distance", 1, Pattern(rf"\b{_MOVES} {_DET}{_LAMP} (?:(?:back|closer|in|out|away) )?from (\d+(?:\.\d+)?) ?(?:m|ft|feet|metres?|meters?)? to (\d+(?:\.\d+)?) ?(?:m|ft|feet|metres?|meters?)\b")),
)
_INSTEAD: tuple[tuple[str, int, Pattern], ...] = (
    # the same with the new figure first
    ("shutter", -1, Pattern(rf"\b(?:(?:a |using |use |with )*(?:slower|faster|longer|shorter)? ?shutter (?:speed |time )?(?:like |of |at )?)?1/(\d+){_S}\b(?! power) (?:instead of|rather than|in place of) 1/(\d+){_S}")),
    ("aperture", -1, Pattern(rf"{_F} (?:instead of|rather than|in place of) {_F}")),
    ("film_speed", 1, Pattern(r"(?:iso|asa) ?(\d{2,4})(?: film)? (?:instead of|rather than|in place of) (?:iso |asa )?(\d{2,4})")),
    ("film_speed", 1, Pattern(r"\b(?:(?:us|load|putt?|tak)\w* )?(?:an? )?(\d{2,4})[- ](?:speed )?film (?:instead of|rather than|in place of) (?:an? )?(\d{2,4})(?:[- ](?:speed )?film)?\b")),
    ("focal_length", 1, Pattern(r"\b(?:i )?(?:putt?(?:ing)? on|mount\w*|fitt?\w*|us(?:e|ing)|with) (?:the |my |an? )(\d{2,3})(?: ?mm)?(?: lens)? (?:instead of|rather than|in place of) (?:the |my |an? )(\d{2,3})\b(?: ?mm)?(?: lens)?")),
)
_EITHER: tuple[tuple[str, Pattern], ...] = (
    # two settings, and not which of them comes first
    ("shutter", Pattern(rf"\b(?:at |with )?1/\d+{_S}(?! power) (?:or|and) (?:at |with )?1/\d+{_S}\b(?! power)")),
    ("aperture", Pattern(r"\b(?:at |with )?f ?/? ?\d+(?:\.\d+)? (?:or|and) (?:at |with )?f ?/? ?\d+(?:\.\d+)?\b")),
    ("film_speed", Pattern(r"\b(?:at |with |on )?(?:iso|asa) ?\d{2,4} (?:or|and) (?:at |with |on )?(?:iso |asa )?\d{2,4}\b")),
    ("focal_length", Pattern(r"\b(?:with|on) (?:my |the )\d{2,3}(?: ?mm)?(?: lens)? (?:as|and|or) (?:with |on )?(?:my |the )\d{2,3}(?: ?mm)?(?: lens)?\b|\b(?:at |with |on )?(?:a |the )?\d{2,3} ?(?:mm)?(?: lens)? (?:or|and) (?:at |with |on )?(?:a |the )?\d{2,3} ?mm(?: lens)?\b")),
)
_ZOOM_PAIR = Pattern(rf"\bzoom\w* {_DET}(?:flash|strobe|speedlight|head|reflector)(?:'s)?(?: head| reflector)?(?: out| in)? (?:from )?(?:the )?(\d{{2,3}}) ?(?:mm)? (?:to|out to|in to) (\d{{2,3}})(?: ?mm)?\b")
_SHARES = {"full": 1.0, "max": 1.0, "half": 0.5, "quarter": 0.25, "a quarter": 0.25, "eighth": 0.125, "an eighth": 0.125, "sixteenth": 0.0625, "a sixteenth": 0.0625}
_POWER_PAIR = Pattern(rf"\b(?:{_PUT} {_DET}{_LAMP} (?:down |up )?|(?:going|go|dropping|changing) )?from ({_POWER})(?: power)? (?:down |up )?to ({_POWER})(?: power)?\b")

_SHUTTER = r"(?:shutter(?:[- ](?:speed|time))?s?|exposure times?)"
_LENS = r"(?:the |my |your )?(?:lens|aperture|iris)"
_FILM = r"(?:film(?: speed)?|iso|asa)"
_TONE = r"(?:black|white|dark(?:er)?|pale(?:r)?|light(?:er)?|tanned)"
_TONED = r"(?:skin(?:ned)?(?: (?:person|sitter|people|face)s?)?|boat|jersey|dress|suit|cat|dog|subject|shirt|coat|kit|person|people|cloth\w*|sitter|hull|one|face|jumper|object|uniform|outfit|hair|clothes)s?"

_WORDS: tuple[tuple[str, int, Pattern], ...] = (
    ("shutter", 1, Pattern(rf"\b(?:a |the |my )?(?:slower|longer|slow|long) {_SHUTTER}|\b(?:slow|slowing|dragging|drag|lengthen|lengthening|leav\w+ open)(?: down)? (?:the |my |your |a )?{_SHUTTER}|\bleav\w+ (?:the |my )?shutter open (?:for )?longer")),
    ("shutter", -1, Pattern(rf"\b(?:a |the |my )?(?:faster|quicker|speedier|shorter|fast|short|higher) {_SHUTTER}|\b(?:speed up|speeding up|shorten|shortening|quicken|quickening|raising|raise) (?:the |my |your )?{_SHUTTER}")),
    ("shutter", 0, Pattern(rf"\b(?:chang\w+ |alter\w* |the choice of )?(?:the |my )?{_SHUTTER}(?! (?:is|was) open)\b")),
    ("aperture", 1, Pattern(rf"\bwide open\b(?: instead of (?:at )?{_F})?|\b(?:open|opens|opening|opened)(?: {_LENS})?(?: up| wider| wide)(?: {_LENS})?{_STEP}|\b(?:open|opening) {_LENS}(?: up)?{_STEP}|\b(?:a |the )?(?:wider?|bigger|larger?) (?:aperture|(?:lens )?opening|f-?stop|hole)\b|\b(?:a |the )?(?:small(?:er)?|low(?:er)?) f-?(?:number|stop)")),
    ("aperture", -1, Pattern(rf"\b(?:stop|stops|stopping|stopped|close|closing|closed)(?: {_LENS})? down(?: {_LENS})?{_STEP}|\b(?:close|closing) {_LENS}(?: down)?{_STEP}|\b(?:a |the )?(?:small(?:er)?|narrow(?:er)?) (?:aperture|(?:lens )?opening|hole)\b|\b(?:a |the )?(?:bigger|larger?|high(?:er)?) f-?number")),
    ("aperture", 0, Pattern(r"\b(?:(?:chang\w+|alter\w*) (?:the |my )?|an |the |my )?(?:aperture|f-?stop|f-?number)(?: change(?! (?:the|my|both|any|how|only|just)\b))?\b(?! (?:for|i need|you need|needed|to set|that i))")),
    ("film_speed", 1, Pattern(rf"\b(?:a |the )?(?:fast(?:er)?|high(?:er)?|more sensitive|quicker) {_FILM}|\b(?:an? )?film of (?:a )?(?:higher|greater) (?:speed|sensitivity)|\b(?:rais\w+|increas\w+|bump\w*(?: up)?|turn\w* up|lift\w*|boost\w*|up) (?:the |my )?(?:iso|asa|film speed)")),
    ("film_speed", -1, Pattern(rf"\b(?:a |the )?(?:slow(?:er)?|low(?:er)?|less sensitive) {_FILM}|\b(?:an? )?film of (?:a )?lower (?:speed|sensitivity)|\b(?:lower\w*|reduc\w+|drop\w*|turn\w* down) (?:the |my )?(?:iso|asa|film speed)")),
    ("film_speed", 0, Pattern(r"\b(?:chang\w+ |alter\w* )?(?:the )?(?:film speed|iso|asa|(?:film )?sensitivity)\b(?! ?\d)")),
    ("fill", 1, Pattern(r"\b(?:(?:turn\w*|crank\w*|bring\w*) up (?:the |my )?fill(?: light)?|(?:turn\w*|crank\w*|bring\w*) (?:the |my )?fill(?: light)? (?:up|in|closer|nearer)|(?:strengthen|boost|rais|increas)\w* (?:the |my )?fill(?: light)?|(?:a )?(?:bigger|stronger|brighter|more|closer|nearer) fill(?: light)?|add\w* (?:a |some |more )?fill(?: light)?|rais\w* (?:the |my )?fill(?: light)?|(?:the |my )?fill(?: light)? (?:closer|nearer|brighter|stronger))\b")),
    ("fill", -1, Pattern(r"\b(?:turn\w* down (?:the |my )?fill(?: light)?|(?:turn\w*|mov\w*|pull\w*|step\w*) (?:the |my )?fill(?: light)? (?:down|back|away|off|further(?: away)?)|(?:a )?(?:weaker|smaller|less|dimmer) fill(?: light)?|(?:lower|reduc|remov|tak|drop|weaken|cut)\w* (?:away |out )?(?:the |my )?fill(?: light)?|(?:the |my )?fill(?: light)? (?:further|farther|weaker|dimmer))\b")),
    ("key", 1, Pattern(rf"\b(?:{_MOVES} )?(?:the |my )?(?:key|main)(?: light| flash| lamp)? {_CLOSER}|\b{_PUT} (?:up )?(?:the |my )?(?:key|main)(?: light| flash)? up|\b(?:a )?(?:stronger|brighter) (?:key|main)(?: light)?\b|\b{_PUT} up (?:the |my )?(?:key|main)(?: light| flash)?")),
    ("key", -1, Pattern(rf"\b(?:{_MOVES} )?(?:the |my )?(?:key|main)(?: light| flash| lamp)? {_AWAY}|\b{_PUT} (?:the |my )?(?:key|main)(?: light| flash)? down|\b(?:a )?(?:weaker|dimmer) (?:key|main)(?: light)?\b|\b{_PUT} down (?:the |my )?(?:key|main)(?: light| flash)?")),
    ("power", 1, Pattern(rf"\b{_PUT} {_DET}{_LAMP} up(?: to {_POWER}(?: power)?)?|\b{_PUT} up {_DET}(?:flash|strobe|light|power)(?: power)?|\b(?:more|higher|full|rais\w+|increas\w+|boost\w*|doubling) (?:the |my )?(?:flash |strobe |light )?(?:power|output)(?: settings?)?{_OF}")),
    ("power", 1, Pattern(rf"\b(?:when |if |once )?{_DET}{_LAMP} (?:is |gets |being )?turned up(?: to {_POWER}(?: power)?)?")),
    ("power", -1, Pattern(rf"\b(?:when |if |once )?{_DET}{_LAMP} (?:is |gets |being )?turned down(?: to {_POWER}(?: power)?)?")),
    ("power", -1, Pattern(rf"\bwith {_DET}{_LAMP} (?:on|at) (?!full|max){_POWER}(?: power)?(?: (?:instead of|rather than) (?:at )?full(?: power)?)?")),
    ("power", -1, Pattern(rf"\b(?:turn|dial|crank|wind|knock|power)\w* (?:it |them )?(?:right )?down to (?!full|max){_POWER}(?: power)?\b(?! of)")),
    ("power", -1, Pattern(rf"\b(?:when|if|once) (?:it is |it's |they are |they're )?turned down\b(?: to {_POWER}(?: power)?)?(?! (?:the|my|a)\b)")),
    ("power", 1, Pattern(r"\b(?:a )?(?:brighter|stronger|more powerful) (?:flash|strobe|light)\b(?! on| for| at|,|\.|\?|$)")),
    ("power", -1, Pattern(rf"\b{_PUT} {_DET}{_LAMP} (?:down|back)(?: (?:from {_POWER}(?: power)? )?to {_POWER}(?: power)?)?|\b{_PUT} (?:the )?power (?:of {_DET}{_LAMP} )?down|\b{_PUT} down {_DET}(?:flash|strobe|light|power)(?: power)?|\b(?:{_PUT}|put) {_DET}{_LAMP} (?:on|at|to) {_POWER}(?: power)?"
                          rf"|\b(?:at |with |on )?(?:a )?(?:low(?:er)?|less|reduced|(?!full|max){_POWER}|lower\w*|reduc\w+|cut\w*|drop\w*|halv\w+)(?: the| my)? (?:flash |strobe )?(?:power|output)(?: (?:settings?|pops|setting))?{_OF}")),
    ("power", 0, Pattern(r"\b(?:chang\w+ )?(?:the |my )?(?:(?:flash|strobe|light)(?:'s)? (?:power|output)\b|(?:power|output) (?:of|on) (?:the |my )?(?:flash|strobe|light|head)\b)")),
    ("camera_distance", 1, Pattern(r"\b(?:i )?(?:stand|am|go|be)\w* (?:twice|two times|three times) as far(?: away| back| off)? with (?:the |my )?camera|\b(?:pull|back|step|mov|walk|stand|go|tak)\w* (?:(?:back|away|off|further|farther|backwards?|closer|nearer|forward)(?: (?:away|back|off))? )?(?:two paces |a \w+ )?(?:with )?(?:the |my )?(?:camera|tripod)(?: (?:further|farther|back|away|off)(?: (?:away|back))?)?(?: from \d+ ?m\w* to \d+ ?m\w*)?|\b(?:camera|photographer|tripod) (?:(?:moves?|goes|steps?|walks?|stands?|is|being) )?(?:further|farther|back|away)(?: (?:away|back))?|\bi (?:\w+ )?(?:step|walk|move|go|stand) (?:back|away|further|farther)(?: (?:two|a few|some) (?:paces|steps))?(?: with (?:my|the) camera)?(?: to fit [^,?.;]*)?")),
    ("camera_distance", -1, Pattern(r"\b(?:mov|walk|step|tak|go)\w* (?:the |my )?(?:camera|tripod) (?:closer|nearer|in|forward)|\b(?:camera|photographer|tripod) (?:(?:moves?|goes|steps?|walks?|is) )?(?:closer|nearer|in|forward)\b|\bi (?:\w+ )?(?:step|walk|move|go) (?:closer|nearer|in|forward)(?: with (?:my|the) camera)?")),
    ("camera_distance", 0, Pattern(r"\b(?:the )?(?:camera(?:'s|[- ]to[- ]subject)? distance|distance (?:of|from|to) (?:the |my )?camera(?: to (?:the )?subject)?|how far (?:away |back )?(?:the |my )?(?:camera|photographer) (?:is|stands)|where (?:i|the camera|the photographer) (?:stand|stands|am|is))\b")),
    ("background", 1, Pattern(r"\b(?:mov\w*|push\w*|put\w*) (?:the |my )?(?:background|backdrop|wall) (?:further|farther|back|away|out)(?: (?:away|back|behind (?:the )?\w+))?|\b(?:the |my )?(?:background|backdrop|wall) (?:(?:is|being|goes|stands) )?(?:further|farther)(?: (?:away|back|behind(?: the \w+)?|from (?:the |my )?\w+))?|\bmov\w* (?:the |my )?(?:sitter|subject|model|crew|person)(?: and (?:the |my )?(?:light|flash)(?: together)?| together with the light)? (?:further |farther )?(?:away )?from (?:the |my )?(?:wall|background|backdrop)")),
    ("background", -1, Pattern(r"\b(?:mov\w*|push\w*|bring\w*) (?:the |my )?(?:background|backdrop|wall) (?:closer|nearer|in)(?: to (?:the )?\w+)?|\b(?:the |my )?(?:background|backdrop|wall) (?:(?:is|being) )?(?:closer|nearer)(?: to (?:the )?\w+)?|\bmov\w* (?:the |my )?(?:sitter|subject|model|crew) (?:closer|nearer) to (?:the |my )?(?:wall|background|backdrop)")),
    ("background", 0, Pattern(r"\b(?:the )?(?:distance (?:of|to) (?:the |my )?(?:background|backdrop|wall)|(?:background|backdrop) distance|how far (?:away |off )?(?:the |my )?(?:background|backdrop|wall) is)\b")),
    ("flash_distance", 1, Pattern(rf"\b(?:back|mov|pull|step)\w* (?:off|back) {_DET}{_LAMP}\b|\b(?:doubl\w*|twice) the (?:flash|light|flash[- ]to[- ]subject) distance|\b{_MOVES} {_DET}{_LAMP} {_AWAY}|\b{_DET}{_LAMP} (?:being |is |goes |stands |sits )?(?:further|farther)(?: (?:away|off|back|out))?(?: from (?:the )?\w+)?\b|\b(?:a |the )?(?:more distant|farther|further) {_LAMP}\b|\b(?:a |the )(?:greater|longer|larger) (?:flash|flash[- ]to[- ]subject|light) distance")),
    ("flash_distance", -1, Pattern(rf"\b(?:halv\w*|half) the (?:flash|light|flash[- ]to[- ]subject) distance|\b{_MOVES} {_DET}{_LAMP} {_CLOSER}|\b{_DET}{_LAMP} (?:being |is |goes |stands |sits )?(?:closer|nearer)(?: in\b)?(?: to (?:the )?\w+)?\b|\b(?:a |the )?(?:closer|nearer) {_LAMP}\b|\b(?:a |the )(?:shorter|smaller) (?:flash|flash[- ]to[- ]subject|light) distance")),
    ("flash_distance", 0, Pattern(rf"\b(?:moving|i move|to move) {_DET}{_LAMP}\b|\b(?:the )?(?:flash[- ]to[- ]subject distance|(?:flash|light) distance|distance (?:of|from) (?:the )?(?:flash|light)(?: to (?:the )?subject)?|how far (?:away |off )?the (?:flash|light) is)\b")),
    ("head_zoom", -1, Pattern(rf"\b(?:a )?(?:wider|shorter) (?:flash )?(?:zoom|beam)(?: setting)?|\bzoom\w* {_DET}(?:flash|strobe|head)(?:'s)?(?: head)? (?:out(?: to \d+(?: ?mm)?)?|wider?|to (?:a )?wide\w*|to (?:1[4-9]|2[0-8])(?: ?mm)?)|\bzoom\w* out {_DET}flash(?: head)?|\b(?:setting |set )?{_DET}(?:flash's |flash )(?:head )?zoom (?:to |at |on )?(?:a |the )?(?:wider?|shorter)(?: (?:setting|position|angle))?")),
    ("head_zoom", 1, Pattern(rf"\bzoom\w* {_DET}(?:flash|strobe|speedlight)(?:'s)?(?: head)?(?: (?:in|longer|tele|narrow\w*|to (?:a |the )?(?:longer|tele|narrower)\w*(?: (?:setting|position))?))?|\bzoom\w* in {_DET}flash(?: head)?|\bzoomed?[- ]?in flash(?: head)?|\bzoom\w* {_DET}(?:flash )?(?:head|flash)(?: to (?:7\d|8\d|9\d|1\d\d|2\d\d)(?: ?mm)?)?|\b(?:setting |set )?{_DET}flash(?:'s)? (?:head )?zoom(?: head)?(?: (?:to |at |on )?(?:a |the )?(?:longer|tele|narrower)(?: (?:setting|position))?)?|\ba narrower (?:flash )?(?:zoom|beam)(?: setting)?")),
    ("focal_length", 1, Pattern(r"\bzoom\w* in(?: with (?:the |my )?lens)?\b|\b(?:a |the |my )?(?:longer|long) lens|\b(?:a |the |my )?tele(?:photo)?(?: lens)?\b|\bzoom\w* (?:the |my )?lens in\b")),
    ("focal_length", -1, Pattern(r"\bzoom\w* out(?: with (?:the |my )?lens)?\b|\b(?:a |the |my )?(?:shorter|wide|wide[- ]angle|wider) lens|\b(?:a |the )?wide[- ]angle\b")),
    ("focal_length", 0, Pattern(r"\b(?:chang\w+ )?(?:the )?(?:focal length|lens(?:es)? (?:length|change)|zoom of (?:the |my )lens)\b|\b(?:zooming|zoom) (?:the |my )lens\b|\b(?:chang|switch|swap)\w* (?:the |my )?lens(?:es)?\b|\b(?:a |another )different lens|\b(?:the )?\d{2,3}\b(?=[^,?.]{0,40}\bas the \d{2,3}\b)")),
    ("size", 1, Pattern(r"\b(?:a |the )?(?:bigger|larger|wider|big|large|huge) (?:soft ?box|umbrella|octa\w*|light|source|diffuser|scrim|modifier|window)")),
    ("size", -1, Pattern(r"\b(?:a |the )?(?:smaller|small|tiny) (?:soft ?box|umbrella|octa\w*|light|source|diffuser|scrim|modifier|window)")),
    ("bounce", 1, Pattern(rf"\bbounc\w*(?: {_DET}(?:flash|strobe|light|it))?(?: (?:off|from|via|against|up at|into|at|on) (?:the |a |my )?(?:white )?(?:ceiling|wall|card|board|reflector))?(?=\W|$)")),
    ("spreader", 1, Pattern(rf"\b(?:(?:fit|putt?|add|us|hang|shoot)\w* (?:through )?)?(?:an? |the |my )?(?:shoot[- ]through )?(?:umbrella|brolly|soft ?box|octa\w*|scrim|diffus(?:er|ion)(?! dome))(?: (?:on|over|in front of) {_DET}{_LAMP})?(?: on)?\b")),
    ("modifier", 1, Pattern(rf"\b(?:(?:fit|putt?|add|us)\w* )?(?:an? |the |my )?(?:diffus\w+ dome|dome|modifier|grid|honeycomb|snoot)(?: (?:on|over) {_DET}{_LAMP})?(?: on)?\b")),
    ("filter", 1, Pattern(r"\b(?:(?:i )?(?:fit|putt?|us|add|screw)\w* )?(?:an? |the |my )?(?:(?:\w+|\d)-stop |\d?\.\d+ )?(?:nd(?: ?\d+(?:\.\d+)?)?(?: ?filter)?|neutral[- ]density(?: filter)?|gr[ae]y filter|polari[sz]\w+|filter)(?: (?:on|over|in front of|to) (?:the |my )?(?:lens|camera))?(?!(?: ?filter)? (?:on|over|in front of) (?:the |my )?(?:flash|strobe|light|head))\b")),
    ("bellows", 1, Pattern(r"\b(?:(?:rack|extend|us|put)\w* )?(?:the |my |with the |on |a )?(?:bellows(?: extension)?(?: (?:out|extended|racked out))?|extension tubes?|lens extension|extension)\b|\bclose[- ]?up on bellows|\bdouble extension")),
    ("second", 1, Pattern(r"(?<!\d )\b(?:add\w* |with |using )?(?:a |an )?(?:second|another|identical|extra|two|equal|one more) (?:(?:identical|equal|same|matching) )*(?:flash(?:es)?|heads?|lamps?|lights?|strobes?|ones?)(?: (?:side by side|beside|next to|alongside|to|instead of|on)\b(?: the| one)?(?: first)?(?: one)?)?")),
    ("rim", 1, Pattern(r"\b(?:a |the |my )?(?:hair|rim|back)[- ]?light(?: from behind)?\b|\b(?:a |the |my )?kicker\b|\b(?:a |the )?(?:light|flash) from behind\b")),
    ("tone", 1, Pattern(rf"\b(?:an? |the )?{_TONE}(?:[- ]coloured)?[- ]{_TONED}\b(?: (?:and|or) (?:for )?(?:an? |the )?{_TONE}(?:[- ]{_TONED})?\b)?|\b(?:dressed in |wears? |in |is )?(?:black|dark|pale|white) (?:or|and|instead of) (?:black|dark|pale|white)\b|\b(?:the )?(?:colou?r|tone) of (?:the |my |her |his )?{_TONED}\b|\b(?:subject|skin) (?:tone|colou?r)\b")),
    ("format", 1, Pattern(r"\b(?:large|medium|small|film|bigger|larger|smaller)[- ]format\b|\b(?:6 ?x ?[679]|4 ?x ?5|120)\b(?: (?:film|camera))?|\b(?:the |film )?format\b")),
    ("push", 1, Pattern(r"\bpush(?:ed|ing|es)?(?: (?:the |my |a )?(?:film|roll|negatives?|it)| \d+ film)?(?: in (?:the )?develop\w+)?(?: (?:by )?(?:a|one|two|1|2) stops?)?\b(?! the (?:light|flash|camera|stand))")),
    ("push", -1, Pattern(r"\bpull(?:ed|ing|s)? (?:the |my |a )?(?:film|roll|negatives?)(?: in (?:the )?develop\w+)?(?: (?:by )?(?:a|one|two|1|2) stops?)?\b")),
    ("reciprocity", 1, Pattern(r"\b(?:the |any |a |long-exposure )*reciprocity(?: law)?(?: (?:failure|effect|departure|loss|correction|allowance|compensation))?\b(?: (?:for|of) (?:the )?(?:ambient|a ten second exposure))?(?: that a [^,?.]*)?")),
    ("curtain", 1, Pattern(r"\b(?:rear|second|first|front)[- ]curtain(?: sync)?\b")),
)


def cause_of(said: str) -> tuple[Cause, str] | None:
    """The one cause of a text and the text with "~" for its words; None where none is said, or more than one.

    >>> cause_of("does a slower shutter brighten the flash")
    (Cause(name='shutter', way=1, start=5, end=21), 'does ~ brighten the flash')
    """
    found = _without_overlap(sorted(_causes(said), key=lambda c: (c.start - c.end, c.way == 0)))
    if any(c.name != "power" for c in found):
        found = [c for c in found if c.name != "power" or c.way]  # "does the shutter change the flash power": what it changes
    ways = {c.way for c in found if c.way}
    if len({c.name for c in found}) != 1 or len(ways) > 1:
        return None
    rest = said
    for one in sorted(found, key=lambda c: -c.start):
        rest = rest[: one.start] + "~" + rest[one.end :]
    return min(found, key=lambda c: (not c.way, c.start)), rest


def _without_overlap(found: list[Cause]) -> list[Cause]:
    """The longest words where two causes are read in the same place."""
    kept: list[Cause] = []
    for one in found:
        if not any(one.start < k.end and k.start < one.end for k in kept):
            kept.append(one)
    return kept


def _causes(said: str) -> Iterator[Cause]:
    """Every cause that the words may mean."""
    for number in _PATTERNS.to_try(said):
        name, sign, way = _SAID_BY[number]
        for m in _PATTERNS[number].finditer(said):
            if m.group().strip():
                yield Cause(name, sign * way(m) if way else sign, m.start(), m.end())


def _order(old: float, new: float) -> int:
    return (new > old) - (new < old)


def _share(word: str) -> float:
    return _SHARES[word] if word in _SHARES else 1 / float(word[2:]) if word.startswith("1/") else 1.0


def _old_first(pair: re.Match[str]) -> int:
    return _order(float(pair[1]), float(pair[2]))


def _new_first(pair: re.Match[str]) -> int:
    return _order(float(pair[2]), float(pair[1]))


def _powers(pair: re.Match[str]) -> int:
    return _order(_share(pair[1]), _share(pair[2]))


_EVERY: tuple[tuple[str, int, Callable[[re.Match[str]], int] | None, Pattern], ...] = (
    # the cause, which way, how the figures turn it, the words
    *((name, sign, _old_first, pattern) for name, sign, pattern in _PAIRS),
    *((name, sign, _new_first, pattern) for name, sign, pattern in _INSTEAD),
    *((name, 0, None, pattern) for name, pattern in _EITHER),
    ("head_zoom", 1, _old_first, _ZOOM_PAIR),
    ("power", 1, _powers, _POWER_PAIR),
    *((name, way, None, pattern) for name, way, pattern in _WORDS),
)
_PATTERNS = Patterns(row[-1] for row in _EVERY)
_SAID_BY = tuple(row[:-1] for row in _EVERY)

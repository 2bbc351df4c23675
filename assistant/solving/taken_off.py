"""Whether a known value was told with something in the way that the wanted one is without, or the other way round."""

from __future__ import annotations

import math
import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Fact, Query

_NOT_THROUGH = Pattern(r"(?:\bnot|n't|\bnever|\bwasnt|\bisnt|\bdidnt)\b[^.?!,;]{0,20}\b(?:with|through|behind|under) (?:it|that|the|my)\b", re.I)
WITHOUT = Pattern(r"\b(?:without|bare|naked|before|no filter|unfiltered)\b|(?<!against )(?<!over )(?<!than )(?<!to )(?<!from )\bdirect(?:ly)?\b", re.I)


_ON_IT = Pattern(r"\b(?:with|through|behind|under) (?!\w+ (?:taking|losing|costing|eating)\b)(?:it|that|the \w+|my \w+|both|this|an? \w+)(?: \w+)?(?: on| up| fitted| in place)?\b(?! off\b)|\b(?:it|filter|box|softbox|umbrella|brolly|gel|dome|grid|nd|diffuser|silk|cap) (?:is |was |went |goes |now )?on\b|\bonce (?:it|the \w+) (?:is|goes) (?:on|up)\b", re.I)
_PUTTING = Pattern(r"\b(?:put(?:ting)?|add(?:ed|ing)?|clip(?:ped|ping)?|tap(?:ed|ing)|hang(?:ing)?|hung|fit(?:ted|ting)?|screw(?:ed|ing)?|slap(?:ped)?|stick(?:ing)?|stuck|mount(?:ed|ing)?|want|need|must (?:put|use))\b[^.?!]{0,40}\b(?:on|over|up|in front|onto|a|an|the|my)\b", re.I)
_OFF_IT = Pattern(r"\b(?:tak(?:e|es|ing)|took|pull(?:s|ed|ing)?|slid(?:e|ing)?|lift(?:ed|ing)?) (?:it|that|them|the \w+|my \w+) (?:back )?out\b|\b(?:without|bare|naked|no filter|unfiltered)\b|(?<!against )(?<!over )(?<!than )(?<!to )(?<!from )\bdirect(?:ly)?\b(?! (?:reading|light (?:lost|takes)|against))|\b(?:aim|point|fir|turn|shoot|shot)\w*(?: it| the flash)? straight (?:at|on)\b|\b(?:take|taking|took|taken|pull\w*|unscrew\w*|peel\w*|whip\w*|with|com(?:e|es|ing)|came|is|was|goes|now)\b(?: (?!stops?\b)[\w.-]+){0,5}(?<! feet)(?<! foot)(?<! ft)(?<!\dft)(?<! metres)(?<! meters)(?<! metre)(?<! meter)(?<! m)(?<!\dm)(?<! yards)(?<! paces) off\b(?! the (?:wall|ceiling))|\b(?:pull(?:ing|ed)?|strip(?:ping|ped)?|peel(?:ing|ed)?|bin(?:ning|ned)?|ditch(?:ing|ed)?|rip(?:ping|ped)?|drop(?:ping|ped)?) (?:the|my|that|its) (?:(?:front|inner|outer|second|white) )?(?:cloth|silk|gel|grid|diffuser|diffusion|scrim|net|baffle|filter|dome|cap|sock|nd|polari[sz]er)\b(?! (?:on|in|over|onto|into)\b)|\bremov\w+|\b(?:take|taking|took|taken|pull\w*|com(?:e|es|ing)|came)\b(?: [\w./-]+){0,5}? (?:silk|scrim|net|cloth|diffuser|diffusion|panel|gel|muslin|sheet|frost|flag|brolly|umbrella|box|softbox)(?: [a-z]+)? (?:down|away|out of the way)\b|\boff the lens\b|\bout of (?:the|my|its) (?:box|soft ?box|octa\w*|umbrella|brolly|dome|dish)\b|\bin front(?: of (?:it|that|the \w+))?\W*$|\bwith (?:the|my|that|it|them|both)(?: \w+){0,3} (?:gone|removed|taken down|out of the way)\b|\b(?:is|are|was|were|it's|'s) gone\b|\bwith (?:none|nothing)(?: of (?:it|them)| at all| in the way)?\W*$|^\W*(?:the |my )?\w+ off\b", re.I)


ORDINARY_ASKED = Pattern(r"(?<!, )\b(?:what|which)\b[^.?!,;]{0,40}\b(?:normal|ordinary|usual)(?:ly)?\b", re.I)
"""The value without high-speed sync is asked."""
_THAT_IS = Pattern(
    r"[^.?!;,]{0,24}[,;(]? *(?:and |but |mind you,? |now )?(?:that(?:'s| is| was)|this is|which (?:is|was)|it's|measured|metered|taken) (?:of course |still |all )?"
    r"(?:(?P<without>without\b|bare\b|naked\b|with(?: \w+){0,3} off\b|with nothing\b|before (?:the|any|i)\b)|(?P<with>with(?: \w+){1,3} (?:on|fitted|in place)\b|through (?:the|my|it)\b))", re.I)
"""Said of the known value right after it: "the meter says 22, that's without the pola on"."""
BARE = "bare"
"""The cue of a value that is known to have been found with nothing in the way."""


def back_to_infinity(query: Query) -> bool:
    """"half power was right at life size; the lens goes back to infinity": told after the size that it had."""
    close, far = query.last("magnification"), next((f for f in query.all("focus_distance") if math.isinf(f.value)), None)
    return close is not None and far is not None and far.start > close.end and far.cue == "to"


def is_taken_off(text: str, known: Fact) -> bool:
    """Whether the known value was with it on and the wanted one is without it.

    What the question says counts first, then what is said beside the known value, then what is done in the text.
    """
    if known.cue == BARE:
        return False
    beside_it = _THAT_IS.match(text, known.end)
    if beside_it is not None and (beside_it["without"] or WITHOUT.search(text, beside_it.end())):
        return beside_it["with"] is not None
    if is_allowed_for(text):
        return True
    if known.origin == "kept" and not text[known.start : known.end].strip() == known.said.strip():
        return _OFF_IT.search(text) is not None and _ON_IT.search(text) is None  # told in another turn: its place is not in this text
    sentences = _sentences(text)
    asked = next((s for s in reversed(sentences) if known.end <= s[0] or "?" in text[s[0] : s[1]]), sentences[-1])
    wanted = text[max(asked[0], known.end) : asked[1]] if asked[0] <= known.end <= asked[1] else text[asked[0] : asked[1]]
    beside = next((text[s[0] : s[1]] for s in sentences if s[0] <= known.start < s[1]), "")
    after_known = patterns.split(r"[,;]|\s[-–—]+\s", text[known.end : asked[1]], maxsplit=1)[0] if asked[0] <= known.end < asked[1] else ""
    wanted = wanted.removeprefix(after_known)
    before = BEFORE_IT.search(text, asked[0], asked[1])
    if before is not None and not before.start() <= known.start < before.end():
        return before["on"] is not None
    was = WAS_ASKED.search(text, asked[0])
    if was is not None and known.end <= was.start():
        done = text[: was.start()]
        on, off = _WENT_ON.search(done), _WENT_OFF.search(done)
        if (on is None) is not (off is None):
            return on is not None  # what was there before it went on is the bare one
    if BEFORE_ASKED.search(text, asked[0]) and known.end <= asked[1]:
        return _WENT_OFF.search(text) is None or _WENT_ON.search(text) is not None  # what there was before something came on is the bare one
    if (turned := _ASKED_FIRST.match(text, asked[0])) is not None and turned.end() <= known.start < asked[1]:
        return _OFF_IT.search(turned["wanted"]) is not None and not _ON_IT.search(turned["wanted"])  # "what goes with it if bare it is f/11"
    own = text[max(asked[0], text.rfind(",", 0, known.start) + 1) : known.end] + after_known if asked[0] <= known.start < asked[1] else beside
    own = own if _MARKED.search(text) and (len(beside) <= 2 * _BESIDE or _MARKED.search(beside.rstrip(" .?!"))) else text[max(0, known.start - _BESIDE) : min(known.end + _BESIDE, max(asked[0], known.end + _BESIDE // 2))]
    if _OFF_IT.search(wanted) or (gone := layers_gone(text)) is not None and (gone.end() > known.end or _WITH_ALL.match(text, known.end)):
        return True
    if _ON_IT.search(wanted):
        return False
    if WITHOUT.search(own) or _NOT_THROUGH.search(own):
        return False
    if _ADDED_THEN.search(text, known.end):
        return False  # "right through the umbrella at a quarter; I put an ND on the lens": what it was read through stays on
    if _READ_THROUGH.search(own) or patterns.search(r"\bit(?:'s| is| was) on\b|\b(?:bounced|when i bounce|with the (?:ceiling )?bounce|off the (?:ceiling|wall))\b", own, re.I):
        return True
    return bool(_OFF_IT.search(text)) and not _PUTTING.search(text[known.end :])


_ALLOWED_FOR = Pattern(
    r"\b(?:before (?:i|we|you|he|she|they|it was|any|the) ?(?:had |ever )?(?:allow\w*|correct\w*|compensat\w*|adjust\w*|made (?:the |any )?allowance|made up for|opened up|took (?:it|that|the \w+) into account)|uncorrected|without the (?:allowance|correction|compensation))\b"
    r"|\b(?:with|after)\b[^.?!;]{0,40}\b(?:allowed for|allowing for|taken into account|counted in|corrected for|made good)\b[^?]*\b(?:what|which)\b[^?]{0,30}\b(?:meter|reading|flash sum|table|guide number)\b"
    r"|\b(?:to (?:make up|compensate|allow|correct|account|adjust) for|making up for|allowing for|as allowance for|(?:i|we)(?: have| had|'ve|'d)? (?:set|opened to|shot at|used) f\W?\d[\d.]*)\b[^?]*[.;,] (?:and |so )?(?:what|which)\b[^?]{0,30}\b(?:meter|reading|metered)\b", re.I)


def is_allowed_for(text: str) -> bool:
    """Whether a setting is told that makes up already for what takes light, and the one before that is asked.

    >>> is_allowed_for("f/8 after allowing for the bellows. What did the meter say before I allowed for it?")
    True
    """
    return _ALLOWED_FOR.search(text) is not None and _NOT_YET.search(text) is None


_NOT_YET = Pattern(
    r"\bf\W?\d[\d.]*,? (?:(?:that's|that is|which is|still|all|quite) ){0,2}before (?:any|the|all) (?:allow|correct|compensat|adjust)\w*(?= for\b|[^?.!;]*[?.!;]|[^?.!;]*$)|"
    r"\bf\W?\d[\d.]*,? (?:(?:that's|that is|which is|it is|as yet|so far|still|all|quite) ){0,2}(?:uncorrected|before\b[^.?!;]{0,40}(?=[.?!;]))[^?]{0,80}[.,;:-] (?:and |so |now |then )?(?:what|which|where|how|with|once|after)\b"
    r"|\buncorrected (?:aperture|f-?stop|f-?number|reading|exposure|figure|value|one)(?: (?:is|was|of|says|reads|at|comes to|gives))* f\W?\d", re.I)
"""What is told has nothing allowed for as yet: "the flash says f/16 uncorrected; what do I set?"."""


_ASKED_FIRST = Pattern(r"\W*(?:and |so |then |now )*(?P<wanted>(?:what|which|where|how)\b[^.?!;]*?(?:\b(?:with|without|through|behind|bare|naked|unmodified|undiffused|unfiltered|on|off|under|in front)\b[^.?!;]*?))\b(?:if|when|where|given that|seeing that|since)\b", re.I)
"""The case that is asked, before the one that is told."""
BEFORE_ASKED = Pattern(r"\b(?:what|which|where|how)\b[^.?!;,]{0,50}\b(?:was|were|did|had)\b[^.?!;,]{0,40}\bbefore(?: (?:it|that|then|this|the filter|(?:the|my|that|its) (?:[\w./-]+ ){0,2}[\w-]+))?\W*$|\b(?:what|which)\b[^.?!;,]{0,30}\bhad (?:i|we|it|the \w+) (?:been|stood)(?: (?:on|at|set(?: to| at)?))?\W*$", re.I)
"""What there was before, at the end of the text: "what did it read before the umbrella?"."""
WAS_ASKED = Pattern(r"\bwhat (?:was|had|did|were) (?:it|that|the (?:reading|light|meter|f-?stop|aperture|exposure)|she|he|i|we)(?: (?:be|been|read|reading|say|said|show|shown|on|at|had))*(?: (?:before(?: (?:that|then|it))?|at first|to begin with|to start with|originally|earlier|until then))?\W*$|\bwhat was the (?:old|first|former|earlier|original|previous) (?:reading|f-?stop|aperture|setting|power)\W*$|\bwhat (?:was|had been) the (?:reading|f-?stop|aperture|setting|power|output) (?:before(?: (?:that|then|it))?|at first|to begin with|to start with|originally|earlier|until then)\W*$", re.I)
"""The state that was there first is asked, at the end: "what was it?"."""
_WENT_ON = Pattern(r"\b(?:went|gone|goes|put|slipped|pulled) (?:[\w-]+ ){0,4}(?:on|up|over|in front)\b|\b(?:hung|added|fitted|clipped|taped|mounted|stretched|draped|screwed|(?:after|since|on|by) (?:adding|fitting|hanging|clipping|taping|mounting|stretching|draping|screwing|putting))\b", re.I)
_WENT_OFF = Pattern(r"\b(?:came|come|took|taken|take|whipped|pulled|peeled|is|was) (?:[\w-]+ ){0,4}(?:off|down|away)\b|\b(?:removed|stripped|ditched|gone)\b(?! on\b)", re.I)
BEFORE_IT = Pattern(r"\b(?:what|which|where|how)\b[^.?!;,\d]{0,60}\bbefore (?:(?:i|we|you|they|the|my|that|it|\w+) ){1,4}?(?:(?P<on>put|hung|hang|add(?:ed)?|fit(?:ted)?|clip(?:ped)?|tap(?:e|ed)|screwed|stretched|draped|slipped|went (?:on|up)|goes (?:on|up))|(?:took|pulled|removed|stripped|peeled|came (?:off|down)|take|comes off))\b", re.I)
"""The state that is asked of is the one before something was put in the light, or taken out of it."""
_A_LAYER = r"(?:layers?|sheets?|thickness(?:es)?|folds?|pl(?:y|ies)|of (?:them|these|those|the \w+)|silks?|scrims?|nets?|cloths?|gels?|diffusers?|pieces?)"
_WITH_ALL = Pattern(r"(?: \w+){0,3} (?:with|through|behind) (?:all|both|the lot|the whole)\b", re.I)
LAYERS_GONE = Pattern(
    rf"\b(?:tak\w*|took|peel\w*|pull\w*|strip\w*|whip\w*|remov\w*) (?:off |away |down )?(?P<gone>one|two|three|a)(?: {_A_LAYER})(?: (?:off|away|down))?\b"
    rf"|\b(?:tak\w*|took|peel\w*|pull\w*|strip\w*|whip\w*|cut\w*|go(?:es|ing)?|am|come)\b(?: (?:it|them|that|this|the \w+))? ?(?:back |down )+to (?:just |only )?(?:a )?(?P<left>single|one|two|three)\b(?: {_A_LAYER})?(?! (?:stops?|thirds?|and)\b)"
    rf"|\bleav(?:e|es|ing) (?:just |only )?(?:a )?(?P<kept>single|one|two|three)\b(?: {_A_LAYER})?(?: (?:on|up|there)\b|(?=[,.;?!]))", re.I)
"""Of several alike, so many come off or stay: "I strip it back to a single layer"."""
_FEWER_ASKED = Pattern(rf"\b(?:what|which|how much)\b[^.?!;]{{0,40}}?\b(?:with|through|behind|would|does|will|do) (?:just |only )?(?:a )?(?P<kept>single|one|two|three)\b(?: {_A_LAYER})?(?: (?:of (?:them|these|those|it) )?(?:give|read|leave|do|show|on)\b|\W*$)", re.I)


_SO_MANY_THERE = Pattern(rf"\b(?P<many>double|two|three|four)\b(?: \w+)? {_A_LAYER}", re.I)
_ORDER = ("single", "one", "double", "two", "three", "four")


def layers_gone(text: str, start: int = 0) -> re.Match[str] | None:
    """What says how many of several alike go or stay, done or only asked of: "what would a single layer give?", where nothing was read bare."""
    gone = LAYERS_GONE.search(text, start)
    if gone is not None or WITHOUT.search(text):
        return gone
    fewer = _FEWER_ASKED.search(text, start)
    there = _SO_MANY_THERE.search(text, 0, fewer.start()) if fewer is not None else None
    return fewer if fewer is not None and there is not None and _ORDER.index(there["many"].lower()) > _ORDER.index(fewer["kept"].lower()) else None


_ADDED_THEN = Pattern(r"\b(?:i|we|you|somebody|someone|he|she|to|now|then|and)(?: want to| have to| now| then| also)? (?:put|add|screw|clip|tape|hang|fit|slip|slide|stretch|mount|stick|drape|fix|pull)\w*(?: on| up| over| now| then)? (?:a|an|another|some|on an?|in an?|over an?)\b(?! away)|\b(?:a|an|another|some)(?: [\w-]+){1,4} (?:goes|go|is put|is screwed|is added|is fitted|comes) (?:on|over|onto|in front|up)\b", re.I)
"""Something else that is put in the way after the value was found."""
_READ_THROUGH = Pattern(r"\b(?:with|through|behind) (?!(?:the|my|its|a) (?:plain|standard|normal|ordinary|bare|usual|own|basic|small|metal) (?:reflector|dish|bowl)\b)(?:it|that|(?:the|my|that|its|both) (?:[a-z]+ )?(?:umbrella|brolly|soft ?box|box|octa\w*|dome|gel|grid|snoot|dish|filter|nd|polari[sz]er|polar|pola|silk|scrim|net|cloth|hankie|handkerchief|tissue|diffuser|diffusion|panel|sock|cap|cover|bowl|frost|paper|card|bounce|reflector|barn doors?|honeycomb|egg crate|modifier|thing|orange|blue|cto|ctb))\b", re.I)
"""Said of a reading that was taken with what stands in the light; "with my picture" is not."""
_MARKED = Pattern(r"[.?!;:,](?=\s|$)|\u2026|\s[-\u2013\u2014]+\s")
_BESIDE = 40
"""Letters before a value that are of its clause, in a text without marks."""
_ASKED_THERE = Pattern(r"\b(?:(?:so|and|now|then|to|at|on) )*(?:what|where|which|how)(?:'s)?\b", re.I)


def _sentences(text: str) -> list[tuple[int, int]]:
    """Where each sentence begins and ends; without any marks, a question word begins one."""
    cuts = [m.end() for m in patterns.finditer(r"[.?!;:](?=\s|$)|\u2026|\.\.\.", text)] if _MARKED.search(text) else [m.start() for m in _ASKED_THERE.finditer(text) if m.start()]
    return [(a, b) for a, b in zip([0, *cuts], [*cuts, len(text)]) if text[a:b].strip()] or [(0, len(text))]


_ALL_ON = Pattern(r"[^.?!;]{0,40}\b(?:with|through|behind) (?:(?:the |my )?[\w-]+ and (?:the |my )?[\w-]+|both|all|everything|the lot)(?: of them)?(?: on| up| in place)?\b", re.I)
WITH_ONLY = Pattern(r"\b(?:with|through|behind) (?:only|just) (?:the |my )?[\w -]{3,24}|\b(?:with|through|behind) (?:the |my )?[\w-]{3,16} (?:only|alone)\b", re.I)
"""What stays of several things that a reading was taken through."""


def stays_alone(query: Query, known: Fact) -> bool:
    """"f/10 with dome and gel on … with the gel only?": one of several stays."""
    return len(query.all("loss")) > 1 and known.origin == "said" and _ALL_ON.match(query.text[known.end :]) is not None and WITH_ONLY.search(query.text, known.end) is not None

"""Whether something is put up for checking: a yes-or-no question, or a statement with "right?" after it."""

from __future__ import annotations

from collections.abc import Sequence

from assistant import patterns
from assistant.language import two_scales
from assistant.language.items import Item
from assistant.language.segments import Segment
from assistant.patterns import Pattern, Patterns
from assistant.query import Ask, Fact

_TAG = Pattern(
    r"\b(?:right|correct|yes|yeah|yep|yup|aye|true|agreed?|innit|init|yeh|yea|ya|rite|eh|ok|okay|fine(?=\s*\?)|all right(?=\s*\?)|yes or no|right or wrong|true or false|fact or fiction)(?: (?:then|please|or (?:not|no|wrong)))?\s*[?!.]*\s*$"
    r"|[,:;.–-]\s+(?:so |is that |is it |are they |was that )?(?:the )?(?:right|correct|good|fine|ok|okay|proper)(?: exposures?| settings?)? (?:for|in|with|under) (?:the |my |this |that |a |such a |her |his )?[a-z]+(?: [a-z]+)?\s*\?\s*$"
    r"|[.,;:!]\s+(?:so |and |then )?(?:(?:the |my )?(?:exposure|light|picture|it|we|i|everything) )?(?:all )?(?:back (?:to(?! (?:an? )?(?:full|half|quarter|third|eighth|bare|iso\b|f\b|f/|one\b|two\b|three\b|four\b|five\b|six\b|seven\b|eight\b|nine\b|ten\b|\d))|where|as)|same (?:exposure|light) (?:as|again))\b[^?.!,;]{0,30}\?\W*$"
    r"|,\s*no\s*\?\s*$"
    r"|,\s*(?:right|correct|yes|agreed|true)\s*\?(?=\s+\w)(?:[^?.]|\.(?=\d))+[.!]?\s*$"
)
"""At the end, or before one more sentence that only tells: "..., right? It is lit by daylight."."""
_NO_TAG = Pattern(r"\b(?:put|puts|get|gets|make|makes|bring|brings|set|expose) (?:it|that|this|them|her|him|the \w+) right\s*[?!.]*\s*$|\b(?:stops?|third|half) (?:of|from|off) (?:right|correct)\s*[?!.]*\s*$|\b(?:on|to|the|my|his|her|your|at|is|was|were|got|set) (?:the )?(?:right|ok|okay)\s*[.!]*\s*$|^\W*(?:right|correct|yes|yeah|yep|true|ok|okay|no)\W*$|\b(?:if that's|if it's|that's) ok\b")
_PHRASES = Patterns(Pattern(words) for words in (
    r"\bis (?:that|this|it|he|she|they|all that|any of that) (?:right|so|correct|true|ok|okay|wrong|a fact|the case|really (?:so|true)|nonsense|rubbish|a myth|usable|printable|tolerable|salvageable|too (?:much|far)|good enough)\b|\bis it (?:true|correct|right|so|a myth)\b",
    r"\bare they (?:right|wrong)\b|\bam i (?:right|wrong|correct)\b|\bhave i (?:got|done) (?:that|this|it|the)\b|\bdid i (?:get|do) (?:that|this|it)\b|\bdo i have (?:that|this|it) right\b|\bam i thinking straight\b",
    r"\btrue or false\b|\bfact or fiction\b|\b(?:confirm|verify|agree|affirm|prove|support)(?: (?:it|this|that))? or (?:deny|refute|disagree|disprove|correct|reject|not)\b|\b(?:yea|yay) or nay\b|\b(?:right|correct|true),? or (?:wrong|not|false|(?:an? |just |only |pure |more |club |old )*(?:lore|folklore|myth|legend|nonsense|rubbish|bunk|hearsay|superstition|wives'? tale))\b",
    r"(?:^\W*|[.!] )(?:assess|verify|judge|evaluate|fact[- ]check)\b(?: the (?:claim|statement)| this| whether)?[:,]?",
    r"\b(?:does|do|did) (?:that|this|it|my \w+|these|those|the \w+) (?:hold|sound|check out|add up|work out|make sense|look right|stand up)\b|\bsounds? (?:right|about right)\s*\?|\bholds? (?:up|true)\s*\?",
    r"\b(?:isn't|isnt|doesn't|doesnt|dosen't|dosent|dont|don't|aren't|arent|won't|wont|wouldn't|can't|hasn't|didn't|is not|does not|ain't) (?:it|that|they|he|she|i|we|you|this)\b(?: (?:so|right|true|correct|the case))?\s*[?.!]*\s*$",
    r"\b(?:so )?you(?:'re| are) (?:saying|telling me)\b|\b(?:sanity )?check ?[:,]|\bcheck (?:that|this|it|my|me|these)\b|\bcheck please\b|\b(?:do you )?agree\s*\?",
    r"\bis (?:that|this|it) (?:still |about |really |then )*(?:the )?(?:right|correct|proper) (?:(?:film |shutter )?speed|rating|setting|aperture|f-?stop|power|distance|exposure|number|figure|way)\s*\?|\bthat(?:'?s| is| would be| will be|'ll be) the (?:right|correct|proper) (?:one|(?:\w+ )?(?:setting|speed|aperture|f-?stop|power|distance|exposure|number|figure|way))\s*\?",
    r"^\W*(?:is (?:that|it|this) )?(?:enough|ok|okay|right|correct|true)\s*\?\s*\w|\b(?:is that |is it )?enough(?: light| power)?\s*\?\s*$",
    r"\b(?:tell me|say|wondering|see) (?:if|whether) (?:this|that|it)(?:'s| is| was)? (?:right|so|true|correct)\b|\bmyth\b|\bi(?:'ve| have)? (?:was|been) told\b.*\bthat\b.*\?\s*$",
    r"(?:^|[.;,!] )(?:so |are )?(?:the |all the |all )?corners (?:still |fully |all |going |just )*(?:lit|covered|ok|okay|dark|black|bright|safe)\W*$",
))
"""Each looked for where its own letters stand."""
_Y_OR_N = Pattern(r"\by ?/ ?n\b")
_FAULT = Pattern(r"\bi (?:thought|reckoned|guessed|figured|assumed)\b[^?]*\b(?:what(?:'s| is)|whats) (?:right|correct|true)\W*$|\bwhere (?:did|do|does|am|have|has) (?:i|he|she|they|we|it|this)\b.{0,12}\b(?:wrong|slip)|\bwhat(?:'s| is| did i do| have i done) wrong (?:with|in|here)|\b(?:spot|find) (?:the|my|his|her) (?:error|mistake|slip)|\bwhich step is (?:wrong|off)|\bmark my (?:working|sum|homework)")
_VERB = Pattern(
    r"(?:^|[,.;:!?]\s+|\b(?:then|and|but|so|hi|hello|hey|um|uh|er|please|ok)[, ]+)(?:is|are|does|do|will|would|can|could|should|did|has|have|am|isn't|doesn't|won't|was(?!\W+(?:at|on|f\W?\d|\d|(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty) (?:feet|foot|ft|metres?|meters?)\b))|wouldn't|can't|don't|shouldn't|might|may|must(?= (?:i|we|you|one|the|it)\b))\b(?:[^?.]|\.(?=\d))*\?"
)
_OPENS_YES_NO = Pattern(r"^(?:.*[,.;:!]\s+|(?:at|with|on|in|after|by|if|when) (?!how\b|what\b|which\b|whose\b)[^,?]{1,40} )?(?:(?:so|ok|okay|hi|hey|and|but|um|er|well|then)[, ]+)*(?:does|do|will|would|is|are|must|did|should|can|could|doesn't|don't|won't|isn't)\b(?! (?:you|u|please|not)\b)")
"""A question that opens like one for a yes or a no, with or without its question mark; "how" may stand inside it."""
_INVERTS = Pattern(
    r"\b(?<!\bthan )(?<!\bas )(?<!\bthat )(?<!\bflash )(?<!\bstrobe )(?<!\bgun )(?<!\bwould )(?<!\bwill )(?<!\bcould )(?<!\bmight )(?<!'ll )"
    r"(?:(?!do (?:it|that|this) (?:properly|again|right|well|instead|justice|all|anyway|now|at|for|from|with|in|on|by|then)\b)(?:does|do|did|will|would|can|could|should|won't|doesn't) (?:it|the|this|my|her|his|that|these|those|they|we|i|f\W?\d|(?:an? )?(?:f|flash|light|iso|shutter|aperture|film))\b(?! (?:set|use|need)\W*$)(?<!\bdid it(?= (?:at|for|with|from|on|nicely|fine|well|just)\b))"
    r"|(?=is|are|was|am)(?<!problem )(?<!thing )(?<!point )(?<!trouble )(?<!question )(?<!catch )(?<!issue )(?<!idea )(?:is|are|was|am) (?:it|that|this|i|these|those|they)\b(?! (?:the|my|a|with|at|of|on)\W*$)"
    r"|(?:is|are|was) (?:the|my) (?:\w+ ){1,3}?(?:less|more|within|still|under|over|enough|sharp|right|safe|too)\b|is (?:the|my) (?:[a-z-]+ ){1,4}?(?:about |around |roughly |nearly |exactly |really )?(?:\d|f ?/ ?\d)|(?:is|are) \d+(?:\.\d+)? ?(?:m|ft|feet|metres) (?:still |also )?(?:sharp|in focus|enough|right|safe|ok|too (?:far|close|near))\b|(?:is|are) (?:1/\d+|f\W?\d[\d.]*|iso \d+) (?:still |also |then )?(?:ok|okay|fine|enough|right|safe|within|correct|too (?:fast|slow|bright|dark))\b)"
)
"""A verb before its subject inside a text without marks: "sync 1/60 can i get the daylight right"."""
_WORD_BEFORE = Pattern(r"\b(?:what|whats|what's|how|where|wheres|which|why|when|whose)\b[^.,;?]{0,40}$")
_WORD = Pattern(r"\b(?:what|whats|how|where|wheres|which|why|when|whose)\b")
_RELATIVE = Pattern(r"what(?:'s| is)? (?:it|i|you|he|she|we|they|one|needed|the book|my)\b(?! (?:need|should|do|set|must|drop|go|fall|come|become|read|give)s?\b)|what (?!(?:do|does|did|has|have|had|is|are|was|would|will|should|must|can|could)\b)(?:[a-z]+ ){1,6}?(?:told|taught|says?|said|claim\w*|wrote|writes|reckon\w*|swears?|swore|teach\w*|believ\w*|thought|thinks?)\b")
_WHICH_TELLS = Pattern(r"which (?:gives?|is|makes?|means?|costs?|adds?|leaves?|lets?|was|brings?|takes?)\b[^?.,;]*,\s*(?:so|and|therefore|hence)\b")
""""…, which gives two stops more, so …": told, and no question which."""
_WHICH_TAKES = Pattern(r"which (?:eats?|costs?|takes?|loses?|robs|steals|drinks|swallows|knocks|is|was)\b(?![^.?!,]*\b(?:more|less|most|least|better|best|worse|or|brighter|darker|the)\b)")
"""Told by the way of what stands before it: "the polariser, which eats a stop and a half"."""
_MATTERS = Pattern(r"\W*(?:does|do|will|would|is|isn't|doesn't|don't)\b[^?]*\b(?:matters?|affect\w*|alter\w*|make (?:a|any) difference|depends?)\b[^?]*\??\s*$")
_OPENS = Pattern(r"\W*(?:why|how|when(?![^?]*,\s*(?:does|do|will|would|is|are|must|should)\b)|where|who|what|which)\b")
_OPENS_LAST = Pattern(r"[.;!]\s+(?:(?:and|so|but|then|now),? )*(?:where|when|whose|who)\b(?![^?]*,\s*(?:does|do|will|would|is|are|must|should)\b)[^?]*\?\W*$")
"""The last question is one for a place or a time: "I load faster film. Where is the room now?"."""
_WHEN_IT = Pattern(r"\W*when (?:i|you|we|one|it|the|my|a|an|both)\b[^?]*,")
"""A case and what follows in it, "when I close down, … - true?", and no question when."""
_LONGEST = 3000
"""Characters beyond which nothing is put up for a yes or a no."""
_LAST_ASKS = Pattern(r"[.;!]\s+(?:(?:so|and|then|but|now|well),? )*(?:is|are|does|will|would|can|could|did|has|am|was|were)(?:n't)? (?:it|that|this|these|those|they|the|my|his|her|our|i|we|he|she|one|there|all|everything|both|flash|f ?/? ?\d[\d.]*|1/\d+|iso \d+|an?|any|these two)\b(?![^.?!]*\b(?:what|which|how|where|or)\b)[^.?!;]*[.!]*$")
"""The last sentence opens as a question for a yes or a no does, with no mark after it: "28 mm lens. does it light the whole frame"."""
_ORDERS = Pattern(r"(?:^|[.,;:!?]\s*|\b(?:please|just|and|then|now|to) )give\b|\b(?:can|could|will|would) (?:you|u) (?:please |just |kindly )*(?:give|tell|show|let)\b")
_GIVEN = Pattern(r"\b(?:would|will|can|could|does|do|should|might|did|won't|doesn't|can't)\b(?! (?:you|u)\b)[^?!;]*\bgive\b")
_STARTS = Pattern(r"\W*(?:(?:so|ok|okay|hi|hey|and|but|um|er|well|then)[, ]+)*(?:is|are|does|will|would|could|should|did|can|do|am)\b(?! (?:you|u|please|not)\b)(?! i (?:set|use|need|do)\b)|^\W*can i (?:use|set|shoot)\b")
_DECLARES = Pattern(r"^(?!(?:and|what|if|but|or|so what|how|why|when|which|where|plus|now|then|make)\b)[^?]*\b(?:is|are|lets?|loses?|costs?|gives?|means?|needs?|doubles?|halves?|makes?|equals?|gets?|adds?|takes?|eats?)\b[^?]*\b(?:than|as|stops?|darker|brighter|weaker|stronger|dimmer|same|twice|double|half|times|more|less|guide number|gn|range|reach|power|light|exposure|pops?)\b[^?]*\?\s*$")
_RANKS = Pattern(r"^(?:[^?]{0,60}[,.;:] )?\W*(?:(?:so|ok|okay|hi|hey|and|but|um|er|well|then)[, ]+)*(?:is|are|does|do|will|would|can|did|isn't|doesn't|don't|aren't|won't|wouldn't|isnt|doesnt)\b(?! (?:you|u|please|not)\b)[^?]*\b(?:than|as \w+ as)\b")
"""A comparison put as a question, with or without its question mark."""
_STATES = Pattern(r"^(?!.*\b(?:and if|what if|what about|how about)\b)(?!\W*(?:and|what|whats|if|so what|how|why|when|which|where|plus|now|then|make|at(?![^?]*\bthan\b)|set|give|tell|show)\b)[^?]{3,}?\b(?:is|are|isn't|aren't|doesn't|don't|never|has|have|gives?|makes?|means?|changes?|affects?|weakens?|dims?|los(?:es|e)|costs?|cuts?|darkens?|brightens?|burns?|syncs?|handles?|forgives?|tolerates?|falls?|freez(?:es|e)|needs?|stays?|works?|holds?|takes?|reach(?:es)?|adds?|increas(?:es|e)|reduc(?:es|e)|lowers?|raises?|keeps?|leaves?|recycles?|comes?|matters?)\b[^?]*\?\s*$")
"""A belief said with a question mark after it, of nothing that came out wrong."""
_RULES = Pattern(r"\b(?:is|are|makes?|means?|leaves?|costs?|drops?|loses?|gains?|doubles|halves|quadruples|darkens?|brightens?|needs?|gives?|gets?|stays?|changes?)\b")
_MEANS = Pattern(r"^\W*(?:so )?(?:push|pull|rat|open|clos|stopp|doubl|halv)\w*ing\b[^.?]{0,40}\bmeans\b|^[^.?]{0,60}\bis (?:about |exactly |just )?(?:the same (?:exposure|light) as|equivalent to)\b")
_ASKS_ELSE = Pattern(r"\b(?:what|whats|what's|how|which|where|why|what if|tell|show|give me|find|work out|name|state|reckon up|want|set|make|now|please|instead|scrap|sorry|no|wait|hang on)\b")
_OF_ONES_OWN = Pattern(r"\b(?:i|i'm|i've|we|we've|we're|my|our|he|she|they|his|her|him|them|it's|was|were|came|got|metered|reads?|meter)\b")
"""What is told of one's own scene states no rule."""
_LOOKS_THROUGH = Pattern(r"^\W*(?:(?:and|or|now|then|so|ok|okay) )*(?:through|with|in|into|using|off|from|behind|under|via|for|on|at) (?:[^,;?.!]|\.(?=\d))*\b(?:that|which)(?:'s)? \w+[^,;?]*\?*\W*$")
"""A half-sentence of what stands in the way, "through an umbrella that eats 2 stops?": nothing is put up for a yes or a no."""
_ELSEWHERE = Pattern(r"[.,;:!?]\s*(?:(?:and|but|so|then|now) )*if (?:i|we|you|the \w+|it|they) (?!need|want)(?![^?]*\b(?:does|do|is|are|will|would|should|can|could|it's|i'll|i'd)\b)[^?.,;]*\?*\W*$")
"""A half-sentence of another case, "if I back up to 17 feet?"."""
_PICTURES = Pattern(r"\b(?:(?<!whole )(?<!full )(?<!entire )frames?|negs|slides|shots?|pictures?|photos?|roll|prints|images?)\b(?![^?]*\bthan\b)")
_NAMES_ONLY = Pattern(r"[.,;:!?]\s+(?:so |the |and |my |on the )*(?:pops|flashes|bursts|hits|joules|watt[- ]?seconds|ws|stops|aperture|f-?stop|f-?number|power|distance|shutter|iso|guide number|seconds|(?:new |better |right |real )*(?:rating|ei|film speed))\s*\?\W*$|(?<!mm)[.,;:!?]\s+(?:so |the |and |my |on the )*(?:lens|ring|iris|barrel)\s*\?\W*$|\b(?:needs|takes|wants|asks for)\s*\?\W*$")
"""The last sentence only names what is wanted: "one pop does f/8, I need f/16. pops?"."""
_WHAT_IF = Pattern(r"\W*(?:(?:and|so|but|ok|then),? )*(?:what |and )if (?!so\b|not\b)[^,?;:]*\?*\W*")
"""Another case of what was asked, "what if four stops under is enough?", and nothing more."""
_BY_HOW_MANY = Pattern(r"(?:^|[.;!] )(?:and |so |then |but )?(?:by )?how (?:many stops|much) (?:more |less |brighter |darker )?(?:does|do|did|will|would|is|are) (?:(?!\b(?:right|true|correct)\b)[^?])*\?\W*$")
"""The last sentence asks for a number."""
_WHICH_TO_SET = Pattern(r"(?:^|[.,;:!?] )(?:(?:so|and|now|then) )*(?:(?:for|to (?:get|have|make|keep)|if (?:i|we) (?:want|need|like)|wanting)\b[^.?!;:,]{3,48} )?(?:should|do|shall|must|ought|would) (?:i|we|he|she|they|you|it|(?:the|my|our) (?:flash|light|lamp|head|strobe|gun|softbox|box|umbrella|key|fill|shutter|lens|aperture|power|film|camera|ring|dial|speed|setting|exposure|meter))\b(?:[^?.!;]|\.(?=\d))*?\d\S*(?: (?:ft|feet|foot|m|metres?|meters?|power|film|mm|of a second|seconds?|s))?,? or (?:(?:the|my) \w+ )?(?:at |to |for |on |an? )?(?:iso |f/?)?\d\S*(?: \w+){0,3}\W*$")
"""The last sentence asks which of two to set, "should I rate it at 200 or at 100?"."""
_WANTED_BY_NAME = Pattern(r"(?:^\W*|[.;:!?] )(?:(?:so|and|now|then),? )?(?:ws|joules|watt[- ]?seconds|energy|pops|flashes|bursts|stops|aperture|f-?stop|power|distance|shutter|iso|ev) (?:do i need|i need|we need|needed|to (?:get|hold|keep|reach|match|make|set|use|give|bring))\b[^?]*\?\W*$|[.;!] (?:so |and )?set(?:ting)?\?\W*$")
"""What is wanted, named first in the last sentence: "joules I need to hold f/11?", "set?"."""
_ASKING = frozenset({"what", "how_many", "how_much", "how_far", "how_long", "give"})


def is_claim(text: str, segments: Sequence[Segment], asks: Sequence[Ask], facts: Sequence[Fact]) -> bool:
    """Whether the text puts something up for a yes or a no."""
    if len(text) > _LONGEST:
        return False
    said = " ".join(text.lower().replace("’", "'").split())
    if " or " in said and _OFFERS_TWO.search(said) is not None or _WHAT_IF.fullmatch(said) or _BY_HOW_MANY.search(said) or _WHICH_TO_SET.search(said) or _WANTED_BY_NAME.search(said):
        return False
    if _FAULT.search(said) or _within(said):
        return True
    if _MATTERS.match(said):
        return True
    if _puts_up(said, segments, asks, facts):
        return True
    if said.endswith("?") and {f.quantity for f in facts} == {"film_speed"} and two_scales.one_speed(facts, text.lower()) is not None and not _ASKS_ELSE.search(said):
        return True  # "so 400 is 27 DIN?"
    if (_OPENS_YES_NO.search(said) or _TAG.search(said)) and _of_influence(text, facts):
        return True
    return "?" not in said and not _ASKS_ELSE.search(said) and _states_a_rule(said, text, facts)


_OFFERS_TWO = Pattern(
    r"\b(?:is|was|would|will) (?:it|that|this) (?:be |then )?(?:about )?(?:\d+|two|three|four|six|eight|sixteen) (?:pops|flashes|bursts|hits) or (?:\d+|two|three|four|six|eight|nine|ten|sixteen)(?: (?:pops|flashes|bursts|hits))?\W*$|"
    r"\b(?:do|should|shall|must|would|will|had) (?:i|we) (?:(?!\bif\b)[^.?!]){0,60}?(?:f ?/ ?|1/|iso )?\d[\d./]*(?: ?(?:m|ft|feet|metres|mm|s|stops?|film))?(?: [a-z]+){0,2} or (?:(?:from|at|to|by|with|on|put it|move it|go|set) )*(?:the )?(?:f ?/ ?|1/|iso )?\d[\d./]*[^.?!]*\?")
"""One of two values is to be chosen: "do I put it 3 m or 6 m from them?"."""
_ASKED_BACK = Pattern(r"[.!] (?:so )?(?:is|are) (?:he|she|that|this|it|they|(?:the|my|our) [a-z]+(?: [a-z]+)?) (?:right|correct|true|so|wrong|mistaken)\?$")
"""The last sentence asks only whether what was said before it is so: then "how far" and "which" before it ask nothing."""
_ASKS_FIRST = Pattern(r"(?:^|[.;:!] )\W*(?:(?:so|and|now|then) )?(?:what|how|which|where|who|whose|why)\b")


def _puts_up(said: str, segments: Sequence[Segment], asks: Sequence[Ask], facts: Sequence[Fact]) -> bool:
    """Whether it is put as one puts a claim, whatever it says."""
    if said.count("?") == 1 and _ASKED_BACK.search(said) and not _ASKS_FIRST.search(said):
        return True
    if _asks_openly([i for s in segments for i in s.items if i.kind == "cue" and i.word in _ASKING], said):
        return False
    if _OPENS_LAST.search(said) and not _is_phrased(said):
        return False
    if _is_phrased(said) or (_TAG.search(said) and not _NO_TAG.search(said)):
        return True
    if _STARTS.match(said) and (len(facts) > 1 or any(f.quantity == "aperture_range" for f in facts)) and "?" not in said:
        return True
    if _RANKS.match(said) or ((not facts or (" than " in said and not asks and ". " not in said)) and _STATES.match(said) and not _PICTURES.search(said)):
        return True
    if _LOOKS_THROUGH.match(said) or _NAMES_ONLY.search(said) or asks and _ELSEWHERE.search(said):
        return False
    if facts and _LAST_ASKS.search(said):
        return True
    if facts and (_inverts(said) or _IF_SO_WILL.search(said) is not None and _WORD.search(said) is None):
        return True
    if not asks and sum(f.quantity == "aperture" for f in facts) == 2 and _SAME_EXPOSURE.search(said):
        return True
    return _VERB.search(said) is not None or _proposes(said, asks, facts) or bool(facts) and (_told_itself(asks, facts, said) or not asks and _DECLARES.search(said) is not None)


_IF_SO_WILL = Pattern(r"\bif (?:i|we|you|one) (?!\w+ (?:what|which|how|where)\b)[^?.;]*?\b(?:will|would|does|do|can|could|is|are) (?:part|half|any|some|all|most|a (?:band|strip|bit)|the (?:frame|picture|flash|shutter|background|room|negative|film|light|exposure|aperture|guide number|power|depth)|my [a-z]+|it|they) [^?.;]*\?\W*$")
"""A case and what would follow in it: "if I set 1/250 with flash will part of the frame come out black?"."""
_SAME_EXPOSURE = Pattern(r"[,;.:] (?:(?:so|then|is that|are they|are those) )*(?:all |both )?(?:the )?same exposure\b[^?.;,]{0,30}\?\W*$")
"""Said last and with no verb: "1/500 at f/5.6 and 1/125 at f/11, same exposure?"."""


def _is_phrased(said: str) -> bool:
    """"is that right", "true or false", "y/n"."""
    return any(_PHRASES[number].search(said) for number in _PHRASES.to_try(said)) or "/" in said and _Y_OR_N.search(said) is not None


def _within(said: str) -> bool:
    """"am I still inside what the film takes": within a limit or not, and no question for a value."""
    bounds = "inside" in said or "within" in said
    if not bounds and not _WAYS.search(said):
        return False
    from assistant.solving.claim_latitude import asks_of_latitude, is_within

    if not bounds:
        return asks_of_latitude(said)
    return patterns.search(r"\b(?:films?|stock|negs?|negatives?|slides?|chrome|roll)\b", said) is not None and is_within(said)


_WAYS = Pattern(r"\b(?:over|either|each way|both ways|plus or minus|is (?:all|the most|the limit))\b")
"""What a limit of so much over and so much under, or either way, is told with."""


def _states_a_rule(said: str, text: str, facts: Sequence[Fact]) -> bool:
    """"three times the distance is a ninth of the light": what follows from what, said outright, is there to be checked."""
    if _MEANS.search(said) and len(facts) > 1 and not any(f.quantity in ("guide_number", "modifier", "count") for f in facts):
        return True
    if _RULES.search(said) is None or any(f.quantity == "guide_number" for f in facts):
        return False
    if _of_influence(text, facts):
        return True
    if _OF_ONES_OWN.search(said) is not None or any(f.quantity == "modifier" for f in facts):
        return False
    from assistant.solving.claim_marks import in_marks
    from assistant.solving.claim_rules import judge_rule

    return judge_rule(in_marks(text, facts)) is not None


def _inverts(said: str) -> bool:
    """"sync 1/60 can i get the daylight right", and not "how far down do i dial it": a verb before its subject and no question word in front."""
    found = _INVERTS.search(said)
    return found is not None and not _PICTURES.search(said) and _WORD_BEFORE.search(said[: found.start()]) is None


def _of_influence(text: str, facts: Sequence[Fact]) -> bool:
    """"does a slower shutter darken the flash": whether what is put is that one thing changes another."""
    from assistant.solving.claim_influence import judge_influence
    from assistant.solving.claim_marks import in_marks

    return judge_influence(in_marks(text, facts)) is not None


_PUT_UP = Pattern(r"\b(?:is it (?:true|right|correct|so|a fact) that|true or false|fact or fiction)\b[^.;?!]*[a-z] $")
"""Before the "which" of a thing that is put up: "is it true that a gel which passes half …"."""


def _asks_openly(asking: Sequence[Item], said: str) -> bool:
    """A question word that wants a value, not the one of "I was told what ..."."""
    return any(not _RELATIVE.match(said, i.start) and not _WHICH_TELLS.match(said, i.start) and not (said.startswith("which ", i.start) and _PUT_UP.search(said[: i.start])) and not (said[: i.start].endswith(", ") and _WHICH_TAKES.match(said, i.start)) and not (i.word == "give" and _gives(said)) and not (i.word == "how_many" and said[i.start : i.end].startswith("number")) for i in asking) or _OPENS.match(said) is not None and not (_WHEN_IT.match(said) and _TAG.search(said))


def _gives(said: str) -> bool:
    """"would a flash of 110 give me f/11", "two of them give me a stop": no order to give."""
    return _ORDERS.search(said) is None and (_GIVEN.search(said) is not None or _TAG.search(said) is not None or _is_phrased(said))


_LEADS_TO = Pattern(r"^\W*(?:(?:so|and|then|ok) )?(?:going|chang|mov|open|clos|stopp|switch|doubl|halv|turn|dial|slow|speed|push|pull|drop|swap)\w*\b[^?]*\b(?:costs?|loses?|gives?|gains?|adds?|is|makes?|means?|takes?|buys?)\b[^?]*\?\s*$")


_SO_MANY_STOPS = Pattern(r"\b(?:that'?s|that is|that makes|makes?|so it's|it's|it is|together|in all|altogether|total|take|takes|cost|costs)\b[^.?!,]{0,28}(?<!\bin )\bstops?\W*\?$")


def _sums_up(said: str, asks: Sequence[Ask], facts: Sequence[Fact]) -> bool:
    """"a 0.6 and a 0.9, that's five stops?": what two or more losses come to, told with a question mark."""
    if not (facts and facts[-1].quantity in ("stops", "loss", "filter_loss")) or sum(f.quantity in ("nd", "factor", "loss", "filter_loss") for f in facts[:-1]) < 2:
        return False
    return all(a.quantity == "stops" for a in asks) and _SO_MANY_STOPS.search(said) is not None and _WORD.search(said) is None


_IN_PLACES = Pattern(r"\bfrom (?:about )?[\d.]+[^?]{0,16} to [\d.]+")


def _told_itself(asks: Sequence[Ask], facts: Sequence[Fact], said: str) -> bool:
    """"going from 1/60 to 1/125 costs two stops of ambient?": the stops that a change would be asked for are told with it."""
    told = any(f.quantity in ("stops", "loss", "relation") for f in facts)
    return told and all(a.quantity == "stops" or a.quantity == "distance" and _IN_PLACES.search(said) for a in asks) and _LEADS_TO.search(said) is not None and _WORD.search(said) is None


_COMES_TO = Pattern(r"\bstops? (?:under|over|below|above|from|off|up from|down from) f\W?[\d.]+ (?:is|makes|gives|would be|means|=) f\W?[\d.]+\W*$")


def _proposes(said: str, asks: Sequence[Ask], facts: Sequence[Fact]) -> bool:
    """"GN 110 at 5 ft: f/11?": a value at the end, with a question mark and nothing asked."""
    if _sums_up(said, asks, facts):
        return True
    if asks or not said.endswith("?") or not facts or patterns.match(r"\W*(?:and |but |so )?(?:if|what if|suppose|say)\b", said):
        return False
    kinds = {f.quantity for f in facts}
    last = max(facts, key=lambda f: f.start)
    if any(f.quantity == "relation" and f.to == "aperture" for f in facts) and _COMES_TO.search(said):
        return True  # "two stops under f/8 is f/4?"
    whole = {"guide_number", "distance", "aperture"} <= kinds
    if kinds == {"distance", "stops"} and len(facts) == 3 and patterns.search(r"\b(?:within|inside|less than|more than)\b[^?.]{0,24}\bstops?\b[^?.]{0,30}\?$", said):
        return True  # "front 10 ft, back 13: the back inside a stop of it?"
    return last.quantity in ("aperture", "distance", "power", "film_speed", "guide_number", "number") and (whole or patterns.search(r"\b(?:so|therefore|hence|thus)\b[^,.;?]*\?$", said) is not None)

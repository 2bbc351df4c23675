"""Wordings of an everyday hand put as they are usually put: "flash at a quarter", "how far down does the paper fall against her".

Each row has letters without which it is not looked for, and takes in a whole way of putting it; none of them adds a figure.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.patterns import Pattern

_SHARE = r"(?:an? (?:half|third|quarter|eighth|sixteenth|thirty[- ]second|sixty[- ]fourth))"
_AMOUNT = r"(?:(?:an?|one|two|three|four|half an?|\d+(?:\.\d+)?)(?: and (?:an? |one |two )?(?:half|thirds?|quarter))?(?: \d/\d)? stops?(?: and (?:an? |one |two )?(?:half|thirds?|quarter))?|\d \d/\d stops|(?:a |one )third of a stop|two thirds of a stop|half a stop)"
_LAMP = r"(?:flash|strobe|speedlight|flashgun|gun|head|monolight|monoblock)"
_CLOTH = r"(?:brolly|umbrella|soft ?box|octa\w*|scrim|diffuser|dome|grid|snoot|shoot-through|silk|beauty dish|bare head|bare bulb|bare flash|cloth|sheet|tissue|hanky|handkerchief|bounce card)"
_MARK = r"(?:1\.[248]|2(?:\.[258])?|3\.[25]|4(?:\.5)?|5\.6|6\.3|7\.1|8|9|10|11|13|14|16|18|20|22|25|29|32)"
_MANY = r"(?:\d+|two|three|four|five|six|eight|ten|twelve)"
_A_PICTURE = r"(?:picture|frame|shot|photo|photograph|exposure|negative)"


def _so_many_a_frame(things: str) -> Pattern:
    """"30 bulbs left and every picture needs 4 of them": what there is, and what goes for one."""
    return Pattern(
        rf"(?:\b(?:i|we)(?:'ve| have)(?: got)? |\bthere are |\b(?:i|we) have |^)(?:only |just )*(?P<all>\d+) (?:flash ?)?{things}(?: (?:left|in (?:the|a|my) (?:box|bag|carton|case)|in all|to go|remaining|today|altogether))*[,.;]? (?:and |but )?"
        rf"(?:(?:each|every|a|per|one) {_A_PICTURE} (?:needs?|takes?|uses?|wants?|gets?|burns?|has) (?P<one>{_MANY})(?: of (?:them|these|those)| (?:flash ?)?{things})?|(?:i )?(?:(?:use|need|burn|fire|give|want) )?(?P<two>{_MANY})(?: of (?:them|these|those)| (?:flash ?)?{things})? (?:for |to |in )?(?:each|every|a|per|the|one) {_A_PICTURE})(?=\s*[,.;:?!])", re.I)


_ROWS: tuple[tuple[str, Pattern, str | Callable[[re.Match[str]], str]], ...] = (
    # an eighth said of a flash is of its power, also in the sun, where "an eighth" by itself would be a time
    ("lash", Pattern(rf"(?P<lamp>\b{_LAMP}(?: (?:is|was|set|sits|stands))?(?: at| on| to)) (?P<share>{_SHARE}|half)(?=\s*(?:[,.;:?!]|$|and\b|with\b|gave\b|gives\b|looked\b|looks\b|was\b|is\b|for\b|through\b|into\b|lit\b|then\b|so\b|but\b))(?! (?:and|or) (?:a half|a third|two))", re.I), r"\g<lamp> \g<share> power"),
    ("un", Pattern(rf"(?P<lamp>\b(?:sun|sunny|sunlit|sunlight|sunshine)\b[^?]{{0,60}}?\b{_LAMP}(?: (?:is|was|set|sits|stands))?(?: at| on| to)) (?P<share>1/(?:2|4|8|16|32|64|128))(?=\s*(?:[,.;:?!]|$|and\b|with\b|gave\b|looked\b|was\b))", re.I), r"\g<lamp> \g<share> power"),
    ("possible", Pattern(r"^\W*(?:(?:can|could|would|will) (?:you|anyone|anybody|someone) (?:please |kindly )?)?(?:tell me|say|let me know|check|see) (?:whether|if) (?P<what>this|it|that|the following) is possible\b", re.I), r"is \g<what> possible"),
    # "which aperture drops the quay by two stops" and "… puts the quay two stops down": so much darker, and no loss
    ("hich ", Pattern(rf"\b(?P<which>which (?:aperture|f-?stop|f-?number|stop|setting)) (?:(?:will|would) )?(?:drops?|lowers?|darkens?|dims?|takes? down|brings? down|knocks? down|sinks?|puts?|takes?|brings?) (?P<what>(?:the|my|that|this) (?!flash|fill|key|strobe)[a-z]+(?: behind(?: [a-z]+){{1,2}})?|it)(?: down)?(?: by| to)?(?: (?:exactly|just|about))? (?P<many>{_AMOUNT})(?: (?:down|darker|under(?! (?:the|my|her|his)\b)))?(?=\s*[,.;?!]|\s*$| and\b)", re.I), r"\g<which> makes \g<what> \g<many> darker"),
    ("bare", Pattern(rf"(?P<cloth>\b{_CLOTH}\b[^.?!]{{0,60}}?\b)(?:it's|it is|it was|it reads|it comes out|it came out|that's|that is|is|was|reads|comes out|came out) (?P<many>{_AMOUNT}) (?:down|darker|weaker|less|less light)? ?(?:on|than|under|below|against|from) (?:the |a |my )?bare (?:head|bulb|flash|gun|lamp|reading)\b", re.I), r"\g<cloth>it costs \g<many>"),
    ("EV", Pattern(r"\bwhat EV (?P<is>is|'s|was) (?P<that>that|this|it)\b\W{1,3}(?P<at>at (?:ISO|ASA) ?\d+)(?:,? I mean)?\b", re.I), r"what EV \g<at> \g<is> \g<that>"),
    (" or ", Pattern(r"(?P<told>\bf/\d[^?]*\b(?:do|should|shall|would|must|can) (?:i|we) (?:set|use|dial|shoot at|go to|take|open to|close to)(?: the (?:ring|lens) (?:to|at|on))?) (?P<one>1\.4|2|2\.8|4|5\.6|8|11|16|22|32) or (?P<other>1\.4|2|2\.8|4|5\.6|8|11|16|22|32)(?=\s*(?:\?|$))", re.I), r"\g<told> f/\g<one> or f/\g<other>"),
    (" setting", Pattern(r"(?P<film>\b\d{2,4} film(?: \w+){0,2}? )(?:on|at) the (?P<speed>\d{2,4}) setting\b", re.I), r"\g<film>at \g<speed>"),
    ("dial ", Pattern(r"\b(?P<dial>dial)(?: is| was| still| had been| has been|'d been)? (?:still )?(?:left |stuck |still )?(?:sitting|standing|sat|left|parked|stuck|resting|lying) (?:on|at) (?=\d{2,4}\b)", re.I), r"\g<dial> on "),
    (" had been ", Pattern(r"\b(?P<if>if|suppose|say) (?:it|i|the dial|the meter|my dial) had been (?:left |sat |sitting |standing |parked |stuck |set )?(?:on|at|to) (?=\d)", re.I), r"\g<if> it had been on "),
    ("hade", Pattern(r"\b(?P<where>in (?:the |open |deep |light |full ){0,2}shade)(?: here| there)?,? (?:i get|i got|i have|i've got|it's|it is|it was|we get|we've got)(?: a)? (?=f/?\d)", re.I), r"\g<where> I meter "),
    (" in ", Pattern(r"(?P<would>\b(?:would|will|'d|alone|by (?:itself|themselves)) )(?:expose|light|record) (?:the |my |this |a )?(?:film|frame|sheet|negative|neg|plate|paper|slide|picture|it) (?:correctly|properly|right|rightly|fully) in (?=(?:about |some )?(?:\d|two|three|four|five|six|eight|ten|fifteen|twenty|thirty|sixty|half))", re.I), r"\g<would>need "),
    ("-in-law", Pattern(r"\b(?P<kin>brother|sister|father|mother|son|daughter)s?-in-law\b", re.I), r"\g<kin>"),
    ("ike ", Pattern(r"\b(?:more|nearer) like (?=(?:an?|one|two|three|half|\d[\d.]*)\b)", re.I), "about "),
    ("ops at ", Pattern(r"(?P<before>^\W*|[.;:,!] )(?P<what>pops|flashes|bursts) (?=(?:at|on) (?:that|this|the same|half|quarter|1/\d+)(?: power)?\W*$)", re.I), r"\g<before>how many \g<what> "),
    ("dial in", Pattern(r"(?P<told>\bf/\d[^?]*\b(?:gn|guide)\b[^?]*|\b(?:gn|guide)\b[^?]*\bf/\d[^?]*)\bwhat (?P<do>do|should|must) (?P<who>i|we) dial in(?=\W*$)", re.I), r"\g<told>what power \g<do> \g<who> set"),
    (" in ", Pattern(r"\b(?:leans?|leaned|bends?|bent|shuffles?|steps?|moves?|comes?|came) (?:in|forward)(?: by| about| some)? (?P<far>\d[\d.]*(?: ?(?:cm|mm|m|ft|feet|foot|inches|in|metres?|centimet(?:re|er)s))?|(?:a|one|two|three|half a) (?:foot|feet|metre|metres|pace|paces|inch|inches)) (?:towards?|to|into) (?:it|the (?:light|flash|box|lamp|softbox|key|head))\b", re.I), r"moves \g<far> closer to the light"),
    ("its ", Pattern(r"\bits (?:own )?light (?:alone |by itself |on its own )?(?=(?:is|be|comes|reads|should|must|sits|lies) )", re.I), "the flash alone "),
    (" to f", Pattern(r"\b(?P<what>(?:room|window|sky|sun|daylight|ambient|flash|key|fill|rim|hair|backdrop|background)(?: light)?) (?:drops|drop|falls|fall|sinks|fades|dips|rises|climbs|(?:goes|comes) (?:down|up))(?: off| away)? to (?=f ?/?\d)", re.I), r"\g<what> reads "),
    (" way ", Pattern(r"\bis there (?:any|a|some|no)(?: other)? way (?:(?:that )?(?:i|we) can|(?:for me |for us )?(?:to|of)) (?=(?:expose|shoot|get|hold|keep|have|match|balance|photograph|do)\b)", re.I), "can I "),
    ("ow fast", Pattern(r"\bhow fast (?:do|does|is|will|would|should|must|can) (?P<film>(?:i |the |my |this |that |a |an |some )?(?:(?:iso |asa )?\d{2,4}(?: (?:film|roll|stock))?|film|roll|stock|it))(?:(?: (?:end up|come out|turn out|work out|rated|rate|be|really|now|then|as)){1,3}(?= |\?|,|$)|(?= (?:(?:if|when|once) (?:it's |it is |i )?)?(?:push|pull)))", re.I), r"what speed is \g<film> rated at"),
    ("p", Pattern(r"\b(?:top|topmost|upper|uppermost) (?P<row>rows?|ranks?|tier|bench)\b(?! of (?:frames|the (?:sheet|strip|page)))", re.I), r"back \g<row>"),
    ("o", Pattern(r"\b(?:bottom|lowest|lower) (?P<row>rows?|ranks?|tier|bench)\b(?! of (?:frames|the (?:sheet|strip|page)))", re.I), r"front \g<row>"),
    ("ow m", Pattern(r"\b(?P<asks>how (?:many stops|much(?: light)?)(?: of light)? (?:do|does|will|would|did|are)) (?:the|these|those|all|all the|all of the) (?:two|three|four|five)(?: of (?:them|these|those)| things| together)?(?= (?:take|cost|lose|eat|rob|steal|swallow|come|add|make|amount|lost|losing)\b)", re.I), r"\g<asks> they"),
    (" at ", Pattern(r"\b(?P<metered>metered|shot|exposed|rated|ran|run) (?:all (?:of )?)?(?:the|my|our|this|that|his|her|their) (?:(?:whole|entire|complete) )?(?:wedding|party|match|concert|show|game|play|session|ceremony|reception|day|evening|race|regatta|gig|job|service|dance|afternoon|morning|trip|holiday|thing|lot|parade|feast) (?=at (?:iso |asa )?\d{2,4}\b(?! ?(?:m|mm|ft|feet|metres?|meters?)\b))", re.I), r"\g<metered> it "),
    ("able", Pattern(r"\btable(?:[- ]?(?P<top>tops?)\b| (?=tennis\b))", re.I), lambda m: "counter" if m["top"] else ""),
    ("table", Pattern(r"\b(?P<what>cake|dinner|dining|head|top|wedding|kitchen|coffee|card|pool|buffet|work|garden|picnic|dressing|altar|trestle) table\b", re.I), r"\g<what> stand"),
    ("table", Pattern(r"\b(?P<where>focus(?:ed|ing|s|sed|sing)?(?: is)? on (?:the |a |that |their )?|(?:sit|sits|sat|sitting|seated|people|guests|faces|everyone|those) (?:at|round|around) (?:the |a |one |that |their )?)?table(?P<of> of (?:(?:the |our |\w+ )?(?:guests|people|\w*men|\w*women|friends|crew|rowers|oars\w+|members|players|singers|dancers|children|kids|diners)|(?:two|three|four|five|six|seven|eight|nine|ten|twelve|\d{1,2}) (?:people|guests))\b)?", re.I), lambda m: f"{m['where'] or ''}bench{m['of'] or ''}" if m["where"] or m["of"] else m[0]),
    ("oad", Pattern(r"\b(?P<load>load|loaded|loading)(?: up)?(?: some| an?)? (?P<speed>25|32|50|64|80|100|125|160|200|320|400|500|640|800|1000|1600|3200)(?=(?: (?:instead|now|then|film|in|again|please))*\W*(?:$|[,.;?!]))", re.I), r"\g<load> ISO \g<speed>"),
    ("o ", Pattern(r"\b(?:(?:i|we)(?:'d| had| have|'ve)?(?: got)? |there (?:is|was) |with )?no (?:diffuser|softbox|soft box|umbrella|brolly|dome|gel|grid|scrim|box)(?: with (?:me|us)| here| to hand| handy| left)?,? so (?=(?:i|we|he|she) )", re.I), ""),
    ("away", Pattern(rf"\b(?P<who>that|which|it|they|sheet|box|softbox|umbrella|brolly|gel|grid|scrim|silk|cloth|filter|diffuser|dome|net|sock) (?:takes?|robs?|steals?) (?:away (?P<many>{_AMOUNT})|(?P<lot>{_AMOUNT}) away)(?! from)", re.I), lambda m: f"{m['who']} costs {m['many'] or m['lot']}"),
    ("meter ", Pattern(r"\b(?P<meter>meter) (?:indicates|indicated|registers|registered|displays|displayed|suggests|suggested|recommends|recommended)\b", re.I), r"\g<meter> says"),
    ("right", Pattern(r", (?:an?|my|our|his|her|some|one) (?!meter|table|dial|sheet)[a-z]+(?: [a-z]+){0,3}? (?:says|said|claims|claimed|reckons|reckoned|swears|swore|insists|insisted|thinks|tells me|told me)(?= ?[.?!]\s*(?:is|was|are|were) (?:he|she|they|that|this|it) right\b)", re.I), ""),
    ("ow far out", Pattern(r"\bhow far out (?P<is>is|was|will|would|am|are)\b(?P<what> (?:the |my )?(?:flash |whole )?(?:exposures?|frames?|shots?|negs?|negatives?|slides?|pictures?))", re.I), r"how many stops out \g<is>\g<what>"),
    ("ow far ", Pattern(r"\bhow far (?:down|under|below|behind) (?:does|do|will|would|did) (?P<what>(?:the |my |her |his )?\w+(?: \w+)?) (?:fall|drop|sit|lie|go|come|end up|read|land)(?: down)? (?:against|below|under|behind|beneath|compared (?:with|to)|relative to) (?P<whom>(?:the |my )?\w+)(?=\s*(?:\?|$))", re.I), r"how many stops darker is \g<what> than \g<whom>"),
    ("ow slow", Pattern(r"\bhow slow (?:do|must|should|shall|can|would) (?:i|we) (?:have to |need to )?(?:drag (?:it|the shutter)|go|shoot|set it|set the shutter|make it)\b", re.I), r"what shutter do I need"),
    ("in", Pattern(r"(?P<before>^\W*|[.;!?] +(?:(?:so|and|but) )?)(?P<still>(?:still|just|all|safely|comfortably) )?(?P<within>within|inside|in range of) (?=(?:what (?:the|my|this|that)|(?:the|its|my|that|this|his) (?:(?:film|slide|stock)(?:'s)? )?(?:latitude|tolerance|leeway|limits?|range|margin))\b[^.?!;\d]{0,40}\?\s*$)", re.I), r"\g<before>is it \g<still>\g<within> "),
    ("next", Pattern(r"\b(?:between|from) (?:each|one|every|a|any) (?:flash|pop|burst|firing|shot)(?: to|,? and| until) the next(?: one| flash| pop| burst)?\b", re.I), "from one to the next"),
    ("first ", Pattern(r"\b(?P<how>between|from) the first (?:flash|pop|burst|firing|shot) (?P<to>and|to|until) the last(?: one| flash| pop| burst| firing| shot)?\b", re.I), r"\g<how> the first \g<to> the last"),
    ("expos", Pattern(rf"\b(?:the|my|our) (?:lab|printer|shop|darkroom)(?: man| people)? (?:said|says|told me|tells me|reckoned|reckons|wrote|called (?:it|them))(?: (?:that|they're|they were|it's|it was|they|it|were|was|is|are))*(?: (?:a good|about|roughly|some|at least|a full|by))? (?P<many>{_AMOUNT}) (?P<way>under|over)-?exposed\b", re.I), r"they came back \g<many> \g<way>exposed"),
    ("aperture ", Pattern(rf"\b(?:gives|gave|yields|makes|produces|reaches)(?: me| us)? an? aperture (?=(?:only |just |about )?{_AMOUNT} (?:short|under|below|too|less|down|shy)\b)", re.I), "comes out "),
    (" a ", Pattern(rf"\b(?P<lamp>{_LAMP}|light|lamp)(?P<at> at| just| only| about| from)? an? (?=(?:metre|meter|foot|yard|pace)\b)", re.I), r"\g<lamp>\g<at> 1 "),
    ("near enough", Pattern(r",? near enough(?:, (?:right|yes|no))?(?=\s*\?\s*$)", re.I), r", right"),
    (" DIN", Pattern(r"\b(?P<many>one|two|three|four|six|nine|\d{1,2}) (?P<more>more|up|less|down|higher|lower)(?: steps?| degrees?| points?)? (?:on|in|along) (?:the |a )?DIN(?: scale| numbers?| figures?)?\b"), r"\g<many> DIN \g<more>"),
    ("metre", Pattern(rf"(?P<what>\b(?:lights?|lamps?|candles|windows?|room|hall|disco|sky|stage|wall|backdrop|background|scene|church|key|fill|hair|rim|flash|ambient|it|that|which|street|barn|house)) metres?(?= (?:at |about |just |only )*(?:f ?/? ?\d|1/\d|an? (?:quarter|half|third|eighth|fifteenth|thirtieth|sixtieth)\b|half a\b|(?:\d+|one|two|three|four|five|six|eight) (?:seconds?|secs?|s)\b|{_MARK}\b(?! ?(?:m|metres?|ft|feet|away|from|\.\d)\b)))", re.I), r"\g<what> meters"),
    ("ing ", Pattern(rf"\b(?P<what>(?:flash|key|main|fill|rim|hair|head|strobe|gun|kicker)(?: light)?)(?:'s| is) (?:doing|putting out|giving|kicking out|chucking out)(?: me| us| about| just| only)* (?=(?:f ?/? ?)?{_MARK}(?:$|[,;:?!]|\.(?!\d)| (?:as well|too|at|on|there|now|and|so|but|here|by|already)\b))", re.I), r"\g<what> reads "),
    ("op", Pattern(
        r"(?P<one>\b(?:one|a|a single|each|1) (?:full )?(?:pop|flash|burst|bang|hit)\b[^?]{0,80}?\b(?:i'll|i will|i'm going to|i|we|we'll|we will|going to|then)(?: then| just| only| want to| need to)* (?:fire|give it|set off|let off|hit it with|shoot off))"
        r" (?P<many>two|three|four|five|six|seven|eight|nine|ten|twelve|sixteen|\d{1,2})(?P<more> more)?(?= (?:all )?(?:at|on|in|from|into|onto|over)\b(?! ?(?:once|full|half|quarter|1/))|\s*[,;?!]|\s*$|\.(?!\d))", re.I), r"\g<one> \g<many>\g<more> pops"),
    (" 1/", Pattern(r"\b(?:guide|gn)(?: numbers?)?(?: (?:for|of) (?:the|this|these|that|my|those|a) (?:[a-z]+ )?(?:bulbs?|flash(?:es)?|gun|head|lamp|one))?,? (?P<at>(?:at|on|with) 1/(?:15|25|30|50|60|100|125|200|250|500)(?: s(?:ec)?\b)?)(?: shutter| sync)?,? (?:is|was|comes to|works out (?:at|as)|gives)(?: about)? (?P<guide>\d+ ?(?:ft|feet|foot|m|metres?|meters?))\b", re.I), r"guide number \g<guide> \g<at>"),
    ("fill", Pattern(r"(?P<before>\b(?:key|main)\b[^?.]{3,40}, ?(?:and )?(?:the )?fill\b[^?.,]{3,30}, )(?:(?:on|with|from|they're|both) )*(?:twin|two|a pair of|2) (?:(?:identical|matched|equal|equally strong|matching|like) )?(?P<what>heads|flashes|lights|guns|units|strobes|lamps)(?=\s*[,.])", re.I), r"\g<before>identical \g<what>"),
    ("fill", Pattern(r"(?P<told>^[^?]{12,}[.,;:] )(?:and )?(?:the )?(?P<ratio>(?:key|main)[- ]to[- ]fill|(?:key|main):fill)(?! ?ratio)(?:,? (?:what(?:'s| is) (?:it|that|that then)|is what))?\s*\?\s*$", re.I), r"\g<told>what is the \g<ratio> ratio?"),
    (" at ", Pattern(rf"\b(?P<what>(?:windows?|room|hall|sky|ambient|daylight|background|backdrop|stage|lamps?|church|street|house lights|scene|wall|garden|doorway|kitchen|studio|lights)(?: light)?)(?P<at> at (?:1/\d+|an? (?:half|quarter|(?:hundred and )?[a-z]+(?:-[a-z]+)?th)|one (?:second|[a-z]+th)|half a second)(?: of a second| second| sec| s)?) (?P<reads>reads?|meters?|gives?|says?|shows?|measures?) (?P<mark>f ?/? ?\d+(?:\.\d+)?|{_MARK})(?!\.?\d| ?(?:ft|feet|m|metres|stops?|at|and a)\b)", re.I), r"\g<what> \g<reads> \g<mark>\g<at>"),
    ("aperture ", Pattern(r"\b(?P<does>does|do|can|will|would) (?:the |my )?(?:lens(?:'s)? |camera )?aperture (?=(?:change|affect|alter|control|act|influence|govern)\b)", re.I), r"\g<does> the aperture "),
    ("bulbs", _so_many_a_frame("bulbs"), r"I have \g<all> flashes left and each frame takes \g<one>\g<two> flashes"),
    ("pops", _so_many_a_frame("pops"), r"I have \g<all> pops left and each frame takes \g<one>\g<two> pops"),
    ("ing ", Pattern(r"^\W*(?:for|to) (?:freez(?:e|ing)|stop(?:ping)?) (?P<what>[a-z' ]{2,40}?),? (?:which|what)(?: one| flash| flash duration)? (?:is|would be|works) (?:better|best)[,:]? (?:a |an |the )?(?:flash )?(?:duration |burst |t0?\.5 )?(?:of )?(?P<one>1/\d+)(?: of a second| s| sec)? or (?P<other>1/\d+)(?: of a second| s| sec| second)?(?: flash(?: duration)?)?\s*\?*\s*$", re.I), r"which is better for freezing \g<what>, \g<one> or \g<other> flash duration?"),
    ("duration", Pattern(r"\bwhich flash duration (?:is|would be|works) (?P<how>better|best) (?:for|to) (?P<what>(?:freez|stop)(?:e|ing|ping)? [a-z' ]{2,40}?)[,:] (?P<one>1/\d+) or (?P<other>1/\d+)(?: of a second| s| sec)?\s*\?*\s*$", re.I), r"which is \g<how> for \g<what>, \g<one> or \g<other> flash duration?"),
    ("overexpos", Pattern(r"\b(?P<if>if (?:i|we)(?:'m| am|'re| are|'d| would|'ve| have)?(?: rather| going| got)? (?:to )?)(?:lean|err|tend|want to err|want to lean|be) (?:towards?|to|on the side of|to the side of) overexpos(?:ure|ing)\b", re.I), r"if I want more exposure"),
    ("underexpos", Pattern(r"\b(?P<if>if (?:i|we)(?:'m| am|'re| are|'d| would|'ve| have)?(?: rather| going| got)? (?:to )?)(?:lean|err|tend|want to err|want to lean|be) (?:towards?|to|on the side of|to the side of) underexpos(?:ure|ing)\b", re.I), r"if I want less exposure"),
)
_STOPS_OF_PACKS = Pattern(r"\b(?:how many stops|by how much|how much)\b[^?]*\bthe (?P<pack>\d{2,4})(?= (?:give|gives|over|than|make|makes|put|puts)\b|\s*\?)(?! ?(?:ws|w|j|joules?|watts?)\b)", re.I)
_PACK = Pattern(r"\b(?P<many>\d{2,4}) ?(?P<unit>ws|watt[- ]?seconds?|joules?|j)\b", re.I)


_FRONT_LIGHT = Pattern(r"\bfront (?P<lamp>light|lamp|flash|head|strobe)\b(?! (?:falls?|loss))", re.I)
_KEY = Pattern(r"\b(?:key|main|fill)\b", re.I)
"""With one of these named, the light from the front may be either."""


def as_is_usual(text: str) -> str:
    """A text with such wordings put as they usually are.

    >>> as_is_usual("Bright sun, flash at a quarter and f/16 looked right.")
    'Bright sun, flash at a quarter power and f/16 looked right.'
    >>> as_is_usual("Sitter 4 ft, paper 9 ft. How far down does the paper fall against her?")
    'Sitter 4 ft, paper 9 ft. how many stops darker is the paper than her?'
    """
    for sign, pattern, wording in _ROWS:
        if sign in text:
            text = pattern.sub(wording, text)
    text = _by_its_latitude(text) if "how " in text.lower() and "over" in text else text
    text = _FRONT_LIGHT.sub(r"key \g<lamp>", text) if "front " in text and _KEY.search(text) is None else text
    return _with_its_energy(text) if "the " in text and "top" in text else text


_STANDS = Pattern(rf"\b(?P<film>(?:films?|negs?|negatives?|print film|stock)\b(?: (?:can|will|could|easily|happily|only|just|does|do)){{0,3}}) (?:stands?|takes?|bears?|tolerates?|forgives?|survives?) (?P<many>{_AMOUNT}) over\b(?!-| ?exp)", re.I)
_HOW_WIDE = Pattern(r"\bhow (?:wide|far) (?:can|may|could|might|dare) i (?:go|open(?: (?:up|it|the lens))?)\b(?: (?:then|at (?:the )?(?:very )?most))*(?:(?=\s*(?:\?|$))|,? (?:if|when|where|given that) (?P<case>[^?]*))", re.I)


def _by_its_latitude(text: str) -> str:
    """"the neg can stand two stops over, f/8 is correct, how wide can I go?": the widest stop within what the film forgives."""
    stands, wide = _STANDS.search(text), _HOW_WIDE.search(text)
    if stands is None or wide is None:
        return text
    asked = "what is the widest stop I can use"
    text = _HOW_WIDE.sub(lambda found: f"{found['case']}. {asked}" if found["case"] else asked, text)  # the case first, as it is mostly told
    return _STANDS.sub(r"\g<film> takes \g<many> of overexposure", text)


def _with_its_energy(text: str) -> str:
    """"a 400 Ws pack and a 200 Ws; how many stops more does the 400 give?": the 400 is the pack of 400 Ws."""
    asked = _STOPS_OF_PACKS.search(text)
    if asked is None:
        return text
    units = [m["unit"] for m in _PACK.finditer(text, 0, asked.start()) if m["many"] == asked["pack"]]
    return f"{text[: asked.end('pack')]} {units[0]}{text[asked.end('pack') :]}" if len(units) == 1 else text

"""Why a value is put right, said beside it: "eight, sorry, I just ran the tape", "I need my glasses, it's 21 DIN".

After a question the part that only says how somebody came to be wrong is left out, so that its "need", "ran" or
"typo" asks and tells nothing; what is told stays, and with it that it puts something right.
"""

from __future__ import annotations

import re

from assistant.language.hearing import hear
from assistant.language.lexicon import Lexicon
from assistant.patterns import Pattern

_PARTS = re.compile(r"(?:\s*[,;:!…]+|\s*\.+(?=\s)|\s+[-–—])\s+")
"""Where one part of a short remark ends; the point of "5.6" is none."""
_EXCUSES = Pattern(
    r"\W*(?:(?:oh|ah|oops|whoops|argh|ugh|blast|drat|damn|bother|haha|ha|lol|sorry|doh|d'oh|hang on|hold on|wait|no|and|but|right|ok|well)\b[\s,.!]*)*"
    r"(?:(?:a |my |just a )?(?:typo|typing|misprint|slip|blunder|miscount|misread|misreading|misheard|mistyped|mismeasured)|(?:(?:my|fat|cold|clumsy|stupid|silly|big|wet) )*(?:fingers?|thumbs?)(?: slipped)?|my (?:mistake|error|bad|fault|eyes|eyesight|handwriting|memory)|(?:silly|stupid|daft) (?:me|of me)|what an idiot|(?:i'm )?going blind|wrong (?:key|button|line|page|row|end|column)"
    r"|(?:i )?(?:really )?need (?:my |new |better |stronger )*(?:glasses|specs|spectacles|coffee|sleep|more sleep|another coffee)|(?:i )?(?:had |have |forgot |left )(?:my |no )(?:glasses|specs)(?: off| on)?|(?:i )?(?:can't|cannot|couldn't) (?:see|read) (?:a thing|(?:my (?:own )?)?(?:writing|handwriting|notes?|scrawl))"
    r"|(?:i(?:'ve| have)?|we(?:'ve| have)?|he|she|(?:the|my) [a-z]+) (?:just |only |now |since |then )*(?:ran|run|got out|put|used|fetched|found|checked|looked at|had|read|misread|misjudged|held|stretched|taken|took) (?:out )?(?:the|a|my|our|it with the|it with a) (?:tape|tape measure|measure|ruler|yardstick|string|label|leaflet|carton|box|notes?)(?: (?:out|on it|across|to it|again|properly|wrong|upside down))*"
    r"|(?:i(?:'ve| have)?|we(?:'ve| have)?) (?:just |only |now |since |then )*(?:measured|mismeasured|paced|checked|counted|miscounted|looked|read|misread|misheard|mistyped|typed|remembered|misremembered|guessed|was guessing|been guessing)(?: (?:it|that|them|this|out|again|properly|wrong|wrongly|badly|off|up|once more|twice|out loud))*"
    r"|(?:oh|ah|hm+|mm+|um+|er+m?|ok|okay|right|well|let me (?:see|think)|let's see|thinking about it|(?:come|now that i come) to think of it|on second thoughts?|(?:as )?it turns out|turns out|as it happens|after all|if you ask me|all told|to be honest|in fact|mind you|by the way)"
    r"|(?:just |only )?(?:measured|paced|checked|counted|looked|ran the tape|misread)(?: (?:it|that|again|properly|wrong|up|the (?:tape|label|box)))*|(?:i )?(?:read|had|got) (?:the|my|that) [a-z]+ (?:all |quite )?wrong)\W*", re.I)
_APOLOGY = Pattern(r"\b(?:sorry|oops|whoops|doh|d'oh|typo|misprint|slip\w*|blunder|mis[a-z]{3,}|mistake|error|bad|fault|silly|stupid|daft|wrong\w*|fingers?|thumbs?|glasses|specs)\b", re.I)
_PUTS_RIGHT = Pattern(r"\b(?:no|sorry|i mean|i meant|actually|not|instead|rather)\b", re.I)
_FIGURE = Pattern(r"\d|\b(?:half|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|quarter|full)\b", re.I)
_HUM = Pattern(r"^\W*(?:hm+|mm+|um+|uh+|erm*)\b[\s,.…-]*(?=\w)", re.I)
_LONGEST = 160


def without_excuses(text: str, lexicon: Lexicon) -> str:
    """The text without the parts that only say how a value came to be wrong; all of it where nothing is told beside them."""
    if len(text) > _LONGEST:
        return text
    said = _HUM.sub("", text)
    ends = [(found.start(), found.end()) for found in _PARTS.finditer(said)]
    starts = [0, *(end for _, end in ends)]
    parts = list(zip(starts, [*(start for start, _ in ends), len(said)], [*starts[1:], len(said)], strict=True))
    kept = [part for part in parts if not is_excuse(said[part[0] : part[1]], lexicon)]
    if not any(_FIGURE.search(said[start:end]) for start, end, _ in kept):
        return text
    if len(kept) == len(parts):
        return said
    rest = "".join(said[start:nxt] for start, _, nxt in kept[:-1]) + said[kept[-1][0] : kept[-1][1]]
    left_out = " ".join(said[start:end] for start, end, _ in parts if (start, end, _) not in kept)
    return f"sorry, {rest}" if _APOLOGY.search(left_out) and not _PUTS_RIGHT.search(rest) else rest


def is_excuse(part: str, lexicon: Lexicon) -> bool:
    """Whether a part of a remark only says how somebody came to be wrong."""
    said = part.replace("’", "'").strip()
    return "?" not in said and not _FIGURE.search(said) and _EXCUSES.fullmatch(said) is not None and not any(t.type in ("NUMBER", "UNIT") for t in hear(said, lexicon).tokens)

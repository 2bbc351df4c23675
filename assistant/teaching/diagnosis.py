"""What went wrong: from a description of the pictures to causes in order, what to check, and the cure.

On negatives thin means too little light and dense too much; slides are the other way round, pale is
over and dark is under. `FAILURES` holds one row a failure; the most specific row that fits is taken.
"""

from __future__ import annotations

from assistant.patterns import Pattern, Rows
from assistant.records import record
from assistant.teaching.failures import FAILURES, Failure

__all__ = ["FAILURES", "Diagnosis", "Failure", "diagnose"]


@record
class Diagnosis:
    """A failure recognised: its name, likely causes in order, what to check next, and the source.

    `stops` is how far out the exposure is likely to be, positive = too much light, None if unknown.
    """

    name: str
    causes: tuple[str, ...]
    check: str
    stops: float | None
    source: str

    @property
    def reply(self) -> str:
        """Sentences to speak: the likeliest cause first, then the others, then what to check."""
        first, *others = self.causes
        tail = f" Otherwise: {'; '.join(others)}." if others else ""
        return f"Most likely {first}.{tail} {self.check}"


_REPORT = Pattern(
    r"\b(?:came (?:out|back)|come out|comes out|turned out|(?:there's|is|are|was|were|look\w*|went|gets?|got|has|have|had|show\w*|shows|seem\w*|all|every|only|half|got)\b.{0,80}"
    r"\b(?:thin|dense|dark\w*|black|blank|pale|washed|no flash|no (?:shadow )?detail|murky|glow\w*|burnt|burned|blown|white|under\w*|over\w*|half|ghost\w*|blurr\w*|double|red|orange|green|blue|yellow|uneven|grey|gray|clear|see[- ]through|transparent|faint|cast|unevenly|vignett\w*|frames?|empty|bright|chalky|muddy|nothing|lit|light))"
    r"|\b(?:see|there are|got|with) (?:two|double) images\b"
    r"|\b(?:didn't|did not|doesn't|never) (?:go off|fire)|\beyes? glow\w*|\balternat\w+|^(?:an? |the )?(?:\w+ )?(?:ghost\w*|double image|trail)|\b(?:wrong|failed|ruined|problem|trouble|mistake|went wrong|why|how come|what happened|what did i do|what's happening|diagnos\w*|cause[sd]?|fault|help)\b|\b(?:thin|dense|dark|black|blank|pale|blurred) (?:negs?|negatives?|slides?|frames?|shots?|pictures?|photos?|corners?|edges?)\b"
)
_PICTURES = Pattern(
    r"\b(?:negs?|negatives?|slides?|transparenc\w*|frames?|shots?|pictures?|photos?|pics?|photographs?|prints?|film|rolls?|exposures?|images?|corners?|edges?|backgrounds?|background|faces?|eyes?|rows?|portraits?|close[- ]?ups?|macros?|flash\w*|sheets?|it all|ghosts?|(?:double|second) image|backdrop|exposed|runners?|dancers?|sitters?|boats?|rowers?|oars|crew|team|groups?|people|everyone|everybody|everything|trannies|chromes?)\b"
)
_NUMBER_WANTED = Pattern(
    r"\b(?:what|which|whats|what's)\b(?: \w+){0,2} (?:aperture|f-?stop|f-?number|power|shutter|iso|setting)\b(?! went| was wrong| did)"
    r"|\bwhat (?:is|'s|was|would) (?:that|it|this)(?: be)? (?:as|in|at|for)\b|\bwhat stop\b|\bwhat(?:'s| is) the (?:closest|nearest|farthest|furthest|shortest|least|greatest)\b|\b(?:what|which) distance\b|\bhow (?:far|close|many|much)\b|\b(?:aperture|f-?stop|power)\s*\?|\bi want\b|\bi'd like\b|\bhow (?:do|can|should|would) i (?:get|make|light|keep|put|turn)\b|\bshould i\b(?! (?:do|change|move|fix|check|look)\b)|\btrue or false\b"
)

_WHICH = Pattern(r"\b(?:(?:is|are|was|were|does|did) (?:that|they|it|those|these|i) (?:mean )?)?(?:too (?:much|little)|over|under)[- ]?(?:expos\w*)? (?:or|vs) (?:too (?:much|little)|over|under)[- ]?(?:expos\w*)?(?: light)?\b")
"""Asked which it was: neither word describes the pictures."""

_BLAME = Pattern(r"\b(?:why|how come|came (?:out|back)|turned out|wrong|failed|ruined|what happened)\b")
_SUM = Pattern(r"\b(?:gn|guide (?:number|no)) ?(?:of |is |= ?)?\d")
_DISTANCE = Pattern(r"\d ?(?:ft|feet|foot|m|metres?|meters?)\b")
_RESULTS = Pattern(r"\b(?:frames?|negs?|negatives?|slides?|shots|pictures|photos|roll)\b")
_DEFINITION = Pattern(r"\bwhat(?:'s| is| does| are)? an? |\bmeaning of\b|\bdifference between\b")


_HEARS = Rows(tuple(map(Pattern, row.hears)) for row in FAILURES)


def _is_report(said: str) -> bool:
    """Whether pictures that failed are described, and no setting is asked for."""
    if _NUMBER_WANTED.search(said) or _DEFINITION.search(said):
        return False
    if _DISTANCE.search(said) and not (_BLAME.search(said) or _RESULTS.search(said)):
        return False
    if _SUM.search(said) and not _BLAME.search(said):
        return False
    return _REPORT.search(said) is not None and _PICTURES.search(said) is not None


def diagnose(text: str) -> Diagnosis | None:
    """The likely cause of a failure described in words, or None where no failure is described.

    >>> diagnose("every second frame came out thin").name
    'fired before recycled'
    >>> diagnose("half the frame is black").causes[0][:25]
    'the shutter was faster th'
    >>> diagnose("guide number 80, 10 feet, what aperture?") is None
    True
    """
    said = " ".join(text.replace("\u2019", "'").lower().split())
    if not _is_report(said):
        return None
    said = _WHICH.sub(" ", said)
    fits = [(len(_HEARS[place]), -place) for place in _HEARS.found_in(said)]
    if not fits:
        return None
    row = FAILURES[-max(fits)[1]]
    return Diagnosis(row.name, row.causes, row.check, row.stops, row.source)

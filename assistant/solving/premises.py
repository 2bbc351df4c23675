"""A rule slipped into an ordinary question: put right in one sentence, the question answered (contract 15)."""

from __future__ import annotations

import re

from assistant import patterns
from assistant.patterns import Pattern
from assistant.query import Query
from assistant.solving.claim_folklore import judge_folklore
from assistant.solving.claim_influence import judge_influence
from assistant.solving.claim_reading import readable
from assistant.solving.claim_rules import judge_rule
from assistant.solving.claim_words import plain, terms

_STATED = Pattern(r"\b(?:halves|doubles|quadruples|triples|quarters|divides|multiplies)\b|\b(?:cuts?|drops?|reduces?)\b[^.?!]{0,24}\b(?:in half|by half|to half|to a (?:half|quarter))\b|\b(?:costs?|loses?|adds?|gives?) (?:only |just |me )?(?:a|one|two|three|half a|\d) stops?\b")
_IS_STOPS = Pattern(r"\b(?:is|are|means|makes) (?:only |just |about )?(?:a|one|two|three|four|half a|\d) stops?\b")
_GIVEN = Pattern(r"\b(?:since|because|as|given that|seeing that|so|knowing|remember(?:ing)? that)\b|,|\band\b")
_ASKING = Pattern(r"\b(?:what|whats|what's|which|how (?:many|much|far|long)|where)\b")


def put_right(query: Query) -> tuple[Query, str]:
    """The question without the words of a rule said in it, and the sentence that puts a false rule right."""
    said = plain(query.text)
    asked = _ASKING.search(said)
    stated = _STATED.search(said) or (_IS_STOPS.search(said) if _REASON.search(said) else None)
    if query.claim or not stated or (asked and asked.start() < stated.start() and not _GIVEN.search(said[asked.end() : stated.start()])):
        return query, _about_parts(query, said)
    if _takes_light(query, stated.start(), stated.end()):
        return query, ""
    reason = _REASON.search(said) is not None and asked is not None and "," in said[: asked.start()]
    rule = judge_rule(said[: said.find(",", 0, asked.start())] if reason and asked else said)
    if rule is None or rule.start > said.find("?") > 0:
        return query, ""
    effects = [(t.start, t.end) for t in terms(said) if t.quantity == "stops" and t.start >= stated.start() - 1 and t.start <= stated.end()]
    bare = _reason_left_out(readable(query), said, asked.start() if asked else len(said))
    bare = bare.with_facts(f for f in bare.facts if f.quantity not in ("loss", "stops", "power_down") or not any(a < f.end and f.start < b for a, b in effects))
    return bare, "" if rule.holds else f"A correction: {rule.right[:1].lower()}{rule.right[1:]}"


def _takes_light(query: Query, start: int, end: int) -> bool:
    """"the ceiling loses 3 stops", "umbrella costs two stops": a loss that was measured, no rule."""
    bounced = bool(query.cues & {"bounce", "ceiling", "wall", "path"})
    if any(f.quantity in ("loss", "filter_loss") and start - 1 <= f.end and f.start <= end + 1 for f in query.facts) and not _RULES.search(patterns.split(r"[.?!;:]", query.text[:start])[-1]):
        return True  # "at 1/8 power it gave f/8. I'm adding a box that loses two stops"
    return any(f.quantity in ("loss", "filter_loss") and f.start <= end + 1 and f.end >= start - 1 and (f.unit or bounced) for f in query.facts)


_RULES = Pattern(r"power|half|quarter|eighth|1/\d|flash|light|doubl|twice|distance|iso|film|guide|\bgn\b|speed", re.I)
_REASON = Pattern(r"^\W*(?:since|because|as|given that|seeing that|knowing that|knowing)\b")


def _reason_left_out(query: Query, said: str, asked: int) -> Query:
    """"because half power halves it, what is 100 feet at half power?": the reason's own values give way to the question's."""
    if not _REASON.search(said):
        return query
    end = said.find(",", 0, asked)
    later = {f.quantity for f in query.facts if f.start > end} | {q for f in query.facts if f.start > end for q, v in (("film_speed", f.at_iso), ("power", f.at_power)) if v}
    return query if end < 0 else query.with_facts(f for f in query.facts if f.start > end or f.quantity not in ("power", "film_speed", "count", "share") or f.quantity not in later)


def _about_parts(query: Query, said: str) -> str:
    """"since the ND spares the flash …": only where it is plainly given as a reason."""
    found = patterns.search(r"\b(?:since|because|given that|seeing that|as)\b(?P<reason>[^,.?!]{8,80})", said)
    if query.claim or not found or not patterns.search(r"\b(?:spares?|affects?|changes?|brightens?|darkens?|cuts?|falls?|drops?|fades?)\b|n't|\bnot\b", found["reason"]):
        return ""
    verdict = judge_folklore(found["reason"]) if patterns.search(r"\b(?:falls?|drops?|fades?)\b", found["reason"]) else judge_influence(found["reason"])
    return "" if verdict is None or verdict.holds else f"A correction: {verdict.right[:1].lower()}{verdict.right[1:]}"

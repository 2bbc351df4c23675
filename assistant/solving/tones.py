"""What tone a backdrop comes out in that is lit so much more or less than the subject."""

from __future__ import annotations

TONES: tuple[tuple[str, float, str], ...] = (
    # word, stops of the backdrop against the subject's reading, what it rests on
    (r"pure white|\bwhite\b(?! (?:wall|paper|backdrop|background|seamless|sheet))", 2.0, "a backdrop lit two stops over comes out white (common practice)"),
    (r"\bblack\b(?! (?:wall|paper|backdrop|background|cloth|seamless|velvet))", -5.0, "a light backdrop five stops under looks black at a glance (one person's measurement; 6 to 8 to be sure)"),
    (r"\b(?:mid.?|middle )?gr[ea]y\b(?! (?:wall|paper|backdrop|background|cloth|seamless))", -2.3, "white paper 2⅓ stops under comes out mid-grey (90 % against 18 % reflectance)"),
)


def looks(stops: float) -> str:
    """One sentence on how it looks; empty where nothing is to be said."""
    if stops < -4.5:
        return "A light-toned backdrop looks black at a glance so."
    return "White paper comes out about mid-grey so." if -3 < stops < -1.7 else ""

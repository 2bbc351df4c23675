"""Places whose own light is meant when they are named: "brighten the hall", "the chapel reads f/2.8"."""

ROOMS = (
    "room|hall|church|chancel|lobby|garden|street|stage|boathouse|river|nave|foyer|barn|interior|pub|cafe|café|restaurant|chapel|cathedral|gym|kitchen|office|shop|market|cellar|crypt|library"
    "|tent|marquee|workshop|garage|museum|gallery|alley|shed|loft|sail loft|quay|jetty|pier|slipway|attic|hallway|corridor|ballroom|classroom|theatre|theater|lounge|bedroom|porch|greenhouse"
    "|terminal|arena|auditorium|vestry|village hall"
)
"""Alternatives of a pattern, each a place."""

"""What a person at the chat may be shown: example questions, how to begin, what is known so far."""

from __future__ import annotations

from assistant.language.calling import called
from assistant.language.speaking import fact as in_words
from assistant.language.speaking import printable
from assistant.memory.conversation import Conversation

WELCOME = """\
Tell me what you have and ask what you want to know, in your own words. No menus, any order.

First what your flash can do; it is kept for next time:
  my flash is guide number 110 feet
Then the question:
  what aperture at 12 feet on ISO 200?
  and at quarter power?

“help” shows more of what can be asked; Ctrl-D leaves."""

WELCOME_BACK = "Ask away; “help” shows what can be asked, Ctrl-D leaves."

HELP = """\
Ask as you would ask the person beside you. For example:

One light
  the big head is at 9 feet, f/8, ISO 400: what power?
  how far back can it go for f/5.6?
Two lights
  key at 6 feet, fill at 8 feet, what's the ratio?
Bounce, umbrellas, filters
  same but bounced off a 10 foot ceiling
Room and sun
  sunny, ISO 100, sync 1/125: what aperture?
Going on from an answer
  make it 8 feet
  and a stop more?
  show me the sum
  go back to the first one
  start over
Your gear, kept until you change it
  my lens stops down to f/22
  call it the big head
  what do you know about my gear?
  forget the little one
  undo
Frames
  log that
  what did I shoot?
  frame 12 came out a stop under

A guide number with no unit is in the unit of your distances, else in feet. What was taken for granted, the answer says."""

# What a turn may begin with. Kind: "ask" fits any time; "gear" when no flash is known; a quantity: when that is missing.
STARTERS: tuple[tuple[str, str], ...] = (
    ("gear", "my flash is guide number "),
    ("gear", "my flash goes down to 1/"),
    ("gear", "my lens goes from f/"),
    ("gear", "I'm on ISO "),
    ("guide_number", "guide number "),
    ("distance", "the flash is at "),
    ("aperture", "at f/"),
    ("film_speed", "ISO "),
    ("power", "at full power"),
    ("ask", "what aperture at "),
    ("ask", "what power for f/"),
    ("ask", "how far for f/"),
    ("ask", "what's the ratio of key to fill"),
    ("ask", "is f/8 right at "),
    ("follow", "and at quarter power?"),
    ("follow", "and at ISO 400?"),
    ("follow", "make it "),
    ("follow", "show me the sum"),
    ("follow", "what's that in metres?"),
    ("follow", "log that"),
    ("follow", "go back"),
    ("follow", "start over"),
    ("any", "what do you have so far?"),
    ("any", "what do you know about my gear?"),
    ("any", "what did I shoot?"),
    ("any", "export my kit to "),
    ("any", "import kit from "),
    ("any", "forget "),
    ("any", "undo"),
    ("any", "help"),
    ("any", "quit"),
)


def next_phrases(talk: Conversation) -> list[str]:
    """What can be said next, what is missing first, then what fits what is known."""
    if talk.missing:
        order = [*talk.missing, "ask", "any"]
    elif talk.scene.asks:
        order = ["follow", "ask", "any", "gear"]
    else:
        order = ["ask", "any", "gear"] if talk.kit.flashes() else ["gear", "ask", "any"]
    lights = [f"what aperture with {called(name)} at " for name in talk.kit.flashes() if name] if "ask" in order and not talk.missing else []
    return lights + [phrase for kind in order for k, phrase in STARTERS if k == kind]


def names_known(talk: Conversation) -> list[str]:
    """The lights that can be named."""
    return list(dict.fromkeys(called(n) for n in (*talk.kit.names, *talk.kit.flashes()) if n))


def known_so_far(talk: Conversation, width: int) -> str:
    """One line: what is missing or known in this scene, then the gear, cut to `width` letters."""
    scene = [in_words(f) for f in talk.scene.facts if f.origin != "kit" and f.quantity not in ("number", "modifier", "camera_filter")]
    said = {(f.quantity, f.of) for f in talk.scene.facts}
    kit = [in_words(f) for f in talk.kit.facts if (f.quantity, f.of) not in said]
    missing = "wanted: " + ", ".join(m.replace("_", " ") for m in talk.missing) if talk.missing else ""
    parts = [p for p in (missing, " · ".join(dict.fromkeys(scene)), "kit: " + " · ".join(dict.fromkeys(kit)) if kit else "") if p]
    line = printable(" | ".join(parts) or "nothing known yet")
    return line if len(line) <= width else line[: max(width - 1, 1)] + "…"

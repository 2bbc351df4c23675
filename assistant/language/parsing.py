"""Parsing: the longest phrase of the grammar at every place of a question.

A question on set is a heap of phrases in any order with words between them. So the LALR
table is run from every place where a phrase may begin, as far as it goes, and the longest
whole phrase is taken. What no phrase takes stays as a single token for the reading.
Time grows with the length of the text, since no phrase is longer than a dozen tokens.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.language.tables import Tables
from assistant.language.tokens import Token
from assistant.records import record

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


@record
class Node:
    """A grammar rule and what it took."""

    name: str
    children: tuple[Part, ...]

    @property
    def start(self) -> int:
        return self.children[0].start

    @property
    def end(self) -> int:
        return self.children[-1].end


Part = Node | Token


def parse(tokens: Sequence[Token], tables: Tables) -> list[Part]:
    """The phrases of a question in order, single tokens where no phrase begins."""
    parts: list[Part] = []
    place = 0
    first = tables.actions[tables.start]
    types = [t.type for t in tokens]
    types.append(NO_MORE)
    while place < len(tokens):
        shape: Shape | None = None
        if types[place] in first:
            shape = _kept(types, place, tables.shapes.tree) or _shape(types, place, tables)
        if shape is None or not shape[0]:
            parts.append(tokens[place])
            place += 1
        else:
            parts.append(_built(tokens, place, shape))
            place += shape[0]
    return parts


NO_MORE = ""
"""The type after the last token: no phrase takes it."""
MOST_KEPT = 4000
"""Shapes kept: the same few kinds of phrases are said again and again."""
LONGEST_KEPT = 24
"""Tokens of a run that is kept; a row of hundreds of numbers is not said again."""
Shape = tuple[int, tuple[tuple[int, str] | None, ...]]
"""How many tokens the longest phrase takes, and its steps: None takes a token, (many, name) makes a node of the last parts."""


def _kept(types: Sequence[str], place: int, tree: dict[str, Any]) -> Shape | None:
    """The shape kept of the run that begins here: the table looked at no more types than those that lead to it."""
    while True:
        found = tree.get(types[place])
        if found is None or found.__class__ is tuple:
            return found
        tree, place = found, place + 1


def _shape(types: Sequence[str], place: int, tables: Tables) -> Shape:
    """The longest phrase at this place by the table, which is kept."""
    length, seen = _longest(types, place, tables)
    shape: Shape = (length, _steps(types[place : place + length], tables) if length else ())
    if seen > LONGEST_KEPT:
        return shape
    shapes = tables.shapes
    if shapes.many >= MOST_KEPT:
        shapes.tree, shapes.many = {}, 0
    tree = shapes.tree
    for kind in types[place : place + seen - 1]:
        tree = tree.setdefault(kind, {})
    tree[types[place + seen - 1]] = shape
    shapes.many += 1
    return shape


def _built(tokens: Sequence[Token], place: int, shape: Shape) -> Node:
    """The tree of a phrase, by its steps."""
    values: list[list[Part]] = []
    for step in shape[1]:
        if step is None:
            values.append([tokens[place]])
            place += 1
            continue
        many, name = step
        taken: list[Part] = []
        for part in values[len(values) - many :]:
            taken += part
        del values[len(values) - many :]
        values.append([Node(name, tuple(taken))] if name and taken else taken)
    whole = values[-1]
    node = whole[0]
    return node if len(whole) == 1 and isinstance(node, Node) else Node("phrase", tuple(whole))


def _longest(types: Sequence[str], place: int, tables: Tables) -> tuple[int, int]:
    """How many tokens the longest phrase at this place takes, 0 where there is none; and how many were looked at."""
    actions, rules, end = tables.actions, tables.rules, tables.end
    stack = [tables.start]
    best = 0
    for at in range(place, len(types)):
        symbol = types[at]
        if not _advance(stack, symbol, actions, rules):
            return best, at + 1 - place
        if "$END" in actions[stack[-1]] and _closes(stack.copy(), actions, rules, end):
            best = at + 1 - place
    return best, len(types) - place


def _advance(stack: list[int], symbol: str, actions: list[dict[str, int]], rules: list[tuple[str, int, str]]) -> bool:
    """Reduce as the table says, then shift the symbol; false where it does not fit."""
    while True:
        action = actions[stack[-1]].get(symbol, 0)
        if action > 0:
            stack.append(action - 1)
            return True
        if action == 0:
            return False
        origin, length, _ = rules[-action - 1]
        if length:
            del stack[-length:]
        stack.append(actions[stack[-1]][origin] - 1)


def _closes(stack: list[int], actions: list[dict[str, int]], rules: list[tuple[str, int, str]], end: int) -> bool:
    """Whether the phrase could end here."""
    while stack[-1] != end:
        action = actions[stack[-1]].get("$END", 0)
        if action == 0:
            return False
        if action > 0:
            stack.append(action - 1)
            continue
        origin, length, _ = rules[-action - 1]
        if length:
            del stack[-length:]
        stack.append(actions[stack[-1]][origin] - 1)
    return True


def _steps(types: Sequence[str], tables: Tables) -> tuple[tuple[int, str] | None, ...]:
    """The steps that make the tree of a run of token types known to be one phrase."""
    actions, rules = tables.actions, tables.rules
    stack, steps = [tables.start], list[tuple[int, str] | None]()
    place = 0
    while stack[-1] != tables.end:
        symbol = types[place] if place < len(types) else "$END"
        action = actions[stack[-1]][symbol]
        if action > 0:
            stack.append(action - 1)
            if place < len(types):
                steps.append(None)
                place += 1
            continue
        origin, length, name = rules[-action - 1]
        if length:
            del stack[-length:]
        stack.append(actions[stack[-1]][origin] - 1)
        steps.append((length, "" if name.startswith("_") or name == "phrase" else name))
    return tuple(steps)

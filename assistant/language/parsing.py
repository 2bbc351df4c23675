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
    while place < len(tokens):
        node = None
        if tokens[place].type in first:
            length = _longest(tokens, place, tables)
            if length:
                node = _tree(tokens[place : place + length], tables)
        if node is None:
            parts.append(tokens[place])
            place += 1
        else:
            parts.append(node)
            place += length
    return parts


def _longest(tokens: Sequence[Token], place: int, tables: Tables) -> int:
    """How many tokens the longest phrase at this place takes; 0 where there is none."""
    actions, rules, end = tables.actions, tables.rules, tables.end
    stack = [tables.start]
    best = 0
    for at in range(place, len(tokens)):
        symbol = tokens[at].type
        if not _advance(stack, symbol, actions, rules):
            break
        if "$END" in actions[stack[-1]] and _closes(stack.copy(), actions, rules, end):
            best = at + 1 - place
    return best


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


def _tree(tokens: Sequence[Token], tables: Tables) -> Node:
    """The tree of a run of tokens known to be one phrase."""
    actions, rules = tables.actions, tables.rules
    stack, values = [tables.start], list[list[Part]]()
    queue = [(t.type, t) for t in tokens]
    place = 0
    while stack[-1] != tables.end:
        symbol = queue[place][0] if place < len(queue) else "$END"
        action = actions[stack[-1]][symbol]
        if action > 0:
            stack.append(action - 1)
            if place < len(queue):
                values.append([queue[place][1]])
                place += 1
            continue
        origin, length, name = rules[-action - 1]
        taken: list[Part] = []
        if length:
            del stack[-length:]
            for part in values[-length:]:
                taken.extend(part)
            del values[-length:]
        stack.append(actions[stack[-1]][origin] - 1)
        inline = name.startswith("_") or name == "phrase" or (not taken)
        values.append(taken if inline else [Node(name, tuple(taken))])
        if stack[-1] == tables.end:
            break
    whole = values[-1]
    node = whole[0]
    return node if len(whole) == 1 and isinstance(node, Node) else Node("phrase", tuple(whole))

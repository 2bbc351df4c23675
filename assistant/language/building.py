"""Building the tables: the only module that imports Lark.

Joins the grammar files (root first, then topics in name order), lets Lark make the LALR(1)
table, and writes it down as plain lists. The words of the lexicon are the terminals.
"""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

from lark import Lark
from lark.lexer import Lexer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

ROOT = "phrases.lark"
SOUND_TERMINALS = ("NUM", "SIZE", "LISTED", "STEPS", "MANY", "DINS", "FRAC", "SPEED", "RATIO", "FORMAT", "F", "COMMA", "END", "Q", "COLON", "EQ", "PLUS", "DASH", "SIGN",
                   "SLASH", "PERCENT", "FOOT_MARK", "INCH_MARK", "DEGREE", "AND", "TIMES", "ABOUT", "ROOT", "OTHER", "WORD", "GLUE", "CUE")


def join(files: list[Path]) -> str:
    """One grammar text: the root first, every other file after it."""
    ordered = sorted(files, key=lambda p: (p.name != ROOT, p.name))
    text = "\n".join(p.read_text(encoding="utf-8") for p in ordered)
    used = set(re.findall(r"\b[A-Z][A-Z_]*\b", re.sub(r"//.*", "", text)))
    return text + "\n%declare " + " ".join(sorted(used | set(SOUND_TERMINALS))) + "\n"


def make_lark(files: list[Path]) -> Lark:
    """Lark's own parser of the joined grammar."""
    return Lark(join(files), parser="lalr", lexer=_NoLexer, start="phrase", maybe_placeholders=False)


class _NoLexer(Lexer):
    """Tokens come from hearing; Lark is only asked for its table."""

    def __init__(self, lexer_conf: Any) -> None:
        pass

    def lex(self, lexer_state: Any, parser_state: Any = None) -> Any:
        yield from lexer_state  # Lark hands over the tokens themselves


def build_parser(files: list[Path]) -> dict[str, Any]:
    """Actions, rules, start and end state of the LALR(1) table."""
    table = make_lark(files).parser.parser._parse_table
    rules: list[tuple[str, int, str]] = []
    index: dict[Any, int] = {}
    states: list[dict[str, int]] = [{} for _ in range(len(table.states))]  # under plain strings: Lark's own compare slowly
    for state, row in table.states.items():
        for symbol, (action, target) in row.items():
            if action.name == "Shift":
                states[state][str(symbol)] = target + 1
            else:
                if target not in index:
                    index[target] = len(rules)
                    rules.append((str(target.origin.name), len(target.expansion), str(target.alias or target.origin.name)))
                states[state][str(symbol)] = -(index[target] + 1)
    return {"actions": states, "rules": rules, "start": table.start_states["phrase"], "end": table.end_states["phrase"]}


def _pieces(phrase: str) -> list[str]:
    """The words of an entry as hearing splits them: "what's" is "what" and "'s"."""
    return re.sub(r"(?<=[a-z])'(?=[a-z]+\b)", " '", phrase.replace("-", " ")).split()


def _written_out(phrases: list[str], short: dict[str, list[str]]) -> list[str]:
    """The phrases, each of those with a name in brackets once for every word of that name.

    >>> _written_out(["heads", "<alike> heads"], {"<alike>": ["equal", "twin"]})
    ['heads', 'equal heads', 'twin heads']
    """
    out = []
    for phrase in phrases:
        name = next((n for n in short if n in phrase), "")
        out += [phrase.replace(name, word) for word in short[name]] if name else [phrase]
    return out


def build_lexicon(files: list[Path]) -> dict[str, list[list[Any]]]:
    """First word -> entries, longest first. A section [ROLE] has values; a plain list has none; "<alike> heads" stands for each of the words of that name."""
    table: dict[str, list[list[Any]]] = {}
    for path in sorted(files):
        said = tomllib.loads(path.read_text(encoding="utf-8"))
        short = {name: words for name, words in said.items() if name.startswith("<")}
        for terminal, phrases in said.items():
            if terminal in short:
                continue
            groups = phrases.items() if isinstance(phrases, dict) else [(terminal.lower(), phrases)]
            for value, words in groups:
                for phrase in _written_out(words, short):
                    first, *rest = _pieces(phrase)
                    entry = [rest, terminal, value]
                    known = table.setdefault(first, [])
                    same = [e for e in known if e[0] == rest]
                    if same:
                        raise ValueError(f"{path.name}: '{phrase}' is already {same[0][1]}.{same[0][2]}")
                    known.append(entry)
    for entries in table.values():
        entries.sort(key=lambda e: -len(e[0]))
    return table

"""The grammar itself: no conflicts, one tree a phrase, nothing in it that no phrase uses."""

from __future__ import annotations

import logging
import re
import tomllib
from functools import cache

import pytest
from corpus import cases, tables
from lark import Lark, Tree, logger
from lark import Token as LarkToken

from assistant.language.building import SOUND_TERMINALS, _NoLexer, build_lexicon, join
from assistant.language.hearing import hear
from assistant.language.item_builders import BUILDERS
from assistant.language.parsing import Node, Part, parse
from assistant.language.tables import grammar_folder
from assistant.language.tokens import Token

LARKS = sorted(grammar_folder().glob("*.lark"))
WORDS = sorted(grammar_folder().glob("words*.toml"))


@cache
def parsed() -> tuple[tuple[str, tuple[Part, ...]], ...]:
    """Every sentence of the corpus and its parts."""
    texts = [say for case in cases() for say in ([turn[0] for turn in case.turns] or [case.phrase])]
    return tuple((text, tuple(parse(hear(text, tables().lexicon).tokens, tables()))) for text in dict.fromkeys(texts))


def _names(part: Part) -> set[str]:
    return {part.name}.union(*map(_names, part.children)) if isinstance(part, Node) else set()


def _tokens(part: Part) -> list[Token]:
    return [t for child in part.children for t in _tokens(child)] if isinstance(part, Node) else [part]


def test_the_grammar_has_no_conflicts(caplog: pytest.LogCaptureFixture) -> None:
    """Lark settles a shift/reduce conflict by itself and only logs it: a phrase would silently stop being read."""
    messages: list[str] = []
    handler = logging.Handler()
    handler.emit = lambda record: messages.append(record.getMessage())  # type: ignore[method-assign]
    logger.addHandler(handler)
    level = logger.level
    logger.setLevel(logging.DEBUG)
    try:
        Lark(join(LARKS), parser="lalr", lexer=_NoLexer, start="phrase", maybe_placeholders=False, debug=True)
    finally:
        logger.removeHandler(handler)
        logger.setLevel(level)
    assert not [m for m in messages if "onflict" in m]


@cache
def _earley() -> Lark:
    """The same joined grammar as Earley reads it, each token standing for its own terminal."""
    grammar = join(LARKS)
    grammar, declared = grammar.rsplit("%declare", 1)
    terminals = "\n".join(f'{name}: "<{name}>"' for name in declared.split())
    return Lark(grammar + "\n" + terminals, parser="earley", lexer="basic", ambiguity="explicit", start="phrase", maybe_placeholders=False)


def _runs() -> dict[tuple[str, ...], str]:
    """Each different run of terminals that was taken as one phrase, with a text it stands in."""
    found: dict[tuple[str, ...], str] = {}
    for text, parts in parsed():
        for part in parts:
            if isinstance(part, Node):
                run = tuple(t.type for t in _tokens(part) if t.type != "JOINED")
                found.setdefault(run, text)
    return found


def _ambiguities(tree: Tree[LarkToken]) -> list[set[str]]:
    """The names of the readings at every place where there is more than one."""
    return [{str(child.data) for child in node.children if isinstance(child, Tree)} for node in tree.iter_subtrees() if node.data == "_ambig"]


@pytest.mark.parametrize("run", [pytest.param(run, id=" ".join(run)) for run in _runs()])
def test_a_phrase_has_one_tree(run: tuple[str, ...]) -> None:
    """Earley, which finds every reading, finds one, and it is the one of the LALR table."""
    tree = _earley().parse("".join(f"<{name}>" for name in run))
    assert not _ambiguities(tree), f"{_runs()[run]!r} has readings {_ambiguities(tree)}"
    part = next(p for p in dict(parsed())[_runs()[run]] if isinstance(p, Node) and tuple(t.type for t in _tokens(p) if t.type != "JOINED") == run)
    names = {str(node.data) for node in tree.iter_subtrees()}
    assert part.name in names


NO_PHRASE: dict[str, str] = {
    # a rule alias or terminal -> why no phrase of the corpus uses it
}


def _aliases() -> set[str]:
    return {name for origin, _, name in tables().rules if not name.startswith("_") and name != "phrase" and name != origin} | set(BUILDERS)


def test_every_rule_is_used_by_a_phrase() -> None:
    """A rule without a phrase is a guess: each has one in the corpus, or a reason here."""
    used = set().union(*(_names(part) for _, parts in parsed() for part in parts))
    aliases = {name for _, _, name in tables().rules} & set(BUILDERS)
    missing = sorted(aliases - used - NO_PHRASE.keys())
    assert not missing, f"no phrase for {missing}"


def test_every_builder_has_a_rule_and_every_rule_a_builder() -> None:
    """What the grammar names and what the items read are the same list."""
    nodes = {name for origin, length, name in tables().rules if not name.startswith("_")}
    containers = {origin for origin, _, name in tables().rules if not origin.startswith("_")}
    unread = {n for n in nodes - BUILDERS.keys() if n not in containers}
    assert not unread
    assert not BUILDERS.keys() - nodes


UNUSED_TERMINALS: dict[str, str] = {
    "FILLER": "a filler leaves no token",
    "WORD": "an unknown word, not in the lexicon",
    "OTHER": "a mark that means nothing",
    "YEAR": "marks the number before it as one of years, and is then a plain word",
}


def test_every_terminal_of_the_lexicon_is_used_by_a_phrase() -> None:
    """A kind of word without a phrase is dead weight."""
    named = {name for path in WORDS for name in tomllib.loads(path.read_text(encoding="utf-8")) if not name.startswith("<")}
    heard = {token.type for _, parts in parsed() for part in parts for token in _tokens(part)}
    missing = sorted(named - heard - UNUSED_TERMINALS.keys())
    assert not missing, f"no phrase for {missing}"


def test_every_value_of_a_light_or_a_modifier_is_used_by_a_phrase() -> None:
    """Each role, modifier, unit and scale has at least one phrase."""
    wanted = {(terminal, value) for path in WORDS for terminal, values in tomllib.loads(path.read_text(encoding="utf-8")).items()
              if isinstance(values, dict) and terminal in ("ROLE", "NAMED", "MODIFIER", "CAMERA_FILTER", "LEN", "COUNTED", "PAIR", "OLD_SCALE", "VELOCITY", "FARAD")
              for value in values}
    heard = {(token.type, str(token.value)) for _, parts in parsed() for part in parts for token in _tokens(part)}
    missing = sorted(wanted - heard)
    assert not missing, f"no phrase for {missing}"


# --- words ---------------------------------------------------------------------------------------


def test_no_word_stands_twice() -> None:
    """Two meanings for one entry would be settled by the order of the files; the build refuses."""
    assert build_lexicon(WORDS)


def test_a_word_that_stands_twice_is_refused(tmp_path: object) -> None:
    """The message names the file, the phrase and what it already is."""
    from pathlib import Path

    folder = Path(str(tmp_path))
    (folder / "words_a.toml").write_text('POWER = ["oomph"]\n')
    (folder / "words_b.toml").write_text('FILM = ["oomph"]\n')
    with pytest.raises(ValueError, match="words_b.*oomph.*POWER"):
        build_lexicon(sorted(folder.iterdir()))


def test_words_are_plain_and_lower_case() -> None:
    """What hearing folds must be folded in the table too, or it could never match."""
    from assistant.language.hearing import fold

    wrong = [phrase for path in WORDS for phrase in _phrases(path) if phrase != fold(phrase) or phrase != phrase.strip() or "  " in phrase]
    assert not wrong


def _phrases(path: object) -> list[str]:
    body = tomllib.loads(path.read_text(encoding="utf-8"))  # type: ignore[attr-defined]
    return [p for values in body.values() for group in (values.values() if isinstance(values, dict) else [values]) for p in group]


def test_the_grammar_names_no_number_and_no_word() -> None:
    """No arithmetic, defaults or spelling in a grammar: terminals and rules only."""
    for path in LARKS:
        bare = re.sub(r"//.*", "", path.read_text(encoding="utf-8"))
        assert not re.search(r'["\d]', bare), path.name


def test_every_grammar_file_has_a_corpus_beside_it() -> None:
    """A grammar file and its phrases go together."""
    files = {p.name.removesuffix(".corpus.toml") for p in grammar_folder().glob("*.corpus.toml")}
    assert {p.stem for p in LARKS} <= files


def test_the_corpus_is_large() -> None:
    """At least 550 different phrases, and plenty of them negatives."""
    assert len({case.phrase for case in cases()}) >= 550
    assert sum(case.kind == "never" for case in cases()) >= 60


def test_terminals_that_sound_makes_are_declared() -> None:
    """What hearing can make, the grammar knows."""
    made = {token.type for _, parts in parsed() for part in parts for token in _tokens(part)}
    declared = set(join(LARKS).rsplit("%declare", 1)[1].split())
    lexicon_only = {name for path in WORDS for name in tomllib.loads(path.read_text(encoding="utf-8")) if not name.startswith("<")}
    assert made <= declared | lexicon_only | set(SOUND_TERMINALS)

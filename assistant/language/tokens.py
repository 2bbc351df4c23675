"""Tokens: a word or a number of the question, as the grammar takes it."""

from __future__ import annotations

from assistant.records import record


@record
class Token:
    """One canonical word: its terminal, its value, and where it stood in the text."""

    type: str
    value: object
    start: int
    end: int
    read_as: str = ""  # the word it was taken for, when a typing mistake was forgiven

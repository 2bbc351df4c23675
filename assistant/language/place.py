"""A place in a question: an item among its neighbours, and the fact it makes."""

from __future__ import annotations

from collections.abc import Callable

from assistant.language.items import Item
from assistant.query import Fact
from assistant.records import record

_FAR_BACK = 200
"""Items beyond which nothing said before has a bearing on a number."""


@record
class Place:
    """An item among its neighbours, with what is known of the whole question."""

    items: tuple[Item, ...]
    at: int
    item: Item
    owner: str
    cues: frozenset[str]
    kinds: frozenset[str]
    sentence: int
    text: str
    every: tuple[Item, ...] = ()

    def before(self, letters: int) -> str:
        """So many letters of the text right before it."""
        start = self.item.start
        return self.text[max(0, start - letters) : start]

    def near(self, *words: str, before: int = 4, after: int = 4) -> Item | None:
        """The nearest cue with one of these words within so many items."""
        if self.cues.isdisjoint(words):
            return None
        best: Item | None = None
        gap = 99
        for n in range(max(0, self.at - before), min(len(self.items), self.at + after + 1)):
            item = self.items[n]
            if n != self.at and item.kind == "cue" and item.word in words and abs(n - self.at) < gap:
                best, gap = item, abs(n - self.at)
        return best

    def beside(self, offset: int) -> Item | None:
        n = self.at + offset
        return self.items[n] if 0 <= n < len(self.items) else None

    def mark(self, *words: str, offset: int = -1) -> bool:
        item = self.beside(offset)
        return item is not None and item.kind == "mark" and item.word in words

    def kind_near(self, kind: str, before: int = 3, after: int = 3) -> Item | None:
        """The first item of this kind within so many."""
        for n in range(max(0, self.at - before), min(len(self.items), self.at + after + 1)):
            if n != self.at and self.items[n].kind == kind:
                return self.items[n]
        return None

    def number_of(self, item: Item) -> int:
        """The number of an item that was found beside this one, or as far back as one is looked for."""
        return self.items.index(item, max(0, self.at - _FAR_BACK))

    def last_before(self, test: Callable[[Item], bool]) -> Item | None:
        for n in range(self.at - 1, max(-1, self.at - _FAR_BACK), -1):
            if test(self.items[n]):
                return self.items[n]
        return None


def fact_at(place: Place, quantity: str, value: float | None = None, **more: object) -> Fact:
    """The item at this place as a fact of this quantity, its own value unless another is given."""
    item = place.item
    body: dict[str, object] = {"unit": item.unit, "of": place.owner, "other": item.other, "start": item.start, "end": item.end,
                               "said": place.text[item.start : item.end], "bad": item.bad, "estimate": item.estimate, "sentence": place.sentence}
    body.update(more)
    return Fact(quantity, item.value if value is None else value, **body)  # type: ignore[arg-type]

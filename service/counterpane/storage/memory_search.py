"""Pages and facets of what is kept in memory: the plain statement of what a search finds and counts."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from counterpane.library.parts.wanted import CountClass, Facets, Key, Page, Span, Trait, Wanted
from counterpane.library.ports import Entry, Kept, Shelf
from counterpane.storage.memory_record import Item, MemoryRecord


class MemorySearch(MemoryRecord):
    """What a library is searched by, in dictionaries."""

    def __init__(self) -> None:
        super().__init__()
        self._traitless: set[str] = set()

    def page(self, wanted: Wanted) -> Page:
        """Return the cards that are wanted."""
        with self._lock:
            found = sorted(self._wanted(wanted), key=lambda pair: pair[0])
        rest = [pair for pair in found if wanted.after is None or pair[0] > wanted.after]
        cards = tuple(card for _, card in rest[: wanted.limit])
        return Page(cards, rest[wanted.limit - 1][0] if len(rest) > wanted.limit else None)

    def _wanted(self, wanted: Wanted) -> Iterator[tuple[Key, bytes]]:
        for item in self._items.values():
            if _passes(item.entry, wanted) and (key := _key(item, wanted)):
                yield key, item.entry.card

    def count(self, wanted: Wanted) -> int:
        """Return how many are wanted."""
        with self._lock:
            return sum(1 for _ in self._wanted(wanted))

    def facets(self, wanted: Wanted, most: int) -> Facets:
        """Count what is wanted, up to so many entries."""
        with self._lock:
            found = [item.entry for item in self._items.values() if _passes(item.entry, wanted) and _key(item, wanted)]
        words: dict[str, Counter[str]] = {}
        known: Counter[str] = Counter()
        for entry in found[:most]:
            told = set(_told(entry))
            known.update({name for name, _ in told})
            for name, word in told:
                words.setdefault(name, Counter())[word] += 1
        return Facets(min(len(found), most), len(found) < most, words, known)

    def classes(self, shelf: Shelf, slugs: Sequence[str]) -> Mapping[str, tuple[CountClass, ...]]:
        """Return the classes of the latest revisions of these slugs."""
        entries = (self._items[shelf, slug].entry for slug in slugs if (shelf, slug) in self._items)
        return {each.slug: tuple(sorted(each.classes, key=_place)) for each in entries if each.classes}

    def without_traits(self, limit: int) -> tuple[Kept, ...]:
        """Return components whose traits were never kept."""
        with self._lock:
            kept = [self._items["component", slug] for slug in self._traitless]
        return tuple(replace(item.revisions[-1], by="", parent=None) for item in sorted(kept, key=_age)[:limit])

    def put_traits(self, found: Iterable[tuple[Kept, tuple[Trait, ...]]]) -> None:
        """Keep the traits of these components, but of those that were revised meanwhile."""
        with self._lock:
            for kept, traits in found:
                item = self._items.get(("component", kept.slug))
                if item is not None and item.entry.sha256 == kept.sha256:
                    item.entry = replace(item.entry, traits=traits)
                    self._traitless.discard(kept.slug)


def _age(item: Item) -> int:
    return item.number


def _place(one: CountClass) -> tuple[int, int, int]:
    return one.modulus, one.residue, one.least


def _told(entry: Entry) -> Iterator[tuple[str, str]]:
    """Give what an entry is counted under: a name and a word each."""
    columns = (("kind", entry.kind), ("reversible", entry.reversible), ("status", entry.status))
    yield from ((name, word) for name, word in columns if word is not None)
    if entry.opening_um is not None:
        yield "opening", str(entry.opening_um // 1000)
    yield from ((each.name, each.word) for each in entry.traits)


def _passes(entry: Entry, wanted: Wanted) -> bool:
    """Say whether the entry passes the filters that do not set the order."""
    asked = ((wanted.kind, entry.kind), (wanted.reversible, entry.reversible), (wanted.status, entry.status))
    of_texture = wanted.texture is None or any(each.key == wanted.texture for each in entry.textures)
    under = wanted.openings_under_mm
    closed = under is None or (entry.opening_um is not None and entry.opening_um < under * 1000)
    held = of_texture and closed and entry.shelf == wanted.shelf and entry.status != "withdrawn"
    named = wanted.slugs is None or entry.slug in wanted.slugs
    plain = held and named and all(want is None or want == have for want, have in asked)
    return plain and _has_counts(entry, wanted) and _has_traits(entry, wanted)


def _has_counts(entry: Entry, wanted: Wanted) -> bool:
    if wanted.between and all(each.first(*wanted.between) is None for each in entry.classes):
        return False
    others = wanted.meets
    if others is None:
        return True
    return any(one.common(other) is not None for one in entry.classes for other in others)


def _has_traits(entry: Entry, wanted: Wanted) -> bool:
    told = {(each.name, each.word) for each in entry.traits}
    worded = all(any((name, word) in told for word in words) for name, words in wanted.traits)
    return worded and all(_lies_within(entry, span) for span in wanted.spans)


def _lies_within(entry: Entry, span: Span) -> bool:
    return any(span.holds(each.number) for each in entry.traits if each.name == span.name)


def _key(item: Item, wanted: Wanted) -> Key | None:
    """Return where the item stands in the order that is wanted; None where it is not wanted at all."""
    entry = item.entry
    if not _holds(f"{entry.title} {entry.words}", wanted.words):
        return None
    if wanted.admits is not None:
        first = _first_class(entry.classes, wanted.admits)
        return None if first is None else (first.modulus, first.least, item.number)
    if wanted.words:
        return (0 if _holds(entry.title, wanted.words) else 1, item.number)
    return (entry.slug,)


def _first_class(classes: tuple[CountClass, ...], count: int) -> CountClass | None:
    fitting = [each for each in classes if each.admits(count)]
    return min(fitting, key=lambda each: (each.modulus, each.least)) if fitting else None


def _holds(text: str, words: tuple[str, ...]) -> bool:
    """Say whether the text holds each word, whatever the case."""
    return {word.casefold() for word in words} <= set(re.findall(r"[^\W_]+", text.casefold()))

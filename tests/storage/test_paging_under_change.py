"""A list of 50,000 read page by page while another connection writes to the same file.

What is there from the first page to the last is seen once: a page goes on after the last one's key, and counts nothing.
What comes or goes meanwhile is seen once at most. All data are invented.
"""

from __future__ import annotations

import json
import shutil
from collections import Counter
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from pathlib import Path
from random import Random
from typing import Any

import pytest

from counterpane.library.keeping.record import Move
from counterpane.library.ports import CountClass, Entry, Key, Wanted
from counterpane.library.sharing.records import FORM_OF, Record
from counterpane.storage.sqlite import SqliteStore
from storage.entries import entry

COUNT, LIMIT = 50_000, 500
AT = "2026-01-02T03:04:05Z"
FIRST = entry("any")
"""The one content of all: what a list tells stands with the item."""


def part(number: int, slug: str = "", text: str = "firm") -> Entry:
    """Return a component; every second one has its word in the title, and there are seven multiples."""
    titled = "firm rib" if number % 2 else "rib"
    modulus = number % 7 + 1
    classes = (CountClass(modulus, 0, modulus),)
    return entry(slug or f"part-{number:05}", text, title=titled, words=text, classes=classes, status="accepted")


def records() -> Iterator[Record]:
    """Give the records of a library of so many, sort by sort."""
    yield Record("object", {"sha256": FIRST.sha256, "content": FIRST.content.decode()})
    items = [(number, part(number)) for number in range(1, COUNT + 1)]
    for number, each in items:
        told = {name: getattr(each, name) for name in FORM_OF["item"].fields if name not in ("id", "number")}
        told |= {"sha256": FIRST.sha256, "body": "{}", "card": each.card.decode()}
        yield Record("item", told | {"id": number, "number": 1})
    kept = {"sha256": FIRST.sha256, "body": "{}", "at": AT, "by": "p1", "status": "accepted", "number": 1}
    yield from (Record("revision", kept | {"item": number}) for number, _ in items)
    for number, each in items:
        (one,) = each.classes
        told = {"item": number, "kind": each.kind, "modulus": one.modulus, "residue": 0, "least": one.least}
        yield Record("class", told | {"most": None})


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the file of the library as it is before anybody changes it."""
    path = tmp_path_factory.mktemp("large") / "library.db"
    with closing(SqliteStore(path)) as store:
        store.restore(records())
    return path


class Writer:
    """Somebody who adds, revises, moves and withdraws at random places, through a connection of their own."""

    def __init__(self, store: SqliteStore, seed: int) -> None:
        self.store = store
        self.chance = Random(seed)
        self.there = list(range(1, COUNT + 1))

    def write(self, step: int) -> None:
        """Make one change of each sort."""
        number = self.chance.randrange(1, COUNT)
        self.store.add(part(number, f"part-{number:05}-{step}"))
        number = self.chance.choice(self.there)
        self.store.revise(part(number, text=f"firm {step}"), None)
        self._move(self.chance.choice(self.there), "deprecated")
        self._move(self.there.pop(self.chance.randrange(len(self.there))), "withdrawn")

    def _move(self, number: int, to: str) -> None:
        kept = self.store.latest("component", f"part-{number:05}")
        words = (AT, "berta", "misprint", "Row 2 is misprinted.")
        self.store.move(Move("component", kept.slug, kept.sha256, kept.status, to, *words), lambda body: body)


@pytest.mark.parametrize("wanted", [{}, {"words": ("firm",)}, {"admits": 420}, {"words": ("firm",), "admits": 420}])
def test_what_is_there_all_the_time_is_seen_once(file: Path, tmp_path: Path, wanted: dict[str, Any]) -> None:
    """In the plain list, in the list of a word with titles first, in that of a count, and in both at once."""
    path = tmp_path / "library.db"
    shutil.copy(file, path)
    seen: Counter[str] = Counter()
    with closing(SqliteStore(path)) as reader, closing(SqliteStore(path)) as other:
        writer, after, pages = Writer(other, 20_261_127), None, 0
        asked = Wanted("component", limit=LIMIT, **wanted)
        while pages == 0 or after is not None:
            cards, after = page(reader, replace(asked, after=after))
            seen.update(cards)
            pages += 1
            writer.write(pages)
    assert pages >= COUNT / LIMIT
    assert set(seen.values()) == {1}
    assert {f"part-{number:05}" for number in writer.there} <= set(seen)
    assert len(seen) > COUNT - pages


def page(store: SqliteStore, asked: Wanted) -> tuple[list[str], Key | None]:
    """Return the slugs of a page and what the next one follows."""
    found = store.page(asked)
    return [json.loads(card)["slug"] for card in found.cards], found.last

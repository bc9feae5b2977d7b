"""How long searches take in a large library: run it with `python tests/benchmarks/bench_search.py 100000`.

The first argument is how many components the library holds, 20,000 if not given; with `counts` behind it they have
counts alone, which is quicker made. Their words, counts and traits are random. Each figure is the median of several
runs on an open connection; ratios can be compared between machines. The aims: a first page of words at most 1.5 times
the index's own bare question at 100,000; "which admit N" at most 10 ms at 1,000,000; page 500 at most 1.5 times page 1.
"""

from __future__ import annotations

import random
import sqlite3
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from statistics import median

from counterpane.library.parts.wanted import Key, Wanted
from counterpane.library.sharing.records import FORM_OF, Record
from counterpane.storage.sqlite import SqliteStore

SORTS = ("object", "item", "revision", "class", "trait", "change")
USUAL, RUNS, PAGES = 20_000, 15, 500
WORDS = [f"{first}{second}" for first in "bdfgklmnprst" for second in ("asket", "iamond", "eather", "arter", "oss")]
BARE = "SELECT rowid FROM item_fts WHERE item_fts MATCH ? ORDER BY rank LIMIT 51"
IN_ORDER = "SELECT card FROM item_fts f JOIN item i ON i.id = f.rowid WHERE item_fts MATCH ? ORDER BY f.rowid LIMIT 51"


def main(count: int, whole: bool) -> None:
    """Print the figures for a library of so many components."""
    with tempfile.TemporaryDirectory() as folder:
        store = SqliteStore(Path(folder) / "library.db")
        store.restore(_records(count, whole))
        _say(f"{count:,} components")
        _counts(store)
        if whole:
            _searches(store, Path(folder) / "library.db")
        store.close()


def _counts(store: SqliteStore) -> None:
    for admits in (133, 139, 360, 999_983):
        for kind in ("body", None):
            taken = _taken(lambda a=admits, k=kind: store.page(Wanted("component", k, a)))
            _say(f"admits {admits}, {kind or 'every kind'}: {taken:.2f} ms")


def _searches(store: SqliteStore, path: Path) -> None:
    bare = sqlite3.connect(path)
    for words in (("basket",), ("basket", "moss"), ("scarce",)):
        _words(store, bare, words)
    _say(f"width and traits: {_taken(lambda: store.page(_narrow())):.2f} ms")
    _pages(store)
    facets = _taken(lambda: store.facets(Wanted("component", "body", words=("basket",)), 100_000), 3)
    _say(f"facets of a word: {facets:.0f} ms")


def _words(store: SqliteStore, bare: sqlite3.Connection, words: tuple[str, ...]) -> None:
    phrase = " AND ".join(words)
    found = len(bare.execute(f"SELECT rowid FROM item_fts WHERE item_fts MATCH '{phrase}'").fetchall())
    ours = _taken(lambda: store.page(Wanted("component", words=words)))
    best, first = (_taken(lambda s=sql: bare.execute(s, (phrase,)).fetchall()) for sql in (BARE, IN_ORDER))
    said = f"{ours:.2f} ms, {ours / best:.2f} times the bare question by rank ({best:.2f} ms)"
    _say(f"words {phrase} ({found:,} found): {said}, {ours / first:.2f} times the same cards by age ({first:.2f} ms)")


def _narrow() -> Wanted:
    return Wanted("component", "body", between=(120, 140), traits=(("lies", ("flat",)), ("difficulty", ("easy",))))


def _pages(store: SqliteStore) -> None:
    """Compare a late page with the first one, of the plain list, of a word and of a count."""
    for wanted in (Wanted("component"), Wanted("component", words=("basket",)), Wanted("component", admits=360)):
        after: Key | None = None
        for _ in range(1, PAGES):
            after = store.page(replace(wanted, after=after, limit=10)).last or after
        pair = (_taken(lambda k=key, w=wanted: store.page(replace(w, after=k, limit=10))) for key in (None, after))
        first, late = pair
        name = "words" if wanted.words else "admits" if wanted.admits else "all"
        _say(f"page {PAGES} of {name}: {late:.2f} ms, {late / first:.2f} times page 1")


def _taken(work: Callable[[], object], runs: int = RUNS) -> float:
    work()
    times = []
    for _ in range(runs):
        begin = time.perf_counter()
        work()
        times.append(1000 * (time.perf_counter() - begin))
    return median(times)


def _records(count: int, whole: bool) -> Iterator[Record]:
    """Give the records of a library, sort by sort as a dump has them."""
    for sort in SORTS if whole else ("item", "class"):
        for number in range(1, count + 1):
            for row in (_ROWS[sort] if whole or sort != "item" else _bare_item)(number):
                yield Record(sort, dict(zip(FORM_OF[sort].fields, row, strict=True)))


def _chance(number: int, what: str) -> random.Random:
    return random.Random(f"{number} {what}")


def _object(number: int) -> list[tuple[object, ...]]:
    return [(f"{number:064x}", "{}")]


def _bare_item(number: int) -> list[tuple[object, ...]]:
    kept = (_kind(number), f"{number:064x}", "{}", "{}", "", "", "2026-01-02T03:04:05Z", "accepted")
    return [(number, 1, "component", f"part-{number:07}", *kept, "yes")]


def _item(number: int) -> list[tuple[object, ...]]:
    chance = _chance(number, "words")
    slug, title = f"part-{number:07}", " ".join(chance.sample(WORDS, 2))
    words = " ".join(["scarce"] * (number % 997 == 0) + chance.choices(WORDS, k=12))
    card = f'{{"slug":"{slug}","kind":"{_kind(number)}","summary":"{words}","padding":"{"x" * 300}"}}'
    body = f'{{"slug":"{slug}","padding":"{"x" * 1500}"}}'
    kept = (_kind(number), f"{number:064x}", body, card, title, words, "2026-01-02T03:04:05Z", "accepted")
    return [(number, 1, "component", slug, *kept, "yes")]


def _kind(number: int) -> str:
    return ("body", "body", "body", "border", "selvedge", "cast-on", "bind-off")[number % 7]


def _revision(number: int) -> list[tuple[object, ...]]:
    return [(number, 1, f"{number:064x}", "{}", "2026-01-02T03:04:05Z", "p1", "accepted")]


def _class(number: int) -> list[tuple[object, ...]]:
    chance = _chance(number, "class")
    modulus = chance.choice([1, 2, 2, 3, 4, 4, 5, 6, 6, 7, 8, 8, 9, 10, 12, 14, 16, 17, 18, 20, 24, 31, 48, 60])
    residue = chance.randrange(modulus)
    return [(number, modulus, residue, chance.randrange(1, 40) + residue, None, _kind(number))]


def _trait(number: int) -> list[tuple[object, ...]]:
    chance = _chance(number, "trait")
    repeat = chance.choice((2, 4, 8, 12, 16))
    traits = [
        (number, None, "difficulty", chance.choice(("basic", "easy", "intermediate", "complex"))),
        (number, None, "licence", "CC0-1.0"),
        (number, repeat, "row_repeat", str(repeat)),
    ]
    known = chance.random() < 0.6
    return [*traits[:2], *([(number, None, "lies", chance.choice(("flat", "curls")))] if known else []), traits[2]]


def _change(number: int) -> list[tuple[object, ...]]:
    return [(number, "2026-01-02T03:04:05Z", "component", f"part-{number:07}", f"{number:064x}", "added")]


_ROWS = {
    "object": _object,
    "item": _item,
    "revision": _revision,
    "class": _class,
    "trait": _trait,
    "change": _change,
}


def _say(line: str) -> None:
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else USUAL, "counts" not in sys.argv)

"""Pages and facets of what is kept in the file, and the traits by which components are looked up."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, replace
from typing import Any

from counterpane.library.parts.wanted import CountClass, Facets, Page, Trait, Wanted
from counterpane.library.ports import Kept, Shelf
from counterpane.storage.sqlite.asking import Asking
from counterpane.storage.sqlite.facets import counted
from counterpane.storage.sqlite.filters import filter_values, filters
from counterpane.storage.sqlite.pages import question

_CLASSES = """
SELECT i.slug, c.modulus, c.residue, c.least, c.most FROM item i JOIN class c ON c.item = i.id
WHERE i.shelf = :shelf AND i.slug IN ({slugs}) ORDER BY i.slug, c.modulus, c.residue, c.least"""
_TRAITLESS = """
SELECT i.slug, i.sha256, i.number, i.body, i.at, i.status FROM traitless n JOIN item i ON i.id = n.item
ORDER BY n.item LIMIT :limit"""


class Searching(Asking):
    """What a library is searched by, in its file."""

    def page(self, wanted: Wanted) -> Page:
        """Return the cards that are wanted."""
        asked = question(wanted)
        rows = self._ask(asked.sql, asked.values)
        cards = tuple(row[0] for row in rows[: wanted.limit])
        return Page(cards, tuple(rows[wanted.limit - 1][1:]) if len(rows) > wanted.limit else None)

    def count(self, wanted: Wanted) -> int:
        """Return how many are wanted."""
        asked = replace(wanted, after=None)
        sql = f"SELECT COUNT(*) FROM item i WHERE i.shelf = :shelf {filters(asked)}"
        return int(self._ask(sql, filter_values(asked))[0][0])

    def facets(self, wanted: Wanted, most: int) -> Facets:
        """Count what is wanted, up to so many entries."""
        return counted(self._ask, wanted, most)

    def classes(self, shelf: Shelf, slugs: Sequence[str]) -> Mapping[str, tuple[CountClass, ...]]:
        """Return the classes of the latest revisions of these slugs."""
        named = {f"slug{place}": slug for place, slug in enumerate(slugs)}
        sql = _CLASSES.format(slugs=", ".join(f":{name}" for name in named))
        found: dict[str, tuple[CountClass, ...]] = {}
        for slug, *numbers in self._ask(sql, {"shelf": shelf, **named}):
            found[slug] = (*found.get(slug, ()), CountClass(*numbers))
        return found

    def without_traits(self, limit: int) -> tuple[Kept, ...]:
        """Return components whose traits were never kept."""
        return tuple(Kept(*row) for row in self._ask(_TRAITLESS, {"limit": limit}))

    def put_traits(self, found: Iterable[tuple[Kept, tuple[Trait, ...]]]) -> None:
        """Keep the traits of these components, but of those that were revised meanwhile."""
        sql = "SELECT id FROM item WHERE shelf = 'component' AND slug = ? AND sha256 = ?"
        with self._writing():
            for kept, traits in found:
                row = self._writer.execute(sql, (kept.slug, kept.sha256)).fetchone()
                if row is not None:
                    for table in ("trait", "traitless"):
                        self._db.table(table).delete_where("item = ?", [row[0]])
                    self._add_traits(row[0], traits)

    def _add_traits(self, item: Any, traits: Iterable[Trait]) -> None:
        if rows := [{"item": item, **asdict(each)} for each in traits]:
            self._db.table("trait").insert_all(rows)

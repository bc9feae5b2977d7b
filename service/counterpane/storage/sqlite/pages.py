"""The questions that a page asks, as SQL with named parameters: no value is ever written into the text."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from counterpane.library.ports import Wanted

Values: TypeAlias = dict[str, int | str | None]


@dataclass(frozen=True, slots=True)
class Question:
    """A statement whose first column is the card and whose others are the key, with its parameters."""

    sql: str
    values: Values


_PLAIN = """
SELECT i.card, i.slug FROM item i
WHERE i.shelf = :shelf {filters} {after}
ORDER BY i.slug LIMIT :limit"""

_FOUND = """
SELECT card, tier, slug FROM (
    SELECT i.card, i.slug, i.id NOT IN (SELECT rowid FROM item_fts WHERE item_fts MATCH :titled) AS tier
    FROM item i WHERE i.shelf = :shelf AND i.id IN (SELECT rowid FROM item_fts WHERE item_fts MATCH :words) {filters})
WHERE TRUE {after}
ORDER BY tier, slug LIMIT :limit"""

# The modulus table is walked first and the index of classes probed once for each modulus; CROSS JOIN keeps that order,
# which SQLite 3.40 otherwise exchanges for a Bloom filter over the whole index. A remainder by 0 is NULL in SQLite, so
# a fixed count, whose modulus is 0, has a branch of its own. An item is shown once, at the first class that admits.
_ADMITTING = """
SELECT i.card, c.modulus, c.least, c.item FROM modulus m
CROSS JOIN class c ON c.kind = m.kind AND c.modulus = m.modulus AND c.least <= :admits
    AND c.residue = CASE m.modulus WHEN 0 THEN :admits ELSE :admits % m.modulus END
    AND (c.most IS NULL OR c.most >= :admits)
CROSS JOIN item i ON i.id = c.item
WHERE {moduli} i.shelf = :shelf {found} {filters} {after}
AND NOT EXISTS (
    SELECT 1 FROM class d WHERE d.item = c.item AND (d.modulus, d.least) < (c.modulus, c.least)
    AND d.least <= :admits AND (d.most IS NULL OR d.most >= :admits)
    AND d.residue = CASE d.modulus WHEN 0 THEN :admits ELSE :admits % d.modulus END)
ORDER BY m.modulus, c.least, c.item LIMIT :limit"""

_STANDS = "AND i.status != 'withdrawn'"
_OF_TEXTURE = "AND i.id IN (SELECT item FROM texture WHERE key = :texture)"
_CLOSED = "AND i.id IN (SELECT item FROM opening WHERE um < 1000 * :openings_under_mm)"
_WITH_WORDS = "AND i.id IN (SELECT rowid FROM item_fts WHERE item_fts MATCH :words)"
_AFTER_COUNT = "AND m.modulus >= :after0 AND (m.modulus, c.least, c.item) > (:after0, :after1, :after2)"


def question(wanted: Wanted) -> Question:
    """Return the statement for this page; it asks for one card more than wanted, to tell whether more follow."""
    if wanted.admits is not None:
        return Question(_admitting(wanted), _values(wanted))
    if wanted.words:
        after = "AND (tier, slug) > (:after0, :after1)" if wanted.after else ""
        return Question(_FOUND.format(filters=_filters(wanted), after=after), _values(wanted))
    after = "AND i.slug > :after0" if wanted.after else ""
    return Question(_PLAIN.format(filters=_filters(wanted), after=after), _values(wanted))


def _admitting(wanted: Wanted) -> str:
    return _ADMITTING.format(
        moduli="m.kind = :kind AND" if wanted.kind else "",
        found=_WITH_WORDS if wanted.words else "",
        filters=_filters(wanted),
        after=_AFTER_COUNT if wanted.after else "",
    )


def _filters(wanted: Wanted) -> str:
    given = (("kind", wanted.kind), ("reversible", wanted.reversible), ("status", wanted.status))
    plain = (f"AND i.{name} = :{name}" for name, value in given if value is not None)
    closed = _CLOSED if wanted.openings_under_mm is not None else ""
    return " ".join((_STANDS, *plain, _OF_TEXTURE if wanted.texture else "", closed))


def _values(wanted: Wanted) -> Values:
    phrase = " AND ".join(f'"{word}"' for word in wanted.words)
    values: Values = {
        "shelf": wanted.shelf,
        "kind": wanted.kind,
        "admits": wanted.admits,
        "reversible": wanted.reversible,
        "status": wanted.status,
        "texture": wanted.texture,
        "openings_under_mm": wanted.openings_under_mm,
        "words": phrase,
        "titled": f"{{title}} : ({phrase})",
        "limit": wanted.limit + 1,
    }
    return values | {f"after{place}": value for place, value in enumerate(wanted.after or ())}

"""The questions that a page asks, as SQL with named parameters: no value is ever written into the text."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from counterpane.library.parts.wanted import Wanted
from counterpane.storage.sqlite.filters import Values, filter_values, filters, title_phrase, words_phrase


@dataclass(frozen=True, slots=True)
class Question:
    """A statement whose first column is the card and whose others are the key, with its parameters."""

    sql: str
    values: Values


_PLAIN = """
SELECT i.card, i.slug FROM item i
WHERE i.shelf = :shelf {filters} {after}
ORDER BY i.slug LIMIT :limit"""

# The search gives its rows in the order of their age, so that a page costs what its rows cost, however many follow. The
# second part is asked for only where the first does not fill the page, and alone once the first is behind the page.
_TIER = """
SELECT * FROM (
    SELECT i.card, {tier} AS tier, i.id FROM item_fts f CROSS JOIN item i ON i.id = f.rowid
    WHERE f.item_fts MATCH :{phrase} AND f.rowid > :{after} AND i.shelf = :shelf {filters}
    ORDER BY f.rowid LIMIT :limit)"""

# The moduli are walked first and the index of classes probed once for each modulus; CROSS JOIN keeps that order,
# which SQLite 3.40 otherwise exchanges for a Bloom filter over the whole index. A remainder by 0 is NULL in SQLite, so
# a fixed count, whose modulus is 0, has a branch of its own. An item is shown once, at the first class that admits.
_ADMITTING = """
SELECT i.card, c.modulus, c.least, c.item FROM {moduli} m
CROSS JOIN class c {index} ON {of_kind} c.modulus = m.modulus AND c.least <= :admits
    AND c.residue = CASE m.modulus WHEN 0 THEN :admits ELSE :admits % m.modulus END
    AND (c.most IS NULL OR c.most >= :admits)
CROSS JOIN item i ON i.id = c.item
WHERE {kind} i.shelf = :shelf {filters} {after}
AND NOT EXISTS (
    SELECT 1 FROM class d WHERE d.item = c.item AND (d.modulus, d.least) < (c.modulus, c.least)
    AND d.least <= :admits AND (d.most IS NULL OR d.most >= :admits)
    AND d.residue = CASE d.modulus WHEN 0 THEN :admits ELSE :admits % d.modulus END)
ORDER BY m.modulus, c.least, c.item LIMIT :limit"""

_OF_KIND = {
    "moduli": "modulus",
    "index": "INDEXED BY class_by_count",
    "of_kind": "c.kind = m.kind AND",
    "kind": "m.kind = :kind AND",
}
_OF_ALL = {"moduli": "any_modulus", "index": "INDEXED BY class_of_all", "of_kind": "", "kind": ""}
_AFTER_COUNT = """AND m.modulus >= :after0 AND (c.least, c.item) > (
    CASE m.modulus WHEN :after0 THEN :after1 ELSE -1 END, CASE m.modulus WHEN :after0 THEN :after2 ELSE -1 END)"""


def question(wanted: Wanted) -> Question:
    """Return the statement for this page; it asks for one card more than wanted, to tell whether more follow."""
    values = {**filter_values(wanted), "limit": wanted.limit + 1, **dict(_after(wanted))}
    if wanted.admits is not None:
        where = _OF_KIND if wanted.kind else _OF_ALL
        after = _AFTER_COUNT if wanted.after else ""
        # The count is what the statement itself asks; as a filter besides it would be looked up twice.
        return Question(_ADMITTING.format(**where, filters=filters(replace(wanted, admits=None)), after=after), values)
    if wanted.words:
        return _found(wanted, values)
    after = "AND i.slug > :after0" if wanted.after else ""
    return Question(_PLAIN.format(filters=filters(wanted), after=after), values)


def _found(wanted: Wanted, values: Values) -> Question:
    """Return the statement for words: those that have them in the title, tier 0, and then the others, tier 1."""
    tier, item = wanted.after or (0, 0)
    where = filters(replace(wanted, words=()))
    values["titled"], values["after_titled"] = title_phrase(wanted), item
    values["others"] = f"({words_phrase(wanted)}) NOT ({title_phrase(wanted)})"
    values["after_others"] = item if tier else 0
    titled = _TIER.format(tier=0, phrase="titled", after="after_titled", filters=where)
    others = _TIER.format(tier=1, phrase="others", after="after_others", filters=where)
    return Question(others if tier else f"{titled}\nUNION ALL {others}\nLIMIT :limit", values)


def _after(wanted: Wanted) -> Iterator[tuple[str, int | str | None]]:
    return ((f"after{place}", value) for place, value in enumerate(wanted.after or ()))

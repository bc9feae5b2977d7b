"""What an item must be to be wanted, as conditions of SQL on the item `i`; no value is ever written into the text."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import TypeAlias

from counterpane.library.parts.wanted import Wanted
from counterpane.storage.sqlite.meeting import written

Values: TypeAlias = dict[str, int | str | None]

_STANDS = "AND i.status != 'withdrawn'"
_OF_TEXTURE = "AND i.id IN (SELECT item FROM texture WHERE key = :texture)"
_CLOSED = "AND i.id IN (SELECT item FROM opening WHERE um < 1000 * :openings_under_mm)"
_WITH_WORDS = "AND i.id IN (SELECT rowid FROM item_fts WHERE item_fts MATCH :words)"
_ADMITS = """AND EXISTS (
    SELECT 1 FROM class a WHERE a.item = i.id AND a.least <= :admits AND (a.most IS NULL OR a.most >= :admits)
    AND a.residue = CASE a.modulus WHEN 0 THEN :admits ELSE :admits % a.modulus END)"""
# SQLite gives a remainder the sign of what is divided, hence the second remainder.
_BETWEEN = """AND EXISTS (
    SELECT 1 FROM (SELECT modulus, residue, most, max(least, :low) AS start FROM class WHERE item = i.id) b
    WHERE CASE b.modulus WHEN 0 THEN b.residue BETWEEN :low AND :high
    ELSE b.start + ((b.residue - b.start) % b.modulus + b.modulus) % b.modulus
        <= min(:high, ifnull(b.most, :high)) END)"""
_MEETS = """AND EXISTS (
    SELECT 1 FROM class e WHERE e.item = i.id AND shares_count(e.modulus, e.residue, e.least, e.most, :meets))"""
_AMONG = "AND i.slug IN (SELECT value FROM json_each(:slugs))"
_TRAIT = """AND EXISTS (
    SELECT 1 FROM trait t WHERE t.item = i.id AND t.name = :{name}
    AND t.word IN (SELECT value FROM json_each(:{words})))"""
_SPAN = """AND EXISTS (
    SELECT 1 FROM trait t WHERE t.item = i.id AND t.name = :{name}
    AND (:{low} IS NULL OR t.number >= :{low}) AND (:{high} IS NULL OR t.number <= :{high}) AND t.number IS NOT NULL)"""


def filters(wanted: Wanted) -> str:
    """Return the conditions of all that is wanted, beside the shelf; each begins with AND."""
    return " ".join(_conditions(wanted))


def _conditions(wanted: Wanted) -> Iterator[str]:
    yield _STANDS
    given = (("kind", wanted.kind), ("reversible", wanted.reversible), ("status", wanted.status))
    yield from (f"AND i.{name} = :{name}" for name, value in given if value is not None)
    asked = (
        (wanted.texture is not None, _OF_TEXTURE),
        (wanted.openings_under_mm is not None, _CLOSED),
        (bool(wanted.words), _WITH_WORDS),
        (wanted.admits is not None, _ADMITS),
        (wanted.between is not None, _BETWEEN),
        (wanted.meets is not None, _MEETS),
        (wanted.slugs is not None, _AMONG),
    )
    yield from (condition for is_asked, condition in asked if is_asked)
    for place in range(len(wanted.traits)):
        yield _TRAIT.format(name=f"trait{place}", words=f"words{place}")
    for place in range(len(wanted.spans)):
        yield _SPAN.format(name=f"span{place}", low=f"low{place}", high=f"high{place}")


def filter_values(wanted: Wanted) -> Values:
    """Return the parameters of the conditions."""
    names = ("shelf", "kind", "admits", "reversible", "status", "texture", "openings_under_mm")
    values: Values = {name: getattr(wanted, name) for name in names}
    values |= {"words": words_phrase(wanted), "meets": written(wanted.meets or ())}
    values["slugs"] = _json(wanted.slugs or ())
    values["low"], values["high"] = wanted.between or (None, None)
    for place, (name, words) in enumerate(wanted.traits):
        values |= {f"trait{place}": name, f"words{place}": _json(words)}
    for place, span in enumerate(wanted.spans):
        values |= {f"span{place}": span.name, f"low{place}": span.low, f"high{place}": span.high}
    return values


def _json(texts: tuple[str, ...]) -> str:
    return json.dumps(texts)


def words_phrase(wanted: Wanted) -> str:
    """Return what the index of words is asked: all words, each in quotes."""
    return " AND ".join(f'"{word}"' for word in wanted.words)


def title_phrase(wanted: Wanted) -> str:
    """Return the same of titles alone."""
    return f"{{title}} : ({words_phrase(wanted)})"

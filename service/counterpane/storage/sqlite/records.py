"""What the file holds, as records, and records into a file that holds nothing."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator
from typing import Any

from counterpane.library.sharing.records import FORM_OF, FORMS, Form, Record

_BYTES = frozenset({"content", "body", "card"})
"""Columns that hold bytes, which are UTF-8."""


def read(connection: sqlite3.Connection) -> Iterator[Record]:
    """Give all records; the connection is in one transaction, so that all are of one moment."""
    for form in FORMS:
        columns, order = (", ".join(f'"{name}"' for name in names) for names in (form.fields, form.order))
        for row in connection.execute(f'SELECT {columns} FROM "{form.sort}" ORDER BY {order}'):
            yield Record(form.sort, dict(zip(form.fields, map(_as_text, row), strict=True)))


def _as_text(value: Any) -> Any:
    return value.decode() if isinstance(value, bytes) else value


def holds_something(connection: sqlite3.Connection) -> bool:
    """Say whether there is a record of any sort but the name, which is there from the beginning."""
    sorts = [form.sort for form in FORMS if form.sort != "library"]
    return any(connection.execute(f'SELECT 1 FROM "{sort}" LIMIT 1').fetchone() for sort in sorts)


def write(connection: sqlite3.Connection, records: Iterable[Record]) -> None:
    """Insert all records, within the caller's transaction.

    The name is theirs too; a history that has none stays without.
    """
    own = connection.execute("SELECT identity FROM library").fetchall()
    connection.execute("DELETE FROM library")
    statements = {form.sort: _insertion(form) for form in FORMS}
    for record in records:
        fields = FORM_OF[record.sort].fields
        connection.execute(statements[record.sort], [_as_kept(name, record.row[name]) for name in fields])
    connection.executemany(_STILL_ITS_OWN, own)
    connection.execute(_WITHOUT_TRAITS)


_STILL_ITS_OWN = """
INSERT INTO library SELECT ? WHERE NOT EXISTS (SELECT 1 FROM library) AND NOT EXISTS (SELECT 1 FROM change)"""

_WITHOUT_TRAITS = """
INSERT INTO traitless SELECT id FROM item WHERE shelf = 'component' AND id NOT IN (SELECT item FROM trait)"""
"""A dump of an earlier version holds no traits."""


def _insertion(form: Form) -> str:
    columns, places = ", ".join(f'"{name}"' for name in form.fields), ", ".join("?" * len(form.fields))
    return f'INSERT INTO "{form.sort}" ({columns}) VALUES ({places})'


def _as_kept(name: str, value: Any) -> Any:
    return value.encode() if name in _BYTES else value

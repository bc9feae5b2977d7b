"""Lists as files: every card that a question finds, as lines of JSON (NDJSON) or as CSV (RFC 4180).

A spreadsheet takes a cell that begins like a formula for one, so such a cell gets an apostrophe before it; raw, it is
exact. A value that is no text or number stands in its cell as JSON.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

import orjson

from counterpane.library.keeping import listing
from counterpane.library.ports import Shelf
from counterpane.library.services import Services

FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""How a cell begins that a spreadsheet may take for a formula; common practice, no source."""
AT_ONCE = 200


def cards(services: Services, shelf: Shelf, filters: Mapping[str, Any]) -> Iterator[bytes]:
    """Give every card that passes the filters, in the order of the list."""
    after, more = None, True
    while more:
        found = listing.page(services, shelf, filters, after, AT_ONCE)
        yield from found.cards
        after, more = found.last, found.last is not None


def ndjson(services: Services, shelf: Shelf, filters: Mapping[str, Any]) -> bytes:
    """Return a card a line."""
    return b"".join(card + b"\n" for card in cards(services, shelf, filters))


def as_csv(services: Services, shelf: Shelf, filters: Mapping[str, Any], raw: bool) -> bytes:
    """Return a card a row under the names of its members, lines ended as RFC 4180 has them."""
    return table_of([orjson.loads(card) for card in cards(services, shelf, filters)], raw)


def table_of(rows: Sequence[Mapping[str, Any]], raw: bool) -> bytes:
    """Return cards that were read as CSV, under the names of their members."""
    names = list(dict.fromkeys(name for row in rows for name in row))
    file = io.StringIO(newline="")
    writer = csv.writer(file, lineterminator="\r\n")
    writer.writerow(names)
    writer.writerows([_cell(row.get(name), raw) for name in names] for row in rows)
    return file.getvalue().encode()


def _cell(value: Any, raw: bool) -> str:
    text = "" if value is None else value if isinstance(value, str) else orjson.dumps(value).decode()
    return f"'{text}" if not raw and text.startswith(FORMULA) else text

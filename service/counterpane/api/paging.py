"""Pages: cursors that carry the filters and the place, and links to the next page.

A cursor is opaque to clients. Its check value tells a mistyped or changed one from ours; it keeps nothing secret, and
what it holds is read through the same schema as a query.
"""

from __future__ import annotations

import binascii
from base64 import urlsafe_b64decode, urlsafe_b64encode
from collections.abc import Mapping, Sequence
from hashlib import blake2b
from typing import Any

import orjson

from counterpane.api.operations import Answer
from counterpane.api.problems import Problem
from counterpane.library.ports import Key

CHECK_BYTES = 8
USUAL_LIMIT = 50


def write_cursor(filters: Mapping[str, Any], last: Key) -> str:
    """Return the cursor of the page that follows this key."""
    data = orjson.dumps([dict(filters), list(last)], option=orjson.OPT_SORT_KEYS)
    return urlsafe_b64encode(_check(data) + data).decode().rstrip("=")


def read_query(query: Mapping[str, Any]) -> tuple[dict[str, Any], Key | None, int]:
    """Return the filters, the key to go on from and the limit; the cursor's filters must not be contradicted."""
    given = {name: value for name, value in query.items() if name not in ("cursor", "limit")}
    if not query.get("cursor"):
        return given, None, query.get("limit", USUAL_LIMIT)
    filters, after = _read_cursor(query["cursor"])
    limit = query.get("limit", filters.pop("limit", USUAL_LIMIT))
    if any(filters.get(name) != value for name, value in given.items()):
        raise _refused("The cursor belongs to a list with other filters.")
    return filters, after, limit


def _read_cursor(cursor: str) -> tuple[dict[str, Any], Key]:
    try:
        data = urlsafe_b64decode(cursor.encode() + b"=" * (-len(cursor) % 4))
    except (binascii.Error, ValueError):
        raise _refused("That is no cursor of this library.") from None
    if data[:CHECK_BYTES] != _check(data[CHECK_BYTES:]):
        raise _refused("That is no cursor of this library, or a changed one.")
    filters, after = orjson.loads(data[CHECK_BYTES:])
    return filters, tuple(after)


def _check(data: bytes) -> bytes:
    return blake2b(data, digest_size=CHECK_BYTES, person=b"page").digest()


def _refused(detail: str) -> Problem:
    fault = {"pointer": "/cursor", "in": "query", "message": detail}
    return Problem("cursor-not-valid", detail, errors=[fault])


def page(path: str, cards: Sequence[bytes], cursor: str | None, before: Mapping[str, Any] | None = None) -> Answer:
    """Return a page of cards, with the address of the next one in the body and in the header `Link`."""
    following = f"{path}?cursor={cursor}" if cursor else None
    start = orjson.dumps(dict(before or {}))[1:-1]
    body = b"".join(
        (
            b"{",
            start,
            b"," if start else b"",
            b'"items":[',
            b",".join(cards),
            b'],"next":',
            orjson.dumps(following),
            b"}",
        )
    )
    return Answer(body, headers=(("Link", f'<{following}>; rel="next"'),) if following else ())

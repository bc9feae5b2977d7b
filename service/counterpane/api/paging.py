"""Pages: cursors that carry the filters and the place, and links to the next page.

A cursor is opaque to clients. It is signed with the secret of the library (HMAC with SHA-256, RFC 2104), so that one
that was changed, made by somebody else or given by another library is refused. What it holds can be read by anybody.
"""

from __future__ import annotations

import binascii
import hmac
from base64 import urlsafe_b64decode, urlsafe_b64encode
from collections.abc import Mapping, Sequence
from typing import Any

import orjson

from counterpane.api.operations import Answer
from counterpane.api.problems import Problem
from counterpane.library.ports import Key
from counterpane.library.services import Services

SIGNATURE_BYTES = 16
"""Of the 32 that SHA-256 gives: at least half of them are to be kept (RFC 2104, 5)."""
_MEANT_FOR = b"cursor of a page\0"
"""What the secret signs here, so that nothing else that it may sign is taken for a cursor."""
USUAL_LIMIT = 50


def write_cursor(services: Services, filters: Mapping[str, Any], last: Key) -> str:
    """Return the cursor of the page that follows this key."""
    data = orjson.dumps([dict(filters), list(last)], option=orjson.OPT_SORT_KEYS)
    return _in_letters(_signature(services, data) + data)


def _in_letters(data: bytes) -> str:
    """Return bytes in base64url without padding (RFC 4648, 5), in the one way that a cursor is taken in."""
    return urlsafe_b64encode(data).decode().rstrip("=")


def read_query(services: Services, query: Mapping[str, Any]) -> tuple[dict[str, Any], Key | None, int]:
    """Return the filters, the key to go on from and the limit; the cursor's filters must not be contradicted."""
    given = {name: value for name, value in query.items() if name not in ("cursor", "limit")}
    if not query.get("cursor"):
        return given, None, query.get("limit", USUAL_LIMIT)
    filters, after = _read_cursor(services, query["cursor"])
    limit = query.get("limit", filters.pop("limit", USUAL_LIMIT))
    if any(filters.get(name) != value for name, value in given.items()):
        raise _refused("The cursor belongs to a list with other filters.")
    return filters, after, limit


def _read_cursor(services: Services, cursor: str) -> tuple[dict[str, Any], Key]:
    try:
        data = urlsafe_b64decode(cursor.encode() + b"=" * (-len(cursor) % 4))
    except (binascii.Error, ValueError):
        raise _refused("That is no cursor of this library.") from None
    signature, told = data[:SIGNATURE_BYTES], data[SIGNATURE_BYTES:]
    if _in_letters(data) != cursor or not hmac.compare_digest(signature, _signature(services, told)):
        raise _refused("That is no cursor of this library, or a changed one.")
    filters, after = orjson.loads(told)
    return filters, tuple(after)


def _signature(services: Services, data: bytes) -> bytes:
    return hmac.digest(services.store.secret(), _MEANT_FOR + data, "sha256")[:SIGNATURE_BYTES]


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

"""Lists as files over HTTP, by the suffix of the address or by the header Accept."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from marshmallow import Schema

from counterpane.api.kept import asked
from counterpane.api.operations import Answer, Call, Example, Operation
from counterpane.api.paging import read_query
from counterpane.library.ports import Shelf
from counterpane.library.sharing import exports

CSV, NDJSON = "text/csv", "application/x-ndjson"
SUFFIXES = {CSV: "csv", NDJSON: "ndjson"}


def exported(call: Call, shelf: Shelf, media: str) -> Answer:
    """Return all that the query finds as a file, whichever page it names."""
    filters, _, _ = read_query(call.services, asked(call))
    headers = (("Content-Disposition", f'attachment; filename="{shelf}s.{SUFFIXES[media]}"'),)
    if media == NDJSON:
        return Answer(exports.ndjson(call.services, shelf, filters), media=NDJSON, headers=headers)
    made = exports.as_csv(call.services, shelf, filters, call.query.get("profile") == "raw")
    return Answer(made, media=f"{CSV}; charset=utf-8; header=present", headers=headers)


def export_operations(
    shelf: Shelf, query: type[Schema], shown: tuple[Example, ...], problems: tuple[str, ...] = ()
) -> tuple[Operation, ...]:
    """Return the operations that answer a list as a file by its suffix; `problems` are those of its filters."""
    return tuple(replace(_operation(shelf, media, query, shown), problems=problems) for media in SUFFIXES)


def _operation(shelf: Shelf, media: str, query: type[Schema], shown: tuple[Example, ...]) -> Operation:
    suffix = SUFFIXES[media]
    return Operation(
        name=f"list_{shelf}s_as_{suffix}",
        method="GET",
        path=f"/v1/{shelf}s.{suffix}",
        tag=f"{shelf}s",
        summary=f"List {shelf}s as {suffix.upper()}.",
        description="All that the query finds, whichever page it names; the same bytes as by the header Accept."
        + (
            " A cell that begins like a formula has an apostrophe before it, unless `profile` is `raw`."
            if media == CSV
            else ""
        ),
        view=_view(shelf, media),
        answer=None,
        media=(media,),
        query=query,
        role="reader",
        examples=shown,
    )


def _view(shelf: Shelf, media: str) -> Callable[[Call], Answer]:
    return lambda call: exported(call, shelf, media)

"""What a store holds as records, the lines of a dump: which sorts there are, their fields and their order.

Tokens are never among them, nor the secret of a store, nor the keys of requests, which a day forgets anyway.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

Row: TypeAlias = Mapping[str, int | str | None]


@dataclass(frozen=True, slots=True)
class Form:
    """One sort of record: the fields that hold texts, those that hold whole numbers, and by which they are ordered.

    A field in `open` may hold nothing.
    """

    sort: str
    texts: tuple[str, ...]
    numbers: tuple[str, ...]
    order: tuple[str, ...]
    open: frozenset[str] = frozenset()

    @property
    def fields(self) -> tuple[str, ...]:
        """All fields."""
        return (*self.numbers, *self.texts)


@dataclass(frozen=True, slots=True)
class Record:
    """One record: its sort, and its fields with their values."""

    sort: str
    row: Row


FORMS: tuple[Form, ...] = (
    Form("library", ("identity",), (), ("identity",)),
    Form("object", ("sha256", "content"), (), ("sha256",)),
    Form(
        "item",
        ("shelf", "slug", "kind", "sha256", "body", "card", "title", "words", "at", "status", "reversible"),
        ("id", "number"),
        ("id",),
        frozenset({"reversible"}),
    ),
    Form("revision", ("sha256", "body", "at", "by", "status"), ("item", "number"), ("item", "number")),
    Form(
        "class",
        ("kind",),
        ("item", "modulus", "residue", "least", "most"),
        ("item", "modulus", "least", "residue", "most"),
        frozenset({"most"}),
    ),
    Form("texture", ("key", "looks"), ("item", "version"), ("item", "version")),
    Form("opening", (), ("item", "um"), ("item",)),
    Form("trait", ("name", "word"), ("item", "number"), ("item", "name", "word"), frozenset({"number"})),
    Form("peer", ("peer", "last"), ("seq",), ("peer",)),
    Form("apart", ("peer", "shelf", "slug", "sha256", "at", "why"), (), ("peer", "shelf", "slug", "sha256")),
    Form("person", ("key", "name"), (), ("key",), frozenset({"name"})),
    Form(
        "standing",
        ("shelf", "slug", "sha256", "before", "status", "at", "by", "because", "said", "replacement", "until", "owner"),
        ("id",),
        ("id",),
        frozenset({"replacement", "until", "owner"}),
    ),
    Form("audit", ("at", "by", "act", "subject", "detail", "previous", "sha256"), ("seq",), ("seq",)),
    Form(
        "matter",
        ("lane", "shelf", "slug", "sha256", "at", "by", "turn", "since", "body"),
        ("number", "version", "place"),
        ("number",),
    ),
    Form("decision", ("at", "by", "decision", "because", "said"), ("id", "matter"), ("id",)),
    Form(
        "jotting",
        ("sort", "recipe", "revision", "at", "by", "whose", "changed", "sha256", "body", "taken_back"),
        ("number",),
        ("number",),
        frozenset({"taken_back"}),
    ),
    Form("change", ("at", "kind", "slug", "sha256", "event"), ("seq",), ("seq",), frozenset({"sha256"})),
)
"""In the order of a dump: what a record points at comes before it."""

NOT_EMPTY = "Name a file that is not there yet: it is made."
"""What to do where a store that should be filled holds something."""

FORM_OF: Mapping[str, Form] = {form.sort: form for form in FORMS}


def ordered(record: Record) -> tuple[tuple[bool, int | str], ...]:
    """Return where a record stands among those of its sort; nothing comes before something."""
    values = (record.row[name] for name in FORM_OF[record.sort].order)
    return tuple((value is not None, "" if value is None else value) for value in values)

"""That the records of a dump make a library: each object is that of its hash, and chains and numbers have no gaps."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

import orjson

from counterpane.library.errors import BrokenDump
from counterpane.library.keeping.audit import START, wrong_in
from counterpane.library.keeping.objects import digest
from counterpane.library.keeping.record import Line
from counterpane.library.sharing.records import FORMS, Record, ordered

_PLACES = {form.sort: place for place, form in enumerate(FORMS)}


def proved(records: Iterable[tuple[int, Record]]) -> Iterator[Record]:
    """Give the records of numbered lines, as far as they hold; raise BrokenDump with the first bad line."""
    seen = _Seen()
    number, before = 0, None
    for number, record in records:
        place = (_PLACES[record.sort], ordered(record))
        if before is not None and place < before:
            raise BrokenDump(number, "The record does not stand in its order.")
        before = place
        if fault := _PROOFS[record.sort](seen, record.row):
            raise BrokenDump(number, fault)
        yield record
    if short := [slug for at, (slug, last) in seen.items.items() if seen.chains.get(at) != last]:
        raise BrokenDump(number, f"The chain of {short[0]!r} does not lead to its latest revision.")


@dataclass(slots=True)
class _Seen:
    """What was read: hashes of objects, items with their latest revision, and where each chain and the history are."""

    libraries: int = 0
    objects: set[str] = field(default_factory=set)
    items: dict[int, tuple[str, tuple[int, str]]] = field(default_factory=dict)
    names: set[tuple[str, str]] = field(default_factory=set)
    chains: dict[int, tuple[int, str]] = field(default_factory=dict)
    seq: int = 0
    lines: int = 0
    last: str = START


def _library(seen: _Seen, row: Mapping[str, Any]) -> str:
    seen.libraries += 1
    return "" if seen.libraries == 1 else "A dump is that of one library."


def _object(seen: _Seen, row: Mapping[str, Any]) -> str:
    seen.objects.add(row["sha256"])
    found = digest(row["content"].encode())
    return "" if found == row["sha256"] else f"The object named {row['sha256']} is that of {found}."


def _item(seen: _Seen, row: Mapping[str, Any]) -> str:
    name = (row["shelf"], row["slug"])
    fresh = name not in seen.names and row["id"] == len(seen.items) + 1
    seen.names.add(name)
    seen.items[row["id"]] = row["slug"], (row["number"], row["sha256"])
    return "" if fresh else "The item stands twice, or one before it is missing."


def _revision(seen: _Seen, row: Mapping[str, Any]) -> str:
    number, _ = seen.chains.get(row["item"], (0, ""))
    seen.chains[row["item"]] = row["number"], row["sha256"]
    if row["sha256"] not in seen.objects:
        return f"There is no object {row['sha256']}."
    return "" if row["item"] in seen.items and row["number"] == number + 1 else "The revision follows no other."


def _of_item(seen: _Seen, row: Mapping[str, Any]) -> str:
    return "" if row["item"] in seen.items else "There is no such item."


def _of_slug(seen: _Seen, row: Mapping[str, Any]) -> str:
    return "" if (row["shelf"], row["slug"]) in seen.names else f"There is no {row['shelf']} {row['slug']!r}."


def _jotting(seen: _Seen, row: Mapping[str, Any]) -> str:
    if digest(row["body"].encode()) != row["sha256"]:
        return "The jotting is not that of its hash."
    return "" if ("recipe", row["recipe"]) in seen.names else f"There is no recipe {row['recipe']!r}."


def _audit(seen: _Seen, row: Mapping[str, Any]) -> str:
    line = Line(**{**row, "detail": orjson.loads(row["detail"])})
    wrong = wrong_in(line, seen.lines + 1, seen.last)
    seen.lines, seen.last = seen.lines + 1, line.sha256
    return wrong


def _change(seen: _Seen, row: Mapping[str, Any]) -> str:
    seen.seq += 1
    return "" if row["seq"] == seen.seq else f"The change has not the number {seen.seq}."


_PROOFS: Mapping[str, Callable[[_Seen, Mapping[str, Any]], str]] = {
    "library": _library,
    "object": _object,
    "item": _item,
    "revision": _revision,
    "class": _of_item,
    "texture": _of_item,
    "opening": _of_item,
    "trait": _of_item,
    "peer": lambda seen, row: "",
    "apart": lambda seen, row: "",
    "person": lambda seen, row: "",
    "standing": _of_slug,
    "audit": _audit,
    "matter": _of_slug,
    "decision": lambda seen, row: "",
    "jotting": _jotting,
    "change": _change,
}

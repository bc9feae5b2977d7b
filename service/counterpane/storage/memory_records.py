"""What the store in memory holds, as records, and records as what it holds."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from typing import Any

from counterpane.library.following import Apart, Seen
from counterpane.library.ports import Change, CountClass, Entry, Kept, TextureKey
from counterpane.library.records import FORM_OF, FORMS, Record, ordered


def objects(held: Mapping[str, bytes]) -> Iterator[Record]:
    """Give the records of objects by their hash."""
    return (Record("object", {"sha256": sha256, "content": data.decode()}) for sha256, data in held.items())


def changes(held: Iterable[Change]) -> Iterator[Record]:
    """Give the records of a history."""
    return (Record("change", asdict(each)) for each in held)


def of_peers(seen: Iterable[Seen], apart: Iterable[Apart]) -> Iterator[Record]:
    """Give the records of how far peers were read, and of what is kept apart."""
    yield from (Record("peer", asdict(each)) for each in seen)
    yield from (Record("apart", asdict(each)) for each in apart)


def item(number: int, entry: Entry, chain: Sequence[Kept], writers: Sequence[str]) -> Iterator[Record]:
    """Give the records of an item: its latest revision, its chain, and what is looked up of it."""
    told: dict[str, Any] = {name: getattr(entry, name, None) for name in FORM_OF["item"].fields}
    latest = {"id": number, "number": len(chain), "body": entry.body.decode(), "card": entry.card.decode()}
    yield Record("item", told | latest)
    for kept, by in zip(chain, writers, strict=True):
        row: dict[str, Any] = {"item": number, "number": kept.number, "sha256": kept.sha256, "body": kept.body.decode()}
        yield Record("revision", row | {"at": kept.at, "by": by, "status": kept.status})
    for count in entry.classes:
        yield Record("class", {"item": number, "kind": entry.kind, **asdict(count)})
    for texture in entry.textures:
        yield Record("texture", {"item": number, **asdict(texture)})
    if entry.opening_um is not None:
        yield Record("opening", {"item": number, "um": entry.opening_um})


def in_order(held: Iterable[Record]) -> list[Record]:
    """Return records in the order of a dump."""
    places = {form.sort: place for place, form in enumerate(FORMS)}
    return sorted(held, key=lambda record: (places[record.sort], ordered(record)))


@dataclass(slots=True)
class Held:
    """What records say, as the store in memory holds it; items by their number."""

    objects: dict[str, bytes] = field(default_factory=dict)
    changes: list[Change] = field(default_factory=list)
    entries: dict[int, Entry] = field(default_factory=dict)
    chains: dict[int, list[Kept]] = field(default_factory=dict)
    writers: dict[int, list[str]] = field(default_factory=dict)
    seen: dict[str, Seen] = field(default_factory=dict)
    apart: set[Apart] = field(default_factory=set)

    @classmethod
    def of(cls, records: Iterable[Record]) -> Held:
        """Read records that stand in the order of a dump."""
        held = cls()
        for record in records:
            held._take(record.sort, dict(record.row))
        return held

    def _take(self, sort: str, row: dict[str, Any]) -> None:
        match sort:
            case "object":
                self.objects[row["sha256"]] = row["content"].encode()
            case "item":
                self._take_item(row)
            case "revision":
                self._take_revision(row)
            case "change":
                self.changes.append(Change(**row))
            case "peer":
                self.seen[row["peer"]] = Seen(**row)
            case "apart":
                self.apart.add(Apart(**row))
            case "class":
                self._more(row, "classes", CountClass)
            case "texture":
                self._more(row, "textures", TextureKey)
            case "opening":
                self.entries[row["item"]] = replace(self.entries[row["item"]], opening_um=row["um"])

    def _take_item(self, row: dict[str, Any]) -> None:
        number, _ = row.pop("id"), row.pop("number")
        read = {name: row[name].encode() for name in ("body", "card")}
        self.chains[number], self.writers[number] = [], []
        self.entries[number] = Entry(**row | read, content=self.objects[row["sha256"]], by="")

    def _take_revision(self, row: dict[str, Any]) -> None:
        number, by = row.pop("item"), row.pop("by")
        entry = self.entries[number]
        self.chains[number].append(Kept(entry.slug, **{**row, "body": row["body"].encode()}))
        self.writers[number].append(by)
        self.entries[number] = replace(entry, by=by)

    def _more(self, row: dict[str, Any], name: str, sort: type[Any]) -> None:
        number = row.pop("item")
        row.pop("kind", None)
        entry = self.entries[number]
        more: dict[str, Any] = {name: (*getattr(entry, name), sort(**row))}
        self.entries[number] = replace(entry, **more)

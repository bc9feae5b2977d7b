"""What the store in memory holds, as records, and records as what it holds."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from typing import Any

import orjson

from counterpane.library.keeping.record import Line, Standing
from counterpane.library.knitting.jottings import Jotting
from counterpane.library.parts.wanted import Trait
from counterpane.library.ports import Change, CountClass, Entry, Kept, Shelf, TextureKey
from counterpane.library.review.matters import Decision, Matter, rank
from counterpane.library.sharing.following import Apart, Seen
from counterpane.library.sharing.records import FORM_OF, FORMS, Record, ordered


def library(identity: str | None) -> Iterator[Record]:
    """Give the record of a library's name, none where it has none."""
    return (Record("library", {"identity": each}) for each in (identity,) if each is not None)


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


def of_people(
    people: Mapping[str, str | None], standings: Sequence[tuple[Shelf, str, Standing]], lines: Iterable[Line]
) -> Iterator[Record]:
    """Give the records of people, of moves and of the audit log."""
    yield from (Record("person", {"key": key, "name": name}) for key, name in people.items())
    for place, (shelf, slug, each) in enumerate(standings, 1):
        yield Record("standing", {"id": place, "shelf": shelf, "slug": slug, **asdict(each)})
    for line in lines:
        yield Record("audit", asdict(line) | {"detail": orjson.dumps(dict(line.detail)).decode()})


def of_matters(matters: Iterable[Matter], decisions: Sequence[tuple[int, Decision]]) -> Iterator[Record]:
    """Give the records of what waits for somebody, and of what was decided."""
    for matter in matters:
        yield Record("matter", asdict(matter) | {"body": matter.body.decode(), "place": rank(matter)})
    for place, (number, each) in enumerate(decisions, 1):
        yield Record("decision", {"id": place, "matter": number, **asdict(each)})


def of_jottings(held: Iterable[Jotting]) -> Iterator[Record]:
    """Give the records of jottings."""
    return (Record("jotting", asdict(each) | {"body": each.body.decode()}) for each in held)


def item(number: int, entry: Entry, chain: Sequence[Kept]) -> Iterator[Record]:
    """Give the records of an item: its latest revision, its chain, and what is looked up of it."""
    told: dict[str, Any] = {name: getattr(entry, name, None) for name in FORM_OF["item"].fields}
    latest = {"id": number, "number": len(chain), "body": entry.body.decode(), "card": entry.card.decode()}
    yield Record("item", told | latest)
    for kept in chain:
        row: dict[str, Any] = {"item": number, "number": kept.number, "sha256": kept.sha256, "body": kept.body.decode()}
        yield Record("revision", row | {"at": kept.at, "by": kept.by, "status": kept.status})
    for count in entry.classes:
        yield Record("class", {"item": number, "kind": entry.kind, **asdict(count)})
    for texture in entry.textures:
        yield Record("texture", {"item": number, **asdict(texture)})
    if entry.opening_um is not None:
        yield Record("opening", {"item": number, "um": entry.opening_um})
    for trait in entry.traits:
        yield Record("trait", {"item": number, **asdict(trait)})


def in_order(held: Iterable[Record]) -> list[Record]:
    """Return records in the order of a dump."""
    places = {form.sort: place for place, form in enumerate(FORMS)}
    return sorted(held, key=lambda record: (places[record.sort], ordered(record)))


@dataclass(slots=True)
class Held:
    """What records say, as the store in memory holds it; items by their number."""

    identity: str | None = None
    objects: dict[str, bytes] = field(default_factory=dict)
    changes: list[Change] = field(default_factory=list)
    entries: dict[int, Entry] = field(default_factory=dict)
    chains: dict[int, list[Kept]] = field(default_factory=dict)
    people: dict[str, str | None] = field(default_factory=dict)
    standings: list[tuple[Shelf, str, Standing]] = field(default_factory=list)
    lines: list[Line] = field(default_factory=list)
    matters: dict[int, Matter] = field(default_factory=dict)
    decisions: list[tuple[int, Decision]] = field(default_factory=list)
    jottings: dict[int, Jotting] = field(default_factory=dict)
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
        """Take one record; the sorts that are not named here belong to an item."""
        match sort:
            case "library":
                self.identity = row["identity"]
            case "object":
                self.objects[row["sha256"]] = row["content"].encode()
            case "change":
                self.changes.append(Change(**row))
            case "peer":
                self.seen[row["peer"]] = Seen(**row)
            case "apart":
                self.apart.add(Apart(**row))
            case "jotting":
                self.jottings[row["number"]] = Jotting(**row | {"body": row["body"].encode()})
            case "person" | "standing" | "audit" | "matter" | "decision":
                self._take_of_people(sort, row)
            case _:
                self._take_of_item(sort, row)

    def _take_of_people(self, sort: str, row: dict[str, Any]) -> None:
        match sort:
            case "person":
                self.people[row["key"]] = row["name"]
            case "standing":
                self._take_standing(row)
            case "audit":
                self.lines.append(Line(**row | {"detail": orjson.loads(row["detail"])}))
            case "matter":
                told = {name: value for name, value in row.items() if name != "place"}
                self.matters[row["number"]] = Matter(**told | {"body": row["body"].encode()})
            case _:
                self._take_decision(row)

    def _take_of_item(self, sort: str, row: dict[str, Any]) -> None:
        match sort:
            case "item":
                self._take_item(row)
            case "revision":
                self._take_revision(row)
            case "class":
                self._more(row, "classes", CountClass)
            case "texture":
                self._more(row, "textures", TextureKey)
            case "trait":
                self._more(row, "traits", Trait)
            case _:
                self.entries[row["item"]] = replace(self.entries[row["item"]], opening_um=row["um"])

    def _take_item(self, row: dict[str, Any]) -> None:
        number, _ = row.pop("id"), row.pop("number")
        read = {name: row[name].encode() for name in ("body", "card")}
        self.chains[number] = []
        self.entries[number] = Entry(**row | read, content=self.objects[row["sha256"]], by="")

    def _take_revision(self, row: dict[str, Any]) -> None:
        number = row.pop("item")
        entry, chain = self.entries[number], self.chains[number]
        parent = chain[-1].sha256 if chain else None
        chain.append(Kept(entry.slug, **{**row, "body": row["body"].encode()}, parent=parent))
        self.entries[number] = replace(entry, by=row["by"])

    def _take_standing(self, row: dict[str, Any]) -> None:
        del row["id"]
        self.standings.append((row.pop("shelf"), row.pop("slug"), Standing(**row)))

    def _take_decision(self, row: dict[str, Any]) -> None:
        del row["id"]
        self.decisions.append((row.pop("matter"), Decision(**row)))

    def _more(self, row: dict[str, Any], name: str, sort: type[Any]) -> None:
        number = row.pop("item")
        row.pop("kind", None)
        entry = self.entries[number]
        more: dict[str, Any] = {name: (*getattr(entry, name), sort(**row))}
        self.entries[number] = replace(entry, **more)

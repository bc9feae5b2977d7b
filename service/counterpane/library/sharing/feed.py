"""The feed of a library: what was written, latest first, as Atom (RFC 4287).

Ids are UUIDs worked out of what they name and of the library that tells it, so that they are the same whenever and
wherever its feed is written, and never those of another library.
"""

from __future__ import annotations

import uuid
from collections.abc import Mapping, Sequence
from dataclasses import asdict
from typing import Any
from xml.etree import ElementTree as xml

import orjson

from counterpane.library.keeping.objects import canonical
from counterpane.library.ports import Change
from counterpane.library.services import Services

ATOM = "http://www.w3.org/2005/Atom"
PATH = "/v1/feed"
KINDS = ("component", "recipe", "edition")
NEVER = "1970-01-01T00:00:00Z"
"""When a library in which nothing was written was last changed; an Atom feed must say when."""

_ROOT = uuid.uuid5(uuid.NAMESPACE_URL, ATOM)


def feed(services: Services, before: int | None, limit: int) -> bytes:
    """Return the changes below a number, or the latest ones, at most so many lines of the history."""
    last = services.store.last_change()
    top = last if before is None else min(before - 1, last)
    start = max(0, top - limit)
    changes = services.store.changes(start, top - start) if top > start else ()
    library = _library(services)
    head = _id(library, "feed"), "What this library has written", changes[-1].at if changes else NEVER
    root = _begun(*head, PATH if before is None else f"{PATH}?before={before}&limit={limit}")
    if start:
        _link(root, "next", f"{PATH}?before={start + 1}&limit={limit}")
    for change in reversed(_shown(changes)):
        _linked(services, _entry(root, change, library), change)
    return _written(root)


def corrections_feed(services: Services, found: Mapping[str, Any]) -> bytes:
    """Return what was corrected since an edition as a feed of its own; what is of safety has that category."""
    place = f"/v1/recipes/{found['recipe']}/editions/{found['edition']}/corrections"
    title = f"Corrections of {found['recipe']} since edition {found['edition']}"
    updated = max((each["at"] for each in found["items"]), default=f"{found['date']}T00:00:00Z")
    edition = {**_library(services), "edition": found["sha256"]}
    root = _begun(_id(edition, "corrections"), title, updated, f"{place}?as=atom")
    _text(root, "subtitle", found["about"])
    for each in found["items"]:
        entry = xml.SubElement(root, "entry")
        _text(entry, "id", _id(edition | each, "correction"))
        _text(entry, "title", f"{'Safety: ' if each['safety'] else ''}{each['sort']}")
        _text(entry, "updated", each["at"])
        xml.SubElement(entry, "category", {"term": "safety" if each["safety"] else each["sort"]})
        _link(entry, "alternate", each["href"])
        _text(entry, "summary", each["said"])
    return _written(root)


def folder_feed(services: Services, changes: Sequence[Change], title: str) -> bytes:
    """Return these changes, the latest first, as the feed of a folder of pages; its links lead into the folder."""
    library = _library(services)
    root = _begun(_id(library, "folder"), title, changes[0].at if changes else NEVER, "feed.atom")
    for change in changes:
        _link(_entry(root, change, library), "alternate", f"{change.kind}s/{change.slug}.html")
    return _written(root)


def _shown(changes: Sequence[Change]) -> list[Change]:
    return [change for change in changes if change.kind in KINDS]


def _begun(named: str, title: str, updated: str, own: str) -> xml.Element:
    """Begin a feed; `own` is its address."""
    root = xml.Element("feed", {"xmlns": ATOM})
    _text(root, "id", named)
    _text(root, "title", title)
    _text(root, "updated", updated)
    _text(xml.SubElement(root, "author"), "name", "Counterpane")
    _link(root, "self", own)
    return root


def _written(root: xml.Element) -> bytes:
    text: bytes = xml.tostring(root, "utf-8", xml_declaration=True)
    return text + b"\n"


def _library(services: Services) -> dict[str, object]:
    """Return what tells a library from others: its name, or the first line of its history where it has none."""
    return {"library": services.store.identity() or [asdict(each) for each in services.store.changes(0, 1)]}


def _id(told: Mapping[str, object], what: str) -> str:
    return f"urn:uuid:{uuid.uuid5(_ROOT, canonical({'what': what, 'told': told}).decode())}"


def _linked(services: Services, entry: xml.Element, change: Change) -> None:
    """Tell where the entry of a change leads."""
    if change.kind == "edition":
        _edition(services, entry, change)
    else:
        _link(entry, "alternate", f"/v1/{change.kind}s/{change.slug}")


def _entry(root: xml.Element, change: Change, library: Mapping[str, object]) -> xml.Element:
    """Add the entry of a change, with all but where it leads."""
    entry = xml.SubElement(root, "entry")
    _text(entry, "id", _id({**library, **asdict(change)}, "entry"))
    _text(entry, "title", f"{change.kind} {change.slug}: {change.event}")
    _text(entry, "updated", change.at)
    xml.SubElement(entry, "category", {"term": change.kind})
    return entry


def _edition(services: Services, entry: xml.Element, change: Change) -> None:
    """Tell which edition it is; a correction for safety's sake is a category of its own."""
    whole = orjson.loads(services.store.revision("edition", change.slug, change.sha256 or "").body)
    _link(entry, "alternate", whole["href"])
    corrects = whole["number"] > 1
    if corrects and whole["reason"] == "safety":
        xml.SubElement(entry, "category", {"term": "safety"})
    reason = f": a correction{' for safety' if whole['reason'] == 'safety' else ''}" if corrects else ""
    _text(entry, "summary", f"Edition {whole['number']}, {whole['date']}{reason}.")


def _text(parent: xml.Element, name: str, text: str) -> None:
    xml.SubElement(parent, name).text = text


def _link(parent: xml.Element, relation: str, href: str) -> None:
    xml.SubElement(parent, "link", {"rel": relation, "href": href})

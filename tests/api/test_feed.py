"""The feed, read as a feed reader does, against what RFC 4287 requires of a feed and of an entry."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from io import BytesIO
from uuid import UUID
from xml.etree import ElementTree as xml

import pytest
from flask.testing import FlaskClient

from api.conftest import Desk
from api.contents import RIB
from counterpane import wiring
from counterpane.library.editions import editions
from counterpane.library.keeping import recipes
from counterpane.library.parts import components
from counterpane.library.services import Services
from counterpane.library.sharing.dumps import dump, restore
from counterpane.seeding.recipes import load_recipes
from counterpane.storage.memory import MemoryStore

NS = {"a": "http://www.w3.org/2005/Atom"}


def fetched(client: FlaskClient, path: str = "/v1/feed") -> xml.Element:
    """Return the feed after looking at what RFC 4287, 4.1.1 and 4.1.2, requires."""
    answer = client.get(path)
    assert (answer.status_code, answer.mimetype) == (200, "application/atom+xml")
    root = xml.fromstring(answer.data)
    assert root.tag == f"{{{NS['a']}}}feed"
    for each in (root, *root.findall("a:entry", NS)):
        for name in ("id", "title", "updated"):
            assert len(each.findall(f"a:{name}", NS)) == 1
        UUID(text(each, "id").removeprefix("urn:uuid:"))
        assert datetime.fromisoformat(text(each, "updated")).tzinfo
    assert text(root, "author/a:name")
    for entry in root.findall("a:entry", NS):
        assert len(entry.findall("a:link[@rel='alternate']", NS)) == 1  # RFC 4287, 4.1.2: where there is no content.
    return root


def text(element: xml.Element, name: str) -> str:
    """Return the text of a member."""
    return element.findtext(f"a:{name}", "", NS)


def link(element: xml.Element, relation: str) -> str | None:
    """Return where a link leads."""
    found = element.find(f"a:link[@rel='{relation}']", NS)
    return None if found is None else found.get("href")


def titles(root: xml.Element) -> list[str]:
    """Return the titles of the entries."""
    return [text(entry, "title") for entry in root.findall("a:entry", NS)]


def test_pages_hold_each_change_once_with_an_id_that_stays(client: FlaskClient, library: Services) -> None:
    """The latest first, back to the first one; each link leads to what there is."""
    path: str | None = "/v1/feed?limit=100"
    ids: list[str] = []
    while path:
        root = fetched(client, path)
        ids += [text(entry, "id") for entry in root.findall("a:entry", NS)]
        path = link(root, "next")
    wanted = [each for each in library.store.changes(0, 10_000) if each.kind != "profile"]
    assert len(ids) == len(set(ids)) == len(wanted)
    first = fetched(client).find("a:entry", NS)
    assert first is not None and text(first, "id") == ids[0]
    assert client.get(link(first, "alternate")).status_code == 200


def test_what_is_written_stands_first(desk: Desk) -> None:
    """The feed is changed when its first entry was, and keeps its id."""
    desk.add(RIB)
    before = fetched(desk.client)
    components.COMPONENTS.revise(desk.services, RIB["slug"], {**RIB, "summary": "Again."}, None, "anna")
    root = fetched(desk.client)
    assert titles(root) == [f"component {RIB['slug']}: revised", f"component {RIB['slug']}: added"]
    assert (text(root, "id"), link(root, "self")) == (text(before, "id"), "/v1/feed")


def test_the_feed_of_an_empty_library_keeps_its_id(desk: Desk) -> None:
    """A reader who subscribed before anything was written goes on with the same feed."""
    before = fetched(desk.client)
    assert titles(before) == []
    desk.add(RIB)
    after = fetched(desk.client)
    assert (text(after, "id"), len(titles(after))) == (text(before, "id"), 1)


def all_ids(services: Services) -> set[str]:
    """Return the ids in the feed of a library, and that of the feed."""
    root = fetched(wiring.app_of(services).test_client())
    return {text(each, "id") for each in (root, *root.findall("a:entry", NS))}


def test_the_feeds_of_two_libraries_that_begin_alike_share_no_id(desk: Desk) -> None:
    """A reader who follows both would take one for the other; a library that was restored keeps all of its ids."""
    at = "2026-05-01T10:00:00Z"
    one, other, restored = (replace(desk.services, store=MemoryStore(), now=lambda: at) for _ in range(3))
    for services in (one, other):
        components.add(services, RIB, "anna")
    restore(restored.store, BytesIO(b"".join(dump(one.store))))
    assert one.store.changes(0, 9) == other.store.changes(0, 9)
    assert len(all_ids(one)) == 2
    assert not all_ids(one) & all_ids(other)
    assert all_ids(one) == all_ids(restored)


def test_an_empty_library_has_an_empty_feed(desk: Desk) -> None:
    """It is still a feed."""
    assert titles(fetched(desk.client)) == []


def test_a_correction_for_safety_is_marked() -> None:
    """The first edition corrects nothing; the second one has the category."""
    services = wiring.open_library()
    first = next(each for each in load_recipes() if each["slug"] == "first-frost")
    editions.publish(services, "first-frost", {"date": "2026-11-26", "reason": "safety"}, "anna")
    recipes.RECIPES.revise(services, "first-frost", {**first, "size": {"width_cm": 80, "length_cm": 90}}, None, "anna")
    editions.publish(services, "first-frost", {"date": "2026-11-27", "reason": "safety"}, "anna")
    root = fetched(wiring.app_of(services).test_client())
    found = [
        ({each.get("term") for each in entry.findall("a:category", NS)}, text(entry, "summary"))
        for entry in root.findall("a:entry", NS)[:3]
    ]
    assert found[0] == ({"edition", "safety"}, "Edition 2, 2026-11-27: a correction for safety.")
    assert (found[1][0], found[2]) == ({"recipe"}, ({"edition"}, "Edition 1, 2026-11-26."))
    services.store.close()


@pytest.mark.parametrize(("query", "status"), [("before=0", 422), ("limit=201", 422), ("x=1", 422), ("before=1", 200)])
def test_a_question_of_no_sense_is_refused(client: FlaskClient, query: str, status: int) -> None:
    """Each parameter is bounded."""
    assert client.get(f"/v1/feed?{query}").status_code == status


def test_another_form_is_not_acceptable(client: FlaskClient) -> None:
    """A feed is Atom."""
    answer = client.get("/v1/feed", headers={"Accept": "application/json"})
    assert (answer.status_code, answer.mimetype) == (406, "application/problem+json")

"""Editions over HTTP: who may publish, what stays, and what a corrected part touches."""

from __future__ import annotations

import hashlib
from typing import Any

import pytest
from werkzeug.test import TestResponse

from api.conftest import Desk
from api.contents import BLANKET, RIB

RECIPE = "/v1/recipes/ribbed-blanket"
PATH = f"{RECIPE}/editions"
FIRST = {"date": "2026-11-26"}


@pytest.fixture
def shelved(stocked: Desk) -> Desk:
    """Return the desk with a recipe that is kept."""
    assert stocked.add(BLANKET, "/v1/recipes").status_code == 201
    return stocked


def longer(desk: Desk) -> TestResponse:
    """Send the next revision of the recipe, 4 cm longer."""
    kept = desk.client.get(RECIPE).json
    return desk.put(RECIPE, kept | {"size": {"width_cm": 70.2, "length_cm": 94}}, kept["etag"])


def corrected(desk: Desk, **change: Any) -> str:
    """Send the next revision of the texture and return its hash."""
    latest = desk.client.get("/v1/components/four-rib").json
    answer = desk.put("/v1/components/four-rib", RIB | change, latest["etag"])
    assert answer.status_code == 200, answer.data
    sha256: str = answer.json["sha256"]
    return sha256


class TestPublishing:
    """`POST /v1/recipes/<slug>/editions`."""

    def test_an_edition_is_made_with_its_address_and_its_tag(self, shelved: Desk) -> None:
        """Its canonical bytes are its name, and the list holds it."""
        answer = shelved.add(FIRST, PATH)
        content = shelved.client.get(f"/v1/objects/sha256/{answer.json['sha256']}").data
        assert (answer.status_code, answer.headers["Location"]) == (201, f"{PATH}/1")
        assert answer.headers["ETag"] == answer.json["etag"] == f'"{hashlib.sha256(content).hexdigest()}"'
        assert [each["number"] for each in shelved.client.get(PATH).json["items"]] == [1]

    def test_publishing_needs_a_contributor(self, shelved: Desk) -> None:
        """Nobody is 401, a reader 403."""
        assert shelved.client.post(PATH, json=FIRST).status_code == 401
        assert shelved.client.post(PATH, json=FIRST, headers=shelved.token("reader")).status_code == 403

    def test_an_edition_cannot_be_changed(self, shelved: Desk) -> None:
        """The address takes no other method."""
        shelved.add(FIRST, PATH)
        assert shelved.client.put(f"{PATH}/1", json=FIRST, headers=shelved.token()).status_code == 405

    def test_sent_twice_it_is_published_once(self, shelved: Desk) -> None:
        """The second says the same and is refused with its place."""
        shelved.add(FIRST, PATH)
        answer = shelved.add(FIRST, PATH)
        assert (answer.status_code, answer.json["errors"][0]["pointer"]) == (422, "/revision")

    def test_under_one_key_each_edition_is_published_once(self, shelved: Desk) -> None:
        """The first and the next: sent again, each is answered as it was, with its place."""
        for key in ("first", "next"):
            headers = shelved.token() | {"Idempotency-Key": key}
            once, again = (shelved.client.post(PATH, json=FIRST, headers=headers) for _ in range(2))
            assert (once.status_code, again.headers.get("Idempotency-Replayed")) == (201, "true")
            assert (again.data, again.headers["Location"]) == (once.data, once.headers["Location"])
            longer(shelved)
        assert [each["number"] for each in shelved.client.get(PATH).json["items"]] == [1, 2]

    def test_a_key_is_for_one_edition(self, shelved: Desk) -> None:
        """Other bytes under it are refused."""
        headers = shelved.token() | {"Idempotency-Key": "one"}
        shelved.client.post(PATH, json=FIRST, headers=headers)
        answer = shelved.client.post(PATH, json={"date": "2026-12-01"}, headers=headers)
        assert (answer.status_code, answer.json["type"].rpartition("/")[2]) == (422, "key-reused")

    @pytest.mark.parametrize("end", ["/2", "/0", "/x", "/1/erratum", "/2/pattern", "/1/pattern?size=small"])
    def test_what_is_not_published_is_not_found(self, shelved: Desk, end: str) -> None:
        """No number, no erratum of the first, no size that it has not."""
        shelved.add(FIRST, PATH)
        assert shelved.client.get(f"{PATH}{end}").status_code == 404

    def test_it_stands_in_the_history_of_the_library(self, shelved: Desk) -> None:
        """Another library that reads on hears of it."""
        shelved.add(FIRST, PATH)
        assert '"edition"' in shelved.client.get("/v1/changes").text.splitlines()[-1]


class TestErrata:
    """`GET /v1/recipes/<slug>/editions/<number>/erratum`."""

    def test_an_erratum_is_had_as_data_and_as_text(self, shelved: Desk) -> None:
        """The body is longer from where the old text ends its repeat."""
        shelved.add(FIRST, PATH)
        longer(shelved)
        assert shelved.add({"date": "2026-12-01"}, PATH).status_code == 201
        found = shelved.client.get(f"{PATH}/2/erratum?terms=uk").json
        text = shelved.client.get(f"{PATH}/2/erratum?terms=uk", headers={"Accept": "text/plain"}).text
        assert (found["from"], found["to"], found["terms"]) == (1, 2, "uk")
        assert f"row {found['first_row']}.\n" in text and "rip back to the end of row" in text


class TestTouched:
    """`GET /v1/components/<slug>/touched`."""

    def test_a_corrected_part_lists_what_pins_the_older_revision(self, shelved: Desk) -> None:
        """The recipe, at the revision that it pins, with a draft of what changes."""
        old = shelved.client.get("/v1/components/four-rib").json["sha256"]
        rows = RIB["versions"][0] | {
            "rows": RIB["versions"][0]["rows"].replace("Row 2 (WS): p2, *k2, p2", "Row 2 (WS): p2, *p2, p2")
        }
        latest = corrected(shelved, versions=[rows], reversible="no")
        found = shelved.client.get("/v1/components/four-rib/touched").json
        (item,) = found["items"]
        assert (found["latest"], item["pinned"], item["edition"], item["fits"]) == (latest, old, None, True)
        assert [each["row"] for each in item["erratum"]["changes"] if each["sort"] == "row"] == ["row 2"]

    def test_pages_lead_on(self, shelved: Desk) -> None:
        """Every recipe is looked over once, whatever the limit."""
        shelved.add(BLANKET | {"slug": "other-blanket"}, "/v1/recipes")
        corrected(shelved, summary="Said otherwise.")
        first = shelved.client.get("/v1/components/four-rib/touched?limit=1").json
        second = shelved.client.get(first["next"]).json
        assert [each["recipe"] for each in (*first["items"], *second["items"])] == ["other-blanket", "ribbed-blanket"]
        assert second["next"] is None

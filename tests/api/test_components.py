"""Components over HTTP: what is sent is proved, what is kept is served untouched, and no update is lost."""

from __future__ import annotations

import hashlib
import json
from typing import Any

import pytest
from flask.testing import FlaskClient

from api.conftest import Desk
from api.contents import RIB

ONE = "/v1/components/four-rib"


class TestReading:
    """What a reader of the starters sees."""

    def test_a_component_tells_what_follows_from_its_rows(self, client: FlaskClient) -> None:
        """The multiple of the waffle is derived; common practice, no source."""
        answer = client.get("/v1/components/waffle").json
        assert answer["derived"]["multiple"] == {"of": 3, "plus": 1, "least": 4}
        assert answer["derived"]["versions"][0]["row_repeat"] == 4
        assert answer["derived"]["behaviour"]["message"]

    def test_the_tag_stands_in_the_header_and_in_the_body(self, client: FlaskClient) -> None:
        """Both are the hash of the revision in quotes."""
        answer = client.get("/v1/components/waffle")
        assert answer.headers["ETag"] == answer.json["etag"] == f'"{answer.json["sha256"]}"'

    def test_the_hash_is_that_of_the_object(self, client: FlaskClient) -> None:
        """Canonical bytes are served under their own SHA-256, for ever."""
        sha256 = client.get("/v1/components/waffle").json["sha256"]
        answer = client.get(f"/v1/objects/sha256/{sha256}")
        assert hashlib.sha256(answer.data).hexdigest() == sha256
        assert "immutable" in answer.headers["Cache-Control"]
        assert "etag" not in answer.json

    @pytest.mark.parametrize("header", ['"{tag}"', 'W/"{tag}"', "*", '"0", "{tag}"'])
    def test_what_is_at_hand_is_not_sent_again(self, client: FlaskClient, header: str) -> None:
        """A tag that matches gives 304 without a body."""
        sha256 = client.get("/v1/components/waffle").json["sha256"]
        answer = client.get("/v1/components/waffle", headers={"If-None-Match": header.format(tag=sha256)})
        assert (answer.status_code, answer.data) == (304, b"")
        assert answer.headers["ETag"] == f'"{sha256}"'

    def test_an_older_tag_is_answered_in_full(self, client: FlaskClient) -> None:
        """A tag that does not match gives 200."""
        assert client.get("/v1/components/waffle", headers={"If-None-Match": '"0"'}).status_code == 200

    @pytest.mark.parametrize("path", ["/v1/components/waffle", "/v1/components?limit=2", "/healthz", "/openapi.json"])
    def test_head_is_get_without_a_body(self, client: FlaskClient, path: str) -> None:
        """The headers are the same."""
        whole, head = client.get(path), client.head(path)
        differ = {"X-Request-Id"}
        assert head.data == b""
        assert {k: v for k, v in head.headers if k not in differ} == {k: v for k, v in whole.headers if k not in differ}

    def test_only_what_admits_a_count_is_listed(self, client: FlaskClient) -> None:
        """At 139 stitches the waffle (3n + 1) fits and the basket weave (8n + 4) does not."""
        slugs = {card["slug"] for card in client.get("/v1/components?kind=body&admits=139&limit=200").json["items"]}
        assert "waffle" in slugs
        assert "basket-weave" not in slugs

    @pytest.mark.parametrize("kind", ["cast-on", "bind-off"])
    def test_cast_ons_and_bind_offs_admit_any_count(self, client: FlaskClient, kind: str) -> None:
        """A count of eighteen digits is one like another."""
        every = client.get(f"/v1/components?kind={kind}&limit=200").json["items"]
        admitting = client.get(f"/v1/components?kind={kind}&admits=123456789012345678&limit=200").json["items"]
        assert len(admitting) == len(every) >= 6

    def test_pages_follow_each_other_without_gap(self, client: FlaskClient) -> None:
        """Following `next` gives what one large page gives."""
        whole = [card["slug"] for card in client.get("/v1/components?reversible=yes&limit=200").json["items"]]
        found, path = [], "/v1/components?reversible=yes&limit=7"
        while path:
            answer = client.get(path)
            found += [card["slug"] for card in answer.json["items"]]
            path = answer.json["next"]
            assert (path is not None) == ('rel="next"' in answer.headers.get("Link", ""))
        assert found == whole

    def test_names_are_found_before_texts(self, client: FlaskClient) -> None:
        """A search for moss gives what is called so first."""
        cards = client.get("/v1/components?q=moss").json["items"]
        assert "moss" in cards[0]["slug"] + cards[0]["name"].lower()
        assert client.get("/v1/components?q=%2B%2B").json["items"] == []

    def test_a_companion_says_where_it_fits(self, client: FlaskClient) -> None:
        """A garter border of 6 beside 139 stitches makes 151; the same across the end makes 139."""
        path = "/v1/components/waffle/companions?kind=border&count=139&limit=200"
        found = {card["slug"]: card["places"] for card in client.get(path).json["items"]}
        assert found["garter-border"] == [
            {"place": "ends", "stitches": 139, "cast_on": 139},
            {"place": "sides", "stitches": 6, "cast_on": 151},
        ]

    def test_companions_of_every_kind_come_over_all_pages(self, client: FlaskClient) -> None:
        """Pages that cross from one kind to the next leave nothing out."""
        whole = client.get("/v1/components/waffle/companions?count=139&limit=200").json["items"]
        found, path = [], "/v1/components/waffle/companions?count=139&limit=4"
        while path:
            page = client.get(path).json
            found, path = found + page["items"], page["next"]
        assert [card["slug"] for card in found] == [card["slug"] for card in whole]
        assert {card["kind"] for card in whole} == {"cast-on", "border", "selvedge", "bind-off"}

    def test_a_count_that_does_not_fit_is_refused_with_the_nearest(self, client: FlaskClient) -> None:
        """140 is no count of the waffle; 139 and 142 are."""
        answer = client.get("/v1/components/waffle/companions?count=140")
        assert answer.status_code == 422
        assert [each["value"] for each in answer.json["corrections"]] == [139, 142]


class TestAdding:
    """What a contributor sends."""

    def test_a_component_that_proves_is_kept(self, desk: Desk) -> None:
        """The answer names the address and the tag."""
        answer = desk.add(RIB)
        assert (answer.status_code, answer.headers["Location"]) == (201, ONE)
        assert desk.client.get(ONE).data == answer.data
        assert desk.client.get(ONE).headers["ETag"] == answer.headers["ETag"]

    def test_rows_that_fit_no_count_are_refused_with_findings(self, desk: Desk) -> None:
        """The finding has its place in the rows, and nothing is kept."""
        rows = "Row 1 (RS): k2, *p2, k2; rep from * to end.\nRow 2 (WS): *k3; rep from * to end, k5, k2tog.\n"
        answer = desk.add(RIB | {"versions": [{"name": "bad", "rows": rows}]})
        assert (answer.status_code, answer.json["type"]) == (422, "/problems/does-not-prove")
        assert answer.json["findings"][0]["pointer"] == "/versions/0/rows"
        assert desk.client.get(ONE).status_code == 404
        assert desk.client.get("/v1/changes").data == b""

    def test_a_wrong_example_is_refused(self, desk: Desk) -> None:
        """An example must come out as the rows have it."""
        answer = desk.add(RIB | {"examples": [{"stitches": 23, "after": [23, 23]}]})
        assert answer.json["findings"][0]["pointer"] == "/examples/0/stitches"

    def test_a_slug_in_use_is_taken(self, desk: Desk) -> None:
        """The second of two is refused."""
        desk.add(RIB)
        answer = desk.add(RIB | {"name": "Another"})
        assert (answer.status_code, answer.json["type"]) == (409, "/problems/taken")

    def test_what_is_left_out_does_not_change_the_hash(self, desk: Desk) -> None:
        """A default written out is the same content."""
        first = desk.add(RIB).json["sha256"]
        second = desk.put(ONE, RIB | {"also_called": [], "gauge_notes": "", "operation": None}, f'"{first}"')
        assert second.json["sha256"] == first
        assert len(desk.client.get(f"{ONE}/revisions").json["items"]) == 1


class TestRevising:
    """What a contributor changes."""

    def test_an_answer_can_be_changed_and_sent_back(self, desk: Desk) -> None:
        """Members that the library tells are left aside."""
        kept = desk.add(RIB).json
        answer = desk.put(ONE, kept | {"summary": "Changed."}, kept["etag"])
        assert (answer.status_code, answer.json["summary"]) == (200, "Changed.")
        assert [each["number"] for each in desk.client.get(f"{ONE}/revisions").json["items"]] == [1, 2]

    def test_an_earlier_revision_stays_as_it_was(self, desk: Desk) -> None:
        """Its bytes are served under its hash."""
        first = desk.add(RIB)
        desk.put(ONE, RIB | {"summary": "Changed."}, first.json["etag"])
        assert desk.client.get(f"{ONE}/revisions/{first.json['sha256']}").data == first.data

    def test_a_change_without_a_tag_is_refused(self, desk: Desk) -> None:
        """428 says which header is missing."""
        desk.add(RIB)
        answer = desk.client.put(ONE, json=RIB, headers=desk.token())
        assert (answer.status_code, answer.json["type"]) == (428, "/problems/tag-needed")

    @pytest.mark.parametrize("header", ['"0"', 'W/"{tag}"', "{tag}"])
    def test_a_stale_or_weak_tag_is_refused(self, desk: Desk, header: str) -> None:
        """412 tells the latest tag."""
        kept = desk.add(RIB).json
        answer = desk.put(ONE, RIB | {"summary": "x"}, header.format(tag=kept["sha256"]))
        assert (answer.status_code, answer.json["current"]) == (412, kept["etag"])

    def test_the_slug_cannot_change(self, desk: Desk) -> None:
        """A content of another slug is refused with its place."""
        kept = desk.add(RIB).json
        answer = desk.put(ONE, RIB | {"slug": "other"}, kept["etag"])
        assert (answer.status_code, answer.json["findings"][0]["pointer"]) == (422, "/slug")

    def test_what_is_not_there_cannot_be_revised(self, desk: Desk) -> None:
        """404 comes before a missing tag."""
        assert desk.client.put(ONE, json=RIB, headers=desk.token()).status_code == 404

    def test_the_list_shows_the_latest_revision(self, desk: Desk) -> None:
        """Classes and cards follow the revision."""
        kept = desk.add(RIB).json
        rows = "Row 1 (RS): *k1, p1; rep from * to end.\nRow 2 (WS): *p1, k1; rep from * to end.\n"
        changed = RIB | {"versions": [{"name": "even", "rows": rows}], "examples": []}
        desk.put(ONE, changed, kept["etag"])
        assert desk.client.get("/v1/components?admits=24").json["items"][0]["multiple"]["of"] == 2
        lines = desk.client.get("/v1/changes?after=1").data.splitlines()
        assert [json.loads(line)["event"] for line in lines] == ["revised"]


class TestTextures:
    """The texture is derived, the same one is named, and likeness can be asked for."""

    def test_a_component_has_its_texture_and_its_like(self, desk: Desk) -> None:
        """The second of a kind names the first, and goes back as it came."""
        desk.add(RIB)
        kept = desk.add(RIB | {"slug": "rib-again"}).json
        texture = kept["derived"]["versions"][0]["texture"]
        assert texture["reversible"] == "yes"
        assert len(texture["canonical"]) == 64
        assert kept["same_texture"] == [{"slug": RIB["slug"], "href": ONE}]
        listed = desk.client.get(f"/v1/components?texture={texture['canonical']}").json["items"]
        assert [card["slug"] for card in listed] == sorted([RIB["slug"], "rib-again"])
        again = desk.put("/v1/components/rib-again", kept, kept["etag"])
        assert (again.status_code, again.json["sha256"]) == (200, kept["sha256"])

    def test_alike_textures_are_listed(self, desk: Desk) -> None:
        """Of a hundred stitches at least so many agree."""
        desk.add(RIB)
        desk.add(RIB | {"slug": "rib-again"})
        answer = desk.client.get(f"{ONE}/alike?percent=100").json
        assert [(item["slug"], item["same"], item["percent"]) for item in answer["items"]] == [("rib-again", True, 100)]
        assert (answer["compared"], answer["not_compared"]) == (1, 0)
        assert desk.client.get(f"{ONE}/alike?percent=101").status_code == 422
        assert desk.client.get("/v1/components/nothing/alike").status_code == 404


MEASURED = {
    "mm": "4.5",
    "by": "M. Tester",
    "on": "2026-11-20",
    "yarn": "cotton, 435 tex",
    "gauge": "22 stitches and 30 rows to 10 cm",
    "wash": "machine at 60 °C, tumble dried, twice",
}
"""Invented."""


class TestMeasuredOpenings:
    """A filter on openings is answered by measurements alone."""

    def listed(self, client: FlaskClient, under: int) -> dict[str, Any]:
        """Return the list of components with openings under so many millimetres."""
        answer = client.get(f"/v1/components?openings_under_mm={under}")
        assert answer.status_code == 200
        return dict(answer.json)

    def test_what_nobody_measured_is_left_out_with_the_reason(self, client: FlaskClient) -> None:
        """The starters have notes on their rows and no measurements, so none of them answers."""
        page = self.listed(client, 1000)
        assert page["items"] == []
        assert "nobody measured" in page["left_out"] and "estimate" in page["left_out"]

    def test_a_part_that_was_measured_answers_under_its_size_only(self, desk: Desk) -> None:
        """4.5 mm is under 5 and not under 4, and the largest of several measurements counts."""
        made = desk.add(RIB | {"measured": [MEASURED, {**MEASURED, "mm": "3"}]})
        assert made.status_code == 201
        assert made.json["measured"][0] == MEASURED
        assert [card["slug"] for card in self.listed(desk.client, 5)["items"]] == ["four-rib"]
        assert self.listed(desk.client, 4)["items"] == []

    @pytest.mark.parametrize("change", [{"mm": "4,5"}, {"mm": 4.5}, {"on": "2026-02-30"}, {"by": ""}, {"needle": "4"}])
    def test_a_measurement_that_does_not_hold_is_refused(self, desk: Desk, change: dict[str, Any]) -> None:
        """What was measured, by whom, when and on what is told in full or not taken."""
        assert desk.add(RIB | {"measured": [MEASURED | change]}).status_code == 422

    def test_a_part_without_measurements_has_the_hash_that_it_had(self, desk: Desk) -> None:
        """Nothing measured is nothing said: an empty list and none are one content."""
        bare = desk.add(RIB)
        assert "measured" not in bare.json
        assert desk.put(ONE, RIB | {"measured": []}, bare.json["etag"]).json["sha256"] == bare.json["sha256"]

    def test_a_list_without_the_filter_says_nothing_of_it(self, client: FlaskClient) -> None:
        """The reason comes only with the question."""
        assert "left_out" not in client.get("/v1/components?limit=1").json

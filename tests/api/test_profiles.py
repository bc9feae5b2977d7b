"""Lists of wards and charities over HTTP: kept with their day, revised, and named by plans."""

from __future__ import annotations

import hashlib
from typing import Any

import orjson
import pytest
from werkzeug.test import TestResponse

from api.conftest import Desk
from api.contents import BLANKET, WARD

PATH = "/v1/profiles"
ONE = f"{PATH}/ward-3"
STRICTER: dict[str, Any] = WARD | {
    "dated": "2026-11-01",
    "items": [{"says": "At least 80 cm wide.", "input": "width_cm", "at_least": 80}],
}


def held(desk: Desk, named: Any) -> dict[str, Any]:
    """Return what a plan of the invented blanket says of the list that is named."""
    request = {name: BLANKET[name] for name in ("parts", "gauge", "size")} | {"for": {"profile": named}}
    answer = desk.client.post("/v1/plans", json=request)
    assert answer.status_code == 200, answer.data
    told: dict[str, Any] = answer.json["safety"]["profile"]
    return told


class TestKeeping:
    """A list is kept as it was stated, dated and under a name."""

    def test_a_list_is_made_with_its_address_and_its_tag(self, desk: Desk) -> None:
        """The answer has the items as they were sent, whose they are, and of which day."""
        answer = desk.add(WARD, PATH)
        assert (answer.status_code, answer.headers["Location"]) == (201, ONE)
        assert answer.headers["ETag"] == answer.json["etag"] == f'"{answer.json["sha256"]}"'
        assert {name: answer.json[name] for name in WARD} == WARD

    def test_its_canonical_bytes_are_its_name(self, desk: Desk) -> None:
        """They hold fractions and nothing that may change; what may change lies outside."""
        answer = desk.add(WARD, PATH)
        content = desk.client.get(f"/v1/objects/sha256/{answer.json['sha256']}").data
        assert hashlib.sha256(content).hexdigest() == answer.json["sha256"]
        assert set(orjson.loads(content)) == set(WARD)
        assert b'"at_most":"11/2"' in content

    def test_it_stands_in_the_history_of_the_library(self, desk: Desk) -> None:
        """Another library that reads on hears of it."""
        kept = desk.add(WARD, PATH).json
        line = orjson.loads(desk.client.get("/v1/changes").data)
        assert (line["kind"], line["slug"], line["sha256"]) == ("profile", "ward-3", kept["sha256"])

    def test_lists_are_listed_and_found_by_their_words(self, desk: Desk) -> None:
        """A word of an item finds the list, one that stands nowhere finds nothing."""
        desk.add(WARD, PATH)
        found = [desk.client.get(f"{PATH}?q={word}").json["items"] for word in ("perfume", "wool")]
        assert [[card["slug"] for card in cards] for cards in found] == [["ward-3"], []]
        assert found[0][0]["dated"] == "2026-10-01"

    @pytest.mark.parametrize(
        ("change", "pointer"),
        [
            ({"dated": "2026-02-30"}, "/dated"),
            ({"source": None}, "/source"),
            ({"items": [{"says": "x", "input": "hole_mm", "wants": True}]}, "/items/0"),
            ({"age_months": [0, 3]}, "/age_months"),
            ({"child": "somebody"}, "/child"),
            ({"items": [{"says": "x", "input": "age_band", "only": ["preterm"]}]}, "/items/0/input"),
        ],
    )
    def test_what_does_not_hold_and_what_is_of_a_child_is_refused(
        self, desk: Desk, change: dict[str, Any], pointer: str
    ) -> None:
        """The place is named, and nothing is kept."""
        answer = desk.add(WARD | change, PATH)
        assert (answer.status_code, answer.json["errors"][0]["pointer"]) == (422, pointer)
        assert desk.client.get(ONE).status_code == 404

    def test_a_name_in_use_is_taken(self, desk: Desk) -> None:
        """The second of a name is refused."""
        desk.add(WARD, PATH)
        assert desk.add(STRICTER, PATH).status_code == 409

    def test_writing_needs_a_contributor(self, desk: Desk) -> None:
        """Nobody is 401, a reader 403."""
        assert desk.client.post(PATH, json=WARD).status_code == 401
        assert desk.client.post(PATH, json=WARD, headers=desk.token("reader")).status_code == 403


class TestRevising:
    """A revision never changes; another follows it."""

    @pytest.mark.parametrize(("tag", "status"), [(None, 428), ('"0"', 412), ("W/*", 412)])
    def test_a_change_names_the_revision_that_it_changes(self, desk: Desk, tag: str | None, status: int) -> None:
        """Without the tag, or with a stale one, nothing is written."""
        desk.add(WARD, PATH)
        headers = desk.token() | ({"If-Match": tag} if tag else {})
        assert desk.client.put(ONE, json=STRICTER, headers=headers).status_code == status
        assert len(desk.client.get(f"{ONE}/revisions").json["items"]) == 1

    def test_an_answer_can_be_changed_and_sent_back(self, desk: Desk) -> None:
        """The chain grows, the first revision stays as it was."""
        kept = desk.add(WARD, PATH).json
        answer = desk.put(ONE, kept | {"dated": "2026-11-01"}, kept["etag"])
        chain = desk.client.get(f"{ONE}/revisions").json["items"]
        assert (answer.status_code, answer.json["dated"]) == (200, "2026-11-01")
        assert [each["sha256"] for each in chain] == [kept["sha256"], answer.json["sha256"]]
        assert desk.client.get(chain[0]["href"]).json["dated"] == "2026-10-01"

    def test_the_same_content_again_changes_nothing(self, desk: Desk) -> None:
        """What was got and sent back unchanged is the same revision."""
        kept = desk.add(WARD, PATH).json
        assert desk.put(ONE, kept, kept["etag"]).json["sha256"] == kept["sha256"]
        assert len(desk.client.get(f"{ONE}/revisions").json["items"]) == 1

    def test_the_name_stays(self, desk: Desk) -> None:
        """Another slug is another list."""
        kept = desk.add(WARD, PATH).json
        answer = desk.put(ONE, kept | {"slug": "ward-4"}, kept["etag"])
        assert (answer.status_code, answer.json["findings"][0]["pointer"]) == (422, "/slug")


class TestPlans:
    """A plan names a kept list, and its answer says which revision that was."""

    def test_a_plan_is_held_against_a_kept_list_by_its_name(self, stocked: Desk) -> None:
        """The answer gives the slug, the day and the hash, and a verdict for each item."""
        kept = stocked.add(WARD, PATH).json
        told = held(stocked, "ward-3")
        assert (told["slug"], told["dated"], told["sha256"]) == ("ward-3", "2026-10-01", kept["sha256"])
        assert [item["verdict"] for item in told["items"]] == ["not assessed", "agrees", "not assessed"]

    def test_an_older_answer_can_be_had_again(self, stocked: Desk) -> None:
        """By the hash that it gave, whatever the list says since."""
        kept = stocked.add(WARD, PATH).json
        before = held(stocked, "ward-3")
        stocked.put(ONE, STRICTER, kept["etag"])
        assert held(stocked, {"profile": "ward-3", "revision": before["sha256"]}) == before
        assert [item["verdict"] for item in held(stocked, "ward-3")["items"]] == ["differs"]

    def test_a_list_sent_whole_has_no_name(self, stocked: Desk) -> None:
        """It is held against and not kept."""
        told = held(stocked, {name: value for name, value in WARD.items() if name != "slug"})
        assert (told["slug"], told["sha256"], told["name"]) == (None, None, "Ward 3")
        assert stocked.client.get(PATH).json["items"] == []

    @pytest.mark.parametrize("named", ["ward-2", {"profile": "ward-3", "revision": "0" * 64}])
    def test_a_list_that_is_not_kept_is_refused_at_its_place(self, stocked: Desk, named: Any) -> None:
        """The nearest name is offered for one that is not known."""
        stocked.add(WARD, PATH)
        answer = stocked.client.post("/v1/safety", json={"profile": named})
        assert (answer.status_code, answer.json["errors"][0]["pointer"]) == (422, "/profile")
        assert named != "ward-2" or "ward-3" in answer.json["errors"][0]["hint"]

    def test_a_recipe_pins_the_list_that_it_names(self, stocked: Desk) -> None:
        """The recipe keeps the revision, as it keeps that of each part."""
        kept = stocked.add(WARD, PATH).json
        recipe = stocked.add(BLANKET | {"for": {"use": "pram", "profile": "ward-3"}}, "/v1/recipes").json
        assert recipe["for"] == {"use": "pram", "profile": {"profile": "ward-3", "revision": kept["sha256"]}}

    def test_a_recipe_with_an_unknown_list_is_refused(self, stocked: Desk) -> None:
        """Whatever is kept can be worked out again."""
        answer: TestResponse = stocked.add(BLANKET | {"for": {"profile": "nobody"}}, "/v1/recipes")
        assert (answer.status_code, answer.json["errors"][0]["pointer"]) == (422, "/for/profile")

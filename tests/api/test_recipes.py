"""Recipes over HTTP: they plan as they stand, and their parts are pinned."""

from __future__ import annotations

import hashlib

from api.conftest import Desk
from api.contents import BLANKET, RIB

PATH = "/v1/recipes"
ONE = f"{PATH}/ribbed-blanket"


class TestAdding:
    """What a contributor sends."""

    def test_a_recipe_is_kept_with_every_part_it_uses(self, stocked: Desk) -> None:
        """Parts left out are the usual ones, named and pinned."""
        answer = stocked.add(BLANKET, PATH)
        assert (answer.status_code, answer.headers["Location"]) == (201, ONE)
        parts = answer.json["parts"]
        assert (parts["cast_on"]["component"], parts["bottom"]["rows"]) == ("long-tail", 12)
        assert parts["body"]["revision"] == stocked.client.get("/v1/components/four-rib").json["sha256"]

    def test_numbers_keep_their_digits_and_the_hash_has_fractions(self, stocked: Desk) -> None:
        """70.2 is 351/5 in the canonical bytes and 70.2 in the answer."""
        answer = stocked.add(BLANKET, PATH)
        content = stocked.client.get(f"/v1/objects/sha256/{answer.json['sha256']}")
        assert b'"width_cm":70.2' in answer.data
        assert b'"width_cm":"351/5"' in content.data
        assert hashlib.sha256(content.data).hexdigest() == answer.json["sha256"]

    def test_a_recipe_that_cannot_be_planned_is_refused_with_corrections(self, stocked: Desk) -> None:
        """A width out of reach says what is near."""
        answer = stocked.add(BLANKET | {"size": {"width_cm": 1, "length_cm": 90}}, PATH)
        assert (answer.status_code, answer.json["type"]) == (422, "/problems/cannot-be-planned")
        assert answer.json["findings"]
        assert stocked.client.get(ONE).status_code == 404

    def test_an_unknown_part_is_refused_with_its_place(self, stocked: Desk) -> None:
        """The pointer names the part."""
        answer = stocked.add(BLANKET | {"parts": {"body": {"component": "no-such-body"}}}, PATH)
        assert (answer.status_code, answer.json["errors"][0]["pointer"]) == (422, "/parts/body/component")

    def test_two_revisions_of_one_component_are_refused(self, stocked: Desk) -> None:
        """A component is pinned to one revision in a recipe."""
        body = [{"component": "four-rib", "revision": letter * 64} for letter in "ab"]
        answer = stocked.add(BLANKET | {"parts": {"body": body}}, PATH)
        assert answer.json["errors"][0]["pointer"] == "/parts/body/1/revision"


class TestPins:
    """A recipe stays as it is when its parts are revised."""

    def test_a_pinned_part_stays_when_the_component_changes(self, stocked: Desk) -> None:
        """The answer sent to plans again works out the same counts."""
        recipe = stocked.add(BLANKET, PATH).json
        request = {name: recipe[name] for name in ("construction", "corner", "parts", "gauge", "size")}
        before = stocked.client.post("/v1/plans", json=request).json["counts"]
        kept = stocked.client.get("/v1/components/four-rib").json
        rows = "Row 1 (RS): *k5, p5; rep from * to end.\nRow 2 (WS): *k5, p5; rep from * to end.\n"
        changed = RIB | {"versions": [{"name": "ten", "rows": rows}], "examples": []}
        assert stocked.put("/v1/components/four-rib", changed, kept["etag"]).status_code == 200
        assert stocked.client.post("/v1/plans", json=request).json["counts"] == before
        latest = stocked.client.post("/v1/plans", json={**request, "parts": {"body": "four-rib"}}).json["counts"]
        assert latest != before

    def test_a_recipe_can_be_changed_and_sent_back(self, stocked: Desk) -> None:
        """The pins stay, and the chain grows."""
        kept = stocked.add(BLANKET, PATH).json
        answer = stocked.put(
            ONE, kept | {"summary": "Longer.", "size": {"width_cm": 70.2, "length_cm": 99}}, kept["etag"]
        )
        assert (answer.status_code, answer.json["parts"]) == (200, kept["parts"])
        assert len(stocked.client.get(f"{ONE}/revisions").json["items"]) == 2

    def test_recipes_are_listed_and_found(self, stocked: Desk) -> None:
        """A part's slug finds the recipes that use it."""
        stocked.add(BLANKET, PATH)
        found = stocked.client.get(f"{PATH}?q=four+rib").json["items"]
        assert [card["slug"] for card in found] == ["ribbed-blanket"]
        assert stocked.client.get(f"{PATH}?q=cable").json["items"] == []


class TestLicences:
    """What the makers of the parts ask of who shares a recipe."""

    def test_a_part_that_asks_for_the_same_licence_decides(self, stocked: Desk) -> None:
        """The recipe says under which licence it may be shared, why, and whose words it uses."""
        alike = RIB | {"slug": "shared-rib", "provenance": RIB["provenance"] | {"licence": "CC-BY-SA-4.0"}}
        assert stocked.add(alike, "/v1/components").status_code == 201
        sharing = stocked.add(BLANKET | {"parts": {"body": "shared-rib"}}, PATH).json["sharing"]
        assert (sharing["licence"], sharing["because"]) == ("CC-BY-SA-4.0", ["shared-rib"])
        assert {credit["creator"] for credit in sharing["credits"]} == {"anna"}

    def test_a_licence_too_free_is_refused_with_the_one_that_will_do(self, stocked: Desk) -> None:
        """Nothing is kept, the rule is named, and so is the licence to take."""
        named = RIB | {"slug": "named-rib", "provenance": RIB["provenance"] | {"licence": "CC-BY-4.0"}}
        stocked.add(named, "/v1/components")
        answer = stocked.add(BLANKET | {"parts": {"body": "named-rib"}, "licence": "CC0-1.0"}, PATH)
        assert (answer.status_code, answer.json["type"]) == (422, "/problems/licence-refuses")
        assert [each["rule"] for each in answer.json["findings"]] == ["licence-too-free"]
        assert answer.json["corrections"][0]["value"] == "CC-BY-4.0"
        assert stocked.client.get(ONE).status_code == 404

    def test_a_licence_of_another_name_is_no_content(self, stocked: Desk) -> None:
        """Only the licences that the library knows can be kept."""
        answer = stocked.add(RIB | {"provenance": RIB["provenance"] | {"licence": "ask me"}}, "/v1/components")
        assert answer.json["errors"][0]["pointer"] == "/provenance/licence"

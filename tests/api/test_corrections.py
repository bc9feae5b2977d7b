"""What was corrected since an edition, over HTTP, in either sort of store."""

from __future__ import annotations

from typing import Any
from xml.etree import ElementTree

import pytest

from api.conftest import Desk
from api.notes import ANSWER, ANSWERS, RECIPE, noted
from api.test_refusals import refused


class TestCorrections:
    """`/v1/recipes/<slug>/editions/<number>/corrections`."""

    PATH = f"{RECIPE}/editions/1/corrections"

    @pytest.fixture
    def published(self, noting: Desk) -> Desk:
        """Return the desk with an edition."""
        noted(noting, f"{RECIPE}/editions", {"date": "2026-11-26"})
        return noting

    def revised(self, desk: Desk, length: int, **said: Any) -> None:
        """Publish the recipe at another length."""
        kept = desk.client.get(RECIPE).json
        assert (
            desk.put(RECIPE, kept | {"size": {"width_cm": 70.2, "length_cm": length}}, kept["etag"]).status_code == 200
        )
        noted(desk, f"{RECIPE}/editions", said)

    def test_where_nothing_was_corrected_that_is_no_proof(self, published: Desk) -> None:
        """It is said what is known, and that this is all."""
        found = published.client.get(self.PATH).json
        assert (found["corrected"], found["safety"], found["items"], found["erratum"]) == (False, False, [], None)
        assert "no proof" in found["about"]
        refused(published.client.get(f"{RECIPE}/editions/2/corrections"), 404, "not-found")

    def test_what_is_of_safety_comes_first(self, published: Desk) -> None:
        """Before what came later; the erratum leads to the latest edition."""
        self.revised(published, 94, date="2026-11-27", reason="safety", note="A cord was too long.")
        self.revised(published, 98, date="2026-11-28")
        found = published.client.get(self.PATH).json
        assert [each["safety"] for each in found["items"]] == [True, False]
        assert (found["safety"], found["latest"], found["erratum"]["to"]) == (True, 3, 3)
        assert "A cord was too long." in found["items"][0]["said"]
        later = published.client.get(f"{RECIPE}/editions/2/corrections").json
        assert (len(later["items"]), later["safety"]) == (1, False)

    def test_a_part_held_back_and_an_upheld_report_are_told(self, published: Desk) -> None:
        """Whoever took a copy hears of both, though no edition followed."""
        body = {"component": "four-rib", "say": "A finger was caught."}
        number = published.client.post("/v1/safety-reports", json=body, headers=published.token("reader")).json[
            "number"
        ]
        assert published.client.get(self.PATH).json["items"] == []
        decided = {"decision": "uphold", "because": "hazard", "say": "It traps fingers."}
        reviewer = published.token("reviewer", "suri")
        done = published.client.post(f"/v1/submissions/{number}/decisions", json=decided, headers=reviewer)
        assert done.status_code == 200, done.data
        moved = {"to": "quarantined", "because": "hazard", "say": "Holes.", "until": "2999-01-01", "owner": "suri"}
        done = published.client.post("/v1/components/four-rib/standing", json=moved, headers=reviewer)
        assert done.status_code == 200, done.data
        found = published.client.get(self.PATH).json
        assert {each["sort"] for each in found["items"]} == {"report", "standing"}
        assert found["safety"] and all(each["safety"] for each in found["items"])

    def test_a_withdrawn_recipe_still_tells_who_has_a_copy(self, published: Desk) -> None:
        """Its own address is 410, and an edition's corrections say why, as of safety."""
        noted(published, ANSWERS, ANSWER | {"wrong": True})
        moved = {"to": "withdrawn", "because": "hazard", "say": "It can hurt a baby."}
        done = published.client.post(f"{RECIPE}/standing", json=moved, headers=published.token("keeper", "suri"))
        assert done.status_code == 200, done.data
        refused(published.client.get(RECIPE), 410, "withdrawn")
        first, second = published.client.get(self.PATH).json["items"]
        assert (first["sort"], first["safety"], second["sort"]) == ("standing", True, "answer")
        assert "withdrawn: It can hurt a baby." in first["said"]

    def test_a_wrong_row_stands_until_an_edition_puts_it_right(self, published: Desk) -> None:
        """It is a correction of the first edition and none of the one whose erratum it names."""
        told = noted(published, ANSWERS, ANSWER | {"edition": 1, "wrong": True}).json
        (item,) = published.client.get(self.PATH).json["items"]
        assert (item["sort"], "body, row 3" in item["said"]) == ("answer", True)
        self.revised(published, 94, date="2026-11-27")
        published.put(told["href"], ANSWER | {"edition": 1, "wrong": True, "erratum": 2}, told["etag"])
        first = published.client.get(self.PATH).json["items"]
        assert [each["sort"] for each in first if "puts it right" in each["said"]] == ["answer"]
        assert published.client.get(f"{RECIPE}/editions/2/corrections").json["items"] == []
        sound = ANSWER | {"erratum": 2}
        refused(published.client.post(ANSWERS, json=sound, headers=published.token()), 422, "not-usable")

    def test_a_feed_reader_can_follow_an_edition(self, published: Desk) -> None:
        """As Atom, with a category for safety; an entry keeps its id."""
        self.revised(published, 94, date="2026-11-27", reason="safety")
        answers = [
            published.client.get(f"{self.PATH}?as=atom"),
            published.client.get(self.PATH, headers={"Accept": "application/atom+xml"}),
        ]
        assert answers[0].data == answers[1].data
        root = ElementTree.fromstring(answers[0].data)
        atom = "{http://www.w3.org/2005/Atom}"
        (entry,) = root.findall(f"{atom}entry")
        assert [each.get("term") for each in entry.findall(f"{atom}category")] == ["safety"]
        assert entry.findtext(f"{atom}id") != root.findtext(f"{atom}id")

    def test_it_comes_as_plain_text(self, published: Desk) -> None:
        """For who asks by hand."""
        self.revised(published, 94, date="2026-11-27", reason="safety")
        text = published.client.get(f"{self.PATH}?as=text").text
        assert "corrected for safety" in text
        assert "From edition 1 to edition 2:" in text

    @pytest.mark.parametrize("form", ["text", "markdown", "html", "json"])
    def test_every_form_of_an_edition_says_where_to_ask(self, published: Desk, form: str) -> None:
        """Without a known address by what to ask for and the command, with the beginning of the hash."""
        said = published.client.get(f"{RECIPE}/editions/1/pattern?as={form}").text
        for part in (self.PATH, "counterpane edition corrections ribbed-blanket 1", "SHA-256 begins with"):
            assert part in said

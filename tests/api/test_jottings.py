"""Test knits, answers and pieces over HTTP, in either sort of store."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

from api.conftest import Desk
from api.contents import BIND_OFF, BLANKET, CAST_ON, GARTER, RIB
from api.test_refusals import refused
from counterpane import wiring

RECIPE = "/v1/recipes/ribbed-blanket"
KNITS, ANSWERS, PIECES = (f"{RECIPE}/{name}" for name in ("test-knits", "answers", "pieces"))
YARN = {"ball_g": 50, "ball_m": 115}
FOR = {"age_months": [0, 12], "use": "pram", "markets": ["UK"], "mass_g": 5, "hole_mm": 1}
KNIT: dict[str, Any] = {"whose": "Odile", "on": "2026-12-12", "washed": {"stitches": 22, "rows": 30}, "grams": 300}
ASKED = {"section": "body", "row": 3, "question": "Which side?"}
ANSWER: dict[str, Any] = {**ASKED, "whose": "Ines", "answer": "The right side."}
PIECE: dict[str, Any] = {
    "on": "2026-12-14",
    "washed": True,
    "weighed_g": 441,
    "width_cm": 70,
    "length_cm": 90,
    "openings": [{"mm": 3.5, "found_by": "rod"}],
}


@pytest.fixture(params=["memory", "sqlite"])
def shelved(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Desk]:
    """Yield a desk with a recipe that is kept, in a store of each sort."""
    path = wiring.IN_MEMORY if request.param == "memory" else tmp_path / "library.db"
    services = wiring.open_library(path, starters=False)
    desk = Desk(services, wiring.app_of(services).test_client())
    for content in (CAST_ON, BIND_OFF, GARTER, RIB):
        assert desk.add(content).status_code == 201
    assert desk.add(BLANKET | {"yarn": YARN, "for": FOR}, "/v1/recipes").status_code == 201
    yield desk
    services.store.close()


def noted(desk: Desk, path: str, content: dict[str, Any], **headers: str) -> Any:
    """Note something as a contributor and return the answer."""
    answer = desk.client.post(path, json=content, headers=desk.token() | headers)
    assert answer.status_code == 201, answer.data
    return answer


def figures(desk: Desk, path: str) -> dict[str, dict[str, Any]]:
    """Return the figures of a test knit by their names."""
    return {each["figure"]: each for each in desk.client.get(path).json["compared"]}


class TestTestKnits:
    """`/v1/recipes/<slug>/test-knits`."""

    def test_what_came_out_stands_beside_what_was_predicted(self, shelved: Desk) -> None:
        """22 stitches against 22.5 are half a stitch and 2.2 percent less."""
        place = noted(shelved, KNITS, KNIT).headers["Location"]
        found = figures(shelved, place)["stitches_10cm"]
        told = [found[name] for name in ("predicted", "actual", "difference", "percent", "within")]
        assert told == [22.5, 22.0, -0.5, -2.2, None]

    def test_what_the_plan_predicts_is_what_the_plan_says(self, shelved: Desk) -> None:
        """Size, grams and hours of the comparison are those of `POST /v1/plans`."""
        knit = KNIT | {"hours": 30, "washed": {"width_cm": 70, "length_cm": 90}}
        found = figures(shelved, noted(shelved, KNITS, knit).headers["Location"])
        names = ("parts", "gauge", "size", "yarn")
        recipe = shelved.client.get(RECIPE).json
        plan = shelved.client.post("/v1/plans", json={name: recipe[name] for name in names}).json
        assert round(found["width_cm"]["predicted"], 1) == plan["finished"]["width_cm"]
        assert round(found["length_cm"]["predicted"], 1) == plan["finished"]["length_cm"]
        assert [round(found["hours"][end], 1) for end in ("low", "high")] == plan["time"]["hours"]
        assert round(found["grams"]["predicted"], 1) == plan["yarn"]["grams"]["likely"]

    def test_what_washing_did_is_told(self, shelved: Desk) -> None:
        """From 20 stitches over 8 cm, 25 to 10 cm, to 22."""
        told = noted(shelved, KNITS, KNIT | {"unwashed": {"stitches": 20, "over_cm": 8}}).json
        (found,) = shelved.client.get(told["href"]).json["washing"]
        assert (found["before"], found["after"], found["percent"]) == (25.0, 22.0, -12.0)

    def test_a_knit_of_an_edition_is_of_its_revision(self, shelved: Desk) -> None:
        """The edition is what the knitter had in hand, whatever the recipe says by then."""
        edition = noted(shelved, f"{RECIPE}/editions", {"date": "2026-11-26"}).json
        kept = shelved.client.get(RECIPE).json
        shelved.put(RECIPE, kept | {"size": {"width_cm": 60, "length_cm": 60}}, kept["etag"])
        assert noted(shelved, KNITS, KNIT | {"edition": 1}).json["revision"] == edition["revision"]
        assert noted(shelved, KNITS, KNIT).json["revision"] != edition["revision"]

    def test_a_knit_of_a_size_is_held_against_that_size(self, shelved: Desk) -> None:
        """Of an edition in several sizes the knit says which one."""
        sizes = [{"name": "small", "width_cm": 50, "length_cm": 60}, {"name": "large", "width_cm": 80, "length_cm": 90}]
        noted(shelved, f"{RECIPE}/editions", {"date": "2026-11-26", "sizes": sizes})
        knit = KNIT | {"edition": 1, "washed": {"width_cm": 80}}
        found = figures(shelved, noted(shelved, KNITS, knit | {"size": "large"}).headers["Location"])
        assert abs(found["width_cm"]["predicted"] - 80) < 2
        headers = shelved.token()
        answer = shelved.client.post(KNITS, json=knit | {"size": "huge"}, headers=headers)
        assert "small, large" in refused(answer, 422, "not-usable")["errors"][0]["hint"]
        refused(shelved.client.post(KNITS, json=KNIT | {"size": "large"}, headers=headers), 422, "not-usable")

    def test_the_refit_says_on_how_many_knits_it_rests(self, shelved: Desk) -> None:
        """Of one plan it is the middle of both knits, and its ends are those of each by itself."""
        for grams in (300, 330):
            noted(shelved, KNITS, KNIT | {"grams": grams, "metres_per_100g": 230})
        found = shelved.client.get(f"{RECIPE}/knitted").json
        fitted = found["loop_mm"]
        assert (found["knits"], fitted["knits"], "2 knits" in fitted["worth"]) == (2, 2, True)
        assert abs(Fraction(str(fitted["least"])) / Fraction(str(fitted["most"])) - Fraction(300, 330)) < 0.001
        assert abs(fitted["value"] - (fitted["least"] + fitted["most"]) / 2) <= 0.01
        assert found["stitches_a_minute"] is None
        assert [each["why"] for each in found["left_out"]] == ["The hours are not told."] * 2

    def test_a_later_plan_may_take_a_knit_for_its_yarn_and_pace(self, shelved: Desk) -> None:
        """With what the knit told, the plan comes to its grams and its hours."""
        place = noted(shelved, KNITS, KNIT | {"grams": 300, "hours": 30}).headers["Location"]
        told, recipe = shelved.client.get(place).json["for_a_plan"], shelved.client.get(RECIPE).json
        request = {name: recipe[name] for name in ("parts", "gauge", "size")}
        plan = shelved.client.post("/v1/plans", json=request | {"pace": told["pace"], "yarn": YARN | told["yarn"]}).json
        assert abs(plan["yarn"]["grams"]["likely"] - 300) < 6
        assert plan["time"]["hours"][0] <= 30 <= plan["time"]["hours"][1]

    def test_a_row_that_two_knitters_ask_about_is_flagged(self, shelved: Desk) -> None:
        """One who asks twice is one knitter; the answer stands with the row."""
        other = ASKED | {"row": 5}
        noted(shelved, KNITS, KNIT | {"queries": [ASKED, other]})
        noted(shelved, KNITS, KNIT | {"queries": [other]})
        noted(shelved, KNITS, KNIT | {"whose": "Noor", "queries": [ASKED]})
        noted(shelved, ANSWERS, ANSWER)
        third, fifth = shelved.client.get(f"{RECIPE}/rows").json["items"]
        assert (third["row"], third["knitters"], third["flagged"]) == (3, 2, True)
        assert (fifth["row"], fifth["knitters"], fifth["flagged"]) == (5, 1, False)
        assert [each["whose"] for each in third["questions"]] == ["Odile", "Noor"]
        assert [each["answer"] for each in third["answers"]] == ["The right side."]

    @pytest.mark.parametrize("place", [{"row": 9999}, {"section": "hood", "row": 1}, {"section": "body", "row": 9999}])
    def test_a_row_that_the_pattern_has_not_is_refused(self, shelved: Desk, place: dict[str, Any]) -> None:
        """The answer names the parts with their rows."""
        body = KNIT | {"queries": [place | {"question": "How?"}]}
        found = refused(shelved.client.post(KNITS, json=body, headers=shelved.token()), 422, "not-usable")
        assert (found["errors"][0]["pointer"], "body with" in found["errors"][0]["hint"]) == ("/queries/0/row", True)

    def test_a_row_of_the_blanket_is_one_of_its_part(self, shelved: Desk) -> None:
        """Without a part the rows of the whole piece are counted."""
        asked = {name: ANSWER[name] for name in ("question", "answer")}
        told = [noted(shelved, ANSWERS, asked | {"row": row}).json for row in (3, 15)]
        assert [(each["section"], each["row"]) for each in told] == [("bottom", 3), ("body", 3)]


class TestKeeping:
    """What all three sorts share."""

    def test_one_is_found_in_its_list_page_by_page(self, shelved: Desk) -> None:
        """The cursor leads on, and what is of another sort is in none."""
        noted(shelved, ANSWERS, ANSWER)
        for _ in range(3):
            noted(shelved, KNITS, KNIT)
        first = shelved.client.get(f"{KNITS}?limit=2").json
        second = shelved.client.get(first["next"]).json
        assert [each["number"] for each in (*first["items"], *second["items"])] == [2, 3, 4]
        assert second["next"] is None
        refused(shelved.client.get(f"{KNITS}/1"), 404, "not-found")
        refused(shelved.client.get("/v1/recipes/nope/test-knits"), 404, "not-found")
        refused(shelved.client.get(f"{KNITS}/01"), 404, "not-found")

    @pytest.mark.parametrize(("path", "body"), [(KNITS, KNIT), (ANSWERS, ANSWER), (PIECES, PIECE)])
    def test_under_one_key_one_is_written(self, shelved: Desk, path: str, body: dict[str, Any]) -> None:
        """Sent again it is answered as before; other bytes under the key are refused."""
        headers = shelved.token() | {"Idempotency-Key": "one-of-mine"}
        first, second = (shelved.client.post(path, json=body, headers=headers) for _ in range(2))
        assert (first.status_code, second.status_code) == (201, 201)
        assert (second.headers["Idempotency-Replayed"], second.data) == ("true", first.data)
        assert len(shelved.client.get(path).json["items"]) == 1
        refused(shelved.client.post(path, json=body | {"whose": "Bram"}, headers=headers), 422, "key-reused")

    @pytest.mark.parametrize(("path", "body"), [(KNITS, KNIT), (ANSWERS, ANSWER), (PIECES, PIECE)])
    def test_what_is_told_can_be_changed_and_sent_back(self, shelved: Desk, path: str, body: dict[str, Any]) -> None:
        """The tag of what was changed does not serve again."""
        place = noted(shelved, path, body | {"whose": "Odile"}).headers["Location"]
        told = shelved.client.get(place).json
        answer = shelved.put(place, told | {"whose": "Noor"}, told["etag"])
        assert (answer.status_code, answer.json["whose"], answer.json["number"]) == (200, "Noor", told["number"])
        changed = shelved.put(place, answer.json | {"size": None, "whose": None}, answer.json["etag"])
        assert changed.json["whose"] == "Noor"

    def test_a_stale_tag_changes_nothing(self, shelved: Desk) -> None:
        """Of two who change one, the second is told so; without a tag it is asked for."""
        told = noted(shelved, KNITS, KNIT).json
        assert shelved.put(told["href"], KNIT | {"grams": 310}, told["etag"]).status_code == 200
        refused(shelved.put(told["href"], KNIT | {"grams": 320}, told["etag"]), 412, "stale")
        answer = shelved.client.put(told["href"], json=KNIT, headers=shelved.token())
        refused(answer, 428, "tag-needed")

    def test_only_its_writer_or_a_reviewer_changes_one(self, shelved: Desk) -> None:
        """Another contributor is refused, and a reader writes nothing."""
        told, tag = noted(shelved, KNITS, KNIT).json, {}
        tag = {"If-Match": told["etag"]}
        other = shelved.token("contributor", "bram") | tag
        refused(shelved.client.put(told["href"], json=KNIT, headers=other), 403, "not-theirs")
        back = f"{told['href']}/taking-back"
        refused(shelved.client.post(back, json={"say": "No."}, headers=other), 403, "not-theirs")
        refused(shelved.client.post(KNITS, json=KNIT, headers=shelved.token("reader")), 403, "not-allowed")
        reviewer = shelved.token("reviewer", "suri")
        assert shelved.client.put(told["href"], json=KNIT, headers=reviewer | tag).status_code == 200
        assert shelved.client.post(back, json={"say": "Spam."}, headers=reviewer).status_code == 200

    def test_what_is_taken_back_says_nothing_more(self, shelved: Desk) -> None:
        """Its address tells the reason, the list has it no more, and a dump does not hold its words."""
        told = noted(shelved, PIECES, PIECE | {"dye_lot": "lot 7714"}).json
        shelved.client.post(f"{told['href']}/taking-back", json={"say": "Weighed wet."}, headers=shelved.token())
        assert "Weighed wet." in refused(shelved.client.get(told["href"]), 410, "withdrawn")["detail"]
        assert shelved.client.get(PIECES).json["items"] == []
        assert "7714" not in str([record.row for record in shelved.services.store.records()])

    def test_each_act_is_in_the_log(self, shelved: Desk) -> None:
        """By whom, and on which jotting."""
        told = noted(shelved, ANSWERS, ANSWER).json
        shelved.put(told["href"], ANSWER | {"answer": "Both sides."}, told["etag"])
        shelved.client.post(f"{told['href']}/taking-back", json={"say": "A slip."}, headers=shelved.token())
        lines = [each for each in shelved.services.store.audit(0, 100) if each.subject == "answer/1"]
        assert [each.act for each in lines] == ["note", "note", "take-back"]


class TestPieces:
    """`/v1/recipes/<slug>/pieces`."""

    @pytest.mark.parametrize(
        "member", ["child", "child_name", "name", "baby", "born", "birthday", "weight", "address", "for", "notes"]
    )
    def test_nothing_of_a_child_is_kept(self, shelved: Desk, member: str) -> None:
        """There is no member for it, and one that is not known is refused."""
        answer = shelved.client.post(PIECES, json=PIECE | {member: "x"}, headers=shelved.token())
        assert refused(answer, 422, "not-as-described")["errors"][0]["pointer"] == f"/{member}"
        assert shelved.client.get(PIECES).json["items"] == []

    def test_a_rod_in_the_washed_piece_counts(self, shelved: Desk) -> None:
        """The rules see what was measured of the piece, and not the wishes of the recipe."""
        told = shelved.client.get(noted(shelved, PIECES, PIECE).headers["Location"]).json
        mass, hole = told["measured"]
        assert (hole["value"], hole["counts"], hole["limit_mm"], hole["under_limit"]) == (3.5, True, 5, True)
        assert (mass["counts"], mass["gsm"]) == (True, 700.0)
        assert {"R07"} == {each["reference"] for each in told["safety"]["findings"]} & {"R07", "R11"}
        assert "R11" in told["safety"]["assessed"]

    @pytest.mark.parametrize(
        ("change", "why"),
        [
            ({"openings": [{"mm": 3, "found_by": "estimate"}]}, "an estimate does not count"),
            ({"openings": [{"mm": 3, "found_by": "rod"}, {"mm": 6, "found_by": "estimate"}]}, "only estimated"),
            ({"openings": []}, "No opening was tested"),
            ({"washed": False}, "not said to be washed"),
        ],
    )
    def test_what_is_not_measured_is_no_pass(self, shelved: Desk, change: dict[str, Any], why: str) -> None:
        """The rule of openings is not assessed, whatever the recipe says of itself."""
        told = shelved.client.get(noted(shelved, PIECES, PIECE | change).headers["Location"]).json
        hole = told["measured"][1]
        assert (hole["counts"], hole["under_limit"], why in hole["why"]) == (False, None, True)
        assert "R11" in told["safety"]["not_assessed"]
        assert "no pass" in told["about"]

    def test_a_wide_opening_is_told(self, shelved: Desk) -> None:
        """At 5 mm it is not under 5 mm, and the rule speaks."""
        body = PIECE | {"openings": [{"mm": 5, "found_by": "rod"}, {"mm": 2, "found_by": "rod"}]}
        told = shelved.client.get(noted(shelved, PIECES, body).headers["Location"]).json
        assert (told["measured"][1]["value"], told["measured"][1]["under_limit"]) == (5, False)
        assert "R11" in {each["reference"] for each in told["safety"]["findings"]}

    @pytest.mark.parametrize("lacking", ["width_cm", "weighed_g"])
    def test_a_mass_counts_with_the_size_of_the_piece(self, shelved: Desk, lacking: str) -> None:
        """The planned size is not that of the piece."""
        body = {name: value for name, value in PIECE.items() if name != lacking}
        mass = shelved.client.get(noted(shelved, PIECES, body).headers["Location"]).json["measured"][0]
        assert (mass["counts"], mass["gsm"]) == (False, None)


class TestCorrections:
    """`/v1/recipes/<slug>/editions/<number>/corrections`."""

    PATH = f"{RECIPE}/editions/1/corrections"

    @pytest.fixture
    def published(self, shelved: Desk) -> Desk:
        """Return the desk with an edition."""
        noted(shelved, f"{RECIPE}/editions", {"date": "2026-11-26"})
        return shelved

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

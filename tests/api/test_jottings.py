"""Test knits, answers and pieces over HTTP, in either sort of store."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from api.conftest import Desk
from api.contents import YARN
from api.notes import ANSWER, ANSWERS, ASKED, KNIT, KNITS, PIECE, PIECES, RECIPE, noted
from api.test_refusals import refused


def figures(desk: Desk, path: str) -> dict[str, dict[str, Any]]:
    """Return the figures of a test knit by their names."""
    return {each["figure"]: each for each in desk.client.get(path).json["compared"]}


class TestTestKnits:
    """`/v1/recipes/<slug>/test-knits`."""

    def test_what_came_out_stands_beside_what_was_predicted(self, noting: Desk) -> None:
        """22 stitches against 22.5 are half a stitch and 2.2 percent less."""
        place = noted(noting, KNITS, KNIT).headers["Location"]
        found = figures(noting, place)["stitches_10cm"]
        told = [found[name] for name in ("predicted", "actual", "difference", "percent", "within")]
        assert told == [22.5, 22.0, -0.5, -2.2, None]

    def test_what_the_plan_predicts_is_what_the_plan_says(self, noting: Desk) -> None:
        """Size, grams and hours of the comparison are those of `POST /v1/plans`."""
        knit = KNIT | {"hours": 30, "washed": {"width_cm": 70, "length_cm": 90}}
        found = figures(noting, noted(noting, KNITS, knit).headers["Location"])
        names = ("parts", "gauge", "size", "yarn")
        recipe = noting.client.get(RECIPE).json
        plan = noting.client.post("/v1/plans", json={name: recipe[name] for name in names}).json
        assert round(found["width_cm"]["predicted"], 1) == plan["finished"]["width_cm"]
        assert round(found["length_cm"]["predicted"], 1) == plan["finished"]["length_cm"]
        assert [round(found["hours"][end], 1) for end in ("low", "high")] == plan["time"]["hours"]
        assert round(found["grams"]["predicted"], 1) == plan["yarn"]["grams"]["likely"]

    def test_what_washing_did_is_told(self, noting: Desk) -> None:
        """From 20 stitches over 8 cm, 25 to 10 cm, to 22."""
        told = noted(noting, KNITS, KNIT | {"unwashed": {"stitches": 20, "over_cm": 8}}).json
        (found,) = noting.client.get(told["href"]).json["washing"]
        assert (found["before"], found["after"], found["percent"]) == (25.0, 22.0, -12.0)

    def test_a_knit_of_an_edition_is_of_its_revision(self, noting: Desk) -> None:
        """The edition is what the knitter had in hand, whatever the recipe says by then."""
        edition = noted(noting, f"{RECIPE}/editions", {"date": "2026-11-26"}).json
        kept = noting.client.get(RECIPE).json
        noting.put(RECIPE, kept | {"size": {"width_cm": 60, "length_cm": 60}}, kept["etag"])
        assert noted(noting, KNITS, KNIT | {"edition": 1}).json["revision"] == edition["revision"]
        assert noted(noting, KNITS, KNIT).json["revision"] != edition["revision"]

    def test_a_knit_of_a_size_is_held_against_that_size(self, noting: Desk) -> None:
        """Of an edition in several sizes the knit says which one."""
        sizes = [{"name": "small", "width_cm": 50, "length_cm": 60}, {"name": "large", "width_cm": 80, "length_cm": 90}]
        noted(noting, f"{RECIPE}/editions", {"date": "2026-11-26", "sizes": sizes})
        knit = KNIT | {"edition": 1, "washed": {"width_cm": 80}}
        found = figures(noting, noted(noting, KNITS, knit | {"size": "large"}).headers["Location"])
        assert abs(found["width_cm"]["predicted"] - 80) < 2
        headers = noting.token()
        answer = noting.client.post(KNITS, json=knit | {"size": "huge"}, headers=headers)
        assert "small, large" in refused(answer, 422, "not-usable")["errors"][0]["hint"]
        refused(noting.client.post(KNITS, json=KNIT | {"size": "large"}, headers=headers), 422, "not-usable")

    def test_the_refit_says_on_how_many_knits_it_rests(self, noting: Desk) -> None:
        """Of one plan it is the middle of both knits, and its ends are those of each by itself."""
        for grams in (300, 330):
            noted(noting, KNITS, KNIT | {"grams": grams, "metres_per_100g": 230})
        found = noting.client.get(f"{RECIPE}/knitted").json
        fitted = found["loop_mm"]
        assert (found["knits"], fitted["knits"], "2 knits" in fitted["worth"]) == (2, 2, True)
        assert abs(Fraction(str(fitted["least"])) / Fraction(str(fitted["most"])) - Fraction(300, 330)) < 0.001
        assert abs(fitted["value"] - (fitted["least"] + fitted["most"]) / 2) <= 0.01
        assert found["stitches_a_minute"] is None
        assert [each["why"] for each in found["left_out"]] == ["The hours are not told."] * 2

    def test_a_later_plan_may_take_a_knit_for_its_yarn_and_pace(self, noting: Desk) -> None:
        """With what the knit told, the plan comes to its grams and its hours."""
        place = noted(noting, KNITS, KNIT | {"grams": 300, "hours": 30}).headers["Location"]
        told, recipe = noting.client.get(place).json["for_a_plan"], noting.client.get(RECIPE).json
        request = {name: recipe[name] for name in ("parts", "gauge", "size")}
        plan = noting.client.post("/v1/plans", json=request | {"pace": told["pace"], "yarn": YARN | told["yarn"]}).json
        assert abs(plan["yarn"]["grams"]["likely"] - 300) < 6
        assert plan["time"]["hours"][0] <= 30 <= plan["time"]["hours"][1]

    def test_a_row_that_two_knitters_ask_about_is_flagged(self, noting: Desk) -> None:
        """One who asks twice is one knitter; the answer stands with the row."""
        other = ASKED | {"row": 5}
        noted(noting, KNITS, KNIT | {"queries": [ASKED, other]})
        noted(noting, KNITS, KNIT | {"queries": [other]})
        noted(noting, KNITS, KNIT | {"whose": "Noor", "queries": [ASKED]})
        noted(noting, ANSWERS, ANSWER)
        third, fifth = noting.client.get(f"{RECIPE}/rows").json["items"]
        assert (third["row"], third["knitters"], third["flagged"]) == (3, 2, True)
        assert (fifth["row"], fifth["knitters"], fifth["flagged"]) == (5, 1, False)
        assert [each["whose"] for each in third["questions"]] == ["Odile", "Noor"]
        assert [each["answer"] for each in third["answers"]] == ["The right side."]

    @pytest.mark.parametrize("place", [{"row": 9999}, {"section": "hood", "row": 1}, {"section": "body", "row": 9999}])
    def test_a_row_that_the_pattern_has_not_is_refused(self, noting: Desk, place: dict[str, Any]) -> None:
        """The answer names the parts with their rows."""
        body = KNIT | {"queries": [place | {"question": "How?"}]}
        found = refused(noting.client.post(KNITS, json=body, headers=noting.token()), 422, "not-usable")
        assert (found["errors"][0]["pointer"], "body with" in found["errors"][0]["hint"]) == ("/queries/0/row", True)

    def test_a_row_of_the_blanket_is_one_of_its_part(self, noting: Desk) -> None:
        """Without a part the rows of the whole piece are counted."""
        asked = {name: ANSWER[name] for name in ("question", "answer")}
        told = [noted(noting, ANSWERS, asked | {"row": row}).json for row in (3, 15)]
        assert [(each["section"], each["row"]) for each in told] == [("bottom", 3), ("body", 3)]


class TestKeeping:
    """What all three sorts share."""

    def test_one_is_found_in_its_list_page_by_page(self, noting: Desk) -> None:
        """The cursor leads on, and what is of another sort is in none."""
        noted(noting, ANSWERS, ANSWER)
        for _ in range(3):
            noted(noting, KNITS, KNIT)
        first = noting.client.get(f"{KNITS}?limit=2").json
        second = noting.client.get(first["next"]).json
        assert [each["number"] for each in (*first["items"], *second["items"])] == [2, 3, 4]
        assert second["next"] is None
        refused(noting.client.get(f"{KNITS}/1"), 404, "not-found")
        refused(noting.client.get("/v1/recipes/nope/test-knits"), 404, "not-found")
        refused(noting.client.get(f"{KNITS}/01"), 404, "not-found")

    @pytest.mark.parametrize(("path", "body"), [(KNITS, KNIT), (ANSWERS, ANSWER), (PIECES, PIECE)])
    def test_under_one_key_one_is_written(self, noting: Desk, path: str, body: dict[str, Any]) -> None:
        """Sent again it is answered as before; other bytes under the key are refused."""
        headers = noting.token() | {"Idempotency-Key": "one-of-mine"}
        first, second = (noting.client.post(path, json=body, headers=headers) for _ in range(2))
        assert (first.status_code, second.status_code) == (201, 201)
        assert (second.headers["Idempotency-Replayed"], second.data) == ("true", first.data)
        assert len(noting.client.get(path).json["items"]) == 1
        refused(noting.client.post(path, json=body | {"whose": "Bram"}, headers=headers), 422, "key-reused")

    @pytest.mark.parametrize(("path", "body"), [(KNITS, KNIT), (ANSWERS, ANSWER), (PIECES, PIECE)])
    def test_what_is_told_can_be_changed_and_sent_back(self, noting: Desk, path: str, body: dict[str, Any]) -> None:
        """The tag of what was changed does not serve again."""
        place = noted(noting, path, body | {"whose": "Odile"}).headers["Location"]
        told = noting.client.get(place).json
        answer = noting.put(place, told | {"whose": "Noor"}, told["etag"])
        assert (answer.status_code, answer.json["whose"], answer.json["number"]) == (200, "Noor", told["number"])
        changed = noting.put(place, answer.json | {"size": None, "whose": None}, answer.json["etag"])
        assert changed.json["whose"] == "Noor"

    def test_a_stale_tag_changes_nothing(self, noting: Desk) -> None:
        """Of two who change one, the second is told so; without a tag it is asked for."""
        told = noted(noting, KNITS, KNIT).json
        assert noting.put(told["href"], KNIT | {"grams": 310}, told["etag"]).status_code == 200
        refused(noting.put(told["href"], KNIT | {"grams": 320}, told["etag"]), 412, "stale")
        answer = noting.client.put(told["href"], json=KNIT, headers=noting.token())
        refused(answer, 428, "tag-needed")

    def test_only_its_writer_or_a_reviewer_changes_one(self, noting: Desk) -> None:
        """Another contributor is refused, and a reader writes nothing."""
        told, tag = noted(noting, KNITS, KNIT).json, {}
        tag = {"If-Match": told["etag"]}
        other = noting.token("contributor", "bram") | tag
        refused(noting.client.put(told["href"], json=KNIT, headers=other), 403, "not-theirs")
        back = f"{told['href']}/taking-back"
        refused(noting.client.post(back, json={"say": "No."}, headers=other), 403, "not-theirs")
        refused(noting.client.post(KNITS, json=KNIT, headers=noting.token("reader")), 403, "not-allowed")
        reviewer = noting.token("reviewer", "suri")
        assert noting.client.put(told["href"], json=KNIT, headers=reviewer | tag).status_code == 200
        assert noting.client.post(back, json={"say": "Spam."}, headers=reviewer).status_code == 200

    def test_what_is_taken_back_says_nothing_more(self, noting: Desk) -> None:
        """Its address tells the reason, the list has it no more, and a dump does not hold its words."""
        told = noted(noting, PIECES, PIECE | {"dye_lot": "lot 7714"}).json
        noting.client.post(f"{told['href']}/taking-back", json={"say": "Weighed wet."}, headers=noting.token())
        assert "Weighed wet." in refused(noting.client.get(told["href"]), 410, "withdrawn")["detail"]
        elsewhere = told["href"].replace(RECIPE, "/v1/recipes/another-one")
        refused(noting.client.get(elsewhere), 404, "not-found")
        refused(
            noting.client.post(f"{elsewhere}/taking-back", json={"say": "So."}, headers=noting.token()),
            404,
            "not-found",
        )
        assert noting.client.get(PIECES).json["items"] == []
        assert "lot 7714" not in str([record.row for record in noting.services.store.records()])

    def test_what_is_taken_back_twice_under_a_key_is_taken_back_once(self, noting: Desk) -> None:
        """The second answer says that it is one; under another key, or with none, the reason is told as 410."""
        told, headers = noted(noting, ANSWERS, ANSWER).json, noting.token()
        place, say = f"{told['href']}/taking-back", {"say": "A slip."}
        key = headers | {"Idempotency-Key": "one"}
        first, second = (noting.client.post(place, json=say, headers=key) for _ in range(2))
        assert (first.status_code, second.status_code, second.data) == (200, 200, first.data)
        assert ("Idempotency-Replayed" in first.headers, second.headers["Idempotency-Replayed"]) == (False, "true")
        refused(noting.client.post(place, json={"say": "No."}, headers=key), 422, "key-reused")
        for other in (headers, headers | {"Idempotency-Key": "two"}):
            refused(noting.client.post(place, json=say, headers=other), 410, "withdrawn")
        assert [each.act for each in noting.services.store.audit(0, 100)].count("take-back") == 1

    def test_each_act_is_in_the_log(self, noting: Desk) -> None:
        """By whom, and on which jotting."""
        told = noted(noting, ANSWERS, ANSWER).json
        noting.put(told["href"], ANSWER | {"answer": "Both sides."}, told["etag"])
        noting.client.post(f"{told['href']}/taking-back", json={"say": "A slip."}, headers=noting.token())
        lines = [each for each in noting.services.store.audit(0, 100) if each.subject == "answer/1"]
        assert [each.act for each in lines] == ["note", "note", "take-back"]

    def test_a_figure_that_nobody_measures_is_refused(self, noting: Desk) -> None:
        """It would divide another one."""
        for body, pointer in (
            (KNIT | {"grams": 1e-300}, "/grams"),
            (KNIT | {"unwashed": {"stitches": 1e-9}}, "/unwashed/stitches"),
        ):
            answer = noting.client.post(KNITS, json=body, headers=noting.token())
            assert refused(answer, 422, "not-usable")["errors"][0]["pointer"] == pointer


class TestPieces:
    """`/v1/recipes/<slug>/pieces`."""

    @pytest.mark.parametrize(
        "member", ["child", "child_name", "name", "baby", "born", "birthday", "weight", "address", "for", "notes"]
    )
    def test_nothing_of_a_child_is_kept(self, noting: Desk, member: str) -> None:
        """There is no member for it, and one that is not known is refused."""
        answer = noting.client.post(PIECES, json=PIECE | {member: "x"}, headers=noting.token())
        assert refused(answer, 422, "not-as-described")["errors"][0]["pointer"] == f"/{member}"
        assert noting.client.get(PIECES).json["items"] == []

    def test_a_rod_in_the_washed_piece_counts(self, noting: Desk) -> None:
        """The rules see what was measured of the piece, and not the wishes of the recipe."""
        told = noting.client.get(noted(noting, PIECES, PIECE).headers["Location"]).json
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
    def test_what_is_not_measured_is_no_pass(self, noting: Desk, change: dict[str, Any], why: str) -> None:
        """The rule of openings is not assessed, whatever the recipe says of itself."""
        told = noting.client.get(noted(noting, PIECES, PIECE | change).headers["Location"]).json
        hole = told["measured"][1]
        assert (hole["counts"], hole["under_limit"], why in hole["why"]) == (False, None, True)
        assert "R11" in told["safety"]["not_assessed"]
        assert "no pass" in told["about"]

    def test_a_wide_opening_is_told(self, noting: Desk) -> None:
        """At 5 mm it is not under 5 mm, and the rule speaks."""
        body = PIECE | {"openings": [{"mm": 5, "found_by": "rod"}, {"mm": 2, "found_by": "rod"}]}
        told = noting.client.get(noted(noting, PIECES, body).headers["Location"]).json
        assert (told["measured"][1]["value"], told["measured"][1]["under_limit"]) == (5, False)
        assert "R11" in {each["reference"] for each in told["safety"]["findings"]}

    @pytest.mark.parametrize("lacking", ["width_cm", "weighed_g"])
    def test_a_mass_counts_with_the_size_of_the_piece(self, noting: Desk, lacking: str) -> None:
        """The planned size is not that of the piece."""
        body = {name: value for name, value in PIECE.items() if name != lacking}
        mass = noting.client.get(noted(noting, PIECES, body).headers["Location"]).json["measured"][0]
        assert (mass["counts"], mass["gsm"]) == (False, None)

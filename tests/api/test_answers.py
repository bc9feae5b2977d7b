"""Checks, plans, patterns and safety over HTTP: the shapes of the contract, and bad input in bounded time."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest
from flask.testing import FlaskClient

from counterpane.api.examples import BLANKET, SMALL
from counterpane_schema.check import CheckAnswer
from counterpane_schema.plan import PlanAnswer
from counterpane_schema.safety import SafetyAnswer

JSON = {"Content-Type": "application/json"}


class TestChecks:
    """`POST /v1/checks`."""

    def test_a_sound_text_gives_its_multiple(self, client: FlaskClient) -> None:
        """The answer has the agreed members and no others."""
        text = "Cast on 20 sts.\nRow 1 (RS): K2, *p3, k3; rep from * to end.\n"
        text += "Row 2: *P3, k3; rep from * to last 2 sts, p2.\n"
        answer = client.post("/v1/checks", json={"text": text}).json
        assert answer["multiple"] == {"of": 6, "plus": 2, "least": 8}
        assert set(answer) == set(CheckAnswer().fields)

    def test_a_faulty_text_is_answered_too(self, client: FlaskClient) -> None:
        """A check that ran is 200 whatever it found."""
        answer = client.post("/v1/checks", json={"text": "Row 1: k4, zz2.", "cast_on": 10})
        assert (answer.status_code, answer.json["findings"][0]["rule"]) == (200, "unknown-term")

    def test_an_empty_text_has_no_rows(self, client: FlaskClient) -> None:
        """It is a finding and no refusal."""
        answer = client.post("/v1/checks", json={"text": ""})
        assert (answer.status_code, answer.json["rows"]) == (200, [])
        assert answer.json["findings"][0]["rule"] == "no-rows"

    @pytest.mark.parametrize(("bytes_", "status"), [(1_000_000, 200), (1_000_001, 413)])
    def test_a_text_of_a_million_bytes_is_read(self, client: FlaskClient, bytes_: int, status: int) -> None:
        """The limit is on the text, however JSON escapes it."""
        line = "Pattern notes for the reader.\n"
        text = (line * (bytes_ // len(line) + 1))[:bytes_]
        body = json.dumps({"text": text}).replace("e", "\\u0065")
        body = body.replace('{"t\\u0065xt"', '{"text"')
        assert client.post("/v1/checks", data=body, headers=JSON).status_code == status

    def test_a_large_body_that_is_no_check_is_too_large(self, client: FlaskClient) -> None:
        """Only escapes make a body above 1 MiB readable."""
        assert client.post("/v1/checks", data=b"x" * 2**21, headers=JSON).status_code == 413

    def test_ten_thousand_brackets_in_a_row_are_a_finding(self, client: FlaskClient) -> None:
        """Depth inside a text is the reader's business."""
        answer = client.post("/v1/checks", json={"text": "Row 1: " + "[" * 10_000 + "k1"})
        assert answer.status_code == 200
        assert answer.json["findings"]


class TestPlans:
    """`POST /v1/plans`."""

    def test_a_plan_has_the_agreed_members(self, client: FlaskClient) -> None:
        """70 cm at 22 stitches in waffle between garter of 6 and a selvedge: 153; common practice, no source."""
        answer = client.post("/v1/plans", json=BLANKET).json
        assert answer["counts"]["cast_on"] == 153
        assert not PlanAnswer().validate(answer)

    def test_a_plan_with_picked_up_sides_has_the_same_members_and_its_picks(self, client: FlaskClient) -> None:
        """Its recipe makes the same plan again, and every section stands in working order."""
        asked = BLANKET | {"construction": "sides-picked-up"}
        asked["parts"] = {**asked["parts"], "sides": {"component": "garter-border", "rows": 16}}
        answer = client.post("/v1/plans", json=asked).json
        again = client.post("/v1/plans", json=asked | answer["recipe"]).json
        assert not PlanAnswer().validate(answer)
        assert [section["name"] for section in answer["sections"]][-2:] == ["left border", "right border"]
        assert answer["picked"] == again["picked"] != []

    def test_inches_and_a_body_in_words_are_taken(self, client: FlaskClient) -> None:
        """The answer's recipe names the usual parts."""
        answer = client.post("/v1/plans", json=SMALL).json
        assert answer["recipe"]["parts"]["cast_on"] == {"component": "long-tail"}
        assert answer["safety"]["findings"]

    @pytest.mark.parametrize(
        ("change", "pointer"),
        [
            ({"gauge": {"stitches": 0, "rows": 30, "over_cm": 10}}, "/gauge/stitches"),
            ({"gauge": {"stitches": 22, "rows": 30}}, "/gauge/over_cm"),
            ({"gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "over_in": 4}}, "/gauge/over_cm"),
            ({"gauge": "22"}, "/gauge"),
            ({"gauge": []}, "/gauge"),
            ({"size": {"width_cm": -1, "length_cm": 90}}, "/size/width_cm"),
            ({"size": {"width_cm": 70}}, "/size/length_cm"),
            ({"parts": {}}, "/parts/body"),
            ({"parts": {"body": "waffle", "hem": "waffle"}}, "/parts/hem"),
            ({"parts": {"body": "waffle", "cast_on": {"text": "Row 1: knit."}}}, "/parts/cast_on/component"),
            (
                {"parts": {"body": "waffle", "bottom": {"component": "garter-border", "rows": 2.5}}},
                "/parts/bottom/rows",
            ),
            ({"for": {"age": 3}}, "/for/age"),
        ],
    )
    def test_a_request_of_another_form_is_refused(self, client: FlaskClient, change: Any, pointer: str) -> None:
        """Each with its place."""
        answer = client.post("/v1/plans", json=BLANKET | change)
        assert answer.status_code == 422
        assert pointer in [each["pointer"] for each in answer.json["errors"]]

    @pytest.mark.parametrize("width", [10**17, 10**14, 0.001])
    def test_a_width_that_no_count_meets_is_answered(self, client: FlaskClient, width: float) -> None:
        """In bounded time, as a plan or as a problem."""
        answer = client.post("/v1/plans", json=BLANKET | {"size": {"width_cm": width, "length_cm": 90}})
        assert answer.status_code in (200, 422)

    def test_parts_that_share_no_count_come_with_corrections(self, client: FlaskClient) -> None:
        """Each is a value at a pointer with which the same request works."""
        parts = {"body": "basket-weave", "bottom": {"component": "garter-border", "rows": 10}}
        parts |= {"top": {"component": "seed-stitch-border", "rows": 2.0}, "selvedge": "slipped-selvedge"}
        request = SMALL | {
            "parts": parts | {"body": ["waffle", {"text": "Row 1 (RS): *k6; rep from * to end.\nRow 2: purl."}]}
        }
        answer = client.post("/v1/plans", json=request)
        assert (answer.status_code, answer.json["type"]) == (422, "/problems/cannot-be-planned")
        assert all(each["pointer"] and each["why"] for each in answer.json["corrections"])


class TestPatterns:
    """`POST /v1/patterns`."""

    def test_json_holds_the_pattern_and_its_text(self, client: FlaskClient) -> None:
        """The text is the plain one."""
        answer = client.post("/v1/patterns", json=BLANKET | {"title": "Waffle blanket"}).json
        assert answer["text"].startswith("Waffle blanket\n")
        assert answer["pattern"]["title"] == "Waffle blanket"

    @pytest.mark.parametrize(
        ("form", "accept", "media"),
        [
            (None, "text/markdown", "text/markdown"),
            (None, "text/plain", "text/plain"),
            ("text", "*/*", "text/plain"),
            ("markdown", "application/json", "text/markdown"),
        ],
    )
    def test_the_form_is_that_of_the_body_else_of_the_header(
        self, client: FlaskClient, form: str | None, accept: str, media: str
    ) -> None:
        """A form named in the body beats the header."""
        body = BLANKET | ({"as": form} if form else {})
        answer = client.post("/v1/patterns", json=body, headers={"Accept": accept})
        assert (answer.status_code, answer.mimetype) == (200, media)

    def test_the_sheet_of_the_designer_comes_in_the_same_forms(self, client: FlaskClient) -> None:
        """Its derivations come to the counts of the plan beside them."""
        asked = BLANKET | {"sheet": "designer", "designer": "Ines"}
        answer = client.post("/v1/patterns", json=asked).json
        assert "pattern" not in answer and answer["sheet"]["designer"] == "Ines"
        cast_on = next(each for each in answer["sheet"]["derivations"] if each["name"] == "Cast-on")
        assert (cast_on["number"], cast_on["below"]) == (answer["sheet"]["counts"]["cast_on"], 150)
        page = client.post("/v1/patterns", json=asked | {"as": "html"})
        assert (page.mimetype, b"(70 \xe2\x88\x92 6.8) cm" in page.data) == ("text/html", True)

    def test_lengths_come_in_the_units_asked_for(self, client: FlaskClient) -> None:
        """In a pattern and in a drawing."""
        text = client.post("/v1/patterns", json=BLANKET | {"units": "in", "as": "text"}).text
        assert "- Width 27½ in after washing and blocking" in text
        drawn = client.post("/v1/drawings", json=BLANKET | {"units": "in", "view": "schematic"}).text
        assert "27½ in" in drawn and " cm" not in drawn

    def test_a_written_pattern_checks_clean(self, client: FlaskClient) -> None:
        """What is written is read back without an error."""
        text = client.post("/v1/patterns", json=BLANKET | {"terms": "uk", "as": "text"}).text
        answer = client.post("/v1/checks", json={"text": text, "terms": "uk"}).json
        assert [each for each in answer["findings"] if each["severity"] != "note"] == []
        assert answer["cast_on"] == 153

    def test_no_fraction_is_left_in_the_data(self, client: FlaskClient) -> None:
        """Lengths are decimals to 0.1."""
        assert not re.search(
            r"Fraction|\d/\d+\"", client.post("/v1/patterns", json=BLANKET).text.partition('"text"')[0]
        )


class TestSafety:
    """`POST /v1/safety`."""

    def test_what_is_not_known_is_not_assessed(self, client: FlaskClient) -> None:
        """Nothing sent clears nothing."""
        answer = client.post("/v1/safety", json={}).json
        assert not SafetyAnswer().validate(answer)
        assert "R11" in answer["not_assessed"]
        assert "R11" not in answer["assessed"]

    @pytest.mark.parametrize(
        ("body", "status"), [({"hole": 3}, 422), ({"hole_mm": -1}, 422), ({"age_months": [3, 1]}, 422)]
    )
    def test_bad_inputs_are_refused_with_a_pointer(self, client: FlaskClient, body: Any, status: int) -> None:
        """Unknown members, values out of bounds, and a range the wrong way round."""
        answer = client.post("/v1/safety", json=body)
        assert (answer.status_code, answer.json["errors"][0]["pointer"]) == (status, f"/{next(iter(body))}")

"""Every refusal is a problem document that says what to do, in the agreed order, from every layer."""

from __future__ import annotations

import io
import json
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import EnvironBuilder, TestResponse, run_wsgi_app
from werkzeug.wrappers import Request

from api.conftest import Desk
from api.contents import RIB
from counterpane import wiring
from counterpane.api.catalogue import OPERATIONS
from counterpane.library.errors import Busy
from counterpane.library.review.tokens import check_of
from counterpane_schema.problem import Problem

JSON = {"Content-Type": "application/json"}
CHECKS = "/v1/checks"


def refused(answer: Any, status: int, name: str) -> dict[str, Any]:
    """Return the problem document after looking at its form."""
    assert (answer.status_code, answer.mimetype) == (status, "application/problem+json")
    document: dict[str, Any] = answer.json
    assert (document["type"], document["status"]) == (f"/problems/{name}", status)
    assert not Problem().validate(document)
    assert document["request_id"] == answer.headers["X-Request-Id"]
    return document


class TestForms:
    """One case of each sort that a request can bring about."""

    @pytest.mark.parametrize(
        "path", ["/nope", "/v1/components/nope", "/v1/recipes/nope", "/v1/rules/nope", "/v1/facts/no"]
    )
    def test_an_unknown_name_is_not_found(self, client: FlaskClient, path: str) -> None:
        """Addresses and names answer alike."""
        assert refused(client.get(path), 404, "not-found")["hint"]

    @pytest.mark.parametrize("path", ["/v1/objects/sha256/" + "0" * 64, "/v1/components/waffle/revisions/" + "0" * 64])
    def test_an_unknown_hash_is_not_found(self, client: FlaskClient, path: str) -> None:
        """A hash that names nothing is 404."""
        refused(client.get(path), 404, "not-found")

    def test_a_near_rule_is_named(self, client: FlaskClient) -> None:
        """A slip of the pen is answered with what was probably meant."""
        assert "row-runs-short" in client.get("/v1/rules/row-run-short").json["hint"]

    def test_a_wrong_method_is_told_the_right_ones(self, client: FlaskClient) -> None:
        """405 has the header Allow."""
        answer = client.delete("/v1/components/waffle")
        refused(answer, 405, "method-not-allowed")
        assert {"GET", "PUT"} <= set(answer.headers["Allow"].split(", "))

    def test_a_form_that_there_is_not_is_not_acceptable(self, client: FlaskClient) -> None:
        """406 names the forms there are."""
        answer = client.get("/v1/components", headers={"Accept": "application/pdf"})
        assert "application/json" in refused(answer, 406, "not-acceptable")["detail"]

    @pytest.mark.parametrize("accept", ["*/*", "application/*", "text/html, */*;q=0.1", "application/json;q=0.5"])
    def test_what_leaves_json_in_is_acceptable(self, client: FlaskClient, accept: str) -> None:
        """Wildcards and weights are read."""
        assert client.get("/v1/components", headers={"Accept": accept}).status_code == 200

    @pytest.mark.parametrize(
        ("body", "place"),
        [
            (b'{"text": ', "Line 1, column"),
            (b"", "Line 1, column"),
            (b'{"text": "a", "text": "b"}', "'text' stands twice"),
            (b'{"text": NaN}', "Line 1, column"),
            (b'{"cast_on": 1e999}', "Line 1, column"),
            (b'{"text": "\xff"}', "Line 1, column"),
            (b'{"text": "\\ud800"}', "Line 1, column"),
            (b"[" * 100_000, "deep"),
            (b'{"a":' * 100_000, "deep"),
        ],
    )
    def test_what_is_no_json_is_refused_with_its_place(self, client: FlaskClient, body: bytes, place: str) -> None:
        """Broken syntax, NaN, infinity, bad UTF-8, lone surrogates, doubled names and depth are all 400."""
        assert place in refused(client.post(CHECKS, data=body, headers=JSON), 400, "broken-json")["detail"]

    @pytest.mark.parametrize(
        "headers", [{}, {"Content-Type": "text/plain"}, {"Content-Type": "application/json; charset=latin-1"}]
    )
    def test_another_media_type_is_refused(self, client: FlaskClient, headers: dict[str, str]) -> None:
        """Bodies are JSON in UTF-8."""
        refused(client.post(CHECKS, data=b"{}", headers=headers), 415, "unsupported-media-type")

    def test_a_compressed_body_is_refused(self, client: FlaskClient) -> None:
        """What unfolds to more than it seems is not taken."""
        answer = client.post(CHECKS, data=b"{}", headers=JSON | {"Content-Encoding": "gzip"})
        refused(answer, 415, "unsupported-media-type")

    def test_a_large_body_is_refused_before_it_is_read(self, client: FlaskClient) -> None:
        """1 MiB is the most."""
        body = b'{"parts": "' + b"x" * 2**20 + b'"}'
        refused(client.post("/v1/plans", data=body, headers=JSON), 413, "too-large")

    @pytest.mark.parametrize("start", [b'{"age_band": "3-12m"}', b'{"age_band": "', b"x"])
    def test_a_body_of_unknown_length_is_bounded_too(self, client: FlaskClient, start: bytes) -> None:
        """A chunked body ends at the same limit, and is never taken in part: the first start is JSON by itself."""
        body = io.BytesIO(start + b" " * 2**20)
        environ = EnvironBuilder("/v1/safety", method="POST", headers=JSON).get_environ()
        environ |= {"wsgi.input": body, "wsgi.input_terminated": True, "CONTENT_LENGTH": ""}
        answer = TestResponse(*run_wsgi_app(client.application, environ), request=Request(environ))
        refused(answer, 413, "too-large")

    @pytest.mark.parametrize("path", ["/v1//components", "/v1/components//waffle", "/v1/components/", "/rules//"])
    def test_an_address_with_a_slash_too_many_is_not_found(self, client: FlaskClient, path: str) -> None:
        """It is not sent on to another address, which would be made of the header Host."""
        refused(client.get(path), 404, "not-found")

    @pytest.mark.parametrize("path", ["/v1/components/{}", "/v1/rules/{}", "/{}", "/v1/objects/sha256/{}"])
    def test_a_long_name_is_not_sent_back_whole(self, client: FlaskClient, path: str) -> None:
        """The problem document stays short."""
        answer = client.get(path.format("a" * 50_000))
        refused(answer, 404, "not-found")
        assert len(answer.data) < 5_000

    @pytest.mark.parametrize(
        ("body", "pointer"),
        [
            ({}, "/text"),
            ({"text": 3}, "/text"),
            ({"text": "k", "cast_on": 2.5}, "/cast_on"),
            ({"text": "k", "cast_on": "20"}, "/cast_on"),
            ({"text": "k", "cast_on": True}, "/cast_on"),
            ({"text": "k", "cast_on": 0}, "/cast_on"),
            ({"text": "k", "cast_on": 10**18}, "/cast_on"),
            ({"text": "k", "cast_on": 10**400}, "/cast_on"),
            ({"text": "k\0"}, "/text"),
            ({"text": "k", "term": "us"}, "/term"),
            ({"text": "k", "terms": "fr"}, "/terms"),
            ([], ""),
        ],
    )
    def test_a_body_of_another_form_is_refused_with_a_pointer(
        self, client: FlaskClient, body: Any, pointer: str
    ) -> None:
        """Types, bounds, control characters and unknown members are 422."""
        answer = client.post(CHECKS, data=json.dumps(body), headers=JSON)
        assert refused(answer, 422, "not-as-described")["errors"][0]["pointer"] == pointer

    def test_a_whole_number_may_be_written_with_a_point(self, client: FlaskClient) -> None:
        """20.0 is a whole number, as JSON Schema has it."""
        answer = client.post(CHECKS, data=b'{"text": "Row 1: knit.", "cast_on": 20.0}', headers=JSON)
        assert answer.json["cast_on"] == 20

    @pytest.mark.parametrize(
        "query",
        ["kind=sock", "admits=0", "admits=x", "limit=201", "colour=red", "kind=body&kind=body", "admits=" + "9" * 19],
    )
    def test_a_query_of_another_form_is_refused(self, client: FlaskClient, query: str) -> None:
        """Unknown parameters, bad values and doubled ones are 422."""
        document = refused(client.get(f"/v1/components?{query}"), 422, "not-as-described")
        assert document["errors"][0]["in"] == "query"

    def test_a_parameter_where_none_is_taken_is_refused(self, client: FlaskClient) -> None:
        """It would be left aside silently otherwise."""
        refused(client.get("/v1/components/waffle?limit=3"), 422, "not-as-described")

    @pytest.mark.parametrize(
        "change",
        [
            lambda c: c[:-3],
            lambda c: ("B" if c[0] == "A" else "A") + c[1:],
            lambda c: "é",
            lambda c: c[:9] + "!" + c[9:],
            lambda c: c + "=",
        ],
    )
    def test_a_changed_cursor_is_refused(self, client: FlaskClient, change: Any) -> None:
        """A cursor is followed as it stands or not at all."""
        cursor = client.get("/v1/components?limit=2").json["next"].partition("cursor=")[2]
        refused(client.get(f"/v1/components?cursor={change(cursor)}"), 422, "cursor-not-valid")

    def test_a_cursor_keeps_its_filters(self, client: FlaskClient) -> None:
        """It cannot be used with others."""
        path = client.get("/v1/components?kind=body&limit=2").json["next"]
        refused(client.get(f"{path}&kind=border"), 422, "cursor-not-valid")
        assert client.get(f"{path}&kind=body").status_code == 200

    def test_numbers_that_no_hash_can_name_are_refused(self, desk: Desk) -> None:
        """RFC 8785 holds whole numbers up to 2^53 − 1."""
        content = RIB | {"parameters": [{"name": "rows", "least": 1, "default": 1, "most": 10**17}]}
        refused(desk.add(content), 422, "cannot-be-kept")

    def test_a_fault_of_the_program_is_ours_and_tells_nothing(
        self, desk: Desk, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """A failure inside is 500 without its traceback."""
        monkeypatch.setattr(desk.services.store, "latest", lambda *_: 1 // 0)
        document = refused(desk.client.get("/v1/components/four-rib"), 500, "internal")
        assert "division" not in json.dumps(document)

    def test_a_busy_store_says_when_to_come_back(self, desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
        """503 has the header Retry-After."""

        def busy(*_: object) -> None:
            raise Busy("The library is being written to.")

        monkeypatch.setattr(desk.services.store, "latest", busy)
        answer = desk.client.get("/v1/components/four-rib")
        refused(answer, 503, "busy")
        assert answer.headers["Retry-After"] == "1"


class TestTokens:
    """Who may do what."""

    @pytest.mark.parametrize("header", [None, "Basic abc", "Bearer ", "Bearer cpn_x", "Bearer cpn_" + "0" * 36])
    def test_writing_needs_a_token_that_is_known(self, desk: Desk, header: str | None) -> None:
        """401 says which scheme."""
        answer = desk.client.post("/v1/components", json=RIB, headers={"Authorization": header} if header else {})
        refused(answer, 401, "token-needed")
        assert answer.headers["WWW-Authenticate"].startswith("Bearer")

    def test_a_well_formed_token_of_another_library_is_not_known(self, desk: Desk) -> None:
        """The check of a token does not open anything."""
        secret = "a" * 30
        headers = {"Authorization": f"Bearer cpn_{secret}{check_of(secret)}"}
        refused(desk.client.post("/v1/components", json=RIB, headers=headers), 401, "token-needed")

    def test_a_reader_may_not_write(self, desk: Desk) -> None:
        """403 names the role that may."""
        answer = desk.client.post("/v1/components", json=RIB, headers=desk.token("reader"))
        assert "contributor" in refused(answer, 403, "not-allowed")["hint"]
        assert "insufficient_scope" in answer.headers["WWW-Authenticate"]

    def test_no_token_is_kept_as_it_is(self, desk: Desk) -> None:
        """Only its hash is."""
        header = desk.token("keeper")["Authorization"].removeprefix("Bearer ")
        assert header not in repr(desk.services.store.__dict__)

    def test_who_may_read_where_others_can_ask(self) -> None:
        """Reading needs a token unless only this machine can ask; checks and plans never do."""
        services = wiring.open_library(open_reading=False, starters=False)
        client = wiring.app_of(services).test_client()
        refused(client.get("/v1/components"), 401, "token-needed")
        assert client.get("/v1/components", headers=Desk(services, client).token("reader")).status_code == 200
        assert client.post(CHECKS, json={"text": "Row 1: knit."}).status_code == 200
        assert "Authorization" in client.get("/v1/components", headers=Desk(services, client).token()).headers["Vary"]

    def test_every_operation_that_writes_needs_a_contributor(self) -> None:
        """An operation is open by intention only: this is the whole matrix."""
        roles = {operation.name: operation.role for operation in OPERATIONS}
        assert {name for name, role in roles.items() if role == "contributor"} == {
            "add_component",
            "revise_component",
            "add_recipe",
            "revise_recipe",
            "add_profile",
            "revise_profile",
            "publish_edition",
            "submit",
            "move_component",
            "move_recipe",
            "move_profile",
            *(f"{act}_{sort}" for act in ("add", "change", "take_back") for sort in ("test_knit", "answer", "piece")),
        }
        assert {name for name, role in roles.items() if role == "reviewer"} == {"decide"}
        assert {name for name, role in roles.items() if role == "keeper"} == {"list_audit"}
        assert {operation.name for operation in OPERATIONS if operation.signed} == {"report_safety"}
        open_to_all = {"check", "check_sheet", "plan", "write_pattern", "assess_safety", "list_rules", "get_rule"}
        open_to_all |= {
            "grade",
            "regauge",
            "tell_lesson",
            "count_class",
            "read_gauge",
            "write_swatches",
            "list_sizes",
            "get_size",
            "label",
            "say",
            "extract",
            "list_facts",
            "get_fact",
            "list_reasons",
        }
        open_to_all |= {"healthz", "readyz", "openapi"}
        open_to_all |= {"plan_largest", "plan_midway", "on_needle", "which_row", "substitute_yarn", "draw"}
        assert {name for name, role in roles.items() if role is None} == open_to_all

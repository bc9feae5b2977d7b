"""Lists as files: the same bytes by suffix and by Accept, all of them, and no cell that a spreadsheet runs."""

from __future__ import annotations

import csv
import io
import json

import pytest
from flask.testing import FlaskClient

from api.conftest import Desk
from api.contents import RIB
from counterpane.library.services import Services
from counterpane.library.sharing.exports import FORMULA, _cell

MEDIA = {"csv": "text/csv", "ndjson": "application/x-ndjson"}


@pytest.mark.parametrize("noun", ["components", "recipes", "profiles"])
@pytest.mark.parametrize("suffix", MEDIA)
@pytest.mark.parametrize("query", ["", "?q=wool", "?status=accepted&limit=2"])
def test_suffix_and_accept_give_the_same_bytes(client: FlaskClient, noun: str, suffix: str, query: str) -> None:
    """With the same filters."""
    named = client.get(f"/v1/{noun}.{suffix}{query}")
    asked = client.get(f"/v1/{noun}{query}", headers={"Accept": MEDIA[suffix]})
    assert (named.status_code, named.mimetype, named.data) == (200, MEDIA[suffix], asked.data)
    assert f"{noun}.{suffix}" in named.headers["Content-Disposition"]


def test_each_card_is_a_line_and_a_row(client: FlaskClient, library: Services) -> None:
    """All of them, past the first page, in the order of the list."""
    cards = [json.loads(line) for line in client.get("/v1/components.ndjson").data.splitlines()]
    rows = list(csv.DictReader(io.StringIO(client.get("/v1/components.csv").text, newline="")))
    kept = sorted(each.slug for each in library.store.changes(0, 10_000) if each.kind == "component")
    assert [each["slug"] for each in cards] == [each["slug"] for each in rows] == kept
    assert [json.loads(each["multiple"] or "null") for each in rows] == [each["multiple"] for each in cards]


def test_a_formula_is_no_formula_unless_it_is_asked_for(desk: Desk) -> None:
    """An apostrophe stands before it; raw, the cell is as it is kept. Quotes and line ends come back."""
    summary = '=HYPERLINK("x"), and\nmore'
    assert desk.add({**RIB, "summary": summary}).status_code == 201

    def cell(query: str) -> str:
        text = desk.client.get(f"/v1/components.csv{query}").data.decode()
        return next(csv.DictReader(io.StringIO(text, newline="")))["summary"]

    assert (cell(""), cell("?profile=raw")) == (f"'{summary}", summary)


@pytest.mark.parametrize("start", FORMULA)
def test_every_start_of_a_formula_is_guarded(start: str) -> None:
    """And nothing else is changed."""
    assert (_cell(f"{start}1", False), _cell(f"{start}1", True), _cell("a=1", False)) == (
        f"'{start}1",
        f"{start}1",
        "a=1",
    )


def test_a_form_that_there_is_not_is_a_problem(client: FlaskClient) -> None:
    """It names those that there are."""
    answer = client.get("/v1/components.csv", headers={"Accept": "application/pdf"})
    assert (answer.status_code, answer.mimetype) == (406, "application/problem+json")
    assert "text/csv" in answer.json["detail"]


def test_a_browser_still_gets_json(client: FlaskClient) -> None:
    """Where anything is welcome, the first form is sent."""
    for accept in ("text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8", "application/*", "*/*", ""):
        assert client.get("/v1/components", headers={"Accept": accept}).mimetype == "application/json"

"""Sheets over HTTP: asked, sent back with answers, and refused with a pointer."""

from __future__ import annotations

from typing import Any

from flask.testing import FlaskClient

BROKEN = "Cast on 10 sts.\nRow 1: K4, skq, k4.\n"
MENDED = "Cast on 10 sts.\nRow 1: K4, skp, k4.\n"


def unknown(sheet: dict[str, Any]) -> list[dict[str, Any]]:
    """Return the queries about unknown words."""
    return [query for query in sheet["queries"] if query["rule"] == "unknown-term"]


def test_a_sheet_is_answered_sent_back_and_settled(client: FlaskClient) -> None:
    """The answered sheet goes back as it came, with what was written into it."""
    sheet = client.post("/v1/sheets", json={"text": BROKEN}).json
    assert [query["state"] for query in unknown(sheet)] == ["open"]
    unknown(sheet)[0].update({"answer": "skp, of course.\n", "decision": "change"})
    after = client.post("/v1/sheets", json={"text": MENDED, "sheet": sheet}).json
    assert [(query["state"], query["answer"]) for query in unknown(after)] == [("settled", "skp, of course.\n")]
    assert after["checked"] != sheet["checked"]


def test_the_request_beats_the_sheet_in_how_the_text_is_checked(client: FlaskClient) -> None:
    """The sheet that is answered says how it was checked."""
    sheet = {"cast_on": 8, "style": "pocket-card"}
    after = client.post("/v1/sheets", json={"text": MENDED, "sheet": sheet, "style": "counterpane"}).json
    assert (after["cast_on"], after["style"]) == (8, "counterpane")


def test_a_style_that_is_not_there_is_refused_with_its_pointer(client: FlaskClient) -> None:
    """The nearest is named."""
    answer = client.post("/v1/sheets", json={"text": MENDED, "style": "plain-word"})
    assert answer.status_code == 422
    assert answer.json["errors"][0]["pointer"] == "/style"
    assert "plain-words" in answer.json["hint"]


def test_a_slip_in_a_sheet_is_refused_with_its_pointer(client: FlaskClient) -> None:
    """An answer under a name that is not known would be lost."""
    sheet = {"queries": [{"question": "Own?", "anwser": "Yes."}]}
    answer = client.post("/v1/sheets", json={"text": MENDED, "sheet": sheet})
    assert answer.status_code == 422
    assert answer.json["errors"][0]["pointer"] == "/sheet/queries/0/anwser"
    assert answer.json["errors"][0]["hint"] == "Probably meant: answer."


def test_a_text_beyond_the_limit_is_refused(client: FlaskClient) -> None:
    """As for a check."""
    assert client.post("/v1/sheets", json={"text": "k" * 1_000_001}).status_code == 413

"""Test knits, answers and pieces to send, of an invented recipe: no check of anything outside the API."""

from __future__ import annotations

from typing import Any

from api.conftest import Desk

RECIPE = "/v1/recipes/ribbed-blanket"
KNITS, ANSWERS, PIECES = (f"{RECIPE}/{name}" for name in ("test-knits", "answers", "pieces"))
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


def noted(desk: Desk, path: str, content: dict[str, Any], **headers: str) -> Any:
    """Note something as a contributor and return the answer."""
    answer = desk.client.post(path, json=content, headers=desk.token() | headers)
    assert answer.status_code == 201, answer.data
    return answer

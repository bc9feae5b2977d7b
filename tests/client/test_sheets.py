"""Sheets through the client, against the real application."""

from __future__ import annotations

import pytest

from counterpane.client import Client, NotUsable


def test_a_sheet_is_sent_back_with_the_mended_text(client: Client) -> None:
    """What came is changed and sent again."""
    sheet = client.sheet("Cast on 10 sts.\nRow 1: K4, skq, k4.\n")
    number = next(query.number for query in sheet.queries if query.rule == "unknown-term")
    answered = [{**query.data, "answer": "skp."} if query.number == number else query.data for query in sheet.queries]
    after = client.sheet("Cast on 10 sts.\nRow 1: K4, skp, k4.\n", {**sheet.data, "queries": answered})
    mended = next(query for query in after.queries if query.number == number)
    assert (mended.state, mended.answer, mended.row) == ("settled", "skp.", "1")


def test_a_style_is_asked_for_by_name(client: Client) -> None:
    """One that is not there is refused."""
    asked = client.sheet("1st row: K2.", style="counterpane").queries
    assert "style-row-label" in [query.rule for query in asked]
    with pytest.raises(NotUsable, match="There is no style"):
        client.sheet("Row 1: K2.", style="none-such")

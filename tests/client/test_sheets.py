"""Sheets through the client, against the real application."""

from __future__ import annotations

import pytest

from counterpane.client import Client, NotUsable


def test_a_sheet_is_sent_back_with_the_mended_text(client: Client) -> None:
    """What came is changed and sent again."""
    sheet = client.sheet("Cast on 10 sts.\nRow 1: K1, yo, k to end. (12 sts)\n")
    assert [(query.number, query.state, query.row) for query in sheet.queries] == [(1, "open", "1")]
    answered = {**sheet.data, "queries": [{**sheet.queries[0].data, "answer": "11."}]}
    after = client.sheet("Cast on 10 sts.\nRow 1: K1, yo, k to end. (11 sts)\n", answered)
    assert [(query.state, query.answer) for query in after.queries] == [("settled", "11.")]


def test_a_style_is_asked_for_by_name(client: Client) -> None:
    """One that is not there is refused."""
    assert client.sheet("1st row: K2.", style="counterpane").queries[0].rule == "style-row-label"
    with pytest.raises(NotUsable, match="There is no style"):
        client.sheet("Row 1: K2.", style="none-such")

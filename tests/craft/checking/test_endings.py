"""Rows whose repeat was printed without its end."""

from __future__ import annotations

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text


def corrections(text: str, vocabulary: Vocabulary) -> list[str]:
    """Return the corrected rows of a text, each of which checks clean in its place."""
    findings = check_text(text, vocabulary)["findings"]
    rows = (line for finding in findings for line in finding["corrections"] if line.startswith("Row"))
    found = list(dict.fromkeys(rows))
    for line in found:
        wrong = next(each for each in text.splitlines() if each.partition(":")[0] == line.partition(":")[0])
        assert check_text(text.replace(wrong, line), vocabulary)["findings"] == []
    return found


@pytest.mark.parametrize(
    ("stitches", "row", "first"),
    [
        (62, "*K2, p2; rep from * to end.", "*K2, p2; rep from * to last 2 sts, k2."),
        (62, "*P2, k2; rep from * to end.", "*P2, k2; rep from * to last 2 sts, p2."),
        (61, "*K1, p1; rep from * to end.", "*K1, p1; rep from * to last st, k1."),
        (63, "*K2, p2; rep from * to end", "*K2, p2; rep from * to last 3 sts, k2, p1"),
        (61, "*K2, p2; rep from * to end. (61 sts)", "*K2, p2; rep from * to last st, k1. (61 sts)"),
    ],
)
def test_a_rib_ends_as_it_begins(stitches: int, row: str, first: str, vocabulary: Vocabulary) -> None:
    """The beginning of the repeat is the likeliest of its ends."""
    assert corrections(f"Cast on {stitches} sts.\nRow 1: Knit.\nRow 2: {row}", vocabulary)[0] == f"Row 2: {first}"


def test_any_repeat_may_end_with_plain_stitches(vocabulary: Vocabulary) -> None:
    """A lace of 6 over 61 stitches leaves one."""
    text = "Cast on 61 sts.\nRow 1: *Yo, k2tog, k4; rep from * to end.\nRow 2: Purl."
    assert "Row 1: *Yo, k2tog, k4; rep from * to last st, k1." in corrections(text, vocabulary)


def test_no_end_is_put_before_words_that_stand_behind_the_repeat(vocabulary: Vocabulary) -> None:
    """The row goes on behind "to end", whatever is meant by it."""
    text = "Cast on 62 sts.\nRow 1: Knit.\nRow 2: *K2, p2; rep from * to end, turn."
    assert not any("last" in line for line in corrections(text, vocabulary))


@pytest.mark.parametrize(
    "start", ["Cast on 61 sts.", "Cast on 40 sts.\nRow 9: Knit.\nBind off.\nPick up and knit 61 sts."]
)
def test_a_rib_is_not_made_wider_to_suit_its_next_row(start: str, vocabulary: Vocabulary) -> None:
    """An end in row 2 is likelier than a yarn-over in every repeat of row 1, in the first piece and in a later one."""
    text = f"{start}\nRow 1: *P2, k2; rep from * to last st, p1.\nRow 2: *K2, p2; rep from * to end."
    found = corrections(text, vocabulary)
    assert found[0] == "Row 2: *K2, p2; rep from * to last st, k1."
    assert not any("yo" in line.lower() for line in found)

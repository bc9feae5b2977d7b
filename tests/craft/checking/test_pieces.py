"""Several pieces in one text, repeat lines that change the count, and what a finding says of the needle."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.craft.checking.causes import odd_row
from counterpane.craft.counts import Maps
from counterpane.craft.rows.instructions import read_text
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

DECREASING = "Row 1: K1, k2tog, k to last 3 sts, k2tog, k1.\n"


def errors(answer: dict[str, Any]) -> list[tuple[str, int]]:
    """Return rule and line of every error."""
    return [(found["rule"], found["line"]) for found in answer["findings"] if found["severity"] == "error"]


def said(text: str, rule: str, vocabulary: Vocabulary) -> str:
    """Return the message of a rule about a text."""
    return next(found["message"] for found in check_text(text, vocabulary)["findings"] if found["rule"] == rule)


def test_each_piece_has_a_count_error_of_its_own(vocabulary: Vocabulary) -> None:
    """The second piece is followed from its own count, whatever became of the first."""
    first = "Cast on 10 sts.\nRow 1: K4, p7.\nRow 2: Knit.\nCast off.\n\n"
    text = f"{first}Pick up and knit 30 sts along one edge.\nRow 1: *K4, p4; rep from * to end."
    answer = check_text(text, vocabulary)
    assert errors(answer) == [("row-runs-short", 2), ("repeat-does-not-fit", 7)]
    assert [row["before"] for row in answer["rows"]] == [10, None, 30]


def test_rows_behind_a_repeat_line_are_followed_from_what_it_leaves(vocabulary: Vocabulary) -> None:
    """One pass of the rows would not join; worked as often as the text says they do, and no multiple is claimed."""
    row = "*K2, p1; rep from * to end."
    text = f"Cast on 21 sts.\nRow 1: {row}\nRow 2: K2tog, k to end.\nRep row 2 twice more.\nRow 3: {row}"
    answer = check_text(text, vocabulary)
    assert (errors(answer), answer["multiple"], answer["rows"][-1]["after"]) == ([], None, 18)


@pytest.mark.parametrize(
    ("line", "least"),
    [("Rep row 1 9 times more.", 24), ("Rep row 1 until 6 sts remain.\nRow 2: K6.", 8), ("", 6)],
)
def test_the_count_to_begin_with_lets_repeat_lines_be_worked(line: str, least: int, vocabulary: Vocabulary) -> None:
    """Without a cast-on it is the least at which the whole text can be worked."""
    answer = check_text(f"{DECREASING}{line}", vocabulary)
    assert (answer["cast_on"], errors(answer)) == (least, [])


def test_a_count_beyond_all_bounds_blames_no_marker(vocabulary: Vocabulary) -> None:
    """Halved seventy times, no ordinary count is left; nothing is said of markers where there are none."""
    text = "\n".join(f"Row {number}: *K2tog; rep from * to end." for number in range(1, 71))
    message = said(text, "count-not-followed", vocabulary)
    assert "beyond all ordinary numbers" in message
    assert "marker" not in message


def test_a_row_that_fails_when_worked_again_says_when(vocabulary: Vocabulary) -> None:
    """Worked again for the ninth time, it has one stitch for a decrease of two."""
    text = "Cast on 10 sts.\nRow 1: K2tog, k to end.\nRep row 1 12 times more."
    message = said(text, "row-runs-short", vocabulary)
    assert "worked again for the 9th time at line 3, begins with 1 stitch" in message


@pytest.mark.parametrize(
    ("row", "rule", "needle"),
    [
        ("K30.", "row-runs-short", "20 stitches"),
        ("K12.", "row-leaves-stitches", "20 stitches"),
        ("*K3, p3; rep from * to end.", "repeat-does-not-fit", "20 stitches"),
        ("K to last 2 sts, k3.", "row-runs-short", "20 stitches"),
    ],
)
def test_a_finding_says_what_is_on_the_needle(row: str, rule: str, needle: str, vocabulary: Vocabulary) -> None:
    """In a later section as well, and where the row fails at any count."""
    text = f"Cast on 20 sts.\n\nBorder\nRow 1: Knit.\n\nBody\nRow 1: {row}"
    assert needle in said(text, rule, vocabulary)
    assert "Body" in said(text, rule, vocabulary)


@pytest.mark.parametrize(("printed", "wrong"), [(9, []), (10, [("stated-count-wrong", 3)])])
def test_the_count_of_a_bind_off_is_checked(printed: int, wrong: list[tuple[str, int]], vocabulary: Vocabulary) -> None:
    """The finding stands at the bind-off, which is where the number is printed."""
    text = f"Cast on 10 sts.\nRow 1: K2tog, k to end.\nBind off the remaining {printed} sts."
    assert errors(check_text(text, vocabulary)) == wrong


def test_rows_behind_an_end_have_no_counts(vocabulary: Vocabulary) -> None:
    """Nothing is on the needle after a bind-off until stitches are cast on or picked up."""
    answer = check_text("Cast on 4 sts.\nRow 1: Knit.\nBind off all sts.\nRow 2: Knit.", vocabulary)
    assert [row["after"] for row in answer["rows"]] == [4, None]


def test_parts_numbered_anew_need_not_nest(vocabulary: Vocabulary) -> None:
    """A moss border and a lace of 5 share every 10th count by design: neither row is a misprint."""
    text = (
        "Cast on 27 sts.\n1st row (RS): K1, *p1, k1; rep from * to end.\nRep this row 7 times more.\n"
        "1st patt row: K2, *yo, k2tog, k3; rep from * to end.\n2nd patt row: Purl.\n3rd patt row: As 1st patt row.\n"
    )
    answer = check_text(text, vocabulary)
    assert [row["label"] for row in answer["rows"]] == ["1", "1", "2", "3"]
    assert [finding["rule"] for finding in answer["findings"]] == []


def test_of_rows_with_three_repeats_none_is_the_odd_one(vocabulary: Vocabulary) -> None:
    """Repeats of 7, 11 and 13: without any one of them the other two still do not nest."""
    text = "".join(f"Row {row}: *K{of}; rep from * to end.\n" for row, of in enumerate((7, 11, 13), 1))
    assert odd_row(read_text(text, vocabulary).rows, Maps(vocabulary)) is None
    assert odd_row(read_text(text.replace("13", "7"), vocabulary).rows, Maps(vocabulary)) == 1

"""A text followed from its cast-on through repeat lines, markers, turns and further pieces."""

from __future__ import annotations

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

Counts = list[tuple[int | None, int | None]]


def counts(text: str, vocabulary: Vocabulary) -> Counts:
    """Return the counts before and after each row."""
    return [(row["before"], row["after"]) for row in check_text(text, vocabulary)["rows"]]


def loud(text: str, vocabulary: Vocabulary) -> list[tuple[str, int]]:
    """Return rule and line of every finding above a note."""
    found = check_text(text, vocabulary)["findings"]
    return [(finding["rule"], finding["line"]) for finding in found if finding["severity"] != "note"]


@pytest.mark.parametrize(("passes", "left"), [("once more", 12), ("9 times more", 20), ("1000000 times more", 1000011)])
def test_passes_are_worked_or_follow_by_arithmetic(passes: str, left: int, vocabulary: Vocabulary) -> None:
    """One stitch more a pass, however many passes there are."""
    text = f"Cast on 10 sts.\nRow 1: Yo, k to end.\nRep row 1 {passes}.\nRow 2: Knit."
    assert counts(text, vocabulary)[-1] == (left, left)


def test_a_pass_that_fails_is_named_at_its_row(vocabulary: Vocabulary) -> None:
    """The row fails at the second working, and what follows has no counts."""
    row = "Row 1: K1, ssk, *k2, p2; rep from * to last 3 sts, k2tog, k1."
    text = f"Cast on 10 sts.\n{row}\nRep row 1 once more.\nRow 2: Knit."
    assert loud(text, vocabulary)[0][1] == 2
    assert counts(text, vocabulary) == [(10, 8), (None, None)]


def test_a_count_after_a_repeat_line_is_checked(vocabulary: Vocabulary) -> None:
    """The count printed after a repeat line is that of the last pass."""
    text = "Cast on 10 sts.\nRow 1: Yo, k to end.\nRep row 1 4 times more. ({} sts)"
    assert loud(text.format(15), vocabulary) == []
    assert loud(text.format(16), vocabulary) == [("stated-count-wrong", 3)]


def test_a_second_cast_on_begins_another_piece(vocabulary: Vocabulary) -> None:
    """Counts begin again at a cast-on that follows rows."""
    text = "Cast on 10 sts.\nRow 1: Knit.\nBind off.\nCast on 4 sts.\nRow 1: *K2, p2; rep from * to end."
    assert counts(text, vocabulary) == [(10, 10), (4, 4)]
    assert check_text(text, vocabulary)["multiple"] == {"of": 1, "plus": 0, "least": 1}


def test_markers_are_followed_through_passes(vocabulary: Vocabulary) -> None:
    """Two markers, one stitch more on each side of the middle in each pass."""
    text = (
        "Cast on 9 sts.\nRow 1: K2, pm, k5, pm, k2.\n"
        "Row 2: K2, sm, yo, k to marker, yo, sm, k to end.\nRep row 2 5 times more. (21 sts)\nRow 3: Knit."
    )
    assert counts(text, vocabulary) == [(9, 9), (9, 11), (21, 21)]


def test_turned_rows_keep_the_stitches_that_wait(vocabulary: Vocabulary) -> None:
    """A pair of turned rows over six stitches leaves the others on the needle."""
    text = "Cast on 20 sts.\nRow 1: K6, turn.\nRow 2: K6.\nRow 3: Knit."
    assert counts(text, vocabulary) == [(20, 20), (20, 20), (20, 20)]
    assert loud(text, vocabulary) == []


def test_rows_until_a_number_remains_go_on_with_that_number(vocabulary: Vocabulary) -> None:
    """The passes follow from the drift."""
    text = "Cast on 21 sts.\nRow 1: K2tog, k to end.\nRep row 1 until 4 sts remain.\nRow 2: K4."
    assert counts(text, vocabulary) == [(21, 20), (4, 4)]


def test_a_repeat_line_of_rows_that_cannot_be_read_gives_no_count(vocabulary: Vocabulary) -> None:
    """What cannot be read is a finding of reading alone."""
    text = "Cast on 4 sts.\nRow 1: Knit.\nRow 2: Zork.\nRep rows 1-2 3 times more.\nRow 3: Knit."
    assert counts(text, vocabulary) == [(4, 4), (4, None), (None, None)]
    assert loud(text, vocabulary) == [("unknown-term", 3)]


def test_rows_that_double_are_followed(vocabulary: Vocabulary) -> None:
    """A ratio has no drift; the passes are worked one by one."""
    text = "Cast on 3 sts.\nRow 1: *Kfb; rep from * to end.\nRep row 1 twice more. (24 sts)"
    assert loud(text, vocabulary) == []


def test_rows_that_grow_say_how_long_they_can_be_worked(vocabulary: Vocabulary) -> None:
    """44 stitches become 66 and 99, and no third pass fits; 42 become 63, and no second does."""
    rows = "Row 1 (RS): *K1, p1; rep from * to end.\nRow 2: *P1, yo, k1; rep from * to end.\nRep these rows."
    text = "Cast on {} sts.\n" + rows
    said = [check_text(text.format(count), vocabulary)["findings"][-1]["message"] for count in (44, 42)]
    assert "can be worked once more and then not again" in said[0] and "cannot be worked again" in said[1]


def test_more_passes_between_markers_than_are_worked_leave_no_count(vocabulary: Vocabulary) -> None:
    """Rows that move markers are worked one by one, 200 times at most; no count is then made up."""
    text = "Cast on 10 sts.\nRow 1: K5, place marker, k5.\nRow 2: K to marker, m1, sl marker, k to end.\n"
    ends = [f"Rep row 2 {passes} times more.\nRow 3: Knit.\n" for passes in (200, 201)]
    rows = [check_text(text + end, vocabulary)["rows"] for end in ends]
    assert [(row[-1]["before"], row[-1]["after"]) for row in rows] == [(211, 211), (None, None)]

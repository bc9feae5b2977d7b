"""Rows cut into rows to show and stretches that repeat them."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.rows.instructions import read_text
from counterpane.craft.teaching.rows import Stretch, repeat_line, stretches
from craft.pattern.plans import vocabulary


@given(st.lists(st.integers(1, 4), min_size=1, max_size=12), st.integers(1, 40))
def test_stretches_are_all_rows_once_and_repeat_what_was_shown(stitches: list[int], rows: int):
    """Each row of a stretch has the words of the row that it is said to repeat."""
    text = "\n".join(f"Row {at} (RS): k{number}." for at, number in enumerate(stitches, start=1))
    listed = read_text(text, vocabulary()).rows
    found = stretches(listed, rows)
    assert [row for each in found for row in range(each.first, each.last + 1)] == list(range(1, rows + 1))
    for each in found:
        for row, again in zip(range(each.first, each.last + 1), each.again, strict=False):
            assert listed[(row - 1) % len(listed)].parts == listed[(again - 1) % len(listed)].parts


def test_a_repeat_line_counts_what_comes_again():
    """Basket weave: rows 3 to 6 are rows 1 and 2 twice."""
    assert repeat_line(Stretch(3, 6, (1, 2, 1, 2))) == "Rows 3–6: work rows 1–2 two times more."
    assert repeat_line(Stretch(5, 5, (1,))) == "Row 5: work row 1 once more."

"""The rows of a text in the order worked: rows that name others, counts printed by themselves, bounds, and lists."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine
from counterpane.craft.rows.gauges import gauges_of
from counterpane.craft.rows.instructions import Instructions, read_sizes, read_text
from counterpane.craft.rows.labels import MOST_ROWS_AT_ONCE
from counterpane.craft.rows.listing import MOST_OF_SIZES, MOST_ROWS
from counterpane.craft.rows.pages import LEAST_READ
from counterpane.craft.rows.say import say_row
from counterpane.craft.stitches import Vocabulary


def said(text: str, vocabulary: Vocabulary) -> list[str]:
    """Return every row listed, with its label."""
    return [f"{row.label}: {say_row(row.parts, vocabulary)}" for row in read_text(text, vocabulary).rows]


def rules(read: Instructions) -> list[str]:
    """Return the rules of the faults in the order found."""
    return [fault.rule for fault in read.faults]


@pytest.mark.parametrize("named", ["the last 2 rows", "first 2 rows", "rows 1 and 2"])
def test_rows_take_the_words_of_others_in_turn(named: str, vocabulary: Vocabulary) -> None:
    """However the two rows are named, the third is the first again and the fourth the second."""
    text = f"Row 1: Knit.\nRow 2: Purl.\nRows 3-4: As {named}."
    assert said(text, vocabulary)[2:] == ["3: knit", "4: purl"]


def test_stitches_beside_the_name_of_a_row_are_no_part_of_it(vocabulary: Vocabulary) -> None:
    """Of "as row 1, k3" nobody can tell whether the three stitches come before, behind or instead."""
    read = read_text("Row 1: Knit.\nRow 2: As row 1, k3.", vocabulary)
    assert (rules(read), [row.readable for row in read.rows]) == (["unknown-term"], [True, False])


@pytest.mark.parametrize(
    ("label", "labels"),
    [
        ("Row 2 and every 4th row", "2 6"),
        ("Row 2 and every alternate row", "2 4 6"),
        ("Rows 2, 9999999999999999999 and 4", "2 4"),
    ],
)
def test_a_label_adds_rows_by_its_step(label: str, labels: str, vocabulary: Vocabulary) -> None:
    """Steps are counted from the row named, and a number too long is no row."""
    text = f"{label}: Purl.\nRow 1: Knit.\nRow 3: Knit.\nRow 5: Knit."
    purled = [row.label for row in read_text(text, vocabulary).rows if say_row(row.parts, vocabulary) == "purl"]
    assert " ".join(sorted(purled)) == labels


def test_a_count_printed_below_a_repeat_line_is_that_of_the_line(vocabulary: Vocabulary) -> None:
    """Two stitches are lost in each of four workings of the row; the count below says one too many."""
    text = "Cast on 12 sts.\nRow 1: K2tog, k to last 2 sts, k2tog.\nRep row 1 3 times more.\n5 sts."
    (wrong,) = examine(text, vocabulary).walk.wrong_counts
    assert (wrong.printed, wrong.true, wrong.place.line) == (5, 4, 4)


def test_a_count_printed_below_a_heading_is_that_of_the_row_above(vocabulary: Vocabulary) -> None:
    """What stands under "Section 2" before its first row counts what is on the needle."""
    read = read_text("Row 1: K12, p12.\nSection 2\n25 sts.\nRow 2: Knit.", vocabulary)
    assert [row.stated for row in read.rows] == [25, None]


def test_a_repeat_line_that_names_a_section_without_that_row_names_no_row(vocabulary: Vocabulary) -> None:
    """Row 7 of the border is not there, though the body has rows."""
    text = "Border\nRow 1: Knit.\nBody\nRow 1: Purl.\nRep row 7 of border."
    assert rules(read_text(text, vocabulary)) == ["unknown-row"]


def test_more_rows_than_anybody_prints_are_told_once(vocabulary: Vocabulary) -> None:
    """Rows and repeat lines beyond the bound are left out."""
    read = read_text("Rows 1-1000: Knit.\n" * (MOST_ROWS // 1000 + 1) + "Rep rows 1 and 2.", vocabulary)
    assert (len(read.rows), len(read.steps), rules(read)) == (MOST_ROWS, MOST_ROWS, ["too-many-rows"])


@pytest.mark.parametrize(
    ("line", "word"),
    [
        ("Knit 3000 rows.", "3000"),
        ("Next 3000 rows: Knit.", "3000"),
        (f"Next {'9' * 5000} rows: Knit.", "9" * 18),
        (f"Knit {'9' * 5000} rows.", "9" * 18),
    ],
)
def test_rows_ordered_beyond_the_bound_are_told(line: str, word: str, vocabulary: Vocabulary) -> None:
    """A line asks for two thousand rows at most; no number is so long that it cannot be told."""
    read = read_text(f"Cast on 4 sts.\n{line}", vocabulary)
    assert [(fault.rule, fault.word) for fault in read.faults] == [("too-many-rows", word)]
    assert len(read.rows) == MOST_ROWS_AT_ONCE


def test_rows_of_many_sizes_are_bounded_together(vocabulary: Vocabulary) -> None:
    """Forty sizes are read to so many rows each that all together are not more than three sizes have."""
    sizes = ", ".join(str(60 + 2 * more) for more in range(1, 40))
    read = [*read_sizes(f"Cast on 60 ({sizes}) sts.\nKnit 200 rows.", vocabulary)]
    assert {len(one.rows) for one in read} == {MOST_OF_SIZES // 40}
    assert all(rules(one) == ["too-many-rows"] for one in read)


def test_a_text_of_ever_so_many_lines_is_read_to_a_line_that_is_told(vocabulary: Vocabulary) -> None:
    """Three thousand lines are read of any text, and one for 20 letters of a long one."""
    text = "Cast on 4 sts.\nRow 1: Knit.\n" + "\n" * LEAST_READ + "Row 2: Zork."
    (fault,) = read_text(text, vocabulary).faults
    assert (fault.rule, fault.place.line) == ("too-many-rows", LEAST_READ + 1)
    long = "Cast on 4 sts.\n" + "Knit these rows until it is square, then stop.\n\n" * LEAST_READ
    assert not [fault for fault in read_text(long, vocabulary).faults if fault.rule == "too-many-rows"]


def test_a_line_of_a_gauge_without_a_number_is_no_gauge(vocabulary: Vocabulary) -> None:
    """Of three bullets the one that names only the fabric says no stitches and no rows."""
    text = "Gauge: 22 sts and 30 rows = 10 cm\n- in garter stitch\n- on 4 mm needles 24 sts = 10 cm\n\nRow 1: Knit."
    found = gauges_of(read_text(text, vocabulary).page)
    assert [(gauge.stitches, gauge.rows) for gauge in found] == [(22, 30), (24, None)]


def test_letters_behind_a_stroke_stand_for_the_last_letter(vocabulary: Vocabulary) -> None:
    """The two names of "M1L/R" are those of a make-one that leans left and one that leans right."""
    text = "Abbreviations\nM1L/R: make one left or right\nk: knit\np: purl\n\nRow 1: K1, m1l, k1."
    first = read_text(text, vocabulary).page.glossary.entries[0]
    assert {"m1l", "m1r"} <= set(first.names)


@pytest.mark.parametrize("first", [12, 13])
def test_rows_of_one_shape_are_read_each_with_its_own_number(first: int, vocabulary: Vocabulary) -> None:
    """Where a number is multiplied, what one row is read as is not taken over for the next."""
    text = "\n".join(f"Row {number}: K{number + first} twice." for number in range(1, 5))
    assert said(text, vocabulary) == [f"{number}: k{2 * (number + first)}" for number in range(1, 5)]


def test_changes_of_the_count_at_each_end_are_an_order(vocabulary: Vocabulary) -> None:
    """How often and in which rows is not read; the order stands there as a row that cannot be counted."""
    read = read_text("Row 1: Knit.\nIncrease 1 st at each end of every 4th row.", vocabulary)
    assert [(row.label, row.readable) for row in read.rows] == [("1", True), ("next", False)]

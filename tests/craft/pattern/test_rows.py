"""The rows of a section in words: what is listed once, how it is numbered, and how often it is worked again."""

from dataclasses import replace

import pytest

from counterpane.craft.pattern.rows import CannotBeWritten, listed_rows, next_side, repeats, written_rows
from counterpane.craft.rows.instructions import read_text
from craft.pattern.plans import eyelets, moss, section, vocabulary, waffle


def texts(listed: int, rows: int) -> list[str]:
    """Return the repeat lines of a section."""
    return [repeat.text for repeat in repeats(listed, rows)]


def test_a_section_numbers_its_rows_from_1_and_gives_each_a_side() -> None:
    """The body starts at row 13 of the blanket and at row 1 of its part."""
    rows = listed_rows(waffle().sections[1], vocabulary())
    assert [(row.label, row.side) for row in rows] == [("1", "RS"), ("2", "WS"), ("3", "RS"), ("4", "WS")]


def test_a_cycle_of_one_row_is_listed_for_both_sides() -> None:
    """The second pass of an odd cycle begins on the other side, so that it is printed twice."""
    rows = listed_rows(moss().sections[1], vocabulary())
    assert [(row.label, row.side) for row in rows] == [("1", "RS"), ("2", "WS")]
    assert rows[0].parts == rows[1].parts


def test_a_section_shorter_than_its_cycle_lists_only_its_rows() -> None:
    """Three rows of a repeat of four are three rows."""
    short = replace(waffle().sections[1], rows=3)
    assert [row.label for row in listed_rows(short, vocabulary())] == ["1", "2", "3"]


def test_a_count_is_printed_where_it_changes() -> None:
    """A row that leaves as many stitches as it found says nothing of them."""
    body = eyelets().sections[1]
    rows = written_rows(listed_rows(body, vocabulary()), body, vocabulary(), "us")
    assert [row.text.rpartition("(")[2] for row in rows[:2]] == ["74 sts)", "54 sts)"]
    assert [row.text[-1] for row in rows[2:]] == [".", "."]
    assert [row.after for row in rows] == [74, 54, 54, 54]


def test_whole_repeats_are_one_line() -> None:
    """Twelve garter rows are two rows and five repeats of them."""
    assert texts(2, 12) == ["Rep rows 1–2 five times more."]
    assert texts(4, 8) == ["Rep rows 1–4 once more."]
    assert texts(2, 100) == ["Rep rows 1–2 49 times more."]


def test_a_part_of_a_repeat_is_a_line_of_its_own() -> None:
    """A balanced top ends after half a repeat."""
    assert texts(12, 246) == ["Rep rows 1–12 nineteen times more.", "Then work rows 1–6 once more."]
    assert texts(4, 5) == ["Then work row 1 once more."]


def test_rows_worked_once_have_no_repeat_line() -> None:
    """Four rows listed and four rows worked leave nothing to repeat."""
    assert texts(4, 4) == []


@pytest.mark.parametrize(("listed", "rows"), [(2, 12), (2, 3), (12, 246), (4, 8), (1, 30), (6, 125)])
def test_listed_rows_and_repeat_lines_come_to_the_rows_of_the_section(listed: int, rows: int) -> None:
    """What is listed, repeated and worked once more is all there is."""
    again = sum(repeat.times * (repeat.last - repeat.first + 1) for repeat in repeats(listed, rows))
    assert listed + again == rows


@pytest.mark.parametrize(("listed", "rows"), [(2, 4), (2, 12), (2, 100), (12, 246), (4, 5), (4, 9)])
def test_the_reader_takes_repeat_lines_for_what_they_say(listed: int, rows: int) -> None:
    """Each repeat line, read back, works its rows as many times as it was written for."""
    listing = "".join(f"Row {row}: knit.\n" for row in range(1, listed + 1))
    read = read_text(listing + "\n".join(texts(listed, rows)), vocabulary())
    again = [(len(step.rows), step.again.passes) for step in read.steps if not hasattr(step, "parts")]
    assert again == [(repeat.last, repeat.times) for repeat in repeats(listed, rows)]
    assert not read.faults


def test_rows_that_do_not_work_at_the_count_are_refused() -> None:
    """A section whose rows do not fit its count names the row."""
    bad = section("body", "rib", "Row 1 (RS): *k2, p2; rep from * to end.", first_row=1, rows=2, sts=6)
    with pytest.raises(CannotBeWritten, match="body, row 1: does not work over 6 stitches"):
        listed_rows(bad, vocabulary())


def test_the_row_after_a_section_is_on_the_other_side_of_its_last() -> None:
    """A body that ends with a WS row lets the top border begin on the RS."""
    body = waffle().sections[1]
    assert next_side(body) == "RS"
    assert next_side(replace(body, rows=181)) == "WS"

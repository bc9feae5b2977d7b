"""A whole text: labels, rows named together, sides, repeat lines, headings, and places in the text as given."""

from __future__ import annotations

import pytest

from counterpane.craft.rows.instructions import AgainStep, read_text
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text


def listed(text: str, vocabulary: Vocabulary) -> list[tuple[str, str | None]]:
    """Return label and side of every row listed."""
    return [(row.label, row.side) for row in read_text(text, vocabulary).rows]


@pytest.mark.parametrize(
    ("text", "labels"),
    [
        ("Row 1: Knit.\nRow 2: Purl.", "1 2"),
        ("1st row: K. 2nd row: P.", "1 2"),
        ("Rows 1 and 3: Knit.\nRows 2 and 4: Purl.", "1 2 3 4"),
        ("Rows 1-4: Knit.", "1 2 3 4"),
        ("Rows 1–3: Knit.", "1 2 3"),
        ("Rnd 1: Knit.\nRound 2: Purl.", "1 2"),
        ("Set-up row: Knit.\nRow 1: Purl.", "setup 1"),
        ("Next row: Knit.", "next"),
        ("The next two rows: knit.", "next next"),
        ("- Row 1: Knit.\n- Row 2: Purl.", "1 2"),
        ("**Row 1** (RS): Knit.", "1"),
        ("Row 1: Knit.\n5th inc row: K2, m1, k to end.", "1 inc"),
    ],
)
def test_a_label_lists_its_rows(text: str, labels: str, vocabulary: Vocabulary) -> None:
    """Labels are digits where there are any, else the word; a line of several rows is listed once for each."""
    assert [label for label, _ in listed(text, vocabulary)] == labels.split()


@pytest.mark.parametrize(
    ("tail", "last"),
    [("Rep rows 1-8.", 8), ("", 6)],
)
def test_all_ws_rows_reach_to_the_repeat_line_or_one_beyond_the_last_odd(
    tail: str, last: int, vocabulary: Vocabulary
) -> None:
    """Row 2 stands for every even row up to the last of the repeat line, else up to the highest odd plus one."""
    text = f"Row 1 (RS): Knit.\nRow 2 and all WS rows: Purl.\nRow 3: Knit.\nRow 5: Knit.\n{tail}"
    even = [int(label) for label, side in listed(text, vocabulary) if side == "WS"]
    assert even == list(range(2, last + 1, 2))


def test_sides_alternate_from_the_nearest_stated_row(vocabulary: Vocabulary) -> None:
    """A stated side spreads both ways within its section; without one a side is not known."""
    assert listed("Row 1: Knit.\nRow 2 (WS): Purl.\nRow 3: Knit.", vocabulary) == [
        ("1", "RS"),
        ("2", "WS"),
        ("3", "RS"),
    ]
    assert listed("Row 1: Knit.\nRow 2: Purl.", vocabulary) == [("1", None), ("2", None)]
    assert listed("Rnd 1: Knit.", vocabulary) == [("1", "round")]


def test_a_row_can_borrow_the_words_of_others(vocabulary: Vocabulary) -> None:
    """Rows 3 to 6 take the words of rows 1 and 2 in turn."""
    rows = read_text("Row 1: K2, p2.\nRow 2: P2, k2.\nRows 3–6: As rows 1 and 2.", vocabulary).rows
    assert [row.parts for row in rows[2:]] == [rows[0].parts, rows[1].parts] * 2


@pytest.mark.parametrize(
    ("line", "passes", "remain"),
    [
        ("Rep rows 1-2.", None, None),
        ("Rep rows 1–2 5 times more.", 5, None),
        ("Repeat these 2 rows once more.", 1, None),
        ("Rep last 2 rows until 3 sts remain.", None, 3),
        ("Rep rows 1–2 until piece measures 60 cm, ending with a WS row.", None, None),
        ("Then work rows 1–2 once more.", 1, None),
    ],
)
def test_a_repeat_line_says_what_is_worked_again(
    line: str, passes: int | None, remain: int | None, vocabulary: Vocabulary
) -> None:
    """Which rows, how often, and how far."""
    steps = read_text(f"Row 1: Knit.\nRow 2: Purl.\n{line}", vocabulary).steps
    again = next(step for step in steps if isinstance(step, AgainStep))
    assert (again.rows, again.again.passes, again.again.remain) == ((0, 1), passes, remain)


@pytest.mark.parametrize(
    ("statement", "of", "plus"),
    [
        ("(multiple of 6 sts plus 2)", 6, 2),
        ("(multiple of 4 + 1)", 4, 1),
        ("Cast on a multiple of 6 sts plus 3.", 6, 3),
        ("Worked over an odd number of stitches.", 2, 1),
        ("Any number of stitches that can be divided by 8, and 4 over", 8, 4),
    ],
)
def test_a_stated_multiple_is_taken(statement: str, of: int, plus: int, vocabulary: Vocabulary) -> None:
    """Several wordings state one thing."""
    stated = read_text(f"{statement}\nRow 1: Knit.", vocabulary).multiple
    assert stated is not None
    assert (stated.of, stated.plus) == (of, plus)


def test_headings_name_the_title_and_the_sections(vocabulary: Vocabulary) -> None:
    """The first heading is the title; a later one names the rows behind it."""
    read = read_text("Harbour square\n\nCast on 4 sts.\n\nBorder\nRow 1: Knit.\n\nBody\nRow 1: Purl.", vocabulary)
    assert read.title == "Harbour square"
    assert [row.section for row in read.rows] == ["Border", "Body"]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("start", ["", "\ufeff"])
def test_places_are_those_of_the_text_as_given(start: str, end: str, vocabulary: Vocabulary) -> None:
    """A BOM is not counted, CRLF is one line end, a tab is one column, and code points count."""
    finding = check_text(f"{start}A title{end}{end}Row 1:\t“Knit” zork{end}", vocabulary)["findings"][-1]
    assert finding["line"] == 3


def test_columns_count_code_points(vocabulary: Vocabulary) -> None:
    """An emoji or an accented letter before the fault is one column."""
    text = "Row 1: k1, k\u00a02, \U0001f9f6 k1"
    assert check_text(text, vocabulary)["findings"][0]["column"] == text.index("\U0001f9f6") + 1


@pytest.mark.parametrize("wrapped", ["K4\n, p2, k to end.", "K4,\np2, k to end.", "K4, p2\n; k to end."])
def test_no_line_begins_with_a_comma(wrapped: str, vocabulary: Vocabulary) -> None:
    """It goes on with the row before it."""
    (row,) = read_text(f"Row 1: {wrapped}", vocabulary).rows
    assert row.parts == read_text("Row 1: K4, p2, k to end.", vocabulary).rows[0].parts


def test_a_wrapped_row_is_one_row(vocabulary: Vocabulary) -> None:
    """A row goes on where its line ends without an end, or the next begins in the middle."""
    answer = check_text("Row 1: K2, *p3,\n  k3; rep from *\nto end.\nRow 2: Purl.", vocabulary)
    assert (answer["multiple"], len(answer["rows"])) == ({"of": 6, "plus": 2, "least": 8}, 2)


@pytest.mark.parametrize("cast_on", ["cast on 10 sts", "co 10", "Cast on 10 stitches", "cast on 10 sts\n"])
def test_stitches_below_a_cast_on_are_rows(cast_on: str, vocabulary: Vocabulary) -> None:
    """In a text without labels and full stops, the line below the count is a row and no rest of the cast-on."""
    answer = check_text(f"{cast_on}\nk10\np10", vocabulary)
    assert [(row["label"], row["before"], row["after"]) for row in answer["rows"]] == [("1", 10, 10), ("2", 10, 10)]


def test_a_cast_on_goes_on_below(vocabulary: Vocabulary) -> None:
    """Words that are no stitches are the rest of it."""
    answer = check_text("Cast on 10 sts\nusing the larger needles.\nRow 1: K10.", vocabulary)
    assert (answer["cast_on"], [row["label"] for row in answer["rows"]]) == (10, ["1"])


@pytest.mark.parametrize(
    "text",
    [
        "CO 60 sts. Knit every row until square. BO.",
        "Cast on 60 sts.\nWork in garter stitch until square.\nBind off all 60 sts.",
        "- cast on 60\n- moss st for 70 cm\n- bind off",
        "Cast on 60 sts, knit to the end of each row, bind off.",
        "Cast on 60 sts. Knit all rows until it measures 75 cm.",
    ],
)
def test_one_row_worked_over_and_over_is_a_pattern(text: str, vocabulary: Vocabulary) -> None:
    """A blanket of one fabric says no row but the one that every row is."""
    answer = check_text(text, vocabulary)
    assert [(row["label"], row["before"], row["after"]) for row in answer["rows"]] == [("every", 60, 60)]
    assert answer["findings"] == []


def test_a_fabric_named_among_rows_is_no_row(vocabulary: Vocabulary) -> None:
    """Where a text says rows, a sentence on how long to go on with them lists none."""
    answer = check_text("Cast on 60 sts.\nRow 1: K60.\nWork in garter stitch until 5 cm.\nRow 2: P60.", vocabulary)
    assert [row["label"] for row in answer["rows"]] == ["1", "2"]


@pytest.mark.parametrize(
    ("end", "counts"),
    [
        ("Bind off 61 sts.", [61]),
        ("Bind off 60 sts.", []),
        ("Bind off 59 sts, fasten off.", []),
        ("BO all 59 sts.", [59]),
    ],
)
def test_no_more_are_bound_off_than_there_are(end: str, counts: list[int], vocabulary: Vocabulary) -> None:
    """The last bind-off may leave stitches, but not take more than are on the needle."""
    found = check_text(f"Cast on 60 sts.\nKnit every row until square.\n{end}", vocabulary)["findings"]
    said = [f"The end says {count} stitches, and 60 are on the needle." for count in counts]
    assert [finding["message"] for finding in found] == said


def test_a_row_may_be_led_by_the_name_of_its_part(vocabulary: Vocabulary) -> None:
    """Stitches behind words such as "Seed stitch border:" are a row as those behind "Border:" are."""
    text = "Cast on 9 sts.\nSeed stitch border: *K1, p1; rep from * to last st, k1.\nRow 1: Knit."
    assert [row.label for row in read_text(text, vocabulary).rows] == ["next", "1"]


def test_stitches_after_an_order_are_a_row_of_their_own(vocabulary: Vocabulary) -> None:
    """A sentence that begins with stitches is no part of the order before it."""
    answer = check_text("Cast on 100 sts. K 1 row. P 1 row. K2tog across. (50 sts)", vocabulary)
    assert [row["after"] for row in answer["rows"]] == [100, 100, 50]


@pytest.mark.parametrize("bullet", ["\u2726", "\u2192", "\U0001f9f6", "\u2714\ufe0f", "\u2022"])
def test_any_sign_may_be_a_bullet(bullet: str, vocabulary: Vocabulary) -> None:
    """A list may be led by stars, arrows or pictures."""
    answer = check_text(f"{bullet} Row 1 - k4\n{bullet} Row 2 - p4", vocabulary)
    assert [(row["label"], row["after"]) for row in answer["rows"]] == [("1", 4), ("2", 4)]


def test_a_label_with_a_colon_ends_the_row_before_it(vocabulary: Vocabulary) -> None:
    """A row that breaks off at "rep" is not gone on with by the next row, while one broken at "as" names it."""
    assert [row.label for row in read_text("Row 1: K4; P4; rep\nRow 2: same", vocabulary).rows] == ["1", "2"]
    assert len(read_text("Row 1: Knit\nRow 2: as\nrow 1", vocabulary).rows) == 2


def test_prose_between_rows_is_no_row(vocabulary: Vocabulary) -> None:
    """Sentences without a label are left alone."""
    text = "Row 1: Knit.\n\nThe work now measures about two inches.\n\nRow 2: Purl."
    assert (len(check_text(text, vocabulary)["rows"]), check_text(text, vocabulary)["findings"]) == (2, [])


def test_a_label_nearly_right_is_named(vocabulary: Vocabulary) -> None:
    """A row is not lost because its label is misspelt."""
    found = check_text("Row 1: Knit.\n\nRwo 2: Purl.", vocabulary)["findings"]
    assert [(finding["rule"], finding["line"], finding["column"]) for finding in found] == [("unknown-term", 3, 1)]


@pytest.mark.parametrize(
    ("text", "whole"),
    [
        ("Row 1: K2, p2.", False),
        ("(multiple of 4)\nRow 1: K2, p2.", True),
        ("Row 1: K2, p2, repeat.", True),
        ("Row 1: K2, p2 to end.", True),
        ("Row 1: K2, k to end.", False),
    ],
)
def test_a_row_without_a_star_is_fixed_unless_the_text_says_otherwise(
    text: str, whole: bool, vocabulary: Vocabulary
) -> None:
    """The whole list is the repeat under a stated multiple or before "repeat" and "to end", and that is noted."""
    answer = check_text(text, vocabulary)
    assert ("repeat-assumed" in [finding["rule"] for finding in answer["findings"]]) is whole

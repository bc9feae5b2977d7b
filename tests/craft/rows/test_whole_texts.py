"""What people put around their rows: labels of every kind, orders, ends, page marks, lists, and words between rows."""

from __future__ import annotations

import pytest

from counterpane.craft.rows.instructions import AgainStep, EndStep, StartStep, read_text
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

from .listed import labels


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("1st row.—Plain.\n2nd row.—Purl.", "1 2"),
        ("1st needle: knit.\n2nd needle: purl.", "1 2"),
        ("Row 1: Knit.\nNext turn, purl.", "1 next next"),
        ("1st turn: knit.", "1 2"),
        ("Row I: Knit.\nRow II: Purl.\nRow IV: Purl.", "1 2 4"),
        ("Row A: Knit.\nRow B: Purl.", "a b"),
        ("Row 1a: Knit.\nRow 1b: Purl.", "1a 1b"),
        ("Setup row 1: Knit.\nRow 1: Purl.", "1 1"),
        ("Rib row 1: (RS) Knit.\nRibbing row 2: Purl.\nMoss row 3: Knit.", "1 2 3"),
        ("Foundation row: Knit.\nDec row (RS): K2tog, k to end.", "foundation dec"),
        ("R1: Knit.\nR. 2: Purl.", "1 2"),
        ("R1: k all\nR2: p all\nR3-R6: Rep R1-R2", "1 2 3 4 5 6"),
        ("R1, R3 & R5 (RS): Knit.\nR2, 4, 6: Purl.", "1 2 3 4 5 6"),
        ("R1: Knit.\nR2 and all WS rows: Purl.\nR3: Knit.\nR5: as R1", "1 2 3 4 5 6"),
        ("Row 1: k all\nRow 2: p all", "1 2"),
        ("1st row: Knit.\n2d row: Purl.\n3d row: Same as first.", "1 2 3"),
        ("1st.--Knit.\n2nd.--Purl.", "1 2"),
        ("Row 1: Knit.\nRow 2 and following alternate rows: Purl.\nRow 3: Knit.", "1 2 3 4"),
        ("Row 1: Knit.\nRow 2: Purl.\nRow 3 - 6: repeat row 1 and 2, twice", "1 2 3 4 5 6"),
        ("Row 1: Knit.\nEvery alternate row: Purl.\nRow 3: Knit.", "1 2 3 4"),
        ("Every row: Knit.", "every"),
        ("1st and every alt row: Knit.\n2nd row: Purl.\n4th row: Purl.", "1 2 3 4"),
        ("Row 1: Knit.\nThe 2nd row is purled.", "1 2"),
        ("| Row | Words |\n|---|---|\n| 1 | Knit |\n| 2 | Purl |", "1 2"),
        ("| Row | Words |\n|---|---|\n| 1 (RS) | Knit |\n| 2 WS | Purl |\n| 3 | As row 1 |", "1 2 3"),
        ("*Row 1:* Knit.\n__Row 2:__ Purl.", "1 2"),
        ("☐ Row 1: Knit.\n• Row 2: Purl.\n3. Row 3: Knit.", "1 2 3"),
        ("Row １２：Knit.", "12"),
        ("Row 2 and all\nWS rows: Purl.\nRow 1: Knit.", "1 2"),
        ("DECREASE ROWS\nRow 1: Knit.\nRow 2: Purl.", "1 2"),
        ("Row 1: Knit.\nRow 2: Purl.\nRows 3-6: same", "1 2 3 4 5 6"),
        ("Row 1—A: Knit.\nRows 2 & 3—MC: Purl.", "1 2 3"),
    ],
)  # fmt: skip
def test_rows_have_labels_of_many_kinds(text: str, wanted: str, vocabulary: Vocabulary) -> None:
    """Each label is known, and none of its lines has a fault."""
    read = read_text(text, vocabulary)
    assert (labels(text, vocabulary), read.faults) == (wanted, ())


@pytest.mark.parametrize(
    ("order", "rows"),
    [
        ("Knit 6 rows.", 6),
        ("K 3 rows, ending with a WS row.", 3),
        ("Knit 9 rows, noting that the first row is WS.", 9),
        ("Knit two rows plain.", 2),
        ("Three plain rows.", 3),
        ("Knit a turn plain.", 2),
        ("Purl one round.", 1),
        ("Work 8 rows in garter stitch.", 8),
        ("Work in rib for 4 rows.", 4),
        ("Work the next two rows in pattern.", 2),
        ("Beg with a k row, work 10 rows in St st.", 10),
        ("With A, knit 4 rows.", 4),
        ("Garter border: Knit 8 rows.", 8),
        ("Start the body: K5, p30, k5.", 1),
        ("Bind off 3 sts at the beginning of the next 2 rows.", 2),
        ("Work 4 rows of plain knitting.", 4),
        ("Work 6 rows in g-st.", 6),
        ("Work 6 rows in st.st. as before.", 6),
        ("Work 6 rows in moss st as follows:", 0),
        ("Work in k2, p2 rib for 10 rows as follows:", 0),
        ("K2tog, break the yarn and pull through.", 1),
    ],
)
def test_an_order_without_a_label_lists_its_rows(order: str, rows: int, vocabulary: Vocabulary) -> None:
    """As many rows are listed as the order says, and each can be read."""
    read = read_text(f"Cast on 40 sts.\nRow 1: Knit.\n{order}", vocabulary)
    assert (len(read.rows) - 1, read.faults) == (rows, ())


@pytest.mark.parametrize(
    ("words", "lender"),
    [
        ("as row 1", 0), ("As 1st row.", 0), ("the same", 1), ("Same as the 1st.", 0), ("Repeat Row 1.", 0),
        ("with A, as row 1", 0), ("same", 1), ("as row 1, but with B in place of A", 0),
        ("as the last row", 1), ("Work as row 2.", 1), ("is the same as row 1", 0), ("like the 2nd", 1),
    ],
)  # fmt: skip
def test_a_row_may_name_another_in_many_words(words: str, lender: int, vocabulary: Vocabulary) -> None:
    """The third row has the words of the row it names, or of the one before it."""
    rows = read_text(f"Row 1: K2, p2.\nRow 2: P2, k2.\nRow 3 {words}", vocabulary).rows
    assert rows[2].parts == rows[lender].parts


@pytest.mark.parametrize(
    ("line", "rows", "passes"),
    [
        ("Repeat from the first row.", (0, 1, 2, 3), None),
        ("Repeat the first row once more.", (0,), 1),
        ("Work the last 2 rows 3 times more.", (2, 3), 3),
        ("Repeat from row 2 to row 3 twice more.", (1, 2), 2),
        ("Repeat the first 2 rows 4 times more.", (0, 1), 4),
        ("Repeat the 4-row pattern 5 times more.", (0, 1, 2, 3), 5),
        ("These 4 rows form the pattern.", (0, 1, 2, 3), None),
        ("Rep rows I-II once more.", (0, 1), 1),
        ("Rep rows 1-2 to 30 in.", (0, 1), None),
        ('Rep rows 1-2 to 30".', (0, 1), None),
    ],
)
def test_a_repeat_line_names_its_rows_in_many_ways(
    line: str, rows: tuple[int, ...], passes: int | None, vocabulary: Vocabulary
) -> None:
    """By number, by place in the section, or all of them."""
    text = "Row 1: Knit.\nRow 2: Purl.\nRow 3: Knit.\nRow 4: Purl."
    again = next(s for s in read_text(f"{text}\n{line}", vocabulary).steps if isinstance(s, AgainStep))
    assert (again.rows, again.again.passes) == (rows, passes)


def test_rows_that_are_the_same_go_through_all_rows_before_them(vocabulary: Vocabulary) -> None:
    """Six rows after two go through both three times."""
    rows = read_text("Row 1: K2, p2.\nRow 2: P2, k2.\nRows 3-8: same", vocabulary).rows
    assert [row.parts for row in rows[2:]] == [rows[0].parts, rows[1].parts] * 3


def test_a_place_that_nobody_can_count_to_is_named(vocabulary: Vocabulary) -> None:
    """The middle stitch has no marker; the finding quotes where the row should stop."""
    answer = check_text("Cast on 9 sts.\nRow 1: K to 1 st before the middle st, yo, k to end.", vocabulary)
    assert "“to 1 st before the middle st”" in answer["findings"][0]["message"]


def test_a_change_in_words_is_said_to_be_one(vocabulary: Vocabulary) -> None:
    """What a row does otherwise than the one it names is not guessed."""
    answer = check_text("Cast on 4 sts.\nRow 1: K2, p2.\nRow 2: As row 1, but purl the first st.", vocabulary)
    assert ["out in full" in found["hint"] for found in answer["findings"] if found["severity"] == "error"] == [True]


@pytest.mark.parametrize(
    ("order", "before"),
    [
        ("Rep row 1 to 9 sts.", 9),
        ("Cont in this way, dec 1 st at each end of every RS row, until 7 sts remain.", 7),
        ("Slip the sts from both holders to one needle (30 sts).", 30),
        ("Rotate work 90° and pick up and knit 6 sts along the side, then 3 sts from the cast-on edge. (12 sts)", 12),
    ],
)
def test_the_number_that_a_line_tells_is_that_of_the_next_row(order: str, before: int, vocabulary: Vocabulary) -> None:
    """Stitches to stop at, from holders, and picked up round a corner."""
    answer = check_text(f"Cast on 21 sts.\nRow 1: K1, k2tog, k to end.\n{order}\nNext row: Knit.", vocabulary)
    assert (answer["rows"][-1]["before"], [f for f in answer["findings"] if f["severity"] == "error"]) == (before, [])


def test_a_repeat_line_may_name_the_rows_of_a_section(vocabulary: Vocabulary) -> None:
    """Row 1 of the border is meant, though the lace has a row 1 as well."""
    rows = "Cast on 8 sts.\nBorder\nRow 1: Knit.\nLace\nRow 1: *K2tog, yo; rep from * to end."
    text = f"{rows}\nWork row 1 of border twice more."
    assert [step.rows for step in read_text(text, vocabulary).steps if isinstance(step, AgainStep)] == [(0,)]


@pytest.mark.parametrize(
    ("line", "rule"),
    [
        ("The 3rd to 6th rows are knitted in the same manner, only wider.", "unknown-term"),
        ("Row 3: as row 9.", "unknown-row"),
        ("K2, zork, p2", "unknown-term"),
    ],
)
def test_a_row_that_cannot_be_worked_out_is_not_dropped(line: str, rule: str, vocabulary: Vocabulary) -> None:
    """It is listed without a count, and a finding stands on its line."""
    answer = check_text(f"Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\n{line}\nRow 7: Knit.", vocabulary)
    assert [(found["rule"], found["line"]) for found in answer["findings"] if found["severity"] == "error"][:1] == [
        (rule, 4)
    ]
    assert answer["rows"][2]["after"] is None


@pytest.mark.parametrize(
    "prose",
    [
        "k2tog: knit 2 sts together",
        "ssk = slip, slip, knit the two together",
        "Row 2 is a right side row.",
        "Your work should measure about 4 inches by now.",
        "Knit your gauge swatch first, and wash it.",
        "Cast-off edges look best when loose.",
        "14",
        "Page 3 of 12",
        "© Somebody, 2020",
        "www.example.com/blankets",
    ],
)
def test_words_between_rows_are_no_rows(prose: str, vocabulary: Vocabulary) -> None:
    """Neither is a row made of them, nor is the row before them broken."""
    text = f"Cast on 4 sts.\nRow 1: K2, p2.\n\n{prose}\n\nRow 2: K2, p2."
    answer = check_text(text, vocabulary)
    assert [(row["label"], row["after"]) for row in answer["rows"]] == [("1", 4), ("2", 4)]
    assert [found for found in answer["findings"] if found["severity"] == "error"] == []


def test_a_page_may_end_in_the_middle_of_a_row(vocabulary: Vocabulary) -> None:
    """Page number and running head are no words of the row; a word cut by a hyphen is whole."""
    text = (
        "THE BOOK 13\nCast on 6 sts.\nRow 1: K1, *p1; re-\npeat from *\n14\n\nTHE BOOK\nto last st, k1.\nRow 2: Knit."
    )
    answer = check_text(text, vocabulary)
    assert [(row["label"], row["line"], row["after"]) for row in answer["rows"]] == [("1", 3, 6), ("2", 9, 6)]


@pytest.mark.parametrize(
    ("sentence", "fits"),
    [("You should have 9 stitches.", 1), ("There will be 10 stitches", 0), ("(9 sts)", 1), ("Stitch count: 10", 0)],
)
def test_a_count_may_stand_in_a_sentence_of_its_own(sentence: str, fits: int, vocabulary: Vocabulary) -> None:
    """It is the count of the row before it, and checked as such."""
    answer = check_text(f"Cast on 10 sts.\nRow 1: K2tog, k to end.\n\n{sentence}\n\nRow 2: Knit.", vocabulary)
    wrong = [found["line"] for found in answer["findings"] if found["rule"] == "stated-count-wrong"]
    assert wrong == ([] if fits else [4])


def test_pieces_begin_and_end(vocabulary: Vocabulary) -> None:
    """A bind-off ends a piece; a pick-up along several edges begins one with their sum."""
    edge = "Pick up and knit 40 sts along the top and 30 sts along the side."
    text = f"Cast on 4 sts.\nRow 1: Knit.\nCast off.\n{edge}\nRow 1: Knit."
    steps = read_text(text, vocabulary).steps
    assert [type(step) for step in steps if isinstance(step, EndStep | StartStep)] == [EndStep, StartStep]
    assert check_text(text, vocabulary)["rows"][-1]["after"] == 70


def test_a_row_with_a_name_is_worked_again_until_a_count(vocabulary: Vocabulary) -> None:
    """The rows between change no count, so that the number to stop at is reached and is no count of one row."""
    text = "Cast on 9 sts.\nIncrease row: K1, m1, k to last st, m1, k1.\n"
    text += "Repeat the increase row every other row until you have 29 stitches.\nKnit one row even."
    answer = check_text(text, vocabulary)
    assert [(row["label"], row["before"]) for row in answer["rows"]] == [("increase", 9), ("next", 29)]
    assert [found for found in answer["findings"] if found["severity"] == "error"] == []


RIBBED = "Cast on 120 sts.\nRow 1: *K2, p2; rep from * to end.\n"


@pytest.mark.parametrize(
    ("line", "after", "wrong"),
    [
        ("Rep row 1 15 times more, inc 1 st in centre of last row.", 121, 0),
        ("Rep row 1 until work measures 5 cm, dec 1 st at each end of last row. (118 sts)", 118, 0),
        ("Rep row 1 until work measures 5 cm, dec 1 st at each end of last row. (119 sts)", 118, 1),
        ("Rep row 1 three times, increasing 6 sts evenly across the last row - 126 sts.", 126, 0),
        ("Rep row 1, increasing 1 st at each end of every 4th row until there are 140 sts.", 140, 0),
        ("Rep row 1, increasing 1 st at each end of every 4th row.", None, 0),
        ("Rep row 1 until work measures 5 inches.", 120, 0),
    ],
)
def test_a_repeat_line_may_change_the_count_in_its_last_row(
    line: str, after: int | None, wrong: int, vocabulary: Vocabulary
) -> None:
    """What is added is followed, and the count behind it checked; what cannot be told leaves the count unknown."""
    answer = check_text(f"{RIBBED}{line}\nNext row: Knit.", vocabulary)
    assert [row["before"] for row in answer["rows"]] == [120, after]
    assert sum(found["severity"] == "error" for found in answer["findings"]) == wrong


def test_the_number_to_stop_at_is_known_where_the_number_before_is_not(vocabulary: Vocabulary) -> None:
    """A corner-to-corner blanket grows to a length that nobody can count, and shrinks to a number that is told."""
    text = "Cast on 4 sts.\nRow 1: K2, yo, k to end.\nRep row 1 until the side measures 80 cm.\n"
    text += "Row 2: K1, k2tog, yo, k2tog, k to end.\nRep row 2 until 8 sts remain.\nRow 3: Knit."
    answer = check_text(text, vocabulary)
    assert [row["before"] for row in answer["rows"]] == [4, None, 8]
    assert not [found for found in answer["findings"] if found["severity"] == "error"]


@pytest.mark.parametrize(
    "row",
    [
        "K1, k2tog, k to end, keeping 5 sts at each edge in garter stitch.",
        "K1, k2tog, k to end. Note: the yarn-overs (yo) begin in row 3.",
        "K1, k2tog, k to end, ending with a WS row.",
        "K1, k2tog, k to end, removing markers on the first row.",
        "K1, k2tog, k to end, placing a marker after the 5th st and before the last 5 sts.",
        "K1, k2tog, k to end, working the remaining wraps together with their sts.",
        "K1, k2tog, k to end, do not turn.",
        "K1, k2tog, work to last 5 sts in pattern, seed 5.",
    ],
)
def test_what_a_row_tells_to_look_after_is_no_stitch(row: str, vocabulary: Vocabulary) -> None:
    """Notes, edges that are kept and sides to end on change no count."""
    answer = check_text(
        f"Cast on 20 sts.\nWork 2 rows in st st, keeping 5 sts each side in garter st.\nNext row: {row}", vocabulary
    )
    assert [row["after"] for row in answer["rows"]] == [20, 20, 19]

"""What people type in a hurry: rows behind a heading or without a colon, and sentences beside them."""

from __future__ import annotations

import pytest

from counterpane.craft.rows.instructions import AgainStep, read_text
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

from .listed import labels


@pytest.mark.parametrize("sign", ["\n", " "])
@pytest.mark.parametrize(
    "words",
    [
        "Work 6 rows.", "Work 6 more rows.", "Work 6 rows in this way.", "Now work 5 more rows like this.",
        "Continue for 6 rows.", "Repeat for 10 rows.", "Rep for 6 more rows.", "Work 6 rows in all.",
        "Cont in this way for 6 rows.", "And work another six rows.",
    ],
)  # fmt: skip
def test_how_many_rows_there_are_belongs_to_no_row(words: str, sign: str, vocabulary: Vocabulary) -> None:
    """A sentence that counts the rows is no word of the row before it, on whose line it may stand."""
    read = read_text(f"Cast on 20 sts.\nRow 1: *K2, p2; rep from * to end.{sign}{words}\nRow 7: Purl.", vocabulary)
    assert (labels(f"Row 1: Knit.{sign}{words}\nRow 7: Purl.", vocabulary), read.faults) == ("1 7", ())
    again = next(step.again for step in read.steps if isinstance(step, AgainStep))
    assert (again.loose, again.passes) == (True, None)


def test_an_order_for_rows_of_a_fabric_is_an_order_still(vocabulary: Vocabulary) -> None:
    """Where a fabric is named the rows are worked."""
    assert labels("Row 1: Knit. Work 2 rows in garter st.", vocabulary) == "1 next next"


def test_a_word_that_joins_nothing_is_told_as_it_stands(vocabulary: Vocabulary) -> None:
    """The word that was printed is named, not another form of it."""
    faults = read_text("Row 3: Alternate a knit and a purl.", vocabulary).faults
    assert sorted((fault.word, fault.place.column) for fault in faults) == [("a", 18), ("alternate", 8)]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Moss stitch border: Row 1: *K1, P1* to last st, K1. Repeat this row 9 more times.", "1"),
        ("Body: Rows 1-2: Knit.\nBorder: R3: Purl.", "1 2 3"),
        ("Cast on 60 sts.\nNext: K1, k2tog, k to end.\nNext: Purl.", "next next"),
        ("CO 60. R1 k2 p2 across. R2 same. BO", "1 2"),
        ("R2 k3, p to end\nR3 (RS) knit.", "2 3"),
        ("C/O 30 st. Row 1- k. Row 2- p. Rep until 20cm. B/O.", "1 2"),
    ],
)  # fmt: skip
def test_a_label_behind_a_heading_and_a_short_one_lose_no_row(text: str, wanted: str, vocabulary: Vocabulary) -> None:
    """What people type in one line is read as what they print on several."""
    read = read_text(text, vocabulary)
    assert (labels(text, vocabulary), read.faults) == (wanted, ())


@pytest.mark.parametrize("sign", ["\n", " "])
@pytest.mark.parametrize(
    "words",
    ["Rep until piece measures 20 cm.", "Repeat until it is square.", "Rep until 20 cm.", "Repeat until desired size."],
)  # fmt: skip
def test_a_call_for_all_that_was_said_belongs_to_no_row(words: str, sign: str, vocabulary: Vocabulary) -> None:
    """All rows are worked again; the last of them has no word more."""
    read = read_text(f"Cast on 20 sts.\nRow 1: Knit.\nRow 2: Purl.{sign}{words}", vocabulary)
    again = next(step for step in read.steps if isinstance(step, AgainStep))
    assert (read.faults, again.rows, again.again.loose) == ((), (0, 1), True)


@pytest.mark.parametrize(("words", "remain"), [("Repeat until 4 sts remain.", 4), ("Rep until there are 60 sts.", 60)])
def test_a_call_for_all_that_was_said_goes_on_to_a_count(words: str, remain: int, vocabulary: Vocabulary) -> None:
    """What is on the needle then is what it says."""
    read = read_text(f"Row 1: K1, yo, k to end. {words}", vocabulary)
    assert [step.again.remain for step in read.steps if isinstance(step, AgainStep)] == [remain]
    assert read_text("Row 1: K2, rep until 3 sts remain, k3.", vocabulary).rows[0].readable


@pytest.mark.parametrize(
    "told",
    ["2 sts decreased.", "(2 sts decreased)", "-- 2 sts decreased.", "; 2 sts dec'd.", "2 stitches increased."],
)  # fmt: skip
def test_a_change_that_is_told_behind_a_row_is_no_word_of_it(told: str, vocabulary: Vocabulary) -> None:
    """It tells what the stitches have done, with or without brackets; a count may follow."""
    row = "Row 1: Ssk, k to last 2 sts, k2tog"
    dot = "" if told[0] in "-;" else "."
    assert read_text(f"{row}. 2 sts dec.", vocabulary).faults == ()
    for text, stated in ((f"{row}{dot} {told}", None), (f"{row}{dot} {told} 18 sts.", 18)):
        read = read_text(text, vocabulary)
        assert (read.faults, read.rows[0].stated) == ((), stated)


@pytest.mark.parametrize(
    "line",
    [
        "Dec: K1, k2tog, k to end.", "Decrease: knit 1, knit 2 together, knit to end",
        "Increasing: k1, m1, k2, yo, k6", "Set up: k3, pm, k6.", "Foundation: purl.",
    ],
)  # fmt: skip
def test_a_line_headed_by_its_shaping_is_a_row(line: str, vocabulary: Vocabulary) -> None:
    """Stitches behind such a head are worked, and not passed over in silence."""
    read = read_text(f"Cast on 9 sts.\nRow 1: Knit.\n{line}\nRow 3: Purl.", vocabulary)
    assert ([row.label for row in read.rows], read.faults) == (["1", "next", "3"], ())


def test_a_list_of_abbreviations_heads_no_rows(vocabulary: Vocabulary) -> None:
    """Where the same words explain, nothing is worked."""
    text = "Abbreviations\nInc: knit into front and back\nDec: k2tog\nk: knit\n\nCast on 4 sts.\nRow 1: K2, k2tog."
    assert labels(text, vocabulary) == "1"


@pytest.mark.parametrize(
    ("words", "after"),
    [
        ("kfb in next 3 sts", 8), ("kfb into each of next 3 sts", 8), ("inc in next 3 sts", 8),
        ("kfb in the next 3 sts", 8), ("inc in each of the following 3 sts", 8),
    ],
)  # fmt: skip
def test_a_stitch_in_so_many_is_worked_so_often(words: str, after: int, vocabulary: Vocabulary) -> None:
    """Three increases are worked, each in a stitch of its own."""
    assert check_text(f"Cast on 5 sts.\nRow 1: K1, {words}, k1.", vocabulary)["rows"][0]["after"] == after


def test_several_stitches_in_so_many_are_not_guessed(vocabulary: Vocabulary) -> None:
    """Three stitches in each of two may be six or three: the words are told as unknown."""
    assert not read_text("Row 1: K1, k3 in each of next 2 sts, k1.", vocabulary).rows[0].readable

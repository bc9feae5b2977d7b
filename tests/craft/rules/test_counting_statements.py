"""What is said of printed numbers: counts behind rows, the cast-on, what later pieces begin with, and the multiple."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine
from counterpane.craft.findings import Finding
from counterpane.craft.rules import judge_text
from counterpane.craft.stitches import Vocabulary

COUNT, WRONG, WASTEFUL = "stated-count-wrong", "stated-multiple-wrong", "stated-multiple-wasteful"
MISPRINTED = "The cast-on of {} may be what is misprinted: with another, all rows and counts agree."
FOUND = [
    (
        "Cast on 14 sts (multiple of 12).\nRow 1: *K4, p2; rep from * to end.",
        Finding(
            COUNT,
            "warning",
            "The cast-on of 14 is not in the stated multiple of 12.",
            "Cast on 12 or 24.",
            1,
            9,
            corrections=("Cast on 12 sts (multiple of 12).", "Cast on 24 sts (multiple of 12)."),
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: K2tog, k to end.\nBind off the remaining 12 sts.",
        Finding(
            COUNT,
            "error",
            "The end says 12 stitches, and 9 are on the needle.",
            "Print 9, or change the rows by 3 stitches.",
            3,
            24,
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: Knit. (11 sts)\nRow 2: K8.",
        Finding(
            COUNT,
            "warning",
            "Row 1 says 11 stitches and leaves 10.",
            "Print 10, or change the row by 1 stitch.",
            2,
            15,
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: K1, yo, k to end. (12 sts)",
        Finding(
            COUNT,
            "error",
            "Row 1 says 12 stitches and leaves 11.",
            "Print 11, or change the row by 1 stitch.",
            2,
            27,
            corrections=(
                "Row 1: K1, yo, k to end. (11 sts)",
                "Row 1: K1, yo, yo, k to end. (12 sts)",
                "Row 1: Yo, k1, yo, k to end. (12 sts)",
                "Row 1: K1, yo twice, k to end. (12 sts)",
            ),
        ),
    ),
    (
        "Cast on 21 sts.\nRow 1: Knit. (24 sts)\nRow 2: Knit. (24 sts)",
        Finding(COUNT, "warning", MISPRINTED.format(21), "Cast on 24.", 1, 9, corrections=("Cast on 24 sts.",)),
    ),
    (
        "Multiple of 2 sts.\nCast on 20 sts.\nRow 1: Knit. (24 sts)\nRow 2: Knit. (24 sts)",
        Finding(COUNT, "warning", MISPRINTED.format(20), "Cast on 24.", 2, 9, corrections=("Cast on 24 sts.",)),
    ),
    (
        "Cast on 14 sts (multiple of 4 sts plus 1).\nRow 1: *K4; rep from * to last st, k1.",
        Finding(
            COUNT,
            "warning",
            "The cast-on of 14 is not in the stated multiple of 4 plus 1.",
            "Cast on 13 or 17.",
            1,
            9,
            corrections=("Cast on 13 sts (multiple of 4 sts plus 1).", "Cast on 17 sts (multiple of 4 sts plus 1)."),
        ),
    ),
    (
        "Multiple of 4 sts plus 1.\nCast on 14 sts.\nRow 1: Knit.",
        Finding(
            COUNT,
            "error",
            "The cast-on of 14 is not in the stated multiple of 4 plus 1.",
            "Cast on 13 or 17.",
            2,
            9,
            corrections=("Cast on 13 sts.", "Cast on 17 sts."),
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: Knit.\nBind off.\nPick up and knit 30 sts.\nRow 2: *K4, p4; rep from * to end.\n"
        "Row 3: *K4, p4; rep from * to end.",
        Finding(
            COUNT,
            "warning",
            "A piece begins with 30 stitches here, and its rows agree on another count.",
            "Begin it with 24 or 32.",
            4,
            18,
            corrections=("Pick up and knit 24 sts.", "Pick up and knit 32 sts."),
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: Knit.\nBind off.\nPick up and knit 30 sts.\nRow 2: Knit. (32 sts)\n"
        "Row 3: *K4, p4; rep from * to end. (32 sts)\nRow 4: *K4, p4; rep from * to end. (32 sts)",
        Finding(
            COUNT,
            "warning",
            "A piece begins with 30 stitches here, and its rows agree on another count.",
            "Begin it with 32.",
            4,
            18,
            corrections=("Pick up and knit 32 sts.",),
        ),
    ),
    (
        "(multiple of 12 sts)\nRow 1: *K6; rep from * to end.",
        Finding(
            WASTEFUL,
            "warning",
            "The stated multiple of 12 works, but the rows take a multiple of 6 stitches, at least 6.",
            "Print a multiple of 6 stitches, at least 6.",
            1,
            2,
            corrections=("(multiple of 6 sts)",),
        ),
    ),
    (
        "(multiple of 5 sts)\nRow 1: *K12; rep from * to end.",
        Finding(
            WRONG,
            "error",
            "The text promises a multiple of 5, but its rows take a multiple of 12 stitches, at least 12.",
            "Print a multiple of 12 stitches, at least 12.",
            1,
            2,
            corrections=("(multiple of 12 sts)",),
        ),
    ),
    (
        "(multiple of 4 sts plus 1)\nCast on 10 sts.\nRow 1: *K8; rep from * to end.",
        Finding(
            WRONG,
            "warning",
            "The text promises a multiple of 4 plus 1, but its rows take a multiple of 8 stitches, at least 8.",
            "Print a multiple of 8 stitches, at least 8.",
            1,
            2,
            corrections=("(multiple of 8 sts)",),
        ),
    ),
    (
        "(multiple of 8 sts)\nRow 1: K4, *k1, psso, psso; rep from * to end.",
        Finding(
            WRONG,
            "error",
            "The text promises a multiple of 8, but its rows take 5, 6 or 7 stitches and no other count.",
            "Print 5, 6 or 7 stitches and no other count.",
            1,
            2,
        ),
    ),
]


@pytest.mark.parametrize(("text", "found"), FOUND)
def test_a_printed_number_is_held_against_the_rows(text: str, found: Finding, vocabulary: Vocabulary) -> None:
    """What is printed, what is true, what to print, and the line as it then reads."""
    assert found in judge_text(examine(text, vocabulary))


@pytest.mark.parametrize(
    ("text", "rules"),
    [
        ("(multiple of 12 sts)\nRow 1: *K6; rep from * to end.\nRow 2: Frobnicate.", ["unknown-term"]),
        ("(multiple of 4 sts plus 1)\nRow 1: *K6; rep from * to end.\nRow 2: Frobnicate.", ["unknown-term"]),
        ("(multiple of 4 sts)\nRow 1: *K3; rep from * to last 5 sts, k4.", ["row-leaves-stitches"]),
        (
            "(multiple of 26 sts)\nRow 1: *K13; rep from * to end.\nRow 2: *K11; rep from * to end.\n"
            "Row 3: *P13; rep from * to end.",
            ["row-repeat-differs"],
        ),
        (
            "(multiple of 4 sts)\nCast on 12 sts.\nRow 1: *K4; rep from * to end.\nRow 2: *K5; rep from * to end.",
            ["repeat-does-not-fit"],
        ),
        (
            "(multiple of 12 sts)\nRow 1: *K6; rep from * to end.\nBind off.\nCast on 24 sts.\n"
            "Row 2: *K12; rep from * to end.",
            [],
        ),
        (
            "(multiple of 4 sts plus 1)\nRow 1: *K6; rep from * to end.\nBind off.\nCast on 25 sts.\n"
            "Row 2: *K4; rep from * to last st, k1.",
            [],
        ),
    ],
)
def test_a_multiple_is_judged_only_by_all_rows_of_its_piece_as_they_are_meant(
    text: str, rules: list[str], vocabulary: Vocabulary
) -> None:
    """A row unread may need what is promised, one put right may give it, and a later cast-on has its own."""
    assert [found.rule for found in judge_text(examine(text, vocabulary))] == rules


@pytest.mark.parametrize(
    ("text", "rule", "corrections"),
    [
        (
            "Cast on 21 sts. Row 1: Knit. (24 sts)\nRow 2: Knit. (24 sts)",
            COUNT,
            ("Cast on 24 sts. Row 1: Knit. (24 sts)",),
        ),
        (
            "Cast on 10 sts.\nRow 1: Knit.\nBind off.\n"
            "Pick up and knit 30 sts. Row 2: *Yo, k3tog, yo, k5; rep from * to end.",
            COUNT,
            (
                "Pick up and knit 24 sts. Row 2: *Yo, k3tog, yo, k5; rep from * to end.",
                "Pick up and knit 32 sts. Row 2: *Yo, k3tog, yo, k5; rep from * to end.",
            ),
        ),
        ("(multiple of 12 sts) Row 1: *K6; rep from * to end. (13 sts)", WASTEFUL, ()),
        (
            "Cast on 30 sts (multiple of 5 sts). Row 1: *K6; rep from * to end. (31 sts)",
            WRONG,
            ("Cast on 30 sts (multiple of 6 sts). Row 1: *K6; rep from * to end. (31 sts)",),
        ),
    ],
)
def test_of_a_line_with_two_numbers_the_one_in_question_is_corrected(
    text: str, rule: str, corrections: tuple[str, ...], vocabulary: Vocabulary
) -> None:
    """What would put the other right is told by the finding about that."""
    found = [each for each in judge_text(examine(text, vocabulary)) if each.rule == rule]
    assert found[-1].corrections == corrections


@pytest.mark.parametrize("between", ["\n", " "])
def test_a_row_that_is_likelier_wrong_is_corrected_and_not_what_its_piece_begins_with(
    between: str, vocabulary: Vocabulary
) -> None:
    """Two stitches at the end of the row are likelier left out than miscounted, on the same line as on the next."""
    text = f"Cast on 10 sts.\nRow 1: Knit.\nBind off.\nPick up and knit 30 sts.{between}Row 2: *K4; rep from * to end."
    assert [found.rule for found in judge_text(examine(text, vocabulary))] == ["repeat-does-not-fit"]


def test_a_row_before_a_piece_says_nothing_of_what_it_begins_with(vocabulary: Vocabulary) -> None:
    """Row 1 is wrong by itself; the two rows behind the pick-up agree with each other."""
    rows = "Row 2: *K4, p4; rep from * to end.\nRow 3: *K4, p4; rep from * to end."
    text = f"Cast on 10 sts.\nRow 1: K11.\nBind off.\nPick up and knit 30 sts.\n{rows}"
    assert (COUNT, 4) in [(found.rule, found.line) for found in judge_text(examine(text, vocabulary))]


def test_of_two_later_pieces_the_one_whose_rows_disagree_is_named(vocabulary: Vocabulary) -> None:
    """Over the twenty of the last piece every row can be worked."""
    text = (
        "Cast on 10 sts.\nRow 1: Knit.\nBind off.\nPick up and knit 30 sts.\nRow 2: *K4, p4; rep from * to end.\n"
        "Row 3: *K4, p4; rep from * to end.\nBind off.\nPick up and knit 20 sts.\nRow 4: Knit."
    )
    found = [each for each in judge_text(examine(text, vocabulary)) if each.rule == COUNT]
    assert [(each.line, each.hint) for each in found] == [(4, "Begin it with 24 or 32.")]


def test_of_several_wrong_counts_the_first_is_told(vocabulary: Vocabulary) -> None:
    """The second may be wrong because of the first."""
    text = "Cast on 10 sts.\nRow 1: Knit. (11 sts)\nRow 2: Knit. (12 sts)"
    assert [(found.rule, found.line) for found in judge_text(examine(text, vocabulary))] == [(COUNT, 2)]


def test_a_printed_cast_on_is_not_judged_where_another_is_asked_for(vocabulary: Vocabulary) -> None:
    """Thirteen stitches are in the multiple, and fourteen are not cast on."""
    text = "Multiple of 4 sts plus 1.\nCast on 14 sts.\nRow 1: *K4; rep from * to last st, k1."
    assert COUNT not in {found.rule for found in judge_text(examine(text, vocabulary, 13))}

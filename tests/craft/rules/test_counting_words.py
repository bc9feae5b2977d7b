"""The rules of counting in their own words: each number told is the one that a knitter finds on the needle."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine
from counterpane.craft.rules import judge_text
from counterpane.craft.stitches import Vocabulary

FITS = "Make the rows return to their first count, or say how often they are worked."
LOOK = "Look at line 1 first: one change there puts this right. "
SAID = [
    (
        "Cast on 10 sts.\nRow 1: K8, p3.",
        "Row 1 begins with 10 stitches and here asks for 3 stitches where 2 are left.",
        "Shorten the row, or begin it with 11.",
    ),
    (
        "Cast on 9 sts.\nRow 1: K8, p3.",
        "Row 1 begins with 9 stitches and here asks for 3 stitches where 1 is left.",
        LOOK + "Shorten the row, or begin it with 11.",
    ),
    (
        "Cast on 10 sts.\nRow 1: K10, k1.",
        "Row 1 begins with 10 stitches and here asks for 1 stitch where none are left.",
        "Shorten the row, or begin it with 11.",
    ),
    (
        "Row 1: *K1; rep from * to last 2 sts, k3.",
        "Row 1 asks for 3 stitches where 2 are left, whatever the cast-on.",
        "Make what follows use no more than the stitches kept for it.",
    ),
    (
        "Cast on 13 sts.\nRow 1: K8, p3.",
        "Row 1 begins with 13 stitches and leaves 2 stitches unworked.",
        LOOK + "Work the rest, or begin the row with 11.",
    ),
    (
        "Cast on 12 sts.\nRow 1: *K4, p1; rep from * to last 3 sts, k2.",
        "Row 1 leaves 1 stitch unworked, whatever the cast-on. From the cast-on it begins with 12 stitches.",
        "Work as many stitches at the end as the stop keeps for them.",
    ),
    (
        "Row 1: *Sl 2 to cn and hold in front, k2; rep from * to end.",
        "Row 1 has a repeat that ends with stitches on the cable needle.",
        "Work them from the cable needle before the repeat ends.",
    ),
    (
        "Row 1: Slip 2 sts to cn and hold in front, *k1 from cn; rep from * to end.",
        "Row 1 has a repeat that works stitches from the cable needle before it puts any there.",
        "Begin the repeat with the stitches that go to the cable needle.",
    ),
    (
        "Cast on 22 sts.\nRow 1: K2, *p3, k3; rep from * to last 3 sts, k3.",
        "Row 1 begins with 22 stitches, over which the repeat of 6 does not come out even.",
        "Begin the row with 17 or 23, or change the stitches outside the repeat.",
    ),
    (
        "Cast on 10 sts.\nRow 1: K to last 4 sts, pm, k4.\nRow 2: K to m, sm, k7.",
        "Row 2 begins with 10 stitches and here asks for 7 stitches where 6 are left.",
        "Shorten the row.",
    ),
    (
        "Cast on 10 sts.\nRow 1: K to last 4 sts, pm, k4.\nRow 2: K to m, sm, p3.",
        "Row 2 begins with 10 stitches and leaves 3 stitches unworked.",
        LOOK + "Work the rest.",
    ),
    (
        "Cast on 10 sts.\nRow 1: K to last 4 sts, pm, k4.\nRow 2: K to m, sm, *p4; rep from * to end.",
        "Row 2 begins with 10 stitches; its repeat of 4 has 6 of them and does not come out even.",
        LOOK + "Give the repeat 4 or 8: change the cast-on, a marker, or the stitches beside it.",
    ),
    (
        "Row 1: *K5; rep from * to last 3 sts, *p2; rep from * to end.",
        "Row 1: the repeat does not come out even, whatever the cast-on.",
        "Change the stop or the repeat.",
    ),
    (
        "Row 1: K3.\nRow 2: K5.",
        "Row 2 cannot follow the rows before it, whatever the cast-on.",
        "Change the edge stitches of this row or of the rows before it, so that both take the same counts.",
    ),
    (
        "Cast on 10 sts.\nRow 1: K1, yo, k to end. (12 sts)",
        "Row 1 says 12 stitches and leaves 11.",
        "Print 11, or change the row by 1 stitch.",
    ),
    (
        "Multiple of 4 sts plus 1.\nCast on 14 sts.\nRow 1: *K4; rep from * to last st, k1.",
        "The cast-on of 14 is not in the stated multiple of 4 plus 1.",
        "Cast on 13 or 17.",
    ),
    (
        "Multiple of 4 sts plus 1.\nCast on 14 sts.\nRow 1: Knit.",
        "The cast-on of 14 is not in the stated multiple of 4 plus 1.",
        "Cast on 13 or 17.",
    ),
    (
        "Multiple of 6 sts plus 4.\nCast on 2 sts.\nRow 1: Knit.",
        "The cast-on of 2 is not in the stated multiple of 6 plus 4.",
        "Cast on 4.",
    ),
    (
        "Multiple of 4 sts.\nCast on 3 sts.\nRow 1: Knit.",
        "The cast-on of 3 is not in the stated multiple of 4.",
        "Cast on 4.",
    ),
    (
        "Multiple of 4 sts plus 1.\nCast on 3 sts.\nRow 1: Knit.",
        "The cast-on of 3 is not in the stated multiple of 4 plus 1.",
        "Cast on 1 or 5.",
    ),
    (
        "Row 1: *K3, p1; rep from * to end.\nRow 2: *K5, p1; rep from * to last st, k1.",
        "Row 2 cannot follow the rows before it, whatever the cast-on: they leave a multiple of 2, and this row takes "
        "a multiple of 2 plus 1.",
        "Change the edge stitches of this row or of the rows before it, so that both take the same counts.",
    ),
    (
        "Cast on 20 sts.\nRow 1: K4, pm, k to end.\nRow 2: K to m, sm, k2tog, k to end.\nRep row 2 until 3 sts remain.",
        "Row 2 alone changes the count, from 20 to 19 stitches.",
        "Look for a stitch made or lost in its repeat: to be worked again it should leave 20.",
    ),
    ("Cast on 10 sts.\nRow 1: K2tog, k to end.\nRep row 1.", "These rows lose 1 stitch in one pass, each time.", FITS),
    ("Row 1: *K1, yo; rep from * to end.\nRep row 1.", "These rows change the count in one pass, each time.", FITS),
    (
        "Cast on 6 sts.\nRow 1: *K2tog; rep from * to last 2 sts, kfb, kfb.\nRep row 1.",
        "These rows come back to 6 stitches, but not to every count they begin with.",
        "Say that they are for this count alone, or make them return to any count.",
    ),
    (
        "Cast on 10 sts.\nRow 1: K2tog, k8.\nRep row 1.",
        "These rows lose 1 stitch in one pass, so that they cannot be worked again.",
        LOOK.replace("1", "2", 1) + FITS,
    ),
    (
        "Cast on 36 sts.\nRow 1: Frobnicate.\nRow 2: *K4, k2tog; rep from * to end.\nRep row 2.",
        "These rows change the count in one pass and do not take every count that they leave.",
        LOOK.replace("1", "3", 1) + FITS,
    ),
    (
        "Cast on 10 sts.\nRow 1: K2tog, k to end.\nRep row 1 until 12 sts remain.",
        "Each pass of these rows would lose 1 stitch; 12 stitches are never reached.",
        "Change the number to stop at, or the rows.",
    ),
]


@pytest.mark.parametrize(("text", "message", "hint"), SAID)
def test_a_rule_of_counting_tells_its_numbers(text: str, message: str, hint: str, vocabulary: Vocabulary) -> None:
    """What is found, what would do, and the next step."""
    assert (message, hint) in [(found.message, found.hint) for found in judge_text(examine(text, vocabulary))]


@pytest.mark.parametrize(("cast_on", "severity", "more"), [(16, "note", "3 times"), (4, "note", "once")])
def test_rows_that_halve_the_count_are_told_how_often_they_go_on(
    cast_on: int, severity: str, more: str, vocabulary: Vocabulary
) -> None:
    """Sixteen stitches become 8, 4, 2 and 1; from 4 the second pass is the last."""
    text = f"Cast on {cast_on} sts.\nRow 1: *K2tog; rep from * to end.\nRep row 1."
    (found,) = judge_text(examine(text, vocabulary))
    assert found.severity == severity
    assert found.message.endswith(f"so that they can be worked {more} more and then not again.")


def test_rows_that_do_not_take_what_they_leave_are_wrong_at_an_unknown_count_too(vocabulary: Vocabulary) -> None:
    """After a row that cannot be read nobody knows the count, and some count of those left cannot be worked."""
    text = "Cast on 36 sts.\nRow 1: Frobnicate.\nRow 2: *K4, k2tog; rep from * to end.\nRep row 2."
    assert [found.severity for found in judge_text(examine(text, vocabulary)) if found.rule == "count-drifts"] == [
        "error"
    ]


def test_a_slip_of_one_row_is_named_where_the_repeat_line_shows_it(vocabulary: Vocabulary) -> None:
    """Of two rows, one loses a stitch; only at the repeat line does it show that they do not come back."""
    text = "Cast on 10 sts.\nRow 1: K2tog, k8.\nRow 2: P9.\nRep rows 1 and 2."
    (message,) = [x.message for x in judge_text(examine(text, vocabulary)) if x.rule == "row-upsets-later-rows"]
    assert message == "Row 2 probably leads to the trouble at the repeat of the rows: a small change sets it right."

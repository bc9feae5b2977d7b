"""What a rule of counting says in whole: how grave it is, where it stands, the next step, and what puts it right."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine
from counterpane.craft.findings import Finding
from counterpane.craft.rules import judge_text
from counterpane.craft.stitches import Vocabulary

FITS = "Make the rows return to their first count, or say how often they are worked."
FOUND = [
    (
        "Row 1: K1, (k2tog, k1) into next st, k1.",
        Finding(
            "group-uses-several",
            "error",
            "Row 1 works a group into one stitch that would use more than that one.",
            "Use stitches that need one loop or none, such as (k1, yo, k1).",
            1,
            12,
        ),
    ),
    (
        "Cast on 14 sts.\nRow 1: K2, [k to last 3 sts] 2 times, k3.\nRow 2: Purl. (14 sts)",
        Finding(
            "repeat-inside-repeat",
            "error",
            "Row 1 has a repeat “to end” inside another; its first working would use up the row.",
            "Give the inner repeat a number of times.",
            2,
            13,
            corrections=("Row 1: K2, k to last 3 sts, k3.",),
        ),
    ),
    (
        "Cast on 14 sts.\nRow 1: K1, *yo; rep from * to last 2 sts, k2.\nRow 2: Purl.",
        Finding(
            "repeat-uses-nothing",
            "error",
            "Row 1 has a repeat that uses no stitches and so would never end.",
            "Put the stitch that each repeat uses inside it.",
            2,
            12,
            corrections=(
                "Row 1: K1, *yo, k1; rep from * to last 2 sts, k2.",
                "Row 1: *K1, yo; rep from * to last 2 sts, k2.",
            ),
        ),
    ),
    (
        "Row 1: K2, *p1; rep from *, *k3, p2; rep from *.",
        Finding(
            "two-open-repeats",
            "error",
            "Row 1 has two repeats, and nothing says how the stitches are shared between them.",
            "Say where the first repeat stops: “to last n sts”, or “n times more”.",
            1,
            12,
        ),
    ),
    (
        "Row 1: *K4; rep from * to end.\nRow 2: *K8; rep from * to end.\nRow 3: *K11; rep from * to end.",
        Finding(
            "row-repeat-differs",
            "warning",
            "Row 3 has a repeat of 11 where other rows repeat 8: probably a misprint.",
            "Look for a stitch too many or too few in this row; make its repeat 8.",
            3,
            8,
            corrections=("Row 3: *K8; rep from * to end.",),
        ),
    ),
    (
        "Row 1: *K2, p2; rep from * to end.\nRow 2: *P2, k2; rep from * to end.\nRow 3: K4, p3.",
        Finding(
            "row-repeat-differs",
            "warning",
            "Row 3 has a fixed count where other rows repeat 4: probably a misprint.",
            "Look for a stitch too many or too few in this row; make its repeat 4.",
            3,
            8,
            corrections=("Row 3: K4, p4.", "Row 3: K5, p3.", "Row 3: K4."),
        ),
    ),
    (
        "Cast on 20 sts.\nRow 1: K1, yo, yo, k2tog, k to end.\nRow 2: Purl. (20 sts)",
        Finding(
            "row-upsets-later-rows",
            "warning",
            "Row 1 probably leads to the trouble in row 2: a small change sets it right.",
            "Print it so: Row 1: K1, yo, k2tog, k to end.",
            2,
            8,
            corrections=("Row 1: K1, yo, k2tog, k to end.", "Row 1: K1, yo, yo, k3tog, k to end."),
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: K2tog, k to end.\nRep row 1 12 times more.",
        Finding(
            "row-upsets-later-rows",
            "warning",
            "Row 1 alone changes the count, from 10 to 9 stitches.",
            "Look for a stitch made or lost in its repeat: to be worked again it should leave 10.",
            2,
            8,
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: K8.\nRow 2: *K4, k2tog; rep from * to end.\nRep row 2.",
        Finding(
            "count-drifts",
            "warning",
            "These rows change the count in one pass and do not take every count that they leave.",
            FITS,
            4,
            1,
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: K2tog, k to end. (8 sts)\nRep row 1.",
        Finding("count-drifts", "note", "These rows lose 1 stitch in one pass, each time.", FITS, 3, 1),
    ),
    (
        "Cast on 10 sts.\nRow 1: Knit.\nRep row 1.\nRow 2: Yo, k10.\nRep row 2.",
        Finding(
            "count-drifts",
            "error",
            "These rows add 1 stitch in one pass, so that they cannot be worked again.",
            f"Look at line 4 first: one change there puts this right. {FITS}",
            5,
            1,
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: K2tog, k to end.\nRep row 1 until 0 sts remain.",
        Finding(
            "count-drifts",
            "error",
            "Each pass of these rows would lose 1 stitch; 0 stitches are never reached.",
            "Change the number to stop at, or the rows.",
            3,
            1,
        ),
    ),
    (
        "Cast on 10 sts.\nRow 1: K to marker, sm, k to end.",
        Finding(
            "count-not-followed",
            "note",
            "Row 1 and what follows it are not counted: a marker it needs has no known place.",
            "Place the marker in a row before it (“pm”).",
            2,
            8,
        ),
    ),
    (
        "\n".join(f"Row {number}: *K2tog; rep from * to end." for number in range(1, 71)),
        Finding(
            "count-not-followed",
            "note",
            "Row 1 and what follows it are not counted: its count goes beyond all ordinary numbers.",
            "Say how often the rows are worked, or make them grow less.",
            1,
            8,
        ),
    ),
]


@pytest.mark.parametrize(("text", "found"), FOUND)
def test_a_rule_of_counting_tells_all_that_helps(text: str, found: Finding, vocabulary: Vocabulary) -> None:
    """Where it is, how grave, what it is with its numbers, the next step, and the row as it may be printed."""
    assert found in judge_text(examine(text, vocabulary))


@pytest.mark.parametrize(
    ("text", "rules"),
    [
        ("Cast on 10 sts.\nRow 1: K2tog, k to end.\nRep row 1 until 4 sts remain.", []),
        (
            "Cast on 10 sts.\nRow 1: Frobnicate.\nRow 2: K2tog, k to end.\nRep row 2 until 4 sts remain.",
            ["unknown-term"],
        ),
        (
            "Cast on 10 sts.\nRow 1: *K3; rep from * to last 5 sts, k4.\nRep row 1.",
            ["row-leaves-stitches"],
        ),
    ],
)
def test_no_drift_is_told_of_rows_that_stop_where_they_say_or_never_begin(
    text: str, rules: list[str], vocabulary: Vocabulary
) -> None:
    """Four are left of ten; where nobody knows how many there are, or no count can be worked, nothing drifts either."""
    assert [found.rule for found in judge_text(examine(text, vocabulary))] == rules


@pytest.mark.parametrize(
    ("text", "rules"),
    [
        (
            "Cast on 32 sts.\nRow 1: *K2tog, k6; rep from * to end.\nRow 2: *K4; rep from * to end.\n"
            "Row 3: *K4; rep from * to end. (32 sts)",
            ["row-repeat-differs", "stated-count-wrong"],
        ),
        (
            "Cast on 10 sts.\nRow 1: K2tog, k to end.\nRow 2: K2tog, k to end.\nRep rows 1 and 2 12 times more.",
            ["row-runs-short", "count-drifts"],
        ),
        (
            "Cast on 10 sts.\nRow 1: K4, pm, k6.\nRow 2: K to m, sm, k4.\nRep row 2 once more.\nBind off.\n"
            "Pick up and knit 8 sts.\nRow 3: Frobnicate.",
            ["row-leaves-stitches", "unknown-term"],
        ),
    ],
)
def test_no_row_is_blamed_twice_or_without_its_count(text: str, rules: list[str], vocabulary: Vocabulary) -> None:
    """Named for its repeat already; one of two that lose a stitch; and one that leaves nobody knows how many."""
    assert [found.rule for found in judge_text(examine(text, vocabulary))] == rules


@pytest.mark.parametrize(
    ("cast_on", "told"),
    [
        (49, " Over 49 stitches they can be worked 1 and 9 times or 6 and 5 times or 11 and 1 times."),
        (9, " Over 9 stitches they can be worked 1 and 1 times."),
        (7, " Over 7 stitches they do not come out in any way."),
        (400, ""),
    ],
)
def test_two_repeats_are_shared_out_where_the_count_is_known(cast_on: int, told: str, vocabulary: Vocabulary) -> None:
    """4r + 5q stitches, worked by hand: 49 in three ways, 9 in one, 7 in none, 400 in more than anybody reads."""
    text = f"Cast on {cast_on} sts.\nRow 1: *K4; rep from *, *k2, p3; rep from *."
    (found,) = judge_text(examine(text, vocabulary))
    said = "Row 1 has two repeats, and nothing says how the stitches are shared between them."
    assert (found.rule, found.message) == ("two-open-repeats", said + told)


@pytest.mark.parametrize(
    "row", ["*K4; rep from *, *k2; rep from *, *p2; rep from *.", "*K4; rep from *, [k to end] twice."]
)
def test_other_repeats_are_not_shared_out(row: str, vocabulary: Vocabulary) -> None:
    """Three repeats, and one in a bracket beside another, have a finding each without ways."""
    found = judge_text(examine(f"Cast on 30 sts.\nRow 1: {row}", vocabulary))
    assert found and not any("can be worked" in each.message for each in found)

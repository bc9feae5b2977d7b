"""Rows ordered in one sentence, repeat lines that call a star before whole rows, and rows named with their part."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine
from counterpane.craft.rows.instructions import AgainStep, Instructions, read_text
from counterpane.craft.stitches import Vocabulary


def repeated(read: Instructions) -> list[tuple[tuple[int, ...], int | None]]:
    """Return which rows each repeat line means, and how many further times."""
    return [(step.rows, step.again.passes) for step in read.steps if isinstance(step, AgainStep)]


@pytest.mark.parametrize(
    ("printed", "rows"),
    [
        ("Knit 4 rows, purl 1 row.", 5),
        ("Knit 4 rows, purl 1 row, knit 2 rows.", 7),
        ("Knit 4 rows; purl 1 row and knit 2 rows.", 7),
        ("Knit 1 row, k to end of row.", 1),
    ],
)
def test_every_row_of_a_sentence_is_listed(printed: str, rows: int, vocabulary: Vocabulary) -> None:
    """A comma ends an order as a full stop does."""
    read = read_text(f"Cast on 40 sts.\n{printed}", vocabulary)
    assert (len(read.rows), read.faults) == (rows, ())


@pytest.mark.parametrize(
    ("printed", "rows", "passes"),
    [
        ("*Knit 4 rows, purl 1 row; rep from * until piece measures 70 cm.", 5, None),
        ("*Knit 4 rows, purl 1 row. Rep from * until 70 cm.", 5, None),
        ("* Knit 4 rows, purl 1 row, rep from * twice more.", 5, 2),
        ("*K 1 row, p 1 row; repeat from * 3 times more.", 2, 3),
        ("*Knit 4 rows.\nPurl 1 row.\nRep from * 5 times more.", 5, 5),
        ("*Knit 4 rows,\npurl 1 row; rep from * 5 times more.", 5, 5),
        ("*Row 1 (RS): Knit.\nRow 2: Purl.\nRep from * until it is square.", 2, None),
        ("*Row 5: Knit.\nRows 6-8: Purl.\nThen rep from * once more.", 4, 1),
    ],
)
def test_a_star_before_rows_is_called_by_a_repeat_line(
    printed: str, rows: int, passes: int | None, vocabulary: Vocabulary
) -> None:
    """All rows since the star are worked again, as often as the call says."""
    read = read_text(f"Cast on 40 sts.\nFoundation row: Knit.\n{printed}\nBind off.", vocabulary)
    assert (repeated(read), read.faults) == ([(tuple(range(1, rows + 1)), passes)], ())


def test_a_call_goes_on_until_so_many_stitches_are_left(vocabulary: Vocabulary) -> None:
    """Twelve stitches, two fewer in every second row, down to four."""
    text = (
        "Cast on 12 sts.\n*Row 1: K2tog, k to last 2 sts, k2tog.\nRow 2: Purl.\nRep from * until 4 sts remain.\n4 sts."
    )
    assert not examine(text, vocabulary).walk.wrong_counts
    (wrong,) = examine(text.replace("\n4 sts.", "\n6 sts."), vocabulary).walk.wrong_counts
    assert (wrong.printed, wrong.true) == (6, 4)


@pytest.mark.parametrize(
    "printed",
    [
        "**Row 1:** Knit.\nRow 2: Purl.\nRep from * to end.",
        "Row 1: *K1, p1; rep from * to end.\nRow 2: Purl.\nRep from * until it is square.",
        "*Row 1: Knit.\nRow 2 and all WS rows: Purl.\nRow 3: Knit.\nRep from * until it is square.",
    ],
)
def test_a_star_that_is_none_or_cannot_be_counted_from_calls_no_rows(printed: str, vocabulary: Vocabulary) -> None:
    """Bold letters, the star of a row's own repeat, and a label that stands for rows not printed."""
    assert repeated(read_text(f"Cast on 40 sts.\n{printed}", vocabulary)) == []


def test_rows_are_named_with_their_part(vocabulary: Vocabulary) -> None:
    """Rib row 1 and row 1 are two rows, whichever was worked last."""
    text = (
        "Cast on 40 sts.\nRib row 1 (RS): *K2, p2; rep from * to end.\nRib row 2: *K2, p2; rep from * to end.\n"
        "Rep rib rows 1 and 2 twice more.\nRow 1: Knit.\nRow 2: Purl.\nRep rows 1 and 2 5 times more.\n"
        "Rep the rib rows 1 and 2 once more.\nWork rib row 1 once more."
    )
    read = read_text(text, vocabulary)
    assert (repeated(read), read.faults) == ([((0, 1), 2), ((2, 3), 5), ((0, 1), 1), ((0,), 1)], ())


def test_a_part_that_no_row_is_named_with_means_the_latest_rows(vocabulary: Vocabulary) -> None:
    """The pattern's rows have no other name here."""
    text = "Cast on 40 sts.\nRow 1: Knit.\nRow 2: Purl.\nRep patt rows 1 and 2 twice more."
    assert repeated(read_text(text, vocabulary)) == [((0, 1), 2)]

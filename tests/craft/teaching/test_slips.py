"""Which mistakes a row can meet."""

from __future__ import annotations

import pytest

from counterpane.craft.teaching.seen import shown
from counterpane.craft.teaching.slips import WHENS, whens_of_row
from counterpane.library.patterns.lessons import slips
from counterpane.seeding.facts import facts_by_name
from craft.pattern.plans import section, vocabulary


def _whens(text: str, row: int, sts: int, edge: int = 0) -> set[str]:
    part = section("body", "x", text, first_row=1, rows=4, sts=sts)
    return set(whens_of_row(shown(part, vocabulary(), edge), row, vocabulary()))


@pytest.mark.parametrize(
    ("text", "row", "sts", "whens"),
    [
        ("Row 1 (RS): k1, *p1, k1; rep from * to end.", 2, 7, {"seed", "knit-and-purl"}),
        ("Row 1 (RS): *k1, p1; rep from * to end.\nRow 2: *k1, p1; rep from * to end.", 2, 8, {"rib", "knit-and-purl"}),
        ("Row 1 (RS): k1, yo, k2tog, k to end.\nRow 2: purl.", 1, 8, {"yarn-over", "leans-right"}),
        ("Row 1 (RS): k2, ssk, yo, p4.\nRow 2: purl.", 1, 8, {"yarn-over", "yarn-over-before-purl", "leans-left"}),
        ("Row 1 (RS): k1, *sl 1 wyif, k1; rep from * to end.\nRow 2: purl.", 1, 7, {"slip-in-front"}),
        ("Row 1 (RS): k1, *sl 1 wyib, k1; rep from * to end.\nRow 2: purl.", 1, 7, {"slip-behind"}),
        ("Row 1 (RS): k2, c4f, k2.\nRow 2: purl.", 1, 8, {"held-in-front"}),
        ("Row 1 (RS): k2, c4b, k2.\nRow 2: purl.", 1, 8, {"held-behind"}),
        ("Row 1 (RS): knit.\nRow 2 (WS): knit.", 2, 8, {"garter"}),
        ("Row 1 (RS): k1, m1, k to end.\nRow 2 (WS): p to last 2 sts, p2tog.", 1, 8, {"count-changes"}),
        ("Row 1 (RS): k1, k1 tbl, k to end.\nRow 2: purl.", 1, 8, {"twisted"}),
    ],
)
def test_a_row_meets_the_mistakes_of_its_stitches(text: str, row: int, sts: int, whens: set[str]):
    """And no others: what it says of a row follows from the row."""
    assert _whens(text, row, sts) == whens


def test_a_slipped_edge_stitch_is_an_edge_and_no_float():
    """At the edge the yarn goes past no stitch."""
    assert _whens("Row 1 (RS): sl 1 wyif, k to end.\nRow 2: sl 1 wyif, k to end.", 1, 8, 1) == {"edge-slip"}


def test_every_mistake_that_ships_can_be_met_and_each_reason_has_one():
    """The words of `when` in the facts are those of the craft."""
    assert {slip.when for slip in slips(facts_by_name())} == set(WHENS)


@pytest.mark.parametrize(
    ("text", "row", "sts", "whens"),
    [
        (
            "Row 1 (RS): k2, sl 2 to cn and hold in front, k2, k2 from cn, k2.\nRow 2: purl.",
            1,
            8,
            {"held-in-front"},
        ),
        ("Row 1 (RS): k2, sl 2 to cn and hold in back, k2, k2 from cn, k2.\nRow 2: purl.", 1, 8, {"held-behind"}),
        (
            "Row 1 (RS): k2tog, k to end, yo.\nRow 2: purl.",
            1,
            8,
            {"yarn-over", "yarn-over-at-end", "leans-right"},
        ),
        ("Row 1 (RS): k3, bind off 2 sts, k to end.\nRow 2: p3, cast on 2 sts, p3.", 1, 8, {"count-changes"}),
    ],
)
def test_what_is_held_or_made_at_the_end_is_met_as_well(text: str, row: int, sts: int, whens: set[str]):
    """A crossing in words is held as one with a name is; a yarn-over behind the last stitch slides off the needle."""
    assert _whens(text, row, sts) == whens


def test_columns_neither_kept_nor_changed_are_neither_rib_nor_seed_stitch():
    """Eight faces by turns over k1, p1, k3, p1, k1, p1: all stand over their like but one."""
    text = "Row 1 (RS): k1, p1, k3, p1, k1, p1.\nRow 2: *k1, p1; rep from * to end."
    assert _whens(text, 2, 8) == {"knit-and-purl"}

"""Lifelines: after which rows, how often, and why. Common practice, no source."""

from counterpane.craft.pattern.lifelines import lifelines
from counterpane.craft.pattern.rows import listed_rows, written_rows
from craft.pattern.plans import eyelets, plan, section, vocabulary, waffle


def of(blanket: object, index: int = 1) -> tuple[str, ...]:
    """Return the lifelines of a section of a plan."""
    part = blanket.sections[index]  # type: ignore[attr-defined]
    rows = listed_rows(part, vocabulary())
    return lifelines(rows, written_rows(rows, part, vocabulary(), "us"), part.before, vocabulary())


def test_knit_and_purl_need_none() -> None:
    """They are ripped back stitch by stitch."""
    assert of(waffle()) == of(eyelets(), 0) == ()


def test_a_lifeline_follows_a_plain_row_at_which_the_count_is_back() -> None:
    """Rows 3 and 4 are plain over 54 stitches; four rows of repeat are eight between threads."""
    where, why = of(eyelets())
    assert where.startswith("Lifeline: after row 4 of this part (a plain WS row), with all 54 stitches back")
    assert where.endswith("again every 8 rows.")
    assert why.startswith("Why: a yarn-over is lost and a crossing comes undone")


def test_lace_without_a_plain_row_says_so() -> None:
    """Both rows open and close; the count is back after each."""
    text = "Row 1 (RS): *yo, k2tog; rep from * to end.\nRow 2 (WS): *yo, p2tog; rep from * to end."
    blanket = plan("Net", section("body", "net", text, first_row=1, rows=40, sts=20))
    where, why = of(blanket, 0)
    assert "after row 2 of this part (a WS row; no row of this part is plain)" in where
    assert why.startswith("Why: a yarn-over is only a loop over the needle")


def test_stitches_made_fewer_and_more_say_why() -> None:
    """A row that closes and opens no hole is picked up with care too; the plain WS row suits."""
    text = "Row 1 (RS): *k2tog, m1; rep from * to end.\nRow 2 (WS): purl."
    blanket = plan("Gathers", section("body", "gathers", text, first_row=1, rows=40, sts=20))
    where, why = of(blanket, 0)
    assert "after row 2 of this part (a plain WS row)" in where
    assert why.startswith("Why: stitches that were made fewer or more are hard to pick up")


def test_a_part_that_never_comes_back_to_its_count_has_none() -> None:
    """By hand: its one row makes a stitch, and no later row takes it back."""
    text = "Row 1 (RS): k2, yo, k to end.\nRow 2 (WS): p2tog, p to end."
    single = plan("One row", section("body", "one row", text, first_row=1, rows=1, sts=20))
    rows = listed_rows(single.sections[0], vocabulary())
    assert [row.after for row in written_rows(rows, single.sections[0], vocabulary(), "us")] == [21]
    assert of(single, 0) == ()

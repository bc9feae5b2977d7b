"""The rows that help is asked for: stretches to count, and the stitches that are worked."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from counterpane.craft.counts.writing_out import write_out
from counterpane.craft.helping import WorkedRow
from counterpane.craft.helping.remedies import why
from counterpane.craft.helping.rows import stitches_in, stretches
from counterpane.craft.helping.slips import slips_of
from counterpane.craft.helping.suspects import suspects
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Vocabulary


def worked(vocabulary: Vocabulary, before: int, *texts: str) -> tuple[WorkedRow, ...]:
    """Return rows numbered from 1, worked one after the other from a count."""
    rows = []
    for number, text in enumerate(texts, start=1):
        parts = read_row(text, vocabulary).parts
        side = "RS" if number % 2 else "WS"
        after = write_out(parts, before, vocabulary, side).after
        assert after is not None
        rows.append(WorkedRow(number, "body", number, Row(str(number), parts, side), before, after))
        before = after
    return tuple(rows)


@pytest.mark.parametrize(
    "rows",
    [
        ("knit", "purl"),
        ("*yo, k2tog; rep from * to end", "k2, k2tog, yo, k to end"),
        ("*k1, p1; rep from * to last 4 sts, *k2tog, yo; rep from * to end", "purl"),
        ("k to last 4 sts, *yo, k2tog; rep from * to end", "purl"),
        ("*k1, p2; rep from * to end, ending last rep k1", "purl"),
    ],
)
def test_no_stretches_are_told_without_one_whole_repeat(vocabulary: Vocabulary, rows: Sequence[str]) -> None:
    """None at all, hidden under a row of other stitches, two of them, or a last one that differs from the others."""
    assert stretches(worked(vocabulary, 10, *rows), vocabulary) is None


def test_the_stitches_of_a_row_are_those_inside_others_too(vocabulary: Vocabulary) -> None:
    """The empty key stands for what is more than a stitch: several in one, and stitches bound off."""
    into_one = read_row("k1, (k1, yo, k1) into next st, *p1; rep from * to end", vocabulary).parts
    cut = read_row("k1, bind off 2 sts, k to end", vocabulary).parts
    assert stitches_in(into_one) == {"k", "yo", "p", ""}
    assert stitches_in(cut) == {"k", ""}


def test_a_pass_over_missed_leaves_one_more(vocabulary: Vocabulary) -> None:
    """Sl 1, k1, psso leaves one of two; what is worked into one stitch is that stitch's own affair."""
    (slip,) = slips_of(read_row("sl 1, k1, psso, k2, (k1, yo, k1) into next st", vocabulary).parts, vocabulary)
    assert (slip.kind, slip.each, slip.most, slip.stitch) == ("pass-over-missed", 1, 1, "psso")


def test_a_slip_that_a_later_row_must_have_shown_says_so(vocabulary: Vocabulary) -> None:
    """The one yarn-over left out, six purls could not be worked over five stitches, unless they were made to fit."""
    rows = worked(vocabulary, 6, "k1, yo, k2tog, k3", "p6")
    first = suspects(rows, 5, vocabulary, since_cast_on=True)[0]
    assert (first.slip.kind, first.slip.stitch, first.rows, first.shows_in) == ("left-out", "yo", (1, 1), 2)
    assert why(first, rows).startswith("Row 2 could then not be worked to its end as written")


def test_a_row_that_left_fewer_stitches_than_are_missing_is_not_suspected(vocabulary: Vocabulary) -> None:
    """Two stitches cannot have been three too few: the yarn-overs of row 2 can."""
    rows = worked(vocabulary, 2, "k1, k1", "*k1, yo; rep from * to end", "*yo, k1; rep from * to end")
    found = suspects(rows, 5, vocabulary, since_cast_on=True)
    assert found
    assert all(each.rows[0] != 1 for each in found)


def test_a_miscounted_cast_on_says_why_nothing_showed_it(vocabulary: Vocabulary) -> None:
    """Garter works over any count."""
    rows = worked(vocabulary, 10, "knit", "knit")
    found = [each for each in suspects(rows, 12, vocabulary, since_cast_on=True) if each.rows == (0, 0)]
    assert [why(each, rows) for each in found] == ["The rows work over that count too, so that nothing showed it."]

"""What a row becomes with another number of plain stitches: told from its tree, and read from its words."""

from __future__ import annotations

import pytest

from counterpane.craft.checking.edits import edits
from counterpane.craft.checking.foreseen import with_number
from counterpane.craft.checking.rewriting import offset, stretch
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import Place
from counterpane.craft.stitches import Vocabulary

ROWS = {
    "K4, *yo, k2tog, k3, p1; rep from * to last 6 sts, k6.": 3,
    "P3, [k2, p2] 5 times, (k1, yo, k1) into next st, k7": 5,
    "*K5, p3; rep from *, ending last rep k2.": 3,
    "k3, m1, k to last 3 sts, m1, k3": 2,
}
# The number says what stitch it is, how it is worked, or what fabric.
OTHERS = ("K2 tbl, p1 tog", "k 4 tog, knit 3 together", "K2, p2 rib to end", "sl 2, slip 3", "k1b, p2 MC", "k5 below")


def foreseen(row: str, vocabulary: Vocabulary) -> list[tuple[str, bool]]:
    """Return the words of each edit that is told from the tree, and whether reading them gives the same."""
    words, parts = stretch(row, 0, len(row)), read_row(row, vocabulary).parts

    def at(place: Place) -> int:
        return offset(row, place)

    told = [(words.changed(edit.changes), with_number(parts, words, edit, at)) for edit in edits(words)]
    return [(said, read_row(said, vocabulary).parts == new) for said, new in told if new is not None]


@pytest.mark.parametrize(("row", "numbers"), ROWS.items())
def test_a_number_is_told_as_it_is_read(row: str, numbers: int, vocabulary: Vocabulary) -> None:
    """Every number of plain stitches can be changed in the tree, and reading the changed words gives that tree."""
    found = foreseen(row, vocabulary)
    assert len(found) >= numbers * 5
    assert [said for said, same in found if not same] == []


@pytest.mark.parametrize("row", OTHERS)
def test_no_other_number_is_told(row: str, vocabulary: Vocabulary) -> None:
    """Where a number means more than so many plain stitches, the edited row is to be read."""
    assert [said for said, same in foreseen(row, vocabulary) if not same] == []

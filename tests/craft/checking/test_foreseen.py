"""What a row becomes by an edit of its list: told from its tree, and read from its words."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from counterpane.craft.checking import examine
from counterpane.craft.checking.edits import edits
from counterpane.craft.checking.endings import endings
from counterpane.craft.checking.foreseen import foreseen, stitches_of
from counterpane.craft.checking.rewriting import offset, stretch
from counterpane.craft.component import Component
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import Node, Place
from counterpane.craft.stitches import Vocabulary

LIST = "K4, *yo, k2tog, k3, p1; rep from * to last 6 sts, k6."
# What stands beside an item says what stitch it is, how it is worked, what is worked into, or of what fabric.
OTHERS = (
    "K2 tbl, p1 tog",
    "k 4 tog, knit 3 together",
    "K2, p2 rib to end",
    "sl 1, k1, psso, k2",
    "k1b, p2 MC, k1 MC",
    "k5 below, inc 1, k1",
    "k1, yo, k1 all into next st",
    "Sl 2, yo, k1, pass 2 slipped sts over, k1",
    "k2, inc in next st, yo twice, k2",
)


def told(row: str, vocabulary: Vocabulary) -> list[tuple[str, bool]]:
    """Return the words of each edit that is told from the tree, and whether reading them gives the same."""
    words, parts = stretch(row, 0, len(row)), read_row(row, vocabulary).parts

    def at(place: Place) -> int:
        return offset(row, place)

    def read(item: str) -> tuple[Node, ...]:
        alone = read_row(item, vocabulary)
        return alone.parts if alone.readable else ()

    stitches = stitches_of(parts, at)
    each = [(edit, foreseen(parts, stitches, words, edit, read)) for edit in (*edits(words), *endings(words))]
    said = [(words.changed(edit.changes), new) for edit, new in each if new is not None]
    return [(changed, read_row(changed, vocabulary).parts == new) for changed, new in said]


@pytest.mark.parametrize(
    "edited",
    [
        "K5, *yo, k2tog, k3, p1; rep from * to last 6 sts, k6.",
        "K4, *k2tog, k3, p1; rep from * to last 6 sts, k6.",
        "K4, *yo, k2tog, k3; rep from * to last 6 sts, k6.",
        "K4, *yo, k3tog, k3, p1; rep from * to last 6 sts, k6.",
        "K4, *yo, k2tog, yo, k3, p1; rep from * to last 6 sts, k6.",
        "Yo, k4, *yo, k2tog, k3, p1; rep from * to last 6 sts, k6.",
        "K4, *yo, k2tog, k3, p1; rep from * to last 6 sts, k1, k6.",
    ],
)
def test_an_edit_of_a_list_is_told_as_it_is_read(edited: str, vocabulary: Vocabulary) -> None:
    """A number, a stitch left out, exchanged, or put in."""
    assert (edited, True) in told(LIST, vocabulary)


def test_edits_of_the_rows_of_the_library_are_told_as_they_are_read(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Most edits are told, and none wrongly."""
    rows: set[str] = set()
    for text in sorted(version.rows for starter in starters.values() for version in starter.versions)[::4]:
        examined = examine(text, vocabulary)
        places = [(examined.offset(row.start), examined.offset(row.end)) for row in examined.rows]
        rows |= {text[begin:end] for begin, end in places if begin < end}
    number = sum(len(edits(stretch(row, 0, len(row)))) for row in rows)
    found = [each for row in sorted(rows) for each in told(row, vocabulary)]
    assert len(found) > number / 2 > 1_000
    assert [said for said, same in found if not same] == []


@pytest.mark.parametrize("row", OTHERS)
def test_no_item_is_told_that_its_neighbours_change(row: str, vocabulary: Vocabulary) -> None:
    """Where an item means more beside others than alone, the edited row is to be read."""
    assert [said for said, same in told(row, vocabulary) if not same] == []


def test_a_repeat_of_nothing_is_not_told(vocabulary: Vocabulary) -> None:
    """The edit that leaves out the only stitch of a repeat gives no row."""
    assert all(same for _, same in told("K2, *k2; rep from * to end. K1, [p1] twice", vocabulary))

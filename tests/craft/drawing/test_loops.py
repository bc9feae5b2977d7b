"""The shapes of a loop: how many there are, and to which side they lie."""

from __future__ import annotations

import pytest

from counterpane.craft.drawing.loops import shapes
from counterpane.craft.fabric.marks import Mark
from counterpane.craft.stitches import Vocabulary


@pytest.mark.parametrize(("beside", "begins"), [(1, "M-11 "), (-1, "M9 ")])
def test_two_purled_together_show_both_heads(beside: int, begins: str, vocabulary: Vocabulary) -> None:
    """A column is ten units wide: the head of the stitch beside lies one to the left, or to the right, of its own."""
    head, strand = shapes(Mark("p"), vocabulary)
    other, *own = shapes(Mark("p2tog", (0, beside)), vocabulary)
    assert own == [head, strand]
    assert other.startswith(begins)

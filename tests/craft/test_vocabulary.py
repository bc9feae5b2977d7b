"""The vocabulary as a whole."""

from __future__ import annotations

from counterpane.craft.stitches import Vocabulary


def test_a_vocabulary_is_shown_by_its_size(vocabulary: Vocabulary) -> None:
    """It is among the values of most functions, and a fault report that listed every stitch could not be read."""
    assert repr(vocabulary) == f"<vocabulary of {len(vocabulary.stitches)} stitches>"

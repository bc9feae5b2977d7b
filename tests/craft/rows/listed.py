"""What is listed of a text, in short."""

from __future__ import annotations

from counterpane.craft.rows.instructions import read_text
from counterpane.craft.stitches import Vocabulary


def labels(text: str, vocabulary: Vocabulary) -> str:
    """Return the labels of the rows, joined by blanks."""
    return " ".join(row.label for row in read_text(text, vocabulary).rows)

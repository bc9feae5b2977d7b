"""Rows and questions that the tests of both roads share."""

from __future__ import annotations

from collections.abc import Sequence

from counterpane.craft.counts import Misfit, malformed, work
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import Marker, Node, OpenRepeat, Work
from counterpane.craft.stitches import Vocabulary

from .small_vocabulary import VOCABULARY

KNIT = OpenRepeat((Work("k"),), 0, plain=True)
TO_MARKER = OpenRepeat((Work("k"),), 0, plain=True, marker=True)
PLACE, SLIP, REMOVE = Marker("place"), Marker("slip"), Marker("remove")
HUGE = 10**18


def rows_of(text: str, vocabulary: Vocabulary) -> list[Sequence[Node]]:
    """Read the rows between the slashes."""
    return [read_row(row, vocabulary).parts for row in text.split(" / ")]


def misfit_of(rows: Sequence[Sequence[Node]], before: int, vocabulary: Vocabulary = VOCABULARY) -> Misfit:
    """Return the one misfit that stops the rows at a count."""
    (misfit,) = (step.misfit for step in work(rows, before, vocabulary) if step.misfit)
    return misfit


def slug_of(*parts: Node) -> str | None:
    """Return the fault that a row has at every count."""
    found = malformed(parts, VOCABULARY)
    return found and found.slug

"""Notions: what is needed beside yarn and needles, from what the blanket is made of. Common practice, no source."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from counterpane.craft.care.finishing import Aftercare
from counterpane.craft.constructions import Plan
from counterpane.craft.pattern import Entry
from counterpane.craft.pattern.level import crossings
from counterpane.craft.pattern.parts import parts_of
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Vocabulary


def notions(
    plan: Plan, rows: Sequence[Row], vocabulary: Vocabulary, after: Aftercare | None, *, lifelines: bool
) -> Iterator[Entry]:
    """Give what is needed to work these rows and to finish the piece."""
    inside = plan.counts.sides + plan.counts.selvedge
    if inside:
        yield Entry("2 stitch markers", f"to set off the {inside} edge stitches at each end, slipped on every row")
    worked = [part.component for part in parts_of(plan.request) if part.component.operation is None]
    if all(component.reversible == "yes" for component in worked):
        yield Entry("Removable marker", "to mark the right side, since both sides look the same")
    if crossings(rows, vocabulary):
        yield Entry("Cable needle", "to hold the stitches that are crossed")
    if lifelines:
        yield Entry("Smooth thread", "of another colour, thinner than the yarn, for the lifelines")
    yield Entry("Blunt needle", "to weave in the ends")
    if after is not None and after.finish.pins:
        yield Entry("Rustproof pins", "to pin the wet blanket out")
    yield Entry("Scissors", "to cut the yarn and to trim its ends")
    yield Entry("Tape measure and scales", "to measure the swatch and to weigh the yarn")

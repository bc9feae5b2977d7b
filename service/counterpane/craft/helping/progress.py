"""How far a piece has come, in stitches: rows are of no use where they differ in length."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.constructions import Plan
from counterpane.craft.pattern.rows import counts_of
from counterpane.craft.stitches import Vocabulary


@dataclass(frozen=True, slots=True)
class Progress:
    """Stitches that are worked, and those of the whole piece with its bind-off and its picked-up borders."""

    done: int
    total: int

    @property
    def share(self) -> Fraction:
        """The share that is worked, exact."""
        return Fraction(self.done, self.total)


def progress(plan: Plan, rows_done: int, vocabulary: Vocabulary) -> Progress:
    """Return how far the piece is after so many rows from the cast-on."""
    done = 0
    for section in plan.sections:
        worked = min(section.rows, rows_done - section.first_row + 1)
        if worked == section.rows:
            done += section.stitches
        elif worked > 0:
            _, *left = counts_of(section, section.cycle, vocabulary)
            repeats, over = divmod(worked, len(left))
            done += repeats * sum(left) + sum(left[:over])
    return Progress(done, plan.stitches_total)

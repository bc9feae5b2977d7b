"""What is attached to a blanket: cords, ribbons and hard parts, with what was measured of them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.safety.limits import CYLINDER_DEEPEST_MM, CYLINDER_MM, GRIPPED_MM, PULL_N, PULL_SMALL_N
from counterpane.craft.safety.words import (
    kind_of,
)


@dataclass(frozen=True, slots=True)
class Attachment:
    """Something fixed to the blanket: millimetres, newtons and newton metres, None where not known.

    `largest_mm` of a cord is its length. A kind in the plural ("ties") stands for two or more.
    """

    kind: str
    largest_mm: Fraction | None = None
    pull_n: Fraction | None = None
    torque_nm: Fraction | None = None
    metal: bool | None = None

    def among(self, kinds: frozenset[str]) -> bool:
        """Tell whether it is of one of these kinds."""
        return kind_of(self.kind) in kinds

    @property
    def several(self) -> bool:
        """Tell whether its kind is written in the plural."""
        return self.kind.strip().casefold().endswith("s")

    @property
    def fits_cylinder(self) -> bool | None:
        """Tell from the largest size whether it lies wholly in the small-parts cylinder; None where that cannot tell.

        A part between the width and the depth of the cylinder fits where it is narrow.
        """
        if self.largest_mm is None or CYLINDER_MM < self.largest_mm <= CYLINDER_DEEPEST_MM:
            return None
        return self.largest_mm <= CYLINDER_MM

    @property
    def pull_wanted_n(self) -> Fraction:
        """Return the pull that a part of its size should hold; the larger one where the size is not known."""
        return PULL_SMALL_N if self.largest_mm is not None and self.largest_mm <= GRIPPED_MM else PULL_N

    @property
    def held(self) -> bool:
        """Tell whether it is known to have held its pull."""
        return self.pull_n is not None and self.pull_n >= self.pull_wanted_n

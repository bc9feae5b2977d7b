"""Classes of yarn: the council's numbers with the trade's names, and which of them a thickness belongs to.

The figures are facts and are passed in. Tables of shops differ: a thickness belongs to each class in which any of them
puts it, and a name can stand for two.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from counterpane.craft.measures import CM_PER_INCH, Gauge

FOUR_INCHES = 4 * CM_PER_INCH  # The window of the classes: Craft Yarn Council.
GRAMS = 100_000
"""Metres to 100 g are this divided by the tex, by definition."""

Bounds = tuple[Fraction | None, Fraction | None]


@dataclass(frozen=True, slots=True)
class YarnClass:
    """One class: what it is called, and its figures with open ends as None.

    `stitches` are of stocking stitch over 4 inches, `needle_mm` the needles for them, `metres` those to 100 g in each
    table of a shop, `wraps` those to the inch.
    """

    number: int
    name: str
    names: tuple[str, ...]
    stitches: tuple[int, int]
    needle_mm: Bounds
    needle_us: tuple[str, ...]
    metres: tuple[Bounds, ...]
    wraps: Bounds

    def holds_metres(self, metres: Fraction) -> bool:
        """Say whether any table puts a yarn of so many metres to 100 g here."""
        return any(_within(metres, bounds) for bounds in self.metres)


def _within(value: Fraction, bounds: Bounds) -> bool:
    low, high = bounds
    return (low is None or value >= low) and (high is None or value <= high)


def classes_of_tex(tex: Fraction, classes: Sequence[YarnClass]) -> tuple[YarnClass, ...]:
    """Return the classes to which any table puts a yarn of this thickness; several where tables differ, or none."""
    return tuple(each for each in classes if each.holds_metres(GRAMS / tex))


def classes_of_name(name: str, classes: Sequence[YarnClass]) -> tuple[YarnClass, ...]:
    """Return the classes that go by a name in any country: "double knitting", "8-ply", "worsted", "Light"."""
    return tuple(each for each in classes if _plain(name) in {_plain(known) for known in (*each.names, each.name)})


def _plain(name: str) -> str:
    return " ".join(name.casefold().replace("-", " ").split())


def classes_of_gauge(gauge: Gauge, classes: Sequence[YarnClass]) -> tuple[YarnClass, ...]:
    """Return the classes of a gauge in stocking stitch; a gauge that lies between two classes belongs to both."""
    stitches = gauge.per_cm * FOUR_INCHES
    inside = tuple(each for each in classes if each.stitches[0] <= stitches <= each.stitches[1])
    near = range(floor(stitches), ceil(stitches) + 1)
    return inside or tuple(each for each in classes if {*near} & {*each.stitches})


def tex_between(found: Sequence[YarnClass]) -> Bounds:
    """Return the tex of yarns of these classes, least and most; None for an end that a table leaves open."""
    tables = [bounds for each in found for bounds in each.metres]
    thick, thin = [low for low, _ in tables if low is not None], [high for _, high in tables if high is not None]
    least = GRAMS / max(thin) if thin and len(thin) == len(tables) else None
    return least, GRAMS / min(thick) if thick and len(thick) == len(tables) else None

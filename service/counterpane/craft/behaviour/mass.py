"""Mass per area from the gauge and the thickness of the yarn: a range, for nothing but knit and purl.

A square metre holds the yarn of its loops. The length of a loop follows from the width of a stitch and, again, from the
height of a row; in stocking stitch the two agree, in other fabrics they stand on either side of the truth: a rib is
narrow for its loops and garter is low for them.
"""

from __future__ import annotations

from fractions import Fraction

from counterpane.craft.behaviour.faces import repeat_of
from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.component import Component
from counterpane.craft.measures import Gauge
from counterpane.craft.openings import LOOP_HEIGHTS, LOOP_WIDTHS
from counterpane.craft.stitches import Vocabulary

HAND_SPREAD = Fraction(15, 100)
"""Share by which a loop of hand knitting may differ from what the constants say; house figure."""

CM_PER_M, METRES_PER_KM = 100, 1000  # By definition.

BY_CONSTANTS = "Munden's constants for machine-knitted wool, wet relaxed, from memory; within 15 % by hand (house)"


def metres_per_m2(gauge: Gauge) -> tuple[Fraction, Fraction]:
    """Return the metres of yarn in a square metre, the loop reckoned from the stitch width and from the row height.

    A loop of so many stitch widths leaves the rows in the product, one of so many row heights the stitches.
    """
    return LOOP_WIDTHS * gauge.rows_per_cm * CM_PER_M, LOOP_HEIGHTS * gauge.per_cm * CM_PER_M


def mass_per_area(gauge: Gauge, tex: Fraction) -> Figure:
    """Return the grams of a square metre at a gauge, of yarn of so many grams to 1,000 m, all strands together."""
    metres = metres_per_m2(gauge)
    low, high = min(metres) * (1 - HAND_SPREAD), max(metres) * (1 + HAND_SPREAD)
    to_grams = tex / METRES_PER_KM
    return Figure(low * to_grams, high * to_grams, "g per m²", "borrowed", BY_CONSTANTS)


def mass_of(component: Component, gauge: Gauge, tex: Fraction, vocabulary: Vocabulary) -> Figure | None:
    """Return the mass per area of a component at its own gauge; None for one that is more than knit and purl."""
    repeat = repeat_of(component, vocabulary)
    return mass_per_area(gauge, tex) if repeat is not None and repeat.simple else None

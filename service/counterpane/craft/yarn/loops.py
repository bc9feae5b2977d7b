"""The geometry of plain knitting: loop lengths, and the yarn of an area.

`courses` and `wales` are the constants of plain wool knitting: the loop length is `wales` stitch widths and `courses`
row heights. They come from machine-knitted wool and hold for plain (stocking) stitch.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.openings import LOOP_HEIGHTS, LOOP_WIDTHS, loop_mm

MM_PER_CM = 10  # By definition.
G_M_PER_TEX_MM = 10**6  # By definition: a tex is a gram to 1000 m, and a metre has 1000 mm.


@dataclass(frozen=True, slots=True)
class Relaxed:
    """The constants of one state of relaxation."""

    courses: Fraction
    wales: Fraction


DRY = Relaxed(Fraction(5), Fraction("3.8"))
"""Dry relaxed: D. L. Munden and later, from memory."""

WET = Relaxed(LOOP_HEIGHTS, LOOP_WIDTHS)
"""Wet relaxed: D. L. Munden and later, from memory."""

FULL = Relaxed(Fraction("5.5"), Fraction("4.2"))
"""Fully relaxed: GATE Textile Engineering, 2015, question 54."""

STRAND_OF_A_SLIP = 1 / WET.wales
"""Yarn past one slipped stitch, in loops: one stitch width."""


def metres_per_m2(wales_10cm: Fraction, loop: Fraction, courses_10cm: Fraction | None = None) -> Fraction:
    """Return the metres of yarn in a square metre from stitches and rows to 10 cm and the loop length in mm.

    Without the rows they follow from the loop as in wet relaxed plain knitting, and the loop then cancels out.
    """
    rows = WET.courses * 100 / loop if courses_10cm is None else courses_10cm
    return wales_10cm * rows * loop / 10


def grams_per_m2(metres: Fraction, tex: Fraction) -> Fraction:
    """Return the mass of a square metre from its metres of yarn."""
    return metres * tex / 1000


def loops_per_cm2(loop_cm: Fraction, relaxed: Relaxed = FULL) -> Fraction:
    """Return the stitch density that goes with a loop length: it depends on nothing else (Doyle; Munden)."""
    return relaxed.courses * relaxed.wales / loop_cm**2


def weighed_loop_mm(mass_g: Fraction, tex: Fraction, loops: Fraction) -> Fraction:
    """Return the loop length of so many loops of a weighed piece: exact, and better than any constant."""
    return mass_g * G_M_PER_TEX_MM / (tex * loops)


__all__ = [
    "DRY",
    "FULL",
    "STRAND_OF_A_SLIP",
    "WET",
    "Relaxed",
    "grams_per_m2",
    "loop_mm",
    "loops_per_cm2",
    "metres_per_m2",
    "weighed_loop_mm",
]

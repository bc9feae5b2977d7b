"""Yarn numbers: one thickness in the systems of the trade, all by way of tex, grams to 1000 m.

Definitions: tex, dtex and denier by NIST SP 811 (second-hand); Nm, Ne, worsted, jute by textile pages (second-hand);
linen lea and woollen from memory. 1 yd is 0.9144 m and 1 lb is 453.59237 g exactly.
"""

from __future__ import annotations

from fractions import Fraction

YARD_M = Fraction("0.9144")
POUND_G = Fraction("453.59237")
"""The yard and the pound by definition, since 1959."""

MASS_A_LENGTH = {
    "tex": Fraction(1),
    "dtex": Fraction(1, 10),
    "denier": Fraction(1, 9),
    "jute": POUND_G / (14_400 * YARD_M) * 1000,
}
"""Tex of one unit, where a larger number is a thicker yarn: by definition, in textile tables read second-hand."""

LENGTH_A_MASS = {
    "Nm": Fraction(1000),
    "Ne": POUND_G / (840 * YARD_M) * 1000,
    "worsted": POUND_G / (560 * YARD_M) * 1000,
    "linen": POUND_G / (300 * YARD_M) * 1000,
    "woollen": POUND_G / (256 * YARD_M) * 1000,
    "French": Fraction(500),
    "m to 100 g": Fraction(100_000),
}
"""Tex of number one, where a larger number is a thinner yarn: by definition, in textile tables read second-hand; linen
and woollen from memory."""

SYSTEMS = (*MASS_A_LENGTH, *LENGTH_A_MASS)


def to_tex(number: Fraction, system: str) -> Fraction:
    """Return the tex of a yarn number; KeyError for a system that is not known, ValueError for a number not above 0."""
    if number <= 0:
        raise ValueError("a yarn number is above 0")
    return number * MASS_A_LENGTH[system] if system in MASS_A_LENGTH else LENGTH_A_MASS[system] / number


def from_tex(tex: Fraction, system: str) -> Fraction:
    """Return the number of a thickness in a system; KeyError for one that is not known, ValueError not above 0."""
    if tex <= 0:
        raise ValueError("a thickness is above 0")
    return tex / MASS_A_LENGTH[system] if system in MASS_A_LENGTH else LENGTH_A_MASS[system] / tex


def together(strands: tuple[Fraction, ...]) -> Fraction:
    """Return the tex of strands held or plied together, before any twist takes up length; from memory."""
    return sum(strands, Fraction(0))

"""How much yarn a cast-on tail, a row and a bind-off take: rules of thumb with sources, in any one unit."""

from __future__ import annotations

from fractions import Fraction

ROW_WIDTHS = 3
"""Yarn of one row in widths of the piece: a yarn shop in Berkeley, page on running short of yarn."""

BIND_OFF_WIDTHS = 6
"""Yarn of a plain bind-off in widths, on the generous side: the same page. Other sources have 3 to 4."""


def tail_by_trial(used: Fraction, trial: int, stitches: int, end: Fraction = Fraction(0)) -> Fraction:
    """Return the tail for a cast-on from the yarn that `trial` stitches used, plus an end to weave in; exact.

    Common practice: ten trial stitches are cast on, undone and measured. ValueError for less than one trial stitch.
    """
    if trial < 1:
        raise ValueError("at least one trial stitch is needed")
    return used / trial * stitches + end


def tail_by_width(width: Fraction, widths: Fraction, end: Fraction = Fraction(0)) -> Fraction:
    """Return a long-tail cast-on's tail as so many widths of the piece, plus an end; sources give 3 to 4 widths."""
    return width * widths + end


def row_yarn(width: Fraction, end: Fraction) -> Fraction:
    """Return the yarn to keep for one more row, plus an end to weave in."""
    return ROW_WIDTHS * width + end


def bind_off_yarn(width: Fraction, end: Fraction) -> Fraction:
    """Return the yarn to keep for the bind-off, plus an end to weave in."""
    return BIND_OFF_WIDTHS * width + end

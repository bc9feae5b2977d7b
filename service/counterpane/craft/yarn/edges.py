"""The yarn of a cast-on and of a bind-off, in loops; the figure of the component within what sources differ by."""

from __future__ import annotations

from fractions import Fraction

from counterpane.craft.component import Component
from counterpane.craft.openings import LOOP_WIDTHS
from counterpane.craft.yarn.spreads import Spread

CAST_ON_SPREAD = Fraction(15, 100)
"""Share by which a cast-on's yarn may be off: 4 to 5 widths, or 3 to 4 of the tail, lie within it; house figure."""

BIND_OFF_WIDTHS = Fraction(3), Fraction(6)
"""Widths of a plain bind-off at the least and the most: pages of yarn shops and of a hobbyist, which differ."""

CAST_ON_NOT_KNOWN = Spread(Fraction(1), Fraction(3, 2), Fraction(5, 2))
"""Loops of a stitch of a cast-on without a figure; house figure, wide on purpose."""

BIND_OFF_NOT_KNOWN = Spread(Fraction(3, 4), Fraction(3, 2), Fraction(3))
"""Loops of a stitch of a bind-off without a figure; house figure, wide on purpose."""


def cast_on_loops(component: Component, stitches: int) -> Spread:
    """Return the loops of a cast-on of so many stitches."""
    each = _each(component)
    if each is None:
        return CAST_ON_NOT_KNOWN.times(stitches)
    return Spread(each * (1 - CAST_ON_SPREAD), each, each * (1 + CAST_ON_SPREAD)).times(stitches)


def bind_off_loops(component: Component, stitches: int) -> Spread:
    """Return the loops of a bind-off of so many stitches."""
    each = _each(component)
    if each is None:
        return BIND_OFF_NOT_KNOWN.times(stitches)
    low, high = (widths / LOOP_WIDTHS for widths in BIND_OFF_WIDTHS)
    return Spread(each * low, each, each * high).times(stitches)


def _each(component: Component) -> Fraction | None:
    operation = component.operation
    return None if operation is None or operation.loops_per_stitch is None else Fraction(operation.loops_per_stitch)

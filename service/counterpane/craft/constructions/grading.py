"""Borders of a recipe in the proportions of another size: as many rows and stitches as keep their share.

The recipe is worked out in one size, the sample; in another the end borders take rows in proportion to the lengths, and
the side borders stitches in proportion to the widths, in whole repeats of their own.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import lcm

from counterpane.craft.constructions import Part, Plan, PlanRequest
from counterpane.craft.constructions.settling import parameter
from counterpane.craft.constructions.textures import textures_of
from counterpane.craft.measures import half_up
from counterpane.craft.stitches import Vocabulary


def in_proportion(request: PlanRequest, sample: Plan, vocabulary: Vocabulary) -> PlanRequest:
    """Return a request whose borders keep the share that they have of the sample; sides of a fixed count stay."""
    long = request.length_cm / sample.request.length_cm
    wide = request.width_cm / sample.request.width_cm
    rows = {section.name: section.rows for section in sample.sections}
    return replace(
        request,
        bottom=_rows(request.bottom, rows.get("bottom"), long, vocabulary),
        sides=_stitches(request.sides, sample.counts.sides, wide, vocabulary),
        top=_rows(request.top, rows.get("top"), long, vocabulary),
        picked=_rows(request.picked, sample.picked[0].border.rows if sample.picked else None, wide, vocabulary),
    )


def _rows(part: Part | None, rows: int | None, factor: Fraction, vocabulary: Vocabulary) -> Part | None:
    """Return a border with rows in proportion, in whole repeats where the sample has such, else in pairs."""
    if part is None or rows is None:
        return part
    repeat = lcm(2, textures_of(part.component, vocabulary, "")[0].period)
    return replace(part, rows=_scaled(part, "rows", rows, repeat if rows % repeat == 0 else 2, factor))


def _stitches(part: Part | None, stitches: int, factor: Fraction, vocabulary: Vocabulary) -> Part | None:
    """Return a side border with stitches in proportion, in steps at which the same rows of it work."""
    if part is None:
        return None
    textures = textures_of(part.component, vocabulary, "")
    starts = (start for texture in textures for start in texture.starts if start.admits(stitches))
    step = max((start.of for start in starts), default=0)
    if step == 0 or part.left is not None:
        return part
    return replace(part, stitches=_scaled(part, "stitches", stitches, step, factor))


def _scaled(part: Part, name: str, number: int, step: int, factor: Fraction) -> int:
    """Return a number times a factor, to the nearest whole step away from it that the part takes."""
    limits = parameter(part.component, name)
    step = lcm(step, limits.step) if limits else step
    least, most = (limits.least, limits.most) if limits else (1, None)
    steps = half_up(number * (factor - 1) / step)
    fewest = -((number - max(1, least)) // step)
    steps = max(steps, Fraction(fewest))
    if most is not None:
        steps = min(steps, Fraction((most - number) // step))
    return number + int(steps) * step

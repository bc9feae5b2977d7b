"""Where each part of a finished blanket lies, at its own gauge: what a schematic draws."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.constructions import Part, Plan, Section
from counterpane.craft.constructions.edges import Edges, edges_beside
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.constructions.settling import Block, Settled, settle
from counterpane.craft.stitches import Vocabulary

Role = Literal["end", "side", "selvedge", "body"]


@dataclass(frozen=True, slots=True)
class Zone:
    """A rectangle of one part, in centimetres from the lower left corner of the widest section.

    `order` counts the sections in the order of work; parts worked side by side have the same. `stitches` and `rows` are
    those of the part, whose rows run outwards in a border that is picked up.
    """

    name: str
    slug: str
    role: Role
    order: int
    left_cm: Fraction
    foot_cm: Fraction
    width_cm: Fraction
    length_cm: Fraction
    stitches: int
    rows: int


def zones(plan: Plan, vocabulary: Vocabulary) -> tuple[Zone, ...]:
    """Return the zones of a piece worked upwards; a section that is narrower than another is centred on it."""
    settled = settle(plan.request, vocabulary)
    beside = edges_beside(settled, plan.counts.cast_on)
    widest = widest_cm(plan)
    made: list[Zone] = []
    foot = Fraction(0)
    for order, (block, edges, section) in enumerate(zip(settled.blocks, beside, plan.sections, strict=True), start=1):
        wide = lies_cm(plan, section)
        left = (widest - wide) / 2
        for name, role, part, stitches in _across(settled, block, edges):
            width = gauge_of(settled.request, part, vocabulary).gauge.width(stitches) * wide / section.cm_width
            slug = part.component.slug
            lies = (left, foot, width, section.cm_length, stitches, section.rows)
            made.append(Zone(name or section.name, slug, role, order, *lies))
            left += width
        foot += section.cm_length
    return (*made, *_picked(plan, widest))


def widest_cm(plan: Plan) -> Fraction:
    """Return how wide the piece lies at its widest, with the borders that are picked up beside it."""
    return plan.width_cm if plan.picked else max(section.cm_width for section in plan.sections)


def lies_cm(plan: Plan, section: Section) -> Fraction:
    """Return how wide a section lies: at its own gauge, but as wide as the body where both edges are picked up."""
    if not plan.picked:
        return section.cm_width
    return plan.width_cm - sum((edge.border.cm_length for edge in plan.picked), Fraction(0))


def _picked(plan: Plan, widest: Fraction) -> Iterator[Zone]:
    """Give the borders that are picked up along the long edges and worked outwards."""
    for order, edge in enumerate(plan.picked, start=len(plan.sections) + 1):
        border = edge.border
        left = Fraction(0) if edge.edge == "left" else widest - border.cm_length
        lies = (left, Fraction(0), border.cm_length, plan.length_cm, border.before, border.rows)
        yield Zone(border.name, border.texture, "side", order, *lies)


def _across(settled: Settled, block: Block, edges: Edges) -> list[tuple[str, Role, Part, int]]:
    """Return what lies across a section from the left of its right side, with its stitches."""
    request = settled.request
    sides, selvedge = edges.sides.widths, edges.selvedge.widths
    own: Role = "body" if block in settled.bands else "end"
    across: list[tuple[str, Role, Part | None, int]] = [
        ("left selvedge", "selvedge", request.selvedge, selvedge[1]),
        ("left side", "side", request.sides, sides[1]),
        ("", own, block.part, edges.inner),
        ("right side", "side", request.sides, sides[0]),
        ("right selvedge", "selvedge", request.selvedge, selvedge[0]),
    ]
    return [(name, role, part, stitches) for name, role, part, stitches in across if part and stitches]

"""Where a stripe begins: rows that are the first of a yarn, and what they show of the yarn before."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.fabric.faces import shows_purl
from counterpane.craft.rows.tree import Side
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.choosing import yarn_of
from counterpane.craft.yarn.values import Yarn


@dataclass(frozen=True, slots=True)
class Bumps:
    """The first row of a stripe that shows purl faces on the right side: its row of the blanket, and how many more."""

    yarn: Yarn
    row: int
    more: int


def bumps(plan: Plan, yarns: Sequence[Yarn], vocabulary: Vocabulary) -> tuple[Bumps, ...]:
    """Return for each yarn the first of its rows that begins a stripe with purl faces on the right side.

    A purl face draws the loop of the row below to the front: the line between two colours is broken there. Rows that
    name colours of their own are left aside.
    """
    found: dict[int, list[int]] = {}
    for row, place in _begins(plan, yarns, vocabulary):
        found.setdefault(place, []).append(row)
    return tuple(Bumps(yarns[place], rows[0], len(rows) - 1) for place, rows in sorted(found.items()))


def _begins(plan: Plan, yarns: Sequence[Yarn], vocabulary: Vocabulary) -> Iterator[tuple[int, int]]:
    """Give the rows with purl faces on the right side that are the first of a yarn, with the place of the yarn."""
    before = yarn_of(yarns, "cast_on")
    for section in plan.sections:
        for index in range(section.rows):
            place = yarn_of(yarns, section.name, index + 1)
            if place != before and index + section.first_row > 1 and _shows(section, index, vocabulary):
                yield section.first_row + index, place
            before = place


def _shows(section: Section, index: int, vocabulary: Vocabulary) -> bool:
    parts = section.cycle[index % len(section.cycle)].parts
    return shows_purl(parts, _side(section, index), vocabulary)


def _side(section: Section, index: int) -> Side:
    other: Side = "WS" if section.first_row_side == "RS" else "RS"
    return other if index % 2 and section.first_row_side != "round" else section.first_row_side

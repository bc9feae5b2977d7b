"""Where an end border meets a band of the body: their sections, the stitches beside the band, the rows at the seam."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from counterpane.craft.constructions import Part, Plan, PlanRequest, Section
from counterpane.craft.constructions.joining import Nodes, closed, head, tail
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Vocabulary

End = Literal["bottom", "top"]


def band_section(plan: Plan, band: int) -> Section:
    """Return the section of a band of the body, counted from 0."""
    return plan.sections[band + (plan.request.bottom is not None)]


def edges_of(plan: Plan, band: int) -> tuple[int, int]:
    """Return the stitches beside a band at the right and at the left edge, selvedge and side border together."""
    spare = plan.counts.cast_on - 2 * plan.counts.selvedge - plan.counts.body[band]
    return plan.counts.selvedge + spare // 2, plan.counts.selvedge + spare - spare // 2


def band_name(request: PlanRequest, band: int) -> str:
    """Return what a band of the body is called, counted from 0: "body", or "body 1" where there are several."""
    return f"body {band + 1}" if len(request.body) > 1 else "body"


def the_band(name: str) -> str:
    """Return the name of a band as it stands in a sentence: "the body", "body 2"."""
    return name if name[-1].isdigit() else f"the {name}"


@dataclass(frozen=True, slots=True)
class Place:
    """One end of a plan: its border and the band of the body that meets it."""

    plan: Plan
    end: End
    band: int
    vocabulary: Vocabulary

    @property
    def border(self) -> Part | None:
        """The end border, None where there is none."""
        return self.plan.request.bottom if self.end == "bottom" else self.plan.request.top

    @property
    def inner(self) -> int:
        """Stitches of the band."""
        return self.plan.counts.body[self.band]

    def rows(self) -> Iterator[tuple[Section, Row, int]]:
        """Give the row of the border and the row of the body that meet, each with its place in its section."""
        border = self.plan.sections[0 if self.end == "bottom" else -1]
        for section, last in (
            (border, self.end == "bottom"),
            (band_section(self.plan, self.band), self.end == "top"),
        ):
            at = section.rows if last else 1
            yield section, section.cycle[(at - 1) % len(section.cycle)], at

    def cut(self, row: Row, stitches: int) -> tuple[Nodes, Nodes, Nodes]:
        """Return a row as its beginning edge, what lies between, and its closing edge; CannotJoin where none is."""
        right, left = edges_of(self.plan, self.band)
        first, last = (right, left) if row.side == "RS" else (left, right)
        whole = closed(row.parts, stitches, self.vocabulary)
        inner = tail(head(whole, stitches - last, self.vocabulary), stitches - last - first, self.vocabulary)
        return head(whole, first, self.vocabulary), inner, tail(whole, last, self.vocabulary)


def ends_of(plan: Plan, vocabulary: Vocabulary) -> tuple[Place, ...]:
    """Return the ends of a plan that have a border, from the bottom up."""
    both = Place(plan, "bottom", 0, vocabulary), Place(plan, "top", len(plan.request.body) - 1, vocabulary)
    return tuple(place for place in both if place.border is not None)

"""Ways of building a blanket: one file each, behind `arrange(request, vocabulary)`; and the values they share."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.component import Component
from counterpane.craft.constructions.picking import Stretch
from counterpane.craft.findings import Finding
from counterpane.craft.measures import Gauge
from counterpane.craft.rows.tree import Row, Side

PartName = Literal["cast_on", "bottom", "sides", "selvedge", "body", "top", "bind_off"]
Corner = Literal["ends", "sides"]
Unit = Literal["cm", "in"]


@dataclass(frozen=True, slots=True)
class Part:
    """A component or a text of the request in its place.

    `component` is set for a stored part and also for a part given in words, which then has the slug "".
    `rows` and `stitches` are the parameters given, None where not; `left` the text of the left side where it is not the
    mirror of the right one.
    """

    component: Component
    rows: int | None = None
    stitches: int | None = None
    left: str | None = None


@dataclass(frozen=True, slots=True)
class PlanRequest:
    """A recipe at a gauge and a size. Lengths are centimetres. A border, side or selvedge of None is not worked.

    `gauges` hold at least one; the first with `texture` None or a body's slug is the body's.
    `units` are those in which width and length were asked for, and in which corrections of them are given.
    `picked` are side borders that are picked up along the finished middle, `sides` those worked with it; never both.
    `corner` "ends" lets bottom and top run the full width, "sides" lets the side borders run through.
    """

    cast_on: Part
    bottom: Part | None
    sides: Part | None
    selvedge: Part | None
    body: tuple[Part, ...]
    top: Part | None
    bind_off: Part
    gauges: tuple[Gauge, ...]
    width_cm: Fraction
    length_cm: Fraction
    corner: Corner = "ends"
    construction: str = "one-piece"
    units: tuple[Unit, Unit] = ("cm", "cm")
    picked: Part | None = None


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch of rows that repeats: bottom, a body band, or top.

    `cycle` are the whole rows (selvedge to selvedge) of one vertical repeat, as working goes, each readable at the
    section's own count; the section works the first `rows` rows of the endless repetition of `cycle`.
    `stitches` counts the loops that its rows leave. `cm_width` and `cm_length` are exact, by the part's own gauge.
    `unwashed_cm` are width and length before the first wash, None where a swatch was not counted before its own.
    """

    name: str
    texture: str
    cycle: tuple[Row, ...]
    rows: int
    first_row: int
    before: int
    after: int
    first_row_side: Side
    last_row_side: Side
    stitches: int
    cm_width: Fraction
    cm_length: Fraction
    gauge_in: str | None
    unwashed_cm: tuple[Fraction, Fraction] | None = None


@dataclass(frozen=True, slots=True)
class Nearby:
    """An admissible cast-on near the wanted width, and how far it is off."""

    cast_on: int
    width_cm: Fraction
    error_cm: Fraction


@dataclass(frozen=True, slots=True)
class Counts:
    """Stitches: the whole cast-on, one side border, one selvedge, and body and repeats across for each band."""

    cast_on: int
    sides: int
    selvedge: int
    body: tuple[int, ...]
    repeats: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Give:
    """How far a size may be off by the reading of the swatches: two standard uncertainties either way, and the worst.

    `worst_cm` are the least and the greatest size with all errors the same way; the greatest None where nothing bounds
    it. Hands and washing come on top.
    """

    tolerance_cm: Fraction
    worst_cm: tuple[Fraction, Fraction | None]


@dataclass(frozen=True, slots=True)
class PickedEdge:
    """A border picked up along a long edge: its stitches, the stretches in the order they are met, and its rows."""

    edge: Literal["left", "right"]
    picks: int
    stretches: tuple[Stretch, ...]
    border: Section

    @property
    def need(self) -> Fraction:
        """Stitches that the edge needs to lie flat, exact."""
        return sum((each.need for each in self.stretches), Fraction(0))

    @property
    def places(self) -> int:
        """Places that the edge offers to pick up in."""
        return sum(each.places for each in self.stretches)


@dataclass(frozen=True, slots=True)
class Plan:
    """A recipe worked out: counts, sections with their rows, sizes and tolerances.

    `sections` go from the cast-on up to the bind-off; `picked` are borders worked outwards after it.
    """

    request: PlanRequest
    counts: Counts
    sections: tuple[Section, ...]
    width_cm: Fraction
    length_cm: Fraction
    width_give: Give
    length_give: Give
    nearest: tuple[Nearby, ...]
    stitches_total: int
    findings: tuple[Finding, ...] = ()
    picked: tuple[PickedEdge, ...] = ()

    @property
    def every_section(self) -> tuple[Section, ...]:
        """All sections in working order, those of picked-up borders last."""
        return (*self.sections, *(edge.border for edge in self.picked))


class CannotBePlanned(Exception):
    """No plan exists for the request; the findings say why, with the smallest changes that make one."""

    def __init__(self, findings: tuple[Finding, ...]) -> None:
        super().__init__("; ".join(finding.message for finding in findings))
        self.findings = findings

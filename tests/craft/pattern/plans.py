"""Plans built by hand, so that a pattern is tested against rows that nobody worked out for it. Figures are invented."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from counterpane.craft.component import Component, Kind, Operation, Provenance, SafetyNotes
from counterpane.craft.constructions import Counts, Give, Part, Plan, PlanRequest, Section
from counterpane.craft.measures import Gauge
from counterpane.craft.rows.instructions import read_text
from counterpane.craft.stitches import Vocabulary
from counterpane.seeding import load_vocabulary

GAUGE = Gauge(Fraction(22), Fraction(30), texture="waffle")
LONG_TAIL = Operation(("Make a slip knot.", "Turn, so that row 1 faces the bumps."), turn=True, faces_row_1="bumps")
PLAIN = Operation(("Work 2 stitches, pass the first over the second.", "Repeat to the end."))


@cache
def vocabulary() -> Vocabulary:
    """Return the stitches that ship with the library."""
    return load_vocabulary()


def part(slug: str, kind: Kind, name: str, operation: Operation | None = None, **more: object) -> Part:
    """Return a part with a component of this name and nothing else known of it."""
    provenance = Provenance("common-practice", "CC0-1.0", "counterpane-starters")
    return Part(Component(slug, kind, name, "", provenance, SafetyNotes(), operation=operation, **more))  # type: ignore[arg-type]


def section(name: str, texture: str, text: str, *, first_row: int, rows: int, sts: int) -> Section:
    """Return a section whose cycle is read from a text and whose count does not change."""
    cycle = read_text(text, vocabulary()).rows
    first = "RS" if first_row % 2 else "WS"
    last = "RS" if (first_row + rows) % 2 == 0 else "WS"
    width, length = GAUGE.width(sts), GAUGE.length(rows)
    return Section(name, texture, cycle, rows, first_row, sts, sts, first, last, sts * rows, width, length, "waffle")  # type: ignore[arg-type]


def plan(body: str, *sections: Section, sides: int = 6, selvedge: int = 0, cast_on: Operation = LONG_TAIL) -> Plan:
    """Return a plan of these sections, one-piece, with a body of this name."""
    sts, rows = sections[0].before, sum(part.rows for part in sections)
    border = part("garter-border", "border", "Garter border")
    request = PlanRequest(
        cast_on=part("long-tail", "cast-on", "Long-tail cast-on", cast_on),
        bottom=border,
        sides=border if sides else None,
        selvedge=part("edge", "selvedge", "Slipped selvedge") if selvedge else None,
        body=(part(body.lower().replace(" ", "-"), "body", body),),
        top=border,
        bind_off=part("plain-bind-off", "bind-off", "Plain bind-off", PLAIN),
        gauges=(GAUGE,),
        width_cm=Fraction(70),
        length_cm=Fraction(90),
    )
    counts = Counts(sts, sides, selvedge, (sts - 2 * sides - 2 * selvedge,), (1,))
    size = GAUGE.width(sts), GAUGE.length(rows), _give(Fraction(9, 10)), _give(Fraction(6, 5))
    return Plan(request, counts, sections, *size, (), sum(part.stitches for part in sections) + sts)


def _give(tolerance: Fraction) -> Give:
    """Return a tolerance that is the worst case too."""
    return Give(tolerance, (tolerance, tolerance))


def waffle() -> Plan:
    """Return a waffle of 45 and a half repeats between garter borders of 12 and 16 rows."""
    garter = "Row 1 (RS): knit.\nRow 2 (WS): knit."
    body = """
Row 1 (RS): k6, p1, *k2, p1; rep from * to last 6 sts, k6.
Row 2 (WS): k6, k1, *p2, k1; rep from * to last 6 sts, k6.
Row 3 (RS): k6, p1, *k2, p1; rep from * to last 6 sts, k6.
Row 4 (WS): knit."""
    return plan(
        "Waffle",
        section("bottom", "garter-border", garter, first_row=1, rows=12, sts=151),
        section("body", "waffle", body, first_row=13, rows=182, sts=151),
        section("top", "garter-border", garter, first_row=195, rows=16, sts=151),
    )


def moss() -> Plan:
    """Return seed stitch (UK moss) throughout, whose one row repeats on both sides."""
    row = "Row 1 (RS): k1, *p1, k1; rep from * to end."
    return plan(
        "Seed stitch (UK moss stitch)",
        section("bottom", "seed-stitch", row, first_row=1, rows=8, sts=99),
        section("body", "seed-stitch", row, first_row=9, rows=100, sts=99),
        section("top", "seed-stitch", row, first_row=109, rows=8, sts=99),
        sides=0,
    )


def eyelets() -> Plan:
    """Return eyelets and a cable between edges that are slipped, with counts that change inside the repeat."""
    garter = "Row 1 (RS): sl 1 pwise wyif, wyib, k to end.\nRow 2 (WS): sl 1 pwise wyif, wyib, k to end."
    body = """
Row 1 (RS): sl 1 pwise wyif, wyib, k4, *k2, yo; rep from * to last 9 sts, c4f, k5.
Row 2 (WS): sl 1 pwise wyif, wyib, k4, p4, *p2tog, p1; rep from * to last 5 sts, k5.
Row 3 (RS): sl 1 pwise wyif, wyib, k to end.
Row 4 (WS): sl 1 pwise wyif, wyib, k4, p to last 5 sts, k5."""
    return plan(
        "Eyelets and ropes",
        section("bottom", "garter-border", garter, first_row=1, rows=10, sts=54),
        section("body", "eyelets-and-ropes", body, first_row=11, rows=80, sts=54),
        section("top", "garter-border", garter, first_row=91, rows=10, sts=54),
        sides=4,
        selvedge=1,
    )

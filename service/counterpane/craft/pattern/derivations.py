"""Why each number of a plan is what it is: the sums that give it, and what is allowed just below and above it.

The numbers themselves are worked out in `constructions`; the sums are told from the same parts, and tests hold them
against the plan. Products are written with "×", quotients with "÷"; decimals are shown to 0.1, half up.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.component import derive
from counterpane.craft.constructions import Part, Plan, Section
from counterpane.craft.constructions.fitting import demands, width_cm
from counterpane.craft.constructions.gauging import body_gauge, gauge_of
from counterpane.craft.constructions.settling import Block, Settled, settle
from counterpane.craft.constructions.zones import Zone, zones
from counterpane.craft.counts import Progression
from counterpane.craft.measures import Gauge, shown
from counterpane.craft.pattern.figures import both, cm, counted, number
from counterpane.craft.pattern.multiples import cast_on_counts, say_multiple, takes
from counterpane.craft.pattern.parts import called, parts_of, section_name
from counterpane.craft.stitches import Terms, Vocabulary

_GIVEN = "asked for, or the usual where nothing is asked"
"""Where a number comes from that is settled before any count is."""


@dataclass(frozen=True, slots=True)
class Derivation:
    """A number of a plan with its unit, the sums that give it in order, and the nearest allowed below and above."""

    name: str
    number: Fraction
    unit: str
    sums: tuple[str, ...]
    below: int | None = None
    above: int | None = None

    @property
    def value(self) -> str:
        """The number with its unit: 153 stitches, 69.9 cm (27½ in)."""
        if self.unit == "cm":
            return both(self.number)
        return counted(int(self.number), *(("stitch", "stitches") if self.unit == "stitches" else ("row",)))


def derivations(plan: Plan, vocabulary: Vocabulary, terms: Terms) -> tuple[Derivation, ...]:
    """Return the derivations of a plan, from its cast-on to all its stitches."""
    settled = settle(plan.request, vocabulary)
    return (
        _cast_on(plan, settled, terms),
        *_sides(plan),
        *_bodies(plan, settled, terms),
        *_rows(plan, settled),
        _width(plan, vocabulary),
        _length(plan, settled),
        *_picked(plan, vocabulary),
        _stitches(plan),
    )


def _rate(gauge: Gauge, what: str) -> str:
    """Say how many stitches or rows a gauge has: "22 ÷ 10 cm"."""
    one = gauge.one
    return f"{number(one.stitches if what == 'stitches' else one.rows)} ÷ {number(one.over_cm)} cm"


def _cast_on(plan: Plan, settled: Settled, terms: Terms) -> Derivation:
    """Tell the count of the whole cast-on: wanted, what each part takes, and the nearest that suits all."""
    request, vocabulary, cast_on = plan.request, settled.vocabulary, plan.counts.cast_on
    counts, gauge = cast_on_counts(plan, vocabulary), body_gauge(request).gauge
    beside = settled.edge + 2 * settled.sides
    wanted = (
        f"({number(request.width_cm)} − {shown(settled.edge_cm)}) cm × {_rate(gauge, 'stitches')} = "
        f"{shown(settled.target - beside)} of the body, + {beside} at the sides = {shown(settled.target)} wanted."
    )
    asked = (
        _demand(block, settled, demand.classes, terms)
        for block, demand in zip(settled.blocks, demands(settled), strict=True)
    )
    near = (counts.below(cast_on - 1), counts.above(cast_on + 1)) if counts.of else (None, None)
    chosen = f"Nearest to {shown(settled.target)} of {say_multiple(counts)}: {_wide(settled, cast_on)}."
    others = "; ".join(
        f"{where} it {_wide(settled, count)}" for where, count in zip(("below", "above"), near, strict=True) if count
    )
    first = f"Wanted width {both(request.width_cm)}; what lies at the sides takes {both(settled.edge_cm)} of it."
    sums = (first, wanted, *asked, chosen, *([f"{others[0].upper()}{others[1:]}."] if others else []))
    return Derivation("Cast-on", Fraction(cast_on), "stitches", sums, *near)


def _demand(block: Block, settled: Settled, classes: Sequence[Progression], terms: Terms) -> str:
    """Say what a part takes by itself, and so of the whole cast-on."""
    name, own = called(block.part.component, terms), takes(block.part.component, settled.vocabulary)
    beside = settled.beside(block)
    whole = " or ".join(map(say_multiple, classes))
    return f"{block.name.capitalize()}, {name}: {own}; with {beside} beside it a cast-on of {whole}."


def _wide(settled: Settled, count: int) -> str:
    width = width_cm(settled, count)
    off = width - settled.request.width_cm
    return f"{count}, {both(width)} ({'+' if off >= 0 else '−'}{shown(abs(off))} cm)"


def _sides(plan: Plan) -> Iterator[Derivation]:
    request, counts = plan.request, plan.counts
    for name, part, stitches in (
        ("Side border, each side", request.sides, counts.sides),
        ("Selvedge, each side", request.selvedge, counts.selvedge),
    ):
        if part is not None:
            yield Derivation(name, Fraction(stitches), "stitches", (f"{stitches} on each side, {_GIVEN}.",))


def _bodies(plan: Plan, settled: Settled, terms: Terms) -> Iterator[Derivation]:
    """Tell the stitches of each band: what the sides leave, in repeats and balancing stitches."""
    counts = plan.counts
    for band, stitches, repeats in zip(settled.bands, counts.body, counts.repeats, strict=True):
        left = _left(plan, stitches)
        split = _split(band.part, stitches, repeats, settled.vocabulary)
        name = f"{band.name.capitalize()}, {called(band.part.component, terms)}"
        yield Derivation(name, Fraction(stitches), "stitches", (left, *split))


def _left(plan: Plan, stitches: int) -> str:
    """Say what is taken from the cast-on for the sides; one side may have a stitch more than the other."""
    counts = plan.counts
    more = counts.cast_on - 2 * counts.sides - 2 * counts.selvedge - stitches
    taken = (
        f" − 2 × {counts.sides} of border" if counts.sides else "",
        f" − 2 × {counts.selvedge} of selvedge" if counts.selvedge else "",
        f" − {more} more at one side" if more else "",
    )
    if not any(taken):
        return f"{counts.cast_on}, the whole cast-on: nothing is worked beside it."
    return f"{counts.cast_on}{''.join(taken)} = {stitches}."


def _split(part: Part, stitches: int, repeats: int, vocabulary: Vocabulary) -> Iterator[str]:
    version = derive(part.component, vocabulary).version_for(stitches)
    start = next((start for start in version.starts if start.admits(stitches)), None) if version else None
    if start is not None and start.of:
        rest = stitches - repeats * start.of
        balance = f" + {counted(rest, 'stitch', 'stitches')} outside the repeat, for balance" if rest else ""
        yield f"{stitches} = {repeats} × {start.of}{balance}."


def _rows(plan: Plan, settled: Settled) -> Iterator[Derivation]:
    """Tell the rows of each part: asked for, or what is left of the length in whole repeats."""
    reached = Fraction(0)
    lengths = [section.cm_length for section in plan.sections]
    for place, (block, section) in enumerate(zip(settled.blocks, plan.sections, strict=True)):
        name = f"Rows of {section_name(section).lower()}"
        if block.rows is not None:
            told = f"{counted(section.rows, 'row')}, {_GIVEN}: {both(section.cm_length)}."
            yield Derivation(name, Fraction(section.rows), "rows", (told,))
        else:
            yield _free(plan, settled, place, name, reached)
        reached += lengths[place]


def _free(plan: Plan, settled: Settled, place: int, name: str, reached: Fraction) -> Derivation:
    section, block = plan.sections[place], settled.blocks[place]
    gauge = gauge_of(plan.request, block.part, settled.vocabulary).gauge
    later = list(zip(settled.blocks, plan.sections, strict=True))[place + 1 :]
    fixed = sum((part.cm_length for other, part in later if other.rows is not None), Fraction(0))
    bands = 1 + sum(other.rows is None for other, _ in later)
    share = (plan.request.length_cm - reached - fixed) / bands
    period = len(section.cycle)
    among = f", shared by {bands} bands" if bands > 1 else ""
    sums = (
        f"{number(plan.request.length_cm)} cm − {shown(reached + fixed)} cm of other parts = {both(share)}{among}.",
        f"{shown(share)} cm × {_rate(gauge, 'rows')} = {shown(share * gauge.rows_per_cm)} rows wanted.",
        f"Taken in repeats of {counted(period, 'row')} (half a repeat where it ends as it begins), so that the next "
        f"part begins on its side: {section.rows} = {section.rows // period} × {period}"
        f"{f' + {section.rows % period}' if section.rows % period else ''}.",
    )
    below = section.rows - period
    return Derivation(name, Fraction(section.rows), "rows", sums, below if below > 0 else None, section.rows + period)


def _width(plan: Plan, vocabulary: Vocabulary) -> Derivation:
    """Tell the width of the body, part by part at its own gauge."""
    body = next(place for place, section in enumerate(plan.sections, 1) if section.name.startswith("body"))
    across = [zone for zone in zones(plan, vocabulary) if zone.order == body or zone.order > len(plan.sections)]
    sums = tuple(f"{_role(zone)}: {_across(zone, plan, vocabulary)} = {cm(zone.width_cm)}." for zone in across)
    return Derivation("Finished width", plan.width_cm, "cm", (*sums, _give(plan.width_give.tolerance_cm)))


def _role(zone: Zone) -> str:
    return f"{zone.name.replace('_', ' ').capitalize()} ({zone.slug or 'the rows given'})"


def _across(zone: Zone, plan: Plan, vocabulary: Vocabulary) -> str:
    """Say the stitches of a part that is worked upwards, or the rows of a border outwards, over its own gauge."""
    outwards = zone.order > len(plan.sections)
    amount = counted(zone.rows, "row") if outwards else counted(zone.stitches, "stitch", "stitches")
    part = next(part for part in parts_of(plan.request) if part.component.slug == zone.slug)
    found = gauge_of(plan.request, part, vocabulary)
    borrowed = ", borrowed" if found.borrowed else ""
    return f"{amount} ÷ ({_rate(found.gauge, 'rows' if outwards else 'stitches')}{borrowed})"


def _give(tolerance: Fraction) -> str:
    return f"Give or take {both(tolerance)}: what reading the swatches leaves open."


def _length(plan: Plan, settled: Settled) -> Derivation:
    sums = tuple(
        f"{section_name(section)}: {_long(section, settled.blocks[place].part, settled)} = {cm(section.cm_length)}."
        for place, section in enumerate(plan.sections)
    )
    return Derivation("Finished length", plan.length_cm, "cm", (*sums, _give(plan.length_give.tolerance_cm)))


def _long(section: Section, part: Part, settled: Settled) -> str:
    found = gauge_of(settled.request, part, settled.vocabulary)
    borrowed = ", borrowed" if found.borrowed else ""
    return f"{counted(section.rows, 'row')} ÷ ({_rate(found.gauge, 'rows')}{borrowed})"


def _picked(plan: Plan, vocabulary: Vocabulary) -> Iterator[Derivation]:
    """Tell the stitches picked up along one long edge; the other has as many."""
    for edge in plan.picked[:1]:
        part = plan.request.picked
        needs = (
            f"{each.name}: {counted(each.rows, 'row')} need {shown(each.need)}, offer {each.places} places, get "
            f"{each.picks}."
            for each in edge.stretches
        )
        own = takes(part.component, vocabulary) if part else ""
        chosen = f"{shown(edge.need)} needed in all; the border takes {own}: {edge.picks}."
        yield Derivation("Picked up along each edge", Fraction(edge.picks), "stitches", (*needs, chosen))


def _stitches(plan: Plan) -> Derivation:
    sums = [
        f"{section_name(section)}: {counted(section.rows, 'row')}, {counted(section.stitches, 'stitch', 'stitches')}."
        for section in plan.every_section
    ]
    last = counted(plan.sections[-1].after, "loop")
    ends = f"Bind-off: {last}. A cast-on makes its loops and works none."
    more = (
        f"Each picked-up border: {counted(edge.picks, 'loop')} picked up and {edge.border.after} bound off."
        for edge in plan.picked[:1]
    )
    return Derivation("All stitches", Fraction(plan.stitches_total), "stitches", (*sums, ends, *more))

"""What a pattern says beside its rows: materials, what to mind, and care. Common practice, no source."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan, Section
from counterpane.craft.pattern import Entry
from counterpane.craft.pattern.figures import both, counted
from counterpane.craft.pattern.multiples import cast_on_takes, takes
from counterpane.craft.pattern.parts import called, components_of, parts_of
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.pattern.yarns import needle_entries, yarn_entries
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.yarn import YarnEstimate
from counterpane.craft.yarn.needles import NeedleAdvice

CARE = "Not known: follow the yarn's label, and where two yarns differ the milder of the two."
_OF_THE_REQUEST = ("/gauge", "/size")
"""Places of a plan request that a knitter cannot change."""


def materials(
    plan: Plan, yarn: YarnEstimate | None, needles: NeedleAdvice | None, notions: Iterable[Entry], terms: Terms
) -> tuple[Entry, ...]:
    """List yarn, needles and notions; what is not known is said to be so."""
    told = (*yarn_entries(yarn), *needle_entries(plan, needles, terms), *notions)
    return tuple(Entry(entry.name, in_terms(f"{entry.text.removesuffix('.')}.", terms)) for entry in told)


def _worked(plan: Plan) -> list[Component]:
    return [part.component for part in parts_of(plan.request) if part.component.operation is None]


def notes(plan: Plan, vocabulary: Vocabulary, terms: Terms) -> tuple[str, ...]:
    """Say how the piece is built and what to mind, then what the plan and its parts have to say."""
    told = (
        *_construction(plan),
        *_multiples(plan, vocabulary, terms),
        *_slipping(plan),
        *_findings(plan),
        *_parts(plan, terms),
    )
    return tuple(dict.fromkeys(in_terms(note, terms) for note in told if note))


def _construction(plan: Plan) -> Iterator[str]:
    counts = plan.counts
    inside = counts.sides + counts.selvedge
    if inside:
        edge = f" ({counts.sides} of border and {counts.selvedge} of selvedge)" if counts.selvedge else ""
        yield (
            f"The side borders are worked with the body: the first and the last {inside} stitches of its rows{edge}."
        )
    if counts.sides and (plan.request.bottom or plan.request.top):
        full = "The end borders run the full width" if plan.request.corner == "ends" else "The side borders run through"
        yield f"{full} at the corners."
    if plan.picked:
        rows, picks = plan.picked[0].border.rows, plan.picked[0].picks
        yield (
            f"The middle is finished first; then {picks} stitches are picked up along each long edge and a border of "
            f"{counted(rows, 'row')} is worked outwards. Work the left edge first, from where the bind-off ends."
        )
    yield "Row counts decide; a length is a check. Measure flat and unstretched, never on a bunched needle."
    unwashed = _body(plan).unwashed_cm
    wanted = "what the size above says" if unwashed is None else f"about {both(unwashed[0])}, as before the wash"
    if plan.picked and unwashed is None:
        wanted = f"about {both(_body(plan).cm_width)}, as the side borders come later"
    yield (
        f"After about 12 cm (5 in) measure the width: if it is not {wanted}, the gauge is another one and the length "
        "will differ too."
    )


def _multiples(plan: Plan, vocabulary: Vocabulary, terms: Terms) -> Iterator[str]:
    """Say which counts each part takes, and which the whole cast-on takes for all of them."""
    worked = dict.fromkeys(part for part in parts_of(plan.request) if part.component.kind in ("border", "body"))
    told = dict.fromkeys(f"{called(part.component, terms)}: {takes(part.component, vocabulary)}" for part in worked)
    yield f"Multiples that the parts take: {'; '.join(told)}."
    yield f"Multiple that the whole cast-on takes, with the stitches at its sides: {cast_on_takes(plan, vocabulary)}."


def _body(plan: Plan) -> Section:
    """Return the section of the body whose width is that of the piece."""
    bodies = [section for section in plan.sections if section.name.startswith("body")]
    return next((section for section in bodies if section.cm_width == plan.width_cm), bodies[0])


def _slipping(plan: Plan) -> Iterator[str]:
    for component in components_of(plan):
        if edge := component.slipped_edge:
            manner = {"pwise": "purlwise", "kwise": "knitwise"}[edge.manner]
            place = {"front": "in front", "back": "at the back"}[edge.yarn]
            yield (
                f"Slip the edge stitch {manner} with the yarn {place}; before a knit stitch take the yarn to the back "
                "between the needles, never over the needle."
            )


def _findings(plan: Plan) -> Iterator[str]:
    """Give what the rules say of the plan; a next step about the request is the designer's alone."""
    for finding in plan.findings:
        asks_for_figures = (finding.pointer or "").startswith(_OF_THE_REQUEST)
        yield finding.message if asks_for_figures else f"{finding.message} {finding.hint}".strip()


def _parts(plan: Plan, terms: Terms) -> Iterator[str]:
    """Give the notes of the parts worked in rows; those of cast-on and bind-off stand with them."""
    for component in _worked(plan):
        if component.gauge_notes:
            yield f"{called(component, terms)}: {component.gauge_notes}"


def summary(plan: Plan, terms: Terms) -> str:
    """Say in one sentence what is made, and in how many stitches and rows."""
    if plan.picked:
        return in_terms(_middle_first(plan), terms)
    borders = ", with its borders" if plan.counts.sides else ""
    stitches = counted(plan.counts.cast_on, "stitch", "stitches")
    rows = counted(sum(section.rows for section in plan.sections), "row")
    return in_terms(f"A blanket in one piece{borders}, worked flat from the bottom up: {stitches}, {rows}.", terms)


def _middle_first(plan: Plan) -> str:
    """Say the same of a piece whose side borders are picked up."""
    stitches = counted(plan.counts.cast_on, "stitch", "stitches")
    rows = counted(sum(section.rows for section in plan.sections), "row")
    return (
        f"A blanket worked flat from the bottom up in {stitches} and {rows}, with side borders picked up along its "
        f"long edges: {plan.picked[0].picks} stitches each."
    )

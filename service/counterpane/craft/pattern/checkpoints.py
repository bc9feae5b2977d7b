"""Where a knitter looks up from the needles: rows done, ridges to count, length to measure, the side of the next row."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from counterpane.craft.component import Operation
from counterpane.craft.constructions import Plan, Section
from counterpane.craft.pattern import Checkpoint
from counterpane.craft.pattern.figures import both, counted, percent
from counterpane.craft.pattern.ridges import edge_is_garter, is_garter, ridges, shows_as_ridge
from counterpane.craft.pattern.rows import side_of
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.tree import Row, Side
from counterpane.craft.stitches import Terms

_OTHER: dict[Side, Side] = {"RS": "WS", "WS": "RS", "round": "round"}


def checkpoints(plan: Plan, index: int, listed: Sequence[Row], terms: Terms) -> tuple[Checkpoint, ...]:
    """Return the checkpoints of a section: after its first repeat where it has several, and at its end."""
    section = plan.sections[index]
    first = [] if len(listed) * 2 > section.rows or is_garter(listed) else [_first_repeat(section, listed)]
    return (*first, _end(plan, index, listed, terms))


def stop(plan: Plan, index: int, terms: Terms) -> str:
    """Say where a section ends and on which side the next row is worked."""
    section = plan.sections[index]
    last, side = _last_row(section), _OTHER[section.last_row_side]
    here = f"Stop after row {last} of the blanket, a {section.last_row_side} row."
    if index + 1 == len(plan.sections):
        return in_terms(f"{here} Bind off on the next row, a {side} row.", terms)
    return f"{here} The next row is a {side} row.{_still_to_come(plan, index)}"


def _first_repeat(section: Section, listed: Sequence[Row]) -> Checkpoint:
    rows = len(listed)
    at = section.first_row + rows - 1
    return Checkpoint(
        rows, at, f"After the first {rows} rows of this part (row {at} of the blanket) one repeat is complete."
    )


def _end(plan: Plan, index: int, listed: Sequence[Row], terms: Terms) -> Checkpoint:
    section = plan.sections[index]
    seen = _seen(plan, index, listed, terms)
    long = sum((part.cm_length for part in plan.sections[: index + 1]), Fraction(0))
    text = (
        f"{counted(section.rows, 'row')} worked{': ' + seen if seen else ''}. {counted(section.after, 'stitch', 'stitches')}"
        f" on the needle; the piece measures about {both(long)}."
    )
    return Checkpoint(section.rows, _last_row(section), text)


def _seen(plan: Plan, index: int, listed: Sequence[Row], terms: Terms) -> str:
    """Say how many ridges to count, in the section itself or along its side border; empty where there are none."""
    section, counts = plan.sections[index], plan.counts
    number = ridges(section.rows, section.first_row_side)
    if is_garter(listed):
        return f"{counted(number, 'ridge')} on the right side{_of_the_cast_on(plan, index, number, terms)}"
    if edge_is_garter(listed, counts.selvedge, counts.sides):
        return f"{counted(number, 'ridge')} along each side border, on the right side"
    return ""


def _of_the_cast_on(plan: Plan, index: int, number: int, terms: Terms) -> str:
    """Say that the cast-on counts as one ridge more, where it looks like one."""
    part = plan.request.cast_on.component
    operation = part.operation or Operation(())
    if index > 0 or not shows_as_ridge(operation, plan.sections[0].first_row_side):
        return ""
    return f", and the bumps of the {in_terms(part.name, terms).lower()} look like one more ({number + 1} in all)"


def _still_to_come(plan: Plan, index: int) -> str:
    """Warn before the last part how much of the work is left; the bind-off takes its stitches once more."""
    if index + 2 != len(plan.sections):
        return ""
    bound_off = plan.sections[-1].after
    left = plan.sections[-1].stitches + bound_off
    share = percent(left, sum(section.stitches for section in plan.sections) + bound_off)
    return f" Before the last repeat, weigh the yarn that is left: about {share} in 100 stitches are still to come."


def _last_row(section: Section) -> int:
    return section.first_row + section.rows - 1

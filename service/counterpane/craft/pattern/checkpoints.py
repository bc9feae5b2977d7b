"""Where a knitter looks up: rows done, stitches, ridges, length, the side of the next row, and what should be seen."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from counterpane.craft.component import Operation
from counterpane.craft.constructions import Plan, Section
from counterpane.craft.pattern import Checkpoint
from counterpane.craft.pattern.figures import both, counted, percent
from counterpane.craft.pattern.looks import look_of
from counterpane.craft.pattern.parts import components_of
from counterpane.craft.pattern.ridges import edge_is_garter, is_garter, ridges, shows_as_ridge
from counterpane.craft.pattern.rows import next_side
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.tree import Row
from counterpane.craft.sizing.lengths import side_of
from counterpane.craft.stitches import Terms, Vocabulary

_SEEN_AT_ONCE = 2
"""Rows of a repeat that need no checkpoint of their own. House figure."""
_WEIGHED_BEFORE = 10
"""Rows of the body left, at least, when the yarn is weighed. House figure."""


def checkpoints(
    plan: Plan, index: int, listed: Sequence[Row], vocabulary: Vocabulary, terms: Terms
) -> tuple[Checkpoint, ...]:
    """Return the checkpoints of a section in order: after its first repeat, before its last one, at its end."""
    section = plan.sections[index]
    looks = seen(plan, section, vocabulary)
    repeat = _first_repeat(plan, index, listed, looks)
    return (*repeat, *_weighing(plan, index, listed), _end(plan, index, listed, looks, terms))


def seen(plan: Plan, section: Section, vocabulary: Vocabulary) -> str:
    """Say what the right side of a section should show, "" where that is not known."""
    texture = (part for part in components_of(plan) if part.slug == section.texture and part.operation is None)
    return next((look_of(part, vocabulary) for part in texture), "")


def stop(plan: Plan, index: int, terms: Terms) -> str:
    """Say where a section ends and on which side the next row is worked."""
    section = plan.sections[index]
    last, side = _last_row(section), next_side(section)
    here = f"Stop after row {last} of the blanket, a {section.last_row_side} row"
    if index + 1 == len(plan.sections):
        return in_terms(f"{here}: bind off on the next row, a {side} row.", terms)
    return f"{here}: the next row is a {side} row."


def _first_repeat(plan: Plan, index: int, listed: Sequence[Row], looks: str) -> tuple[Checkpoint, ...]:
    """Return the checkpoint after the first repeat of a texture; one of two rows is seen at once and needs none."""
    section, rows = plan.sections[index], len(listed)
    if rows <= _SEEN_AT_ONCE or section.rows < 2 * rows:
        return ()
    at, long = section.first_row + rows - 1, section.cm_length * rows / section.rows
    side = side_of(rows + 1, section.first_row_side)
    stitches = _after(section, listed)
    told = f"after the first {rows} rows of this part, row {at} of the blanket, one repeat is complete"
    needle = f"{counted(stitches, 'stitch', 'stitches')} on the needle, the repeat about {both(long)} long"
    text = f"{told}: {needle}, and the next row is a {side} row.{_shows(looks)}"
    return (Checkpoint(rows, at, text, stitches, side, _below(plan, index) + long, None, looks),)


def _after(section: Section, listed: Sequence[Row]) -> int:
    """Return the stitches after one repeat: those that its last change of the count left."""
    stated = [row.stated for row in listed if row.stated is not None]
    return stated[-1] if stated else section.before


def _shows(looks: str) -> str:
    return f" The right side shows {looks}." if looks else ""


def _weighing(plan: Plan, index: int, listed: Sequence[Row]) -> tuple[Checkpoint, ...]:
    """Return the checkpoint before the end of the body: how much work is still to come, while it can be corrected.

    The share is of stitches; the bind-off takes its stitches once more.
    """
    section, repeat = plan.sections[index], len(listed)
    rows = max(0, section.rows - _WEIGHED_BEFORE) // repeat * repeat
    if index + 2 != len(plan.sections) or not section.name.startswith("body") or not rows:
        return ()
    end, at = plan.sections[-1], section.first_row + rows - 1
    left = Fraction(section.stitches * (section.rows - rows), section.rows) + end.stitches + end.after
    share = percent(left, sum(part.stitches for part in plan.sections) + end.after)
    long = _below(plan, index) + section.cm_length * rows / section.rows
    side, stitches = side_of(rows + 1, section.first_row_side), _after(section, listed)
    text = (
        f"after {rows} rows of this part, row {at} of the blanket, weigh the yarn that is left; about {share} in 100 "
        f"of the blanket's stitches are still to come. {counted(stitches, 'stitch', 'stitches')} on the needle, the "
        f"piece about {both(long)} long; the next row is a {side} row."
    )
    return (Checkpoint(rows, at, text, stitches, side, long),)


def _end(plan: Plan, index: int, listed: Sequence[Row], looks: str, terms: Terms) -> Checkpoint:
    section, side = plan.sections[index], next_side(plan.sections[index])
    number, where = _ridges(plan, index, listed, terms)
    done = f"{counted(section.rows, 'row')} worked{': ' + where if where else ''}"
    needle = f"{counted(section.after, 'stitch', 'stitches')} on the needle"
    long = _long(plan.sections[: index + 1])
    text = f"{done}. {needle}; the piece measures about {long}; the {side} faces you next.{_shows(looks)}"
    exact = _below(plan, index) + section.cm_length
    return Checkpoint(section.rows, _last_row(section), text, section.after, side, exact, number, looks)


def _below(plan: Plan, index: int) -> Fraction:
    """Return how long the sections below one are together."""
    return sum((part.cm_length for part in plan.sections[:index]), Fraction(0))


def _long(sections: Sequence[Section]) -> str:
    """Say how long the sections are together, and where the swatches tell it also before the first wash."""
    long = both(sum((part.cm_length for part in sections), Fraction(0)))
    unwashed = [part.unwashed_cm[1] for part in sections if part.unwashed_cm is not None]
    if len(unwashed) < len(sections):
        return long
    return f"{both(sum(unwashed, Fraction(0)))} on the needle, and {long} after the wash"


def _ridges(plan: Plan, index: int, listed: Sequence[Row], terms: Terms) -> tuple[int | None, str]:
    """Return how many ridges to count, in the section itself or along its side border, and where; none without them."""
    section, counts = plan.sections[index], plan.counts
    number = ridges(section.rows, section.first_row_side)
    if is_garter(listed):
        return number, f"{counted(number, 'ridge')} on the right side{_of_the_cast_on(plan, index, number, terms)}"
    if edge_is_garter(listed, counts.selvedge, counts.sides):
        return number, f"{counted(number, 'ridge')} along each side border, on the right side"
    return None, ""


def _of_the_cast_on(plan: Plan, index: int, number: int, terms: Terms) -> str:
    """Say that the cast-on counts as one ridge more, where it looks like one."""
    part = plan.request.cast_on.component
    operation = part.operation or Operation(())
    if index > 0 or not shows_as_ridge(operation, plan.sections[0].first_row_side):
        return ""
    return f", and the bumps of the {in_terms(part.name, terms).lower()} look like one more ({number + 1} in all)"


def _last_row(section: Section) -> int:
    return section.first_row + section.rows - 1

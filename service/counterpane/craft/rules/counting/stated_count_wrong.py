"""A printed count that is not true."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, pointing, said, trouble
from counterpane.craft.checking.troubles import cast_on_is_outside, multiple_is_wrong
from counterpane.craft.checking.wording import at, either, row_name, stitches
from counterpane.craft.findings import Finding, Severity, rule
from counterpane.craft.rows.statements import StatedMultiple
from counterpane.craft.rows.steps import StartStep


@rule(
    "stated-count-wrong",
    family="counting",
    severity="error",
    bad="Cast on 10 sts.\nRow 1: K1, yo, k to end. (12 sts)",
    good="Cast on 10 sts.\nRow 1: K1, yo, k to end. (11 sts)",
)
def stated_count_wrong(examined: Examined) -> Iterator[Finding]:
    """A printed count is not true.

    A count after a row is how a knitter checks the work; a wrong one sends them looking for a fault that is not
    there. The cast-on is such a count too: it must belong to the stated multiple.
    """
    stuck = trouble(examined) is not None
    for wrong in examined.walk.wrong_counts[:1]:
        place = wrong.place
        message = f"{row_name(wrong.row)} says {stitches(wrong.printed)} and leaves {wrong.true}."
        hint = f"Print {wrong.true}, or change the row by {stitches(abs(wrong.true - wrong.printed))}."
        if wrong.end:
            message = f"The end says {stitches(wrong.printed)}, and {wrong.true} are on the needle."
            hint = f"Print {wrong.true}, or change the rows by {stitches(abs(wrong.true - wrong.printed))}."
        severity: Severity = "warning" if stuck else "error"
        hint, fixes = pointing(examined, place.line, hint), said(examined, place.line, "count", "row")
        yield at(place, "stated-count-wrong", severity, message, hint, corrections=fixes)
    yield from _cast_on(examined, stuck or bool(examined.walk.wrong_counts))
    yield from _picked_up(examined)


def _cast_on(examined: Examined, minor: bool) -> Iterator[Finding]:
    """Name a printed cast-on that is the odd one out: outside the stated multiple, or refused by rows that agree."""
    stated = examined.instructions.cast_on
    if stated is None or examined.given is not None:
        return
    corrections = [correction for correction in examined.corrections if correction.kind == "cast-on"]
    blamed = minor and bool(corrections) and corrections[0] is examined.corrections[0]
    outside = cast_on_is_outside(examined) and not multiple_is_wrong(examined)
    if not blamed and not outside:
        return
    counts = [correction.count for correction in corrections]
    promised = examined.instructions.multiple
    if outside and promised:
        message = f"The cast-on of {stated.count} is not in the stated {promised.said}."
        counts = counts or _in_multiple(promised, stated.count)
    else:
        message = f"The cast-on of {stated.count} may be what is misprinted: with another, all rows and counts agree."
    hint, fixes = f"Cast on {either(counts)}.", said(examined, stated.place.line, "cast-on")
    yield at(stated.place, "stated-count-wrong", "warning" if minor else "error", message, hint, corrections=fixes)


def _picked_up(examined: Examined) -> Iterator[Finding]:
    """Name what a later piece begins with, where its rows agree on another count and none is likelier wrong."""
    for start in (step.cast_on for step in examined.instructions.steps if isinstance(step, StartStep)):
        line = start.place.line
        begun = [each for each in examined.corrections if each.kind == "picked-up" and each.line == line]
        rows = (each.weight for each in examined.corrections if each.kind == "row" and each.line >= line)
        if begun and begun[0].weight <= min(rows, default=begun[0].weight):
            message = f"A piece begins with {stitches(start.count)} here, and its rows agree on another count."
            hint, fixes = f"Begin it with {either([each.count for each in begun])}.", said(examined, line, "picked-up")
            yield at(start.place, "stated-count-wrong", "warning", message, hint, corrections=fixes)


def _in_multiple(promised: StatedMultiple, count: int) -> list[int | None]:
    """Return the counts of the stated multiple on both sides of another; none below where no stitch would be left."""
    below = count - (count - promised.plus) % promised.of
    return [near for near in (below, below + promised.of) if near > 0]

"""A row that can be worked and leads to the trouble in a later one."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, cause, said, trouble
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule


@rule(
    "row-upsets-later-rows",
    family="counting",
    severity="warning",
    bad=(
        "Cast on 14 sts.\nRow 1: K2, *yo, k2tog, yo, k3; rep from * to last 2 sts, k2.\nRow 2: Purl.\n"
        "Row 3: K2, *k3, yo, k2tog; rep from * to last 2 sts, k2.\nRow 4: Purl. (14 sts)"
    ),
    good=(
        "Cast on 14 sts.\nRow 1: K2, *yo, k2tog, k3; rep from * to last 2 sts, k2.\nRow 2: Purl.\n"
        "Row 3: K2, *k3, yo, k2tog; rep from * to last 2 sts, k2.\nRow 4: Purl. (14 sts)"
    ),
)
def row_upsets_later_rows(examined: Examined) -> Iterator[Finding]:
    """A row upsets the rows after it.

    A stitch made or lost too many shows only rows later, where a repeat does not come out or a printed count is not
    true. Where one small change of an earlier row puts everything after it right, the cause is probably there.
    """
    shown = _shown(examined)
    correction = cause(examined, shown[0]) if shown else None
    if correction is None:
        yield from _only_change(examined)
    if shown is None or correction is None or correction.kind != "row":
        return
    blamed = next((other for other in examined.rows if other.place.line == correction.line and other.readable), None)
    odd = examined.odd
    if blamed is None or (odd is not None and examined.counted[odd].place == blamed.place):
        return
    message = f"{row_name(blamed)} probably leads to the trouble {shown[1]}: a small change sets it right."
    fixes = said(examined, correction.line)
    yield at(blamed.start, "row-upsets-later-rows", "warning", message, f"Print it so: {fixes[0]}", corrections=fixes)


def _only_change(examined: Examined) -> Iterator[Finding]:
    """Name the one row that changes the count before a second pass of rows that should come back to their start."""
    jam = examined.walk.jam
    changing = {followed.row.place: followed for followed in examined.followed if followed.before != followed.after}
    if jam is None or jam.again is None or len(changing) != 1:
        return
    (only,) = changing.values()
    if only.after is None or only.row.stated is not None:
        return
    message = f"{row_name(only.row)} alone changes the count, from {only.before} to {only.after} stitches."
    hint = f"Look for a stitch made or lost in its repeat: to be worked again it should leave {only.before}."
    yield at(only.row.start, "row-upsets-later-rows", "warning", message, hint)


def _shown(examined: Examined) -> tuple[int, str] | None:
    """Return the line where a trouble shows and how to name it."""
    stuck, wrong = trouble(examined), examined.walk.wrong_counts
    row = stuck[0] if stuck else wrong[0].row if wrong else None
    if row is not None:
        return row.place.line, f"in {row_name(row).lower()}"
    drifting = next((repeated for repeated in examined.walk.repeated if not repeated.fits_again), None)
    return (drifting.step.again.place.line, "at the repeat of the rows") if drifting else None

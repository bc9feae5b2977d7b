"""One row whose repeat differs from the others."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, repeat_of_others, said
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.counts import count
from counterpane.craft.findings import Finding, rule


@rule(
    "row-repeat-differs",
    family="counting",
    severity="warning",
    bad="Row 1: *K13; rep from * to end.\nRow 2: *K11; rep from * to end.\nRow 3: *P13; rep from * to end.",
    good="Row 1: *K13; rep from * to end.\nRow 2: *K13; rep from * to end.\nRow 3: *P13; rep from * to end.",
    source="arithmetic: repeats nest only if one of them is worked just once per step of the multiple",
)
def row_repeat_differs(examined: Examined) -> Iterator[Finding]:
    """The repeat of one row differs from all the others.

    Repeats of 13 and one of 11 give a multiple of 143, which is true and useless. Where no repeat is worked just
    once in the multiple, one of them is probably misprinted.
    """
    if examined.odd is None:
        return
    row = examined.counted[examined.odd]
    others = repeat_of_others(examined.counted, examined.odd, examined.maps)
    own = count([row.parts], examined.vocabulary).starts[0].of
    repeat = f"a repeat of {own}" if own else "a fixed count"
    message = f"{row_name(row)} has {repeat} where other rows repeat {others}: probably a misprint."
    hint = f"Look for a stitch too many or too few in this row; make its repeat {others}."
    yield at(row.start, "row-repeat-differs", "warning", message, hint, corrections=said(examined, row.place.line))

"""A repeat that uses no stitches."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, said
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule


@rule(
    "repeat-uses-nothing",
    family="counting",
    severity="error",
    bad="Row 1: *Yo; rep from * to last 2 sts, k2.",
    good="Row 1: *Yo, k1; rep from * to last 2 sts, k2.",
)
def repeat_uses_nothing(examined: Examined) -> Iterator[Finding]:
    """A repeat uses no stitches.

    A repeat is worked until the stitches run out; one that uses none would never end.
    """
    for row, misfit in examined.malformed:
        if misfit.slug == "repeat-uses-nothing":
            message = f"{row_name(row)} has a repeat that uses no stitches and so would never end."
            hint = "Put the stitch that each repeat uses inside it."
            fixes = said(examined, row.place.line)
            yield at(misfit.place, "repeat-uses-nothing", "error", message, hint, corrections=fixes)

"""A group into one stitch that uses more than one."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule


@rule(
    "group-uses-several",
    family="counting",
    severity="error",
    bad="Row 1: (K2tog, k1) into next st.",
    good="Row 1: (K1, yo, k1) into next st.",
)
def group_uses_several(examined: Examined) -> Iterator[Finding]:
    """A group into one stitch uses more than one.

    What is worked into one stitch may use only that one; a k2tog in it would need a second.
    """
    for row, misfit in examined.malformed:
        if misfit.slug == "group-uses-several":
            message = f"{row_name(row)} works a group into one stitch that would use more than that one."
            hint = "Use stitches that need one loop or none, such as (k1, yo, k1)."
            yield at(misfit.place, "group-uses-several", "error", message, hint)

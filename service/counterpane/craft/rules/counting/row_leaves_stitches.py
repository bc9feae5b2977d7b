"""A row that ends with stitches unworked."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, jammed
from counterpane.craft.checking.wording import either, stitches
from counterpane.craft.counts import Misfit
from counterpane.craft.findings import Finding, rule


@rule(
    "row-leaves-stitches",
    family="counting",
    severity="error",
    bad="Cast on 12 sts.\nRow 1: K8, p3.",
    good="Cast on 11 sts.\nRow 1: K8, p3.",
)
def row_leaves_stitches(examined: Examined) -> Iterator[Finding]:
    """A row leaves stitches unworked.

    The row ends and stitches are still on the left needle. Either it is too short, or a row before it left too
    many.
    """
    return jammed(examined, "row-leaves-stitches", _say)


def _say(name: str, misfit: Misfit) -> tuple[str, str]:
    """Word what is left over with its numbers."""
    if misfit.left is None:
        message = f"{name} has a repeat that ends with stitches on the cable needle."
        return message, "Work them from the cable needle before the repeat ends."
    left = f"leaves {stitches(misfit.left)} unworked"
    if misfit.has is None:
        return f"{name} {left}, whatever the cast-on.", "Work as many stitches at the end as the stop keeps for them."
    message = f"{name} begins with {stitches(misfit.has)} and {left}."
    near = either((misfit.below, misfit.above))
    return message, f"Work the rest, or begin the row with {near}." if near else "Work the rest."

"""A row that asks for more stitches than there are."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, jammed
from counterpane.craft.checking.wording import either, stitches
from counterpane.craft.counts import Misfit
from counterpane.craft.findings import Finding, rule


@rule(
    "row-runs-short",
    family="counting",
    severity="error",
    bad="Cast on 10 sts.\nRow 1: K8, p3.",
    good="Cast on 11 sts.\nRow 1: K8, p3.",
)
def row_runs_short(examined: Examined) -> Iterator[Finding]:
    """A row runs short of stitches.

    The row asks for a stitch when the left needle is empty. Either the row is too long, or a row before it left too
    few.
    """
    return jammed(examined, "row-runs-short", _say)


def _say(name: str, misfit: Misfit) -> tuple[str, str]:
    """Word the shortage with its numbers and the nearest counts."""
    if misfit.asked is None:
        message = f"{name} has a repeat that works stitches from the cable needle before it puts any there."
        return message, "Begin the repeat with the stitches that go to the cable needle."
    left = f"{misfit.left or 'none'} {'is' if misfit.left == 1 else 'are'} left"
    asked = f"asks for {stitches(misfit.asked)} where {left}"
    if misfit.has is None:
        return f"{name} {asked}, whatever the cast-on.", "Make what follows use no more than the stitches kept for it."
    message = f"{name} begins with {stitches(misfit.has)} and here {asked}."
    near = either((misfit.below, misfit.above))
    return message, f"Shorten the row, or begin it with {near}." if near else "Shorten the row."

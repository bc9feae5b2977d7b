"""Two repeats that share the row in no single way."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, row_name, stitches
from counterpane.craft.counts import ways
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Row

MOST_SAID = 4
"""Ways that are told; where there are more, nobody chooses from a list. House figure."""


@rule(
    "two-open-repeats",
    family="counting",
    severity="error",
    bad="Row 1: *K2, p2; rep from *, *k3, p2; rep from *.",
    good="Row 1: *K2, p2; rep from * to last 10 sts, *k3, p2; rep from * to end.",
)
def two_open_repeats(examined: Examined) -> Iterator[Finding]:
    """Two repeats divide a row in no single way.

    Where the first repeat says no stop, the stitches can be shared out in several ways, and two knitters would do
    it differently.
    """
    for row, misfit in examined.malformed:
        if misfit.slug == "two-open-repeats":
            message = f"{row_name(row)} has two repeats, and nothing says how the stitches are shared between them."
            message += _ways(examined, row)
            hint = "Say where the first repeat stops: “to last n sts”, or “n times more”."
            yield at(misfit.place, "two-open-repeats", "error", message, hint)


def _ways(examined: Examined, row: Row) -> str:
    """Say how the stitches that the row begins with can be shared, where their number is known and the ways are few."""
    begins = next((jam.begins for jam in examined.jams if jam.row.place == row.place), None)
    if begins is None:
        return ""
    try:
        found = ways(row.parts, begins, examined.vocabulary)
    except ValueError:  # There are three, or one stands in a bracket.
        return ""
    if not found:
        return f" Over {stitches(begins)} they do not come out in any way."
    said = " or ".join(f"{first} and {second} times" for first, second in found)
    return f" Over {stitches(begins)} they can be worked {said}." if len(found) <= MOST_SAID else ""

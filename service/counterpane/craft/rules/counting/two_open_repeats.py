"""Two repeats that share the row in no single way."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.examine import malformed_rows
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule


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
    for row, misfit in malformed_rows(examined):
        if misfit.slug == "two-open-repeats":
            message = f"{row_name(row)} has two repeats, and nothing says how the stitches are shared between them."
            hint = "Say where the first repeat stops: “to last n sts”, or “n times more”."
            yield at(misfit.place, "two-open-repeats", "error", message, hint)

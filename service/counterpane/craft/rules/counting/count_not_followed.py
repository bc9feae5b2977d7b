"""A row whose count cannot be followed."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.examine import unproved_row
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.counts.wellformed import names_markers
from counterpane.craft.findings import Finding, rule


@rule(
    "count-not-followed",
    family="counting",
    severity="note",
    bad="Cast on 10 sts.\nRow 1: K to marker, sm, k to end.",
    good="Cast on 10 sts.\nRow 1: K5, pm, k5.\nRow 2: K to marker, sm, k to end.",
)
def count_not_followed(examined: Examined) -> Iterator[Finding]:
    """The count of a row cannot be followed.

    A row that names a marker which no row before it places, or that goes beyond all ordinary numbers, may be right; but
    its counts are not known, and what is not known is never passed as right.
    """
    row = unproved_row(examined)
    if row is None:
        return
    why, hint = (
        "its count goes beyond all ordinary numbers.",
        "Say how often the rows are worked, or make them grow less.",
    )
    if names_markers(row.parts):
        why, hint = "a marker it needs has no known place.", "Place the marker in a row before it (“pm”)."
    message = f"{row_name(row)} and what follows it are not counted: {why}"
    yield at(row.start, "count-not-followed", "note", message, hint)

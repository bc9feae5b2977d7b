"""A row without a star that was taken as one whole repeat."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.clearer import with_star
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Place


@rule(
    "repeat-assumed",
    family="reading",
    severity="note",
    bad="Cast on 8 sts.\nRow 1: K2, p2, repeat.",
    good="Cast on 8 sts.\nRow 1: *K2, p2; rep from * to end.",
)
def repeat_assumed(examined: Examined) -> Iterator[Finding]:
    """A row without a star was taken as one repeat.

    A row that ends in “repeat” or “to end”, or that stands under a stated multiple, is worked over and over though
    no star says from where. The whole list was taken; a star would leave no doubt.
    """
    seen: set[Place] = set()
    for row in examined.rows:
        if row.whole and row.place not in seen:
            seen.add(row.place)
            message = f"{row_name(row)} has no star; its whole list was taken as the repeat."
            hint, fixes = "Put a star where the repeat begins.", with_star(examined, row)
            yield at(row.start, "repeat-assumed", "note", message, hint, corrections=fixes)

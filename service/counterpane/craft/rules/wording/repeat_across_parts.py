"""A repeat line whose rows stand in different parts."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.instructions import AgainStep


@rule(
    "repeat-across-parts",
    family="wording",
    severity="warning",
    bad=(
        "Cast on 4 sts.\n\nBorder\n\nRow 1: Knit.\nRow 2: Knit.\nRow 3: Purl.\n\nCentre\n\nRow 1: Purl.\n"
        "Row 2: Knit.\nRep rows 1-3."
    ),
    good=(
        "Cast on 4 sts.\n\nBorder\n\nRow 1: Knit.\nRow 2: Knit.\nRow 3: Purl.\n\nCentre\n\nRow 1: Purl.\n"
        "Row 2: Knit.\nRep rows 1-2."
    ),
)
def repeat_across_parts(examined: Examined) -> Iterator[Finding]:
    """A repeat line names rows of different parts.

    A number that this part does not have is taken from an earlier part. Mostly the number is wrong; where it is meant,
    the part should be named.
    """
    for step in examined.instructions.steps:
        if not isinstance(step, AgainStep) or not step.again.numbers:
            continue
        rows = [examined.rows[index] for index in step.rows]
        sections = list(dict.fromkeys(row.section for row in rows))
        if len(sections) < 2:
            continue
        own = rows[0].section
        foreign = next(row for row in rows if row.section != own)
        part = f"the part {quoted(foreign.section)}" if foreign.section else "an earlier part"
        message = f"Row {foreign.label} of this repeat stands in {part}, on line {foreign.place.line}."
        mine = [int(row.label) for row in rows if row.section == own]
        hint = f"Rows {min(mine)} to {max(mine)} stand together." if len(mine) > 1 else "Name the rows of one part."
        yield at(step.again.place, "repeat-across-parts", "warning", message, hint)

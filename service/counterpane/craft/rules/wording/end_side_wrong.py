"""A repeat line that says on which side it ends, and cannot."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, row_name
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.instructions import AgainStep
from counterpane.craft.rows.tree import Row, Side

_ENDING = re.compile(
    r"\bend(?:ing|ed)?\s+(?:with|on|after)\s+(?:an?\s+|the\s+)?(?:(rs|right[- ]side)|(ws|wrong[- ]side))\s+row"
)
LONGEST_ORDER = 200  # House.
_OTHER: dict[Side, Side] = {"RS": "WS", "WS": "RS"}


@rule(
    "end-side-wrong",
    family="wording",
    severity="warning",
    bad="Cast on 4 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nRep rows 1-2 4 times more, ending with a RS row.",
    good="Cast on 4 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nRep rows 1-2 4 times more, ending with a WS row.",
)
def end_side_wrong(examined: Examined) -> Iterator[Finding]:
    """A repeat line ends on another side than it says.

    The number of passes and the sides of the rows decide on which side the last one is worked. Who believes the side
    works a row more or fewer than who believes the number.
    """
    if "end" not in examined.text:
        return
    for step in examined.instructions.steps:
        if not isinstance(step, AgainStep) or step.again.passes is None:
            continue
        line = examined.instructions.page.lines[step.again.place.line - 1]
        start = step.again.place.column - 1
        match = _ENDING.search(line.text, start, start + LONGEST_ORDER)
        rows = [examined.rows[index] for index in step.rows]
        true = _last_side(rows, step.again.passes) if match else None
        if match is None or true is None or true == ("RS" if match.group(1) else "WS"):
            continue
        message = f"The last row worked is {row_name(rows[-1]).lower()}, a {true} row, and the line says otherwise."
        side = next(index for index in (1, 2) if match.group(index))
        given = examined.instructions.page.given[line.number - 1]
        corrections = (given[: match.start(side)] + true + given[match.end(side) :],) if line.columns is None else ()
        hint = f"Print “{true} row”, or another number of passes."
        yield at(line.place(match.start()), "end-side-wrong", "warning", message, hint, corrections=corrections)


def _last_side(rows: list[Row], passes: int) -> Side | None:
    """Return the side of the last row of the last pass; an odd number of rows changes sides with every pass."""
    side = rows[-1].side
    if side not in _OTHER:
        return None
    return side if len(rows) % 2 == 0 or passes % 2 == 0 else _OTHER[side]

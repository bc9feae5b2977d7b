"""Centimetres and inches side by side that are not the same length."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import CM_PER_INCH, half_up, shown
from counterpane.craft.rows.lengths import PrintedLength, pairs_in

_DIGIT_CM = re.compile(r"\d\s*-?c(?:m|entim)")
ROUNDED_SHARE = Fraction(2, 100)
"""10 cm for 4 in, which are 10.16 cm, is the trade's own rounding. House figure."""


@rule(
    "measures-disagree",
    family="wording",
    severity="warning",
    bad="Cast on 4 sts.\nRow 1: Knit.\nRep row 1 until piece measures 60 cm (20 in).",
    good="Cast on 4 sts.\nRow 1: Knit.\nRep row 1 until piece measures 60 cm (24 in).",
    source="international yard and pound agreement, 1959: 1 in is 2.54 cm exactly",
)
def measures_disagree(examined: Examined) -> Iterator[Finding]:
    """A length in centimetres is not the one in inches beside it.

    Half of the last place printed is allowed on either side, and a fiftieth in any case, since 10 cm and 4 in are
    used for each other.
    """
    for line in examined.instructions.page.lines:
        for one, other in pairs_in(line) if "c" in line.text and _DIGIT_CM.search(line.text) else ():
            metric, inches = (one, other) if one.metric else (other, one)
            for index, centimetres in enumerate(metric.values):
                if not _agree(metric, inches, index):
                    right = half_up(centimetres / CM_PER_INCH, inches.steps[index])
                    said = shown(right).removesuffix(".0")
                    message = (
                        f"{_said(centimetres)} cm are {shown(centimetres / CM_PER_INCH)} in, "
                        f"and {_said(inches.values[index])} in are {shown(inches.centimetres[index])} cm."
                    )
                    hint = f"Print {said} in, or correct the centimetres."
                    yield at(line.place(one.start), "measures-disagree", "warning", message, hint)
                    break


def _agree(metric: PrintedLength, inches: PrintedLength, index: int) -> bool:
    """Tell whether two lengths agree within the rounding of both."""
    apart = abs(metric.values[index] - inches.centimetres[index])
    rounding = (metric.steps[index] + inches.steps[index] * CM_PER_INCH) / 2
    return apart <= max(rounding, ROUNDED_SHARE * metric.values[index])


def _said(value: Fraction) -> str:
    return shown(value).removesuffix(".0")

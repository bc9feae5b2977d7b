"""A number of rows or stitches that a part cannot take."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import either
from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import ValueRefused
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "part-cannot-take-number",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter", "sides": {"component": "rib-three-by-three-border", "stitches": 7}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "sides": {"component": "garter-border", "stitches": 7}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def part_cannot_take_number(attempt: Attempt) -> Iterator[Finding]:
    """A number that a part cannot take.

    A texture works over certain numbers of stitches and rows; the nearest are named.
    """
    for met in attempt.met(ValueRefused):
        name = met.pointer.rsplit("/", 1)[1]
        changes = tuple(Correction(met.pointer, value, f"the part takes {value} {name}") for value in met.nearest)
        near = either(met.nearest)
        yield Finding(
            "part-cannot-take-number",
            "error",
            f"This part cannot take {met.value} {name}: {met.why}.",
            f"Write {near}." if near else "Choose another component.",
            pointer=met.pointer,
            changes=working(attempt, changes),
        )

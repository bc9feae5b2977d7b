"""A part that would begin on the other side than it must."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import WrongSide
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "part-begins-on-wrong-side",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter", "bottom": {"component": "garter-border", "rows": 11}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "bottom": {"component": "garter-border", "rows": 12}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def part_begins_on_wrong_side(attempt: Attempt) -> Iterator[Finding]:
    """A part that begins on the wrong side.

    Rows change sides one by one, so the number of rows before a part decides on which side it begins. No row is added
    silently.
    """
    for met in attempt.met(WrongSide):
        if met.fixed:
            yield Finding(
                "part-begins-on-wrong-side",
                "error",
                f"This part begins on a {met.side} row, and after {met.rows_before} rows the next one is a "
                f"{'WS' if met.side == 'RS' else 'RS'} row.",
                f"Work one row more or fewer before it: {met.rows + 1} or {met.rows - 1} instead of {met.rows}.",
                pointer=met.pointer,
                changes=working(attempt, _one_off(met)),
            )


def _one_off(met: WrongSide) -> tuple[Correction, ...]:
    why = f"what follows then begins on a {met.side} row"
    rows = [rows for rows in (met.rows + 1, met.rows - 1, met.rows + 2) if rows > 0]
    return tuple(Correction(f"{met.cause}/rows", number, why) for number in rows)

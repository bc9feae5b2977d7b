"""A bind-off that is made for the other side of the work."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "bind-off-on-other-side",
    family="fabric",
    severity="warning",
    bad=(
        '{"parts": {"body": "garter", "cast_on": "cable-cast-on", '
        '"top": {"component": "garter-border", "rows": 11}, "bind_off": "cord-bind-off"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "cast_on": "cable-cast-on", '
        '"top": {"component": "garter-border", "rows": 12}, "bind_off": "cord-bind-off"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def bind_off_on_other_side(attempt: Attempt) -> Iterator[Finding]:
    """A bind-off on the other side than it is made for.

    Some bind-offs look alike from both sides; others are worked on the right or on the wrong side, and the number of
    rows before them decides which side faces the knitter.
    """
    plan = attempt.plan
    operation = attempt.request.bind_off.component.operation
    if plan is None or operation is None or operation.side not in ("RS", "WS"):
        return
    last = plan.sections[-1]
    if last.last_row_side == operation.side:
        tried = [Correction("/parts/top/rows", rows, "the row after it is then right") for rows in _near(last.rows)]
        yield Finding(
            "bind-off-on-other-side",
            "warning",
            f"This bind-off is worked on the {operation.side}, and the row before it is a {operation.side} row, so "
            "that the other side faces the knitter.",
            "Work one row more or fewer at the top, or take a bind-off for either side.",
            pointer="/parts/bind_off",
            changes=working(attempt, tried) if attempt.request.top else (),
        )


def _near(rows: int) -> tuple[int, ...]:
    return tuple(number for number in (rows + 1, rows - 1) if number > 0)

"""Whole repeats that never end on the side that is needed."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.constructions.obstacles import WrongSide
from counterpane.craft.findings import Correction, Finding, rule
from counterpane.craft.measures import half_up


@rule(
    "repeats-end-on-wrong-side",
    family="fitting",
    severity="error",
    bad=(
        r'{"parts": {"body": "garter", "top": {"text": "Row 1 (WS): knit.\nRow 2 (RS): purl.", "rows": 12}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        r'{"parts": {"body": "garter", "top": {"text": "Row 1: knit.\nRow 2: knit.", "rows": 12}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def repeats_end_on_wrong_side(attempt: Attempt) -> Iterator[Finding]:
    """Whole repeats that always end on the wrong side.

    An even repeat always ends on the same side: no number of repeats lets what follows begin on the other one.
    """
    for met in attempt.met(WrongSide):
        if not met.fixed:
            yield Finding(
                "repeats-end-on-wrong-side",
                "error",
                f"What follows begins on a {met.side} row, and whole repeats of {met.rows} rows after "
                f"{met.rows_before} rows never lead to one.",
                "Say with “rows” after how many rows to stop, or write what follows for the other side.",
                pointer=met.pointer,
                changes=working(attempt, _stops(attempt, met)),
            )


def _stops(attempt: Attempt, met: WrongSide) -> tuple[Correction, ...]:
    """Return numbers of rows near the wanted length after which the next row is on the right side."""
    request = attempt.request
    body = gauge_of(request, request.body[0], attempt.vocabulary).gauge
    borders = sum(part.rows or 0 for part in (request.bottom, request.top) if part)
    rows = max(1, int(half_up(request.length_cm * body.rows_per_cm)) - borders) // len(request.body)
    why = f"what follows then begins on a {met.side} row"
    return tuple(Correction(f"{met.cause}/rows", max(1, rows + off), why) for off in (0, 1, -1, 2))

"""An edge that has another count than its own where the part beside it begins or ends."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import either, stitches
from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import EdgeOutOfStep
from counterpane.craft.findings import Correction, Finding, rule

NAMES = {"/parts/sides": "side borders", "/parts/selvedge": "selvedge stitches"}


@rule(
    "edge-out-of-step",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": {"component": "garter", "rows": 149}, '
        r'"sides": {"text": "Row 1 (RS): K2, yo, k2.\nRow 2: K2, k2tog, k1."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 43.25}}'
    ),
    good=(
        '{"parts": {"body": {"component": "garter", "rows": 150}, "sides": {"component": "garter-border"}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 43.5}}'
    ),
)
def edge_out_of_step(attempt: Attempt) -> Iterator[Finding]:
    """An edge out of step with the part beside it.

    Some edges have more stitches in some rows than in others; what begins or ends in between begins or ends on another
    count than that of the piece.
    """
    for met in attempt.met(EdgeOutOfStep):
        begins = met.rows == 0
        yield Finding(
            "edge-out-of-step",
            "error",
            _begins(met) if begins else _ends(met),
            _turned(met) if begins else _stop(met),
            pointer=met.pointer,
            changes=working(attempt, _stops(met)),
        )


def _more(met: EdgeOutOfStep) -> str:
    return f"{stitches(abs(met.more))} {'more' if met.more > 0 else 'fewer'} than they begin with"


def _begins(met: EdgeOutOfStep) -> str:
    return f"The {NAMES[met.edge]} begin here in the middle of their rows, where they have {_more(met)}."


def _ends(met: EdgeOutOfStep) -> str:
    return f"After {met.rows} rows the {NAMES[met.edge]} beside this part have {_more(met)}."


def _turned(met: EdgeOutOfStep) -> str:
    return (
        f"Write the rows of the {NAMES[met.edge]} for the other side, so that row 1 is the first one beside this part."
    )


def _stop(met: EdgeOutOfStep) -> str:
    if not met.nearest:
        return f"Choose {NAMES[met.edge]} whose repeat of rows ends with this part."
    return f"Stop after {either(met.nearest)} rows."


def _stops(met: EdgeOutOfStep) -> tuple[Correction, ...]:
    return tuple(Correction(met.pointer, rows, "the edge then has the count it began with") for rows in met.nearest)

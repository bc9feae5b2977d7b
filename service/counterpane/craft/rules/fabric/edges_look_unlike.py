"""A cast-on and a bind-off that do not match in look."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule
from counterpane.craft.pairing import ends_of
from counterpane.craft.pairing.remarks import looks_differ


@rule(
    "edges-look-unlike",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": "garter", "cast_on": "cable-cast-on", "bind_off": "plain-bind-off"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "cast_on": "cable-cast-on", "bind_off": "cord-bind-off"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def edges_look_unlike(attempt: Attempt) -> Iterator[Finding]:
    """Two ends that do not match in look.

    The cast-on and the bind-off are seen together whenever the blanket is folded: a rope at one end and a flat chain at
    the other look like two pieces. They are compared where both face the same side of the work, the cast-on that of
    row 1 and the bind-off that on which it is worked; what an edge shows on its other side is not known.
    """
    plan = attempt.plan
    if plan is None or plan.sections[0].first_row_side == plan.sections[-1].last_row_side:
        return
    cast_on, bind_off = ends_of(attempt.request, attempt.vocabulary)
    for remark in looks_differ(cast_on.other, bind_off.other):
        yield Finding(remark.rule, "note", remark.message, remark.hint, pointer=bind_off.pointer)

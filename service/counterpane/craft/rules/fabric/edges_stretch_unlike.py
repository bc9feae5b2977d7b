"""A cast-on and a bind-off of which one stretches and the other does not."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule
from counterpane.craft.pairing import ends_of
from counterpane.craft.pairing.remarks import edges_differ


@rule(
    "edges-stretch-unlike",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": "garter", "cast_on": "twisted-long-tail", "bind_off": "plain-bind-off"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "cast_on": "long-tail", "bind_off": "plain-bind-off"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def edges_stretch_unlike(attempt: Attempt) -> Iterator[Finding]:
    """Two ends that stretch unlike.

    The cast-on and the bind-off are the two ends of one blanket: where one gives and the other holds, it hangs crooked
    after the first wash.
    """
    if attempt.plan is None:
        return
    cast_on, bind_off = ends_of(attempt.request, attempt.vocabulary)
    for remark in edges_differ(cast_on.other, bind_off.other):
        yield Finding(remark.rule, "note", remark.message, remark.hint, pointer=bind_off.pointer)

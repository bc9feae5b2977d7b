"""An elastic bind-off on garter stitch."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule
from counterpane.craft.pairing import ends_of
from counterpane.craft.pairing.remarks import edge_on


@rule(
    "edge-flares",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": "garter", "bind_off": "stretchy-bind-off"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "bind_off": "plain-bind-off"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def edge_flares(attempt: Attempt) -> Iterator[Finding]:
    """An elastic edge that flares.

    Garter stitch does not draw in; an edge with more yarn in it than the fabric asks for waves.
    """
    if attempt.plan is None:
        return
    for pair in ends_of(attempt.request, attempt.vocabulary):
        for remark in edge_on(pair.fabric, pair.other, pair.place):
            if remark.rule == "edge-flares":
                yield Finding(remark.rule, "note", remark.message, remark.hint, pointer=pair.pointer)

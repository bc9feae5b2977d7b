"""A firm cast-on or bind-off at a fabric that stretches."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule
from counterpane.craft.pairing import ends_of
from counterpane.craft.pairing.remarks import edge_on


@rule(
    "edge-binds",
    family="fabric",
    severity="warning",
    bad=(
        '{"parts": {"body": "rib-two-by-two", "top": {"component": "rib-two-by-two-border", "rows": 12}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "rib-two-by-two"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "rib-two-by-two", "top": {"component": "rib-two-by-two-border", "rows": 12},'
        ' "bind_off": "sewn-bind-off"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "rib-two-by-two"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def edge_binds(attempt: Attempt) -> Iterator[Finding]:
    """A firm edge on a fabric that stretches.

    A rib draws in and gives; an edge that does not give with it holds the blanket narrow there, and the first hard pull
    breaks the yarn.
    """
    if attempt.plan is None:
        return
    for pair in ends_of(attempt.request, attempt.vocabulary):
        for remark in edge_on(pair.fabric, pair.other, pair.place):
            if remark.rule == "edge-binds":
                yield Finding(remark.rule, "warning", remark.message, remark.hint, pointer=pair.pointer)

"""Lines of a border and a body that run the same way."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule
from counterpane.craft.pairing import pairs_of
from counterpane.craft.pairing.remarks import lines_meet


@rule(
    "textures-merge",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": "rib-two-by-two", "sides": {"component": "rib-three-by-three-border", "stitches": 9}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "rib-two-by-two"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "rib-three-by-three-border"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "rib-two-by-two", "sides": {"component": "seed-stitch-border", "stitches": 9}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "rib-two-by-two"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "seed-stitch"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def textures_merge(attempt: Attempt) -> Iterator[Finding]:
    """Lines that run into each other.

    A border frames a body where its lines run another way; ribs beside ribs, or ridges under ridges, hardly show where
    the one ends. House judgement of the faces alone.
    """
    if attempt.plan is None:
        return
    for pair in pairs_of(attempt.request, attempt.vocabulary):
        for remark in lines_meet(pair.fabric, pair.other, pair.place):
            if remark.rule == "textures-merge":
                yield Finding(remark.rule, "note", remark.message, remark.hint, pointer=pair.pointer)

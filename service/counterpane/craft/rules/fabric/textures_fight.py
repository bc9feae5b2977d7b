"""Lines of two textures that run against each other at their join."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Finding, rule
from counterpane.craft.pairing import pairs_of
from counterpane.craft.pairing.remarks import lines_meet


@rule(
    "textures-fight",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": "rib-two-by-two", "bottom": {"component": "rib-one-by-one-border", "rows": 12}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "rib-two-by-two"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "rib-one-by-one-border"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "rib-two-by-two", "bottom": {"component": "rib-two-by-two-border", "rows": 12}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "rib-two-by-two"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def textures_fight(attempt: Attempt) -> Iterator[Finding]:
    """Lines that run against each other.

    Ribs, ridges and slanting lines lead the eye; where they stop at a border and others begin beside them, the join
    shows as a fault though every count is right. House judgement of the faces alone.
    """
    if attempt.plan is None:
        return
    for pair in pairs_of(attempt.request, attempt.vocabulary):
        for remark in lines_meet(pair.fabric, pair.other, pair.place):
            if remark.rule == "textures-fight":
                yield Finding(remark.rule, "note", remark.message, remark.hint, pointer=pair.pointer)

"""A part with one right side in a blanket that is otherwise the same on both."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.settling import body_pointer
from counterpane.craft.findings import Finding, rule
from counterpane.craft.pairing import facts_of, pairs_of
from counterpane.craft.pairing.remarks import sides_differ


@rule(
    "one-sided-among-reversible",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": ["muff-stitch", "waffle", "seed-stitch"]}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "muff-stitch"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "seed-stitch"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "muff-stitch"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "muff-stitch"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "seed-stitch"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def one_sided_among_reversible(attempt: Attempt) -> Iterator[Finding]:
    """A one-sided part in a reversible blanket.

    A blanket is turned over all day. A body that is the same on both sides loses that where one of its borders, or
    another band of it, has a wrong side.
    """
    if attempt.plan is None:
        return
    bands = [facts_of(band.component, attempt.vocabulary).reversible for band in attempt.request.body]
    if 0 < bands.count("no") < bands.count("yes"):
        yield Finding(
            "one-sided-among-reversible",
            "note",
            "This band has one right side, and most bands of the body are the same on both sides.",
            "Take bands that are all the same on both sides, or mark the right side and keep to it.",
            pointer=body_pointer(attempt.request, bands.index("no")),
        )
    for pair in pairs_of(attempt.request, attempt.vocabulary):
        for remark in sides_differ(pair.fabric, pair.other):
            yield Finding(remark.rule, "note", remark.message, remark.hint, pointer=pair.pointer)

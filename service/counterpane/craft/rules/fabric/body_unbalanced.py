"""A texture that does not end at the left as it begins at the right."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import stitches
from counterpane.craft.component import Balance, derive
from counterpane.craft.constructions import Part
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.settling import body_pointer
from counterpane.craft.findings import Finding, rule


@rule(
    "body-unbalanced",
    family="fabric",
    severity="note",
    bad=(
        '{"parts": {"body": "seed-stitch"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "seed-stitch"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": {"component": "waffle", "rows": 247}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def body_unbalanced(attempt: Attempt) -> Iterator[Finding]:
    """A texture with a stray stitch on one side.

    A texture that ends at the left as it begins at the right looks framed; a count that is right for the repeat may
    still leave stitches over on one side.
    """
    plan = attempt.plan
    if plan is None:
        return
    for index, (band, count) in enumerate(zip(plan.request.body, plan.counts.body, strict=True)):
        balance = _balance(attempt, band, count)
        if balance is not None and balance.stray:
            fewer = stitches(balance.stray)
            yield Finding(
                "body-unbalanced",
                "note",
                f"Over {stitches(count)} this texture is unbalanced by {balance.stray}: {balance.said}.",
                f"Over {fewer} fewer it would end as it begins: take them off the texture and give them to a border, "
                "or leave it as it is.",
                pointer=body_pointer(plan.request, index),
            )


def _balance(attempt: Attempt, band: Part, count: int) -> Balance | None:
    version = derive(band.component, attempt.vocabulary).version_for(count)
    return version.layout.balance if version is not None and version.layout is not None else None

"""Wool that may felt, and nobody told."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.washing import felts, may_felt, treated
from counterpane.craft.findings import Finding, rule

_CARE = '"tumble_drying": "none", "bleaching": "none", "ironing": "150", "dry_cleaning": "P"}}]}'
_BODY = '{"yarns": [{"name": "body", "fibre": [{"fibre": "wool", "percent": 100}], '


@rule(
    "superwash-not-told",
    family="label",
    severity="warning",
    bad=f'{_BODY}"care": {{"washing": "machine 40", {_CARE}',
    good=f'{_BODY}"superwash": true, "care": {{"washing": "machine 40", {_CARE}',
    source="a soap and detergent association (jsda.org), second-hand; the wool cycle: common practice, no source",
)
def superwash_not_told(label: Labelled) -> Iterator[Finding]:
    """Whether a wool is treated against felting is not told, and its washing felts one that is not.

    A gentle wash is no matter. A warm one, a machine's plain cycle or a tumble dryer is.
    """
    for place, yarn in enumerate(label.piece.yarns):
        if may_felt(yarn) is None and felts(*treated(label, yarn), label.law.untreated_wool_most):
            yield Finding(
                "superwash-not-told",
                "warning",
                f"Whether {yarn.name} is treated against felting is not known; if it is not, its washing felts it.",
                "Look for superwash or machine washable on the ball band, or ask the spinner.",
                pointer=f"/yarns/{place}/superwash",
            )

"""Something that a market wants on the label and nobody told."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.wanted import missing
from counterpane.craft.findings import Finding, rule


@rule(
    "market-field-not-told",
    family="label",
    severity="warning",
    bad='{"markets": ["UK"], "yarns": [{"fibre": [{"fibre": "wool", "percent": 100}]}]}',
    good='{"markets": ["UK"], "stated": {"maker": "A. Maker", "address": "1 Lane, Town", "batch": "7"},'
    ' "yarns": [{"fibre": [{"fibre": "wool", "percent": 100}]}]}',
    source="the law of each market, as the facts of labelling name it",
)
def market_field_not_told(label: Labelled) -> Iterator[Finding]:
    """A market wants something on the label that is not told.

    It concerns a piece that is sold. Local law and licensed practice decide.
    """
    for market in label.piece.markets:
        wants = [want for want in missing(label, market) if want.duty == "must"]
        if wants:
            fields = ", ".join(dict.fromkeys(want.field.replace("_", " ") for want in wants))
            yield Finding(
                "market-field-not-told",
                "warning",
                f"For a sale in {market} the label wants what is not told: {fields}.",
                "Tell it under stated, or see to it where it cannot be put on a label. Ask the authority there.",
                pointer="/stated",
            )

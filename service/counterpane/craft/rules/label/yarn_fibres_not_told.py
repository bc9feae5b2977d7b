"""A yarn whose fibres nobody told."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.findings import Finding, rule


@rule(
    "yarn-fibres-not-told",
    family="label",
    severity="warning",
    bad='{"yarns": [{"name": "edge", "grams": 30}]}',
    good='{"yarns": [{"name": "edge", "grams": 30, "fibre": [{"fibre": "cotton", "percent": 100}]}]}',
    source="Regulation (EU) No 1007/2011, Article 9(1)",
)
def yarn_fibres_not_told(label: Labelled) -> Iterator[Finding]:
    """The fibres of a yarn are not told.

    A piece has no composition until all its yarns have one. What the others are gives bounds and no label.
    """
    for place, yarn in enumerate(label.piece.yarns):
        if not yarn.fibres:
            yield Finding(
                "yarn-fibres-not-told",
                "warning",
                f"The fibres of {yarn.name} are not known, so neither are those of the piece.",
                "Copy them from its ball band, or ask the spinner.",
                pointer=f"/yarns/{place}",
            )

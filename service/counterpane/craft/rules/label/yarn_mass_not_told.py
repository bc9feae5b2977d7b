"""Several yarns of different fibres, one without its mass."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.findings import Finding, rule


@rule(
    "yarn-mass-not-told",
    family="label",
    severity="warning",
    bad='{"yarns": [{"name": "body", "grams": 300, "fibre": [{"fibre": "wool", "percent": 100}]},'
    ' {"name": "edge", "fibre": [{"fibre": "cotton", "percent": 100}]}]}',
    good='{"yarns": [{"name": "body", "grams": 300, "fibre": [{"fibre": "wool", "percent": 100}]},'
    ' {"name": "edge", "grams": 30, "fibre": [{"fibre": "cotton", "percent": 100}]}]}',
    source="Regulation (EU) No 1007/2011, Article 9(1)",
)
def yarn_mass_not_told(label: Labelled) -> Iterator[Finding]:
    """The mass of a yarn is not told, and the percentages depend on it.

    Percentages are by mass over the whole piece. Yarns of the same fibres need no weighing.
    """
    if label.whole.made_of.known and None not in label.left_out.values():
        return
    yarns = label.piece.yarns
    if any(yarn.estimate for yarn in yarns) and not label.whole.made_of.known and len(yarns) > 1:
        yield Finding(
            "yarn-mass-not-told",
            "note",
            "The grams of the yarns are estimates, so each percentage is known between bounds only.",
            "Weigh what is left of each yarn when the piece is done, and work out the label from that.",
            pointer="/yarns",
        )
    for place, yarn in enumerate(yarns):
        if yarn.mass is None and len(yarns) > 1:
            yield Finding(
                "yarn-mass-not-told",
                "warning",
                f"How much of {yarn.name} is in the piece is not known, so its percentages are not known either.",
                "Weigh what is left of it and subtract that from what there was.",
                pointer=f"/yarns/{place}",
            )

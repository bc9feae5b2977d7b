"""Decoration that is too much to be left out."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.findings import Finding, rule
from counterpane.craft.safety import in_figures


@rule(
    "left-out-too-heavy",
    family="label",
    severity="error",
    bad='{"yarns": [{"name": "body", "grams": 92.9, "fibre": [{"fibre": "wool", "percent": 100}]}, {"name": "trim",'
    ' "grams": 7.1, "left_out": "decoration", "fibre": [{"fibre": "silk", "percent": 100}]}]}',
    good='{"yarns": [{"name": "body", "grams": 93, "fibre": [{"fibre": "wool", "percent": 100}]}, {"name": "trim",'
    ' "grams": 7, "left_out": "decoration", "fibre": [{"fibre": "silk", "percent": 100}]}]}',
    source="Regulation (EU) No 1007/2011, Article 10",
)
def left_out_too_heavy(label: Labelled) -> Iterator[Finding]:
    """More is left out of the percentages than may be.

    Visible fibre that is decoration alone may be left out up to 7 % of the mass, antistatic fibre up to 2 %. What is
    more, or was not weighed, counts like any other yarn.
    """
    for place, yarn in enumerate(label.piece.yarns):
        if yarn.left_out is None:
            continue
        share, most = label.left_out[yarn.left_out], label.law.left_out_most[yarn.left_out]
        if share is None or share > most:
            known = "an unknown part" if share is None else f"{in_figures(share)} %"
            yield Finding(
                "left-out-too-heavy",
                "error",
                f"{yarn.left_out.capitalize()} is {known} of the mass and may be left out up to {in_figures(most)} %.",
                "Weigh it, or let it count: the percentages given count it.",
                pointer=f"/yarns/{place}/left_out",
            )

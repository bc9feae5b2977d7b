"""The percentages of a yarn are not 100."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.findings import Finding, rule
from counterpane.craft.measures import WHOLE_PCT
from counterpane.craft.safety import in_figures


@rule(
    "fibre-shares-not-whole",
    family="label",
    severity="error",
    bad='{"yarns": [{"fibre": [{"fibre": "wool", "percent": 75}, {"fibre": "polyamide", "percent": 20}]}]}',
    good='{"yarns": [{"fibre": [{"fibre": "wool", "percent": 75}, {"fibre": "polyamide", "percent": 25}]}]}',
    source="Regulation (EU) No 1007/2011, Article 9(1)",
)
def fibre_shares_not_whole(label: Labelled) -> Iterator[Finding]:
    """The percentages of a yarn do not make 100.

    A label gives every fibre with its per cent. What is missing is some fibre, and nobody can tell which.
    """
    for place, yarn in enumerate(label.piece.yarns):
        if yarn.total is not None and yarn.total != WHOLE_PCT:
            names = ", ".join(share.reading.word for share in yarn.fibres or ())
            yield Finding(
                "fibre-shares-not-whole",
                "error",
                f"The fibres of {yarn.name} ({names}) make {in_figures(yarn.total)} %, not 100.",
                "Read the ball band again, or ask the spinner for the whole composition.",
                pointer=f"/yarns/{place}/fibre",
            )

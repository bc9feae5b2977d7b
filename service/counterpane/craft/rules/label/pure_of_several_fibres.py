"""Pure, said of several fibres."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.wordings import says_pure
from counterpane.craft.findings import Finding, rule


@rule(
    "pure-of-several-fibres",
    family="label",
    severity="error",
    bad='{"claims": ["pure wool"], "yarns": [{"fibre": [{"fibre": "wool", "percent": 98},'
    ' {"fibre": "polyamide", "percent": 2}]}]}',
    good='{"claims": ["pure wool"], "yarns": [{"fibre": [{"fibre": "wool", "percent": 100}]}]}',
    source="Regulation (EU) No 1007/2011, Article 7(1)",
)
def pure_of_several_fibres(label: Labelled) -> Iterator[Finding]:
    """A piece is called pure and has several fibres, or fibres that are not known.

    "100 %", "pure" and "all" are for one fibre alone.
    """
    if len(label.whole.made_of.portions) == 1 and label.whole.made_of.known:
        return
    for place, claim in enumerate(label.piece.claims):
        if says_pure(claim):
            found = ", ".join(portion.fibre.name for portion in label.whole.made_of.portions) or "not known"
            yield Finding(
                "pure-of-several-fibres",
                "error",
                f"{claim!r} is said of a piece whose fibres are {found}.",
                "Give the percentages and leave that word out.",
                pointer=f"/claims/{place}",
            )

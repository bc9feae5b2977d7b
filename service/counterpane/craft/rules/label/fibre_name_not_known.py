"""A word that is the name of no fibre here."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled, shares
from counterpane.craft.findings import Finding, rule


@rule(
    "fibre-name-not-known",
    family="label",
    severity="error",
    bad='{"yarns": [{"fibre": [{"fibre": "cloud wool", "percent": 100}]}]}',
    good='{"yarns": [{"fibre": [{"fibre": "wool", "percent": 100}]}]}',
    source="Regulation (EU) No 1007/2011, Article 5 and Annex I",
)
def fibre_name_not_known(label: Labelled) -> Iterator[Finding]:
    """A fibre is called by a word that is the name of no fibre.

    Only the names of Annex I are printed, and no other word even as part of one. A name of a brand tells no fibre.
    """
    for pointer, yarn, share in shares(label):
        if share.reading.manner == "unknown":
            yield Finding(
                "fibre-name-not-known",
                "error",
                f"{share.reading.word!r}, {yarn.name}, is the name of no fibre that is known here.",
                "Ask the spinner which fibre it is, and give that name: wool, cotton, viscose, polyamide and so on.",
                pointer=pointer,
            )

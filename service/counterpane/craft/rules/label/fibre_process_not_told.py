"""A word that several fibres share."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled, shares
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "fibre-process-not-told",
    family="label",
    severity="error",
    bad='{"yarns": [{"fibre": [{"fibre": "bamboo", "percent": 100}]}]}',
    good='{"yarns": [{"fibre": [{"fibre": "viscose", "percent": 100}]}]}',
    source="Regulation (EU) No 1007/2011, Annex I; FTC, bamboo textiles (ftc.gov/bamboo-textiles)",
)
def fibre_process_not_told(label: Labelled) -> Iterator[Finding]:
    """A fibre is called by what it was made from, or how fine it is.

    Bamboo in a soft yarn is nearly always viscose, lyocell or modal, and is printed as what it was made into.
    """
    for pointer, yarn, share in shares(label):
        if share.reading.manner == "process":
            choices = share.reading.choices
            yield Finding(
                "fibre-process-not-told",
                "error",
                f"{share.reading.word!r}, {yarn.name}, does not tell the fibre: it may be {', '.join(choices)}.",
                "Ask the spinner which it is; do not guess.",
                pointer=pointer,
                changes=tuple(Correction(f"{pointer}/fibre", choice, "if the spinner says so") for choice in choices),
            )

"""A name of the trade, for which the law prints another."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled, shares
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "fibre-name-of-trade",
    family="label",
    severity="note",
    bad='{"yarns": [{"fibre": [{"fibre": "merino", "percent": 100}]}]}',
    good='{"yarns": [{"fibre": [{"fibre": "wool", "percent": 100}]}]}',
    source="Regulation (EU) No 1007/2011, Annex I; which word means which fibre: common practice, no source",
)
def fibre_name_of_trade(label: Labelled) -> Iterator[Finding]:
    """A fibre is called by a name of the trade.

    Merino is a breed and prints as wool. The word may stand elsewhere on a swing ticket, not in the composition.
    """
    for pointer, yarn, share in shares(label):
        if share.reading.manner == "trade" and share.reading.fibre:
            name = share.reading.fibre.name
            yield Finding(
                "fibre-name-of-trade",
                "note",
                f"{share.reading.word!r}, {yarn.name}, is a name of the trade; the label prints {name}.",
                "Nothing to do: the composition has the legal name.",
                pointer=pointer,
                changes=(Correction(f"{pointer}/fibre", name, "the name of Annex I"),),
            )

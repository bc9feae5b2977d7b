"""An analysis whose fibre has two agreed allowances."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled, shares
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "fibre-state-not-told",
    family="label",
    severity="error",
    bad='{"mass": "dry", "yarns": [{"fibre": [{"fibre": "polyamide", "percent": 100}]}]}',
    good='{"mass": "dry", "yarns": [{"fibre": [{"fibre": "polyamide", "percent": 100, "state": "staple"}]}]}',
    source="Regulation (EU) No 1007/2011, Annex IX",
)
def fibre_state_not_told(label: Labelled) -> Iterator[Finding]:
    """Dry masses are given of a fibre that has two agreed allowances.

    Polyamide has one allowance as staple and another as filament; without its state the percentages do not follow.
    """
    for pointer, yarn, share in shares(label):
        fibre = share.reading.fibre
        if label.piece.dry and fibre and fibre.increase(share.state) is None:
            said = f"{share.state!r} is no state of it" if share.state else "its state is not told"
            yield Finding(
                "fibre-state-not-told",
                "error",
                f"The dry mass of {fibre.name}, {yarn.name}, needs its allowance, and {said}.",
                f"Say which it is: {' or '.join(fibre.allowance)}.",
                pointer=pointer,
                changes=tuple(Correction(f"{pointer}/state", each, "if it is so") for each in fibre.allowance),
            )

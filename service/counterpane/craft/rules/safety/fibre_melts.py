"""R32: a yarn that is half or more of a fibre that melts."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.house import MELTING_SHARE_PCT


@rule(
    "fibre-melts",
    family="safety",
    severity="note",
    reference="R32",
    basis="house",
    jurisdiction="none",
    source="melting: handbooks of textiles, from memory; IWTO on wool, read in 2026; the share of 50 per cent: house",
    needs=("fibres.pct",),
    bad='{"fibres": [{"name": "acrylic", "pct": 50}, {"name": "cotton", "pct": 50}]}',
    good='{"fibres": [{"name": "acrylic", "pct": 49}, {"name": "cotton", "pct": 51}]}',
)
def fibre_melts(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Fibre that melts.

    Acrylic, nylon and polyester melt and stick to skin instead of charring.
    """
    share = inputs.share_of("melting")
    if share >= MELTING_SHARE_PCT:
        yield speak(
            fibre_melts,
            "note",
            f"{in_figures(share)} per cent of the yarn melts in heat and sticks.",
            "Keep the blanket from heaters, irons and flames.",
        )

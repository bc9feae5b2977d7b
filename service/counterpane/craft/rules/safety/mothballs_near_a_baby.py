"""R47: what keeps moths from wool and hurts a baby."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "mothballs-near-a-baby",
    family="safety",
    severity="note",
    reference="R47",
    basis="house",
    jurisdiction="none",
    source="naphthalene and babies: from memory; moths hole wool and silk: a school text on textiles, second-hand",
    needs=("moth_treatment or fibres",),
    bad='{"moth_treatment": true}',
    good='{"moth_treatment": false, "fibres": [{"name": "cotton", "pct": 100}]}',
)
def mothballs_near_a_baby(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Mothballs near a baby.

    Printed for wool, silk and other protein fibres, which moths eat, and where a treatment is planned. Holes from
    moths are openings too.
    """
    if inputs.moth_treatment or inputs.contains("protein"):
        yield speak(
            mothballs_near_a_baby,
            "note",
            "Store the blanket clean and dry; use no naphthalene mothballs near a baby.",
            "Wash and air it before use, and look for holes of moths.",
        )

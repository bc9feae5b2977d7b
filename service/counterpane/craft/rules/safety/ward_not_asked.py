"""R48: a blanket for a ward, or for a child with tubes, oxygen or creams."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "ward-not-asked",
    family="safety",
    severity="note",
    reference="R48",
    basis="house",
    jurisdiction="none",
    source="from memory: creams soaked into fabric feed a fire; wards have lists of their own: a "
    "neonatal unit in Oxford, relayed",
    needs=("use", "medical_device", "emollient"),
    bad='{"age_band": "36m+", "use": "hospital", "medical_device": false, "emollient": false}',
    good='{"age_band": "36m+", "use": "lap", "medical_device": false, "emollient": false}',
)
def ward_not_asked(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Ward or nurse not asked.

    Units differ on fibre, size, openings and washing. Tubes and lines catch in a blanket, and emollient creams
    that soak into fabric make a fire burn faster.
    """
    if inputs.use == "hospital" or inputs.medical_device or inputs.emollient:
        cream = " Creams soaked into fabric feed a fire: keep it from flames." if inputs.emollient else ""
        yield speak(
            ward_not_asked,
            "note",
            "The blanket is for a hospital, or for a child with tubes, lines, oxygen or creams." + cream,
            "Ask the ward or the nurse first, and follow their own list.",
        )

"""R14: openings in a blanket for a baby born too early."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.limits import FINGERTIP_MM


@rule(
    "openwork-for-a-preterm-baby",
    family="safety",
    severity="stop",
    reference="R14",
    basis="published",
    jurisdiction="UK",
    source="what a neonatal unit in Oxford asks for, second-hand; toe tourniquet from a blanket: Verma, Hashem and "
    "Ramadan, EC Paediatrics 8.8, 2019, 693-695",
    needs=("age_band", "openwork", "hole_mm"),
    scope="preterm",
    bad='{"age_band": "preterm", "openwork": true, "hole_mm": 4}',
    good='{"age_band": "preterm", "openwork": false, "hole_mm": 4.9}',
)
def openwork_for_a_preterm_baby(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Openings in a blanket for a preterm baby.

    Neonatal units ask for plain fabric, so that fingers are not caught; any opening made on purpose counts, of
    whatever size, and any other from 5 mm.
    """
    large = inputs.hole_mm is not None and inputs.hole_mm >= FINGERTIP_MM
    if inputs.age_band == "preterm" and (inputs.openwork or large):
        found = f"an opening of {inputs.said('hole_mm')}" if large else "openings made on purpose"
        yield speak(
            openwork_for_a_preterm_baby,
            "stop",
            f"The fabric has {found}; neonatal units want plain fabric in which no finger is caught.",
            "Choose a closed texture, and ask the unit for its own list first.",
        )

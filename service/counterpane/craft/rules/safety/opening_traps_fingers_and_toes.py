"""R12: an opening in which fingers and toes of a baby can be caught."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.limits import ENTRAPMENT_MM, RIGID_CLEAR_MM


@rule(
    "opening-traps-fingers-and-toes",
    family="safety",
    severity="stop",
    reference="R12",
    basis="borrowed",
    jurisdiction="EU",
    source="CEN/TR 13387:2004 for flexible mesh, quoted second-hand in ANEC's finger entrapment report, 2012, p. 12; "
    "no upper end is the project's own judgement",
    needs=("age_band", "hole_mm"),
    scope="under 12 months",
    bad='{"age_band": "3-12m", "hole_mm": 7.0}',
    good='{"age_band": "3-12m", "hole_mm": 4.9}',
)
def opening_traps_fingers_and_toes(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Opening that can trap a baby's finger or toe.

    From 7 mm a finger goes through a mesh and can jam. Guidance on framed openings counts more than 12 mm as clear;
    knitted fabric gives and closes round a hand or a foot, so there is no upper end here.
    """
    if inputs.under(12) and inputs.hole_mm is not None and inputs.hole_mm >= ENTRAPMENT_MM:
        wide = inputs.hole_mm > RIGID_CLEAR_MM
        yield speak(
            opening_traps_fingers_and_toes,
            "stop",
            f"The largest opening is {inputs.said('hole_mm')}; from 7 mm a baby's finger or toe can be caught in it"
            + (", and a wide one in a fabric that gives takes a hand or a foot." if wide else "."),
            "Choose a texture without openings, or a closer fabric; test the washed, stretched piece with a rod.",
            basis="house" if wide else "borrowed",
        )

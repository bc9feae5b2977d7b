"""R13: an opening of finger size in a blanket for a child of one or two years."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.limits import ENTRAPMENT_MM, RIGID_CLEAR_MM


@rule(
    "large-opening-for-a-toddler",
    family="safety",
    severity="warn",
    reference="R13",
    basis="borrowed",
    jurisdiction="EU",
    source="CEN/TR 13387:2004 for flexible mesh, quoted second-hand in ANEC's finger entrapment report, 2012, p. 12; "
    "no upper end is the project's own judgement",
    needs=("age_band", "hole_mm"),
    scope="12 to 36 months",
    bad='{"age_band": "12-24m", "hole_mm": 7}',
    good='{"age_band": "12-24m", "hole_mm": 6.9}',
)
def large_opening_for_a_toddler(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Opening that can trap a toddler's finger.

    From 7 mm a finger goes through a mesh; a larger opening in a fabric that gives takes a hand or a foot.
    """
    if inputs.concerns("12 to 36 months") and inputs.hole_mm is not None and inputs.hole_mm >= ENTRAPMENT_MM:
        yield speak(
            large_opening_for_a_toddler,
            "warn",
            f"The largest opening is {inputs.said('hole_mm')}; from 7 mm a finger can be caught, and a wide "
            "opening in a fabric that gives takes a hand or a foot.",
            "Test the washed piece with a rod of 7 mm, lightly stretched both ways; work a closer fabric if it enters.",
            basis="house" if inputs.hole_mm > RIGID_CLEAR_MM else "borrowed",
        )

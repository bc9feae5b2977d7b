"""R11: an opening of the width of a young baby's fingertip."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.limits import ENTRAPMENT_MM, FINGERTIP_MM


@rule(
    "opening-takes-a-fingertip",
    family="safety",
    severity="warn",
    reference="R11",
    basis="borrowed",
    jurisdiction="EU",
    source="CEN/TR 13387:2004 for rigid openings, quoted second-hand in ANEC's finger entrapment report, 2012, p. 12; "
    "smallest fingertips: the same report, pp. 6 and 27",
    needs=("age_band", "hole_mm"),
    scope="under 12 months",
    bad='{"age_band": "3-12m", "hole_mm": 6.9}',
    good='{"age_band": "3-12m", "hole_mm": 4.9}',
)
def opening_takes_a_fingertip(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Opening that takes a young baby's fingertip.

    A fleshy fingertip squeezes smaller than the joint behind it, so it can go in and not come out. The figure is
    borrowed from guidance on rigid parts of child-care articles.
    """
    if inputs.under(12) and inputs.hole_mm is not None and FINGERTIP_MM <= inputs.hole_mm < ENTRAPMENT_MM:
        yield speak(
            opening_takes_a_fingertip,
            "warn",
            f"The largest opening is {inputs.said('hole_mm')}; from 5 mm a young baby's fingertip can go in.",
            "Work a closer fabric until a rod of 5 mm does not enter the washed piece, lightly stretched.",
        )

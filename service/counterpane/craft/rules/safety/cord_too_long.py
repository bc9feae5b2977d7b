"""R20: a cord long enough to go round a neck."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.limits import CORD_MOST_MM


@rule(
    "cord-too-long",
    family="safety",
    severity="stop",
    reference="R20",
    basis="borrowed",
    jurisdiction="EU",
    source="EN 71-1:2005+A8:2009 cl. 5.4 b, second-hand, for toys (220 mm, pulled with 25 N); EN "
    "12586+A1 for soother holders, summarised by Tukes, the Finnish safety agency, read in 2026",
    needs=("age_band", "cord_free_mm"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "cord_free_mm": 220.1}',
    good='{"age_band": "12-24m", "cord_free_mm": 75}',
)
def cord_too_long(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Cord that goes round a neck.

    A cord is measured from where it leaves the blanket, pulled straight. The figure comes from toys and from
    soother holders.
    """
    if inputs.under(36) and inputs.cord_free_mm is not None and inputs.cord_free_mm > CORD_MOST_MM:
        yield speak(
            cord_too_long,
            "stop",
            f"The longest cord is {inputs.said('cord_free_mm')}, pulled straight; over 220 mm it can go round a neck.",
            "Leave cords away for a child under three years.",
        )

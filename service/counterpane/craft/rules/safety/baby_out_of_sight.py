"""R02: a young child under a blanket that no adult can see."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "baby-out-of-sight",
    family="safety",
    severity="note",
    reference="R02",
    basis="published",
    jurisdiction="US, UK, AU",
    source="AAP, Pediatrics 150(1):e2022057990, 2022; NHS and Red Nose Australia, pages on bedding, read in 2026",
    scope="under 36 months",
    bad='{"age_band": "24-36m"}',
    good='{"age_band": "36m+"}',
)
def baby_out_of_sight(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Young child under a blanket out of an adult's sight.

    Printed for every child under three years, and where the age is not known. A monitor is no supervision: whoever
    watches must be able to reach the child at once.
    """
    yield speak(
        baby_out_of_sight,
        "note",
        "Use the blanket while the child is awake and in sight and reach of an adult; a monitor is not supervision.",
        "Take it away when a baby falls asleep, and follow your own health service.",
    )

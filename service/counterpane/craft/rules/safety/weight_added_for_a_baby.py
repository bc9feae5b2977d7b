"""R03: weight added to a blanket for a baby or a toddler."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "weight-added-for-a-baby",
    family="safety",
    severity="stop",
    reference="R03",
    basis="published",
    jurisdiction="US, AU",
    source="AAP, Pediatrics 150(1):e2022057990, 2022, second-hand; CPSC, statement of Commissioner "
    "Trumka, 15 April 2024; Red Nose Australia, answer on weighted blankets, read in 2026",
    needs=("age_band", "weighted"),
    scope="under 36 months",
    bad='{"age_band": "24-36m", "weighted": true}',
    good='{"age_band": "24-36m", "weighted": false}',
)
def weight_added_for_a_baby(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Weight added for a child under three.

    No added weight is known that does no harm: it presses on the chest, and a small child cannot push it away.
    """
    if inputs.under(36) and inputs.weighted:
        yield speak(
            weight_added_for_a_baby,
            "stop",
            "Weight is added to the blanket; for a baby or a toddler no added weight is known that does no harm.",
            "Leave the weight out.",
        )

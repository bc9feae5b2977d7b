"""R46: warmth judged by the blanket and not by the child."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "baby-left-cold",
    family="safety",
    severity="note",
    reference="R46",
    basis="published",
    jurisdiction="research, UK",
    source="Williams et al., Int J Epidemiol 25:366, 1996 (too little insulation: odds ratio 2.63, 1.61-4.30); feeling "
    "chest or neck: local partnerships in England, second-hand",
    needs=("age_band",),
    scope="under 12 months",
    bad='{"age_band": "0-3m"}',
    good='{"age_band": "12-24m"}',
)
def baby_left_cold(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Baby left cold because a lighter cover seemed the better choice.

    Printed with the sleep advice for babies under one year: too much warmth is a risk, and so is too little.
    """
    if inputs.under(12):
        yield speak(
            baby_left_cold,
            "note",
            "Too cold is a risk as well as too warm; no blanket tells which it is.",
            "Feel the baby's chest or the back of the neck, not hands or feet, and change what the baby wears.",
        )

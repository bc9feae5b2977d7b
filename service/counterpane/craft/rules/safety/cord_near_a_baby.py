"""R21: a cord near a baby, shorter than one that stops by its length."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.limits import CORD_MOST_MM, CORD_NOTICE_MM


@rule(
    "cord-near-a-baby",
    family="safety",
    severity="stop",
    reference="R21",
    basis="borrowed",
    jurisdiction="US",
    source="no cord near an infant: CPSC Document 5095, read in 2026; 75 mm: 16 CFR 1120.3 and ASTM "
    "F1816-97, drawstrings of clothing",
    needs=("age_band", "use", "cord_free_mm"),
    scope="under 36 months",
    bad='{"age_band": "3-12m", "use": "sleep", "advice": ["UK"], "cord_free_mm": 20}',
    good='{"age_band": "12-24m", "use": "sleep", "advice": ["UK"], "cord_free_mm": 75}',
)
def cord_near_a_baby(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Cord near a baby.

    Strings, ribbons and ties near babies have killed; best is none at all. Where a baby under one year sleeps, any
    cord stops; else one over 75 mm warns.
    """
    free = inputs.cord_free_mm
    if inputs.use == "sleep" and inputs.under(12) and (free or inputs.cords):
        yield speak(
            cord_near_a_baby,
            "stop",
            "The blanket has a cord, ribbon or tie where a baby sleeps.",
            "Leave cords of any length away.",
        )
    elif inputs.under(36) and free is not None and CORD_NOTICE_MM < free <= CORD_MOST_MM:
        yield speak(
            cord_near_a_baby,
            "warn",
            f"The longest cord is {inputs.said('cord_free_mm')}; near a young child none at all is best.",
            "Leave it away, or keep it to 75 mm and sew it down.",
        )

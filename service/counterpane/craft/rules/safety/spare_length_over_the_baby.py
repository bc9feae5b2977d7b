"""R10: length that is doubled back over a sleeping baby."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.house import REACH_FROM_12_MONTHS_CM, REACH_UNDER_12_MONTHS_CM
from counterpane.craft.safety.limits import TUCK_CM

TENTH = Fraction(1, 10)
"""A length over a limit is shown rounded up to this, so that it is over the limit as shown too; house."""


@rule(
    "spare-length-over-the-baby",
    family="safety",
    severity="note",
    reference="R10",
    basis="house",
    jurisdiction="NL, UK (Scotland)",
    source="spare length under the mattress: VeiligheidNL and TNO, relayed by a page of a nursery, read "
    "in 2026; folding: Safe Sleep Scotland, read in 2026; 50 and 70 cm: house",
    needs=("age_band", "use", "length_cm"),
    scope="under 24 months and use sleep and advice on tucking in",
    bad='{"age_band": "12-24m", "use": "sleep", "markets": ["UK"], "length_cm": 80.1}',
    good='{"age_band": "12-24m", "use": "sleep", "markets": ["UK"], "length_cm": 80}',
)
def spare_length_over_the_baby(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Spare length over a sleeping baby.

    A long blanket tempts to be folded double, which doubles its warmth, or it reaches over the face. How long a
    baby is differs; 50 cm under a year and 70 cm at a year are the house figures for what lies above 10 cm of foot
    tuck.
    """
    if inputs.use != "sleep" or inputs.length_cm is None or not inputs.under(24):
        return
    reach = REACH_UNDER_12_MONTHS_CM if inputs.under(12) else REACH_FROM_12_MONTHS_CM
    above = inputs.length_cm - TUCK_CM
    if above > reach:
        yield speak(
            spare_length_over_the_baby,
            "note",
            f"About {in_figures(-(-above // TENTH) * TENTH)} cm lie above 10 cm under the mattress at the foot; a "
            f"child of this age takes about {in_figures(reach)} cm.",
            "Put the spare length under the mattress at the foot, never doubled over the baby.",
        )

"""R07: a blanket of a mass that nobody would call lightweight."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from counterpane.craft.findings import rule
from counterpane.craft.measures import half_up
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.house import HEAVY_GSM, NOT_LIGHT_GSM


@rule(
    "blanket-not-lightweight",
    family="safety",
    severity="warn",
    reference="R07",
    basis="house",
    jurisdiction="UK, AU, CA",
    source="figures: house; the word lightweight alone: The Lullaby Trust, bedding guidance, "
    "second-hand, 2024; Red Nose Australia, read in 2026; Health Canada, HC Pub. 120077, second-hand, "
    "2017",
    needs=("gsm",),
    bad='{"mass_g": 560, "width_cm": 70, "length_cm": 100}',
    good='{"mass_g": 349, "width_cm": 70, "length_cm": 100}',
)
def blanket_not_lightweight(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Blanket that is not lightweight.

    Health bodies ask for lightweight blankets and give no figure. Mass is not warmth: a light fleece can be very
    warm, and a cold baby is at risk too, so this says nothing of warmth.
    """
    gsm = inputs.gsm
    if gsm is None or gsm < NOT_LIGHT_GSM:
        return
    yield speak(
        blanket_not_lightweight,
        "warn" if gsm >= HEAVY_GSM else "note",
        f"The blanket has {_said(gsm, inputs)} g per square metre; from "
        f"{in_figures(NOT_LIGHT_GSM)} it is not lightweight.",
        "Keep it for the floor, the pram or a lap; this says nothing of how warm it is.",
    )


def _said(gsm: Fraction, inputs: SafetyInputs) -> str:
    if inputs.knows("gsm"):
        return in_figures(gsm)
    return f"by an estimate from the yarn at least {in_figures(half_up(gsm))}"

"""R06: a blanket of several layers, or one that is used folded."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "layers-double-the-warmth",
    family="safety",
    severity="warn",
    reference="R06",
    basis="published",
    jurisdiction="UK (Scotland)",
    source="Safe Sleep Scotland, page on tucking in, read in 2026",
    needs=("age_band", "layers"),
    scope="under 12 months",
    bad='{"age_band": "3-12m", "layers": 2}',
    good='{"age_band": "3-12m", "layers": 1}',
)
def layers_double_the_warmth(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Layers that double the warmth.

    A folded blanket counts as two blankets, and so does one that is knitted double.
    """
    if inputs.under(12) and inputs.layers is not None and inputs.layers > 1:
        yield speak(
            layers_double_the_warmth,
            "warn",
            f"The baby lies under {inputs.layers} layers; each counts as a blanket of its own.",
            "Plan one layer in the size that is wanted, not a larger piece to be folded.",
        )

"""R41: a blanket spread over a pram."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "blanket-over-the-pram",
    family="safety",
    severity="note",
    reference="R41",
    basis="published",
    jurisdiction="UK",
    source="The Lullaby Trust and NHS Surrey, second-hand; a newspaper's test of 17 June 2022 found 34 °C after half "
    "an hour under a thin cover; folding: Scottish page on tucking in, read in 2026",
    needs=("use",),
    scope="use pram",
    bad='{"age_band": "36m+", "use": "pram"}',
    good='{"age_band": "36m+", "use": "lap"}',
)
def blanket_over_the_pram(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Blanket spread over a pram.

    Printed for every blanket that goes into a pram. Air under a cover heats up within minutes, even when it is thin.
    """
    if inputs.use == "pram":
        yield speak(
            blanket_over_the_pram,
            "note",
            "Never hang the blanket over the hood or the opening of a pram: heat builds up under it within minutes. "
            "Folded once it warms like two.",
            "Keep it clear of wheels and brakes, and take it off indoors.",
        )

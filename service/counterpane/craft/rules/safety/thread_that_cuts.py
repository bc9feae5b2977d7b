"""R28: monofilament, invisible or harsh metallic thread."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "thread-that-cuts",
    family="safety",
    severity="stop",
    reference="R28",
    basis="borrowed",
    jurisdiction="AU",
    source="an Australian retailer on nursery goods to three years, second-hand (garmentstech.com, read in 2026)",
    needs=("age_band", "monofilament or fibres"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "monofilament": true}',
    good='{"age_band": "12-24m", "monofilament": false}',
)
def thread_that_cuts(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Thread that cuts.

    A single hard filament does not tear: it cuts skin and winds round fingers. Sewing thread counts as well as yarn.
    """
    if inputs.under(36) and (inputs.monofilament or inputs.contains("cutting")):
        yield speak(
            thread_that_cuts,
            "stop",
            "The piece has monofilament, invisible or metallic thread, which cuts and does not tear.",
            "Use a spun yarn, and a spun thread for sewing.",
        )

"""R19: a fixed loop through which a head can go."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.limits import HEAD_LOOP_MM


@rule(
    "loop-passes-over-a-head",
    family="safety",
    severity="stop",
    reference="R19",
    basis="borrowed",
    jurisdiction="EU",
    source="EN 71-1:2005+A8:2009 cl. 5.4 c, second-hand, for toys; whether it stands in the edition of "
    "2018 is not confirmed; the United States figure for toys, 360 mm, is from memory",
    needs=("age_band", "loop_perimeter_mm"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "loop_perimeter_mm": 380.1}',
    good='{"age_band": "12-24m", "loop_perimeter_mm": 380}',
)
def loop_passes_over_a_head(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Loop that passes over a head.

    A loop that slips over a head and not back again strangles. The figure is one for toys.
    """
    if inputs.under(36) and inputs.loop_perimeter_mm is not None and inputs.loop_perimeter_mm > HEAD_LOOP_MM:
        yield speak(
            loop_passes_over_a_head,
            "stop",
            f"The largest loop measures {inputs.said('loop_perimeter_mm')} round; over 380 mm it can go over a head. "
            "The figure for toys in the United States, from memory, is stricter: 360 mm.",
            "Leave the loop away, or sew it down.",
        )

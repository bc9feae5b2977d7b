"""R24: a fringe or a tassel on a blanket for a child under three."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "fringe-or-tassel",
    family="safety",
    severity="stop",
    reference="R24",
    basis="borrowed",
    jurisdiction="US, AU",
    source="strings near infants: CPSC Document 5095; cords on children's clothing: 16 CFR 1120.3; a trade guideline "
    "treats fringes apart: National Retail Association, Australia, 2020, contents list only",
    needs=("age_band", "attachments"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "attachments": [{"kind": "tassel"}]}',
    good='{"age_band": "12-24m", "attachments": []}',
)
def fringe_or_tassel(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Fringe or tassel for a child under three.

    Each strand is a cord, and strands come off in a mouth.
    """
    if inputs.under(36) and inputs.has("fringe", "tassel"):
        yield speak(
            fringe_or_tassel,
            "stop",
            "The blanket has a fringe or tassels: cords that wind round a neck or a finger, and strands that come off.",
            "Leave them away for a child under three years; end with a knitted border.",
        )

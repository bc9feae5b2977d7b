"""R25: a pom-pom on a blanket for a child under three."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "pom-pom",
    family="safety",
    severity="stop",
    reference="R25",
    basis="house",
    jurisdiction="none",
    source="house; toy standards have a clause on pom-poms (ASTM F963 s. 4.22, ISO 8124-1: from memory)",
    needs=("age_band", "attachments"),
    scope="under 36 months",
    bad='{"age_band": "24-36m", "attachments": [{"kind": "pom-pom"}]}',
    good='{"age_band": "24-36m", "attachments": [{"kind": "label"}]}',
)
def pom_pom(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Pom-pom or tuft for a child under three.

    Tufts that are pulled out choke, and loose yarn winds round fingers. That a small-parts rule does not count yarn
    changes nothing here.
    """
    if inputs.under(36) and inputs.has("pompom", "tuft", "tuftball"):
        yield speak(
            pom_pom,
            "stop",
            "The blanket has pom-poms or tufts: a child can pull yarn out and choke on it.",
            "Leave them away for a child under three years.",
        )

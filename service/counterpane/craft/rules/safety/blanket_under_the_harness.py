"""R42: a blanket between a child and the harness of a car seat."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "blanket-under-the-harness",
    family="safety",
    severity="warn",
    reference="R42",
    basis="published",
    jurisdiction="US",
    source="American Academy of Pediatrics, winter advice on car seats, second-hand, 2022",
    needs=("use",),
    scope="use car-seat",
    bad='{"age_band": "36m+", "use": "car-seat"}',
    good='{"age_band": "36m+", "use": "lap"}',
)
def blanket_under_the_harness(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Blanket between the child and the harness of a car seat.

    Printed for every blanket that goes into a car seat. Padding under the straps is pressed flat in a crash and leaves
    them slack.
    """
    if inputs.use == "car-seat":
        yield speak(
            blanket_under_the_harness,
            "warn",
            "Never put the blanket under or behind a child in a harness: it flattens in a crash, and straps go slack.",
            "Lay it over the buckled straps only, below the face, and take it off in a warm car and indoors.",
        )

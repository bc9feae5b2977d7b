"""R43: a baby under a blanket where an adult may doze."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "adult-dozing-beside-the-baby",
    family="safety",
    severity="note",
    reference="R43",
    basis="memory",
    jurisdiction="US",
    source="from memory; general advice on sleep: AAP, Pediatrics 150(1):e2022057990, 2022",
    scope="under 12 months",
    bad='{"age_band": "3-12m", "use": "lap"}',
    good='{"age_band": "12-24m", "use": "lap"}',
)
def adult_dozing_beside_the_baby(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Baby under a blanket where an adult may doze.

    Printed for every baby under one year, and where the age is not known.
    """
    yield speak(
        adult_dozing_beside_the_baby,
        "note",
        "Do not use the blanket with a baby on a sofa, in a shared bed, or where an adult may fall asleep beside it.",
        "Put the baby down somewhere firm and flat, without the blanket, before you get sleepy.",
    )

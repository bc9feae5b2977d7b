"""R26: a hard part that may come off and be swallowed."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak

UNTOLD = "fits into the small-parts cylinder cannot be told from its largest size."
MEASURE = "Measure it; one between 31.7 and 57.1 mm fits where it is narrow. Better leave it off under three years."


@rule(
    "hard-part-comes-off",
    family="safety",
    severity="stop",
    reference="R26",
    basis="borrowed",
    jurisdiction="US, EU",
    source="small-parts cylinder: 16 CFR 1501.4, read in 2026, its size second-hand; pull of 50 and 90 N: EN 71-1 cl. "
    "8.3 and 8.4, second-hand, edition not seen, for toys",
    needs=("age_band", "attachments", "attachments.largest_mm"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "attachments": [{"kind": "button", "largest_mm": 7, "pull_n": 89.9}]}',
    good='{"age_band": "12-24m", "attachments": []}',
)
def hard_part_comes_off(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Hard part that comes off.

    A button, bead, charm or snap that fits into the small-parts cylinder chokes a child when it comes off. A pull
    that nobody measured counts as too weak; a home check does not hold a force for ten seconds.
    """
    for part in inputs.hard_parts if inputs.under(36) else ():
        if part.fits_cylinder is False or part.held:
            continue
        if part.fits_cylinder is None:
            yield speak(hard_part_comes_off, "warn", f"Whether the {part.kind} {UNTOLD}", MEASURE)
            continue
        pull = "nobody measured its pull" if part.pull_n is None else f"it held {in_figures(part.pull_n)} N"
        yield speak(
            hard_part_comes_off,
            "stop",
            f"The {part.kind} of {in_figures(part.largest_mm or Fraction(0))} mm fits into the small-parts cylinder; "
            f"{pull}; {in_figures(part.pull_wanted_n)} N are the yardstick.",
            "Leave it off for a child under three years.",
        )

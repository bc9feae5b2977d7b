"""R27: a hard part whose fastening was measured and held."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak


@rule(
    "hard-part-near-a-baby",
    family="safety",
    severity="warn",
    reference="R27",
    basis="borrowed",
    jurisdiction="US, EU",
    source="small-parts cylinder: 16 CFR 1501.4, read in 2026; pull: EN 71-1 cl. 8.3 and 8.4, second-hand, edition not "
    "seen, for toys; lead: CPSIA s. 101 (2008) and 16 CFR 1500.91, second-hand; nickel: REACH Annex XVII entry 27, "
    "second-hand",
    needs=("age_band", "attachments", "attachments.largest_mm"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "attachments": [{"kind": "button", "largest_mm": 7, "pull_n": 90}]}',
    good='{"age_band": "36m+", "attachments": [{"kind": "button", "largest_mm": 7, "pull_n": 90}]}',
)
def hard_part_near_a_baby(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Hard part near a young child.

    Also a part that held its pull can be bitten off after many washes. Trims are under the law on lead in the
    United States, and metal ones under that on nickel in the European Union.
    """
    for part in inputs.hard_parts if inputs.under(36) else ():
        if part.fits_cylinder is not False and part.pull_n is not None and part.held:
            metal = "" if part.metal is False else ", and metal is under the law on nickel"
            yield speak(
                hard_part_near_a_baby,
                "warn",
                f"The {part.kind} held {in_figures(part.pull_n)} N; none at all is better for a child under three. "
                f"Trims are under the law on lead{metal}.",
                "Leave it off, or ask its maker for the papers and look at it after each wash.",
            )

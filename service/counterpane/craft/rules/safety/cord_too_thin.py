"""R22: a cord so thin, or a ribbon so narrow, that it cuts and knots."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.limits import CORD_THICK_LEAST_MM, RIBBON_LEAST_MM

LEAST = (("cord", "cord_thick_mm", CORD_THICK_LEAST_MM), ("ribbon", "ribbon_width_mm", RIBBON_LEAST_MM))


@rule(
    "cord-too-thin",
    family="safety",
    severity="warn",
    reference="R22",
    basis="borrowed",
    jurisdiction="EU",
    source="cord 1.5 mm: EN 71-1:2005+A8:2009 cl. 5.4 a, second-hand, for toys; ribbon 6 mm: EN 12586+A1 "
    "for soother holders, summarised by Tukes, the Finnish safety agency, read in 2026",
    needs=("cord_thick_mm", "ribbon_width_mm"),
    scope="cord",
    bad='{"cord_thick_mm": 1.4, "cord_free_mm": 50}',
    good='{"cord_thick_mm": 1.5, "cord_free_mm": 50}',
)
def cord_too_thin(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Cord or ribbon too thin.

    A thin cord cuts into skin and knots by itself. Both figures are least sizes, borrowed from toys and soother
    holders.
    """
    thin = [
        f"the {what} is {inputs.said(name)} and not {in_figures(least)}"
        for what, name, least in LEAST
        if (size := getattr(inputs, name)) and size < least
    ]
    if thin:
        yield speak(
            cord_too_thin,
            "warn",
            f"At its thinnest {', and '.join(thin)}: it can cut and knot.",
            "Leave it away, or use one that is thicker or broader.",
        )

"""R30: a fuzzy surface of cotton or another cellulosic fibre."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak

FUZZ = "The surface is raised and holds a cellulosic fibre, whose fuzz can flash."
SMOOTH = "Keep the surface smooth, and the piece away from flames."
CANADA = "Textile Flammability Regulations SOR/2016-194, the law's own text, read in 2026"


@rule(
    "raised-surface-flashes",
    family="safety",
    severity="warn",
    reference="R30",
    basis="borrowed",
    jurisdiction="CA, US",
    source="United States, clothing: 16 CFR 1610.1(d), 2020 edition; Canada, bedding: Textile "
    "Flammability Regulations SOR/2016-194, read in 2026",
    needs=("raised_surface", "fibres"),
    scope="raised surface",
    bad='{"raised_surface": true, "fibres": [{"name": "cotton", "pct": 100}], "mass_g": 200, "width_cm": 70, '
    '"length_cm": 90}',
    good='{"raised_surface": false, "fibres": [{"name": "cotton", "pct": 100}], "mass_g": 200, "width_cm": 70, '
    '"length_cm": 90}',
)
def raised_surface_flashes(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Raised surface that flashes.

    Fuzz of cotton, linen or viscose catches fire along the surface faster than the fabric burns. Canada has a test
    for bedding of more than 7 seconds; elsewhere the yardstick is borrowed from clothing.
    """
    if not inputs.raised_surface or not inputs.contains("cellulosic"):
        return
    others = tuple(market for market in inputs.markets or () if market != "CA")
    if "CA" in (inputs.markets or ()):
        test = "For Canada a surface like this is tested: flame takes more than 7 seconds to spread."
        yield speak(
            raised_surface_flashes, "warn", f"{FUZZ} {test}", SMOOTH, markets=("CA",), basis="published", source=CANADA
        )
    if others or not inputs.markets:
        yield speak(raised_surface_flashes, "warn", FUZZ, SMOOTH, markets=others)

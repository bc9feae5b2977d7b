"""R45: a fabric that may open, and whose openings nobody has measured."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.openings import half_loop_mm
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.house import COARSE_STS_10CM


@rule(
    "opening-not-measured",
    family="safety",
    severity="warn",
    reference="R45",
    basis="house",
    jurisdiction="none",
    source="house model: half a plain loop drawn round a rod, 410/w/2/pi mm at w stitches to 10 cm",
    needs=("age_band", "hole_mm or gauge_sts_10cm", "hole_mm or gaps", "hole_mm or openwork"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "gauge_sts_10cm": 12}',
    good='{"age_band": "12-24m", "gauge_sts_10cm": 12, "hole_mm": 4}',
)
def opening_not_measured(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Openings not measured.

    Plain thick fabric opens too: half a loop drawn round a rod is about 5.4 mm at 12 stitches to 10 cm and 8.2 mm at 8.
    So do turning gaps, loops at an edge and yarn-overs. Only a rod in the washed piece tells.
    """
    reasons = tuple(_reasons(inputs))
    if inputs.under(36) and inputs.hole_mm is None and reasons:
        yield speak(
            opening_not_measured,
            "warn",
            f"The largest opening is not measured, and {'; '.join(reasons)}.",
            "Measure the washed piece with a smooth rod, lightly stretched both ways and without force.",
        )


def _reasons(inputs: SafetyInputs) -> Iterable[str]:
    gauge = inputs.gauge_sts_10cm
    if gauge is not None and gauge <= COARSE_STS_10CM:
        half = in_figures(half_loop_mm(gauge))
        yield f"at {in_figures(gauge)} stitches to 10 cm half a loop opens to about {half} mm"
    if inputs.gaps:
        yield "loops at an edge, turns or picked-up stitches can open"
    if inputs.openwork:
        yield "the texture has openings made on purpose"

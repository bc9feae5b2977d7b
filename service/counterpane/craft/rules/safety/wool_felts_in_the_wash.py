"""R35: wool that is not superwash, in a wash that felts it."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, Wash, in_figures, speak
from counterpane.craft.safety.limits import WOOL_WASH_C


@rule(
    "wool-felts-in-the-wash",
    family="safety",
    severity="stop",
    reference="R35",
    basis="borrowed",
    jurisdiction="none",
    source="untreated wool, about 30 degrees and no rubbing: a soap and detergent association "
    "(jsda.org), second-hand, read in 2026",
    needs=("fibres", "superwash", "wash.method", "wash.temp_c"),
    scope="wool",
    bad='{"fibres": [{"name": "wool", "pct": 100, "micron": 20}], "superwash": false, "wash": {"method": "machine, '
    'wool cycle", "temp_c": 40}}',
    good='{"fibres": [{"name": "wool", "pct": 100, "micron": 20}], "superwash": true, "wash": {"method": "machine", '
    '"temp_c": 40}}',
)
def wool_felts_in_the_wash(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Wool that felts in its wash.

    The scales of untreated wool lock with warmth and rubbing, and the piece shrinks for good. The recipe asks for
    two things that do not go together.
    """
    if not inputs.contains("wool") or inputs.superwash is not False or inputs.wash is None:
        return
    reasons = [*_reasons(inputs.wash)]
    if reasons:
        yield speak(
            wool_felts_in_the_wash,
            "stop",
            f"The wool is not superwash, and {' and '.join(reasons)}: it will felt and shrink.",
            "Wash it on a wool cycle or by hand at 30 °C at most, or choose a superwash or another yarn.",
        )


def _reasons(wash: Wash) -> Iterable[str]:
    if wash.temp_c is not None and wash.temp_c > WOOL_WASH_C:
        yield f"the wash is at {in_figures(wash.temp_c)} °C, over 30"
    if "machine" in wash.ways and "wool cycle" not in wash.ways:
        yield "it goes into a machine on another than a wool cycle"
    if "tumble" in wash.ways:
        yield "it is tumble dried"

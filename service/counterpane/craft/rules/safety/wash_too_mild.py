"""R34: a blanket for a young child that cannot be washed as such things are."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.limits import HOME_WASH_C, HOSPITAL_WASH_C

UNWASHED = frozenset({"dry clean", "not at all"})


@rule(
    "wash-too-mild",
    family="safety",
    severity="stop",
    reference="R34",
    basis="borrowed",
    jurisdiction="EU, UK",
    source="washable: SGS, October 2018, on EN 16779-1, 16780 and 16781, second-hand; household linen at "
    "60 degrees: NHS, second-hand; hospital: a neonatal unit in Oxford, relayed; 40 degrees: common "
    "practice, no source",
    needs=("age_band", "use", "wash.method", "wash.temp_c"),
    bad='{"age_band": "12-24m", "use": "lap", "wash": {"method": "dry clean only"}}',
    good='{"age_band": "12-24m", "use": "lap", "wash": {"method": "machine", "temp_c": 40}}',
)
def wash_too_mild(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Wash too mild.

    A young child soils a blanket, and it must be washed. Standards for cot bedding bar what is only dry-cleaned; a
    ward may wash at 60 degrees.
    """
    if inputs.wash is None:
        return
    ways, temp = inputs.wash.ways, inputs.wash.temp_c
    if inputs.under(36) and ways and ways <= UNWASHED:
        yield speak(wash_too_mild, "stop", "The blanket cannot be washed in water.", "Choose a yarn that can.")
    elif inputs.use == "hospital" and temp is not None and temp < HOSPITAL_WASH_C:
        said = f"The blanket may be washed at {in_figures(temp)} °C; a hospital may wash at 60 and tumble dry."
        yield speak(wash_too_mild, "warn", said, "Ask the unit how it washes.")
    elif (ways and ways <= {*UNWASHED, "hand"}) or (temp is not None and temp < HOME_WASH_C):
        said = "The blanket is not for a machine at 40 °C, and it will have to be washed often."
        yield speak(wash_too_mild, "note", said, "Say so on a label, or choose a yarn for the machine.")

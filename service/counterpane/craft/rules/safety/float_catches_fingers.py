"""R15: a strand of yarn that lies loose across the fabric."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.house import LOOSE_NOTICE_MM
from counterpane.craft.safety.limits import LOOSE_MOST_MM


@rule(
    "float-catches-fingers",
    family="safety",
    severity="stop",
    reference="R15",
    basis="borrowed",
    jurisdiction="AU",
    source="25 mm: an Australian retailer's standard for nursery goods, second-hand (garmentstech.com); 10 mm: house",
    needs=("age_band", "float_mm"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "float_mm": 25.1}',
    good='{"age_band": "12-24m", "float_mm": 10}',
)
def float_catches_fingers(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Float in which fingers can be caught.

    A strand across the back is a loop that is fixed at both ends; a small finger slips under it and turns.
    """
    if not inputs.under(36) or inputs.float_mm is None or inputs.float_mm <= LOOSE_NOTICE_MM:
        return
    long = inputs.float_mm > LOOSE_MOST_MM
    yield speak(
        float_catches_fingers,
        "stop" if long else "warn",
        f"The longest float is {inputs.said('float_mm')}; over {'25' if long else '10'} mm it can catch fingers.",
        "Trap the strand more often, slip fewer stitches at a time, or line the back.",
        basis="borrowed" if long else "house",
    )

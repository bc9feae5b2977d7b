"""R17: a yarn end that was left hanging."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.house import LOOSE_NOTICE_MM
from counterpane.craft.safety.limits import LOOSE_MOST_MM


@rule(
    "loose-end-left-long",
    family="safety",
    severity="stop",
    reference="R17",
    basis="borrowed",
    jurisdiction="AU, CA",
    source="25 mm: an Australian retailer's standard for nursery goods, second-hand (garmentstech.com); loose threads "
    "on bedding: Health Canada, second-hand, 2011; 10 mm: house",
    needs=("tail_mm",),
    bad='{"age_band": "36m+", "tail_mm": 25.1}',
    good='{"age_band": "36m+", "tail_mm": 10}',
)
def loose_end_left_long(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Yarn end left long.

    A loose thread can wind round a finger or a toe unseen and cut off its blood.
    """
    if inputs.tail_mm is None or inputs.tail_mm <= LOOSE_NOTICE_MM:
        return
    long = inputs.tail_mm > LOOSE_MOST_MM
    yield speak(
        loose_end_left_long,
        "stop" if long else "warn",
        f"The longest end is {inputs.said('tail_mm')}; over {'25' if long else '10'} mm it can wind round a finger.",
        "Weave it in, secure it and trim what is left.",
        basis="borrowed" if long else "house",
    )

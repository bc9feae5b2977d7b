"""R18: a loop of yarn that stands out of the fabric."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.limits import FINGERTIP_MM, PULLED_LOOP_MOST_MM


@rule(
    "pulled-loop-tightens",
    family="safety",
    severity="stop",
    reference="R18",
    basis="borrowed",
    jurisdiction="EU, AU",
    source="5 mm: CEN/TR 13387:2004, quoted second-hand in ANEC, finger entrapment report, 2012, p. 12; "
    "30 mm: an Australian retailer on nursery goods, second-hand (garmentstech.com, read in 2026)",
    needs=("age_band", "loop_mm"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "loop_mm": 30.1}',
    good='{"age_band": "12-24m", "loop_mm": 4.9}',
)
def pulled_loop_tightens(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Pulled loop that tightens round a finger.

    Loops of terry, dropped stitches and bobbles slide: pulled at one place they close at another.
    """
    if not inputs.under(36) or inputs.loop_mm is None or inputs.loop_mm < FINGERTIP_MM:
        return
    long = inputs.loop_mm > PULLED_LOOP_MOST_MM
    yield speak(
        pulled_loop_tightens,
        "stop" if long else "warn",
        f"The largest loop is {inputs.said('loop_mm')}; {'over 30' if long else 'from 5'} mm it can tighten round a "
        "finger.",
        "Choose a texture without loops, or fix each loop so that it cannot slide.",
    )

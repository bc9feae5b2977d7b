"""R31: a light, open fabric of fibres that are not exempt from a burning test."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.limits import UNTESTED_GSM

TENTH = Fraction(1, 10)
"""A mass under the limit is shown cut off after this, so that it is under the limit as shown too; house."""


@rule(
    "light-fabric-burns",
    family="safety",
    severity="note",
    reference="R31",
    basis="borrowed",
    jurisdiction="US",
    source="16 CFR 1610.1(d), 2020 edition, for clothing: 2.6 oz/yd2 (88.2 g/m2) or only fibres of a list",
    needs=("gsm", "fibres"),
    bad='{"mass_g": 61.7, "width_cm": 70, "length_cm": 100, "fibres": [{"name": "cotton", "pct": 100}]}',
    good='{"mass_g": 61.74, "width_cm": 70, "length_cm": 100, "fibres": [{"name": "cotton", "pct": 100}]}',
)
def light_fabric_burns(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Light fabric that may burn fast.

    A plain fabric of 88.2 g per square metre or of certain fibres needs no test as clothing in the United States.
    Below it, in cotton, linen or viscose, that exemption does not cover it.
    """
    gsm = inputs.gsm
    exempt = bool(inputs.fibres) and all(fibre.of("untested") for fibre in inputs.fibres or ())
    if gsm is None or gsm >= UNTESTED_GSM or exempt or inputs.fibres is None:
        return
    yield speak(
        light_fabric_burns,
        "note",
        f"The fabric has {in_figures(gsm // TENTH * TENTH)} g per square metre, under 88.2, and not all of "
        "its fibres are exempt; the exemption from a burning test of clothing does not cover it.",
        "Keep it from flames and heaters; ask a laboratory if it is to be sold.",
    )

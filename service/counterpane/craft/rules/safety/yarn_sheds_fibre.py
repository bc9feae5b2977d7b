"""R29: a yarn with a halo, or one that sheds."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from counterpane.craft.findings import Severity, rule
from counterpane.craft.safety import AgeBand, SafetyFinding, SafetyInputs, speak

SEVERITY: Mapping[AgeBand, Severity] = {"preterm": "stop", "0-3m": "stop", "3-12m": "warn"}


@rule(
    "yarn-sheds-fibre",
    family="safety",
    severity="stop",
    reference="R29",
    basis="house",
    jurisdiction="UK",
    source="house: no figure and no test for shed fibre is published; toe tourniquet from a wool "
    "blanket: Verma, Hashem and Ramadan, EC Paediatrics 8.8, 2019, 693-695",
    needs=("age_band", "halo", "fibres"),
    bad='{"age_band": "0-3m", "halo": true, "fibres": [{"name": "cotton", "pct": 100}]}',
    good='{"age_band": "0-3m", "halo": false, "fibres": [{"name": "cotton", "pct": 100}]}',
)
def yarn_sheds_fibre(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Yarn that sheds fibre.

    Mohair, angora, chenille, brushed and unspun yarns shed fibre that comes to mouth, nose and fingers. That is
    precaution: nobody has published a limit.
    """
    sheds = inputs.halo or inputs.contains("shedding")
    if not sheds or inputs.age_band is None:
        return
    yield speak(
        yarn_sheds_fibre,
        SEVERITY.get(inputs.age_band, "note"),
        "The yarn has a halo or sheds fibre, which comes to a child's mouth, nose and fingers; no limit is published.",
        "Choose a smooth, firmly spun yarn.",
    )

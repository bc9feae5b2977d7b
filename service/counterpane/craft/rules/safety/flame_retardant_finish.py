"""R37: a finish against burning."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "flame-retardant-finish",
    family="safety",
    severity="warn",
    reference="R37",
    basis="borrowed",
    jurisdiction="EU",
    source="SGS, October 2018, on EN 16779-1, 16780 and 16781, second-hand: flame retardants barred in cot bedding",
    needs=("flame_retardant",),
    bad='{"flame_retardant": true}',
    good='{"flame_retardant": false}',
)
def flame_retardant_finish(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Flame-retardant finish.

    Standards for cot duvets, bumpers and sleep bags bar such finishes: a baby sucks on the cloth.
    """
    if inputs.flame_retardant:
        yield speak(
            flame_retardant_finish,
            "warn",
            "A flame-retardant finish is declared; standards for cot bedding bar it.",
            "Choose a yarn without the finish.",
        )

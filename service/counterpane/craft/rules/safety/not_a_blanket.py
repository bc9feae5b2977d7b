"""R40: a piece that is a garment or a toy."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import FEATURES, SafetyFinding, SafetyInputs, kind_of, speak


@rule(
    "not-a-blanket",
    family="safety",
    severity="stop",
    reference="R40",
    basis="published",
    jurisdiction="EU, UK, US",
    source="sleep bags: EN 16781:2018, scope; cords on clothing: EN 14682:2014, scope; nightwear: SI "
    "1985/2043; toys: EN 71-1, from memory",
    needs=("features", "attachments"),
    bad='{"features": ["sleeves"]}',
    good='{"features": [], "attachments": []}',
)
def not_a_blanket(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Piece that is not a blanket.

    With sleeves, a neck hole, a hood or a zip it is a garment or a sleep bag, with a head, a rattle or a teether a
    toy; other standards apply, and nothing here looks at them.
    """
    kinds = [kind_of(each.kind) for each in inputs.attachments or ()]
    found = dict.fromkeys([*(inputs.features or ()), *(kind for kind in kinds if kind in FEATURES)])
    if found:
        yield speak(
            not_a_blanket,
            "stop",
            f"The piece has: {', '.join(found)}. Other standards apply to garments, sleep bags and toys, and they are "
            "not looked at here.",
            "Leave these away, or have the piece judged as what it is.",
        )

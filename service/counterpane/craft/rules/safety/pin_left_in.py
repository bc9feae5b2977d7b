"""R44: pins, markers, needles and hair that stay in the finished piece."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "pin-left-in",
    family="safety",
    severity="note",
    reference="R44",
    basis="house",
    jurisdiction="none",
    bad="{}",
    good="",
)
def pin_left_in(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Pin, marker, needle or hair left in the piece.

    Printed always, before a piece is given away or sold; nothing that is entered silences it.
    """
    yield speak(
        pin_left_in,
        "note",
        "Before the blanket leaves your hands, count pins, markers and needles, and look for hair knitted in, hard "
        "knots and stiff label edges.",
        "Feel both sides with the bare hand.",
    )

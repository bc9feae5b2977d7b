"""What a market wants on the label, against what is told."""

from __future__ import annotations

from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.law import Want


def told(label: Labelled, want: Want) -> bool | None:
    """Tell whether what a market wants is told; None for what no label holds, such as a certificate.

    Fibres are told where the composition is known.
    """
    if want.field == "fibre":
        return all(part.made_of.known for part in label.parts or (label.whole,))
    return want.field in label.piece.stated


def missing(label: Labelled, market: str) -> tuple[Want, ...]:
    """Return what a market wants and is not told."""
    return tuple(want for want in label.law.wanted(market) if not told(label, want))

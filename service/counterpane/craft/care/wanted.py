"""What a market wants on the label, against what is told."""

from __future__ import annotations

from counterpane.craft.care.groups import known_headings
from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.law import Want


def told(label: Labelled, want: Want, market: str) -> bool:
    """Tell whether what a market wants is told: fibres where the composition is known, care where all headings are."""
    if want.field == "care":
        return all(known_headings(label.care).values())
    if want.field == "fibre":
        return all(part.made_of.known for part in label.of(market))
    return bool({want.field, want.instead} & set(label.piece.stated))


def missing(label: Labelled, market: str) -> tuple[Want, ...]:
    """Return what a market wants and is not told."""
    return tuple(want for want in label.law.wanted(market) if not told(label, want, market))

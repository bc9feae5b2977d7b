"""Rules about where the revisions stand that a plan takes."""

from __future__ import annotations

from counterpane.craft.component.standing import PlacedPart
from counterpane.craft.findings import Rule
from counterpane.craft.rules.standing.pinned_part_deprecated import pinned_part_deprecated
from counterpane.craft.rules.standing.pinned_part_quarantined import pinned_part_quarantined
from counterpane.craft.rules.standing.pinned_part_withdrawn import pinned_part_withdrawn
from counterpane.craft.rules.standing.pinned_part_yanked import pinned_part_yanked

RULES: tuple[Rule[PlacedPart], ...] = (
    pinned_part_deprecated,
    pinned_part_yanked,
    pinned_part_quarantined,
    pinned_part_withdrawn,
)

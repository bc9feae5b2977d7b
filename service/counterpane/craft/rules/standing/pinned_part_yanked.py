"""A part whose revision is yanked."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.component.standing import PlacedPart
from counterpane.craft.findings import Finding, rule


@rule(
    "pinned-part-yanked",
    family="standing",
    severity="warning",
    bad=('{"pointer": "/parts/body", "slug": "waffle", "status": "yanked", "said": "Row 3 was misprinted."}'),
    good='{"pointer": "/parts/body", "slug": "waffle", "status": "accepted", "said": ""}',
    source="house",
)
def pinned_part_yanked(part: PlacedPart) -> Iterator[Finding]:
    """A part that was taken back.

    Somebody found a fault in this revision. A recipe that pins it still comes out as before, fault and all.
    """
    if part.status == "yanked":
        message = f"This revision of “{part.slug}” was yanked: {part.said}"
        hint = "Pin another revision of it, or take another part."
        yield Finding("pinned-part-yanked", "warning", message, hint, pointer=part.pointer)

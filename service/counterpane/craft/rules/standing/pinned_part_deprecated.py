"""A part whose revision is deprecated."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.component.standing import PlacedPart
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "pinned-part-deprecated",
    family="standing",
    severity="warning",
    bad=(
        '{"pointer": "/parts/body", "slug": "waffle", "status": "depr'
        'ecated", "said": "Row 3 was misprinted.", "replacement": "seed-stitch"}'
    ),
    good='{"pointer": "/parts/body", "slug": "waffle", "status": "accepted", "said": ""}',
    source="house",
)
def pinned_part_deprecated(part: PlacedPart) -> Iterator[Finding]:
    """A part that has a better one in its place.

    The library keeps it and names what to use instead. A recipe that pins it comes out as before.
    """
    if part.status == "deprecated":
        instead = part.replacement
        changes = (Correction(part.pointer, instead, "the library names it instead"),) if instead else ()
        yield Finding(
            "pinned-part-deprecated",
            "warning",
            f"“{part.slug}” is deprecated: {part.said}",
            f"Take “{instead}” in its place, or stay with it." if instead else "Look for another one, or stay with it.",
            pointer=part.pointer,
            changes=changes,
        )

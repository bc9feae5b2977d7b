"""A part whose revision is withdrawn."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.component.standing import PlacedPart
from counterpane.craft.findings import Finding, rule


@rule(
    "pinned-part-withdrawn",
    family="standing",
    severity="error",
    bad=('{"pointer": "/parts/body", "slug": "waffle", "status": "withdrawn", "said": "Row 3 was misprinted."}'),
    good='{"pointer": "/parts/body", "slug": "waffle", "status": "accepted", "said": ""}',
    source="house",
)
def pinned_part_withdrawn(part: PlacedPart) -> Iterator[Finding]:
    """A part that is gone.

    What it said is told to nobody any more, so that nothing can be worked out with it.
    """
    if part.status == "withdrawn":
        message = f"This revision of “{part.slug}” was withdrawn: {part.said}"
        hint = "Take another revision or another part."
        yield Finding("pinned-part-withdrawn", "error", message, hint, pointer=part.pointer)

"""A part whose revision is quarantined."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.component.standing import PlacedPart
from counterpane.craft.findings import Finding, rule


@rule(
    "pinned-part-quarantined",
    family="standing",
    severity="error",
    bad=(
        '{"pointer": "/parts/body", "slug": "waffle", "status": "quar'
        'antined", "said": "Row 3 was misprinted.", "until": "2026-12-24"}'
    ),
    good='{"pointer": "/parts/body", "slug": "waffle", "status": "accepted", "said": ""}',
    source="house",
)
def pinned_part_quarantined(part: PlacedPart) -> Iterator[Finding]:
    """A part that is under suspicion.

    Until somebody who answers for it has looked, nothing is made with it; a quarantine is not over because its day
    has passed.
    """
    if part.status == "quarantined":
        late = ", which has passed" if part.over else ""
        day = f" until {part.until}{late}" if part.until else ""
        message = f"This revision of “{part.slug}” is in quarantine{day}: {part.said}"
        hint = "Take another revision or another part, or ask the library's reviewers to look at it."
        yield Finding("pinned-part-quarantined", "error", message, hint, pointer=part.pointer)

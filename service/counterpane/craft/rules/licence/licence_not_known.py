"""A part of which nobody knows under which licence its words may be used."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.findings import Finding, rule
from counterpane.craft.licensing import LICENCES, Licensed


@rule(
    "licence-not-known",
    family="licence",
    severity="error",
    bad='{"parts": [{"title": "Ripple", "creator": "anna", "licence": "ask anna"}]}',
    good='{"parts": [{"title": "Ripple", "creator": "anna", "licence": "CC0-1.0"}]}',
    source="SPDX License List, identifiers CC0-1.0, CC-BY-4.0 and CC-BY-SA-4.0",
)
def licence_not_known(licensed: Licensed) -> Iterator[Finding]:
    """A part whose licence is none that is known here.

    What nobody allowed is not allowed. Under an unknown licence nothing can be said of what may be shared.
    """
    for use in licensed.uses:
        if use.licence not in LICENCES:
            yield Finding(
                "licence-not-known",
                "error",
                f"The words of {use.title} are under “{use.licence}”, which says nothing of sharing.",
                f"Ask {use.creator} for one of {', '.join(LICENCES)}, or write these rows in words of your own.",
                pointer=use.pointer or "/parts",
            )

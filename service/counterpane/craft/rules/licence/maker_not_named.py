"""A part whose maker must be named, and nobody is."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.findings import Finding, rule
from counterpane.craft.licensing import LICENCES, UNNAMED, Licensed


@rule(
    "maker-not-named",
    family="licence",
    severity="warning",
    bad='{"parts": [{"title": "Ripple", "creator": "not stated", "licence": "CC-BY-4.0"}]}',
    good='{"parts": [{"title": "Ripple", "creator": "anna", "licence": "CC-BY-4.0"}]}',
    source="CC BY 4.0 legal code, section 3(a)(1)(A)(i)",
)
def maker_not_named(licensed: Licensed) -> Iterator[Finding]:
    """A maker who must be named and is not.

    The licence asks for the maker as they wish to be called; a pseudonym will do. A pattern that names nobody breaks it
    for everybody who passes the pattern on.
    """
    for use in licensed.uses:
        known = LICENCES.get(use.licence)
        if known and known.credit and use.creator.strip().lower() in UNNAMED:
            yield Finding(
                "maker-not-named",
                "warning",
                f"{use.title} is under {use.licence}, which asks for its maker's name, and none is kept.",
                "Ask who wrote it, and revise the part with that name or pseudonym.",
                pointer=use.pointer or "/parts",
            )

"""A cast-on asked for that is not the one printed."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, said
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule


@rule(
    "cast-on-differs",
    family="reading",
    severity="warning",
    bad="Cast on 20 sts.\nRow 1: Knit.",
    good="Cast on 24 sts.\nRow 1: Knit.",
)
def cast_on_differs(examined: Examined) -> Iterator[Finding]:
    """The cast-on asked for is not the one printed.

    The one asked for is followed, because whoever asks knows what is on their needle; the printed one is only
    named.
    """
    stated = examined.instructions.cast_on
    if stated is not None and examined.given is not None and examined.given != stated.count:
        message = f"The text casts on {stated.count}; it was checked at the {examined.given} asked for."
        hint, fixes = f"Print {examined.given} if that is meant.", said(examined, stated.place.line, "asked")
        yield at(stated.place, "cast-on-differs", "warning", message, hint, corrections=fixes)

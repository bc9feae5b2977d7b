"""A number or text that a part has no use for."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import NotTaken
from counterpane.craft.findings import Correction, Finding, rule

PICKED = "picked-up sides"
"""The place of side borders that are picked up."""


@rule(
    "field-without-use",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter", "bottom": {"component": "garter-border", "stitches": 8}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "bottom": {"component": "garter-border", "rows": 8}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def field_without_use(attempt: Attempt) -> Iterator[Finding]:
    """A field that has no use where it stands.

    A border across has rows and takes all stitches; a side border has stitches and runs along all rows. One that is
    picked up has rows, worked outwards, and is the same at the right and at the left.
    """
    for met in attempt.met(NotTaken):
        yield Finding(
            "field-without-use",
            "error",
            f"“{met.field}” has no use for the {met.place}.",
            f"Leave “{met.field}” out{_instead(met)}.",
            pointer=met.pointer,
            changes=working(attempt, _other_way(met)),
        )


def _other_way(met: NotTaken) -> tuple[Correction, ...]:
    """Return the way of building in which a side border has a use for the field."""
    why = "the side borders are then worked with the body"
    return (Correction("/construction", "one-piece", why),) if met.place == PICKED else ()


def _instead(met: NotTaken) -> str:
    if met.place in ("bottom", "top") and met.field == "stitches":
        return ", or say with “rows” how many rows the border has"
    if met.place in ("sides", "selvedge") and met.field == "rows":
        return ", or say with “stitches” how wide it is"
    if met.place == PICKED:
        return ", and say with “rows” how many rows each border is worked outwards"
    return ""

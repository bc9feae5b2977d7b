"""A side border or selvedge that does not say its width."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import either
from counterpane.craft.constructions.amending import working
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import NeedsStitches
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "part-needs-stitches",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter", "sides": {"text": "Rows 1 and 2: knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "sides": {"text": "Rows 1 and 2: knit.", "stitches": 6}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def part_needs_stitches(attempt: Attempt) -> Iterator[Finding]:
    """A side of unknown width.

    A side border or selvedge whose rows work over many counts must say over how many stitches it is worked.
    """
    for met in attempt.met(NeedsStitches):
        changes = tuple(Correction(met.pointer, count, "its rows work over so many stitches") for count in met.admits)
        yield Finding(
            "part-needs-stitches",
            "error",
            "This edge works over many counts and does not say how many stitches it has.",
            f"Add “stitches”, for example {either(met.admits)}.",
            pointer=met.pointer,
            changes=working(attempt, changes),
        )

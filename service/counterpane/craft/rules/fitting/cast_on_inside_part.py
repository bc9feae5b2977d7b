"""A cast-on in the words of a part."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import CastsOn
from counterpane.craft.findings import Finding, rule


@rule(
    "cast-on-inside-part",
    family="fitting",
    severity="error",
    bad=(
        r'{"parts": {"body": {"text": "Cast on 20 sts.\nRows 1 and 2: knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": {"text": "Rows 1 and 2: knit."}}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def cast_on_inside_part(attempt: Attempt) -> Iterator[Finding]:
    """A cast-on inside a part.

    The whole piece is cast on once, over a count that suits all parts; a part only says its rows.
    """
    for met in attempt.met(CastsOn):
        message = "The words of this part cast stitches on, and the piece is cast on once for all parts."
        hint = "Leave the cast-on out; a multiple may stay."
        yield Finding("cast-on-inside-part", "error", message, hint, pointer=met.pointer)

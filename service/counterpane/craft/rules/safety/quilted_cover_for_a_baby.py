"""R05: a filled or quilted cover where a baby sleeps."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "quilted-cover-for-a-baby",
    family="safety",
    severity="stop",
    reference="R05",
    basis="published",
    jurisdiction="UK, NL",
    source="United Kingdom, 12 months: NHS and The Lullaby Trust, repeated by local pages, second-hand, "
    "read in 2026; Netherlands, 24 months: Consumentenbond, page on blankets and duvets, read in 2026",
    needs=("age_band", "use", "filled"),
    scope="under 24 months and use sleep",
    bad='{"age_band": "12-24m", "use": "sleep", "advice": ["NL"], "filled": true}',
    good='{"age_band": "12-24m", "use": "sleep", "advice": ["UK"], "filled": true}',
)
def quilted_cover_for_a_baby(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Filled or quilted cover for a sleeping baby.

    Filling traps heat and covers a face. Countries differ on the age: 12 months in the United Kingdom, 24 in the
    Netherlands; where no country is followed the stricter counts.
    """
    if not inputs.filled or inputs.use != "sleep" or not inputs.under(24):
        return
    if inputs.under(12):
        yield _said("under 12 months", inputs.followed or ())
    elif inputs.followed is None or {"NL", "EU"} & {*inputs.followed}:
        yield _said("under 24 months by the advice of the Netherlands, the strictest on record", ("NL",))


def _said(age: str, markets: tuple[str, ...]) -> SafetyFinding:
    return speak(
        quilted_cover_for_a_baby,
        "stop",
        f"The cover is filled or quilted; such covers are not for sleep {age}.",
        "Work a single layer without a filling.",
        markets=markets,
    )

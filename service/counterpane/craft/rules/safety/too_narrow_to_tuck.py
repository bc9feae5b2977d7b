"""R09: a blanket too narrow to go 10 cm under the mattress on each side."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from counterpane.craft.findings import rule
from counterpane.craft.safety import Market, SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.limits import MATTRESSES_CM, TUCK_CM

TENTH = Fraction(1, 10)
"""A width under a limit is shown cut off after this, so that it is under the limit as shown too; house."""

COTS = ("a cot of 60 cm", "a cot bed of 70 cm")
USUAL: Mapping[Market, tuple[str, ...]] = {"UK": COTS, "US": ("a United States crib of 71 cm",)}
"""The usual mattresses of a country; all on record where none is on record for it."""


@rule(
    "too-narrow-to-tuck",
    family="safety",
    severity="warn",
    reference="R09",
    basis="borrowed",
    jurisdiction="NL, UK, US",
    source="10 cm: VeiligheidNL and TNO on a cover round a blanket, relayed by a page of a nursery, read "
    "in 2026; mattresses: UK trade pages, second-hand, read in 2026; crib: 16 CFR 1508.3 (28 inches)",
    needs=("use", "width_cm"),
    scope="use sleep and advice on tucking in",
    bad='{"age_band": "12-24m", "use": "sleep", "markets": ["UK"], "width_cm": 79.9}',
    good='{"age_band": "12-24m", "use": "sleep", "markets": ["UK"], "width_cm": 90}',
)
def too_narrow_to_tuck(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Blanket too narrow to tuck in.

    Where advice accepts a tucked blanket, the Dutch figure is 10 cm under the mattress on each side. The mattress
    counts where its width is known, else each usual one of the country.
    """
    if inputs.use != "sleep" or inputs.width_cm is None:
        return
    wanted = {name: width + 2 * TUCK_CM for name, width in _mattresses(inputs).items()}
    narrow = [f"{name} asks for {in_figures(width)} cm" for name, width in wanted.items() if inputs.width_cm < width]
    if narrow:
        yield speak(
            too_narrow_to_tuck,
            "warn",
            f"The blanket is {in_figures(inputs.width_cm // TENTH * TENTH)} cm wide; to go 10 cm under the mattress on "
            f"each side, which is advice of the Netherlands, {' and '.join(narrow)}.",
            "Plan it wider, or do not use it as a blanket that is tucked in.",
        )


def _mattresses(inputs: SafetyInputs) -> Mapping[str, Fraction]:
    if inputs.mattress_width_cm is not None:
        return {f"a mattress of {in_figures(inputs.mattress_width_cm)} cm": inputs.mattress_width_cm}
    places = {place for market in inputs.followed or () for place in USUAL.get(market, MATTRESSES_CM)}
    return {name: width for name, width in MATTRESSES_CM.items() if not places or name in places}

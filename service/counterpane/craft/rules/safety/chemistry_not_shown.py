"""R36: a yarn of which nobody has shown what is in it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from counterpane.craft.findings import Severity, rule
from counterpane.craft.safety import Chemistry, Market, SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.limits import AZO_MG_KG, FORMALDEHYDE_MG_KG, PH_LEAST, PH_MOST

CODES: Mapping[Market, int] = {"JP": 24, "CN": 36}
"""Countries with a compulsory code for goods of this kind, and the months of age up to which it holds:
Act 112 of 1973 (JP, second-hand); GB 18401-2010 class A (CN, second-hand).
"""

AZO_MARKETS: tuple[Market, ...] = ("EU", "NL", "UK")
"""Where the limit on azo dyes is law."""


@rule(
    "chemistry-not-shown",
    family="safety",
    severity="stop",
    reference="R36",
    basis="published",
    jurisdiction="JP, CN, EU, UK",
    source="Japan to 24 months: Act 112/1973, read in part; China to 36 months: GB 18401-2010 and GB "
    "31701-2015, second-hand; EU and UK: Regulation (EU) 2018/1513 (formaldehyde) and REACH entry 43 "
    "(azo dyes), in part from memory; class I: STANDARD 100 by OEKO-TEX, edition of about 2016-17",
    needs=("age_band", "markets"),
    scope="under 36 months",
    bad='{"age_band": "12-24m", "chemistry": {"formaldehyde_mg_kg": 21}, "markets": ["CN"]}',
    good='{"age_band": "12-24m", "chemistry": {"baby_class": true}, "markets": ["CN"]}',
)
def chemistry_not_shown(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Chemistry of the yarn not shown.

    Limits differ by country: formaldehyde 16 mg/kg in Japan, 20 in China, 75 in the EU and the UK; azo dyes 30
    mg/kg of each listed amine; pH 4.0 to 7.5. Where nothing is shown that is a note, and a reason to stop for a
    country with a compulsory code for goods of this age, Japan or China; a figure beyond the limit of a market
    stops for it.
    """
    if not inputs.under(36):
        return
    shown, markets = inputs.chemistry, inputs.markets or ()
    over = [*_over(shown, inputs)] if shown is not None else []
    if over:
        binding = tuple(market for _, bound in over for market in bound)
        message = f"What is shown of the yarn goes beyond a limit: {'; '.join(said for said, _ in over)}."
        severity: Severity = "stop" if binding else "note"
        yield speak(
            chemistry_not_shown, severity, message, "Choose another yarn.", markets=tuple(dict.fromkeys(binding))
        )
    elif shown is None or not _covered(shown):
        needed = tuple(market for market in markets if inputs.under(CODES.get(market, 0)))
        message = "There is no evidence of pH, formaldehyde and azo dyes in the yarn." + _asking(needed)
        hint = "Ask the yarn's maker for a certificate of the class for babies, and wash the piece before first use."
        yield speak(chemistry_not_shown, "stop" if needed else "note", message, hint, markets=needed)


def _asking(markets: tuple[Market, ...]) -> str:
    return f" A compulsory code asks for it in: {', '.join(markets)}." if markets else ""


def _covered(shown: Chemistry) -> bool:
    return bool(shown.baby_class) or None not in (shown.ph, shown.formaldehyde_mg_kg, shown.azo_mg_kg)


def _over(shown: Chemistry, inputs: SafetyInputs) -> Iterable[tuple[str, tuple[Market, ...]]]:
    """Give each figure beyond a limit in words, with the markets of the piece that it binds."""
    markets = inputs.markets or ()
    for market in markets:
        limit = FORMALDEHYDE_MG_KG.get(market)
        found = shown.formaldehyde_mg_kg
        if limit is not None and found is not None and found > limit and inputs.under(CODES.get(market, 36)):
            yield f"formaldehyde {in_figures(found)} mg/kg, in {market} {in_figures(limit)} at most", (market,)
    if shown.azo_mg_kg is not None and shown.azo_mg_kg > AZO_MG_KG:
        binds = tuple(market for market in markets if market in AZO_MARKETS)
        yield f"azo dyes {in_figures(shown.azo_mg_kg)} mg/kg, in the EU and the UK 30 at most", binds
    if shown.ph is not None and not PH_LEAST <= shown.ph <= PH_MOST:
        binds = tuple(market for market in markets if market == "CN")
        yield f"pH {in_figures(shown.ph)}, in China and by class I 4.0 to 7.5", binds

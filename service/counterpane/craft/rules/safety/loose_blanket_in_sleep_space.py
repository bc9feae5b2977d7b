"""R01: a loose blanket where a baby under one year sleeps."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import chain

from counterpane.craft.findings import rule
from counterpane.craft.safety import Market, SafetyFinding, SafetyInputs, speak

AAP = "American Academy of Pediatrics, Pediatrics 150(1):e2022057990, 2022: abstract read, the rest second-hand"

TUCKED: Mapping[Market, tuple[str, str]] = {
    "UK": (
        "United Kingdom: health advice accepts only a lightweight blanket, firmly tucked in, no higher than the "
        "shoulders, the head uncovered and the feet at the foot of the cot.",
        "NHS, page on reducing the risk of SIDS, read in 2026; The Lullaby Trust, bedding guidance, second-hand, 2024",
    ),
    "AU": (
        "Australia: advice accepts only light layers, tucked in securely, that reach no further than the chest, with "
        "the feet at the end of the cot and the head uncovered.",
        "Red Nose Australia, page on bedding, read in 2026",
    ),
    "CA": (
        "Canada: advice is to leave loose bedding out and to dress the baby in a one-piece sleeper; a blanket, if "
        "there is one, is thin and lightweight.",
        "Health Canada, HC Pub. 120077, second-hand, 2017",
    ),
    "NL": (
        "Netherlands: advice accepts a sheet and a blanket in a bed made up short, tucked in at the foot and the sides "
        "and never folded double over the baby.",
        "Consumentenbond, page on blankets and duvets, read in 2026; VeiligheidNL and TNO, second-hand",
    ),
}
"""What is accepted instead of no blanket, by country; never printed without the country's name."""

NOT_ON_RECORD = (
    "No sleep advice for {market} is on record here; the strictest known, that of the United States, "
    "is no loose blanket in the sleep space in the first year."
)
EU = "The EU is not one country for sleep advice; the strictest known is no loose blanket in the first year."


@rule(
    "loose-blanket-in-sleep-space",
    family="safety",
    severity="stop",
    reference="R01",
    basis="published",
    jurisdiction="US; other countries by their own advice",
    source=AAP,
    needs=("age_band", "use"),
    scope="under 12 months",
    bad='{"age_band": "3-12m", "use": "sleep", "markets": ["US"]}',
    good='{"age_band": "12-24m", "use": "sleep", "markets": ["US"]}',
)
def loose_blanket_in_sleep_space(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Loose blanket in the sleep space of a baby under one year.

    Soft bedding is tied to deaths of babies in their sleep. Countries differ: in the United States the advice is none
    at all in the first year; others accept a light blanket that is tucked in. The advice is printed for every use,
    because babies fall asleep in prams, on laps and on floors, and a blanket outlives its first child.
    """
    if inputs.under(12) is not True:
        return ()
    if inputs.use != "sleep":
        return (_for_every_use(inputs),)
    followed = inputs.followed
    if not followed:
        return (_none_at_all("Whose sleep advice is followed is not stated, so the strictest is used: ", ()),)
    return chain.from_iterable(_of(market) for market in followed)


def _of(market: Market) -> Iterable[SafetyFinding]:
    if market == "US":
        return (_none_at_all("", ("US",)),)
    words, source = TUCKED.get(market, ((EU if market == "EU" else NOT_ON_RECORD.format(market=market)), AAP))
    hint = "Follow your own health service; where advice differs, follow the stricter."
    return (speak(loose_blanket_in_sleep_space, "warn", words, hint, markets=(market,), source=source),)


def _none_at_all(opening: str, markets: tuple[str, ...]) -> SafetyFinding:
    said = (
        "in the United States the advice for a baby's first year is a sleep space with nothing added to it, no blanket "
        "and no other soft bedding."
    )
    message = opening + said if opening else said.capitalize().replace("united states", "United States")
    hint = "Keep this blanket for time awake, in sight of an adult."
    return speak(loose_blanket_in_sleep_space, "stop", message, hint, markets=markets)


def _for_every_use(inputs: SafetyInputs) -> SafetyFinding:
    stated = "" if inputs.use else " The use is not stated: for sleep this rule says more."
    message = (
        "The strictest sleep advice on record, that of the United States, is no loose blanket in a baby's sleep space "
        "in the first year. Babies also fall asleep in prams, on laps and on floors." + stated
    )
    return speak(loose_blanket_in_sleep_space, "note", message, "Lift the blanket away when the baby falls asleep.")

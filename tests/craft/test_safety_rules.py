"""Each safety rule at its limits, which are inclusive as written."""

from fractions import Fraction
from typing import Any

import pytest

from counterpane.craft.rules.safety import LISTED, RULES
from counterpane.craft.safety import AGE_BANDS, Attachment, SafetyInputs

BY_REFERENCE = {rule.reference: rule for rule in RULES}
BABIES = ("preterm", "0-3m", "3-12m")
TODDLERS = ("12-24m", "24-36m")
LOOSE = [("10", []), ("10.1", ["warn"]), ("25", ["warn"]), ("25.1", ["stop"])]


def says(reference: str, **known: Any) -> list[str]:
    """Return the severities of what a rule says of these inputs."""
    return [finding.severity for finding in BY_REFERENCE[reference].check(SafetyInputs(**known))]


@pytest.mark.parametrize("band", BABIES)
@pytest.mark.parametrize(
    ("hole", "warned", "stopped"),
    [("4.9", [], []), ("5.0", ["warn"], []), ("6.9", ["warn"], []), ("7.0", [], ["stop"]), ("12.1", [], ["stop"])],
)
def test_an_opening_warns_from_5_and_stops_from_7_mm_for_a_baby(
    band: str, hole: str, warned: list[str], stopped: list[str]
) -> None:
    """Under one year R11 speaks from 5 mm and R12 from 7 mm, with no upper end."""
    assert says("R11", age_band=band, hole_mm=Fraction(hole)) == warned
    assert says("R12", age_band=band, hole_mm=Fraction(hole)) == stopped


@pytest.mark.parametrize("band", TODDLERS)
@pytest.mark.parametrize(("hole", "warned"), [("6.9", []), ("7.0", ["warn"]), ("20", ["warn"])])
def test_an_opening_warns_from_7_mm_for_a_toddler(band: str, hole: str, warned: list[str]) -> None:
    """From one to three years R13 warns from 7 mm, and the rules for babies are silent."""
    assert says("R13", age_band=band, hole_mm=Fraction(hole)) == warned
    assert (
        says("R11", age_band=band, hole_mm=Fraction(hole)) == says("R12", age_band=band, hole_mm=Fraction(hole)) == []
    )


@pytest.mark.parametrize("reference", ["R11", "R12", "R13", "R14"])
def test_no_opening_is_judged_from_three_years(reference: str) -> None:
    """The rules on openings end with the third year."""
    assert says(reference, age_band="36m+", hole_mm=Fraction(9), openwork=True) == []


@pytest.mark.parametrize(
    ("hole", "openwork", "stopped"),
    [("4.9", False, []), ("5.0", False, ["stop"]), ("1", True, ["stop"]), ("4.9", None, [])],
)
def test_a_preterm_baby_has_no_openwork_and_no_opening_of_5_mm(
    hole: str, openwork: bool | None, stopped: list[str]
) -> None:
    """For a preterm baby any opening made on purpose stops, and any other from 5 mm."""
    assert says("R14", age_band="preterm", hole_mm=Fraction(hole), openwork=openwork) == stopped
    assert says("R14", age_band="0-3m", hole_mm=Fraction(hole), openwork=openwork) == []


@pytest.mark.parametrize("band", AGE_BANDS)
@pytest.mark.parametrize(("length", "said"), LOOSE)
def test_a_float_warns_over_10_and_stops_over_25_mm(band: str, length: str, said: list[str]) -> None:
    """Under three years a float of 10 mm is silent, 25 mm warns and 25.1 mm stops."""
    assert says("R15", age_band=band, float_mm=Fraction(length)) == ([] if band == "36m+" else said)


@pytest.mark.parametrize("band", [*AGE_BANDS, None])
@pytest.mark.parametrize(("length", "said"), LOOSE)
def test_an_end_warns_over_10_and_stops_over_25_mm_at_any_age(band: str | None, length: str, said: list[str]) -> None:
    """A loose end counts for everybody, also where the age is not known."""
    assert says("R17", age_band=band, tail_mm=Fraction(length)) == said


@pytest.mark.parametrize(
    ("reference", "kind"), [("R24", "fringe"), ("R24", "Tassels"), ("R25", "pom-pom"), ("R25", "tuft ball")]
)
def test_what_sheds_or_hangs_stops_under_three_years(reference: str, kind: str) -> None:
    """Fringes, tassels, pom-poms and tufts stop under 36 months and not from then on."""
    assert says(reference, age_band="24-36m", attachments=(Attachment(kind),)) == ["stop"]
    assert says(reference, age_band="36m+", attachments=(Attachment(kind),)) == []
    assert says(reference, age_band="24-36m", attachments=(Attachment("button"),)) == []


@pytest.mark.parametrize(
    ("use", "market", "said"),
    [("sleep", "US", ["stop"]), ("sleep", "UK", ["warn"]), ("sleep", "EU", ["warn"]), ("sleep", "JP", ["warn"])]
    + [(use, "US", ["note"]) for use in ("pram", "car-seat", "floor", "lap", "display", "hospital", None)],
)
def test_sleep_stops_in_the_us_and_warns_elsewhere(use: str | None, market: str, said: list[str]) -> None:
    """Under one year sleep stops in the US and warns elsewhere; every other use has a note."""
    assert says("R01", age_band="3-12m", use=use, markets=(market,)) == said


def test_sleep_advice_stands_country_by_country() -> None:
    """Each country's advice is a finding of its own, with its own source."""
    inputs = SafetyInputs(age_band="0-3m", use="sleep", markets=("US", "AU", "NL"))
    findings = tuple(BY_REFERENCE["R01"].check(inputs))
    assert [finding.markets for finding in findings] == [("US",), ("AU",), ("NL",)]  # type: ignore[attr-defined]
    assert len({finding.source for finding in findings}) == 3  # type: ignore[attr-defined]


def test_sleep_without_a_country_takes_the_strictest_advice() -> None:
    """Where nobody says whose advice is followed, the strictest stops."""
    assert says("R01", age_band="0-3m", use="sleep") == ["stop"]


def test_sleep_advice_ends_with_the_first_year() -> None:
    """From 12 months on R01 says nothing."""
    assert says("R01", age_band="12-24m", use="sleep", markets=("US",)) == []


@pytest.mark.parametrize(("gauge", "said"), [("12", ["warn"]), ("12.1", []), ("8", ["warn"])])
def test_a_coarse_fabric_asks_for_a_rod(gauge: str, said: list[str]) -> None:
    """At 12 stitches to 10 cm and fewer an opening that nobody measured warns."""
    assert says("R45", age_band="12-24m", gauge_sts_10cm=Fraction(gauge)) == said
    assert says("R45", age_band="12-24m", gauge_sts_10cm=Fraction(gauge), hole_mm=Fraction(4)) == []


@pytest.mark.parametrize("reason", ["gaps", "openwork"])
def test_gaps_and_openwork_ask_for_a_rod(reason: str) -> None:
    """Gaps and openings made on purpose warn until somebody measures them."""
    assert says("R45", age_band="0-3m", **{reason: True}) == ["warn"]
    assert says("R45", age_band="0-3m", **{reason: False}) == []


def test_half_a_loop_is_told_with_the_coarse_gauge() -> None:
    """The message of R45 gives the house figure of 5.4 mm at 12 stitches to 10 cm."""
    inputs = SafetyInputs(age_band="12-24m", gauge_sts_10cm=Fraction(12))
    assert "5.4 mm" in next(iter(BY_REFERENCE["R45"].check(inputs))).message


@pytest.mark.parametrize(("reference", "use", "said"), [("R41", "pram", "note"), ("R42", "car-seat", "warn")])
def test_prams_and_car_seats_have_their_own_words(reference: str, use: str, said: str) -> None:
    """What belongs to a use is printed for it at every age, and for no other use."""
    assert says(reference, use=use) == says(reference, use=use, age_band="36m+") == [said]
    assert says(reference, use="lap") == []


def test_every_listed_rule_is_built() -> None:
    """The references of the rules make up the list in its order, R08 not being in use."""
    assert [rule.reference for rule in RULES] == list(LISTED)
    assert "R08" not in LISTED and len(LISTED) == 47

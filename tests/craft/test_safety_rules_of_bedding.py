"""The safety rules on filling, layers, mass and sizes at their limits, which are inclusive as written."""

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.rules.safety import RULES
from counterpane.craft.safety import AGE_BANDS, SafetyInputs

BY_REFERENCE = {rule.reference: rule for rule in RULES}
BABIES = ("preterm", "0-3m", "3-12m")


def says(reference: str, **known: Any) -> list[str]:
    """Return the severities of what a rule says of these inputs."""
    return [finding.severity for finding in BY_REFERENCE[reference].check(SafetyInputs(**known))]


@pytest.mark.parametrize("band", AGE_BANDS)
@pytest.mark.parametrize("advice", [("UK",), ("NL",), ("US", "NL"), None])
def test_a_filled_cover_stops_to_12_months_and_in_the_netherlands_to_24(band: str, advice: Any) -> None:
    """R05 keeps the two ages of K4 apart, and takes the stricter where nobody says whose advice is followed."""
    dutch = band == "12-24m" and (advice is None or "NL" in advice)
    said = ["stop"] if band in BABIES or dutch else []
    assert says("R05", age_band=band, use="sleep", advice=advice, filled=True) == said
    assert says("R05", age_band=band, use="lap", advice=advice, filled=True) == []


@pytest.mark.parametrize(("layers", "said"), [(1, []), (2, ["warn"]), (3, ["warn"])])
def test_two_layers_warn_in_the_first_year(layers: int, said: list[str]) -> None:
    """R06 from two layers, which is what folding makes."""
    assert says("R06", age_band="3-12m", layers=layers) == said
    assert says("R06", age_band="12-24m", layers=layers) == []


@pytest.mark.parametrize(
    ("grams", "said"), [("499.9", []), ("500", ["note"]), ("799.9", ["note"]), ("800", ["warn"]), ("3000", ["warn"])]
)
def test_a_mass_from_500_is_noted_and_from_800_warned_of(grams: str, said: list[str]) -> None:
    """R07 in grams per square metre, on a blanket of just one square metre."""
    assert says("R07", mass_g=Fraction(grams), width_cm=Fraction(80), length_cm=Fraction(125)) == said


def test_a_mass_is_never_called_too_warm() -> None:
    """K5: mass is not warmth, so R07 says so instead of judging warmth."""
    known = SafetyInputs(mass_g=Fraction(900), width_cm=Fraction(100), length_cm=Fraction(100))
    (finding,) = BY_REFERENCE["R07"].check(known)
    assert "nothing of how warm" in finding.hint and "too warm" not in finding.message


@given(st.integers(1, 3000), st.integers(1, 300), st.integers(1, 300))
def test_mass_per_area_is_mass_over_the_product_of_the_sides(grams: int, width: int, length: int) -> None:
    """The figure times the square metres gives the grams back, exactly."""
    gsm = SafetyInputs(mass_g=Fraction(grams), width_cm=Fraction(width), length_cm=Fraction(length)).gsm
    assert gsm is not None and gsm * Fraction(width, 100) * Fraction(length, 100) == grams


@pytest.mark.parametrize(
    ("market", "width", "said"),
    [
        ("UK", "79.9", ["warn"]),
        ("UK", "89.9", ["warn"]),
        ("UK", "90", []),
        ("US", "90.9", ["warn"]),
        ("US", "91", []),
        ("NL", "90", ["warn"]),
        ("NL", "91", []),
    ],
)
def test_a_blanket_to_tuck_in_has_10_cm_a_side(market: str, width: str, said: list[str]) -> None:
    """R09 for the usual mattresses of a country, for all on record where none is on record for it."""
    assert says("R09", age_band="12-24m", use="sleep", markets=(market,), width_cm=Fraction(width)) == said
    assert says("R09", age_band="12-24m", use="floor", markets=(market,), width_cm=Fraction(width)) == []


@pytest.mark.parametrize(("width", "said"), [("79.9", ["warn"]), ("80", [])])
def test_a_mattress_that_is_known_counts_alone(width: str, said: list[str]) -> None:
    """R09 with a mattress of 60 cm asks for 80."""
    known = {"use": "sleep", "mattress_width_cm": Fraction(60), "width_cm": Fraction(width)}
    assert says("R09", **known) == said


def test_tucking_in_is_no_matter_where_no_blanket_is_accepted() -> None:
    """In the first year by the advice of the United States alone, R09 and R10 do not apply."""
    scopes = [BY_REFERENCE[reference].scope for reference in ("R09", "R10")]
    american = SafetyInputs(age_band="3-12m", use="sleep", markets=("US",))
    both = SafetyInputs(age_band="3-12m", use="sleep", markets=("US", "UK"))
    assert [american.concerns(scope) for scope in scopes] == [False, False]
    assert [both.concerns(scope) for scope in scopes] == [True, True]


@pytest.mark.parametrize(
    ("band", "length", "said"),
    [
        ("0-3m", "60", []),
        ("0-3m", "60.1", ["note"]),
        ("3-12m", "60.1", ["note"]),
        ("12-24m", "80", []),
        ("12-24m", "80.1", ["note"]),
        ("24-36m", "120", []),
    ],
)
def test_spare_length_is_noted(band: str, length: str, said: list[str]) -> None:
    """R10 above a foot tuck of 10 cm: 50 cm under a year, 70 at a year."""
    assert says("R10", age_band=band, use="sleep", length_cm=Fraction(length)) == said


@given(st.fractions(50, 120, max_denominator=97))
def test_a_size_that_is_told_lies_on_its_side_of_the_limit(size: Fraction) -> None:
    """No rounding shows a blanket that is too narrow as wide enough, or one that is too long as short enough."""
    narrow = SafetyInputs(use="sleep", width_cm=size, mattress_width_cm=Fraction(70))
    for finding in BY_REFERENCE["R09"].check(narrow):
        assert Fraction(finding.message.split("is ")[1].split(" cm")[0]) < 90
    for finding in BY_REFERENCE["R10"].check(SafetyInputs(age_band="12-24m", use="sleep", length_cm=size)):
        assert Fraction(finding.message.split("About ")[1].split(" cm")[0]) > 70

"""The safety rules on fibre, fire, washing, chemistry and labels at their limits, which are inclusive as written."""

from fractions import Fraction
from typing import Any

import pytest

from counterpane.craft.rules.safety import RULES
from counterpane.craft.safety import AGE_BANDS, Chemistry, Fibre, SafetyInputs, Wash

BY_REFERENCE = {rule.reference: rule for rule in RULES}


def says(reference: str, **known: Any) -> list[str]:
    """Return the severities of what a rule says of these inputs."""
    return [finding.severity for finding in BY_REFERENCE[reference].check(SafetyInputs(**known))]


def blend(**shares: int) -> tuple[Fibre, ...]:
    """Return fibres with their shares in per cent."""
    return tuple(Fibre(name.replace("_", " "), Fraction(share)) for name, share in shares.items())


@pytest.mark.parametrize("name", ["monofilament", "metallic polyester", "invisible thread"])
def test_a_thread_that_cuts_stops_under_three_years(name: str) -> None:
    """R28 by the flag or by the name of a fibre."""
    assert says("R28", age_band="24-36m", fibres=(Fibre(name),)) == ["stop"]
    assert says("R28", age_band="24-36m", monofilament=True) == ["stop"]
    assert says("R28", age_band="36m+", monofilament=True) == says("R28", age_band="0-3m", fibres=blend(wool=100)) == []


@pytest.mark.parametrize(
    ("band", "said"),
    [
        ("preterm", "stop"),
        ("0-3m", "stop"),
        ("3-12m", "warn"),
        ("12-24m", "note"),
        ("24-36m", "note"),
        ("36m+", "note"),
    ],
)
def test_a_yarn_that_sheds_is_graver_the_younger_the_child(band: str, said: str) -> None:
    """R29 for a halo, and for the names of yarns that have one or shed."""
    assert says("R29", age_band=band, halo=True) == [said]
    for name in ("mohair", "Angora", "brushed alpaca", "chenille", "unspun wool"):
        assert says("R29", age_band=band, halo=False, fibres=(Fibre(name),)) == [said]
    assert says("R29", age_band=band, halo=False, fibres=blend(cotton=100)) == []


@pytest.mark.parametrize("name", ["cotton", "linen", "viscose", "bamboo viscose", "lyocell"])
def test_fuzz_of_a_cellulosic_fibre_warns(name: str) -> None:
    """R30 wants both: the raised surface and a cellulosic fibre in the blend."""
    fibres = (Fibre("wool"), Fibre(name))
    assert says("R30", raised_surface=True, fibres=fibres) == ["warn"]
    assert says("R30", raised_surface=False, fibres=fibres) == says("R30", raised_surface=True, fibres=fibres[:1]) == []


def test_canada_has_its_own_test_for_bedding() -> None:
    """R30 for Canada is published and names the seven seconds; for others it is borrowed."""
    known = SafetyInputs(raised_surface=True, fibres=blend(cotton=100), markets=("CA", "US"))
    canada, other = BY_REFERENCE["R30"].check(known)
    assert ("7 seconds" in canada.message, canada.basis, canada.markets) == (True, "published", ("CA",))  # type: ignore[attr-defined]
    assert (other.basis, other.markets) == ("borrowed", ("US",))  # type: ignore[attr-defined]


@pytest.mark.parametrize(("grams", "said"), [("88.1", ["note"]), ("88.19", ["note"]), ("88.2", []), ("200", [])])
def test_a_light_fabric_is_not_exempt(grams: str, said: list[str]) -> None:
    """R31 under 88.2 g/m2, unless every fibre is on the list of 16 CFR 1610.1(d)."""
    metre = {"mass_g": Fraction(grams), "width_cm": Fraction(100), "length_cm": Fraction(100)}
    assert (
        says("R31", fibres=blend(cotton=100), **metre) == says("R31", fibres=blend(wool=50, cotton=50), **metre) == said
    )
    assert says("R31", fibres=blend(wool=50, acrylic=25, modacrylic=25), **metre) == []


@pytest.mark.parametrize(
    ("fibres", "said"),
    [
        (blend(acrylic=50, wool=50), ["note"]),
        (blend(acrylic=49, wool=51), []),
        (blend(nylon=25, polyester=25, cotton=50), ["note"]),
        (blend(polyamide=100), ["note"]),
        (blend(wool=100), []),
    ],
)
def test_half_of_what_melts_is_noted(fibres: tuple[Fibre, ...], said: list[str]) -> None:
    """R32 adds the shares of all fibres that melt."""
    assert says("R32", fibres=fibres) == said


@pytest.mark.parametrize(("micron", "said"), [(None, 1), ("30.1", 1), ("30", 0), ("17.5", 0), ("17.4", 1), ("19.5", 0)])
def test_wool_is_noted_where_it_is_coarse_unknown_or_superfine(micron: str | None, said: int) -> None:
    """R33 over 30 micrometres, under 17.5, and where nobody knows."""
    fibre = Fibre("merino", Fraction(100), None if micron is None else Fraction(micron))
    assert says("R33", fibres=(fibre,)) == ["note"] * said
    assert says("R33", fibres=blend(cotton=100)) == []


def test_the_trial_on_superfine_wool_tells_who_paid() -> None:
    """R33 names the interest behind its one kind word."""
    (finding,) = BY_REFERENCE["R33"].check(SafetyInputs(fibres=(Fibre("wool", None, Fraction(17)),)))
    assert "wool industry" in finding.message


@pytest.mark.parametrize(
    ("band", "use", "method", "temp", "said"),
    [
        ("12-24m", "lap", "dry clean only", None, ["stop"]),
        ("12-24m", "lap", "Do not wash", None, ["stop"]),
        ("36m+", "lap", "dry clean", None, ["note"]),
        ("12-24m", "lap", "hand wash", "30", ["note"]),
        ("12-24m", "lap", "machine", "39.9", ["note"]),
        ("12-24m", "lap", "machine", "40", []),
        ("12-24m", "hospital", "machine", "59.9", ["warn"]),
        ("12-24m", "hospital", "machine, tumble dry", "60", []),
        ("12-24m", "hospital", "dry clean", "60", ["stop"]),
        ("12-24m", "lap", "machine wash or dry clean", "40", []),
    ],
)
def test_a_wash_that_is_too_mild(band: str, use: str, method: str, temp: str | None, said: list[str]) -> None:
    """R34 says the gravest thing alone."""
    wash = Wash(method, None if temp is None else Fraction(temp))
    assert says("R34", age_band=band, use=use, wash=wash) == said


@pytest.mark.parametrize(
    ("method", "temp", "said"),
    [
        ("machine, wool cycle", "30", []),
        ("machine, wool cycle", "30.1", ["stop"]),
        ("machine wash", "30", ["stop"]),
        ("hand wash", "30", []),
        ("hand wash, tumble dry", "30", ["stop"]),
        ("hand wash, do not tumble dry", "30", []),
        ("Machine wash on a wool cycle; never tumble dry.", "30", []),
    ],
)
def test_wool_that_is_not_superwash_felts(method: str, temp: str, said: list[str]) -> None:
    """R35 over 30 degrees, in a machine on another than a wool cycle, or in a tumble dryer."""
    known = {"fibres": blend(wool=80, nylon=20), "wash": Wash(method, Fraction(temp))}
    assert says("R35", superwash=False, **known) == said
    assert says("R35", superwash=True, **known) == says("R35", **known) == []


@pytest.mark.parametrize("words", ["as usual", "", None])
def test_a_label_that_cannot_be_read_is_not_known(words: str | None) -> None:
    """No way of washing is guessed."""
    assert not SafetyInputs(wash=Wash(words, Fraction(40))).knows("wash.method")


def shown(**figures: str) -> Chemistry:
    """Return figures of a laboratory, with the rest in order."""
    good = {"ph": "6", "formaldehyde_mg_kg": "10", "azo_mg_kg": "5"} | figures
    return Chemistry(**{name: Fraction(value) for name, value in good.items()})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("markets", "chemistry", "said"),
    [
        (("UK",), None, ["note"]),
        (("CN",), None, ["stop"]),
        (("JP",), None, ["stop"]),
        ((), None, ["note"]),
        (("CN",), Chemistry(baby_class=True), []),
        (("JP",), shown(formaldehyde_mg_kg="16"), []),
        (("JP",), shown(formaldehyde_mg_kg="16.1"), ["stop"]),
        (("CN",), shown(formaldehyde_mg_kg="20"), []),
        (("CN",), shown(formaldehyde_mg_kg="20.1"), ["stop"]),
        (("EU",), shown(formaldehyde_mg_kg="75"), []),
        (("EU",), shown(formaldehyde_mg_kg="75.1"), ["stop"]),
        (("US",), shown(formaldehyde_mg_kg="75.1"), []),
        (("EU",), shown(azo_mg_kg="30.1"), ["stop"]),
        (("US",), shown(azo_mg_kg="30.1"), ["note"]),
        (("CN",), shown(ph="7.6"), ["stop"]),
        (("CN",), shown(ph="4.0"), []),
        (("UK",), Chemistry(ph=Fraction(6)), ["note"]),
    ],
)
def test_chemistry_stops_only_for_a_market_that_asks(markets: Any, chemistry: Any, said: list[str]) -> None:
    """R36 for a child of one year."""
    assert says("R36", age_band="12-24m", markets=markets, chemistry=chemistry) == said


def test_the_code_of_japan_ends_at_24_months_and_that_of_china_at_36() -> None:
    """R36 without evidence is a note for Japan from two years on."""
    assert says("R36", age_band="24-36m", markets=("JP",)) == ["note"]
    assert says("R36", age_band="24-36m", markets=("CN",)) == ["stop"]
    assert says("R36", age_band="36m+", markets=("CN",)) == []


@pytest.mark.parametrize(
    ("known", "said"),
    [
        ({"fibres": blend(wool=60, cotton=40)}, []),
        ({"fibres": blend(wool=60, cotton=39)}, ["stop"]),
        ({"fibres": blend(wool=60, cotton=41)}, ["stop"]),
        ({"fibres": blend(wool=60, cotton=40), "says_pure": True}, ["stop"]),
        ({"fibres": blend(wool=100), "says_pure": True}, []),
        ({"fibres": blend(wool=100), "decoration_pct": Fraction("7.1")}, ["stop"]),
        ({"fibres": blend(wool=100), "decoration_pct": Fraction(7)}, []),
        ({"fibres": (Fibre("wool", Fraction(60)), Fibre("cotton"))}, []),
    ],
)
def test_a_fibre_label_that_cannot_stand(known: dict[str, Any], said: list[str]) -> None:
    """R38: shares, the word pure, and what is left out."""
    assert says("R38", **known) == said


@pytest.mark.parametrize(
    ("market", "label", "said"),
    [
        ("EU", ("fibre", "maker", "batch"), []),
        ("EU", ("fibre", "maker"), ["warn"]),
        ("US", ("fibre", "origin", "maker", "tracking"), ["warn"]),
        ("CA", ("fibre", "maker", "bilingual"), []),
        ("AU", (), ["warn"]),
        ("AU", ("care",), []),
        ("NZ", (), []),
    ],
)
def test_a_label_lacks_what_a_market_wants(market: str, label: Any, said: list[str]) -> None:
    """R39 where the piece is sold; a market that is not on record passes nothing."""
    assert says("R39", sold=True, markets=(market,), label=label) == said
    assert says("R39", sold=False, markets=(market,), label=()) == []
    assert SafetyInputs(markets=(market,)).knows("markets on record") == (market != "NZ")


def test_a_flame_retardant_finish_warns() -> None:
    """R37 where it is declared."""
    assert says("R37", flame_retardant=True) == ["warn"]
    assert says("R37", flame_retardant=False) == says("R37") == []


@pytest.mark.parametrize("band", [*AGE_BANDS, None])
def test_protein_fibres_are_stored_without_mothballs(band: str | None) -> None:
    """R47 at any age, for what moths eat or where a treatment is planned."""
    assert (
        says("R47", age_band=band, fibres=blend(silk=100))
        == says("R47", age_band=band, moth_treatment=True)
        == ["note"]
    )
    assert says("R47", age_band=band, fibres=blend(acrylic=100), moth_treatment=False) == []


@pytest.mark.parametrize("known", [{"use": "hospital"}, {"medical_device": True}, {"emollient": True}])
def test_a_ward_is_asked_first(known: dict[str, Any]) -> None:
    """R48 for a ward, for tubes and lines, and for creams, which have words of their own."""
    (finding,) = BY_REFERENCE["R48"].check(SafetyInputs(**known))
    assert finding.severity == "note"
    assert ("fire" in finding.message) == ("emollient" in known)

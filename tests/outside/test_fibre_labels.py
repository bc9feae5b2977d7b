"""Fibre labels against Regulation (EU) No 1007/2011 and the law of other markets, end to end."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from counterpane.craft.care.composition import composition, rounded
from counterpane.craft.care.yarns import Share, Yarn
from counterpane.craft.measures import half_up, shown
from counterpane.library.yarn.labels import label
from craft.care.makings import FACTS, LAW, dry

V3 = (dry("wool", "10.30", "carded"), dry("polyamide", "50.00", "staple"), dry("cotton", "39.70", "unbleached"))
V4 = (dry("wool", "10.27", "carded"), dry("viscose", "48.71", "any"), dry("cotton", "41.02", "unbleached"))


def divisor(shares: tuple[Share, ...]) -> Fraction:
    """Return the sum below the line in the formula of Annex VIII: each dry mass with its allowance and loss."""
    masses = ((share.percent, share.reading.fibre, share.state) for share in shares)
    return sum((percent * (1 + fibre.increase(state) / 100) for percent, fibre, state in masses), Fraction(0))


@pytest.mark.parametrize(("shares", "printed"), [(V3, "109.8385"), (V4, "113.2057")])
def test_the_divisor_of_a_printed_example(shares: tuple[Share, ...], printed: str) -> None:
    """V3 and V4, Regulation (EU) No 1007/2011, Annex VIII, chapter 3, section IV, variants 1 and 4."""
    assert shown(divisor(shares), 4) == printed


@pytest.mark.parametrize(
    ("shares", "hundredths", "printed"),
    [
        (V3, {"polyamide": "48.37", "cotton": "40.66", "wool": "10.97"}, ["48.4", "40.6", "11.0"]),
        (V4, {"viscose": "48.62", "cotton": "40.77", "wool": "10.61"}, ["48.6", "40.8", "10.6"]),
    ],
)
def test_the_label_of_a_printed_example(
    shares: tuple[Share, ...], hundredths: dict[str, str], printed: list[str]
) -> None:
    """V3 and V4, the same: the shares to two places, and the label to one, largest first, with the sum 100."""
    made = composition([Yarn("sample", shares)], dry=True)
    names = [portion.fibre.name for portion in made.portions]
    assert dict(zip(names, map(lambda each: shown(each, 2), rounded(made.percents, 2)), strict=True)) == hundredths
    assert [shown(each, 1) for each in rounded(made.percents, 1)] == printed


def test_the_last_fibre_is_what_is_left_of_100() -> None:
    """V5, the same: cotton unrounded is 40.662 in V3, on the label 40.6; in V4 it is 40.764 and printed 40.77.

    Rounding each by itself would print 40.7, and 40.76. The regulation prints 100 less the others, which the largest
    remainder gives as well.
    """
    for shares, exact, alone in ((V3, "40.662", "40.7"), (V4, "40.764", "40.8")):
        made = composition([Yarn("sample", shares)], dry=True)
        names = [portion.fibre.name for portion in made.portions]
        cotton = made.percents[names.index("cotton")]
        assert (shown(cotton, 3), shown(cotton, 1)) == (exact, alone)
        for places in (1, 2):
            shown_as = rounded(made.percents, places)[names.index("cotton")]
            others = [each.least for each in made.portions if each.fibre.name != "cotton"]
            assert shown_as == 100 - sum(half_up(each, Fraction(1, 10**places)) for each in others)


def test_dry_wool_and_polyamide() -> None:
    """By the formula of Annex VIII: dry 60 wool (carded) and 40 polyamide (staple) are 62.29 and 37.71 %."""
    made = composition([Yarn("yarn", (dry("wool", "60", "carded"), dry("polyamide", "40", "staple")))], dry=True)
    assert [shown(each, 2) for each in rounded(made.percents, 2)] == ["62.29", "37.71"]


@pytest.mark.parametrize(
    ("name", "state", "allowance"),
    [
        ("wool", "combed", "18.25"),
        ("wool", None, "17.00"),
        ("mohair", "combed", "18.25"),
        ("silk", None, "11.00"),
        ("cotton", None, "8.50"),
        ("cotton", "mercerised", "10.50"),
        ("cotton", "unbleached", "12.50"),
        ("linen", None, "12.00"),
        ("hemp", "unbleached", "16.00"),
        ("viscose", None, "13.00"),
        ("acrylic", None, "2.00"),
        ("nylon", "staple", "6.25"),
        ("nylon", "filament", "5.75"),
        ("nylon", None, None),
        ("lyocell", None, "13.00"),
        ("polyester", None, "1.50"),
        ("polypropylene", None, "3.00"),
        ("elastane", None, "1.50"),
        ("polyacrylate", None, "30.00"),
    ],
)
def test_agreed_allowances(name: str, state: str | None, allowance: str | None) -> None:
    """Regulation (EU) No 1007/2011, Annex IX, with the loss before analysis of Annex VIII; (EU) 2018/122 for no. 50."""
    fibre = LAW.fibres.read(name).fibre
    assert fibre is not None
    assert fibre.increase(state) == (None if allowance is None else Fraction(allowance))


def answer(*yarns: dict[str, Any], **more: Any) -> dict[str, Any]:
    """Return the label of these yarns."""
    return label({"yarns": list(yarns), **more}, FACTS)


def of(grams: float, fibres: dict[str, float], **more: Any) -> dict[str, Any]:
    """Return a yarn as it is sent."""
    return {"grams": grams, "fibre": [{"fibre": name, "percent": part} for name, part in fibres.items()], **more}


def rules(found: dict[str, Any]) -> set[str]:
    """Return the rules that speak."""
    return {finding["rule"] for finding in found["findings"]}


@pytest.mark.parametrize(("grams", "shown_as", "speaks"), [("7.0", ["100 % wool"], False), ("7.1", None, True)])
def test_decoration_of_seven_per_cent_may_be_left_out(grams: str, shown_as: list[str] | None, speaks: bool) -> None:
    """Article 10(1), and the boundary of the safety rule on labels: 7.0 % is fine, 7.1 % is not."""
    wool = of(float(Fraction(100) - Fraction(grams)), {"wool": 100})
    found = answer(wool, of(float(grams), {"silk": 100}, left_out="decoration"), markets=["EU"])
    assert ("left-out-too-heavy" in rules(found)) is speaks
    assert found["labels"][0]["fibres"] == (shown_as or ["93 % wool, 7 % silk"])


def test_decoration_counts_where_no_law_lets_it_out() -> None:
    """Article 10 is European; elsewhere the percentages are of everything."""
    found = answer(of(95, {"wool": 100}), of(5, {"silk": 100}, left_out="decoration"), markets=["UK", "US", "AU"])
    said = ["100% wool", "95% wool, 5% silk", "95% wool, 5% silk"]
    assert [each["fibres"] for each in found["labels"]] == [[line] for line in said]
    assert found["left_out"] == [{"why": "decoration", "percent_of_piece": 5, "left_out": True}]


@pytest.mark.parametrize(("grams", "speaks"), [(2, False), (2.1, True)])
def test_antistatic_fibre_of_two_per_cent_may_be_left_out(grams: float, speaks: bool) -> None:
    """Article 10(2)."""
    found = answer(of(100 - grams, {"wool": 100}), of(grams, {"metal": 100}, left_out="antistatic"))
    assert ("left-out-too-heavy" in rules(found)) is speaks


@pytest.mark.parametrize(
    ("fibres", "printed"),
    [
        ({"virgin wool": 100}, "100 % virgin wool"),
        ({"virgin wool": 25, "acrylic": 75}, "75 % acrylic, 25 % virgin wool"),
        ({"virgin wool": 24, "acrylic": 76}, "76 % acrylic, 24 % wool"),
        ({"virgin wool": 50, "wool": 50}, "100 % wool"),
        ({"virgin wool": 60, "acrylic": 30, "polyamide": 10}, "60 % wool, 30 % acrylic, 10 % polyamide"),
    ],
)
def test_virgin_wool(fibres: dict[str, float], printed: str) -> None:
    """Article 8: all the wool of a blend is such, it is 25 % or more, and a scribbled blend has one other fibre."""
    found = answer(of(100, fibres), markets=["EU", "AU"])
    assert found["labels"][0]["fibres"] == [printed]
    assert "virgin" not in str(found["labels"][1]["fibres"])
    assert ("virgin-wool-not-allowed" in rules(found)) is ("virgin" not in printed)


@pytest.mark.parametrize("claim", ["pure wool", "100 % wool", "All wool", "100% wool"])
def test_pure_is_for_one_fibre_alone(claim: str) -> None:
    """Article 7(1)."""
    assert "pure-of-several-fibres" in rules(answer(of(100, {"wool": 98, "polyamide": 2}), claims=[claim]))
    assert "pure-of-several-fibres" not in rules(answer(of(100, {"wool": 100}), claims=[claim]))


def test_parts_of_other_fibres_are_labelled_one_by_one() -> None:
    """Article 11: each part, and one of under 30 % may be left out."""
    body, edge = of(71, {"wool": 100}, part="body"), of(29, {"cotton": 100}, part="border")
    found = answer(body, edge, markets=["EU"])
    assert found["labels"][0]["fibres"] == ["body: 100 % wool", "border: 100 % cotton"]
    assert [(part["part"], part["may_be_left_out"]) for part in found["parts"]] == [("body", False), ("border", True)]
    assert answer(body | {"grams": 70}, edge | {"grams": 30})["parts"][1]["may_be_left_out"] is False


def test_parts_of_the_same_fibres_are_one_label() -> None:
    """Article 11 speaks of parts that differ."""
    assert answer(of(70, {"wool": 100}, part="body"), of(30, {"merino": 100}, part="border"))["parts"] == []


@pytest.mark.parametrize(
    ("market", "printed"),
    [
        ("EU", "56 % cotton, 36 % viscose, 4 % elastane, 4 % wool"),
        ("UK", "56% cotton, 36% viscose, 4% elastane, 4% wool"),
        ("US", "56% cotton, 36% rayon (viscose), 4% wool, 4% other fiber"),
        ("CA", "56% cotton / coton, 36% rayon (viscose) / viscose, 8% other fibres / autres fibres"),
    ],
)
def test_fibres_under_five_per_cent(market: str, printed: str) -> None:
    """16 CFR 303.6 and 303.16, wool always named from memory; Canada: 5 % or more, in both languages."""
    found = answer(of(100, {"cotton": 56, "viscose": 36, "wool": 4, "elastane": 4}), markets=[market])
    assert found["labels"][0]["fibres"] == [printed]


def test_five_per_cent_is_named() -> None:
    """16 CFR 303.6: from 5 %."""
    found = answer(of(100, {"cotton": 95, "elastane": 5}), markets=["US"])
    assert found["labels"][0]["fibres"] == ["95% cotton, 5% spandex"]


@pytest.mark.parametrize(
    ("market", "field", "stated"),
    [
        ("US", "maker", {"registered_number": "RN 1"}),
        ("CA", "maker", {"registered_number": "CA 1"}),
        ("CA", "address", {"registered_number": "CA 1"}),
        ("UK", "maker", {"maker": "A. Maker"}),
        ("EU", "safety_information", {"safety_information": "See the leaflet."}),
        ("CN", "infant_class", {"infant_class": "GB 31701-2015"}),
        ("US", "certificate", {"certificate": "with the invoice"}),
    ],
)
def test_what_a_market_wants_is_told_or_missing(market: str, field: str, stated: dict[str, str]) -> None:
    """FTC, Threading Your Way: a name or an RN; Canada: name and address or a CA number; the others as in the facts."""
    wool = of(100, {"wool": 100})
    assert field in answer(wool, markets=[market])["labels"][0]["missing"]
    assert field not in answer(wool, markets=[market], stated=stated)["labels"][0]["missing"]


def test_how_far_a_label_may_be_from_an_analysis() -> None:
    """Article 20(3): 3 %; AS 2622:2019, an extract: 5 %; 16 CFR 303.43, memory: 3 %; Canada was not looked up."""
    labels = answer(of(100, {"wool": 100}), markets=["EU", "UK", "AU", "US", "CA"])["labels"]
    assert [each["tolerance_percent"] for each in labels] == [3, 3, 5, 3, None]


def test_a_fibre_without_a_name_in_a_market_has_no_label_there() -> None:
    """No name of the United States for protein fibre is kept here: the words are not known, and none is made up."""
    found = answer(of(100, {"protein": 30, "wool": 70}), markets=["EU", "US"])
    assert [each["fibres"] for each in found["labels"]] == [["70 % wool, 30 % protein"], None]
    assert any("US" in each["what"] for each in found["not_known"])


def test_care_is_a_duty_in_australia_and_none_in_the_united_states() -> None:
    """Consumer Goods (Care Labelling) Information Standard 2023, in force since 5 March 2025; 16 CFR 423.3."""
    labels = answer(of(100, {"wool": 100}), markets=["AU", "US"])["labels"]
    assert ["care" in each["missing"] for each in labels] == [True, False]


def test_bamboo_is_no_fibre() -> None:
    """Regulation (EU) No 1007/2011, Annex I; FTC, bamboo textiles: nobody guesses what it was made into."""
    found = answer(of(100, {"bamboo": 100}), markets=["EU", "US"])
    assert "fibre-process-not-told" in rules(found)
    assert [each["fibres"] for each in found["labels"]] == [None, None]
    assert not found["composition"]["known"]

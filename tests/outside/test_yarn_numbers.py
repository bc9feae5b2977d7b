"""Yarn numbers and needles against published tables, and against pint, which reckons them by itself."""

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.measures import CM_PER_INCH, Gauge, inches, shown
from counterpane.craft.needles import cord_capacity
from counterpane.craft.yarn.numbering import SYSTEMS, from_tex, to_tex, together

UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()
UNITS.define("number_worsted = 560 * yard / pound")
UNITS.define("number_linen = 300 * yard / pound")
UNITS.define("number_woollen = 256 * yard / pound")
UNITS.define("number_french = kilometer / (500 * gram)")
UNITS.define("number_hundred = meter / (100 * gram)")
NAMES = {
    "tex": "tex",
    "dtex": "dtex",
    "denier": "denier",
    "jute": "jute",
    "Nm": "number_meter",
    "Ne": "number_english",
    "worsted": "number_worsted",
    "linen": "number_linen",
    "woollen": "number_woollen",
    "French": "number_french",
    "m to 100 g": "number_hundred",
}
numbers = st.fractions(min_value="1/10", max_value=5000, max_denominator=100)


def test_400_metres_of_100_grams_in_every_system() -> None:
    """V6, derived and run in pint 0.25.3: Nm 4.0 = 250 tex = 2500 dtex = 2250 denier."""
    tex = to_tex(Fraction(400), "m to 100 g")
    assert [from_tex(tex, system) for system in ("Nm", "tex", "dtex", "denier")] == [4, 250, 2500, 2250]


@pytest.mark.parametrize(
    ("system", "tex", "places"),
    [("Ne", "590.541", 3), ("worsted", "885.812", 3), ("denier", "0.1111", 4), ("linen", "1653.515", 3),
     ("woollen", "1937.713", 3), ("jute", "34.45", 2)],
)  # fmt: skip
def test_number_one_in_tex(system: str, tex: str, places: int) -> None:
    """V7: textile pages (second-hand) for Ne, worsted, denier and jute; linen and woollen by their definitions."""
    assert shown(to_tex(Fraction(1), system), places) == tex


def test_products_and_ratios_of_the_systems() -> None:
    """Textile pages (second-hand): Ne x 1.6934 = Nm, worsted = 1.5 Ne, Ne x den = 5315, Nm x den = 9000."""
    tex = Fraction(20)
    nm, ne, worsted, denier = (from_tex(tex, system) for system in ("Nm", "Ne", "worsted", "denier"))
    assert (shown(nm / ne, 4), worsted / ne) == ("1.6934", Fraction(3, 2))
    assert (shown(ne * denier, 0), shown(worsted * denier, 0), nm * denier) == ("5315", "7972", 9000)


def test_a_plied_yarn_is_the_sum_of_its_singles() -> None:
    """Nm 2/28 is Nm 14; from memory."""
    assert from_tex(together((to_tex(Fraction(28), "Nm"),) * 2), "Nm") == 14


@given(numbers, st.sampled_from(sorted(NAMES)), st.sampled_from(sorted(NAMES)))
def test_pint_reckons_the_same(number: Fraction, one: str, other: str) -> None:
    """By its textile context, from each system to each."""
    ours = from_tex(to_tex(number, one), other)
    theirs = UNITS.Quantity(float(number), NAMES[one]).to(NAMES[other], "textile").magnitude
    assert float(ours) == pytest.approx(theirs, rel=1e-9)


@given(numbers, st.sampled_from(SYSTEMS))
def test_there_and_back_is_exact(number: Fraction, system: str) -> None:
    """No rounding stands between."""
    assert from_tex(to_tex(number, system), system) == number


@pytest.mark.parametrize("system", SYSTEMS)
def test_a_number_is_above_0(system: str) -> None:
    """A yarn of none is none."""
    for turn in (to_tex, from_tex):
        with pytest.raises(ValueError, match="above 0"):
            turn(Fraction(0), system)


def test_what_lies_on_the_cord_of_a_needle_of_29_inches() -> None:
    """A yarn shop's page on circular needles: 33 to 57 inches of knitting on a needle of 29."""
    one_an_inch = Gauge(Fraction(1), Fraction(1), CM_PER_INCH)
    holds = cord_capacity(inches(Fraction(29)), one_an_inch)
    assert (holds.least, holds.most) == (33, 57)

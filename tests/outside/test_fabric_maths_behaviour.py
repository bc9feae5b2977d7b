"""Behaviour against vectors H01 to H06, H15 and H16 that an independent script computed from a house model of faces.

What is held here is the arithmetic of the model, not the fabric: thresholds are house figures, ranges from memory.
"""

from fractions import Fraction

import pytest

from counterpane.craft.behaviour.faces import Repeat
from counterpane.craft.behaviour.figures import WIDTH_RIB_2X2
from counterpane.craft.behaviour.textures import lies_of


def cell(*rows: str) -> Repeat:
    """Return a repeat from rows of K and P as the right side shows them."""
    looks = {"K": "knit", "P": "purl"}
    return Repeat(tuple(tuple(looks[face] for face in row) for row in rows), 0, True)  # type: ignore[misc]


STOCKING, GARTER, SEED = cell("K"), cell("K", "P"), cell("KP", "PK")
RIB_2X2, RIB_3X1, RIB_7X7 = cell("KKPP"), cell("KKKP"), cell("K" * 7 + "P" * 7)
BASKET_5, BASKET_10 = (cell(*["K" * of + "P" * of] * of, *["P" * of + "K" * of] * of) for of in (5, 10))


@pytest.mark.parametrize(
    ("repeat", "surplus", "across", "upright"),
    [
        pytest.param(STOCKING, 1, None, None, id="H01"),
        pytest.param(GARTER, 0, None, 1, id="H02"),
        pytest.param(RIB_2X2, 0, 2, None, id="H03"),
        pytest.param(SEED, 0, 1, 1, id="H04"),
        pytest.param(BASKET_5, 0, 5, 5, id="H05"),
        pytest.param(RIB_3X1, Fraction(1, 2), 3, None, id="H06"),
    ],
)
def test_surplus_and_runs(repeat: Repeat, surplus: Fraction, across: int | None, upright: int | None) -> None:
    """H01 to H06: surplus of one face, longest run across and upright, None for one without end."""
    assert (repeat.surplus, repeat.across, repeat.upright) == (surplus, across, upright)


@pytest.mark.parametrize(
    ("repeat", "lies"),
    [
        (STOCKING, "curls"),
        (GARTER, "shortens"),
        (RIB_2X2, "draws in"),
        (SEED, "flat"),
        (BASKET_5, "flat"),
        (RIB_3X1, "curls"),
        (BASKET_10, "edges may roll"),
        (RIB_7X7, "edges may roll"),
    ],
)
def test_verdicts(repeat: Repeat, lies: str) -> None:
    """H16: eight fabrics by the house thresholds."""
    assert lies_of(repeat) == lies


def test_a_rib_below_a_body_of_60_cm() -> None:
    """H15: 36 to 45 cm at rest."""
    hem = WIDTH_RIB_2X2.times(Fraction(60), "cm")
    assert (hem.low, hem.high) == (36, 45)

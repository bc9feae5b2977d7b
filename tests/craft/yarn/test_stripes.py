"""Stripes that begin with purl bumps on the right side; common practice, no source."""

from __future__ import annotations

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Yarn
from counterpane.craft.yarn.stripes import bumps

from .asking import Starters, planned

SIZE = {"width_cm": 24, "length_cm": 30}


@pytest.mark.parametrize(
    ("body", "rows", "first"),
    [
        ("stocking-stitch", (1, 2), None),  # knit rows on the right side
        ("stocking-stitch", (2, 3), None),  # purl rows on the wrong side
        ("garter", (1, 2), None),
        ("garter", (2, 3), 2),  # a knit row on the wrong side is a ridge on the right
        ("reverse-stocking-stitch", (1, 2), 9),  # row 1 has nothing but the cast-on before it
        ("seed-stitch", (3, 4), 3),
    ],
)
def test_a_stripe_that_begins_with_purl_faces_is_told(
    body: str, rows: tuple[int, ...], first: int | None, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Only its first row matters: the bumps are those of the colour before."""
    plan = planned(starters, vocabulary, body, sides=None, bottom=None, top=None, size=SIZE)
    found = bumps(plan, [Yarn(colour="MC"), Yarn(colour="A", parts=("body",), rows=rows, every=8)], vocabulary)
    of_a = [each.row for each in found if each.yarn.colour == "A"]
    assert of_a == ([] if first is None else [first])

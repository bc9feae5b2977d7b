"""Stripes that begin with purl bumps on the right side; common practice, no source."""

from __future__ import annotations

from dataclasses import replace

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Yarn
from counterpane.craft.yarn.sections import StripesRunApart, section_loops
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


def test_stripes_of_the_only_yarn_change_nothing(starters: Starters, vocabulary: Vocabulary) -> None:
    """It works the rows between them as well, since nobody else does."""
    for section in planned(starters, vocabulary, "waffle").sections:
        plain, striped = (section_loops(section, [each], vocabulary) for each in (Yarn(), Yarn(rows=(1,), every=7)))
        assert striped.period > plain.period
        assert striped.loops(0) == plain.loops(0)


def test_stripes_and_a_texture_that_hardly_ever_begin_again_together_are_refused(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Four rows of waffle and stripes of 9,973 meet after 39,892: each row would have to be worked out by itself."""
    section = replace(planned(starters, vocabulary, "waffle").sections[1], rows=40_000)
    yarns = [Yarn(), Yarn(colour="A", rows=(1,), every=9_973)]
    with pytest.raises(StripesRunApart, match="after 39892 rows"):
        section_loops(section, yarns, vocabulary)

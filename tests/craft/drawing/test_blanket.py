"""The fabric of a blanket: one loop for each stitch of the trace, at the proportions of the gauge."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.drawing.blanket import CannotDraw, corner, fabric
from counterpane.craft.drawing.crossings import Crossing
from counterpane.craft.drawing.loops import drawn_across, shapes
from counterpane.craft.fabric.marks import Mark
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import planned

Starters = Mapping[str, Component]
SVG = "{http://www.w3.org/2000/svg}"


def _rows(picture: str) -> dict[str, list[str]]:
    """Return the marks of each row that was drawn once, by its name."""
    groups = ElementTree.fromstring(picture).iterfind(f"{SVG}defs/{SVG}g")
    named = {group.get("id", ""): [use.get("href", "") for use in group.iter(f"{SVG}use")] for group in groups}
    return {name: marks for name, marks in named.items() if name.startswith("s")}


def _laid(picture: str) -> list[str]:
    """Return the rows of the whole blanket in the order in which they are laid, by name."""
    whole = ElementTree.fromstring(picture).find(f"{SVG}svg/{SVG}g")
    assert whole is not None
    return [use.get("href", "").removeprefix("#") for use in whole.iter(f"{SVG}use")]


def test_every_stitch_is_drawn_once(starters: Starters, vocabulary: Vocabulary) -> None:
    """As many loops as the plan counts, but for those of the bind-off, which are the last row's own."""
    plan = planned(starters, vocabulary, "basket-weave", sides={"component": "garter-border", "stitches": 7})
    picture = fabric(plan, vocabulary, "Rime")
    rows = _rows(picture)
    assert plan.stitches_total - plan.sections[-1].after == sum(len(rows[name]) for name in _laid(picture))


def test_the_wrong_side_shows_the_other_face_in_a_mirror(starters: Starters, vocabulary: Vocabulary) -> None:
    """Stocking stitch: knit faces in front, purl faces behind."""
    plan = planned(starters, vocabulary, "stocking-stitch", sides=None, bottom=None, top=None)
    front, back = (fabric(plan, vocabulary, "Rime", face=face) for face in ("RS", "WS"))  # type: ignore[arg-type]
    knit, purl = shapes(Mark("k"), vocabulary), shapes(Mark("p"), vocabulary)
    assert all(shape in front for shape in knit) and all(shape in back for shape in purl)
    assert not any(shape in front for shape in purl) and not any(shape in back for shape in knit)


def test_a_stitch_is_as_wide_and_as_high_as_the_gauge_says(starters: Starters, vocabulary: Vocabulary) -> None:
    """Ten units of a stitch are a 22nd of 10 cm across and a 30th upright."""
    plan = planned(starters, vocabulary, "garter", sides=None, bottom=None, top=None)
    use = next(ElementTree.fromstring(fabric(plan, vocabulary, "Rime")).iterfind(f"{SVG}svg/{SVG}g/{SVG}g/{SVG}use"))
    across, upright = use.get("transform", "").split("scale(")[1].rstrip(")").split()
    assert abs(Fraction(across) - Fraction(1, 22)) <= Fraction(1, 10**5)
    assert abs(Fraction(upright) - Fraction(1, 30)) <= Fraction(1, 10**5)


def test_a_blanket_of_60_000_stitches_stays_small(starters: Starters, vocabulary: Vocabulary) -> None:
    """A repeat of rows is drawn once: 200 stitches by 300 rows are less than 2,000,000 bytes."""
    plan = planned(starters, vocabulary, "waffle", width=93, length=100)
    assert plan.counts.cast_on >= 200 and sum(section.rows for section in plan.sections) >= 300
    assert len(fabric(plan, vocabulary, "Rime").encode()) < 2_000_000


def test_too_many_stitches_are_refused_with_their_number(vocabulary: Vocabulary, starters: Starters) -> None:
    """A repeat of 12 rows over 10,000 stitches."""
    plan: Plan = planned(starters, vocabulary, "basket-weave", width=5000, sides=None)
    with pytest.raises(CannotDraw, match="60,000 are drawn at most"):
        fabric(plan, vocabulary, "Rime")


@given(st.integers(1, 6), st.integers(1, 6), st.booleans())
def test_a_crossing_moves_every_stitch_once(front: int, behind: int, leans_left: bool) -> None:
    """The front ones stay in order and end on the side to which they lean."""
    crossing = Crossing(front, behind, leans_left)
    ends = [crossing.comes_from(place) for place in range(crossing.stitches)]
    assert sorted(below for below, _ in ends) == list(range(crossing.stitches))
    in_front = [place for place, (_, lies_in_front) in enumerate(ends) if lies_in_front]
    assert in_front == list(range(behind, front + behind) if leans_left else range(front))
    assert [ends[place][0] for place in in_front] == list(range(front) if leans_left else range(behind, front + behind))


@given(st.integers(1, 60), st.integers(1, 60))
def test_a_row_of_another_count_is_as_wide_as_the_one_below(count: int, below: int) -> None:
    """Its outermost stitches are drawn from the outermost ones below, however many there are between."""
    first, last = Mark("k", (0,)), Mark("k", (below - count,))
    assert abs(drawn_across(first, 0, count, below).drawn[0]) <= count / below
    assert abs(drawn_across(last, count - 1, count, below).drawn[0]) <= count / below


def test_a_row_of_the_same_count_is_drawn_as_it_was_worked() -> None:
    """From wherever its stitches come."""
    mark = Mark("k2tog", (0, 1))
    assert mark == drawn_across(mark, 3, 20, 20)


def test_more_rows_than_are_drawn_are_refused_at_once(starters: Starters, vocabulary: Vocabulary) -> None:
    """A slip of the pen in the length asks for millions of rows, and the reason names how many."""
    plan = planned(starters, vocabulary, "waffle", 70, 10**9)
    for drawn in (fabric, corner):
        with pytest.raises(CannotDraw, match=r"3,\d{3},\d{3},\d{3} rows; 10,000 are drawn at most"):
            drawn(plan, vocabulary, "Rime")

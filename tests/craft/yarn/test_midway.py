"""A piece in the middle: what is worked and what is left, against the whole piece worked out anew."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from counterpane.craft.constructions import Plan
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Scale, Weighed, Yarn, estimate
from counterpane.craft.yarn.amounts import end_loops, worked_out
from counterpane.craft.yarn.choosing import scale_of
from counterpane.craft.yarn.midway import Piece, loops_to_bind_off, loops_to_free, loops_worked, reach, spot_of
from counterpane.craft.yarn.spreads import Spread

from .asking import Starters, planned

YARN = Yarn(tex=Fraction(400), swatch=Weighed(Fraction(20), 40, 56))


def piece(plan: Plan, rows_done: int, vocabulary: Vocabulary, *yarns: Yarn) -> Piece:
    """Return a piece after so many rows."""
    spot = spot_of(plan.sections, rows_done)
    assert spot is not None
    return Piece(worked_out(plan, yarns or (YARN,), vocabulary), 0, spot)


def whole(plan: Plan, vocabulary: Vocabulary) -> Spread:
    """Return all loops of a plan in its first yarn, with one end for each of two."""
    return estimate(plan, [YARN], vocabulary).colours[0].loops


@pytest.mark.parametrize(
    ("rows", "section", "inside"), [(0, 0, 0), (12, 0, 12), (13, 1, 1), (228, 1, 216), (240, 2, 12)]
)
def test_a_piece_stands_at_the_end_of_a_section_rather_than_before_the_next(
    rows: int, section: int, inside: int, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Rows count from the cast-on."""
    plan = planned(starters, vocabulary, "stocking-stitch")
    spot = spot_of(plan.sections, rows)
    assert spot and (spot.section, spot.rows) == (section, inside)


def test_no_piece_has_more_rows_than_its_plan(starters: Starters, vocabulary: Vocabulary) -> None:
    """240 rows in all."""
    assert spot_of(planned(starters, vocabulary, "stocking-stitch").sections, 241) is None


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(rows=st.integers(0, 240), body=st.sampled_from(["stocking-stitch", "waffle", "basket-weave"]))
def test_worked_and_left_are_the_whole(rows: int, body: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """At every row; the first end is left out, which hangs at the cast-on."""
    plan = planned(starters, vocabulary, body)
    here = piece(plan, min(rows, sum(section.rows for section in plan.sections)), vocabulary)
    scale = scale_of(plan, YARN, vocabulary)
    left = loops_to_bind_off(here, here.spot.section, scale) - here.loops(here.spot.section, here.spot.rows)
    assert loops_worked(here) + left + end_loops(plan, scale) == whole(plan, vocabulary)


@pytest.mark.parametrize("body", ["waffle", "basket-weave"])
@pytest.mark.parametrize("rows_done", [12, 50, 97])
@pytest.mark.parametrize("grams", [60, 150, 231])
def test_the_rows_left_are_those_of_the_longest_plan_that_the_yarn_does_for(
    body: str, rows_done: int, grams: int, starters: Starters, vocabulary: Vocabulary
) -> None:
    """A plan with that many rows takes no more than there is, and one repeat more takes more."""
    plan = planned(starters, vocabulary, body)
    here, scale = piece(plan, rows_done, vocabulary), scale_of(plan, YARN, vocabulary)
    fixed = scale.grams_of(loops_to_bind_off(here, 2, scale))
    assert fixed and here.free == 1
    found = reach(here, grams - fixed.likely, scale, sure=False)
    assert found.rows is not None
    done = here.spot.rows if here.spot.section == 1 else 0
    needs = [
        _grams_to_go(planned(starters, vocabulary, {"component": body, "rows": rows}), here, scale, vocabulary)
        for rows in (done + found.rows, done + found.rows + found.repeat)
    ]
    assert needs[0] <= grams < needs[1]


def _grams_to_go(plan: Plan, here: Piece, scale: Scale, vocabulary: Vocabulary) -> Fraction:
    """Return what a plan still takes of a piece that is begun, all but the end at its cast-on."""
    to_go = whole(plan, vocabulary) - loops_worked(here) - end_loops(plan, scale)
    grams = scale.grams_of(to_go)
    assert grams is not None
    return grams.likely


def test_what_is_sure_is_never_more_than_what_is_likely(starters: Starters, vocabulary: Vocabulary) -> None:
    """The high end takes more yarn."""
    plan = planned(starters, vocabulary, "waffle")
    here, scale = piece(plan, 60, vocabulary), scale_of(plan, YARN, vocabulary)
    for grams in map(Fraction, range(0, 300, 7)):
        sure, likely = (reach(here, grams, scale, sure=each).rows for each in (True, False))
        assert (sure or -1) <= (likely or -1)


def test_the_rows_end_where_the_plan_ends(starters: Starters, vocabulary: Vocabulary) -> None:
    """In the middle of a repeat, the first rows to come complete it."""
    plan = planned(starters, vocabulary, "waffle")
    here, scale = piece(plan, 12 + 41, vocabulary), scale_of(plan, YARN, vocabulary)
    found = reach(here, Fraction(100), scale, sure=True)
    assert found.rows and (41 + found.rows - plan.sections[1].rows) % found.repeat == 0


def test_less_than_the_part_repeat_that_is_begun_gives_no_rows(starters: Starters, vocabulary: Vocabulary) -> None:
    """None is not 0: the piece cannot end here."""
    here = piece(planned(starters, vocabulary, "waffle"), 12 + 41, vocabulary)
    assert reach(here, Fraction(1), scale_of(here.plan, YARN, vocabulary), sure=True).rows is None


def test_a_piece_whose_body_is_done_has_no_rows_that_give_way(starters: Starters, vocabulary: Vocabulary) -> None:
    """In the top border all is settled."""
    plan = planned(starters, vocabulary, "waffle")
    here = piece(plan, sum(section.rows for section in plan.sections) - 2, vocabulary)
    assert here.free is None
    with pytest.raises(ValueError, match="free section"):
        reach(here, Fraction(100), scale_of(plan, YARN, vocabulary), sure=True)


def test_stripes_grow_by_whole_stripes(starters: Starters, vocabulary: Vocabulary) -> None:
    """The repeat is that of texture and stripes together."""
    striped = replace(YARN, colour="A", parts=("body",), rows=(1, 2), every=6)
    plan = planned(starters, vocabulary, "waffle")
    here = piece(plan, 60, vocabulary, YARN, striped)
    assert reach(here, Fraction(100), scale_of(plan, YARN, vocabulary), sure=True).repeat == 12


@pytest.mark.parametrize("rows_done", [0, 5, 12])
def test_a_border_on_the_needle_is_finished_before_the_body(
    rows_done: int, starters: Starters, vocabulary: Vocabulary
) -> None:
    """What is worked, the rest of the border, and all from the body on are the whole but for the first end."""
    plan = planned(starters, vocabulary, "waffle")
    here, scale = piece(plan, rows_done, vocabulary), scale_of(plan, YARN, vocabulary)
    assert here.free == 1
    to_go = loops_to_free(here) + loops_to_bind_off(here, here.free, scale)
    assert loops_worked(here) + to_go + end_loops(plan, scale) == whole(plan, vocabulary)

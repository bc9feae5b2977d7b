"""The one-piece blanket: counts, rows, sides, sizes, and what stands against a plan."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from counterpane.craft.constructions import obstacles, one_piece
from counterpane.craft.constructions.making import attempt
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import GAUGE, Starters, asked, planned

BODIES = ("waffle", "basket-weave", "stocking-stitch", "seed-stitch", "rope-cable", "old-shale", "fan", "linen-stitch")
WS_FIRST = {"text": "Row 1 (WS): knit.\nRow 2 (RS): purl."}
ODD = {"text": "Row 1: knit.\nRow 2: knit.\nRow 3: purl.\nRow 4: knit.\nRow 5: purl."}


@pytest.mark.parametrize("body", BODIES)
def test_the_cast_on_is_the_sum_of_its_parts(body: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """Body, two side borders and two selvedges make the whole."""
    counts = planned(starters, vocabulary, body, selvedge="slipped-selvedge").counts
    assert counts.cast_on == counts.body[0] + 2 * counts.sides + 2 * counts.selvedge


@pytest.mark.parametrize("body", BODIES)
def test_no_admissible_count_is_nearer_than_the_chosen_one(
    body: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Five counts are listed, nearest first, the larger of a tie first."""
    near = planned(starters, vocabulary, body).nearest
    off = [(abs(one.error_cm), -one.cast_on) for one in near]
    assert (len(near), off) == (5, sorted(off))


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("corner", ["ends", "sides"])
def test_sections_follow_one_another(body: str, corner: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """Rows and sides go on without a gap, and each section gives on the count it took."""
    made = planned(starters, vocabulary, body, corner=corner, selvedge="chain-selvedge").sections
    for below, above in pairwise(made):
        assert above.first_row == below.first_row + below.rows
        assert {below.last_row_side, above.first_row_side} == {"RS", "WS"}
        assert above.before == below.after
    assert [section.first_row_side for section in made] == ["RS", "RS", "RS"]


def test_scaling_the_gauge_scales_the_size(starters: Starters, vocabulary: Vocabulary) -> None:
    """Half as many stitches to the centimetre make the same count twice as wide."""
    one = planned(starters, vocabulary, "waffle")
    coarse = {"stitches": 11, "rows": 15, "over_cm": 10}
    other = planned(starters, vocabulary, "waffle", 140, 180, gauge=coarse)
    assert (other.counts, other.width_cm, other.length_cm) == (one.counts, 2 * one.width_cm, 2 * one.length_cm)


def test_a_gauge_over_inches_is_the_same_gauge(starters: Starters, vocabulary: Vocabulary) -> None:
    """22 over 4 in are fewer than 22 over 10 cm, by 1.6 in 100."""
    wide = planned(starters, vocabulary, "garter", gauge={**GAUGE, "over_cm": "10.16"})
    assert (
        planned(starters, vocabulary, "garter", gauge={"stitches": 22, "rows": 30, "over_in": 4}).counts == wide.counts
    )


def test_each_part_is_measured_by_its_own_gauge(starters: Starters, vocabulary: Vocabulary) -> None:
    """Waffle at 22 between garter borders at 20.5 is summed part by part, in width and in length."""
    waffle, garter = {**GAUGE, "in": "waffle"}, {"stitches": "20.5", "rows": 42, "over_cm": 10, "in": "garter"}
    plan = planned(starters, vocabulary, "waffle", gauge=[waffle, garter])
    assert plan.width_cm == Fraction(12 * 10 * 2, 41) + Fraction(plan.counts.body[0] * 10, 22)
    assert plan.sections[0].cm_width == Fraction(plan.counts.cast_on * 10 * 2, 41)
    assert plan.length_cm == Fraction(24 * 10, 42) + Fraction(plan.sections[1].rows * 10, 30)


def test_an_odd_repeat_is_worked_an_even_number_of_times(starters: Starters, vocabulary: Vocabulary) -> None:
    """Five rows repeat fifty times, so that the top border begins on the right side."""
    body = planned(starters, vocabulary, ODD).sections[1]
    assert (body.rows, len(body.cycle), body.last_row_side) == (250, 10, "WS")


def test_side_by_side_repeats_are_worked_to_their_common_multiple(starters: Starters, vocabulary: Vocabulary) -> None:
    """Three rows beside four make twelve."""
    three = {"text": "Row 1: k6.\nRow 2: k6.\nRow 3: p6."}
    body = planned(starters, vocabulary, "waffle", sides=three).sections[1]
    assert (len(body.cycle), body.rows % 12) == (12, 0)


def test_half_a_repeat_ends_a_body_whose_second_half_is_the_first_one_shifted(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Basket weave stops after six of its twelve rows where that comes nearer; waffle never after two of its four."""
    assert planned(starters, vocabulary, "basket-weave").sections[1].rows == 246
    assert planned(starters, vocabulary, "waffle").sections[1].rows == 248


def test_a_body_that_begins_on_the_wrong_side_needs_an_odd_number_of_rows_before_it(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Twelve border rows are refused, eleven are not, and no row is added silently."""
    refused = attempt(asked(starters, vocabulary, WS_FIRST), vocabulary).met(obstacles.WrongSide)
    assert (refused[0].pointer, refused[0].side, refused[0].rows_before) == ("/parts/body", "WS", 12)
    plan = planned(starters, vocabulary, WS_FIRST, bottom={"component": "garter-border", "rows": 11})
    assert [section.first_row_side for section in plan.sections][:2] == ["RS", "WS"]


def test_a_body_never_begins_on_a_ws_row_by_chance(starters: Starters, vocabulary: Vocabulary) -> None:
    """Eleven rows of border before a body that begins on the right side are refused, garter or not."""
    request = asked(starters, vocabulary, "garter", bottom={"component": "garter-border", "rows": 11})
    assert attempt(request, vocabulary).met(obstacles.WrongSide)


def test_bands_share_one_count_and_the_length(starters: Starters, vocabulary: Vocabulary) -> None:
    """Waffle and basket weave meet at 24n + 18 with one selvedge stitch, and together make 90 cm."""
    plan = planned(starters, vocabulary, ["waffle", "basket-weave"], selvedge="slipped-selvedge")
    assert (plan.counts.cast_on, plan.counts.body, plan.counts.repeats) == (162, (148, 148), (49, 18))
    assert ([section.name for section in plan.sections], plan.length_cm) == (["bottom", "body 1", "body 2", "top"], 90)


def test_a_band_of_its_own_count_lets_its_side_borders_give_way(starters: Starters, vocabulary: Vocabulary) -> None:
    """At 154 stitches the waffle band takes 142, one garter stitch fewer on each side."""
    bands = [{"component": "waffle", "stitches": 142}, "basket-weave"]
    plan = planned(starters, vocabulary, bands, selvedge="slipped-selvedge")
    assert (plan.counts.cast_on, plan.counts.body) == (154, (142, 140))
    assert [section.after for section in plan.sections] == [154] * 4


def test_parts_in_words_count_as_stored_ones_do(starters: Starters, vocabulary: Vocabulary) -> None:
    """The rows of the garter border written out give the plan of the component."""
    words = {"text": "Rows 1 and 2: knit."}
    stored = planned(starters, vocabulary, "waffle")
    plan = planned(starters, vocabulary, "waffle", bottom={**words, "rows": 12}, sides={**words, "stitches": 6})
    assert (plan.counts, plan.length_cm, plan.stitches_total) == (
        stored.counts,
        stored.length_cm,
        stored.stitches_total,
    )


def test_without_borders_only_the_body_is_left(starters: Starters, vocabulary: Vocabulary) -> None:
    """Every edge can be left away."""
    plan = planned(starters, vocabulary, "garter", bottom=None, sides=None, top=None)
    assert ([section.name for section in plan.sections], plan.counts.sides) == (["body"], 0)


def test_the_stitches_of_a_piece_are_the_loops_of_its_rows_and_those_bound_off(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Each section adds the loops its rows leave, the bind-off those it takes."""
    plan = planned(starters, vocabulary, "fan")
    rows = sum(section.stitches for section in plan.sections)
    assert plan.stitches_total == rows + plan.sections[-1].after


@pytest.mark.parametrize("body", BODIES)
def test_a_sampler_shows_the_same_rows_over_fewer_stitches(
    body: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """It has the plan's rows, one repeat of each section, and stops where the plan's sections stop."""
    plan = planned(starters, vocabulary, body, selvedge="slipped-selvedge")
    small = one_piece.sampler(plan, vocabulary)
    assert small.counts.cast_on < plan.counts.cast_on
    for whole, sample in zip(plan.sections, small.sections, strict=True):
        assert [row.parts for row in sample.cycle] == [row.parts for row in whole.cycle]
        assert (whole.rows - sample.rows) % len(whole.cycle) == 0
        assert sample.rows < 2 * len(whole.cycle)


@pytest.mark.parametrize(
    ("parts", "obstacle"),
    [
        ({"body": {"text": "Row 1: k24.\nRow 2: p24."}}, obstacles.WidthOutOfReach),
        ({"body": "garter", "width": 10**17}, obstacles.TooLarge),
        ({"body": "garter", "length": 10**17}, obstacles.TooLarge),
        ({"body": "garter", "width": "0.001"}, obstacles.WidthOutOfReach),
        ({"body": "garter", "length": "0.001"}, obstacles.LengthOutOfReach),
        ({"body": {"text": "Row 1: k1, yo, k to end."}}, obstacles.CountChanges),
        ({"body": {"text": "Row 1: k5, turn.\nRow 2: k5."}}, obstacles.DoesNotJoin),
        ({"body": {"text": "Rnd 1: knit."}}, obstacles.DoesNotJoin),
        ({"body": "long-tail"}, obstacles.WrongKind),
        ({"body": "garter", "bottom": {"component": "garter-border", "stitches": 4}}, obstacles.NotTaken),
        ({"body": "garter", "sides": {"component": "garter-border", "stitches": 10**17}}, obstacles.WidthOutOfReach),
        (
            {"body": "garter", "width": 10**6, "sides": {"component": "garter-border", "stitches": 10**5}},
            obstacles.ValueRefused,
        ),
    ],
)
def test_what_cannot_be_made_is_told_apart(
    parts: dict[str, object], obstacle: type[obstacles.Obstacle], starters: Starters, vocabulary: Vocabulary
) -> None:
    """Each fault is an obstacle of its own sort, found in bounded time."""
    made = attempt(asked(starters, vocabulary, **parts), vocabulary)  # type: ignore[arg-type]
    assert made.plan is None
    assert isinstance(made.obstacles[0], obstacle)


def test_two_hundred_bands_are_planned_in_bounded_time(starters: Starters, vocabulary: Vocabulary) -> None:
    """A stack of one texture keeps one count through all bands."""
    plan = planned(starters, vocabulary, ["garter"] * 200, 70, 2000)
    assert len(plan.sections) == 202

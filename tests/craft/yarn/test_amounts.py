"""What a plan takes of its yarn: ranges, their basis, balls and ends."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Spread, Weighed, Yarn, estimate
from counterpane.craft.yarn.balls import balls, balls_of, ends_of, joins
from counterpane.craft.yarn.choosing import TextureNotWorked, plain_gauge

from .asking import GAUGE, Starters, planned

DOUBLE_KNITTING = Yarn(tex=Fraction(400), ball_g=Fraction(50), ball_m=Fraction(125))
SWATCH = Weighed(Fraction(20), 40, 56, scale_g=Fraction(1, 10))
fractions = st.fractions(min_value="1/100", max_value=10_000, max_denominator=1000)


def test_every_figure_is_a_range_in_order(starters: Starters, vocabulary: Vocabulary) -> None:
    """The likely value lies between the ends, which are never one."""
    (found,) = estimate(planned(starters, vocabulary, "waffle"), [DOUBLE_KNITTING], vocabulary).colours
    for part in found.parts:
        assert part.metres and part.grams
        assert part.metres.low < part.metres.likely < part.metres.high
        assert part.grams.low < part.grams.likely < part.grams.high


def test_the_parts_add_up_to_the_whole(starters: Starters, vocabulary: Vocabulary) -> None:
    """Cast-on, sections, bind-off and ends are all that there is."""
    (found,) = estimate(planned(starters, vocabulary, "waffle"), [DOUBLE_KNITTING], vocabulary).colours
    assert [part.part for part in found.parts] == ["cast-on", "bottom", "body", "top", "bind-off", "ends"]
    assert found.metres and sum(part.metres.likely for part in found.parts if part.metres) == found.metres.likely


def test_what_cannot_be_known_is_none(starters: Starters, vocabulary: Vocabulary) -> None:
    """A gauge alone tells metres and no grams, a weighed swatch alone grams and no metres."""
    plan = planned(starters, vocabulary, "waffle")
    (by_gauge,), (by_weight,) = (estimate(plan, [yarn], vocabulary).colours for yarn in (Yarn(), Yarn(swatch=SWATCH)))
    assert (by_gauge.grams, by_gauge.balls) == (None, None) and by_gauge.metres
    assert by_weight.metres is None and by_weight.grams and by_weight.balls is None


def test_a_weighed_swatch_beats_an_earlier_piece_and_that_the_gauge(starters: Starters, vocabulary: Vocabulary) -> None:
    """The order of trust."""
    plan, earlier = planned(starters, vocabulary, "waffle"), Weighed(Fraction(300), 40_000, edges=False)
    yarns = (replace(DOUBLE_KNITTING, swatch=SWATCH, earlier=earlier), replace(DOUBLE_KNITTING, earlier=earlier))
    scales = [estimate(plan, [yarn], vocabulary).colours[0].scale for yarn in (*yarns, DOUBLE_KNITTING)]
    assert [scale.basis for scale in scales] == ["weighed swatch", "earlier piece", "gauge"]
    assert [scale.spread for scale in scales] == sorted(scale.spread for scale in scales)


def test_a_swatch_of_the_same_texture_knows_nothing_of_stitch_factors(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Seed stitch weighed and seed stitch knitted: the doubt about a purl's yarn cancels out."""
    plan = planned(starters, vocabulary, "seed-stitch", sides=None, bottom=None, top=None)
    swatch = replace(SWATCH, stitches=41, edges=False)
    (found,) = estimate(plan, [Yarn(swatch=swatch)], vocabulary).colours
    (body,) = (part for part in found.parts if part.part == "body")
    each = Fraction(20) / (41 * 56) * body.loops.likely / Fraction("1.025")
    assert body.grams and abs(body.grams.likely - each) < each / 1000
    assert body.grams.high / body.grams.likely - 1 == pytest.approx(found.scale.spread, abs=1e-3)


def test_a_swatch_in_a_texture_that_is_not_worked_is_refused(starters: Starters, vocabulary: Vocabulary) -> None:
    """It would tell of another fabric."""
    yarn = Yarn(swatch=replace(SWATCH, texture="old-shale"))
    with pytest.raises(TextureNotWorked, match="old-shale"):
        estimate(planned(starters, vocabulary, "waffle"), [yarn], vocabulary)


def test_two_strands_take_twice_the_metres(starters: Starters, vocabulary: Vocabulary) -> None:
    """At one gauge each loop has one length, in both strands."""
    plan = planned(starters, vocabulary, "waffle")
    single, double = (estimate(plan, [replace(DOUBLE_KNITTING, strands=n)], vocabulary).colours[0] for n in (1, 2))
    worked = [sum(part.metres.likely for part in each.parts[:-1] if part.metres) for each in (single, double)]
    assert worked[1] == 2 * worked[0]


def test_loops_are_reckoned_from_plain_knitting_where_its_gauge_is_known(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """The constants hold for stocking stitch; from another texture the range is wider."""
    gauges = [{**GAUGE, "in": "waffle"}, {"stitches": 21, "rows": 29, "over_cm": 10, "in": "stocking-stitch"}]
    both, one = planned(starters, vocabulary, "waffle", gauge=gauges), planned(starters, vocabulary, "waffle")
    assert plain_gauge(both.request, vocabulary)[0].stitches == 21
    assert [plain_gauge(plan.request, vocabulary)[1] for plan in (both, one)] == [True, False]


def test_stitches_without_a_figure_widen_the_range_and_are_named(starters: Starters, vocabulary: Vocabulary) -> None:
    """Not known is never none: the yarn of a bobble lies within wide bounds."""
    text = "Row 1 (RS): *k4, mb; rep from * to end.\nRow 2: purl."
    (found,) = estimate(planned(starters, vocabulary, {"text": text}), [Yarn()], vocabulary).colours
    (body,) = (part for part in found.parts if part.part == "body")
    assert found.unknown == ("mb",)
    assert body.loops.low < body.loops.likely < body.loops.high


def test_a_cast_on_without_a_figure_is_named(starters: Starters, vocabulary: Vocabulary) -> None:
    """Its yarn is taken within wide bounds, and the answer says so."""
    plan = planned(starters, vocabulary, "waffle", cast_on="loop-cast-on")
    assert estimate(plan, [Yarn()], vocabulary).edges_not_known == ("Loop cast-on",)


@given(fractions, fractions)
def test_balls_hold_the_amount_and_one_fewer_does_not(amount: Fraction, ball: Fraction) -> None:
    """The least whole number of balls, exactly."""
    number = balls(amount, ball)
    assert (number - 1) * ball < amount <= number * ball


@given(fractions, fractions, fractions)
def test_joined_balls_hold_the_work_and_their_own_ends(worked: Fraction, end: Fraction, ball: Fraction) -> None:
    """Each ball gives two ends and works the rest; a ball that is all ends joins nothing."""
    joined = joins(worked, end, ball)
    if joined is None:
        assert ball <= 2 * end
        return
    assert (joined + 1) * ball >= worked + ends_of(joined) * end
    assert joined == 0 or joined * ball < worked + ends_of(joined - 1) * end


def test_the_balls_to_buy_cover_the_high_end_and_the_margin() -> None:
    """A wide range asks for more balls than 10 % on the likely amount."""
    yarn = replace(DOUBLE_KNITTING, ball_g=None, ball_m=Fraction(100))
    found = balls_of(yarn, Spread(Fraction(300), Fraction(380), Fraction(520)), None)
    assert found and (found.low, found.likely, found.high, found.buy) == (3, 4, 6, 6)
    narrow = balls_of(yarn, Spread(Fraction(390), Fraction(395), Fraction(400)), None)
    assert narrow and (narrow.high, narrow.buy) == (4, 5)

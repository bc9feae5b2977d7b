"""The largest blanket of an amount of yarn: the search against looking at every size in turn."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.fitting import options, width_cm
from counterpane.craft.constructions.making import attempt
from counterpane.craft.constructions.settling import settle
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Yarn, estimate
from counterpane.craft.yarn.largest import largest
from counterpane.craft.yarn.sizing import NotEnoughYarn, SizeLaw

from .asking import Starters, planned

amounts = st.fractions(min_value=1, max_value=5000, max_denominator=20)
small = st.fractions(min_value="1/10", max_value=20, max_denominator=20)
WIDEST = 100


def metres(plan: Plan, vocabulary: Vocabulary) -> Fraction:
    """Return the likely metres of a plan."""
    found = estimate(plan, [Yarn()], vocabulary).metres
    assert found is not None
    return found.likely


def one_by_one(plan: Plan, yarn: int, vocabulary: Vocabulary) -> int:
    """Return the largest cast-on that the yarn does for, after a look at each that there is; 0 for none."""
    settled = settle(plan.request, vocabulary)
    (option,) = options(settled)
    shape, best = plan.request.length_cm / plan.request.width_cm, 0
    for count in range(option.counts.least, WIDEST * 3, option.counts.of):
        width = width_cm(settled, count)
        made = attempt(replace(plan.request, width_cm=width, length_cm=shape * width), vocabulary).plan
        if made is not None and metres(made, vocabulary) <= yarn:
            best = max(best, count)
    return best


@pytest.mark.parametrize("body", ["waffle", "basket-weave", "stocking-stitch"])
@pytest.mark.parametrize("yarn", [3, 60, 200, 641])
@pytest.mark.parametrize("near", [0, 30, 500])
def test_the_search_finds_what_a_look_at_every_count_finds(
    body: str, yarn: int, near: int, starters: Starters, vocabulary: Vocabulary
) -> None:
    """From whatever guess it starts."""
    plan = planned(starters, vocabulary, body)
    found = largest(plan, lambda made: metres(made, vocabulary) <= yarn, Fraction(near), "shape", vocabulary)
    assert (found.counts.cast_on if found else 0) == one_by_one(plan, yarn, vocabulary)


@pytest.mark.parametrize("yarn", [200, 400, 900])
def test_at_a_width_that_is_kept_the_next_repeat_is_too_much(
    yarn: int, starters: Starters, vocabulary: Vocabulary
) -> None:
    """The cast-on stays, and a blanket one repeat longer takes more than there is."""
    plan = planned(starters, vocabulary, "waffle")
    found = largest(plan, lambda made: metres(made, vocabulary) <= yarn, Fraction(50), "width", vocabulary)
    assert found and found.counts.cast_on == plan.counts.cast_on
    longer = attempt(replace(found.request, length_cm=found.length_cm + Fraction(4, 3)), vocabulary).plan
    assert longer and metres(found, vocabulary) <= yarn < metres(longer, vocabulary)


@given(amounts, small, small, small)
def test_the_closed_form_is_its_own_inverse(area: Fraction, edges: Fraction, fixed: Fraction, shape: Fraction) -> None:
    """A width put back takes the yarn, but for what the root leaves off."""
    law = SizeLaw(area, edges, fixed, shape)
    yarn = law.yarn(Fraction(3, 2))
    assert abs(law.width(yarn) - Fraction(3, 2)) < Fraction(1, 10**6)
    assert law.length(yarn, Fraction(3, 2)) == shape * Fraction(3, 2)


def test_edges_and_ends_alone_make_no_length() -> None:
    """What is left after them must be more than none."""
    with pytest.raises(NotEnoughYarn):
        SizeLaw(Fraction(10), Fraction(8), Fraction(2), Fraction(1)).length(Fraction(10), Fraction(1))

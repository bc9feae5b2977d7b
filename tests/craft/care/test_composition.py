"""Composition by mass: two roads to each share, bounds that hold, and percentages that make 100."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.care.composition import composition, places_for, rounded
from counterpane.craft.care.yarns import Yarn
from craft.care.makings import LAW, yarn

NAMES = ("wool", "cotton", "acrylic", "polyamide", "silk")
whole = st.lists(st.integers(0, 20), min_size=5, max_size=5).filter(any)
grams = st.integers(1, 500)


def blend(parts: list[int]) -> dict[str, object]:
    """Return exact percentages in these proportions."""
    return {name: Fraction(100 * part, sum(parts)) for name, part in zip(NAMES, parts, strict=True) if part}


def poured_together(yarns: list[tuple[dict[str, object], Fraction | int]]) -> Mapping[str, Fraction]:
    """Return the shares by the other road: pour one yarn after another into a pot and stir each time."""
    pot: dict[str, Fraction] = {}
    mass = Fraction(0)
    for fibres, weight in yarns:
        into = Fraction(weight) / (mass + weight)
        stirred = {name: share * (1 - into) for name, share in pot.items()}
        for name, share in fibres.items():
            stirred[name] = stirred.get(name, Fraction(0)) + Fraction(str(share)) * into
        pot, mass = stirred, mass + weight
    return pot


@given(st.lists(st.tuples(whole.map(blend), grams), min_size=1, max_size=5))
def test_shares_are_those_of_yarns_poured_together(yarns: list[tuple[dict[str, object], int]]) -> None:
    """The sum over all yarns and the pouring of one into the next give the same fractions."""
    made = composition([yarn(fibres, weight) for fibres, weight in yarns])
    assert made.known
    assert {portion.fibre.name: portion.least for portion in made.portions} == poured_together(yarns)


@given(whole.map(blend), grams, whole.map(blend), grams, st.booleans())
def test_what_is_not_known_leaves_bounds_that_hold(
    one: dict[str, object], weight: int, other: dict[str, object], truth: int, fibres_told: bool
) -> None:
    """Whatever the missing grams, or the missing fibres, turn out to be, the shares lie between the bounds."""
    second = yarn(other) if fibres_told else yarn(None, truth)
    made = composition([yarn(one, weight), second])
    true = poured_together([(one, weight), (other, truth)])
    for portion in made.portions:
        assert portion.least <= true.get(portion.fibre.name, Fraction(0)) <= portion.most


@given(st.lists(st.tuples(whole.map(blend), grams, grams), min_size=1, max_size=4))
def test_estimated_grams_give_the_tightest_bounds(yarns: list[tuple[dict[str, object], int, int]]) -> None:
    """By trying every yarn at its least and its most: a mean is least and most at such corners, and nowhere beyond."""
    ends = [tuple(sorted(map(Fraction, each[1:]))) for each in yarns]
    made = composition([yarn(fibres, estimate=end) for (fibres, _, _), end in zip(yarns, ends, strict=True)])
    corners = [
        poured_together([(fibres, weight) for (fibres, _, _), weight in zip(yarns, corner, strict=True)])
        for corner in product(*ends)
    ]
    for portion in made.portions:
        shares = [corner.get(portion.fibre.name, Fraction(0)) for corner in corners]
        assert (portion.least, portion.most) == (min(shares), max(shares))


@given(whole.map(blend))
def test_yarns_of_the_same_fibres_need_no_weighing(fibres: dict[str, object]) -> None:
    """Two colours of one yarn have its composition whatever there is of each."""
    made = composition([yarn(fibres), yarn(fibres, 50)])
    assert made.known
    assert made.figures == composition([yarn(fibres)]).figures


def test_a_yarn_without_fibres_is_never_left_out() -> None:
    """300 g of wool and 100 g of something are 75 to 100 % wool, and are not known."""
    made = composition([yarn({"wool": 100}, 300), yarn(None, 100)])
    assert (made.known, made.figures) == (False, (("wool", 75, 100),))


def test_a_word_that_tells_no_fibre_leaves_the_others_of_its_yarn() -> None:
    """Bamboo may be viscose, lyocell or modal and never polyamide, so the quarter of polyamide stands."""
    made = composition([yarn({"bamboo": 75, "nylon": 25})])
    assert (made.known, made.figures) == (False, (("polyamide", 25, 25),))
    unknown = composition([yarn({"cloud": 75, "nylon": 25})])
    assert unknown.figures == (("polyamide", 25, 100),)


def test_percentages_that_miss_100_tell_nothing() -> None:
    """95 % told is no composition: the rest may be anything, and so may the words."""
    made = composition([yarn({"wool": 95})])
    assert (made.known, made.figures) == (False, (("wool", 0, 100),))


def test_dry_masses_of_what_is_not_known_give_no_bounds() -> None:
    """The allowance of a fibre that nobody knows has no bounds either."""
    assert composition([yarn({"wool": 100}, 10), yarn(None, 10)], dry=True).portions == ()
    assert composition([yarn({"polyamide": 100})], dry=True).portions == ()
    assert composition([], dry=False).portions == ()


@pytest.mark.parametrize(
    ("word", "manner", "name"),
    [
        ("Merino", "trade", "wool"),
        ("  virgin   WOOL ", "legal", "wool"),
        ("nylon", "legal", "polyamide"),
        ("linen", "legal", "flax"),
        ("bamboo", "process", None),
        ("cloud", "unknown", None),
    ],
)
def test_words_on_ball_bands(word: str, manner: str, name: str | None) -> None:
    """Regulation (EU) No 1007/2011, Annex I: merino and bamboo do not stand there; case and blanks do not count."""
    read = LAW.fibres.read(word)
    assert (read.manner, read.fibre and read.fibre.name) == (manner, name)
    assert read.virgin is ("virgin" in word)


def test_every_word_is_read_in_one_way() -> None:
    """No word stands for two fibres."""
    words = [word.casefold() for word in LAW.fibres.words]
    assert sorted(words) == sorted(set(words))


shares = st.lists(st.integers(0, 400), min_size=1, max_size=7).filter(any)


@given(shares, st.integers(0, 2))
def test_rounded_shares_make_100_and_stay_near(parts: list[int], places: int) -> None:
    """The sum is 100 exactly, each is less than a step away, and a larger share is never shown as the smaller."""
    exact = [Fraction(100 * part, sum(parts)) for part in parts]
    shown, step = rounded(exact, places), Fraction(1, 10**places)
    assert sum(shown) == 100
    assert all(abs(one - other) < step for one, other in zip(shown, exact, strict=True))
    pairs = sorted(zip(exact, shown, strict=True))
    assert [one for _, one in pairs] == sorted(one for _, one in pairs)


@given(st.lists(st.integers(0, 30), min_size=1, max_size=4).filter(any))
def test_no_other_whole_percentages_lie_nearer(parts: list[int]) -> None:
    """By trying all that make 100: none has a smaller sum of squared errors."""
    exact = [Fraction(100 * part, sum(parts)) for part in parts]
    near = product(*([share // 1, share // 1 + 1] for share in exact))
    errors = (
        sum((one - other) ** 2 for one, other in zip(each, exact, strict=True)) for each in near if sum(each) == 100
    )
    assert min(errors) == sum((one - other) ** 2 for one, other in zip(rounded(exact), exact, strict=True))


def test_a_trace_is_shown_by_as_many_decimals_as_it_takes() -> None:
    """0.4 % is not shown as 0 %."""
    traced = (Fraction("99.6"), Fraction("0.4"))
    assert places_for(traced) == 1
    assert rounded(traced, 1) == traced
    assert places_for((Fraction(100), Fraction(0))) == 4


def test_a_yarn_says_what_is_in_it() -> None:
    """None is not known: a yarn that is not read to the end may hold anything."""
    assert yarn({"wool": 100}).has("animal hair") is True
    assert yarn({"cotton": 100}).has("animal hair") is False
    assert yarn({"cotton": 50, "cloud": 50}).has("animal hair") is None
    assert Yarn("told nothing").has("plant") is None


def test_a_yarn_of_which_nothing_is_used_is_not_in_the_piece() -> None:
    """Its fibres are named nowhere, not even with 0 %."""
    made = composition([yarn({"wool": 100}, 50), yarn({"silk": 100}, 0)])
    assert made.figures == (("wool", Fraction(100), Fraction(100)),)

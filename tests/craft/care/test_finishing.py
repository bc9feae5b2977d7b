"""Finishing by fibre: what every fibre bears, ranges that hold, and nothing allowed where a fibre is not known."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.care.finishing import finish
from counterpane.craft.care.yarns import Yarn
from counterpane.library.yarn.label_facts import ways_of
from craft.care.makings import FACTS, LAW, yarn

WAYS = ways_of(FACTS)
NAMES = [fibre.name for fibre in LAW.fibres.known]


def names(*yarns: Yarn) -> list[str]:
    """Return the ways that are gone for a piece of these yarns."""
    return [way.name for way in finish(yarns, WAYS).ways]


@pytest.mark.parametrize("name", NAMES)
def test_every_fibre_has_a_way(name: str) -> None:
    """None is left without: common practice, no source."""
    assert names(yarn({name: 100}))


@pytest.mark.parametrize(
    ("fibres", "superwash", "ways"),
    [
        ({"wool": 100}, False, ["wool"]),
        ({"wool": 100}, True, ["superwash"]),
        ({"wool": 100}, None, ["wool", "superwash"]),
        ({"alpaca": 100}, None, ["drape"]),
        ({"cotton": 60, "acrylic": 40}, None, ["plant", "synthetic"]),
        ({"viscose": 100}, None, ["regenerated"]),
        ({"merino": 75, "nylon": 25}, True, ["superwash", "synthetic"]),
    ],
)
def test_the_ways_of_a_blend(fibres: dict[str, object], superwash: bool | None, ways: list[str]) -> None:
    """Wool of which nobody tells whether it is treated gets both; common practice, no source."""
    made = finish([yarn(fibres, superwash=superwash)], WAYS)
    assert [way.name for way in made.ways] == ways
    assert made.superwash_unknown is (superwash is None and "wool" in fibres)


def test_one_tender_fibre_decides_for_all() -> None:
    """Cotton bears steam; with a thread of acrylic beside it the piece gets none. Viscose takes the pins away."""
    assert finish([yarn({"cotton": 100})], WAYS).steam
    assert not finish([yarn({"cotton": 100}), yarn({"acrylic": 100})], WAYS).steam
    assert finish([yarn({"wool": 100}, superwash=False)], WAYS).pins
    assert not finish([yarn({"wool": 100}, superwash=False), yarn({"viscose": 100})], WAYS).pins


def test_a_fibre_that_is_not_known_bears_nothing() -> None:
    """No steam and no pins, whatever the others bear."""
    for unknown in (yarn(None), yarn({"cloud": 100}), yarn({"cotton": 90})):
        made = finish([yarn({"cotton": 100}), unknown], WAYS)
        assert (made.unknown, made.steam, made.pins) == (True, False, False)
    assert (finish([], WAYS).unknown, finish([], WAYS).steam) == (True, False)


@given(st.lists(st.sampled_from(NAMES), min_size=1, max_size=4), st.booleans())
def test_the_sizes_of_a_mix_hold_those_of_each(mixed: list[str], treated: bool) -> None:
    """Wherever one of the fibres may be laid out to lies within what is said of all of them."""
    yarns = [yarn({name: 100}, superwash=treated) for name in mixed]
    (narrow, wide), (short, long) = finish(yarns, WAYS).laid(Fraction(70), Fraction(90))
    for each in yarns:
        (least, most), (shortest, longest) = finish([each], WAYS).laid(Fraction(70), Fraction(90))
        assert narrow <= least <= most <= wide and short <= shortest <= longest <= long
    assert wide >= Fraction(68) and long >= Fraction(88)


def test_figures_are_ranges_and_say_what_they_rest_on() -> None:
    """A figure from memory is a range, and its fact says that it is common practice from memory."""
    facts = [fact for name, fact in FACTS.items() if name.startswith("finishing-")]
    assert all("common practice, no source" in fact["source"] and fact["confidence"] == "memory" for fact in facts)
    moving = [way for way in WAYS if way.name not in ("synthetic", "metal")]
    assert all(way.width[0] < way.width[1] and way.length[0] < way.length[1] for way in moving)


def test_superwash_wool_grows_and_cotton_shortens() -> None:
    """Practice notes on finishing: superwash grows, cotton shortens, over-steamed acrylic is changed for good."""
    by_name = {way.name: way for way in WAYS}
    assert by_name["superwash"].length[0] < 100 and "grows" in by_name["superwash"].says
    assert by_name["plant"].length[1] > 100 and "shortens" in by_name["plant"].says
    assert not by_name["synthetic"].steam and "for good" in by_name["synthetic"].says

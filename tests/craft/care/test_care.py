"""The care of a piece: the mildest of its yarns, what is not told, and washings that a yarn does not bear."""

from __future__ import annotations

import re
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.care.groups import CareGroup, CareValue, care_label, known_headings
from counterpane.craft.care.labels import Labelled, Piece, labelled
from counterpane.craft.care.washing import beyond, felts, may_felt, superwash, washed_at_most
from craft.care.makings import LAW, yarn

GROUPS = {group.name: group for group in LAW.groups}
PROCESSES = ("none", "hand", "very mild", "mild", "")
WHOLE = {"washing": "machine 60", "bleaching": "none", "tumble_drying": "low", "ironing": "150", "dry_cleaning": "P"}


def harder(group: str, one: str, other: str) -> bool:
    """Tell from the words alone whether the second is at least as mild as the first: no ranks are looked at."""
    return all(a >= b for a, b in zip(_steps(group, one), _steps(group, other), strict=True))


def _steps(group: str, word: str) -> tuple[int, ...]:
    degrees = int((re.findall(r"\d+", word) or ["20" if "ambient" in word else "0"])[0])
    if group == "washing":
        process = "hand" if "hand" in word else word.partition(str(degrees))[2].strip() if degrees else "none"
        return PROCESSES.index(process), degrees
    if group == "ironing":
        return degrees, int("no steam" not in word and degrees > 0)
    if group == "natural_drying":
        return int("line" in word), int("drip" not in word), int("shade" not in word)
    if group == "dry_cleaning":
        solvent = ("none", "F", "P").index(word.split(maxsplit=1)[0])
        return solvent, (2 - ("mild" in word)) if solvent else 0
    scales = {
        "bleaching": ("none", "oxygen", "any"),
        "tumble_drying": ("none", "low", "normal"),
        "wet_cleaning": ("none", "very mild", "mild", "normal"),
    }
    return (scales[group].index(word),)


@pytest.mark.parametrize("group", LAW.groups, ids=lambda group: group.name)
def test_the_mildest_is_the_most_that_both_bear(group: CareGroup) -> None:
    """By trying all: it is as mild as both, and whatever is as mild as both is as mild as it."""
    for one, other in product(group.values, repeat=2):
        mildest = group.mildest((one, other))
        borne = [
            value
            for value in group.values
            if harder(group.name, one.word, value.word) and harder(group.name, other.word, value.word)
        ]
        assert mildest in borne
        assert all(harder(group.name, mildest.word, value.word) for value in borne)


@given(st.data(), st.sampled_from(LAW.groups))
def test_the_order_of_the_yarns_does_not_matter(data: st.DataObject, group: CareGroup) -> None:
    """Nor does a yarn that is told twice, nor which two are merged first."""
    values = data.draw(st.lists(st.sampled_from(group.values), min_size=1, max_size=5))
    merged = group.mildest(values)
    assert group.mildest(data.draw(st.permutations(values))) == merged
    assert group.mildest([*values, values[0]]) == merged
    assert group.mildest([group.mildest(values[:1]), *values[1:]]) == merged
    assert all(group.bears(value, merged) for value in values)


def test_washing_of_different_processes_meets_at_the_milder_of_each() -> None:
    """40 degrees normal and 60 mild are 40 mild; a machine and the hand are the hand."""
    washing = GROUPS["washing"]
    assert washing.mildest((washing.of("machine 40"), washing.of("machine 60 mild"))).word == "machine 40 mild"
    assert washing.mildest((washing.of("machine 30"), washing.of("hand 40"))).word == "hand 30"
    assert washing.mildest((washing.of("machine 95"), washing.of("none"))).word == "none"


def line(name: str, *words: str | None) -> tuple[str | None, str | None, tuple[int, ...], tuple[int, ...]]:
    """Return value, most, untold and deciding of one group for yarns that tell these words."""
    yarns = [yarn({"cotton": 100}, care={} if word is None else {name: word}) for word in words]
    found = next(each for each in care_label(yarns, LAW.groups) if each.group.name == name)
    return found.value and found.value.word, found.at_most and found.at_most.word, found.untold, found.deciding


def test_one_yarn_that_does_not_tell_makes_the_group_not_known() -> None:
    """What the others leave at most is said, and is no value."""
    assert line("washing", "machine 60", None) == (None, "machine 60", (1,), ())
    assert line("bleaching", "none", None) == (None, "none", (1,), ())
    assert line("ironing", None, None) == (None, None, (0, 1), ())


def test_the_yarns_that_set_the_care_are_named() -> None:
    """Those without which the label would be harsher: all of the mildest, or both where each is milder in its way."""
    assert line("washing", "machine 60", "hand 30", "hand 30")[3] == (1, 2)
    assert line("washing", "machine 40", "machine 60 mild")[3] == (0, 1)
    assert line("washing", "machine 40", "machine 60 mild", "hand 30")[3] == (2,)
    assert line("washing", "machine 40", "machine 40")[3] == ()


def headings(*cares: dict[str, str]) -> dict[str, bool]:
    """Return which headings are known for yarns of these cares."""
    return known_headings(care_label([yarn({"cotton": 100}, care=care) for care in cares], LAW.groups))


def test_a_heading_is_known_where_nothing_under_it_is_half_told() -> None:
    """Natural drying told by one yarn alone leaves drying not known; told by none it is not asked for."""
    assert all(headings(WHOLE).values())
    assert list(headings(WHOLE)) == ["washing", "bleaching", "drying", "ironing", "professional care"]
    assert headings(WHOLE, {**WHOLE, "natural_drying": "flat"})["drying"] is False
    assert headings({**WHOLE, "natural_drying": "line"}, {**WHOLE, "natural_drying": "flat"})["drying"] is True
    assert headings({})["washing"] is False


def values(washing: str | None, tumble: str | None) -> tuple[CareValue | None, CareValue | None]:
    """Return a washing and a tumble drying by their words."""
    return washing and GROUPS["washing"].of(washing), tumble and GROUPS["tumble_drying"].of(tumble)


@pytest.mark.parametrize(
    ("washing", "tumble", "felted"),
    [
        ("machine 30 very mild", "none", False),
        ("hand 30", "none", False),
        ("hand ambient", "none", False),
        ("none", "none", False),
        ("hand 40", "none", True),
        ("machine 30 mild", "none", True),
        ("machine 30", "none", True),
        ("machine 40 very mild", "none", True),
        ("hand 30", "low", True),
        (None, "low", True),
        ("machine 40", None, True),
        ("hand 30", None, None),
        (None, "none", None),
    ],
)
def test_untreated_wool_felts(washing: str | None, tumble: str | None, felted: bool | None) -> None:
    """A soap and detergent association (jsda.org), second-hand: 30 degrees, no rubbing; the boundary is inclusive."""
    assert felts(*values(washing, tumble), LAW.untreated_wool_most) is felted


def test_only_wool_and_hair_felt() -> None:
    """Superwash wool and cotton do not; of what nobody told it is not known."""
    assert may_felt(yarn({"wool": 100}, superwash=False)) is True
    assert may_felt(yarn({"mohair": 30, "acrylic": 70}, superwash=False)) is True
    assert may_felt(yarn({"wool": 100}, superwash=True)) is False
    assert may_felt(yarn({"cotton": 100})) is False
    assert may_felt(yarn({"wool": 100})) is None
    assert may_felt(yarn(None)) is None


def piece(*cares: dict[str, str], washed: dict[str, str] | None = None, **more: object) -> Labelled:
    """Return a piece of wool yarns with these cares."""
    yarns = tuple(yarn({"wool": 100}, 50, care=care, **more) for care in cares)
    return labelled(Piece(yarns, washed=washed or {}), LAW)


def test_a_piece_is_washed_as_its_label_says_unless_it_is_told_otherwise() -> None:
    """In the words of the safety inputs; a tumble dryer is named, a dry-clean-only piece is called so."""
    found = washed_at_most(piece({"washing": "machine 40 very mild", "tumble_drying": "none"}))
    assert found and (found.method, found.degrees) == ("machine, wool cycle", 40)
    found = washed_at_most(piece({"washing": "machine 60", "tumble_drying": "low"}))
    assert found and (found.method, found.degrees) == ("machine, tumble dry", 60)
    found = washed_at_most(piece({"washing": "hand ambient", "tumble_drying": "none"}))
    assert found and (found.method, found.degrees) == ("hand", None)
    found = washed_at_most(piece({"washing": "none", "dry_cleaning": "P"}))
    assert found and found.method == "dry clean only"
    found = washed_at_most(piece({"washing": "none", "dry_cleaning": "none"}))
    assert found and found.method == "not at all"
    assert washed_at_most(piece({"washing": "none"})) is None
    assert washed_at_most(piece({"washing": "machine 60"})) is None
    assert washed_at_most(piece({})) is None
    told = piece({}, washed={"washing": "machine 60", "tumble_drying": "normal"})
    found = washed_at_most(told)
    assert found and (found.method, found.degrees) == ("machine, tumble dry", 60)


def test_a_washing_beyond_a_yarn_names_the_yarn() -> None:
    """Each group apart; what a yarn does not tell it is not said to bear or not to bear."""
    made = piece({"washing": "machine 40"}, {"washing": "machine 60"}, {}, washed={"washing": "machine 60"})
    assert [(found.place, found.asked.word, found.bears.word) for found in beyond(made)] == [
        (0, "machine 60", "machine 40")
    ]


def test_superwash_is_that_of_all_the_wool() -> None:
    """One untreated yarn makes it untreated, one of which nobody knows makes it not known."""
    assert superwash(piece(WHOLE, superwash=True)) is True
    assert superwash(piece(WHOLE, superwash=False)) is False
    assert superwash(piece(WHOLE)) is None
    assert superwash(labelled(Piece((yarn({"cotton": 100}),)), LAW)) is None
    mixed = (yarn({"wool": 100}, superwash=True), yarn({"wool": 100}))
    assert superwash(labelled(Piece(mixed), LAW)) is None
    assert superwash(labelled(Piece((*mixed, yarn({"wool": 100}, superwash=False))), LAW)) is False

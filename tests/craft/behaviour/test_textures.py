"""Textures by their faces: one repeat says as much as the whole grid, and as the rows looked at another way."""

from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.behaviour import behaviour_of
from counterpane.craft.behaviour.faces import Repeat, repeat_of
from counterpane.craft.behaviour.textures import UNKNOWN, of_repeat
from counterpane.craft.component import Component, derive
from counterpane.craft.constructions.fabrics import is_garter, is_moss
from counterpane.craft.fabric import from_rs
from counterpane.craft.sizing.lengths import side_of
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace

Starters = Mapping[str, Component]
CELLS = st.integers(1, 6).flatmap(
    lambda wide: st.lists(st.lists(st.sampled_from(["knit", "purl"]), min_size=wide, max_size=wide), min_size=1)
)


@pytest.mark.parametrize("slug", ["stocking-stitch", "waffle", "basket-weave", "rib-two-by-two", "rope-cable", "welts"])
def test_one_repeat_stands_for_a_whole_blanket(slug: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """The grid of some 60 stitches and 3 repeats of rows shows the repeat over and over between its edges."""
    repeat, version = repeat_of(starters[slug], vocabulary), derive(starters[slug], vocabulary).versions[0]
    assert repeat is not None
    start, rows = version.starts[0], [row.parts for row in version.rows] * 6
    sides = [side_of(number, version.first_side) for number in range(1, len(rows) + 1)]
    stitches = start.least + start.of * (60 // start.of)
    grid = from_rs(trace(rows, stitches, vocabulary, sides), vocabulary)
    for at, course in enumerate(grid):
        expected = repeat.courses[at % len(repeat.courses)]
        for column in range(start.least, stitches - start.least):
            assert course[column] == expected[(column - start.least) % repeat.wide]


def test_garter_and_moss_are_told_alike_from_faces_and_from_words(starters: Starters, vocabulary: Vocabulary) -> None:
    """For every starter of simple stitches the two roads agree on garter and on seed stitch."""
    looked_at = 0
    for component in starters.values():
        repeat = repeat_of(component, vocabulary) if component.operation is None else None
        if repeat is None or not repeat.simple:
            continue
        looked_at += 1
        garter = repeat.across is None and repeat.upright == 1
        assert garter == is_garter(component, vocabulary), component.slug
        if is_moss(component, vocabulary):
            assert (repeat.across, repeat.upright) == (1, 1)
    assert looked_at > 30


def test_a_part_without_rows_has_no_behaviour(starters: Starters, vocabulary: Vocabulary) -> None:
    """Nothing is known of a cast-on as a fabric."""
    assert behaviour_of(starters["long-tail"], vocabulary) == UNKNOWN


def test_reverse_stocking_stitch_rolls_the_other_way(starters: Starters, vocabulary: Vocabulary) -> None:
    """What rolls to the back on one side rolls to the front on the other."""
    ways = []
    for slug in ("stocking-stitch", "reverse-stocking-stitch"):
        curl = behaviour_of(starters[slug], vocabulary).curl
        assert curl is not None
        ways.append((curl.sides, curl.ends))
    assert ways == [("to the back", "to the front"), ("to the front", "to the back")]


def test_lace_and_cables_are_not_judged_by_faces(starters: Starters, vocabulary: Vocabulary) -> None:
    """Whether they lie flat is not known, and a cable still draws in by its crossed stitches."""
    lace, cable = behaviour_of(starters["feather-lace"], vocabulary), behaviour_of(starters["rope-cable"], vocabulary)
    assert (lace.lies, lace.width, cable.lies) == ("not known", None, "not known")
    assert cable.width is not None and cable.width.high is not None and cable.width.high < 1


def test_crossed_stitches_are_counted_by_name_and_spelt_out(starters: Starters, vocabulary: Vocabulary) -> None:
    """Six of eight in ropes worked by one word, all six in ropes worked over a cable needle in words."""
    found = {slug: repeat_of(starters[slug], vocabulary) for slug in ("rope-cable", "crossed-bands")}
    assert {slug: repeat and repeat.crossed for slug, repeat in found.items()} == {"rope-cable": 6, "crossed-bands": 6}


def test_decreases_are_no_crossings(starters: Starters, vocabulary: Vocabulary) -> None:
    """A stitch passed over another has not changed places with it."""
    repeat = repeat_of(starters["coral-lace"], vocabulary)
    assert repeat is not None and repeat.crossed == 0


@given(CELLS)
def test_turning_a_texture_over_turns_its_roll_and_nothing_else(cell: list[list[str]]) -> None:
    """Seen from the back the verdict is the same, and what rolled to the back rolls to the front."""
    front = _repeat(cell)
    back = _repeat([["purl" if look == "knit" else "knit" for look in course][::-1] for course in cell])
    here, there = of_repeat(front), of_repeat(back)
    assert (here.lies, here.surplus, here.width, here.shape) == (there.lies, there.surplus, there.width, there.shape)
    if here.curl and there.curl:
        assert (here.curl.sides, here.curl.ends) == (there.curl.ends, there.curl.sides)


@given(CELLS, st.integers(1, 3), st.integers(1, 3))
def test_a_repeat_written_several_times_behaves_the_same(cell: list[list[str]], across: int, up: int) -> None:
    """Twice the repeat is the same fabric: runs go round."""
    again = [course * across for course in cell] * up
    assert of_repeat(_repeat(again)) == of_repeat(_repeat(cell))


def _repeat(cell: list[list[str]]) -> Repeat:
    return Repeat(tuple(tuple(course) for course in cell), 0, True)  # type: ignore[arg-type]

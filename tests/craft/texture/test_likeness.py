"""How alike textures are, against a count of every stitch at every shift."""

from __future__ import annotations

from fractions import Fraction
from math import lcm

from hypothesis import given

from counterpane.craft.texture import (
    CLOSE,
    PLAIN,
    Cell,
    Signs,
    arrangements,
    images,
    likeness,
    reach,
    size_of,
    straight,
)
from counterpane.craft.texture.likeness import LEAST_TOLD

from .cells import KNIT_AND_PURL, faces, repeated, shifted


def counted(one: Cell, other: Cell) -> int:
    """Return the most stitches that agree, one by one, over every shift and move."""
    rows, stitches = lcm(len(one), len(other)), lcm(len(one[0]), len(other[0]))
    here = repeated(one, rows, stitches)
    laid = (
        shifted(repeated(image, rows, stitches), up, along)
        for image in images(other, PLAIN)
        for up in range(rows)
        for along in range(stitches)
    )
    return max(sum(here[up][at] == there[up][at] for up in range(rows) for at in range(stitches)) for there in laid)


@given(KNIT_AND_PURL, KNIT_AND_PURL)
def test_likeness_is_the_most_stitches_that_agree(one: Cell, other: Cell) -> None:
    """Shifting bits gives what counting stitch by stitch gives, and neither size promises less than that."""
    one, other = straight(one), straight(other)
    found = likeness(one, other, PLAIN)
    assert found is not None
    assert found.matching == counted(one, other)
    assert found.of == lcm(len(one), len(other)) * lcm(len(one[0]), len(other[0]))
    assert found.share <= min(reach(one, size_of(other)), reach(other, size_of(one)))


@given(KNIT_AND_PURL, KNIT_AND_PURL)
def test_likeness_does_not_depend_on_the_order(one: Cell, other: Cell) -> None:
    """Whichever is laid over the other."""
    here, there = likeness(straight(one), straight(other), PLAIN), likeness(straight(other), straight(one), PLAIN)
    assert here is not None
    assert there is not None
    assert here.share == there.share


def test_the_plainest_move_is_named() -> None:
    """A texture is like itself as it is, and stocking stitch like its back turned over."""
    same, turned = likeness(faces("k"), faces("k"), PLAIN), likeness(faces("k"), faces("p"), PLAIN)
    assert same is not None
    assert turned is not None
    assert (same.share, same.move.name) == (1, "as it is")
    assert (turned.share, turned.move.name) == (1, "turned over a side edge")


def test_one_purl_in_ten_is_nine_tenths_like_none() -> None:
    """Ten stitches of which one differs agree in nine."""
    found = likeness(faces("kkkkkkkkkp"), faces("k"), PLAIN)
    assert found is not None
    assert found.share == Fraction(9, 10)


def test_textures_with_a_very_large_common_repeat_are_not_compared() -> None:
    """Seven and eleven rows come together after seventy-seven."""
    assert likeness(faces("k", *["p"] * 6), faces("k", *["p"] * 10), PLAIN) is None


def test_textures_of_sizes_that_share_nothing_agree_as_their_colours_do() -> None:
    """Over 3 rows and 2 rows every row meets every row: of the rows of the first two in three are knit."""
    three, two = faces("k", "k", "p"), faces("k", "p")
    found = likeness(three, two, PLAIN)
    assert found is not None
    assert (reach(three, size_of(two)), found.share) == (Fraction(2, 3), Fraction(1, 2))


def test_a_few_stitches_agree_by_chance() -> None:
    """One stitch of 35 that differs tells nothing, one of 36 does; what agrees in all is close however small it is."""
    plain = faces("k")
    for stitches in (LEAST_TOLD - 1, LEAST_TOLD):
        found = likeness(faces("k" * (stitches - 1) + "p"), plain, PLAIN)
        assert found is not None
        assert found.share >= CLOSE and found.is_close == (stitches == LEAST_TOLD)
    same = likeness(faces("kp"), faces("pk"), PLAIN)
    assert same is not None
    assert same.is_close


def test_a_label_without_a_counterpart_is_not_turned_over() -> None:
    """Where nobody knows what a stitch looks like from behind, the texture is laid with its face up alone."""
    one_sided = Signs({}, PLAIN.mirrored, PLAIN.upside_down)
    moves = [move for move, _ in arrangements(faces("kkp", "kpp"), one_sided)]
    assert moves and not any(move.behind for move in moves)
    found = likeness(faces("k"), faces("p"), one_sided)
    assert found is not None
    assert found.matching == 0

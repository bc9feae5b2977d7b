"""Textures counted up to shifts and moves, against published sequences and worked vectors G and I.

Binary toroidal necklaces: OEIS A184271; with reflections of rows and columns: OEIS A222188; one row alone is OEIS
A000031 and A000029 (the values of these two from memory). The counts of physical textures and vectors G07 to G13 were
computed by an independent script (common practice, no source).
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from math import gcd, lcm

import pytest

from counterpane.craft.texture import BY_HAND, MOVES, PLAIN, Cell, Move, canonical, images, lattice, moved

from ..craft.texture.cells import every, faces, repeated

NAMED = {move.name: move for move in MOVES}
WITHOUT_BACKS = tuple(move for move in MOVES if not move.behind)


def classes(rows: int, stitches: int, moves: tuple[Move, ...] = ()) -> int:
    """Return how many textures there are of a size, up to shifts and moves, by making all of them."""
    return len({canonical(images(cell, PLAIN, moves) if moves else (cell,)) for cell in every(rows, stitches)})


def totient(number: int) -> int:
    """Return how many numbers from 1 on up to a number share no factor with it."""
    return sum(gcd(number, each) == 1 for each in range(1, number + 1))


def closed_form(rows: int, stitches: int) -> Fraction:
    """Return the number of binary toroidal necklaces by Burnside's lemma over the shifts."""
    terms = (
        totient(up) * totient(along) * 2 ** (rows * stitches // lcm(up, along))
        for up in range(1, rows + 1)
        for along in range(1, stitches + 1)
        if rows % up == 0 and stitches % along == 0
    )
    return Fraction(sum(terms), rows * stitches)


@pytest.mark.parametrize(("rows", "stitches", "number"), [(1, 1, 2), (2, 2, 7), (3, 3, 64), (2, 3, 14), (2, 4, 40)])
def test_g01_and_g02_textures_up_to_shifts_are_binary_toroidal_necklaces(rows: int, stitches: int, number: int) -> None:
    """OEIS A184271, by making every cell and by Burnside's lemma."""
    assert classes(rows, stitches) == number
    assert closed_form(rows, stitches) == number


@pytest.mark.parametrize(("stitches", "number"), [(1, 6), (2, 40), (3, 352)])
def test_textures_of_four_rows_are_the_fourth_row_of_the_table(stitches: int, number: int) -> None:
    """OEIS A184271, row 4: 6, 40, 352; 4 x 4 stands below."""
    assert classes(4, stitches) == number
    assert closed_form(4, stitches) == number


@cache
def of_four_by_four() -> frozenset[Cell]:
    """Return the canonical forms of all textures of four rows and four stitches, up to shifts."""
    return frozenset(canonical((cell,)) for cell in every(4, 4))


def test_g01_there_are_4156_textures_of_four_by_four() -> None:
    """OEIS A184271, row 4; the closed form goes on to 52488 for 4 x 5."""
    assert len(of_four_by_four()) == closed_form(4, 4) == 4156
    assert closed_form(4, 5) == 52488


def test_g02_two_rows_go_on_by_the_closed_form() -> None:
    """OEIS A184271, row 2: 3, 7, 14, 40, 108, 362."""
    assert [closed_form(2, stitches) for stitches in range(1, 7)] == [3, 7, 14, 40, 108, 362]


@pytest.mark.parametrize(("stitches", "necklaces", "bracelets"), [(6, 14, 13), (7, 20, 18), (8, 36, 30)])
def test_one_row_alone_is_a_necklace(stitches: int, necklaces: int, bracelets: int) -> None:
    """OEIS A000031, and A000029 with the mirror image."""
    assert classes(1, stitches) == necklaces
    assert classes(1, stitches, WITHOUT_BACKS) == bracelets


@pytest.mark.parametrize(("size", "number"), [(1, 2), (2, 7), (3, 36)])
def test_g05_textures_up_to_mirrors_and_the_half_turn(size: int, number: int) -> None:
    """OEIS A222188, diagonal: 2, 7, 36; 4 x 4 stands below."""
    assert classes(size, size, WITHOUT_BACKS) == number


@pytest.mark.parametrize(("moves", "number"), [(WITHOUT_BACKS, 1459), (BY_HAND, 1203), (MOVES, 787)])
def test_g03_to_g05_four_by_four_up_to_moves(moves: tuple[Move, ...], number: int) -> None:
    """OEIS A222188 has 1459; the other two are those of the piece turned over, and of all eight moves."""
    assert len({canonical(images(cell, PLAIN, moves)) for cell in of_four_by_four()}) == number


@pytest.mark.parametrize(("moves", "numbers"), [(BY_HAND, (1, 5, 24)), (MOVES, (1, 5, 18))])
def test_g03_and_g04_textures_up_to_what_can_be_done_with_a_piece(
    moves: tuple[Move, ...], numbers: tuple[int, ...]
) -> None:
    """Turned over and about they are 1, 5 and 24; with mirror images 1, 5 and 18."""
    assert tuple(classes(size, size, moves) for size in (1, 2, 3)) == numbers


def test_166_of_them_are_the_same_on_both_sides_and_822_hold_as_many_knits_as_purls() -> None:
    """Turned over a side or the top edge they are the same up to a shift."""
    turned = [NAMED["turned over a side edge"], NAMED["turned over the top edge"]]
    same = [cell for cell in of_four_by_four() if any(is_fixed(cell, move) for move in turned)]
    even = [cell for cell in of_four_by_four() if sum(row.count("k") for row in cell) == 8]
    assert (len(same), len(even)) == (166, 822)


def is_fixed(cell: Cell, move: Move) -> bool:
    """Say whether a texture is the same after a move, up to a shift."""
    image = moved(cell, move, PLAIN)
    return image is not None and canonical((image,)) == canonical((cell,))


SEED = repeated(faces("kp", "pk"), 4, 4)
DIAGONAL = faces("kkpp", "kppk", "ppkk", "pkkp")
RIB = repeated(faces("kkpp"), 4, 8)
DOUBLE_MOSS = repeated(faces("kp", "kp", "pk", "pk"), 4, 4)


@pytest.mark.parametrize(
    ("cell", "skew", "straight"),
    [
        (SEED, (1, 1, 2), (2, 2)),
        (DIAGONAL, (1, 1, 4), (4, 4)),
        (RIB, (1, 0, 4), (1, 4)),
        (DOUBLE_MOSS, (2, 1, 2), (4, 2)),
    ],
    ids=["seed", "diagonal", "2x2 rib", "moss (US), double moss (UK)"],
)
def test_g07_to_g10_and_g13_the_smallest_cells(
    cell: Cell, skew: tuple[int, int, int], straight: tuple[int, int]
) -> None:
    """Rows, shift and stitches of the skew cell, then rows and stitches of the upright one."""
    found = lattice(cell)
    assert found.straight == straight
    assert found.area == skew[0] * skew[2]
    assert (found.rows, found.stitches) == (skew[0], skew[2])
    assert found.shift in (skew[1], -skew[1] % skew[2])  # Which way is "along" is each one's own choice.


def test_g11_a_diagonal_is_its_neighbour_s_mirror_image_and_no_shift_of_it() -> None:
    """Slanting to the left it equals the right one mirrored, and never shifted."""
    other = DIAGONAL[::-1]
    mirrored = moved(DIAGONAL, NAMED["mirrored left to right"], PLAIN)
    assert mirrored is not None
    assert canonical((other,)) != canonical((DIAGONAL,))
    assert canonical((other,)) == canonical((mirrored,))


def test_g12_seen_from_the_back_a_diagonal_slants_the_other_way() -> None:
    """Not reversible in the strict sense, but up to a mirror image."""
    back = moved(DIAGONAL, NAMED["turned over a side edge"], PLAIN)
    mirrored = moved(DIAGONAL, NAMED["mirrored left to right"], PLAIN)
    assert back is not None
    assert mirrored is not None
    assert canonical((back,)) == canonical((mirrored,)) != canonical((DIAGONAL,))

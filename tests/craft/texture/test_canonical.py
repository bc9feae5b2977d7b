"""The canonical form and the lattice of a cell, by a second road that tries everything."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.texture import PLAIN, Cell, canonical, images, lattice, straight

from .cells import KNIT_AND_PURL, faces, repeated, shifted


def every_shift(cell: Cell) -> list[Cell]:
    """Return the cell begun at each of its stitches."""
    return [shifted(cell, up, along) for up in range(len(cell)) for along in range(len(cell[0]))]


@given(KNIT_AND_PURL)
def test_the_canonical_form_is_the_least_of_all_shifts(cell: Cell) -> None:
    """Trying each shift gives the same cell as turning the rows about cleverly."""
    assert canonical((cell,)) == min(every_shift(cell))


@given(KNIT_AND_PURL)
def test_the_canonical_form_of_all_moves_is_the_least_of_all_their_shifts(cell: Cell) -> None:
    """Every image begun at each of its stitches is tried."""
    assert canonical(images(cell, PLAIN)) == min(each for image in images(cell, PLAIN) for each in every_shift(image))


@given(KNIT_AND_PURL, st.integers(0, 4), st.integers(0, 4), st.integers(0, 7))
def test_a_shifted_or_moved_texture_has_the_same_canonical_form(cell: Cell, up: int, along: int, move: int) -> None:
    """Wherever it begins, and from whichever side it is looked at."""
    image = list(images(cell, PLAIN))[move]
    again = shifted(image, up % len(cell), along % len(cell[0]))
    assert canonical(images(again, PLAIN)) == canonical(images(cell, PLAIN))


def test_labels_may_be_any_words() -> None:
    """They are compared as text, and come back whole."""
    assert canonical(((("yo", "k2tog"), ("k", "k")),)) == (("k", "k"), ("k2tog", "yo"))


@given(KNIT_AND_PURL)
def test_the_lattice_holds_just_the_shifts_that_fix_the_texture(cell: Cell) -> None:
    """A shift up and along fixes it where the Hermite form says so, and nowhere else."""
    found, (rows, stitches) = lattice(cell), (len(cell), len(cell[0]))
    for up in range(rows):
        for along in range(stitches):
            times, over = divmod(up, found.rows)
            told = over == 0 and (along - times * found.shift) % found.stitches == 0
            assert told == (shifted(cell, up, along) == cell)
    assert rows * stitches % found.area == 0


@given(KNIT_AND_PURL, st.integers(1, 3), st.integers(1, 3))
def test_the_straight_cell_does_not_depend_on_the_stated_size(cell: Cell, tall: int, wide: int) -> None:
    """A cell stated several times over has the same smallest upright cell, which gives it back when repeated."""
    larger = repeated(cell, len(cell) * tall, len(cell[0]) * wide)
    assert straight(larger) == straight(cell)
    assert repeated(straight(cell), len(cell), len(cell[0])) == cell
    assert (len(straight(cell)), len(straight(cell)[0])) == lattice(cell).straight


def test_a_skew_cell_is_smaller_than_the_upright_one() -> None:
    """Of a diagonal of two and two, four stitches make the whole texture, and its upright cell has sixteen."""
    diagonal = faces("kkpp", "kppk", "ppkk", "pkkp")
    assert lattice(diagonal).area == 4
    assert lattice(diagonal).straight == (4, 4)

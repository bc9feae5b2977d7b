"""The eight moves of a texture, as a group."""

from __future__ import annotations

from hypothesis import given

from counterpane.craft.texture import MOVES, PLAIN, Cell, Move, Signs, canonical, moved, symmetries

from .cells import KNIT_AND_PURL, faces


def after(cell: Cell, *moves: Move) -> Cell:
    """Return the cell after several moves, all of which can be made."""
    for move in moves:
        made = moved(cell, move, PLAIN)
        assert made is not None
        cell = made
    return cell


@given(KNIT_AND_PURL)
def test_each_move_made_twice_leaves_the_texture(cell: Cell) -> None:
    """All eight are their own way back."""
    assert all(after(cell, move, move) == cell for move in MOVES)


@given(KNIT_AND_PURL)
def test_two_moves_are_a_third_one(cell: Cell) -> None:
    """They make a group: whatever is done one after the other is one of the eight."""
    every = {after(cell, move) for move in MOVES}
    assert {after(cell, one, other) for one in MOVES for other in MOVES} == every


def test_the_back_of_a_row_is_read_from_its_other_edge() -> None:
    """Turned over a side edge, knit is purl and the right edge is the left one."""
    over_side = next(move for move in MOVES if move.name == "turned over a side edge")
    assert after(faces("kkp", "ppk"), over_side) == faces("kpp", "pkk")


def test_a_move_without_a_counterpart_cannot_be_made() -> None:
    """Yarn-overs and decreases are not upside down what they are upright."""
    signs = Signs({"yo": "yo", "k2tog": "p2tog"}, {"yo": "yo", "k2tog": "ssk"}, {})
    made = {move.name: moved((("yo", "k2tog"),), move, signs) for move in MOVES}
    assert made["turned over a side edge"] == (("p2tog", "yo"),)
    assert made["mirrored left to right"] == (("ssk", "yo"),)
    assert made["upside down"] is None


@given(KNIT_AND_PURL)
def test_a_symmetry_leaves_the_texture_the_same_up_to_a_shift(cell: Cell) -> None:
    """Just those moves are listed after which the canonical form is the same."""
    same = [move for move in MOVES[1:] if canonical((after(cell, move),)) == canonical((cell,))]
    assert list(symmetries(cell, PLAIN)) == same


def test_stocking_stitch_is_its_own_mirror_image_and_never_its_own_back() -> None:
    """Mirrors and the half turn leave it; whatever shows its back does not."""
    assert not any(move.behind for move in symmetries(faces("k"), PLAIN))
    assert len(symmetries(faces("k"), PLAIN)) == 3
    assert len(symmetries(faces("kp", "pk"), PLAIN)) == 7

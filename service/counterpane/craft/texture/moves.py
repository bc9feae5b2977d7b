"""What can be done with a knitted texture: turned over, turned about, or knitted as its mirror image."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from counterpane.craft.texture.canonical import canonical
from counterpane.craft.texture.torus import Cell


@dataclass(frozen=True, slots=True)
class Signs:
    """What each label becomes seen from behind, in a mirror, or upside down; one that is missing has no counterpart."""

    behind: Mapping[str, str]
    mirrored: Mapping[str, str]
    upside_down: Mapping[str, str]


PLAIN = Signs({"k": "p", "p": "k"}, {"k": "k", "p": "p"}, {"k": "k", "p": "p"})
"""Knit and purl faces: seen from behind each is the other, and a mirror or a half turn changes neither."""


@dataclass(frozen=True, slots=True)
class Move:
    """A move by name: whether it reverses the stitches of a row and the order of rows, and what it does to a label.

    A move that needs no mirror can be done with the knitted piece; the others are knitted as a mirror image.
    """

    name: str
    along: bool = False
    up: bool = False
    behind: bool = False
    mirrored: bool = False


AS_IT_IS = Move("as it is")
OVER_SIDE = Move("turned over a side edge", along=True, behind=True)
OVER_TOP = Move("turned over the top edge", up=True, behind=True)
UPSIDE_DOWN = Move("upside down", along=True, up=True)
MIRRORED = Move("mirrored left to right", along=True, mirrored=True)
MIRRORED_UP = Move("mirrored top to bottom", up=True, mirrored=True)
MIRRORED_BEHIND = Move("turned over and mirrored", behind=True, mirrored=True)
MIRRORED_TURNED = Move("turned over, mirrored and upside down", along=True, up=True, behind=True, mirrored=True)

BY_HAND = (AS_IT_IS, OVER_SIDE, OVER_TOP, UPSIDE_DOWN)
"""What can be done with the piece itself."""

MOVES = (*BY_HAND, MIRRORED, MIRRORED_UP, MIRRORED_BEHIND, MIRRORED_TURNED)


def moved(cell: Cell, move: Move, signs: Signs) -> Cell | None:
    """Return the cell after a move; None where a label has no counterpart.

    What reverses the order of rows stands each label on its head.
    """
    asked = ((move.behind, signs.behind), (move.mirrored, signs.mirrored), (move.up, signs.upside_down))
    maps = [signs_of for is_asked, signs_of in asked if is_asked]
    rows = cell[::-1] if move.up else cell
    try:
        return tuple(tuple(_through(label, maps) for label in (row[::-1] if move.along else row)) for row in rows)
    except KeyError:
        return None


def images(cell: Cell, signs: Signs, moves: Iterable[Move] = MOVES) -> Iterator[Cell]:
    """Give the cell after each of the moves that can be made."""
    return (image for move in moves if (image := moved(cell, move, signs)) is not None)


def symmetries(cell: Cell, signs: Signs) -> tuple[Move, ...]:
    """Return the moves, other than leaving it, after which the texture is the same up to a shift."""
    least = canonical((cell,))
    return tuple(move for move in MOVES[1:] if any(canonical((one,)) == least for one in images(cell, signs, (move,))))


def _through(label: str, maps: Iterable[Mapping[str, str]]) -> str:
    for each in maps:
        label = each[label]
    return label

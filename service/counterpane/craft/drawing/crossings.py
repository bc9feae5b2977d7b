"""Stitches that change places: how many lie in front and behind, and from where each of them comes."""

from __future__ import annotations

import re
from dataclasses import dataclass

from counterpane.craft.stitches import Stitch

_PAIR = re.compile(r"(?P<front>\d+)/\d+")
"""The numbers in the name of a crossing begin with the stitches in front (as the vocabulary has them)."""


@dataclass(frozen=True, slots=True)
class Crossing:
    """How many stitches lie in front, how many behind, and whether the front ones lean to the left."""

    front: int
    behind: int
    leans_left: bool
    purled: bool = False

    @property
    def stitches(self) -> int:
        """All stitches of the crossing."""
        return self.front + self.behind

    def comes_from(self, place: int) -> tuple[int, bool]:
        """Return the place below of the stitch that ends in this one, and whether it lies in front.

        Places count from the right edge of the crossing, as the right side shows it.
        """
        first = self.behind if self.leans_left else self.front
        below = place - first if place >= first else place + self.stitches - first
        return below, (place >= first) == self.leans_left


def crossing_of(stitch: Stitch) -> Crossing | None:
    """Return what a stitch of the vocabulary crosses; None for one that crosses nothing."""
    if not stitch.uses == stitch.makes > 1 or stitch.lean not in ("left", "right"):
        return None
    pair = _PAIR.match(stitch.key)
    front = int(pair["front"]) if pair else -(-stitch.uses // 2)
    return Crossing(front, stitch.uses - front, stitch.lean == "left", stitch.face is None)

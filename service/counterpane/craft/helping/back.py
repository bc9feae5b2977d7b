"""Ways back from the row on the needle to one further down, with the stitches that each takes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.helping import WorkedRow
from counterpane.craft.helping.rows import PLAIN, stitches_in
from counterpane.craft.rows.tree import Node
from counterpane.craft.yarn.pace import PRACTISED, hours_at

MOST_UNDONE = 2
"""Rows up to which one goes back stitch by stitch rather than take the needle out; house."""

_MINUTES = 60  # Of an hour, by definition.


@dataclass(frozen=True, slots=True)
class WayBack:
    """How to get back to before a row.

    `undone` are the stitches taken back one by one, which takes about as long as to knit them; `again` those to knit
    anew up to where the piece is. `onto` is the row on whose stitches the needle goes where it is taken out, None where
    it is not. `ladder` says that one stitch alone can be let down and hooked up, since all above it is plain.
    """

    undone: int
    again: int
    onto: int | None
    ladder: bool

    @property
    def minutes(self) -> tuple[int, int]:
        """Minutes at the quicker and at the slower pace of practised knitters, rounded up to whole ones."""
        quick, slow = (_up(hours_at(self.undone + self.again, pace) * _MINUTES) for pace in reversed(PRACTISED))
        return quick, slow


def way_back(rows: Sequence[WorkedRow], to: int) -> WayBack:
    """Return the way from the end of the rows to before the row of this number, which is one of them."""
    above = [row for row in rows if row.number >= to]
    again = sum(row.after for row in above)
    ladder = len(above) > 1 and all(_is_closed(row.row.parts) for row in above[1:])
    if len(above) <= MOST_UNDONE:
        return WayBack(again, again, None, ladder)
    safe = next((row for row in reversed(rows) if row.number < to and _all_plain(row.row.parts)), None)
    below = [row for row in rows if safe is not None and safe.number < row.number < to]
    return WayBack(0, again + sum(row.after for row in below), safe.number if safe else to - 1, ladder)


def _is_closed(parts: Sequence[Node]) -> bool:
    """Say whether a stitch can be let down through a row: nothing in it opens, leans, slips or crosses."""
    return all(key in PLAIN for key in stitches_in(parts))


def _all_plain(parts: Sequence[Node]) -> bool:
    """Say whether a row works every stitch alike, so that its loops are easily caught on a needle."""
    return len(stitches_in(parts)) == 1 and stitches_in(parts) <= PLAIN


def _up(minutes: Fraction) -> int:
    return -int(-minutes // 1)

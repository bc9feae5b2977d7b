"""Ways back from the row on the needle to one further down, with the stitches that each takes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.helping import WorkedRow
from counterpane.craft.helping.rows import PLAIN, stitches_in
from counterpane.craft.rows.tree import Node
from counterpane.craft.yarn.pace import MINUTES, worked_hours

MOST_UNDONE = 2
"""Rows up to which one goes back stitch by stitch rather than take the needle out; house."""


@dataclass(frozen=True, slots=True)
class WayBack:
    """How to get back to before a row.

    `undone` are the stitches taken back one by one, which takes about as long as to knit them; `again` those to knit
    anew up to where the piece is. `onto` is the row on whose stitches the needle goes where it is taken out, None where
    it is not. `ladder` says that one stitch alone can be let down and hooked up, since all above it is plain. Of all
    stitches of the way `slower` are of lace or cables; `turns` are the ends of rows that are passed.
    """

    undone: int
    again: int
    onto: int | None
    ladder: bool
    slower: int
    turns: int

    def minutes(self, pace: Fraction | None = None) -> tuple[int, int]:
        """Return the minutes at the quicker and at the slower end of the pace of a plan, rounded up to whole ones.

        `pace` is one's own in plain knitting, None that of practised knitters.
        """
        plain = self.undone + self.again - self.slower
        quick, slow = (_up(hours * MINUTES) for hours in worked_hours(plain, self.slower, self.turns, pace))
        return quick, slow


def way_back(rows: Sequence[WorkedRow], to: int) -> WayBack:
    """Return the way from the end of the rows to before the row of this number, which is one of them."""
    above = [row for row in rows if row.number >= to]
    again = sum(row.after for row in above)
    ladder = len(above) > 1 and all(_is_closed(row.row.parts) for row in above[1:])
    if len(above) <= MOST_UNDONE:
        return WayBack(again, again, None, ladder, 2 * _slower(above), 2 * len(above))
    safe = next((row for row in reversed(rows) if row.number < to and _all_plain(row.row.parts)), None)
    below = [row for row in rows if safe is not None and safe.number < row.number < to]
    over = [*below, *above]
    onto = safe.number if safe else to - 1
    return WayBack(0, sum(row.after for row in over), onto, ladder, _slower(over), len(over))


def _slower(rows: Sequence[WorkedRow]) -> int:
    return sum(row.after for row in rows if row.slower)


def _is_closed(parts: Sequence[Node]) -> bool:
    """Say whether a stitch can be let down through a row: nothing in it opens, leans, slips or crosses."""
    return all(key in PLAIN for key in stitches_in(parts))


def _all_plain(parts: Sequence[Node]) -> bool:
    """Say whether a row works every stitch alike, so that its loops are easily caught on a needle."""
    return len(stitches_in(parts)) == 1 and stitches_in(parts) <= PLAIN


def _up(minutes: Fraction) -> int:
    return -int(-minutes // 1)

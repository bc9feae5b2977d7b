"""Help in the middle of a piece: what should be on the needle after a row, where a count went wrong, the way back.

Which slip is likelier than another is common practice, no source. That a slip in a row leads to the count that is told
is not: the rows after it are worked on from the count that it leaves.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from counterpane.craft.rows.tree import Row

Kind = Literal[
    "left-out",
    "increase-worked-plain",
    "decrease-missed",
    "pass-over-missed",
    "cast-on-miscounted",
    "loop-made",
    "edge-stitch-doubled",
    "stitch-split",
    "stitch-dropped",
    "two-together",
]


@dataclass(frozen=True, slots=True)
class WorkedRow:
    """A row of the blanket: its number in it, its part, its number there, and the stitches before and after it.

    `slower` says that its part is lace or cables, which are knitted at a slower pace.
    """

    number: int
    part: str
    in_part: int
    row: Row
    before: int
    after: int
    slower: bool = False


@dataclass(frozen=True, slots=True)
class Slip:
    """What may go wrong in a row: `each` is the change of the count each time, `most` how often it may happen in it.

    `stitch` is the key of the stitch that it happens to, None where it may be any.
    """

    kind: Kind
    each: int
    most: int
    stitch: str | None = None


@dataclass(frozen=True, slots=True)
class Suspect:
    """A slip that leads to the count that was found: in one row, or in any of several.

    `times` is how often it happened. `shows_in` is the row that could then not be worked to its end as written, None
    where all rows since come out: such a slip goes unseen. `rows` are the first and the last row it may be in, 0 the
    cast-on.
    """

    slip: Slip
    times: int
    rows: tuple[int, int]
    shows_in: int | None = None


@dataclass(frozen=True, slots=True)
class Stretches:
    """What is on the needle from one edge on: stitches before the repeats of a row, in each of them, and after them."""

    before: int
    each: int
    times: int
    after: int

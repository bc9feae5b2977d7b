"""What differs between two writings of a pattern, line by line, and what to do for who is past the place.

A pattern is compared as data. Nobody types an erratum: a designer adds a note at most, and that lies elsewhere.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, TypeAlias

Sort: TypeAlias = Literal["caution", "cast-on", "order", "row", "repeat", "bind-off", "told"]
"""What a line is: read for safety, worked, or told beside the work, as materials, notes and checkpoints are."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where a line stands: the section, and the row or the name in it, "" where it needs none."""

    section: str
    row: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a pattern.

    `key` is the same for the same line of another writing. `first_row` is the row of its piece at which the line is
    first worked, 1 the first and 0 before it; None for what is not worked. `rows` are those it is worked over,
    `stitches` those it leaves, None where no count goes with it. `piece` is "" for the blanket, else the border that is
    picked up and has rows of its own.
    """

    key: str
    sort: Sort
    place: Place
    text: str
    first_row: int | None = None
    rows: int = 0
    stitches: int | None = None
    piece: str = ""


@dataclass(frozen=True, slots=True)
class Change:
    """One entry of an erratum; `old` None for a line that is added, `fresh` None for one that is left out.

    `past_row` is the last row before the texts part: who has worked more of the piece is past the place. None for what
    is not worked. `rip_back_to` is the row to go back to, `may_stay` says that the work may also be left as it is.
    """

    key: str
    sort: Sort
    place: Place
    old: str | None
    fresh: str | None
    old_stitches: int | None
    fresh_stitches: int | None
    piece: str
    past_row: int | None
    may_stay: bool
    advice: str
    sizes: tuple[str, ...] = ()

    @property
    def is_of_safety(self) -> bool:
        """Tell whether it changes what is read for safety."""
        return self.sort == "caution"

    @property
    def rip_back_to(self) -> int | None:
        """The row to which the work is undone; 0 is the cast-on."""
        return self.past_row


WORKED: tuple[Sort, ...] = ("cast-on", "order", "row", "repeat", "bind-off")
"""Lines that tell what to work; the others tell about it."""

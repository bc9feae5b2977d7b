"""Why no plan can be made: facts with their numbers, which the rules of the family fitting put into words."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from counterpane.craft.component import Kind
from counterpane.craft.counts import Progression
from counterpane.craft.rows.tree import Side


@dataclass(frozen=True, slots=True)
class WrongKind:
    """A component stands where its kind cannot be used."""

    pointer: str
    slug: str
    kind: Kind


@dataclass(frozen=True, slots=True)
class NeedsRows:
    """A border given in words does not say how many rows of it are worked."""

    pointer: str
    period: int


@dataclass(frozen=True, slots=True)
class NeedsStitches:
    """A side border or selvedge in words has no count of its own and none is given."""

    pointer: str
    admits: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class ValueRefused:
    """A number of rows or stitches that the part cannot take; `nearest` are some that it can."""

    pointer: str
    value: int
    nearest: tuple[int, ...]
    why: str


@dataclass(frozen=True, slots=True)
class NotTaken:
    """A part has a field that has no meaning where it stands."""

    pointer: str
    field: str
    place: str


@dataclass(frozen=True, slots=True)
class CastsOn:
    """The words of a part state a cast-on, for which a part has no room."""

    pointer: str


@dataclass(frozen=True, slots=True)
class NoCount:
    """The rows of a part work at no count, or cannot be read."""

    pointer: str


@dataclass(frozen=True, slots=True)
class CountChanges:
    """The rows of a part do not come back to the count they began with."""

    pointer: str
    by: int | None


@dataclass(frozen=True, slots=True)
class StopsMidRepeat:
    """A border stops after rows that leave another count than it began with; `nearest` are rows that do not."""

    pointer: str
    rows: int
    before: int
    after: int
    nearest: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class EdgeOutOfStep:
    """An edge has `more` stitches than its own, on both sides together, after so many rows of the part beside it.

    `edge` is its pointer; `rows` is 0 where the part begins so, since the edge begins on the other side. `nearest` are
    rows of the part after which the edge has its own count.
    """

    pointer: str
    edge: str
    rows: int
    more: int
    nearest: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class DoesNotJoin:
    """The rows of a part cannot stand beside other parts."""

    pointer: str
    why: str


@dataclass(frozen=True, slots=True)
class LeftDiffers:
    """The text of the left side does not go with the right one."""

    pointer: str
    why: str


@dataclass(frozen=True, slots=True)
class Demand:
    """What one part asks of the cast-on: the counts that suit it, its own stitches and those beside it."""

    pointer: str
    name: str
    classes: tuple[Progression, ...]


@dataclass(frozen=True, slots=True)
class NoCommonCount:
    """The parts cannot share a count."""

    demands: tuple[Demand, ...]
    target: Fraction


@dataclass(frozen=True, slots=True)
class RepeatsRunApart:
    """The row repeats of parts worked side by side come together only after too many rows."""

    pointer: str
    rows: int


@dataclass(frozen=True, slots=True)
class WidthOutOfReach:
    """No admissible count comes near the wanted width; `least_cm` is the width of the nearest one."""

    cast_on: int
    width_cm: Fraction
    wanted_cm: Fraction


@dataclass(frozen=True, slots=True)
class LengthOutOfReach:
    """The borders and the least body are longer than the piece is to be."""

    length_cm: Fraction
    wanted_cm: Fraction
    border_rows: int


@dataclass(frozen=True, slots=True)
class TooLarge:
    """The piece would have more stitches than are counted here."""

    stitches: int
    most: int


@dataclass(frozen=True, slots=True)
class WrongSide:
    """A part would begin on the other side than it must, after this many rows.

    `cause` is the pointer of the part whose number of rows decides, `rows` that number, `fixed` False where the rows
    are to be found and no number of repeats leads to the right side.
    """

    pointer: str
    side: Side
    rows_before: int
    cause: str
    rows: int
    fixed: bool = True


Obstacle: TypeAlias = (
    WrongKind
    | NeedsRows
    | NeedsStitches
    | ValueRefused
    | NotTaken
    | CastsOn
    | NoCount
    | CountChanges
    | StopsMidRepeat
    | EdgeOutOfStep
    | DoesNotJoin
    | LeftDiffers
    | NoCommonCount
    | RepeatsRunApart
    | WidthOutOfReach
    | LengthOutOfReach
    | TooLarge
    | WrongSide
)


class Stuck(Exception):
    """No plan can be made: the obstacles that were met."""

    def __init__(self, *obstacles: Obstacle) -> None:
        super().__init__(repr(obstacles))
        self.obstacles = obstacles

"""How ends are woven in by fibre. The ways are facts and are passed in; common practice, no source."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Weaving:
    """How the ends of one kind of fibre are woven in: so many ways, each so long in cm, least and most.

    `sorts` are the sorts of fibre it is for; `superwash` narrows it to wool that is treated (True) or not (False).
    """

    says: str
    sorts: tuple[str, ...]
    superwash: bool | None
    each_way_cm: tuple[Fraction, Fraction]
    ways: int


@dataclass(frozen=True, slots=True)
class Worn:
    """The sorts of fibre in one yarn, None where one of them is not known; `superwash` None where nobody tells."""

    sorts: tuple[str, ...] | None
    superwash: bool | None = None


def weaving_of(yarn: Worn, known: Sequence[Weaving]) -> Weaving | None:
    """Return the most careful way that any fibre of a yarn asks for; None where a fibre is not known.

    Wool of which nobody tells whether it is superwash is taken to be.
    """
    if not yarn.sorts:
        return None
    treated = yarn.superwash is not False
    asked = [each for each in known if set(each.sorts) & set(yarn.sorts) and each.superwash in (None, treated)]
    return max(asked, key=lambda each: each.ways, default=None)

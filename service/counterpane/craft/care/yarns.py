"""A yarn as its ball band tells of it: fibres in per cent, mass used, where it is used, and how it may be washed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from counterpane.craft.care.fibres import Fibre, Reading
from counterpane.craft.measures import WHOLE_PCT

LeftOut = Literal["decoration", "antistatic"]


@dataclass(frozen=True, slots=True)
class Share:
    """One fibre of a yarn: what its word means, per cent of the yarn's mass, and its state ("carded"), if told."""

    reading: Reading
    percent: Fraction
    state: str | None = None


@dataclass(frozen=True, slots=True)
class Yarn:
    """One yarn; None is not known.

    `grams` are those in the finished piece, as weighed; `estimate` is the least and most where they were not. `part`
    names where it is, None for the whole piece. `left_out` is why it is to be left out of the percentages. `care` holds
    the words of the ball band by group of care.
    """

    name: str
    fibres: tuple[Share, ...] | None = None
    grams: Fraction | None = None
    estimate: tuple[Fraction, Fraction] | None = None
    part: str | None = None
    left_out: LeftOut | None = None
    superwash: bool | None = None
    care: Mapping[str, str] = field(default_factory=dict)

    @property
    def mass(self) -> tuple[Fraction, Fraction] | None:
        """The least and most grams of it, None where not known."""
        return self.estimate if self.grams is None else (self.grams, self.grams)

    @property
    def total(self) -> Fraction | None:
        """The sum of the percentages, None where no fibre is told."""
        return None if self.fibres is None else sum((share.percent for share in self.fibres), Fraction(0))

    @property
    def is_read(self) -> bool:
        """Tell whether every fibre is known and the percentages are 100."""
        return self.total == WHOLE_PCT and all(share.reading.fibre for share in self.fibres or ())

    @property
    def named(self) -> tuple[Fibre, ...]:
        """The fibres that are known to be in it."""
        return tuple(share.reading.fibre for share in self.fibres or () if share.reading.fibre and share.percent)

    def has(self, *sorts: str) -> bool | None:
        """Tell whether a fibre of one of these sorts is in it; None where that is not known."""
        found = {fibre.sort for fibre in self.named}
        if found.intersection(sorts):
            return True
        return False if self.is_read else None

"""A yarn as far as it is known, and what was weighed of it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

WorkedIn = str
"""Where a yarn is used: "cast_on", "bottom", "body", "top" or "bind_off"."""

MARGIN = Fraction(1, 10)
"""Share that is bought beyond the likely amount where nobody says; house figure."""


@dataclass(frozen=True, slots=True)
class Fibre:
    """One fibre of a yarn by its name, with its share of the mass in percent, None where that is not known."""

    name: str
    percent: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Weighed:
    """A swatch or an earlier piece that was weighed.

    `stitches` by `rows` are all its stitches; a piece of another shape has its whole count as `stitches` and 1 row.
    `texture` is the slug of what it was knitted in, None for the body of the plan. `scale_g` is the smallest step of
    the scales. `edges` says that cast-on and bind-off are part of the mass, as in a swatch that was not unravelled.
    """

    mass_g: Fraction
    stitches: int
    rows: int = 1
    texture: str | None = None
    scale_g: Fraction = Fraction(1)
    edges: bool = True


@dataclass(frozen=True, slots=True)
class Yarn:
    """A yarn, as far as it is known.

    `tex` is of one strand, `strands` how many are held together. `ball_g` and `ball_m` are what one ball holds. `parts`
    are those it works, empty for all that no other yarn works; `rows` those rows of every `every` rows of these parts,
    from 1 in each part, empty for all. `margin` is the share that is bought beyond the likely amount.
    """

    name: str | None = None
    weight: str | None = None
    colour: str | None = None
    fibre: tuple[Fibre, ...] = ()
    tex: Fraction | None = None
    ball_g: Fraction | None = None
    ball_m: Fraction | None = None
    strands: int = 1
    parts: tuple[WorkedIn, ...] = ()
    rows: tuple[int, ...] = ()
    every: int = 1
    margin: Fraction = MARGIN
    swatch: Weighed | None = None
    earlier: Weighed | None = None

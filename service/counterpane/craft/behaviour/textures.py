"""How a texture behaves by itself: whether it lies flat, rolls, draws in or shortens, how wide and how elastic it is.

The verdicts are those of a house model of faces; the figures are of the trade. Both are told before a swatch is knitted
and neither replaces one.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from counterpane.craft.behaviour import figures
from counterpane.craft.behaviour.faces import KEPT, Repeat, repeat_of
from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.component import Component
from counterpane.craft.stitches import Vocabulary

Lies = Literal["curls", "edges may roll", "flat", "draws in", "shortens", "not known"]
Roll = Literal["to the back", "to the front"]

ROLLS = Fraction(1, 3)
"""Surplus of one face over the other from which a fabric rolls at its edges; house figure."""

FLAT_ACROSS, FLAT_UPRIGHT = 6, 8
"""Stitches and rows of one face side by side up to which a fabric of as many knit as purl lies flat; house figures."""


@dataclass(frozen=True, slots=True)
class Curl:
    """Which way the edges of a fabric roll, and the border that tames them where it is one that lies flat itself.

    The side edges roll one way and both ends the other way.
    """

    sides: Roll
    ends: Roll
    side_border: Figure
    end_border: Figure


@dataclass(frozen=True, slots=True)
class Behaviour:
    """What a texture does by itself; None where it is not known.

    `width` is against stocking stitch over the same stitches on the same needle, `shape` the rows to the width of a
    stitch, `stretch` how far it goes in width against its width at rest.
    """

    lies: Lies
    surplus: Fraction | None
    curl: Curl | None
    width: Figure | None
    shape: Figure | None
    stretch: Figure | None


UNKNOWN = Behaviour("not known", None, None, None, None, None)
"""A texture of which nothing can be told."""


@lru_cache(maxsize=KEPT)
def behaviour_of(component: Component, vocabulary: Vocabulary) -> Behaviour:
    """Return how a component behaves as a fabric; nothing is known of one without rows that make a repeat."""
    repeat = repeat_of(component, vocabulary)
    return UNKNOWN if repeat is None else of_repeat(repeat)


def of_repeat(repeat: Repeat) -> Behaviour:
    """Return how a texture behaves that repeats these faces."""
    if not repeat.simple:
        return Behaviour("not known", None, None, _crossed_width(repeat), None, None)
    lies = lies_of(repeat)
    curl = _curl(repeat) if lies == "curls" else None
    return Behaviour(lies, repeat.surplus, curl, _width(repeat), _shape(repeat), _stretch(repeat))


def lies_of(repeat: Repeat) -> Lies:
    """Judge a plain repeat by its surplus of one face and by the longest runs of one face; house model."""
    if repeat.surplus >= ROLLS:
        return "curls"
    across, upright = repeat.across, repeat.upright
    short, low = across is not None and across <= FLAT_ACROSS, upright is not None and upright <= FLAT_UPRIGHT
    if repeat.surplus:
        return "edges may roll"
    if short and low:
        return "flat"
    if short and upright is None:
        return "draws in"
    return "shortens" if low and across is None else "edges may roll"


def _curl(repeat: Repeat) -> Curl:
    """Return the roll of a fabric: its sides go to the side of the fewer faces. Textbooks, from memory."""
    plain = repeat.surplus == 1
    side = figures.SIDE_BORDER_PLAIN if plain else figures.SIDE_BORDER_OTHER
    end = figures.END_BORDER_PLAIN if plain else figures.END_BORDER_OTHER
    if repeat.knit > Fraction(1, 2):
        return Curl("to the back", "to the front", side, end)
    return Curl("to the front", "to the back", side, end)


def _width(repeat: Repeat) -> Figure | None:
    if repeat.surplus == 1:
        return figures.STOCKING_ITSELF
    if is_garter(repeat):
        return figures.WIDTH_GARTER
    ribs = repeat.ribs
    if ribs is None:
        return None
    known = {1: figures.WIDTH_RIB_1X1, 2: figures.WIDTH_RIB_2X2}
    return known.get(ribs[0], figures.WIDTH_RIB_OTHER) if len(set(ribs)) == 1 else figures.WIDTH_RIB_OTHER


def _crossed_width(repeat: Repeat) -> Figure | None:
    """Return the width that is left by crossed stitches, None where there are none."""
    if not repeat.crossed:
        return None
    share, drawn = Fraction(repeat.crossed, repeat.wide), figures.CABLE_SHARE
    low, high = (1 - share * (end or 0) for end in (drawn.high, drawn.low))
    return Figure(low, high, figures.OF_STOCKING, drawn.basis, drawn.source)


def _shape(repeat: Repeat) -> Figure | None:
    if repeat.surplus == 1 or repeat.ribs is not None:
        return figures.SHAPE_STOCKING if repeat.surplus == 1 else None
    if is_garter(repeat):
        return figures.SHAPE_GARTER
    return figures.SHAPE_SEED if repeat.across == repeat.upright == 1 else None


def _stretch(repeat: Repeat) -> Figure | None:
    return figures.STRETCH_RIB_2X2 if repeat.ribs is not None and set(repeat.ribs) == {2} else None


def is_garter(repeat: Repeat) -> bool:
    """Say whether whole rows of knit and of purl faces follow one another one by one."""
    return repeat.simple and repeat.across is None and repeat.upright == 1

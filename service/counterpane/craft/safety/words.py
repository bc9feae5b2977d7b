"""The words of safety: ages, uses, markets, and the kinds of attachments that the rules can tell apart."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from counterpane.craft.measures import half_up

AgeBand = Literal["preterm", "0-3m", "3-12m", "12-24m", "24-36m", "36m+"]
Use = Literal["sleep", "pram", "car-seat", "floor", "lap", "display", "hospital"]
Market = Literal["US", "CA", "UK", "EU", "NL", "AU", "NZ", "CN", "JP"]
Feature = Literal["sleeves", "neck-hole", "hood", "zip", "sack", "head", "rattle", "teether"]
LabelField = Literal[
    "fibre", "maker", "batch", "origin", "tracking", "certificate", "bilingual", "care", "infant-class"
]
Basis = Literal["published", "borrowed", "house", "memory"]

AGE_BANDS: tuple[AgeBand, ...] = ("preterm", "0-3m", "3-12m", "12-24m", "24-36m", "36m+")
USES: tuple[Use, ...] = ("sleep", "pram", "car-seat", "floor", "lap", "display", "hospital")
MARKETS: tuple[Market, ...] = ("US", "CA", "UK", "EU", "NL", "AU", "NZ", "CN", "JP")
FEATURES: tuple[Feature, ...] = ("sleeves", "neck-hole", "hood", "zip", "sack", "head", "rattle", "teether")
LABEL_FIELDS: tuple[LabelField, ...] = (
    *("fibre", "maker", "batch", "origin", "tracking", "certificate", "bilingual", "care", "infant-class"),
)

FIRST_MONTH: Mapping[AgeBand, int] = {"0-3m": 0, "3-12m": 3, "12-24m": 12, "24-36m": 24, "36m+": 36}
"""The corrected age in months at which a band begins; months do not tell a preterm baby. By definition of the bands."""

CORDS = frozenset({"bow", "cord", "drawstring", "elastic", "icord", "ribbon", "strap", "string", "tape", "tie"})
"""Attachments that are cords, in the form that `kind_of` gives; a ribbon counts by its width."""

RIBBONS = frozenset({"bow", "ribbon", "strap", "tape"})
"""Flat cords, which have a width and no thickness."""

HARD = frozenset({"bead", "bell", "button", "charm", "eye", "popper", "snap", "toggle"})
"""Attachments that are hard parts."""

KNOWN_KINDS = (
    CORDS
    | HARD
    | frozenset({"applique", "fringe", "label", "loop", "patch", "pompom", "rattle", "tassel", "teether"})
    | frozenset({"hood", "tuft", "tuftball", "zip"})
)
"""Attachments that the rules can tell apart, in the form that `kind_of` gives."""


def kind_of(text: str) -> str:
    """Return the kind of an attachment in letters alone and in the singular: "Pom-poms" gives "pompom"."""
    letters = "".join(letter for letter in text.casefold() if letter.isalpha())
    return letters.removesuffix("s")


def band_of(youngest: Fraction) -> AgeBand:
    """Return the strictest band that an age range touches, from its youngest age in months; from 0."""
    return next(band for band, first in reversed(tuple(FIRST_MONTH.items())) if youngest >= first)


def in_figures(value: Fraction) -> str:
    """Write a number in full where its decimals end within three places, else half up to 0.1."""
    exact = half_up(value, Fraction(1, 1000))
    rounded = exact if exact == value else half_up(value, Fraction(1, 10))
    return f"{(Decimal(rounded.numerator) / Decimal(rounded.denominator)).normalize():f}"

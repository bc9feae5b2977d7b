"""What is known of a piece and of the child it is for, and what a safety rule says of it.

Every input may be not known (None), which is never the same as none or zero. Reading inputs from JSON is not done here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from counterpane.craft.findings import Finding, Rule, Severity
from counterpane.craft.measures import half_up

AgeBand = Literal["preterm", "0-3m", "3-12m", "12-24m", "24-36m", "36m+"]
Use = Literal["sleep", "pram", "car-seat", "floor", "lap", "display", "hospital"]
Market = Literal["US", "CA", "UK", "EU", "NL", "AU", "NZ", "CN", "JP"]
Basis = Literal["published", "borrowed", "house", "memory"]

AGE_BANDS: tuple[AgeBand, ...] = ("preterm", "0-3m", "3-12m", "12-24m", "24-36m", "36m+")
USES: tuple[Use, ...] = ("sleep", "pram", "car-seat", "floor", "lap", "display", "hospital")
MARKETS: tuple[Market, ...] = ("US", "CA", "UK", "EU", "NL", "AU", "NZ", "CN", "JP")

FIRST_MONTH: Mapping[AgeBand, int] = {"0-3m": 0, "3-12m": 3, "12-24m": 12, "24-36m": 24, "36m+": 36}
"""The corrected age in months at which a band begins; months do not tell a preterm baby."""

Scope = Literal["under 12 months", "12 to 36 months", "under 36 months", "preterm", "use pram", "use car-seat"]

FINGERTIP_MM = Fraction(5)
"""Below it a rigid hole takes no finger: CEN/TR 13387:2004, quoted by ANEC's finger entrapment report, 2012, p. 12."""

ENTRAPMENT_MM = Fraction(7)
"""From it a flexible mesh can trap a finger: the same report."""

RIGID_CLEAR_MM = Fraction(12)
"""Above it the same report counts a framed opening as clear; knitted fabric gives, so it clears nothing here."""

LOOSE_NOTICE_MM = Fraction(10)
"""A loose strand or end longer than this is named: house, about the depth of a fingertip joint."""

LOOSE_MOST_MM = Fraction(25)
"""The longest loose thread in an Australian retailer's standard for nursery goods, second-hand (garmentstech.com)."""

COARSE_STS_10CM = Fraction(12)
"""House: at this gauge and coarser, half a plain loop drawn round a rod passes 5 mm."""

KNOWN_KINDS = frozenset(
    {"applique", "bead", "bell", "bow", "button", "charm", "cord", "eye", "fringe", "label", "loop", "patch", "pompom"}
    | {"popper", "ribbon", "snap", "tassel", "tie", "toggle", "tuft", "tuftball", "zip"}
)
"""Attachments that the rules can tell apart, in the form that `kind_of` gives."""


@dataclass(frozen=True, slots=True)
class Attachment:
    """Something fixed to the blanket: millimetres, newtons and newton metres, None where not known."""

    kind: str
    largest_mm: Fraction | None = None
    pull_n: Fraction | None = None
    torque_nm: Fraction | None = None
    metal: bool | None = None


@dataclass(frozen=True, slots=True)
class Fibre:
    """One fibre of the yarn, its share in per cent and its mean diameter in micrometres."""

    name: str
    pct: Fraction | None = None
    micron: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Wash:
    """How the finished piece may be washed; degrees Celsius."""

    method: str | None = None
    temp_c: Fraction | None = None


@dataclass(frozen=True, slots=True)
class SafetyInputs:
    """Everything that safety rules look at; None is not known.

    `age_band` is by corrected age. `hole_mm` is the largest opening of the washed piece, stretched; all other
    millimetres are the largest found too. `openwork` says that openings are made on purpose; `gaps` that there are
    turning or picking-up gaps or loops at an edge. `estimated` names inputs that were worked out and not measured.
    """

    age_band: AgeBand | None = None
    use: Use | None = None
    markets: tuple[Market, ...] | None = None
    advice: tuple[Market, ...] | None = None
    hole_mm: Fraction | None = None
    float_mm: Fraction | None = None
    tail_mm: Fraction | None = None
    loop_mm: Fraction | None = None
    loop_perimeter_mm: Fraction | None = None
    cord_free_mm: Fraction | None = None
    cord_thick_mm: Fraction | None = None
    ribbon_width_mm: Fraction | None = None
    attachments: tuple[Attachment, ...] | None = None
    fibres: tuple[Fibre, ...] | None = None
    halo: bool | None = None
    raised_surface: bool | None = None
    superwash: bool | None = None
    wash: Wash | None = None
    mass_g: Fraction | None = None
    width_cm: Fraction | None = None
    length_cm: Fraction | None = None
    layers: int | None = None
    filled: bool | None = None
    weighted: bool | None = None
    enclosed_part: bool | None = None
    openwork: bool | None = None
    gaps: bool | None = None
    gauge_sts_10cm: Fraction | None = None
    estimated: tuple[str, ...] = ()

    @property
    def followed(self) -> tuple[Market, ...] | None:
        """Return whose sleep advice is followed: `advice`, else the markets; None where neither is known."""
        return self.advice if self.advice is not None else self.markets

    def knows(self, need: str) -> bool:
        """Tell whether an input is known; "a or b" is known where one of them is.

        An estimate is not known. Attachments are known where each is of a kind that the rules can tell apart.
        """
        return any(self._knows(name) for name in need.split(" or "))

    def _knows(self, name: str) -> bool:
        if name == "attachments" and self.attachments is not None:
            return all(kind_of(each.kind) in KNOWN_KINDS for each in self.attachments)
        return name not in self.estimated and getattr(self, name) is not None

    def has(self, *kinds: str) -> bool:
        """Tell whether an attachment of one of these kinds is known of."""
        return any(kind_of(each.kind) in kinds for each in self.attachments or ())

    def under(self, months: int) -> bool | None:
        """Tell whether the child is younger than this many months, which must begin a band; None where not known."""
        if self.age_band is None:
            return None
        return FIRST_MONTH.get(self.age_band, 0) < months

    def concerns(self, scope: str | None) -> bool | None:
        """Tell whether a rule of this scope concerns the piece; None where the age or the use is not known."""
        if scope is None:
            return True
        if scope.startswith("use "):
            return None if self.use is None else self.use == scope.removeprefix("use ")
        if self.age_band is None:
            return None
        within: Mapping[str, bool | None] = {
            "under 12 months": self.under(12),
            "12 to 36 months": self.under(36) and not self.under(12),
            "under 36 months": self.under(36),
            "preterm": self.age_band == "preterm",
        }
        return within[scope]

    def said(self, name: str) -> str:
        """Return a length in millimetres in words, marked where it is an estimate."""
        length = getattr(self, name)
        about = "about " if name in self.estimated else ""
        return f"{about}{in_figures(length)} mm" + (", estimated from the gauge" if about else "")


@dataclass(frozen=True, slots=True)
class SafetyFinding(Finding):
    """A finding with its reference, what its limit rests on, the markets it speaks for, and its source."""

    reference: str = ""
    basis: str = "house"
    markets: tuple[str, ...] = ()
    source: str = ""

    @property
    def words(self) -> str:
        """Return the message and the next step as one text."""
        return f"{self.message} {self.hint}".strip()


def speak(
    rule: Rule[SafetyInputs],
    severity: Severity,
    message: str,
    hint: str,
    *,
    markets: tuple[str, ...] | None = None,
    basis: Basis | None = None,
    source: str | None = None,
) -> SafetyFinding:
    """Return what a rule says, with the rule's own reference, basis and source where no others are given."""
    return SafetyFinding(
        rule.slug,
        severity,
        message,
        hint,
        reference=rule.reference or "",
        basis=basis or rule.basis or "house",
        markets=markets or (),
        source=source or rule.source,
    )


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

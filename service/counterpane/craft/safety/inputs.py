"""What is known of a piece and of the child it is for; which of it a rule needs, and whom a rule concerns."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from counterpane.craft.measures import Gauge
from counterpane.craft.safety.attachments import Attachment
from counterpane.craft.safety.fibres import Fibre
from counterpane.craft.safety.labels import WANTED
from counterpane.craft.safety.measured import LEAST_COUNTS, MEASURABLE, Measurement, strictest
from counterpane.craft.safety.washing import Wash
from counterpane.craft.safety.words import (
    CORDS,
    FIRST_MONTH,
    HARD,
    KNOWN_KINDS,
    RIBBONS,
    AgeBand,
    Feature,
    LabelField,
    Market,
    Use,
    in_figures,
)


@dataclass(frozen=True, slots=True)
class Chemistry:
    """What is shown of the yarn's chemistry: a certificate of the class for babies, or figures of a laboratory."""

    baby_class: bool | None = None
    ph: Fraction | None = None
    formaldehyde_mg_kg: Fraction | None = None
    azo_mg_kg: Fraction | None = None


@dataclass(frozen=True, slots=True)
class SafetyInputs:
    """Everything that safety rules look at; None is not known.

    `age_band` is by corrected age. `hole_mm` is the largest opening of the washed piece, stretched; all other
    millimetres are the largest found too, `cord_thick_mm` and `ribbon_width_mm` the least. `openwork` says that
    openings are made on purpose; `gaps` that there are turning or picking-up gaps or loops at an edge. `layers` is 2
    for a blanket that is meant to be used folded. `decoration_pct` is what the percentages leave out. `measured` are
    values with who measured them; `estimated` names inputs that were worked out and not measured.
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
    mattress_width_cm: Fraction | None = None
    monofilament: bool | None = None
    features: tuple[Feature, ...] | None = None
    chemistry: Chemistry | None = None
    flame_retardant: bool | None = None
    decoration_pct: Fraction | None = None
    says_pure: bool | None = None
    sold: bool | None = None
    label: tuple[LabelField, ...] | None = None
    moth_treatment: bool | None = None
    medical_device: bool | None = None
    emollient: bool | None = None
    measured: tuple[Measurement, ...] = ()
    estimated: tuple[str, ...] = ()

    @property
    def followed(self) -> tuple[Market, ...] | None:
        """Return whose sleep advice is followed: `advice`, else the markets; None where neither is known."""
        return self.advice if self.advice is not None else self.markets

    @property
    def gsm(self) -> Fraction | None:
        """Return the mass in grams per square metre, None where mass or size is not known."""
        if self.mass_g is None or self.width_cm is None or self.length_cm is None:
            return None
        return self.mass_g * 10_000 / (self.width_cm * self.length_cm)

    @property
    def cords(self) -> tuple[Attachment, ...]:
        """Return the attachments that are cords."""
        return tuple(each for each in self.attachments or () if each.among(CORDS))

    @property
    def hard_parts(self) -> tuple[Attachment, ...]:
        """Return the attachments that are hard."""
        return tuple(each for each in self.attachments or () if each.among(HARD))

    @property
    def corded(self) -> bool | None:
        """Tell whether there is a cord; None where neither a figure nor the attachments tell."""
        if self.cords or any((self.cord_free_mm, self.cord_thick_mm, self.ribbon_width_mm)):
            return True
        return False if self.cord_free_mm == 0 or self._knows("attachments") else None

    def share_of(self, kind: str) -> Fraction:
        """Return how many per cent of the yarn are known to be fibres of a kind."""
        return sum((each.pct or Fraction(0) for each in self.fibres or () if each.of(kind)), Fraction(0))

    def contains(self, kind: str) -> bool:
        """Tell whether a fibre of this kind is known of."""
        return any(each.of(kind) for each in self.fibres or ())

    def has(self, *kinds: str) -> bool:
        """Tell whether an attachment of one of these kinds is known of."""
        return any(each.among(frozenset(kinds)) for each in self.attachments or ())

    def under(self, months: int) -> bool | None:
        """Tell whether the child is younger than this many months, which must begin a band; None where not known."""
        if self.age_band is None:
            return None
        return FIRST_MONTH.get(self.age_band, 0) < months

    def knows(self, need: str) -> bool:
        """Tell whether an input is known; "a or b" is known where one of them is.

        An estimate is not known, nor are attachments or fibres one of which is of no kind that the rules can tell.
        """
        return any(self._knows(name) for name in need.split(" or "))

    def _knows(self, name: str) -> bool:
        if name in _ANSWERS:
            return _ANSWERS[name](self)
        return name not in self.estimated and getattr(self, name) is not None

    def concerns(self, scope: str | None) -> bool | None:
        """Tell whether a rule of this scope concerns the piece: False where one condition is not met.

        Conditions are joined by "and". None where none of them is denied and one is not known.
        """
        met = [self._meets(condition) for condition in scope.split(" and ")] if scope else []
        return False if False in met else None if None in met else True

    def unmet(self, scope: str | None) -> list[str]:
        """Return the inputs without which the conditions of a scope are not known."""
        conditions = [each for each in (scope.split(" and ") if scope else ()) if self._meets(each) is None]
        return ["use" if each.startswith("use ") else _ASKS.get(each, "age_band") for each in conditions]

    def _meets(self, condition: str) -> bool | None:
        if condition.startswith("use "):
            return None if self.use is None else self.use == condition.removeprefix("use ")
        return _CONDITIONS[condition](self)

    def with_measured(self, gauges: Sequence[Gauge] | None = None) -> SafetyInputs:
        """Return the inputs with what was measured in them; of several values the strictest counts.

        With `gauges`, those of a plan, a measurement at another gauge is left out: it is of another fabric.
        """
        counting = [each for each in self.measured if gauges is None or each.counts_for(gauges)]
        found: dict[str, Fraction] = {}
        for name in MEASURABLE:
            values = [value for value in (getattr(self, name), strictest(counting, name)) if value is not None]
            if values:
                found[name] = min(values) if name in LEAST_COUNTS else max(values)
        return replace(self, **found)  # type: ignore[arg-type]

    def said(self, name: str) -> str:
        """Return a length in millimetres in words, marked where it is an estimate."""
        length = getattr(self, name)
        about = "about " if name in self.estimated else ""
        return f"{about}{in_figures(length)} mm" + (", estimated from the gauge" if about else "")


def _measured(inputs: SafetyInputs) -> bool:
    return inputs.gsm is not None and not {"mass_g", "width_cm", "length_cm"} & {*inputs.estimated}


def _all_attachments(inputs: SafetyInputs) -> bool:
    return inputs.attachments is not None and all(each.among(KNOWN_KINDS) for each in inputs.attachments)


def _all_fibres(inputs: SafetyInputs) -> bool:
    return bool(inputs.fibres) and all(each.known for each in inputs.fibres or ())


def _cord_length(inputs: SafetyInputs) -> bool:
    return inputs.corded is False or (inputs.cord_free_mm is not None and "cord_free_mm" not in inputs.estimated)


def _no_cord_but(inputs: SafetyInputs, kinds: frozenset[str]) -> bool:
    return inputs.corded is False or (_all_attachments(inputs) and not any(each.among(kinds) for each in inputs.cords))


def _each_cord(inputs: SafetyInputs) -> bool:
    return _all_attachments(inputs) and not any(
        each.several or (each.largest_mm is None and inputs.cord_free_mm is None) for each in inputs.cords
    )


_ANSWERS: Mapping[str, Callable[[SafetyInputs], bool]] = {
    "attachments": _all_attachments,
    "attachments.largest_mm": lambda known: (
        _all_attachments(known) and all(each.fits_cylinder is not None for each in known.hard_parts)
    ),
    "attachments.cords": _each_cord,
    "cord_free_mm": _cord_length,
    "cord_thick_mm": lambda known: known.cord_thick_mm is not None or _no_cord_but(known, CORDS - RIBBONS),
    "ribbon_width_mm": lambda known: known.ribbon_width_mm is not None or _no_cord_but(known, RIBBONS),
    "fibres": _all_fibres,
    "fibres.pct": lambda known: _all_fibres(known) and all(each.pct is not None for each in known.fibres or ()),
    "fibres.micron": lambda known: (
        _all_fibres(known) and all(each.micron is not None for each in known.fibres or () if each.of("wool"))
    ),
    "gsm": _measured,
    "markets on record": lambda known: known.markets is not None and all(place in WANTED for place in known.markets),
    "wash.method": lambda known: known.wash is not None and bool(known.wash.ways),
    "wash.temp_c": lambda known: known.wash is not None and known.wash.temp_c is not None,
}
"""Needs that take more than one look: whether they are met."""


def _tucked(inputs: SafetyInputs) -> bool | None:
    """Tell whether sleep advice that is followed accepts a tucked blanket: in the first year not that of the US."""
    return not (inputs.under(12) and inputs.followed == ("US",))


_CONDITIONS: Mapping[str, Callable[[SafetyInputs], bool | None]] = {
    "preterm": lambda known: None if known.age_band is None else known.age_band == "preterm",
    "under 12 months": lambda known: known.under(12),
    "under 24 months": lambda known: known.under(24),
    "12 to 36 months": lambda known: known.under(36) and not known.under(12),
    "under 36 months": lambda known: known.under(36),
    "from 36 months": lambda known: None if known.age_band is None else not known.under(36),
    "advice on tucking in": _tucked,
    "enclosed part": lambda known: known.enclosed_part,
    "raised surface": lambda known: known.raised_surface,
    "cord": lambda known: known.corded,
    "wool": lambda known: True if known.contains("wool") else False if known.knows("fibres") else None,
    "sold": lambda known: known.sold,
}
"""Conditions of a scope beside those of use: whether they are met, None where not known."""

_ASKS: Mapping[str, str] = {
    "enclosed part": "enclosed_part",
    "raised surface": "raised_surface",
    "cord": "attachments",
    "wool": "fibres",
    "sold": "sold",
}
"""The input that tells whether a condition is met, where that is not the age."""

"""What the labels of a blanket rest on, as data: names of fibres, limits, and what each market wants."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from counterpane.craft.care.fibres import Fibres
from counterpane.craft.care.groups import CareGroup
from counterpane.craft.safety.limits import WOOL_WASH_C


@dataclass(frozen=True, slots=True)
class Want:
    """One thing that the label of some markets holds: the field, how binding it is, its words, source and confidence.

    `duty` is "must", "where it applies" or "good practice". `instead` is a field that will do as well.
    """

    markets: tuple[str, ...]
    field: str
    duty: str
    says: str
    source: str
    confidence: str
    instead: str | None = None


@dataclass(frozen=True, slots=True)
class Law:
    """Names, limits and wants, each from a fact with its source; limits are per cent of mass.

    `virgin_least` is the least wool in a blend that may say virgin wool, `left_out_most` how much may be left out by
    why, `part_least` from what share of the piece a part of other fibres is labelled, `named_from` from what share a
    market names a fibre, by market, and `always_named` the fibres that the United States name whatever their share.
    `tolerances` are by how many per cent of the mass a label may differ from an analysis, by market. `groups` are those
    of care in the order of a label, `untreated_wool_most` the degrees Celsius up to which wool that may felt is washed,
    and `american_dots` and `american_degrees` what the United States print for degrees Celsius.
    """

    fibres: Fibres
    virgin_least: Fraction
    left_out_most: Mapping[str, Fraction]
    part_least: Fraction
    named_from: Mapping[str, Fraction]
    always_named: tuple[str, ...] = ()
    wants: tuple[Want, ...] = ()
    tolerances: Mapping[str, Fraction] = field(default_factory=dict)
    groups: tuple[CareGroup, ...] = ()
    untreated_wool_most: Fraction = WOOL_WASH_C
    american_dots: Mapping[str, str] = field(default_factory=dict)
    american_degrees: Mapping[str, str] = field(default_factory=dict)

    def wanted(self, market: str) -> tuple[Want, ...]:
        """Return what the label for a market holds."""
        return tuple(want for want in self.wants if market in want.markets)

"""A measurement with who made it, when, and on which yarn, gauge and wash; what lacks any of these says so."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.measures import Gauge

Measurable = Literal[
    "hole_mm",
    "float_mm",
    "tail_mm",
    "loop_mm",
    "loop_perimeter_mm",
    "cord_free_mm",
    "cord_thick_mm",
    "ribbon_width_mm",
    "mass_g",
]
MEASURABLE: tuple[Measurable, ...] = (
    *("hole_mm", "float_mm", "tail_mm", "loop_mm", "loop_perimeter_mm", "cord_free_mm", "cord_thick_mm"),
    *("ribbon_width_mm", "mass_g"),
)
LEAST_COUNTS: frozenset[str] = frozenset({"cord_thick_mm", "ribbon_width_mm"})
"""Inputs of which the least value is the stricter; of all others the greatest is."""


@dataclass(frozen=True, slots=True)
class Measurement:
    """A value of one input as somebody measured it; `on` is the day as ISO 8601 has it, `wash` in words.

    Millimetres, or grams for a mass. `by` is a name or a pseudonym. None is not told.
    """

    what: Measurable
    value: Fraction
    by: str
    on: str
    yarn: str | None = None
    gauge: Gauge | None = None
    wash: str | None = None

    @property
    def untold(self) -> tuple[str, ...]:
        """Return what the record does not tell of "yarn", "gauge" and "wash"."""
        return tuple(name for name in ("yarn", "gauge", "wash") if getattr(self, name) is None)

    def counts_for(self, gauges: Sequence[Gauge]) -> bool:
        """Tell whether it counts for a piece at these gauges: it was made at one of them, or tells no gauge."""
        if self.gauge is None:
            return True
        told = self.gauge.per_cm, self.gauge.rows_per_cm
        return any((gauge.per_cm, gauge.rows_per_cm) == told for gauge in gauges)


def strictest(measured: Iterable[Measurement], what: str) -> Fraction | None:
    """Return the strictest value that was measured of an input, None where nobody measured it."""
    values = [each.value for each in measured if each.what == what]
    if not values:
        return None
    return min(values) if what in LEAST_COUNTS else max(values)

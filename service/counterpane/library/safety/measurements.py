"""Measurements of a piece: read from JSON values, and told in its record with what they do not tell."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any

from counterpane.craft.measures import Gauge
from counterpane.craft.safety.measured import MEASURABLE, Measurable, Measurement
from counterpane.craft.safety.words import in_figures
from counterpane.library.values import BadInput, Parser, above_zero, day, number, one_of, read_fields, text

WHAT: Parser[Measurable] = one_of(MEASURABLE)
GAUGE: Mapping[str, Parser[object]] = {"stitches": above_zero, "rows": above_zero, "over_cm": above_zero}
REQUIRED = {
    "what": "Name the input that was measured, such as hole_mm.",
    "value": "Give the largest value found, in millimetres or grams.",
    "by": "Name who measured it; a pseudonym will do.",
    "on": "Give the day, such as 2026-11-30.",
}


def measurement(pointer: str, value: object) -> Measurement:
    """Read one measurement; BadInput where it does not tell what, how much, who or when."""
    known = read_fields(pointer, value, FIELDS)
    for name, hint in REQUIRED.items():
        if name not in known:
            raise BadInput(f"{pointer}/{name}", f"The measurement does not tell {name!r}.", hint)
    return Measurement(**known)  # type: ignore[arg-type]


def _gauge(pointer: str, value: object) -> Gauge:
    known = read_fields(pointer, value, GAUGE)
    if not {"stitches", "rows"} <= set(known):
        raise BadInput(pointer, "The gauge lacks stitches or rows.", "Give both, counted over 10 cm or over_cm.")
    return Gauge(**known)  # type: ignore[arg-type]


FIELDS: Mapping[str, Parser[object]] = {
    "what": WHAT,
    "value": number,
    "by": text,
    "on": day,
    "yarn": text,
    "gauge": _gauge,
    "wash": text,
}


def measured_json(measured: Sequence[Measurement], gauges: Sequence[Gauge] | None = None) -> list[dict[str, Any]]:
    """Return measurements as JSON values, with what each does not tell and whether it counts at these gauges."""
    return [_told(each, gauges is None or each.counts_for(gauges)) for each in measured]


def _told(measured: Measurement, counts: bool) -> dict[str, Any]:
    return {
        "what": measured.what,
        "value": float(measured.value),
        "by": measured.by,
        "on": measured.on,
        "yarn": measured.yarn,
        "gauge": None if measured.gauge is None else _gauge_words(measured.gauge),
        "wash": measured.wash,
        "not_told": list(measured.untold),
        "counts": counts,
    }


def _gauge_words(gauge: Gauge) -> str:
    stitches, rows = in_figures(gauge.stitches), in_figures(gauge.rows)
    return f"{stitches} stitches and {rows} rows to {in_figures(Fraction(gauge.over_cm))} cm"

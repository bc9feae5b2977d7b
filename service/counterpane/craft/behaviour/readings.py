"""The gauges that the reading of one swatch may stand for."""

from __future__ import annotations

from dataclasses import replace

from counterpane.craft.measures import Gauge


def read_ends(gauge: Gauge) -> tuple[Gauge, Gauge]:
    """Return the finest and the coarsest gauge within the errors of a reading, of which none exceeds half its value."""
    return _off(gauge, 1), _off(gauge, -1)


def _off(gauge: Gauge, way: int) -> Gauge:
    """Return a gauge with more stitches and rows in less width and height by all errors of its readings, or fewer."""
    reading = gauge.reading
    count, window = reading.count_error * reading.swatches, reading.window_error_cm * reading.swatches
    return replace(
        gauge,
        stitches=gauge.stitches + way * min(count, gauge.stitches / 2),
        rows=gauge.rows + way * min(count, gauge.rows / 2),
        over_cm=gauge.over_cm - way * min(window, gauge.over_cm / 2),
    )

"""How long pictures and pages take: run it with `python tests/benchmarks/bench_drawings.py`.

The aims: a chart of 60 by 60 cells in 100 ms, the fabric of 200 stitches by 300 rows in 1 s and 2,000,000 bytes, a PDF
with its pictures in 1 s, each on an idle core. Ratios: a chart of four times the cells, and a blanket of four times the
stitches.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable

from counterpane.craft.constructions import Plan
from counterpane.craft.counts import count
from counterpane.craft.drawing.blanket import fabric
from counterpane.craft.drawing.chart.charting import chart_of
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Vocabulary
from counterpane.library.patterns.drawings import pictures
from counterpane.library.patterns.patterns import write_pattern
from counterpane.library.plans import planning
from counterpane.press.pdf import as_pdf
from counterpane.wiring import open_library


def main() -> None:
    """Print the times, sizes and ratios."""
    library = open_library()
    vocabulary = library.vocabulary
    small, large = (_timed(lambda side=side: _chart(side, vocabulary)) for side in (30, 60))
    _say(f"chart of 60 by 60: {large[0] * 1000:.0f} ms; {large[0] / small[0]:.1f} times one of 30 by 30")
    plans = [planning.made(library, _request(*size)) for size in ((46, 50), (93, 100))]
    few, many = (_timed(lambda plan=plan: fabric(plan, vocabulary, "Benchmark")) for plan in plans)
    size = len(str(many[1]))
    _say(f"fabric of 200 by 300: {many[0] * 1000:.0f} ms, {size:,} bytes; {many[0] / few[0]:.1f} times a quarter of it")
    page = _timed(lambda: _pdf(plans[1], vocabulary))
    _say(f"PDF with its pictures: {page[0] * 1000:.0f} ms")


def _timed(work: Callable[[], object]) -> tuple[float, object]:
    """Return the shortest of three times and what was made."""
    taken = []
    for _ in range(3):
        begin = time.perf_counter()
        made = work()
        taken.append(time.perf_counter() - begin)
    return min(taken), made


def _chart(side: int, vocabulary: Vocabulary) -> object:
    """Return a chart of rows that all differ, of one repeat as wide as it is high."""
    rows = []
    for number in range(1, side + 1):
        words = f"*k{number % (side - 1) + 1}, p{side - number % (side - 1) - 1}; rep from * to end"
        rows.append(Row(str(number), read_row(words, vocabulary).parts, "RS" if number % 2 else "WS"))
    starts = count([row.parts for row in rows], vocabulary, [row.side for row in rows]).starts
    return chart_of(rows, starts[0], vocabulary)


def _request(width: int, length: int) -> dict[str, object]:
    gauge = {"stitches": 22, "rows": 30, "over_cm": 10}
    return {"parts": {"body": "waffle"}, "gauge": gauge, "size": {"width_cm": width, "length_cm": length}}


def _pdf(plan: Plan, vocabulary: Vocabulary) -> bytes:
    pattern = write_pattern(plan, vocabulary)
    return as_pdf(pattern, pictures(plan, vocabulary, pattern.title, "us", close_up=True))


def _say(line: str) -> None:
    sys.stdout.write(f"{line}\n")


if __name__ == "__main__":
    main()

"""How long swatches and a range of sizes take beside a plan: run it with `python tests/benchmarks/bench_grade.py`.

The ratios can be compared between machines. A range reads its text back in every size, and must not grow faster than
its sizes do.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable
from typing import Any

from counterpane.library.patterns import pages
from counterpane.library.plans.bench import bench_of
from counterpane.library.plans.grading import plan_grade
from counterpane.library.plans.regauging import plan_regauge
from counterpane.library.plans.swatches import write_swatches
from counterpane.press.graded import as_graded_text
from counterpane.wiring import open_library

RUNS = 7
NUMBERS = (2, 5, 10)
GAUGE = {"stitches": 22, "rows": 30, "over_cm": 10}
BASE: dict[str, Any] = {"parts": {"body": "waffle", "selvedge": "slipped-selvedge"}, "gauge": GAUGE}


def main() -> None:
    """Print how often a pattern could be written meanwhile, for each use case."""
    library = open_library()
    request = BASE | {"size": {"width_cm": 70, "length_cm": 90}}
    bench = bench_of(library, request)
    one = _median(lambda: pages.pattern(library, request, "text"))
    cases: dict[str, Callable[[], object]] = {
        "swatches": lambda: write_swatches(request, bench),
        "regauge": lambda: plan_regauge(request | {"to": {"stitches": 18, "rows": 25, "over_cm": 10}}, bench),
    }
    for number in NUMBERS:
        sizes = [{"width_cm": 40 + 10 * step, "length_cm": 50 + 12 * step} for step in range(number)]
        cases[f"grade into {number:2}"] = lambda sizes=sizes: plan_grade(BASE | {"sizes": sizes}, bench, as_graded_text)
    sys.stdout.write(f"one pattern: {1000 * one:.0f} ms\n")
    for name, step in cases.items():
        sys.stdout.write(f"{name:13} {_median(step) / one:5.2f} patterns\n")


def _median(step: Callable[[], object]) -> float:
    taken = []
    for _ in range(RUNS):
        begin = time.perf_counter()
        step()
        taken.append(time.perf_counter() - begin)
    return statistics.median(taken)


if __name__ == "__main__":
    main()

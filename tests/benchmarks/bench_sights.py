"""How long it takes to see what lies under the needle: run it with `python tests/benchmarks/bench_sights.py`.

The aim: a blanket of four times the stitches takes four times as long, whatever its stitches pass over others. The
collector of garbage stands still meanwhile, since its work grows with all that the process holds.
"""

from __future__ import annotations

import gc
import sys
import time
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.helping.seeing import sights
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans import planning
from counterpane.wiring import open_library

RUNS = 3
WIDTHS_CM = (1_000, 4_000)
BODIES: dict[str, object] = {
    "waffle": "waffle",
    "a lace that passes over": {
        "text": "Row 1 (RS): K1, *yo, sl 1, k2tog, psso, yo, k1; rep from * to end.\nRow 2: Purl."
    },
}


def main() -> None:
    """Print the time at the greater width, and its ratio to a quarter of it."""
    library = open_library()
    for name, body in BODIES.items():
        few, many = (planning.made(library, _request(body, width)) for width in WIDTHS_CM)
        small, large = (_least(plan, library.vocabulary) for plan in (few, many))
        said = f"{large * 1000:.0f} ms for {many.counts.cast_on:,} stitches"
        sys.stdout.write(f"{name}: {said}, {large / small:.1f} times a quarter of them\n")


def _request(body: object, width: int) -> dict[str, Any]:
    gauge = {"stitches": 22, "rows": 30, "over_cm": 10}
    return {"parts": {"body": body}, "gauge": gauge, "size": {"width_cm": width, "length_cm": 20}}


def _least(plan: Plan, vocabulary: Vocabulary) -> float:
    times = []
    for _ in range(RUNS):
        gc.collect()
        gc.disable()
        begin = time.process_time()
        sights(plan, vocabulary)
        times.append(time.process_time() - begin)
        gc.enable()
    return min(times)


if __name__ == "__main__":
    main()

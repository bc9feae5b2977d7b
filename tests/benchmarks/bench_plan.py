"""How long a plan takes, beside checking the text of its rows: run it with `python tests/benchmarks/bench_plan.py`.

The aim is 20 ms at most for a plan with its proof, on an idle core; ratios can be compared between machines.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable

from counterpane.craft.constructions.making import attempt
from counterpane.library.plans.plans import make_plan, plan_json, plan_request_of
from counterpane.seeding import load_components, load_vocabulary

RUNS = 30
BODIES = ("waffle", "basket-weave", "seed-stitch", "rope-cable")
WIDTHS = (70, 7 * 10**8)


def main() -> None:
    """Print the median of each step for some bodies, and of a plan ten million times as wide."""
    vocabulary, stock = load_vocabulary(), {component.slug: component for component in load_components()}
    for body in BODIES:
        medians = []
        for width in WIDTHS:
            request = plan_request_of(_content(body, width), stock.__getitem__, vocabulary)
            plan = make_plan(request, vocabulary)
            steps = {
                "worked out": lambda request=request: attempt(request, vocabulary),
                "judged and proved": lambda request=request: make_plan(request, vocabulary),
                "as JSON": lambda plan=plan: plan_json(plan),
            }
            medians.append({name: _milliseconds(step) for name, step in steps.items()})
        said = ", ".join(f"{name} {took:.1f} ms" for name, took in medians[0].items())
        wider = medians[1]["judged and proved"] / medians[0]["judged and proved"]
        sys.stdout.write(f"{body:14} {said}; {WIDTHS[1] // WIDTHS[0]:,} times as wide: {wider:.2f} times as long\n")


def _content(body: str, width: int) -> dict[str, object]:
    gauge = {"stitches": 22, "rows": 30, "over_cm": 10}
    parts = {"body": body, "selvedge": "slipped-selvedge"}
    return {"parts": parts, "gauge": gauge, "size": {"width_cm": width, "length_cm": 90}}


def _milliseconds(step: Callable[[], object]) -> float:
    taken = []
    for _ in range(RUNS):
        begin = time.perf_counter()
        step()
        taken.append(time.perf_counter() - begin)
    return 1000 * statistics.median(taken)


if __name__ == "__main__":
    main()

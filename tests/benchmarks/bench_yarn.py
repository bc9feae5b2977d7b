"""How long the yarn of a plan takes, beside the plan: run it with `python tests/benchmarks/bench_yarn.py`.

The aim is 50 ms at most for 200 stitches by 300 rows, on an idle core. It is counted in closed form, so that a blanket
ten million times as wide takes as long; the same by working every stitch stands beside it.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable
from fractions import Fraction

from counterpane.craft.constructions import Plan
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from counterpane.craft.yarn import Yarn, estimate
from counterpane.library.plans.plans import make_plan, plan_request_of
from counterpane.library.yarn.yarn_largest import largest_of
from counterpane.seeding import load_components, load_vocabulary

RUNS = 20
BODIES = ("stocking-stitch", "waffle", "basket-weave", "old-shale", "rope-cable")
YARN = Yarn(tex=Fraction(435), ball_g=Fraction(50), ball_m=Fraction(115))
GIVEN = {"metres_per_100g": 230}


def main() -> None:
    """Print for some bodies the yarn, its growth, the grid beside it, and the largest blanket."""
    vocabulary, stock = load_vocabulary(), {component.slug: component for component in load_components()}
    for body in BODIES:
        plan, wide = (
            make_plan(plan_request_of(_content(body, width), stock.__getitem__, vocabulary), vocabulary)
            for width in (90, 9 * 10**8)
        )
        yarn = _milliseconds(lambda plan=plan: estimate(plan, [YARN], vocabulary))
        wider = _milliseconds(lambda plan=wide: estimate(plan, [YARN], vocabulary))
        grid = _milliseconds(lambda plan=plan: _one_by_one(plan, vocabulary), 1)
        search = _milliseconds(lambda plan=plan: largest_of(plan, GIVEN, {"grams": 400}, "shape", vocabulary), 3)
        times = f"every stitch {grid / yarn:.0f} times, the largest blanket {search / yarn:.0f} times"
        wide_said = f"ten million times as wide {wider / yarn:.2f} times as long"
        sys.stdout.write(f"{body:16} {plan.counts.cast_on} stitches: yarn {yarn:.1f} ms, {wide_said}, {times}\n")


def _one_by_one(plan: Plan, vocabulary: Vocabulary) -> int:
    """Work every stitch of a plan and count them."""
    return sum(
        len(row.worked)
        for section in plan.sections
        for row in trace(
            [section.cycle[index % len(section.cycle)].parts for index in range(section.rows)],
            section.before,
            vocabulary,
        ).rows
    )


def _content(body: str, width: int) -> dict[str, object]:
    gauge = {"stitches": 22, "rows": 30, "over_cm": 10}
    return {"parts": {"body": body}, "gauge": gauge, "size": {"width_cm": width, "length_cm": 100}}


def _milliseconds(step: Callable[[], object], runs: int = RUNS) -> float:
    taken = []
    for _ in range(runs):
        begin = time.process_time()
        step()
        taken.append(time.process_time() - begin)
    return 1000 * statistics.median(taken)


if __name__ == "__main__":
    main()

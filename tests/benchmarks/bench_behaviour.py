"""How long the behaviour of a plan takes, beside its plan: run it with `python tests/benchmarks/bench_behaviour.py`.

The aim is 50 ms at most for behaviour and yarn of a blanket of 200 by 300 stitches, on an idle core; ratios can be
compared between machines. "Fresh" forgets what is kept of textures from plan to plan.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable
from fractions import Fraction

from counterpane.craft.behaviour import textures
from counterpane.craft.behaviour.faces import repeat_of
from counterpane.craft.component import textured
from counterpane.craft.fabric import from_rs
from counterpane.craft.trace import trace
from counterpane.craft.yarn import Yarn, estimate
from counterpane.library.plans.plan_behaviour import behaviour_of_plan
from counterpane.library.plans.plans import make_plan, plan_request_of
from counterpane.seeding import load_components, load_vocabulary

RUNS = 20
BODIES = ("stocking-stitch", "basket-weave", "rope-cable", "feather-lace")
TEX = Fraction(435)


def main() -> None:
    """Print the median of each step for some bodies, and of the whole grid, which the program never makes."""
    vocabulary, stock = load_vocabulary(), {component.slug: component for component in load_components()}
    for body in BODIES:
        plan, wider = (
            make_plan(plan_request_of(_content(body, width), stock.__getitem__, vocabulary), vocabulary)
            for width in (91, 91 * 10**6)
        )
        steps = {
            "planned": lambda plan=plan: make_plan(plan.request, vocabulary),
            "behaviour": lambda plan=plan: behaviour_of_plan(plan, vocabulary, TEX),
            "fresh": lambda plan=plan: (_forget(), behaviour_of_plan(plan, vocabulary, TEX)),
            "yarn": lambda plan=plan: estimate(plan, [Yarn(tex=TEX)], vocabulary),
            "wider": lambda wider=wider: behaviour_of_plan(wider, vocabulary, TEX),
        }
        took = {name: _milliseconds(step) for name, step in steps.items()}
        grid = _milliseconds(lambda plan=plan: _grid(plan, vocabulary), runs=3)
        size = f"{plan.counts.cast_on} sts by {sum(section.rows for section in plan.sections)} rows"
        both, share, wide = took["fresh"] + took["yarn"], took["behaviour"] / took["planned"], took["wider"]
        sys.stdout.write(
            f"{body:16} {size}: behaviour {took['behaviour']:.1f} ms, fresh {took['fresh']:.1f} ms, with yarn "
            f"{both:.1f} ms; {share:.2f} of the plan, a million times as wide {wide / took['behaviour']:.2f}, "
            f"whole grid {grid / took['fresh']:.0f} times as long\n"
        )


def _content(body: str, width: int) -> dict[str, object]:
    gauge = [
        {"stitches": 22, "rows": 30, "over_cm": 10, "in": body},
        {"stitches": 20.5, "rows": 42, "over_cm": 10, "in": "garter-border"},
    ]
    parts = {"body": body, "selvedge": "slipped-selvedge"}
    return {"parts": parts, "gauge": gauge, "size": {"width_cm": width, "length_cm": 100}}


def _forget() -> None:
    for kept in (textures.behaviour_of, repeat_of, textured.textures):
        kept.cache_clear()


def _grid(plan, vocabulary) -> None:
    for section in plan.sections:
        rows = [section.cycle[at % len(section.cycle)].parts for at in range(section.rows)]
        from_rs(trace(rows, section.before, vocabulary), vocabulary)


def _milliseconds(step: Callable[[], object], runs: int = RUNS) -> float:
    taken = []
    for _ in range(runs):
        begin = time.perf_counter()
        step()
        taken.append(time.perf_counter() - begin)
    return 1000 * statistics.median(taken)


if __name__ == "__main__":
    main()

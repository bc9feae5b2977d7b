"""The solver of counts against OR-Tools CP-SAT on random mixes of parts: the same optimum, and how much quicker.

Run it in an environment with the extra `oracle`: `python tests/benchmarks/oracle_cp_sat.py`. It ends with 1 where an
optimum differs. The ratio of the times is reported and not judged: it moves with what else the machine does.
"""

from __future__ import annotations

import random
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeVar

from ortools.sat.python import cp_model

from counterpane.craft.component import Component, Provenance, SafetyNotes, Version
from counterpane.craft.constructions import Part, PlanRequest
from counterpane.craft.constructions.fitting import nearest_counts, options
from counterpane.craft.constructions.settling import Settled, settle
from counterpane.craft.measures import Gauge
from counterpane.craft.stitches import Vocabulary
from counterpane.seeding import load_components, load_vocabulary

Problem = TypeVar("Problem")

MIXES = 200
SEED = 20
AT_LEAST = 100
MOST = 200_000


@dataclass(frozen=True)
class Mix:
    """A request, and the same as numbers: for each part its alternatives, a repeat with what stands beside it."""

    settled: Settled
    parts: tuple[tuple[tuple[int, int], ...], ...]
    target: Fraction


def main() -> None:
    """Solve all mixes by both, print the outcome and end with 1 where they disagree."""
    chance, vocabulary = random.Random(SEED), load_vocabulary()
    mixes = [_mix(chance, vocabulary) for _ in range(MIXES)]
    # Each solver goes through all mixes at once, so that neither finds the other's data in the processor's cache.
    # Understanding the parts and building the model are left out on both sides.
    mine = [_timed(_solved, mix.settled) for mix in mixes]
    theirs = [_timed(_oracle, model) for model in map(_model, mixes)]
    differing = [(mix, one[0], two[0]) for mix, one, two in zip(mixes, mine, theirs, strict=True) if one[0] != two[0]]
    for mix, one, two in differing:
        sys.stdout.write(f"differs: {mix.parts} near {mix.target}: {one}, the oracle {two}\n")
    possible = sum(one[0] is not None for one in mine)
    quick, slow = (sum(seconds for _, seconds in answers) for answers in (mine, theirs))
    sys.stdout.write(f"{MIXES} mixes, {possible} of them possible: {len(differing)} answers differ\n")
    sys.stdout.write(f"all of them in {1e3 * quick:.0f} ms, CP-SAT in {1e3 * slow:.0f} ms\n")
    sys.stdout.write(f"{slow / quick:.0f} times as fast as CP-SAT (aim: {AT_LEAST} at least)\n")
    sys.exit(1 if differing else 0)


def _timed(solve: Callable[[Problem], int | None], problem: Problem) -> tuple[int | None, float]:
    begin = time.perf_counter()
    found = solve(problem)
    return found, time.perf_counter() - begin


def _solved(settled: Settled) -> int | None:
    found = options(settled)
    return nearest_counts(settled, found, 1)[0] if found else None


def _mix(chance: random.Random, vocabulary: Vocabulary) -> Mix:
    """Return a mix of one to four bands between two borders, with side borders, at a random gauge and width."""
    sides = chance.randint(1, 9)
    drawn = [_drawn(chance) for _ in range(chance.randint(3, 6))]
    request = _request([_component(each) for each in drawn], sides, chance)
    width = (request.width_cm - request.gauges[0].width(2 * sides)) * request.gauges[0].per_cm + 2 * sides
    beside = [0, *[2 * sides] * (len(drawn) - 2), 0]
    parts = tuple(
        tuple((of, plus + more) for of, plus in alternatives) for alternatives, more in zip(drawn, beside, strict=True)
    )
    return Mix(settle(request, vocabulary), parts, width)


def _drawn(chance: random.Random) -> list[tuple[int, int]]:
    """Draw one or two repeats of a part, each with its stitches beside the repeat."""
    return [(chance.randint(1, 12), chance.randint(0, 6)) for _ in range(chance.choice((1, 1, 1, 2)))]


def _component(alternatives: Sequence[tuple[int, int]]) -> Component:
    versions = tuple(Version(str(number), _rows(of, plus)) for number, (of, plus) in enumerate(alternatives))
    return Component("", "body", "", "", Provenance("", "", ""), SafetyNotes(), versions=versions)


def _rows(of: int, plus: int) -> str:
    rest = f"; rep from * to last {plus} sts, k{plus}" if plus else "; rep from * to end"
    return f"Row 1 (RS): *k{of}{rest}.\nRow 2 (WS): *p{of}{rest.replace('k', 'p')}."


def _request(components: Sequence[Component], sides: int, chance: random.Random) -> PlanRequest:
    stock = {component.slug: component for component in load_components()}
    gauge = Gauge(Fraction(chance.randint(28, 60), 2), Fraction(30))
    return PlanRequest(
        cast_on=Part(stock["long-tail"]),
        bottom=Part(components[0], rows=12),
        sides=Part(stock["garter-border"], stitches=sides),
        selvedge=None,
        body=tuple(Part(component) for component in components[1:-1]),
        top=Part(components[-1], rows=12),
        bind_off=Part(stock["plain-bind-off"]),
        gauges=(gauge,),
        width_cm=Fraction(chance.randint(400, 1200), 10),
        length_cm=Fraction(90),
    )


@dataclass(frozen=True)
class Model:
    """A mix as CP-SAT takes it: the count nearest the target, the larger of two as near."""

    model: cp_model.CpModel
    count: cp_model.IntVar


def _model(mix: Mix) -> Model:
    model = cp_model.CpModel()
    count = model.new_int_var(1, MOST, "count")
    for alternatives in mix.parts:
        chosen = []
        for of, plus in alternatives:
            repeats, takes = model.new_int_var(1, MOST, ""), model.new_bool_var("")
            model.add(count == of * repeats + plus).only_enforce_if(takes)
            chosen.append(takes)
        model.add_bool_or(chosen)
    scale, wanted = mix.target.denominator, mix.target.numerator
    off = model.new_int_var(0, scale * MOST + abs(wanted), "off")
    model.add_abs_equality(off, scale * count - wanted)
    model.minimize(2 * MOST * off - count)
    return Model(model, count)


def _oracle(asked: Model) -> int | None:
    """Return the count that CP-SAT finds, None for none."""
    solver = cp_model.CpSolver()
    status = solver.solve(asked.model)
    return solver.value(asked.count) if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None


if __name__ == "__main__":
    main()

"""How long the matrix takes: run it with `python tests/benchmarks/bench_matrix.py`.

The aim is 2 s at most for 100 bodies and 40 borders, from parts that nothing is known of yet, on an idle core. The
bodies and borders are starters under other names, so that each is worked out by itself.
"""

from __future__ import annotations

import sys
import time
from dataclasses import replace
from itertools import cycle, islice

from counterpane.craft.component import Component, Kind
from counterpane.library.parts.matrix import matrix_of, tally
from counterpane.seeding import load_components, load_vocabulary


def main() -> None:
    """Print the time for the first matrix, which works out the parts, and for another at a count."""
    vocabulary = load_vocabulary()
    taken = []
    for bodies, borders in ((50, 20), (100, 40)):
        parts = _parts("body", bodies, bodies), _parts("border", borders, bodies)
        begin = time.process_time()
        answer = matrix_of(*parts, vocabulary)
        first = time.process_time() - begin
        begin = time.process_time()
        matrix_of(*parts, vocabulary, 139)
        again = time.process_time() - begin
        taken.append((first, again))
        said = f"{first:.2f} s with the parts worked out, {again:.2f} s again at a count"
        sys.stdout.write(f"{bodies} bodies x {borders} borders: {said}; {tally(answer)}\n")
    growth = (taken[1][0] / taken[0][0], taken[1][1] / taken[0][1])
    sys.stdout.write(f"four times the cells: {growth[0]:.1f} and {growth[1]:.1f} times as long\n")


def _parts(kind: Kind, count: int, run: int) -> list[Component]:
    found = [component for component in load_components() if component.kind == kind]
    named = enumerate(islice(cycle(found), count))
    return [replace(component, slug=f"{component.slug}-{run}-{number}") for number, component in named]


if __name__ == "__main__":
    main()

"""How long the canonical form of a texture takes: run it with `python tests/benchmarks/bench_texture.py`.

The aim is 50 ms at most for a cell of 48 rows and 48 stitches up to all eight moves, on an idle core; the ratios can be
compared between machines.
"""

from __future__ import annotations

import random
import statistics
import sys
import time
from collections.abc import Callable

from counterpane.craft.texture import PLAIN, Cell, canonical, images, lattice

RUNS = 15
SIZE = 48


def main() -> None:
    """Print the canonical form and the lattice for cells easy and hard, and how both grow with the cell."""
    for name, cell_of in CELLS.items():
        cell, larger = cell_of(SIZE), cell_of(2 * SIZE)
        took = _milliseconds(lambda cell=cell: canonical(images(cell, PLAIN)))
        found = _milliseconds(lambda cell=cell: lattice(cell))
        twice = _milliseconds(lambda cell=larger: canonical(images(cell, PLAIN)))
        said = f"canonical form {took:.1f} ms, lattice {found:.2f} ms; four times the cell: {twice / took:.1f} times"
        sys.stdout.write(f"{name:10} {SIZE} x {SIZE}: {said} as long\n")


def _random(size: int) -> Cell:
    chance = random.Random(4)
    return tuple(tuple(chance.choice("kp") for _ in range(size)) for _ in range(size))


CELLS: dict[str, Callable[[int], Cell]] = {
    "random": _random,
    "plain": lambda size: (("k",) * size,) * size,
    "one purl": lambda size: (("k",) * (size - 1) + ("p",), *(("k",) * size,) * (size - 1)),
    "diagonal": lambda size: tuple(tuple("kp"[(up + at) % 4 // 2] for at in range(size)) for up in range(size)),
}


def _milliseconds(step: Callable[[], object]) -> float:
    taken = []
    for _ in range(RUNS):
        begin = time.perf_counter()
        step()
        taken.append(time.perf_counter() - begin)
    return 1000 * statistics.median(taken)


if __name__ == "__main__":
    main()

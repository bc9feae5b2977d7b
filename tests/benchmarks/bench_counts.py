"""Ratios of the closed form: cost against the count, and the time of a pattern of 200 rows. Run it as a script."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "service"), str(ROOT / "schema")]

from counterpane.craft.counts import count, work  # noqa: E402
from counterpane.craft.rows.read import read_row  # noqa: E402
from counterpane.seeding import load_vocabulary  # noqa: E402

ROWS = (
    "k4, *yo, ssk, k1, k2tog, yo, k3; rep from * to last 4 sts, k4",
    "purl",
    "k4, *k2, [k1, p1] twice, k2; rep from * to last 4 sts, k4",
    "p4, *p2tog, p2, [p1, yo] twice, p2tog; rep from * to last 4 sts, p4",
)
REPEATS = 50
ROUNDS = 25


def best_of(*actions: Callable[[], object]) -> list[float]:
    """Return the least seconds that each action took, worked by turns so that all meet the same machine."""
    times: list[list[float]] = [[] for _ in actions]
    for _ in range(ROUNDS):
        for action, taken in zip(actions, times, strict=True):
            began = perf_counter()
            action()
            taken.append(perf_counter() - began)
    return [min(taken) for taken in times]


def main() -> None:
    """Print the ratios; none of them is asserted."""
    vocabulary = load_vocabulary()
    rows = [read_row(text, vocabulary).parts for text in ROWS] * REPEATS
    small, large = 8 * 12 + 8, 8 * 125_000_000 + 8
    at_small, at_large, derived = best_of(
        lambda: work(rows, small, vocabulary),
        lambda: work(rows, large, vocabulary),
        lambda: count(rows, vocabulary),
    )
    print(f"work on {len(rows)} rows at {large} stitches against {small}: {at_large / at_small:.2f} times as long")
    print(f"work on {len(rows)} rows at {small} stitches: {at_small * 1000:.1f} ms")
    print(f"count on {len(rows)} rows: {derived * 1000:.1f} ms, {derived / at_small:.2f} times one check")


if __name__ == "__main__":
    main()

"""The checker on patterns of 500 rows in 1 and in 8 sizes: milliseconds, ratio, peak of memory. Run it as a script."""

from __future__ import annotations

import sys
import tracemalloc
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "service"), str(ROOT / "schema")]

from counterpane.collecting import collect_seldom  # noqa: E402
from counterpane.library.texts.checks import check_text  # noqa: E402
from counterpane.seeding import load_vocabulary  # noqa: E402

BEST_OF = 5
ROWS = 500
SIZES = 8
WANTED_MS, WANTED_MIB = 150, 64


def listed(numbers: list[int]) -> str:
    """Print one number a size: "95 (113, 131)"; the number alone where it is the same in all."""
    first, *others = map(str, numbers)
    return first if len(set(numbers)) == 1 else f"{first} ({', '.join(others)})"


def cast_on(sizes: int) -> list[int]:
    """Return the stitches of each size: edges of 3 and up, and 8 or more repeats of 10 stitches between them."""
    return [2 * (3 + size) + 10 * (8 + 2 * size) for size in range(sizes)]


def lace(sizes: int) -> str:
    """Write lace between edges that grow with the size, plain rows on the wrong side, repeat lines every 20 rows."""
    edge = listed([3 + size for size in range(sizes)])
    lines = [f"Cast on {listed(cast_on(sizes))} sts."]
    for number in range(1, ROWS + 1, 2):
        lace = ("yo, ssk, k5, k2tog, yo, k1", "k1, yo, ssk, k3, k2tog, yo, k2", "k2, yo, ssk, k1, k2tog, yo, k3")[
            number % 3
        ]
        lines.append(f"Row {number} (RS): K{edge}, *{lace}; rep from * to last {edge} sts, k{edge}.")
        lines.append(f"Row {number + 1} (WS): Purl.")
        if number % 20 == 19:
            lines.append(f"Rep last 20 rows {listed([2 + size for size in range(sizes)])} times more.")
    return "\n".join(lines) + "\n"


def different(sizes: int) -> str:
    """Write rows of which no two are alike, each with lists."""
    counts = cast_on(sizes)
    lines = [f"Cast on {listed(counts)} sts."]
    for number in range(1, ROWS + 1):
        begin = [number % 13 + 1 + size for size in range(sizes)]
        left = [6 + (count - first) % 6 + number % 2 * 6 for count, first in zip(counts, begin, strict=True)]
        stitch = "kp"[number % 2]
        lines.append(
            f"Row {number}: {stitch.upper()}{listed(begin)}, *{stitch}2tog, yo, k{number // 13 % 3 + 1}, "
            f"p{3 - number // 13 % 3}; rep from * to last {listed(left)} sts, {stitch}{number % 5 + 1}, k to end."
        )
    return "\n".join(lines) + "\n"


def seconds(text: str) -> float:
    """Return the least time of several checks of a text."""
    vocabulary = load_vocabulary()
    times = []
    for _ in range(BEST_OF):
        began = perf_counter()
        check_text(text, vocabulary)
        times.append(perf_counter() - began)
    return min(times)


def peak(text: str) -> float:
    """Return the most memory that a check takes beside the vocabulary, in MiB."""
    vocabulary = load_vocabulary()
    check_text("Row 1: K1.", vocabulary)
    tracemalloc.start()
    check_text(text, vocabulary)
    most = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    return most / 2**20


def errors(text: str) -> int:
    """Return how many errors a check finds in all sizes."""
    answer = check_text(text, load_vocabulary())
    return sum(found["severity"] == "error" for size in answer["sizes"] or (answer,) for found in size["findings"])


def main() -> None:
    """Print the figures; none of them is asserted."""
    collect_seldom()
    for name, write in (("lace with repeat lines", lace), ("rows all different", different)):
        if errors(write(SIZES)) or errors(write(1)):
            raise SystemExit(f"{name}: the pattern measured has errors")
        one, many = seconds(write(1)), seconds(write(SIZES))
        print(
            f"{name}, {ROWS} rows: {one * 1000:.0f} ms in 1 size, {many * 1000:.0f} ms in {SIZES} (wanted: {WANTED_MS})"
        )
        print(f"  ratio {many / one:.2f}, peak {peak(write(SIZES)):.1f} MiB (wanted: under {WANTED_MIB})")


if __name__ == "__main__":
    main()

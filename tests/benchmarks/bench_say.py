"""Saying rows back: how the time grows with a row of many parts and with a text. Run it as a script."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "service"), str(ROOT / "schema")]

from bench_checks import text_of  # noqa: E402

from counterpane.craft.checking import examine  # noqa: E402
from counterpane.craft.rows.say import say_row  # noqa: E402
from counterpane.craft.rows.tree import Group, Node, Work  # noqa: E402
from counterpane.library.texts.rewording import Manner, reworded, said_rows  # noqa: E402
from counterpane.seeding import load_vocabulary  # noqa: E402

BEST_OF = 5
VOCABULARY = load_vocabulary()
UK = Manner(VOCABULARY, "uk", "full")


def row_of(parts: int) -> tuple[Node, ...]:
    """Return a row of so many parts, where every yarn-over is named by its neighbours."""
    some: tuple[Node, ...] = (Work("k", 2), Work("yo"), Group((Work("p2tog"), Work("yo")), 2), Work("p"))
    return some * (parts // len(some))


def seconds(work: Callable[[], object]) -> float:
    """Return the least time of several runs."""
    times = []
    for _ in range(BEST_OF):
        began = perf_counter()
        work()
        times.append(perf_counter() - began)
    return min(times)


def row_seconds(parts: int) -> float:
    """Return the time to say a row in full words in UK terms."""
    row = row_of(parts)
    return seconds(lambda: say_row(row, VOCABULARY, "uk", "full"))


def text_seconds(rows: int) -> float:
    """Return the time to say an examined text, without reading and following it."""
    examined = examine(text_of(rows), VOCABULARY)
    return seconds(lambda: reworded(examined.text, said_rows(examined, UK), UK))


def main() -> None:
    """Print the figures; none of them is asserted."""
    print(f"a row of 40,000 parts against one of 10,000: ratio {row_seconds(40_000) / row_seconds(10_000):.2f}")
    print(f"a text of 400 rows against 100: ratio {text_seconds(400) / text_seconds(100):.2f}")


if __name__ == "__main__":
    main()

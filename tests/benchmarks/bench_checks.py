"""The checker: milliseconds for a pattern of 200 rows, and how the time grows with the text. Run it as a script."""

from __future__ import annotations

import sys
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "service"), str(ROOT / "schema")]

from counterpane.library.texts.checks import check_text  # noqa: E402
from counterpane.seeding import load_vocabulary  # noqa: E402

BEST_OF = 7


def text_of(rows: int) -> str:
    """Write a pattern of so many different rows over 141 stitches."""
    lines = [
        f"Row {2 * i + 1} (RS): K{i % 7 + 1}, *k2tog, yo, k4; rep from * to last {(140 - i % 7) % 6 + 6} sts, "
        "k to end.\n"
        f"Row {2 * i + 2} (WS): Purl."
        for i in range(rows // 2)
    ]
    return "Cast on 141 sts.\n" + "\n".join(lines) + "\n"


def is_clean(text: str) -> bool:
    """Tell whether the checker has nothing to say of a text."""
    return not check_text(text, load_vocabulary())["findings"]


def seconds(text: str) -> float:
    """Return the least time of several checks of a text."""
    vocabulary = load_vocabulary()
    times = []
    for _ in range(BEST_OF):
        began = perf_counter()
        check_text(text, vocabulary)
        times.append(perf_counter() - began)
    return min(times)


def main() -> None:
    """Print the figures; none of them is asserted."""
    if not is_clean(text_of(200)):
        raise SystemExit("the pattern measured has findings")
    small, large = seconds(text_of(200)), seconds(text_of(400))
    print(f"a pattern of 200 rows: {small * 1000:.1f} ms (wanted: at most 50)")
    print(f"400 rows against 200: ratio {large / small:.2f}")


if __name__ == "__main__":
    main()

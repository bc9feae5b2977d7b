"""Labels of 10 and of 100 yarns of 50 fibres each: milliseconds, and how they grow. Run it as a script."""

from __future__ import annotations

import sys
from pathlib import Path
from time import perf_counter
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "service"), str(ROOT / "schema")]

from counterpane.library.yarn.labels import label  # noqa: E402
from counterpane.seeding.facts import facts_by_name  # noqa: E402

BEST_OF = 3
MOST_YARNS, MOST_FIBRES = 100, 50
FEW = 10


def yarns(many: int) -> list[dict[str, Any]]:
    """Return yarns of as many fibres as a request may have, each of another mass."""
    values = [fact["value"] for fact in FACTS.values() if isinstance(fact["value"], dict)]
    names = [value["name"] for value in values if "allowance" in value]
    share = 100 // MOST_FIBRES
    return [
        {
            "grams": 3.1 + 7 * number,
            "fibres": [
                {"fibre": names[(number + place) % len(names)], "percent": share} for place in range(MOST_FIBRES)
            ],
            "care": {"washing": "hand 30"},
        }
        for number in range(many)
    ]


def milliseconds(many: int) -> float:
    """Return the best time for the label of so many yarns in five markets."""
    content = {"yarns": yarns(many), "markets": ["UK", "EU", "US", "CA", "AU"]}
    best = float("inf")
    for _ in range(BEST_OF):
        begin = perf_counter()
        label(content, FACTS)
        best = min(best, perf_counter() - begin)
    return 1000 * best


FACTS = facts_by_name()

if __name__ == "__main__":
    few, many = milliseconds(FEW), milliseconds(MOST_YARNS)
    print(f"{FEW} yarns {few:.0f} ms, {MOST_YARNS} yarns {many:.0f} ms: {many / few:.1f} times for ten times the yarns")

"""Requests that work, of test knits, answers and pieces; they follow those of `examples` on the page."""

from __future__ import annotations

from typing import Any

from counterpane.api.operations import Example

SLUG = "first-frost"
PLACE = {"slug": SLUG, "number": "1"}
LISTED = (Example({"slug": SLUG}),)
CORRECTIONS = (Example(PLACE), Example(PLACE, query={"as": "text", "terms": "uk"}))
TAKEN_BACK = {"say": "It was weighed wet."}
TEST_KNIT: dict[str, Any] = {
    "whose": "Odile",
    "on": "2026-12-12",
    "yarn": "an invented wool",
    "metres_per_100g": 230,
    "needle_mm": 4,
    "unwashed": {"stitches": 23, "rows": 31, "width_cm": 68, "length_cm": 88},
    "washed": {"stitches": 22.5, "rows": 30, "width_cm": 69, "length_cm": 90.5},
    "grams": 352,
    "hours": 31,
    "queries": [{"section": "body", "row": 3, "question": "Is the slipped edge worked on this row too?"}],
}
ANSWER: dict[str, Any] = {
    "whose": "Ines",
    "section": "body",
    "row": 3,
    "question": "Is the slipped edge worked on this row too?",
    "answer": "Yes, on every row that faces you.",
}
PIECE: dict[str, Any] = {
    "whose": "Odile",
    "on": "2026-12-14",
    "yarn": "an invented wool",
    "dye_lot": "7714",
    "labels": ["100 % wool"],
    "care": "Wool wash at 30 °C, dry flat.",
    "washed": True,
    "weighed_g": 352,
    "width_cm": 69,
    "length_cm": 90.5,
    "openings": [{"mm": 3.5, "found_by": "rod", "where": "at the slipped edge"}],
}

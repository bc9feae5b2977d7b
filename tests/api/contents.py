"""Contents to send: invented parts, no check of anything outside the API."""

from __future__ import annotations

from typing import Any

RIB: dict[str, Any] = {
    "slug": "four-rib",
    "kind": "body",
    "name": "Four rib",
    "summary": "Two knit, two purl, balanced by two.",
    "reversible": "yes",
    "versions": [
        {
            "name": "a multiple of 4 plus 2",
            "rows": "Row 1 (RS): k2, *p2, k2; rep from * to end.\nRow 2 (WS): p2, *k2, p2; rep from * to end.\n",
        }
    ],
    "examples": [{"stitches": 22, "after": [22, 22]}],
    "safety": {"loose_yarn": "none", "floats": "none", "openings": "none", "ties": "none", "fibre": "not known"},
    "provenance": {"source": "common-practice", "licence": "CC0-1.0", "author": "anna"},
}
CAST_ON: dict[str, Any] = {
    "slug": "long-tail",
    "kind": "cast-on",
    "name": "Long-tail cast-on",
    "summary": "Two strands.",
    "operation": {"steps": ["Make loops."], "least": 1, "turn": True, "faces_row_1": "bumps"},
    "safety": {},
    "provenance": RIB["provenance"],
}
BIND_OFF: dict[str, Any] = CAST_ON | {
    "slug": "plain-bind-off",
    "kind": "bind-off",
    "name": "Plain bind-off",
    "operation": {"steps": ["Pass one stitch over the next."], "least": 1},
}
GARTER: dict[str, Any] = RIB | {
    "slug": "garter-border",
    "kind": "border",
    "name": "Garter border",
    "summary": "Every row knit.",
    "across_corner": True,
    "parameters": [
        {"name": "rows", "least": 1, "default": 12},
        {"name": "stitches", "least": 1, "default": 6},
    ],
    "versions": [{"name": "any", "rows": "Row 1 (RS): knit.\nRow 2 (WS): knit.\n"}],
    "examples": [{"stitches": 6, "after": [6, 6]}],
}
BLANKET: dict[str, Any] = {
    "slug": "ribbed-blanket",
    "name": "Ribbed blanket",
    "summary": "An invented blanket.",
    "parts": {"body": "four-rib"},
    "gauge": {"stitches": 22.5, "rows": 30, "over_cm": 10},
    "size": {"width_cm": 70.2, "length_cm": 90},
}
WARD: dict[str, Any] = {
    "slug": "ward-3",
    "name": "Ward 3",
    "dated": "2026-10-01",
    "source": "an invented leaflet",
    "items": [
        {"says": "No holes over 5.5 mm.", "input": "hole_mm", "at_most": 5.5},
        {"says": "At least 60 cm wide.", "input": "width_cm", "at_least": 60},
        {"says": "No perfume."},
    ],
}
YARN: dict[str, Any] = {"ball_g": 50, "ball_m": 115}
FOR: dict[str, Any] = {"age_months": [0, 12], "use": "pram", "markets": ["UK"], "mass_g": 5, "hole_mm": 1}

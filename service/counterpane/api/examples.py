"""Requests that work on a library with the starters: shown on the API page, and sent by a test."""

from __future__ import annotations

from typing import Any

from counterpane.api.operations import Example

SHA256 = "$SHA256"
"""Stands for the hash of a revision, which nobody can know beforehand."""

ALL = (Example(),)
COMPONENT = (Example({"slug": "garter-border"}),)
COMPONENT_REVISION = (Example({"slug": "garter-border", "sha256": SHA256}),)
LISTED = (
    Example(query={"kind": "body", "admits": 139}),
    Example(query={"q": "moss", "reversible": "yes", "limit": 5}),
    Example(query={"width_cm": "60..80", "gauge": "21x28", "row_repeat": "2..8", "lies_flat": "likely"}),
    Example(query={"goes_with": "garter-rib-border", "difficulty": "easy", "facets": "yes"}),
    Example(query={"like": "seed-stitch", "like_percent": 70}),
)
COMPANIONS = (Example({"slug": "waffle"}, query={"count": 139, "kind": "border"}),)
ALIKE = (Example({"slug": "seed-stitch"}), Example({"slug": "waffle"}, query={"percent": 70, "limit": 5}))
MATRIX = (Example(query={"body": "waffle", "count": 139}), Example(query={"part": "garter-rib-border"}))

WAVE: dict[str, Any] = {
    "slug": "rice-ridge",
    "kind": "body",
    "name": "Rice ridge",
    "summary": "A purl ridge on every fourth row, with single purls between.",
    "reversible": "no",
    "versions": [
        {
            "name": "odd counts",
            "rows": "Row 1 (RS): knit.\nRow 2 (WS): purl.\n"
            "Row 3 (RS): k1, *p1, k1; rep from * to end.\nRow 4 (WS): knit.\n",
        }
    ],
    "examples": [{"stitches": 21, "after": [21, 21, 21, 21]}, {"stitches": 3, "after": [3, 3, 3, 3]}],
    "safety": {"loose_yarn": "none", "floats": "none", "openings": "none", "ties": "none", "fibre": "not known"},
    "provenance": {"source": "common-practice", "licence": "CC0-1.0", "author": "anna"},
}
IN_WORDS: dict[str, Any] = {
    "text": "Pea rows\n(multiple of 2 sts plus 1)\nRow 1 (RS): Knit.\nRow 2: K1, *p1, k1; rep from * to end.\n",
    "kind": "body",
    "licence": "CC0-1.0",
    "author": "anna",
    "source": "common-practice",
}
COMPONENT_ADDED = (Example(body=WAVE), Example(body=IN_WORDS))
COMPONENT_REVISED = (
    Example(
        {"slug": "rice-ridge"},
        body=WAVE | {"summary": "A purl ridge on every fourth row, and single purls between the ridges."},
    ),
)

BLANKET: dict[str, Any] = {
    "construction": "one-piece",
    "parts": {
        "cast_on": "long-tail",
        "bottom": {"component": "garter-border", "rows": 16},
        "sides": {"component": "garter-border", "stitches": 6},
        "selvedge": "slipped-selvedge",
        "body": "waffle",
        "top": {"component": "garter-border", "rows": 16},
        "bind_off": "plain-bind-off",
    },
    "gauge": [
        {"in": "waffle", "stitches": 22, "rows": 30, "over_cm": 10},
        {"in": "garter-border", "stitches": 20.5, "rows": 42, "over_cm": 10},
    ],
    "size": {"width_cm": 70, "length_cm": 90},
}
SMALL: dict[str, Any] = {
    "parts": {
        "body": {
            "text": "Row 1 (RS): *k2, p2; rep from * to last 2 sts, k2.\n"
            "Row 2 (WS): *p2, k2; rep from * to last 2 sts, p2."
        }
    },
    "gauge": {"stitches": 20, "rows": 28, "over_cm": 10},
    "size": {"width_in": 28, "length_in": 36},
    "for": {"age_months": [0, 12], "use": "pram", "markets": ["UK"]},
}
YARN: dict[str, Any] = {
    "name": "an invented wool",
    "weight": "double knitting",
    "fibre": [{"fibre": "wool", "percent": 75}, {"fibre": "polyamide", "percent": 25}],
    "ball_g": 50,
    "ball_m": 115,
    "swatch": {"mass_g": 18.9, "stitches": 37, "rows": 60, "scale_g": 0.1},
}
IN_YARN: dict[str, Any] = {**BLANKET, "yarn": YARN}
PLAN = (
    Example(body=IN_YARN),
    Example(body=BLANKET),
    Example(body=SMALL),
    Example(body=BLANKET | {"size": {"named": "pram"}}),
)
LARGEST = (
    Example(body={**IN_YARN, "have": {"balls": 7}}),
    Example(body={**IN_YARN, "have": {"grams": 350}, "keep": "width"}),
)
SUBSTITUTES = (
    Example(
        body={
            "from": {"metres_per_100g": 230},
            "to": {"name": "a fine wool", "metres_per_100g": 420, "ball_g": 50, "strands": 2},
            "amount": {"grams": 350},
        }
    ),
    Example(body={"from": {"weight": "double knitting"}, "to": {"nm": 4}}),
)
MIDWAY = (
    Example(body={**IN_YARN, "at": {"rows_done": 112, "left_g": 210, "used_g": 152}}),
    Example(body={**BLANKET, "at": {"rows_done": 60, "measured": {"width_cm": 72, "length_cm": 14.6, "rows": 44}}}),
)
ON_NEEDLE = (
    Example(body={**BLANKET, "at": {"row": 47}}),
    Example(body={**BLANKET, "at": {"row": 47, "stitches": 149, "sure": 40}, "terms": "uk"}),
)
WHERE = (
    Example(body=BLANKET),
    Example(body={**BLANKET, "seen": {"length_cm": "31", "part": "body", "needle": "WS: k4 / p4"}, "terms": "uk"}),
)
SHEET_OF_A_PATTERN = Example(body=BLANKET | {"units": "in", "sheet": "designer", "designer": "Ines"})
PATTERN = (
    Example(body=BLANKET | {"terms": "uk", "as": "markdown", "title": "Waffle blanket"}),
    Example(body=BLANKET),
    SHEET_OF_A_PATTERN,
)
DRAWING = tuple(
    Example(body=BLANKET | {"view": view, "title": "Waffle blanket"}) for view in ("schematic", "chart", "fabric")
)

RECIPES_LISTED = (Example(query={"q": "frost", "limit": 10}),)
RECIPE = (Example({"slug": "first-frost"}),)
RECIPE_REVISION = (Example({"slug": "first-frost", "sha256": SHA256}),)
KEPT_BLANKET: dict[str, Any] = {"slug": "rice-blanket", "name": "Rice blanket", "summary": "An example.", **BLANKET}
RECIPE_ADDED = (Example(body=KEPT_BLANKET),)
EDITIONS = (Example({"slug": "first-frost"}),)
EDITION_PUBLISHED = (
    Example({"slug": "first-frost"}, body={"date": "2026-11-26"}),
    Example({"slug": "first-frost"}, body={"date": "2026-11-27", "sizes": [{"named": "preemie"}, {"named": "pram"}]}),
)
EDITION = (Example({"slug": "first-frost", "number": "1"}),)
EDITION_PATTERN = (Example({"slug": "first-frost", "number": "1"}, query={"terms": "uk", "as": "text"}),)
ERRATUM = (Example({"slug": "first-frost", "number": "2"}),)
TOUCHED = (Example({"slug": "waffle"}, query={"terms": "uk", "limit": 5}),)
RECIPE_REVISED = (
    Example(
        {"slug": "rice-blanket"},
        body=KEPT_BLANKET | {"summary": "An example, made longer.", "size": {"width_cm": 70, "length_cm": 100}},
    ),
)

CHECK = (
    Example(
        body={
            "text": "Cast on 20 sts.\nRow 1 (RS): K2, *p3, k3; rep from * to end.\n"
            "Row 2: *P3, k3; rep from * to last 2 sts, p2.\n"
        }
    ),
    Example(body={"text": "Row 1: *K2, p2; rep from * to last st, k1.\n", "cast_on": 24, "terms": "us"}),
)
ASKED: dict[str, Any] = {
    "text": "ribs.txt",
    "queries": [
        {"number": 1, "question": "Is the yarn held double?", "answer": "No.", "decision": "done"},
        {"number": 2, "question": "Is 12 meant?", "rule": "stated-count-wrong", "row": "1", "answer": "No, 11."},
    ],
}
SHEET = (
    Example(body={"text": "Cast on 10 sts.\nRow 1: K1, yo, k to end. (12 sts)\n", "style": "counterpane"}),
    Example(body={"text": "Cast on 10 sts.\nRow 1: K1, yo, k to end. (11 sts)\n", "sheet": ASKED}),
)
EXTRACT = (Example(body={"text": "Cast on 95 (113, 131) sts.\nRow 1: K4 (5, 6), p to end, k0 (0, 1).\n", "size": 2}),)
WORDING = (
    Example(
        body={
            "text": "Row 1 (RS): K2, *p3, k2; rep from * to last st, k1.\nRow 2: Bind off all sts.\n",
            "terms": "uk",
            "words": "full",
            "count": 133,
        }
    ),
    Example(body={"text": "Cast on 20 sts.\nRow 1: *K2, p2; rep from * to end.\n", "as": "markdown"}),
)
MEASURED = {
    "what": "hole_mm",
    "value": 4.5,
    "by": "A tester",
    "on": "2026-11-20",
    "yarn": "cotton, 435 tex",
    "gauge": {"stitches": 22, "rows": 30},
    "wash": "machine at 60 °C, tumble dried, twice",
}
SAFETY = (
    Example(body={"age_band": "3-12m", "use": "pram", "markets": ["UK"], "hole_mm": 6.9}),
    Example(body={"age_band": "preterm", "measured": [MEASURED], "profile": "neonatal-unit-oxford-relayed"}),
)
PROFILE = (Example(path={"slug": "neonatal-unit-oxford-relayed"}),)
PROFILE_REVISION = (Example({"slug": "neonatal-unit-oxford-relayed", "sha256": SHA256}),)
WARD: dict[str, Any] = {
    "slug": "ward-3",
    "name": "Ward 3, an invented one",
    "dated": "2026-10-01",
    "source": "invented for this example",
    "items": [{"says": "No holes over 5 mm.", "input": "hole_mm", "at_most": 5}, {"says": "No perfume."}],
}
PROFILE_ADDED = (Example(body=WARD),)
PROFILE_REVISED = (Example({"slug": "ward-3"}, body=WARD | {"dated": "2026-11-01"}),)
CARE = {
    "washing": "machine 40 mild",
    "bleaching": "none",
    "tumble_drying": "low",
    "ironing": "110 no steam",
    "dry_cleaning": "P",
}
LABEL = (
    Example(
        body={
            "yarns": [
                {
                    "name": "body",
                    "grams": 320,
                    "part": "body",
                    "fibre": [{"fibre": "merino", "percent": 75}, {"fibre": "nylon", "percent": 25}],
                    "superwash": True,
                    "care": CARE,
                },
                {
                    "name": "edge",
                    "grams": 46,
                    "part": "border",
                    "fibre": [{"fibre": "cotton", "percent": 100}],
                    "care": CARE | {"washing": "machine 60", "ironing": "200"},
                },
            ],
            "markets": ["UK", "US"],
            "stated": {"maker": "A. Maker"},
        }
    ),
    Example(
        body={
            "mass": "dry",
            "places": 1,
            "yarns": [
                {
                    "fibre": [
                        {"fibre": "wool", "percent": 10.30, "state": "carded"},
                        {"fibre": "polyamide", "percent": 50.00, "state": "staple"},
                        {"fibre": "cotton", "percent": 39.70, "state": "unbleached"},
                    ]
                }
            ],
            "markets": ["EU"],
        }
    ),
)
RULE = (Example({"slug": "row-runs-short"}),)
SWATCHES: dict[str, Any] = {
    "swatches": [
        {"in": "waffle", "stitches": 22, "rows": 30, "over_cm": 10, "washed": True},
        {"in": "waffle", "stitches": 33.5, "rows": 45, "over_cm": 15, "washed": True},
        {
            "in": "garter-border",
            "stitches": 20.5,
            "rows": 42,
            "over_cm": 10,
            "before": {"stitches": 20, "rows": 40, "over_cm": 10},
        },
    ],
    "size": {"named": "pram"},
    "within_cm": 0.5,
}
RANGE: dict[str, Any] = {name: value for name, value in BLANKET.items() if name != "size"} | {
    "sizes": [{"named": "preemie"}, {"named": "pram"}, {"name": "large", "width_cm": 90, "length_cm": 120}],
    "sample": 2,
    "borders": "in-proportion",
}
GRADE = (Example(body=RANGE),)
CLASSROOM: dict[str, Any] = {name: value for name, value in BLANKET.items() if name != "gauge"} | {
    "knitters": [
        {"gauge": {"stitches": 22, "rows": 30, "over_cm": 10}},
        {"label": "Ines", "gauge": {"stitches": 20, "rows": 28, "over_cm": 10}},
    ]
}
CLASS = (Example(body=CLASSROOM),)
LESSON = (Example(body=BLANKET | {"session_minutes": 90}), Example(body=BLANKET | {"hand": "left", "as": "html"}))
REGAUGE = (Example(body=BLANKET | {"to": {"in": "waffle", "stitches": 18, "rows": 25, "over_cm": 10}}),)
SWATCH = (Example(body=BLANKET | {"terms": "uk"}), Example(body=SMALL))
GAUGE = (Example(body=SWATCHES), Example(body={"swatches": [{"stitches": 9, "rows": 12, "over_in": 1.5}]}))
SIZE = (Example({"name": "pram"}),)
FACT = (Example({"name": "inch"}),)
OBJECT = (Example({"sha256": SHA256}),)
CHANGES = (Example(query={"after": 0, "limit": 5}),)
FEED = (Example(query={"limit": 5}), Example(query={"before": 10, "limit": 5}))

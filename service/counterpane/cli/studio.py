"""The scenario of the demonstration: a studio that does not exist, and yarns, gauges and sizes that nobody measured."""

from __future__ import annotations

from typing import Any

OPENING = """\
Ninepenny Loft is a knitting studio of three people and a kettle. It does not exist: the studio, its yarns, its \
gauges and its sizes are invented, and only the arithmetic is real.

Odile designs, Bram keeps the library of parts, Suri answers the other programs that ask for them. Before the \
first frost they want a season of baby blankets: {count} recipes, each in another texture, border and weight of yarn."""

MISFIT_TITLE = "Late August"
MISFIT_STORY = """\
Late in August Odile puts a rib border under the basket weave, and the needles will not have it."""

MISFIT: dict[str, Any] = {
    "construction": "one-piece",
    "parts": {
        "bottom": {"component": "garter-rib-border", "rows": 12},
        "sides": {"component": "garter-border", "stitches": 6},
        "body": "basket-weave",
        "top": {"component": "garter-rib-border", "rows": 12},
    },
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
    "size": {"width_cm": 70, "length_cm": 90},
}
"""Basket weave takes a multiple of 8 plus 4; with 6 stitches a side that is a multiple of 8, and the rib of the ends
takes a multiple of 4 plus 2."""

CLOSING = """\
Everything is in {place}:
  library.db   the library: parts and recipes with their revisions
  recipes/     the recipes as files, to change and plan again
  patterns/    {patterns} written patterns, each as text, Markdown, HTML and PDF
  token        a keeper's token for writing to the library over HTTP; keep it to yourself

Try next:
  {command} plan {place}/recipes/first-frost.toml
  {command} write {place}/recipes/first-frost.toml --as text --terms uk
  {command} check {place}/patterns/first-frost.txt"""

"""Closed lists of words that several requests take, and the command line with them; nothing else is loaded for them."""

from __future__ import annotations

KINDS = ("cast-on", "border", "selvedge", "body", "bind-off")
REVERSIBLE = ("yes", "both-good", "no")
DIFFICULTIES = ("basic", "easy", "intermediate", "complex")
LICENCES = ("CC0-1.0", "CC-BY-4.0", "CC-BY-SA-4.0")
USES = ("sleep", "pram", "car-seat", "floor", "lap", "display", "hospital")
SKILLS = (
    *("knit-and-purl", "slipped-stitches", "twisted-stitches", "crossings", "cables", "decreases", "lace"),
    *("lace-on-both-sides", "several-into-one", "bobbles", "row-below", "colours", "colours-in-a-row"),
)
AVOIDED = ("openings", "floats", "loose-yarn", "ties", "fringe", "curl", "one-sided", "wool")
MOST_PROPOSED = 12
JOTTINGS = ("test-knit", "answer", "piece")
"""What is noted of a recipe."""

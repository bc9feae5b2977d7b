"""The fabric that a trace leaves: faces, ridges, openings, strands, decreases, and whether both sides look alike.

All of it is read off the loops that were worked; millimetres are no part of it.
"""

from counterpane.craft.fabric.faces import Course, Look, from_rs, from_ws, ridges
from counterpane.craft.fabric.showing import Showing, showing
from counterpane.craft.fabric.sides import Reversible, reversible, sides_of_texture
from counterpane.craft.fabric.structure import (
    Decrease,
    Opening,
    decreases,
    longest_strand,
    misplaced_pairs,
    most_rows_slipped,
    on_double_yarn_over,
    openings,
)
from counterpane.craft.fabric.texture import Texture, marked, texture_of

__all__ = [
    "Course",
    "Decrease",
    "Look",
    "Opening",
    "Reversible",
    "Showing",
    "Texture",
    "decreases",
    "from_rs",
    "from_ws",
    "longest_strand",
    "marked",
    "misplaced_pairs",
    "most_rows_slipped",
    "on_double_yarn_over",
    "openings",
    "reversible",
    "ridges",
    "showing",
    "sides_of_texture",
    "texture_of",
]

"""The facts of a checked text: its rows followed from cast-on to the end. What to say of them is left to the rules."""

from counterpane.craft.checking.causes import odd_row, repeat_of_others
from counterpane.craft.checking.corrections import cause, pointing, said
from counterpane.craft.checking.examine import (
    Examined,
    TextCorrection,
    examine,
    examine_sizes,
    reexamine,
    trouble,
)
from counterpane.craft.checking.follow import Followed, Jam, Repeated, Walk, WrongCount
from counterpane.craft.checking.jamming import jammed
from counterpane.craft.checking.one_size import with_corrections

__all__ = [
    "Examined",
    "Followed",
    "Jam",
    "Repeated",
    "TextCorrection",
    "Walk",
    "WrongCount",
    "cause",
    "examine",
    "examine_sizes",
    "jammed",
    "odd_row",
    "pointing",
    "reexamine",
    "repeat_of_others",
    "said",
    "trouble",
    "with_corrections",
]

"""The facts of a checked text: its rows followed from cast-on to the end. What to say of them is left to the rules."""

from counterpane.craft.checking.causes import odd_row, repeat_of_others
from counterpane.craft.checking.edits import corrected_rows
from counterpane.craft.checking.examine import Examined, examine, odd_repeat, reexamine, trouble
from counterpane.craft.checking.follow import Followed, Jam, Repeated, Walk, WrongCount

__all__ = [
    "Examined",
    "Followed",
    "Jam",
    "Repeated",
    "Walk",
    "WrongCount",
    "corrected_rows",
    "examine",
    "odd_repeat",
    "odd_row",
    "reexamine",
    "repeat_of_others",
    "trouble",
]

"""The editor's sheet: what an editor asks the designer of a text, what was answered, and what became of it."""

from counterpane.craft.editing.places import Places, Spot, shortened
from counterpane.craft.editing.questions import question_of
from counterpane.craft.editing.recheck import rechecked
from counterpane.craft.editing.sheet import DECISIONS, STANDING, STATES, Decision, Query, Sheet, State

__all__ = [
    "DECISIONS",
    "STANDING",
    "STATES",
    "Decision",
    "Places",
    "Query",
    "Sheet",
    "Spot",
    "State",
    "question_of",
    "rechecked",
    "shortened",
]

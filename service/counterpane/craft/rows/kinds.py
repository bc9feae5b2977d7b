"""What begins at a place of a line: a labelled row, rows ordered without a label, a repeat line, a cast-on, an end."""

from __future__ import annotations

import re
from typing import Literal, TypeAlias

from counterpane.craft.rows.again import begins_again
from counterpane.craft.rows.labels import ENDINGS, label_at
from counterpane.craft.rows.row_orders import begins_order
from counterpane.craft.rows.statements import BINDING_OFF, CASTING_ON
from counterpane.craft.rows.words import Line

Kind: TypeAlias = Literal["row", "order", "again", "cast-on", "bind-off", "prose"]
# What every label, order, repeat line, cast-on and end holds: looked for first, since it is quickly told.
# Each way begins with a letter of its own, and a search passes over all other letters at once.
_MAY_BEGIN = re.compile(
    r"row|r(?:ou)?nd|r(?<=\br)\.?\s?\d|next\s?:|repeat|rep(?<=\brep)\b|cast|c\.o|c/o|co(?<=\bco)(?:\b|\d)|"
    r"chain off|bind|b(?<=\bb)/?o\b|until|needle|turn|set on|pick|inc(?<=\binc)|dec(?<=\bdec)|holder|held(?<=\bheld)\b|"
    r"first\.?\s?[:-]|second\.?\s?[:-]|third\.?\s?[:-]|th\.?\s?[:-]"
)
_MAY_NUMBER = re.compile(rf"\d(?:{'|'.join(ENDINGS)})\b")
# A stitch, a printed count and the call of a starred repeat begin nothing else: so begins most of what is looked at.
_WORKED = re.compile(r"[kp]\d|[(\[]\d|rep(?:eat)?\.? from \*")


def may_begin(line: Line) -> bool:
    """Tell whether anything but prose and the rest of a row can begin in a line; quick, and never wrongly no."""
    return bool(_MAY_BEGIN.search(line.text) or _MAY_NUMBER.search(line.text))


def kind_at(line: Line, index: int) -> Kind:
    """Tell what begins at an index of a line."""
    text, end = line.text, len(line.text)
    if _WORKED.match(text, index):
        return "prose"
    if begins_again(text, index, end):
        return "again"
    if label_at(text, index, end):
        return "row"
    if begins_order(text, index, end):
        return "order"
    if CASTING_ON.match(text, index):
        return "cast-on"
    return "bind-off" if BINDING_OFF.match(text, index) else "prose"

"""The cast-on and the bind-off in words."""

from __future__ import annotations

import re
from fractions import Fraction
from math import ceil

from counterpane.craft.component import Component, Operation
from counterpane.craft.constructions import Plan
from counterpane.craft.measures import CM_PER_INCH
from counterpane.craft.pairing.facts import SHOWN
from counterpane.craft.pattern import Edge
from counterpane.craft.pattern.parts import called
from counterpane.craft.pattern.rows import next_side
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.tree import Side
from counterpane.craft.stitches import Terms
from counterpane.craft.tails import BIND_OFF_WIDTHS, ROW_WIDTHS, bind_off_yarn, row_yarn

YARD_CM = 36 * CM_PER_INCH  # 36 inches by definition.
END_CM = Fraction(15)
"""An end to weave in: the shorter of the 15 to 20 cm of The Knitting Guild Association, winter 2023 to 2024."""
_NOT_KNOWN = Operation(("How it is worked is not recorded; use the way you know.",))


def cast_on(plan: Plan, terms: Terms) -> Edge:
    """Write the cast-on: its count, its steps, which face meets row 1 and whether one turns."""
    component = plan.request.cast_on.component
    operation = component.operation or _NOT_KNOWN
    count = plan.counts.cast_on
    notes = (*_turning(operation, plan.sections[0].first_row_side), *_about(component, operation, terms))
    return Edge(called(component, terms), f"Cast on {count} sts.", count, _steps(operation, terms), notes)


def bind_off(plan: Plan, terms: Terms) -> Edge:
    """Write the bind-off: on which side it is worked, over how many stitches, its steps."""
    component = plan.request.bind_off.component
    operation = component.operation or _NOT_KNOWN
    last = plan.sections[-1]
    line = in_terms(f"Bind off all {last.after} stitches on the {next_side(last)}.", terms)
    notes = (*_kept(operation, last.cm_width, terms), *_about(component, operation, terms))
    return Edge(called(component, terms), line, last.after, _steps(operation, terms), notes)


def _kept(operation: Operation, width_cm: Fraction, terms: Terms) -> tuple[str, ...]:
    """Say how much yarn to keep for the end; a cord takes more than the rules of thumb know of."""
    if operation.look == "cord":
        return ()
    row, all_off = (_metres_up(yarn(width_cm, END_CM)) for yarn in (row_yarn, bind_off_yarn))
    said = (
        f"Keep yarn for it: with an end to weave in a row takes about {row}, and the bind-off up to {all_off} "
        f"({ROW_WIDTHS} and {BIND_OFF_WIDTHS} widths of the piece, rules of thumb)."
    )
    return (in_terms(said, terms),)


def _metres_up(cm: Fraction) -> str:
    """Say centimetres in metres and yards, rounded up to a tenth and to a half so that the yarn is enough."""
    tenths, halves = ceil(cm / 10), ceil(2 * cm / YARD_CM)
    return f"{tenths // 10}.{tenths % 10} m ({halves // 2 or ''}{'½' if halves % 2 else ''} yd)"


def _steps(operation: Operation, terms: Terms) -> tuple[str, ...]:
    return tuple(in_terms(step, terms) for step in operation.steps)


def _turning(operation: Operation, first: Side) -> tuple[str, ...]:
    """Say whether to turn before row 1, and what faces the knitter on it."""
    if operation.turn is None:
        return (f"Whether to turn first is not recorded; row 1 is a {first} row.",)
    told = any(re.search(r"\bturn\b", step, re.IGNORECASE) for step in operation.steps)
    turn = "That makes row 1" if told else "Turn: row 1 is" if operation.turn else "Do not turn: row 1 is"
    return (f"{turn} a {first} row{_facing(operation.faces_row_1)}.",)


def _facing(face: str | None) -> str:
    if face is None or face == "no difference":
        return ""
    return f", with the {face} of the cast-on towards you"


def _about(component: Component, operation: Operation, terms: Terms) -> tuple[str, ...]:
    stretch = f"Stretch: {operation.stretch}." if operation.stretch else ""
    look = f"It shows {SHOWN[operation.look]} on the side that faces you." if operation.look else ""
    notes = (stretch, look, component.gauge_notes)
    return tuple(in_terms(note, terms) for note in notes if note)

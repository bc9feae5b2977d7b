"""The cast-on and the bind-off in words."""

from __future__ import annotations

import re

from counterpane.craft.component import Component, Operation
from counterpane.craft.constructions import Plan
from counterpane.craft.pairing.facts import SHOWN
from counterpane.craft.pattern import Edge
from counterpane.craft.pattern.parts import called
from counterpane.craft.pattern.rows import next_side
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.tree import Side
from counterpane.craft.stitches import Terms

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
    notes = _about(component, operation, terms)
    return Edge(called(component, terms), line, last.after, _steps(operation, terms), notes)


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

"""Changes of a request at JSON pointers, and which of them make it possible."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Literal, cast

from counterpane.craft.constructions import Corner, Part, PlanRequest
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.gauging import parts_of
from counterpane.craft.constructions.making import attempt
from counterpane.craft.findings import Correction
from counterpane.craft.measures import CM_PER_INCH, inches

MOST_OFFERED = 3
"""Corrections offered for one fault; house figure."""

MOST_TRIED = 24
"""Changes tried before the search ends; house figure that bounds time."""


def amended(request: PlanRequest, change: Correction) -> PlanRequest:
    """Return the request with the change made; KeyError for a pointer to what it does not hold."""
    if change.value is None:
        return _without(request, change.pointer)
    match change.pointer.split("/")[1:]:
        case ["construction"] if change.value == "one-piece":
            return replace(request, construction="one-piece", sides=request.picked, picked=None)
        case ["size", name]:
            return _with_size(request, name, Fraction(change.value))
        case ["corner"]:
            return replace(request, corner=cast("Corner", change.value))
        case ["parts", "body", name]:
            return replace(request, body=(_part(request.body[0], name, change.value),))
        case ["parts", "body", index, name]:
            place = int(index)
            return replace(request, body=_with(request.body, place, _part(request.body[place], name, change.value)))
        case ["parts", ("bottom" | "top") as place]:
            return _with_component(request, place, str(change.value))
        case ["parts", "sides", name] if request.picked is not None:
            return replace(request, picked=_part(request.picked, name, change.value))
        case ["parts", place, name]:
            return _with_edge(request, place, name, change.value)
        case _:
            raise KeyError(change.pointer)


def _without(request: PlanRequest, pointer: str) -> PlanRequest:
    if pointer != "/parts/selvedge":
        raise KeyError(pointer)
    return replace(request, selvedge=None)


def size_change(request: PlanRequest, name: Literal["width", "length"], cm: Fraction, why: str) -> Correction:
    """Return the change of a size to at least these centimetres, in whole units of the request."""
    unit = request.units[0 if name == "width" else 1]
    return Correction(f"/size/{name}_{unit}", ceil(cm / CM_PER_INCH if unit == "in" else cm), why)


def _with_size(request: PlanRequest, name: str, value: Fraction) -> PlanRequest:
    side, _, unit = name.partition("_")
    cm = inches(value) if unit == "in" else value
    if side == "width":
        return replace(request, width_cm=cm)
    return replace(request, length_cm=cm)


def _with_edge(request: PlanRequest, place: str, name: str, value: int | str) -> PlanRequest:
    """Return the request with one border, side or selvedge changed."""
    parts = {"bottom": request.bottom, "top": request.top, "sides": request.sides, "selvedge": request.selvedge}
    part = parts[place]
    if part is None:
        raise KeyError(place)
    parts[place] = _part(part, name, value)
    return replace(request, bottom=parts["bottom"], top=parts["top"], sides=parts["sides"], selvedge=parts["selvedge"])


def _with_component(request: PlanRequest, place: str, slug: str) -> PlanRequest:
    """Return the request with another of its own components as an end border."""
    part = next(Part(part.component) for part in parts_of(request) if part.component.slug == slug)
    return replace(request, bottom=part) if place == "bottom" else replace(request, top=part)


def _part(part: Part, name: str, value: int | str) -> Part:
    if name not in ("rows", "stitches"):
        raise KeyError(name)
    return replace(part, rows=int(value)) if name == "rows" else replace(part, stitches=int(value))


def _with(parts: tuple[Part, ...], place: int, part: Part) -> tuple[Part, ...]:
    return (*parts[:place], part, *parts[place + 1 :])


def working(made: Attempt, changes: Iterable[Correction], most: int = MOST_OFFERED) -> tuple[Correction, ...]:
    """Return the first few changes, in the order given, with each of which alone a plan can be made.

    Where several parts are at fault by themselves, a change that leaves only the other faults is one of those needed.
    """
    found: list[Correction] = []
    for tried, change in enumerate(dict.fromkeys(changes)):
        if len(found) == most or tried == MOST_TRIED:
            break
        changed = attempt(amended(made.request, change), made.vocabulary)
        if changed.plan is not None or set(changed.obstacles) < set(made.obstacles):
            found.append(change)
    return tuple(found)


def working_together(made: Attempt, changes: tuple[Correction, ...]) -> tuple[Correction, ...]:
    """Return all changes if a plan can be made with all of them, none if it cannot."""
    request = made.request
    for change in changes:
        request = amended(request, change)
    return changes if changes and attempt(request, made.vocabulary).plan is not None else ()

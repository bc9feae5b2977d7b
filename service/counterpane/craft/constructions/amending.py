"""Changes of a request at JSON pointers, and which of them make it possible."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from typing import cast

from counterpane.craft.constructions import Corner, Part, PlanRequest
from counterpane.craft.constructions.making import attempt
from counterpane.craft.findings import Correction
from counterpane.craft.stitches import Vocabulary

MOST_OFFERED = 3
"""Corrections offered for one fault; house figure."""

MOST_TRIED = 24
"""Changes tried before the search ends; house figure that bounds time."""


def amended(request: PlanRequest, change: Correction) -> PlanRequest:
    """Return the request with the change made; KeyError for a pointer to what it does not hold."""
    match change.pointer.split("/")[1:]:
        case ["size", "width_cm"]:
            return replace(request, width_cm=Fraction(change.value))
        case ["size", "length_cm"]:
            return replace(request, length_cm=Fraction(change.value))
        case ["corner"]:
            return replace(request, corner=cast("Corner", change.value))
        case ["parts", "body", name]:
            return replace(request, body=(_part(request.body[0], name, change.value),))
        case ["parts", "body", index, name]:
            place = int(index)
            return replace(request, body=_with(request.body, place, _part(request.body[place], name, change.value)))
        case ["parts", place, name]:
            return _with_edge(request, place, name, change.value)
        case _:
            raise KeyError(change.pointer)


def _with_edge(request: PlanRequest, place: str, name: str, value: int | str) -> PlanRequest:
    """Return the request with one border, side or selvedge changed."""
    parts = {"bottom": request.bottom, "top": request.top, "sides": request.sides, "selvedge": request.selvedge}
    part = parts[place]
    if part is None:
        raise KeyError(place)
    parts[place] = _part(part, name, value)
    return replace(request, bottom=parts["bottom"], top=parts["top"], sides=parts["sides"], selvedge=parts["selvedge"])


def _part(part: Part, name: str, value: int | str) -> Part:
    if name not in ("rows", "stitches"):
        raise KeyError(name)
    return replace(part, rows=int(value)) if name == "rows" else replace(part, stitches=int(value))


def _with(parts: tuple[Part, ...], place: int, part: Part) -> tuple[Part, ...]:
    return (*parts[:place], part, *parts[place + 1 :])


def working(
    request: PlanRequest, vocabulary: Vocabulary, changes: Iterable[Correction], most: int = MOST_OFFERED
) -> tuple[Correction, ...]:
    """Return the first few changes with each of which alone a plan can be made, in the order given."""
    found: list[Correction] = []
    for tried, change in enumerate(dict.fromkeys(changes)):
        if len(found) == most or tried == MOST_TRIED:
            break
        if attempt(amended(request, change), vocabulary).plan is not None:
            found.append(change)
    return tuple(found)


def working_together(
    request: PlanRequest, vocabulary: Vocabulary, changes: tuple[Correction, ...]
) -> tuple[Correction, ...]:
    """Return all changes if a plan can be made with all of them, none if it cannot."""
    for change in changes:
        request = amended(request, change)
    return changes if changes and attempt(request, vocabulary).plan is not None else ()

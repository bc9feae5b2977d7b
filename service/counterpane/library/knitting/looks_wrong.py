"""Faults that a count does not find, as JSON values: what each row invites, how it shows, and the way back."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.helping import WorkedRow
from counterpane.craft.helping.back import WayBack, way_back
from counterpane.craft.helping.rows import worked_rows
from counterpane.craft.helping.suspects import LOOKED_AT
from counterpane.craft.helping.unseen import Fault, faults
from counterpane.craft.helping.unseen_told import CORRECT, looks, said
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.stitches import Terms, Vocabulary


def looks_wrong(
    plan: Plan, number: int, pace: Fraction | None, vocabulary: Vocabulary, terms: Terms
) -> list[dict[str, Any]]:
    """Return the faults that a row invites and a count does not find, each with the way back once it shows."""
    found = faults(plan, number, vocabulary)
    if not found:
        return []
    last = max(each.shows_after for each in found)
    rows = worked_rows(plan, max(1, number - LOOKED_AT + 1), last, vocabulary)
    return [
        _said(each, number, vocabulary, terms) | {"back": way_json(_back(each, rows, number), False, pace)}
        for each in found
    ]


def way_json(way: WayBack, ladder: bool, pace: Fraction | None) -> dict[str, Any]:
    """Return a way back as JSON values; `ladder` says whether letting one stitch down would do."""
    return {
        "undone": way.undone,
        "again": way.again,
        "onto_row": way.onto,
        "ladder": ladder,
        "minutes": list(way.minutes(pace)),
    }


def _back(fault: Fault, rows: Sequence[WorkedRow], number: int) -> WayBack:
    """Return the way back from the row after which the fault shows."""
    return way_back([row for row in rows if row.number <= fault.shows_after], number)


def _said(fault: Fault, number: int, vocabulary: Vocabulary, terms: Terms) -> dict[str, Any]:
    return {
        "kind": fault.kind,
        "said": in_terms(said(fault, vocabulary, terms), terms),
        "shows_after": fault.shows_after,
        "meant": fault.meant,
        "turned_to": fault.turned_to,
        "looks": in_terms(looks(fault, number), terms),
        "correct": in_terms(CORRECT[fault.kind], terms),
    }

"""Edges that have more stitches in some rows than in others: a part ends where they have their own count."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product
from typing import Any

import pytest

from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.amending import amended
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.making import attempt
from counterpane.craft.findings import Finding
from counterpane.craft.rules.fitting.edge_out_of_step import edge_out_of_step
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace

from .asking import Starters, asked

TWO = "Row 1 (RS): K2, yo, k2.\nRow 2: K2, k2tog, k1."
THREE = "Row 1: K2, yo, k2.\nRow 2: K2, yo, k3.\nRow 3: K2, k2tog, k2tog."
FOUR = "Row 1 (RS): K2, yo, k2.\nRow 2: K5.\nRow 3: K2, k2tog, k1.\nRow 4: K4."
BODIES = ("Row 1: Knit.", "Row 1 (RS): Knit.\nRow 2: Purl.\nRow 3: Knit.", "Row 1 (RS): Knit.\nRow 2: Purl.")
ENDS = {"text": "Row 1: Knit.", "rows": 8}


def tried(starters: Starters, vocabulary: Vocabulary, body: object, **parts: Any) -> Attempt:
    """Work out a request for a small piece."""
    return attempt(asked(starters, vocabulary, body, 20, 12, **parts), vocabulary)


def worked(plan: Plan, vocabulary: Vocabulary) -> list[int | None]:
    """Work all rows of a plan loop by loop from its cast-on and return the stitches at the end of each section."""
    rows = [section.cycle[row % len(section.cycle)] for section in plan.sections for row in range(section.rows)]
    steps = trace([row.parts for row in rows], plan.counts.cast_on, vocabulary, [row.side for row in rows]).steps
    ends = [section.first_row + section.rows - 2 for section in plan.sections]
    return [steps[end].after for end in ends]


def told(made: Attempt) -> tuple[Finding, ...]:
    """Return what the rule says."""
    return tuple(edge_out_of_step.check(made))


@pytest.mark.parametrize("beside", [*product((TWO, THREE, FOUR), ("ends", "sides"))])
@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("rows", [None, 21, 22, 24])
def test_each_section_ends_on_the_count_that_it_says(
    beside: tuple[str, str], body: str, rows: int | None, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Whatever repeats stand side by side, a piece worked loop by loop has the counts of its plan, or has no plan."""
    sides, corner = beside
    part: Mapping[str, Any] = {"text": body} | ({} if rows is None else {"rows": rows})
    made = tried(starters, vocabulary, part, bottom=ENDS, top=ENDS, sides={"text": sides}, corner=corner)
    if made.plan is None:
        assert made.obstacles
    else:
        assert worked(made.plan, vocabulary) == [section.after for section in made.plan.sections]
        assert {section.before for section in made.plan.sections} == {made.plan.counts.cast_on}


def test_a_body_that_stops_within_the_repeat_of_its_sides_is_refused(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """After 21 rows borders that grow by a stitch in each odd row have one more each; 20 or 22 rows would do."""
    made = tried(starters, vocabulary, {"text": BODIES[0], "rows": 21}, sides={"text": TWO}, top=None)
    (found,) = told(made)
    assert found.pointer == "/parts/body/rows"
    assert "After 21 rows the side borders beside this part have 2 stitches more than they begin with" in found.message
    assert found.hint == "Stop after 22 or 20 rows."
    assert [change.value for change in found.changes] == [22, 20]


def test_where_no_number_of_rows_would_do_another_border_is_asked_for(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """A top that begins on a WS row stands on an odd number of rows, and borders of two rows end on even ones."""
    top = {"text": "Row 1 (WS): Knit.\nRow 2: Purl.", "rows": 6}
    part = {"text": BODIES[0], "rows": 21}
    (found,) = told(tried(starters, vocabulary, part, bottom=None, top=top, sides={"text": TWO}))
    assert found.hint == "Choose side borders whose repeat of rows ends with this part."
    assert found.changes == ()


@pytest.mark.parametrize("rows", [22, 23, 25])
def test_the_rows_that_are_offered_make_a_plan(rows: int, starters: Starters, vocabulary: Vocabulary) -> None:
    """Borders of three rows beside a body of one: each number that is offered ends on the count of the cast-on."""
    part = {"text": BODIES[0], "rows": rows}
    made = tried(starters, vocabulary, part, bottom=ENDS, top=None, sides={"text": THREE})
    (found,) = told(made)
    assert found.changes
    for change in found.changes:
        plan = attempt(amended(made.request, change), vocabulary).plan
        assert plan is not None
        assert worked(plan, vocabulary)[-1] == plan.counts.cast_on


def test_sides_that_begin_on_the_other_side_begin_in_the_middle(starters: Starters, vocabulary: Vocabulary) -> None:
    """Seven rows below a body that begins on a WS row lead into row 2 of borders that begin on a RS row."""
    bottom = {"text": BODIES[0], "rows": 7}
    made = tried(starters, vocabulary, {"text": "Row 1 (WS): Knit."}, bottom=bottom, sides={"text": TWO})
    (found,) = told(made)
    assert found.pointer == "/parts/sides"
    assert "begin here in the middle of their rows" in found.message


def test_a_selvedge_that_changes_its_count_is_looked_at_too(starters: Starters, vocabulary: Vocabulary) -> None:
    """A bottom border of nine rows stops where a selvedge of two rows has one stitch more at each edge."""
    bottom = {"text": BODIES[0], "rows": 9}
    made = tried(starters, vocabulary, {"text": "Row 1 (WS): Knit."}, bottom=bottom, top=None, selvedge={"text": TWO})
    (found,) = told(made)
    assert found.pointer == "/parts/bottom/rows"
    assert "selvedge stitches" in found.message


def test_half_a_repeat_is_worked_only_where_the_sides_are_in_step(starters: Starters, vocabulary: Vocabulary) -> None:
    """Moss of four rows stops after 38, half a repeat; not so beside borders that have another count there."""
    plain = asked(starters, vocabulary, "moss-stitch", 20, "12.7", bottom=None, top=None)
    made = asked(starters, vocabulary, "moss-stitch", 20, "12.7", bottom=None, top=None, sides={"text": FOUR})
    half, whole = (attempt(request, vocabulary).plan for request in (plain, made))
    assert half is not None and whole is not None
    assert (half.sections[0].rows, whole.sections[0].rows) == (38, 40)
    assert worked(whole, vocabulary) == [whole.counts.cast_on]

"""Loops of rows in closed form against loops that are worked one by one over the whole piece."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

import pytest
from hypothesis import given, settings

from counterpane.craft.constructions import Section
from counterpane.craft.rows.tree import Node
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from counterpane.craft.trace.knitter import BIND_OFF
from counterpane.craft.yarn import Yarn, estimate
from counterpane.craft.yarn.sections import section_loops
from counterpane.craft.yarn.tally import CAST_ON, CannotBeCounted, tally_rows
from counterpane.seeding import load_components

from ..random_rows import chains
from ..small_vocabulary import VOCABULARY
from .asking import Starters, planned

BODIES = sorted(each.slug for each in load_components() if each.kind == "body")


def worked_one_by_one(rows: Sequence[Sequence[Node]], before: int, vocabulary: Vocabulary) -> Counter[str] | None:
    """Return the stitches that are worked, each by itself; a bind-off knits what it takes."""
    traced = trace(rows, before, vocabulary)
    if any(step.after is None for step in traced.steps):
        return None
    counted: Counter[str] = Counter()
    for worked in (each for row in traced.rows for each in row.worked):
        if worked.stitch == BIND_OFF:
            counted["k"] += len(worked.takes)
        else:
            counted[worked.stitch] += len(worked.leaves) if worked.stitch == CAST_ON else 1
    return counted


@settings(max_examples=150, deadline=None)
@given(chains)
def test_stitches_of_random_rows_are_counted_as_they_are_worked(rows: Sequence[Sequence[Node]]) -> None:
    """Groups, open repeats, bind-offs and stitches into one come to what the needles did."""
    for before in range(1, 20):
        one_by_one = worked_one_by_one(rows, before, VOCABULARY)
        if one_by_one is None:
            with pytest.raises(CannotBeCounted):
                tally_rows(rows, before, VOCABULARY)
            continue
        at_once: Counter[str] = Counter()
        for row in tally_rows(rows, before, VOCABULARY):
            for (key, _), number in row.stitches.items():
                at_once[key] += number
        assert +at_once == +one_by_one


def loops_one_by_one(section: Section, vocabulary: Vocabulary) -> Fraction:
    """Return the likely loops of a section worked row by row to its end."""
    rows = [section.cycle[row % len(section.cycle)].parts for row in range(section.rows)]
    counted = worked_one_by_one(rows, section.before, vocabulary)
    assert counted is not None
    return sum((Fraction(vocabulary[key].loop_factor or "1") * number for key, number in counted.items()), Fraction(0))


@pytest.mark.parametrize("body", BODIES)
def test_every_starter_takes_the_yarn_of_its_stitches(body: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """A small blanket in each texture, worked stitch by stitch, takes the loops that the closed form says."""
    size = {"width_cm": 24, "length_cm": 20}
    plan = planned(starters, vocabulary, body, size=size)
    for section in plan.sections:
        found = section_loops(section, [Yarn()], vocabulary)
        assert found.places == (0,)
        assert found.loops(0).likely == loops_one_by_one(section, vocabulary)


def test_stripes_add_up_to_the_whole(starters: Starters, vocabulary: Vocabulary) -> None:
    """Two yarns in stripes of 2 and 4 rows take together what one yarn takes, and each its share."""
    plan = planned(starters, vocabulary, "stocking-stitch")
    main, other = Yarn(colour="MC"), Yarn(colour="A", parts=("body",), rows=(1, 2), every=6)
    striped = estimate(plan, [main, other], vocabulary).colours
    whole = estimate(plan, [main], vocabulary).colours[0]
    worked = [part for each in striped for part in each.parts if part.part == "body"]
    (body,) = (part for part in whole.parts if part.part == "body")
    assert sum(part.loops.likely for part in worked) == body.loops.likely
    assert worked[1].loops.likely * 3 == body.loops.likely


def test_a_colour_named_in_a_row_takes_its_own_yarn(starters: Starters, vocabulary: Vocabulary) -> None:
    """Half of the stitches of a row in MC and A alternately are of A."""
    text = "Row 1 (RS): *k1 in MC, k1 in CC; rep from * to end.\nRow 2: purl."
    plan = planned(starters, vocabulary, {"text": text}, sides=None)
    found = estimate(plan, [Yarn(colour="MC"), Yarn(colour="CC")], vocabulary).colours
    (body,) = (part for part in found[1].parts if part.part == "body")
    section = plan.sections[1]
    assert body.loops.likely == Fraction(section.before, 2) * section.rows / 2

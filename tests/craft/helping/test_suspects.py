"""A slip that is made on a real needle is among the suspects for the count that it leaves."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.counts.writing_out import stitch_by_stitch, write_out
from counterpane.craft.helping import Slip, WorkedRow
from counterpane.craft.helping.rows import stretches, worked_rows
from counterpane.craft.helping.slips import slips_of
from counterpane.craft.helping.suspects import suspects
from counterpane.craft.rows.tree import Node, Work
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from craft.constructions.asking import planned

Starters = Mapping[str, Component]
BODIES = ("eyelet-dots", "old-shale", "fan", "leaf-and-rib-lace", "rope-cable")


def slipped(row: WorkedRow, slip: Slip, vocabulary: Vocabulary) -> tuple[Node, ...]:
    """Return a row with the slip made once, at the first stitch that it can happen to: worked plain, or not at all."""
    parts = stitch_by_stitch(write_out(row.row.parts, row.before, vocabulary, row.row.side).parts or (), 10_000)
    done: list[Node] = []
    for node in parts or ():
        if slip.stitch and isinstance(node, Work) and node.stitch == slip.stitch:
            plain = vocabulary[slip.stitch].uses if vocabulary[slip.stitch].makes >= 0 else 0
            done += [Work("k", plain)] if plain else []
            done += [Work(node.stitch, node.times - 1)] if node.times > 1 else []
            slip = Slip(slip.kind, slip.each, slip.most)
        else:
            done.append(node)
    return tuple(done)


def on_the_needle(first: Sequence[Node], rows: Sequence[WorkedRow], vocabulary: Vocabulary) -> int | None:
    """Work a changed row and those after it loop by loop; return what is on the needle, None where one does not go."""
    parts = [first, *(row.row.parts for row in rows[1:])]
    return trace(parts, rows[0].before, vocabulary, [row.row.side for row in rows]).steps[-1].after


@pytest.mark.parametrize("body", BODIES)
def test_a_slip_made_loop_by_loop_is_among_the_suspects(starters: Starters, vocabulary: Vocabulary, body: str) -> None:
    """For each row of a repeat, each slip its stitches invite, and each later row up to which all come out."""
    plan = planned(starters, vocabulary, body, 40, 40)
    begin = next(section.first_row for section in plan.sections if section.name.startswith("body"))
    rows = worked_rows(plan, begin, begin + 11, vocabulary)
    tried = 0
    for at, row in enumerate(rows):
        written = write_out(row.row.parts, row.before, vocabulary, row.row.side)
        for slip in slips_of(written.parts or (), vocabulary):
            for end in range(at, len(rows)):
                have = on_the_needle(slipped(row, slip, vocabulary), rows[at : end + 1], vocabulary)
                if have is None:
                    break
                found = suspects(rows[: end + 1], have, vocabulary, since_cast_on=False)
                named = [(each.slip.kind, each.slip.stitch, each.rows) for each in found]
                assert (slip.kind, slip.stitch, (row.number, row.number)) in named
                tried += 1
    assert tried >= (0 if body == "rope-cable" else 4)


def lace(starters: Starters, vocabulary: Vocabulary) -> Plan:
    """Return a blanket of eyelets: 134 stitches, row 3 of the repeat k9, *yo, k2tog, k4; … 20 times, k5."""
    return planned(starters, vocabulary, "eyelet-dots", 61, 70, sides={"component": "garter-border", "stitches": 5})


def test_a_right_count_has_no_suspects(starters: Starters, vocabulary: Vocabulary) -> None:
    """Nothing is wrong."""
    rows = worked_rows(lace(starters, vocabulary), 1, 20, vocabulary)
    assert suspects(rows, rows[-1].after, vocabulary, since_cast_on=True) == []


def test_one_too_few_in_lace_is_first_a_yarn_over(starters: Starters, vocabulary: Vocabulary) -> None:
    """The nearest row with yarn-overs, before what may happen anywhere."""
    plan = lace(starters, vocabulary)
    rows = worked_rows(plan, 1, plan.sections[0].rows + 4, vocabulary)
    first, *others = suspects(rows, rows[-1].after - 1, vocabulary, since_cast_on=True)
    assert (first.slip.kind, first.slip.stitch, first.times) == ("left-out", "yo", 1)
    assert {each.slip.kind for each in others} >= {"stitch-dropped", "two-together"}


def test_a_yarn_over_left_out_in_every_repeat_is_found(starters: Starters, vocabulary: Vocabulary) -> None:
    """As many too few as the row has repeats."""
    plan = lace(starters, vocabulary)
    rows = worked_rows(plan, 1, plan.sections[0].rows + 3, vocabulary)
    times = write_out(rows[-1].row.parts, rows[-1].before, vocabulary).times[0]
    first = suspects(rows, rows[-1].after - times, vocabulary, since_cast_on=True)[0]
    assert (first.slip.kind, first.times, first.rows) == ("left-out", times, (rows[-1].number, rows[-1].number))


def test_a_slip_that_would_have_shown_is_no_suspect_while_another_goes_unseen(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Two rows of eyelets: one stitch too few from the lower would have kept the upper from coming out."""
    plan = lace(starters, vocabulary)
    begin = plan.sections[0].rows
    rows = worked_rows(plan, begin + 1, begin + 16, vocabulary)
    eyelets = [row.number for row in rows if "yo" in str(row.row.parts)]
    found = suspects(rows, rows[-1].after - 1, vocabulary, since_cast_on=False)
    assert len(eyelets) >= 2
    assert [each.rows for each in found if each.slip.kind == "left-out"] == [(eyelets[-1], eyelets[-1])]


def test_a_cast_on_miscounted_by_a_repeat_is_named(starters: Starters, vocabulary: Vocabulary) -> None:
    """The rows work over six stitches more as well, so that nothing showed it."""
    rows = worked_rows(lace(starters, vocabulary), 1, 30, vocabulary)
    found = suspects(rows, rows[-1].after + 6, vocabulary, since_cast_on=True)
    assert ("cast-on-miscounted", (0, 0)) in [(each.slip.kind, each.rows) for each in found]
    later = suspects(rows[10:], rows[-1].after + 6, vocabulary, since_cast_on=False)
    assert "cast-on-miscounted" not in [each.slip.kind for each in later]


def test_stretches_are_counted_from_where_the_row_ended(starters: Starters, vocabulary: Vocabulary) -> None:
    """By hand: k9, 20 repeats of 6 and k5 are 5, 20 times 6 and 9 from the end of the row; a plain row turns them."""
    plan = lace(starters, vocabulary)
    at = plan.sections[0].rows + 3
    rows = worked_rows(plan, 1, at + 1, vocabulary)
    found, turned = stretches(rows[:-1], vocabulary), stretches(rows, vocabulary)
    assert found is not None and turned is not None
    assert (found.before, found.each, found.after) == (5, 6, 9)
    assert (turned.before, turned.each, turned.after) == (9, 6, 5)
    assert found.before + found.times * found.each + found.after == rows[-1].after


def test_an_empty_needle_has_no_suspect(starters: Starters, vocabulary: Vocabulary) -> None:
    """Whoever has no stitch left has dropped them all, and no slip of one row does that."""
    rows = worked_rows(lace(starters, vocabulary), 1, 20, vocabulary)
    assert suspects(rows, 0, vocabulary, since_cast_on=True) == []

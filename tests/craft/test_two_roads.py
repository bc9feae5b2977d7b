"""The closed form against the simulation, on random rows at every small count."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.component import Component, derive
from counterpane.craft.counts import Chain, count, work
from counterpane.craft.rows.tree import Node, Place
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace

from .random_rows import chains, marker_chains, sides
from .small_vocabulary import VOCABULARY

LARGEST = 30
Told = tuple[int | None, int | None, tuple[str, Place] | None, tuple[int, ...]]
Rows = Sequence[Sequence[Node]]


def told_by_counts(rows: Rows, before: int, turned: Sequence[str | None]) -> list[Told]:
    """Return what the closed form says of each row."""
    steps = work(rows, before, VOCABULARY, turned)
    return [(s.before, s.after, s.misfit and (s.misfit.slug, s.misfit.place), s.segments) for s in steps]


def told_by_trace(rows: Rows, before: int, turned: Sequence[str | None]) -> list[Told]:
    """Return what the simulation says of each row."""
    steps = trace(rows, before, VOCABULARY, turned).steps
    return [(s.before, s.after, s.misfit and (s.misfit.slug, s.misfit.place), s.segments) for s in steps]


def works(told: Sequence[Told]) -> bool:
    """Say whether every row came out."""
    return all(row[1] is not None for row in told)


def counts_to_try(chain: Chain) -> range:
    """Return the counts from 0 to two repeats above the least, within the cap."""
    tops = [start.least + 2 * start.of for start in chain.starts]
    return range(min(max(tops, default=LARGEST) + 1, LARGEST))


def assert_agreement(rows: Rows, turned: Sequence[str | None]) -> None:
    """Compare both roads at the counts that prove all others."""
    chain = count(rows, VOCABULARY, turned)
    for before in counts_to_try(chain):
        told = told_by_counts(rows, before, turned)
        assert told == told_by_trace(rows, before, turned)
        if before and not chain.proved_at_count_only:
            assert chain.admits(before) == works(told)
        if chain.admits(before):
            assert chain.after(before) == told[-1][1]


@settings(max_examples=150, deadline=None)
@given(chains)
def test_closed_form_and_simulation_agree_row_by_row(rows: Rows) -> None:
    """Counts, findings and places agree at every small count, those that are refused too."""
    assert_agreement(rows, [None] * len(rows))


@settings(max_examples=100, deadline=None)
@given(marker_chains, sides)
def test_both_roads_agree_on_markers_and_turns(rows: Rows, side: str | None) -> None:
    """Rows that place, pass and count to markers give the same segments, flat and in the round."""
    assert_agreement(rows, [side] * len(rows))


@settings(max_examples=100, deadline=None)
@given(chains)
def test_a_row_that_fails_at_every_count_stops_every_small_count(rows: Rows) -> None:
    """No count gets past the row that the chain names as the first to fail."""
    misfit = count(rows, VOCABULARY).misfit
    if misfit is None:
        return
    for before in range(1, LARGEST):
        reached = [
            index for index, told in enumerate(told_by_trace(rows, before, [None] * len(rows))) if told[1] is None
        ]
        assert reached and reached[0] <= misfit.row


@settings(max_examples=100, deadline=None)
@given(chains, st.integers(0, LARGEST))
def test_no_row_leaves_fewer_than_no_stitches(rows: Rows, before: int) -> None:
    """Every count after a row is none or more, and every row begins where the last one ended."""
    steps = work(rows, before, VOCABULARY)
    assert all(step.after is None or step.after >= 0 for step in steps)
    assert all(one.after == other.before for one, other in pairwise(steps))


def test_both_roads_agree_on_every_starter(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """Each texture, border and selvedge is worked loop by loop to two repeats above its least count."""
    for starter in starters.values():
        for version in derive(starter, vocabulary).versions:
            rows = [row.parts for row in version.rows]
            (start,) = version.starts
            for before in range(start.least + 2 * start.of + 1):
                simulated = trace(rows, before, vocabulary, [row.side for row in version.rows]).steps
                assert start.admits(before) == (before > 0 and all(step.after is not None for step in simulated))

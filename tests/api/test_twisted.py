"""Twisted requests to every POST, some hundreds in all: the long form is tests/benchmarks/fuzz_entries.py."""

from __future__ import annotations

import pytest

from benchmarks.fuzz_entries import POSTS, tried

INPUTS = 25


@pytest.mark.parametrize("name", POSTS)
def test_no_twisted_request_fails_hangs_or_leaves_half_a_write(name: str) -> None:
    """Each ends as described: an answer, or a problem document that helps."""
    tally = tried(name, INPUTS, seed=7)
    assert (tally.wrong, sum(tally.ended.values())) == ([], INPUTS)


@pytest.mark.parametrize("name", ["add_component", "add_recipe"])
def test_a_slip_more_or_less_does_not_refuse_everything(name: str) -> None:
    """Some of the twisted requests are still sound, so that writing is tried as well."""
    assert tried(name, INPUTS, seed=11).ended["201"] > 0

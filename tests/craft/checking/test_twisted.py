"""Texts changed by chance: the long form is tests/benchmarks/fuzz_entries.py."""

from __future__ import annotations

from benchmarks.fuzz_entries import tried


def test_no_twisted_text_breaks_the_check() -> None:
    """Each of some hundreds is checked within its time, and says something or nothing."""
    tally = tried("check_text", 300, seed=7)
    assert (tally.wrong, sum(tally.ended.values())) == ([], 300)

"""Command lines and files changed by chance: the long form is tests/benchmarks/fuzz_entries.py."""

from __future__ import annotations

import pytest

from benchmarks.fuzz_entries import tried


@pytest.mark.parametrize(("name", "inputs"), [("command_line", 100), ("processes", 4)])
def test_no_twisted_command_ends_in_a_traceback(name: str, inputs: int) -> None:
    """Each ends with a status of the table and a line for whoever typed it."""
    tally = tried(name, inputs, seed=7)
    assert (tally.wrong, sum(tally.ended.values())) == ([], inputs)

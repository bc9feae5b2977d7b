"""A real server that is killed while it writes: the long form is tests/benchmarks/hammer_server.py."""

from __future__ import annotations

from pathlib import Path

from benchmarks.hammer_server import edits, kills


def test_a_killed_server_leaves_one_of_each_and_nothing_half(tmp_path: Path) -> None:
    """What was sent is sent again to a server started again: it is there once, and the file is sound."""
    stood, faults = kills(tmp_path, times=2, seed=7)
    assert (faults, stood.total()) == ([], 6)


def test_no_edit_of_several_clients_is_lost(tmp_path: Path) -> None:
    """Each asks again where another was first, and every edit is a revision."""
    statuses, faults = edits(tmp_path, clients=4, each=3)
    assert (faults, statuses[200]) == ([], 12)

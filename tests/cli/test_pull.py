"""Pulling from another library by command."""

from __future__ import annotations

from pathlib import Path

import pytest

from cli.conftest import Type
from counterpane.library.parts import components
from peers.libraries import SEEDS, furnish, served


def test_what_was_pulled_is_told_line_by_line_and_once(typed: Type, monkeypatch: pytest.MonkeyPatch) -> None:
    """A second pull has nothing to tell."""
    with served() as library:
        furnish(library)
        components.add(library.services, SEEDS["garter"] | {"slug": "body-1"}, "anna")
        monkeypatch.setenv("COUNTERPANE_PEERS", library.address)
        done = typed("pull", library.address, "--store", "lib.db")
        again = typed("pull", library.address, "--store", "lib.db")
    assert done.status == again.status == 0, done.err
    assert done.out.startswith("added component body-1 ") and done.out.count("\n") == 1
    assert (again.out, "nothing to take over" in again.err) == ("", True)


@pytest.mark.parametrize(
    ("argv", "status", "said"),
    [
        (["https://elsewhere.example"], 4, "not among the peers"),
        (["nonsense"], 4, "no address of a library"),
        (["http://127.0.0.1:1"], 5, "127.0.0.1:1"),
        (["http://127.0.0.1:1", "--token-file", "gone"], 3, "no such file"),
        ([], 2, "ADDRESS"),
    ],
)
def test_what_cannot_be_pulled_ends_with_its_status(
    typed: Type, monkeypatch: pytest.MonkeyPatch, argv: list[str], status: int, said: str
) -> None:
    """Each says why, never with a traceback."""
    monkeypatch.setenv("COUNTERPANE_PEERS", "http://127.0.0.1:1")
    monkeypatch.setattr("counterpane.client.transport.FIRST_WAIT_S", 0.001)
    done = typed("pull", *argv, "--store", "lib.db")
    assert (done.status, said in done.err, "Traceback" in done.err) == (status, True, False)


def test_a_refused_peer_begins_no_library(typed: Type) -> None:
    """Nothing is opened before the address is allowed."""
    typed("pull", "https://elsewhere.example", "--store", "lib.db")
    assert not Path("lib.db").exists()

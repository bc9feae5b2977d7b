"""Where revisions stand, told and changed from the command line."""

from __future__ import annotations

import json
from contextlib import closing
from pathlib import Path

import pytest

from cli.conftest import Type
from counterpane.craft.component import content_of
from counterpane.library.parts import components
from counterpane.seeding import load_component
from counterpane.wiring import open_library

STORE = ("--store", "lib.db")
YANK = ("--to", "yanked", "--because", "misprint", "--say", "Row 3 is misprinted.", "--by", "Suri")


@pytest.fixture(autouse=True)
def library(tmp_path: Path) -> None:
    """Make a library with two textures."""
    services = open_library(tmp_path / "lib.db", starters=False)
    with closing(services.store):
        for slug in ("waffle", "garter"):
            components.add(services, content_of(load_component(slug)), "Bram", "accepted")


def test_a_move_is_made_told_and_logged(typed: Type) -> None:
    """With its reason, and under the name of who made it."""
    done = typed("standing", "waffle", *YANK, *STORE)
    assert (done.status, done.err) == (0, "")
    assert "accepted to yanked, by Suri (misprint): Row 3 is misprinted." in done.out
    (move,) = json.loads(typed("standing", "waffle", "--json", *STORE).out)["moves"]
    assert (move["from"], move["to"], move["by"]["name"]) == ("accepted", "yanked", "Suri")
    assert "yanked" in typed("audit", *STORE).out


def test_without_a_move_it_is_only_told(typed: Type) -> None:
    """Nothing is written by looking."""
    (revision,) = json.loads(typed("standing", "garter", "--json", *STORE).out)["revisions"]
    assert (revision["number"], revision["status"]) == (1, "accepted")


@pytest.mark.parametrize(
    ("argv", "status", "said"),
    [
        (("wafle", *YANK), 3, "no component 'wafle'"),
        (("waffle", *YANK[:6]), 2, "needs --by"),
        (("waffle", *YANK[2:]), 2, "needs --to"),
        (("waffle", "--to", "draft", *YANK[2:]), 4, "does not become draft"),
        (("waffle", "--to", "deprecated", "--because", "replaced", *YANK[4:]), 2, "replacement"),
        (("waffle", *YANK, "--until", "tomorrow"), 2, "--until"),
    ],
)
def test_a_move_that_cannot_be_made_says_why(typed: Type, argv: tuple[str, ...], status: int, said: str) -> None:
    """And nothing is moved."""
    done = typed("standing", *argv, *STORE)
    assert (done.status, said in done.err) == (status, True), done.err
    assert json.loads(typed("standing", "waffle", "--json", *STORE).out)["moves"] == []

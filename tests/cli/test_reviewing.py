"""Handing in, the queue, decisions, the log and tokens from the command line."""

from __future__ import annotations

import json
import sqlite3
from pathlib import Path

import pytest

from cli.conftest import Type
from counterpane.craft.component import content_of
from counterpane.library.parts.telling import derived_json
from counterpane.press.component import as_seed
from counterpane.seeding import load_component, load_vocabulary

STORE = ("--store", "lib.db")
ASK = ("review", "pea-ridge", "--ask", "--because", "wording-unclear", "--say", "Which side?")


@pytest.fixture
def ridge(tmp_path: Path) -> Path:
    """Return the file of a component of its own, the waffle under another name."""
    waffle = load_component("waffle")
    content = content_of(waffle) | {"slug": "pea-ridge", "name": "Pea ridge"}
    path = tmp_path / "parts" / "ridge.toml"
    path.parent.mkdir()
    path.write_text(as_seed(content, derived_json(waffle, load_vocabulary())), encoding="utf-8")
    return path


@pytest.mark.parametrize("what", ["parts/ridge.toml", "parts"])
def test_a_file_or_a_folder_is_handed_in(typed: Type, ridge: Path, what: str) -> None:
    """What the program finds is told, and it waits in the queue."""
    done = typed("submit", what, "--by", "Odile", *STORE)
    assert (done.status, done.err) == (0, "")
    assert done.out.startswith("handed in pea-ridge as submission 1, sha256 ")
    assert "like waffle: The same texture." in done.out
    (item,) = json.loads(typed("queue", "--json", *STORE).out)["items"]
    assert (item["turn"], item["slug"], item["by"]["name"]) == ("us", "pea-ridge", "Odile")


def test_a_decision_passes_the_turn(typed: Type, ridge: Path) -> None:
    """What was asked for is handed in again under the same number."""
    typed("submit", str(ridge), "--by", "Odile", *STORE)
    assert typed(*ASK, "--by", "Suri", *STORE).out == "submission 1, component pea-ridge: ask (wording-unclear)\n"
    assert "contributor" in typed("queue", *STORE).out
    assert typed("queue", "--turn", "us", *STORE).out == "Nothing waits.\n"
    assert "as submission 1" in typed("submit", str(ridge), "--by", "Odile", *STORE).out


@pytest.mark.parametrize(
    ("argv", "status", "said"),
    [
        ((*ASK, "--by", "Odile"), 4, "Nobody decides"),
        (ASK, 2, "needs --by"),
        ((*ASK[:2], "--because", "sound", "--say", "Fine.", "--by", "Suri"), 2, "needs --accept"),
        ((*ASK[:3], "--because", "misprint", "--say", "No.", "--by", "Suri"), 2, "no reason for 'ask'"),
        (("review", "waffle", *ASK[2:], "--by", "Suri"), 4, "Nothing of 'waffle'"),
        (("review", "wafle", *ASK[2:], "--by", "Suri"), 3, "no component or recipe 'wafle'"),
        (("submit", "nowhere.toml", "--by", "Odile"), 3, "no such file"),
        (("submit", ".", "--by", "Bram"), 4, "added by somebody else"),
    ],
)
def test_what_is_refused_says_why(typed: Type, ridge: Path, argv: tuple[str, ...], status: int, said: str) -> None:
    """Each with its own status and sentence."""
    typed("submit", str(ridge), "--by", "Odile", *STORE)
    done = typed(*argv, *STORE)
    assert done.status == status
    assert said in done.err


@pytest.mark.parametrize("argv", [("queue",), (*ASK, "--by", "Suri"), ("audit", "--verify")])
def test_a_library_that_is_not_there_is_not_made(typed: Type, argv: tuple[str, ...]) -> None:
    """To look at what waits makes no file."""
    done = typed(*argv, "--store", "gone.db")
    assert (done.status, "there is no library" in done.err, list(Path().iterdir())) == (3, True, [])


def test_the_log_is_verified_and_a_changed_line_is_named(typed: Type, ridge: Path, tmp_path: Path) -> None:
    """Status 0 while it holds, and 1 with the first line that does not."""
    typed("submit", str(ridge), "--by", "Odile", *STORE)
    last = json.loads(typed("audit", *STORE).out.splitlines()[-1])
    assert typed("audit", "--verify", "--noted", last["sha256"], *STORE).out.startswith(f"All {last['seq']} lines hold")
    assert typed("audit", "--verify", "--noted", "0" * 63 + "1", *STORE).status == 1
    assert typed("audit", "--erase", "Odile", "--by", "Bram", *STORE).status == 0
    assert typed("audit", "--verify", *STORE).status == 0
    with sqlite3.connect(tmp_path / "lib.db") as db:
        db.execute("DROP TRIGGER audit_stands")
        db.execute("UPDATE audit SET at = 'never' WHERE seq = 7")
    db.close()
    done = typed("audit", "--verify", *STORE)
    assert (done.status, done.out.partition(" does")[0]) == (1, "Line 7")


def test_a_token_is_listed_with_its_end_and_withdrawn(typed: Type) -> None:
    """The list shows no token, only the beginning of its hash."""
    token = typed("token", "create", "--role", "reviewer", "--for", "Suri", "--days", "3", *STORE).out.strip()
    shown = typed("token", "list", *STORE).out
    assert "Suri" in shown and token not in shown
    start = shown.splitlines()[2].split()[0]
    assert typed("token", "withdraw", start, "--by", "Bram", *STORE).status == 0
    assert "Suri" not in typed("token", "list", *STORE).out
    assert typed("token", "withdraw", start, "--by", "Bram", *STORE).status == 3

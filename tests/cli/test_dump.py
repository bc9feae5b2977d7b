"""A library as a file of lines and back, and copied while it is in use."""

from __future__ import annotations

import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from cli.conftest import Type
from cli.test_safety import LIST
from counterpane.library.ports import Store
from counterpane.wiring import open_store

STORE = ("--store", "lib.db")


@pytest.fixture
def library(typed: Type, tmp_path: Path) -> Path:
    """Return the file of a library with the starters, a list in two revisions and a token."""
    (tmp_path / "ward.toml").write_text(LIST, encoding="utf-8")
    typed("profile", "add", "ward.toml", "--by", "Ines", *STORE)
    (tmp_path / "ward.toml").write_text(LIST.replace("2026-10-01", "2026-11-01"), encoding="utf-8")
    typed("profile", "revise", "ward.toml", "--by", "Ines", *STORE)
    typed("token", "create", "--role", "keeper", "--for", "Bram", *STORE)
    return tmp_path / "lib.db"


def test_a_restored_library_dumps_the_same_bytes(typed: Type, library: Path) -> None:
    """And tells the same of what it keeps; no token is in the dump."""
    assert typed("dump", "--out", "a.ndjson", *STORE).status == 0
    done = typed("restore", "a.ndjson", "--store", "b.db")
    assert done.status == 0 and done.out.startswith("restored ")
    assert typed("dump", "--out", "b.ndjson", "--store", "b.db").err == "wrote b.ndjson\n"
    assert Path("a.ndjson").read_bytes() == Path("b.ndjson").read_bytes()
    assert '"sort":"token"' not in Path("a.ndjson").read_text("utf-8")
    assert typed("profile", "show", "ward", "--store", "b.db").out == typed("profile", "show", "ward", *STORE).out


def test_a_dump_goes_to_standard_output(typed: Type, library: Path) -> None:
    """For a pipe; each line is JSON, and the last one the manifest."""
    typed("dump", "--out", "a.ndjson", *STORE)
    lines = typed("dump", "--out", "-", *STORE).out.splitlines()
    assert "\n".join(lines) + "\n" == Path("a.ndjson").read_text("utf-8")
    assert json.loads(lines[-1])["manifest"]["records"] == len(lines) - 2


def test_a_changed_dump_is_refused_with_its_line_and_makes_no_library(typed: Type, library: Path) -> None:
    """The file of the library is not even begun."""
    typed("dump", "--out", "a.ndjson", *STORE)
    lines = Path("a.ndjson").read_bytes().splitlines(keepends=True)
    lines[6] = lines[6].replace(b"a", b"b", 1)
    Path("a.ndjson").write_bytes(b"".join(lines))
    done = typed("restore", "a.ndjson", "--store", "b.db")
    assert (done.status, done.out, Path("b.db").exists()) == (2, "", False)
    assert "line 7: " in done.err


def test_a_file_that_is_no_dump_is_told_what_is_wanted(typed: Type, library: Path) -> None:
    """The library itself is none."""
    done = typed("restore", "lib.db", "--store", "b.db")
    assert (done.status, "`counterpane dump` made is wanted" in done.err, Path("b.db").exists()) == (2, True, False)


def test_a_library_that_holds_something_is_left_alone(typed: Type, library: Path) -> None:
    """The status is that of a refusal."""
    typed("dump", "--out", "a.ndjson", *STORE)
    done = typed("restore", "a.ndjson", *STORE)
    assert (done.status, "holds something already" in done.err) == (4, True)


@pytest.mark.parametrize("command", [["dump", "--out", "a"], ["backup", "--out", "a"]])
def test_a_library_that_is_not_there_is_not_made(typed: Type, command: list[str]) -> None:
    """Nor is anything written."""
    assert (typed(*command, "--store", "gone.db").status, list(Path().iterdir())) == (3, [])


@pytest.mark.parametrize(("name", "status"), [("gone.ndjson", 3), (".", 2), ("a\0b", 2), ("", 2)])
def test_a_dump_that_cannot_be_read_ends_with_its_status(typed: Type, name: str, status: int) -> None:
    """Never with a traceback."""
    done = typed("restore", name, "--store", "b.db")
    assert (done.status, "Traceback" in done.err, Path("b.db").exists()) == (status, False, False)


def test_a_copy_is_the_library_with_its_tokens(typed: Type, library: Path) -> None:
    """It is one file for its owner alone, of one moment, though another writes meanwhile."""
    with closing(open_store(library)):
        assert typed("backup", "--out", "copy.db", *STORE).status == 0
    assert [path.name for path in Path().glob("copy.db*")] == ["copy.db"]
    assert Path("copy.db").stat().st_mode & 0o777 == 0o600
    with closing(open_store("copy.db")) as copy, closing(open_store(library)) as first:
        assert _all(copy) == _all(first)


def _all(store: Store) -> list[object]:
    return list(store.records())


def test_a_damaged_library_gives_no_copy(typed: Type, library: Path) -> None:
    """An object that is not that of its hash is told, and no file is left."""
    with closing(sqlite3.connect(library)) as connection, connection:
        connection.execute("UPDATE object SET content = content || ' ' WHERE rowid = 5")
    done = typed("backup", "--out", "copy.db", *STORE)
    assert (done.status, list(Path().glob("*copy.db*"))) == (2, [])
    assert "is that of" in done.err

"""What the SQLite store promises beyond the contract: durability, several processes, plans of its questions."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from counterpane.library.errors import Busy, Unreadable
from counterpane.library.ports import CountClass, TextureKey, Wanted
from counterpane.library.sharing.records import FORMS
from counterpane.storage.sqlite import SqliteStore, connections
from counterpane.storage.sqlite import store as sqlite_store
from counterpane.storage.sqlite.pages import question
from storage.entries import entry

WRITER = Path(__file__).parent / "writer.py"
ROOT = Path(__file__).parents[2]


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Return the path of a store that is not there yet."""
    return tmp_path / "library.db"


@pytest.fixture
def store(file: Path) -> Iterator[SqliteStore]:
    """Yield an empty store."""
    made = SqliteStore(file)
    yield made
    made.close()


def started(file: Path, *args: str) -> subprocess.Popen[str]:
    """Start a process that writes to the store and prints each write that was acknowledged."""
    path = ":".join(str(ROOT / name) for name in ("service", "schema", "tests"))
    command = [sys.executable, str(WRITER), str(file), *args]
    return subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env={"PYTHONPATH": path})


def whole(file: Path) -> bool:
    """Say whether the file is sound and every item has its revision, object, class and change."""
    halves = """
        SELECT count(*) FROM item i WHERE
            NOT EXISTS (SELECT 1 FROM revision r WHERE r.item = i.id AND r.number = i.number AND r.sha256 = i.sha256)
            OR NOT EXISTS (SELECT 1 FROM object o WHERE o.sha256 = i.sha256)
            OR NOT EXISTS (SELECT 1 FROM class c WHERE c.item = i.id)
            OR NOT EXISTS (SELECT 1 FROM change c WHERE c.slug = i.slug AND c.sha256 = i.sha256)"""
    db = sqlite3.connect(file)
    sound = db.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    found = db.execute(halves).fetchone() == (0,)
    gaps = db.execute("SELECT max(seq) - count(*) FROM change").fetchone()[0]
    db.close()
    return sound and found and not gaps


@pytest.mark.parametrize("writes", [1, 7, 23])
def test_a_killed_writer_loses_nothing_it_acknowledged(file: Path, writes: int) -> None:
    """Every write that was acknowledged before the kill is there, and nothing stands half."""
    process = started(file, "killed", "1000000")
    assert process.stdout is not None
    seen = [process.stdout.readline().strip() for _ in range(writes)]
    process.kill()
    seen += process.stdout.read().split()
    process.stdout.close()
    process.wait()
    store = SqliteStore(file)
    assert all(store.latest("component", slug) for slug in seen)
    store.close()
    assert whole(file)


def test_processes_that_write_at_once_lose_no_update(file: Path) -> None:
    """Three processes that revise one component leave one revision for each edit."""
    store = SqliteStore(file)
    store.add(entry("shared"))
    writers = [started(file, "revise", "20", name) for name in ("anna", "berta", "carla")]
    assert [writer.communicate()[0].count("done") for writer in writers] == [20, 20, 20]
    assert len(store.history("component", "shared")) == 61
    store.close()


def test_a_store_opens_again_as_it_was(file: Path) -> None:
    """Closing and opening keeps everything and migrates nothing twice."""
    first = SqliteStore(file)
    first.add(entry("garter"))
    first.close()
    second = SqliteStore(file)
    assert second.latest("component", "garter").number == 1
    second.close()


def test_another_file_is_refused_and_left_alone(file: Path) -> None:
    """A text file is not a store and is not made one."""
    file.write_text("knit every row\n" * 100)
    with pytest.raises(Unreadable, match="is not a store"):
        SqliteStore(file)
    assert file.read_text().startswith("knit every row")


def test_a_folder_that_is_not_there_is_refused(tmp_path: Path) -> None:
    """A path whose folder is missing gives a clear refusal."""
    with pytest.raises(Unreadable, match="cannot be opened"):
        SqliteStore(tmp_path / "nowhere" / "library.db")


def test_a_writer_that_waits_too_long_is_told(store: SqliteStore, monkeypatch: pytest.MonkeyPatch) -> None:
    """A lock that another holds is Busy after the wait, and nothing is written."""
    other = SqliteStore(store._path)
    monkeypatch.setattr(connections, "BUSY_SECONDS", 0.05)
    with other._lock.held(), pytest.raises(Busy):
        store.add(entry("garter"))
    other.close()
    assert store.changes(0, 1) == ()


class TestWhatIsKnown:
    """What was read before is told from memory only while it is true."""

    def test_another_process_sees_a_write_at_once(self, store: SqliteStore, file: Path) -> None:
        """Two stores on one file know the same."""
        other = SqliteStore(file)
        store.add(entry("garter"))
        assert [each.latest("component", "garter").number for each in (store, other)] == [1, 1]
        other.revise(entry("garter", "second"), None)
        assert [each.latest("component", "garter").number for each in (store, other)] == [2, 2]
        other.close()

    def test_nothing_is_asked_of_the_database_while_nothing_is_written(self, store: SqliteStore) -> None:
        """The second question has the very answer of the first."""
        store.add(entry("garter"))
        assert store.latest("component", "garter") is store.latest("component", "garter")

    def test_a_writer_that_died_makes_everybody_ask(self, store: SqliteStore) -> None:
        """What stands in memory is not trusted until another write is whole."""
        store.add(entry("garter"))
        known = store.latest("component", "garter")
        store._lock.tide.writing().__enter__()
        assert store.latest("component", "garter") is not known
        store.add(entry("moss"))
        assert store.latest("component", "garter") is store.latest("component", "garter")

    def test_memory_is_bounded(self, store: SqliteStore, monkeypatch: pytest.MonkeyPatch) -> None:
        """Old answers make room."""
        monkeypatch.setattr(sqlite_store, "MOST_KNOWN", 3)
        store.add(*(entry(f"body-{number}") for number in range(5)))
        assert all(store.latest("component", f"body-{number}") for number in range(5))
        assert len(store._known) <= 3


@pytest.mark.parametrize("kind", ["body", None])
@pytest.mark.parametrize("words", [(), ("firm",)])
def test_a_count_is_answered_from_the_index(store: SqliteStore, kind: str | None, words: tuple[str, ...]) -> None:
    """The question which components admit a count probes the index and never walks all classes."""
    for modulus in range(1, 40):
        store.add(entry(f"body-{modulus}", classes=(CountClass(modulus, 0, modulus),)))
    asked = question(Wanted("component", kind=kind, admits=72, words=words))
    plan = " | ".join(row[3] for row in store._reader().execute(f"EXPLAIN QUERY PLAN {asked.sql}", asked.values))
    assert f"SEARCH c USING COVERING INDEX {'class_by_count' if kind else 'class_of_all'}" in plan
    assert "SCAN c" not in plan
    assert "BLOOM" not in plan


@pytest.mark.parametrize("wanted", [{"kind": "body", "admits": 72}, {"admits": 72}, {"words": ("firm",)}, {}])
def test_a_page_is_not_sorted(store: SqliteStore, wanted: dict[str, Any]) -> None:
    """The order of a page comes from the indexes, so that it costs what it shows."""
    asked = question(Wanted("component", **wanted))
    plan = " | ".join(row[3] for row in store._reader().execute(f"EXPLAIN QUERY PLAN {asked.sql}", asked.values))
    assert "TEMP B-TREE" not in plan


def test_words_are_found_by_their_stem(store: SqliteStore) -> None:
    """A search for "knitting" finds "knit"."""
    store.add(entry("garter", "knit every row"))
    assert len(store.page(Wanted("component", words=("knitting",))).cards) == 1


UNDUMPED = {"token", "secret", "done", "modulus", "any_modulus", "traitless", "_sqlite_migrations"}
"""Tokens and the secret are for nobody else, keys are forgotten in a day, moduli are counted by triggers; traits that
lack are seen again."""


def test_every_table_is_dumped_or_left_out_for_a_reason(file: Path, store: SqliteStore) -> None:
    """A table that is added is not forgotten in dumps; each column of a dumped one is a field of its form."""
    db = sqlite3.connect(file)
    found = {name for (name,) in db.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
    columns = {form.sort: {row[1] for row in db.execute(f'PRAGMA table_info("{form.sort}")')} for form in FORMS}
    db.close()
    assert {name for name in found if not name.startswith(("item_fts", "sqlite_"))} - UNDUMPED == set(columns)
    assert columns == {form.sort: set(form.fields) for form in FORMS}


def test_textures_that_were_read_are_read_again_after_a_write_by_another(tmp_path: Path) -> None:
    """What stands in memory is believed only while nothing is written through any connection."""
    path = tmp_path / "library.db"
    with closing(SqliteStore(path)) as one, closing(SqliteStore(path)) as other:
        one.add(entry("garter", textures=(TextureKey(0, "a", "kp"),)))
        assert [each.slug for each in other.textures()] == ["garter"]
        assert other.textures() is other.textures()
        one.add(entry("moss", textures=(TextureKey(0, "b", "kp/pk"),)))
        assert [each.slug for each in other.textures()] == ["garter", "moss"]

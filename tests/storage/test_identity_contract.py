"""What every store must do with the name by which a library is told from every other."""

from __future__ import annotations

from contextlib import closing
from io import BytesIO
from pathlib import Path

import pytest
from sqlite_utils import Database

from counterpane.library.errors import BrokenDump
from counterpane.library.ports import Store
from counterpane.library.sharing import dumps
from counterpane.library.sharing.records import Record
from counterpane.storage.memory import MemoryStore
from counterpane.storage.sqlite import SqliteStore
from counterpane.storage.sqlite.connections import connect
from counterpane.storage.sqlite.migrations import steps
from storage.entries import entry

AT = "2026-01-02T03:04:05Z"


def test_a_library_gets_its_name_with_the_first_write_and_keeps_it(store: Store) -> None:
    """One in which nothing was written has none, and is nothing yet."""
    assert (store.identity(), list(store.records())) == (None, [])
    store.add(entry("garter"))
    name = store.identity()
    store.revise(entry("garter", "second"), None)
    assert name and store.identity() == name


def test_two_that_begin_alike_have_two_names(store: Store) -> None:
    """The same entry at the same second, by the same person."""
    other = MemoryStore()
    for each in (store, other):
        each.add(entry("garter"))
    assert store.changes(0, 1) == other.changes(0, 1)
    assert store.identity() != other.identity()


def test_a_restored_library_is_the_one_that_was_dumped(store: Store, tmp_path: Path) -> None:
    """It has its name and dumps the same bytes, in either sort of store."""
    store.add(entry("garter"))
    whole = b"".join(dumps.dump(store))
    for other in (MemoryStore(), SqliteStore(tmp_path / "other.db")):
        dumps.restore(other, BytesIO(whole))
        assert (other.identity(), b"".join(dumps.dump(other))) == (store.identity(), whole)
        other.close()


def test_what_an_earlier_version_dumped_has_no_name_and_dumps_the_same_bytes(store: Store) -> None:
    """Nothing is added to it, whatever is written later."""
    source = MemoryStore()
    source.add(entry("garter"))
    nameless = [each for each in source.records() if each.sort != "library"]
    store.restore(nameless)
    assert (store.identity(), list(store.records())) == (None, nameless)
    store.revise(entry("garter", "second"), None)
    assert store.identity() is None


def test_a_dump_of_two_libraries_is_none() -> None:
    """A second name is refused."""
    names = [Record("library", {"identity": each * 32}) for each in "ab"]
    with pytest.raises(BrokenDump, match="one library"):
        dumps.proved_dump(names)


@pytest.mark.parametrize("written", [True, False])
def test_a_file_of_an_earlier_version_gets_a_name_if_it_has_a_history(tmp_path: Path, written: bool) -> None:
    """And once only; an empty one gets it with its first write."""
    path = tmp_path / "library.db"
    db = Database(connect(path, read_only=False))
    steps.apply(db, stop_before="0013_library")
    if written:
        told = {"seq": 1, "at": AT, "kind": "component", "slug": "garter", "sha256": "a" * 64, "event": "added"}
        db.table("change").insert(told)
    db.conn.close()
    names = []
    for _ in range(2):
        with closing(SqliteStore(path)) as store:
            names.append(store.identity())
    assert (names[0] is not None, names[0]) == (written, names[1])

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


def test_a_library_has_its_name_before_the_first_write_and_keeps_it(store: Store) -> None:
    """It is all that there is of one in which nothing was written."""
    name = store.identity()
    assert name and list(store.records()) == [Record("library", {"identity": name})]
    store.add(entry("garter"))
    store.revise(entry("garter", "second"), None)
    assert store.identity() == name


def test_a_file_has_the_same_name_whenever_it_is_opened(tmp_path: Path) -> None:
    """Before anything is written in it, too."""
    names = set()
    for _ in range(3):
        with closing(SqliteStore(tmp_path / "library.db")) as store:
            names.add(store.identity())
    assert len(names) == 1 and None not in names


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


def test_a_restored_empty_library_is_the_one_that_was_dumped(store: Store, tmp_path: Path) -> None:
    """Its name is the only line."""
    whole = b"".join(dumps.dump(store))
    for other in (MemoryStore(), SqliteStore(tmp_path / "other.db")):
        with closing(other):
            dumps.restore(other, BytesIO(whole))
            assert (other.identity(), b"".join(dumps.dump(other))) == (store.identity(), whole)


def test_what_an_earlier_version_dumped_of_nothing_leaves_the_name_there_is(store: Store) -> None:
    """There is nothing by which anybody knew it."""
    name = store.identity()
    store.restore([])
    assert store.identity() == name


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
def test_a_file_of_an_earlier_version_gets_a_name(tmp_path: Path, written: bool) -> None:
    """And once only, whether it has a history or none."""
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
    assert names[0] is not None and names[0] == names[1]


def test_a_file_that_was_restored_without_a_name_gets_none(tmp_path: Path) -> None:
    """It would be another library from one version of the program to the next."""
    path = tmp_path / "library.db"
    with closing(SqliteStore(path)) as store, closing(MemoryStore()) as source:
        source.add(entry("garter"))
        store.restore([each for each in source.records() if each.sort != "library"])
    for _ in range(2):
        with closing(SqliteStore(path)) as again:
            assert again.identity() is None

"""What every store must do with its secret."""

from __future__ import annotations

import subprocess
import sys
from contextlib import closing
from io import BytesIO
from pathlib import Path

from counterpane.library.ports import Store
from counterpane.library.sharing import dumps
from counterpane.storage.memory import MemoryStore
from counterpane.storage.sqlite import SqliteStore
from counterpane.storage.sqlite.backup import back_up
from storage.entries import entry

OPEN = """
import sys
from counterpane.storage.sqlite import SqliteStore
print(SqliteStore(sys.argv[1]).secret().hex())
"""


def test_a_store_has_a_secret_from_the_beginning_and_keeps_it(store: Store) -> None:
    """Thirty-two bytes, whatever is written."""
    secret = store.secret()
    store.add(entry("garter"))
    assert (len(secret), store.secret()) == (32, secret)


def test_each_store_has_a_secret_of_its_own(store: Store, tmp_path: Path) -> None:
    """Made by chance, and not of anything that others know."""
    with closing(SqliteStore(tmp_path / "other.db")) as other:
        assert len({store.secret(), other.secret(), MemoryStore().secret()}) == 3


def test_a_dump_does_not_tell_it_and_what_is_restored_makes_its_own(store: Store, tmp_path: Path) -> None:
    """In whichever form it might stand there."""
    store.add(entry("garter"))
    secret, whole = store.secret(), b"".join(dumps.dump(store))
    assert secret not in whole and secret.hex().encode() not in whole.lower()
    for other in (MemoryStore(), SqliteStore(tmp_path / "other.db")):
        with closing(other):
            own = other.secret()
            dumps.restore(other, BytesIO(whole))
            assert other.secret() == own != secret


def test_all_who_open_a_file_at_once_have_the_same(tmp_path: Path) -> None:
    """The first of them makes it, in one transaction."""
    command = [sys.executable, "-c", OPEN, str(tmp_path / "library.db")]
    opened = [subprocess.Popen(command, stdout=subprocess.PIPE, text=True) for _ in range(4)]
    said = {each.communicate(timeout=60)[0] for each in opened}
    assert len(said) == 1 and len(said.pop().strip()) == 64


def test_a_copy_of_the_file_is_the_same_library(tmp_path: Path) -> None:
    """What was given by the one is known by the other; the records of the copy do not tell it."""
    with closing(SqliteStore(tmp_path / "library.db")) as store:
        store.add(entry("garter"))
        with back_up(tmp_path / "library.db", tmp_path / "copy.db") as records:
            assert store.secret().hex() not in str(list(records))
        with closing(SqliteStore(tmp_path / "copy.db")) as copy:
            assert copy.secret() == store.secret()

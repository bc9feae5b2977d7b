"""The accounts of callers: counted for all processes, wiped with each period, bounded, and no one's to keep."""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from threading import Barrier

import pytest

from counterpane.storage import accounts
from counterpane.storage.accounts import Accounts

HOLD = """
import sqlite3, sys, time
sqlite3.connect(sys.argv[1], isolation_level=None).execute("BEGIN IMMEDIATE")
print("held", flush=True)
time.sleep(60)
"""

MANY = 5_000
ASK = """
import sys
from concurrent.futures import ThreadPoolExecutor
from counterpane.storage.accounts import Accounts
counted = Accounts(sys.argv[1], 10**9)
print("ready", flush=True)
sys.stdin.readline()
with ThreadPoolExecutor(2) as pool:
    print(*(number for number, _ in pool.map(counted.count, ["anna"] * int(sys.argv[2]))))
"""


class Clock:
    """A clock that stands still until somebody moves it."""

    def __init__(self, at: float) -> None:
        self.at = at

    def __call__(self) -> float:
        """Return the seconds."""
        return self.at


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Return where accounts may be made."""
    return tmp_path / "accounts"


@pytest.fixture
def holder(path: Path) -> Iterator[subprocess.Popen[str]]:
    """Yield another process that holds the lock of the accounts."""
    Accounts(path, 60).count("anna")
    process = subprocess.Popen([sys.executable, "-c", HOLD, str(path)], stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    assert process.stdout.readline() == "held\n"
    yield process
    process.kill()
    process.wait()
    process.stdout.close()


def test_each_caller_is_counted_apart(path: Path) -> None:
    """Whoever else asks in between."""
    counted = Accounts(path, 60, Clock(600))
    assert [counted.count(caller)[0] for caller in ("anna", "bea", "anna", "anna", "bea")] == [1, 1, 2, 3, 2]


def test_all_who_open_the_file_count_together(path: Path) -> None:
    """As two workers do."""
    first, second = (Accounts(path, 60, Clock(600)) for _ in range(2))
    assert [each.count("anna")[0] for each in (first, second, first, second)] == [1, 2, 3, 4]


def test_no_request_of_several_processes_is_lost_or_counted_twice(path: Path) -> None:
    """Each with two threads, as quickly as they can; every number is given once."""
    command = [sys.executable, "-c", ASK, str(path), str(MANY)]
    asking = [subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) for _ in range(3)]
    for each in asking:
        assert each.stdout and each.stdout.readline() == "ready\n"
    said = []
    for each in asking:
        assert each.stdin
        each.stdin.write("go\n")
        each.stdin.flush()
    for each in asking:
        said += each.communicate(timeout=120)[0].split()
    assert sorted(map(int, said)) == list(range(1, 3 * MANY + 1))


def first_number(counted: Accounts, ready: Barrier) -> int:
    """Count a request when all are ready to."""
    ready.wait()
    return counted.count("anna")[0]


def test_a_file_that_several_make_at_once_counts_for_all(tmp_path: Path) -> None:
    """As the workers of a server do with their first requests."""
    for turn in range(50):
        counted = [Accounts(tmp_path / str(turn), 10**9) for _ in range(4)]
        with ThreadPoolExecutor(len(counted)) as pool:
            numbers = list(pool.map(first_number, counted, [Barrier(len(counted))] * len(counted)))
        assert sorted(numbers) == [1, 2, 3, 4]
        for each in counted:
            each.close()


@pytest.mark.parametrize(("at", "left"), [(600, 60), (600.2, 60), (601, 59), (659, 1), (659.9, 1)])
def test_after_the_seconds_that_are_told_everybody_begins_again(path: Path, at: float, left: int) -> None:
    """Never earlier than told, and never a second too late."""
    clock = Clock(at)
    counted = Accounts(path, 60, clock)
    assert (counted.count("anna"), counted.count("anna")) == ((1, left), (2, left))
    clock.at += left - 1
    assert counted.count("anna")[0] == 3
    clock.at = at + left
    assert counted.count("anna")[0] == 1


def test_callers_beyond_what_is_held_share_one_account(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Those that were there keep theirs, and the file does not grow."""
    monkeypatch.setattr(accounts, "MOST", 20)
    counted = Accounts(path, 60, Clock(600))
    assert [counted.count(f"address 11.{each}")[0] for each in range(25)] == [1] * 20 + [1, 2, 3, 4, 5]
    assert [counted.count(f"address 11.{each}")[0] for each in (0, 19, 24)] == [2, 2, 6]


def test_the_file_is_empty_again_with_the_next_period(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """However full it was; what all others shared begins again too."""
    monkeypatch.setattr(accounts, "MOST", 20)
    clock = Clock(600)
    counted = Accounts(path, 60, clock)
    for each in range(25):
        counted.count(f"address 11.{each}")
    clock.at = 660
    assert [counted.count(f"address 12.{each}")[0] for each in range(22)] == [1] * 20 + [1, 2]


def test_the_file_holds_more_callers_than_a_library_has(path: Path) -> None:
    """Ten thousand in a minute have an account each, in a file of some hundred bytes for each."""
    counted = Accounts(path, 60, Clock(600))
    assert {counted.count(f"address 10.{each}")[0] for each in range(10_000)} == {1}
    counted.close()
    assert path.stat().st_size < 10_000 * 100


def test_the_file_tells_no_caller_and_is_its_owners_alone(path: Path) -> None:
    """Addresses stand in it as hashes; what lies beside it is its owner's too."""
    Accounts(path, 60).count("address 192.0.2.7")
    files = list(path.parent.iterdir())
    assert not any(b"192.0.2.7" in each.read_bytes() for each in files)
    assert not any(each.stat().st_mode & 0o077 for each in files)


def test_a_process_that_is_killed_keeps_nobody_waiting(path: Path, holder: subprocess.Popen[str]) -> None:
    """The system takes its lock."""
    holder.kill()
    holder.wait()
    began = time.monotonic()
    assert Accounts(path, 60).count("bea")[0] == 1
    assert time.monotonic() - began < accounts.WAIT_SECONDS


def test_a_process_that_keeps_the_lock_is_not_waited_for_long(path: Path, holder: subprocess.Popen[str]) -> None:
    """Such as one that was stopped; that nothing was counted is said."""
    with pytest.raises(OSError, match="locked"):
        Accounts(path, 60).count("bea")
    assert holder.poll() is None


def test_a_file_that_is_none_of_accounts_is_said_to_be_so(path: Path) -> None:
    """And nothing is counted in it."""
    path.write_bytes(b"no accounts" * 1000)
    with pytest.raises(OSError, match="not a database"):
        Accounts(path, 60).count("anna")


def test_where_no_file_can_be_nothing_is_counted_until_there_can(tmp_path: Path) -> None:
    """It is tried again with each request."""
    counted = Accounts(tmp_path / "folder" / "accounts", 60)
    with pytest.raises(OSError, match="No such file"):
        counted.count("anna")
    (tmp_path / "folder").mkdir()
    assert counted.count("anna")[0] == 1
    counted.close()

"""Write to a store from a process of its own, and print each write that the store acknowledged."""

from __future__ import annotations

import sys

from counterpane.library.errors import Stale
from counterpane.storage.sqlite import SqliteStore
from storage.entries import entry


def add(store: SqliteStore, times: int) -> None:
    """Add and revise components one after the other."""
    for number in range(times):
        slug = f"body-{number}"
        store.add(entry(slug))
        print(slug, flush=True)
        store.revise(entry(slug, "second"), None)


def revise(store: SqliteStore, times: int, name: str) -> None:
    """Revise one component this many times, trying again where another was first."""
    done = 0
    while done < times:
        try:
            store.revise(entry("shared", f"{name} {done}"), store.latest("component", "shared").sha256)
        except Stale:
            continue
        done += 1
        print("done", flush=True)


def main(path: str, act: str, times: str, name: str = "") -> None:
    """Do what the arguments say."""
    store = SqliteStore(path)
    if act == "revise":
        revise(store, int(times), name)
    else:
        add(store, int(times))
    store.close()


main(*sys.argv[1:])

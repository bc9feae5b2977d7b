"""Break transfers between two libraries off, many of them: both must hold the same afterwards.

`python -m benchmarks.killed_pulls 1000 7` from `tests/`: how many transfers, and the seed of edits and breaks. Edits go
on in both while they pull from each other in process, into a store in memory and one in SQLite; every transfer is
broken off after a few calls, before or after an object came. What was held before a pull is held after it.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
from pathlib import Path

from counterpane import wiring
from counterpane.library.sharing.pulling import Pulling
from counterpane.peers import read
from peers.libraries import Library, LocalPeer, edit, furnish, killed_pulls


def run(transfers: int, seed: int) -> str:
    """Edit and pull until so many transfers were broken off; return what was done, or raise AssertionError."""
    chance, began, broken, edits = random.Random(seed), time.monotonic(), 0, 0
    with tempfile.TemporaryDirectory() as room:
        one, two = (
            Library(wiring.open_library(path, starters=False), "") for path in (":memory:", Path(room) / "two.db")
        )
        peers = (LocalPeer(one.services, "one"), LocalPeer(two.services, "two"))
        furnish(one)
        while broken < transfers:
            for library in (one, two) if broken else (one,):
                edit(library, chance)
                edits += 1
            broken += killed_pulls(two, peers[0], chance) + killed_pulls(one, peers[1], chance)
        killed_pulls(two, peers[0], chance)
        assert one.held() == two.held(), one.held() ^ two.held()
        again = [list(Pulling(into.services, peer, read).run()) for into, peer in ((two, peers[0]), (one, peers[1]))]
        moved = [each for each in (*again[0], *again[1]) if each.became != "held"]
        assert not moved, moved
        held, apart = len(one.held()), len(one.services.store.apart())
        two.services.store.close()
    took = time.monotonic() - began
    return f"{broken} transfers broken off, {edits} edits, {held} revisions held by both, {apart} apart: {took:.0f} s"


if __name__ == "__main__":
    print(run(*(int(each) for each in sys.argv[1:3])))

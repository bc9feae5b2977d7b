"""Kill a real server while it writes, and let many clients edit one component through it.

    cd tests && python -m benchmarks.hammer_server [KILLS] [CLIENTS] [EDITS] [SEED]

Each kill (SIGKILL, of the server and its workers) comes at a random moment, or every other time just when something was
written, while three clients add a component, add a recipe and revise a component. The server is started again and each
client sends the same again under the same key: there must be exactly one of each, answered as the first time, nothing
that was acknowledged may be gone, and the file must be sound and hold no half of anything. Then CLIENTS each make EDITS
of one component, asking again where another was first; none may be lost. Meanwhile a component is moved from state to
state by all of them, and each move stands once. The audit log must hold after all of it, with a line for every change.
Exits by whether anything was wrong.
"""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import tempfile
import threading
import time
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from hashlib import sha256
from itertools import pairwise
from pathlib import Path
from typing import Any

import requests

from api.contents import BLANKET, RIB
from benchmarks.soundness import unsound
from counterpane import serving, wiring

SERVE = """
import sys
from counterpane.serving import Serving, serve
serve(Serving(sys.argv[1], port=int(sys.argv[2]), workers=2), lambda address: print(address, flush=True))
"""
LATEST_S = 0.4
"""Seconds after which no kill comes; house: about as long as a write takes on a busy machine."""
MOVED = 0
"""Stands among statuses for a move that was made."""
MOVES = (
    {"to": "accepted", "because": "sound", "say": "It was tried."},
    {"to": "yanked", "because": "misprint", "say": "Row 2 is misprinted."},
)
RECIPE = {**BLANKET, "parts": {"body": "garter"}}


@dataclass(frozen=True, slots=True)
class Library:
    """A library in a file, the port it is served at, and a token for it."""

    path: Path
    port: int
    token: str

    @classmethod
    def made(cls, folder: Path) -> Library:
        """Make one with the starters."""
        path = folder / "library.db"
        return cls(path, serving.free_port("127.0.0.1"), wiring.create_token(path, "keeper", "anna"))

    @contextmanager
    def served(self) -> Iterator[subprocess.Popen[str]]:
        """Serve it in processes of their own, which are all killed at the end."""
        root = Path(__file__).parents[2]
        process = subprocess.Popen(
            [sys.executable, "-c", SERVE, str(self.path), str(self.port)],
            env={**os.environ, "PYTHONPATH": f"{root / 'service'}:{root / 'schema'}"},
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            start_new_session=True,
        )
        assert process.stdout is not None
        try:
            process.stdout.readline()
            self._wait()
            yield process
        finally:
            kill(process)
            process.stdout.close()
            process.wait()

    def _wait(self) -> None:
        for _ in range(600):
            with suppress(requests.RequestException):
                if self.ask("GET", "/healthz").status_code == 200:
                    return
            time.sleep(0.05)
        raise TimeoutError(self.port)

    def ask(self, method: str, path: str, content: Any = None, **headers: str) -> requests.Response:
        """Send one request."""
        named = {name.replace("_", "-"): value for name, value in headers.items()}
        headers = {"Authorization": f"Bearer {self.token}", **named}
        address = f"http://127.0.0.1:{self.port}{path}"
        return requests.request(method, address, json=content, headers=headers, timeout=30)


def kill(process: subprocess.Popen[str]) -> None:
    """End the server and its workers at once."""
    with suppress(ProcessLookupError):
        os.killpg(process.pid, signal.SIGKILL)


@dataclass(slots=True)
class Write:
    """A write under way: what is sent, and whether it was acknowledged."""

    method: str
    path: str
    content: dict[str, Any]
    headers: dict[str, str]
    acknowledged: int = 0

    def send(self, library: Library) -> None:
        """Send it; a connection that broke leaves it open whether it was written."""
        with suppress(requests.RequestException):
            answer = library.ask(self.method, self.path, self.content, **self.headers)
            self.acknowledged = answer.status_code

    def stood(self, library: Library) -> str:
        """Say how far it had come at the kill."""
        there = holds(library.ask("GET", self.address), self)
        return "answered" if self.acknowledged else "written, no answer" if there else "not written"

    def answers(self, again: requests.Response, there: bool) -> bool:
        """Say whether this is how the same request sent again is answered: a POST as the first time, by its key."""
        if self.method == "PUT":
            return again.status_code in ({200, 412} if there else {200})
        return again.status_code == 201 and ("Idempotency-Replayed" in again.headers) == there

    @property
    def address(self) -> str:
        """Where it is found once it is there."""
        return self.path if self.method == "PUT" else f"{self.path}/{self.content['slug']}"


def writes(number: int, etag: str) -> list[Write]:
    """Return one of each kind."""
    key = {"Idempotency_Key": f"kill-{number}"}
    return [
        Write("POST", "/v1/components", {**RIB, "slug": f"part-{number}"}, key),
        Write("POST", "/v1/recipes", {**RECIPE, "slug": f"blanket-{number}"}, key),
        Write(
            "PUT",
            "/v1/components/shared",
            {**RIB, "slug": "shared", "summary": f"After {number}."},
            {"If_Match": etag},
        ),
    ]


def killed(library: Library, process: subprocess.Popen[str], number: int, draw: random.Random) -> list[Write]:
    """Send one of each, and kill the server at a random moment, or every other time when something was written."""
    library.ask("PUT", "/v1/components/shared", {**RIB, "slug": "shared", "summary": f"Before {number}."}, If_Match="*")
    sent = writes(number, library.ask("GET", "/v1/components/shared").headers["ETag"])
    threads = [threading.Thread(target=each.send, args=(library,)) for each in sent]
    for thread in threads:
        thread.start()
    if number % 2:
        await_write(library.path)
    else:
        time.sleep(draw.uniform(0, LATEST_S))
    kill(process)
    for thread in threads:
        thread.join()
    return sent


def await_write(path: Path) -> None:
    """Wait until the journal of the file changes, which is before the answer, or for as long as a kill may take."""
    journal, until = path.with_name(f"{path.name}-wal"), time.monotonic() + 5 * LATEST_S
    before = journal.stat().st_mtime_ns
    while journal.stat().st_mtime_ns == before and time.monotonic() < until:
        time.sleep(0.0002)


def faults_after(library: Library, sent: Sequence[Write]) -> list[str]:
    """Send the same again to a server started again, and return what is not as it must be."""
    faults = unsound(library.path)
    for each in sent:
        before = library.ask("GET", each.address)
        if each.acknowledged in (200, 201) and not holds(before, each):
            faults.append(f"{each.address} was acknowledged and is gone")
        again = library.ask(each.method, each.path, each.content, **each.headers)
        there = holds(before, each)
        if not each.answers(again, there):
            faults.append(f"{each.address}, {there=}, then {again.status_code}: {again.text[:200]}")
        faults += [] if holds(library.ask("GET", each.address), each) else [f"{each.address} is not there"]
    return faults + doubled(library, [each.address for each in sent if each.method == "POST"])


def holds(answer: requests.Response, write: Write) -> bool:
    """Say whether an answer is what was written."""
    return answer.status_code == 200 and answer.json()["summary"] == write.content["summary"]


def doubled(library: Library, addresses: Sequence[str]) -> list[str]:
    """Return what has not exactly one revision, or bytes of another hash."""
    faults = []
    for address in addresses:
        items = library.ask("GET", f"{address}/revisions").json()["items"]
        content = library.ask("GET", items[0]["object"]).content
        if len(items) != 1 or sha256(content).hexdigest() != items[0]["sha256"]:
            faults.append(f"{address} has {len(items)} revisions, or bytes of another hash")
    return faults


def kills(folder: Path, times: int, seed: int) -> tuple[Counter[str], list[str]]:
    """Kill the server this many times; return how the writes stood at the kill, and every fault."""
    library, draw = Library.made(folder), random.Random(seed)
    stood: Counter[str] = Counter()
    faults: list[str] = []
    sent: list[Write] = []
    with library.served():
        assert library.ask("POST", "/v1/components", {**RIB, "slug": "shared"}).status_code == 201
    for number in range(times + 1):
        with library.served() as process:
            stood += Counter(each.stood(library) for each in sent)
            faults += [f"kill {number}: {fault}" for fault in faults_after(library, sent)]
            sent = killed(library, process, number, draw) if number < times else []
    return stood, faults


def edits(folder: Path, clients: int, each: int) -> tuple[Counter[int], list[str]]:
    """Let clients edit one component at once; return the statuses, and every fault."""
    library = Library.made(folder)
    statuses: Counter[int] = Counter()
    with library.served():
        library.ask("POST", "/v1/components", {**RIB, "slug": "shared"})
        library.ask("POST", "/v1/components", {**RIB, "slug": "moved"})
        with ThreadPoolExecutor(clients) as pool:
            done = [pool.submit(_edit, library, f"client {client}", each) for client in range(clients)]
            for future in done:
                statuses += future.result()
        items = library.ask("GET", "/v1/components/shared/revisions").json()["items"]
        moves = library.ask("GET", "/v1/components/moved/standing").json()["moves"]
    chain = [(one["to"], other["from"]) for one, other in pairwise(moves)]
    torn = [] if len(moves) == statuses[MOVED] and all(one == other for one, other in chain) else ["a move was lost"]
    wanted = 1 + clients * each
    lost = (
        []
        if len(items) == len({item["sha256"] for item in items}) == wanted
        else [f"{len(items)} of {wanted} revisions"]
    )
    return statuses, lost + torn + unsound(library.path)


def _edit(library: Library, name: str, times: int) -> Counter[int]:
    statuses: Counter[int] = Counter()
    for number in range(times):
        content = {**RIB, "slug": "shared", "summary": f"Edit {number} of {name}."}
        status = 0
        while status != 200:
            tag = library.ask("GET", "/v1/components/shared").headers["ETag"]
            status = library.ask("PUT", "/v1/components/shared", content, If_Match=tag).status_code
            statuses[status] += 1
            assert status in (200, 412, 503), status
        statuses[MOVED] += _move(library, MOVES[number % len(MOVES)])
    return statuses


def _move(library: Library, content: dict[str, str]) -> int:
    """Try to move the other component; return 1 where it was moved, 0 where it stood elsewhere."""
    status = library.ask("POST", "/v1/components/moved/standing", content).status_code
    assert status in (200, 409, 503), status
    return status == 200


def told(what: str, run: Callable[[], tuple[Counter[Any], list[str]]]) -> int:
    """Print what came of a run, and return how much was wrong."""
    begun = time.monotonic()
    counts, faults = run()
    shown = ", ".join(f"{count} × {how}" for how, count in sorted(counts.items()))
    print(f"{what}: {shown}; {len(faults)} wrong, {time.monotonic() - begun:.0f} s")
    print(*(f"  {fault}" for fault in faults[:20]), sep="\n", end="", flush=True)
    return len(faults)


def main(times: int = 200, clients: int = 20, each: int = 50, seed: int = 1843) -> int:
    """Do both in folders of their own."""
    with tempfile.TemporaryDirectory() as first, tempfile.TemporaryDirectory() as second:
        wrong = told(f"{clients} clients, {each} edits each", lambda: edits(Path(second), clients, each)) if each else 0
        wrong += told(f"{times} kills", lambda: kills(Path(first), times, seed)) if times else 0
    return min(wrong, 1)


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:])))

"""Requests a second for a component, beside a bare Flask view with the same bytes and headers under the same server.

Both run under granian as `counterpane serve` starts it; `wrk` asks where it is installed, else threads of this program.
They take turns, and the ratio of the medians is what can be compared between machines. The aim is 0.7. A third server
counts the requests of each caller, with a quota that nobody reaches.
"""

from __future__ import annotations

import http.client
import os
import re
import shutil
import signal
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path

from counterpane.settings import MOST_REQUESTS

ROUNDS, SECONDS, CONNECTIONS = 5, 3, 16
PATH = "/v1/components/basket-weave"
LEFT_OUT = {"server", "date", "content-length", "x-request-id"}

SERVE = """
import sys
from counterpane.serving import Serving, serve
serve(Serving(sys.argv[1], port=0, requests_per_minute=int(sys.argv[2])), lambda address: print(address, flush=True))
"""
BARE = """
import os, sys
from flask import Flask, Response
def app():
    body, headers = open(os.environ["BARE_BODY"], "rb").read(), eval(os.environ["BARE_HEADERS"])
    made = Flask("bare")
    made.add_url_rule("/v1/components/<slug>", "get", lambda slug: Response(body, headers=headers))
    return made
if __name__ == "__main__":
    from granian import Granian
    from counterpane.serving import free_port
    port = free_port("127.0.0.1")
    server = Granian("bare:app", address="127.0.0.1", port=port, interface="wsgi", workers=2, blocking_threads=2,
                     factory=True, log_enabled=False, workers_kill_timeout=3)
    server.on_startup(lambda: print(f"http://127.0.0.1:{port}", flush=True))
    server.serve()
"""


def main() -> None:
    """Print the requests a second of each, in turns, and the ratio of their medians."""
    with tempfile.TemporaryDirectory() as folder, ExitStack() as held:
        ours, limited = (
            held.enter_context(_started(Path(folder), "-c", SERVE, f"{folder}/{quota}.db", str(quota)))
            for quota in (0, MOST_REQUESTS)
        )
        status, headers, body = _fetched(ours)
        assert status == 200
        same = {name: value for name, value in headers if name.lower() not in LEFT_OUT}
        Path(folder, "bare.py").write_text(BARE)
        Path(folder, "body").write_bytes(body)
        extra = {"BARE_BODY": f"{folder}/body", "BARE_HEADERS": repr(same | {"X-Request-Id": "0" * 16})}
        with _started(Path(folder), "bare.py", **extra) as bare:
            assert _fetched(bare)[2] == body
            turns = [(_rate(bare), _rate(ours), _rate(limited)) for _ in range(ROUNDS)]
    floor, rate, counted = (statistics.median(column) for column in zip(*turns, strict=True))
    with_what = "wrk" if shutil.which("wrk") else "threads of Python"
    sys.stdout.write(f"{len(body)} bytes, {CONNECTIONS} connections, {ROUNDS} turns of {SECONDS} s with {with_what}\n")
    sys.stdout.write(f"bare Flask view           {floor:7.0f} requests a second\n")
    sys.stdout.write(f"GET {PATH}  {rate:7.0f} requests a second, ratio {rate / floor:.2f} (aim: 0.7)\n")
    sys.stdout.write(
        f"where requests are counted {counted:6.0f} requests a second, {rate / counted:.2f} times as long\n"
    )


@contextmanager
def _started(folder: Path, *arguments: str, **extra: str) -> Iterator[str]:
    """Start a server in a process of its own, yield its address, and end it."""
    root = Path(__file__).parents[2]
    path = os.pathsep.join((str(root / "service"), str(root / "schema"), str(folder)))
    process = subprocess.Popen(
        [sys.executable, *arguments],
        cwd=folder,
        env={**os.environ, **extra, "PYTHONPATH": path},
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    )
    assert process.stdout is not None
    try:
        address = process.stdout.readline().strip()
        _wait_for(address)
        yield address
    finally:
        process.send_signal(signal.SIGINT)
        process.wait(30)
        process.stdout.close()


def _wait_for(address: str) -> None:
    for _ in range(200):
        try:
            _fetched(address)
            return
        except OSError:
            time.sleep(0.1)
    raise TimeoutError(address)


def _fetched(address: str) -> tuple[int, list[tuple[str, str]], bytes]:
    connection = http.client.HTTPConnection(address.removeprefix("http://"), timeout=10)
    connection.request("GET", PATH)
    answer = connection.getresponse()
    found = answer.status, answer.getheaders(), answer.read()
    connection.close()
    return found


def _rate(address: str) -> float:
    """Return the requests a second of one turn."""
    if wrk := shutil.which("wrk"):
        command = [wrk, "-t1", f"-c{CONNECTIONS}", f"-d{SECONDS}s", address + PATH]
        said = subprocess.run(command, check=True, capture_output=True, text=True).stdout
        assert "Non-2xx" not in said, said
        found = re.search(r"Requests/sec:\s+([0-9.]+)", said)
        assert found, said
        return float(found[1])
    counts = [0] * CONNECTIONS
    until = time.monotonic() + SECONDS
    askers = [threading.Thread(target=_ask, args=(address, counts, place, until)) for place in range(CONNECTIONS)]
    for asker in askers:
        asker.start()
    for asker in askers:
        asker.join()
    return sum(counts) / SECONDS


def _ask(address: str, counts: list[int], place: int, until: float) -> None:
    connection = http.client.HTTPConnection(address.removeprefix("http://"), timeout=10)
    while time.monotonic() < until:
        connection.request("GET", PATH)
        connection.getresponse().read()
        counts[place] += 1
    connection.close()


if __name__ == "__main__":
    main()

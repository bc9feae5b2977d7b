"""The parts put together: a library with its starters, and the servers before it."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path
from typing import Any

import pytest
import requests

from counterpane import wiring
from counterpane.client import Client
from counterpane.library.errors import Unreadable
from counterpane.library.ports import Wanted
from counterpane.seeding import load_components
from counterpane.seeding.profiles import load_profiles
from counterpane.seeding.recipes import load_recipes
from counterpane.serving import WAITRESS_THREADS, CannotServe, Serving, serve
from storage.entries import entry

ROOT = Path(__file__).parents[1]
SERVE = """
import sys
from counterpane.serving import Serving, serve
store, server, quota = sys.argv[1:]
serving = Serving(store, port=0, server=server, workers=2, requests_per_minute=int(quota))
serve(serving, lambda address: print(address, flush=True))
"""


@contextmanager
def served(store: Path, server: str, quota: int = 0) -> Iterator[str]:
    """Serve a library in a process of its own and yield its address."""
    environment = {**os.environ, "PYTHONPATH": f"{ROOT / 'service'}:{ROOT / 'schema'}"}
    command = [sys.executable, "-c", SERVE, str(store), server, str(quota)]
    process = subprocess.Popen(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
        env=environment,
        start_new_session=True,
    )
    assert process.stdout is not None
    try:
        address = process.stdout.readline().strip()
        wait_for(address)
        yield address
    finally:
        process.stdout.close()
        process.send_signal(signal.SIGINT)
        try:
            process.wait(20)
        except subprocess.TimeoutExpired:
            os.killpg(process.pid, signal.SIGKILL)
            raise


def wait_for(address: str) -> None:
    """Wait until a connection is taken: the address is told when it is bound, a moment before a worker is up."""
    host, port = address.removeprefix("http://").split(":")
    for _ in range(200):
        with suppress(OSError), socket.create_connection((host, int(port)), timeout=1):
            return
        time.sleep(0.1)


def test_an_empty_library_gets_the_starters_once(tmp_path: Path) -> None:
    """Opening it again adds nothing."""
    path = tmp_path / "library.db"
    for _ in range(2):
        services = wiring.open_library(path)
        assert len(services.store.page(Wanted("component", limit=500)).cards) == len(load_components())
        assert len(services.store.page(Wanted("recipe", limit=500)).cards) == len(load_recipes())
        assert len(services.store.page(Wanted("profile", limit=500)).cards) == len(load_profiles())
        whole = len(load_components()) + len(load_recipes()) + len(load_profiles())
        assert len(services.store.changes(0, 1000)) == whole
        services.store.close()


def test_a_shelf_that_an_earlier_version_did_not_have_is_filled(tmp_path: Path) -> None:
    """What stands on the other shelves stays as it is."""
    services = wiring.open_library(tmp_path / "library.db", starters=False)
    services.store.add(entry("garter"), entry("first-frost", shelf="recipe", kind="recipe", classes=()))
    services.store.close()
    again = wiring.open_library(tmp_path / "library.db")
    added = [(change.kind, change.slug) for change in again.store.changes(2, 100)]
    again.store.close()
    assert added == [("profile", slug) for slug in load_profiles()]


@pytest.mark.parametrize("path", ["postgresql://localhost/x", "/dev/null/x.db"])
def test_a_path_at_which_no_store_can_be_is_refused(path: str) -> None:
    """With what to do instead."""
    with pytest.raises(Unreadable) as caught:
        wiring.open_library(path)
    assert caught.value.hint


def test_a_token_is_made_for_a_library(tmp_path: Path) -> None:
    """It opens the library it was made for."""
    path = tmp_path / "library.db"
    token = wiring.create_token(path, "keeper", "anna")
    services = wiring.open_library(path, open_reading=False)
    client = wiring.app_of(services).test_client()
    assert client.get("/v1/components", headers={"Authorization": f"Bearer {token}"}).status_code == 200
    services.store.close()


@pytest.mark.parametrize("host", ["127.0.0.1", "::1", "localhost"])
def test_reading_is_open_where_only_this_machine_can_ask(host: str) -> None:
    """And closed on every other address."""
    assert Serving("x.db", host=host).open_reading
    assert not Serving("x.db", host="0.0.0.0").open_reading


@pytest.mark.parametrize(
    ("host", "said", "quota"),
    [("127.0.0.1", "", 0), ("0.0.0.0", "", 1200), ("127.0.0.1", 7, 7), ("0.0.0.0", 0, 0)],
)
def test_requests_are_counted_where_others_can_ask_or_somebody_says_so(host: str, said: Any, quota: int) -> None:
    """A number holds everywhere, and 0 is no limit."""
    assert Serving("x.db", host=host, requests_per_minute=said).quota == quota


def test_a_port_in_use_is_refused_before_anything_is_made(tmp_path: Path) -> None:
    """The store is not touched."""
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        serving = Serving(str(tmp_path / "x.db"), port=taken.getsockname()[1])
        with pytest.raises(CannotServe, match="cannot be listened on"):
            serve(serving, print)
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("server", ["granian", "waitress"])
def test_both_servers_serve_the_same_answers(tmp_path: Path, server: str) -> None:
    """Over a real connection: stored bytes with their tag, 304, and a problem document."""
    with served(tmp_path / "library.db", server) as address, Client(address) as client:
        component = client.component("waffle")
        path = f"{address}/v1/components/waffle"
        again = requests.get(path, headers={"If-None-Match": component.etag}, timeout=20)
        assert (again.status_code, again.content, again.headers["ETag"]) == (304, b"", component.etag)
        assert requests.head(path, timeout=20).headers["Content-Length"] == str(
            len(requests.get(path, timeout=20).content)
        )
        refused = requests.post(f"{address}/v1/plans", data=b"x" * 2**21, timeout=20)
        assert (refused.status_code, refused.headers["Content-Type"]) == (413, "application/problem+json")


def test_waitress_answers_while_others_send_slowly(tmp_path: Path) -> None:
    """Bodies that do not come keep no thread, as the help of `serve` says."""
    begun = b"POST /v1/checks HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 50\r\n\r\n{"
    with served(tmp_path / "library.db", "waitress") as address, ExitStack() as held:
        host, port = address.removeprefix("http://").split(":")
        for _ in range(2 * WAITRESS_THREADS):
            held.enter_context(socket.create_connection((host, int(port)), timeout=5)).sendall(begun)
        assert requests.get(f"{address}/healthz", timeout=20).status_code == 200


@pytest.mark.parametrize("server", ["granian", "waitress"])
def test_a_chunked_body_is_never_taken_in_part(tmp_path: Path, server: str) -> None:
    """What stands up to the limit is JSON by itself, and the whole is too large."""
    pieces = [b'{"age_band": "3-12m"}', *[b" " * 2**16] * 17]
    headers = {"Content-Type": "application/json"}
    with served(tmp_path / "library.db", server) as address:
        answer = requests.post(f"{address}/v1/safety", data=iter(pieces), headers=headers, timeout=20)
    assert (answer.status_code, answer.headers["Content-Type"]) == (413, "application/problem+json")

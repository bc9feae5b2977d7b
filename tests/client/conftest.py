"""A library served for real on the loopback address, for the client's happy paths."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from werkzeug.serving import make_server

from counterpane import wiring
from counterpane.client import Client
from counterpane.library.tokens import create


@dataclass(frozen=True, slots=True)
class Served:
    """The address of a library and a token for it."""

    address: str
    token: str


@pytest.fixture(scope="session")
def served() -> Iterator[Served]:
    """Yield a library with the starters, served by a thread and closed after."""
    services = wiring.open_library()
    server = make_server("127.0.0.1", 0, wiring.app_of(services), threaded=True)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    token = create(services.store, "contributor", "anna", services.now())
    yield Served(f"http://127.0.0.1:{server.server_port}", token)
    server.shutdown()
    thread.join()
    server.server_close()
    services.store.close()


@pytest.fixture
def client(served: Served) -> Iterator[Client]:
    """Yield a client of the served library that may write."""
    with Client(served.address, served.token) as made:
        yield made

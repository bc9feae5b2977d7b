"""A library for the tests of another program: real, with the starters in it, served on the loopback address.

    def test_my_page(counterpane_library):
        recipe = next(counterpane_library.client.recipes())

The fixture is there wherever this package is installed; `lent` is the same for any other runner. Each library is in
memory, holds nothing of an earlier test, and is gone at the end.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from counterpane.client import Client
    from counterpane.library.ports import Role
    from counterpane.library.services import Services

POLL_SECONDS = 0.01
"""How soon a server that is asked to stop looks up; house."""


@dataclass(frozen=True, slots=True)
class Lent:
    """A library that is served: its address, a token for it, and a client that has both."""

    address: str
    token: str
    client: Client


@contextmanager
def served(services: Services) -> Iterator[str]:
    """Serve a library by a thread for the block and give its address; its store is closed at the end."""
    from werkzeug.serving import make_server

    from counterpane import wiring

    server = make_server("127.0.0.1", 0, wiring.app_of(services), threaded=True)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": POLL_SECONDS})
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}"
    finally:
        server.shutdown()
        thread.join()
        server.server_close()
        services.store.close()


@contextmanager
def lent(role: Role = "contributor", name: str = "tests") -> Iterator[Lent]:
    """Serve a library for the block, with a token of the role, made out to a name."""
    from counterpane import wiring
    from counterpane.client import Client
    from counterpane.library.review.tokens import create

    services = wiring.open_library()
    token = create(services.store, role, name, services.now())
    with served(services) as address, Client(address, token) as client:
        yield Lent(address, token, client)

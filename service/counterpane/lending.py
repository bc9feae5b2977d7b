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


@dataclass(frozen=True, slots=True)
class Lent:
    """A library that is served: its address, a token for it, and a client that has both."""

    address: str
    token: str
    client: Client


@contextmanager
def lent(role: Role = "contributor") -> Iterator[Lent]:
    """Serve a library for the block, with a token of the role."""
    from werkzeug.serving import make_server

    from counterpane import wiring
    from counterpane.client import Client
    from counterpane.library.tokens import create

    services = wiring.open_library()
    server = make_server("127.0.0.1", 0, wiring.app_of(services), threaded=True)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    address = f"http://127.0.0.1:{server.server_port}"
    token = create(services.store, role, "tests", services.now())
    try:
        with Client(address, token) as client:
            yield Lent(address, token, client)
    finally:
        server.shutdown()
        thread.join()
        server.server_close()
        services.store.close()

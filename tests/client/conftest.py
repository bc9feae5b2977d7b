"""A library served for real on the loopback address, for the client's happy paths."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from counterpane.client import Client
from counterpane.lending import Lent, lent


@pytest.fixture(scope="session")
def served() -> Iterator[Lent]:
    """Yield a library with the starters, served for the whole session."""
    with lent(name="anna") as library:
        yield library


@pytest.fixture
def client(served: Lent) -> Iterator[Client]:
    """Yield a client of the served library that may write."""
    with Client(served.address, served.token) as made:
        yield made

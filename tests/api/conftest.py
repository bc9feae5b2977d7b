"""The application on a library with the starters for reading, and on an empty one for writing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from api.contents import BIND_OFF, BLANKET, CAST_ON, FOR, GARTER, RIB, YARN
from counterpane import wiring
from counterpane.library.ports import Role
from counterpane.library.review.tokens import create
from counterpane.library.services import Services


@dataclass(frozen=True, slots=True)
class Desk:
    """A client of a library of its own, with a token of each role."""

    services: Services
    client: FlaskClient

    def token(self, role: Role = "contributor", name: str = "anna") -> dict[str, str]:
        """Return the header with a token of this role for a person."""
        return {"Authorization": f"Bearer {create(self.services.store, role, name, self.services.now())}"}

    def add(self, content: Mapping[str, Any], path: str = "/v1/components") -> TestResponse:
        """Send a content as a contributor."""
        return self.client.post(path, json=content, headers=self.token())

    def put(self, path: str, content: Mapping[str, Any], etag: str) -> TestResponse:
        """Send the next revision of a content as a contributor."""
        return self.client.put(path, json=content, headers=self.token() | {"If-Match": etag})


@pytest.fixture(scope="session")
def library() -> Iterator[Services]:
    """Yield a library with the starters, to be read only."""
    services = wiring.open_library()
    yield services
    services.store.close()


@pytest.fixture(scope="session")
def client(library: Services) -> FlaskClient:
    """Return a client of the library with the starters."""
    return wiring.app_of(library).test_client()


@pytest.fixture
def desk() -> Iterator[Desk]:
    """Yield a client of an empty library, to be written to."""
    services = wiring.open_library(starters=False)
    yield Desk(services, wiring.app_of(services).test_client())
    services.store.close()


@pytest.fixture
def stocked(desk: Desk) -> Desk:
    """Return the desk with the four parts that a blanket needs."""
    for content in (CAST_ON, BIND_OFF, GARTER, RIB):
        assert desk.add(content).status_code == 201
    return desk


@pytest.fixture(params=["memory", "sqlite"])
def noting(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Desk]:
    """Yield a desk with a recipe that is kept, in a store of each sort."""
    path = wiring.IN_MEMORY if request.param == "memory" else tmp_path / "library.db"
    services = wiring.open_library(path, starters=False)
    desk = Desk(services, wiring.app_of(services).test_client())
    for content in (CAST_ON, BIND_OFF, GARTER, RIB):
        assert desk.add(content).status_code == 201
    assert desk.add(BLANKET | {"yarn": YARN, "for": FOR}, "/v1/recipes").status_code == 201
    yield desk
    services.store.close()

"""An empty store of each sort."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from counterpane.library.ports import Store
from counterpane.storage.memory import MemoryStore
from counterpane.storage.sqlite import SqliteStore


@pytest.fixture(params=["memory", "sqlite"])
def store(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Store]:
    """Yield an empty store of each sort."""
    made: Store = MemoryStore() if request.param == "memory" else SqliteStore(tmp_path / "library.db")
    yield made
    made.close()

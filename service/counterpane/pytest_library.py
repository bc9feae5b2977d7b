"""The fixture `counterpane_library` for the tests of another program; pytest finds it by itself."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from counterpane.lending import Lent, lent


@pytest.fixture
def counterpane_library() -> Iterator[Lent]:
    """Yield a library with the starters, served for one test, with a client that may add to it."""
    with lent() as library:
        yield library

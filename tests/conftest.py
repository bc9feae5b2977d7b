"""What all tests share: the vocabulary and the starters of the seeds, loaded once."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from counterpane.craft.component import Component
from counterpane.craft.stitches import Vocabulary
from counterpane.seeding import load_components, load_vocabulary


@pytest.fixture(scope="session")
def vocabulary() -> Vocabulary:
    """Return the vocabulary of the seeds."""
    return load_vocabulary()


@pytest.fixture(scope="session")
def starters() -> Mapping[str, Component]:
    """Return the starters by slug."""
    return {component.slug: component for component in load_components()}

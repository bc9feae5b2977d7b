"""What comes with the program beside a store: words, facts, lists, and where things come from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from counterpane.craft.safety import Profile
from counterpane.craft.stitches import Vocabulary

Facts = Mapping[str, Mapping[str, Any]]
"""All facts by name."""


@dataclass(frozen=True, slots=True)
class Known:
    """The stitches, the facts by name, the lists of wards and charities by slug, and the titles of sources by slug."""

    vocabulary: Vocabulary
    facts: Facts
    profiles: Mapping[str, Profile]
    sources: Mapping[str, str]

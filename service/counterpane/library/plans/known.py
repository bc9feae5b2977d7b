"""What planning knows beside its components: words, facts, how a list is found, and where things come from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from counterpane.craft.stitches import Vocabulary
from counterpane.library.safety.profile_finding import FindProfile

Facts = Mapping[str, Mapping[str, Any]]
"""All facts by name."""


@dataclass(frozen=True, slots=True)
class Known:
    """The stitches, the facts by name, how a ward's or charity's list is found, and the titles of sources by slug."""

    vocabulary: Vocabulary
    facts: Facts
    find_profile: FindProfile
    sources: Mapping[str, str]

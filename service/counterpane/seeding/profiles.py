"""seeds/profiles/<slug>.toml → lists of wards and charities, each with its day; the same reader as the API's."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

from counterpane.craft.safety import Profile
from counterpane.library.safety.profiles import profile_of
from counterpane.library.values import BadInput
from counterpane.seeding.faults import SeedFault
from counterpane.seeding.roots import seeds_root, toml_files
from counterpane.seeding.shape import read_toml


def load_profiles(root: Path | None = None) -> Mapping[str, Profile]:
    """Load the lists by slug; SeedFault at the first that does not hold."""
    return _load(root or seeds_root())


@cache
def _load(root: Path) -> Mapping[str, Profile]:
    return {path.stem: _profile(read_toml(path, file), file) for path, file in toml_files(root, "profiles")}


def _profile(content: Mapping[str, Any], file: str) -> Profile:
    try:
        return profile_of(_exact(content))
    except BadInput as fault:
        place = fault.pointer.strip("/").replace("/", ".")
        raise SeedFault(file, place, str(fault), fault.hint or "Correct the file at that place.") from None


def _exact(value: Any) -> Any:
    """Return the content with each number by its decimal text."""
    if isinstance(value, float):
        return Decimal(repr(value))
    if isinstance(value, Mapping):
        return {name: _exact(each) for name, each in value.items()}
    return [_exact(each) for each in value] if isinstance(value, list) else value

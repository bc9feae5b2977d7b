"""Lists of wards and charities as frozen values."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.client.results import Json, Result


@dataclass(frozen=True, slots=True)
class ProfileCard(Result):
    """A list's line in the list of lists."""

    slug: str
    name: str
    dated: str
    source: str
    status: str
    sha256: str


@dataclass(frozen=True, slots=True)
class Profile(Result):
    """A list as it is kept; `data` is what to change and send back with `etag`."""

    slug: str
    name: str
    dated: str
    source: str
    items: tuple[Json, ...]
    status: str
    sha256: str
    etag: str

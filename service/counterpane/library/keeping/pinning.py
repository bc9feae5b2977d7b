"""What a kept recipe pins, and the plan request that it is."""

from __future__ import annotations

import json
from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from counterpane.library.plans import planning
from counterpane.library.ports import Kept

BESIDE_THE_REQUEST = (
    "slug",
    "name",
    "summary",
    "sharing",
    "status",
    "changed",
    "sha256",
    "etag",
    "standing",
    "mirrored_from",
)
"""What a recipe tells beside its plan request."""


def request_of(recipe: Kept) -> dict[str, Any]:
    """Return the plan request of a kept recipe, its numbers with their own digits."""
    whole = json.loads(recipe.body, parse_float=Decimal)
    return {name: value for name, value in whole.items() if name not in BESIDE_THE_REQUEST}


def pins_in(recipe: Kept) -> dict[str, str]:
    """Return the hash to which a kept recipe pins each of its components, by slug."""
    return planning.pins_of(request_of(recipe))


def pinned_to(request: Mapping[str, Any], slug: str, sha256: str) -> dict[str, Any]:
    """Return a request in which a component is pinned to another revision, in all its places."""

    def moved(part: Any) -> Any:
        if isinstance(part, list):
            return [moved(each) for each in part]
        is_it = isinstance(part, Mapping) and part.get("component") == slug
        return {**part, "revision": sha256} if is_it else part

    return {**request, "parts": {name: moved(part) for name, part in request["parts"].items()}}

"""The facts as JSON values: their list, and one by its name."""

from __future__ import annotations

from typing import Any

from counterpane.library.errors import NotFound
from counterpane.library.near import nearest
from counterpane.library.services import Services

CARD = ("name", "topic", "says", "source")


def cards(services: Services) -> list[dict[str, Any]]:
    """Return what a list says of each fact, in order of topic."""
    return [{name: fact[name] for name in CARD} for fact in services.facts.values()]


def get(services: Services, name: str) -> dict[str, Any]:
    """Return all that is known of a fact; raise NotFound with the nearest name."""
    if name not in services.facts:
        raise NotFound(f"There is no fact {name!r}.", nearest(name, services.facts))
    return dict(services.facts[name])

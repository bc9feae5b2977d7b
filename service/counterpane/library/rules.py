"""The rules as JSON values: their list, and one by its slug."""

from __future__ import annotations

from typing import Any

from counterpane.craft.findings import Rule
from counterpane.craft.rules import ALL
from counterpane.library.errors import NotFound
from counterpane.library.near import nearest

CARD = ("slug", "family", "severity", "title")
WHOLE = (*CARD, "reason", "bad", "good", "source", "reference", "basis")


def cards() -> list[dict[str, Any]]:
    """Return what a list says of each rule, by family and slug."""
    rules = sorted(ALL.values(), key=lambda rule: (rule.family, rule.slug))
    return [_fields(rule, CARD) for rule in rules]


def get(slug: str) -> dict[str, Any]:
    """Return all that is known of a rule; raise NotFound with the nearest slug."""
    if slug not in ALL:
        raise NotFound(f"There is no rule {slug!r}.", nearest(slug, ALL))
    return _fields(ALL[slug], WHOLE) | {"needs": list(ALL[slug].needs)}


def _fields(rule: Rule[Any], names: tuple[str, ...]) -> dict[str, Any]:
    return {name: getattr(rule, name) for name in names}

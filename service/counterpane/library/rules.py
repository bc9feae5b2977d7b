"""The rules as JSON values: their list, and one by its slug."""

from __future__ import annotations

from typing import Any

from counterpane.craft.findings import Rule
from counterpane.craft.rules import ALL
from counterpane.library.errors import NotFound
from counterpane.library.near import nearest

CARD = ("slug", "family", "severity", "title")
OF_TEXTS = frozenset({"reading", "counting", "wording", "accepting"})
WHOLE = (*CARD, "reason", "bad", "good", "source", "reference", "basis", "jurisdiction", "scope")

MOST_SHOWN = 600  # Characters of an example; house.


def cards() -> list[dict[str, Any]]:
    """Return what a list says of each rule, by family and slug."""
    rules = sorted(ALL.values(), key=lambda rule: (rule.family, rule.slug))
    return [_fields(rule, CARD) for rule in rules]


def get(slug: str) -> dict[str, Any]:
    """Return all that is known of a rule; raise NotFound with the nearest slug."""
    if slug not in ALL:
        raise NotFound(f"There is no rule {slug!r}.", nearest(slug, ALL))
    return _fields(ALL[slug], WHOLE) | {"needs": list(ALL[slug].needs), "accepting": accepting(slug)}


def shown(example: str) -> str:
    """Return an example as it is shown to a person: of one that goes on for pages, the beginning."""
    more = len(example) - MOST_SHOWN
    return example if more <= 0 else f"{example[:MOST_SHOWN].rstrip()} … (and {more:,} characters more)"


def accepting(slug: str) -> list[str]:
    """Return the lines by which a text accepts a finding of a rule or sets its level; none where it cannot."""
    family = ALL[slug].family
    if family not in OF_TEXTS | {"style"}:
        return []
    throughout = " throughout" if family == "style" else ""
    return [f"Accept {slug}{throughout}: the reason.", f"Treat {slug} as note: the reason."]


def _fields(rule: Rule[Any], names: tuple[str, ...]) -> dict[str, Any]:
    return {name: getattr(rule, name) for name in names}

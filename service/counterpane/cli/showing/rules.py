"""A rule as a person reads it."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence
from itertools import groupby
from typing import Any

from counterpane.library.rules import shown

WIDTH = 96  # Columns of running text; house.
_SAID = {"error": "an error", "warning": "a warning", "note": "a note", "stop": "a reason to stop", "warn": "a warning"}


def words(rule: Mapping[str, Any]) -> str:
    """Return the page of a rule as plain text."""
    number = f" {rule['reference']}" if rule["reference"] else ""
    parts = [f"{rule['slug']} ({rule['family']}{number}): {_SAID[rule['severity']]}"]
    parts += [textwrap.fill(text, WIDTH) for text in (rule["title"], rule["reason"]) if text]
    parts += [f"Bad:\n{_indented(shown(rule['bad']))}", f"Good:\n{_indented(rule['good'])}"]
    parts += [f"Needs: {', '.join(rule['needs'])}"] if rule["needs"] else []
    parts += (
        [
            "Accepted in a text by a line above the row, or treated otherwise in the whole text:\n"
            + _indented("\n".join(rule["accepting"]))
        ]
        if rule["accepting"]
        else []
    )
    parts += [f"Source: {rule['source']}{_basis(rule)}"]
    return "\n\n".join(parts) + "\n"


def lines(cards: Sequence[Mapping[str, Any]]) -> str:
    """Return a list of rules: severity, slug and title of each, under their families."""
    wide = max(len(card["slug"]) for card in cards)
    out = []
    for family, group in groupby(cards, lambda card: str(card["family"])):
        rows = (f"  {card['severity']:<8} {card['slug']:<{wide}}  {card['title']}" for card in group)
        out.append("\n".join((family, *rows)))
    return "\n\n".join(out) + "\n"


def _basis(rule: Mapping[str, Any]) -> str:
    return f" ({rule['basis']})" if rule["basis"] else ""


def _indented(text: str) -> str:
    return textwrap.indent(text.strip("\n"), "    ")

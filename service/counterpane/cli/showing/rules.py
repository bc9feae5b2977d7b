"""A rule as a person reads it."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping
from typing import Any

WIDTH = 96  # Columns of running text; house.
_SAID = {"error": "an error", "warning": "a warning", "note": "a note", "stop": "a reason to stop", "warn": "a warning"}


def words(rule: Mapping[str, Any]) -> str:
    """Return the page of a rule as plain text."""
    number = f" {rule['reference']}" if rule["reference"] else ""
    parts = [f"{rule['slug']} ({rule['family']}{number}): {_SAID[rule['severity']]}"]
    parts += [textwrap.fill(text, WIDTH) for text in (rule["title"], rule["reason"]) if text]
    parts += [f"Bad:\n{_indented(rule['bad'])}", f"Good:\n{_indented(rule['good'])}"]
    parts += [f"Needs: {', '.join(rule['needs'])}"] if rule["needs"] else []
    parts += [f"Source: {rule['source']}{_basis(rule)}"]
    return "\n\n".join(parts) + "\n"


def _basis(rule: Mapping[str, Any]) -> str:
    return f" ({rule['basis']})" if rule["basis"] else ""


def _indented(text: str) -> str:
    return textwrap.indent(text.strip("\n"), "    ")

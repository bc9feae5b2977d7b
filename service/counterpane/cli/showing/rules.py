"""A rule as a person reads it."""

from __future__ import annotations

import textwrap
from typing import Any

from counterpane.craft.findings import Rule

WIDTH = 96  # Columns of running text; house.
_SAID = {"error": "an error", "warning": "a warning", "note": "a note", "stop": "a reason to stop", "warn": "a warning"}


def words(rule: Rule[Any]) -> str:
    """Return the page of a rule as plain text."""
    head = f"{rule.slug} ({rule.family}): {_SAID[rule.severity]}{f', {rule.reference}' if rule.reference else ''}"
    parts = [head, textwrap.fill(rule.title, WIDTH)]
    parts += [textwrap.fill(rule.reason, WIDTH)] if rule.reason else []
    parts += [f"Bad:\n{_indented(rule.bad)}", f"Good:\n{_indented(rule.good)}", f"Source: {rule.source}"]
    parts += [f"Basis: {rule.basis}"] if rule.basis else []
    return "\n\n".join(parts) + "\n"


def fields(rule: Rule[Any]) -> dict[str, object]:
    """Return the fields of a rule as JSON values."""
    names = ("slug", "family", "severity", "title", "reason", "bad", "good", "source", "reference", "basis")
    return {name: getattr(rule, name) for name in names} | {"needs": list(rule.needs)}


def _indented(text: str) -> str:
    return textwrap.indent(text.strip("\n"), "    ")

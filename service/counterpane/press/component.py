"""A component as the TOML of a seed file, with what is derived from its rows as comments above it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.press import toml

ORDER = (
    "slug",
    "kind",
    "name",
    "summary",
    "also_called",
    "reversible",
    "across_corner",
    "gauge_notes",
    "slipped_edge",
    "parameters",
    "versions",
    "examples",
    "safety",
    "provenance",
)


def as_seed(content: Mapping[str, Any], derived: Mapping[str, Any]) -> str:
    """Return the content of a component worked in rows as a seed file; what is not known is left out of it."""
    known = _known({name: content[name] for name in ORDER if name in content})
    known["examples"] = [_example(each) for each in known.get("examples", [])]
    return f"{_told(derived)}\n{toml.document(known)}"


def _known(table: Mapping[str, Any]) -> dict[str, Any]:
    """Return a table without what is not known or empty, the tables in it too."""
    return {name: each for name, value in table.items() if (each := _value(value)) not in (None, "", [], {})}


def _value(value: Any) -> Any:
    if isinstance(value, Mapping):
        return _known(value)
    return [_value(each) for each in value] if isinstance(value, list) else value


def _example(example: Mapping[str, Any]) -> dict[str, Any]:
    """Return an example; the first version goes without saying."""
    return {name: value for name, value in example.items() if name != "version" or value}


def _told(derived: Mapping[str, Any]) -> str:
    version = derived["versions"][0]
    lines = [
        f"It takes {derived['said']}.",
        f"Rows of one repeat: {version['row_repeat']}, the first {version['first_side']}, "
        f"the last {version['last_side']}.",
    ]
    if layout := version["layout"]:
        edges = layout["edges"]
        lines.append(f"Edge stitches: {edges['right']} at the right and {edges['left']} at the left.")
        lines += [f"Balance: {layout['balance']}."] if layout["balance"] else []
    if texture := version["texture"]:
        lines.append(f"Smallest upright cell, in rows and stitches: {texture['rows']} x {texture['stitches']}.")
    if faces := derived.get("faces"):
        lines.append(
            f"The right side shows, at its smallest count: {', '.join(f'{n} {look}' for look, n in faces.items())}."
        )
    if short := derived.get("abbreviations"):
        lines.append(f"Abbreviations: {', '.join(each['name'] for each in short)}.")
    return "".join(f"# {line}\n" for line in lines)

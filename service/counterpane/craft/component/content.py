"""A component as JSON values and back: `component_of(content_of(c)) == c`.

Every field is written out, but for those that are named here: they are left out where there is nothing to say, so that
a component without them has one content and one hash.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from counterpane.craft.component.values import (
    Component,
    Example,
    Measure,
    MeasuredOpening,
    Note,
    Operation,
    Parameter,
    Provenance,
    SafetyNotes,
    SlippedEdge,
    Version,
)

LEFT_OUT = frozenset({"printed", "measured", "look", "notice", "address", "changes", "yarn_classes"})


def component_of(content: Mapping[str, Any]) -> Component:
    """Build a component from its content.

    The wire schema or the seed reader guarantees the shape; KeyError or TypeError for another.
    """
    given = dict(content)
    lists: dict[str, Any] = {
        "also_called": tuple(given.pop("also_called", None) or ()),
        "versions": tuple(Version(**each) for each in given.pop("versions", None) or ()),
        "parameters": tuple(Parameter(**each) for each in given.pop("parameters", None) or ()),
        "examples": tuple(_example(each) for each in given.pop("examples", None) or ()),
        "yarn_classes": tuple(given.pop("yarn_classes", None) or ()),
        "measured": tuple(MeasuredOpening(**each) for each in given.pop("measured", None) or ()),
    }
    edge = given.pop("slipped_edge", None)
    return Component(
        provenance=_provenance(given.pop("provenance")),
        safety=SafetyNotes(**{name: _note(each) for name, each in given.pop("safety").items()}),
        operation=_operation(given.pop("operation", None)),
        slipped_edge=SlippedEdge(**edge) if edge else None,
        **lists,
        **given,
    )


def _example(content: Mapping[str, Any]) -> Example:
    return Example(**{**content, "after": tuple(content["after"])})


def _operation(content: Mapping[str, Any] | None) -> Operation | None:
    return None if content is None else Operation(**{**content, "steps": tuple(content["steps"])})


def _provenance(content: Mapping[str, Any]) -> Provenance:
    return Provenance(**{**content, "changes": tuple(content.get("changes") or ())})


def _note(content: Any) -> Note:
    return Measure(**content) if isinstance(content, Mapping) else content


def content_of(component: Component) -> dict[str, Any]:
    """Return the content of a component as JSON values."""
    told = {field.name: _json(getattr(component, field.name)) for field in fields(component)}
    return {name: value for name, value in told.items() if value or name not in LEFT_OUT}


def _json(value: Any) -> Any:
    if is_dataclass(value):
        told = {field.name: _json(getattr(value, field.name)) for field in fields(value)}
        return {name: each for name, each in told.items() if each not in (None, []) or name not in LEFT_OUT}
    return [_json(each) for each in value] if isinstance(value, tuple) else value

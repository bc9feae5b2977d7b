"""What follows from a component, as the library tells it: JSON values for answers, classes of counts for stores."""

from __future__ import annotations

from collections.abc import Sequence
from math import gcd, lcm
from typing import Any

from counterpane.craft.component import Component, Derived, DerivedVersion, Layout, Parameter, derive
from counterpane.craft.counts import Progression
from counterpane.craft.stitches import Vocabulary
from counterpane.library.parts.textures import textures_json
from counterpane.library.plans.behaving import component_behaviour
from counterpane.library.ports import CountClass

MOST_COUNT = 10**18 - 1
"""The largest count that can be asked about."""


def counts_json(starts: Sequence[Progression]) -> dict[str, Any]:
    """Return the counts as a check tells them: one multiple, one fixed count, or several classes."""
    one = starts[0] if len(starts) == 1 else None
    return {
        "multiple": _progression(one) if one and one.of else None,
        "fixed": one.least if one and not one.of else None,
        "classes": [_progression(each) for each in starts] if len(starts) > 1 else None,
    }


def derived_json(component: Component, vocabulary: Vocabulary) -> dict[str, Any]:
    """Return what follows from the rows: the counts, in numbers and in words, and what each version is like."""
    derived = derive(component, vocabulary)
    told = textures_json(component, vocabulary)
    versions = [_version(version) | {"texture": each} for version, each in zip(derived.versions, told, strict=True)]
    behaviour = component_behaviour(component, vocabulary)
    return counts_json(derived.starts) | {"said": derived.said, "versions": versions, "behaviour": behaviour}


def _version(version: DerivedVersion) -> dict[str, Any]:
    names = ("name", "row_repeat", "first_side", "last_side", "drift")
    layout = _layout(version.layout) if version.layout else None
    return {name: getattr(version, name) for name in names} | counts_json(version.starts) | {"layout": layout}


def _layout(layout: Layout) -> dict[str, Any]:
    return {
        "repeat": layout.repeat,
        "balancing": layout.balancing,
        "edges": {"right": layout.edges[0], "left": layout.edges[1]},
        "balance": layout.balance.said if layout.balance else None,
        "closing_rows": layout.closing_rows,
    }


def _progression(start: Progression) -> dict[str, int]:
    return {"of": start.of, "plus": start.plus, "least": start.least}


def classes_of(component: Component, derived: Derived) -> tuple[CountClass, ...]:
    """Return the counts that the component admits: those of its rows that its stitches parameter, if any, allows."""
    widths = [each for each in component.parameters if each.name == "stitches"]
    classes = {_class(start) for start in derived.starts}
    for parameter in widths:
        classes = {common for each in classes if (common := _allowed(each, parameter))}
    return tuple(sorted(classes, key=lambda each: (each.modulus, each.residue, each.least)))


def _class(start: Progression) -> CountClass:
    return CountClass(start.of, start.plus % start.of if start.of else start.least, start.least)


def _allowed(counts: CountClass, parameter: Parameter) -> CountClass | None:
    """Return the part of a class that is `least`, `least + step`, … up to `most`; None where there is none."""
    step, first = parameter.step, parameter.least
    if counts.modulus == 0:
        inside = counts.residue >= first and (parameter.most is None or counts.residue <= parameter.most)
        return counts if inside and (counts.residue - first) % step == 0 else None
    shared = gcd(counts.modulus, step)
    if (counts.residue - first) % shared:
        return None
    steps = (counts.residue - first) // shared * pow(step // shared, -1, counts.modulus // shared)
    whole, lowest = lcm(counts.modulus, step), max(counts.least, first)
    residue = (first + step * (steps % (counts.modulus // shared))) % whole
    least = lowest + (residue - lowest) % whole
    if least > (MOST_COUNT if parameter.most is None else min(parameter.most, MOST_COUNT)):
        return None
    return CountClass(0, least, least) if whole > MOST_COUNT else CountClass(whole, residue, least, parameter.most)

"""How fabrics behave, as JSON values with a sentence beside them; ends of figures are rounded outwards."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from counterpane.craft.behaviour import Behaviour, Figure, behaviour_of
from counterpane.craft.behaviour.figures import DEFINITION
from counterpane.craft.behaviour.textures import Curl
from counterpane.craft.component import Component
from counterpane.craft.measures import shown
from counterpane.craft.stitches import Vocabulary

Answer = dict[str, Any]

PLACES = {"cm": 1, "mm": 1, "rows": 0, "stitches": 0, "pairs of rows": 0, "g per m²": 0, "g": 0}
"""Decimals to which a figure is shown, two for those of other units."""

SAID = {
    "curls": "rolls at its edges",
    "edges may roll": "may roll at its edges",
    "flat": "lies flat",
    "draws in": "lies flat and draws in",
    "shortens": "lies flat and is short for its rows",
    "not known": "whether it lies flat is not known",
}


def component_behaviour(component: Component, vocabulary: Vocabulary) -> Answer | None:
    """Return how a component worked in rows behaves by itself as JSON values, None for one that has no rows."""
    return None if component.operation is not None else behaviour_json(behaviour_of(component, vocabulary))


def behaviour_json(behaviour: Behaviour) -> Answer:
    """Return the behaviour of a texture as JSON values."""
    return {
        "lies": behaviour.lies,
        "curl": None if behaviour.curl is None else _curl(behaviour.curl),
        "width": figure_json(behaviour.width),
        "rows_to_width": figure_json(behaviour.shape),
        "stretch": figure_json(behaviour.stretch),
        "message": sentence(behaviour),
    }


def figure_json(figure: Figure | None) -> Answer | None:
    """Return a figure as JSON values, its ends rounded outwards; null for an end or a figure that is not known."""
    if figure is None:
        return None
    places = PLACES.get(figure.unit, 2)
    return {
        "low": None if figure.low is None else float(_down(figure.low, places)),
        "high": None if figure.high is None else float(-_down(-figure.high, places)),
        "unit": figure.unit,
        "basis": figure.basis,
        "source": figure.source,
    }


def span(figure: Figure) -> str:
    """Return the ends of a figure in words: "4 to 5", "at most 7.4", "1"."""
    low, high = (None if end is None else _number(end) for end in _ends(figure))
    if low is None or high is None:
        return f"at most {high}" if high is not None else f"at least {low}" if low is not None else "not known"
    return low if low == high else f"{low} to {high}"


def rests_on(figure: Figure) -> str:
    """Return what a figure rests on, as it stands in brackets behind it."""
    return {"memory": "from memory", "house": "house figure"}.get(figure.basis, figure.basis)


def sentence(behaviour: Behaviour) -> str:
    """Say how a texture behaves, each figure with its basis."""
    said = [_lies(behaviour)]
    if behaviour.width is not None and behaviour.width.source != DEFINITION:
        said.append(f"{span(behaviour.width)} times as wide as stocking stitch ({rests_on(behaviour.width)})")
    if behaviour.shape is not None:
        said.append(f"{span(behaviour.shape)} rows as high as a stitch is wide ({rests_on(behaviour.shape)})")
    if behaviour.stretch is not None:
        said.append(f"stretches to {span(behaviour.stretch)} times its width at rest ({rests_on(behaviour.stretch)})")
    return "; ".join(said)


def _lies(behaviour: Behaviour) -> str:
    if behaviour.curl is not None:
        return _rolls(behaviour.curl)
    return SAID[behaviour.lies] if behaviour.lies == "not known" else f"{SAID[behaviour.lies]} (house model)"


def _rolls(curl: Curl) -> str:
    sides, ends = curl.side_border, curl.end_border
    return (
        f"rolls {curl.sides} at its sides and {curl.ends} at its ends; borders that lie flat hold it from about "
        f"{span(sides)} cm at the sides and {span(ends)} rows at the ends ({rests_on(sides)})"
    )


def _curl(curl: Curl) -> Answer:
    borders = {"side_border": figure_json(curl.side_border), "end_border": figure_json(curl.end_border)}
    return {"sides": curl.sides, "ends": curl.ends} | borders


def _ends(figure: Figure) -> tuple[Fraction | None, Fraction | None]:
    places = PLACES.get(figure.unit, 2)
    low = None if figure.low is None else _down(figure.low, places)
    return low, None if figure.high is None else -_down(-figure.high, places)


def _down(value: Fraction, places: int) -> Fraction:
    return Fraction(value * 10**places // 1, 10**places)


def _number(value: Fraction) -> str:
    return shown(value, 2).rstrip("0").rstrip(".")

"""Pictures of plans over the components of a library."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from counterpane.craft.constructions import Plan
from counterpane.craft.drawing import Picture
from counterpane.craft.drawing.blanket import CannotDraw, Face, corner, fabric, worked
from counterpane.craft.drawing.charts import charts
from counterpane.craft.drawing.schematic import schematic
from counterpane.craft.pattern.write import default_title
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library import planning
from counterpane.library.services import Services
from counterpane.library.values import BadInput

View = Literal["chart", "fabric", "schematic"]

BESIDE_THE_PLAN = ("view", "terms", "title", "side")
"""Members of a request that say how to draw and not what to plan."""


@dataclass(frozen=True, slots=True)
class Wish:
    """What is to be drawn, in which words; `side` is that of the fabric which is seen."""

    view: View
    title: str | None = None
    terms: Terms = "us"
    side: Face = "RS"


def drawing(services: Services, content: Mapping[str, Any]) -> str:
    """Return a view of the plan of a request as SVG; raise CannotBePlanned where there is none."""
    request = {name: value for name, value in content.items() if name not in BESIDE_THE_PLAN}
    wish = Wish(**{name: value for name in BESIDE_THE_PLAN if (value := content.get(name))})
    return draw(planning.made(services, request), services.vocabulary, wish)


def draw(plan: Plan, vocabulary: Vocabulary, wish: Wish) -> str:
    """Return a view of a plan as SVG; BadInput for a fabric of more stitches than are drawn."""
    title = wish.title or default_title(plan, wish.terms)
    if wish.view == "chart":
        return charts(plan, vocabulary, title, wish.terms)
    if wish.view == "schematic":
        return schematic(plan, vocabulary, title, wish.terms)
    try:
        return fabric(plan, vocabulary, title, wish.terms, wish.side)
    except CannotDraw as reason:
        raise BadInput(
            "/view", str(reason), "Draw its chart or its schematic, or plan it in fewer stitches."
        ) from reason


def pictures(
    plan: Plan, vocabulary: Vocabulary, title: str, terms: Terms, close_ups: Sequence[bool]
) -> list[tuple[Picture, ...]]:
    """Return what written patterns show: schematic, chart and fabric, of which a close-up has a corner alone.

    What is the same in all of them is drawn once.
    """
    drawn = (
        Picture("Schematic", schematic(plan, vocabulary, title, terms)),
        Picture("Chart", charts(plan, vocabulary, title, terms)),
    )
    try:
        stretches = worked(plan, vocabulary)
    except CannotDraw:
        return [drawn for _ in close_ups]
    shown = (
        (corner if close_up else fabric)(plan, vocabulary, title, terms, stretches=stretches) for close_up in close_ups
    )
    return [(*drawn, Picture("The fabric from its right side", svg)) for svg in shown]

"""Pictures of plans over the components of a library."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from typing import Any, Literal

from counterpane.craft.constructions import Plan
from counterpane.craft.drawing import Picture
from counterpane.craft.drawing.blanket import CannotDraw, Face, corner, fabric
from counterpane.craft.drawing.charts import READ, charts, in_letters
from counterpane.craft.drawing.schematic import in_words as schematic_in_words
from counterpane.craft.drawing.schematic import schematic
from counterpane.craft.measures import Units
from counterpane.craft.pattern.write import default_title
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.teaching.hands import Hand
from counterpane.library.plans import planning
from counterpane.library.services import Services
from counterpane.library.values import BadInput

View = Literal["chart", "fabric", "schematic"]

BESIDE_THE_PLAN = ("view", "terms", "title", "side", "units", "hand")
"""Members of a request that say how to draw and not what to plan."""


@dataclass(frozen=True, slots=True)
class Wish:
    """What is to be drawn, in which words and units; `side` is that of the fabric which is seen."""

    view: View
    title: str | None = None
    terms: Terms = "us"
    side: Face = "RS"
    units: Units = "both"
    hand: Hand = "right"

    @property
    def mirrored(self) -> bool:
        """Tell whether chart and fabric are drawn for left-handers who work mirrored."""
        return self.hand == "left"


def drawing(services: Services, content: Mapping[str, Any]) -> str:
    """Return a view of the plan of a request as SVG; raise CannotBePlanned where there is none."""
    request = {name: value for name, value in content.items() if name not in BESIDE_THE_PLAN}
    wish = Wish(**{name: value for name in BESIDE_THE_PLAN if (value := content.get(name))})
    return draw(planning.made(services, request), services.vocabulary, wish)


def draw(plan: Plan, vocabulary: Vocabulary, wish: Wish) -> str:
    """Return a view of a plan as SVG; BadInput for a fabric of too many stitches, or a mirrored schematic."""
    title = wish.title or default_title(plan, wish.terms)
    if wish.view == "chart":
        return charts(plan, vocabulary, title, wish.terms, mirrored=wish.mirrored)
    if wish.view == "schematic" and wish.mirrored:
        hint = "Draw its chart or its fabric for the left hand, or leave the hand out."
        raise BadInput("/hand", "A schematic shows parts and measures, and has no mirrored form.", hint)
    if wish.view == "schematic":
        return schematic(plan, vocabulary, title, wish.terms, wish.units)
    try:
        return fabric(plan, vocabulary, title, wish.terms, wish.side, lengths=wish.units, mirrored=wish.mirrored)
    except CannotDraw as reason:
        raise BadInput(
            "/view", str(reason), "Draw its chart or its schematic, or plan it in fewer stitches."
        ) from reason


def pictures(
    plan: Plan, vocabulary: Vocabulary, title: str, terms: Terms, *, close_up: bool, units: Units = "both"
) -> tuple[Picture, ...]:
    """Return what a written pattern shows: schematic, chart and fabric, of which `close_up` asks for a corner alone."""
    drawn = [*plans_drawn(plan, vocabulary, title, terms, units)]
    with suppress(CannotDraw):
        shown = corner if close_up else fabric
        svg = shown(plan, vocabulary, title, terms, lengths=units)
        drawn.append(Picture("The fabric from its right side", svg, "fabric"))
    return tuple(drawn)


def plans_drawn(
    plan: Plan, vocabulary: Vocabulary, title: str, terms: Terms, units: Units = "both", *, told_only: bool = False
) -> tuple[Picture, ...]:
    """Return the schematic and the chart of a plan, each also in words or letters; `told_only` leaves out the SVG."""
    told = schematic_in_words(plan, vocabulary, terms, units)
    lettered, key, without = in_letters(plan, vocabulary, terms)
    measures = "" if told_only else schematic(plan, vocabulary, title, terms, units)
    drawn = "" if told_only else charts(plan, vocabulary, title, terms)
    return (
        Picture("Schematic", measures, "schematic", told),
        Picture("Chart", drawn, "chart", (READ, *without), lettered, key),
    )

"""Pictures of one part alone: the chart and the fabric of a small piece of it, at a gauge that serves the drawing."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from counterpane.craft.component import Component
from counterpane.craft.constructions import CannotBePlanned, Part, Plan
from counterpane.craft.constructions.obstacles import Stuck
from counterpane.craft.constructions.swatching import swatch_of
from counterpane.craft.drawing import Picture
from counterpane.craft.drawing.blanket import CannotDraw, fabric
from counterpane.craft.drawing.charts import charts
from counterpane.library.errors import NotFound
from counterpane.library.plans import planning
from counterpane.library.plans.plans import plan_request_of
from counterpane.library.services import Services

DRAWN = ("body", "border")
"""Kinds whose rows make a fabric of their own; an edge shows itself beside another one."""
AT: dict[str, Any] = {
    "parts": {"body": {"text": "Row 1 (RS): Knit.\nRow 2: Purl."}, "bottom": None, "sides": None, "top": None},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": None},
    "size": {"width_cm": 15, "length_cm": 15},
}
"""The piece whose edges and gauge a drawing borrows; house figures, which give it its proportions and no more."""
SAID = "Drawn as a swatch of about 15 cm at 22 stitches and 30 rows to 10 cm, which are house figures for drawing."


def pictures_of(services: Services, component: Component) -> tuple[Picture, ...]:
    """Return the chart and the fabric of a part; none of an edge, or where no small piece can be made of it."""
    piece = _piece(services, component) if component.kind in DRAWN else None
    if piece is None:
        return ()
    drawn = [Picture("Chart", charts(piece, services.vocabulary, component.name), "chart")]
    with suppress(CannotDraw):
        drawn.append(Picture("Fabric", fabric(piece, services.vocabulary, component.name), "fabric"))
    return tuple(drawn)


def _piece(services: Services, component: Component) -> Plan | None:
    try:
        request = plan_request_of(AT, planning.finder(services, AT), services.vocabulary)
        return swatch_of(request, Part(component), ("body",), services.vocabulary).piece
    except (CannotBePlanned, NotFound, Stuck):
        return None

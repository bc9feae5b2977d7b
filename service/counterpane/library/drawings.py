"""Pictures of plans over the components of a library."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.drawing.charts import charts
from counterpane.craft.drawing.schematic import schematic
from counterpane.craft.pattern.write import default_title
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library import planning
from counterpane.library.services import Services

VIEWS: Mapping[str, Callable[[Plan, Vocabulary, str, Terms], str]] = {"chart": charts, "schematic": schematic}
"""What can be drawn of a plan, by the name of the view."""

BESIDE_THE_PLAN = ("view", "terms", "title")
"""Members of a request that say how to draw and not what to plan."""


def drawing(services: Services, content: Mapping[str, Any]) -> str:
    """Return a view of the plan of a request as SVG; raise CannotBePlanned where there is none."""
    request = {name: value for name, value in content.items() if name not in BESIDE_THE_PLAN}
    plan = planning.made(services, request)
    return draw(plan, services.vocabulary, content["view"], content.get("title"), content.get("terms") or "us")


def draw(plan: Plan, vocabulary: Vocabulary, view: str, title: str | None, terms: Terms) -> str:
    """Return a view of a plan as SVG; KeyError for a view that there is not."""
    return VIEWS[view](plan, vocabulary, title or default_title(plan, terms), terms)

"""What the fabric of a plan will do, as JSON values: part by part and seam by seam, told before a stitch is knitted."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from counterpane.craft.constructions import Part, Plan
from counterpane.craft.stitches import Vocabulary
from counterpane.library.behaving import component_behaviour
from counterpane.library.plan_seams import seams_json

Answer = dict[str, Any]


def behaviour_of_plan(plan: Plan, vocabulary: Vocabulary) -> Answer:
    """Return what is known of the behaviour of a plan; each figure with its basis, null where nothing is known."""
    parts = [_part(name, part, vocabulary) for name, part in fabrics_of(plan)]
    return {"parts": parts, "seams": seams_json(plan, vocabulary)}


def fabrics_of(plan: Plan) -> Iterator[tuple[str, Part]]:
    """Give each part that is a fabric of its own with its name, from the bottom up; a selvedge is none."""
    request = plan.request
    several = len(request.body) > 1
    bands = ((f"body {place}" if several else "body", band) for place, band in enumerate(request.body, 1))
    for name, part in (("bottom", request.bottom), ("sides", request.sides), *bands, ("top", request.top)):
        if part is not None:
            yield name, part


def _part(name: str, part: Part, vocabulary: Vocabulary) -> Answer:
    told = component_behaviour(part.component, vocabulary)
    return {"part": name, "texture": part.component.slug or None} | (told or {})

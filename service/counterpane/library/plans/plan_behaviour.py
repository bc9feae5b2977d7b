"""What the fabric of a plan will do, as JSON values: part by part and seam by seam, told before a stitch is knitted."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from counterpane.craft.behaviour.mass import mass_of
from counterpane.craft.behaviour.open_size import opening_size
from counterpane.craft.constructions import Part, Plan
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import YarnEstimate
from counterpane.library.plans.behaving import component_behaviour, figure_json, rests_on, span
from counterpane.library.plans.plan_fabric import Estimate, fabric_of
from counterpane.library.plans.plan_seams import seams_json

Answer = dict[str, Any]


def behaviour_of_plan(plan: Plan, vocabulary: Vocabulary, tex: Fraction | None = None) -> Answer:
    """Return what is known of the behaviour of a plan; each figure with its basis, null where nothing is known.

    `tex` is the mass of 1,000 m of the yarn, all strands together, None where it is not known or differs by part.
    """
    return {
        "parts": [_part(name, part, vocabulary) for name, part in fabrics_of(plan)],
        "seams": seams_json(plan, vocabulary),
        "openings": [_opening(each) for each in fabric_of(plan).openings],
        "mass": None if tex is None else [_mass(plan, *each, tex, vocabulary) for each in fabrics_of(plan)],
    }


def tex_of(yarn: YarnEstimate | None) -> Fraction | None:
    """Return the tex of the one yarn of a plan, all strands together; None for several, or where it is not known."""
    if yarn is None or len(yarn.colours) != 1 or yarn.colours[0].yarn.tex is None:
        return None
    return yarn.colours[0].yarn.tex * yarn.colours[0].yarn.strands


def fabrics_of(plan: Plan) -> Iterator[tuple[str, Part]]:
    """Give each part that is a fabric of its own with its name, from the bottom up; a selvedge is none."""
    request = plan.request
    several = len(request.body) > 1
    bands = ((f"body {place}" if several else "body", band) for place, band in enumerate(request.body, 1))
    for name, part in (
        ("bottom", request.bottom),
        ("sides", request.sides or request.picked),
        *bands,
        ("top", request.top),
    ):
        if part is not None:
            yield name, part


def _part(name: str, part: Part, vocabulary: Vocabulary) -> Answer:
    told = component_behaviour(part.component, vocabulary)
    return {"part": name, "texture": part.component.slug or None} | (told or {})


def _opening(estimate: Estimate) -> Answer:
    size = opening_size(estimate.stitches, estimate.gauge)
    wraps = "a yarn-over" if estimate.stitches == 1 else f"{estimate.stitches} yarn-overs side by side"
    return {
        "section": estimate.section,
        "yarn_overs": estimate.stitches,
        "size": figure_json(size),
        "message": f"{span(size)} mm where there is {wraps} ({rests_on(size)}): an estimate, measure with a rod",
    }


def _mass(plan: Plan, name: str, part: Part, tex: Fraction, vocabulary: Vocabulary) -> Answer:
    """Return the mass per area of a part at its own gauge; not known at a borrowed one."""
    own = gauge_of(plan.request, part, vocabulary)
    mass = None if own.borrowed else mass_of(part.component, own.gauge, tex, vocabulary)
    why = "no gauge of its own" if own.borrowed else "more than knit and purl"
    known = f"{span(mass)} g per m² ({rests_on(mass)})" if mass else f"grams per m² not known: {why}; weigh a swatch"
    return {"part": name, "texture": part.component.slug or None, "mass": figure_json(mass), "message": known}

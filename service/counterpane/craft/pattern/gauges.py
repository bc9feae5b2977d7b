"""The gauge of each texture of a plan, as given or as borrowed."""

from __future__ import annotations

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.measures import Gauge
from counterpane.craft.pattern import TextureGauge
from counterpane.craft.pattern.figures import gauge_text
from counterpane.craft.pattern.parts import texture_name
from counterpane.craft.stitches import Terms


def gauges(plan: Plan, terms: Terms) -> tuple[TextureGauge, ...]:
    """Return the gauge of each texture once, in order of working; the sides and selvedges follow the body's rows."""
    sections = {section.texture: section for section in plan.sections}
    return tuple(_gauge(plan, section, terms) for section in sections.values())


def _gauge(plan: Plan, section: Section, terms: Terms) -> TextureGauge:
    used = _used(plan, section)
    texture = texture_name(plan, section.texture, terms)
    stated = used.texture == section.texture or (used.texture is None and section.name.startswith("body"))
    text = gauge_text(used.stitches, used.rows, used.over_cm)
    if not stated:
        text = f"not given, so sizes here use {text}; swatch it as well"
    return TextureGauge(texture, used.stitches, used.rows, used.over_cm, stated, text)


def _used(plan: Plan, section: Section) -> Gauge:
    """Return the gauge by which a section was measured."""
    given = plan.request.gauges
    wanted = (section.texture, section.gauge_in, None)
    return next((gauge for texture in wanted for gauge in given if gauge.texture == texture), given[0])

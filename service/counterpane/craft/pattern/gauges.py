"""The gauge of each texture of a plan, as given or as borrowed from another."""

from __future__ import annotations

from collections.abc import Mapping

from counterpane.craft.constructions import Part, Plan
from counterpane.craft.constructions.gauging import gauge_of
from counterpane.craft.measures import Gauge
from counterpane.craft.pattern import TextureGauge
from counterpane.craft.pattern.figures import gauge_text
from counterpane.craft.pattern.parts import called, parts_of, texture_name
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.stitches import Terms, Vocabulary

_CONDITIONS: Mapping[bool | None, str] = {
    True: "counted after washing and blocking",
    False: "counted before any wash",
    None: "taken to be counted after washing and blocking",
}
"""How a swatch was counted, by what is said of it; whoever says nothing is taken to mean what is usual."""


def gauges(plan: Plan, vocabulary: Vocabulary, terms: Terms) -> tuple[TextureGauge, ...]:
    """Return the gauge of each texture once, in order of working; a selvedge of a stitch or two has none of its own."""
    request = plan.request
    measured = [part for part in parts_of(request) if part.component.kind in ("border", "body")]
    by_name = {called(part.component, terms): part for part in measured}
    return tuple(_gauge(plan, name, part, vocabulary, terms) for name, part in by_name.items())


def _gauge(plan: Plan, name: str, part: Part, vocabulary: Vocabulary, terms: Terms) -> TextureGauge:
    found = gauge_of(plan.request, part, vocabulary)
    gauge = found.gauge.one
    text = f"{gauge_text(gauge.stitches, gauge.rows, gauge.over_cm)}, worked flat, {_CONDITIONS[gauge.washed]}"
    if gauge.before is not None:
        before = gauge.before.one
        text = f"{text}; before the wash {gauge_text(before.stitches, before.rows, before.over_cm)}"
    if found.borrowed:
        lender = _lender(plan, gauge, terms)
        text = in_terms(f"not known, so the gauge of {lender} is borrowed; a swatch of its own would tell", terms)
    return TextureGauge(name, gauge.stitches, gauge.rows, gauge.over_cm, not found.borrowed, text)


def _lender(plan: Plan, gauge: Gauge, terms: Terms) -> str:
    """Return the name of the texture that a borrowed gauge was knitted in: the body's where it names none."""
    slug = gauge.texture or plan.request.body[0].component.slug
    name = texture_name(plan, slug, terms)
    return f"{name[0].lower()}{name[1:]}"

"""A plan as JSON values; the only rounding is that of shown centimetres, to 0.1 half up."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import Part, PickedEdge, Plan, Section
from counterpane.craft.constructions.picking import rate_in_words
from counterpane.craft.findings import Finding
from counterpane.craft.measures import half_up
from counterpane.craft.rows.tree import OpenRepeat, Row, Work
from counterpane.craft.sizing.lengths import ridges
from counterpane.craft.yarn import YarnEstimate
from counterpane.library.yarn.yarns import yarn_json

Answer = dict[str, Any]


def plan_json(
    plan: Plan,
    safety: Mapping[str, Any] | None = None,
    sampler: Plan | None = None,
    yarn: YarnEstimate | None = None,
) -> Answer:
    """Return a plan as JSON values; `safety` is the answer of `library.safety`, null where it was not asked for.

    What rests on more than the plan, such as its time, is null here; `library.planning` fills it in.
    """
    return {
        "recipe": recipe_json(plan),
        "counts": counts_json(plan),
        "finished": finished_json(plan),
        "sections": [*map(_section, _with_ends(plan.sections)), *map(_border, plan.picked)],
        "picked": [_picked(edge) for edge in plan.picked],
        "nearest": [
            {"cast_on": near.cast_on, "width_cm": tenths(near.width_cm), "error_cm": tenths(near.error_cm)}
            for near in plan.nearest
        ],
        "stitches_total": plan.stitches_total,
        "yarn": yarn_json(yarn),
        "time": None,
        "findings": [finding_json(finding) for finding in plan.findings],
        "sampler": None if sampler is None else _sampler(sampler),
        "safety": safety,
    }


def tenths(cm: Fraction) -> float:
    """Return centimetres to 0.1, half up."""
    return float(half_up(cm, Fraction(1, 10)))


def ends_of(span: Iterable[Fraction | None]) -> list[float | None]:
    """Return the ends of a span of centimetres to 0.1; None is an end that is not known, or not there."""
    return [None if end is None else tenths(end) for end in span]


def recipe_json(plan: Plan) -> Answer:
    """Return the recipe of a plan with every part it uses, those that were not named too."""
    request, rows = plan.request, {section.name: section.rows for section in plan.sections}
    body = [_part(part, rows=part.rows, stitches=part.stitches) for part in request.body]
    return {
        "construction": request.construction,
        "corner": request.corner,
        "parts": {
            "cast_on": _part(request.cast_on),
            "bottom": _part(request.bottom, rows=rows.get("bottom")),
            "sides": _sides(plan),
            "selvedge": _part(request.selvedge, stitches=plan.counts.selvedge),
            "body": body if len(body) > 1 else body[0],
            "top": _part(request.top, rows=rows.get("top")),
            "bind_off": _part(request.bind_off),
        },
    }


def _sides(plan: Plan) -> Answer | None:
    """Return the side borders of a recipe: worked with the body in stitches, or picked up and worked in rows."""
    picked = plan.request.picked
    if picked is not None:
        return _part(picked, rows=picked.rows)
    return _part(plan.request.sides, stitches=plan.counts.sides)


def _part(part: Part | None, rows: int | None = None, stitches: int | None = None) -> Answer | None:
    if part is None:
        return None
    slug = part.component.slug
    said: Answer = {"component": slug} if slug else {"text": part.component.versions[0].rows}
    given = {"rows": rows, "stitches": stitches, "left": part.left}
    return said | {name: value for name, value in given.items() if value is not None}


def counts_json(plan: Plan) -> Answer:
    """Return the stitches of a plan and of its parts; bands give lists."""
    counts, several = plan.counts, len(plan.counts.body) > 1
    return {
        "cast_on": counts.cast_on,
        "sides": counts.sides,
        "selvedge": counts.selvedge,
        "body": list(counts.body) if several else counts.body[0],
        "repeats": list(counts.repeats) if several else counts.repeats[0],
    }


def finished_json(plan: Plan) -> Answer:
    """Return the size of a plan, and how far reading the swatches lets it be off."""
    return {
        "width_cm": tenths(plan.width_cm),
        "length_cm": tenths(plan.length_cm),
        "tolerance_cm": {
            "width": tenths(plan.width_give.tolerance_cm),
            "length": tenths(plan.length_give.tolerance_cm),
        },
        "worst_cm": {"width": ends_of(plan.width_give.worst_cm), "length": ends_of(plan.length_give.worst_cm)},
        "rows": sum(section.rows for section in plan.sections),
        "edges": _edges(plan),
    }


def _edges(plan: Plan) -> list[Answer]:
    """Return the four edges of the piece with their lengths by the gauge of what lies there."""
    lowest, highest = plan.sections[0], plan.sections[-1]
    ends = [("cast-on", lowest.cm_width), ("bind-off", highest.cm_width)]
    sides = [("right side", plan.length_cm), ("left side", plan.length_cm)]
    return [{"name": name, "length_cm": tenths(cm)} for name, cm in ends + sides]


def _with_ends(sections: Iterable[Section]) -> Iterable[tuple[Section, Fraction]]:
    """Give each section with the length of the piece when it is done."""
    done = Fraction(0)
    for section in sections:
        done += section.cm_length
        yield section, done


def _border(edge: PickedEdge) -> Answer:
    """Return the rows of a picked-up border; it ends at its own width, measured outwards from the edge."""
    return _section((edge.border, edge.border.cm_length))


def _picked(edge: PickedEdge) -> Answer:
    """Return what is picked up along an edge, stretch by stretch in the order in which they are met."""
    return {
        "edge": edge.edge,
        "from": "bind-off" if edge.edge == "left" else "cast-on",
        "stitches": edge.picks,
        "needed": tenths(edge.need),
        "places": edge.places,
        "stretches": [
            {
                "name": each.name,
                "rows": each.rows,
                "places": each.places,
                "place": each.place,
                "needed": tenths(each.need),
                "stitches": each.picks,
                "rate": rate_in_words(each),
            }
            for each in edge.stretches
        ],
    }


def _section(placed: tuple[Section, Fraction]) -> Answer:
    section, ends_at = placed
    return {
        "name": section.name,
        "texture": section.texture or None,
        "rows": section.rows,
        "first_row": section.first_row,
        "last_row": section.first_row + section.rows - 1,
        "first_row_side": section.first_row_side,
        "last_row_side": section.last_row_side,
        "before": section.before,
        "after": section.after,
        "stitches": section.stitches,
        "width_cm": tenths(section.cm_width),
        "length_cm": tenths(section.cm_length),
        "ends_at_cm": tenths(ends_at),
        "row_repeat": len(section.cycle),
        "ridges": _ridges(section),
        "gauge_in": section.gauge_in,
        "unwashed_cm": None if section.unwashed_cm is None else ends_of(section.unwashed_cm),
    }


def _ridges(section: Section) -> int | None:
    """Return the garter ridges that the right side shows, None for a section that is not garter."""
    if not all(_knit(row) for row in section.cycle):
        return None
    on_first, on_other = ridges(section.rows)
    return on_first if section.first_row_side == "RS" else on_other


def _knit(row: Row) -> bool:
    parts = (node for part in row.parts for node in (part.parts if isinstance(part, OpenRepeat) else (part,)))
    return all(isinstance(node, Work) and node.stitch in ("k", "sl", "wyif", "wyib") for node in parts)


def _sampler(sampler: Plan) -> Answer:
    return {
        "cast_on": sampler.counts.cast_on,
        "width_cm": tenths(sampler.width_cm),
        "length_cm": tenths(sampler.length_cm),
        "rows": sum(section.rows for section in sampler.sections),
        "sections": [{"name": section.name, "rows": section.rows} for section in sampler.sections],
    }


def finding_json(finding: Finding) -> Answer:
    """Return a finding of a plan as JSON values: its place is a pointer into the request."""
    return {
        "rule": finding.rule,
        "severity": finding.severity,
        "line": None,
        "column": None,
        "pointer": finding.pointer,
        "message": finding.message,
        "hint": finding.hint,
        "corrections": [
            {"pointer": change.pointer, "value": change.value, "why": change.why} for change in finding.changes
        ],
    }

"""A side border of moss that does not go on from a moss base."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TypeAlias

from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.fabrics import is_moss
from counterpane.craft.constructions.joining import CannotJoin, Nodes, closed, head, stitch_by_stitch, tail
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.effects import effect
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Vocabulary

End: TypeAlias = Callable[[Nodes, int, Vocabulary], Nodes]


@rule(
    "moss-corner-breaks",
    family="fabric",
    severity="warning",
    bad=(
        '{"parts": {"body": "garter", "bottom": "seed-stitch-border",'
        ' "sides": {"component": "seed-stitch-border", "left": "Rows 1 and 2: k1, p1, k1, p1, k1."}}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "seed-stitch"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "bottom": "seed-stitch-border", "sides": "seed-stitch-border"}, '
        '"gauge": [{"stitches": 22, "rows": 30, "over_cm": 10, "in": "garter"},'
        ' {"stitches": 22, "rows": 30, "over_cm": 10, "in": "seed-stitch"}], '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def moss_corner_breaks(attempt: Attempt) -> Iterator[Finding]:
    """A moss border broken at the corner.

    A side border of moss goes on from a moss base only where its stitches change places from the last row of the
    base; one stitch of shift makes two rows of rib.
    """
    plan = attempt.plan
    if plan is None or plan.request.bottom is None or plan.request.sides is None:
        return
    moss = [is_moss(part.component, attempt.vocabulary) for part in (plan.request.bottom, plan.request.sides)]
    broken = _broken(plan, attempt.vocabulary) if all(moss) else []
    if broken:
        yield Finding(
            "moss-corner-breaks",
            "warning",
            f"At the {' and the '.join(broken)} corner of the base the moss breaks: over {plan.counts.cast_on} sts "
            "the side border repeats the last row of the base where its stitches should change places.",
            "Take the stored border of the same texture, which goes on unbroken, or a body of one stitch more.",
            pointer="/parts/sides",
        )


def _broken(plan: Plan, vocabulary: Vocabulary) -> list[str]:
    """Return the sides on which the first row above the base shows the same faces as the last row of the base."""
    base, body = plan.sections[0], plan.sections[1]
    below, above = base.cycle[(base.rows - 1) % len(base.cycle)], body.cycle[0]
    width = plan.counts.selvedge + plan.counts.sides
    rows = [_ends(row, base.after, width, plan.counts.selvedge, vocabulary) for row in (below, above)]
    pairs = zip(("right", "left"), *rows, strict=True)
    return [name for name, one, other in pairs if one and one == other]


def _ends(row: Row, stitches: int, width: int, selvedge: int, vocabulary: Vocabulary) -> tuple[str, str]:
    """Return the faces of the side borders as the right side shows them, right and left, selvedges left out.

    A border that is more than a sequence of stitches shows none, and the other one is looked at all the same.
    """
    parts = closed(row.parts, stitches, vocabulary)
    first = _faces(head, parts, width, vocabulary)[selvedge:]
    last = _faces(tail, parts, width, vocabulary)[: width - selvedge]
    return (first, last) if row.side == "RS" else (_turned(last), _turned(first))


def _faces(end: End, parts: Nodes, width: int, vocabulary: Vocabulary) -> str:
    try:
        side = end(parts, width, vocabulary)
        # What uses no stitch belongs to the body beside: stitches held for a cable, a yarn-over.
        works = stitch_by_stitch([node for node in side if effect(node, vocabulary).uses], vocabulary)
    except CannotJoin:
        return ""
    return "".join(work.stitch if work.stitch in ("k", "p") else "?" for work in works if vocabulary[work.stitch].uses)


def _turned(faces: str) -> str:
    return faces[::-1].translate({ord("k"): "p", ord("p"): "k"})

"""Which usual mistakes a row can meet, from the stitches as they are worked and the faces that they leave."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from counterpane.craft.fabric import Course
from counterpane.craft.fabric.faces import SLIP
from counterpane.craft.fabric.marks import TWISTED
from counterpane.craft.stitches import Stitch, Vocabulary
from counterpane.craft.teaching import Slip
from counterpane.craft.teaching.seen import Shown
from counterpane.craft.trace import Worked

ALTERNATING = 4
"""Stitches in a row that change face one by one, at least, before they are seed stitch or rib; house figure."""

WHENS = (
    "cast-on", "first-row", "garter", "knit-and-purl", "seed", "rib", "yarn-over", "yarn-over-before-purl",
    "yarn-over-at-end", "slip-in-front", "slip-behind", "edge-slip", "held-in-front", "held-behind", "leans-right",
    "leans-left", "twisted", "count-changes", "change-of-part", "pick-up", "bind-off",
)  # fmt: skip
"""Everything that can be said to make a mistake likely, in the order of the work."""


def slips_of(whens: Sequence[str], known: Sequence[Slip]) -> tuple[Slip, ...]:
    """Return the mistakes that are met here, in the order in which they are known."""
    return tuple(slip for slip in known if slip.when in whens)


def whens_of_row(part: Shown, row: int, vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return what makes mistakes likely in a row of a part, in the order of the work."""
    worked = [each for each in part.traced.rows[row - 1].worked if each.takes or each.leaves]
    found = {*_of_stitches(worked, vocabulary), *_of_places(worked, vocabulary), *_of_faces(part.inside(row))}
    before = part.section.before if row == 1 else part.traced.steps[row - 2].after
    if part.traced.steps[row - 1].after != before:
        found.add("count-changes")
    return tuple(when for when in WHENS if when in found)


def _of_stitches(worked: Sequence[Worked], vocabulary: Vocabulary) -> Iterator[str]:
    yield from (when for each in worked[1:-1] if each.stitch == SLIP for when in _of_slip(each))
    for each in worked:
        stitch = vocabulary.stitches.get(each.stitch)
        if each.stitch in TWISTED:
            yield "twisted"
        if each.held:
            yield "held-in-front" if each.in_front else "held-behind"
        if stitch is not None:
            yield from _of_stitch(stitch)


def _of_slip(worked: Worked) -> Iterator[str]:
    """Give where the yarn goes past a slipped stitch; at an edge it goes past none."""
    if "wyif" in worked.manner:
        yield "slip-in-front"
    if "wyib" in worked.manner:
        yield "slip-behind"


def _of_stitch(stitch: Stitch) -> Iterator[str]:
    if stitch.opens:
        yield "yarn-over"
    if stitch.uses == stitch.makes > 1 and stitch.lean in ("left", "right"):
        yield "held-in-front" if stitch.lean == "left" else "held-behind"
    if 0 < stitch.makes < stitch.uses and stitch.lean in ("left", "right"):
        yield f"leans-{stitch.lean}"


def _of_places(worked: Sequence[Worked], vocabulary: Vocabulary) -> Iterator[str]:
    """Give what comes of where a stitch stands: at an edge, beside another."""
    if worked and SLIP in (worked[0].stitch, worked[-1].stitch):
        yield "edge-slip"
    opens = [each.stitch in vocabulary.stitches and vocabulary[each.stitch].opens for each in worked]
    if opens and opens[-1]:
        yield "yarn-over-at-end"
    faces = [_face(each, vocabulary) for each in worked]
    if any(over and after == "purl" for over, after in zip(opens, faces[1:], strict=False)):
        yield "yarn-over-before-purl"
    if any({one, other} == {"knit", "purl"} for one, other in pairwise(faces)):
        yield "knit-and-purl"


def _face(worked: Worked, vocabulary: Vocabulary) -> str | None:
    stitch = vocabulary.stitches.get(worked.stitch)
    return stitch.face if stitch else None


def _of_faces(courses: Sequence[Course]) -> Iterator[str]:
    """Give what the faces of the last two rows make of each other."""
    if set(courses[-1]) == {"purl"}:
        yield "garter"
    if len(courses) > 1 and len(courses[-1]) == len(courses[-2]):
        for stretch in _alternating(courses[-1]):
            same = [courses[-1][at] == courses[-2][at] for at in stretch]
            if all(same) or not any(same):
                yield "rib" if same[0] else "seed"


def _alternating(course: Course) -> Iterator[range]:
    """Give the stretches in which knit and purl change one by one."""
    start = 0
    for at in range(1, len(course) + 1):
        changes = at < len(course) and {course[at - 1], course[at]} == {"knit", "purl"}
        if not changes:
            if at - start >= ALTERNATING:
                yield range(start, at)
            start = at

"""The faces of a fabric as a grid: what each loop shows from the right side and from the wrong side."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Literal, TypeAlias

from counterpane.craft.rows.tree import Node, Side, Work
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import Traced, TracedRow, Worked
from counterpane.craft.trace.meaning import everything

Look: TypeAlias = Literal["knit", "purl", "open", "slipped", "crossed", "not known"]
Course: TypeAlias = tuple[Look, ...]
_OTHER: dict[Look, Look] = {"knit": "purl", "purl": "knit"}
SLIP = "sl"


def from_rs(traced: Traced, vocabulary: Vocabulary) -> tuple[Course, ...]:
    """Return the courses from the bottom up as the right side shows them, each from its right edge on.

    A row that turns before its end makes a course for each way it is worked. Loops passed over or bound off are not
    in it, and a loop that a later row slips shows where it was made and as "slipped" again.
    """
    return tuple(course for row in traced.rows for course in _courses(row, vocabulary))


def from_ws(courses: Sequence[Course]) -> tuple[Course, ...]:
    """Return what the wrong side shows of courses seen from the right side; twice gives them back."""
    return tuple(tuple(_OTHER.get(look, look) for look in reversed(course)) for course in courses)


def ridges(courses: Sequence[Course]) -> tuple[int, int]:
    """Return the ridges on the right and on the wrong side: single courses of purl faces.

    Purl courses above one another are the back of stocking stitch and no ridge. The cast-on is not looked at.
    """
    return _single_purl_courses(courses), _single_purl_courses(from_ws(courses))


def _single_purl_courses(courses: Sequence[Course]) -> int:
    purl = (bool(course) and set(course) == {"purl"} for course in courses)
    return sum(is_purl and len(list(run)) == 1 for is_purl, run in groupby(purl))


def passes_of(row: TracedRow) -> list[tuple[Worked, ...]]:
    """Cut the stitches of a row at its turns; a row without stitches is one empty pass."""
    return [tuple(run) for _, run in groupby(row.worked, key=lambda worked: worked.side)] or [()]


def _courses(row: TracedRow, vocabulary: Vocabulary) -> list[Course]:
    kept = {loop.number for loop in row.loops}
    return [_course(worked, kept, vocabulary) for worked in passes_of(row)]


def _course(stitches: Sequence[Worked], kept: set[int], vocabulary: Vocabulary) -> Course:
    looks = [look_of(worked, vocabulary) for worked in stitches for loop in worked.leaves if loop.number in kept]
    behind = bool(stitches) and stitches[0].side == "WS"
    return tuple(reversed(looks)) if behind else tuple(looks)


def look_of(worked: Worked, vocabulary: Vocabulary) -> Look:
    """Return what the right side shows of a stitch."""
    if worked.stitch == SLIP:
        return "slipped"
    stitch = vocabulary.stitches.get(worked.stitch)
    if stitch is not None and stitch.opens:
        return "open"
    if worked.held or (stitch is not None and stitch.uses == stitch.makes > 1):
        return "crossed"
    if stitch is None or stitch.face is None:
        return "not known"
    return _OTHER[stitch.face] if worked.side == "WS" else stitch.face


def shows_purl(parts: Sequence[Node], side: Side, vocabulary: Vocabulary) -> bool:
    """Tell whether any stitch of a row shows a purl face on the right side."""
    face = "knit" if side == "WS" else "purl"
    works = (node for node in everything(parts) if isinstance(node, Work))
    return any(vocabulary[work.stitch].face == face for work in works)

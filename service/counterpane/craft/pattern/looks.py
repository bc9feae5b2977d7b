"""What a fabric should look like from its right side, in a sentence: so that a shifted row is seen where it happens."""

from __future__ import annotations

from counterpane.craft.behaviour.faces import Repeat, repeat_of
from counterpane.craft.component import Component
from counterpane.craft.pattern.figures import counted
from counterpane.craft.stitches import Vocabulary

_MANY_RUNS = 8
"""Columns of ribs up to which each is named; house figure."""


def look_of(component: Component, vocabulary: Vocabulary) -> str:
    """Say what the right side shows, "" where the rows cannot be laid out as one repeat."""
    repeat = repeat_of(component, vocabulary)
    return "" if repeat is None else "; ".join(filter(None, (_plain(repeat), _openings(repeat), _crossings(repeat))))


def _plain(repeat: Repeat) -> str:
    """Say how knit and purl faces lie in a repeat that has both, or that one of them covers all."""
    if not repeat.simple:
        return ""
    if all(len(set(course)) == 1 for course in repeat.courses):
        return _in_courses(repeat)
    if len(set(repeat.courses)) == 1:
        return _ribs(repeat)
    if repeat.across == repeat.upright == 1:
        return "single bumps like the fields of a draughtboard, none above or beside another"
    faces = [look for course in repeat.courses for look in course]
    smooth, bumps = faces.count("knit"), faces.count("purl")
    if smooth == bumps:
        return f"as many smooth stitches as bumps, {bumps} of each {_of_each(repeat)}"
    if smooth > bumps:
        return f"{counted(bumps, 'bump')} on a smooth ground {_of_each(repeat)}"
    return f"{counted(smooth, 'smooth stitch', 'smooth stitches')} on a ground of bumps {_of_each(repeat)}"


def _in_courses(repeat: Repeat) -> str:
    """Say how whole rows of one face follow one another."""
    looks = {course[0] for course in repeat.courses}
    if looks == {"knit"}:
        return "smooth columns of Vs, and no bump"
    if looks == {"purl"}:
        return "rows of bumps all over, and no V"
    if repeat.upright == 1:
        return "a ridge of bumps, a row of Vs, a ridge again"
    high = counted(len(repeat.courses), "row")
    return f"bands across, of smooth rows and of rows of bumps, which begin again every {high}"


def _ribs(repeat: Repeat) -> str:
    runs = repeat.ribs or ()
    if len(runs) > _MANY_RUNS:
        return "upright ribs: each column keeps its face from bottom to top"
    wide = (" and " if len(runs) <= 2 else ", ").join(map(str, runs))
    return f"upright ribs, {wide} stitches wide in turn: each column keeps its face from bottom to top"


def _openings(repeat: Repeat) -> str:
    found = sum(look == "open" for course in repeat.courses for look in course)
    return f"{counted(found, 'opening')} {_of_each(repeat)}" if found else ""


def _crossings(repeat: Repeat) -> str:
    rows = sum("crossed" in course for course in repeat.courses)
    return f"crossed stitches in {counted(rows, 'row')} {_of_each(repeat)}" if rows else ""


def _of_each(repeat: Repeat) -> str:
    wide, high = counted(repeat.wide, "stitch", "stitches"), counted(len(repeat.courses), "row")
    return f"in each repeat of {wide} and {high}"

"""What lies under the needle: the side that faces, and the two courses as it shows them; read, said, and held together.

It is said as "RS: k2 p2 / p4": the side, the stitches right under the needle, and after the stroke those one course
further down. Each may be left out, and fewer stitches than there are will do.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from counterpane.craft.fabric import Look
from counterpane.craft.rows.tree import Side

LETTERS: dict[Look, str] = {"knit": "k", "purl": "p", "open": "o", "slipped": "s", "crossed": "x", "not known": "u"}
"""How each look is written: a V, a bump, a hole, a long stitch, a stitch that crosses others, and what is not known."""

CAST_ON = "cast-on"
"""Stands for what lies below row 1."""

_GROUP = re.compile(rf"([{''.join(LETTERS.values())}])(\d{{0,3}})")
_SIDE = re.compile(r"\s*(RS|WS)\s*(?::|,|$)", re.IGNORECASE)
_FEWEST = 4
"""Stitches of a course that are told at least; house."""


@dataclass(frozen=True, slots=True)
class Under:
    """The side that faces who is about to work the next row, and two courses, a letter a stitch from where it begins.

    `needle` is the course right under the needle and `below` the one under that; what is not known is None or "".
    """

    facing: Side | None
    needle: str
    below: str

    @property
    def known(self) -> bool:
        """Whether both courses are known."""
        return bool(self.needle and self.below)

    def shows(self, said: Under) -> bool:
        """Say whether it may look as somebody said, who may have told fewer stitches or none."""
        return (None in (self.facing, said.facing) or self.facing == said.facing) and all(
            not true or true.startswith(seen) for true, seen in ((self.needle, said.needle), (self.below, said.below))
        )

    def said(self) -> str:
        """Return it in the words that `read` reads."""
        courses = " / ".join(each if each == CAST_ON else in_groups(each) for each in (self.needle, self.below) if each)
        return ": ".join(each for each in (self.facing, courses) if each)


def read(said: str) -> Under | None:
    """Return what somebody said of it; None where that cannot be read, or says nothing."""
    side = _SIDE.match(said)
    courses = [in_letters(each) for each in (said[side.end() :] if side else said).split("/")]
    if len(courses) > 2 or None in courses:
        return None
    needle, below = (*courses, "")[:2]
    facing: Side | None = None if side is None else "RS" if side[1].upper() == "RS" else "WS"
    return Under(facing, needle or "", below or "") if facing or needle or below else None


def in_letters(said: str) -> str | None:
    """Return stitches that were said in groups, as in "k2, p2", a letter each; None where they cannot be read."""
    said = re.sub(r"[\s,;]", "", said.lower())
    if said == CAST_ON:
        return said
    if _GROUP.sub("", said):
        return None
    return "".join(letter * int(times or 1) for letter, times in _GROUP.findall(said))


def in_groups(letters: str) -> str:
    """Write letters in groups, as in "k2 p2"."""
    return " ".join(f"{letter}{len(list(run))}" for letter, run in groupby(letters))


def shortened(every: Sequence[Under]) -> tuple[Under, ...]:
    """Return each with the fewest stitches by which all of them are told apart, but with some in any case."""
    longest = max((len(course) for each in every for course in (each.needle, each.below)), default=0)
    for many in range(_FEWEST, longest):
        short = tuple(Under(each.facing, _first(each.needle, many), _first(each.below, many)) for each in every)
        if len(set(short)) == len(set(every)):
            return short
    return tuple(every)


def _first(course: str, many: int) -> str:
    return course if course == CAST_ON else course[:many]

"""Several stitches into one, without brackets: "3 stitches in the next stitch, knit 1, purl 1, knit 1".

The two loops of a double yarn-over are worked so as well: "knit the first half of the double stitch, seam the other".
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, spelt, ways
from counterpane.craft.rows.tree import IntoOne, Node, Work

_VERBS = {
    **dict.fromkeys(("knit", "k", "k1"), "k"),
    **dict.fromkeys(("purl", "p", "p1", "pearl", "seam"), "p"),
}
_HALF = phrases(
    *ways("|in|into|of", "|the", "first|1st|second|2nd|other|last|1", "half|loop|part|of the loops|of the overs")
)
_OF = phrases(
    *ways("of|in|into", "|the|next|the next|this|each|every|the made", "|double", "st|stitch|loop|over|yo|yarn over"),
    "of it",
)
_DOUBLE = "|".join(
    [
        *spelt("double", "yo|over|st|stitch|loop|yarn over|made stitch"),
        "2 overs",
        "yo twice",
        "2 loops",
        "2 loops of the double over",
        "2 made stitches",
        "2 made loops",
    ]
)
OPENINGS = frozenset(_VERBS)
SINGLE = frozenset({"k", "p", "yo", "k tbl", "p tbl"})
_JOINS = phrases("and", ",", ", and", ";", "; and", ", then", "and then")


@dataclass(frozen=True, slots=True)
class Into:
    """Into how many loops stitches are worked, and into which: the same, the next, the last, each, or any."""

    loops: int
    which: Literal["same", "next", "last", "each", ""]


_IN, _ONE = "in|into|on|of|out of", "st|stitch|loop"
INTO: Phrasebook[Into] = Phrasebook(
    [
        *((way, Into(1, "same")) for way in ways(_IN, "same|the same|that|this", _ONE)),
        *((way, Into(1, "next")) for way in ways(_IN, "|the", "next|first|foll|following|made|new", _ONE)),
        *((way, Into(1, "next")) for way in ways(_IN, "|the", "made|new", "made|over")),
        *((way, Into(1, "last")) for way in ways(_IN, "|the", "last", _ONE)),
        *((way, Into(1, "")) for way in ways("in|into", "|the|1", _ONE)),
        *((way, Into(1, "each")) for way in ways("in|into|of", "each|every", _ONE)),
        *((way, Into(2, "next")) for way in ways("in|into|out of", "|the|next|the next|each|each of the", _DOUBLE)),
    ]
)


def take_halves(cursor: Cursor) -> IntoOne | None:
    """Read "knit the first half of the double stitch, seam the other half"; None, without a move, for anything else."""
    if cursor.word(1) not in _HALF.openings:
        return None
    before, place = cursor.at, cursor.place
    first = _half(cursor)
    second = _half(cursor) if first and cursor.take(_JOINS) else None
    if first is None or second is None:
        cursor.at = before
        return None
    return IntoOne((first, second), 2, place)


def _half(cursor: Cursor) -> Work | None:
    place, key = cursor.place, _VERBS.get(cursor.word())
    cursor.at += key is not None
    if key is None or not cursor.take(_HALF):
        return None
    cursor.take(_OF)
    return Work(key, place=place)


def take_gather(cursor: Cursor) -> tuple[int, int] | None:
    """Read "3 stitches in the first stitch," and return how many into how many loops; the stitches stand behind."""
    before = cursor.at
    cursor.take_word("work", "make", "knit")
    number = cursor.take_number()
    into = cursor.take(INTO) if number is not None and cursor.take_stitches() else None
    if number is None or into is None or not cursor.take_word(",", ":", ";", "-"):
        cursor.at = before
        return None
    cursor.take_word("-", ",")
    return number, into.loops


def take_into(cursor: Cursor) -> Into | None:
    """Read "all in the double over" behind stitches, or without "all"; None, without a move, for anything else."""
    before = cursor.at
    cursor.take_word("all", "both")
    into = cursor.take(INTO)
    if into is None:
        cursor.at = before
    return into


def gathered_from(items: Sequence[Node], clause: int, into: Into) -> int:
    """Return where the stitches at the end of a list begin that all go into one; its length where there are none.

    They are single and alternate, within the clause that begins at an index: of "knit 3, knit 1 and purl 1 in the next
    stitch" the first three stay outside. The first is no yarn-over, which comes out of no stitch. Two loops take two.
    "In the same stitch" may go on with stitches that are in one already.
    """
    start = len(items)
    first = max(clause, start - 2 if into.loops > 1 else 0)
    while start > first and is_single(items[start - 1]) and (start == len(items) or items[start - 1] != items[start]):
        start -= 1
    if start and start == len(items) - 1 and into.which == "same" and isinstance(items[start - 1], IntoOne):
        return start - 1
    while start < len(items) and _key(items[start]) == "yo":
        start += 1
    return start if len(items) - start >= max(2, into.loops) else len(items)


def is_single(node: Node) -> bool:
    """Tell whether a node is one plain stitch or yarn-over, which can go into the same stitch as others."""
    return isinstance(node, Work) and node.times == 1 and node.stitch in SINGLE


def _key(node: Node) -> str:
    return node.stitch if isinstance(node, Work) else ""

"""Several stitches into one, without brackets: "3 stitches in the next stitch, knit 1, purl 1, knit 1".

The two loops of a double yarn-over are worked so as well: "knit the first half of the double stitch, seam the other".
"""

from __future__ import annotations

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, spelt, ways
from counterpane.craft.rows.tree import IntoOne, Work

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
        "2 made stitches",
    ]
)
OPENINGS = frozenset(_VERBS)
_JOINS = phrases("and", ",", ", and", ";", "; and", ", then", "and then")
_INTO: Phrasebook[int] = Phrasebook(
    [
        *(
            (way, 1)
            for way in ways(
                "in|into|out of", "the|next|the next|the first|1|the same|the last|first|same|each", "st|stitch|loop"
            )
        ),
        *((way, 2) for way in ways("in|into|out of", "|the|next|the next|each|each of the", _DOUBLE)),
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
    loops = cursor.take(_INTO) if number is not None and cursor.take_stitches() else None
    if number is None or loops is None or not cursor.take_word(",", ":", ";", "-"):
        cursor.at = before
        return None
    cursor.take_word("-", ",")
    return number, loops


def take_into(cursor: Cursor) -> int | None:
    """Read "all in the double over" behind stitches; how many loops they go into, None without a move for none."""
    before = cursor.at
    cursor.take_word("all", "both")
    loops = cursor.take(_INTO)
    if loops is None:
        cursor.at = before
    return loops

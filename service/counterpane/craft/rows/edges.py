"""Edge stitches in the words of handbooks: "1 chain", "with a slip-stitch at the beginning".

A chain of one is the selvedge of Dillmont 1886: slipped at the beginning of a row, knitted at its end; more than one,
at the beginning, are cast off.
"""

from __future__ import annotations

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.fabrics import PATTERN
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.tree import BindOff, Node, Work

_CHAIN = phrases(*ways("chain|chains", "|st|sts|stitch|stitches"))
_BEGINS = phrases(
    *ways(
        "with|", "|a|1", "slip-stitch|slip stitch|slipped stitch|slip st", "at|in", "the", "beginning|beg|commencement"
    )
)
_NAMED = phrases(*ways("edge|edging|selvedge|selvage", "st|sts|stitch|stitches"))
OPENINGS = _BEGINS.openings | _NAMED.openings


def take_edge(cursor: Cursor, first: bool) -> Node | None:
    """Move past an edge stitch; `first` says that nothing has been worked in the row.

    "Edge st" alone is a stitch worked as the edge is everywhere, whichever way that may be.
    """
    place, number = cursor.place, cursor.number()
    if number is None:
        if cursor.take(_NAMED):
            return Work(PATTERN, place=place)
        return Work("sl", place=place) if cursor.take(_BEGINS) else None
    cursor.at += 1
    if cursor.take(_NAMED):
        return Work(PATTERN, number, place=place)
    if not cursor.take(_CHAIN):
        cursor.at -= 1
        return None
    if number > 1:
        return BindOff(number, place=place) if first else Work("k", number, place=place)
    return Work("sl" if first else "k", place=place)

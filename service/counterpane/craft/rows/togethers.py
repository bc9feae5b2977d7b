"""Stitches worked together, in words: "take 2 together", "knit the next 3 stitches in one", "purl together 2"."""

from __future__ import annotations

from collections.abc import Mapping

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.tree import Work
from counterpane.craft.rows.workings import WHICH

TOGETHER = frozenset({"tog", "together"})
FEWEST, MOST = 2, 9
_VERBS: Mapping[str, str] = {
    **dict.fromkeys(("knit", "k", "knitting", "take", "taking", "work", "working"), "k"),
    **dict.fromkeys(("purl", "p", "purling", "pearl", "pearling", "seam", "seaming"), "p"),
}
TOGETHER_OPENINGS = frozenset(_VERBS)
_AS_ONE = phrases(
    *ways("tog|together", "|as 1|in 1|at once|as if 1"),
    *ways("|all", "as|in|into|to", "1", "|st|stitch"),
    *ways("|,", "take|taking|taken", "|them", "together"),
    "at once",
)
_PLAIN = phrases("plain", "knitways", "knitwise", "kwise")


def take_together(cursor: Cursor) -> Work | None:
    """Move past stitches worked together as one; None, without a move, where none are."""
    before, place = cursor.at, cursor.place
    letter = _VERBS.get(cursor.word(), "")
    cursor.at += bool(letter)
    first = bool(letter) and cursor.take_any(TOGETHER)
    cursor.take(WHICH)
    cursor.take_word("other")
    number = cursor.take_number()
    if number is None or not FEWEST <= number <= MOST:
        cursor.at = before
        return None
    cursor.take_stitches()
    if not first and not cursor.take(_AS_ONE):
        cursor.at = before
        return None
    cursor.take(_PLAIN)
    return Work(f"{letter or 'k'}{number}tog", place=place)

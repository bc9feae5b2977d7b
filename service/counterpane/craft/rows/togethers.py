"""Stitches worked together, in words: "take 2 together", "knit the next 3 stitches in one", "purl together 2"."""

from __future__ import annotations

from collections.abc import Mapping

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.stops import OPENINGS as STOPS
from counterpane.craft.rows.tree import Work
from counterpane.craft.rows.workings import WHICH

TOGETHER = frozenset({"tog", "together"})
FEWEST, MOST = 2, 9  # Stitches worked together as one; the most is a house bound.
OFF_OPENINGS = frozenset({"slip", "pass", "take", "taking", "slipping"})
_OFF = phrases(
    *ways(
        "off",
        "|the needle|the pin",
        "|without knitting|without knitting it|without working it|without working|unknitted|unworked",
    )
)
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
    before = cursor.at
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
    first = first or _by_twos(cursor, number)
    if not first and not cursor.take(_AS_ONE):
        cursor.at = before
        return None
    cursor.take(_PLAIN)
    return Work(f"{letter or 'k'}{number}tog", place=cursor.run[before].place)


def _by_twos(cursor: Cursor, number: int) -> bool:
    """Move past the rest of "knit two and two together to the end", which is so along the row."""
    found = cursor.word() == "and" and cursor.number(1) == number and cursor.word(2) in TOGETHER
    if not found or cursor.word(3) not in STOPS:
        return False
    cursor.at += 3
    return True


def take_off(cursor: Cursor) -> Work | None:
    """Move past "take the first stitch off without knitting", a slipped stitch; None, without a move, for others."""
    before = cursor.at
    if cursor.take_any(OFF_OPENINGS):
        which = cursor.take(WHICH) or cursor.take_word("a")
        number = cursor.take_number()
        if (cursor.take_stitches() or number) and (which or number) and cursor.take(_OFF) and cursor.pausing:
            return Work("sl", number or 1, place=cursor.run[before].place)
    cursor.at = before
    return None

"""Yarn brought forward: a loop over the needle, or only the yarn moved before a slipped stitch.

"Yf" is the yarn-over of UK terms and moves the yarn in US ones; even "yfwd" makes no loop where the yarn goes back
behind the slipped stitch ("yfwd, sl 1, yb"). What follows decides (common practice, no source).
"""

from __future__ import annotations

import re

from counterpane.craft.rows.cursor import STITCH_WORDS, Cursor
from counterpane.craft.rows.manners import MANNER_BOOK
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.stitches import Terms

OVER, MOVED = "yo", "wyif"
_FORWARD = frozenset({"yf", "yfwd", "yfd", "yarn", "wool", "wl", "bring", "cotton", "thread"})
_BACK = phrases(
    *("yb", "ybk", "ytb", "wyib"),
    *ways("|take|bring|pass|put|move|throw", "|the", "yarn|wool|thread|cotton|silk", "back|to back|to the back|behind"),
)
_PURLS = frozenset("p purl purled pearl pearled seam seamed".split())
_LAID = frozenset({"over", "needle", "pin"})
_SLIPPED = re.compile(r"(?:sl|s|slip)(?:\d.*)?")
_LONGEST_DECREASE = 7  # Words of a decrease; house.


def forward(
    cursor: Cursor, word: str, keys: tuple[str, ...], terms: Terms | None, purled: bool | None = None
) -> tuple[str, bool] | None:
    """Return what a yarn brought forward just before the cursor is, and whether that is doubtful; None for others.

    `purled` is given where a handbook's words bring it, and says that the stitch before was a purl: then the yarn is in
    front already, and brought forward again it goes round the needle.
    """
    if OVER not in keys or (word not in _FORWARD and purled is None) or cursor.word(-1) in _LAID:
        return None
    ahead = Cursor(cursor.run)
    ahead.at = cursor.at
    _pauses(ahead)
    slipped = _SLIPPED.fullmatch(ahead.word()) is not None
    if slipped:
        ahead.at += 1
        _slip(ahead)
        if ahead.take(_BACK):
            return MOVED, False
    if MOVED not in keys:
        return (MOVED if purled is False and not slipped and _purls(ahead) else OVER), False
    if slipped and "psso" not in [ahead.word(n) for n in range(_LONGEST_DECREASE)]:
        return MOVED, terms == "uk"
    if ahead.word()[:1] == "p" and not slipped and terms != "uk":
        return MOVED, True
    return OVER, terms != "uk"


def _purls(cursor: Cursor) -> bool:
    """Tell whether plain purling follows, and no purl decrease."""
    cursor.take_word("and")
    number_first = cursor.number() is not None
    cursor.at += number_first
    word = cursor.word()
    if word not in _PURLS and not (word[:1] == "p" and word[1:].isdigit()):
        return False
    ahead = [cursor.word(n) for n in range(1, _LONGEST_DECREASE - 1)]
    until = next((n for n, word in enumerate(ahead) if word in (",", ";", ".", "")), len(ahead))
    return not {"together", "tog", "intake", "decrease"}.intersection(ahead[:until])


def _pauses(cursor: Cursor) -> None:
    while cursor and cursor.token.kind == "pause":
        cursor.at += 1


def _slip(cursor: Cursor) -> None:
    """Move past what belongs to a slipped stitch, and the signs behind it."""
    while cursor and (cursor.number() is not None or cursor.word() in STITCH_WORDS or _manner(cursor)):
        cursor.at += cursor.number() is not None or cursor.word() in STITCH_WORDS
    _pauses(cursor)


def _manner(cursor: Cursor) -> bool:
    """Move past one manner of slipping."""
    manner = cursor.take(MANNER_BOOK)
    return manner is not None

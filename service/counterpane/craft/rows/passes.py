"""A stitch passed over others, in any wording: "pass the slip-stitch over them", "draw the slipped over", "bind".

The verbs, the words for the stitch that is passed and those for what it passes over are lists; the word "over" stands
between, or first ("pass over it the slipped stitch").
"""

from __future__ import annotations

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.tree import Node, Place, Work

VERBS = frozenset(
    "pass passing pull pulling draw drawing slip slipping bring bringing lift lifting throw put cast turn take "
    "bind".split()
)
_ALONE = frozenset("pass passing pull pulling draw drawing bring bringing lift lifting slip".split())
_PASSED = frozenset(
    "the sl slip slipped slip-stitch slip-st slip-stitches st sts stitch stitches loop loops preceding "
    "previous first last "
    "second one ones that it them 1 2 3 both two unknitted un-knitted not knitted which was were you off "
    "on right needle "
    "right-hand hand pin before".split()
)
_NAMED = frozenset(
    "sl slip slipped slip-stitch slip-st slip-stitches st stitch loop preceding previous first it them".split()
)
_SEVERAL = frozenset("2 both sts stitches ones slip-stitches them loops".split())
_OVER = frozenset(
    "it them both this that these those all the others other one ones last next 1 2 3 4 st sts stitch "
    "stitches loop loops "
    "knitted purled seamed worked just made formed by knitting purling together tog k2tog decrease "
    "decreased narrowed plain "
    "off needle pin left right hand new which you have been are were was taken slipped slip first second "
    "preceding knit "
    "k1 p1".split()
)
_STITCH_VERBS = frozenset({"knit", "purl"})
_BEFORE_ADJECTIVE = frozenset("the last just one it 1 2 3".split())
_THREE = "3"
_LONGEST = 12  # Words that tell what is passed over; house.


def take_pass_over(cursor: Cursor, place: Place) -> Node | None:
    """Move past words that pass a stitch over; None, without a move, where none do."""
    if cursor.word() == "bind":
        return _bind(cursor, place)
    ahead = next((n for n in range(1, _LONGEST) if cursor.word(n) == "over"), None)
    passed = [cursor.word(n) for n in range(1, ahead or 0)]
    if ahead is None or not all(word in _PASSED for word in passed):
        return None
    if not passed and cursor.word() not in _ALONE:
        return None
    if cursor.word() not in _ALONE and not _NAMED.intersection(passed):
        return None
    cursor.at += ahead + 1
    over = _take_over(cursor)
    return _pass(passed or over, place)


def _bind(cursor: Cursor, place: Place) -> Node | None:
    """Read "bind", which passes the slipped stitch over; "bind off" is another matter."""
    if cursor.word(1) == "off":
        return None
    cursor.at += 1
    cursor.take_word("over", "it")
    return Work("psso", place=place)


def _pass(passed: list[str], place: Place) -> Node:
    if _THREE in passed:
        return Work("psso", int(_THREE), place=place)
    return Work("p2sso" if _SEVERAL.intersection(passed) else "psso", place=place)


def _take_over(cursor: Cursor) -> list[str]:
    """Move past what it is passed over: "it", "the 2 knitted together", "both and off the needle"."""
    before = cursor.at
    while cursor.at - before < _LONGEST and (cursor.word() in _OVER or _goes_off(cursor)) and not _new_stitch(cursor):
        cursor.at += 1
    return [cursor.word(n) for n in range(before - cursor.at, 0)]


def _goes_off(cursor: Cursor) -> bool:
    return cursor.word() == "and" and cursor.word(1) == "off"


def _new_stitch(cursor: Cursor) -> bool:
    """Tell a stitch to work from one that has been: "over, knit 2" from "over the knit stitch"."""
    adjective = cursor.word(-1) in _BEFORE_ADJECTIVE
    if cursor.word() in _STITCH_VERBS:
        return not adjective
    counts = cursor.word(-1) in ("over", "it", "them", "both") or cursor.word(1) in ("times", "time", "x")
    return cursor.number() is not None and counts

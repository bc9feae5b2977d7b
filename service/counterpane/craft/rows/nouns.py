"""Stitches named behind their number, as handbooks do: "2 plain", "1 purled intake", "3 slipped"."""

from __future__ import annotations

from counterpane.craft.rows.colours import is_yarn_code
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, ways
from counterpane.craft.rows.tree import Work

_STITCH = "|st|sts|stitch|stitches"
_BOOK: Phrasebook[str] = Phrasebook(
    [
        *((way, "k") for way in ways("plain|plain knitted|knit|knitted|knitting|k|kt", _STITCH)),
        *((way, "p") for way in ways("purl|purled|pearl|pearled|seam|seamed|back|rib|p", "st|sts|stitch|stitches")),
        *((way, "p") for way in "purl purled pearl pearled seam seamed back-stitch back-stitches rib-stitch p".split()),
        *((way, "sl") for way in ways("slipped|slip", _STITCH)),
        *((way, "k2tog") for way in ways("|plain|knitted", "intake|intakes|decrease|decreases|narrowing|narrowings")),
        *((way, "p2tog") for way in ways("purl|purled|pearled|seamed", "intake|intakes|decrease|decreases")),
        *((way, "yo") for way in ways("thread|wool|cotton|yarn", "over|overs|forward")),
        *((way, "yo") for way in ways("made", _STITCH)),
        *((way, "yo yo") for way in ways("double", "over|overs")),
    ]
)
_JOINING = frozenset({"times", "time", "x"})
_VERBS = {"k": "k", "knit": "k", "p": "p", "purl": "p"}
_FAR = 40


def take_noun(cursor: Cursor) -> Work | None:
    """Move past a number and the stitch named behind it; None, without a move, where none stands."""
    number = cursor.number()
    if number is None or cursor.word(1) in _JOINING:
        return None
    place = cursor.place
    cursor.at += 1
    key = cursor.take(_BOOK)
    if key is None and is_yarn_code(cursor.word()) and cursor.pausing_after():
        key = _verb(cursor)
    if key is None:
        cursor.at -= 1
        return None
    return Work("yo", 2 * number, place=place) if key == "yo yo" else Work(key, number, place=place)


def _verb(cursor: Cursor) -> str:
    """Return the stitch that numbers of colours are worked in, "k 2A, 2B": the one named last, else a knit stitch."""
    before = (token.norm for token in reversed(cursor.run[max(0, cursor.at - _FAR) : cursor.at]))
    return next((_VERBS[word.rstrip("0123456789")] for word in before if word.rstrip("0123456789") in _VERBS), "k")

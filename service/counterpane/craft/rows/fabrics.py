"""Stitches named by the fabric they go on with: "patt 20", "rib to last 5 sts", "work sts as they appear".

Each is worked one for one, which is all that is known of it.
"""

from __future__ import annotations

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, ways

PATTERN = "patt"
_LEAD = phrases("in", "keep in", *ways("work|cont|continue", "|even|across", "in"), "work")
_SET = phrases("est", "established", "set", "the", "the est", "the established", "same", "the same")
_NAMES = phrases(
    *ways("|main|border|lace|cable", "patt|pattern|pat"),
    *ways("|k1 p1|k2 p2|k1 , p1|k2 , p2|1 x 1|2 x 2|1x1|2x2", "rib|ribbing"),
    *ways("garter|g|st|stocking|stockinette|seed", "st|stitch"),
    *ways("|double", "moss", "|st|stitch"),
    *("garter", "stockinette", "basket weave", "basketweave"),
)
_AS_SET = phrases("as set", "as est", "as established", "as before", "correctly", "throughout")
_BY_ITSELF = phrases(*ways("as|work as|cont as|continue as", "set|est|established"))
_OPENINGS = frozenset().union(*(book.openings for book in (_LEAD, _SET, _NAMES, _BY_ITSELF)))
MOSS = ("UK moss stitch (US seed stitch)", "US moss stitch (UK double moss stitch)")
_ALL = phrases("all", "the", "all the", "all of the")
_AND = phrases("and", ",", "&", ", and", ";")
_KNIT = phrases("k", "knit"), phrases(*ways("k|knit", "sts|stitches"), "knits")
_PURL = phrases("p", "purl"), phrases(*ways("p|purl", "sts|stitches"), "purls")
_APPEAR = phrases(*ways("as they", "appear|face|face you|present|present themselves|come|lie"), "as set")
_WORK = phrases("work", "k and p", "knit and purl", "k & p")
_STITCHES = phrases(*ways("|all|the|all the", "sts|stitches"))
_EVEN = phrases(*ways("work", "even|straight|across"))


def take_fabric(cursor: Cursor) -> bool:
    """Move past the name of a fabric and the words around it: "work in est patt", "in rib", "moss st as set"."""
    if cursor.word() not in _OPENINGS:
        return False
    before = cursor.at
    if cursor.take(_BY_ITSELF):
        return True
    cursor.take(_LEAD)
    cursor.take(_SET)
    if cursor.take(_NAMES):
        cursor.take(_AS_SET)
        return True
    cursor.at = before
    return False


def take_across(cursor: Cursor) -> bool:
    """Move past words for a whole row as it comes: "k the knit sts and p the purl sts", "work sts as they appear"."""
    if cursor.word() not in ("k", "knit", "p", "purl", "work"):
        return False
    for first, then in ((_KNIT, _PURL), (_PURL, _KNIT)):
        before = cursor.at
        if _faces(cursor, *first) and cursor.take(_AND) and _faces(cursor, *then):
            cursor.take(_APPEAR)
            return True
        cursor.at = before
    if cursor.take(_WORK):
        cursor.take(_STITCHES)
        if cursor.take(_APPEAR):
            return True
    cursor.at = before
    return cursor.take(_EVEN) is not None


def _faces(cursor: Cursor, verb: Phrasebook[bool], those: Phrasebook[bool]) -> bool:
    """Move past "k the knit sts" or "p all purl sts"."""
    if not cursor.take(verb):
        return False
    cursor.take(_ALL)
    return cursor.take(those) is not None

"""Stitches named by the fabric they go on with: "patt 20", "rib to last 5 sts", "work sts as they appear".

Each is worked one for one, which is all that is known of it.
"""

from __future__ import annotations

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, spelt, ways
from counterpane.craft.rows.tree import OpenRepeat, Work

PATTERN = "patt"
_LEAD = phrases("in", "keep in", *ways("work|cont|continue", "|even|across", "in"), "work")
_SET = phrases("est", "established", "set", "the", "the est", "the established", "same", "the same")
_FEW = "1|2|3|4|5|6"
_RIBS: tuple[tuple[str, ...], ...] = (
    (
        "|".join(spelt("k|knit", _FEW) + [f"k{k}" for k in _FEW.split("|")]),
        "|,|and|, and|/",
        "|".join(spelt("p|purl", _FEW) + [f"p{p}" for p in _FEW.split("|")]),
    ),
    (_FEW, "x|by|and|/", _FEW),
    ("|".join(f"{form}" for k in _FEW.split("|") for p in _FEW.split("|") for form in (f"k{k}p{p}", f"{k}x{p}")),),
)
"""The names of ribs, as alternatives of words that follow each other: "k2, p2", "2 by 2", "k2p2"."""
_NAMES = phrases(
    *ways("|main|border|lace|cable|charted|chart", "patt|pattern|pat"),
    *ways("|lace|cable|charted", "panel"),
    *ways("|lace|cable", "chart", "|a|b|c|d|e|f|1|2|3|4|5|6"),
    *ways("rib|ribbing"),
    *(each for rib in _RIBS for each in (*ways(*rib, "rib|ribbing"), *ways("rib|ribbing", "|of|in", *rib))),
    *ways("garter|g|st|stocking|stockinette|seed", "st|stitch"),
    *ways("|double", "moss", "|st|stitch"),
    *ways("seed|moss|garter", "sts|stitches"),
    *("garter", "stockinette", "seed", "basket weave", "basketweave"),
)
_ROW_OF = phrases(*ways("|next|first", "row|rnd|round", "of"))
_AS_SET = phrases("as set", "as est", "as established", "as before", "correctly", "throughout")
_BY_ITSELF = phrases(*ways("as|work as|cont as|continue as", "set|est|established"), "work as before")
_ROW_VERBS: Phrasebook[str] = Phrasebook(
    [
        *((way, "k") for way in ("knit", "k")),
        *((way, "p") for way in ("purl", "pearl", "seam", "p")),
        *((way, "") for way in ("work", "make")),
    ]
)
_ROW_NAMES: Phrasebook[str] = Phrasebook(
    [
        *((way, "k") for way in ways("plain|knit|knitted", "|knitting")),
        ("knitting", "k"),
        *((way, "p") for way in ways("purl|purled|pearl|pearled|seam|seamed|back-stitch|seam-stitch", "|knitting")),
        *((way, "p") for way in ("purling", "pearling", "seaming")),
    ]
)
_ALL_PLAIN: Phrasebook[str] = Phrasebook(
    [
        *((way, "k") for way in ways("all|all in|entirely|the rest|the remainder", "plain|plain knitting|knit")),
        *((way, "p") for way in ways("all|all in|entirely|the rest|the remainder", "purl|purled|pearl|seamed|purling")),
    ]
)
_ROW_WORDS = frozenset({"row", "rnd", "round"})
_ROWS = phrases(*ways("row|rows|round|rounds|rnd|rnds", "|plain"))
_ROW_OPENINGS = _ALL_PLAIN.openings | _ROW_VERBS.openings | _ROW_NAMES.openings | {"a", "another", "every", "each"}
_ARTICLES = frozenset("a the this every each another".split())
_ROW_FOLLOWING = (
    _ARTICLES
    | _ROW_NAMES.openings
    | _ROWS.openings
    | {"plain", "in", "knitting", "rest", "remainder", "purled", "seamed"}
)
_OPENINGS = frozenset().union(*(book.openings for book in (_LEAD, _SET, _NAMES, _BY_ITSELF)))
RIB_OPENINGS = frozenset(f"k{number}" for number in range(1, 7))
MOSS = ("UK moss stitch (US seed stitch)", "US moss stitch (UK double moss stitch)")
_ALL = phrases("all", "the", "all the", "all of the")
_AND = phrases("and", ",", "&", ", and", ";", "; and")
_KNIT, _PURL = phrases("k", "knit"), phrases("p", "purl", "pearl", "seam")
_SHOWN = phrases(
    *ways("k|knit|knitted|plain|p|purl|purled|pearled|seamed", "sts|stitches|ones"),
    *("knits", "purls", "knitted", "purled", "pearled", "seamed", "rest", "others", "remaining", "remaining sts"),
)
_APPEAR = phrases(*ways("as they", "appear|face|face you|present|present themselves|come|lie"), "as set")
_WORK = phrases("work", "k and p", "knit and purl", "k & p")
_ACROSS = frozenset({"k", "knit", "p", "purl", "work"})
_STITCHES = phrases(*ways("|all|the|all the", "sts|stitches"))
_EVEN = phrases(*ways("work", "even|straight|across"))


def take_fabric(cursor: Cursor) -> bool:
    """Move past the name of a fabric and the words around it: "work in est patt", "in rib", "moss st as set"."""
    if cursor.word() not in _OPENINGS:
        return False
    before = cursor.at
    if cursor.take(_BY_ITSELF):
        return True
    if cursor.take(_LEAD):
        _take_row_of(cursor)
    cursor.take(_SET)
    if cursor.take(_NAMES):
        cursor.take(_AS_SET)
        return True
    cursor.at = before
    return False


def _take_row_of(cursor: Cursor) -> None:
    """Move past the row of a pattern or chart that is worked: "row 3 of", "next row of"."""
    if cursor.take(_ROW_OF) or cursor.word() not in _ROW_WORDS or cursor.number(1) is None or cursor.word(2) != "of":
        return
    cursor.at += 3


def take_whole_row(cursor: Cursor) -> OpenRepeat | None:
    """Move past a row named by its one stitch: "knit three plain rows", "a plain row", "one row of purling"."""
    if cursor.word() not in _ROW_OPENINGS and cursor.number() is None:
        return None
    if cursor.number(1) is None and cursor.word(1) not in _ROW_FOLLOWING:
        return None
    before, place = cursor.at, cursor.place
    if key := cursor.take(_ALL_PLAIN):
        return OpenRepeat((Work(key, place=place),), 0, plain=True, place=place)
    verb = cursor.take(_ROW_VERBS)
    cursor.take_any(_ARTICLES)
    number = cursor.take_number()
    first = cursor.take(_ROWS) is not None
    if first:
        cursor.take_word("of", "in")
    named = cursor.take(_ROW_NAMES)
    key = named or verb
    if not key or not (first or cursor.take(_ROWS)) or not (named or number or first or before + 1 < cursor.at):
        cursor.at = before
        return None
    return OpenRepeat((Work(key, place=place),), 0, plain=True, place=place)


def take_across(cursor: Cursor) -> bool:
    """Move past words for a whole row as it comes: "k the knit sts and p the purl sts", "work sts as they appear"."""
    if cursor.word() not in _ACROSS or cursor.number(1) is not None or cursor.pausing_after():
        return False
    before = cursor.at
    for first, then in ((_KNIT, _PURL), (_PURL, _KNIT)):
        if _faces(cursor, first) and cursor.take(_AND) and _faces(cursor, then):
            cursor.take(_APPEAR)
            return True
        cursor.at = before
    if cursor.take(_WORK):
        cursor.take(_STITCHES)
        if cursor.take(_APPEAR):
            return True
    cursor.at = before
    found = cursor.take(_EVEN) is not None
    return found and (take_fabric(cursor) or True)


def _faces(cursor: Cursor, verb: Phrasebook[bool]) -> bool:
    """Move past "k the knit sts", "p all purl sts" or "purl all the rest"."""
    if not cursor.take(verb):
        return False
    cursor.take(_ALL)
    return cursor.take(_SHOWN) is not None

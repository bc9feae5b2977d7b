"""How a stitch is taken, behind its name: through the back, in front, over what the row below shows, with which side.

The old words for "through the back loop" are "from behind", "taken at the back", "taking the back of the stitches",
"slantways" (Mee 1846, Dillmont 1886); "taken in front" is the ordinary way.
"""

from __future__ import annotations

from collections.abc import Mapping

from counterpane.craft.rows.cursor import STITCH_WORDS, Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, Said, phrases, ways

MANNERS: Mapping[str, tuple[Said, ...]] = {
    "kwise": (
        *("kwise", "knitwise", "knit-wise", "k wise", "k-wise", "kw", "as to knit", "knitways", "knitway", "plainwise"),
        *ways("as|as if|as though", "to|for|about to", "knit|k|k2tog|knit it"),
        *ways("as if|as for|as in|as though|as if for", "knitting|plain knitting"),
    ),
    "pwise": (
        *(
            "pwise",
            "purl-wise",
            "purlwise",
            "p wise",
            "p-wise",
            "pw",
            "as to purl",
            "purlways",
            "purlway",
            "the purlway",
            "pearlwise",
            "seamwise",
        ),
        *ways("as|as if|as though", "to|for|about to", "purl|p|p2tog|pearl|seam|purl it"),
        *ways("as if|as for|as in|as though|as if for", "purling|pearling|seaming"),
    ),
    "wyif": (
        *("wyif", "wyf", "yif"),
        *ways("|with", "|the", "yarn|wool|thread|cotton", "|held", "in|at|to", "|the", "front"),
        *ways(
            "keeping|keep|with", "|the", "yarn|wool|thread|cotton|silk", "in front of|before", "|the", "needle|pin|it"
        ),
        *ways("keeping|keep|with", "|the", "yarn|wool|thread|cotton|silk", "in front|forward|in the front|before"),
    ),
    "wyib": (
        *("wyib", "wyb", "yib"),
        *ways("|with", "|the", "yarn|wool|thread|cotton", "|held", "in|at|to", "|the", "back"),
        *ways(
            "keeping|keep|with",
            "|the",
            "yarn|wool|thread|cotton|silk",
            "behind|at the back of",
            "|the",
            "needle|pin|it",
        ),
        *ways("keeping|keep|with", "|the", "yarn|wool|thread|cotton|silk", "behind|at the back|in the back|back"),
    ),
}
MANNER_BOOK: Phrasebook[str] = Phrasebook(
    (("|and|,|&", *((word,) if isinstance(word, str) else word)), manner)
    for manner, words in MANNERS.items()
    for word in words
)
_TAKEN = phrases(
    *ways("taken|take|taking", "|it|them|it off|them off|off"),
    *(
        "worked",
        "knitted",
        "knit",
        "purled",
        "knitting it",
        "knitting them",
        "inserting the needle",
        "putting the needle",
    ),
)
_BACK = phrases(
    *("tbl", "-tbl", "slantways", "slantwise", "crossed", "crosswise", "from behind", "behind"),
    *ways("at|from|in|into|through|by", "|the", "back"),
    *ways("the", "back|backs", "of"),
    *ways("with", "|the", "back"),
)
_PART = phrases(
    *("part", "part of it", "loop", "loops", "side"),
    *ways("|of|of the|of next|of the next|the", "st|stitch|sts|stitches|loop|loops"),
)
_FRONT = phrases(
    *ways("at|from|in", "|the", "front", "|part|of the needle|of the pin|loop"),
    *ways("in|after", "the", "usual|ordinary|common", "way|manner"),
    *("as usual", "without knitting it", "without knitting", "without working it", "unworked", "unknitted", "off"),
)
# What the row below shows under a stitch: it tells where to work and changes nothing.
_SHOWN = frozenset(
    "purled purl pearled pearl seamed seam knitted knit plain slipped hole holes made decreased decrease over overs yo "
    "loop loops".split()
)
_OF_ROW = phrases(
    *ways("|of|in", "the", "previous|preceding|last|former|foregoing", "row|round"),
    *ways("in|of", "|the", "row|round", "below|before"),
)
AFTER = _TAKEN.openings | _BACK.openings | _FRONT.openings | {"over", "on", "upon", "above"}
AFTER_COMMA = _TAKEN.openings | {"keeping", "in", "slantways", "as", "without", "with", "from", "at", "through"}


def take_back(cursor: Cursor) -> bool:
    """Move past words for "through the back": "taken from behind", "taking the back of the stitches"."""
    return _manner(cursor, _BACK)


def take_front(cursor: Cursor) -> bool:
    """Move past words for the ordinary way: "taken in front", "in the usual manner"."""
    return _manner(cursor, _FRONT)


def _manner(cursor: Cursor, book: Phrasebook[bool]) -> bool:
    before = cursor.at
    cursor.take_word(",")
    cursor.take(_TAKEN)
    if cursor.take(book) is None:
        cursor.at = before
        return False
    cursor.take(_PART)
    return True


def take_shown(cursor: Cursor) -> bool:
    """Move past "over the 2 purled", "on the purled stitches of the previous row", "over the holes of the 8th row"."""
    before = cursor.at
    if not cursor.take_word("over", "on", "upon", "above") or not cursor.take_word("the", "those", "these"):
        cursor.at = before
        return False
    cursor.take_number()
    if not cursor.take_any(_SHOWN):
        cursor.at = before
        return False
    cursor.take_any(STITCH_WORDS)
    _of_row(cursor)
    return True


def _of_row(cursor: Cursor) -> None:
    """Move past "of the 8th row" or "of the previous row"."""
    if cursor.take(_OF_ROW) or cursor.word() not in ("of", "in"):
        return
    ahead = 1 + (cursor.word(1) == "the")
    ordinal = cursor.number(ahead) is not None and cursor.word(ahead + 1) in ("st", "nd", "rd", "th")
    if ordinal and cursor.word(ahead + 2) in ("row", "round", "rnd"):
        cursor.at += ahead + 3

"""Prose within a row that works no stitch: "keeping the wool before the needle", "by which you make a loop stitch".

The grammar is narrow. A remark begins with one of the leads below and goes on to the next sign. It holds no number but
one before a needle, and, unless its lead says what a stitch already worked does, no verb of working. Anything else is
left to be reported.
"""

from __future__ import annotations

from collections.abc import Sequence

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, ways
from counterpane.craft.rows.stops import take_stop
from counterpane.craft.rows.words import Token

_FREE, _BOUND = True, False
_LEADS: Phrasebook[bool] = Phrasebook(
    [
        *((way, _FREE) for way in ways("so as|so|in order", "to|that")),
        *((way, _FREE) for way in ways("by|of|in", "which|this means|doing this|this manner")),
        *(
            (way, _FREE)
            for way in ways("this|these|that|it|which", "makes|make|forms|form|gives|give|will|is|are|brings")
        ),
        *((way, _FREE) for way in ways("thus|thereby|so", "making|forming|giving|bringing")),
        *((way, _FREE) for way in ways("by", "taking|picking|lifting|knitting", "|up")),
        *((way, _BOUND) for way in ways("|and", "taking|take", "|great", "care")),
        *((way, _BOUND) for way in ways("being|be", "careful|very careful")),
        *((way, _BOUND) for way in ways("|always|and", "keeping|keep", "the|it|this|that|your|them")),
        *((way, _BOUND) for way in ways("observing|observe|remembering|remember|minding|mind", "to|that|not")),
        *((way, _BOUND) for way in ways("|not", "too", "tight|tightly|loose|loosely")),
        *((way, _BOUND) for way in ways("as", "before|usual|above|directed|described|shown|already directed")),
        *((way, _BOUND) for way in ways("in", "the", "usual|ordinary|same|common", "way|manner")),
        *((way, _BOUND) for way in ways("the|all the|all", "rows|rounds", "|are|being", "the same|alike")),
        *(
            (way, _BOUND)
            for way in ways("every|each", "row|round", "is|being", "worked|knitted|knit", "the same|alike")
        ),
        *((way, _BOUND) for way in ways("picking|pick", "up", "|the", "wraps|wrap")),
        *(
            (way, _BOUND)
            for way in ("draw up the loop", "drawing it out", "loosely", "tightly", "very loosely", "pull tight")
        ),
    ]
)
_WORKING = frozenset(
    "k p knit purl pearl seam sl slip yo k2tog p2tog ssk narrow repeat rep together turn cast bind "
    "except over increase "
    "increasing decrease decreasing make".split()
)
_NEEDLES = frozenset("needle needles pin pins".split())
_LONGEST = 24
# The rows begin again, which is no stitch of this one.
_BEGIN_AGAIN = phrases(
    *ways(
        "|and|then|and then|and must|you",
        "begin|commence|start|recommence",
        "|again|again from|at|from|with|the pattern again|again at|again with",
    ),
    *ways("|and|then|and then", "begin|commence|start|repeat", "|again", "from|at|with|as at"),
)
_FIRST_ROW = phrases(
    *ways(
        "|, as at|at|from|with|again from",
        "|the",
        "first|1st|beginning",
        "|of the",
        "row|round|pattern|needle",
        "|again",
    ),
    *ways("|, as at|at|from", "|the", "beginning", "|of row|of round|of the row|of the round|of the pattern"),
)
OPENINGS = _LEADS.openings | _BEGIN_AGAIN.openings | {"the"}


def take_prose(cursor: Cursor) -> bool:
    """Move past a remark that works no stitch; no move where the words are not one."""
    before = cursor.at
    if _which_rows(cursor):
        return True
    free = cursor.take(_LEADS)
    if free is None:
        return False
    start = cursor.at
    if take_stop(cursor):
        cursor.at = before  # What goes on "to end" is work.
        return False
    while cursor and cursor.token.kind in ("word", "number") and cursor.at - start <= _LONGEST:
        cursor.at += 1
    if not (cursor.pausing or cursor.token.kind == "open") or not _works_nothing(cursor.run[start : cursor.at], free):
        cursor.at = before
        return False
    return True


def _which_rows(cursor: Cursor) -> bool:
    """Move past "the 8 first rows--" and "the first 6 rows:" at the beginning of a row, which name it once more."""
    words = [cursor.word(ahead) for ahead in range(5)]
    if words[0] != "the" or "first" not in words[1:3] or words[3] not in ("row", "rows", "round", "rounds"):
        return False
    if cursor.at or words[4] not in ("-", ":", ","):
        return False
    cursor.at += 4
    return True


def take_begin_again(cursor: Cursor) -> bool:
    """Move past "and then begin with the first row again" at the end of a row."""
    before = cursor.at
    if cursor.take(_BEGIN_AGAIN) and cursor.take(_FIRST_ROW) and cursor.pausing:
        return True
    cursor.at = before
    return False


def _works_nothing(words: Sequence[Token], free: bool) -> bool:
    """Tell whether words give no order: no number of stitches, and no verb of working unless they are free."""
    for index, token in enumerate(words):
        behind = words[index + 1].norm if index + 1 < len(words) else ""
        if token.value is not None and behind not in _NEEDLES:
            return False
        if not free and token.norm in _WORKING and not (token.norm == "over" and behind in ("the", "it")):
            return False
    return True

"""What is worked in a row besides its stitches: bind-off, cast-on, cable needle, markers, turns, passing over."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Literal

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, ways
from counterpane.craft.rows.tree import BindOff, CastOn, Hold, Marker, Node, Place, Turn, Work

ADVERBS = frozenset({"loosely", "firmly", "tightly", "carefully", "very"})
WHICH = phrases(*ways("|the", "next|first|last|following|foll|rem|remaining|all"), "the", "all rem", "all remaining")
MANNERS: Mapping[str, tuple[str, ...]] = {
    "kwise": ("kwise", "knitwise", "k wise", "k-wise", "kw", "as to knit", *ways("as if to", "knit|k|k2tog")),
    "pwise": ("pwise", "purlwise", "p wise", "p-wise", "pw", "as to purl", *ways("as if to", "purl|p|p2tog")),
    "wyif": ("wyif", "wyf", "yif", *ways("|with", "|the", "yarn", "in|at", "|the", "front")),
    "wyib": ("wyib", "wyb", "yib", *ways("|with", "|the", "yarn", "in|at", "|the", "back")),
}
MANNER_BOOK: Phrasebook[str] = Phrasebook(
    (f"{before} {word}", manner)
    for manner, words in MANNERS.items()
    for word in words
    for before in ("", "and", ",", "&")
)
_BIND_OFF = phrases("bind off", "cast off", "bo", "bind-off", "cast-off")
_IN_PATTERN = phrases(
    *ways("|in", "patt|pattern|rib|ribbing|pat"), "in garter st", "in garter stitch", "as set", "in moss st"
)
_AT_EDGE = phrases(*ways("at", "|the", "beg|beginning|start", "of", "|the|this|next|the next", "row|rnd|round"))
_CAST_ON = phrases("cast on", "co", "cast-on")
_TO_CN = phrases(*ways("to|onto|on|on to", "|a|the", "cn|c n|cable needle"))
_HOLD = phrases(*ways("|and|,|&|;", "hold|leave|keep|held", "|it|them"))
_WHERE: Phrasebook[Literal["front", "back"]] = Phrasebook(
    [
        *((way, "front") for way in ways("in|at|to", "|the", "front", "|of work|of the work")),
        *(
            (way, "back")
            for way in (*ways("in|at|to", "|the", "back", "|of work|of the work"), "behind", "behind work")
        ),
    ]
)
_MARKERS: Phrasebook[Literal["place", "slip", "remove"]] = Phrasebook(
    [
        *((way, "place") for way in ("pm", *ways("place|pl", "|a|the", "marker|m|st marker|stitch marker"))),
        *((way, "slip") for way in ("sm", "slm", *ways("sl|slip|pass", "|the", "marker|m"))),
        *((way, "remove") for way in ("rm", *ways("remove", "|the", "marker|m"))),
    ]
)
_TURN = phrases("turn", "turn work", "turn the work")
_OVER = frozenset({"it", "both", "them", "this", "all", "the"})
_LONGEST_PASS = 8
_PASSED = frozenset("the sl slip slipped st sts stitch stitches preceding first 2 1 both last that loop".split())


def _bind_off(cursor: Cursor, place: Place) -> Node | None:
    """Read "bind off 3 sts", "cast off in patt", "BO all sts loosely", "cast off 4 sts at beg of row"."""
    if not cursor.take(_BIND_OFF):
        return None
    manner = _bind_off_manner(cursor)
    cursor.take(WHICH)
    times = cursor.take_number()
    cursor.take_word("rem", "remaining")
    cursor.take_stitches()
    manner = _bind_off_manner(cursor) or manner
    cursor.take(_AT_EDGE)
    return BindOff(times, manner, place=place)


def _bind_off_manner(cursor: Cursor) -> str:
    cursor.take_any(ADVERBS)
    manner = "in pattern" if cursor.take(_IN_PATTERN) else cursor.take(MANNER_BOOK) or ""
    cursor.take_any(ADVERBS)
    return manner


def _cast_on(cursor: Cursor, place: Place) -> Node | None:
    """Read "cast on 3 sts"."""
    before = cursor.at
    if not cursor.take(_CAST_ON):
        return None
    number = cursor.take_number()
    if number is None:
        cursor.at = before
        return None
    cursor.take_word("new", "more", "extra")
    cursor.take_stitches()
    cursor.take(_AT_EDGE)
    return CastOn(number, place)


def _marker(cursor: Cursor, place: Place) -> Node | None:
    act = cursor.take(_MARKERS)
    return Marker(act, place) if act else None


def _turn(cursor: Cursor, place: Place) -> Node | None:
    return Turn(place) if cursor.take(_TURN) else None


def _hold(cursor: Cursor, place: Place) -> Node | None:
    """Read "sl next 3 sts to cn and hold in front", "place 2 sts on cable needle, hold at back"."""
    before = cursor.at
    cursor.at += 1
    cursor.take(WHICH)
    number = cursor.take_number()
    cursor.take_stitches()
    if cursor.take(_TO_CN):
        cursor.take(_HOLD)
        where = cursor.take(_WHERE)
        if where is not None:
            return Hold(1 if number is None else number, where, place)
    cursor.at = before
    return None


def _pass_over(cursor: Cursor, place: Place) -> Node | None:
    """Read "pass the slipped st over", "pass 2 slipped sts over both" in any of its wordings."""
    ahead = next((n for n in range(1, _LONGEST_PASS) if cursor.word(n) == "over"), None)
    if ahead is None or not all(cursor.word(n) in _PASSED for n in range(1, ahead)):
        return None
    two = any(cursor.word(n) in ("2", "both", "sts", "stitches") for n in range(1, ahead))
    cursor.at += ahead + 1
    if cursor.take_any(_OVER):
        cursor.take_stitches()
    return Work("p2sso" if two else "psso", place=place)


_Reader = Callable[[Cursor, Place], Node | None]
_READERS: Mapping[str, tuple[_Reader, ...]] = {
    **dict.fromkeys(_BIND_OFF.openings, (_bind_off,)),
    **dict.fromkeys(("co", "cast-on"), (_cast_on,)),
    "cast": (_bind_off, _cast_on),
    **dict.fromkeys(("pm", "pl", "sm", "slm", "rm", "remove"), (_marker,)),
    **dict.fromkeys(("sl", "slip", "place"), (_marker, _hold)),
    "put": (_hold,),
    "turn": (_turn,),
    "pass": (_marker, _pass_over),
    **dict.fromkeys(("pull", "lift", "draw"), (_pass_over,)),
}


def take_working(cursor: Cursor) -> Node | None:
    """Move past one working that is no stitch and return it; None, without a move, where none begins."""
    readers = _READERS.get(cursor.word())
    if readers is None:
        return None
    place = cursor.place
    return next((node for read in readers if (node := read(cursor, place)) is not None), None)

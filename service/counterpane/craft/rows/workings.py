"""What is worked in a row besides its stitches: bind-off, cast-on, cable needle, markers, turns, passing over."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Literal

from counterpane.craft.rows import cables, passes
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.manners import MANNER_BOOK
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, ways
from counterpane.craft.rows.tree import BindOff, CastOn, Marker, Node, OpenRepeat, Place, Turn

ADVERBS = frozenset({"loosely", "firmly", "tightly", "carefully", "very"})
WHICH = phrases(*ways("|the", "next|first|last|following|foll|rem|remaining|all"), "the", "all rem", "all remaining")
_BIND_OFF = phrases("bind off", "cast off", "chain off", "bo", "b/o", "bind-off", "cast-off")
_IN_PATTERN = phrases(
    *ways("|in", "patt|pattern|rib|ribbing|pat"), "in garter st", "in garter stitch", "as set", "in moss st"
)
_AT_EDGE = phrases(
    *ways("at", "|the", "beg|beginning|start|end", "of", "|the|this|next|the next", "row|rnd|round"),
    *ways("at", "|the", "beg|beginning|start|end"),
)
_CAST_ON = phrases("cast on", "co", "c/o", "cast-on")
MARKERS: Phrasebook[Literal["place", "slip", "remove"]] = Phrasebook(
    [
        *((way, "place") for way in ("pm", *ways("place|pl", "|a|the", "marker|m|st marker|stitch marker"))),
        *((way, "slip") for way in ("sm", "slm", *ways("sl|slip|pass", "|the", "marker|m"))),
        *((way, "remove") for way in ("rm", *ways("remove", "|the", "marker|m"))),
    ]
)
_TURN = phrases(*ways("turn", "|work|the work|round|back|the needles"))
_WRAP = phrases(
    *(
        "w & t",
        "w and t",
        "w + t",
        "wrap & turn",
        "wrap and turn",
        "wrap next st and turn",
        "wrap the next st and turn",
    ),
    *ways("wrap|wrap and turn", "|the", "next st|next stitch", "|, turn|and turn| , turn work|, turn the work"),
)
_ALL_BUT = phrases(
    *ways("all", "|sts|the sts|the stitches|stitches", "but|except|save|to"), *ways("until|till", "there are|only|")
)


def _bind_off(cursor: Cursor, place: Place) -> Node | None:
    """Read "bind off 3 sts", "cast off in patt", "BO all sts loosely", "cast off 4 sts at beg of row"."""
    if not cursor.take(_BIND_OFF):
        return None
    manner = _bind_off_manner(cursor)
    if cursor.take(_ALL_BUT):
        return _all_but(cursor, manner, place)
    cursor.take(WHICH)
    times = cursor.take_number()
    cursor.take_word("rem", "remaining")
    cursor.take_stitches()
    manner = _bind_off_manner(cursor) or manner
    cursor.take(_AT_EDGE)
    return BindOff(times, manner, place=place)


def _all_but(cursor: Cursor, manner: str, place: Place) -> Node | None:
    """Read "cast off all but 7": the stitch left on the right needle is the first of the seven that are worked next."""
    number = cursor.take_number()
    if number is None:
        return None
    cursor.take_stitches()
    cursor.take_word("remain", "remaining", "left")
    return OpenRepeat((BindOff(1, manner, joined=True, place=place),), number, plain=True, place=place)


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
    act = cursor.take(MARKERS)
    return Marker(act, place) if act else None


def _turn(cursor: Cursor, place: Place) -> Node | None:
    return Turn(place=place) if cursor.take(_TURN) else None


def _wrap(cursor: Cursor, place: Place) -> Node | None:
    return Turn(wrapped=True, place=place) if cursor.take(_WRAP) else None


_Reader = Callable[[Cursor, Place], Node | None]
_OWN: Mapping[str, tuple[_Reader, ...]] = {
    **dict.fromkeys(_BIND_OFF.openings, (_bind_off,)),
    **dict.fromkeys(("co", "c/o", "cast-on"), (_cast_on,)),
    "cast": (_bind_off, _cast_on),
    **dict.fromkeys(("pm", "pl", "sm", "slm", "rm", "remove", "sl", "slip", "place", "pass"), (_marker,)),
    "turn": (_turn,),
    **dict.fromkeys(_WRAP.openings, (_wrap,)),
}
_READERS: Mapping[str, tuple[_Reader, ...]] = {
    word: (
        *((passes.take_pass_over,) if word in passes.VERBS else ()),
        *_OWN.get(word, ()),
        *((cables.take_hold,) if word in cables.HOLDING_VERBS else ()),
    )
    for word in {*_OWN, *cables.HOLDING_VERBS, *passes.VERBS}
}


def take_working(cursor: Cursor) -> Node | None:
    """Move past one working that is no stitch and return it; None, without a move, where none begins."""
    readers = _READERS.get(cursor.word())
    if readers is None:
        return None
    place = cursor.place
    return next((node for read in readers if (node := read(cursor, place)) is not None), None)

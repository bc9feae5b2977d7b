"""The yarn brought forward, laid over the needle or taken back: "throw the cotton forward", "turn over twice".

What a yarn brought forward makes depends on the stitches around it: `forward.py` decides. Wordings of English handbooks
of 1840 to 1920 (Lambert 1843, Mee 1846, Dillmont 1886) beside those of today.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, TypeAlias

from counterpane.craft.rows.cursor import STITCH_WORDS, Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, ways

Direction: TypeAlias = Literal["over", "forward", "back"]
YARNS = frozenset("wool wools yarn thread cotton silk worsted".split())
_VERBS = frozenset(
    "bring bringing brought throw throwing put putting pass passing cast casting turn turning take taking wind winding "
    "wrap wrapping lay laying draw drawing carry carrying twist twisting get getting".split()
)
_THROWN = frozenset("cast casting turn turning throw throwing wind winding".split())
_ROUND = "round|around|over|about|on"
_NEEDLE = "needle|pin|right needle|right hand needle|right-hand needle|right pin|right hand pin|right-hand pin"
_IN_FRONT = "forward|forwards|fwd|in front|before|between"
_DIRECTIONS: Phrasebook[Direction] = Phrasebook(
    [
        *((way, "over") for way in ways("over", "|again|it|and forward")),
        *((way, "over") for way in ways("round|around", "|again")),
        *((way, "over") for way in ways("|quite|right|once", _ROUND, "the|your", _NEEDLE)),
        *((way, "over") for way in ways("|quite|right|once", _ROUND, _NEEDLE)),
        *((way, "over") for way in ways("forward|fwd|in front", "and", _ROUND, "|the", "needle|pin")),
        *((way, "forward") for way in ways(_IN_FRONT, "|of the needle|of the pin|of needle|the needle|the needles")),
        *((way, "forward") for way in ways("to", "|the", "front", "|of the needle|of the work")),
        *((way, "back") for way in ways("back|backward|backwards|behind", "|again|the needle|of the needle|the work")),
        *((way, "back") for way in ways("to|at", "|the", "back", "|again|of the needle|of the work|of the pin")),
    ]
)
# "Turning it round the needle" and "so as to bring it in front again" tell that the yarn goes once round the needle.
_JOINED = "|,|and|, and|so as to|, so as to|in order to|, in order to|to|, to"
_ROUND_AGAIN = phrases(
    *ways(_JOINED, "turning|turn|winding|wind|passing|pass|putting|put", "it", "round|over", "the needle|the pin"),
    *ways(_JOINED, "bring|bringing", "it", "in front|forward|to the front", "|again"),
    *ways("|,", "so as to|in order to|to", "make|form", "|a|an|another", "|new|loop|open", "st|stitch|loop"),
)
# Where a modern row says these, nothing but the yarn's place is meant (names of the vocabulary).
_ONLY_MOVED = frozenset({"yarn"})
_LOOPS = frozenset({"over", "overs"})
_LOOP_NAMES = phrases("yo", "yos", "yarn over", "yarn-over", "yfwd", "yrn")
_DOUBLE = phrases("double", "a double", "2 times", "twice")
YARN_OPENINGS = _VERBS | YARNS | _LOOPS | {"the", "double", "a", "twice", "make", "making"}


@dataclass(frozen=True, slots=True)
class YarnMove:
    """Where the yarn goes, and how often it is laid over the needle; `told` in words that no pattern of today has."""

    where: Direction
    times: int = 1
    told: bool = False


def take_yarn_move(cursor: Cursor) -> YarnMove | None:
    """Move past words that bring the yarn somewhere; None, without a move, where none do."""
    before = cursor.at
    found = _moved(cursor) or _thrown(cursor) or _made(cursor) or _overs(cursor)
    if found is None:
        cursor.at = before
    return found


def _moved(cursor: Cursor) -> YarnMove | None:
    """Read "bring the green wool forward", "pass the cotton twice round the pin", "thread forward"."""
    before = cursor.at
    verb = cursor.take_any(_VERBS)
    cursor.take_word("the", "your")
    if verb and cursor.word() not in YARNS and cursor.word(1) in YARNS and cursor.number() is None:
        cursor.at += 1
    name = cursor.word()
    if not cursor.take_any(YARNS):
        cursor.at = before
        return None
    times = cursor.take_times()
    direction = cursor.take(_DIRECTIONS)
    if direction is None or (direction != "over" and name in _ONLY_MOVED and cursor.word(-1) in ("front", "back")):
        cursor.at = before
        return None
    return _ended(cursor, direction, times, name not in _ONLY_MOVED)


def _thrown(cursor: Cursor) -> YarnMove | None:
    """Read "turn over", "cast over twice", "throw forward"."""
    if cursor.word() not in _THROWN or cursor.word(1) != "over" or cursor.word(2) in ("the", "work"):
        return None
    cursor.at += 2
    return _ended(cursor, "over", None, told=True)


def _made(cursor: Cursor) -> YarnMove | None:
    """Read "make 2", which is more than one loop, or one loop wrapped so often: the reader says that it is in doubt."""
    number = cursor.number(1)
    if cursor.word() not in ("make", "making") or number is None or number < 2:
        return None
    cursor.at += 2
    cursor.take_any(STITCH_WORDS)
    return YarnMove("over", number, told=True)


def _overs(cursor: Cursor) -> YarnMove | None:
    """Read "over", "2 overs", "double over", "over twice", "1 over"."""
    number = cursor.take_number()
    doubled = number is None and cursor.take(_DOUBLE)
    named = cursor.take_any(_LOOPS) or (doubled and cursor.take(_LOOP_NAMES))
    if not named or cursor.word() in ("the", "it"):
        return None
    return _ended(cursor, "over", 2 if doubled else number, told=False)


def _ended(cursor: Cursor, direction: Direction, times: int | None, told: bool) -> YarnMove:
    """Read how often, and that the yarn comes to the front again."""
    if times is None:
        times = cursor.take_times()
        if times is not None:
            cursor.take(_DIRECTIONS)
    if direction != "back" and cursor.take(_ROUND_AGAIN):
        direction = "over"
    return YarnMove(direction, 1 if times is None else times, told)

"""What follows the name of a stitch and belongs to it: its manner, "2 together", "tbl", the stitch it goes into."""

from __future__ import annotations

from dataclasses import replace

from counterpane.craft.rows.cables import FROM_CN
from counterpane.craft.rows.colours import COLOUR_WORDS
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.gathers import INTO, Into
from counterpane.craft.rows.lexicon import GERUNDS, Lexicon
from counterpane.craft.rows.manners import AFTER, MANNER_BOOK, MANNERS, take_back, take_front, take_shown
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.togethers import TOGETHER
from counterpane.craft.rows.tree import Work
from counterpane.craft.rows.workings import ADVERBS
from counterpane.craft.rows.yarns import take_yarn_move

_BELOW = phrases("below", *ways("in|into", "|the|next", "st|stitch|row|loop", "below"))
_OF_NEXT = "|of st|of next st|of the next st|of stitch|of next stitch|of the next stitch|of same st|loop|loops"
_FRONT_BACK = phrases(
    "f & b",
    *ways("|in|into|through|in the|into the", "front", "and|&", "|the|in", "back", _OF_NEXT),
    *ways(
        "in|into|in the|into the",
        "front",
        "and|& |then|, then|and then",
        "1|again|1 in|1 into|in|into|again in|again into",
        "|the",
        "back",
        _OF_NEXT,
    ),
)
_THREE = phrases(*ways("|in|into|in the|into the", "front", ",", "|the", "back", "and|&", "|the", "front", _OF_NEXT))
_TWICE_INTO = phrases(*ways("twice|2 times", "in|into", "|the", "next|same|first|foll|following", "st|stitch|loop"))
_EACH_OF = phrases(
    *ways("in|into", "each of", "|the", "|next|foll|following"), *ways("in|into", "|the", "next|foll|following")
)
_WRAPPED = phrases("wrapping yarn twice", "wrapping the yarn twice", "wrapping yarn 2 times")
_ONE_BY_ONE = phrases("1 at a time", "1 by 1", "separately", "individually", "singly")
FOLLOWING = frozenset().union(
    *(book.openings for book in (_BELOW, _FRONT_BACK, _THREE, _EACH_OF, _WRAPPED, _ONE_BY_ONE, INTO, FROM_CN)),
    *(AFTER, ADVERBS, COLOUR_WORDS, TOGETHER, ("once", "twice", "thrice", "for", "by")),
)
_MADE = frozenset({"m1", "yo", "inc"})


def suffixes(
    cursor: Cursor, lexicon: Lexicon, node: Work, keys: tuple[str, ...]
) -> tuple[Work, tuple[str, ...], Into | None]:
    """Move past all that may follow a stitch and put it into the node; the stitch it goes into is given beside it."""
    if node.stitch == "sl":
        node = replace(node, manner=_manners(cursor, node.manner))
    node, keys = _other_stitch(cursor, lexicon, node, keys)
    each = _each_of(cursor) if node.times == 1 else None
    into = cursor.take(INTO)
    if (into or each) and node.stitch == "inc" and "kfb" in lexicon.vocabulary.stitches:
        node = replace(node, stitch="kfb")
    node = replace(node, times=each) if each else node
    cursor.take_any(ADVERBS)
    if cursor.take(FROM_CN):
        node = replace(node, held=True)
    elif not take_shown(cursor):
        take_front(cursor)
    return node, keys, into


def _each_of(cursor: Cursor) -> int | None:
    """Read "in each of the next 18 sts", "in next 3 sts" as so many times a stitch; None, without a move, for none."""
    before = cursor.at
    number = cursor.take_number() if cursor.take(_EACH_OF) else None
    if number is not None and cursor.take_stitches():
        return number
    cursor.at = before
    return None


def _other_stitch(cursor: Cursor, lexicon: Lexicon, node: Work, keys: tuple[str, ...]) -> tuple[Work, tuple[str, ...]]:
    """Read what makes another stitch of a plain one: "2 together", "tbl", "below", "into front and back"."""
    known = lexicon.vocabulary.stitches
    if cursor.word() == "by" and node.stitch in _MADE and (made := _made_by(cursor, node)) is not None:
        return made, ()
    if cursor.word() in TOGETHER and f"{node.stitch}{node.times}tog" in known:
        cursor.at += 1
        node, keys = replace(node, stitch=f"{node.stitch}{node.times}tog", times=1), ()
    if node.times == 1 and f"{node.stitch}fbf" in known and cursor.take(_THREE):
        node, keys = replace(node, stitch=f"{node.stitch}fbf"), ()
    if cursor.word() == "twice" and cursor.word(1) in ("in", "into") and cursor.word(2) in ("each", "every"):
        cursor.at += 1
        node, keys = replace(node, stitch=f"{node.stitch}fb"), ()
    if node.times == 1 and f"{node.stitch}fb" in known and (cursor.take(_FRONT_BACK) or cursor.take(_TWICE_INTO)):
        node, keys = replace(node, stitch=f"{node.stitch}fb"), ()
    if f"{node.stitch} tbl" in known and take_back(cursor):
        node, keys = replace(node, stitch=f"{node.stitch} tbl"), ()
    if f"{node.stitch} below" in known and cursor.take(_BELOW):
        node, keys = replace(node, stitch=f"{node.stitch} below"), ()
    if node.stitch == "yo" and cursor.take(_WRAPPED):
        node = replace(node, stitch="yo wrapped twice")
    return node, keys


def _made_by(cursor: Cursor, node: Work) -> Work | None:
    """Read how a stitch is made: "by throwing the thread over", "by knitting into the front and back of the stitch"."""
    before, letter = cursor.at, GERUNDS.get(cursor.word(1), "")
    cursor.at += 1
    if (move := take_yarn_move(cursor)) is not None and move.where != "back":
        return replace(node, stitch="yo", times=node.times * move.times)
    cursor.at += 1
    if letter in ("k", "p") and node.times == 1 and (cursor.take(_FRONT_BACK) or cursor.take(_TWICE_INTO)):
        return replace(node, stitch=f"{letter}fb")
    cursor.at = before
    return None


def _manners(cursor: Cursor, told: tuple[str, ...]) -> tuple[str, ...]:
    """Move past all manners that stand here and return them in their fixed order, with those told before."""
    found = set(told)
    while True:
        before = cursor.at
        cursor.take_any(TOGETHER)
        cursor.take(_ONE_BY_ONE)
        manner = cursor.take(MANNER_BOOK)
        if manner is not None and manner not in found and not {manner, *found} >= {"wyif", "wyib"}:
            found.add(manner)
        elif manner is not None:
            cursor.at = before
        if cursor.at == before:
            return in_order(found)


def in_order(manners: set[str]) -> tuple[str, ...]:
    """Return manners in their fixed order."""
    return tuple(manner for manner in MANNERS if manner in manners)

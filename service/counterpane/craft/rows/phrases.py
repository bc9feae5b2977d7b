"""One stitch phrase at a time: "k3", "sl 2 pwise wyif", "k2tog tbl twice", "knit into front and back of next st".

A phrase gives one node, or None where no stitch begins here; the position then does not move.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from counterpane.craft.rows.colours import COLOUR_WORDS, take_colour
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.fabrics import PATTERN, take_fabric
from counterpane.craft.rows.lexicon import PLAIN_WORDS, Lexicon
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.tree import Node, Work
from counterpane.craft.rows.words import LONGEST_NUMBER
from counterpane.craft.rows.workings import ADVERBS, MANNER_BOOK, MANNERS, WHICH, take_working

_GLUED_SLIP = re.compile(r"(?:sl|s)(\d{1,18})(?:tog)?-?(k|kw|kwise|p|pw|pwise|wyif|yif|wyib|yib)?")
_SLIP_MANNERS = {"k": "kwise", "kw": "kwise", "p": "pwise", "pw": "pwise", "yif": "wyif", "yib": "wyib"}
_THROUGH_BACK = phrases(
    "tbl",
    *ways("through", "|the", "back", "loop|loops|lps|of loop|of loops"),
    *ways("in|into", "|the", "back", "loop|of st|of stitch|of next st|of the st|of the stitch|of the next st"),
)
_BELOW = phrases("below", *ways("in|into", "|the|next", "st|stitch|row|loop", "below"))
_OF_NEXT = "|of st|of next st|of the next st|of stitch|of next stitch|of the next stitch|of same st|loop|loops"
_FRONT_BACK = phrases("f & b", *ways("|in|into|through|in the|into the", "front", "and|&", "|the|in", "back", _OF_NEXT))
_THREE = phrases(*ways("|in|into|in the|into the", "front", ",", "|the", "back", "and|&", "|the", "front", _OF_NEXT))
_WRAPPED = phrases("wrapping yarn twice", "wrapping the yarn twice", "wrapping yarn 2 times")
_ONE_BY_ONE = phrases("1 at a time", "1 by 1", "separately", "individually", "singly")
_NEXT = phrases(
    *ways("in|into|of|on", "|the", "next|same|first|last|foll|following", "st|stitch|loop"),
    *ways("in|into", "st|stitch"),
)
FROM_CN = phrases(*ways("from|off", "|the|a", "cn|c n|cable needle"))
TOGETHER = frozenset({"tog", "together"})
_FOLLOWING = frozenset().union(
    *(book.openings for book in (_THROUGH_BACK, _BELOW, _FRONT_BACK, _THREE, _WRAPPED, _ONE_BY_ONE, _NEXT, FROM_CN)),
    *(MANNER_BOOK.openings, ADVERBS, COLOUR_WORDS, TOGETHER, ("once", "twice", "thrice")),
)
_TIMES_WORDS = ("times", "time", "x", "more")


@dataclass(frozen=True, slots=True)
class Phrase:
    """A node, whether it stood without a number ("k"), and the keys it may mean where there are several."""

    node: Node
    bare: bool = False
    keys: tuple[str, ...] = ()
    word: str = ""


def take_phrase(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Move past one stitch phrase and return it; None, without a move, where no stitch begins."""
    word = cursor.word()
    if word[:1] in "kp" and word[1:].isdigit() and len(word) <= LONGEST_NUMBER:
        place = cursor.place
        cursor.at += 1
        cursor.take_stitches()
        node, keys = _suffixes(cursor, lexicon, Work(word[0], int(word[1:]), place=place), (word[0],))
        return Phrase(node, False, keys, word)
    if (working := take_working(cursor)) is not None:
        return Phrase(working)
    if word == "double" and (doubled := _doubled(cursor, lexicon)) is not None:
        return doubled
    return _stitch(cursor, lexicon)


def _doubled(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Read "double yo" as the yarn-over worked twice."""
    length, keys = lexicon.names.longest(cursor.run, cursor.at + 1)
    if keys is None or keys[0] != "yo":
        return None
    place = cursor.place
    cursor.at += 1 + length
    return Phrase(Work("yo", 2, place=place), False, keys, "double")


def _stitch(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Read a stitch by its name, with or without a number."""
    before, word, place = cursor.at, cursor.word(), cursor.place
    keys, number = _base(cursor, lexicon)
    if not keys:
        cursor.at = before
        return _glued_slip(cursor, lexicon)
    if number is None:
        number = _number(cursor)
    bare = number is None
    cursor.take_stitches()
    node, keys = _suffixes(cursor, lexicon, Work(keys[0], 1 if number is None else number, place=place), keys)
    return Phrase(node, bare and node.times == 1, keys, word)


def _glued_slip(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Read "sl1p", "sl1wyif", "sl2tog"."""
    word, place = cursor.word(), cursor.place
    slipped = _GLUED_SLIP.fullmatch(word)
    if slipped is None or "sl" not in lexicon.vocabulary.stitches:
        return None
    cursor.at += 1
    cursor.take_stitches()
    node, keys = _suffixes(cursor, lexicon, Work("sl", int(slipped[1]), place=place), ("sl",))
    manner = _SLIP_MANNERS.get(slipped[2], slipped[2])
    return Phrase(replace(node, manner=_in_order({*node.manner, manner})), False, keys, word)


def _base(cursor: Cursor, lexicon: Lexicon) -> tuple[tuple[str, ...], int | None]:
    """Move past the name of a stitch and a number glued to it: "k2tog", "k3", "slip", "p2tog tbl"."""
    word = cursor.word()
    length, keys = lexicon.names.longest(cursor.run, cursor.at)
    before = cursor.at
    if take_fabric(cursor) and cursor.at >= before + length:
        return (PATTERN,), None
    cursor.at = before
    if word in PLAIN_WORDS and length <= 1:
        cursor.at += 1
        return (PLAIN_WORDS[word],), None
    if keys:
        cursor.at += length
        return keys, None
    glued = lexicon.glued(word)
    if glued is None:
        return (), None
    cursor.at += 1
    return (glued[0],), glued[1]


def _number(cursor: Cursor) -> int | None:
    """Move past "3", "the next 3", "next st"; None, without a move, where no number of stitches stands."""
    before = cursor.at
    cursor.take_word("over", "across", "on", "for")
    which = cursor.take(WHICH)
    if cursor.number() is not None and cursor.word(1) not in _TIMES_WORDS:
        return cursor.take_number()
    if cursor.take_word("st", "stitch") and (which or cursor.at == before + 1):
        return 1
    cursor.at = before
    return None


def _suffixes(cursor: Cursor, lexicon: Lexicon, node: Work, keys: tuple[str, ...]) -> tuple[Work, tuple[str, ...]]:
    """Move past all that may follow a stitch and put it into the node."""
    word = cursor.word()
    if node.stitch == "sl":
        node = replace(node, manner=_manners(cursor))
    elif word not in _FOLLOWING and cursor.number() is None and word[:1] != "x":
        return node, keys
    node, keys = _other_stitch(cursor, lexicon, node, keys)
    if cursor.take(_NEXT) and node.stitch == "inc" and "kfb" in lexicon.vocabulary.stitches:
        node = replace(node, stitch="kfb")
    cursor.take_any(ADVERBS)
    if cursor.take(FROM_CN):
        node = replace(node, held=True)
    times = cursor.take_times()
    if times is not None:
        node = replace(node, times=node.times * times)
    if not node.held and cursor.take(FROM_CN):
        node = replace(node, held=True)
    colour = take_colour(cursor)
    return replace(node, colour=colour) if colour else node, keys


def _other_stitch(cursor: Cursor, lexicon: Lexicon, node: Work, keys: tuple[str, ...]) -> tuple[Work, tuple[str, ...]]:
    """Read what makes another stitch of a plain one: "2 together", "tbl", "below", "into front and back"."""
    known = lexicon.vocabulary.stitches
    if cursor.word() in TOGETHER and f"{node.stitch}{node.times}tog" in known:
        cursor.at += 1
        node, keys = replace(node, stitch=f"{node.stitch}{node.times}tog", times=1), ()
    if f"{node.stitch} tbl" in known and cursor.take(_THROUGH_BACK):
        node, keys = replace(node, stitch=f"{node.stitch} tbl"), ()
    if f"{node.stitch} below" in known and cursor.take(_BELOW):
        node, keys = replace(node, stitch=f"{node.stitch} below"), ()
    if node.times == 1 and f"{node.stitch}fb" in known and cursor.take(_FRONT_BACK):
        node, keys = replace(node, stitch=f"{node.stitch}fb"), ()
    if node.times == 1 and f"{node.stitch}fbf" in known and cursor.take(_THREE):
        node, keys = replace(node, stitch=f"{node.stitch}fbf"), ()
    if node.stitch == "yo" and cursor.take(_WRAPPED):
        node = replace(node, stitch="yo wrapped twice")
    return node, keys


def _manners(cursor: Cursor) -> tuple[str, ...]:
    """Move past all manners that stand here and return them in their fixed order."""
    found: set[str] = set()
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
            return _in_order(found)


def _in_order(manners: set[str]) -> tuple[str, ...]:
    return tuple(manner for manner in MANNERS if manner in manners)

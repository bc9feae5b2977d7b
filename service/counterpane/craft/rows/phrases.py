"""One stitch phrase at a time: "k3", "sl 2 pwise wyif", "k2tog tbl twice", "knit into front and back of next st".

A phrase gives one node, or None where no stitch begins here; the position then does not move.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from counterpane.craft.rows.cables import FROM_CN
from counterpane.craft.rows.colours import take_colour
from counterpane.craft.rows.complete import is_numbered
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.fabrics import PATTERN, RIB_OPENINGS, take_fabric
from counterpane.craft.rows.gathers import Into
from counterpane.craft.rows.lexicon import GERUNDS, PLAIN_WORDS, Lexicon
from counterpane.craft.rows.manners import AFTER_COMMA, MANNER_BOOK
from counterpane.craft.rows.nouns import take_noun
from counterpane.craft.rows.suffixes import FOLLOWING, in_order, suffixes
from counterpane.craft.rows.togethers import OFF_OPENINGS, TOGETHER_OPENINGS, take_off, take_together
from counterpane.craft.rows.tree import Node, Place, Work
from counterpane.craft.rows.words import Token
from counterpane.craft.rows.workings import WHICH, take_working
from counterpane.craft.rows.yarns import YARN_OPENINGS, YarnMove, take_yarn_move

_GLUED_SLIP = re.compile(r"(?:sl|s)(\d{1,18})(?:tog)?-?(k|kw|kwise|p|pw|pwise|wyif|yif|wyib|yib)?")
_GLUED_B = re.compile(r"([kp])(\d{1,18})b")
_NEAR = 20  # House.
_SLIP_MANNERS = {"k": "kwise", "kw": "kwise", "p": "pwise", "pw": "pwise", "yif": "wyif", "yib": "wyib"}
_TIMES_WORDS = ("times", "time", "x")
_ORDINAL = frozenset({"next", "following", "first"})
_PADDING = frozenset({"more", "other", "plain", "edge", "last"})
_SPOKEN = YARN_OPENINGS | TOGETHER_OPENINGS | OFF_OPENINGS
_SLIPS = frozenset({"sl", "slip"})


class Phrase(NamedTuple):
    """A node, whether it stood without a number ("k"), and the keys it may mean where there are several.

    `times` is how often it is said to be worked ("twice"), which is in the node's number already; `brought` says that
    it tells of the yarn in the words of a handbook ("bring the wool forward"); `into` is the
    stitch it is said to go into. A tuple, since every stitch of a text is one for a moment.
    """

    node: Node
    bare: bool = False
    keys: tuple[str, ...] = ()
    word: str = ""
    times: int | None = None
    brought: bool = False
    into: Into | None = None


def take_phrase(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Move past one stitch phrase and return it; None, without a move, where no stitch begins."""
    word = cursor.word()
    if is_numbered(word):
        place = cursor.place
        if word in RIB_OPENINGS and take_fabric(cursor):
            return _followed(cursor, lexicon, Phrase(Work(PATTERN, place=place), True, (PATTERN,), word))
        cursor.at += 1
        cursor.take_stitches()
        return _followed(cursor, lexicon, Phrase(Work(word[0], int(word[1:]), place=place), False, (word[0],), word))
    if (spoken := _spoken(cursor, lexicon)) is not None:
        return spoken
    before = cursor.at
    working = take_working(cursor)
    if working is None or cursor.at - before <= lexicon.names.longest(cursor.run, before)[0]:
        cursor.at = before
        return _slipped_with(cursor, lexicon) or _stitch(cursor, lexicon)
    return Phrase(working)


def _slipped_with(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Read "with yarn in front, slip 1": the manner of the slipped stitch behind it."""
    before = cursor.at
    manner = cursor.take(MANNER_BOOK) if cursor.word() == "with" else None
    cursor.take_word(",")
    phrase = _stitch(cursor, lexicon) if manner and cursor.word() in _SLIPS else None
    if manner is None or phrase is None or not isinstance(phrase.node, Work):
        cursor.at = before
        return None
    return phrase._replace(node=replace(phrase.node, manner=in_order({*phrase.node.manner, manner})))


def _spoken(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Read a stitch or a move of the yarn said in words, unless a longer name of the vocabulary stands here."""
    before, word = cursor.at, cursor.word()
    if word not in _SPOKEN and cursor.number() is None:
        return None
    phrase: Phrase | None = None
    if (move := take_yarn_move(cursor)) is not None:
        phrase = _moved(move, word, cursor.run[before].place)
    elif (work := take_together(cursor)) is not None:
        phrase = Phrase(work, bare=True, word=word)
    elif (work := take_noun(cursor) or take_off(cursor)) is not None:
        phrase = Phrase(work, word=word)
    if phrase is None or cursor.at - before < lexicon.names.longest(cursor.run, before)[0]:
        cursor.at = before
        return None
    return _followed(cursor, lexicon, phrase)


def _moved(move: YarnMove, word: str, place: Place) -> Phrase:
    """Return what a move of the yarn is before the stitches around it are looked at."""
    if move.where == "back":
        return Phrase(Work("wyib", place=place), word=word)
    keys = ("yo",) if move.where == "forward" else ()
    return Phrase(Work("yo", move.times, place=place), False, keys, word, brought=move.told)


def _followed(cursor: Cursor, lexicon: Lexicon, phrase: Phrase) -> Phrase:
    """Read what follows a stitch into its phrase."""
    if not isinstance(phrase.node, Work) or _nothing_follows(cursor, phrase.node):
        return phrase
    node, keys, into = suffixes(cursor, lexicon, phrase.node, phrase.keys)
    times = cursor.take_times()
    if times is not None:
        node = replace(node, times=node.times * times)
    if not node.held and cursor.take(FROM_CN):
        node = replace(node, held=True)
    colour = take_colour(cursor)
    node = replace(node, colour=colour) if colour else node
    return phrase._replace(node=node, keys=keys, times=times, bare=phrase.bare and times is None, into=into)


def _nothing_follows(cursor: Cursor, node: Work) -> bool:
    """Tell by the next word that the stitch is complete, as most are."""
    word = cursor.word()
    if word == ",":
        return cursor.word(1) not in AFTER_COMMA
    if word in FOLLOWING or word[:1] == "x" or cursor.number() is not None:
        return False
    return node.stitch != "sl" or word not in MANNER_BOOK.openings


def _stitch(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Read a stitch by its name, with or without a number."""
    before, word = cursor.at, cursor.word()
    if (coloured := _in_b(cursor)) is not None:
        return coloured
    keys, number = _base(cursor, lexicon)
    if not keys:
        cursor.at = before
        return _glued_slip(cursor, lexicon)
    if number is None:
        number = _number(cursor)
    bare = number is None
    cursor.take_stitches()
    node = Work(keys[0], 1 if number is None else number, place=cursor.run[before].place)
    return _followed(cursor, lexicon, Phrase(node, bare, keys, word))


def _in_b(cursor: Cursor) -> Phrase | None:
    """Read "k2b" beside "k2a": the colour B, and no stitch through the back or below."""
    found = _GLUED_B.fullmatch(cursor.word())
    near = range(max(0, cursor.at - _NEAR), min(len(cursor.run), cursor.at + _NEAR))
    if found is None or not any(_is_colour_a(cursor.run, index) for index in near):
        return None
    place = cursor.place
    cursor.at += 1
    return Phrase(Work(found[1], int(found[2]), colour="b", place=place))


def _is_colour_a(run: Sequence[Token], index: int) -> bool:
    """Tell the colour of "k2a", "k2 A," and "with A" from the article of "place a marker"."""
    if run[index].norm != "a" or not index:
        return False
    before, behind = run[index - 1], run[index + 1 : index + 2]
    glued = before.line is run[index].line and before.start + len(before.text) == run[index].start
    return glued or before.norm == "with" or not (behind and behind[0].kind == "word")


def _glued_slip(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Read "sl1p", "sl1wyif", "sl2tog"."""
    word, before = cursor.word(), cursor.at
    slipped = _GLUED_SLIP.fullmatch(word)
    if slipped is None or "sl" not in lexicon.vocabulary.stitches:
        return None
    cursor.at += 1
    cursor.take_stitches()
    manner = _SLIP_MANNERS.get(slipped[2], slipped[2])
    node = Work("sl", int(slipped[1]), (manner,) if manner else (), place=cursor.run[before].place)
    return _followed(cursor, lexicon, Phrase(node, False, ("sl",), word))


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
    if word == "s" and length <= 1 and cursor.number(1) is not None:
        cursor.at += 1
        return ("sl",), None
    if word in GERUNDS and length <= 1 and _counts(cursor):
        cursor.at += 1
        return (GERUNDS[word],), None
    if keys:
        cursor.at += length
        return keys, None
    glued = lexicon.glued(word)
    if glued is None:
        return (), None
    cursor.at += 1
    return (glued[0],), glued[1]


def _counts(cursor: Cursor) -> bool:
    """Tell whether a number of stitches follows, so that "knitting 2" is worked and "knitting" is only spoken of."""
    return cursor.number(1) is not None or (cursor.word(1) == "the" and cursor.word(2) in ("next", "first", "last"))


def _number(cursor: Cursor) -> int | None:
    """Move past "3", "the next 3", "next st", "plain 3", "3 plain"; None, without a move, where no number stands."""
    before = cursor.at
    cursor.take_word("over", "across", "on", "for", "off")
    which = cursor.take(WHICH)
    which = cursor.take_word("edge", "plain", "other", "a") or which
    if cursor.number() is not None and cursor.word(1) not in _TIMES_WORDS:
        number = cursor.take_number()
        cursor.take_any(_PADDING)
        cursor.take_stitches()
        cursor.take_word("plain")
        return number
    if which and cursor.word(-1) in _ORDINAL and (cursor.pausing or cursor.word() == "and"):
        return 1
    if cursor.take_word("st", "stitch", "loop", "one") and (which or cursor.at == before + 1):
        return 1
    cursor.at = before
    return None

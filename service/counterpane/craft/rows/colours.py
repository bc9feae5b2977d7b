"""Yarns and colours named in a row: "k2 in MC", "with A, k2", "change to B"; they change no count."""

from __future__ import annotations

import re

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import phrases, ways

_CODE = re.compile(r"mc|cc\d?|[a-f]|m|c\d")
_WITH = frozenset({"in", "with", "using"})
_LETTERS = frozenset("abcdef")
COLOUR_WORDS = _WITH | _LETTERS | {"mc", "cc", "cc1", "cc2", "cc3", "cc4"}
_NAMED = phrases("col", "colour", "color", "yarn", "shade")
_NO_COLOUR = frozenset(
    "in at on to next same the pattern patt pat front back one 1 each st sts yarn wool rs ws right wrong cn rib "
    "ribbing garter moss seed stocking stockinette order all this every both double a cable".split()
)
_NO_COLOUR_BEFORE = _NO_COLOUR - {"a", "yarn"}
LEADS = COLOUR_WORDS | {"change", "changing", "switch", "join", "joining"}
_LEADS = phrases("with", "using", "in", *ways("change|changing|switch", "to"), *ways("join|joining", "|in"))
_FACING = phrases(*ways("with", "|the", "rs|ws|right side|wrong side", "facing", "|you"))
_NEEDLES = phrases(
    *ways("with|using|change to", "|the", "larger|smaller|same|main|circular|double pointed", "needle|needles")
)


_MATERIALS = frozenset(
    "needle needles pin pins thread threads wool cotton silk yarn yarns worsted colour color ball".split()
)
_YARNS = frozenset("yarn yarns colour color".split())
_PLACES = frozenset("front back in at on to of next left k p".split())
_MOST_ADJECTIVES = 3  # House.


def is_yarn_code(word: str) -> bool:
    """Tell whether a word can name a yarn of the list of materials: "mc", "cc2", "b"."""
    return word != "m" and bool(_CODE.fullmatch(word))


def take_colour(cursor: Cursor) -> str | None:
    """Move past the colour of the stitch just read: "in MC", "with white", "CC", "A" before a sign."""
    word = cursor.word()
    if word not in COLOUR_WORDS or (word in _LETTERS and not cursor.pausing_after()):
        return None
    if word not in _WITH:
        cursor.at += 1
        return word
    named = cursor.word(1).isalpha() and cursor.number(1) is None
    if (named or cursor.word(1) in COLOUR_WORDS) and (cursor.word(1) not in _NO_COLOUR or _is_a(cursor)):
        cursor.at += 2
        return cursor.word(-1)
    return None


def _is_a(cursor: Cursor) -> bool:
    """Tell the colour A from the article: nothing is said of it."""
    return cursor.word(1) == "a" and (cursor.word(2) == "" or not cursor.word(2)[:1].isalpha())


def take_yarn(cursor: Cursor) -> bool:
    """Move past a clause on the yarn or the needles before stitches: "with A,", "change to B", "join MC", "A:"."""
    if cursor.take(_FACING) or cursor.take(_NEEDLES):
        return True
    before = cursor.at
    if cursor.word(1) == ":" and is_yarn_code(cursor.word()):
        cursor.at += 1
        return True
    if cursor.take(_LEADS):
        if _material(cursor):
            return True
        named = cursor.take(_NAMED)
        word = cursor.word()
        if word.isalpha() and ((named and word not in _NO_COLOUR) or _CODE.fullmatch(word) or _ends(cursor)):
            cursor.at += 1
            cursor.take_word("yarn", "only")
            return True
    cursor.at = before
    return False


def _material(cursor: Cursor) -> bool:
    """Move past "the small needle", "coarse thread", "number 14 pins": with what is worked, not how."""
    words = [cursor.word(ahead) for ahead in range(_MOST_ADJECTIVES + 1)]
    noun = next((ahead for ahead, word in enumerate(words) if word in _MATERIALS), None)
    if noun is None or not all(word.isalnum() and word not in _PLACES for word in words[:noun]):
        return False
    if cursor.word(noun + 1) in ("in", "at") and {cursor.word(noun + 2), cursor.word(noun + 3)} & {"front", "back"}:
        return False
    cursor.at += noun + 1
    if words[noun] in _YARNS and is_yarn_code(cursor.word()):
        cursor.at += 1
    return True


def _ends(cursor: Cursor) -> bool:
    """Tell whether a sign follows the word, so that it stands alone as a colour: "with white, k2"."""
    return cursor.word() not in _NO_COLOUR_BEFORE and cursor.word(1) in (",", ":", ";", ".", "-", "")

"""Stitches of which the next word tells that no more is said, as it does of most: "k3", "k2tog", "sl", "sm"."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import Literal

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.fabrics import RIB_OPENINGS, take_fabric
from counterpane.craft.rows.lexicon import Lexicon
from counterpane.craft.rows.manners import AFTER_COMMA
from counterpane.craft.rows.tree import Marker, Work
from counterpane.craft.rows.words import LONGEST_NUMBER

_PLAIN_LETTERS = frozenset("kp")
_SHORT = frozenset("yo ssk ssp sssk skp skpo cdd kfb pfb psso".split())
_ACTS: Mapping[str, Literal["place", "slip", "remove"]] = {"pm": "place", "sm": "slip", "slm": "slip", "rm": "remove"}


def take_complete(cursor: Cursor, lexicon: Lexicon) -> tuple[Work | Marker, bool] | None:
    """Move past "k3" or "k2tog" before a sign or another such stitch, and past "sl" or "sm" before a sign.

    Return it, and whether it has no number; None, without a move, where more may be said of it.
    """
    run, at = cursor.run, cursor.at
    token, complete = run[at], _complete(lexicon)
    word = token.norm
    pausing = True
    if at + 1 < len(run):
        behind = run[at + 1]
        pausing = behind.kind == "pause"
        if not pausing and not _stands_before(word, behind.norm, complete):
            return None
        if behind.norm == "," and cursor.word(2) in AFTER_COMMA:
            return None
    if word in RIB_OPENINGS and cursor.word(2)[:1] == "p" and take_fabric(cursor):
        cursor.at = at
        return None
    if is_numbered(word):
        cursor.at += 1
        return Work(word[0], int(word[1:]), place=token.place), False
    act = _ACTS.get(word) if pausing and word not in lexicon.vocabulary.by_name else None
    if act is not None:
        cursor.at += 1
        return Marker(act, token.place), False
    key = complete.get(word) or (_slipped(cursor, lexicon) if pausing else None)
    if key is None:
        return None
    cursor.at += 1
    return Work(key, place=token.place), True


def _slipped(cursor: Cursor, lexicon: Lexicon) -> str | None:
    """Return the stitch of "sl" before a sign; None for other words and where a longer name begins, "sl, n and b"."""
    length, keys = lexicon.names.longest(cursor.run, cursor.at) if cursor.word() == "sl" else (0, ())
    return "sl" if length == 1 and keys == ("sl",) else None


def _stands_before(word: str, behind: str, complete: Mapping[str, str]) -> bool:
    """Tell whether a name stands before that of another stitch, so that nothing more is said of it."""
    if behind in complete:
        return word in complete or (is_numbered(word) and word not in RIB_OPENINGS)
    return word in complete and is_numbered(behind)


def is_numbered(word: str) -> bool:
    """Tell whether a word is "k3" or "p12"."""
    return word[:1] in _PLAIN_LETTERS and word[1:].isdigit() and len(word) <= LONGEST_NUMBER


@lru_cache(maxsize=4)
def _complete(lexicon: Lexicon) -> Mapping[str, str]:
    """Return the names that are abbreviations with one meaning whatever stands around them, such as "k2tog"."""
    vocabulary = lexicon.vocabulary
    return {
        name: keys[0]
        for name, keys in vocabulary.by_name.items()
        if (name.isalnum() and any(sign.isdigit() for sign in name)) or name in _SHORT
        if len(keys) == 1 and not vocabulary[keys[0]].ambiguous
    }

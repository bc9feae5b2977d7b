"""One stitch phrase at a time: "k3", "sl 2 pwise wyif", "bind off 3 sts", "sl 3 sts to cn and hold in front".

A phrase gives one node, or None where no stitch begins here; the position then does not move.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.lexicon import Lexicon
from counterpane.craft.rows.tree import BindOff, CastOn, Hold, Marker, Node, Place, Turn, Work

_LETTERS_NUMBER = re.compile(r"^([a-z]+(?:[/-][a-z]+)*)(\d{1,18})(tbl|b|w)?$")
_MANNERS = {
    "kwise": ("kwise", "knitwise", "k wise", "k-wise", "as if to knit", "as to knit", "as if to k"),
    "pwise": ("pwise", "purlwise", "p wise", "p-wise", "as if to purl", "as to purl", "as if to p"),
    "wyif": ("wyif", "with yarn in front", "with yarn at front", "with the yarn in front", "wyf", "yarn in front"),
    "wyib": ("wyib", "with yarn in back", "with yarn at back", "with the yarn at the back", "wyb", "yarn at back"),
}
_MANNERS = {
    manner: (*words, *(f"{extra} {word}" for word in words for extra in ("and", ","))) for manner, words in _MANNERS.items()
}
_THROUGH_BACK = ("tbl", "through the back loops", "through back loops", "through the back loop", "through back loop")
_ADVERBS = frozenset({"loosely", "firmly", "tightly", "carefully", "evenly"})
_NOT_COLOURS = frozenset({"next", "same", "the", "pattern", "patt", "pat", "front", "back", "one", "1", "each", "st"})
_TO_CN = (
    "to cn",
    "onto cn",
    "on cn",
    "on to cn",
    "to cable needle",
    "onto cable needle",
    "to a cable needle",
    "onto a cable needle",
    "on a cable needle",
    "to c n",
)
_FROM_CN = ("from cn", "from cable needle", "from the cable needle", "off cn", "from c n")
_FRONT = ("in front", "at front", "to front", "at the front", "to the front", "in the front")
_BACK = ("in back", "at back", "to back", "at the back", "to the back", "behind", "in the back")
_MARKERS = {
    "place": ("pm", "place marker", "place a marker"),
    "slip": ("sm", "slip marker", "sl marker", "sl m", "slip the marker"),
    "remove": ("rm", "remove marker", "remove the marker"),
}
_NEXT = (
    "in next st",
    "into next st",
    "in next stitch",
    "into next stitch",
    "in the next st",
    "into the next st",
    "in the next stitch",
    "into the next stitch",
    "of next st",
    "of next stitch",
    "of the next st",
    "of the next stitch",
)
_PLAIN_WORDS = {"knit": "k", "purl": "p", "slip": "sl", "k": "k", "p": "p", "sl": "sl", "pearl": "p"}
_LONGEST_PASS = 8
_PASSED = frozenset(
    {"the", "sl", "slip", "slipped", "st", "sts", "stitch", "stitches", "preceding", "first", "2", "1", "both", "last"}
)
_TOGETHER = frozenset({"tog", "together"})


@dataclass(frozen=True, slots=True)
class Phrase:
    """A node, whether it stood without a number ("k"), and the keys it may mean where there are several."""

    node: Node
    bare: bool = False
    keys: tuple[str, ...] = ()
    word: str = ""


def take_phrase(cursor: Cursor, lexicon: Lexicon) -> Phrase | None:
    """Move past one stitch phrase and return it; None, without a move, where no stitch begins."""
    place = cursor.place
    if cursor.word()[:1] in "kp" and cursor.word()[1:].isdigit():
        return _work(cursor, lexicon, place)
    special = _bind_off(cursor, place) or _cast_on(cursor, place) or _marker(cursor, place) or _hold(cursor, place)
    if special is not None:
        return Phrase(special)
    if cursor.take("turn work", "turn"):
        return Phrase(Turn(place))
    if over := _pass_over(cursor, place):
        return Phrase(over)
    return _work(cursor, lexicon, place)


def _bind_off(cursor: Cursor, place: Place) -> Node | None:
    if not cursor.take("bind off", "cast off", "bo", "bind-off", "cast-off"):
        return None
    manner = "in pattern" if cursor.take("in pattern", "in patt") else ""
    cursor.take("the next", "next", "rem", "remaining", "all")
    times = cursor.take_number()
    cursor.take("rem", "remaining")
    cursor.take_stitches()
    manner = _bind_off_manner(cursor) or manner
    return BindOff(times, manner, place=place)


def _bind_off_manner(cursor: Cursor) -> str:
    cursor.take_any(_ADVERBS)
    if cursor.take("in pattern", "in patt"):
        return "in pattern"
    return next(iter(_manners(cursor)), "")


def _cast_on(cursor: Cursor, place: Place) -> Node | None:
    before = cursor.at
    if not cursor.take("cast on", "co"):
        return None
    number = cursor.take_number()
    if number is None:
        cursor.at = before
        return None
    cursor.take("new")
    cursor.take_stitches()
    return CastOn(number, place)


def _marker(cursor: Cursor, place: Place) -> Node | None:
    for act, words in _MARKERS.items():
        if cursor.take(*words):
            return Marker(act, place)  # type: ignore[arg-type]
    return None


def _hold(cursor: Cursor, place: Place) -> Node | None:
    before = cursor.at
    if cursor.take("sl", "slip"):
        cursor.take("the next", "next")
        number = cursor.take_number() or 1
        cursor.take_stitches()
        if cursor.take(*_TO_CN):
            cursor.take("and", ",")
            cursor.take("hold", "leave")
            cursor.take("it", "them")
            where = "front" if cursor.take(*_FRONT) else "back" if cursor.take(*_BACK) else None
            cursor.take("of work", "of the work")
            if where:
                return Hold(number, "front" if where == "front" else "back", place)
    cursor.at = before
    return None


def _pass_over(cursor: Cursor, place: Place) -> Node | None:
    """Read "pass the slipped st over", "pass 2 slipped sts over both" in any of its wordings."""
    if cursor.word() != "pass":
        return None
    ahead = next((n for n in range(1, _LONGEST_PASS) if cursor.word(n) == "over"), None)
    if ahead is None or not all(cursor.word(n) in _PASSED for n in range(1, ahead)):
        return None
    two = any(cursor.word(n) in ("2", "both") for n in range(1, ahead))
    cursor.at += ahead + 1
    cursor.take_any(frozenset({"it", "both", "them", "this", "all"}))
    return Work("p2sso" if two else "psso", place=place)


def _work(cursor: Cursor, lexicon: Lexicon, place: Place) -> Phrase | None:
    before, word = cursor.at, cursor.word()
    keys, number = _base(cursor, lexicon)
    if not keys:
        cursor.at = before
        return None
    bare = number is None
    if number is None and _counts_follow(cursor, keys[0]):
        cursor.take("the")
        cursor.take("next", "last")
        number = cursor.take_number()
        bare = number is None
    bare = bare and not (cursor.take("st", "stitch") and number is None)
    cursor.take_stitches()
    node, keys = _suffixes(cursor, lexicon, Work(keys[0], number if number is not None else 1, place=place), keys)
    return Phrase(node, bare and node.times == 1, keys, word)


def _base(cursor: Cursor, lexicon: Lexicon) -> tuple[tuple[str, ...], int | None]:
    """Move past the name of a stitch and a number written to it: "k2tog", "k3", "slip 1", "p2tog tbl"."""
    length, keys = lexicon.longest(cursor.run, cursor.at)
    if keys and not (length == 1 and cursor.word() in _PLAIN_WORDS):
        cursor.at += length
        return keys, None
    if cursor.word() in _PLAIN_WORDS:
        key = _PLAIN_WORDS[cursor.word()]
        cursor.at += 1
        return (key,), None
    glued = _LETTERS_NUMBER.match(cursor.word())
    if not glued:
        return (), None
    name, number, tail = glued.groups()
    key = (_counted_key(name, lexicon) or "") + {"tbl": " tbl", "b": "1b"}.get(tail, "")
    if key not in lexicon.vocabulary.stitches:
        return (), None
    cursor.at += 1
    return (key,), int(number)


def _counted_key(name: str, lexicon: Lexicon) -> str | None:
    """Return the key of a name that takes a number: "k" of k3, "ktbl" of ktbl2."""
    if name in _PLAIN_WORDS:
        return _PLAIN_WORDS[name]
    keys = lexicon.vocabulary.by_name.get(name, ())
    return keys[0] if keys else None


def _counts_follow(cursor: Cursor, key: str) -> bool:
    ahead = 1 if cursor.word() == "the" else 0
    ahead += 1 if cursor.word(ahead) in ("next", "last") else 0
    return cursor.number(ahead) is not None and cursor.word(ahead + 1) not in ("times", "time", "x", "more")


def _suffixes(cursor: Cursor, lexicon: Lexicon, node: Work, keys: tuple[str, ...]) -> tuple[Work, tuple[str, ...]]:
    """Move past all that may follow a stitch and put it into the node."""
    if cursor.pausing and node.stitch != "sl":
        return node, keys
    known = lexicon.vocabulary.stitches
    if cursor.word() in _TOGETHER and f"{node.stitch}{node.times}tog" in known:
        cursor.at += 1
        node, keys = replace(node, stitch=f"{node.stitch}{node.times}tog", times=1), ()
    if f"{node.stitch} tbl" in known and cursor.take(*_THROUGH_BACK):
        node, keys = replace(node, stitch=f"{node.stitch} tbl"), ()
    if node.stitch == "k" and cursor.take("in st below", "in the st below", "into the stitch below", "in stitch below"):
        node, keys = replace(node, stitch="k1b"), ("k1b",)
    if node.stitch == "yo" and cursor.take("wrapping yarn twice", "wrapping the yarn twice", "wrapping yarn 2 times"):
        node = replace(node, stitch="yo wrapped twice")
    if node.stitch == "sl":
        node = replace(node, manner=_manners(cursor))
    cursor.take(*_NEXT)
    cursor.take_any(_ADVERBS)
    if cursor.take(*_FROM_CN):
        node = replace(node, held=True)
    times = cursor.take_times()
    if times is not None:
        node = replace(node, times=node.times * times)
    return replace(node, colour=_colour(cursor)), keys


def _manners(cursor: Cursor) -> tuple[str, ...]:
    """Move past all manners that stand here and return them in their fixed order."""
    found: set[str] = set()
    moved = True
    while moved:
        moved = False
        for manner, words in _MANNERS.items():
            if manner == "wyib" and "wyif" in found:
                continue
            if cursor.take(*words):
                found.add(manner)
                moved = True
    return tuple(manner for manner in _MANNERS if manner in found)


def _colour(cursor: Cursor) -> str | None:
    if cursor.word() in ("in", "with", "using") and cursor.word(1).isalpha() and cursor.word(1) not in _NOT_COLOURS:
        cursor.at += 2
        return cursor.word(-1)
    return None

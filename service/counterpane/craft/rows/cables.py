"""Stitches held on a cable needle, in words: "slip 3 on to a third pin in front", "knit the 3 off the spare needle".

Where no side is told the stitches are held at the back; it decides the lean and no count.
"""

from __future__ import annotations

from typing import Literal

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, spelt, ways
from counterpane.craft.rows.tree import Hold, Node, Place, Work

HOLDING_VERBS = frozenset(
    "sl slip slipping place put putting pass passing take taking cast draw transfer leave throw bring hold".split()
)
_WHICH = phrases(*ways("|the|these|those", "next|first|foll|following|other"), "the", "these", "those")
_A = "|a|an|the|another|your|this|that"
_CN = "|".join(
    [
        *("cn", "c n"),
        *spelt(
            "cable|third|3rd|spare|auxiliary|extra|additional|double-pointed|double pointed|short|2nd|second",
            "needle|pin|cn",
        ),
    ]
)
_TO_CN = phrases(*ways("to|onto|on|on to|upon|off on to|off onto", _A, _CN), *ways("on|onto|on to|upon", "it"))
FROM_CN = phrases(
    *ways("from|off|on|of|from off", _A, _CN),
    *ways(
        "that were|which were|which you|which are|previously|just|you",
        "slipped|held|left|put|placed",
        "|on|off|from|on to",
        _A,
        _CN,
    ),
    *ways("slipped|held|left|placed", "on|off|from|on to", _A, _CN),
    *ways("from|off|on", "it"),
)
_TAKE_CN = phrases(
    *ways("take|taking|bring|with", _A, _CN, "|again", "|, and|and|,"),
)
OPENINGS = _TAKE_CN.openings
_LEAD = phrases(
    *ways(
        "|and|,|;|, and|; and",
        "|then|always|and always",
        "hold|holding|leave|leaving|keep|keeping|held|bring|bringing|drop|let|letting",
        "|it|them|this|that|these|this needle|that needle|the needle|this pin|that pin|the pin",
        "|hang|remain|as before",
    )
)
_OFF_VERBS: Phrasebook[str] = Phrasebook(
    [*((way, "k") for way in ("knit", "k", "work")), *((way, "p") for way in ("purl", "p", "pearl", "seam"))]
)
_THEM = phrases("them", "these", "those", "the sts", "the stitches", "the others", "the held sts", "sts", "all")
HELD_OFF = _THEM.openings
_OF_WORK = "|of work|of the work|of the needle|of the other needle|of the knitting|of your work|of the others"
_WHERE: Phrasebook[Literal["front", "back"]] = Phrasebook(
    [
        *((way, "front") for way in ways("|,|and", "in|at|to", "|the", "front", _OF_WORK)),
        *((way, "front") for way in ways("before", "|the work|you|the needle")),
        *((way, "back") for way in ways("|,|and", "in|at|to", "|the", "back", _OF_WORK)),
        *((way, "back") for way in ways("behind", "|the", "|work|needle|others")),
    ]
)


def take_hold(cursor: Cursor, place: Place) -> Node | None:
    """Read "sl next 3 sts to cn and hold in front", "place 2 sts on cable needle, hold at back"."""
    before = cursor.at
    cursor.at += 1
    cursor.take(_WHICH)
    number = cursor.take_number()
    cursor.take_word("more", "other")
    cursor.take_stitches()
    cursor.take_word("off")
    if not cursor.take(_TO_CN):
        cursor.at = before
        return None
    held = cursor.at
    cursor.take(_LEAD)
    where = cursor.take(_WHERE)
    if where is None:
        cursor.at = held
    return Hold(1 if number is None else number, where or "back", place)


def take_held_off(cursor: Cursor, held: int | None) -> Work | None:
    """Read "knit them off", "knit those on the third pin": all the stitches that the cable needle holds."""
    if held is None:
        return None
    before, place = cursor.at, cursor.place
    key = cursor.take(_OFF_VERBS)
    if key is None or not (cursor.take(_THEM) and (cursor.take_word("off") or cursor.take(FROM_CN))):
        cursor.at = before
        return None
    cursor.take(FROM_CN)
    return Work(key, held, held=True, place=place)


def take_up_needle(cursor: Cursor) -> bool:
    """Move past "take the third needle again, and", which works nothing."""
    return cursor.take(_TAKE_CN) is not None

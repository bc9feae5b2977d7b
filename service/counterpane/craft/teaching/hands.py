"""Left and right for somebody who works mirrored: which words of a lesson change places, and which never do.

A left-hander who works mirrored works each row from the left edge to the right one and leaves a mirror image of the
fabric. Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Literal

Hand = Literal["right", "left"]

_OTHER = {"left": "right", "right": "left", "Left": "Right", "Right": "Left"}
_SIDES = re.compile(
    r"\b(?:[Ll]eft|[Rr]ight)(?=(?:-hand)? (?:needle|hand|edge|border|forefinger|thumb)s?\b)"
    r"|(?<=\bto the )(?:left|right)\b(?! sides?\b)"
    r"|(?<=\blean )(?:left|right)\b|(?<=\bleans )(?:left|right)\b|(?<=\bleaning )(?:left|right)\b"
)
"""Left and right as directions. "The right side" of a fabric and stitches that "are left" are no directions."""


def mirrored(text: str) -> str:
    """Return a text with left and right changed over where they are directions; twice gives it back."""
    return _SIDES.sub(lambda found: _OTHER[found.group()], text)


def for_hand(text: str, hand: Hand) -> str:
    """Return a text written for right-handed work as this hand reads it."""
    return mirrored(text) if hand == "left" else text


def hand_notes(hand: Hand) -> tuple[str, ...]:
    """Say what mirrors and what does not; common practice, no source."""
    many = "Many left-handers knit right-handed, since both hands work: ask before you teach anybody mirrored."
    if hand == "right":
        return (f"{many} Ask for the left hand to have this lesson told for mirrored work.",)
    return (
        many,
        "This lesson is for mirrored work: stitches pass from the right needle to the left one, and each row goes from "
        "the left edge to the right edge.",
        "The rows are the same words. Counts, RS and WS, knit and purl, front and back stay as they are.",
        "Leans mirror: k2tog leans to the left in your fabric, and ssk leans to the right. A cable needle held in "
        "front makes the stitches lean to the right, one held at the back to the left.",
        "What an abbreviation list says of a lean is said for right-handed work: read it the other way.",
        "Charts are read the other way: RS rows from left to right, WS rows from right to left. Use the mirrored "
        "picture, or read a printed chart as it stands and get its mirror image.",
        "A blanket that looks the same from left and right comes out the same; one that does not comes out mirrored.",
    )

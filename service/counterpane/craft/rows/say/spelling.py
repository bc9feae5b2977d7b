"""The words around the stitches, abbreviated and in full, each in a form that the reader understands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, TypeAlias

WordsKind: TypeAlias = Literal["short", "full"]


@dataclass(frozen=True, slots=True)
class Spelling:
    """One way to spell a row; `{}` in a phrase is a number of stitches, or what the phrase is about."""

    stitch: str
    stitches: str
    row: str
    round: str
    repeat: str
    to_end: str
    to_last: str
    to_marker: str
    before_marker: str
    ending: str
    last_repeat: str
    into: Mapping[int, str]
    hold: str
    where: Mapping[str, str]
    wrap_and_turn: str
    from_cable_needle: str
    manners: Mapping[str, str]
    markers: Mapping[str, str]
    whole_row: Mapping[str, str]
    sides: Mapping[str, str]

    def counted(self, number: int) -> str:
        """Return "1 st" or "3 sts"."""
        return f"{number} {self.stitch if number == 1 else self.stitches}"

    def next(self, number: int) -> str:
        """Return "st" or "3 sts", as they stand behind "next" and "last"."""
        return self.stitch if number == 1 else self.counted(number)


SHORT = Spelling(
    stitch="st",
    stitches="sts",
    row="Row",
    round="Round",
    repeat="rep",
    to_end="to end",
    to_last="to last {}",
    to_marker="to marker",
    before_marker="to {} before marker",
    ending="end {}",
    last_repeat="ending last rep {}",
    into={1: "into next st", 2: "into next double yo"},
    hold="sl next {} to cn and hold {}",
    where={"front": "in front", "back": "at back"},
    wrap_and_turn="w&t",
    from_cable_needle="from cn",
    manners={"kwise": "kwise", "pwise": "pwise", "wyif": "wyif", "wyib": "wyib", "in pattern": "in pattern"},
    markers={"place": "pm", "slip": "sm", "remove": "rm"},
    whole_row={"k": "knit", "p": "purl"},
    sides={"RS": "RS", "WS": "WS"},
)
FULL = Spelling(
    stitch="stitch",
    stitches="stitches",
    row="Row",
    round="Round",
    repeat="repeat",
    to_end="to the end",
    to_last="to the last {}",
    to_marker="to the marker",
    before_marker="to {} before the marker",
    ending="ending with {}",
    last_repeat="ending the last repeat with {}",
    into={1: "all into the next stitch", 2: "all into the next double yarn over"},
    hold="slip the next {} to a cable needle and hold {}",
    where={"front": "in front", "back": "at the back"},
    wrap_and_turn="wrap the next stitch and turn",
    from_cable_needle="from the cable needle",
    manners={
        "kwise": "knitwise",
        "pwise": "purlwise",
        "wyif": "with yarn in front",
        "wyib": "with yarn at the back",
        "in pattern": "in pattern",
    },
    markers={"place": "place a marker", "slip": "slip the marker", "remove": "remove the marker"},
    whole_row={"k": "knit all stitches", "p": "purl all stitches"},
    sides={"RS": "right side", "WS": "wrong side"},
)
SPELLINGS: Mapping[WordsKind, Spelling] = {"short": SHORT, "full": FULL}


def times(number: int) -> str:
    """Return "once", "twice" or "3 times"."""
    return {1: "once", 2: "twice"}.get(number, f"{number} times")

"""Remarks to the checker in a line of their own: which finding a text accepts and why, how grave a rule is to it.

`Accept row-leaves-stitches: the last 3 sts stay on a holder.` stands directly above a row or statement; with
`throughout` before the colon it speaks of the whole text, as `Treat repeat-assumed as error: house rule.` always does.
A remark is neither row nor prose. Whether its rule exists is not asked here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from counterpane.craft.rows.tree import Place

Level = Literal["error", "warning", "note"]
_LEVELS: tuple[Level, ...] = ("error", "warning", "note")
_SLUG = r"[a-z]+(?:-[a-z]+)+"
_LEAD = r"[ \t]{0,40}(?:[-•*+>#;%/]{1,4}[ \t]+)?"
_REMARK = re.compile(
    rf"{_LEAD}(?:accept[ \t]+(?P<accepted>{_SLUG})(?P<throughout>[ \t]+throughout)?"
    rf"|treat[ \t]+(?P<treated>{_SLUG})[ \t]+as[ \t]+(?:an?[ \t]+)?(?P<level>error|warning|note))"
    r"[ \t]*(?:[:.](?P<reason>.*))?$",
    re.IGNORECASE,
)
_BEGINS = re.compile(rf"{_LEAD}(?:accept|treat)[ \t]", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Remark:
    """A rule accepted, or treated as of a level; `reason` is empty where none is given.

    `level` is None for an acceptance; `throughout` says that the whole text is meant.
    """

    slug: str
    reason: str
    place: Place
    slug_place: Place
    throughout: bool = False
    level: Level | None = None


def is_remark(line: str) -> bool:
    """Tell whether a line as given is a remark."""
    return bool(_BEGINS.match(line) and _REMARK.match(line))


def remark_in(line: str, number: int) -> Remark | None:
    """Read the remark on a line as given; None where it is none."""
    match = _REMARK.match(line) if _BEGINS.match(line) else None
    if match is None:
        return None
    name: Literal["accepted", "treated"] = "accepted" if match["accepted"] else "treated"
    level: Level | None = next((each for each in _LEVELS if each == (match["level"] or "").lower()), None)
    begins = len(line) - len(line.lstrip())
    return Remark(
        match[name].lower(),
        (match["reason"] or "").strip(),
        Place(number, begins + 1),
        Place(number, match.start(name) + 1),
        bool(match["throughout"]) or level is not None,
        level,
    )

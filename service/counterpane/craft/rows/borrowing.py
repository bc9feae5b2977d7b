"""Rows that take the words of others: "As row 1.", "Rep rows 1 and 2 three times.", "As 2nd row."."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.labels import LIST, ORDINALS, ROW, numbers_in
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.stops import take_count
from counterpane.craft.rows.words import Token

_AS = phrases(
    *ways("|work|knit|exactly|work exactly|the", "as|same as|like", "|for|given for|in|per"),
    *ways("work|", "in the same way as", "|for"),
    *("rep", "repeat", "work"),
)
_NAMED = re.compile(rf"(?:the\s+)?(?:{ROW}\s*(?P<after>{LIST})|(?P<before>{ORDINALS})(?:\s+{ROW})?)(?![a-z0-9])")


@dataclass(frozen=True, slots=True)
class Borrowed:
    """The numbers of the rows whose words a row takes, and what stands behind them."""

    numbers: tuple[int, ...]
    rest: Sequence[Token]


def borrowed(body: Sequence[Token]) -> Borrowed | None:
    """Return which rows the words of a row name instead of stitches; None where they name none."""
    cursor = Cursor(body)
    if not body or body[0].norm not in _AS.openings or not cursor.take(_AS) or not cursor:
        return None
    line = cursor.token.line
    match = _NAMED.match(line.text, cursor.token.start)
    if match is None:
        return None
    while cursor and cursor.token.line is line and cursor.token.start < match.end():
        cursor.at += 1
    take_count(cursor)
    return Borrowed(numbers_in(match["after"] or match["before"]), body[cursor.at :])

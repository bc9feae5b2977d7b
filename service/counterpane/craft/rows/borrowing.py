"""Rows that take the words of others: "As row 1.", "Rep rows 1 and 2 three times.", "As 2nd row.", "The same."."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.rows.colours import take_yarn
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.labels import (
    HOW_MANY,
    MOST_ROWS_AT_ONCE,
    NAMED_ROW,
    NAMES,
    ORDINALS,
    PART,
    ROW,
    number_of,
    numbers_in,
)
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.stops import take_count
from counterpane.craft.rows.words import Token

_BE = "|is|are|is worked|are worked|is knitted|are knitted|to be worked|is knit|are knit"
_AS = phrases(
    *ways(
        "|work|worked|knit|knitted|exactly|work exactly|the|is|are",
        "as|same as|like|similar to",
        "|for|given for|in|per|with",
    ),
    *ways("|the", "same as|similar to", "|for|in"),
    *ways("|is|are|is worked|are worked|is knitted|are knitted|work|worked", "the same as|like|as", "|for|in"),
    *ways("|is|are|is worked|are worked|work|worked|knitted", "in the same", "manner|way", "as", "|for"),
    *("rep", "repeat", "work", "repeats", "knit rows", "patt as"),
)
_SAME = phrases(
    *ways(_BE, "as|like|same as|the same as|rep|repeat", "|the", "last|previous|preceding", "|row|rnd|round"),
    *ways("rep|repeat", "the|this|last|the last|previous|the previous", "row|rnd|round"),
)  # fmt: skip
_ALIKE = phrases(*ways(_BE, "the same|same|ditto|likewise"))
_NAMED = re.compile(
    rf"(?:the\s+)?(?:{PART}{NAMED_ROW}(?P<after>{NAMES})|(?P<before>{ORDINALS})(?!\s+{HOW_MANY}\b)(?:\s+{PART}{ROW})?"
    rf"|{ROW}\s+(?P<letter>\d{{0,4}}[a-z])\b"
    rf"|(?P<worded>foundation|set-?up|prep(?:aration)?|dec(?:rease)?|inc(?:rease)?|edge|eyelet|picot|joining)\s+{ROW}\b"
    rf"|first\s+(?P<head>{HOW_MANY})(?:\s+{ROW})?\b"
    rf"|(?:last|previous|preceding|foregoing)\s+(?P<back>{HOW_MANY})(?:\s+{ROW})?\b"
    rf"|(?P<bare>{NAMES})(?=\s*(?:[.;]|$)))(?![a-z0-9])"
)
# Another yarn changes no count: "as row 1, but with B in place of A".
_IN_COLOURS = re.compile(
    r",?\s*(?:but\s+|only\s+)?(?:worked\s+)?(?:in|with|using|reversing|exchanging|substituting)\s+"
    r"(?:(?:the|and|for|in|place|of|instead|colou?rs?|yarn|mc|cc\d?|[a-f]|other|contrast(?:ing)?|reversed)\b\s*+)++(?=[.;]|$)"
)
_OF_PART = phrases(*ways("of|in", "|the", "patt|pattern|border|lace", "|patt|pattern"))


@dataclass(frozen=True, slots=True)
class Borrowed:
    """The labels of the rows whose words a row takes, and what stands behind them; else the `back` rows before it.

    `back` is 0 where it does not say how many: "Rows 3-8: same".
    """

    labels: tuple[str, ...]
    rest: Sequence[Token]
    back: int = 1


def borrowed(body: Sequence[Token]) -> Borrowed | None:
    """Return which rows the words of a row name instead of stitches; None where they name none."""
    run = [*body]
    begin = next((index for index, token in enumerate(run[:2]) if token.kind != "pause"), 0)
    cursor = Cursor(run[begin:])
    if take_yarn(cursor):
        cursor.take_word(",", ":")
    begin = cursor.at
    for book, back in ((_SAME, 1), (_ALIKE, 0)):
        if cursor.take(book) is not None and cursor.pausing:
            return Borrowed((), cursor.run[cursor.at :], back)
        cursor.at = begin
    if cursor.take(_AS) is None or not cursor:
        return None
    line = cursor.token.line
    match = _NAMED.match(line.text, cursor.token.start)
    if match is None:
        return None
    while cursor and cursor.token.line is line and cursor.token.start < match.end():
        cursor.at += 1
    cursor.take(_OF_PART)
    colours = _IN_COLOURS.match(line.text, cursor.token.start) if cursor and cursor.token.line is line else None
    while colours and cursor and cursor.token.line is line and cursor.token.start < colours.end():
        cursor.at += 1
    behind = cursor.at
    cursor.take_word(",", ";")
    if take_count(cursor) is None:
        cursor.at = behind
    return Borrowed(_labels(match), cursor.run[cursor.at :], number_of(match["back"] or "") or 1)


def _labels(match: re.Match[str]) -> tuple[str, ...]:
    if match["back"]:
        return ()
    if match["head"]:
        return tuple(str(number) for number in range(1, 1 + min(MOST_ROWS_AT_ONCE, number_of(match["head"]) or 1)))
    if match["worded"]:
        return (match["worded"].replace("-", ""),)
    named = match["after"] or match["before"] or match["bare"]
    return tuple(str(number) for number in numbers_in(named)) if named else (match["letter"],)

"""Repeat lines: "Rep rows 1-4 5 times more.", "Rep last 2 rows until 3 sts remain.", "Work rows 1-6 once more."."""

from __future__ import annotations

import re
from dataclasses import dataclass

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.labels import HOW_MANY, LIST, ORDINALS, ROW, numbers_in
from counterpane.craft.rows.stops import take_count
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import LONGEST_NUMBER, NUMBER_WORDS, Line, tokens

_GO_ON = r"(?:(?:cont(?:inue)?|keep|cont\.)\s+(?:to\s+|on\s+)?)?"
_THOSE = r"(?:(?:all|the|these|those|last|previous|above|foregoing|preceding|this)\s+)"
_ALL = r"(?:all\s+(?:the\s+)?)?"
AGAIN = re.compile(
    rf"(?:(?:and\s+)?then\s+(?={ROW}\s)|(?:(?:and\s+)?then\s+|now\s+)?{_GO_ON}"
    rf"(?P<verb>rep(?:eat(?:ing)?)?\.?|work(?:ing)?)\s+)"
    rf"(?:(?:the\s+)?{ROW}\s*(?P<rows>{LIST})|from\s+{ROW}\s*(?P<since>\d+)"
    rf"|from\s+(?P<first>\d+)(?:st|nd|rd|th)\s+{ROW}\b"
    rf"|(?:the\s+)?(?P<ordinals>{ORDINALS})\s+{ROW}\b"
    rf"|{_ALL}{_THOSE}+(?P<many>{HOW_MANY})\s+(?:patt(?:ern)?\s+)?{ROW}\b"
    rf"|(?:the\s+)?(?:last|this|previous|above|preceding)\s+(?P<one>{ROW})\b|(?P<every>{_THOSE}+(?:rows|rnds|rounds)\b))"
)
IN_THIS_WAY = re.compile(
    r"(?:cont(?:inue)?|rep(?:eat)?|work|carry\s+on|keep)\s+(?:on\s+)?(?:(?:in|working\s+in)\s+this\s+(?:way|manner)|"
    r"as\s+(?:set|established|est|above|before))\s+(?=until\b)"
)
FORM = re.compile(
    rf"(?:(?:the\s+)?{ROW}\s*(?P<rows>{LIST})|(?:the\s+)?(?P<ordinals>{ORDINALS})\s+{ROW}"
    rf"|{_THOSE}+(?P<many>{HOW_MANY})\s+{ROW}|(?P<every>(?:these|the\s+above)\s+{ROW}))\s+"
    r"(?:(?:now\s+)?(?:forms?|sets?|makes?|establish(?:es)?|comprises?)|(?:are|is)\s+(?:repeated|worked|the\s+patt))\b"
)
_REMAIN = re.compile(
    r"until\s+(?:only\s+|there\s+(?:are|remain)\s+|you\s+have\s+)*"
    rf"(\d{{1,{LONGEST_NUMBER}}})\s*(?:sts?|stitches|rem|left|on)\b"
)
_COUNT = re.compile(rf"[(\[]\s*(\d{{1,{LONGEST_NUMBER}}})\s*(?:sts?|stitches)\b[^)\]]*[)\]]")
_BEFORE_COUNT = 8
_NO_COUNT = frozenset({"until", "till", "ending", "end", "then", ".", ";", "to"})


@dataclass(frozen=True, slots=True)
class Again:
    """A repeat line: which rows are worked again, how often, and how far.

    `numbers` are row numbers; empty with `last` n for the last n rows listed, or with last 0 for all of the section.
    `passes` is how many further times, None where unknown; `remain` the stitches at which to stop; `stated` the count
    printed after the line. `loose` says that it only speaks of rows ("these 4 rows form the pattern").
    """

    numbers: tuple[int, ...]
    last: int
    passes: int | None
    remain: int | None
    place: Place
    stated: int | None = None
    stated_place: Place | None = None
    since: int | None = None
    loose: bool = False


def begins_again(text: str, start: int, end: int) -> bool:
    """Tell whether a repeat line begins at a place."""
    return any(form.match(text, start, end) for form in (AGAIN, FORM, IN_THIS_WAY))


def again_in(line: Line, start: int, end: int) -> Again | None:
    """Read a repeat line in a stretch of a line; None where it is none."""
    if match := FORM.match(line.text, start, end):
        return Again(_numbers(match), _last(match), None, None, line.place(start), loose=True)
    if match := AGAIN.match(line.text, start, end):
        return _again(match, line, end)
    if match := IN_THIS_WAY.match(line.text, start, end):
        return Again((), 0, None, _remain(line, match.end(), end), line.place(start), loose=True)
    return None


def _again(match: re.Match[str], line: Line, end: int) -> Again:
    """Put together what a repeat line says."""
    worked = not (match["verb"] or "").startswith("rep")
    remain = _remain(line, match.end(), end)
    stated = _COUNT.search(line.text, match.end(), end)
    since = match["since"] or match["first"]
    passes = _passes(line, match.end(), end)
    return Again(
        _numbers(match),
        _last(match),
        None if remain else 1 if passes is None and worked else passes,
        remain,
        line.place(match.start()),
        int(stated.group(1)) if stated else None,
        line.place(stated.start(1)) if stated else None,
        int(since[:6]) if since else None,
    )


def _numbers(match: re.Match[str]) -> tuple[int, ...]:
    printed = match["rows"] or match["ordinals"]
    return numbers_in(printed) if printed else ()


def _last(match: re.Match[str]) -> int:
    """Return how many rows "the last 4 rows" are; 0 where all are meant."""
    many = match["many"]
    if many:
        return NUMBER_WORDS.get(many) or int(many[:6])
    return 1 if match.groupdict().get("one") else 0


def _passes(line: Line, start: int, end: int) -> int | None:
    """Return how many further times a line says, within its first words: "(patt) 5 times more"."""
    cursor = Cursor(tokens(line, start, end))
    for at in range(min(_BEFORE_COUNT, len(cursor.run))):
        cursor.at = at
        if cursor.word() in _NO_COUNT:
            return None
        count = take_count(cursor)
        if count is not None and count.times is not None:
            return count.times - 1
    return None


def _remain(line: Line, start: int, end: int) -> int | None:
    remain = _REMAIN.search(line.text, start, end)
    return int(remain.group(1)) if remain else None

"""Repeat lines: "Rep rows 1-4 5 times more.", "Rep last 2 rows until 3 sts remain.", "Work rows 1-6 once more."."""

from __future__ import annotations

import re
from dataclasses import dataclass

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.labels import LIST, numbers_in
from counterpane.craft.rows.stops import take_count
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import LONGEST_NUMBER, NUMBER_WORDS, Line, tokens

_ROW = r"(?:rows?|rnds?|rounds?)"
_HOW_MANY = rf"(?:\d+|{'|'.join(NUMBER_WORDS)})"
AGAIN = re.compile(
    rf"(?:(?P<then>then\s+)?(?P<verb>rep(?:eat(?:ing)?)?|work|cont(?:inue)?\s+(?:to\s+)?rep(?:eat(?:ing)?)?)\s+)"
    rf"(?:the\s+)?(?:{_ROW}\s*(?P<rows>{LIST})|from\s+{_ROW}\s*(?P<since>\d+)|(?P<ordinals>{LIST})\s+{_ROW}\b"
    rf"|(?:last|these|previous|above)\s+(?P<many>{_HOW_MANY})\s+{_ROW}\b|(?:last|this|previous)\s+(?P<one>{_ROW})\b"
    rf"|(?P<every>these|all)\s+{_ROW}\b)"
)
FORM = re.compile(rf"these\s+(?P<many>{_HOW_MANY})\s+{_ROW}\s+(?:form|set|are|make)\b")
_REMAIN = re.compile(
    rf"until\s+(?:only\s+)?(?:there\s+are\s+)?(\d{{1,{LONGEST_NUMBER}}})\s*(?:sts?|stitches)?\s*(?:rem|left|on)"
)
_COUNT = re.compile(rf"[(\[]\s*(\d{{1,{LONGEST_NUMBER}}})\s*(?:sts?|stitches)\b[^)\]]*[)\]]")


@dataclass(frozen=True, slots=True)
class Again:
    """A repeat line: which rows are worked again, how often, and how far.

    `numbers` are row numbers; empty with `last` n for the last n rows listed, or with last 0 for all of the section.
    `passes` is how many further times, None where unknown; `remain` the stitches at which to stop; `stated` the count
    printed after the line.
    """

    numbers: tuple[int, ...]
    last: int
    passes: int | None
    remain: int | None
    place: Place
    stated: int | None = None
    stated_place: Place | None = None
    since: int | None = None


def again_in(line: Line, start: int, end: int) -> Again | None:
    """Read a repeat line in a stretch of a line; None where it is none."""
    if match := AGAIN.match(line.text, start, end):
        return _again(match, line, end)
    if match := FORM.match(line.text, start, end):
        many = match["many"]
        return Again((), NUMBER_WORDS.get(many) or int(many[:6]), None, None, line.place(start))
    return None


def _again(match: re.Match[str], line: Line, end: int) -> Again:
    """Put together what a repeat line says."""
    cursor = Cursor(tokens(line, match.end(), end))
    count = take_count(cursor)
    worked = match["verb"] == "work"
    passes = None
    if count and count.times is not None:
        passes = count.times - 1
    elif worked:
        passes = 1
    remain = _REMAIN.search(line.text, match.end(), end)
    stated = _COUNT.search(line.text, match.end(), end)
    printed = match["rows"] or match["ordinals"]
    many = match["many"]
    last = (NUMBER_WORDS.get(many) or int(many[:6])) if many else 1 if match["one"] else 0
    return Again(
        numbers_in(printed) if printed else (),
        last,
        None if remain else passes,
        int(remain.group(1)) if remain else None,
        line.place(match.start()),
        int(stated.group(1)) if stated else None,
        line.place(stated.start(1)) if stated else None,
        int(match["since"][:6]) if match["since"] else None,
    )

"""Corrections of a text: the least changes of its words with which it checks clean, the likeliest first.

A correction changes one printed row, or one statement: the cast-on, the multiple, a printed count. Each offered one has
been written into the text, and the text read and followed afresh: no knitter is stuck, every printed number is true,
and no word more is unreadable. The work is bounded: so many rows suspected, so many edits read, so many texts followed;
when that is spent, a finding stays without a correction, though one may exist.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from counterpane.craft.checking.edits import Edit
from counterpane.craft.checking.examine import Examined, TextCorrection, reexamine
from counterpane.craft.checking.pieces import later_pieces
from counterpane.craft.checking.restating import restated
from counterpane.craft.checking.rewriting import lines_with, written
from counterpane.craft.checking.suspects import Suspect, suspects
from counterpane.craft.checking.troubles import counting_troubles, only_drifts, reading_troubles
from counterpane.craft.rows.instructions import Instructions, Step, read_again
from counterpane.craft.rows.tree import Row

# House bounds, in characters, since what a text or row costs goes with its length. A row has some 130 edits. To list
# and follow one of many rows that a line stands for costs what so many characters of a text do.
A_ROW = 10
LONG = 6_000
MOST_READ, MOST_READ_OF_LONG = 6_000, 1_500
FORESEEN, SHARE = 6, 8  # Of an edit that need not be read: so many, and one for so many of its row.
MOST_FOLLOWED, MOST_TEXTS = 25_000, 24
# A row that keeps its count has given no trouble: its edits are read when those of others are.
LATER = 4
# With more faults than this, a text is no pattern with a slip in it.
MOST_FAULTS = 40
MOST_OFFERED, MOST_OF_LINE, MOST_APART = 3, 2, 6
# Rows that end with another count than they began with do so by design or by mistake; a row like another is no slip.
DRIFTS, LIKE_ANOTHER, UNEVEN, MOST_UNEVEN = 6, 3, 2, 3
ONLY_BETTER = 20
MUCH_LESS_LIKELY = 4
SEVERAL = 2
KINDS = ("row", "cast-on", "picked-up", "multiple", "count", "named", "asked")


@dataclass(frozen=True, slots=True)
class _Tried:
    """A correction to be tried, with the row as it then reads where its words alone tell."""

    correction: TextCorrection
    row: Row | None = None


@dataclass(slots=True)
class _Search:
    """What may still be tried, in characters to read and texts to follow, and what was found.

    `stuck` is in how many pieces a knitter is stuck. `apart` are corrections of rows that fit the count and leave
    repeats that do not nest: offered where no other is found.
    """

    examined: Examined
    stuck: int
    readings: int
    texts: int
    found: list[TextCorrection]
    apart: list[TextCorrection]

    @classmethod
    def of(cls, examined: Examined) -> _Search:
        """Begin a search within the bounds for a text of this length."""
        length = max(1, len(examined.text), A_ROW * len(examined.rows))
        readings = MOST_READ_OF_LONG if length > LONG else MOST_READ
        return cls(examined, len(examined.jams), readings, max(1, min(MOST_TEXTS, MOST_FOLLOWED // length)), [], [])

    def enough(self, correction: TextCorrection) -> bool:
        """Tell whether one need not be tried: so many are known for its line, or for the count that is wrong."""
        if (self.found or self.apart) and len(self.examined.text) > LONG:
            return True
        if len(self.apart) >= MOST_APART:
            return True
        rows = [other for other in self.found if other.kind == "row"]
        own = sum(other.line == correction.line for other in rows)
        if correction.kind != "row" or correction.partial:
            return correction.kind == "row" and own >= MOST_OF_LINE
        return own >= MOST_OFFERED or len(rows) >= MOST_OFFERED * max(1, self.stuck)


def with_corrections(examined: Examined) -> Examined:
    """Return what is known of a text in one size with the corrections found for its troubles."""
    if not may_be_found(examined):
        return examined
    before = (reading_troubles(examined), counting_troubles(examined))
    search = _Search.of(examined)
    in_doubt = suspects(examined) if before != (0, 0) else []
    stated = (_Tried(correction) for correction in restated(examined))
    for tried in sorted((*stated, *_of_rows(search, in_doubt)), key=lambda tried: tried.correction.weight):
        if search.texts > 0 and not search.enough(tried.correction):
            _keep(search, tried, before)
    rows_corrected = any(correction.kind == "row" for correction in search.found)
    found = sorted(search.found + ([] if rows_corrected else search.apart), key=lambda correction: correction.weight)
    several = search.stuck >= SEVERAL or before[0] >= SEVERAL
    return replace(
        examined,
        corrections=tuple(
            correction for correction in found if correction.partial or _is_likely(correction, found, several)
        ),
    )


def may_be_found(examined: Examined) -> bool:
    """Tell whether a text has rows, and not so many faults that it is no pattern with a slip in it."""
    return bool(examined.rows) and reading_troubles(examined) <= MOST_FAULTS


def _is_likely(correction: TextCorrection, found: Sequence[TextCorrection], several: bool) -> bool:
    """Tell whether a correction is hardly less likely than the best, of its line where several pieces are wrong."""
    best = min(other.weight for other in found if not several or other.line == correction.line)
    return correction.weight <= best + MUCH_LESS_LIKELY


def _of_rows(search: _Search, rows: Sequence[Suspect]) -> Iterator[_Tried]:
    """Yield the corrections of rows that pass the cheap test, as many as may be read."""
    tried: list[tuple[int, int, Edit, Suspect]] = []
    for place, row in enumerate(rows):
        more = row.penalty + LATER * row.keeps
        tried += [(edit.weight + more, place, edit, row) for edit in row.edits()]
    for _, _, edit, row in sorted(tried, key=lambda each: each[:2]):
        misfit = row.is_misfit(edit)
        # A row worked costs what a letter read does.
        length = len(row.words.text)
        search.readings -= FORESEEN + length // SHARE if misfit else length + row.upto - row.index
        if search.readings < 0:
            return
        if misfit:
            continue
        new = row.edited(edit) if row.plain else None
        if new is None and row.plain:
            continue
        likely = edit.weight + row.penalty - LIKE_ANOTHER * (new is not None and row.is_like_another(new))
        lines = row.place.line, row.end.line
        yield _Tried(TextCorrection("row", edit.changes, likely, *lines, partial=bool(row.faults)), new)


def _keep(search: _Search, tried: _Tried, before: tuple[int, int]) -> None:
    """Write a correction into the text, follow the text, and keep the correction where all is well then."""
    search.texts -= 1
    correction, after = tried.correction, corrected(search.examined, tried)
    left = (reading_troubles(after), counting_troubles(after))
    healed = left[1] == 0 and left[0] <= before[0] and (left != before or correction.kind in ("asked", "multiple"))
    better = left[0] <= before[0] and left[1] <= before[1] and left != before
    partly = correction.partial or len(after.jams) < search.stuck
    if len(after.rows) != len(search.examined.rows) or not (healed or (better and partly)):
        return
    if correction.kind == "row" and only_drifts(search.examined) and after.chain.drift != 0:
        return
    weight = correction.weight + (0 if healed else ONLY_BETTER) + _strangeness(after)
    apart = correction.kind == "row" and after.chain.suspicious
    (search.apart if apart else search.found).append(replace(correction, weight=weight, partial=not healed))


def _strangeness(after: Examined) -> int:
    """Return what counts against a corrected text: rows that do not return to their start, uneven counts."""
    drifts = (bool(after.chain.starts) and after.chain.drift != 0) + _later_drifts(after)
    uneven = len({row.after for row in after.followed if row.after is not None}) - 1
    return DRIFTS * drifts + UNEVEN * max(0, min(uneven, MOST_UNEVEN))


def _later_drifts(after: Examined) -> int:
    """Return how many pieces but the first end with another count than they begin with."""
    counts = {row.row.place: row for row in after.followed}
    pieces = [rows for _, rows in later_pieces(after.instructions.steps, after.rows) if rows]
    ends = [(counts[rows[0].place].before, counts[rows[-1].place].after) for rows in pieces if rows[-1].place in counts]
    return sum(None not in each and each[0] != each[1] for each in ends)


def corrected(examined: Examined, tried: _Tried) -> Examined:
    """Read and follow the text, which is in one size, with a correction written into it.

    Of a long text only the row is read again, for a row is read by its own words alone.
    """
    text, read = written(examined.text, tried.correction.changes), examined.instructions
    if tried.row is not None and len(text) > LONG:
        again = replace(read, steps=_with_row(read, tried.row))
    else:
        again = next(read_again(text, read))
    return reexamine(text, again, examined.vocabulary, examined.given, examined.maps)


def _with_row(read: Instructions, new: Row) -> tuple[Step, ...]:
    """Put the words of a row in the place of those that stand there, and of those that rows take over from it."""
    old = next(row.parts for row in read.rows if row.place == new.place)
    return tuple(
        replace(step, parts=new.parts)
        if isinstance(step, Row) and (step.place == new.place or step.parts is old)
        else step
        for step in read.steps
    )


def said(examined: Examined, line: int, *kinds: str) -> tuple[str, ...]:
    """Return the lines that the corrections of a line make of it, as they are to be printed, the likeliest first."""
    corrections = (
        correction
        for correction in examined.corrections
        if correction.line <= line <= correction.last_line and correction.kind in (kinds or KINDS)
    )
    return tuple(
        dict.fromkeys(
            lines_with(examined.text, correction.changes, correction.line, correction.last_line)
            for correction in corrections
        )
    )


def cause(examined: Examined, line: int) -> TextCorrection | None:
    """Return the likeliest correction where it stands on another line than the only trouble, else None."""
    corrections = [
        correction for correction in examined.corrections if correction.kind != "asked" and not correction.partial
    ]
    if len(examined.jams) >= SEVERAL:
        return None
    return corrections[0] if corrections and not corrections[0].line <= line <= corrections[0].last_line else None


def pointing(examined: Examined, line: int, hint: str) -> str:
    """Return a hint that begins with the line where the cause probably stands."""
    elsewhere = cause(examined, line)
    return f"Look at line {elsewhere.line} first: one change there puts this right. {hint}" if elsewhere else hint

"""Say a text of rows back in other words: the answer of `counterpane say` and `POST /v1/wordings`, as JSON values."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import repeat
from typing import Any, Literal

from counterpane.craft.checking import Examined, examine
from counterpane.craft.checking.follow import Followed
from counterpane.craft.counts.wellformed import within
from counterpane.craft.counts.writing_out import WrittenOut, stitch_by_stitch, write_out
from counterpane.craft.rows.instructions import AgainStep, StartStep
from counterpane.craft.rows.say import NOTHING, WordsKind
from counterpane.craft.rows.tree import OpenRepeat, Place, Row, Turn
from counterpane.craft.rules import judge_text
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library.tables import Column, aligned, markdown
from counterpane.library.texts.checks import finding_json
from counterpane.library.texts.rewording import UNREAD, Manner, SaidRow, reworded, said_rows

Form = Literal["lines", "table", "markdown"]
_CHOICES = frozenset({"ambiguous-term", "repeat-assumed", "cast-on-differs"})
"""Findings that are no errors and still tell how the words were understood."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """How a text is to be said: None for the terms keeps its own; `count` is how many stitches it begins with."""

    terms: Terms | None = None
    words: WordsKind = "short"
    form: Form = "lines"
    count: int | None = None
    single: bool = False


def wanted_of(request: Mapping[str, Any]) -> Wanted:
    """Return what a request of the API asks for."""
    return Wanted(
        request.get("terms"),
        request.get("words", "short"),
        request.get("as", "lines"),
        request.get("count"),
        request.get("stitch_by_stitch", False),
    )


@dataclass(frozen=True, slots=True)
class _Line:
    """A listed row with its words; how it is worked at the count before it, where that is known."""

    row: Row
    words: str
    before: int | None = None
    after: int | None = None
    written: str | None = None
    times: tuple[int, ...] = ()
    kept: str | None = None

    @property
    def repeats(self) -> bool:
        """Whether it has a repeat to be written out."""
        return any(isinstance(node, OpenRepeat) for node in within(self.row.parts))


def say_text(text: str, vocabulary: Vocabulary, wanted: Wanted, page: int | None = None) -> dict[str, Any]:
    """Say a text back; a table is wrapped to a page of so many characters.

    Counts are null where neither the request nor the text says how many stitches are cast on.
    """
    examined = examine(text, vocabulary, wanted.count)
    manner = Manner(vocabulary, wanted.terms or examined.instructions.terms, wanted.words, wanted.terms is not None)
    said = said_rows(examined, manner)
    lines = list(_lines(examined, said, manner, wanted))
    told = [finding for finding in judge_text(examined) if finding.severity == "error" or finding.rule in _CHOICES]
    return {
        "terms": manner.terms,
        "rows": [_row_json(line) for line in lines],
        "text": _laid_out(lines, wanted, page) or _in_lines(examined, said, manner, lines if wanted.count else ()),
        "findings": [finding_json(finding) for finding in told],
    }


# -- rows


def _lines(examined: Examined, said: Mapping[Place, SaidRow], manner: Manner, wanted: Wanted) -> Iterator[_Line]:
    """Yield the listed rows in words and written out."""
    counted = wanted.count is not None or examined.instructions.cast_on is not None
    written = _written(examined) if counted else repeat(None)
    for followed, out in zip(examined.followed, written, strict=False):
        row = followed.row
        own = said.get(row.start)
        line = _Line(row, _words(row, own, examined.text, manner), kept=_kept(row, own))
        if counted:
            line = replace(line, before=followed.before, after=followed.after)
        if out and out.parts is not None and not line.kept:
            fixed = (stitch_by_stitch(out.parts) if wanted.single else None) or out.parts
            line = replace(line, written=manner.row(fixed, own.printed if own else NOTHING), times=out.times)
        yield line


def _kept(row: Row, own: SaidRow | None) -> str | None:
    """Return why the words of a row stay as printed."""
    return own.kept if own else None if row.readable else UNREAD


def _words(row: Row, own: SaidRow | None, text: str, manner: Manner) -> str:
    """Return the words of a row, as printed where they are kept."""
    if own is not None and own.words is None:
        return " ".join(text[own.begin : own.end].split())
    if not row.readable:
        return row.text
    return manner.row(row.parts, own.printed if own else NOTHING)


def _written(examined: Examined) -> Iterator[WrittenOut | None]:
    """Yield each listed row written out for the stitches before it; None where they are not known.

    Markers and turns are followed from row to row up to a repeat line, which may move them.
    """
    followed = iter(examined.followed)
    turns = any(isinstance(node, Turn) for row in examined.rows for node in within(row.parts))
    earlier: WrittenOut | None = None
    lost = False
    for step in examined.instructions.steps:
        if isinstance(step, Row):
            row = next(followed)
            earlier = None if lost else _row_written(row, earlier, examined.vocabulary)
            yield earlier
        else:
            earlier = None
            lost = turns if isinstance(step, AgainStep) else lost and not isinstance(step, StartStep)


def _row_written(followed: Followed, earlier: WrittenOut | None, vocabulary: Vocabulary) -> WrittenOut | None:
    if followed.before is None or followed.after is None or not followed.row.readable:
        return None
    return write_out(followed.row.parts, followed.before, vocabulary, followed.row.side, earlier)


def _row_json(line: _Line) -> dict[str, Any]:
    return {
        "label": line.row.label,
        "section": line.row.section,
        "side": line.row.side,
        "line": line.row.place.line,
        "words": line.words,
        "kept": line.kept,
        "written_out": line.written,
        "before": line.before,
        "after": line.after,
        "repeats": list(line.times),
    }


# -- forms


def _in_lines(examined: Examined, said: Mapping[Place, SaidRow], manner: Manner, lines: Sequence[_Line]) -> str:
    """Return the text said again, under each of these rows with a repeat the same at its count, once for each count."""
    beneath: dict[Place, dict[int | None, str]] = {}
    for line in lines:
        if line.written is not None and line.repeats:
            own = beneath.setdefault(line.row.start, {})
            which = f" (row {line.row.label})" if own else ""
            told = manner.prose(f"With {line.before} st{'' if line.before == 1 else 's'}")
            own.setdefault(line.before, f"{told}{which}: {line.written}.")
    return reworded(examined.text, said, manner, {place: tuple(own.values()) for place, own in beneath.items()})


def _laid_out(lines: Sequence[_Line], wanted: Wanted, page: int | None) -> str | None:
    """Return the rows as a table in the form wanted; None where no table is wanted."""
    if wanted.form == "lines" or not lines:
        return None
    columns = [column for column in _columns(lines, wanted) if any(column.cells)]
    return markdown(columns) if wanted.form == "markdown" else aligned(columns, page)


def _columns(lines: Sequence[_Line], wanted: Wanted) -> list[Column]:
    written = [Column("Written out", tuple(line.written or "" for line in lines))]
    return [
        Column("Section", tuple(line.row.section or "" for line in lines)),
        Column("Row", tuple(line.row.label for line in lines)),
        Column("Side", tuple(line.row.side or "" for line in lines)),
        Column("Words", tuple(line.words for line in lines)),
        *(written if wanted.count else []),
        Column("Repeats", tuple(", ".join(map(str, line.times)) for line in lines)),
        Column("Before", tuple("" if line.before is None else str(line.before) for line in lines), number=True),
        Column("After", tuple("" if line.after is None else str(line.after) for line in lines), number=True),
    ]

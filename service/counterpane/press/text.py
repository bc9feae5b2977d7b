"""A pattern as plain text, 80 columns wide; rows break after a comma or semicolon only."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from counterpane.craft.drawing import Picture
from counterpane.craft.drawing.chart import Lettered
from counterpane.craft.pattern import Entry, Pattern
from counterpane.press.blocks import Block, Entries, Figure, Heading, Instructions, Items, Orders, Paragraph, Table
from counterpane.press.page import page
from counterpane.press.prose import quiet, whole, wrapped

_UNDERLINES = {1: "=", 2: "-"}
_HANGING = "    "
_GAP = 2
_WIDEST_NAME = 24
"""Columns of the names of a list of entries; longer ones take the room they need. House figure."""


def as_text(pattern: Pattern, pictures: Sequence[Picture] = ()) -> str:
    """Return the pattern as text that ends with a line end; equal patterns give equal text.

    Pictures are told in words and drawn in letters.
    """
    return text_of(page(pattern, pictures))


def text_of(page: Iterable[Block]) -> str:
    """Return the blocks of a page as text that ends with a line end."""
    blocks = [block for block in page if not _is_empty(block)]
    parts = [_laid_out(blocks[0])] if blocks else []
    for earlier, block in pairwise(blocks):
        parts.append(_space(earlier, block) + _laid_out(block))
    return "".join(parts) + "\n"


def _is_empty(block: Block) -> bool:
    return block in (Items(()), Entries(()))


def _space(earlier: Block, block: Block) -> str:
    if isinstance(block, Heading) and block.level == 2:
        return "\n\n\n"
    under = isinstance(earlier, Heading) and earlier.level > 1 and not isinstance(block, Heading)
    return "\n" if under else "\n\n"


def _laid_out(block: Block) -> str:
    match block:
        case Heading(text, level):
            line = quiet(text)
            rule = _UNDERLINES.get(level)
            return f"{line}\n{rule * len(line)}" if rule else line
        case Paragraph(text):
            return wrapped(text)
        case Items(texts):
            return "\n".join(wrapped(text, "- ", "  ") for text in texts)
        case Entries(entries):
            return _columns(entries)
        case Instructions(lines) | Orders(lines):
            return "\n".join(whole(line) for line in lines)
        case Figure(picture):
            return _told(picture)
        case Table(heads, rows):
            return _tabled(heads, rows)


def _told(picture: Picture) -> str:
    """Say a picture in sentences and draw its charts in letters."""
    said = [wrapped(text, "- ", "  ") for text in picture.lines]
    key = [_columns(tuple(Entry(sign, means) for sign, means in picture.key))] if picture.key else []
    return "\n\n".join(("\n".join(said), *map(_lettered, picture.charts), *key))


def _lettered(chart: Lettered) -> str:
    lines = (f"{_HANGING}{line}" for line in chart.lines())
    return "\n".join((wrapped(chart.heading), *lines, wrapped(chart.note)))


def _tabled(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """Lay a table out in columns, the last one wrapped; a table that is too wide becomes a list of entries."""
    wide = [max(len(quiet(row[place])) for row in (heads, *rows)) + _GAP for place in range(len(heads) - 1)]
    return "\n".join(_cells(row, wide) for row in (heads, *rows))


def _cells(row: Sequence[str], wide: Sequence[int]) -> str:
    *first, last = map(quiet, row)
    room = sum(wide)
    start = "".join(cell.ljust(each) for cell, each in zip(first, wide, strict=True))
    return wrapped(last, start, " " * room) if last else start.rstrip()


def _columns(entries: tuple[Entry, ...]) -> str:
    names = [quiet(entry.name) for entry in entries]
    room = min(_WIDEST_NAME, max(map(len, names))) + _GAP
    return "\n".join(
        wrapped(entry.text, name.ljust(room) if len(name) < room else f"{name}: ", " " * room)
        for name, entry in zip(names, entries, strict=True)
    )

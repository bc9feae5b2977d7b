"""A pattern as Markdown (CommonMark): rows as list items, each on one line."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from counterpane.craft.drawing import Picture
from counterpane.craft.drawing.chart import Lettered
from counterpane.craft.pattern import Pattern
from counterpane.press.blocks import Block, Entries, Figure, Heading, Instructions, Items, Orders, Paragraph, Table
from counterpane.press.page import page
from counterpane.press.prose import quiet

_SIGNS = re.compile(r"([\\`*_\[\]<>#|~])")


def as_markdown(pattern: Pattern, pictures: Sequence[Picture] = ()) -> str:
    """Return the pattern as Markdown that ends with a line end; equal patterns give equal text.

    Pictures are told in words and drawn in letters.
    """
    return markdown_of(page(pattern, pictures))


def markdown_of(page: Iterable[Block]) -> str:
    """Return the blocks of a page as Markdown that ends with a line end."""
    laid_out = (_laid_out(block) for block in page)
    return "\n\n".join(text for text in laid_out if text) + "\n"


def _laid_out(block: Block) -> str:
    match block:
        case Heading(text, level):
            return f"{'#' * level} {_prose(text)}"
        case Paragraph(text):
            return _prose(text)
        case Items(texts):
            return "\n".join(f"- {_prose(text)}" for text in texts)
        case Entries(entries):
            return "\n".join(f"- **{_prose(entry.name)}**: {_prose(entry.text)}" for entry in entries)
        case Instructions(lines):
            return "\n".join(f"- {line}" for line in lines)
        case Orders(lines):
            return "\n".join(lines)
        case Figure(picture):
            return _told(picture)
        case Table(heads, rows):
            return "\n".join((_cells(heads), _cells(["---"] * len(heads)), *map(_cells, rows)))


def _told(picture: Picture) -> str:
    """Say a picture in sentences and draw its charts in letters, in a block that keeps its columns."""
    said = "\n".join(f"- {_prose(text)}" for text in picture.lines)
    charts = ("\n".join((_prose(each.heading), "", *_block(each), "", _prose(each.note))) for each in picture.charts)
    key = "\n".join(f"- `{sign}` {_prose(means)}" for sign, means in picture.key)
    return "\n\n".join(filter(None, (said, *charts, key)))


def _block(chart: Lettered) -> tuple[str, ...]:
    return ("```text", *chart.lines(), "```")


def _cells(row: Sequence[str]) -> str:
    return f"| {' | '.join(cell if cell == '---' else _prose(cell) for cell in row)} |"


def _prose(text: str) -> str:
    return escaped(quiet(text))


def escaped(text: str) -> str:
    """Escape the signs that Markdown would take for its own.

    Rows need none: a star of theirs is followed by a stitch or stands alone, and so never closes what another opens.
    """
    return _SIGNS.sub(r"\\\1", text)

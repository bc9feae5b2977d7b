"""A pattern as Markdown (CommonMark): rows as list items, each on one line."""

from __future__ import annotations

import re
from collections.abc import Iterable

from counterpane.craft.pattern import Pattern
from counterpane.press.page import Block, Entries, Heading, Instructions, Items, Orders, Paragraph, page
from counterpane.press.prose import quiet

_SIGNS = re.compile(r"([\\`*_\[\]<>#|~])")


def as_markdown(pattern: Pattern) -> str:
    """Return the pattern as Markdown that ends with a line end; equal patterns give equal text."""
    return markdown_of(page(pattern))


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


def _prose(text: str) -> str:
    return escaped(quiet(text))


def escaped(text: str) -> str:
    """Escape the signs that Markdown would take for its own.

    Rows need none: a star of theirs is followed by a stitch or stands alone, and so never closes what another opens.
    """
    return _SIGNS.sub(r"\\\1", text)

"""A pattern as PDF: A4 or Letter, vector pictures, embedded fonts, page numbers, tags for PDF/UA-1.

Typst lays the page out and checks it against PDF/UA-1 as far as it can; words go in as data and are never read as
markup. Fonts of the machine are not looked at, so that the same pattern gives the same bytes.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from importlib.resources import files

from counterpane.craft.drawing import Picture
from counterpane.craft.pattern import Pattern
from counterpane.press import Paper
from counterpane.press.page import Block, Entries, Heading, Instructions, Items, Orders, Paragraph, page

PAPERS: Mapping[Paper, str] = {"a4": "a4", "letter": "us-letter"}
REGIONS = {"us": "us", "uk": "gb"}


def as_pdf(pattern: Pattern, pictures: Sequence[Picture] = (), paper: Paper = "a4") -> bytes:
    """Return the pattern as a PDF file; equal patterns and pictures give equal bytes."""
    import typst  # It takes a while to load, and most commands lay out no page.

    document = {
        "title": pattern.title,
        "region": REGIONS[pattern.terms],
        "paper": PAPERS[paper],
        "foot": _foot(pattern),
        "blocks": [*_blocks(pattern), *map(_picture, pictures)],
    }
    template = files("counterpane.press").joinpath("pattern.typ").read_bytes()
    inputs = {"doc": json.dumps(document)}
    made: bytes = typst.compile(
        template, format="pdf", sys_inputs=inputs, ignore_system_fonts=True, pdf_standards=["ua-1"], timestamp=0
    )
    return made


def _foot(pattern: Pattern) -> str:
    counts = f"{pattern.last_row} rows, {pattern.cast_on.stitches} stitches cast on"
    return f"{pattern.edition}; {counts}" if pattern.edition else counts


def _blocks(pattern: Pattern) -> Iterator[dict[str, object]]:
    for block in page(pattern):
        yield from _laid_out(block)


def _laid_out(block: Block) -> Iterator[dict[str, object]]:
    match block:
        case Heading(text, level):
            yield {"kind": "heading", "text": text, "level": level}
        case Paragraph(text):
            yield {"kind": "paragraph", "text": text}
        case Items(texts) if texts:
            yield {"kind": "items", "lines": texts}
        case Entries(entries) if entries:
            yield {"kind": "entries", "entries": [(entry.name, entry.text) for entry in entries]}
        case Instructions(lines):
            yield {"kind": "rows", "lines": lines}
        case Orders(lines):
            yield {"kind": "orders", "lines": lines}
        case _:
            pass


def _picture(picture: Picture) -> dict[str, object]:
    width = float(picture.size[0])
    return {"kind": "picture", "name": picture.name, "svg": picture.svg, "width": width, "words": picture.words}

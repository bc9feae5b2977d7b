"""A pattern as PDF: A4 or Letter, vector pictures, embedded fonts, page numbers, tags for PDF/UA-1.

Typst lays the page out and checks it against PDF/UA-1 as far as it can; words go in as data and are never read as
markup. Fonts of the machine are not looked at, so that the same pattern gives the same bytes.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict
from importlib.resources import files

from counterpane.craft.drawing import Picture
from counterpane.craft.pattern import Pattern
from counterpane.craft.stitches import Terms
from counterpane.press import Paper
from counterpane.press.blocks import Block, Entries, Figure, Heading, Instructions, Items, Orders, Paragraph, Table
from counterpane.press.page import page
from counterpane.press.words import ENGLISH, PageWords, in_languages

PAPERS: Mapping[Paper, str] = {"a4": "a4", "letter": "us-letter"}
SCALE = 0.78
"""Points to a unit of a picture, so that its letters are as large as those around it; house figure."""
WIDEST_PT, HIGHEST_PT = 490, 590
"""Room for a picture under its heading on either paper, within the margins of `pattern.typ`."""
REGIONS = {"us": "us", "uk": "gb"}


def as_pdf(pattern: Pattern, pictures: Sequence[Picture] = (), paper: Paper = "a4") -> bytes:
    """Return the pattern as a PDF file; equal patterns and pictures give equal bytes."""
    foot = f"{pattern.last_row} rows, {pattern.cast_on.stitches} stitches cast on"
    blocks, edition = page(pattern, pictures), pattern.edition
    return pdf_of(blocks, pattern.title, pattern.terms, paper, foot=foot, edition=edition, asks=pattern.asks)


def pdf_of(
    blocks: Iterable[Block],
    title: str,
    terms: Terms,
    paper: Paper = "a4",
    *,
    foot: str = "",
    edition: str = "",
    asks: str = "",
    words: PageWords = ENGLISH,
) -> bytes:
    """Return blocks as a PDF file; `foot`, the edition and `asks` stand at the foot of each page.

    `words` are those of the page itself, in the language of the blocks.
    """
    import typst  # It takes a while to load, and most commands lay out no page.

    document = {
        "title": title,
        "lang": words.code or "en",
        "region": None if words.code else REGIONS[terms],
        "words": asdict(words),
        "paper": PAPERS[paper],
        "foot": foot,
        "edition": edition,
        "asks": asks,
        "blocks": [each for block in blocks for each in _laid_out(block, words)],
    }
    template = files("counterpane.press").joinpath("pattern.typ").read_bytes()
    inputs = {"doc": json.dumps(document)}
    made: bytes = typst.compile(
        template, format="pdf", sys_inputs=inputs, ignore_system_fonts=True, pdf_standards=["ua-1"], timestamp=0
    )
    return made


def _laid_out(block: Block, words: PageWords) -> Iterator[dict[str, object]]:
    match block:
        case Heading(text, level):
            yield {"kind": "heading", "text": _said(text, words), "level": level}
        case Paragraph(text):
            yield {"kind": "paragraph", "text": _said(text, words)}
        case Items(texts) if texts:
            yield {"kind": "items", "lines": _each(texts, words)}
        case Entries(entries) if entries:
            yield {"kind": "entries", "entries": [_each((entry.name, entry.text), words) for entry in entries]}
        case Instructions(lines, name, first, last):
            yield {"kind": "rows", "lines": _each(lines, words), "name": name, "first": first, "last": last}
        case Orders(lines):
            yield {"kind": "orders", "lines": _each(lines, words)}
        case Figure(picture):
            yield _picture(picture)
        case Table(heads, rows):
            yield {"kind": "table", "heads": _each(heads, words), "rows": [_each(row, words) for row in rows]}
        case _:
            pass


def _each(texts: Iterable[str], words: PageWords) -> list[list[tuple[str, bool]]]:
    return [_said(text, words) for text in texts]


def _said(text: str, words: PageWords) -> list[tuple[str, bool]]:
    """Return a text in pieces, each with whether it is English on a page of another language."""
    return list(in_languages(text, words))


def _picture(picture: Picture) -> dict[str, object]:
    """Return a picture with its width in points: at its scale, or smaller where it is too wide or too high."""
    wide, high = map(float, picture.size)
    width = wide * min(SCALE, WIDEST_PT / wide, HIGHEST_PT / high)
    return {"kind": "picture", "name": picture.name, "svg": picture.svg, "width": width, "words": picture.words}

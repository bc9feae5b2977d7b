"""A pattern as PDF, read back with a library that knows nothing of how it was made."""

from __future__ import annotations

import io
import re
from collections.abc import Mapping

import pytest
from pypdf import PdfReader

from counterpane.craft.component import Component
from counterpane.library.patterns.drawings import pictures
from counterpane.library.patterns.patterns import write_pattern
from counterpane.press import Paper
from counterpane.press.blocks import Instructions
from counterpane.press.page import page
from counterpane.press.pdf import as_pdf
from craft.constructions.asking import planned
from craft.pattern.plans import eyelets, vocabulary, waffle


def _text(pdf: bytes) -> str:
    """Return the words of all pages without spaces, since lines break anywhere."""
    return re.sub(r"\s", "", "".join(each.extract_text() for each in PdfReader(io.BytesIO(pdf)).pages))


def test_every_row_is_on_the_paper() -> None:
    """Word for word."""
    pattern = write_pattern(eyelets(), vocabulary())
    text = _text(as_pdf(pattern))
    rows = [line for block in page(pattern) if isinstance(block, Instructions) for line in block.lines]
    assert rows and all(re.sub(r"\s", "", row) in text for row in rows)


@pytest.mark.parametrize(("paper", "size"), [("a4", (595, 842)), ("letter", (612, 792))])
def test_pages_have_the_size_of_the_paper(paper: Paper, size: tuple[int, int]) -> None:
    """A4 is 210 by 297 mm (ISO 216), Letter 8.5 by 11 in (ANSI/ASME Y14.1), in points."""
    box = PdfReader(io.BytesIO(as_pdf(write_pattern(waffle(), vocabulary()), paper=paper))).pages[0].mediabox
    assert (round(float(box.width)), round(float(box.height))) == size


def test_every_page_has_its_number_and_the_number_of_pages() -> None:
    """At its foot."""
    pages = PdfReader(io.BytesIO(as_pdf(write_pattern(waffle(), vocabulary())))).pages
    assert all(f"{number} / {len(pages)}" in each.extract_text() for number, each in enumerate(pages, 1))


def test_every_page_says_which_rows_stand_on_it() -> None:
    """Before the first row, part by part with the rows of the blanket, and after the last."""
    pages = PdfReader(io.BytesIO(as_pdf(write_pattern(waffle(), vocabulary())))).pages
    words = [re.sub(r"\s", "", each.extract_text()) for each in pages]
    with_rows = "".join(text for text in words if "Row1(RS)" in text)
    assert "beforerow1" in words[0] and "afterrow210" in words[-1]
    assert "Bottomborder,rows1–2(1–12oftheblanket)" in with_rows
    assert "Body,rows1–4(13–194oftheblanket)" in with_rows


def test_the_file_has_a_title_a_language_and_tags() -> None:
    """PDF/UA-1 (ISO 14289-1) asks for all three; the typesetter checks what it can of the rest."""
    reader = PdfReader(io.BytesIO(as_pdf(write_pattern(waffle(), vocabulary(), title="Rime"))))
    root = reader.trailer["/Root"]
    assert reader.metadata is not None and reader.metadata.title == "Rime"
    assert (root["/Lang"], bool(root["/MarkInfo"]["/Marked"])) == ("en-US", True)


def test_all_fonts_are_in_the_file() -> None:
    """None is left to the machine that prints it."""
    reader = PdfReader(io.BytesIO(as_pdf(write_pattern(waffle(), vocabulary()))))
    fonts = [font.get_object() for each in reader.pages for font in each["/Resources"]["/Font"].values()]
    files = [font["/DescendantFonts"][0].get_object()["/FontDescriptor"] for font in fonts]
    assert files and all("/FontFile3" in each or "/FontFile2" in each for each in files)


def test_markup_in_a_title_is_printed_as_it_stands() -> None:
    """A title is a text that anybody may write."""
    pattern = write_pattern(waffle(), vocabulary(), title='#panic("no") *star* $x$')
    assert '#panic("no")*star*$x$' in _text(as_pdf(pattern))


def test_equal_plans_give_equal_bytes(starters: Mapping[str, Component]) -> None:
    """With all their pictures."""
    plans = (planned(starters, vocabulary(), "eyelet-dots") for _ in range(2))
    one, other = (
        as_pdf(write_pattern(plan, vocabulary()), pictures(plan, vocabulary(), "Rime", "us", close_up=True))
        for plan in plans
    )
    assert one == other

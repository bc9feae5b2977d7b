"""Editions of the recipes of a library, from the command line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from pypdf import PdfReader

from cli.conftest import Type

STORE = ("--store", "lib.db")
ADD = ("edition", "add", "first-frost", "--by", "Ines", "--date", "2026-11-26", *STORE)


def test_an_edition_is_published_listed_and_shown(typed: Type) -> None:
    """Its number and day stand in the list and in the text."""
    assert typed(*ADD).out.startswith("published edition 1 of first-frost, sha256 ")
    assert "2026-11-26" in typed("edition", "list", "first-frost", *STORE).out
    assert "\nEdition 1, 2026-11-26.\n" in typed("edition", "show", "first-frost", *STORE).out


def test_an_edition_in_several_sizes_tells_which_it_adds(typed: Type) -> None:
    """The erratum of the second names them, as words and as JSON."""
    typed(*ADD)
    assert typed(*ADD, "--size", "preemie", "--size", "pram", "--note", "In two sizes.").status == 0
    assert "Size pram is added." in typed("edition", "errata", "first-frost", *STORE).out
    assert json.loads(typed("edition", "errata", "first-frost", "--json", *STORE).out)["note"] == "In two sizes."


def test_nothing_is_touched_where_all_pin_the_latest(typed: Type) -> None:
    """It is said, and the status is 0."""
    done = typed("edition", "touched", "waffle", *STORE)
    assert (done.status, done.out) == (0, "No recipe and no edition pins an older revision of waffle.\n")


def test_a_pdf_is_written_into_a_file(typed: Type, tmp_path: Path) -> None:
    """With the edition in its foot on every page."""
    typed(*ADD)
    assert typed("edition", "show", "first-frost", "--as", "pdf", "--out", "one.pdf", *STORE).status == 0
    pages = PdfReader(tmp_path / "one.pdf").pages
    assert len(pages) > 1 and all("Edition 1, 2026-11-26" in page.extract_text() for page in pages)


@pytest.mark.parametrize(
    ("argv", "status", "said"),
    [
        (("edition", "show", "first-frost", *STORE), 3, "no edition 1"),
        (("edition", "list", "nobody", *STORE), 3, "nobody"),
        ((*ADD[:6], "soon", *STORE), 2, "Write a day"),
        ((*ADD, "--size", "pram"), 2, "/sizes"),
    ],
)
def test_what_cannot_be_done_is_said(typed: Type, argv: tuple[str, ...], status: int, said: str) -> None:
    """With the exit status of its kind."""
    done = typed(*argv)
    assert (done.status, said in done.err) == (status, True)

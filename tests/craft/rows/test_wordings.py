"""Wordings of handbooks and of today, each read as the present wording beside it: tables in `wordings/`.

A line is "words => present words", or "words => !rule word" for what cannot be read. Counts are those of the craft;
wordings named in a table's first line come from the books there, the others are common practice, no source.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from counterpane.craft.rows.read import ReadRow, read_row
from counterpane.craft.rows.say import say_row
from counterpane.craft.stitches import Vocabulary

TABLES = sorted(Path(__file__).with_name("wordings").glob("*.txt"))


def lines() -> list[object]:
    """Return words and meaning of every line, named by its table."""
    out: list[object] = []
    for table in TABLES:
        for line in table.read_text(encoding="utf-8").splitlines():
            if line and not line.startswith("#"):
                words, _, meant = line.partition(" => ")
                out.append(pytest.param(words, meant, id=f"{table.stem}: {words}"))
    return out


def understood(read: ReadRow, vocabulary: Vocabulary) -> str:
    """Return the first fault that makes a row unreadable, or the row in present words."""
    fault = next((fault for fault in read.faults if fault.fatal), None)
    return f"!{fault.rule} {fault.word}".strip() if fault else say_row(read.parts, vocabulary)


@pytest.mark.parametrize(("words", "meant"), lines())
def test_a_wording_means_what_stands_beside_it(words: str, meant: str, vocabulary: Vocabulary) -> None:
    """Old and present wordings of one row give the same tree, and what cannot be read is named."""
    assert understood(read_row(words, vocabulary), vocabulary) == meant


@pytest.mark.parametrize(("words", "meant"), lines())
def test_present_words_are_read_as_what_they_say(words: str, meant: str, vocabulary: Vocabulary) -> None:
    """The present wording of every line reads back as itself."""
    if not meant.startswith("!"):
        assert understood(read_row(meant, vocabulary), vocabulary) == meant

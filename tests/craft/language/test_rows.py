"""Rows in another language: in English its phrases give what the English sayer gives, in German no English is left."""

import re

import pytest

from counterpane.craft.language import ENGLISH
from counterpane.craft.language.rows import Sayer
from counterpane.craft.rows.instructions import read_text
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.say import say_row
from counterpane.seeding import load_vocabulary
from counterpane.seeding.components import load_components
from counterpane.seeding.languages import load_language

ROWS = [
    row
    for component in load_components()
    for version in component.versions
    for row in read_text(version.rows, load_vocabulary()).rows
]
ENGLISH_WORDS = re.compile(r"\b(?:k|p|sts?|rep|from|to|end|last|sl|yo|tog|knit|purl|times|twice|once|turn|next|into)\b")


def test_every_row_of_the_library_is_the_same_in_its_own_phrases() -> None:
    """The phrases that are translated are those that English rows are said in."""
    sayer = Sayer(ENGLISH, load_vocabulary())
    assert len(ROWS) > 200
    for row in ROWS:
        assert sayer.say(row.parts)[0] == say_row(row.parts, load_vocabulary())


def test_no_english_word_is_left_in_a_german_row() -> None:
    """All stitches and phrases of the library have German names."""
    sayer = Sayer(load_language("de"), load_vocabulary())
    for row in ROWS:
        said, missing = sayer.say(row.parts)
        assert not missing
        assert not ENGLISH_WORDS.search(said), said


@pytest.mark.parametrize(
    ("english", "german"),
    [
        ("k2, *p1, k1; rep from * to last st, k1", "2 re, *1 li, 1 re; ab * wdh bis zur letzten M, 1 re"),
        ("k1, *yo, k2tog; rep from * to last 7 sts, k7", "1 re, *U, 2 M re zus; ab * wdh bis zu den letzten 7 M, 7 re"),
        ("[k1, p1] twice, ssk", "[1 re, 1 li] 2-mal, 2 M abgeh zus"),
        ("k3, w&t", "3 re, nächste M umwickeln und wenden"),
        ("purl", "links"),
    ],
)
def test_a_row_is_said_in_the_terms_of_the_german_trade(english: str, german: str) -> None:
    """Terms: common practice, no source."""
    parts = read_row(english, load_vocabulary(), "us").parts
    assert Sayer(load_language("de"), load_vocabulary()).say(parts)[0] == german

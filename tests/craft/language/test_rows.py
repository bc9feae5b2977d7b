"""Rows in another language: in English its phrases give what the English sayer gives, in German no English is left."""

import re

import pytest

from counterpane.craft.language import ENGLISH, Language
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


@pytest.mark.parametrize(
    "row",
    [
        "k to last 10 sts, decrease 2 sts evenly",
        "patt to end, increase 3 sts evenly",
        "*k1, p1; rep from *, end k1",
        "*k1, p1; rep from *",
        "sl wyif to end",
        "bind off all but 3 sts",
        "bind off in pattern all but 3 sts",
        "bind off 3 sts in pattern, k to end",
        "bind off 4 sts, k to end",
        "bind off all sts in pattern",
        "bind off all sts",
        "cast on 4 sts, k to end",
        "pm, k to marker, sm, k to 2 sts before marker, k2tog, rm",
        "k2 in A, p2 in MC, k1 in red",
    ],
)
def test_what_a_sent_row_may_hold_is_said_as_in_an_english_row(row: str) -> None:
    """Markers, colours and stitches bound off stand in no row of the library, but they may in one that is sent."""
    parts = read_row(row, load_vocabulary(), "us").parts
    assert Sayer(ENGLISH, load_vocabulary()).say(parts)[0] == say_row(parts, load_vocabulary()) == row


def test_a_repeat_that_reads_in_two_ways_stays_so() -> None:
    """Whether the first time counts among the three is for its author to say, not for a translation."""
    read = read_row("*k1, p1; rep from * 3 times", load_vocabulary(), "us")
    assert read.faults[0].rule == "ambiguous-term"
    assert Sayer(load_language("de"), load_vocabulary()).say(read.parts)[0] == "*1 re, 1 li; ab * wdh 3-mal"


def test_what_a_language_has_no_words_for_is_named_once() -> None:
    """The row stays readable in English, and a translator sees which words are missing."""
    parts = read_row("k2, yo, k3, yo", load_vocabulary(), "us").parts
    assert Sayer(Language("xx", "None"), load_vocabulary()).say(parts) == ("k2, yo, k3, yo", ("k{n}", "yo"))

"""Prose on a page is read as prose, whatever it says and wherever its lines break."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.rows.clauses import clauses
from counterpane.press.prose import WIDTH, instructs, quiet, whole, wrapped

ROW_LIKE = [
    "Row 3 is worked tightly.",
    "Row 1: k2tog to end.",
    "Knit it loosely. Row 3 (WS): purl it tightly.",
    "Take care; rep rows 1-4 loosely.",
    "Cast on 20 sts loosely.",
    "Turn, then work rows 1-6 once more.",
    "Knit 4 rows.",
    "R11: an opening.",
]


def kinds(text: str) -> set[str]:
    """Return what a reader takes the stretches of a text for."""
    return {clause.kind for clause in clauses(text)}


@pytest.mark.parametrize("text", ROW_LIKE)
def test_a_sentence_that_begins_like_a_row_is_set_aside(text: str) -> None:
    """The sentence is still there, in brackets, and instructs nobody."""
    assert kinds(text) - {"prose", "heading"}
    assert kinds(quiet(text)) <= {"prose", "heading"}


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("It needs a multiple of 5 sts.", "It needs a multiple-of 5 sts."),
        ("It takes an even number of stitches.", "It takes an even-number of stitches."),
        ("First cast on 12 of them.", "First cast-on 12 of them."),
        ("Take note and purl 20 rows.", "Take note and then purl 20 rows."),
    ],
)
def test_a_sentence_that_states_a_count_is_joined_up(text: str, said: str) -> None:
    """A multiple in a note is no statement about the piece."""
    assert quiet(text) == said


def test_ordinary_prose_is_left_alone() -> None:
    """Nothing is changed that need not be."""
    text = "Measure flat: the next row is a RS row (see row 12); 151 stitches."
    assert quiet(text) == text


def test_line_ends_and_what_cannot_be_seen_are_taken_out() -> None:
    """A title of several lines, with NUL bytes, is one line."""
    assert quiet("A\x00 blanket\r\nRow\u200b  x\t") == "A blanket Row x"


def test_no_line_begins_with_a_row_number() -> None:
    """The break moves to the word before."""
    text = "Measured in the middle of the piece before the edge stitches of it, begin at row 12 of it."
    lines = wrapped(text).split("\n")
    assert " ".join(lines) == text
    assert not any(map(instructs, lines))


@settings(max_examples=150, deadline=None)
@given(st.lists(st.sampled_from("row rows 12 1-4 rep work then cast on 20 the next a purl knit . ; , and".split())))
def test_wrapped_prose_is_never_read_as_an_instruction(words: list[str]) -> None:
    """Words of rows in any order stay prose on every line of the page but for one too long to break."""
    lines = wrapped(" ".join(["note", *words])).split("\n")
    assert all(len(line) <= WIDTH for line in lines)
    assert kinds("\n".join(lines)) <= {"prose", "heading", "cast-on", "aside"}


def test_lines_keep_to_the_page_and_to_their_indents() -> None:
    """A list item hangs under its first word."""
    lines = wrapped("word " * 60, "- ", "  ").split("\n")
    assert all(len(line) <= WIDTH for line in lines)
    assert [line[:2] for line in lines] == ["- ", *["  "] * (len(lines) - 1)]


def test_a_word_longer_than_the_page_stays_whole() -> None:
    """An address is not cut."""
    assert wrapped("x" * 200) == "x" * 200


def test_a_wide_row_breaks_after_a_comma_and_is_still_one_row() -> None:
    """The reader joins what hangs under a row."""
    line = f"Row 1 (RS): {', '.join(['k1, p1'] * 30)}."
    lines = whole(line).split("\n")
    assert len(lines) > 1
    assert all(len(each) <= WIDTH for each in lines)
    assert " ".join(each.strip() for each in lines) == line
    assert [clause.kind for clause in clauses("\n".join(lines))] == ["row"]

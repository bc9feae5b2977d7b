"""Stated multiples, cast-ons and ends in the wordings of handbooks and of today; common practice, no source."""

from __future__ import annotations

import pytest

from counterpane.craft.rows.statements import cast_on_in, multiple_in
from counterpane.craft.rows.words import normal_lines
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text


@pytest.mark.parametrize(
    ("words", "of", "plus"),
    [
        ("(multiple of 6 sts plus 2)", 6, 2),
        ("Mult of 8 sts, plus 4", 8, 4),
        ("Multiple: 10 sts + 3", 10, 3),
        ("multiple of 12 sts + 1 + 4 edge", 12, 5),
        ("any number of stitches that will divide by 17, and 14 stitches over", 17, 14),
        ("divided by ten, adding three stitches", 10, 3),
        ("six stitches for each pattern, and two over for the edge", 6, 2),
        ("Each pattern requires 9 stitches, and 4 extra.", 9, 4),
        ("Cast on for each pattern 9 stitches, and 4 for the edge.", 9, 4),
        ("Cast on stitches in 10's, and 2 over.", 10, 2),
        ("Cast on stitches by eights, and 3 over.", 8, 3),
        ("12 st repeat plus 3", 12, 3),
        ("Pattern over 10 sts plus 5", 10, 5),
        ("an odd number of sts", 2, 1),
    ],
)
def test_a_stated_multiple_is_read(words: str, of: int, plus: int) -> None:
    """However it is worded, it promises counts."""
    line = normal_lines(words)[0]
    found = multiple_in(line, 0, len(line.text))
    assert found is not None
    assert (found.of, found.plus) == (of, plus)


@pytest.mark.parametrize("words", ["14-st rep", "rep of 6 sts", "12-row repeat", "Cast on 20 stitches in blue"])
def test_a_repeat_alone_promises_no_count(words: str) -> None:
    """It is the repeat of the pattern between edges that nobody has counted yet."""
    line = normal_lines(words)[0]
    assert multiple_in(line, 0, len(line.text)) is None


@pytest.mark.parametrize(
    "words", ["Cast up 36 stitches.", "Set up 36 stitches.", "Set on 36 sts", "CO 36", "Cast on thirty-six."]
)
def test_a_cast_on_is_read_in_old_words(words: str) -> None:
    """Stitches were cast up and set up before they were cast on."""
    line = normal_lines(words)[0]
    found = cast_on_in(line, 0, len(line.text))
    assert found is not None and found.count == 36


def test_pieces_may_begin_and_end_in_bold_letters(vocabulary: Vocabulary) -> None:
    """The stars of Markdown around a cast-on and a bind-off are no repeat, and the second piece is counted."""
    text = "**CO** 20 sts.\nRow 1: Knit.\n**BO** all sts.\n\n**CO** 30 sts.\nRow 1: K30.\n__Cast off__ in pattern."
    answer = check_text(text, vocabulary)
    assert [row["before"] for row in answer["rows"]] == [20, 30]
    assert answer["findings"] == []


def test_a_repeat_line_of_old_books_stops_at_a_count(vocabulary: Vocabulary) -> None:
    """What is worked "till there are thirty stitches" prints its count there, and need not behind the row."""
    text = "Cast on 1 st.\n1st row—Make one, knit one. (2 stitches.)\n2nd row—Make one, knit to the end."
    answer = check_text(text + "\nRepeat the second row till there are thirty stitches.\nPlain row.", vocabulary)
    assert [found["rule"] for found in answer["findings"] if found["severity"] != "note"] == []

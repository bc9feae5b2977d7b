"""Stated multiples and cast-ons in the wordings of handbooks and of today; common practice, no source."""

from __future__ import annotations

import pytest

from counterpane.craft.rows.statements import cast_on_in, multiple_in
from counterpane.craft.rows.words import normal_lines


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

"""Rows in the words of handbooks that leave out what a knitter of their time knew."""

from __future__ import annotations

from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text


def test_a_row_of_holes_goes_on_to_the_end_where_the_cast_on_tells(vocabulary: Vocabulary) -> None:
    """Lambert 1843, Siberian cuffs: 64 stitches, and the row is told once."""
    text = "Cast on 64 sts.\nRows 1-3: knit three plain rows.\nRow 4: bring the wool forward, knit two together."
    answer = check_text(text, vocabulary)
    assert answer["multiple"] == {"of": 2, "plus": 0, "least": 2}
    assert [row["after"] for row in answer["rows"]] == [64] * 4
    assert "repeat-assumed" in [finding["rule"] for finding in answer["findings"]]


def test_a_row_of_today_without_a_star_is_fixed(vocabulary: Vocabulary) -> None:
    """The same in abbreviations, or in the words of today, leaves its stitches unworked."""
    for row in ("yo, k2tog", "yarn over, knit 2 together"):
        answer = check_text(f"Cast on 64 sts.\nRow 1: {row}.", vocabulary)
        assert "row-leaves-stitches" in [finding["rule"] for finding in answer["findings"]]


def test_a_handbook_row_that_fits_once_is_fixed(vocabulary: Vocabulary) -> None:
    """Lambert 1843, coral trimming: an edging of two stitches."""
    text = "Cast on 2 sts.\nRow 1: Turn the wool round the needle, so as to bring it in front again; knit 2 together."
    assert check_text(text, vocabulary)["fixed"] == 2

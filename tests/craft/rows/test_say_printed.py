"""What is printed beside the stitches is said again, and the words between the rows are spelt out."""

from __future__ import annotations

import pytest

from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.say import WordsKind, printed_in, prose_in_full, say_row
from counterpane.craft.rows.tree import Place
from counterpane.craft.stitches import Vocabulary


def again(row: str, vocabulary: Vocabulary, words: WordsKind = "short") -> str:
    """Read a row and say it again."""
    printed = printed_in(row, Place(1, 1))
    return say_row(read_row(row, vocabulary).parts, vocabulary, "us", words, printed)


@pytest.mark.parametrize(
    "row",
    [
        "with MC, k2, *p3, k2; rep from * to end, with B, k1",
        "change to A, knit to end",
        "k1 (edge st), *k1, p1; rep from * to last st, k1 (edge st)",
        "sl 1 wyif, *k1, yo, k2tog; rep from *, end k1 (eyelet row)",
        "k5, moss st to last 5 sts, k5",
        "k5, work as set to last 5 sts, k5",
        "k the knit sts and p the purl sts to end",
        "bind off all sts in rib loosely",
        "k2 in MC, k to end, join CC",
    ],
)
def test_yarns_notes_and_fabrics_are_not_lost(row: str, vocabulary: Vocabulary) -> None:
    """They are not in the tree of the row, and stand in its words all the same."""
    assert again(row, vocabulary) == row.replace("knit to end", "k to end")


def test_a_fabric_named_behind_its_number_goes_before_it(vocabulary: Vocabulary) -> None:
    """The name of the fabric is kept, whatever the order of the words."""
    assert again("work 5 sts in rib, k to end", vocabulary) == "rib 5, k to end"
    assert again("work 5 sts in rib, k to end", vocabulary, "full") == "work in rib over 5 stitches, knit to the end"


@pytest.mark.parametrize(
    ("printed", "full"),
    [
        (
            "Rep rows 1-4 until 20 sts rem, ending with a WS row.",
            "Repeat rows 1-4 until 20 stitches remain, ending with a wrong side row.",
        ),
        ("Row 2 and all WS rows:", "Row 2 and all wrong side rows:"),
        ("BO rem sts in patt.", "Bind off remaining stitches in pattern."),
        ("Cont. in St st until work measures 10 cm.", "Continue in St st until work measures 10 cm."),
        ("K 4 rows.", "Knit 4 rows."),
        ("1st row (RS): 20sts", "1st row (right side): 20 stitches"),
    ],
)
def test_words_between_the_rows_are_spelt_out(printed: str, full: str) -> None:
    """An abbreviation with one meaning is written in full; the name of a fabric stays."""
    assert prose_in_full(printed) == full


@pytest.mark.parametrize(
    ("printed", "said"),
    [
        ("k2, then with B, p2", "k2, with B, p2"),
        ("(RS facing) k2, p2", "k2, p2, (RS facing)"),
        ("cont as established to end", "work as established to end"),
        ("k2, keep in patt to end", "k2, patt to end"),
        ("(with A) k2", "with A, k2"),
        ("k2, p2 (24 sts)", "k2, p2"),
        ("change to\nB, k to end", "change to B, k to end"),
        ("k1, work in patt\nas set to last st, k1", "k1, patt as set to last st, k1"),
    ],
)
def test_words_beside_the_stitches_stand_in_the_usual_order(printed: str, said: str, vocabulary: Vocabulary) -> None:
    """A note before all stitches goes behind them; a yarn keeps its letter wherever the line breaks."""
    assert again(printed, vocabulary) == said

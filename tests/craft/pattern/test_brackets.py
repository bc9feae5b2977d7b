"""Sentences of several sizes as one: alike once, numbers in brackets, and each size found again in it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.pattern.brackets import in_brackets, shape
from counterpane.library.texts.extracts import extract_text

NUMBERS = st.lists(st.integers(2, 400), min_size=2, max_size=5)


@pytest.mark.parametrize(
    ("texts", "one"),
    [
        (("Knit.", "Knit."), "Knit."),
        (("Cast on 95 sts.", "Cast on 113 sts.", "Cast on 131 sts."), "Cast on 95 (113, 131) sts."),
        (("k1, k2tog, k3", "k2, k2tog, k5"), "k1 (2), k2tog, k3 (5)"),
        (("to last st, k1", "to last 2 sts, k2"), "to last 1 (2) sts, k1 (2)"),
        (("Rep rows 1–2 once more.", "Rep rows 1–2 twelve times more."), "Rep rows 1–2 1 (12) times more."),
        (("Rep rows 1–2 five times more.", "Rep rows 1–2 45 times more."), "Rep rows 1–2 5 (45) times more."),
        (("1,836 stitches", "2,040 stitches"), "1836 (2040) stitches"),
        (("42.7 cm (16.8 in)", "81.3 cm (32.0 in)"), "42.7 (81.3) cm [16.8 (32.0) in]"),
        (("42.7 cm (16¾ in)", "81.3 cm (32 in)"), "42.7 (81.3) cm [16¾ (32) in]"),
        (("1.1 cm (½ in)", "2.0 cm (¾ in)"), "1.1 (2.0) cm [½ (¾) in]"),
        (("(one) 2 rows (two)", "(one) 4 rows (two)"), "(one) 2 (4) rows (two)"),
        (("1 row", "2 rows"), "1 (2) rows"),
    ],
)
def test_what_differs_in_numbers_alone_is_one_sentence(texts: tuple[str, ...], one: str) -> None:
    """As the trade prints it."""
    assert in_brackets(texts) == one
    assert len({shape(text) for text in texts}) == 1


@pytest.mark.parametrize("texts", [("Knit.", "Purl."), ("k2tog", "k3tog"), ("k2, p2", "k2"), ("Row 1", "Row 1 (RS)")])
def test_what_differs_in_words_is_none(texts: tuple[str, str]) -> None:
    """A number inside a word is no number of stitches."""
    assert in_brackets(texts) is None
    assert shape(texts[0]) != shape(texts[1])


@given(NUMBERS, st.integers(1, 9))
def test_each_size_is_found_again(counts: list[int], edge: int) -> None:
    """The reader of patterns in several sizes takes out of the one sentence what was put in."""
    texts = [f"Cast on {count} sts.\nRow 1: K{edge}, [p{count // 2}] to end." for count in counts]
    one = in_brackets(texts)
    assert one is not None
    if len(set(counts)) > 1:
        assert [extract_text(one, size)["text"] for size in range(1, len(counts) + 1)] == texts

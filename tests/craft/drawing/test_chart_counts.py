"""The words of a chart work at one multiple of stitches, whatever its rows do to their count."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.component.derived import sides_of
from counterpane.craft.counts import count
from counterpane.craft.drawing.chart import CannotChart
from counterpane.craft.drawing.chart.charting import chart_of
from counterpane.craft.drawing.chart.words import rows_of
from counterpane.craft.rows.instructions import read_text
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Vocabulary

RIGHT_SIDE = ("k1", "p1", "k3", "yo", "k2tog", "sl 1", "sl 1, k2tog, psso", "sl 1, k1, psso", "kfb", "yo, k1", "c4f")
WRONG_SIDE = ("k1", "p1", "yo", "p2tog", "sl 1", "p3")


def row(words: tuple[str, ...], *, least: int) -> st.SearchStrategy[str]:
    """Return rows of a beginning, a repeat and an end."""
    ends = st.lists(st.sampled_from(words), max_size=3).map(", ".join)
    body = st.lists(st.sampled_from(words), min_size=least, max_size=4).map(", ".join)
    left = st.integers(0, 5).map(lambda left: f"to last {left} sts" if left > 1 else "to last st" if left else "to end")
    whole = st.tuples(ends, body, left, ends).map(lambda own: f"{own[0]}, *{own[1]}; rep from * {own[2]}, {own[3]}")
    return whole.map(lambda said: said.strip(", "))


TEXTS = st.tuples(row(RIGHT_SIDE, least=1), row(WRONG_SIDE, least=1) | st.just("purl")).map(
    lambda said: f"Row 1 (RS): {said[0]}.\nRow 2 (WS): {said[1]}."
)


def charted(text: str, vocabulary: Vocabulary) -> list[tuple[Row, ...]]:
    """Return the words of the charts of a text, one for each progression at which it works; none where it has none."""
    read = read_text(text, vocabulary).rows
    rows = [replace(row, side=side) for row, side in zip(read, sides_of(read), strict=True)]
    if not all(row.readable for row in rows):
        return []
    found = []
    for start in count([row.parts for row in rows], vocabulary).starts:
        try:
            found.append(rows_of(chart_of(rows, start, vocabulary), vocabulary))
        except CannotChart:
            continue
    return found


@given(TEXTS)
def test_the_words_of_a_chart_work_at_one_multiple(vocabulary: Vocabulary, text: str) -> None:
    """Where its repeat is cut out, each row loses as many stitches as the row below it leaves there."""
    for words in charted(text, vocabulary):
        assert len(count([row.parts for row in words], vocabulary).starts) == 1


def test_a_lace_whose_repeat_moves_has_words_of_one_multiple(vocabulary: Vocabulary) -> None:
    """By hand: three in the repeat of row 1, which its own decrease makes three again; one stitch stands beside it."""
    text = "Row 1 (RS): k1, *yo, sl 1, k1, psso, k1; rep from * to end.\nRow 2 (WS): *p3; rep from * to last st, p1."
    (words,) = charted(text, vocabulary)
    (start,) = count([row.parts for row in words], vocabulary).starts
    assert (start.of, start.plus) == (3, 1)

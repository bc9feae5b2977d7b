"""Charts: what lies on which column, where the repeat is, and that words and chart say the same."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import cycle
from xml.etree.ElementTree import Element

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.component import Component, derive
from counterpane.craft.component.derived import DerivedVersion
from counterpane.craft.counts import count
from counterpane.craft.counts.writing_out import write_out
from counterpane.craft.drawing.chart import NO_STITCH, Box, CannotChart, Cell, Chart, ChartRow, letters, page
from counterpane.craft.drawing.chart.charting import chart_of
from counterpane.craft.drawing.chart.columns import for_good
from counterpane.craft.drawing.chart.words import rows_of
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.say import say_row
from counterpane.craft.rows.tree import Row, Work
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.seeding import load_components, load_vocabulary

Starters = Mapping[str, Component]
KNIT = Cell((Work("k"),))
TURNED = ("spider-net",)
"""Starters that pass a knitted stitch over on a WS row, which has no form from the other side."""
VERSIONS = [
    pytest.param(version, id=f"{component.slug}, {version.name}")
    for component in load_components()
    if component.slug not in TURNED
    for version in derive(component, load_vocabulary()).versions
]


def _rows(version: DerivedVersion) -> list[Row]:
    other = {"RS": "WS", "WS": "RS"}.get(version.first_side, version.first_side)
    sides = cycle((version.first_side, other))
    return [replace(row, side=side) for row, side in zip(version.rows, sides, strict=False)]  # type: ignore[arg-type]


def _chart(vocabulary: Vocabulary, *words: str) -> Chart:
    """Return the chart of rows of which the first is a RS row."""
    rows = [Row(str(at), read_row(text, vocabulary).parts, ("WS", "RS")[at % 2]) for at, text in enumerate(words, 1)]
    starts = count([row.parts for row in rows], vocabulary, [row.side for row in rows]).starts
    return chart_of(rows, starts[0], vocabulary)


def _signs(chart: Chart, row: int) -> str:
    """Return a row from left to right: the first letter of each stitch, "." where there is none."""
    return "".join(_sign(cell) for cell in reversed(chart.rows[row].cells))


def _sign(cell: Cell) -> str:
    first = cell.nodes[0] if cell.nodes else None
    return first.stitch[0] if isinstance(first, Work) else "."


@pytest.mark.parametrize("version", VERSIONS)
@pytest.mark.parametrize("terms", ["us", "uk"])
def test_chart_to_words_to_chart_is_the_same(version: DerivedVersion, terms: Terms, vocabulary: Vocabulary) -> None:
    """The words are written in the terms, read again, counted and charted."""
    chart = chart_of(_rows(version), version.starts[0], vocabulary)
    said = [(row, say_row(row.parts, vocabulary, terms)) for row in rows_of(chart, vocabulary)]
    again = [replace(row, parts=read_row(words, vocabulary, terms).parts) for row, words in said]
    starts = count([row.parts for row in again], vocabulary, [row.side for row in again]).starts
    assert chart == chart_of(again, starts[0], vocabulary)


@pytest.mark.parametrize("version", VERSIONS)
def test_the_words_of_a_chart_do_what_the_rows_do(version: DerivedVersion, vocabulary: Vocabulary) -> None:
    """Row by row the same stitches before and after, at every count that the words take."""
    rows = _rows(version)
    words = rows_of(chart_of(rows, version.starts[0], vocabulary), vocabulary)
    start = count([row.parts for row in words], vocabulary, [row.side for row in words]).starts[0]
    stitches = start.least + 3 * start.of
    for row, other in zip(rows, words, strict=True):
        after = write_out(row.parts, stitches, vocabulary).after
        assert after == write_out(other.parts, stitches, vocabulary).after
        stitches = after or 0


@pytest.mark.parametrize("version", VERSIONS)
def test_every_row_fills_all_columns(version: DerivedVersion, vocabulary: Vocabulary) -> None:
    """With stitches, or with cells that say that there is none."""
    chart = chart_of(_rows(version), version.starts[0], vocabulary)
    assert {chart.columns} == {sum(cell.wide for cell in row.cells) for row in chart.rows}


def test_a_wrong_side_row_is_drawn_as_the_right_side_shows_it(vocabulary: Vocabulary) -> None:
    """Common practice, no source: garter shows a knit row and a purl row in turn."""
    chart = _chart(vocabulary, "knit", "knit")
    assert (_signs(chart, 0), _signs(chart, 1)) == ("k", "p")


def test_the_first_stitch_of_a_right_side_row_lies_at_the_right(vocabulary: Vocabulary) -> None:
    """And that of a wrong-side row at the left (common practice, no source)."""
    chart = _chart(vocabulary, "yo, k2tog, k2", "p1, k3")
    assert (_signs(chart, 0), _signs(chart, 1)) == ("kkky", "kppp")


def test_the_frame_holds_the_stitches_of_the_star(vocabulary: Vocabulary) -> None:
    """Two edge stitches at the right, then the repeat of five."""
    chart = _chart(vocabulary, "k2, *p3, k2; rep from * to end", "p2, *k3, p2; rep from * to end")
    assert (7, Box(2, 5)) == (chart.columns, chart.box)


def test_stitches_that_come_and_go_have_columns_of_their_own(vocabulary: Vocabulary) -> None:
    """Three out of one and back: two columns hold no stitch in the row before."""
    rows = "knit", "purl", "*(k1, yo, k1) in next st, k1; rep from * to end", "*p1, p3tog; rep from * to end"
    chart = _chart(vocabulary, *rows)
    assert chart.columns == 4
    assert [_signs(chart, row).count(".") for row in range(4)] == [2, 2, 1, 2]


def test_a_cable_is_one_cell(vocabulary: Vocabulary) -> None:
    """As wide as the stitches that cross."""
    chart = _chart(vocabulary, "*p2, C6F; rep from * to last 2 sts, p2", "*k2, p6; rep from * to last 2 sts, k2")
    assert [cell.wide for cell in chart.rows[0].cells] == [1, 1, 6, 1, 1]


def test_a_row_that_turns_has_no_chart(vocabulary: Vocabulary) -> None:
    """And the reason names the row."""
    with pytest.raises(CannotChart, match="Row 1 turns before its end"):
        _chart(vocabulary, "k4, turn, k4", "knit")


def test_a_repeat_that_drifts_from_row_to_row_has_no_chart(vocabulary: Vocabulary) -> None:
    """The stitches of one repeat lie on other columns of the next, however often the chart is laid out anew."""
    rows = (
        "k2tog, *kfb; rep from * to end",
        "*sl 1, k2tog, psso, m1; rep from * to last st, p1",
        "yo, k2tog, *kfb, k2tog, k2tog, kfb; rep from * to last st, sl 1",
    )
    with pytest.raises(CannotChart, match="does not lie on the same columns"):
        _chart(vocabulary, *rows)


def test_yarn_moved_after_the_last_stitch_stands_in_its_cell(vocabulary: Vocabulary) -> None:
    """A word that works no stitch has no column."""
    chart = _chart(vocabulary, "k2, bring yarn to front")
    assert (chart.columns, len(chart.rows[0].cells[-1].nodes)) == (2, 2)


@pytest.mark.parametrize(
    ("cells", "reason"),
    [
        ((KNIT, Cell((Work("2/2 LC"),), 4)), "has a stitch across an end of the repeat"),
        ((KNIT, NO_STITCH, NO_STITCH, KNIT, KNIT), "has no stitch in the repeat"),
    ],
)
def test_a_frame_that_holds_no_whole_working_has_no_words(
    cells: tuple[Cell, ...], reason: str, vocabulary: Vocabulary
) -> None:
    """A row whose cable lies half outside the frame, or whose columns in it are empty, repeats nothing."""
    with pytest.raises(CannotChart, match=reason):
        rows_of(Chart((ChartRow("1", "RS", cells),), 5, Box(1, 2)), vocabulary)


@settings(max_examples=200, deadline=None)
@given(st.lists(st.integers(-3, 3), max_size=30))
def test_what_stays_of_changes_adds_up_to_them(changes: list[int]) -> None:
    """It has one sign, and no change leaves more than it was."""
    kept = for_good(changes)
    assert sum(changes) == sum(kept)
    assert min(kept, default=0) >= 0 or max(kept, default=0) <= 0
    assert all(abs(part) <= abs(change) for part, change in zip(kept, changes, strict=True))


def test_changes_that_are_undone_keep_their_columns() -> None:
    """A yarn-over before or after its decrease, and an increase that stays."""
    assert for_good([1, -1, -1, 1]) == [0, 0, 0, 0]
    assert for_good([1, -1, 1]) == [0, 0, 1]


def test_a_chart_without_a_repeat_has_no_frame_in_letters(vocabulary: Vocabulary) -> None:
    """Rows of five stitches that are worked once: by hand, the first from the right, the second from the left."""
    drawn = _chart(vocabulary, "k3, p2", "p5")
    told = letters.lettered(page.Named("Strip", drawn), letters.signs_of([drawn], vocabulary))
    assert told.framed == ""
    assert list(told.lines()) == ["2  |||||", "   --|||  1"]


def test_workings_that_look_alike_are_numbered(vocabulary: Vocabulary) -> None:
    """Three stitches from one are drawn as three strokes from a point, whether their middle is a yarn-over or not."""
    drawn = _chart(vocabulary, "(k1, yo, k1) in next st, k1, (k1, p1, k1) in next st", "p7")
    on = Element("g")
    page.define(on, page.signs_of([drawn], vocabulary))
    signs = [["".join(sign.itertext())] for sign in on.iter("g") if sign.get("id")]
    strokes = [[path.get("d") for path in sign.iter("path")] for sign in on.iter("g") if sign.get("id")]
    assert strokes[0] == strokes[2]
    assert signs[0] != signs[2] == ["1"]


def test_stitches_bound_off_one_by_one_have_no_chart(vocabulary: Vocabulary) -> None:
    """All but five are bound off: nothing is left of the others that a cell could stand for."""
    with pytest.raises(CannotChart, match="A working leaves no stitch to draw"):
        _chart(vocabulary, "cast off all but 5, k5", "k5")


def test_plain_stitches_before_a_repeat_of_a_fixed_number_have_a_chart(vocabulary: Vocabulary) -> None:
    """By hand: the last ten stitches are ribbed; the knit stitch at the right edge is worked as often as it takes."""
    drawn = _chart(vocabulary, "k to last 10 sts, *k1, p1; rep from * to end", "purl")
    assert drawn.box == Box(0, 1)
    assert [_signs(drawn, row) for row in (0, 1)] == ["pkpkpkpkpk", "kkkkkkkkkk"]

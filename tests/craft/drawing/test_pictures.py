"""What is seen in the pictures of unusual pieces: charts without a frame, gaps, crossings, borders worked outwards."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any
from xml.etree import ElementTree

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.counts import Progression, count
from counterpane.craft.drawing.blanket import fabric
from counterpane.craft.drawing.chart import CannotChart, Chart
from counterpane.craft.drawing.chart.charting import chart_of
from counterpane.craft.drawing.charts import charts
from counterpane.craft.drawing.schematic import schematic
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import make_plan, plan_request_of
from craft.constructions.asking import content

Starters = Mapping[str, Component]
LACE = (
    "Row 1 (RS): K1, *k3tog, yo, k2, yo; rep from * to last st, k1.\nRow 2: Purl.\n"
    "Row 3: K1, m1, k to last 2 sts, k2tog.\nRow 4: Purl."
)


def small(starters: Starters, vocabulary: Vocabulary, body: object, **rest: Any) -> Plan:
    """Return the plan of a small piece."""
    whole = {**content(body, 30, 20, **rest.pop("parts", {})), **rest}
    return make_plan(plan_request_of(whole, starters.__getitem__, vocabulary), vocabulary)


def texts(picture: str) -> str:
    """Return all that is written in a picture."""
    return " ".join(text for text in ElementTree.fromstring(picture).itertext() if text.strip())


def chart(vocabulary: Vocabulary, *words: str) -> Chart:
    """Return the chart of rows of which the first is a RS row."""
    rows = [Row(str(at), read_row(text, vocabulary).parts, ("WS", "RS")[at % 2]) for at, text in enumerate(words, 1)]
    return chart_of(
        rows, count([row.parts for row in rows], vocabulary, [row.side for row in rows]).starts[0], vocabulary
    )


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ("spider-net", "Body has no chart: Row 10 has no form as the right side shows it"),
        ({"text": LACE}, "no stitch in this row: go on to the next cell"),
        ("rope-cable", "Repeat the framed"),
    ],
)
def test_a_chart_says_what_it_cannot_show_and_how_it_is_read(
    body: object, said: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """A WS row that passes a knitted stitch over has no other form; a gap is no stitch; a frame is repeated."""
    assert said in texts(charts(small(starters, vocabulary, body), vocabulary, "Rime"))


def test_a_chart_of_rows_that_take_one_count_has_no_frame(starters: Starters, vocabulary: Vocabulary) -> None:
    """Sixty-six stitches are as many, whatever the width."""
    parts = {"sides": None, "bottom": None, "top": None}
    plan = small(starters, vocabulary, {"text": "Row 1 (RS): K66."}, parts=parts)
    assert "2 rows over 66 stitches." in texts(charts(plan, vocabulary, "Rime"))


def test_borders_worked_outwards_are_drawn_beside_the_middle(starters: Starters, vocabulary: Vocabulary) -> None:
    """Both are turned by a quarter in the fabric, and named with their stitches and rows in the schematic."""
    parts = {"sides": {"component": "garter-border", "rows": 8}}
    whole = {"construction": "sides-picked-up"}
    plan = small(starters, vocabulary, "garter", parts=parts, **whole)
    assert fabric(plan, vocabulary, "Rime").count("matrix(0 ") >= 2
    words = texts(schematic(plan, vocabulary, "Rime"))
    assert words.count(f"{plan.picked[0].picks} sts picked up, 8 rows outwards") >= 1


@pytest.mark.parametrize("body", ["twisted-pique", "rope-cable", "little-twists"])
def test_twisted_and_crossed_stitches_are_drawn_otherwise_than_plain_ones(
    body: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Their fabric holds loops that stocking stitch between garter borders has not."""
    loops = [
        {path.get("d") for path in ElementTree.fromstring(fabric(plan, vocabulary, "Rime")).iter() if path.get("d")}
        for plan in (small(starters, vocabulary, each) for each in (body, "stocking-stitch"))
    ]
    assert loops[0] - loops[1]


@pytest.mark.parametrize(
    ("words", "side", "counts", "why"),
    [
        ("K90000", "RS", Progression.only(90_000), "more than 20000 cells"),
        ("K4", None, Progression.only(4), "Row 1 has no side"),
        ("K4", "RS", Progression.only(7), "Row 1 cannot be worked at this count"),
    ],
)
def test_what_has_no_chart_says_why(
    words: str, side: Any, counts: Progression, why: str, vocabulary: Vocabulary
) -> None:
    """A chart has cells that can be counted, a side to show, and a count at which its rows are worked."""
    with pytest.raises(CannotChart, match=why):
        chart_of([Row("1", read_row(words, vocabulary).parts, side)], counts, vocabulary)


def test_markers_leave_no_trace_in_a_chart(vocabulary: Vocabulary) -> None:
    """Where they hang is no stitch, in a row that places them and in one that counts to them."""
    marked = chart(vocabulary, "K3, pm, k3, pm, k to end", "P", "(K to m, sm) twice, k to end")
    assert marked.rows == chart(vocabulary, "K", "P", "K").rows


def test_crossings_that_lie_over_every_end_of_a_repeat_have_no_frame(vocabulary: Vocabulary) -> None:
    """Crossings of four begin at the edge in one row and two stitches later in another: no line passes between them."""
    assert chart(vocabulary, "*C4F; rep from * to end", "P", "K2, *c4b; rep from * to last 2 sts, k2").box is None


def test_a_repeat_that_begins_late_is_shown_whole(vocabulary: Vocabulary) -> None:
    """Over the least count the crossing is all there is: one repeat more shows what is repeated."""
    rows = ("*K4; rep from * to end", "*P4; rep from * to end", "K2, *c4b; rep from * to last 2 sts, k2")
    found = chart(vocabulary, *rows)
    assert found.box is not None
    assert found.box.wide == 4

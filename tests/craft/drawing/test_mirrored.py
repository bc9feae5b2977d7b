"""Charts and fabric for left-handers who work mirrored."""

from __future__ import annotations

from collections.abc import Mapping
from xml.etree import ElementTree

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.drawing.blanket import fabric
from counterpane.craft.drawing.chart.symbols import SIDE
from counterpane.craft.drawing.charts import charts
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import planned

SVG = "{http://www.w3.org/2000/svg}"


def _cells(picture: str) -> list[tuple[str, int, int]]:
    """Return the signs of the chart's cells with their places, those of the key left out."""
    uses = ElementTree.fromstring(picture).iterfind(f"{SVG}g/{SVG}use")
    placed = [(use.get("href", ""), int(use.get("x", "0")), int(use.get("y", "0"))) for use in uses]
    key = min(y for _, _, y in placed if sum(other == y for *_, other in placed) == 1)
    return [each for each in placed if each[2] < key]


def _plan(starters: Mapping[str, Component], vocabulary: Vocabulary) -> Plan:
    return planned(starters, vocabulary, body="eyelet-dots")


def test_the_cells_of_a_mirrored_chart_stand_the_other_way_round(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Row by row the same signs, each as far from the left edge as it was from the right one."""
    plan = _plan(starters, vocabulary)
    plain, other = (_cells(charts(plan, vocabulary, "Dots", mirrored=way)) for way in (False, True))
    rows = {y for *_, y in plain}
    assert rows == {y for *_, y in other}
    for y in rows:
        one, two = ([(x, sign) for sign, x, at in cells if at == y] for cells in (plain, other))
        assert [sign for _, sign in sorted(one)] == [sign for _, sign in sorted(two, reverse=True)]


def test_a_mirrored_sign_is_turned_in_its_own_cells(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """A sign over one cell is turned about the middle of that cell; turned twice it is as before."""
    picture = charts(_plan(starters, vocabulary), vocabulary, "Dots", mirrored=True)
    turned = {path.get("transform") for path in ElementTree.fromstring(picture).iterfind(f"{SVG}g/{SVG}defs/{SVG}g/*")}
    assert f"translate({SIDE} 0) scale(-1 1)" in turned


def test_a_mirrored_fabric_is_the_same_loops_turned_over(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """All that differs is the turn of the whole, the corner that is seen, and the words."""
    plan = _plan(starters, vocabulary)
    plain, other = (ElementTree.fromstring(fabric(plan, vocabulary, "Dots", mirrored=way)) for way in (False, True))
    one, two = (ElementTree.tostring(each.find(f"{SVG}defs") or each) for each in (plain, other))
    assert one == two
    whole = other.find(f"{SVG}svg/{SVG}g")
    assert whole is not None
    assert (whole.get("transform") or "").endswith("scale(-1 1)")
    assert "lower right corner" in "".join(other.itertext())

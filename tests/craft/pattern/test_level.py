"""How demanding a blanket is, by rule; the council's scale names levels and no rule."""

import pytest

from counterpane.craft.pattern import Level
from counterpane.craft.pattern.level import LEVELS, crossings, level_of
from counterpane.craft.rows.instructions import read_text
from counterpane.craft.rows.tree import Row
from craft.pattern.plans import vocabulary, waffle

CABLE = "Row 1 (RS): c6f, k4.\nRow 2 (WS): purl."
LACE = "Row 1 (RS): *yo, k2tog; rep from * to end.\nRow 2 (WS): purl."


def rows_of(text: str) -> tuple[Row, ...]:
    """Return the rows of a text."""
    return read_text(text, vocabulary()).rows


def level(text: str) -> Level:
    """Return the level of a blanket that is worked in the rows of a text."""
    return level_of(waffle(), rows_of(text), vocabulary())


@pytest.mark.parametrize(
    ("text", "name", "because"),
    [
        ("Row 1 (RS): knit.\nRow 2 (WS): k6, p to last 6 sts, k6.", "Basic", "rows of knit or of purl stitches alone"),
        ("Row 1 (RS): *k2, p1; rep from * to end.", "Easy", "rows that change between knit and purl"),
        ("Row 1 (RS): k1, *sl 1 pwise wyif, k1; rep from * to end.", "Easy", "slipped stitches in the fabric"),
        (CABLE, "Intermediate", "cables crossed over 6 sts"),
        ("Row 1 (RS): sl next 3 sts to cn and hold in front, k3, k3 from cn.", "Intermediate", "cables crossed over 6"),
        (LACE, "Intermediate", "lace: yarn-overs with decreases"),
        ("Row 1 (RS): k2tog, kfb, k to end.\nRow 2 (WS): purl.", "Intermediate", "decreases in the fabric"),
        ("Row 1 (RS): *k2 MC, k2 CC; rep from * to end.", "Intermediate", "several colours in one row"),
        ("Row 1 (RS): *k2 MC; rep from * to end.", "Easy", "changes of colour"),
        ("Row 1 (RS): *k3, mb; rep from * to end.\nRow 2 (WS): purl.", "Intermediate", "bobbles"),
        ("Row 1 (RS): *k1, k1 below; rep from * to end.", "Intermediate", "stitches worked into the row below"),
        ("Row 1 (RS): k1, (k1, p1, k1) into next st, k1.", "Intermediate", "several stitches worked into one"),
        (f"{LACE[:-6]} *yo, p2tog; rep from * to end.", "Complex", "yarn-overs and decreases on both RS and WS rows"),
    ],
)
def test_the_level_is_that_of_the_most_demanding_technique(text: str, name: str, because: str) -> None:
    """House rule on the four levels of the Craft Yarn Council."""
    assert level(text).name == name
    assert level(text).reason.startswith(f"{name}, because of {because}")


def test_two_demanding_techniques_at_once_make_the_highest_level() -> None:
    """Several techniques at once are what the council's fourth level is said to hold (second-hand)."""
    found = level(f"{CABLE}\nRow 3 (RS): *yo, k2tog; rep from * to end.\nRow 4 (WS): purl.")
    assert found.reason == "Complex, because of lace: yarn-overs with decreases and cables crossed over 6 sts"


def test_only_words_of_the_present_scale_are_used() -> None:
    """Beginner and Experienced belong to the older scale of the Craft Yarn Council (trade pages, 2018)."""
    assert LEVELS == ("Basic", "Easy", "Intermediate", "Complex")
    assert "estimated by our own rule" in level(CABLE).source


def test_slipped_edges_ask_for_nothing() -> None:
    """The first stitch of each row is slipped."""
    assert level("Row 1 (RS): sl 1 pwise wyif, wyib, k to end.\nRow 2 (WS): sl 1 pwise wyif, wyib, k to end.").name == (
        "Basic"
    )


def test_crossings_are_found_by_name_and_spelt_out() -> None:
    """C6F crosses six, three held and three worked before them cross six, a twist crosses two."""
    assert crossings(rows_of(f"{CABLE}\nRow 3 (RS): c4b, k to end."), vocabulary()) == (4, 6)
    assert crossings(rows_of("Row 1 (RS): sl next 2 sts to cn and hold at back, k2, k2 from cn."), vocabulary()) == (4,)

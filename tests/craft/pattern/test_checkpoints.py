"""Where a knitter looks up: ridges, lengths, the yarn left, and the side of the next row."""

from fractions import Fraction

from counterpane.craft.component import Operation
from counterpane.craft.constructions import Plan
from counterpane.craft.pattern import Checkpoint
from counterpane.craft.pattern.checkpoints import checkpoints, stop
from counterpane.craft.pattern.rows import listed_rows
from counterpane.craft.stitches import Terms
from craft.pattern.plans import eyelets, plan, section, vocabulary, waffle

CORDED = Operation(("Do not turn.",), turn=False, faces_row_1="corded side")


def of(blanket: Plan, index: int, terms: Terms = "us") -> tuple[Checkpoint, ...]:
    """Return the checkpoints of a section."""
    return checkpoints(blanket, index, listed_rows(blanket.sections[index], vocabulary()), vocabulary(), terms)


def test_twelve_garter_rows_show_six_ridges_and_the_long_tail_one_more() -> None:
    """The cast-on's bumps face the right side, so that a knitter counts seven."""
    (end,) = of(waffle(), 0)
    assert end.text.startswith("12 rows worked: 6 ridges on the right side, and the bumps of the long-tail cast-on")
    assert "look like one more (7 in all)" in end.text


def test_sixteen_garter_rows_at_the_top_show_eight_ridges() -> None:
    """The cast-on is far away and counts nothing here."""
    (end,) = of(waffle(), 2)
    assert end.text.startswith("16 rows worked: 8 ridges on the right side. 151 stitches on the needle")


def test_a_corded_cast_on_counts_as_no_ridge() -> None:
    """The checkpoint is worded by the cast-on."""
    garter = section("bottom", "garter-border", "Row 1 (RS): knit.\nRow 2: knit.", first_row=1, rows=12, sts=20)
    (end,) = of(plan("Garter", garter, cast_on=CORDED), 0)
    assert "6 ridges on the right side. 20 stitches" in end.text


def test_a_body_is_looked_at_after_its_first_repeat_and_before_its_end() -> None:
    """The yarn is weighed while there are rows left to change."""
    first, weigh, end = of(waffle(), 1)
    assert (first.rows, first.blanket_row) == (4, 16)
    assert (weigh.rows, weigh.blanket_row) == (172, 184)
    assert (end.rows, end.blanket_row) == (182, 194)
    assert "91 ridges along each side border" in end.text


def test_the_share_still_to_come_is_of_stitches_with_the_bind_off() -> None:
    """Ten rows of body, sixteen of border and the bind-off are 27 of 211 rows of 151: 13 in 100."""
    assert "about 13 in 100 of the blanket's stitches" in of(waffle(), 1)[1].text


def test_lengths_are_measured_from_the_cast_on() -> None:
    """12 and 182 rows at 30 rows to 10 cm are 64.7 cm, 25.46 in."""
    end = of(waffle(), 1)[-1]
    assert "the piece measures about 64.7 cm (25½ in)" in end.text
    assert end.long_cm == Fraction(194, 3)


def test_ridges_along_a_side_border_are_counted_inside_a_selvedge() -> None:
    """80 rows of body show 40 ridges at the sides."""
    assert "40 ridges along each side border, on the right side" in of(eyelets(), 1)[-1].text


def test_each_checkpoint_tells_the_count_and_the_side_of_the_next_row() -> None:
    """After four, 172 and 182 rows from a RS row the RS comes next, over all 151 stitches."""
    found = of(waffle(), 1)
    assert [(each.stitches, each.next_side) for each in found] == [(151, "RS")] * 3
    assert all("151 stitches on the needle" in each.text for each in found)


def test_a_count_that_changed_in_the_repeat_is_that_of_its_last_change() -> None:
    """Row 1 makes 74 of 54 stitches and row 2 takes them back."""
    assert of(eyelets(), 1)[0].stitches == 54


def test_a_section_says_where_it_stops_and_what_comes_next() -> None:
    """The body ends with a WS row, so the top border begins on the RS."""
    assert stop(waffle(), 1, "us") == "Stop after row 194 of the blanket, a WS row: the next row is a RS row."


def test_the_last_section_hands_over_to_the_bind_off_in_the_terms() -> None:
    """Sixteen rows bring the bind-off to a RS row; a UK knitter casts off."""
    assert stop(waffle(), 2, "us").endswith("a WS row: bind off on the next row, a RS row.")
    assert stop(waffle(), 2, "uk").endswith("a WS row: cast off on the next row, a RS row.")

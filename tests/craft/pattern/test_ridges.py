"""Ridges of garter stitch on the right side. Common practice, no source, as `fabric mathematics` 9.7 words it."""

import pytest

from counterpane.craft.component import Operation
from counterpane.craft.pattern.ridges import edge_is_garter, is_garter, ridges, shows_as_ridge
from counterpane.craft.rows.instructions import read_text
from craft.pattern.plans import LONG_TAIL, eyelets, moss, vocabulary, waffle


@pytest.mark.parametrize(("rows", "seen"), [(12, 6), (16, 8), (18, 9), (15, 7), (1, 0)])
def test_two_rows_from_the_right_side_are_one_ridge(rows: int, seen: int) -> None:
    """With row 1 as a RS row an odd last row puts its ridge on the wrong side."""
    assert ridges(rows, "RS") == seen


def test_a_first_row_on_the_wrong_side_shows_its_ridge_on_the_right_side() -> None:
    """Five rows from the WS are three WS rows."""
    assert ridges(5, "WS") == 3


def test_knit_rows_with_slipped_edges_are_garter() -> None:
    """The edge stitch that is slipped does not change what the fabric is."""
    assert is_garter(eyelets().sections[0].cycle)
    assert is_garter(waffle().sections[0].cycle)


def test_a_purl_stitch_or_a_slip_inside_is_no_garter() -> None:
    """Waffle, moss and a stitch slipped in the middle are other fabrics."""
    slipped = read_text("Row 1 (RS): k2, sl 1 pwise wyib, k2.", vocabulary()).rows
    assert not any(map(is_garter, (waffle().sections[1].cycle, moss().sections[1].cycle, slipped)))


def test_a_garter_side_border_is_seen_beside_a_textured_body() -> None:
    """Six knit stitches begin every row of the waffle, also the row that is knitted throughout."""
    cycle = waffle().sections[1].cycle
    assert edge_is_garter(cycle, 0, 6)
    assert not edge_is_garter(cycle, 0, 7)


def test_a_side_border_is_looked_for_inside_the_selvedge() -> None:
    """The slipped stitch is no part of the four garter stitches after it."""
    cycle = eyelets().sections[1].cycle
    assert edge_is_garter(cycle, 1, 4)
    assert not edge_is_garter(cycle, 0, 5)


def test_no_side_border_shows_no_ridges() -> None:
    """Without side stitches there is nothing to count along."""
    assert not edge_is_garter(waffle().sections[0].cycle, 0, 0)


def test_the_bumps_of_a_long_tail_cast_on_look_like_a_ridge_where_row_1_is_rs() -> None:
    """A corded edge shows none, and neither do bumps on the wrong side."""
    assert shows_as_ridge(LONG_TAIL, "RS")
    assert not shows_as_ridge(LONG_TAIL, "WS")
    assert not shows_as_ridge(Operation((), turn=False, faces_row_1="corded side"), "RS")


def test_a_row_that_ends_within_the_border_has_no_border() -> None:
    """Three knit stitches are no border of four, though each of them is knitted."""
    assert not edge_is_garter(read_text("Row 1 (RS): k3.", vocabulary()).rows, 0, 4)

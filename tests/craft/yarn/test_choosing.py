"""Which yarn works what, and how much a stitch takes where the rows say little."""

from __future__ import annotations

from dataclasses import replace

import pytest

from counterpane.craft.rows.read import read_row
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Yarn
from counterpane.craft.yarn.choosing import TextureNotWorked, loops_a_stitch, texture_part, yarn_of
from counterpane.craft.yarn.spreads import Spread
from counterpane.craft.yarn.tally import CAST_ON, CAST_ON_LOOPS, loops_of_stitch, tally_rows
from craft.constructions.asking import Starters, asked


def test_a_colour_that_no_yarn_has_is_worked_by_the_yarn_of_the_part() -> None:
    """A row that names gold, in a blanket of white with green borders, is white in the body and green in a border."""
    yarns = [Yarn(colour="white"), Yarn(colour="green", parts=("bottom",))]
    assert [yarn_of(yarns, part, colour="gold") for part in ("body", "bottom")] == [0, 1]


def test_a_texture_is_that_of_the_part_that_is_worked_in_it(starters: Starters, vocabulary: Vocabulary) -> None:
    """A swatch of the border was weighed for the border; one of a texture that is not there for nothing."""
    request = asked(starters, vocabulary, "waffle")
    assert texture_part(request, "garter-border") in (request.bottom, request.top, request.sides)
    with pytest.raises(TextureNotWorked):
        texture_part(request, "fan")


def test_rows_that_no_count_passes_take_a_loop_a_stitch(starters: Starters, vocabulary: Vocabulary) -> None:
    """Three stitches and then five can be worked over no number: nothing is known but that a stitch is a loop."""
    version = replace(starters["garter"].versions[0], rows="Row 1: K3.\nRow 2: K5.")
    broken = replace(starters["garter"], versions=(version,), examples=())
    assert loops_a_stitch(broken, 20, vocabulary) == Spread.exactly(1)


def test_stitches_cast_on_within_a_row_take_yarn_of_their_own(vocabulary: Vocabulary) -> None:
    """Two are cast on over a gap of two that were bound off."""
    row = read_row("K2, cast on 2 sts, k2", vocabulary).parts
    (tally,) = tally_rows([row], 4, vocabulary)
    assert tally.stitches[CAST_ON, None] == 2
    assert loops_of_stitch(CAST_ON, vocabulary) == CAST_ON_LOOPS


@pytest.mark.parametrize(("row", "before"), [("K2, bind off 2 sts, k2", 7), ("Bind off all sts", 7)])
def test_stitches_bound_off_within_a_row_take_the_yarn_of_knit_ones(
    row: str, before: int, vocabulary: Vocabulary
) -> None:
    """To bind off two, three are knitted, and the number behind does not count the third."""
    (tally,) = tally_rows([read_row(row, vocabulary).parts], before, vocabulary)
    assert tally.stitches["k", None] == before

"""What kind of fabric a part is, and what becomes of rows that no fabric can be seen in."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions.fabrics import is_moss, surplus
from counterpane.craft.constructions.making import attempt
from counterpane.craft.constructions.obstacles import RepeatsRunApart
from counterpane.craft.constructions.textures import changes_by_row, textures_of
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import asked, planned
from craft.textures import body

Starters = Mapping[str, Component]


@pytest.mark.parametrize(("times", "moss"), [(6, True), (60_000, False)])
def test_a_repeat_of_very_many_stitches_is_not_looked_at(times: int, moss: bool, vocabulary: Vocabulary) -> None:
    """Moss over twelve stitches is seen to be moss; of 120000 stitches nothing is said, neither moss nor surplus."""
    rows = body(f"Row 1 (RS): [k1, p1] {times} times.\nRow 2 (WS): [p1, k1] {times} times.")
    assert is_moss(rows, vocabulary) == moss
    assert surplus(rows, vocabulary) == 0


@pytest.mark.parametrize(("slug", "changes"), [("seed-stitch", True), ("rib-two-by-two", False), ("fan", False)])
def test_moss_changes_its_columns_and_of_lace_it_is_not_said(
    slug: str, changes: bool, starters: Starters, vocabulary: Vocabulary
) -> None:
    """A rib keeps its columns; lace has more than knit and purl, so that it is not asked where its faces lie."""
    assert changes_by_row(textures_of(starters[slug], vocabulary, "")[0], vocabulary) == changes


def test_rows_that_meet_the_edge_anew_too_late_are_not_written_out(starters: Starters, vocabulary: Vocabulary) -> None:
    """By hand: 53 rows beside an edge of 47, each on its side, come round after 2 x 53 x 47 = 4982 rows."""
    rows = "\n".join(f"Row {number}: {'knit' if number % 5 else 'purl'}." for number in range(1, 54))
    edge = "\n".join(f"Row {number}: {'k1' if number % 3 else 'p1'}." for number in range(1, 48))
    whole = {"text": rows, "rows": 50 * 53}
    request = asked(starters, vocabulary, whole, selvedge={"text": edge}, bottom=None, top=None)
    (met,) = attempt(request, vocabulary).met(RepeatsRunApart)
    assert (met.pointer, met.rows) == ("/parts/body", 4982)


def test_two_bands_of_a_short_piece_come_as_near_as_whole_repeats_allow(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """By hand: of 18 rows wanted 12 + 4 are two fewer and 12 + 8 two more; the longer of as near is taken."""
    plan = planned(starters, vocabulary, ["basket-weave", "waffle"], 40, 6, bottom=None, top=None, sides=None)
    assert [section.rows for section in plan.sections] == [12, 8]

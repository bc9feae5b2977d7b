"""`counterpane row`."""

from __future__ import annotations

import json

import pytest

from cli.conftest import Type

LACE = """
[parts]
body = "eyelet-dots"
sides = { component = "garter-border", stitches = 5 }
[gauge]
stitches = 22
rows = 30
over_cm = 10
[size]
width_cm = 60
length_cm = 70
"""


def test_a_row_is_told_with_its_counts(typed: Type) -> None:
    """By hand: 9 stitches, 20 repeats of 6 and 5 are 134, and the row is the third of its repeat."""
    done = typed("row", "-", "--row", "47", stdin=LACE)
    assert done.status == 0
    assert "Row 47 of 208, a RS row" in done.out and "row 3 of its repeat" in done.out
    assert "It should leave 134 stitches." in done.out
    assert "5, then 20 repeats of 6, then 9." in done.out


def test_a_stitch_too_few_is_looked_for_where_it_can_go_unseen(typed: Type) -> None:
    """The yarn-over three rows down comes first, with the way back; a dropped stitch is an opening."""
    done = typed("row", "-", "--row", "50", "--stitches", "133", stdin=LACE)
    said = " ".join(done.out.split())
    assert "1 stitch too few" in said
    assert said.index("Row 47: yo was left out once") < said.index("Rows 47 to 50: a stitch was dropped once")
    assert "stitches of row 45 and knit again: 670 stitches" in said
    assert "an opening for a baby's finger" in said


def test_uk_terms_are_used(typed: Type) -> None:
    """A yarn-over beside a knit stitch is a yfwd."""
    assert "yfwd" in typed("row", "-", "--row", "47", "--terms", "uk", stdin=LACE).out


def test_the_json_is_that_of_the_api(typed: Type) -> None:
    """With the same members."""
    answer = json.loads(typed("row", "-", "--row", "47", "--stitches", "134", "--json", stdin=LACE).out)
    assert set(answer) == {"terms", "row", "progress", "count_in", "gauge", "looks_wrong", "wrong"}
    assert answer["wrong"] is None
    assert answer["count_in"] == {"before": 5, "each": 6, "times": 20, "after": 9}


def test_another_gauge_tells_the_size_and_the_counts_that_keep_it(typed: Type) -> None:
    """By hand: 134 stitches at 20 to 10 cm are 67.0 cm; what keeps the size is what a regauge says."""
    told = ("--gauge-stitches", "20", "--gauge-rows", "28")
    said = " ".join(typed("row", "-", "--row", "47", *told, stdin=LACE).out.split())
    other = json.loads(typed("regauge", "-", "--stitches", "20", "--rows", "28", "--json", stdin=LACE).out)
    assert "it will be 67.0 by " in said
    assert f"begin again with {other['same_size']['counts']['cast_on']} stitches" in said
    assert json.loads(typed("row", "-", "--row", "47", *told, "--json", stdin=LACE).out)["gauge"] == other


def test_half_a_gauge_is_refused(typed: Type) -> None:
    """Rows and stitches go together."""
    done = typed("row", "-", "--row", "47", "--gauge-stitches", "20", stdin=LACE)
    assert (done.status, done.out) == (2, "")
    assert "--gauge-rows" in done.err


def test_what_looks_wrong_at_a_right_count_is_told(typed: Type) -> None:
    """A yarn-over and its decrease in the other order leave the count."""
    said = " ".join(typed("row", "-", "--row", "47", stdin=LACE).out.split())
    assert "The count is right and it looks wrong?" in said
    assert "worked in the other order" in said and "p4 o1 p5 where p5 o1 p4 was meant" in said


@pytest.mark.parametrize(
    ("options", "said"),
    [(("--row", "900"), "208 rows from cast-on to bind-off"), (("--row", "9", "--sure", "9"), "a row before the one")],
)
def test_a_row_that_there_is_not_is_refused(typed: Type, options: tuple[str, ...], said: str) -> None:
    """The status is 2."""
    done = typed("row", "-", *options, stdin=LACE)
    assert (done.status, done.out) == (2, "")
    assert said in done.err

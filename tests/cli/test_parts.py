"""`counterpane parts`: what there is to choose from, without a server."""

from __future__ import annotations

import json

from cli.conftest import Type


def test_the_textures_of_a_count_and_both_sides_are_listed(typed: Type) -> None:
    """Seed stitch is alike on both sides over any count; waffle has one right side, though 133 suits it."""
    done = typed("parts", "--kind", "body", "--admits", "133", "--reversible", "yes", "--json")
    slugs = {card["slug"] for card in json.loads(done.out)["items"]}
    assert done.status == 0
    assert "seed-stitch" in slugs and "waffle" not in slugs


def test_all_kinds_are_listed_under_their_headings(typed: Type) -> None:
    """A newcomer sees what a blanket is made of, and the name that a plan takes."""
    shown = typed("parts").out
    headings = ("Textures for the body", "Borders, for", "Selvedges", "Cast-ons", "Bind-offs")
    assert [heading in shown for heading in headings] == [True] * 5
    assert "3n + 1, from 4" in shown  # Waffle: p1, *k2, p1 takes 3 at a time and 1 over.


def test_one_part_is_shown_with_its_rows_and_what_it_takes(typed: Type) -> None:
    """A note of its author is called a claim."""
    shown = typed("parts", "waffle").out
    assert "a multiple of 3 stitches plus 1, at least 4" in shown
    assert "Rows 1 and 3 (RS): p1, *k2, p1; rep from * to end." in shown
    assert "a claim, not a measurement" in shown


def test_a_name_that_is_misspelt_is_taken_for_the_nearest(typed: Type) -> None:
    """The status is 3; where nothing is near, the list is named."""
    near, far = typed("parts", "wafle"), typed("parts", "zzzzz")
    assert (near.status, far.status) == (3, 3)
    assert "Probably meant: waffle." in near.err and "`counterpane parts` lists" in far.err


def test_a_search_that_finds_nothing_says_what_to_leave_out(typed: Type) -> None:
    """An empty table would leave a reader alone."""
    assert "leave out one of --kind" in typed("parts", "--words", "zzzzz").out

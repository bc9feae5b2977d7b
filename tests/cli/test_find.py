"""`counterpane find`: the parts to choose from, searched without a server."""

from __future__ import annotations

import json

import pytest

from cli.conftest import Type


def test_the_textures_of_a_count_and_both_sides_are_listed(typed: Type) -> None:
    """Seed stitch is alike on both sides over any count; waffle has one right side, though 133 suits it."""
    done = typed("find", "--kind", "body", "--admits", "133", "--reversible", "yes", "--json")
    slugs = {card["slug"] for card in json.loads(done.out)["items"]}
    assert done.status == 0
    assert "seed-stitch" in slugs and "waffle" not in slugs


def test_all_kinds_are_listed_under_their_headings(typed: Type) -> None:
    """A newcomer sees what a blanket is made of, and the name that a plan takes."""
    shown = typed("find").out
    headings = ("Textures for the body", "Borders, for", "Selvedges", "Cast-ons", "Bind-offs")
    assert [heading in shown for heading in headings] == [True] * 5
    assert "3n + 1, from 4" in shown  # Waffle: p1, *k2, p1 takes 3 at a time and 1 over.


def test_one_part_is_shown_with_its_rows_and_what_it_takes(typed: Type) -> None:
    """A note of its author is called a claim."""
    shown = typed("find", "--show", "waffle").out
    assert "a multiple of 3 stitches plus 1, at least 4" in shown
    assert "Rows 1 and 3 (RS): p1, *k2, p1; rep from * to end." in shown
    assert "a claim, not a measurement" in shown


def test_a_name_that_is_misspelt_is_taken_for_the_nearest(typed: Type) -> None:
    """The status is 3; where nothing is near, the list is named."""
    near, far = typed("find", "--show", "wafle"), typed("find", "--show", "zzzzz")
    assert (near.status, far.status) == (3, 3)
    assert "Probably meant: waffle." in near.err and "`counterpane find` lists" in far.err


def test_a_search_that_finds_nothing_says_what_to_leave_out(typed: Type) -> None:
    """An empty table would leave a reader alone."""
    assert "leave out one of the words" in typed("find", "zzzzz").out


def test_a_width_at_a_gauge_finds_counts_and_shows_them(typed: Type) -> None:
    """At 22 stitches to 10 cm, 63 to 64 cm are 139 or 140 stitches: waffle takes 139 of them, basket weave 140."""
    done = typed("find", "--kind", "body", "--width", "63..64", "--gauge", "22x30", "--json")
    found = {card["slug"]: [each["stitches"] for each in card["widths"]] for card in json.loads(done.out)["items"]}
    assert (found["waffle"], found["basket-weave"], found["garter"]) == ([139], [140], [139, 140])
    assert "139 (63.2 cm)" in typed("find", "waffle", "--width", "63..64", "--gauge", "22").out


def test_a_width_without_a_gauge_is_refused(typed: Type) -> None:
    """Centimetres are no stitches; the message says what to give."""
    done = typed("find", "--width", "60..80")
    assert (done.status, "give both" in done.err) == (2, True)


def test_facets_count_what_is_not_known(typed: Type) -> None:
    """No starter has a measured opening: all of them are counted as not known, and none is found by one."""
    shown = json.loads(typed("find", "--kind", "body", "--facets", "--json").out)
    opening = next(each for each in shown["facets"]["facets"] if each["name"] == "openings_measured")
    assert (opening["words"], opening["not_known"]) == ([], shown["facets"]["counted"])
    assert json.loads(typed("find", "--openings-measured-under", "5", "--json").out)["items"] == []
    assert "Not known" in typed("find", "moss", "--facets").out


def test_what_goes_with_a_border_shares_its_count(typed: Type) -> None:
    """The rib takes a multiple of 4 plus 2 and runs over 12 stitches more: seed stitch meets it, at 2 or more."""
    shown = json.loads(typed("find", "--with", "garter-rib-border", "--json").out)["items"]
    assert {card["kind"] for card in shown} == {"body"}
    assert all(card["goes_with"]["stitches"] % 4 == 2 for card in shown)


def test_more_like_this_one_comes_likest_first(typed: Type) -> None:
    """With how much of the stitches agrees."""
    shown = json.loads(typed("find", "--like", "seed-stitch", "--json").out)["items"]
    percents = [card["alike"]["percent"] for card in shown]
    assert percents and percents == sorted(percents, reverse=True) and "seed-stitch" not in str(shown[0]["slug"])


@pytest.mark.parametrize(
    "typing",
    [("--width", "60-80"), ("--gauge", "0"), ("--row-repeat", "2.5"), ("--yarn-class", "8"), ("--like", "A b")],
)
def test_a_slip_in_an_option_is_told(typed: Type, typing: tuple[str, str]) -> None:
    """With status 2 and the option that it stands in."""
    done = typed("find", *typing)
    assert (done.status, typing[0] in done.err) == (2, True)

"""Seams: frill and pull, the row that changes the count, and extra rows; each read back as a stranger would read it."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.behaviour import Seam, seams
from counterpane.craft.behaviour.take_up import folded
from counterpane.craft.behaviour.widths import Ratios
from counterpane.craft.component import Component
from counterpane.craft.constructions import CannotBePlanned, Plan
from counterpane.craft.constructions.making import attempt
from counterpane.craft.counts import work
from counterpane.craft.measures import half_up
from counterpane.craft.rows.say import say_row
from counterpane.craft.sizing.takeup import row_of_changes
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library.plans.plans import plan_request_of
from counterpane.library.texts.checks import check_text

Starters = Mapping[str, Component]
BODIES = ["stocking-stitch", "waffle", "garter", "rib-two-by-two", "basket-weave", "rope-cable", "eyelet-dots"]
NO_BORDERS = {"bottom": None, "sides": None, "top": None}
BORDERS = ["garter-border", "seed-stitch-border", "rib-two-by-two-border", "moss-stitch-border", "welt-border"]


def planned(content: Mapping[str, Any], starters: Starters, vocabulary: Vocabulary) -> Plan | None:
    """Return the plan of a request for 70 by 90 cm at 22 by 30, None where there is none."""
    usual = {"gauge": {"stitches": 22, "rows": 30, "over_cm": 10}, "size": {"width_cm": 70, "length_cm": 90}}
    try:
        return attempt(plan_request_of({**usual, **content}, starters.__getitem__, vocabulary), vocabulary).plan
    except CannotBePlanned:
        return None


def found(content: Mapping[str, Any], starters: Starters, vocabulary: Vocabulary) -> dict[str, Seam]:
    """Return the seams of a plan by the part that meets the body."""
    plan = planned(content, starters, vocabulary)
    assert plan is not None
    return {seam.part: seam for seam in seams(plan, vocabulary)}


def checked(text: str, vocabulary: Vocabulary, terms: Terms = "us") -> tuple[int | None, list[str]]:
    """Return the count after the last row of a text, and the messages of all findings that are no notes."""
    answer = check_text(text, vocabulary, terms=terms)
    wrong = [finding["message"] for finding in answer["findings"] if finding["severity"] != "note"]
    return answer["rows"][-1]["after"], wrong


def test_parts_of_one_fabric_at_one_gauge_have_no_seam(starters: Starters, vocabulary: Vocabulary) -> None:
    """Garter borders round a garter body neither frill nor pull."""
    assert found({"parts": {"body": "garter"}}, starters, vocabulary) == {}


def test_a_fabric_without_figures_is_not_known(starters: Starters, vocabulary: Vocabulary) -> None:
    """Nothing is told of the width of a welt border under a waffle where one gauge serves both."""
    told = found({"parts": {"body": "waffle", "bottom": "welt-border"}}, starters, vocabulary)["bottom"]
    assert (told.excess, told.take_up) == (None, None)


def test_bands_meet_one_another_where_no_border_is(starters: Starters, vocabulary: Vocabulary) -> None:
    """A band over the same stitches as the one below is wider or narrower by the figures of both; ribbing draws in."""
    told = found({"parts": {"body": ["garter", "garter", "stocking-stitch"], **NO_BORDERS}}, starters, vocabulary)
    assert list(told) == ["body 3"]
    assert told["body 3"].body == "body 2"
    ribbed = found({"parts": {"body": ["stocking-stitch", "rib-two-by-two"], **NO_BORDERS}}, starters, vocabulary)
    excess = ribbed["body 2"].excess
    assert excess is not None
    assert excess.high is not None
    assert excess.high < 0


@pytest.mark.parametrize("tenths", [200, 205, 230, 233, 236, 239, 242, 250])
@pytest.mark.parametrize("width", [20, 70])
def test_a_border_in_sixes_changes_by_the_nearest_six(
    width: int, tenths: int, starters: Starters, vocabulary: Vocabulary
) -> None:
    """The change nearest that of the gauges at which three-by-three rib works; less than half of six is no change."""
    own = {"stitches": f"{tenths / 10}", "rows": 30, "over_cm": 10, "in": "rib-three-by-three-border"}
    asked = {
        "parts": {"body": "stocking-stitch", "bottom": "rib-three-by-three-border"},
        "gauge": [{"stitches": 22, "rows": 30, "over_cm": 10}, own],
        "size": {"width_cm": width, "length_cm": 90},
    }
    plan = planned(asked, starters, vocabulary)
    assert plan is not None
    likely = half_up(plan.counts.body[0] * (1 - Fraction(tenths, 220)))
    told = found(asked, starters, vocabulary)["bottom"].take_up
    assert told is not None
    ways = [6 * many for many in range(-20, 21) if many and abs(6 * many - likely) < abs(likely) and many * likely > 0]
    sure = Fraction(0) not in told.stitches
    assert told.chosen in ([way for way in ways if sure and abs(way - likely) <= 3] or [None])


def test_what_is_not_known_of_two_fabrics_changes_nothing() -> None:
    """Without a figure one fabric is as wide as the other, and its rows as high."""
    assert (Ratios(None, None).likely_width, Ratios(None, None).likely_rows) == (1, 1)


GAUGES = st.one_of(st.none(), st.tuples(st.integers(150, 300), st.integers(300, 500)))
PLANS = st.tuples(st.sampled_from(BODIES), st.sampled_from(BORDERS), GAUGES, st.sampled_from(["ends", "sides"]))


def request(asked: tuple[str, str, tuple[int, int] | None, str]) -> dict[str, Any]:
    """Return the request of a body with one border all round, whose gauge is known or not."""
    body, border, tenths, corner = asked
    gauges: list[dict[str, Any]] = [{"stitches": 22, "rows": 30, "over_cm": 10, "in": body}]
    if tenths:
        gauges.append({"stitches": tenths[0] / 10, "rows": tenths[1] / 10, "over_cm": 10, "in": border})
    parts = {"body": body, "bottom": border, "sides": border, "top": border, "selvedge": "slipped-selvedge"}
    return {"parts": parts, "gauge": gauges, "corner": corner}


@settings(max_examples=60, deadline=None)
@given(PLANS, st.sampled_from(["us", "uk"]))
def test_every_changing_row_reads_back_and_checks_clean(
    starters: Starters, vocabulary: Vocabulary, asked: tuple[str, str, tuple[int, int] | None, str], terms: Terms
) -> None:
    """A stranger reads from its words the count that it says it leaves, from the one that it says it begins with."""
    plan = planned(request(asked), starters, vocabulary)
    for seam in seams(plan, vocabulary) if plan else ():
        row = seam.take_up.row if seam.take_up else None
        if plan is not None and row is not None:
            assert plan.counts.cast_on in (row.before, row.after)
            text = f"Cast on {row.before} sts.\nRow 1 ({row.side}): {say_row(row.parts, vocabulary, terms)}."
            assert checked(text, vocabulary, terms) == (row.after, [])


@settings(max_examples=60, deadline=None)
@given(PLANS, st.sampled_from(["us", "uk"]))
def test_a_pair_of_turned_rows_changes_no_count(
    starters: Starters, vocabulary: Vocabulary, asked: tuple[str, str, tuple[int, int] | None, str], terms: Terms
) -> None:
    """A row with a pair before it leaves the count that the row alone leaves, and nothing is found in it."""
    plan = planned(request(asked), starters, vocabulary)
    for seam in seams(plan, vocabulary) if plan else ():
        for pair in seam.extra_rows.pairs_in_words if plan and seam.extra_rows else ():
            assert plan is not None
            on, rows = plan.counts.cast_on, plan.sections[1].cycle
            whole = next(row.parts for row in rows if row.side == pair.side and len(row.parts) > 1)
            words = ", ".join(say_row(parts, vocabulary, terms) for parts in (pair.parts, whole))
            text = f"Cast on {on} sts.\nRow 1 ({pair.side}): {words}."
            assert checked(text, vocabulary, terms) == (work([whole], on, vocabulary)[0].after, [])


@pytest.mark.parametrize("terms", ["us", "uk"])
def test_garter_beside_waffle_has_both_a_row_and_a_pair(
    starters: Starters, vocabulary: Vocabulary, terms: Terms
) -> None:
    """The plain case gives something to read back: what holds for all holds of something."""
    told = found(request(("waffle", "garter-border", (205, 420), "ends")), starters, vocabulary)
    assert told["bottom"].take_up is not None and told["sides"].extra_rows is not None
    row, pairs = told["bottom"].take_up.row, told["sides"].extra_rows.pairs_in_words
    assert row is not None and (row.section, row.row, row.side) == ("bottom", 12, "WS")
    said = [say_row(pair.parts, vocabulary, terms) for pair in pairs]
    assert [text.count("turn") for text in said] == [2, 2]


@given(st.integers(4, 400).flatmap(lambda over: st.tuples(st.just(over), st.integers(1, over - 1))))
def test_a_row_written_with_brackets_is_the_row_written_out(over: tuple[int, int]) -> None:
    """What comes again and again is written once and worked as often."""
    plain = [over[0] // over[1]] * over[1] + [over[0] % over[1]]
    written = folded(plain, "m1", "k")
    flat: list[object] = []
    for node in written:
        flat += list(node.parts) * node.times if hasattr(node, "parts") else [node]
    assert tuple(flat) == row_of_changes(tuple(plain), "m1")


@pytest.mark.parametrize(
    ("sides", "rows"), [("garter-border", 42), ("seed-stitch-border", 34), ("garter-border", 60), ("garter-border", 31)]
)
def test_extra_rows_keep_pace_all_along(sides: str, rows: int, starters: Starters, vocabulary: Vocabulary) -> None:
    """Worked row by row, the border is never more than a pair and a row away from the height of the body."""
    gauges = [
        {"stitches": 22, "rows": each, "over_cm": 10, "in": slug} for each, slug in ((30, "waffle"), (rows, sides))
    ]
    seam = found({"parts": {"body": "waffle", "sides": sides}, "gauge": gauges}, starters, vocabulary)["sides"]
    more = seam.extra_rows
    if rows == 31:
        assert more is None
        return
    assert more is not None
    plan = planned({"parts": {"body": "waffle", "sides": sides}, "gauge": gauges}, starters, vocabulary)
    assert plan is not None
    border, pace = 0, Fraction(rows, 30)
    for row in range(1, plan.sections[1].rows + 1):
        border += 3 if row in more.before else 1
        assert abs(border - row * pace) <= 3
    assert abs(border - plan.sections[1].rows * pace) <= 1


def test_where_swatches_leave_it_open_nothing_is_changed(starters: Starters, vocabulary: Vocabulary) -> None:
    """Gauges within the error of a reading give a range on both sides of nothing, and no row."""
    gauges = [
        {"stitches": each, "rows": 30, "over_cm": 10, "in": slug}
        for each, slug in ((22, "waffle"), (21.9, "garter-border"))
    ]
    told = found({"parts": {"body": "waffle"}, "gauge": gauges}, starters, vocabulary)["bottom"]
    assert told.excess is not None and Fraction(0) in told.excess
    assert told.take_up is not None and told.take_up.chosen is None


def test_a_border_keeps_to_the_counts_that_its_rows_allow(starters: Starters, vocabulary: Vocabulary) -> None:
    """A rib of two and two over the whole width is cast on over a count of its own multiple."""
    told = found({"parts": {"body": "stocking-stitch", "bottom": "rib-two-by-two-border"}}, starters, vocabulary)
    take = told["bottom"].take_up
    assert take is not None and take.row is not None and take.chosen is not None and take.chosen < 0
    assert take.row.before % 4 in (0, 2)
    assert Fraction(take.chosen) in take.stitches


def test_the_cost_does_not_grow_with_the_blanket(starters: Starters, vocabulary: Vocabulary) -> None:
    """Over ten million times as many stitches the same is told, with the row left out."""
    content = {"parts": {"body": "stocking-stitch"}, "size": {"width_cm": 7 * 10**8, "length_cm": 90}}
    take = found(content, starters, vocabulary)["bottom"].take_up
    assert take is not None and take.chosen is not None and take.row is None


def test_a_short_band_wants_less_than_a_pair_of_rows(starters: Starters, vocabulary: Vocabulary) -> None:
    """By hand, 42 rows of garter to 30: two rows of the body are 0.8 of a row short, four are 1.6 short, a pair."""
    gauge = [
        {"stitches": 22, "rows": 30, "over_cm": 10},
        {"stitches": 22, "rows": 42, "over_cm": 10, "in": "garter-border"},
    ]
    chosen = []
    for rows in (2, 4):
        bands = [{"component": "stocking-stitch", "rows": rows}, "waffle"]
        parts = {"body": bands, "sides": "garter-border", "bottom": None, "top": None}
        plan = planned({"parts": parts, "gauge": gauge}, starters, vocabulary)
        assert plan is not None
        lowest = next(seam for seam in seams(plan, vocabulary) if (seam.part, seam.body) == ("sides", "body 1"))
        chosen.append(lowest.extra_rows and lowest.extra_rows.chosen)
    assert chosen == [None, 1]


@pytest.mark.parametrize(
    ("sides", "changes"),
    [("Row 1 (RS): k4.\nRow 2: k4.", True), ("Row 1 (RS): k2, yo, k2.\nRow 2: k3, k2tog.", False)],
)
def test_a_row_whose_sides_change_their_count_is_left_as_it_is(
    sides: str, changes: bool, starters: Starters, vocabulary: Vocabulary
) -> None:
    """A row that evens out the body and lets its borders grow as well would leave a count that no row counts on."""
    parts = {"body": "stocking-stitch", "bottom": "rib-two-by-two-border", "top": None, "sides": {"text": sides}}
    told = found({"parts": parts}, starters, vocabulary)["bottom"].take_up
    assert told is not None
    assert told.chosen is not None
    assert (told.row is not None) == changes

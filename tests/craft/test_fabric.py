"""The fabric of a trace: faces, ridges, openings, strands, decreases and the other side."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from counterpane.craft.fabric import (
    decreases,
    from_rs,
    from_ws,
    longest_strand,
    misplaced_pairs,
    most_rows_slipped,
    on_double_yarn_over,
    openings,
    reversible,
    ridges,
)
from counterpane.craft.rows.tree import Place
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import Side, Traced, trace

from .handmade import rows_of


def traced(text: str, before: int, vocabulary: Vocabulary, sides: Sequence[Side] | None = None) -> Traced:
    """Trace the rows between the slashes, all of which come out."""
    done = trace(rows_of(text, vocabulary), before, vocabulary, sides)
    assert all(step.after is not None for step in done.steps)
    return done


def test_each_stitch_shows_what_it_is(vocabulary: Vocabulary) -> None:
    """Knit, purl, yarn-over, slipped, crossed and unknown stitches show from the right edge on."""
    faces = from_rs(traced("k1, p1, yo, sl 1, c4f, patt 1", 8, vocabulary), vocabulary)
    assert faces == (("knit", "purl", "open", "slipped", *["crossed"] * 4, "not known"),)


def test_a_cable_spelt_out_is_crossed_where_it_was_held(vocabulary: Vocabulary) -> None:
    """The stitches from the cable needle are crossed ones."""
    (course,) = from_rs(traced("sl next 1 st to cn and hold in front, p1, k1 from cn", 2, vocabulary), vocabulary)
    assert course == ("purl", "crossed")


def test_a_wrong_side_row_shows_its_other_faces_from_the_other_edge(vocabulary: Vocabulary) -> None:
    """Worked k1, p2 on the wrong side, the right side shows knit, knit, purl."""
    courses = from_rs(traced("k1, p2", 3, vocabulary, ["WS"]), vocabulary)
    assert courses == (("knit", "knit", "purl"),)
    assert from_ws(courses) == (("knit", "purl", "purl"),)
    assert from_ws(from_ws(courses)) == courses


def test_a_row_that_turns_makes_a_course_each_way(vocabulary: Vocabulary) -> None:
    """Out and back are two courses; the purl stitches worked back show knit."""
    courses = from_rs(traced("k2, turn, p2", 5, vocabulary), vocabulary)
    assert courses == ((), ("knit", "knit"))


def test_stitches_passed_over_or_bound_off_are_not_in_the_fabric_s_edge(vocabulary: Vocabulary) -> None:
    """What no longer lies on a needle shows no face of its own; the last loop of a bind-off has none known."""
    assert from_rs(traced("sl 1, k1, psso, p1", 3, vocabulary), vocabulary) == (("knit", "purl"),)
    assert from_rs(traced("bind off 2, k1", 4, vocabulary), vocabulary) == (("not known", "knit"),)


@pytest.mark.parametrize(
    ("text", "seen"),
    [
        (" / ".join(["knit"] * 7), (3, 4)),
        ("knit / purl / knit / purl", (0, 0)),
        ("knit / purl / knit / knit / knit / purl", (1, 0)),
        ("k1, p1 / k1, p1", (0, 0)),
    ],
)
def test_ridges_are_single_purl_courses(text: str, seen: tuple[int, int], vocabulary: Vocabulary) -> None:
    """Garter has one on each side in turn; the back of stocking stitch is no ridge."""
    stitches = 2 if "p1" in text else 3
    assert ridges(from_rs(traced(text, stitches, vocabulary), vocabulary)) == seen


def test_yarn_overs_side_by_side_are_one_opening(vocabulary: Vocabulary) -> None:
    """A single one, a double one, and one wrapped twice, each at its place."""
    found = openings(traced("k1, yo, k2tog, yo twice, k1, yo wrapping yarn twice, k1", 5, vocabulary), vocabulary)
    assert [(opening.row, opening.yarn_overs, opening.place.column) for opening in found] == [
        (0, 1, 5),
        (0, 2, 16),
        (0, 2, 30),
    ]


@pytest.mark.parametrize(
    ("text", "before", "length"),
    [
        ("k2, sl 3 wyif, k2", 7, 3),
        ("k2, sl 1, wyif, sl 1, k2", 6, 2),
        ("sl 1, k5", 6, 0),
        ("sl 3, k3", 6, 2),
        ("k3, sl 3", 6, 2),
        ("k1, sl 1, k1, psso, k2", 5, 0),
        ("knit", 6, 0),
    ],
)
def test_the_longest_strand_passes_the_slipped_stitches(
    text: str, before: int, length: int, vocabulary: Vocabulary
) -> None:
    """At an edge one fewer is passed; a stitch slipped to be passed over leaves no strand."""
    assert longest_strand(traced(text, before, vocabulary)) == length


def test_a_stitch_slipped_in_row_after_row_is_counted(vocabulary: Vocabulary) -> None:
    """One loop slipped in three rows and then knitted."""
    rows = "k2, sl 1, k2 / p2, sl 1, p2 / k2, sl 1, k2 / purl / sl 1, k4"
    assert most_rows_slipped(traced(rows, 5, vocabulary)) == 3
    assert most_rows_slipped(traced("knit", 5, vocabulary)) == 0


def test_decreases_tell_where_they_lean(vocabulary: Vocabulary) -> None:
    """As the right side shows them; a group worked into one stitch is none."""
    row = "k2tog, ssk, sl 1, k1, psso, bind off 1, (k1, yo, k1) into next st"
    found = decreases(traced(row, 9, vocabulary), vocabulary)
    assert [(one.stitch, one.lean) for one in found] == [
        ("k2tog", "right"),
        ("ssk", "left"),
        ("psso", "left"),
        ("bind off", None),
    ]


def test_a_slipped_stitch_passed_over_on_the_wrong_side_leans_right(vocabulary: Vocabulary) -> None:
    """Seen from the other side, left is right."""
    (one,) = decreases(traced("sl 1, p1, psso", 2, vocabulary, ["WS"]), vocabulary)
    assert one.lean == "right"


@pytest.mark.parametrize(
    ("row", "misplaced"), [("k1, (p1, k1) into double yo, k1", 0), ("(p1, k1) into double yo, k2", 1)]
)
def test_a_pair_over_other_loops_than_a_double_yarn_over_is_found(
    row: str, misplaced: int, vocabulary: Vocabulary
) -> None:
    """The counts agree either way; only the loops tell."""
    done = traced(f"k2tog, yo, yo, ssk / {row}", 4, vocabulary)
    assert len(misplaced_pairs(done, vocabulary)) == misplaced
    assert all(isinstance(place, Place) for place in misplaced_pairs(done, vocabulary))


def test_two_single_yarn_overs_are_no_double_one(vocabulary: Vocabulary) -> None:
    """Apart, or one alone, they are not one opening."""
    loops = traced("yo, k1, yo, yo", 1, vocabulary).rows[0].loops
    last, before_last, _, first = loops
    assert on_double_yarn_over((last, before_last), vocabulary)
    assert not on_double_yarn_over((first, before_last), vocabulary)
    assert not on_double_yarn_over((last,), vocabulary)


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("knit", "yes"),
        ("knit / purl", "no"),
        ("*k1, p1; rep from * to last st, k1 / *p1, k1; rep from * to last st, p1", "yes"),
        ("k1, *p1, k1; rep from * to end", "yes"),
        ("*k3, p1; rep from * to end / *k1, p3; rep from * to end", "no"),
        (
            "*k2, p2; rep from * to end / *p1, k2, p1; rep from * to end"
            " / *p2, k2; rep from * to end / *k1, p2, k1; rep from * to end",
            "both-good",
        ),
        ("*k tbl, p1; rep from * to end / *k1, p tbl; rep from * to end", "no"),
        ("*sl 1, k1; rep from * to end", "yes"),
        ("*k1, yo, k2tog; rep from * to end", "yes"),
        ("*k1, yo, k2tog; rep from * to end / purl", "no"),
        ("*c4f, p2; rep from * to end / *k2, p4; rep from * to end", "no"),
        ("*sl 1 wyif, k1; rep from * to end / purl", "no"),
        ("*c4f; rep from * to end / *c2b; rep from * to end", None),
        ("k24", None),
        ("k1, yo, k to end", None),
        ("*k2, p2; rep from * to end, turn / *k2, p2; rep from * to end", "yes"),
        ("k2, turn, p2", None),
        ("*k3000, p3000; rep from * to end", None),
        ("k5, *p1, (k1, p1) in next st, k2tog; rep from * to end", "yes"),
        ("*k2tog; rep from * to end / *kfb; rep from * to end", None),
        ("*patt 2; rep from * to end", None),
    ],
)
def test_both_sides_are_compared(text: str, answer: str | None, vocabulary: Vocabulary) -> None:
    """The same up to a shift, its mirror image, another texture, or not known."""
    assert reversible(rows_of(text, vocabulary), vocabulary) == answer


def test_rounds_are_compared_without_turning(vocabulary: Vocabulary) -> None:
    """In the round knitting alone is stocking stitch, and knit and purl in turn are garter."""
    knit, garter = rows_of("knit", vocabulary), rows_of("knit / purl", vocabulary)
    assert reversible(knit, vocabulary, ["round"]) == "no"
    assert reversible(garter, vocabulary, ["round", "round"]) == "yes"


@pytest.mark.parametrize(
    ("more", "answer"), [((), "no"), (("*yo, sl 1, k1, psso, k38; rep from * to end", "purl"), None)]
)
def test_a_large_texture_is_told_by_stitches_that_all_have_names(
    more: tuple[str, ...], answer: str | None, vocabulary: Vocabulary
) -> None:
    """34 rows of 40 stitches differ from their back; with a stitch passed over, too many places would be tried."""
    steps = [f"*k{row}, p{40 - row}; rep from * to end" for row in range(1, 35)]
    assert reversible(rows_of(" / ".join((*steps, *more)), vocabulary), vocabulary) == answer

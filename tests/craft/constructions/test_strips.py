"""Edges worked with the body: side borders right and left, and selvedges."""

from __future__ import annotations

from dataclasses import replace

import pytest

from counterpane.craft.component import Version
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.making import attempt
from counterpane.craft.constructions.obstacles import DoesNotJoin, LeftDiffers, Obstacle, ValueRefused
from counterpane.craft.constructions.strips import Edging, side_border
from counterpane.craft.rows.say import say_row
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import Starters, asked, planned
from craft.textures import body

SEED = "seed-stitch-border"


def body_rows(plan: Plan, vocabulary: Vocabulary) -> list[str]:
    """Return the rows of the first section of the body in words."""
    return [say_row(row.parts, vocabulary) for row in plan.sections[1].cycle]


def test_a_moss_side_border_goes_on_in_phase_over_an_even_count(starters: Starters, vocabulary: Vocabulary) -> None:
    """The left border of five begins with a purl stitch where the right one begins with a knit stitch."""
    plan = planned(starters, vocabulary, "stocking-stitch", sides=SEED)
    assert plan.counts.cast_on % 2 == 0
    assert body_rows(plan, vocabulary) == [
        "k1, p1, k1, p1, k to last 5 sts, p1, k1, p1, k1, p1",
        "p1, k1, p1, k1, p to last 5 sts, k1, p1, k1, p1, k1",
    ]


def test_a_moss_side_border_is_alike_on_both_sides_over_an_odd_count(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Both borders of five work knit, purl, knit, purl, knit on every row."""
    plan = planned(starters, vocabulary, "waffle", sides=SEED, selvedge="garter-selvedge")
    plan = plan if plan.counts.cast_on % 2 else planned(starters, vocabulary, "waffle", 71, sides=SEED)
    assert plan.counts.cast_on % 2 == 1
    assert body_rows(plan, vocabulary)[3].replace("k2,", "k1,").startswith("k1, p1, k1, p1, k")


def test_a_texture_beside_itself_runs_on_unbroken(starters: Starters, vocabulary: Vocabulary) -> None:
    """A seed stitch body between seed stitch borders is one row of seed stitch."""
    plan = planned(starters, vocabulary, "seed-stitch", sides=SEED, bottom=SEED)
    assert body_rows(plan, vocabulary) == [say_row(row.parts, vocabulary) for row in plan.sections[0].cycle]
    assert (plan.counts.sides, plan.counts.body[0]) == (5, plan.counts.cast_on - 10)


def test_the_left_border_is_the_mirror_of_the_right_one(starters: Starters, vocabulary: Vocabulary) -> None:
    """A border in words is worked backwards on the left, with leans changed."""
    sides = {"text": "Row 1 (RS): k2, yo, k2tog, p1.\nRow 2: k1, p4."}
    rows = body_rows(planned(starters, vocabulary, "garter", sides=sides), vocabulary)
    assert rows == ["k2, yo, k2tog, p1, k to last 5 sts, p1, ssk, yo, k2", "p4, k to last 4 sts, p4"]


def test_the_words_of_a_left_side_are_kept(starters: Starters, vocabulary: Vocabulary) -> None:
    """They stand where the mirror would."""
    sides = {"text": "Rows 1 and 2: k1, p3.", "left": "Rows 1 and 2: p2, k2."}
    rows = body_rows(planned(starters, vocabulary, "garter", sides=sides), vocabulary)
    assert rows == ["k1, p3, k to last 4 sts, p2, k2", "p2, k to last 3 sts, p3"]


@pytest.mark.parametrize("left", ["Rows 1 and 2: p5.", "Row 1: p4.", "Row 1: zz.\nRow 2: p4."])
def test_a_left_side_that_does_not_match_is_refused(left: str, starters: Starters, vocabulary: Vocabulary) -> None:
    """Other stitches, other rows and unknown words are told apart from the mirror."""
    request = asked(starters, vocabulary, "garter", sides={"text": "Rows 1 and 2: k1, p3.", "left": left})
    assert attempt(request, vocabulary).met(LeftDiffers)


def test_a_slipped_selvedge_is_slipped_at_the_beginning_of_every_row(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Both rows begin with the slipped stitch and end with a knit one."""
    plan = planned(starters, vocabulary, "waffle", selvedge="slipped-selvedge")
    for row in body_rows(plan, vocabulary):
        assert row.startswith("sl 1 pwise wyif, yarn to back, k")
        assert row.endswith(("k7", "k to end"))


def test_a_selvedge_narrower_than_its_rows_is_refused(starters: Starters, vocabulary: Vocabulary) -> None:
    """A cord of three stitches cannot be worked over two."""
    request = asked(starters, vocabulary, "garter", selvedge={"component": "cord-selvedge", "stitches": 2})
    assert attempt(request, vocabulary).met(ValueRefused)[0].nearest == (3,)


def test_a_selvedge_in_words_of_a_fixed_count_is_mirrored(starters: Starters, vocabulary: Vocabulary) -> None:
    """The edge stitch of stocking stitch is knit on the right side and purled on the wrong one, at both ends."""
    plan = planned(starters, vocabulary, "garter", sides=None, selvedge={"text": "Row 1 (RS): k1.\nRow 2: p1."})
    assert body_rows(plan, vocabulary) == ["knit", "p1, k to last st, p1"]


def test_a_selvedge_in_words_across_the_row_gives_its_two_ends(starters: Starters, vocabulary: Vocabulary) -> None:
    """What the row begins and ends with stands at the edges, and its middle is left to the body."""
    words = {"text": "Rows 1 and 2: sl 1 pwise wyib, k to last st, p1.", "stitches": 1}
    plan = planned(starters, vocabulary, "garter", sides=None, selvedge=words)
    assert body_rows(plan, vocabulary) == ["sl 1 pwise wyib, k to last st, p1"] * 2


@pytest.mark.parametrize(
    ("selvedge", "obstacle"),
    [
        ({"text": "Rows 1 and 2: k to last st, p1.", "stitches": 1, "left": "Rows 1 and 2: p1."}, LeftDiffers),
        ({"text": "Rows 1 and 2: k2tog, yo, k to end.", "stitches": 1}, ValueRefused),
        ({"text": "Rows 1 and 2: *k2tog, yo; rep from * to end.", "stitches": 1}, DoesNotJoin),
    ],
)
def test_a_selvedge_whose_ends_cannot_be_taken_is_refused(
    selvedge: dict[str, object], obstacle: type[Obstacle], starters: Starters, vocabulary: Vocabulary
) -> None:
    """A left side of its own, an end that is wider and a stitch that would be cut are each refused."""
    assert attempt(asked(starters, vocabulary, "garter", selvedge=selvedge), vocabulary).met(obstacle)


def test_a_side_border_without_a_mirror_image_needs_its_left_side_in_words(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """A stitch passed over something else than a slipped stitch has no mirror."""
    sides = {"text": "Row 1 (RS): k2, yo, k1, psso, k1.\nRow 2: p4."}
    made = attempt(asked(starters, vocabulary, "garter", sides=sides), vocabulary)
    assert "no mirror image" in made.met(LeftDiffers)[0].why
    plan = planned(starters, vocabulary, "garter", sides={**sides, "left": "Rows 1 and 2: k4."})
    assert plan.counts.sides == 4


def test_a_border_of_openwork_in_phase_is_mirrored_where_a_cut_would_split_it(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Versions for every count do not help where the cut falls into a decrease."""
    moss = starters["seed-stitch-border"]
    odd = Version("odd", "Row 1 (RS): k1, *yo, k2tog; rep from * to end.\nRow 2: purl.")
    even = Version("even", "Row 1 (RS): *yo, k2tog; rep from * to end.\nRow 2: purl.")
    edging = Edging(replace(moss, versions=(odd, even)), "/parts/sides", in_phase=True)
    right, left = (
        side_border(edging, (5, 5), 20, vocabulary).right[0],
        side_border(edging, (5, 5), 20, vocabulary).left[0],
    )
    assert (say_row(right, vocabulary), say_row(left, vocabulary)) == (
        "k1, [yo, k2tog] twice",
        "[ssk, yo] twice, k1",
    )


@pytest.mark.parametrize(
    ("row", "why"),
    [
        ("k2, turn, k2, turn, k4", "its row 1 turns before the end of the row"),
        ("bind off all sts", "its row 1 binds off all stitches"),
        ("k to marker, sm, k3", "its row 1 counts to markers"),
        ("*k1; rep from *, *k2; rep from *", "its row 1 holds two open repeats with no stop between them"),
    ],
)
def test_a_left_side_that_is_no_row_of_its_own_says_why(
    row: str, why: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """It is worked at the end of a longer row, where none of these can stand."""
    request = asked(starters, vocabulary, "garter", sides={"text": "Rows 1 and 2: k1, p3.", "left": f"Row 1: {row}."})
    (met,) = attempt(request, vocabulary).met(LeftDiffers)
    assert met.why == why


def test_a_moss_side_border_of_very_many_stitches_is_no_edge(starters: Starters, vocabulary: Vocabulary) -> None:
    """Beside a body of 100 metres it is refused before its rows are laid out, with the most that an edge may have."""
    sides = {"component": SEED, "stitches": 10_001}
    (met,) = attempt(asked(starters, vocabulary, "stocking-stitch", 10_000, sides=sides), vocabulary).met(ValueRefused)
    assert (met.pointer, met.nearest) == ("/parts/sides/stitches", (10_000,))


def test_a_border_without_a_version_for_every_count_is_mirrored(starters: Starters, vocabulary: Vocabulary) -> None:
    """Two versions of moss, both over odd counts, cannot go on in phase over an even one."""
    rows = ("Row 1 (RS): k1, *p1, k1; rep from * to end.", "Row 1 (RS): p1, *k1, p1; rep from * to end.")
    odd = replace(body(*rows), slug="odd-moss", kind="border")
    plan = planned(
        {**starters, "odd-moss": odd},
        vocabulary,
        "stocking-stitch",
        sides={"component": "odd-moss", "stitches": 5},
        bottom=None,
        top=None,
    )
    assert plan.counts.cast_on % 2 == 0
    first = say_row(plan.sections[0].cycle[0].parts, vocabulary)
    assert first == "k1, [p1, k1] twice, k to last 5 sts, [k1, p1] twice, k1"

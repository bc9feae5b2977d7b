"""Faults that a count does not find: each is made, shows where it is said, and is what the trade calls it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.helping.unseen import Fault, cloth, faults
from counterpane.craft.helping.unseen_told import looks
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import planned

Starters = Mapping[str, Component]


def body_row(plan: Plan, row: int) -> int:
    """Return the number in the blanket of a row of the body."""
    return next(section.first_row for section in plan.sections if section.name == "body") + row - 1


def found(starters: Starters, vocabulary: Vocabulary, body: str, row: int) -> dict[str, Fault]:
    """Return the faults that a row of a body invites, by their kinds."""
    plan = planned(starters, vocabulary, body, 40, 40)
    return {each.kind: each for each in faults(plan, body_row(plan, row), vocabulary)}


@pytest.mark.parametrize(
    ("courses", "name"),
    [
        (("kk", "kk"), "stocking stitch"),
        (("pp", "pp"), "reverse stocking stitch"),
        (("kk", "pp", "kk"), "garter"),
        (("kkpp", "kkpp"), "rib"),
        (("kpkp", "pkpk", "kpkp"), "seed stitch"),
        (("kkpp", "ppkk"), None),
        (("kk", "kk", "pp"), None),
        (("kpkp",), None),
        (("koks", "koks"), None),
    ],
)
def test_plain_fabrics_are_named(courses: Sequence[str], name: str | None) -> None:
    """By what each is, common practice, no source."""
    assert cloth(courses) == name


def test_seed_begun_a_stitch_late_is_rib(starters: Starters, vocabulary: Vocabulary) -> None:
    """Knits come above knits; common practice, no source."""
    fault = found(starters, vocabulary, "seed-stitch", 5)["shifted"]
    assert (fault.meant, fault.turned_to) == ("seed stitch", "rib")


def test_a_seed_row_of_the_wrong_side_is_rib(starters: Starters, vocabulary: Vocabulary) -> None:
    """It shows at once; common practice, no source."""
    fault = found(starters, vocabulary, "seed-stitch", 6)["faces-swapped"]
    assert fault.turned_to == "rib"
    assert set(fault.right[:2]) == set(fault.wrong[:2]) == {"k", "p"} and fault.right[:2] != fault.wrong[:2]


def test_a_garter_row_purled_is_a_ridge_missed(starters: Starters, vocabulary: Vocabulary) -> None:
    """Two rows of one face make no ridge; common practice, no source."""
    plan = planned(starters, vocabulary, "waffle", 40, 40)
    (fault,) = (each for each in faults(plan, 4, vocabulary) if each.kind == "faces-swapped")
    assert fault.meant == "garter" and fault.turned_to in ("stocking stitch", "reverse stocking stitch")
    assert "A ridge is missing there." in looks(fault, 4)


def test_a_plain_row_worked_twice_or_shifted_in_garter_shows_nothing(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Each row is like each other, so that no such fault is told."""
    assert set(found(starters, vocabulary, "garter", 5)) == {"faces-swapped"}


def test_a_cable_crossed_the_other_way_shows_by_its_lean(starters: Starters, vocabulary: Vocabulary) -> None:
    """One of the rows of a repeat crosses, and its mirror takes the same count."""
    every = [found(starters, vocabulary, "rope-cable", row) for row in range(3, 11)]
    crossed = [each["crossed-the-other-way"] for each in every if "crossed-the-other-way" in each]
    assert crossed
    assert {(each.stitch, each.instead) for each in crossed} == {("c6f", "c6b")}
    assert all(each.right == each.wrong for each in crossed)


def test_a_hole_and_its_decrease_swapped_move_the_hole(starters: Starters, vocabulary: Vocabulary) -> None:
    """By hand: of yo, k2tog the hole comes first from the right, of k2tog, yo second; the back shows it mirrored."""
    fault = found(starters, vocabulary, "eyelet-dots", 3)["hole-and-decrease-swapped"]
    assert fault.wrong.index("o") == fault.right.index("o") - 1


@pytest.mark.parametrize("body", ["waffle", "basket-weave", "seed-stitch", "eyelet-dots", "rope-cable"])
def test_a_fault_shows_in_the_row_or_soon_after(starters: Starters, vocabulary: Vocabulary, body: str) -> None:
    """For each row of a repeat: never before the row, never later than two rows on."""
    plan = planned(starters, vocabulary, body, 40, 40)
    tried = 0
    for number in range(1, sum(section.rows for section in plan.sections) + 1, 3):
        for each in faults(plan, number, vocabulary):
            assert number <= each.shows_after <= number + 2
            tried += 1
    assert tried > 20


def test_a_cable_crossed_the_other_way_looks_alike_but_for_its_strands(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """Both ways the same stitches cross; which of them lie on top is all that tells."""
    plan = planned(starters, vocabulary, "rope-cable", 40, 40)
    rows = range(body_row(plan, 1), body_row(plan, 9))
    told = [looks(each, row) for row in rows for each in faults(plan, row, vocabulary) if each.stitch == "c6f"]
    assert told == ["It shows at once: the strands on top lean the other way."]


def test_rows_of_a_tent_are_not_looked_through(starters: Starters, vocabulary: Vocabulary) -> None:
    """By hand: ten metres at 22 to 10 cm are 2200 stitches, and no fault is tried in more than 2000."""
    plan = planned(starters, vocabulary, "waffle", 1000, 40)
    assert plan.counts.cast_on >= 2000
    assert faults(plan, body_row(plan, 4), vocabulary) == ()


def test_the_last_row_of_a_part_has_none_after_it_to_be_out_of_step(starters: Starters, vocabulary: Vocabulary) -> None:
    """Worked twice or left out it would shift the rows after it; purled it shows at once."""
    plan = planned(starters, vocabulary, "waffle", 40, 40)
    last = plan.sections[-1].first_row + plan.sections[-1].rows - 1
    assert [each.kind for each in faults(plan, last, vocabulary)] == ["faces-swapped"]


def test_a_row_that_changes_the_count_is_not_worked_twice_unseen(starters: Starters, vocabulary: Vocabulary) -> None:
    """Twice the yarn-overs, or none, are found by counting; such faults are no part of this."""
    grows = {"text": "Row 1 (RS): *k1, yo; rep from * to end.\nRow 2: *p2tog; rep from * to end."}
    plan = planned(starters, vocabulary, grows, 40, 20, sides=None, bottom=None, top=None)
    assert [each.kind for row in (1, 2) for each in faults(plan, row, vocabulary)] == []


def test_of_a_row_of_very_many_workings_only_the_whole_is_tried(starters: Starters, vocabulary: Vocabulary) -> None:
    """1540 stitches with the yarn moved between them: the row as a whole is worked twice or left out, no more."""
    slips = {"text": "Row 1 (RS): *yf, sl 1, yb, k2tog, yo; rep from * to end.\nRow 2: purl."}
    kinds = [
        {each.kind for each in faults(plan, 1, vocabulary)}
        for width in (40, 700)
        for plan in [planned(starters, vocabulary, slips, width, 20, sides=None, bottom=None, top=None)]
    ]
    assert "hole-and-decrease-swapped" in kinds[0]
    assert kinds[1] == {"worked-twice", "left-out-whole"}

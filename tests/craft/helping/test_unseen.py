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

"""Parts whose rows go with no other: why they do not, in half a sentence."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from counterpane.craft.component import Component
from counterpane.craft.counts import Progression
from counterpane.craft.pairing import facts_of, meet
from counterpane.craft.pairing.counting import Join
from counterpane.craft.stitches import Vocabulary

Starters = Mapping[str, Component]


def worded(component: Component, rows: str) -> Component:
    """Return a component with other rows."""
    return replace(component, versions=(replace(component.versions[0], rows=rows),), examples=())


@pytest.mark.parametrize(
    ("rows", "why"),
    [
        ("Row 1: K1, yo, k to end.", "its rows do not come back to their count (+1 stitches)"),
        ("Row 1: K3.\nRow 2: K5.", "its rows work at no count, or cast on"),
        ("Rnd 1: Knit.", "it is worked in rounds"),
    ],
)
def test_a_body_that_cannot_be_joined_meets_nothing(
    rows: str, why: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """The reason is said of the body, whatever is put beside it."""
    body = facts_of(worded(starters["garter"], rows), vocabulary)
    border = facts_of(starters["garter-border"], vocabulary)
    assert meet(body, border, "ends", 0) == Join("no", why=f"the body cannot be worked with other parts: {why}")


def test_a_part_of_one_count_does_not_take_another(starters: Starters, vocabulary: Vocabulary) -> None:
    """A body that is worked over 24 stitches alone cannot be met at 30, nor changed by edge stitches to be."""
    body = replace(facts_of(starters["garter"], vocabulary), counts=(Progression.only(24),))
    border = replace(facts_of(starters["garter-border"], vocabulary), counts=(Progression.only(30),))
    assert meet(body, border, "cast-on", 0, 24).why == "it does not take 24 stitches"


@pytest.mark.parametrize(
    ("rows", "why"),
    [
        (
            "Row 1: Sl 1, yo, k2, psso, k3.\nRow 2: Purl.",
            "its left side does not go with the right one: the right one has no mirror image "
            "('psso' passes over something else than a slipped stitch)",
        ),
        ("Row 1: *K5, p1; rep from * to last st, k1.", "its rows do not work over so many stitches"),
    ],
)
def test_a_border_that_cannot_run_up_a_side_says_why(
    rows: str, why: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Across an end it works all the same: only the left side, or the usual six stitches, stand against it."""
    border = facts_of(worded(starters["garter-border"], rows), vocabulary)
    assert (border.width, border.no_edge, border.stuck) == (None, why, "")

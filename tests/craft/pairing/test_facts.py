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

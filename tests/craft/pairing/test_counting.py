"""Whether counts meet, against every count tried one by one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from counterpane.craft.component import Component
from counterpane.craft.counts import Progression
from counterpane.craft.pairing import Facts, facts_of, meet
from counterpane.craft.stitches import Vocabulary

TRIED = range(1, 700)


@pytest.fixture(scope="module")
def known(starters: Mapping[str, Component], vocabulary: Vocabulary) -> dict[str, Facts]:
    """Return the facts of each starter."""
    return {slug: facts_of(component, vocabulary) for slug, component in starters.items()}


def takes(facts: Facts, count: int) -> bool:
    """Say whether a part takes a count."""
    return any(each.admits(count) for each in facts.counts)


def kind(known: dict[str, Facts], wanted: str) -> list[Facts]:
    """Return the parts of a kind."""
    return [facts for facts in known.values() if facts.component.kind == wanted]


@pytest.mark.parametrize("beside", [0, 6])
def test_a_body_and_a_border_meet_just_where_both_take_the_count(known: dict[str, Facts], beside: int) -> None:
    """All, some or none of the body's counts, as trying each of them tells; and the change makes some."""
    for body in kind(known, "body"):
        for border in kind(known, "border"):
            own = [count for count in TRIED if takes(body, count)]
            both = [count for count in own if takes(border, count + 2 * beside)]
            join = meet(body, border, "ends", beside)
            if not both and border.counts[0].of:
                assert join.fit == "change", (body.component.slug, border.component.slug)
                assert join.add
                assert any(takes(border, count + 2 * beside - join.add) for count in own)
            elif border.counts[0].of:
                assert join.fit == ("fits" if own == both else "some"), (body.component.slug, border.component.slug)
                assert both == [count for count in TRIED if any(each.admits(count) for each in join.common)]
            else:
                assert join.fit == "no"


@pytest.mark.parametrize("count", [138, 139, 140, 153])
def test_at_a_count_the_corrections_work(known: dict[str, Facts], count: int) -> None:
    """Another count of the body suits both, or with the edge stitches the border takes this one."""
    for body in kind(known, "body"):
        for border in kind(known, "border"):
            join = meet(body, border, "ends", 6, count)
            fits = takes(body, count) and takes(border, count + 12)
            assert (join.fit == "fits") == fits
            assert all(takes(body, near) for near in join.counts)
            if join.common:
                assert all(takes(border, near + 12) for near in join.counts)
            if join.add is not None:
                assert takes(border, count + 12 - join.add)


def test_side_borders_stand_beside_any_count_of_the_body(known: dict[str, Facts]) -> None:
    """They have stitches of their own; what binds off beside the body cannot stand there."""
    assert meet(known["waffle"], known["garter-border"], "sides", 6).fit == "fits"
    assert meet(known["waffle"], known["garter-border"], "sides", 6, 139).fit == "fits"
    assert meet(known["waffle"], known["garter-border"], "sides", 6, 140).counts == (139, 142)
    assert "binds off" in meet(known["waffle"], known["vandyke-edging"], "sides", 6).why


def test_a_part_that_no_piece_can_be_made_of_fits_nothing(known: dict[str, Facts]) -> None:
    """The reason comes from the part that is at fault."""
    stuck = replace(known["waffle"], stuck="its rows do not come back to their count")
    assert meet(stuck, known["garter-border"], "ends", 6).why.startswith("the body cannot be worked")
    border = replace(known["garter-border"], stuck="it is worked in rounds")
    assert meet(known["waffle"], border, "ends", 6).why == "it is worked in rounds"
    fixed = replace(known["waffle"], counts=(Progression(0, 11, 11),))
    assert meet(fixed, known["rib-three-by-three-border"], "ends", 0).fit == "no"
    assert meet(fixed, known["rib-three-by-three-border"], "ends", 0, 12).counts == (11,)

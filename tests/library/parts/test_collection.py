"""The textures and edgings out of old books at work: they plan, are found, and their openings are spoken of.

Gauge and size are invented: 22 stitches and 30 rows to 10 cm, 70 by 90 cm.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import pytest

from counterpane.craft.component import Component, Measure
from counterpane.craft.constructions import CannotBePlanned, Plan
from counterpane.craft.stitches import Vocabulary
from counterpane.library.parts import companions
from counterpane.library.plans.plans import make_plan, plan_request_of
from counterpane.library.ports import Wanted
from counterpane.library.safety.safety import safety_of_plan
from counterpane.library.services import Services
from counterpane.seeding import load_components
from counterpane.wiring import open_library

BOOKS = ("lambert-1843", "mee-1846", "dillmont-1886")
OLD = [component for component in load_components() if component.provenance.source in BOOKS]
TEXTURES = [component.slug for component in OLD if component.kind == "body"]
LACES = [each.slug for each in OLD if each.kind == "body" and isinstance(each.safety.openings, Measure)]
POINTED = ("vandyke-edging", "narrow-vandyke-edging", "lace-edging-of-twelve", "knitted-lace-396")
STRIPS = {"knitted-insertion": 9, "coral-trimming": 2, "knitted-fringe": 8, "twisted-knitting": 12}


@pytest.fixture(scope="module")
def library() -> Iterator[Services]:
    """Yield a library with the starters."""
    services = open_library()
    yield services
    services.store.close()


def planned(starters: Mapping[str, Component], vocabulary: Vocabulary, **parts: Any) -> Plan:
    """Return the plan of parts in the invented gauge and size."""
    gauge, size = {"stitches": 22, "rows": 30, "over_cm": 10}, {"width_cm": 70, "length_cm": 90}
    content = {"parts": parts, "gauge": gauge, "size": size}
    return make_plan(plan_request_of(content, starters.__getitem__, vocabulary), vocabulary)


@pytest.mark.parametrize("slug", TEXTURES)
def test_an_old_texture_plans_within_garter_borders(
    slug: str, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Six garter stitches a side, garter above and below, whole repeats between, and the size near the one wanted."""
    plan = planned(starters, vocabulary, body=slug)

    assert plan.counts.cast_on == plan.counts.body[0] + 12
    assert plan.counts.repeats[0] >= 1
    assert abs(plan.width_cm - 70) <= 5
    assert abs(plan.length_cm - 90) <= 5


@pytest.mark.parametrize("slug", LACES)
def test_the_openings_of_an_old_lace_are_spoken_of(
    slug: str, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Nobody has measured them: the record says so, and it is no pass."""
    safety = safety_of_plan(planned(starters, vocabulary, body=slug), {"age_months": [0, 12], "use": "pram"})

    assert any(finding["rule"].startswith("opening") for finding in safety["findings"])


@pytest.mark.parametrize("slug", POINTED)
def test_a_pointed_edging_is_refused_beside_a_body(
    slug: str, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """It binds off where the body stands, which would leave slits; by itself it is a sound piece of knitting."""
    with pytest.raises(CannotBePlanned) as refusal:
        planned(starters, vocabulary, body="stocking-stitch", sides=slug)

    assert [finding.rule for finding in refusal.value.findings] == ["part-does-not-join"]
    assert "binds off stitches beside the body" in str(refusal.value)


@pytest.mark.parametrize(("slug", "stitches"), STRIPS.items())
def test_a_strip_of_one_width_makes_side_borders(
    slug: str, stitches: int, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Its own count stands at each side, mirrored at the left."""
    plan = planned(starters, vocabulary, body="stocking-stitch", sides=slug)

    assert plan.counts.sides == stitches


def test_every_old_texture_is_found_by_its_count(library: Services, starters: Mapping[str, Component]) -> None:
    """Searching for what admits the stitches of its own example lists it."""
    for slug in TEXTURES:
        wanted = Wanted("component", "body", starters[slug].examples[1].stitches, limit=200)
        assert f'"{slug}"'.encode() in b"".join(card for card in library.store.page(wanted).cards)


def test_companions_name_only_edges_that_can_stand_there(library: Services) -> None:
    """A strip of one width goes beside the coral pattern; a pointed edging does not."""
    found = companions.page(library, "coral-lace", {"kind": "border"}, None, 200).cards
    beside = {card["slug"] for card in found if any(place["place"] == "sides" for place in card["places"])}

    assert {"knitted-insertion", "garter-border"} <= beside
    assert not beside & set(POINTED)

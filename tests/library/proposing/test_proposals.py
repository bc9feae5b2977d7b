"""Proposals: each plans and proves, no two of one body, reasons in words, and what is not known is never taken."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.craft.component import content_of
from counterpane.craft.pattern.level import SKILLS
from counterpane.craft.texture import CLOSE, likeness
from counterpane.library.parts import components
from counterpane.library.parts.textures import LOOKS, cell_of, keys_of
from counterpane.library.parts.traits import DIFFICULTIES
from counterpane.library.plans import planning
from counterpane.library.proposing.proposal_parts import AVOIDING, why_not
from counterpane.library.proposing.proposals import propose
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.wiring import open_library
from counterpane_schema import choices
from counterpane_schema.plan import PlanRequest

WANTED: dict[str, Any] = {
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
    "size": {"width_cm": 70, "length_cm": 90},
}
YARN = {"yarn": {"ball_g": 50, "ball_m": 115}, "have": {"balls": 12}}


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


def bodies(answer: dict[str, Any]) -> list[str]:
    """Return the bodies of the proposals, in order."""
    return [each["request"]["parts"]["body"] for each in answer["proposals"]]


@pytest.mark.parametrize(
    "more",
    [
        {},
        YARN,
        {"size": {"named": "pram"}, "level": "easy", "avoid": ["openings", "fringe", "one-sided"]},
        {"gauge": {"stitches": 15, "rows": 21, "over_cm": 10}, "skills": ["knit-and-purl", "lace"], "limit": 12},
        {"size": {"width_cm": 30, "length_cm": 30}, "for": {"age_months": [0, 12], "use": "pram", "markets": ["UK"]}},
    ],
)
def test_every_proposal_plans_as_it_stands(library: Services, more: dict[str, Any]) -> None:
    """Its request passes the wire and makes the plan that was told; nothing of it is refused."""
    found = propose(library, {**WANTED, **more})["proposals"]
    assert len(found) == more.get("limit", 6)
    for each in found:
        assert PlanRequest().validate(each["request"]) == {}
        plan = planning.plan(library, each["request"])
        assert (plan["counts"], plan["finished"]) == (each["counts"], each["finished"])
        assert [finding["severity"] for finding in plan["findings"]].count("error") == 0


def test_proposals_are_diverse(library: Services) -> None:
    """No two have one body, none nearly the texture of another, and no border frames more than a third of them."""
    found = propose(library, {**WANTED, "limit": 12})["proposals"]
    slugs = bodies({"proposals": found})
    assert len(set(slugs)) == len(slugs) == 12
    keys = [keys_of(components.find(library, slug), library.vocabulary) for slug in slugs]
    cells = [[cell_of(key.looks) for key in each] for each in keys]
    pairs = [(one, other) for at, one in enumerate(cells) for other in cells[:at]]
    shares = [likeness(mine, theirs, LOOKS) for one, other in pairs for mine in one for theirs in other]
    assert all(each is None or each.share < CLOSE for each in shares)
    ends = [each["request"]["parts"]["bottom"]["component"] for each in found]
    assert max(map(ends.count, ends)) <= 4


def test_near_copies_stand_last_and_say_of_what(library: Services) -> None:
    """Where little else is left they are proposed, after all others."""
    known = ["knit-and-purl", "twisted-stitches", "slipped-stitches"]
    found = propose(open_with_copies(), {**WANTED, "skills": known, "limit": 12})["proposals"]
    copies = [each["near_copy_of"] is not None for each in found]
    assert copies == sorted(copies) and bodies({"proposals": found})
    assert {each["near_copy_of"] for each in found} <= {None, *bodies({"proposals": found})}
    assert any(copies)


def open_with_copies() -> Services:
    """Return a small library in which seed stitch is kept thrice."""
    services = open_library(starters=False)
    kept = open_library()
    for slug in ("long-tail", "plain-bind-off", "garter-border", "garter", "seed-stitch"):
        components.add(services, _content(kept, slug), "anna", "accepted")
    for number in (1, 2):
        copy = {**_content(kept, "seed-stitch"), "slug": f"seed-again-{number}", "name": f"Seed again {number}"}
        components.add(services, copy, "anna", "accepted")
    return services


def _content(services: Services, slug: str) -> dict[str, Any]:
    return content_of(components.find(services, slug))


@pytest.mark.parametrize("word", ["openings", "floats", "loose-yarn", "ties", "fringe", "curl", "one-sided"])
def test_what_is_to_be_avoided_is_in_no_proposal(library: Services, word: str) -> None:
    """Nor is a part of which it is not known; each part passed over says why."""
    answer = propose(library, {**WANTED, "avoid": [word]})
    for each in answer["proposals"]:
        parts = each["request"]["parts"]
        for slug in (parts["body"], parts["bottom"]["component"], parts["sides"]["component"]):
            assert why_not(components.find(library, slug), {"avoid": [word]}, library.vocabulary) == ""
    assert answer["proposals"] and all(each["why"].endswith(".") for each in answer["passed_over"])


def test_what_is_not_known_is_passed_over(library: Services) -> None:
    """The openings of twisted knitting are not known; the fringe's ground is told by its words."""

    def passed(word: str) -> dict[str, str]:
        answer = propose(library, {**WANTED, "avoid": [word], "limit": 1})
        return {each["component"]: each["why"] for each in answer["passed_over"]}

    assert passed("openings")["twisted-knitting"] == "Whether it has openings is not known."
    assert "fringe" in passed("fringe")["knitted-fringe"]


@pytest.mark.parametrize(
    ("have", "enough"),
    [({"balls": 20}, "yes"), ({"metres": 800}, "not surely"), ({"grams": 20}, "no"), (None, "not known")],
)
def test_the_yarn_is_held_against_what_is_at_hand(library: Services, have: Any, enough: str) -> None:
    """Its margin and the high end of the estimate included; without an amount it is not known."""
    found = propose(library, {**WANTED, **YARN, "have": have, "skills": [], "limit": 2})["proposals"]
    assert {each["yarn_enough"] for each in found} == {enough}
    said = next(each["said"] for each in found[0]["reasons"] if each["about"] == "yarn")
    assert {"yes": "does:", "not surely": "may not", "no": "does not", "not known": "not known"}[enough] in said


def test_none_is_called_safe(library: Services) -> None:
    """What was not assessed is told of each, without a child too."""
    answer = propose(library, WANTED)
    assert "not assessed is never a pass" in answer["said"]
    for each in answer["proposals"]:
        said = next(reason["said"] for reason in each["reasons"] if reason["about"] == "safety")
        assert each["safety"]["not_assessed"] and "Not assessed:" in said


def test_wool_to_be_avoided_is_refused_and_an_unknown_fibre_is_told(library: Services) -> None:
    """Merino is wool; where no fibre is told nobody knows."""
    with pytest.raises(BadInput) as caught:
        propose(library, {**WANTED, "avoid": ["wool"], "yarn": {"fibre": [{"fibre": "merino", "percent": 100}]}})
    assert caught.value.pointer == "/yarn"
    found = propose(library, {**WANTED, "avoid": ["wool"], "limit": 1})["proposals"][0]
    assert any("animal hair is not known" in each["said"] for each in found["reasons"])
    cotton = {"fibre": [{"fibre": "cotton", "percent": 100}]}
    found = propose(library, {**WANTED, "avoid": ["wool"], "yarn": cotton, "limit": 1})["proposals"][0]
    assert not any("animal hair is not known" in each["said"] for each in found["reasons"])


def test_where_nothing_can_be_proposed_it_is_said_why() -> None:
    """An empty library passes nothing over; a size out of reach is told of each body."""
    assert propose(open_library(starters=False), WANTED)["proposals"] == []
    tiny = propose(open_library(), {**WANTED, "size": {"width_cm": 1, "length_cm": 1}})
    assert (tiny["proposals"], "Nothing can be proposed" in tiny["said"]) == ([], True)
    assert tiny["passed_over"]


def test_the_words_of_the_wire_are_those_of_the_craft() -> None:
    """Levels, skills and what may be avoided are written once in each."""
    assert choices.SKILLS == SKILLS
    assert choices.DIFFICULTIES == DIFFICULTIES
    assert set(choices.AVOIDED) == {*AVOIDING, "wool"}

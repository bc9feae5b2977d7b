"""Submissions and reports: what is found at once, whose turn it is, who decides, and that no reason is left out."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from api.contents import RIB
from counterpane import wiring
from counterpane.library.errors import Moved, NotTheirs, Taken
from counterpane.library.keeping import audit
from counterpane.library.keeping.recipes import RECIPES
from counterpane.library.parts import components
from counterpane.library.ports import Holder, Role
from counterpane.library.review import standing, submissions
from counterpane.library.review.tokens import create, holder_of
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane_schema.submission import SubmissionAnswer

SLUG = RIB["slug"]
SIZED: dict[str, Any] = {
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": SLUG},
    "size": {"width_cm": 70, "length_cm": 90},
}


@pytest.fixture
def services() -> Iterator[Services]:
    """Yield a library with the starters and a rib that Odile added."""
    made = wiring.open_library()
    components.add(made, RIB, "Odile")
    yield made
    made.store.close()


def holder(services: Services, name: str, role: Role = "contributor") -> Holder:
    """Return somebody with a token."""
    return holder_of(services.store, create(services.store, role, name, services.now()))


def submitted(services: Services) -> dict[str, Any]:
    """Hand in the rib."""
    return submissions.submit(services, {"component": SLUG, "say": "In three yarns."}, holder(services, "Odile"))


def decided(services: Services, number: int, decision: str, because: str, **more: Any) -> dict[str, Any]:
    """Decide as Suri."""
    content = {"decision": decision, "because": because, "say": "Row 2 can be read in two ways.", **more}
    return submissions.decide(services, number, content, holder(services, "Suri", "reviewer"))


def test_what_is_handed_in_is_looked_at_at_once(services: Services) -> None:
    """The checks are kept with it, and none of them refuses."""
    told = submitted(services)
    assert not SubmissionAnswer().validate(told)
    assert (told["turn"], told["lane"], told["waiting_days"]) == ("us", "review", 0)
    checks = told["checks"]
    assert (checks["mathematics"], checks["licence"]["known"]) == ({"holds": True, "problems": []}, True)
    assert components.latest(services, SLUG).status == "in-review"


def test_a_recipe_that_is_handed_in_is_told_under_which_licence_it_may_be_shared(services: Services) -> None:
    """That of its parts together, as its plan tells it."""
    content = {"slug": "dusk", "name": "Dusk", "parts": {"body": SLUG}} | SIZED
    RECIPES.add(services, content, "Odile")
    told = submissions.submit(services, {"recipe": "dusk"}, holder(services, "Odile"))
    assert not SubmissionAnswer().validate(told)
    assert told["checks"]["licence"] == {"name": "CC0-1.0", "known": True}


def test_a_mirrored_copy_is_named_with_the_move(services: Services) -> None:
    """A texture that is there already, begun elsewhere, is shown with what makes it the same."""
    rows = "Row 1 (RS): P1, *k2, p1; rep from * to end.\nRow 2: K1, *p2, k1; rep from * to end."
    rows += "\nRow 3: P1, *k2, p1; rep from * to end.\nRow 4: Knit."
    content = RIB | {"slug": "little-boxes", "name": "Little boxes", "versions": [{"name": "", "rows": rows}]}
    components.add(services, content | {"examples": []}, "Odile")
    told = submissions.submit(services, {"component": "little-boxes"}, holder(services, "Odile"))
    assert {"slug": "waffle", "same": True}.items() <= told["checks"]["alike"][0].items()


def test_only_who_added_it_hands_it_in_and_only_once(services: Services) -> None:
    """Another contributor may not, and a second time is refused while it waits for us."""
    with pytest.raises(NotTheirs):
        submissions.submit(services, {"component": SLUG}, holder(services, "Bram", "keeper"))
    submitted(services)
    with pytest.raises(Moved):
        submitted(services)
    components.COMPONENTS.revise(services, SLUG, RIB | {"summary": "Another."}, None, "Odile")
    with pytest.raises(Taken):
        submitted(services)


@pytest.mark.parametrize(
    ("decision", "because", "turn", "status"),
    [
        ("accept", "sound", "nobody", "accepted"),
        ("ask", "wording-unclear", "contributor", "draft"),
        ("refuse", "like-another", "nobody", "draft"),
    ],
)
def test_a_decision_gives_the_turn_and_the_state(
    services: Services, decision: str, because: str, turn: str, status: str
) -> None:
    """It keeps who, why and the sentence."""
    told = decided(services, submitted(services)["number"], decision, because)
    assert (told["turn"], components.latest(services, SLUG).status) == (turn, status)
    assert told["decisions"][0]["said"] == "Row 2 can be read in two ways."
    assert told["decisions"][0]["by"]["name"] == "Suri"


def test_what_was_asked_for_goes_on_as_the_same_submission(services: Services) -> None:
    """The contributor revises, hands in again, and it waits for us with all its decisions."""
    number = submitted(services)["number"]
    decided(services, number, "ask", "wording-unclear")
    components.COMPONENTS.revise(services, SLUG, RIB | {"summary": "Another."}, None, "Odile")
    again = submitted(services)
    assert (again["number"], again["turn"], len(again["decisions"])) == (number, "us", 1)
    assert again["sha256"] == components.latest(services, SLUG).sha256
    assert decided(services, number, "accept", "sound")["turn"] == "nobody"
    assert audit.verify(services.store).wrong == ""


@pytest.mark.parametrize(
    ("more", "pointer"),
    [
        ({"say": " "}, "/say"),
        ({"say": "x" * 1001}, "/say"),
        ({"because": "misprint"}, "/because"),
        ({"decision": "uphold"}, "/decision"),
    ],
)
def test_nothing_closes_without_a_reason(services: Services, more: dict[str, Any], pointer: str) -> None:
    """A code that fits this decision and a sentence are wanted, and nothing changes without them."""
    number = submitted(services)["number"]
    with pytest.raises(BadInput) as caught:
        decided(services, number, **{"decision": "refuse", "because": "like-another", **more})
    assert (caught.value.pointer, submissions.told_of(services, number)["turn"]) == (pointer, "us")


@pytest.mark.parametrize(("name", "role"), [("Odile", "keeper"), ("Bram", "contributor")])
def test_nobody_decides_about_their_own(services: Services, name: str, role: Role) -> None:
    """Whatever the role, and a contributor about nothing."""
    number = submitted(services)["number"]
    content = {"decision": "accept", "because": "sound", "say": "Fine."}
    with pytest.raises(NotTheirs):
        submissions.decide(services, number, content, holder(services, name, role))
    with pytest.raises(Moved, match="by review"):
        move = {"to": "accepted", "because": "sound", "say": "Fine."}
        standing.move(services, "component", SLUG, move, holder(services, name, role))


def test_reports_stand_before_submissions_and_the_oldest_first(services: Services) -> None:
    """A closed one is in the queue no more, unless it is asked for."""
    first = submitted(services)["number"]
    said = {"component": "waffle", "say": "A finger was caught."}
    reports = [submissions.report(services, said, holder(services, "Ines", "reader"))["number"] for _ in range(2)]
    assert [each["number"] for each in submissions.everything(services)] == [*reports, first]
    decided(services, reports[0], "dismiss", "cleared")
    pages = list(submissions.everything(services, turn="us"))
    assert [each["number"] for each in pages] == [reports[1], first]
    assert [each["number"] for each in submissions.everything(services, turn="nobody")] == [reports[0]]
    with pytest.raises(Moved):
        decided(services, reports[0], "uphold", "hazard")


def test_a_recipe_is_handed_in_too(services: Services) -> None:
    """Its plan is the mathematics, and what is not assessed of safety is not told."""
    content = {
        "slug": "small-frost",
        "name": "Small frost",
        "parts": {"body": "waffle"},
        "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
        "size": {"width_cm": 60, "length_cm": 70},
    }
    RECIPES.add(services, content, "Odile")
    told = submissions.submit(services, {"recipe": "small-frost"}, holder(services, "Odile"))
    assert not SubmissionAnswer().validate(told)
    assert told["checks"]["safety"]["not_told"]

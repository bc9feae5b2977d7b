"""Where revisions stand: the ladder, its reasons, and what plans say of the parts that they take."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import orjson
import pytest

from counterpane import wiring
from counterpane.craft.constructions import CannotBePlanned
from counterpane.library.errors import Gone, Moved, NotTheirs
from counterpane.library.keeping import audit
from counterpane.library.keeping.record import Act
from counterpane.library.parts import components
from counterpane.library.plans import planning
from counterpane.library.plans.bench import bench_of
from counterpane.library.plans.grading import plan_grade
from counterpane.library.plans.regauging import plan_regauge
from counterpane.library.ports import Holder
from counterpane.library.review import standing
from counterpane.library.review.ladder import LADDER
from counterpane.library.services import Services
from counterpane.library.values import BadInput

KEEPER = Holder("0" * 64, "keeper", "Bram", "2026-01-02T03:04:05Z")
REVIEWER = Holder("1" * 64, "reviewer", "Suri", "2026-01-02T03:04:05Z")
STRANGER = Holder("2" * 64, "contributor", "Odile", "2026-01-02T03:04:05Z")
BLANKET: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
    "size": {"width_cm": 70, "length_cm": 90},
}


@pytest.fixture
def services() -> Iterator[Services]:
    """Yield a library with the starters."""
    made = wiring.open_library()
    yield made
    made.store.close()


def moved(services: Services, to: str, because: str, by: Holder = KEEPER, **more: Any) -> dict[str, Any]:
    """Move the texture waffle."""
    content = {"to": to, "because": because, "say": "Row 3 is misprinted.", **more}
    return standing.move(services, "component", "waffle", content, by)


def rules_of(services: Services, request: dict[str, Any]) -> dict[str, str]:
    """Return the rules of this family that speak of a plan, each with its severity."""
    try:
        findings = planning.made(services, request).findings
    except CannotBePlanned as refusal:
        findings = refusal.findings
    return {each.rule: each.severity for each in findings if each.rule.startswith("pinned-part-")}


def test_a_move_changes_the_state_and_never_the_hash(services: Services) -> None:
    """The body and the card say the state, and the content and its name stay as they were."""
    before = components.latest(services, "waffle")
    content = services.store.object(before.sha256)
    moved(services, "yanked", "misprint")
    after = components.latest(services, "waffle")
    assert (after.sha256, services.store.object(after.sha256), after.status) == (before.sha256, content, "yanked")
    assert orjson.loads(after.body)["standing"]["said"] == "Row 3 is misprinted."


@pytest.mark.parametrize(
    ("move", "more", "rule", "severity"),
    [
        (("deprecated", "replaced"), {"replacement": "seed-stitch"}, "pinned-part-deprecated", "warning"),
        (("yanked", "misprint"), {}, "pinned-part-yanked", "warning"),
        (("quarantined", "hazard"), {"until": "2999-01-01", "owner": "Suri"}, "pinned-part-quarantined", "error"),
        (("withdrawn", "licence-forbids"), {}, "pinned-part-withdrawn", "error"),
    ],
)
def test_a_plan_tells_where_its_parts_stand(
    services: Services, move: tuple[str, str], more: dict[str, Any], rule: str, severity: str
) -> None:
    """It is told of a part by its slug, and of one that is pinned."""
    sha256 = components.latest(services, "waffle").sha256
    assert rules_of(services, BLANKET) == {}
    moved(services, *move, **more)
    pinned = BLANKET | {"parts": {"body": {"component": "waffle", "revision": sha256}}}
    assert rules_of(services, BLANKET) == rules_of(services, pinned) == {rule: severity}


def test_a_part_that_nobody_named_is_told_of_too(services: Services) -> None:
    """The usual border is taken where none is named; a grade and a bench hear the same as a plan."""
    content = {"to": "yanked", "because": "misprint", "say": "It is misprinted."}
    standing.move(services, "component", "garter-border", content, KEEPER)
    assert rules_of(services, BLANKET) == {"pinned-part-yanked": "warning"}
    assert "pinned-part-yanked" in {each.rule for each in bench_of(services, BLANKET).made(BLANKET).findings}
    moved(services, "quarantined", "hazard", until="2999-01-01", owner="Suri")
    with pytest.raises(CannotBePlanned):
        bench_of(services, BLANKET).made(BLANKET)


def test_a_grade_and_another_gauge_tell_it_of_every_plan(services: Services) -> None:
    """Each size, the pattern in all of them, and the same size at another gauge."""
    gauged = BLANKET | {"to": {"stitches": 24, "rows": 32, "over_cm": 10, "in": "waffle"}}
    sized = {name: value for name, value in BLANKET.items() if name != "size"} | {
        "sizes": [
            {"name": "small", "width_cm": 50, "length_cm": 60},
            {"name": "large", "width_cm": 70, "length_cm": 90},
        ]
    }

    def heard() -> list[list[str]]:
        grade = plan_grade(sized, bench_of(services, sized), services.grade_press)
        same = plan_regauge(gauged, bench_of(services, gauged))["same_size"]
        told = [*(size["findings"] for size in grade["sizes"]), same["findings"]]
        return [[each["rule"] for each in findings if each["rule"].startswith("pinned-part-")] for findings in told]

    assert heard() == [[], [], []]
    moved(services, "yanked", "misprint")
    assert heard() == [["pinned-part-yanked"]] * 3


def test_a_quarantine_ends_where_it_began(services: Services) -> None:
    """Lifted, an accepted part is accepted again and plans say nothing; it never becomes a draft."""
    moved(services, "quarantined", "hazard", until="2999-01-01", owner="Suri")
    with pytest.raises(Moved):
        moved(services, "draft", "cleared")
    moved(services, "accepted", "cleared")
    assert rules_of(services, BLANKET) == {}


def test_a_withdrawn_part_is_gone_with_its_reason(services: Services) -> None:
    """Its address and its hash say why, no list has it, and nothing leads back."""
    sha256 = components.latest(services, "waffle").sha256
    assert moved(services, "withdrawn", "licence-forbids")["revisions"][0]["status"] == "withdrawn"
    for ask in (lambda: services.store.object(sha256), lambda: components.get(services, "waffle")):
        with pytest.raises(Gone, match="Row 3 is misprinted"):
            ask()
    assert "waffle" not in {each.slug for each in services.store.textures()}


def test_who_may_move_what(services: Services) -> None:
    """A stranger moves nothing, and a reviewer nothing for which a keeper is needed."""
    with pytest.raises(NotTheirs, match="who added it or a reviewer"):
        moved(services, "yanked", "misprint", STRANGER)
    with pytest.raises(NotTheirs, match="a keeper"):
        moved(services, "withdrawn", "licence-forbids", REVIEWER)


@pytest.mark.parametrize(
    ("to", "because", "more", "pointer"),
    [
        ("yanked", "sound", {}, "/because"),
        ("yanked", "misprint", {"say": "  "}, "/say"),
        ("deprecated", "replaced", {}, "/replacement"),
        ("deprecated", "replaced", {"replacement": "waffle"}, "/replacement"),
        ("yanked", "misprint", {"until": "2999-01-01"}, "/until"),
        ("quarantined", "hazard", {"until": "2001-01-01", "owner": "Suri"}, "/until"),
    ],
)
def test_a_move_says_what_it_must(
    services: Services, to: str, because: str, more: dict[str, Any], pointer: str
) -> None:
    """A code that fits, a sentence, and what this state needs and no other."""
    with pytest.raises(BadInput) as caught:
        moved(services, to, because, **more)
    assert caught.value.pointer == pointer


def test_no_rung_leads_out_of_withdrawn_or_nowhere() -> None:
    """The table has each move once."""
    ways = [(rung.before, rung.after) for rung in LADDER]
    assert len(ways) == len(set(ways))
    assert all(before not in ("withdrawn", after) for before, after in ways)


def test_a_move_stands_in_the_changes_and_in_the_log(services: Services) -> None:
    """Each has one line of it, and the log holds."""
    moved(services, "yanked", "misprint")
    last = list(audit.lines(services.store))[-1]
    change = services.store.changes(last.seq - 1, 10)[-1]
    assert (change.event, last.act, last.detail["to"]) == ("yanked", "move", "yanked")
    assert audit.verify(services.store, last.sha256).seen


def test_an_erased_name_leaves_the_log_whole(services: Services) -> None:
    """What a person did is told by a key that names nobody."""
    moved(services, "yanked", "misprint")
    key = services.store.person("Bram")
    services.store.erase(key, Act(services.now(), "Suri", "erase", f"person/{key}"))
    assert (key in services.store.names(), audit.verify(services.store).wrong) == (False, "")
    assert standing.told(services, "component", "waffle")["moves"][0]["by"] == {"key": key, "name": None}

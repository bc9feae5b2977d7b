"""Who may do what: every role at every operation, and whoever owns a thing beside everybody else."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from api.conftest import Desk
from api.contents import BIND_OFF, BLANKET, CAST_ON, GARTER, RIB, WARD
from api.notes import ANSWER, ANSWERS, KNIT, KNITS, PIECE, PIECES, noted
from counterpane import wiring
from counterpane.api.catalogue import OPERATIONS
from counterpane.api.operations import Operation
from counterpane.library.ports import ROLES, Role

OPEN, CLOSED = True, False
WORKS: tuple[Role | None, ...] = (None, *ROLES)


@pytest.fixture(scope="module", params=[OPEN, CLOSED], ids=["loopback", "network"])
def empty(request: pytest.FixtureRequest) -> Iterator[Desk]:
    """Yield a desk where reading is open, and one where it is not."""
    services = wiring.open_library(starters=False, open_reading=request.param)
    yield Desk(services, wiring.app_of(services).test_client())
    services.store.close()


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda operation: operation.name)
def test_a_role_opens_what_it_should_and_nothing_else(empty: Desk, operation: Operation) -> None:
    """Without a token that is needed it is 401, with too small a role 403, and else neither, whatever follows."""
    open_to_all = operation.role is None or (
        operation.role == "reader" and empty.services.open_reading and not operation.signed
    )
    found = {role: asked(empty, operation, role) for role in WORKS}
    for role, status in found.items():
        if open_to_all or (role is not None and ROLES.index(role) >= ROLES.index(operation.role or "reader")):
            assert status not in (401, 403), (role, status)
        else:
            assert status == (401 if role is None else 403), (role, status)


def asked(desk: Desk, operation: Operation, role: Role | None) -> int:
    """Send a request that nothing answers, and return its status."""
    path = operation.path.replace("<number>", "1")
    for name in ("slug", "name", "sha256", "suffix"):
        path = path.replace(f"<{name}>", "nope")
    assert "<" not in path
    body: dict[str, Any] = {"json": {}} if operation.body else {}
    headers = desk.token(role) if role else {}
    return desk.client.open(path, method=operation.method, headers=headers, **body).status_code


WITHDRAWN = {"to": "withdrawn", "because": "by-its-author", "say": "It was mine."}
ACCEPT = {"decision": "accept", "because": "sound", "say": "Worked twice."}
BACK = {"say": "A slip."}
OWNER, STRANGER, REVIEWER, KEEPER = "owner", "stranger", "reviewer", "keeper"
PEOPLE: dict[str, tuple[str, Role]] = {
    OWNER: ("anna", "contributor"),
    STRANGER: ("berta", "contributor"),
    REVIEWER: ("suri", "reviewer"),
    KEEPER: ("karel", "keeper"),
}
OWNED: dict[str, tuple[str, dict[str, Any], set[str]]] = {
    "revise_component": ("/v1/components/four-rib", RIB | {"summary": "Other."}, {OWNER, REVIEWER, KEEPER}),
    "revise_recipe": ("/v1/recipes/ribbed-blanket", BLANKET | {"summary": "Other."}, {OWNER, REVIEWER, KEEPER}),
    "revise_profile": ("/v1/profiles/ward-3", WARD | {"name": "Ward 4"}, {OWNER, REVIEWER, KEEPER}),
    "move_component": ("/v1/components/four-rib/standing", WITHDRAWN, {OWNER, KEEPER}),
    "move_recipe": ("/v1/recipes/ribbed-blanket/standing", WITHDRAWN, {OWNER, KEEPER}),
    "move_profile": ("/v1/profiles/ward-3/standing", WITHDRAWN, {OWNER, KEEPER}),
    "submit": ("/v1/submissions", {"component": "garter-border"}, {OWNER}),
    "decide": ("/v1/submissions/1/decisions", ACCEPT, {REVIEWER, KEEPER}),
    "publish_edition": ("/v1/recipes/ribbed-blanket/editions", {"date": "2026-11-26"}, {OWNER, REVIEWER, KEEPER}),
    "change_test_knit": (f"{KNITS}/1", KNIT | {"grams": 310}, {OWNER, REVIEWER, KEEPER}),
    "change_answer": (f"{ANSWERS}/2", ANSWER | {"answer": "Both."}, {OWNER, REVIEWER, KEEPER}),
    "change_piece": (f"{PIECES}/3", PIECE | {"weighed_g": 440}, {OWNER, REVIEWER, KEEPER}),
    "take_back_test_knit": (f"{KNITS}/1/taking-back", BACK, {OWNER, REVIEWER, KEEPER}),
    "take_back_answer": (f"{ANSWERS}/2/taking-back", BACK, {OWNER, REVIEWER, KEEPER}),
    "take_back_piece": (f"{PIECES}/3/taking-back", BACK, {OWNER, REVIEWER, KEEPER}),
}
"""Where it matters whose a thing is, and who of those may."""
ADDING = {f"add_{noun}" for noun in ("component", "recipe", "profile", "test_knit", "answer", "piece")}
"""Whoever adds something is the one whose it is; anybody with a role may note what became of a recipe."""


@pytest.fixture
def furnished(desk: Desk) -> Desk:
    """Return a desk at which Anna added everything, and handed one part in."""
    for content in (CAST_ON, BIND_OFF, GARTER, RIB):
        desk.add(content)
    desk.add(BLANKET, "/v1/recipes")
    desk.add(WARD, "/v1/profiles")
    for path, content in ((KNITS, KNIT), (ANSWERS, ANSWER), (PIECES, PIECE)):
        noted(desk, path, content)
    assert desk.add({"component": "long-tail"}, "/v1/submissions").status_code == 201
    return desk


def test_every_operation_that_writes_says_whether_it_matters_whose_a_thing_is() -> None:
    """One that is added needs its entry here; a report may come from anybody."""
    writing = {each.name for each in OPERATIONS if each.role in ("contributor", "reviewer")}
    assert writing == set(OWNED) | ADDING


@pytest.mark.parametrize("who", PEOPLE)
@pytest.mark.parametrize("name", sorted(OWNED))
def test_who_may_write_to_what_somebody_added(furnished: Desk, name: str, who: str) -> None:
    """Who may is let in; anybody else is told that it is somebody else's, or that the role does not reach."""
    operation = next(each for each in OPERATIONS if each.name == name)
    path, body, allowed = OWNED[name]
    person, role = PEOPLE[who]
    headers = furnished.token(role, person)
    if operation.current:
        headers |= {"If-Match": furnished.client.get(path).json["etag"]}
    answer = furnished.client.open(path, method=operation.method, json=body, headers=headers)
    if who in allowed:
        assert answer.status_code < 300, answer.text
    else:
        assert answer.status_code == 403
        assert answer.json["type"] in ("/problems/not-theirs", "/problems/not-allowed")

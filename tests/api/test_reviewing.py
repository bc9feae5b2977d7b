"""States, owners, submissions and the log over HTTP."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest

from api.conftest import Desk
from api.contents import RIB
from counterpane.library.keeping.audit import line_json, verify
from counterpane.library.ports import Role

ONE = f"/v1/components/{RIB['slug']}"
MISPRINT = {"to": "yanked", "because": "misprint", "say": "Row 2 is misprinted."}
GONE = {"to": "withdrawn", "because": "licence-forbids", "say": "Its licence does not let it be kept."}


def accepted(desk: Desk) -> dict[str, Any]:
    """Return the rib, accepted."""
    desk.add(RIB)
    move = {"to": "accepted", "because": "sound", "say": "Tried."}
    assert desk.client.post(f"{ONE}/standing", json=move, headers=desk.token("keeper")).status_code == 200
    told: dict[str, Any] = desk.client.get(ONE).json
    return told


@pytest.mark.parametrize(
    ("name", "role", "status"),
    [("anna", "contributor", 200), ("berta", "contributor", 403), ("berta", "reviewer", 200), ("berta", "keeper", 200)],
)
def test_a_contributor_revises_only_what_they_added(desk: Desk, name: str, role: Role, status: int) -> None:
    """Another one is told so before the tag and the body are looked at, and nothing changes."""
    etag = desk.add(RIB).json["etag"]
    headers = desk.token(role, name) | {"If-Match": etag}
    answer = desk.client.put(ONE, json=RIB | {"summary": "Another."}, headers=headers)
    assert answer.status_code == status
    assert answer.json.get("type", "") == ("/problems/not-theirs" if status == 403 else "")
    assert len(desk.client.get(f"{ONE}/revisions").json["items"]) == (1 if status == 403 else 2)


def test_a_revision_after_an_accepted_one_is_a_draft(desk: Desk) -> None:
    """The one before stands as it stood, and the chain tells parents and makers."""
    before = accepted(desk)
    after = desk.put(ONE, before | {"summary": "Another."}, before["etag"]).json
    first, second = desk.client.get(f"{ONE}/revisions").json["items"]
    assert (first["status"], second["status"], after["status"]) == ("accepted", "draft", "draft")
    assert (first["parent"], second["parent"], second["by"]) == (None, first["sha256"], first["by"])


def test_the_list_tells_and_filters_states(desk: Desk) -> None:
    """A card says where its latest revision stands."""
    accepted(desk)
    desk.client.post(f"{ONE}/standing", json=MISPRINT, headers=desk.token())
    for status, found in (("yanked", 1), ("accepted", 0)):
        items = desk.client.get(f"/v1/components?status={status}").json["items"]
        assert [each["status"] for each in items] == [status] * found


def test_what_is_withdrawn_answers_410_with_the_reason(desk: Desk) -> None:
    """By slug, revision and hash; the history of its states is told, and its slug stays in use."""
    sha256 = accepted(desk)["sha256"]
    assert desk.client.post(f"{ONE}/standing", json=GONE, headers=desk.token("keeper")).status_code == 200
    for path in (ONE, f"{ONE}/revisions/{sha256}", f"/v1/objects/sha256/{sha256}"):
        answer = desk.client.get(path)
        assert (answer.status_code, answer.mimetype) == (410, "application/problem+json")
        assert GONE["say"] in answer.json["detail"]
    assert desk.client.get("/v1/components").json["items"] == []
    assert desk.client.get(f"{ONE}/standing").json["moves"][-1]["to"] == "withdrawn"
    assert desk.add(RIB).status_code == 409


def test_a_move_that_the_table_does_not_have_names_those_that_it_has(desk: Desk) -> None:
    """409 with the ways that lead on."""
    desk.add(RIB)
    answer = desk.client.post(f"{ONE}/standing", json=MISPRINT, headers=desk.token("keeper"))
    assert (answer.status_code, answer.json["type"]) == (409, "/problems/moved")
    assert "accepted" in answer.json["hint"]


def test_the_way_of_a_submission(desk: Desk) -> None:
    """Handed in, read by somebody else, accepted with a reason, and closed."""
    desk.add(RIB)
    made = desk.client.post("/v1/submissions", json={"component": RIB["slug"]}, headers=desk.token())
    assert (made.status_code, made.headers["Location"]) == (201, "/v1/submissions/1")
    verdict = {"decision": "accept", "because": "sound", "say": "Tried over 26 stitches."}
    path = "/v1/submissions/1/decisions"
    assert desk.client.post(path, json=verdict, headers=desk.token("reviewer")).json["type"] == "/problems/not-theirs"
    told = desk.client.post(path, json=verdict, headers=desk.token("reviewer", "suri")).json
    assert (told["turn"], desk.client.get(ONE).json["status"]) == ("nobody", "accepted")
    assert desk.client.get("/v1/submissions").json["items"] == []
    assert desk.client.get("/v1/submissions/x").status_code == 404


def test_a_report_needs_a_token_of_any_role(desk: Desk) -> None:
    """Reading may be open here, and whoever reports is somebody."""
    desk.add(RIB)
    body = {"component": RIB["slug"], "say": "A finger was caught."}
    assert desk.client.post("/v1/safety-reports", json=body).status_code == 401
    made = desk.client.post("/v1/safety-reports", json=body, headers=desk.token("reader", "ines"))
    assert (made.status_code, made.json["lane"]) == (201, "safety")


def test_the_queue_goes_on_over_its_pages(desk: Desk) -> None:
    """Each is on one page, and the cursor keeps the filter."""
    desk.add(RIB)
    for _ in range(3):
        body = {"component": RIB["slug"], "say": "A finger was caught."}
        desk.client.post("/v1/safety-reports", json=body, headers=desk.token("reader", "ines"))
    found, path = [], "/v1/submissions?lane=safety&limit=2"
    while path:
        page = desk.client.get(path).json
        found += [each["number"] for each in page["items"]]
        path = page["next"]
    assert found == [1, 2, 3]


def test_a_token_that_is_over_is_told_so(desk: Desk) -> None:
    """401 with a sentence of its own."""
    header = desk.token("keeper")
    (holder,) = desk.services.store.tokens()
    desk.services.store.put_token(replace(holder, until="2020-01-01"))
    answer = desk.client.get("/v1/audit", headers=header)
    assert (answer.status_code, "good up to 2020-01-01" in answer.json["detail"]) == (401, True)


def test_a_keeper_reads_the_log_and_can_verify_it(desk: Desk) -> None:
    """Lines come in pages, with names beside them that no hash holds."""
    accepted(desk)
    lines: list[Any] = []
    headers = desk.token("keeper")
    while True:
        answer = desk.client.get(f"/v1/audit?after={len(lines)}&limit=2", headers=headers)
        lines += [json.loads(line) for line in answer.text.splitlines()]
        if "Link" not in answer.headers:
            break
    store = desk.services.store
    assert lines == [line_json(each, store.names()) for each in store.audit(0, 100)]
    assert (verify(store).lines, verify(store).wrong) == (len(lines), "")
    assert {"add", "move", "token"} == {line["act"] for line in lines}

"""A POST with an Idempotency-Key is one write, however often it is sent (draft of the IETF HTTPAPI working group)."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path

import pytest
from werkzeug.test import TestResponse

from api.conftest import Desk
from api.contents import RIB
from api.test_refusals import refused
from counterpane import wiring
from counterpane.library.review.tokens import create

PATH = "/v1/components"
KEY_NAME = "Idempotency-Key"
KEY = {KEY_NAME: "one-of-mine"}


def sent(desk: Desk, content: dict[str, object], headers: dict[str, str]) -> TestResponse:
    """Send a component with these headers."""
    return desk.client.post(PATH, json=content, headers=headers)


def test_the_same_request_again_writes_nothing_and_answers_alike(desk: Desk) -> None:
    """The second answer says that it is one."""
    headers = desk.token() | KEY
    first, second = sent(desk, RIB, headers), sent(desk, RIB, headers)
    assert (first.status_code, "Idempotency-Replayed" in first.headers) == (201, False)
    assert (second.status_code, second.headers["Idempotency-Replayed"]) == (201, "true")
    assert (second.data, second.headers["ETag"], second.headers["Location"]) == (
        first.data,
        first.headers["ETag"],
        first.headers["Location"],
    )
    assert len(desk.services.store.changes(0, 10)) == 1


def test_the_first_revision_is_answered_after_later_ones(desk: Desk) -> None:
    """What the request made is what it made."""
    headers = desk.token() | KEY
    first = sent(desk, RIB, headers)
    desk.put(f"{PATH}/four-rib", RIB | {"summary": "Another."}, first.headers["ETag"])
    assert sent(desk, RIB, headers).data == first.data


def test_other_bytes_under_the_key_are_refused(desk: Desk) -> None:
    """A key names one request."""
    headers = desk.token() | KEY
    sent(desk, RIB, headers)
    refused(sent(desk, RIB | {"slug": "other-rib"}, headers), 422, "key-reused")
    assert len(desk.services.store.changes(0, 10)) == 1


def test_keys_of_two_senders_do_not_meet(desk: Desk) -> None:
    """Each token has its own."""
    sent(desk, RIB, desk.token() | KEY)
    assert sent(desk, RIB | {"slug": "other-rib"}, desk.token() | KEY).status_code == 201


def test_what_was_refused_is_looked_at_again(desk: Desk) -> None:
    """A refusal writes nothing, and so keeps no key."""
    headers = desk.token() | KEY
    assert sent(desk, RIB | {"examples": [{"stitches": 22, "after": [22, 21]}]}, headers).status_code == 422
    assert sent(desk, RIB, headers).status_code == 201


@pytest.mark.parametrize("key", ["", '""', "a b", "k" * 256])
def test_a_key_that_is_no_name_is_refused(desk: Desk, key: str) -> None:
    """It is not passed over: the sender would believe in it."""
    refused(sent(desk, RIB, desk.token() | {"Idempotency-Key": key}), 400, "bad-request")


def test_a_key_is_forgotten_after_a_day(desk: Desk) -> None:
    """The slug is then what keeps a second one from being made."""
    services = replace(desk.services, now=lambda: "2026-05-01T10:00:00Z")
    later = replace(desk.services, now=lambda: "2026-05-02T10:00:01Z")
    headers = desk.token() | KEY
    wiring.app_of(services).test_client().post(PATH, json=RIB, headers=headers)
    refused(wiring.app_of(later).test_client().post(PATH, json=RIB, headers=headers), 409, "taken")


def test_twenty_at_once_make_one(tmp_path: Path) -> None:
    """In a file, each through a connection of its own: one is made and the others answer alike."""
    services = wiring.open_library(tmp_path / "library.db", starters=False)
    headers = {"Authorization": f"Bearer {create(services.store, 'contributor', 'anna', services.now())}"} | KEY
    app = wiring.app_of(services)

    def send(_: int) -> bytes:
        answer = app.test_client().post(PATH, json=RIB, headers=headers)
        assert answer.status_code == 201
        return answer.data

    with ThreadPoolExecutor(8) as pool:
        assert len(set(pool.map(send, range(20)))) == 1
    assert len(services.store.changes(0, 30)) == 1
    services.store.close()


def handed_in(desk: Desk, headers: dict[str, str], key: str) -> TestResponse:
    """Hand the rib in under a key."""
    return desk.client.post("/v1/submissions", json={"component": "four-rib"}, headers=headers | {KEY_NAME: key})


def test_what_is_handed_in_twice_under_a_key_is_one_submission(desk: Desk) -> None:
    """The second answer tells of it as it is by then; without a key, or with another one, it is refused."""
    sent(desk, RIB, headers := desk.token())
    first, second = handed_in(desk, headers, "one"), handed_in(desk, headers, "one")
    assert (first.status_code, second.status_code, second.data) == (201, 201, first.data)
    assert ("Idempotency-Replayed" in first.headers, second.headers["Idempotency-Replayed"]) == (False, "true")
    assert second.headers["Location"] == first.headers["Location"] == "/v1/submissions/1"
    refused(handed_in(desk, headers, "two"), 409, "moved")
    assert [line.act for line in desk.services.store.audit(0, 9)].count("submit") == 1


def test_a_report_sent_twice_under_a_key_is_one_report(desk: Desk) -> None:
    """Without a key there would be two."""
    sent(desk, RIB, desk.token())
    about, headers = {"component": "four-rib", "say": "A loop caught a finger."}, desk.token("reader") | KEY
    answers = [desk.client.post("/v1/safety-reports", json=about, headers=headers) for _ in range(2)]
    assert [answer.status_code for answer in answers] == [201, 201]
    assert len(desk.client.get("/v1/submissions").json["items"]) == 1
    refused(desk.client.post("/v1/safety-reports", json=about | {"say": "No."}, headers=headers), 422, "key-reused")


def test_a_decision_and_a_move_sent_twice_under_a_key_are_one(desk: Desk) -> None:
    """Each is told as done before, where without a key it would be refused."""
    sent(desk, RIB, headers := desk.token())
    handed_in(desk, headers, "one")
    decision = {"decision": "accept", "because": "sound", "say": "Worked twice."}
    move = {"to": "yanked", "because": "misprint", "say": "Row 2 is misprinted."}
    reviewer = desk.token("reviewer", "Suri") | KEY
    for path, body in (("/v1/submissions/1/decisions", decision), ("/v1/components/four-rib/standing", move)):
        first, second = (desk.client.post(path, json=body, headers=reviewer) for _ in range(2))
        assert (first.status_code, second.status_code, second.data) == (200, 200, first.data)
        assert ("Idempotency-Replayed" in first.headers, second.headers["Idempotency-Replayed"]) == (False, "true")
        without = {name: value for name, value in reviewer.items() if name != KEY_NAME}
        refused(desk.client.post(path, json=body, headers=without), 409, "moved")


def test_ten_who_hand_in_at_once_under_one_key_make_one_submission(tmp_path: Path) -> None:
    """In a file: who comes second is answered as the first, though the revision is in review by then."""
    services = wiring.open_library(tmp_path / "library.db", starters=False)
    headers = {"Authorization": f"Bearer {create(services.store, 'contributor', 'anna', services.now())}"} | KEY
    app = wiring.app_of(services)
    app.test_client().post(PATH, json=RIB, headers=headers)

    def send(_: int) -> int:
        about = {"component": "four-rib"}
        return app.test_client().post("/v1/submissions", json=about, headers=headers).status_code

    with ThreadPoolExecutor(5) as pool:
        assert set(pool.map(send, range(10))) == {201}
    assert len(services.store.changes(0, 9)) == 2
    services.store.close()

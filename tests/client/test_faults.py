"""The client where the network or the library fails."""

from __future__ import annotations

import json
from typing import Any

import pytest
import requests
import requests_mock as mocks

from counterpane.client import (
    Busy,
    Client,
    Internal,
    ProblemError,
    TooLarge,
    TooManyRequests,
    Unreachable,
    Unreadable,
)
from counterpane.client.transport import TIMEOUTS, TRIES

HOST = "http://library.test"
RULES = f"{HOST}/v1/rules"
BUSY = {"type": "/problems/busy", "title": "The library is busy", "status": 503, "detail": "Later.", "hint": "Wait."}
DONE: dict[str, Any] = {"json": {"items": []}}


@pytest.fixture
def waits() -> list[float]:
    """Return the list of waits that a client makes."""
    return []


@pytest.fixture
def client(waits: list[float]) -> Client:
    """Return a client that waits in no time."""
    return Client(HOST, "cpn_token", sleep=waits.append)


class TestRetries:
    """What is tried again."""

    @pytest.mark.parametrize("status", [429, 502, 503, 504])
    def test_a_get_is_tried_again(
        self, client: Client, waits: list[float], requests_mock: mocks.Mocker, status: int
    ) -> None:
        """Two failures and a success are a success."""
        requests_mock.get(RULES, [{"status_code": status}, {"status_code": status}, DONE])
        assert client.rules() == ()
        assert len(waits) == 2

    @pytest.mark.parametrize("fault", [requests.ConnectTimeout, requests.ReadTimeout, requests.ConnectionError])
    def test_a_broken_connection_is_tried_again(
        self, client: Client, requests_mock: mocks.Mocker, fault: type[Exception]
    ) -> None:
        """Timeouts and resets come and go."""
        requests_mock.get(RULES, [{"exc": fault}, DONE])
        assert client.rules() == ()

    def test_a_put_is_tried_again_with_its_tag(self, client: Client, requests_mock: mocks.Mocker) -> None:
        """The tag makes a second try safe."""
        answer = {"json": {"slug": "moss", "etag": '"b"'}}
        put = requests_mock.put(f"{HOST}/v1/components/moss", [{"status_code": 503}, answer])
        assert client.revise_component({"slug": "moss"}, '"a"').etag == '"b"'
        assert [each.headers["If-Match"] for each in put.request_history] == ['"a"', '"a"']

    @pytest.mark.parametrize("answer", [{"status_code": 503, "json": BUSY}, {"exc": requests.ConnectionError}])
    def test_a_post_is_sent_again_under_its_key(
        self, client: Client, requests_mock: mocks.Mocker, answer: dict[str, Any]
    ) -> None:
        """The key is made before the first try, and each call has its own."""
        good = {"json": {"slug": "moss", "etag": '"a"'}}
        post = requests_mock.post(f"{HOST}/v1/components", [answer, good, good])
        assert client.add_component({"slug": "moss"}).etag == '"a"'
        client.add_component({"slug": "moss"})
        one, again, other = (each.headers["Idempotency-Key"] for each in post.request_history)
        assert one == again != other

    @pytest.mark.parametrize("answer", [{"status_code": 503, "json": BUSY}, {"exc": requests.ConnectionError}])
    def test_a_post_without_a_key_is_sent_once(
        self, client: Client, requests_mock: mocks.Mocker, answer: dict[str, Any]
    ) -> None:
        """A text of a pattern is asked for without one."""
        post = requests_mock.post(f"{HOST}/v1/patterns", [answer, {"text": "Cast on"}])
        with pytest.raises((Busy, Unreachable)) as caught:
            client.pattern_text({})
        assert post.call_count == 1
        assert caught.value.retryable

    @pytest.mark.parametrize("answer", [{"status_code": 503, "json": BUSY}, {"exc": requests.ConnectionError}])
    def test_a_report_of_a_danger_is_sent_again_under_its_key(
        self, client: Client, requests_mock: mocks.Mocker, answer: dict[str, Any]
    ) -> None:
        """After an answer that was lost the library knows it again, and does not keep it twice."""
        post = requests_mock.post(f"{HOST}/v1/safety-reports", [answer, {"json": {"number": 1}}])
        assert client.report_safety("A finger was caught.", component="waffle").number == 1
        first, second = (each.headers["Idempotency-Key"] for each in post.request_history)
        assert first == second

    def test_what_is_taken_back_is_sent_again_under_its_key(self, client: Client, requests_mock: mocks.Mocker) -> None:
        """After an answer that was lost it is not told as gone, which would mislead."""
        place = f"{HOST}/v1/recipes/fog/answers/1/taking-back"
        post = requests_mock.post(place, [{"exc": requests.ConnectionError}, {"json": {"taken_back": "A slip."}}])
        assert client.take_back("fog", "answers", 1, "A slip.")["taken_back"] == "A slip."
        first, second = (each.headers["Idempotency-Key"] for each in post.request_history)
        assert first == second

    def test_waits_grow_and_end(self, client: Client, waits: list[float], requests_mock: mocks.Mocker) -> None:
        """The last failure is the answer."""
        requests_mock.get(RULES, status_code=503, json=BUSY)
        with pytest.raises(Busy) as caught:
            client.rules()
        assert (len(waits), caught.value.hint) == (TRIES - 1, "Wait.")
        assert 0.1 <= waits[0] <= 0.3 and 0.4 <= waits[2] <= 1.2

    @pytest.mark.parametrize(("header", "least"), [("7", 7), ("Wed, 21 Oct 2015 07:28:00 GMT", 0), ("soon", 0.1)])
    def test_the_library_says_how_long(
        self, client: Client, waits: list[float], requests_mock: mocks.Mocker, header: str, least: float
    ) -> None:
        """Seconds or a date; what cannot be read is left aside."""
        requests_mock.get(RULES, [{"status_code": 503, "headers": {"Retry-After": header}}, DONE])
        client.rules()
        assert least <= waits[0] <= max(least, 0.3)

    def test_too_many_requests_are_waited_for(
        self, client: Client, waits: list[float], requests_mock: mocks.Mocker
    ) -> None:
        """As long as the library says, and no longer than a call may take."""
        many = BUSY | {"type": "/problems/too-many-requests", "status": 429}
        refusal = {"status_code": 429, "json": many, "headers": {"Retry-After": "17"}}
        requests_mock.get(RULES, [refusal, DONE])
        assert (client.rules(), waits) == ((), [17])
        requests_mock.get(RULES, [refusal | {"headers": {"Retry-After": "61"}}])
        with pytest.raises(TooManyRequests) as caught:
            client.rules()
        assert (waits, caught.value.retryable, caught.value.status) == ([17], True, 429)

    def test_a_wait_beyond_the_budget_is_not_made(
        self, client: Client, waits: list[float], requests_mock: mocks.Mocker
    ) -> None:
        """Nobody waits an hour in a call."""
        requests_mock.get(RULES, status_code=503, json=BUSY, headers={"Retry-After": "3600"})
        with pytest.raises(Busy):
            client.rules()
        assert waits == []


class TestAnswers:
    """What comes back may be anything."""

    def test_every_call_has_finite_timeouts(self, client: Client, requests_mock: mocks.Mocker) -> None:
        """Three seconds to connect, twenty to read."""
        requests_mock.get(RULES, **DONE)
        client.rules()
        assert requests_mock.last_request.timeout == TIMEOUTS == (3, 20)

    @pytest.mark.parametrize("body", [b'{"items": [', b"", b"<html>"])
    def test_what_is_no_json_is_unreadable(self, client: Client, requests_mock: mocks.Mocker, body: bytes) -> None:
        """A cut body is not taken for an answer."""
        requests_mock.get(RULES, content=body)
        with pytest.raises(Unreadable):
            client.rules()

    def test_a_flipped_byte_is_seen(self, client: Client, requests_mock: mocks.Mocker) -> None:
        """An object is what its hash says, or nothing."""
        requests_mock.get(f"{HOST}/v1/objects/sha256/{'0' * 64}", content=b"{}")
        with pytest.raises(Unreadable, match="other bytes"):
            client.object("0" * 64)

    def test_a_next_page_elsewhere_is_not_followed(self, client: Client, requests_mock: mocks.Mocker) -> None:
        """The token goes to this library only."""
        requests_mock.get(f"{HOST}/v1/components", json={"items": [], "next": "http://elsewhere.test/"})
        with pytest.raises(Unreadable, match="elsewhere"):
            list(client.components())

    def test_a_redirect_is_no_answer(self, client: Client, requests_mock: mocks.Mocker) -> None:
        """The library never sends one."""
        requests_mock.get(RULES, status_code=302, headers={"Location": "http://elsewhere.test/"})
        with pytest.raises(ProblemError):
            client.rules()

    def test_a_problem_of_another_program_is_told_by_its_status(
        self, client: Client, requests_mock: mocks.Mocker
    ) -> None:
        """A proxy's page is no problem document."""
        requests_mock.get(RULES, status_code=418, text="<h1>no</h1>", headers={"X-Request-Id": "r1"})
        with pytest.raises(ProblemError) as caught:
            client.rules()
        assert (caught.value.status, caught.value.request_id, str(caught.value)) == (418, "r1", "status 418")

    @pytest.mark.parametrize(("name", "sort"), [("internal", Internal), ("too-large", TooLarge)])
    def test_the_sort_of_problem_is_the_class(
        self, client: Client, requests_mock: mocks.Mocker, name: str, sort: type[ProblemError]
    ) -> None:
        """The end of `type` tells, wherever the pages lie."""
        problem = BUSY | {"type": f"https://pages.test/problems/{name}"}
        requests_mock.get(RULES, status_code=500, text=json.dumps(problem))
        with pytest.raises(sort):
            client.rules()

    def test_members_that_are_not_known_are_kept(self, client: Client, requests_mock: mocks.Mocker) -> None:
        """A library may tell more than this client knows."""
        requests_mock.get(f"{RULES}/x", json={"slug": "x", "colour": "red"})
        assert client.rule("x").data["colour"] == "red"
        assert client.rule("x").title is None

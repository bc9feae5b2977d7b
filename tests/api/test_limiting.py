"""How many requests a caller may send in a minute.

The headers are held against draft-ietf-httpapi-ratelimit-headers from memory, 429 against RFC 6585.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from counterpane import wiring
from counterpane.api.access import Journal
from counterpane.api.application import create_app
from counterpane.api.callers import site_of
from counterpane.api.document import document
from counterpane.api.limiting import SECONDS, UNCOUNTED, Limit
from counterpane.library.review.tokens import create
from counterpane.library.services import Services
from counterpane.storage.accounts import Accounts

QUOTA = 3
REASONS = "/v1/reasons"


class Counter:
    """A server that counts, with a clock that somebody moves; `get` asks from an address."""

    def __init__(self, services: Services, folder: Path) -> None:
        self.at = 600.0
        self.services = services
        self.limit = Limit(QUOTA, Accounts(folder / "accounts", SECONDS, lambda: self.at).count)
        self.client: FlaskClient = wiring.app_of(services, limit=self.limit).test_client()

    def get(self, path: str = REASONS, address: str = "192.0.2.1", token: str = "", **more: str) -> TestResponse:
        """Send a GET."""
        headers = {**more, **({"Authorization": f"Bearer {token}"} if token else {})}
        return self.client.get(path, headers=headers, environ_base={"REMOTE_ADDR": address})

    def statuses(self, *asked: dict[str, str]) -> list[int]:
        """Return the status of each answer."""
        return [self.get(**each).status_code for each in asked]


@pytest.fixture
def counter(tmp_path: Path) -> Iterator[Counter]:
    """Yield a server that counts, on an empty library that needs no token to read."""
    services = wiring.open_library(starters=False)
    yield Counter(services, tmp_path)
    services.store.close()


def told(answer: TestResponse) -> tuple[str | None, str | None]:
    """Return the two headers of a limit."""
    return answer.headers.get("RateLimit-Policy"), answer.headers.get("RateLimit")


@pytest.mark.parametrize(
    ("path", "status"),
    [("/v1/reasons", 200), ("/", 200), ("/nope", 404), ("/problems/nope", 404), ("/v1/components/nope", 404)],
)
def test_every_answer_tells_the_limit_and_what_is_left(counter: Counter, path: str, status: int) -> None:
    """Those of pages, of refusals and of unknown addresses too."""
    counter.get()
    answer = counter.get(path)
    assert (answer.status_code, *told(answer)) == (status, '"requests";q=3;w=60', '"requests";r=1;t=60')


def test_an_answer_of_304_and_a_method_that_is_not_taken_are_counted(library: Services, tmp_path: Path) -> None:
    """Each is a request."""
    counter = Counter(library, tmp_path)
    etag = counter.get("/v1/components/waffle").headers["ETag"]
    same = counter.get("/v1/components/waffle", **{"If-None-Match": etag})
    other = counter.client.delete(REASONS, environ_base={"REMOTE_ADDR": "192.0.2.1"})
    assert (same.status_code, told(same)[1]) == (304, '"requests";r=1;t=60')
    assert (other.status_code, told(other)[1]) == (405, '"requests";r=0;t=60')


def test_a_request_beyond_the_quota_is_refused_with_a_problem_document(counter: Counter) -> None:
    """It says when to come again, and its page is there."""
    for _ in range(QUOTA):
        assert counter.get().status_code == 200
    answer = counter.get()
    assert (answer.status_code, answer.mimetype) == (429, "application/problem+json")
    assert (answer.json["type"], answer.json["status"]) == ("/problems/too-many-requests", 429)
    assert answer.json["request_id"] == answer.headers["X-Request-Id"]
    assert (answer.headers["Retry-After"], told(answer)[1]) == ("60", '"requests";r=0;t=60')
    assert counter.get(answer.json["type"], address="192.0.2.9").status_code == 200


@pytest.mark.parametrize("at", [600.0, 612.5, 659.999])
def test_after_the_seconds_that_are_told_a_request_passes(counter: Counter, at: float) -> None:
    """And none before."""
    counter.at = at
    wait = int([counter.get() for _ in range(QUOTA + 1)][-1].headers["Retry-After"])
    counter.at = at + wait - 1
    assert counter.get().status_code == 429
    counter.at = at + wait
    assert counter.get().status_code == 200


def test_nothing_is_done_of_what_is_refused(counter: Counter) -> None:
    """The token is good, and the body is not even looked at."""
    token = create(counter.services.store, "keeper", "anna", counter.services.now())
    before = counter.services.store.last_change()
    headers = {"Authorization": f"Bearer {token}"}
    sent: dict[str, Any] = {"data": b"{", "content_type": "application/json", "headers": headers}
    answers = [counter.client.post("/v1/components", **sent) for _ in range(QUOTA + 1)]
    assert [each.status_code for each in answers] == [400] * QUOTA + [429]
    assert counter.services.store.last_change() == before


def test_the_answer_to_head_has_no_body(counter: Counter) -> None:
    """Beyond the quota too."""
    answers = [counter.client.head(REASONS) for _ in range(QUOTA + 1)]
    assert (answers[-1].status_code, answers[-1].data) == (429, b"")


@pytest.mark.parametrize("path", UNCOUNTED)
def test_who_watches_over_the_server_is_never_refused(counter: Counter, path: str) -> None:
    """These are not counted, and tell no limit."""
    answers = [counter.get(path) for _ in range(QUOTA + 2)]
    assert {(each.status_code, *told(each)) for each in answers} == {(200, None, None)}
    assert told(counter.get())[1] == '"requests";r=2;t=60'


def test_two_addresses_do_not_share(counter: Counter) -> None:
    """Each has all of the quota."""
    assert counter.statuses(*[{"address": f"192.0.2.{each % 2}"} for each in range(8)]) == [200] * 6 + [429] * 2


def test_the_holder_of_a_token_is_one_caller_from_wherever(counter: Counter) -> None:
    """And another one than the address."""
    token = create(counter.services.store, "reader", "anna", counter.services.now())
    asked = [{"address": f"192.0.2.{each}", "token": token} for each in range(QUOTA + 1)]
    assert counter.statuses(*asked, {"address": "192.0.2.0"}) == [200] * QUOTA + [429, 200]


@pytest.mark.parametrize("guess", ["cpn_", "cpn_000000000000000000000000000000000000", "x" * 500, "\xff"])
def test_a_token_that_does_not_hold_counts_by_the_address(counter: Counter, guess: str) -> None:
    """So that guessing is limited, however many guesses there are."""
    asked = [{"token": f"{guess}{each}"} for each in range(QUOTA)]
    counter.statuses(*asked)
    assert counter.statuses({}) == [429]


def test_a_token_that_is_over_counts_by_the_address(counter: Counter) -> None:
    """It opens nothing."""
    token = create(counter.services.store, "reader", "anna", "2020-01-01T00:00:00Z", "2020-01-02")
    assert counter.statuses(*[{"token": token}] * QUOTA, {}) == [200] * QUOTA + [429]


@pytest.mark.parametrize("name", ["X-Forwarded-For", "Forwarded", "X-Real-IP"])
def test_what_is_said_of_an_address_is_not_believed(counter: Counter, name: str) -> None:
    """Anybody can say it."""
    asked: list[dict[str, str]] = [{name: f"198.51.100.{each}"} for each in range(QUOTA + 1)]
    assert counter.statuses(*asked) == [200] * QUOTA + [429]


@pytest.mark.parametrize(
    ("address", "site"),
    [
        ("2001:db8:1:2:3:4:5:6", "2001:db8:1:2::"),
        ("2001:db8:1:2::9", "2001:db8:1:2::"),
        ("2001:db8:1:3::9", "2001:db8:1:3::"),
        ("fe80::1%eth0", "fe80::"),
        ("::ffff:192.0.2.7", "192.0.2.7"),
        ("192.0.2.7", "192.0.2.7"),
        ("a:b", "a:b"),
        ("", ""),
    ],
)
def test_an_address_of_ipv6_counts_as_its_network(address: str, site: str) -> None:
    """Of 64 bits (RFC 4291); an address of IPv4 counts as itself, however it is written."""
    assert site_of(address) == site


def failing(_: str) -> tuple[int, int]:
    """Fail as a full disk does."""
    raise OSError(28, "No space left on device")


@pytest.mark.parametrize("count", [failing])
def test_requests_are_served_where_they_cannot_be_counted(
    library: Services, count: Callable[[str], tuple[int, int]]
) -> None:
    """One line of the journal says so, however many there are."""
    lines: list[bytes] = []
    client = create_app(library, (), Journal(lines.append), Limit(QUOTA, count)).test_client()
    assert {(each.status_code, *told(each)) for each in (client.get(REASONS) for _ in range(5))} == {(200, None, None)}
    events = [json.loads(line) for line in lines]
    assert [each["event"] for each in events] == ["uncounted"] + ["request"] * 5
    assert "No space left" in events[0]["why"]


def test_a_refusal_has_its_line_in_the_journal(library: Services) -> None:
    """With the id that the answer has, and neither address nor token."""
    lines: list[bytes] = []
    client = create_app(library, (), Journal(lines.append), Limit(QUOTA, lambda _: (QUOTA + 1, 9))).test_client()
    answer = client.get(REASONS, environ_base={"REMOTE_ADDR": "192.0.2.7"})
    line = json.loads(lines[0])
    assert (len(lines), line["status"], line["request_id"]) == (1, 429, answer.headers["X-Request-Id"])
    assert b"192.0.2.7" not in lines[0]


def test_every_operation_that_is_counted_describes_it() -> None:
    """429 with the three headers, and the two of a limit on what succeeds."""
    for path, methods in document()["paths"].items():
        for operation in methods.values():
            answers = operation["responses"]
            assert ("429" in answers) == (path not in UNCOUNTED)
            for status, answer in answers.items():
                named = set(answer.get("headers", {})) & {"RateLimit", "RateLimit-Policy", "Retry-After"}
                counted = path not in UNCOUNTED and (status < "400" or status == "429")
                assert len(named) == (3 if status == "429" else 2 if counted else 0)


def test_the_headers_are_described_as_they_are_sent(counter: Counter) -> None:
    """The examples of the description have the form of the headers."""
    headers = document()["components"]["headers"]
    for name, value in zip(("RateLimit-Policy", "RateLimit"), told(counter.get()), strict=True):
        shown = re.search(r'`("requests".*)`', headers[name]["description"])
        assert shown and value
        assert re.sub(r"\d+", "N", shown[1]) == re.sub(r"\d+", "N", value)

"""The limit of a real server with two workers: nobody gets a request more, and nobody one less."""

from __future__ import annotations

import http.client
import time
from collections import Counter
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from counterpane import wiring
from test_wiring import served

QUOTA, BEYOND, AT_ONCE = 100, 50, 30
HERE, THERE = "127.0.0.1", "127.0.0.2"
LONGEST = 20
"""Seconds that must be left of a minute in which requests are sent."""


def answer(server: str, source: str = HERE, token: str = "") -> tuple[int, str | None, str]:
    """Ask from an address of this machine; return the status, Retry-After and RateLimit."""
    host, port = server.removeprefix("http://").split(":")
    connection = http.client.HTTPConnection(host, int(port), timeout=30, source_address=(source, 0))
    connection.request("GET", "/v1/reasons", headers={"Authorization": f"Bearer {token}"} if token else {})
    got = connection.getresponse()
    got.read()
    found = got.status, got.getheader("Retry-After"), got.getheader("RateLimit", "")
    connection.close()
    return found


def wait_for_a_minute(server: str) -> None:
    """Wait until enough is left of a minute to send all of them in it."""
    left = int(answer(server, "127.0.0.9")[2].rpartition("t=")[2])
    if left < LONGEST:
        time.sleep(left)


def at_once(server: str, sources: Sequence[str], token: str = "") -> list[tuple[int, str | None, str]]:
    """Send one request from each source, many at a time."""
    with ThreadPoolExecutor(AT_ONCE) as pool:
        return list(pool.map(lambda source: answer(server, source, token), sources))


@pytest.mark.parametrize("server", ["granian", "waitress"])
def test_exactly_the_quota_passes_of_what_is_sent_at_once(tmp_path: Path, server: str) -> None:
    """The rest is told when to come again; another address and the holder of a token have quotas of their own."""
    store = tmp_path / "library.db"
    token = wiring.create_token(store, "reader", "anna")
    with served(store, server, QUOTA) as address:
        wait_for_a_minute(address)
        answers = at_once(address, [HERE] * (QUOTA + BEYOND))
        of_two = at_once(address, [HERE, THERE] * ((QUOTA + BEYOND) // 2), token)
        other = answer(address, THERE)
    for each in (answers, of_two):
        assert Counter(status for status, _, _ in each) == {200: QUOTA, 429: BEYOND}
    assert other[0] == 200 and f"r={QUOTA - 1};" in other[2]
    assert all(limit == f'"requests";r=0;t={again}' for status, again, limit in answers if status == 429)
    assert len({limit.partition(";t=")[0] for status, _, limit in answers if status == 200}) == QUOTA

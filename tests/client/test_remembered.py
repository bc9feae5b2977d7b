"""What a client remembers of revisions by their hash is bounded."""

from __future__ import annotations

import hashlib

import requests_mock as mocks
from hypothesis import given
from hypothesis import strategies as st

from counterpane.client import Client
from counterpane.client.remembered import MOST_BYTES, MOST_OBJECTS, Remembered

HOST = "http://library.test"


@given(st.lists(st.tuples(st.booleans(), st.integers(0, 9)), max_size=60))
def test_what_was_asked_for_the_longest_ago_makes_room(asked: list[tuple[bool, int]]) -> None:
    """Whatever is kept and asked for: of five objects and thirty bytes, those of the last questions are held."""
    held, last = Remembered(5, 30), list[int]()
    for keeps, number in asked:
        found = held.get(str(number))
        assert found == (bytes(number) if number in last else None)
        if keeps or number in last:
            last = [*(each for each in last if each != number), number]
            held.keep(str(number), bytes(number))
        while len(last) > 5 or sum(last) > 30:
            last.pop(0)
        assert len(held) == len(last)


def test_what_is_larger_than_the_room_is_not_held() -> None:
    """And nothing is forgotten for it."""
    held = Remembered(5, 30)
    held.keep("small", b"k2, p2")
    held.keep("large", bytes(31))
    assert (held.get("small"), held.get("large")) == (b"k2, p2", None)


def test_a_client_fetches_an_object_once_and_holds_a_thousand(requests_mock: mocks.Mocker) -> None:
    """The first of a thousand and one is fetched again, the last is not."""
    contents = [str(number).encode() for number in range(MOST_OBJECTS + 1)]
    for content in contents:
        requests_mock.get(f"{HOST}/v1/objects/sha256/{hashlib.sha256(content).hexdigest()}", content=content)
    with Client(HOST) as client:
        for content in (*contents, contents[-1], contents[0]):
            assert client.object(hashlib.sha256(content).hexdigest()) == content
        assert requests_mock.call_count == MOST_OBJECTS + 2
        assert (len(client._objects), MOST_BYTES) == (1_000, 33_554_432)

"""Two thousand calls to a served library where a fifth of all tries fail, before the library or behind it."""

from __future__ import annotations

from random import Random
from typing import Any

import requests

from counterpane.client import Client, Unreachable
from counterpane.lending import lent

CALLS, REPORTED = 2_000, 8


class Failing(requests.Session):
    """A connection of which one try in ten does not arrive, and one answer in ten is lost on its way back."""

    def __init__(self) -> None:
        super().__init__()
        self.chance = Random(20_260_901)
        self.lost = 0

    def request(self, *args: Any, **kwargs: Any) -> requests.Response:
        """Send, unless this try is one that does not arrive."""
        luck = self.chance.random()
        self.lost += luck < 0.2
        if luck < 0.1:
            raise requests.ConnectionError("not sent")
        answer = super().request(*args, **kwargs)
        if luck < 0.2:
            raise requests.ConnectionError("the answer is lost")
        return answer


def test_calls_end_right_and_nothing_is_kept_twice() -> None:
    """At least 999 of 1,000 calls have their answer; each report has a number of its own, and none is doubled."""
    session = Failing()
    failed, numbers = 0, []
    with lent() as library, Client(library.address, library.token, sleep=lambda _: None, session=session) as client:
        for call in range(CALLS):
            try:
                if call % REPORTED:
                    assert client.component("waffle").slug == "waffle"
                else:
                    said = f"A finger was caught in row {call}."
                    numbers.append(client.report_safety(said, component="waffle").number)
            except Unreachable:
                failed += 1
    assert session.lost > CALLS / 6
    assert failed <= CALLS / 1_000
    assert len(set(numbers)) == len(numbers)
    assert max(numbers) <= CALLS / REPORTED

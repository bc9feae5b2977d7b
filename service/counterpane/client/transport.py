"""One request and its answer: timeouts, retries and problems.

Requests are tried again where that can help: after a connection that failed or broke off, and after 429, 502, 503 and
504, waiting longer each time with some chance in it, or as long as `Retry-After` says. A POST is sent twice only with a
key by which the library knows it.
"""

from __future__ import annotations

import json
import random
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from email.utils import parsedate_to_datetime
from typing import TYPE_CHECKING, Any

from counterpane.client.errors import Unreachable, Unreadable, problem_of

if TYPE_CHECKING:
    import requests

TIMEOUTS = (3, 20)
"""Seconds to connect, and to wait for the next byte."""

TRIES = 5
"""With a fifth of all tries failing, one call in 3,000 still ends without its answer; house."""
BUDGET_S = 60
FIRST_WAIT_S = 0.2
RETRIED_METHODS = ("GET", "PUT")
KEY = "Idempotency-Key"
RETRIED_STATUSES = (429, 502, 503, 504)


@dataclass(frozen=True, slots=True)
class Asked:
    """A request: `path` is below the base address or one that the library gave."""

    method: str
    path: str
    params: Mapping[str, Any] | None = None
    body: Mapping[str, Any] | None = None
    headers: Mapping[str, str] | None = None

    @property
    def repeatable(self) -> bool:
        """Whether sending it again writes nothing twice."""
        return self.method in RETRIED_METHODS or KEY in (self.headers or {})


class Transport:
    """Sends requests to one library; `sleep` waits between tries; a `session` of one's own may bound what is read."""

    def __init__(
        self,
        base: str,
        token: str | None = None,
        sleep: Callable[[float], None] = time.sleep,
        session: requests.Session | None = None,
    ) -> None:
        self._base = base.rstrip("/")
        self._token = token
        self._sleep = sleep
        self._session = session

    def close(self) -> None:
        """Close the connections."""
        if self._session:
            self._session.close()

    def send(self, asked: Asked) -> requests.Response:
        """Return the answer of a call that succeeded; raise Unreachable, Unreadable or a ProblemError."""
        until = time.monotonic() + BUDGET_S
        for number in range(1, TRIES + 1):
            last = not asked.repeatable or number == TRIES
            try:
                response = self._once(asked)
            except Unreachable:
                if last or not self._waited(_backoff(number), until):
                    raise
                continue
            if response.status_code not in RETRIED_STATUSES or last:
                break
            if not self._waited(_said(response) or _backoff(number), until):
                break
        return _good(response)

    def _once(self, asked: Asked) -> requests.Response:
        import requests  # noqa: PLC0415 - loaded with the first call, so that importing the client is quick

        self._session = self._session or requests.Session()
        headers = {"Accept": "application/json, */*;q=0.1", **(asked.headers or {})}
        if self._token:
            headers["Authorization"] = f"Bearer {self._token}"
        try:
            return self._session.request(
                asked.method,
                self._base + asked.path,
                params=asked.params,
                json=asked.body,
                headers=headers,
                timeout=TIMEOUTS,
                allow_redirects=False,
            )
        except requests.RequestException as fault:
            raise Unreachable(f"{asked.method} {self._base}{asked.path}: {fault}") from fault

    def _waited(self, seconds: float, until: float) -> bool:
        """Wait, unless the time for all tries would be over."""
        if time.monotonic() + seconds > until:
            return False
        self._sleep(seconds)
        return True


def _backoff(number: int) -> float:
    return FIRST_WAIT_S * float(2 ** (number - 1)) * random.uniform(0.5, 1.5)


def _said(response: requests.Response) -> float | None:
    """Return the seconds that Retry-After asks for, given as seconds or as a date."""
    header = response.headers.get("Retry-After", "").strip()
    if header.isdigit():
        return float(header)
    try:
        return max(0.0, (parsedate_to_datetime(header) - datetime.now(UTC)).total_seconds())
    except (TypeError, ValueError):
        return None


def _good(response: requests.Response) -> requests.Response:
    if response.status_code < 300:
        return response
    request_id = response.headers.get("X-Request-Id")
    try:
        document = json.loads(response.content)
    except ValueError:
        document = {}
    raise problem_of(document if isinstance(document, dict) else {}, response.status_code, request_id)


def json_of(response: requests.Response) -> Any:
    """Return the JSON of an answer; raise Unreadable for one that is cut or is no JSON."""
    return parsed(response.content, response.url)


def parsed(content: bytes, where: str) -> Any:
    """Return the values of JSON that came from somewhere; raise Unreadable."""
    try:
        return json.loads(content)
    except ValueError as fault:
        raise Unreadable(f"The answer of {where} is no JSON: {fault}") from fault

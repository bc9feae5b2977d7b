"""How many requests a caller may send in a minute: counted before any work is done, told in headers and held to.

`RateLimit-Policy` and `RateLimit` are spelt as in the draft of the IETF, draft-ietf-httpapi-ratelimit-headers, from
memory. 429 is that of RFC 6585 and `Retry-After` that of RFC 9110. This stands before Flask, so that a request that is
refused costs little and every answer has the headers, whoever makes it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from counterpane.api.callers import caller_of
from counterpane.api.problems import Problem
from counterpane.library.services import Services

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment
    from flask import Response

SECONDS = 60
NAME = "requests"
"""What the policy is called in the headers."""
UNCOUNTED = ("/healthz", "/readyz")
"""Who watches over a server asks these, and must never be refused."""


@dataclass(frozen=True, slots=True)
class Limit:
    """How many requests a minute each caller has.

    `count` counts one of a caller and returns its number in this minute with the whole seconds until the next one; it
    raises OSError where nothing can be counted.
    """

    quota: int
    count: Callable[[str], tuple[int, int]]

    def headers(self, number: int, left: int) -> list[tuple[str, str]]:
        """Return the headers of the answer to the request of this number."""
        rest = max(0, self.quota - number)
        return [
            ("RateLimit-Policy", f'"{NAME}";q={self.quota};w={SECONDS}'),
            ("RateLimit", f'"{NAME}";r={rest};t={left}'),
        ]

    def refusal(self, left: int) -> Problem:
        """Return what is said of a request beyond the quota."""
        detail = f"This caller has sent more than {self.quota} requests in this minute, which ends in {left} s."
        return Problem("too-many-requests", detail, headers={"Retry-After": str(left)})


class Limited:
    """An application before which requests are counted.

    `refuse` answers a problem to a request; `tell` is told why requests are served without being counted.
    """

    def __init__(
        self,
        app: WSGIApplication,
        services: Services,
        limit: Limit,
        refuse: Callable[[Problem, dict[str, Any]], Response],
        tell: Callable[[Exception], None],
    ) -> None:
        self._app = app
        self._services = services
        self._limit = limit
        self._refuse = refuse
        self._tell = tell
        self._counting = True

    def __call__(self, environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        """Answer a request of WSGI."""
        if environ.get("PATH_INFO") in UNCOUNTED:
            return self._app(environ, start_response)
        caller = caller_of(self._services, environ)
        try:
            number, left = self._limit.count(caller)
        except OSError as fault:
            self._fail(fault)
            return self._app(environ, start_response)
        self._counting = True
        headers = self._limit.headers(number, left)
        answer = self._app if number <= self._limit.quota else self._refuse(self._limit.refusal(left), environ)
        return answer(environ, lambda status, sent, *rest: start_response(status, [*sent, *headers], *rest))

    def _fail(self, fault: Exception) -> None:
        """Tell of the first of several failures."""
        if self._counting:
            self._counting = False
            self._tell(fault)

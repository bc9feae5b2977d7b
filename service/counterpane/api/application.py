"""The application: the only place where Flask meets the operations.

Each operation gets one Flask view that reads the request, calls the view and sends what it answers. Every refusal,
from here or from Flask itself, leaves as a problem document. Headers are put together as one list, and nothing is hung
on Flask's hooks for all requests, since both would cost as much as sending a stored answer.
"""

from __future__ import annotations

import secrets
import time
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import cast

from flask import Blueprint, Flask, Request, Response, g, request
from werkzeug.exceptions import HTTPException, RequestEntityTooLarge

from counterpane.api import problems, tags
from counterpane.api.access import SILENT, Journal
from counterpane.api.catalogue import OPERATIONS
from counterpane.api.limiting import Limit, Limited
from counterpane.api.operations import Answer, Operation
from counterpane.api.problems import Problem
from counterpane.api.requests import call_of
from counterpane.api.sorts import SORTS
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.services import Services

OF_FLASK = {404: "not-found", 405: "method-not-allowed", 406: "not-acceptable", 413: "too-large"}
OF_FLASK |= {415: "unsupported-media-type"}
Headers = list[tuple[str, str]]


def create_app(
    services: Services, pages: Iterable[Blueprint] = (), journal: Journal = SILENT, limit: Limit | None = None
) -> Flask:
    """Return the application on these services; `pages` are blueprints of other layers, such as the API page.

    With a limit, each caller has so many requests a minute.
    """
    app = Flask("counterpane", static_folder=None)
    app.url_map.merge_slashes = False  # An address with a doubled slash is unknown, and not sent on to another.
    app.config.update(PROPAGATE_EXCEPTIONS=False, MAX_FORM_MEMORY_SIZE=0, MAX_FORM_PARTS=0)
    for operation in OPERATIONS:
        view = _flask_view(operation, services, journal)
        app.add_url_rule(operation.path, operation.name, view, methods=[operation.method])
    for blueprint in pages:
        _watch(blueprint, journal)
        app.register_blueprint(blueprint)
    app.register_error_handler(Exception, lambda error: _refused(error, _Asking.begun(request), journal))
    if limit:
        app.wsgi_app = Limited(  # type: ignore[method-assign]
            app.wsgi_app,
            services,
            limit,
            lambda problem, environ: _refused(problem, _Asking.begun(Request(environ)), journal),
            journal.uncounted,
        )
    return app


@dataclass(frozen=True, slots=True)
class _Asking:
    """A request under way: its id, when it began, and what was asked."""

    request_id: str
    began: float
    asked: Request

    @classmethod
    def begun(cls, asked: Request) -> _Asking:
        return cls(secrets.token_hex(8), time.perf_counter(), asked)

    @property
    def route(self) -> str | None:
        """The template of the address, which holds no names; None for an address that there is not."""
        return self.asked.url_rule.rule if self.asked.url_rule else None

    def sent(self, body: bytes, status: int, headers: Headers, journal: Journal) -> Response:
        """Return the response with the headers that all have, and log it."""
        headers += [("X-Content-Type-Options", "nosniff"), ("X-Request-Id", self.request_id)]
        journal.request(self.request_id, self.asked.method, self.route, status, self.began)
        return Response(body, status, headers)


def _flask_view(operation: Operation, services: Services, journal: Journal) -> Callable[..., Response]:
    vary = "Accept" if services.open_reading or operation.role is None else "Accept, Authorization"
    vary += ", Prefer" if operation.counts else ""
    caching = operation.caching or ("no-cache" if operation.method == "GET" else "no-store")
    usual = [("Vary", vary), ("Cache-Control", caching)]

    def view(**path: str) -> Response:
        asking = _Asking.begun(cast("Request", request._get_current_object()))  # type: ignore[attr-defined]
        try:
            if operation.body:
                _bound_body(asking.asked, operation.most_bytes)
            answer = operation.view(call_of(operation, services, asking.asked, path))
        except Exception as error:
            return _refused(error, asking, journal)
        return _answered(answer, usual, asking, journal)

    return view


def _bound_body(asked: Request, most: int) -> None:
    asked.max_content_length = most + 1  # A body of unknown length is cut there, so that one too long is seen.
    if (asked.content_length or 0) > most:
        raise RequestEntityTooLarge


def _answered(answer: Answer, usual: Headers, asking: _Asking, journal: Journal) -> Response:
    headers = [*usual, *answer.headers]
    if answer.sha256:
        headers.append(("ETag", tags.tag(answer.sha256)))
        none_match = asking.asked.environ.get("HTTP_IF_NONE_MATCH")
        if none_match and asking.asked.method != "PUT" and tags.answers_none_match(none_match, answer.sha256):
            response = asking.sent(b"", 304, headers, journal)
            del response.headers["Content-Type"], response.headers["Content-Length"]
            return response
    headers.append(("Content-Type", answer.media))
    return asking.sent(answer.body, answer.status, headers, journal)


def _refused(error: Exception, asking: _Asking, journal: Journal) -> Response:
    """Return the problem document of any error; one that is nobody's is ours, and is logged."""
    problem = error if isinstance(error, Problem) else _of_flask(error, asking.asked) or problems.of(error)
    if problem is None:
        journal.failure(asking.request_id, asking.route, error)
        problem = Problem("internal", "Something went wrong that should not have.")
    body = json_bytes(problem.document(asking.request_id))
    headers = [("Content-Type", problems.MEDIA_TYPE), ("Cache-Control", "no-store"), *problem.headers.items()]
    return asking.sent(body, problem.sort.status, headers, journal)


def _of_flask(error: Exception, asked: Request) -> Problem | None:
    if not isinstance(error, HTTPException):
        return None
    headers = {name: value for name, value in error.get_headers() if name == "Allow"}
    name = OF_FLASK.get(error.code or 500, "internal" if (error.code or 500) >= 500 else "bad-request")
    detail = SORTS[name].title + "."
    if allow := headers.get("Allow"):
        detail = f"{asked.path} takes {allow}, not {asked.method}."
    elif name == "not-found":
        detail = f"There is no address {asked.path}."
    return Problem(name, detail, headers=headers)


def _watch(pages: Blueprint, journal: Journal) -> None:
    """Give the pages of another layer a request id and a line in the journal."""

    def begin() -> None:
        g.asking = _Asking.begun(request)

    def end(response: Response) -> Response:
        if "X-Request-Id" in response.headers:  # A refusal, which has been told already.
            return response
        asking: _Asking = g.asking
        response.headers["X-Content-Type-Options"] = "nosniff"
        response.headers["X-Request-Id"] = asking.request_id
        journal.request(asking.request_id, asking.asked.method, asking.route, response.status_code, asking.began)
        return response

    pages.before_request(begin)
    pages.after_request(end)

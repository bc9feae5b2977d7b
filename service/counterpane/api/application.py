"""The application: the only place where Flask meets the operations.

Each operation gets one Flask view that reads the request, calls the view and sends what it answers. Every refusal,
from here or from Flask itself, leaves as a problem document.
"""

from __future__ import annotations

import secrets
import time
from collections.abc import Callable, Iterable
from typing import Any

import orjson
from flask import Blueprint, Flask, Request, Response, g, request
from werkzeug.exceptions import HTTPException, RequestEntityTooLarge

from counterpane.api import problems, tags
from counterpane.api.access import log_failure, log_request
from counterpane.api.catalogue import OPERATIONS
from counterpane.api.operations import Answer, Operation
from counterpane.api.problems import Problem
from counterpane.api.requests import call_of
from counterpane.library.services import Services

OF_FLASK = {404: "not-found", 405: "method-not-allowed", 406: "not-acceptable", 413: "too-large"}
OF_FLASK |= {415: "unsupported-media-type"}


def create_app(services: Services, pages: Iterable[Blueprint] = ()) -> Flask:
    """Return the application on these services; `pages` are blueprints of other layers, such as the API page."""
    app = Flask("counterpane", static_folder=None)
    app.config.update(PROPAGATE_EXCEPTIONS=False, MAX_FORM_MEMORY_SIZE=0, MAX_FORM_PARTS=0)
    for operation in OPERATIONS:
        app.add_url_rule(operation.path, operation.name, _flask_view(operation, services), methods=[operation.method])
    for blueprint in pages:
        app.register_blueprint(blueprint)
    app.before_request(_begin)
    app.after_request(_end)
    app.register_error_handler(Exception, _refusal)
    return app


def _flask_view(operation: Operation, services: Services) -> Callable[..., Response]:
    vary = "Accept" if services.open_reading or operation.role is None else "Accept, Authorization"

    def view(**path: str) -> Response:
        request.max_content_length = operation.most_bytes
        if (request.content_length or 0) > operation.most_bytes:
            raise RequestEntityTooLarge()
        response = _respond(operation.view(call_of(operation, services, request, path)), request)
        response.headers["Vary"] = vary
        return response

    return view


def _respond(answer: Answer, asked: Request) -> Response:
    response = Response(answer.body, answer.status, answer.headers, content_type=answer.media)
    if answer.sha256:
        response.headers["ETag"] = tags.tag(answer.sha256)
        none_match = asked.headers.get("If-None-Match")
        if none_match and asked.method in ("GET", "HEAD") and tags.answers_none_match(none_match, answer.sha256):
            response.status_code, response.data = 304, b""
            del response.headers["Content-Type"], response.headers["Content-Length"]
    if "Cache-Control" not in response.headers:
        response.headers["Cache-Control"] = "no-cache" if asked.method in ("GET", "HEAD") else "no-store"
    return response


def _begin() -> None:
    g.began, g.request_id = time.perf_counter(), secrets.token_hex(8)


def _end(response: Response) -> Response:
    response.headers["X-Content-Type-Options"] = "nosniff"
    response.headers["X-Request-Id"] = g.request_id
    log_request(g.request_id, request.method, _route(), response.status_code, g.began)
    return response


def _route() -> str | None:
    return request.url_rule.rule if request.url_rule else None


def _refusal(error: Exception) -> Response:
    """Return the problem document of any error; one that is nobody's is ours, and is logged."""
    problem = error if isinstance(error, Problem) else _of_flask(error) or problems.of(error)
    if problem is None:
        log_failure(g.request_id, _route(), error)
        problem = Problem("internal", "Something went wrong that should not have.")
    body = orjson.dumps(problem.document(g.request_id), default=str)
    response = Response(body, problem.sort.status, problem.headers, content_type=problems.MEDIA_TYPE)
    response.headers["Cache-Control"] = "no-store"
    return response


def _of_flask(error: Exception) -> Problem | None:
    if not isinstance(error, HTTPException):
        return None
    headers: dict[str, Any] = {name: value for name, value in error.get_headers() if name == "Allow"}
    name = OF_FLASK.get(error.code or 500, "internal" if (error.code or 500) >= 500 else "bad-request")
    detail = problems.SORTS[name].title + "."
    if allow := headers.get("Allow"):
        detail = f"{request.path} takes {allow}, not {request.method}."
    elif name == "not-found":
        detail = f"There is no address {request.path}."
    return Problem(name, detail, headers=headers)
